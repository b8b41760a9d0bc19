package tank

import (
	"fmt"
	"math"

	"manway.example/manway"
)

// Spec is what is known of a tank. The zero value of a thickness, an invert or
// a mass means that it was not measured.
type Spec struct {
	Shape        Shape
	OutsideSizes bool          // the sizes of Shape are outside; Wall, and Roof and Floor of an upright tank, must then be given
	Wall         manway.Length // also of flat ends; 0: not known
	Roof, Floor  manway.Length // of upright tanks; lying ones have Wall all round; 0: not known
	Material     Material
	EmptyMass    manway.Mass // of the shell without covers, from its plate or slip; 0: reckoned from the walls

	Partitions []Partition // from the inlet, at most 3

	InletInvert, OutletInvert manway.Length // above the inside of the floor; 0: not known
	Access                    []Access      // at most 20
}

// Partition is a wall across the tank. Its position is measured at the top,
// from the inside of the inlet end (of the straight part, where the head is
// dished) to the near face.
type Partition struct {
	At        manway.Length
	Thickness manway.Length
	Height    manway.Length // from the floor to where liquid spills over; 0: up to the roof
	Opening   manway.Area   // transfer opening, taken out of its weight; 0: none or not measured
}

// Access is an opening in the roof with its place: its centre from the inside
// of the inlet end, and how far it stands off the tank's centre line.
type Access struct {
	Compartment int           `json:"compartment"` // index, 0 at the inlet
	Along       manway.Length `json:"along"`
	Across      manway.Length `json:"across"`
	Diameter    manway.Length `json:"diameter"` // of a round opening
	Length      manway.Length `json:"length"`   // of a rectangular one, along the tank
	Width       manway.Length `json:"width"`
}

// Area is the plan area of the opening.
//
// Source: geometry.
func (a Access) Area() manway.Area {
	if a.Diameter > 0 {
		return manway.Length(float64(a.Diameter) * math.Pi / 4).Times(a.Diameter)
	}
	return a.Length.Times(a.Width)
}

// maxPartitions bounds the compartments to four.
const maxPartitions = 3

// validate adds the faults of all but the shape itself.
func (s Spec) validate(faults *manway.InputErrors, inside Shape) {
	height := inside.Inside().Height
	from, to, ok := inside.ends()
	if n := len(s.Partitions); n > maxPartitions {
		faults.Add("Partitions", fmt.Sprint(n), "at most 3")
	} else if n > 0 && !ok {
		faults.Add("Partitions", fmt.Sprint(n), "none: this shape takes no partition")
	} else {
		for i, p := range s.Partitions {
			var of manway.InputErrors
			p.validate(&of, manway.Length(from), manway.Length(to), height)
			if len(of) > 0 {
				faults.Under(fmt.Sprintf("Partitions[%d]", i), of)
			}
			from = float64(p.At + p.Thickness)
		}
	}
	if s.InletInvert != 0 {
		manway.Within(faults, "InletInvert", s.InletInvert, 0, height)
	}
	if s.OutletInvert != 0 {
		manway.Within(faults, "OutletInvert", s.OutletInvert, 0, height)
	}
	manway.Within(faults, "Access", len(s.Access), 0, 20)
	for i, a := range s.Access {
		var of manway.InputErrors
		a.validate(&of, inside.Inside(), len(s.Partitions)+1)
		if len(of) > 0 {
			faults.Under(fmt.Sprintf("Access[%d]", i), of)
		}
	}
	if s.EmptyMass != 0 {
		manway.Within(faults, "EmptyMass", s.EmptyMass, 20*manway.Pound, 500000*manway.Pound)
	}
	if int(s.Material) >= len(materials) {
		faults.Add("Material", s.Material.String(), "a material of this package")
	}
}

func (p Partition) validate(faults *manway.InputErrors, from, to, height manway.Length) {
	if !(p.Thickness > 0 && p.Thickness <= 24*manway.Inch) {
		faults.Add("Thickness", p.Thickness.String(), "above 0, at most 2 ft")
		return
	}
	if !(p.At > from && p.At+p.Thickness < to) {
		faults.Add("At", p.At.String(), "both faces within the floor, beyond "+from.String()+" and short of "+to.String())
	}
	if p.Height != 0 {
		manway.Within(faults, "Height", p.Height, height/100, height)
	}
	manway.Within(faults, "Opening", p.Opening, 0, 100*manway.SquareFoot)
}

func (a Access) validate(faults *manway.InputErrors, in Extent, compartments int) {
	manway.Within(faults, "Compartment", a.Compartment, 0, compartments-1)
	if in.Length > 0 {
		manway.Within(faults, "Along", a.Along, -in.InletHead, in.Length+in.OutletHead)
		manway.Within(faults, "Across", a.Across, -in.Width/2, in.Width/2)
	} else { // a survey of levels has no plan
		manway.Within(faults, "Along", a.Along, -greatestSize, greatestSize)
		manway.Within(faults, "Across", a.Across, -greatestSize, greatestSize)
	}
	if a.Diameter != 0 {
		manway.Within(faults, "Diameter", a.Diameter, 4*manway.Inch, 10*manway.Foot)
		manway.Absent(faults, "Length", a.Length, "Diameter is given")
		manway.Absent(faults, "Width", a.Width, "Diameter is given")
		return
	}
	manway.Within(faults, "Length", a.Length, 4*manway.Inch, 20*manway.Foot)
	manway.Within(faults, "Width", a.Width, 4*manway.Inch, 20*manway.Foot)
}

// Material is what the shell is made of.
type Material uint8

// The materials of tanks. The zero value is concrete. Of the others volumes and
// flotation are reckoned, strength is not judged: keep off their roofs.
const (
	ConcreteShell Material = iota
	PlasticShell
	FibreglassShell
	SteelShell
)

var materials = [...]string{"concrete", "plastic", "fibreglass", "steel"}

// String is concrete, plastic, fibreglass or steel.
func (m Material) String() string { return manway.Word(materials[:], m) }

// MarshalText is the same as String.
func (m Material) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText accepts concrete, plastic, fibreglass and steel.
func (m *Material) UnmarshalText(text []byte) error {
	return manway.ReadWord(m, "material", materials[:], text)
}
