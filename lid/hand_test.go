package lid

import (
	"math"
	"testing"

	"manway.example/manway/internal/plate"
)

// The greater principal moment of Mr = 2 + 2 x 1.5 = 5, Mt = 1 + 2 x 0 = 1 and a
// twist of 2 x 0.75: 3 + sqrt(2^2 + 1.5^2) = 5.5, whatever the sign of all.
func TestPrincipalByHand(t *testing.T) {
	for _, sign := range []float64{1, -1} {
		got := principal(plate.Polar{Radial: 2 * sign, Tangential: sign}, plate.Polar{Radial: 1.5 * sign}, 0.75, 2)
		if math.Abs(got-5.5) > 1e-12 {
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
		if got := float64(c.l.rim(c.s).Around) / in; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %g in round, want %g", c.s, got, c.want)
		}
	}
}
