package tankinput

import (
	"fmt"
	"slices"
	"strings"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// Shape has the sizes of every kind; those that its kind does not have must be
// left out.
type Shape struct {
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
	Levels         []Level       `json:"levels"`
	Volume         manway.Volume `json:"volume"`
	Depth          manway.Length `json:"depth"`
}

// Level is a depth of a survey with what was measured there.
type Level struct {
	Depth  manway.Length  `json:"depth"`
	Area   *manway.Area   `json:"area"`
	Volume *manway.Volume `json:"volume"`
}

// kinds are the shapes and the sizes that each of them has.
var kinds = map[string][]string{
	"box":                 {"Length", "Width", "Height", "FloorLength", "FloorWidth", "Fillet"},
	"vertical-cylinder":   {"Diameter", "Height"},
	"horizontal-cylinder": {"Diameter", "Length", "Heads", "HeadDepth", "CrownRadius", "KnuckleRadius"},
	"horizontal-ellipse":  {"Width", "Height", "Length"},
	"frustum":             {"BottomDiameter", "TopDiameter", "Height"},
	"sphere":              {"Diameter"},
	"surveyed":            {"Levels"},
	"nominal":             {"Volume", "Depth", "Height", "Length"},
}

// of makes the shape that was read; faults gets sizes that its kind does not
// have.
func (s *Shape) of(faults *manway.InputErrors) tank.Shape {
	if _, ok := kinds[s.Kind]; !ok {
		faults.Add("Shape.Kind", `"`+s.Kind+`"`, "box, vertical-cylinder, horizontal-cylinder, horizontal-ellipse, frustum, sphere, surveyed or nominal")
		return nil
	}
	s.surplus(faults)
	switch s.Kind {
	case "box":
		return tank.Box{Length: s.Length, Width: s.Width, Height: s.Height, FloorLength: s.FloorLength, FloorWidth: s.FloorWidth, Fillet: s.Fillet}
	case "vertical-cylinder":
		return tank.VerticalCylinder{Diameter: s.Diameter, Height: s.Height}
	case "horizontal-cylinder":
		return s.cylinder(faults)
	case "horizontal-ellipse":
		return tank.HorizontalEllipse{Width: s.Width, Height: s.Height, Length: s.Length}
	case "frustum":
		return tank.Frustum{BottomDiameter: s.BottomDiameter, TopDiameter: s.TopDiameter, Height: s.Height}
	case "sphere":
		return tank.Sphere{Diameter: s.Diameter}
	case "nominal":
		return tank.Nominal{Volume: s.Volume, Depth: s.Depth, Height: s.Height, Length: s.Length}
	}
	return s.surveyed(faults)
}

// surplus adds a fault for every size that was given and would not be used.
func (s *Shape) surplus(faults *manway.InputErrors) {
	has := kinds[s.Kind]
	check := func(given bool, field, value string) {
		if given && !slices.Contains(has, field) {
			faults.Add("Shape."+field, value, "no such size for a "+s.Kind)
		}
	}
	length := func(x manway.Length, field string) {
		if x != 0 {
			check(true, field, x.String())
		}
	}
	length(s.Length, "Length")
	length(s.Width, "Width")
	length(s.Height, "Height")
	length(s.FloorLength, "FloorLength")
	length(s.FloorWidth, "FloorWidth")
	length(s.Fillet, "Fillet")
	length(s.Diameter, "Diameter")
	length(s.BottomDiameter, "BottomDiameter")
	length(s.TopDiameter, "TopDiameter")
	length(s.Depth, "Depth")
	check(s.Volume != 0, "Volume", s.Volume.String())
	check(s.Heads.given, "Heads", "given")
	check(s.HeadDepth.given, "HeadDepth", "given")
	check(s.CrownRadius.given, "CrownRadius", "given")
	check(s.KnuckleRadius.given, "KnuckleRadius", "given")
	check(s.Levels != nil, "Levels", "given")
}

// cylinder gives each head the sizes that its form has; a size that neither has
// is a fault.
func (s *Shape) cylinder(faults *manway.InputErrors) tank.Shape {
	inlet, outlet := tank.Head{Form: s.Heads.inlet}, tank.Head{Form: s.Heads.outlet}
	give := func(l *lengths, field string, of ...tank.HeadForm) (in, out manway.Length) {
		for i, h := range [...]struct {
			form tank.HeadForm
			from manway.Length
			to   *manway.Length
		}{{inlet.Form, l.inlet, &in}, {outlet.Form, l.outlet, &out}} {
			switch {
			case slices.Contains(of, h.form):
				*h.to = h.from
			case l.two && h.from != 0:
				faults.Add(fmt.Sprintf("Shape.%s[%d]", field, i), h.from.String(), "0 in, since this head is "+h.form.String())
			}
		}
		if l.given && !slices.Contains(of, inlet.Form) && !slices.Contains(of, outlet.Form) {
			faults.Add("Shape."+field, l.inlet.String(), "none, since no head is of a form that has it")
		}
		return in, out
	}
	inlet.Depth, outlet.Depth = give(&s.HeadDepth, "HeadDepth", tank.Ellipsoidal, tank.SphericalCap)
	inlet.Crown, outlet.Crown = give(&s.CrownRadius, "CrownRadius", tank.Torispherical)
	inlet.Knuckle, outlet.Knuckle = give(&s.KnuckleRadius, "KnuckleRadius", tank.Torispherical)
	return tank.HorizontalCylinder{Diameter: s.Diameter, Length: s.Length, Inlet: inlet, Outlet: outlet}
}

// surveyed reads levels, all with an area or all with a volume.
func (s *Shape) surveyed(faults *manway.InputErrors) tank.Shape {
	var of tank.Surveyed
	for i, l := range s.Levels {
		switch {
		case (l.Area == nil) == (l.Volume == nil):
			faults.Add(fmt.Sprintf("Shape.Levels[%d]", i), "depth "+l.Depth.String(), "an area or a volume")
		case l.Area != nil:
			of.Areas = append(of.Areas, tank.AreaAt{Depth: l.Depth, Area: *l.Area})
		default:
			of.Volumes = append(of.Volumes, tank.VolumeAt{Depth: l.Depth, Volume: *l.Volume})
		}
	}
	return of
}

// fieldNames turns the paths of package tank into those of the input.
var fieldNames = strings.NewReplacer(
	"Shape.Inlet.Depth", "Shape.HeadDepth", "Shape.Outlet.Depth", "Shape.HeadDepth",
	"Shape.Inlet.Crown", "Shape.CrownRadius", "Shape.Outlet.Crown", "Shape.CrownRadius",
	"Shape.Inlet.Knuckle", "Shape.KnuckleRadius", "Shape.Outlet.Knuckle", "Shape.KnuckleRadius",
	"Shape.Areas", "Shape.Levels", "Shape.Volumes", "Shape.Levels",
	"OutsideSizes", "Outside",
)
