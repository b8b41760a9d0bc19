package plate

import (
	"math"
	"testing"
)

// Property (symmetric): the points that are looked at lie on every edge of the slab
// and every rim of a rectangular opening, as many on one side as on the other,
// and none in the opening.
func TestScanSeesEveryRim(t *testing.T) {
	slab := Slab{Length: 3, Width: 2, Thickness: 0.1, E: 25e9, Nu: 0.2, Openings: []Opening{{X: 1.1, Y: 0.75, Length: 0.8, Width: 0.5}}}
	var s Solver
	if err := s.Factor(&slab, Mesh{}); err != nil {
		t.Fatal(err)
	}
	var f Field
	if err := s.Solve(&f, []Load{Uniform{Pressure: 1e4}}); err != nil {
		t.Fatal(err)
	}
	on := map[string]int{}
	f.Scan(func(p Point, _ Moment) {
		count := func(name string, off float64, along bool) {
			if math.Abs(off) < 1e-9 && along {
				on[name]++
			}
		}
		inX, inY := p.X > 1.1-1e-9 && p.X < 1.9+1e-9, p.Y > 0.75-1e-9 && p.Y < 1.25+1e-9
		count("edge at 0", p.X, true)
		count("edge at length", p.X-3, true)
		count("side at 0", p.Y, true)
		count("side at width", p.Y-2, true)
		count("rim towards 0", p.X-1.1, inY)
		count("rim towards length", p.X-1.9, inY)
		count("rim below", p.Y-0.75, inX)
		count("rim above", p.Y-1.25, inX)
		if p.X > 1.1+1e-9 && p.X < 1.9-1e-9 && p.Y > 0.75+1e-9 && p.Y < 1.25-1e-9 {
			t.Errorf("%v is in the opening", p)
		}
	})
	for _, pair := range [][2]string{{"edge at 0", "edge at length"}, {"side at 0", "side at width"}, {"rim towards 0", "rim towards length"}, {"rim below", "rim above"}} {
		if a, b := on[pair[0]], on[pair[1]]; a != b || a < 3 {
			t.Errorf("%d points on the %s, %d on the %s", a, pair[0], b, pair[1])
		}
	}
}

// Property (symmetric): with a round opening in the middle as many looks fall on a
// point as on its mirror images, also where whole cells stand between the rim and
// the lines that frame it.
func TestScanIsSymmetric(t *testing.T) {
	slab := Slab{Length: 3, Width: 2, Thickness: 0.1, E: 25e9, Nu: 0.2, Openings: []Opening{RoundOpening(1.5, 1, 1.2)}}
	var s Solver
	if err := s.Factor(&slab, Mesh{Scale: 0.7}); err != nil {
		t.Fatal(err)
	}
	var f Field
	if err := s.Solve(&f, []Load{Uniform{Pressure: 1e4}}); err != nil {
		t.Fatal(err)
	}
	looks := map[[2]int]int{}
	f.Scan(func(p Point, _ Moment) {
		looks[[2]int{int(math.Round(1e6 * (p.X - 1.5))), int(math.Round(1e6 * (p.Y - 1)))}]++
	})
	for at, n := range looks {
		if x, y := looks[[2]int{-at[0], at[1]}], looks[[2]int{at[0], -at[1]}]; x != n || y != n {
			t.Errorf("%d looks at %v um from the middle, %d and %d at its mirror images", n, at, x, y)
		}
	}
}
