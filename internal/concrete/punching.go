package concrete

import (
	"math"

	"manway.example/manway"
)

// Position is where a load stands on a slab.
type Position uint8

// The positions, by how many sides of the load the slab goes on.
const (
	Interior Position = iota // four sides, alpha_s 40
	AtEdge                   // three sides, alpha_s 30
	AtCorner                 // two sides, alpha_s 20
)

// Punching is a load pressing on a rectangle of a slab.
type Punching struct {
	Concrete manway.Concrete
	Length   manway.Length // side of the loaded rectangle, at an edge the one along it, 0.25 in to 20 ft
	Width    manway.Length // the other side, 0.25 in to 20 ft
	Depth    manway.Length // d to the steel; for plain concrete the slab's thickness, 0.25 in to 10 ft
	Position Position      // at an edge the rectangle is flush with it
}

// Validate returns the faults of p.
func (p Punching) Validate() error {
	var faults manway.InputErrors
	if err := p.Concrete.Validate(); err != nil {
		faults.Under("Concrete", err)
	}
	manway.Within(&faults, "Length", p.Length, 0.25*manway.Inch, 20*manway.Foot)
	manway.Within(&faults, "Width", p.Width, 0.25*manway.Inch, 20*manway.Foot)
	manway.Within(&faults, "Depth", p.Depth, 0.25*manway.Inch, 10*manway.Foot)
	manway.Within(&faults, "Position", int(p.Position), int(Interior), int(AtCorner))
	return faults.Err()
}

// Perimeter is bo, the critical section half the depth outside the load (ACI
// 318-19 22.6.4.1). It is 0 for a load that is not valid.
func (p Punching) Perimeter() manway.Length {
	if p.Validate() != nil {
		return 0
	}
	return p.perimeter()
}

func (p Punching) perimeter() manway.Length {
	switch d := p.Depth; p.Position {
	case AtEdge:
		return p.Length + d + 2*(p.Width+d/2)
	case AtCorner:
		return p.Length + d/2 + p.Width + d/2
	default:
		return 2 * (p.Length + d + p.Width + d)
	}
}

// Strength is Vc of a reinforced slab without shear steel:
//
//	vc = least of 4, 2 + 4/beta, 2 + alpha_s d/bo, times lambda_s lambda sqrt(f'c)
//	Vc = vc bo d
//
// with beta the long over the short side of the load. Source: ACI 318-19
// Table 22.6.5.2, 22.6.5.3, 22.5.5.1.3.
func (p Punching) Strength() (Shear, error) {
	if err := p.Validate(); err != nil {
		return Shear{}, err
	}
	return p.strength(), nil
}

// strength is Strength of a load that was validated.
func (p Punching) strength() Shear {
	alpha := [...]float64{Interior: 40, AtEdge: 30, AtCorner: 20}[p.Position]
	bo := p.perimeter()
	size := sizeEffect(p.Depth.In(manway.Inch))
	least := math.Min(4, math.Min(2+4/p.beta(), 2+alpha*float64(p.Depth)/float64(bo)))
	return shearOf(least*size*of(p.Concrete).rootCapped(), bo.Times(p.Depth), PhiShear, size)
}

// PlainStrength is Vn of a plain slab, Depth being its thickness:
//
//	Vn = (1 + 2/beta) 4/3 lambda sqrt(f'c) bo h, at most 8/3 lambda sqrt(f'c) bo h
//
// Source: ACI 318-19 Table 14.5.5.1.
func (p Punching) PlainStrength() (Shear, error) {
	if err := p.Validate(); err != nil {
		return Shear{}, err
	}
	return p.plainStrength(), nil
}

// plainStrength is PlainStrength of a load that was validated.
func (p Punching) plainStrength() Shear {
	stress := math.Min(1+2/p.beta(), 2) * 4 / 3 * of(p.Concrete).root()
	return shearOf(stress, p.perimeter().Times(p.Depth), PhiPlain, 1)
}

// beta is the long side of the load over the short one.
func (p Punching) beta() float64 {
	return float64(max(p.Length, p.Width) / min(p.Length, p.Width))
}
