package main

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// wanted are the fields that each kind of load needs.
var wanted = [...][]string{
	uniform:  {"pressure"},
	patch:    {"x", "y", "length", "width", "force"},
	ring:     {"opening", "force_per_length"},
	lineLoad: {"x", "y", "to_x", "to_y", "force_per_length"},
	liquid:   {"level", "density"},
}

// loads are the loads as the solver has them.
func (in *input) loads(faults *manway.InputErrors) []plate.Load {
	var list []plate.Load
	for i, l := range in.Loads {
		field := fmt.Sprintf("loads[%d]", i)
		if l.Kind == noKind {
			faults.Add(field+".kind", "none", strings.Join(kinds[1:], ", "))
			continue
		}
		n := len(*faults)
		l.check(field, faults)
		if len(*faults) == n {
			list = append(list, l.plate())
		}
	}
	if len(in.Loads) == 0 {
		faults.Add("loads", "none", "at least one load")
	}
	return list
}

// check records fields that a load of its kind lacks, or has no use for.
func (l *load) check(field string, faults *manway.InputErrors) {
	given := map[string]bool{"pressure": l.Pressure != nil, "x": l.X != nil, "y": l.Y != nil, "length": l.Length != nil,
		"width": l.Width != nil, "force": l.Force != nil, "opening": l.Opening != nil, "offset": l.Offset != nil,
		"force_per_length": l.ForcePerLength != nil, "to_x": l.ToX != nil, "to_y": l.ToY != nil,
		"level": l.Level != nil, "density": l.Density != nil}
	for _, name := range wanted[l.Kind] {
		if !given[name] {
			faults.Add(field+"."+name, "none", fmt.Sprintf("the %s of a %s load", strings.ReplaceAll(name, "_", " "), l.Kind))
		}
		delete(given, name)
	}
	if l.Kind == ring {
		delete(given, "offset")
	}
	for _, name := range []string{"pressure", "x", "y", "length", "width", "force", "opening", "offset", "force_per_length", "to_x", "to_y", "level", "density"} {
		if given[name] {
			faults.Add(field+"."+name, "given", fmt.Sprintf("none: a %s load has no such part", l.Kind))
		}
	}
}

func (l *load) plate() plate.Load {
	switch l.Kind {
	case patch:
		return plate.Patch{X: float64(*l.X), Y: float64(*l.Y), Length: float64(*l.Length), Width: float64(*l.Width), Force: float64(*l.Force)}
	case ring:
		r := plate.Ring{Opening: *l.Opening, PerLength: float64(*l.ForcePerLength)}
		if l.Offset != nil {
			r.Offset = float64(*l.Offset)
		}
		return r
	case lineLoad:
		return plate.Segment{From: plate.Point{X: float64(*l.X), Y: float64(*l.Y)},
			To: plate.Point{X: float64(*l.ToX), Y: float64(*l.ToY)}, PerLength: float64(*l.ForcePerLength)}
	case liquid:
		return plate.Liquid{Level: float64(*l.Level), UnitWeight: float64(*l.Density) * manway.StandardGravity}
	}
	return plate.Uniform{Pressure: float64(*l.Pressure)}
}

// names of the solver's fields in the record, by their last part.
var names = map[string]string{"Length": "length", "Width": "width", "Thickness": "thickness", "E": "e", "Nu": "nu",
	"Lines": "lines", "Points": "supports", "Openings": "openings", "Zones": "zones", "Edges": "edges", "Loads": "loads",
	"At": "x", "X": "x", "Y": "y", "X0": "x", "Y0": "y", "X1": "length", "Y1": "width", "Diameter": "diameter", "Offset": "offset",
	"Level": "level", "UnitWeight": "density", "Pressure": "pressure", "Force": "force", "PerLength": "force_per_length",
	"Opening": "opening", "Radius": "diameter", "Mesh": "thickness"}

// fieldOf turns the solver's name of a field into the record's, and says whether
// its value is a length.
func fieldOf(path string) (field string, length bool) {
	path = strings.NewReplacer("From.X", "X", "From.Y", "Y", "To.X", "ToX", "To.Y", "ToY").Replace(path)
	parts := strings.Split(path, ".")
	for i, part := range parts {
		name, index, indexed := strings.Cut(part, "[")
		switch {
		case name == "ToX":
			name = "to_x"
		case name == "ToY":
			name = "to_y"
		case names[name] != "":
			name = names[name]
		}
		if indexed {
			name += "[" + index
		}
		parts[i] = name
	}
	switch last := parts[len(parts)-1]; last {
	case "length", "width", "thickness", "x", "y", "diameter", "offset", "level", "to_x", "to_y":
		length = true
	}
	field = strings.Join(parts, ".")
	if strings.HasPrefix(field, "lines") {
		field = strings.TrimSuffix(field, ".x") // or y: the solver has one name for both
	}
	if !strings.HasPrefix(field, "loads") && !strings.HasPrefix(field, "points") {
		field = "slab." + field
	}
	return field, length
}
