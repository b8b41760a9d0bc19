package plate

import (
	"fmt"
	"math"
	"testing"
)

// near fails unless got is within rel of want.
func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g within %g of it", what, got, want, rel)
	}
}

// solve factors the slab and solves one case.
func solve(t testing.TB, slab Slab, mesh Mesh, loads ...Load) (*Solver, *Field) {
	t.Helper()
	s, f := new(Solver), new(Field)
	if err := s.Factor(&slab, mesh); err != nil {
		t.Fatal(err)
	}
	if err := s.Solve(f, loads); err != nil {
		t.Fatal(err)
	}
	return s, f
}

// beamStrip is a slab that bends as a beam along x: free sides, no Poisson effect.
func beamStrip(length float64) Slab {
	return Slab{Length: length, Width: 0.7, Thickness: 0.1, E: 30e9, Edges: [4]Edge{Free, Simple, Free, Simple}}
}

func rigidity(s Slab) float64 {
	return s.E * s.Thickness * s.Thickness * s.Thickness / (12 * (1 - s.Nu*s.Nu))
}

func TestQuadraturesAddUpToOne(t *testing.T) {
	sum4, sum8, x8 := 0.0, 0.0, 0.0
	for g := range gauss4 {
		sum4 += weight4[g] * math.Pow(gauss4[g], 7)
	}
	for g := range gauss8 {
		sum8 += weight8[g]
		x8 += weight8[g] * math.Pow(gauss8[g], 15)
	}
	near(t, "x^7 by four points", sum4, 1.0/8, 1e-14)
	near(t, "1 by eight points", sum8, 1, 1e-14)
	near(t, "x^15 by eight points", x8, 1.0/16, 1e-14)
}

// Any state of constant curvature, and any rigid motion, is in balance on any
// grid: the patch test.
func TestPatchTest(t *testing.T) {
	slab := Slab{Length: 2, Width: 1.3, Thickness: 0.1, E: 1e9, Nu: 0.3,
		Openings: []Opening{RectOpening(0.3, 0.2, 0.4, 0.5)}, Points: []Point{{1.7, 0.4}}}
	s, _ := solve(t, slab, Mesh{}, Uniform{1})
	shapes := []func(x, y float64) (w, wx, wy, wxy float64){
		func(x, y float64) (w, wx, wy, wxy float64) { return 1 + 2*x - 3*y, 2, -3, 0 },
		func(x, y float64) (w, wx, wy, wxy float64) { return x * x, 2 * x, 0, 0 },
		func(x, y float64) (w, wx, wy, wxy float64) { return y * y, 0, 2 * y, 0 },
		func(x, y float64) (w, wx, wy, wxy float64) { return x * y, y, x, 1 },
	}
	for k, shape := range shapes {
		u, out := make([]float64, len(s.state)), make([]float64, len(s.state))
		for n := range s.nodes() {
			x, y := s.place(n)
			u[4*n], u[4*n+iWx], u[4*n+iWy], u[4*n+iWxy] = shape(x, y)
		}
		s.internal(u, out, 0, s.x.cells(), 0, s.y.cells())
		for n := range s.nodes() {
			x, y := s.place(n)
			inside := x > 0 && x < 2 && y > 0 && y < 1.3
			hole := x >= 0.3-1e-9 && x <= 0.7+1e-9 && y >= 0.2-1e-9 && y <= 0.7+1e-9
			if k > 0 && (!inside || hole) {
				continue // edge moments hold a curved state
			}
			for d, v := range out[4*n : 4*n+4] {
				if !(math.Abs(v) <= 1e-8*rigidity(slab)) {
					t.Errorf("shape %d: unknown %d at %.3f %.3f has force %g", k, d, x, y, v)
				}
			}
		}
	}
}

// A beam's deflections at the nodes and its moments are exact on any mesh.
func TestOneWaySlabIsABeam(t *testing.T) {
	slab := beamStrip(3)
	d, q := rigidity(slab), 5e3
	_, f := solve(t, slab, Mesh{Cells: [2]int{6, 2}}, Uniform{q})
	for _, x := range []float64{0.5, 1.5, 2.5} {
		v, _ := f.At(x, 0.3)
		near(t, "w", v.W, q*x*(27-6*x*x+x*x*x)/(24*d), 1e-10)
		near(t, "M", v.M.X, q*x*(3-x)/2, 1e-10)
	}
	near(t, "slope at the support", f.Reaction, q*3*0.7, 1e-12)
	for _, p := range f.EdgeForce(SideX0, nil) {
		near(t, "support force per length", p.PerLength, q*1.5, 1e-9)
	}
	shear, ok := f.Shear(X, 0.75, 0.1, 0.6)
	if !ok {
		t.Error("no shear")
	}
	near(t, "shear", shear, q*(1.5-0.75), 1e-9)
}

// Two equal spans under a uniform load have -q l^2/8 over the middle support,
// which takes 5/4 q l.
func TestContinuousOverALineSupport(t *testing.T) {
	slab := beamStrip(4)
	slab.Lines = []Line{{X, 2}}
	q := 1e4
	_, f := solve(t, slab, Mesh{Cells: [2]int{8, 2}}, Uniform{q})
	v, _ := f.At(2, 0.35)
	near(t, "moment over the support", v.M.X, -q*4/8, 1e-9)
	var r Reactions
	f.Reactions(&r)
	near(t, "line", r.Lines[0], 1.25*q*2*0.7, 1e-9)
	near(t, "ends", r.Edges[SideX0]+r.Edges[SideX1], 0.75*q*2*0.7, 1e-9)
	e := f.Extremes()
	near(t, "hogging", e.Hog.Value, -q*4/8, 1e-9)
	near(t, "sagging", e.Sag.Value, 9.0/128*q*4, 0.005)
	before, _ := f.Shear(X, 2, 0.1, 0.6)
	near(t, "shear before the support", before, -0.625*q*2, 1e-6)
}

// A beam of two thicknesses: the deflection by integrating M/(E I) twice.
func TestZoneOfOtherThickness(t *testing.T) {
	slab := beamStrip(2)
	slab.Zones = []Zone{{Rect{1.2, 0, 2, 0.7}, 0.06}}
	q := 2e3
	_, f := solve(t, slab, Mesh{Cells: [2]int{10, 2}}, Uniform{q})
	d1 := rigidity(slab)
	d2 := d1 * 0.6 * 0.6 * 0.6
	w := 0.0 // at x = 1: unit load theorem
	const n = 200000
	for k := range n {
		x := 2 * (float64(k) + 0.5) / n
		d := d1
		if x > 1.2 {
			d = d2
		}
		w += q * x * (2 - x) / 2 * math.Min(x, 2-x) / 2 / d * 2 / n
	}
	v, _ := f.At(1, 0.35)
	near(t, "w at the middle", v.W, w, 1e-7)
	if v, _ := f.At(1.5, 0.35); !(math.Abs(v.M.X-q*1.5*0.5/2) <= 1e-6) {
		t.Errorf("moment in the zone %g", v.M.X)
	}
}

// uneven is a slab without any symmetry.
func uneven() (Slab, []Load) {
	slab := Slab{Length: 2.4, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2,
		Edges: [4]Edge{Simple, Clamped, Free, Simple},
		Lines: []Line{{X, 1.6}}, Points: []Point{{2.1, 1.2}},
		Openings: []Opening{RectOpening(0.3, 0.4, 0.6, 0.5), RoundOpening(1.3, 0.8, 0.4)},
		Zones:    []Zone{{Rect{1.8, 0.2, 2.2, 0.6}, 0.07}}}
	return slab, []Load{Uniform{5e3}, Liquid{1.1, 9810}, Patch{0.6, 1.2, 0.5, 0.25, 20e3},
		Ring{0, 0.05, 2e3}, Ring{1, 0.03, 1e3}, Segment{Point{0.1, 0.1}, Point{2.2, 0.3}, 500}, Linear{100, 50, -30}}
}

func TestLoadsAndReactionsBalance(t *testing.T) {
	slab, loads := uneven()
	for _, bearing := range []bool{false, true} {
		slab.BearingOnly = bearing
		s, f := solve(t, slab, Mesh{}, loads...)
		if !(f.Residual < 1e-9) {
			t.Errorf("residual %g", f.Residual)
		}
		near(t, "reaction", f.Reaction, f.Load, 1e-9)
		var r Reactions
		f.Reactions(&r)
		sum := r.Lines[0] + r.Points[0]
		for _, e := range r.Edges {
			sum += e
		}
		near(t, "sum of supports", sum, f.Load, 1e-9)
		// Moments about the two axes: forces at their arms, and couples. A rigid
		// rotation w = x does the work of the loads.
		var about, want [2]float64
		for n := range s.nodes() {
			x, y := s.place(n)
			about[0] += f.reaction[4*n]*x + f.reaction[4*n+iWx]
			about[1] += f.reaction[4*n]*y + f.reaction[4*n+iWy]
			want[0] += f.force[4*n]*x + f.force[4*n+iWx]
			want[1] += f.force[4*n]*y + f.force[4*n+iWy]
		}
		near(t, "moment about y", about[0], want[0], 1e-8)
		near(t, "moment about x", about[1], want[1], 1e-8)
	}
}

// The load vectors have the totals and centroids of the loads.
func TestLoadTotals(t *testing.T) {
	slab := Slab{Length: 2.4, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2,
		Openings: []Opening{RoundOpening(1.3, 0.8, 0.4), RectOpening(0.2, 0.2, 0.3, 0.4)}}
	area := 2.4*1.5 - math.Pi*0.04 - 0.12
	cases := []struct {
		load  Load
		total float64
	}{
		{Uniform{3}, 3 * area},
		{Linear{0, 1, 0}, 2.4*1.5*1.2 - math.Pi*0.04*1.3 - 0.12*0.35},
		{Linear{0, 0, 1}, 2.4*1.5*0.75 - math.Pi*0.04*0.8 - 0.12*0.4},
		{Liquid{0.5, 7}, 7 * (2.4*0.125 - 0.3*0.3*0.15)},
		{Patch{2, 1, 0.3, 0.2, 11}, 11},
		{Patch{1.2, 0.7, 0.6, 0.2, 11}, 11}, // half over the round opening
		{Patch{2.35, 1.45, 0.3, 0.3, 11}, 11},
		{Ring{0, 0.1, 5}, 5 * 2 * math.Pi * 0.3},
		{Ring{1, 0.1, 5}, 5 * 2 * (0.5 + 0.6)},
		{Segment{Point{0, 0}, Point{2.4, 0.1}, 5}, 5 * math.Hypot(2.4, 0.1)},
	}
	for _, c := range cases {
		_, f := solve(t, slab, Mesh{}, c.load)
		near(t, fmt.Sprintf("%T%v", c.load, c.load), f.Load, c.total, 1e-9)
	}
}

// Turning the slab by a right angle, or mirroring it, turns the answer with it.
func TestRotationAndMirror(t *testing.T) {
	slab, _ := uneven()
	slab.Points, slab.Zones = nil, nil
	wheel := Patch{0.6, 1.2, 0.5, 0.25, 20e3}
	_, f := solve(t, slab, Mesh{}, wheel, Uniform{5e3}, Ring{1, 0.03, 1e3})

	// (x, y) -> (Width - y, x)
	turned := slab
	turned.Length, turned.Width = slab.Width, slab.Length
	turned.Edges = [4]Edge{slab.Edges[3], slab.Edges[0], slab.Edges[1], slab.Edges[2]}
	turned.Lines = []Line{{Y, 1.6}}
	turned.Openings = []Opening{RectOpening(1.5-0.9, 0.3, 0.5, 0.6), RoundOpening(0.7, 1.3, 0.4)}
	_, g := solve(t, turned, Mesh{}, Patch{1.5 - 1.2, 0.6, 0.25, 0.5, 20e3}, Uniform{5e3}, Ring{1, 0.03, 1e3})

	// (x, y) -> (Length - x, y)
	mirror := slab
	mirror.Edges[SideX0], mirror.Edges[SideX1] = slab.Edges[SideX1], slab.Edges[SideX0]
	mirror.Lines = []Line{{X, 2.4 - 1.6}}
	mirror.Openings = []Opening{RectOpening(2.4-0.9, 0.4, 0.6, 0.5), RoundOpening(1.1, 0.8, 0.4)}
	_, h := solve(t, mirror, Mesh{}, Patch{1.8, 1.2, 0.5, 0.25, 20e3}, Uniform{5e3}, Ring{1, 0.03, 1e3})

	for _, p := range []Point{{0.15, 0.7}, {1.0, 0.3}, {1.9, 1.1}, {0.6, 1.2}, {2.3, 0.2}} {
		v, _ := f.At(p.X, p.Y)
		r, _ := g.At(1.5-p.Y, p.X)
		m, _ := h.At(2.4-p.X, p.Y)
		extremes := f.Extremes()
		size := math.Abs(extremes.Governing().Value)
		for _, pair := range [][3]float64{{r.W, v.W, 1e-6 * math.Abs(v.W)}, {m.W, v.W, 1e-6 * math.Abs(v.W)},
			{r.M.X, v.M.Y, 1e-5 * size}, {r.M.Y, v.M.X, 1e-5 * size}, {r.M.XY, -v.M.XY, 1e-5 * size},
			{m.M.X, v.M.X, 1e-5 * size}, {m.M.Y, v.M.Y, 1e-5 * size}, {m.M.XY, -v.M.XY, 1e-5 * size}} {
			if !(math.Abs(pair[0]-pair[1]) <= pair[2]) {
				t.Errorf("at %v: %g, want %g within %g", p, pair[0], pair[1], pair[2])
			}
		}
	}
}

// Twice the size, twice the load per area, half the modulus: each answer scales.
func TestScaling(t *testing.T) {
	slab, cases := roof()
	_, f := solve(t, slab, Mesh{}, cases[0]...)
	const k = 3.0
	big := slab
	big.Length, big.Width, big.Thickness, big.E = k*slab.Length, k*slab.Width, k*slab.Thickness, slab.E/2
	big.Lines = []Line{{X, k * slab.Lines[0].At}}
	o := slab.Openings[0]
	big.Openings = []Opening{RectOpening(k*o.X, k*o.Y, k*o.Length, k*o.Width)}
	_, g := solve(t, big, Mesh{}, Uniform{2 * cases[0][0].(Uniform).Pressure})
	v, _ := f.At(1, 0.3)
	w, _ := g.At(k*1, k*0.3)
	near(t, "w", w.W, v.W*4*k, 1e-8)        // q l^4/(E t^3)
	near(t, "Mx", w.M.X, v.M.X*2*k*k, 1e-8) // q l^2
}

// Deflections and moments converge with the fourth power of the cell size.
func TestConvergenceOrder(t *testing.T) {
	slab := Slab{Length: 1, Width: 1.4, Thickness: 0.1, Nu: 0.3, E: 12 * (1 - 0.09) / 1e-3}
	const w, mx, my = 0.0070849, 0.0755494, 0.0502217 // by the series: sum over 400 terms
	exactW, exactX, exactY := navier(1, 1.4, 0.3)
	near(t, "the series, w", exactW, w, 1e-4)
	near(t, "the series, Mx", exactX, mx, 1e-4)
	near(t, "the series, My", exactY, my, 1e-4)
	var errs [3][3]float64
	for k, n := range []int{4, 8, 16} {
		_, f := solve(t, slab, Mesh{Cells: [2]int{n, n}}, Uniform{1})
		v, _ := f.At(0.5, 0.7)
		errs[k] = [3]float64{v.W/exactW - 1, v.M.X/exactX - 1, v.M.Y/exactY - 1}
	}
	for q, name := range []string{"w", "Mx", "My"} {
		for k := range 2 {
			order := math.Log2(math.Abs(errs[k][q] / errs[k+1][q]))
			if !(order > 3.5) {
				t.Errorf("%s: errors %.2g, %.2g: order %.2f, want 4", name, errs[k][q], errs[k+1][q], order)
			}
		}
	}
}

// navier sums Navier's double series for a simply supported rectangle a by b under
// a unit pressure, D = 1, at its centre.
func navier(a, b, nu float64) (w, mx, my float64) {
	for m := 1.0; m < 2000; m += 2 {
		for n := 1.0; n < 2000; n += 2 {
			sign := 1.0
			if int(m+n)/2%2 == 0 {
				sign = -1
			}
			k := 16 / (math.Pow(math.Pi, 6) * m * n)
			g := m*m/(a*a) + n*n/(b*b)
			w += sign * k / (g * g)
			mx += sign * k * math.Pi * math.Pi * (m*m/(a*a) + nu*n*n/(b*b)) / (g * g)
			my += sign * k * math.Pi * math.Pi * (n*n/(b*b) + nu*m*m/(a*a)) / (g * g)
		}
	}
	return w, mx, my
}
