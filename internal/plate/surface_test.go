package plate

import (
	"math"
	"testing"
)

// The ordinate of a surface is what a small patch there makes.
func TestSurfaceAt(t *testing.T) {
	slab := Slab{Length: 2.4, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2, Openings: []Opening{RectOpening(0.3, 0.45, 0.6, 0.6)}}
	var s Solver
	if err := s.Factor(&slab, Mesh{}); err != nil {
		t.Fatal(err)
	}
	var in Influence
	if err := s.Influence(&in, MomentX, Point{1.6, 0.7}); err != nil {
		t.Fatal(err)
	}
	for _, p := range []Point{{1.2, 0.4}, {2.0, 1.1}, {0.2, 0.2}} {
		want, err := in.Under([]Load{Patch{p.X, p.Y, 0.01, 0.01, 1}})
		if err != nil {
			t.Fatal(err)
		}
		if got := in.At(p); math.Abs(got-want) > 1e-4*math.Abs(want)+1e-6 {
			t.Errorf("%v: %g, under a small patch %g", p, got, want)
		}
	}
	if in.At(Point{0.5, 0.7}) != 0 || in.At(Point{-1, 0}) != 0 {
		t.Error("a surface off the slab")
	}
}
