package plate

import (
	"errors"
	"math"
	"testing"
)

// checkContact verifies that no bearing pulls and that the slab nowhere sinks
// into one.
func checkContact(t *testing.T, s *Solver, f *Field) {
	t.Helper()
	most, deepest := 0.0, 0.0
	for _, b := range s.bearings {
		most = math.Max(most, math.Abs(f.reaction[4*b.node]))
		deepest = math.Max(deepest, math.Abs(f.u[4*b.node]))
	}
	deepest = math.Max(deepest, f.Extremes().W.Value)
	for k, b := range s.bearings {
		x, y := s.place(int(b.node))
		if r := f.reaction[4*b.node]; s.state[4*b.node] == contact && r < -1e-6*most {
			t.Errorf("the bearing at %.3f %.3f pulls with %g (largest force %g)", x, y, r, most)
		}
		if w := f.u[4*b.node]; w > 1e-6*deepest {
			t.Errorf("the slab is %g in the bearing at %.3f %.3f, open %v", w, x, y, s.open[k])
		}
	}
}

// A uniformly loaded square lifts its corners off bearing-only edges. That lets
// it sink a little more than if they were held down.
func TestCornersLift(t *testing.T) {
	slab := Slab{Length: 1, Width: 1, Thickness: 0.02, E: 12 * (1 - 0.09) / 8e-6, Nu: 0.3, BearingOnly: true}
	var last float64
	for _, n := range []int{8, 16, 32} {
		s, f := solve(t, slab, Mesh{Cells: [2]int{n, n}}, Uniform{1})
		checkContact(t, s, f)
		if f.Uplift.Corners != [4]bool{true, true, true, true} || !(f.Uplift.Most > 0) {
			t.Errorf("%d cells: uplift %+v", n, f.Uplift)
		}
		v, _ := f.At(0.5, 0.5)
		if !(v.W > 1.002*0.0040624 && v.W < 1.2*0.0040624) {
			t.Errorf("%d cells: w = %g", n, v.W)
		}
		if last > 0 {
			near(t, "w on the finer mesh", v.W, last, 0.01)
		}
		last = v.W
	}
}

// Loads that press every bearing give the bilateral answer exactly.
func TestBearingsInFullContact(t *testing.T) {
	slab := beamStrip(4)
	slab.Lines = []Line{{X, 2}}
	_, f := solve(t, slab, Mesh{}, Uniform{1e4})
	slab.BearingOnly = true
	s, g := solve(t, slab, Mesh{}, Uniform{1e4})
	checkContact(t, s, g)
	if g.Uplift != (Uplift{}) {
		t.Errorf("uplift %+v", g.Uplift)
	}
	a, _ := f.At(1, 0.3)
	b, _ := g.At(1, 0.3)
	near(t, "w", b.W, a.W, 1e-9)
	near(t, "Mx", b.M.X, a.M.X, 1e-9)
}

// Load on one of two spans lifts the far end: what is left is a simple beam whose
// free end rises along its end slope.
func TestFarEndLifts(t *testing.T) {
	slab := beamStrip(3)
	slab.Lines = []Line{{X, 2}}
	slab.BearingOnly = true
	p := 7e3
	s, f := solve(t, slab, Mesh{}, Segment{Point{1, 0}, Point{1, 0.7}, p})
	checkContact(t, s, f)
	d := rigidity(slab)
	v, _ := f.At(1, 0.35)
	near(t, "w under the load", v.W, p*8/(48*d), 5e-5) // the load is not on a line of the grid
	end, _ := f.At(3, 0.35)
	near(t, "rise of the end", -end.W, p*4/(16*d), 5e-5) // end slope p l^2/16 times 1 m
	near(t, "Uplift.Most", f.Uplift.Most, -end.W, 1e-3)
	near(t, "Uplift.Length", f.Uplift.Length, 0.7, 1e-9)
	var r Reactions
	f.Reactions(&r)
	near(t, "line", r.Lines[0], p*0.7/2, 1e-6)
	if r.Edges[SideX1] != 0 {
		t.Errorf("the lifted end carries %g", r.Edges[SideX1])
	}
}

func TestTipsOver(t *testing.T) {
	slab := beamStrip(3)
	slab.Edges = [4]Edge{Free, Free, Free, Free}
	slab.Lines = []Line{{X, 1}, {X, 2}}
	slab.BearingOnly = true
	var s Solver
	if err := s.Factor(&slab, Mesh{}); err != nil {
		t.Fatal(err)
	}
	var f Field
	for _, loads := range [][]Load{
		{Patch{2.8, 0.35, 0.2, 0.2, 1e3}},
		{Uniform{-10}},
	} {
		if err := s.Solve(&f, loads); !errors.Is(err, ErrTips) {
			t.Errorf("%v: got %v, want ErrTips", loads, err)
		}
	}
	// Its own weight keeps it down.
	if err := s.Solve(&f, []Load{Patch{2.8, 0.35, 0.2, 0.2, 1e3}, Uniform{3e3}}); err != nil {
		t.Error(err)
	}
	checkContact(t, &s, &f)
}

// Wheels all over a slab with openings: the search must settle each time.
func TestContactSettlesEverywhere(t *testing.T) {
	slab, _ := roof()
	slab.Openings = append(slab.Openings, RoundOpening(80*inch, 30*inch, 20*inch))
	slab.BearingOnly = true
	var s Solver
	if err := s.Factor(&slab, Mesh{}); err != nil {
		t.Fatal(err)
	}
	var f Field
	for i := range 12 {
		for j := range 6 {
			p := Patch{(float64(i) + 0.4) / 12 * slab.Length, (float64(j) + 0.6) / 6 * slab.Width, 20 * inch, 10 * inch, 70e3}
			if p.X > 12*inch && p.X < 36*inch && p.Y > 18*inch && p.Y < 42*inch ||
				math.Hypot(p.X-80*inch, p.Y-30*inch) < 10*inch {
				continue
			}
			if err := s.Solve(&f, []Load{p, Uniform{2e3}}); err != nil {
				t.Fatalf("%v: %v", p, err)
			}
			checkContact(t, &s, &f)
			near(t, "reaction", f.Reaction, f.Load, 1e-7)
		}
	}
}
