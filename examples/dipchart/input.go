package main

import (
	"flag"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/tankinput"
)

// input is one tank as it is read.
type input struct {
	ID    string        `json:"id"`
	Units manway.System `json:"units"` // of the text
	tankinput.Tank
	LiquidDepth *manway.Length  `json:"liquid_depth"`
	Depths      []manway.Length `json:"depths"`
	Step        manway.Length   `json:"step"`
	Rim         *manway.Length  `json:"rim"`
	Working     bool            `json:"working"`
}

// flags are those of a single tank.
func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the tank")
	record.UnitsFlag(fs, &in.Units)
	tankinput.Flags(fs, &in.Tank)
	record.Optional(fs, &in.LiquidDepth, "liquid-depth", "`DEPTH` of liquid; the outlet invert over the floor")
	record.List(fs, &in.Depths, "depths", "`DEPTHS` to chart, with semicolons between them")
	fs.TextVar(&in.Step, "step", 1*manway.Inch, "`STEP` of the chart where no depths are given, such as 1/4 in or 1 cm")
	record.Optional(fs, &in.Rim, "rim", "`HEIGHT` of the access's rim over the floor: readings run down from it")
	fs.BoolVar(&in.Working, "working", false, "show in text how the volume at the liquid depth is reckoned")
}
