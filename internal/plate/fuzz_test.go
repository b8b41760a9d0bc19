package plate

import (
	"math"
	"testing"
)

// finiteResults fails on any number that is not one.
func finiteResults(t *testing.T, f *Field) {
	t.Helper()
	e := f.Extremes()
	var r Reactions
	f.Reactions(&r)
	values := []float64{f.Load, f.Reaction, f.Residual, f.Uplift.Length, f.Uplift.Most,
		e.W.Value, e.Rise.Value, e.MxMax.Value, e.MxMin.Value, e.MyMax.Value, e.MyMin.Value,
		e.MxyMax.Value, e.Sag.Value, e.Hog.Value, e.Sag.At.X, e.Hog.At.Y}
	values = append(values, r.Edges[:]...)
	values = append(values, r.Corners[:]...)
	values = append(append(values, r.Lines...), r.Points...)
	for side := range 4 {
		for _, p := range f.EdgeForce(side, nil) {
			values = append(values, p.PerLength)
		}
	}
	for _, v := range values {
		if !finite(v) {
			t.Fatalf("not finite: %+v %+v %+v", f, e, r)
		}
	}
}

func FuzzSlab(f *testing.F) {
	// The roof of a small tank, an opening and a round one.
	f.Add(2.4, 1.5, 0.1, 25e9, 0.2, uint8(0), 1.6, 0.3, 0.4, 0.6, 0.5, 2.0, 0.8, 0.4, 0.9, 1.2, 0.5, 0.25, 2e4, false)
	// The same on bearings.
	f.Add(2.4, 1.5, 0.1, 25e9, 0.2, uint8(0), 1.6, 0.3, 0.4, 0.6, 0.5, 2.0, 0.8, 0.4, 0.9, 1.2, 0.5, 0.25, 2e4, true)
	// A notch and a bite at the corner; edges of every kind.
	f.Add(2.4, 1.5, 0.1, 25e9, 0.0, uint8(0b10_01_00_01), 1.2, -0.1, 0.4, 0.6, 0.5, 2.4, 1.5, 0.9, 0.9, 1.2, 0.5, 0.25, -2e4, false)
	// An opening that cuts the slab in two.
	f.Add(1.0, 1.0, 0.1, 1e9, 0.3, uint8(0), 0.1, 0.4, -0.1, 0.2, 1.3, 0.8, 0.5, 0.1, 0.1, 0.1, 0.1, 0.1, 1.0, true)
	// Nothing holds it; almost nothing left of it; absurd sizes.
	f.Add(1.0, 1.0, 0.1, 1e9, 0.3, uint8(0xAA), 2.0, 2.0, 2.0, 0.2, 0.2, 0.5, 0.5, 1.3, 0.1, 0.1, 0.1, 0.1, 1.0, true)
	f.Add(1e-3, 1e-2, 1e3, 1e-300, 0.49, uint8(0x55), 5e-4, 0.0, 0.0, 1e-4, 1e-4, 5e-4, 5e-3, 1e-4, 1e-4, 1e-3, 1e-5, 1e-5, 1e300, false)
	f.Fuzz(func(t *testing.T, length, width, thick, e, nu float64, edges uint8, line,
		ox, oy, ol, ow, rx, ry, rd, px, py, pl, pw, force float64, bearing bool) {
		slab := Slab{Length: length, Width: width, Thickness: thick, E: e, Nu: nu, BearingOnly: bearing}
		for k := range slab.Edges {
			slab.Edges[k] = Edge(edges >> (2 * k) & 3)
		}
		slab.Lines = []Line{{X, line}}
		slab.Openings = []Opening{RectOpening(ox, oy, ol, ow), RoundOpening(rx, ry, rd)}
		if slab.Check() != nil { // look at what is left without the faulty parts
			slab.Lines, slab.Openings = nil, slab.Openings[:1]
		}
		var s Solver
		if err := s.Factor(&slab, Mesh{}); err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		for _, loads := range [][]Load{
			{Uniform{force}},
			{Patch{px, py, pl, pw, force}},
			{Ring{0, math.Abs(pl), force}, Liquid{py, force}, Segment{Point{px, py}, Point{py, px}, 1}},
		} {
			var field Field
			if err := s.Solve(&field, loads); err == nil {
				finiteResults(t, &field)
			}
		}
	})
}

func FuzzDisc(f *testing.F) {
	f.Add(0.3, 0.08, 25e9, 0.2, false, 0.1, 0.0, 0.1, 0.05, 1e3, 0.1, 0.1)
	f.Add(0.3, 0.08, 25e9, 0.2, true, 0.2, 0.1, 0.05, 0.05, 1e3, 0.0, 0.3) // at the rim
	f.Add(1.0, 1e-200, 1e300, 0.49, false, 0.0, 0.0, 1e-9, 1e-9, 1e300, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, radius, thick, e, nu float64, clamped bool, px, py, pl, pw, force, x, y float64) {
		d := Disc{radius, thick, e, nu, clamped}
		if v, err := d.Patch(Patch{px, py, pl, pw, force}, Point{x, y}); err == nil {
			if !finite(v.W) || !finite(v.M.X) || !finite(v.M.Y) || !finite(v.M.XY) {
				t.Fatalf("%+v: %+v", d, v)
			}
		}
		if p, err := d.Concentric(force, pl, x); err == nil {
			if !finite(p.W) || !finite(p.Slope) || !finite(p.Radial) || !finite(p.Tangential) {
				t.Fatalf("%+v: %+v", d, p)
			}
		}
		if p, twist, err := d.ThreePoint(force, x, y); err == nil {
			if !finite(p.W) || !finite(p.Slope) || !finite(p.Radial) || !finite(p.Tangential) || !finite(twist) {
				t.Fatalf("%+v: %+v", d, p)
			}
		}
		a := Annulus{Outer: radius, Inner: pl, Thickness: thick, E: e, Nu: nu, OuterRim: RimSimple}
		if p, err := a.At(AnnularLoad{Pressure: force, HoleRim: pw}, x); err == nil {
			if !finite(p.W) || !finite(p.Slope) || !finite(p.Radial) || !finite(p.Tangential) {
				t.Fatalf("%+v: %+v", a, p)
			}
		}
	})
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
