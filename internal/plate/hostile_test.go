package plate

import (
	"testing"

	"manway.example/manway/internal/hostile"
)

func abused() hostile.Room {
	slab, cases := roof()
	mesh := Mesh{Cells: [2]int{6, 4}}
	whole := Slab{Length: 2.4, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2, Points: []Point{{1.2, 0.7}}, Zones: []Zone{{Rect{0.2, 0.2, 0.6, 0.6}, 0.07}}}
	lid := unitDisc(0.2, false)
	ring := Annulus{Outer: 1, Inner: 0.3, Thickness: 1, E: 1, Nu: 0.2, OuterRim: RimSimple}
	return hostile.Room{
		Funcs: []any{RectOpening, RoundOpening, solved, surface, studied, combined, scanned},
		Seeds: []any{
			slab, whole, mesh, lid, ring, AnnularLoad{Pressure: 1}, cases[0], cases[1], cases[2], []Load{Liquid{0.5, 9810}, Segment{Point{0.1, 0.1}, Point{1, 0.2}, 10}, Linear{1, 2, 3}},
			Point{0.3, 0.3}, Patch{0.2, 0.1, 0.3, 0.2, 1}, MomentX, X, Moment{1, 2, 3}, Value{}, Extremes{}, Fault{Field: "Nu", Value: 2, Want: "0 to 0.5"}, Faults{{Field: "Nu", Value: 2, Want: "0 to 0.5"}},
		},
		Calls: [][]any{
			{solved, whole, mesh, cases[0], Point{1, 0.5}}, {solved, slab, mesh, cases[1], Point{1, 0.5}}, {surface, whole, MomentX, Point{1, 0.5}, cases[1]},
			{studied, slab, cases[:2]}, {combined, whole, cases[0], 1.2, 1.6}, {scanned, whole, cases[1]}, {Disc.Uniform, lid, 1.0, 0.5}, {Disc.Concentric, lid, 1.0, 0.2, 0.5},
			{Disc.ThreePoint, lid, 1.0, 0.4, 0.3}, {Disc.Patch, lid, Patch{0.2, 0.1, 0.3, 0.2, 1}, Point{0.3, 0.3}}, {Annulus.At, ring, AnnularLoad{Pressure: 1}, 0.5},
		},
		Errors: []error{ErrContact, ErrNotFactored, ErrNotHeld, ErrOneWay, ErrResidual, ErrTips},
		Slow:   []string{"solved", "surface", "studied", "combined", "scanned"},
		Apart: map[string]string{
			"Solver.Factor": "solved", "Solver.Solve": "solved", "Solver.Unknowns": "solved", "Solver.Cells": "solved", "Solver.Flops": "solved", "Solver.Influence": "surface", "Influence.Under": "surface",
			"Solver.SolveOnto": "combined", "Field.Balance": "combined", "Solver.Surfaces": "surface", "Surfaces.At": "surface", "Study.Run": "studied", "Field.Combine": "combined", "Field.Scan": "scanned", "Field.Extremes": "solved", "Field.At": "solved", "Field.MomentAt": "solved", "Field.Reactions": "solved",
			"Field.EdgeForce": "solved", "Field.Shear": "solved", "Extremes.Take": "scanned", "Extremes.Governing": "solved", "Slab.CheckLoads": "solved",
		},
	}
}

// reading is what is asked of a solved slab.
type reading struct {
	Load, Reaction, Residual float64
	Governs                  Extreme
	Extremes                 Extremes
	Reactions                Reactions
	Edges                    [4][]Intensity
	At                       Value
	Moment                   Moment
	Shear, Flops             float64
	Unknowns                 int
}

func read(s *Solver, f *Field, at Point) (r reading) {
	r = reading{Load: f.Load, Reaction: f.Reaction, Residual: f.Residual, Extremes: f.Extremes(), Flops: s.Flops(), Unknowns: s.Unknowns()}
	r.Governs = r.Extremes.Governing()
	f.Reactions(&r.Reactions)
	for side := range 4 {
		r.Edges[side] = f.EdgeForce(side, nil)
	}
	r.At, _ = f.At(at.X, at.Y)
	r.Moment, _ = f.MomentAt(at.X, at.Y)
	s.Cells()
	r.Shear, _ = f.Shear(X, at.X, 0, at.Y)
	return r
}

func solved(slab Slab, m Mesh, loads []Load, at Point) (reading, error) {
	var s Solver
	var f Field
	if err := s.Factor(&slab, m); err != nil {
		return reading{}, err
	}
	if err := slab.CheckLoads(loads); err != nil {
		return reading{}, err
	}
	if err := s.Solve(&f, loads); err != nil {
		return reading{}, err
	}
	return read(&s, &f, at), nil
}

func surface(slab Slab, q Quantity, at Point, loads []Load) (float64, error) {
	var s Solver
	var in Influence
	if err := s.Factor(&slab, Mesh{Cells: [2]int{6, 4}}); err != nil {
		return 0, err
	}
	if err := s.Influence(&in, q, at); err != nil {
		return 0, err
	}
	var three Surfaces
	if err := s.Surfaces(&three, at); err != nil {
		return 0, err
	}
	if m := three.At(at); !finite(m.X) || !finite(m.Y) || !finite(m.XY) {
		return m.X, nil // is judged as the answer
	}
	under, err := in.Under(loads)
	return under, err
}

func studied(slab Slab, cases [][]Load) ([]reading, error) {
	st := Study{MostUnknowns: 2000}
	if err := st.Run(&slab, cases); err != nil {
		return nil, err
	}
	list := make([]reading, len(st.Cases))
	for i := range st.Cases {
		list[i] = read(&st.Solver, &st.Cases[i].Field, Point{slab.Length / 2, slab.Width / 2})
	}
	return list, nil
}

func combined(slab Slab, loads []Load, one, other float64) (reading, error) {
	var s Solver
	var f, sum Field
	if err := s.Factor(&slab, Mesh{Cells: [2]int{6, 4}}); err != nil {
		return reading{}, err
	}
	if err := s.Solve(&f, loads); err != nil {
		return reading{}, err
	}
	if slab.BearingOnly {
		if err := s.SolveOnto(&sum, Scaled{one, &f}, loads); err != nil {
			return reading{}, err
		}
		if err := sum.Balance(); err != nil {
			return reading{}, err
		}
	} else if err := sum.Combine(Scaled{one, &f}, Scaled{other, &f}); err != nil {
		return reading{}, err
	}
	return read(&s, &sum, Point{slab.Length / 2, slab.Width / 2}), nil
}

func scanned(slab Slab, loads []Load) (Extremes, error) {
	var s Solver
	var f Field
	var e Extremes
	if err := s.Factor(&slab, Mesh{Cells: [2]int{6, 4}}); err != nil {
		return e, err
	}
	if err := s.Solve(&f, loads); err != nil {
		return e, err
	}
	first := true
	f.Scan(func(p Point, m Moment) {
		e.Take(p, Value{M: m}, first)
		first = false
	})
	return e, nil
}

func TestHostile(t *testing.T) { abused().Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused().Fuzz(f) }
