package lid

import (
	"math"

	"manway.example/manway"
)

// HoleCoverLoad is what a cover over a hole in a place of work may carry when
// it is known to fail under a load: half of it, since it must hold twice the
// people, equipment and material on it (29 CFR 1926.502(i)(2)).
//
// Source: 29 CFR 1926.502(i)(2).
func HoleCoverLoad(failure manway.Force) (manway.Force, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Failure", failure, 0, 1000*manway.Kip)
	return failure / 2, faults.Err()
}

// SidePull is a taut rope pulled sideways at the middle of its span, a way to
// a large first pull along the ground:
//
//	T = F L/(4 d)
//
// for a side force F that moves the middle by d on a span L, small against it.
type SidePull struct {
	Side  manway.Force  `json:"side"`  // F, 0 to 500 lbf
	Span  manway.Length `json:"span"`  // L, 1 to 100 ft
	Moved manway.Length `json:"moved"` // d, at most L/10
}

// Tension is the pull in the rope.
//
// Source: statics.
func (p SidePull) Tension() (manway.Force, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Side", p.Side, 0, 500*manway.PoundForce)
	manway.Within(&faults, "Span", p.Span, 1*manway.Foot, 100*manway.Foot)
	if !(p.Moved > 0 && p.Moved <= p.Span/10) {
		faults.Add("Moved", text(p.Moved), "above 0, at most a tenth of the span")
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	t := float64(p.Side) * float64(p.Span) / (4 * float64(p.Moved))
	if math.IsInf(t, 0) {
		faults.Add("Moved", text(p.Moved), "more, for a pull that can be reckoned")
		return 0, faults
	}
	return manway.Force(t), nil
}
