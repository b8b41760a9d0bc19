package concrete

import (
	"math"

	"manway.example/manway"
)

// SteelModulus is Es of bars and wire (ACI 318-19 20.2.2.2).
const SteelModulus manway.Pressure = 29e6 * manway.PSI

// crushing is the strain at which concrete is taken to crush (22.2.2.1).
const crushing = 0.003

// LeastStrength is the least f'c of structural concrete (Table 19.2.1.1).
const LeastStrength = manway.LeastConcreteStrength

// material is concrete with nothing left unknown, in the units of the code.
type material struct {
	fc     float64 // f'c, psi
	lambda float64 // 19.2.4
}

// of fills what is not known of c and gives it in the units of the code.
func of(c manway.Concrete) material {
	c, _ = c.Filled()
	return material{c.Strength.In(manway.PSI), lightness(c.Density)}
}

// root is lambda sqrt(f'c) in psi.
func (m material) root() float64 { return m.lambda * math.Sqrt(m.fc) }

// rootCapped is lambda sqrt(f'c) with sqrt(f'c) at most 100 psi, as shear and
// anchorage want it (22.5.3.1, 22.6.3.1, 17.3.1).
func (m material) rootCapped() float64 { return m.lambda * math.Min(math.Sqrt(m.fc), 100) }

// lightness is lambda by the concrete's density:
//
//	lambda = 0.75 to 100 lb/ft3, 0.0075 w to 133 lb/ft3, 1 above
//
// Source: ACI 318-19 Table 19.2.4.1(a).
func lightness(w manway.Density) float64 {
	return math.Min(1, math.Max(0.75, 0.0075*w.In(manway.PoundPerCubicFoot)))
}

// beta1 is the depth of the stress block over the depth of the neutral axis
// (ACI 318-19 Table 22.2.2.4.3): 0.85 to 4,000 psi, down by 0.05 for each
// 1,000 psi more, 0.65 from 8,000 psi.
func beta1(fc float64) float64 {
	return math.Min(0.85, math.Max(0.65, 0.85-0.05*(fc-4000)/1000))
}

// ModulusOfRupture is the stress at which plain concrete cracks in bending:
//
//	fr = 7.5 lambda sqrt(f'c)  in psi
//
// Concrete that is not known is taken as [manway.Concrete.Filled] says.
// Source: ACI 318-19 19.2.3.1.
func ModulusOfRupture(c manway.Concrete) (manway.Pressure, error) {
	if err := c.Validate(); err != nil {
		return 0, under("Concrete", err)
	}
	return manway.Pressure(7.5*of(c).root()) * manway.PSI, nil
}

// ElasticModulus is Ec:
//
//	Ec = 33 w^1.5 sqrt(f'c)   where the density w is given, 90 to 160 lb/ft3
//	Ec = 57,000 sqrt(f'c)     else, concrete of normal weight
//
// in psi, w in lb/ft3. Source: ACI 318-19 19.2.2.1.
func ElasticModulus(c manway.Concrete) (manway.Pressure, error) {
	if err := c.Validate(); err != nil {
		return 0, under("Concrete", err)
	}
	root := math.Sqrt(of(c).fc)
	if w := c.Density.In(manway.PoundPerCubicFoot); w > 0 && w <= 160 {
		return manway.Pressure(33*math.Pow(w, 1.5)*root) * manway.PSI, nil
	}
	return manway.Pressure(57000*root) * manway.PSI, nil
}

// under is err with its fields put under the name of the part they are of.
func under(part string, err error) error {
	var faults manway.InputErrors
	faults.Under(part, err)
	return faults.Err()
}
