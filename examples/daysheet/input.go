package main

import (
	"flag"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
)

// input is one row. A nil pointer is something that was not measured.
type input struct {
	ID             string         `json:"id"`
	Length         manway.Length  `json:"length"`
	Width          manway.Length  `json:"width"`
	Depth          manway.Length  `json:"depth"`
	Height         manway.Length  `json:"height"`          // 0: not measured
	Partition      manway.Length  `json:"partition"`       // 0: none
	PartitionThick manway.Length  `json:"partition_thick"` //
	Cover          *manway.Length `json:"cover"`
	LidDia         manway.Length  `json:"lid_dia"`   // 0: not measured
	LidThick       manway.Length  `json:"lid_thick"` //
	Sludge1        *manway.Length `json:"sludge1"`
	Scum1          *manway.Length `json:"scum1"`
	Sludge2        *manway.Length `json:"sludge2"`
	Scum2          *manway.Length `json:"scum2"`

	Wall        manway.Length  `json:"wall"` // 0: not measured
	Roof        manway.Length  `json:"roof"`
	Floor       manway.Length  `json:"floor"`
	Groundwater *manway.Length `json:"groundwater"`
	LidAt       manway.Length  `json:"lid_at"` // 0: not measured

	Steel      manway.SteelState `json:"steel"`
	Bar        manway.Length     `json:"bar"`
	BarSpacing manway.Length     `json:"bar_spacing"`
	BarCover   manway.Length     `json:"bar_cover"`

	People  *int          `json:"people"`
	Truck   manway.Volume `json:"truck"`  // 0: not known
	Pumped  manway.Date   `json:"pumped"` // no date: not known
	Visited manway.Date   `json:"visited"`
}

// flags are those of one row, or of what all rows have in common.
func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the tank")
	for _, l := range []struct {
		to          *manway.Length
		name, usage string
	}{
		{&in.Length, "length", "inside length"},
		{&in.Width, "width", "inside width"},
		{&in.Depth, "depth", "of the liquid"},
		{&in.Height, "height", "inside height"},
		{&in.Partition, "partition", "from the inlet end to its near face"},
		{&in.PartitionThick, "partition-thick", "its thickness"},
		{&in.LidDia, "lid-dia", "diameter of the lid"},
		{&in.LidThick, "lid-thick", "thickness of the lid"},
		{&in.Wall, "wall", "thickness"},
		{&in.Roof, "roof", "thickness"},
		{&in.Floor, "floor", "thickness"},
		{&in.LidAt, "lid-at", "from the inlet end to the middle of the lid"},
		{&in.Bar, "bar", "diameter of the roof's bars"},
		{&in.BarSpacing, "bar-spacing", "of the roof's bars"},
		{&in.BarCover, "bar-cover", "concrete below the roof's bars"},
	} {
		fs.TextVar(l.to, l.name, manway.Length(0), l.usage)
	}
	record.Optional(fs, &in.Cover, "cover", "soil over the roof")
	record.Optional(fs, &in.Sludge1, "sludge1", "in the first compartment")
	record.Optional(fs, &in.Scum1, "scum1", "in the first compartment")
	record.Optional(fs, &in.Sludge2, "sludge2", "in the second compartment")
	record.Optional(fs, &in.Scum2, "scum2", "in the second compartment")
	record.Optional(fs, &in.Groundwater, "groundwater", "below grade")
	fs.TextVar(&in.Steel, "steel", manway.SteelUnknown, "in the roof: none or known")
	fs.Func("people", "`NUMBER` who live on the tank", in.setPeople)
	fs.TextVar(&in.Truck, "truck", manway.Volume(0), "what the truck holds")
	fs.Func("pumped", "`DATE` of the last pump-out", func(s string) error { return in.Pumped.UnmarshalText([]byte(s)) })
	fs.Func("visited", "`DATE` of these readings", func(s string) error { return in.Visited.UnmarshalText([]byte(s)) })
}
