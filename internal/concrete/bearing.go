package concrete

import (
	"math"

	"manway.example/manway"
)

// PhiBearing is phi of bearing (ACI 318-19 Table 21.2.1).
const PhiBearing = 0.65

// Bearing is a load pressing on part of a concrete surface.
type Bearing struct {
	Concrete manway.Concrete
	Loaded   manway.Area // A1
	Support  manway.Area // A2, the like and concentric area below it, A1 or more; 0: A1
}

// BearingStrength is what the surface carries.
type BearingStrength struct {
	Factor  float64 // sqrt(A2/A1), at most 2
	Phi     float64
	Nominal manway.Force
	Design  manway.Force
}

// Strength is
//
//	Bn = 0.85 f'c A1 sqrt(A2/A1), sqrt(A2/A1) at most 2
//
// Source: ACI 318-19 Table 22.8.3.2.
func (b Bearing) Strength() (BearingStrength, error) {
	var faults manway.InputErrors
	if err := b.Concrete.Validate(); err != nil {
		faults.Under("Concrete", err)
	}
	manway.Within(&faults, "Loaded", b.Loaded, 1e-3*manway.SquareInch, 1e6*manway.SquareFoot)
	if b.Support == 0 {
		b.Support = b.Loaded
	}
	manway.Within(&faults, "Support", b.Support, b.Loaded, 1e9*manway.SquareFoot)
	if len(faults) > 0 {
		return BearingStrength{}, faults
	}
	factor := math.Min(2, math.Sqrt(float64(b.Support)/float64(b.Loaded)))
	bn := (manway.Pressure(0.85*of(b.Concrete).fc) * manway.PSI).Times(b.Loaded) * manway.Force(factor)
	return BearingStrength{factor, PhiBearing, bn, PhiBearing * bn}, nil
}
