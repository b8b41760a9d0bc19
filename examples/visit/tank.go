package visit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// build makes the tank of the survey. Its faults carry the field paths of the
// survey's own Tank.
func (s Survey) build() (tank.Tank, error) {
	spec, err := s.spec()
	if err != nil {
		return tank.Tank{}, err
	}
	t, err := tank.New(spec)
	if err == nil {
		return t, nil
	}
	list, ok := err.(manway.InputErrors)
	if !ok {
		return tank.Tank{}, err
	}
	var faults manway.InputErrors
	for _, f := range list {
		field := strings.TrimPrefix(f.Field, "Shape.")
		if s.Tank.Kind == "nominal" {
			field = nominalField(field)
		}
		if strings.HasPrefix(field, "Access[") {
			continue // told at the access itself
		}
		value := f.Value
		if strings.HasPrefix(value, "0 ") { // a size that is left out reads as nothing
			value = "missing or 0"
		}
		faults.Add(field, value, f.Want)
	}
	s.Tank.outside(&faults)
	return tank.Tank{}, faults.Err()
}

// nominalField is the survey's name of a field of a nominal tank.
func nominalField(field string) string {
	switch field {
	case "Volume":
		return "Nominal"
	case "Depth":
		return "OutletInvert"
	}
	return field
}

// outside adds the partitions that stand outside the tank as it was written,
// where other faults of the tank kept the tank's own check from telling. A
// negative length is read as its size: the sign is a fault of its own.
func (t Tank) outside(faults *manway.InputErrors) {
	length := manway.Length(math.Abs(float64(t.Length)))
	told := func(field string) bool {
		return slices.ContainsFunc(*faults, func(f *manway.InputError) bool { return strings.HasPrefix(f.Field, field) })
	}
	for i, p := range t.Partitions {
		field := fmt.Sprintf("Partitions[%d].At", i)
		if length > 0 && !told(field) && !(p.At > 0 && p.At+p.Thickness < length) {
			faults.Add(field, p.At.String(), "both faces inside the tank of "+length.String())
		}
	}
}

// spec is the tank's own terms of the survey.
func (s Survey) spec() (tank.Spec, error) {
	t := s.Tank
	if t.Roof == 0 && t.Material == tank.ConcreteShell {
		t.Roof, _ = t.RoofEdge.Thickness()
	}
	spec := tank.Spec{
		Wall: t.Wall, Roof: t.Roof, Floor: t.Floor,
		Material:    t.Material,
		InletInvert: t.InletInvert.Length, OutletInvert: t.OutletInvert,
	}
	var faults manway.InputErrors
	switch t.Kind {
	case "box":
		spec.Shape = tank.Box{Length: t.Length, Width: t.Width, Height: t.Height, FloorLength: t.FloorLength, FloorWidth: t.FloorWidth}
	case "vertical-cylinder":
		spec.Shape = tank.VerticalCylinder{Diameter: t.Diameter, Height: t.Height}
	case "horizontal-cylinder":
		spec.Shape = tank.HorizontalCylinder{Diameter: t.Diameter, Length: t.Length}
	case "nominal":
		spec.Shape = tank.Nominal{Volume: t.Nominal, Depth: t.OutletInvert, Height: t.Height, Length: t.Length}
	default:
		faults.Add("Kind", fmt.Sprintf("%q", t.Kind), "box, vertical-cylinder, horizontal-cylinder or nominal")
	}
	switch t.Measured {
	case "", "inside":
	case "outside":
		spec.OutsideSizes = true
	default:
		faults.Add("Measured", fmt.Sprintf("%q", t.Measured), "inside or outside")
	}
	if err, ok := t.steel().Validate().(manway.InputErrors); ok {
		for _, f := range err {
			faults.Add("Bar"+f.Field, f.Value, f.Want)
		}
	}
	for i, p := range t.Partitions {
		if p.Port.Taken {
			manway.Within(&faults, fmt.Sprintf("Partitions[%d].Port", i), p.Port.Length, 0, 30*manway.Foot)
		}
		spec.Partitions = append(spec.Partitions, tank.Partition{At: p.At, Thickness: p.Thickness, Height: p.Height})
	}
	for i, a := range s.Accesses {
		if a.Opening > 0 && a.Compartment >= 1 && a.Compartment <= len(t.Partitions)+1 {
			spec.Access = append(spec.Access, tank.Access{Compartment: a.Compartment - 1, Along: s.place(i), Diameter: a.Opening})
		}
	}
	return spec, faults.Err()
}

// place is where an opening stands along the tank: as measured, or in the
// middle of its compartment.
func (s Survey) place(i int) manway.Length {
	a := s.Accesses[i]
	if a.At.Taken {
		return a.At.Length
	}
	from, to := manway.Length(0), max(s.Tank.Length, s.Tank.Diameter)
	switch s.Tank.Kind {
	case "vertical-cylinder":
		to = s.Tank.Diameter
	case "nominal":
		to = tank.Nominal{Volume: s.Tank.Nominal, Depth: s.Tank.OutletInvert, Length: s.Tank.Length}.Inside().Length
	}
	if n := a.Compartment - 2; n >= 0 && n < len(s.Tank.Partitions) {
		from = s.Tank.Partitions[n].At + s.Tank.Partitions[n].Thickness
	}
	if n := a.Compartment - 1; n >= 0 && n < len(s.Tank.Partitions) {
		to = s.Tank.Partitions[n].At
	}
	return (from + to) / 2
}
