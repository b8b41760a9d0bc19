package plate

import "testing"

// A Study, a Solver and a Field that have been used once do not allocate again.
func TestUsedAgainDoesNotAllocate(t *testing.T) {
	slab, cases := roof()
	var st Study
	var s Solver
	var f, sum Field
	var in Influence
	var r Reactions
	if err := s.Factor(&slab, Mesh{}); err != nil {
		t.Fatal(err)
	}
	lid := unitDisc(0.2, false)
	ring := Annulus{Outer: 1, Inner: 0.3, Thickness: 1, E: 1, Nu: 0.2, OuterRim: RimSimple}
	parts := []Scaled{{1.2, &f}, {1.6, &f}}
	for name, run := range map[string]func() error{
		"Study.Run":        func() error { return st.Run(&slab, cases) },
		"Solver.Factor":    func() error { return s.Factor(&slab, Mesh{}) },
		"Solver.Solve":     func() error { return s.Solve(&f, cases[1]) },
		"Solver.Influence": func() error { return s.Influence(&in, MomentX, Point{1.2, 0.5}) },
		"Influence.Under":  func() error { return second(in.Under(cases[1])) },
		"Field.Combine": func() error {
			if err := s.Solve(&f, cases[1]); err != nil {
				return err
			}
			return sum.Combine(parts...)
		},
		"Field.At": func() error { f.At(1, 0.3); return nil },
		"Field.Extremes and Reactions": func() error {
			f.Extremes()
			f.Reactions(&r)
			return nil
		},
		"Disc.Uniform":    func() error { return second(lid.Uniform(1, 0.5)) },
		"Disc.Concentric": func() error { return second(lid.Concentric(1, 0.2, 0.5)) },
		"Disc.Patch":      func() error { return second(lid.Patch(Patch{0.2, 0.1, 0.3, 0.2, 1}, Point{0.3, 0.3})) },
		"Annulus.At":      func() error { return second(ring.At(AnnularLoad{Pressure: 1}, 0.5)) },
	} {
		t.Run(name, func(t *testing.T) {
			if err := s.Solve(&f, cases[1]); err != nil {
				t.Fatal(err)
			}
			if err := s.Influence(&in, MomentX, Point{1.2, 0.5}); err != nil {
				t.Fatal(err)
			}
			if err := run(); err != nil {
				t.Fatal(err)
			}
			if n := testing.AllocsPerRun(5, func() {
				if err := run(); err != nil {
					t.Fatal(err)
				}
			}); n != 0 {
				t.Errorf("%v allocations", n)
			}
		})
	}
}
