package plate

import (
	"errors"
	"math"
	"testing"
)

func TestRefusals(t *testing.T) {
	good, loads := uneven()
	cases := map[string]func(*Slab){
		"Length":               func(s *Slab) { s.Length = math.NaN() },
		"Width":                func(s *Slab) { s.Width = -1 },
		"Thickness":            func(s *Slab) { s.Thickness = 0 },
		"E":                    func(s *Slab) { s.E = math.Inf(1) },
		"Nu":                   func(s *Slab) { s.Nu = 0.5 },
		"Edges[2]":             func(s *Slab) { s.Edges[2] = 7 },
		"Lines[0].At":          func(s *Slab) { s.Lines = []Line{{X, 2.4}} },
		"Lines[0].Axis":        func(s *Slab) { s.Lines = []Line{{3, 1}} },
		"Points[0].X":          func(s *Slab) { s.Points = []Point{{0.5, 0.6}} },
		"Points[0].Y":          func(s *Slab) { s.Points = []Point{{0.5, 9}} },
		"Openings[0].X":        func(s *Slab) { s.Openings[0].X = 3 },
		"Openings[1].Diameter": func(s *Slab) { s.Openings[1].Diameter = -0.4 },
		"Openings[0]":          func(s *Slab) { s.Openings[0].Width = 1e-3 },
		"Zones[0].Thickness":   func(s *Slab) { s.Zones[0].Thickness = 0 },
		"Zones[0].X1":          func(s *Slab) { s.Zones[0].X1 = 5 },
	}
	for field, spoil := range cases {
		slab := good
		slab.Openings = append([]Opening(nil), good.Openings...)
		slab.Zones = append([]Zone(nil), good.Zones...)
		spoil(&slab)
		var s Solver
		checkFault(t, s.Factor(&slab, Mesh{}), field)
	}
	var s Solver
	if err := s.Factor(&good, Mesh{}); err != nil {
		t.Fatal(err)
	}
	for field, load := range map[string]Load{
		"Loads[7].Pressure":  Uniform{math.NaN()},
		"Loads[7].Level":     Liquid{math.Inf(1), 1},
		"Loads[7].X":         Patch{0.6, 0.6, 0.1, 0.1, 1},
		"Loads[7].Width":     Patch{0.1, 0.1, 0.1, 0, 1},
		"Loads[7].Opening":   Ring{2, 0, 1},
		"Loads[7].Offset":    Ring{1, 1, 1},
		"Loads[7]":           Segment{Point{0, 0.6}, Point{2, 0.6}, 1},
		"Loads[7].From.X":    Segment{Point{-1, 0.6}, Point{2, 0.6}, 1},
		"Loads[7].PerX":      Linear{0, math.NaN(), 0},
		"Loads[7].PerLength": Ring{1, 0.1, math.NaN()},
	} {
		checkFault(t, s.Solve(new(Field), append(loads[:7:7], load)), field)
	}
	checkFault(t, s.Solve(new(Field), []Load{nil}), "Loads[0]")
	if err := new(Solver).Solve(new(Field), nil); !errors.Is(err, ErrNotFactored) {
		t.Errorf("got %v", err)
	}
}

func checkFault(t *testing.T, err error, field string) {
	t.Helper()
	var faults Faults
	if !errors.As(err, &faults) {
		t.Errorf("%s: got error %v", field, err)
		return
	}
	for _, f := range faults {
		if f.Field == field {
			return
		}
	}
	t.Errorf("no fault of %s in: %v", field, err)
}

func TestSlabThatCanMove(t *testing.T) {
	free := [4]Edge{Free, Free, Free, Free}
	for name, slab := range map[string]Slab{
		"nothing":       {},
		"one line":      {Lines: []Line{{X, 0.5}}},
		"two points":    {Points: []Point{{0.2, 0.2}, {0.8, 0.8}}},
		"points in row": {Points: []Point{{0.2, 0.2}, {0.5, 0.5}, {0.8, 0.8}}},
		"island":        {Edges: [4]Edge{Free, Free, Free, Clamped}, Openings: []Opening{RectOpening(0.4, -0.1, 0.2, 1.2)}},
	} {
		if slab.Edges == ([4]Edge{}) {
			slab.Edges = free
		}
		slab.Length, slab.Width, slab.Thickness, slab.E, slab.Nu = 1, 1, 0.05, 1e9, 0.2
		var s Solver
		for _, n := range []int{4, 16, 48} {
			if err := s.Factor(&slab, Mesh{Cells: [2]int{n, n}}); !errors.Is(err, ErrNotHeld) {
				t.Errorf("%s, %d cells: got %v, want ErrNotHeld", name, n, err)
			}
		}
	}
}
