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
	var in Surfaces
	if err := s.Surfaces(&in, Point{1.6, 0.7}); err != nil {
		t.Fatal(err)
	}
	places := []Point{{1.2, 0.4}, {2.0, 1.1}, {0.2, 0.2}}
	var held []Moment
	for _, p := range places {
		got := in.At(p)
		held = append(held, got)
		for k, got := range [3]float64{got.X, got.Y, got.XY} {
			want, err := in.of[k].Under([]Load{Patch{p.X, p.Y, 0.01, 0.01, 1}})
			if err != nil {
				t.Fatal(err)
			}
			if !(math.Abs(got-want) <= 1e-4*math.Abs(want)+1e-6) {
				t.Errorf("moment %d, %v: %g, under a small patch %g", k, p, got, want)
			}
		}
	}
	if in.At(Point{0.5, 0.7}) != (Moment{}) || in.At(Point{-1, 0}) != (Moment{}) {
		t.Error("a surface off the slab")
	}
	// On bearings: the same, as if they held the slab down.
	slab.BearingOnly = true
	if err := s.Factor(&slab, Mesh{}); err != nil {
		t.Fatal(err)
	}
	if err := s.Surfaces(&in, Point{1.6, 0.7}); err != nil {
		t.Fatal(err)
	}
	for k, p := range places {
		got := in.At(p)
		for k, d := range [3]float64{got.X - held[k].X, got.Y - held[k].Y, got.XY - held[k].XY} {
			if !(math.Abs(d) <= 1e-9) {
				t.Errorf("moment %d, %v: off by %g on bearings", k, p, d)
			}
		}
	}
}
