package riser

import (
	"math"
	"testing"

	"manway.example/manway"
)

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*max(math.Abs(want), 1e-300)) && got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// Property (invariant): the answer is one for the same lengths in inches and in millimetres.
func TestOneAnswerInBothSystems(t *testing.T) {
	us := must(DigOf(Pit{Length: 30 * manway.Inch, Working: 12 * manway.Inch, Depth: 40 * manway.Inch, Ground: 5 * manway.Degree}))
	si := must(DigOf(Pit{Length: 762 * manway.Millimetre, Working: 304.8 * manway.Millimetre, Depth: 1016 * manway.Millimetre, Ground: 5 * manway.Degree}))
	near(t, "hole", float64(us.Hole), float64(si.Hole), 1e-12)
	near(t, "spoil", float64(us.Spoil), float64(si.Spoil), 1e-12)
	a := must(LeakOf(OpenJoint{Length: 90 * manway.Inch, Gap: manway.Inch / 8, Wall: 3 * manway.Inch, Depth: 30 * manway.Inch}))
	b := must(LeakOf(OpenJoint{Length: 2286 * manway.Millimetre, Gap: 3.175 * manway.Millimetre, Wall: 76.2 * manway.Millimetre, Depth: 762 * manway.Millimetre}))
	near(t, "orifice", float64(a.Orifice), float64(b.Orifice), 1e-12)
	near(t, "slot", float64(a.Slot), float64(b.Slot), 1e-12)
}
