package plate

import (
	"math"
	"testing"
)

// The largest deflection is found where no place of the grid is: of a beam
// clamped at one end and supported at the other,
//
//	EI w(s) = q L^4 (3 s^2 - 5 s^3 + 2 s^4)/48,  s = (15 - sqrt 33)/16 L
func TestTopBetweenTheGrid(t *testing.T) {
	slab := beamStrip(3)
	slab.Edges[1] = Clamped
	_, f := solve(t, slab, Mesh{Cells: [2]int{16, 4}}, Uniform{1000})
	s := 1 - (15-math.Sqrt(33))/16 // from the support
	c := 1 - s
	want := 1000 * math.Pow(slab.Length, 4) * (3*c*c - 5*c*c*c + 2*c*c*c*c) / 48 / rigidity(slab)
	got := f.Extremes().W
	near(t, "deflection", got.Value, want, 1e-5)
	if x := min(got.At.X, slab.Length-got.At.X); !(math.Abs(x-min(s, c)*slab.Length) <= 0.01) {
		t.Errorf("at x = %v, want %v from an end", got.At.X, min(s, c)*slab.Length)
	}
}
