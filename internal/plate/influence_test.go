package plate

import (
	"errors"
	"math"
	"testing"
)

// The influence surface gives what solving gives.
func TestInfluenceIsReciprocal(t *testing.T) {
	slab, loads := uneven()
	s, f := solve(t, slab, Mesh{}, loads...)
	var in Influence
	for _, p := range []Point{{0.15, 1.2}, {1.31, 1.1}, {1.05, 0.8}, {2.0, 0.4}, {0.95, 0.95}} {
		v, ok := f.At(p.X, p.Y)
		if !ok {
			t.Fatalf("%v is off the slab", p)
		}
		for q, want := range []float64{v.W, v.M.X, v.M.Y, v.M.XY} {
			if err := s.Influence(&in, Quantity(q), p); err != nil {
				t.Fatal(err)
			}
			got, err := in.Under(loads)
			if err != nil {
				t.Fatal(err)
			}
			if !(math.Abs(got-want) <= 1e-6*math.Abs(v.M.X)) && q > 0 || q == 0 && !(math.Abs(got-want) <= 1e-8*math.Abs(want)) {
				t.Errorf("quantity %d at %v: %.10g, want %.10g", q, p, got, want)
			}
		}
	}
	checkFault(t, s.Influence(&in, MomentX, Point{0.5, 0.6}), "At.X")
	slab.BearingOnly = true
	if err := s.Factor(&slab, Mesh{}); err != nil {
		t.Fatal(err)
	}
	if err := s.Influence(&in, MomentX, Point{0.1, 0.1}); !errors.Is(err, ErrOneWay) {
		t.Errorf("got %v", err)
	}
}

func TestCombineIsSuperposition(t *testing.T) {
	slab, loads := uneven()
	s, dead := solve(t, slab, Mesh{}, loads[:2]...)
	var live, sum, direct Field
	if err := s.Solve(&live, loads[2:3]); err != nil {
		t.Fatal(err)
	}
	if err := sum.Combine(Scaled{1.2, dead}, Scaled{1.6, &live}); err != nil {
		t.Fatal(err)
	}
	wheel := loads[2].(Patch)
	wheel.Force *= 1.6
	if err := s.Solve(&direct, []Load{Uniform{1.2 * 5e3}, Liquid{1.1, 1.2 * 9810}, wheel}); err != nil {
		t.Fatal(err)
	}
	a, _ := sum.At(0.6, 1.2)
	b, _ := direct.At(0.6, 1.2)
	near(t, "w", a.W, b.W, 1e-9)
	near(t, "Mx", a.M.X, b.M.X, 1e-9)
	near(t, "load", sum.Load, direct.Load, 1e-12)
	near(t, "reaction", sum.Reaction, direct.Reaction, 1e-9)
}

// A factor has to be of some size, and a base of the same Solver.
func TestFactorsAreBounded(t *testing.T) {
	slab, loads := uneven()
	s, one := solve(t, slab, Mesh{}, loads...)
	var sum Field
	for _, factor := range []float64{-largest, largest} {
		if err := sum.Combine(Scaled{factor, one}); err != nil {
			t.Error(err)
		}
		checkFault(t, sum.Combine(Scaled{2 * factor, one}), "Parts")
		if err := s.SolveOnto(&sum, Scaled{factor, one}, loads); err != nil {
			t.Error(err)
		}
		checkFault(t, s.SolveOnto(&sum, Scaled{2 * factor, one}, loads), "Base")
	}
	checkFault(t, sum.Combine(Scaled{math.NaN(), one}), "Parts")
}

func TestMomentDirections(t *testing.T) {
	first, second, angle := Moment{3, 1, 1}.Principal()
	near(t, "first", first, 2+math.Sqrt2, 1e-15)
	near(t, "second", second, 2-math.Sqrt2, 1e-14)
	near(t, "angle", angle, math.Pi/8, 1e-15)
	// The four cases of Wood and Armer, by their formulas.
	for _, c := range []struct {
		m           Moment
		bottom, top [2]float64
	}{
		{Moment{10, 5, 3}, [2]float64{13, 8}, [2]float64{0, 0}},
		{Moment{-10, -5, -3}, [2]float64{0, 0}, [2]float64{-13, -8}},
		{Moment{10, -5, 3}, [2]float64{10.0 + 9.0/5, 0}, [2]float64{0, -5 - 9.0/10}},
		{Moment{-5, 10, 3}, [2]float64{0, 10.0 + 9.0/5}, [2]float64{-5 - 9.0/10, 0}},
		{Moment{2, 1, -3}, [2]float64{5, 4}, [2]float64{-1, -2}},
	} {
		bottom, top := c.m.WoodArmer()
		if bottom != c.bottom || top != c.top {
			t.Errorf("%v: %v, %v; want %v, %v", c.m, bottom, top, c.bottom, c.top)
		}
	}
}
