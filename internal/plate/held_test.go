package plate

import "testing"

// A side of the cell from (1, 1) to (2, 2) crosses no slab when a round opening
// covers both of its ends; the three other sides still do.
func TestJoinedRoundAnOpening(t *testing.T) {
	sides := map[[2]int]round{{-1, 0}: {x: 1, y: 1.5}, {1, 0}: {x: 2, y: 1.5}, {0, -1}: {x: 1.5, y: 1}, {0, 1}: {x: 1.5, y: 2}}
	for covered, o := range sides {
		for _, c := range []struct {
			radius float64
			open   bool
		}{{0.49, true}, {0.51, false}} {
			o.r = c.radius
			var s Solver
			s.x.lines, s.y.lines = []float64{0, 1, 2, 3}, []float64{0, 1, 2, 3}
			s.rounds = []round{o}
			for d := range sides {
				if got, want := s.joined(1, 1, d), c.open || d != covered; got != want {
					t.Errorf("opening of radius %v on side %v: slab across side %v is %v, want %v", c.radius, covered, d, got, want)
				}
			}
		}
	}
}
