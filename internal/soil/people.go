package soil

import (
	"math"

	"manway.example/manway"
)

// Crowd is the pressure of people who stand close: yards and terraces open to
// pedestrians, 100 lb/ft2 (ASCE 7-16 Table 4.3-1; remembered).
const Crowd manway.Pressure = 100 * manway.PSF

// FootPatch is the side of the square on which one standing person presses:
// two shoes side by side, common practice.
const FootPatch manway.Length = 8 * manway.Inch

// ConcentratedPatch is the side of the square over which a concentrated live
// load is spread where nothing else is said (ASCE 7-05 4.3).
const ConcentratedPatch manway.Length = 2.5 * manway.Foot

// HoleCover is what a cover over a hole must carry without failure: twice the
// people, equipment and material that may be on it at once, or twice the
// largest axle where vehicles go. Each mass 0 to 1e6 lb. Source: 29 CFR
// 1926.502(i)(1) and (2).
func HoleCover(people, gear manway.Mass, axle manway.Force) (manway.Force, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "People", people, 0, 1e6*manway.Pound)
	manway.Within(&faults, "Gear", gear, 0, 1e6*manway.Pound)
	manway.Within(&faults, "Axle", axle, 0, 1e6*manway.PoundForce)
	if len(faults) > 0 {
		return 0, faults
	}
	return 2 * max((people+gear).Weight(), axle), nil
}

// Step is the factor on a standing person's weight by which a hard step or a
// hop presses: 2, the force of a load applied at once to an elastic body that
// has not moved yet (energy: P w = k w^2/2).
const Step = 2.0

// Fall is the factor on a falling weight by which it presses at the lowest
// point of an elastic slab that gives w under it standing:
//
//	n = 1 + math.Sqrt(1 + 2 h/w)
//
// from a height h of 0 to 20 ft, w above 0 and below 1 ft. It takes all the
// energy into the slab and none into the body, so it is an upper bound. At
// h = 0 it is 2. Source: energy, P (h + n w) = n P n w/2.
func Fall(height, standing manway.Length) (float64, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Height", height, 0, 20*manway.Foot)
	manway.Within(&faults, "Standing", standing, 1e-9*manway.Metre, 1*manway.Foot)
	if len(faults) > 0 {
		return 0, faults
	}
	return 1 + math.Sqrt(1+2*float64(height/standing)), nil
}
