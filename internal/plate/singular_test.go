package plate

import (
	"math"
	"slices"
	"testing"
)

// A support meets the rim of a round opening where its line cuts the circle. A
// radius of 0.5 with the line 0.3 or 0.4 from the middle makes triangles of 3, 4
// and 5: the line is cut 0.4 or 0.3 to both sides.
func TestSupportsMeetRoundRims(t *testing.T) {
	for _, c := range []struct {
		name string
		slab Slab
		want []Point
	}{
		{"line across", Slab{Length: 3, Width: 2, Openings: []Opening{RoundOpening(1, 0.9, 1)}, Lines: []Line{{Axis: X, At: 1.3}}}, []Point{{1.3, 0.5}, {1.3, 1.3}}},
		{"line along", Slab{Length: 3, Width: 2, Openings: []Opening{RoundOpening(1, 0.9, 1)}, Lines: []Line{{Axis: Y, At: 0.5}}}, []Point{{0.7, 0.5}, {1.3, 0.5}}},
		{"line beside", Slab{Length: 3, Width: 2, Openings: []Opening{RoundOpening(1, 0.9, 1)}, Lines: []Line{{Axis: X, At: 1.6}, {Axis: Y, At: 0.3}}}, nil},
		{"edge", Slab{Length: 3, Width: 2, Openings: []Opening{RoundOpening(1.5, 1.7, 1)}}, []Point{{1.1, 2}, {1.9, 2}}},
		{"free edge", Slab{Length: 3, Width: 2, Edges: [4]Edge{SideY1: Free}, Openings: []Opening{RoundOpening(1.5, 1.7, 1)}}, nil},
	} {
		s := Solver{slab: c.slab}
		s.findSingular()
		if len(s.singular) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, s.singular, c.want)
		}
		for _, p := range c.want {
			if !slices.ContainsFunc(s.singular, func(q Point) bool { return math.Hypot(p.X-q.X, p.Y-q.Y) < 1e-12 }) {
				t.Errorf("%s: %v, want %v among them", c.name, s.singular, p)
			}
		}
	}
}
