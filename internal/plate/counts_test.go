package plate

import (
	"fmt"
	"testing"
)

// Each part of a slab asks for a finer mesh, so that their number is bounded.
func TestListsAreBounded(t *testing.T) {
	for field, fill := range map[string]struct {
		most int
		with func(s *Slab, n int)
	}{
		"Lines":    {20, func(s *Slab, n int) { s.Lines = many(n, Line{X, 1}) }},
		"Points":   {50, func(s *Slab, n int) { s.Points = many(n, Point{1, 1}) }},
		"Openings": {20, func(s *Slab, n int) { s.Openings = many(n, RectOpening(0.5, 0.4, 0.3, 0.3)) }},
		"Zones":    {20, func(s *Slab, n int) { s.Zones = many(n, Zone{Rect{0.5, 0.5, 1, 1}, 0.08}) }},
	} {
		slab := Slab{Length: 2.4, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2}
		fill.with(&slab, fill.most)
		var s Solver
		if err := s.Factor(&slab, Mesh{}); err != nil {
			t.Errorf("%d %s: %v", fill.most, field, err)
		}
		fill.with(&slab, fill.most+1)
		checkFault(t, s.Factor(&slab, Mesh{}), field)
		if got, want := fmt.Sprint(slab.Check()), fmt.Sprintf("%s %d: want at most %d", field, fill.most+1, fill.most); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestLoadsAndCasesAreBounded(t *testing.T) {
	slab := Slab{Length: 2.4, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2}
	load := Load(Uniform{1e3})
	if err := slab.CheckLoads(many(200, load)); err != nil {
		t.Error(err)
	}
	checkFault(t, slab.CheckLoads(many(201, load)), "Loads")
	var st Study
	if err := st.Run(&slab, many(mostCases, []Load{load})); err != nil {
		t.Error(err)
	}
	checkFault(t, st.Run(&slab, many(mostCases+1, []Load{load})), "Cases")
}

func many[T any](n int, one T) []T {
	list := make([]T, n)
	for i := range list {
		list[i] = one
	}
	return list
}
