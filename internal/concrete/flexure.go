package concrete

import (
	"math"

	"manway.example/manway"
)

// PhiTension is phi of a section whose steel stretches so far that it bends
// before it breaks: tension-controlled (ACI 318-19 Table 21.2.2).
const PhiTension = 0.90

// Section is a rectangular section with one layer of steel in tension.
type Section struct {
	Concrete manway.Concrete
	Width    manway.Length   // b, 1 in to 1000 ft
	Depth    manway.Length   // d, compression face to the steel's centre, 0.25 in to 20 ft
	Steel    manway.Area     // As within Width, a billionth to a tenth of Width times Depth
	Yield    manway.Pressure // fy, 24,000 to 100,000 psi; 0: not known, 40,000 psi is taken
}

// Flexure is the bending strength of a section and what led to it.
type Flexure struct {
	StressBlock manway.Length // a
	NeutralAxis manway.Length // c
	Strain      float64       // eps_t, of the steel when the concrete crushes
	Stress      manway.Pressure
	Phi         float64
	Nominal     manway.Moment // Mn
	Design      manway.Moment // phi Mn
}

// Validate returns the faults of s.
func (s Section) Validate() error {
	var faults manway.InputErrors
	if err := s.Concrete.Validate(); err != nil {
		faults.Under("Concrete", err)
	}
	const leastArea, mostArea = 0.25 * manway.SquareInch, 1000 * 20 * manway.SquareFoot
	manway.Within(&faults, "Width", s.Width, 1*manway.Inch, 1000*manway.Foot)
	manway.Within(&faults, "Depth", s.Depth, 0.25*manway.Inch, 20*manway.Foot)
	if len(faults) == 0 {
		manway.Within(&faults, "Steel", s.Steel, s.Width.Times(s.Depth)/1e9, s.Width.Times(s.Depth)/10)
	} else {
		manway.Within(&faults, "Steel", s.Steel, leastArea/1e9, mostArea/10)
	}
	if s.Yield != 0 {
		manway.Within(&faults, "Yield", s.Yield, 24000*manway.PSI, 100000*manway.PSI)
	}
	return faults.Err()
}

func (s Section) yield() manway.Pressure {
	if s.Yield == 0 {
		return manway.UsualSteelYield
	}
	return s.Yield
}

// Flexure is the strength in bending:
//
//	a  = As fs/(0.85 f'c b),  c = a/beta1,  eps_t = 0.003 (d - c)/c
//	Mn = As fs (d - a/2)
//
// with fs = fy where eps_t reaches fy/Es; else the steel stays elastic and c
// solves 0.85 f'c b beta1 c = As Es 0.003 (d - c)/c. Phi is 0.9 from
// eps_t = fy/Es + 0.003 (tension-controlled), 0.65 to fy/Es, and straight
// between. Source: ACI 318-19 22.2, 22.3.1, Table 21.2.2.
func (s Section) Flexure() (Flexure, error) {
	if err := s.Validate(); err != nil {
		return Flexure{}, err
	}
	return s.flexure(), nil
}

// flexure is Flexure of a section that was validated.
func (s Section) flexure() Flexure {
	m := of(s.Concrete)
	b, d := s.Width.In(manway.Inch), s.Depth.In(manway.Inch)
	as, fy, es := s.Steel.In(manway.SquareInch), s.yield().In(manway.PSI), SteelModulus.In(manway.PSI)
	beta := beta1(m.fc)
	block := 0.85 * m.fc * b // force per depth of stress block

	fs := fy
	a := as * fy / block // Eq. 22.2.2.4.1
	if c := a / beta; crushing*(d-c)/c < fy/es {
		// block beta c^2 + k c - k d = 0 with k = As Es 0.003
		k := as * es * crushing
		c = (-k + math.Sqrt(k*k+4*block*beta*k*d)) / (2 * block * beta)
		a, fs = beta*c, es*crushing*(d-c)/c
	}
	c := a / beta
	strain := crushing * (d - c) / c
	phi := 0.65 + 0.25*(strain-fy/es)/0.003 // Table 21.2.2
	phi = math.Min(PhiTension, math.Max(0.65, phi))
	mn := manway.Moment(as*fs*(d-a/2)) * manway.PoundForceInch
	return Flexure{
		StressBlock: manway.Length(a) * manway.Inch,
		NeutralAxis: manway.Length(c) * manway.Inch,
		Strain:      strain,
		Stress:      manway.Pressure(fs) * manway.PSI,
		Phi:         phi,
		Nominal:     mn,
		Design:      manway.Moment(phi) * mn,
	}
}

// RatioAtStrain is the steel ratio As/(b d) at which the steel has the given
// strain when the concrete crushes:
//
//	rho = 0.85 beta1 f'c/fy 0.003/(0.003 + strain)
//
// At strain fy/Es it is the balanced ratio. Strain 0.001 to 0.1. Source: the
// equilibrium of ACI 318-19 22.2.
func RatioAtStrain(c manway.Concrete, yield manway.Pressure, strain float64) (float64, error) {
	var faults manway.InputErrors
	faults.Under("Concrete", c.Validate())
	manway.Within(&faults, "Yield", yield, 24000*manway.PSI, 100000*manway.PSI)
	manway.Within(&faults, "Strain", strain, 0.001, 0.1)
	if len(faults) > 0 {
		return 0, faults
	}
	fc := of(c).fc
	return 0.85 * beta1(fc) * fc / yield.In(manway.PSI) * crushing / (crushing + strain), nil
}

// LeastBeamRatio is the least flexural steel of a beam over b d:
//
//	rho = max(3 sqrt(f'c), 200 psi)/fy
//
// Source: ACI 318-19 9.6.1.2.
func LeastBeamRatio(c manway.Concrete, yield manway.Pressure) (float64, error) {
	var faults manway.InputErrors
	faults.Under("Concrete", c.Validate())
	manway.Within(&faults, "Yield", yield, 24000*manway.PSI, 100000*manway.PSI)
	if len(faults) > 0 {
		return 0, faults
	}
	return math.Max(3*math.Sqrt(of(c).fc), 200) / yield.In(manway.PSI), nil
}

// LeastSlabRatio is the least flexural steel of a slab over its whole section
// b h, and its shrinkage and temperature steel, whatever the grade: 0.0018
// (ACI 318-19 7.6.1.1, 8.6.1.1, 24.4.3.2).
const LeastSlabRatio = 0.0018
