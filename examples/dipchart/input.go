package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/tank"
)

// input is one tank as it is read.
type input struct {
	ID          string          `json:"id"`
	Shape       shape           `json:"shape"`
	Outside     bool            `json:"outside"`
	Wall        manway.Length   `json:"wall"`
	Roof        manway.Length   `json:"roof"`
	Floor       manway.Length   `json:"floor"`
	Partitions  []partition     `json:"partitions"`
	LiquidDepth *manway.Length  `json:"liquid_depth"`
	Depths      []manway.Length `json:"depths"`
	Step        manway.Length   `json:"step"`
	Rim         *manway.Length  `json:"rim"`
}

type partition struct {
	At        manway.Length `json:"at"`
	Thickness manway.Length `json:"thickness"`
	Height    manway.Length `json:"height"`
}

// read takes at;thickness or at;thickness;height, as a flag has it.
func (p *partition) read(text string) error {
	parts := strings.Split(text, ";")
	if len(parts) < 2 || len(parts) > 3 {
		return fmt.Errorf("partition %q: want \"AT;THICKNESS\" or \"AT;THICKNESS;HEIGHT\"", text)
	}
	for i, into := range []*manway.Length{&p.At, &p.Thickness, &p.Height}[:len(parts)] {
		if err := into.UnmarshalText([]byte(parts[i])); err != nil {
			return err
		}
	}
	return nil
}

// shape has the sizes of every kind; those that its kind does not have must be
// left out.
type shape struct {
	Kind           string        `json:"kind"`
	Length         manway.Length `json:"length"`
	Width          manway.Length `json:"width"`
	Height         manway.Length `json:"height"`
	FloorLength    manway.Length `json:"floor_length"`
	FloorWidth     manway.Length `json:"floor_width"`
	Fillet         manway.Length `json:"fillet"`
	Diameter       manway.Length `json:"diameter"`
	Heads          forms         `json:"heads"`
	HeadDepth      lengths       `json:"head_depth"`
	CrownRadius    lengths       `json:"crown_radius"`
	KnuckleRadius  lengths       `json:"knuckle_radius"`
	BottomDiameter manway.Length `json:"bottom_diameter"`
	TopDiameter    manway.Length `json:"top_diameter"`
	Levels         []level       `json:"levels"`
	Volume         manway.Volume `json:"volume"`
	Depth          manway.Length `json:"depth"`
}

type level struct {
	Depth  manway.Length  `json:"depth"`
	Area   *manway.Area   `json:"area"`
	Volume *manway.Volume `json:"volume"`
}

// pair is one value for both heads, or one for each.
type pair[T any, P interface {
	*T
	UnmarshalText([]byte) error
}] struct {
	inlet, outlet T
	given, two    bool
}

type (
	forms   = pair[tank.HeadForm, *tank.HeadForm]
	lengths = pair[manway.Length, *manway.Length]
)

// UnmarshalJSON reads one text or a list of two.
func (p *pair[T, P]) UnmarshalJSON(data []byte) error {
	var texts []string
	if len(data) > 0 && data[0] == '[' {
		if json.Unmarshal(data, &texts) != nil || len(texts) != 2 {
			return errors.New("one text, or a list of two: inlet and outlet")
		}
		return p.read(texts)
	}
	if string(data) == "null" {
		return nil
	}
	var text string
	if json.Unmarshal(data, &text) != nil {
		return errors.New("one text, or a list of two: inlet and outlet")
	}
	return p.read([]string{text})
}

// read takes one text or two.
func (p *pair[T, P]) read(texts []string) error {
	p.given, p.two = true, len(texts) == 2
	if err := P(&p.inlet).UnmarshalText([]byte(texts[0])); err != nil {
		return err
	}
	if len(texts) == 1 {
		p.outlet = p.inlet
		return nil
	}
	return P(&p.outlet).UnmarshalText([]byte(texts[1]))
}

// flag reads one text, or two with a semicolon between them.
func (p *pair[T, P]) flag(text string) error {
	texts := strings.Split(text, ";")
	if len(texts) > 2 {
		return fmt.Errorf("%q: want one value, or two with a semicolon between them", text)
	}
	for i := range texts {
		texts[i] = strings.TrimSpace(texts[i])
	}
	return p.read(texts)
}

// flags are those of a single tank.
func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the tank")
	fs.StringVar(&in.Shape.Kind, "kind", "", "`KIND` of shape, see above")
	for _, l := range []struct {
		to          *manway.Length
		name, usage string
	}{
		{&in.Shape.Length, "length", "inside length, of a cylinder its straight part"},
		{&in.Shape.Width, "width", "inside width"},
		{&in.Shape.Height, "height", "inside height"},
		{&in.Shape.FloorLength, "floor-length", "inside length at the floor of a drafted box"},
		{&in.Shape.FloorWidth, "floor-width", "inside width at the floor of a drafted box"},
		{&in.Shape.Fillet, "fillet", "radius along the edges of a box's floor"},
		{&in.Shape.Diameter, "diameter", "inside diameter"},
		{&in.Shape.BottomDiameter, "bottom-diameter", "of a frustum"},
		{&in.Shape.TopDiameter, "top-diameter", "of a frustum"},
		{&in.Shape.Depth, "depth", "liquid depth of a nominal tank"},
		{&in.Wall, "wall", "thickness, with -outside"},
		{&in.Roof, "roof", "thickness, with -outside"},
		{&in.Floor, "floor", "thickness, with -outside"},
	} {
		fs.TextVar(l.to, l.name, manway.Length(0), l.usage)
	}
	fs.TextVar(&in.Shape.Volume, "volume", manway.Volume(0), "gallons of a nominal tank")
	fs.Func("heads", "`FORM` of the heads, or \"INLET;OUTLET\"", in.Shape.Heads.flag)
	fs.Func("head-depth", "`DEPTH` of ellipsoidal or spherical-cap heads", in.Shape.HeadDepth.flag)
	fs.Func("crown-radius", "`RADIUS` inside, of torispherical heads", in.Shape.CrownRadius.flag)
	fs.Func("knuckle-radius", "`RADIUS` inside, of torispherical heads", in.Shape.KnuckleRadius.flag)
	fs.Func("partition", "`\"AT;THICKNESS\"` or \"AT;THICKNESS;HEIGHT\"; once for each", func(text string) error {
		var p partition
		if err := p.read(text); err != nil {
			return err
		}
		in.Partitions = append(in.Partitions, p)
		return nil
	})
	fs.BoolVar(&in.Outside, "outside", false, "the sizes are outside; wall, roof and floor must be given")
	record.Optional(fs, &in.LiquidDepth, "liquid-depth", "`DEPTH` of liquid; the outlet invert over the floor")
	record.List(fs, &in.Depths, "depths", "`DEPTHS` to chart, with semicolons between them")
	fs.TextVar(&in.Step, "step", 1*manway.Inch, "`STEP` of the chart where no depths are given, such as 1/4 in or 1 cm")
	record.Optional(fs, &in.Rim, "rim", "`HEIGHT` of the access's rim over the floor: readings run down from it")
}
