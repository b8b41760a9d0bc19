package hydraulics

import (
	"math"
	"testing"
)

// Theta - sin theta by more terms of the series than the code has, on both sides
// of the place where the code changes over: x^3/6 - x^5/120 + x^7/5040 -
// x^9/362880 + x^11/39916800.
func TestThetaLessSine(t *testing.T) {
	for _, x := range []float64{1e-6, 0.01, 0.0999, 0.1001, 0.3} {
		want := math.Pow(x, 3)/6 - math.Pow(x, 5)/120 + math.Pow(x, 7)/5040 - math.Pow(x, 9)/362880 + math.Pow(x, 11)/39916800
		if got := thetaLessSine(x); !(math.Abs(got-want) <= 1e-11*want) {
			t.Errorf("%g: %.17g, want %.17g", x, got, want)
		}
	}
	// A half circle of diameter 1: area pi/8, perimeter pi/2, top 1, depth 1/2; a
	// quarter of the depth is theta 2 pi/3: area (2 pi/3 - sin 120)/8, top sin 60.
	for _, c := range []struct {
		depth float64
		want  segment
	}{
		{0.5, segment{math.Pi / 8, math.Pi / 2, 1, 0.5}},
		{0.25, segment{(2*math.Pi/3 - math.Sqrt(3)/2) / 8, math.Pi / 3, math.Sqrt(3) / 2, 0.25}},
		{1, segment{math.Pi / 4, math.Pi, 0, 1}}, {1.5, segment{math.Pi / 4, math.Pi, 0, 1}}, {-1, segment{}},
	} {
		got := segmentAt(thetaAt(c.depth))
		for _, d := range []float64{got.area - c.want.area, got.perimeter - c.want.perimeter, got.top - c.want.top, got.depth - c.want.depth} {
			if !(math.Abs(d) <= 1e-12) {
				t.Errorf("depth %g: %+v, want %+v", c.depth, got, c.want)
			}
		}
	}
}
