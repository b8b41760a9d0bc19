package concrete

import (
	"math"

	"manway.example/manway"
)

// PhiPlain is phi of plain concrete, whatever is asked of it (ACI 318-19 Table
// 21.2.1).
const PhiPlain = 0.60

// SoilAllowance is what is taken off the thickness of plain concrete that was
// cast against soil (ACI 318-19 14.5.1.7).
const SoilAllowance manway.Length = 2 * manway.Inch

// Plain is a rectangular section of plain concrete. The code allows plain
// concrete only where it is supported all along, in arches, walls and pedestals
// (14.1.3): a plain slab or lid that spans free has a figure here and no
// permission.
type Plain struct {
	Concrete    manway.Concrete
	Width       manway.Length // b, 1 in to 1000 ft
	Thickness   manway.Length // h, 0.25 in to 20 ft
	AgainstSoil bool          // cast against soil: 2 in are not counted
}

// Validate returns the faults of p.
func (p Plain) Validate() error {
	var faults manway.InputErrors
	if err := p.Concrete.Validate(); err != nil {
		faults.Under("Concrete", err)
	}
	manway.Within(&faults, "Width", p.Width, 1*manway.Inch, 1000*manway.Foot)
	least := 0.25 * manway.Inch
	if p.AgainstSoil {
		least += SoilAllowance
	}
	manway.Within(&faults, "Thickness", p.Thickness, least, 20*manway.Foot)
	return faults.Err()
}

// PlainFlexure is the bending strength of plain concrete.
type PlainFlexure struct {
	Thickness manway.Length // counted
	Modulus   manway.Volume // S = b h^2/6
	Phi       float64
	Nominal   manway.Moment
	Design    manway.Moment
}

func (p Plain) counted() manway.Length {
	if p.AgainstSoil {
		return p.Thickness - SoilAllowance
	}
	return p.Thickness
}

// Flexure is the strength in bending, the lesser of the two faces':
//
//	Mn = 5 lambda sqrt(f'c) S in tension, 0.85 f'c S in compression, S = b h^2/6
//
// Source: ACI 318-19 14.5.2.1, phi Table 21.2.1.
func (p Plain) Flexure() (PlainFlexure, error) {
	if err := p.Validate(); err != nil {
		return PlainFlexure{}, err
	}
	return p.flexure(), nil
}

// flexure is Flexure of a section that was validated.
func (p Plain) flexure() PlainFlexure {
	h, m := p.counted(), of(p.Concrete)
	s := p.Width.Times(h).Times(h) / 6
	stress := manway.Pressure(math.Min(5*m.root(), 0.85*m.fc)) * manway.PSI
	mn := manway.Moment(float64(stress) * float64(s))
	return PlainFlexure{Thickness: h, Modulus: s, Phi: PhiPlain, Nominal: mn, Design: PhiPlain * mn}
}

// Shear is the strength in one-way shear:
//
//	Vn = 4/3 lambda sqrt(f'c) b h
//
// Source: ACI 318-19 Table 14.5.5.1(a).
func (p Plain) Shear() (Shear, error) {
	if err := p.Validate(); err != nil {
		return Shear{}, err
	}
	return p.shear(), nil
}

// shear is Shear of a section that was validated.
func (p Plain) shear() Shear {
	return shearOf(4.0/3*of(p.Concrete).root(), p.Width.Times(p.counted()), PhiPlain, 1)
}
