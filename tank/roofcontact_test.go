package tank

import (
	"math"
	"testing"

	"manway.example/manway"
)

// A roof of 60 by 240 in whose partition touches it in the middle is a beam over two
// spans of 32 in, from the middles of the bearings: 50 lb/ft2 of its own and 120 of
// soil bend it by q L2/8 = 151 lbf ft/ft over the partition, the top pulled. It
// may also not touch any more when it is loaded: then it spans 64 in, and q L2/8 =
// 604 pulls the underside.
func TestTouchingPartitionPullsTheTop(t *testing.T) {
	tk, err := New(Spec{
		Shape: Box{Length: 60 * in, Width: 240 * in, Height: 60 * in}, Wall: 4 * in, Roof: 4 * in, Floor: 4 * in,
		Partitions: []Partition{{At: 28 * in, Thickness: 4 * in}},
	})
	if err != nil {
		t.Fatal(err)
	}
	steel := Mesh(bar(0.375, 6, 0.75))
	c := RoofCase{
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI}, Steel: Steel{Inside: steel, Outside: steel}, Contact: []bool{true},
		Now: RoofLoad{Cover: 12 * in, Wetness: DrySoil}, Soil: manway.Soil{Moist: 120 * manway.PoundPerCubicFoot}, Wheels: []manway.Wheel{},
	}
	const q, span = 50 + 120.0, 32.0 / 12
	checks := roofOf(t, &tk, c).Loadings[0].Checks
	for name, want := range map[string]float64{
		"bending, top over a partition": q * span * span / 8,
		"bending, underside":            q * (2 * span) * (2 * span) / 8,
	} {
		if got := checkNamed(t, checks, name).Unfactored / float64(manway.PoundForceFootPerFoot); math.Abs(got/want-1) > 0.02 {
			t.Errorf("%s: %g lbf ft/ft, a beam has %g", name, got, want)
		}
	}
}
