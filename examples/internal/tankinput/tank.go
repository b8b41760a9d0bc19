package tankinput

import (
	"flag"
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// Tank is what a record says of a tank.
type Tank struct {
	Shape      Shape         `json:"shape"`
	Outside    bool          `json:"outside"`
	Wall       manway.Length `json:"wall"`
	Roof       manway.Length `json:"roof"`
	Floor      manway.Length `json:"floor"`
	Partitions []Partition   `json:"partitions"`
}

// Partition is one wall across the tank.
type Partition struct {
	At        manway.Length `json:"at"`
	Thickness manway.Length `json:"thickness"`
	Height    manway.Length `json:"height"`
}

// read takes at;thickness or at;thickness;height, as a flag has it.
func (p *Partition) read(text string) error {
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

// Spec is the tank's, with the faults of its shape.
func (t *Tank) Spec() (tank.Spec, manway.InputErrors) {
	var faults manway.InputErrors
	spec := tank.Spec{Shape: t.Shape.of(&faults), OutsideSizes: t.Outside, Wall: t.Wall, Roof: t.Roof, Floor: t.Floor}
	if len(t.Partitions) > 0 {
		spec.Partitions = make([]tank.Partition, len(t.Partitions))
		for i, p := range t.Partitions {
			spec.Partitions[i] = tank.Partition{At: p.At, Thickness: p.Thickness, Height: p.Height}
		}
	}
	return spec, faults
}

// New makes the tank of a Spec that came from Spec; the faults have the names
// of the record.
func New(spec tank.Spec, faults manway.InputErrors) (tank.Tank, manway.InputErrors) {
	if spec.Shape == nil {
		return tank.Tank{}, faults
	}
	t, err := tank.New(spec)
	return t, append(faults, Renamed(err)...)
}

// Renamed gives the faults of package tank the names of the record.
func Renamed(err error) manway.InputErrors {
	list, ok := err.(manway.InputErrors)
	if err == nil {
		return nil
	}
	if !ok {
		return manway.InputErrors{{Field: "Tank", Value: fmt.Sprint(err), Want: "a tank"}}
	}
	renamed := make(manway.InputErrors, len(list))
	for i, f := range list {
		renamed[i] = &manway.InputError{Field: fieldNames.Replace(f.Field), Value: f.Value, Want: f.Want}
	}
	return renamed
}

// Flags declares the flags of a tank.
func Flags(fs *flag.FlagSet, in *Tank) {
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
		var p Partition
		if err := p.read(text); err != nil {
			return err
		}
		in.Partitions = append(in.Partitions, p)
		return nil
	})
	fs.BoolVar(&in.Outside, "outside", false, "the sizes are outside; wall, roof and floor must be given")
}
