package concrete

import (
	"math"

	"manway.example/manway"
)

// PhiShear is phi of shear, one-way and two-way (ACI 318-19 Table 21.2.1).
const PhiShear = 0.75

// Shear is a shear strength: of concrete without shear steel.
type Shear struct {
	SizeEffect float64 // lambda_s; 1 for plain concrete, which has none
	Stress     manway.Pressure
	Area       manway.Area // on which Stress acts
	Phi        float64
	Nominal    manway.Force
	Design     manway.Force // phi Vn
}

// sizeEffect is lambda_s = sqrt(2/(1 + d/10)), at most 1, d in inches (ACI
// 318-19 22.5.5.1.3).
func sizeEffect(d float64) float64 { return math.Min(1, math.Sqrt(2/(1+d/10))) }

// OneWayShear is Vc of a section without shear steel:
//
//	Vc = 8 lambda_s lambda rho^(1/3) sqrt(f'c) b d, at most 5 lambda sqrt(f'c) b d
//
// in lbf, in and psi, rho = As/(b d), sqrt(f'c) at most 100 psi. Source: ACI
// 318-19 Table 22.5.5.1(c), 22.5.5.1.1, 22.5.5.1.3, 22.5.3.1.
func (s Section) OneWayShear() (Shear, error) {
	if err := s.Validate(); err != nil {
		return Shear{}, err
	}
	return s.oneWayShear(), nil
}

// oneWayShear is OneWayShear of a section that was validated.
func (s Section) oneWayShear() Shear {
	size := sizeEffect(s.Depth.In(manway.Inch))
	area := s.Width.Times(s.Depth)
	rho := float64(s.Steel) / float64(area)
	stress := math.Min(8*size*math.Cbrt(rho), 5) * of(s.Concrete).rootCapped()
	return shearOf(stress, area, PhiShear, size)
}

// shearOf is the strength of a stress in psi on an area.
func shearOf(stress float64, area manway.Area, phi, size float64) Shear {
	v := manway.Pressure(stress) * manway.PSI
	return Shear{
		SizeEffect: size, Stress: v, Area: area, Phi: phi,
		Nominal: v.Times(area), Design: manway.Force(phi) * v.Times(area),
	}
}
