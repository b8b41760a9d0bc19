package lid

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// The greater principal moment of Mr = 2 + 2 x 1.5 = 5, Mt = 1 + 2 x 0 = 1 and a
// twist of 2 x 0.75: 3 + sqrt(2^2 + 1.5^2) = 5.5, whatever the sign of all.
func TestPrincipalByHand(t *testing.T) {
	for _, sign := range []float64{1, -1} {
		got := principal(plate.Polar{Radial: 2 * sign, Tangential: sign}, plate.Polar{Radial: 1.5 * sign}, 0.75, 2)
		if !(math.Abs(got-5.5) <= 1e-12) {
			t.Errorf("%g, want 5.5", got)
		}
	}
}

// The rim of a lid of 20 in by 30 in on a hole of 18 in by 28 in is the mean of
// the two rectangles' round: 20 + 30 + 18 + 28 = 96 in; on a hole of 18 in square
// 86 in; of a disc of 24 in on a hole of 20 in pi x 22 in.
func TestRimRound(t *testing.T) {
	const in = 0.0254
	for _, c := range []struct {
		l    Lid
		s    Seat
		want float64
	}{
		{Lid{Shape: Slab, Length: 30 * in, Width: 20 * in, Thickness: 3 * in}, Seat{Opening: 18 * in, OpeningLong: 28 * in}, 96},
		{Lid{Shape: Slab, Length: 30 * in, Width: 20 * in, Thickness: 3 * in}, Seat{Opening: 18 * in}, 86},
		{Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in}, Seat{Opening: 20 * in}, 22 * math.Pi},
	} {
		if got := float64(c.l.rim(c.s).Around) / in; !(math.Abs(got-c.want) <= 1e-9) {
			t.Errorf("%+v: %g in round, want %g", c.s, got, c.want)
		}
	}
}

// Teams are reckoned for 1 to 6 people and up to 1,000 lb each.
func TestLimitsOfTeams(t *testing.T) {
	for _, c := range []struct {
		n     int
		each  manway.Mass
		taken bool
	}{{1, 0, true}, {6, 1000 * manway.Pound, true}, {6, 1001 * manway.Pound, false}, {7, manway.Pound, false}, {0, manway.Pound, false}, {1, -1, false}} {
		if _, ok := TeamByDoubling(c.n, c.each); ok != c.taken {
			t.Errorf("%d people of %v: %v", c.n, c.each, ok)
		}
	}
}

// Each check of bending has its own unfactored moment: a disc of 24 in and 3 in
// weighs 37.5 lb/ft2 and bends by q a^2 (3 + nu)/16 under itself, less than with a
// person on it.
func TestBendingUnfactored(t *testing.T) {
	b, err := Lid{Shape: Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch, Moisture: Dry}.Bend(BendCase{})
	if err != nil {
		t.Fatal(err)
	}
	own, person := b.Checks[0].Unfactored, b.Checks[1].Unfactored
	if !(own > 0 && own < person) || !(math.Abs(b.Checks[0].Demand/own-1.4) < 1e-9) {
		t.Errorf("own weight %g of demand %g, a person %g", own, b.Checks[0].Demand, person)
	}
}

// Property (bounded): a slab twice as long as wide bends across its short side as a
// strip of 1 ft would, q s^2/8, or less, and more than half of that: 150 lb/ft3 of
// 3 in over 24 in are 37.5 x 2^2/8 = 18.75 lbf ft/ft.
func TestSlabBendsAsAStripAtMost(t *testing.T) {
	b, err := Lid{Shape: Slab, Length: 48 * manway.Inch, Width: 24 * manway.Inch, Thickness: 3 * manway.Inch, Moisture: Dry,
		Concrete: manway.Concrete{Density: 150 * manway.PoundPerCubicFoot}}.Bend(BendCase{})
	if err != nil {
		t.Fatal(err)
	}
	if own := float64(b.OwnMoment / manway.PoundForceFootPerFoot); !(own < 18.75 && own > 18.75/2) {
		t.Errorf("own weight bends it by %g lbf ft/ft, a strip by 18.75", own)
	}
}
