package plate

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The other method for slabs with openings: Morley's triangle (constant moments,
// not conforming; L. S. D. Morley 1968) on a mesh fitted to the opening. It
// shares no code and no idea with the solver under test. On two meshes it
// converges from the soft side with the square of the size, so the two are
// extrapolated.

// ogrid is a mesh between the outline of a slab and that of its opening: around
// points each way, in rings.
type ogrid struct {
	x, y      []float64
	triangles [][3]int
	outer     []int // vertices on the slab's edge
}

// fitted makes a mesh round opening o of an l by w slab.
func fitted(l, w float64, o Opening, around, rings int) (g ogrid) {
	for r := range rings + 1 {
		t := float64(r) / float64(rings)
		t = t * (0.55 + 0.45*t) // smaller towards the opening
		for k := range around {
			ix, iy := rim(o, around, k)
			ox, oy := outline(0, 0, l, w, around, k)
			g.x = append(g.x, ix+t*(ox-ix))
			g.y = append(g.y, iy+t*(oy-iy))
			if r == rings {
				g.outer = append(g.outer, len(g.x)-1)
			}
		}
	}
	for r := range rings {
		for k := range around {
			a, b := r*around+k, r*around+(k+1)%around
			c, d := a+around, b+around
			if (r+k)%2 == 0 {
				g.triangles = append(g.triangles, [3]int{a, c, d}, [3]int{a, d, b})
			} else {
				g.triangles = append(g.triangles, [3]int{a, c, b}, [3]int{b, c, d})
			}
		}
	}
	return g
}

// outline is point k of around on a rectangle, a quarter of them on each side.
func outline(x, y, l, w float64, around, k int) (float64, float64) {
	side, t := 4*k/around, 4*float64(k)/float64(around)
	t -= float64(side)
	switch side {
	case 0:
		return x + t*l, y
	case 1:
		return x + l, y + t*w
	case 2:
		return x + l - t*l, y + w
	}
	return x, y + w - t*w
}

func rim(o Opening, around, k int) (float64, float64) {
	if o.Diameter == 0 {
		return outline(o.X, o.Y, o.Length, o.Width, around, k)
	}
	sin, cos := math.Sincos(2*math.Pi*float64(k)/float64(around) - 3*math.Pi/4)
	return o.X + o.Diameter/2*cos, o.Y + o.Diameter/2*sin
}

// numbered gives the unknowns their numbers: a vertex as the pair of itself, an
// edge as that of its vertices. They go ring by ring, to keep the band narrow: a
// vertex or an edge belongs to the ring of its first vertex.
func numbered(g ogrid, around int) map[[2]int]int {
	edges := map[[2]int]bool{}
	rings := len(g.x) / around
	members := make([][][2]int, rings)
	for v := range g.x {
		members[v/around] = append(members[v/around], [2]int{v, v})
	}
	for _, tri := range g.triangles {
		for k := range 3 {
			e := sorted(tri[k], tri[(k+1)%3])
			if !edges[e] {
				edges[e] = true
				members[e[0]/around] = append(members[e[0]/around], e)
			}
		}
	}
	held := map[int]bool{}
	for _, v := range g.outer {
		held[v] = true
	}
	number := map[[2]int]int{}
	for _, ring := range members {
		for _, m := range ring {
			if m[0] != m[1] || !held[m[0]] {
				number[m] = len(number)
			}
		}
	}
	return number
}

// morley solves the mesh, simply supported all round, under unit pressure, and
// gives the deflections of its vertices.
func morley(t *testing.T, g ogrid, d, nu float64, around int) []float64 {
	number := numbered(g, around)
	n := len(number)
	type entry struct{ r, c int }
	values := map[entry]float64{}
	load := mat.NewVecDense(n, nil)
	band := 0
	for _, tri := range g.triangles {
		k, f := morleyTriangle(g, tri, d, nu)
		dofs := [6][2]int{{tri[0], tri[0]}, {tri[1], tri[1]}, {tri[2], tri[2]},
			sorted(tri[0], tri[1]), sorted(tri[1], tri[2]), sorted(tri[2], tri[0])}
		for a, da := range dofs {
			i, ok := number[da]
			if !ok {
				continue
			}
			load.SetVec(i, load.AtVec(i)+f[a])
			for b, db := range dofs {
				if j, ok := number[db]; ok && j >= i {
					values[entry{i, j}] += k.At(a, b)
					band = max(band, j-i)
				}
			}
		}
	}
	m := mat.NewSymBandDense(n, band, nil)
	for e, v := range values {
		m.SetSymBand(e.r, e.c, v)
	}
	var chol mat.BandCholesky
	if !chol.Factorize(m) {
		t.Fatal("the fitted mesh has no solution")
	}
	var u mat.VecDense
	if err := chol.SolveVecTo(&u, load); err != nil {
		t.Log(err) // a condition number, for information
	}
	w := make([]float64, len(g.x))
	for v := range w {
		if i, ok := number[[2]int{v, v}]; ok {
			w[v] = u.AtVec(i)
		}
	}
	return w
}

func sorted(a, b int) [2]int { return [2]int{min(a, b), max(a, b)} }

// morleyTriangle gives stiffness and unit-pressure load: unknowns are w at the
// corners and dw/dn at the middles of the sides, n to the left of the way from
// the lower to the higher vertex number.
func morleyTriangle(g ogrid, tri [3]int, d, nu float64) (*mat.Dense, [6]float64) {
	monomials := func(x, y float64) [6]float64 { return [6]float64{1, x, y, x * x, x * y, y * y} }
	cx, cy := (g.x[tri[0]]+g.x[tri[1]]+g.x[tri[2]])/3, (g.y[tri[0]]+g.y[tri[1]]+g.y[tri[2]])/3
	p := mat.NewDense(6, 6, nil)
	var mid [3][2]float64
	for k := range 3 {
		v := monomials(g.x[tri[k]]-cx, g.y[tri[k]]-cy)
		p.SetRow(k, v[:])
		e := sorted(tri[k], tri[(k+1)%3])
		dx, dy := g.x[e[1]]-g.x[e[0]], g.y[e[1]]-g.y[e[0]]
		h := math.Hypot(dx, dy)
		nx, ny := -dy/h, dx/h
		x, y := (g.x[e[0]]+g.x[e[1]])/2-cx, (g.y[e[0]]+g.y[e[1]])/2-cy
		mid[k] = [2]float64{x, y}
		p.SetRow(3+k, []float64{0, nx, ny, 2 * x * nx, y*nx + x*ny, 2 * y * ny})
	}
	var c mat.Dense // coefficients of the monomials in the unknowns
	if err := c.Inverse(p); err != nil {
		panic(err)
	}
	ax, ay := g.x[tri[1]]-g.x[tri[0]], g.y[tri[1]]-g.y[tri[0]]
	bx, by := g.x[tri[2]]-g.x[tri[0]], g.y[tri[2]]-g.y[tri[0]]
	area := math.Abs(ax*by-ay*bx) / 2
	b := mat.NewDense(3, 6, nil)
	for j := range 6 {
		b.Set(0, j, 2*c.At(3, j))
		b.Set(1, j, 2*c.At(5, j))
		b.Set(2, j, 2*c.At(4, j))
	}
	em := mat.NewDense(3, 3, []float64{1, nu, 0, nu, 1, 0, 0, 0, (1 - nu) / 2})
	var tmp, k mat.Dense
	tmp.Mul(em, b)
	k.Mul(b.T(), &tmp)
	k.Scale(d*area, &k)
	var f [6]float64
	for j := range 6 {
		for _, m := range mid { // exact for quadratics
			v := monomials(m[0], m[1])
			for i := range 6 {
				f[j] += area / 3 * v[i] * c.At(i, j)
			}
		}
	}
	return &k, f
}

func TestOpeningsAgainstAFittedMesh(t *testing.T) {
	const l, w, d, nu = 1.6, 1.0, 1.0, 0.2
	for name, o := range map[string]Opening{
		"rectangular": RectOpening(0.4, 0.35, 0.5, 0.4),
		"round":       RoundOpening(0.65, 0.55, 0.4),
	} {
		t.Run(name, func(t *testing.T) {
			const thick = 0.05
			slab := Slab{Length: l, Width: w, Thickness: thick, Nu: nu, E: 12 * (1 - nu*nu) / (thick * thick * thick), Openings: []Opening{o}}
			_, f := solve(t, slab, Mesh{Scale: 0.5}, Uniform{1})
			const around, rings = 32, 10
			coarse, fine := fitted(l, w, o, around, rings), fitted(l, w, o, 2*around, 2*rings)
			wc, wf := morley(t, coarse, d, nu, around), morley(t, fine, d, nu, 2*around)
			for r := range 4 { // on the rim, and a little away from it
				for k := 0; k < around; k += 2 {
					other := wf[2*r*2*around+2*k]
					other += (other - wc[r*around+k]) / 3
					x, y := coarse.x[r*around+k], coarse.y[r*around+k]
					if r == 0 && o.Diameter > 0 { // the fitted rim is a polygon
						x, y = o.X+(x-o.X)*(1+1e-9), o.Y+(y-o.Y)*(1+1e-9)
					}
					v, ok := f.At(x, y)
					if !ok {
						t.Fatalf("%v %v is off the slab", x, y)
					}
					near(t, "w", v.W, other, 0.004)
				}
			}
		})
	}
}

// Round the hole of a wide plate bent one way, the moment along the rim rises to
// (5+3 nu)/(3+nu) times that far away (J. N. Goodier 1936; thin plate); with
// nu = 0 it is 5/3. A strip under two line loads has constant moment between them.
func TestMomentRaisedByRoundHole(t *testing.T) {
	slab := Slab{Length: 3, Width: 1, Thickness: 0.02, E: 12 / 8e-6, Edges: [4]Edge{Free, Simple, Free, Simple},
		Openings: []Opening{RoundOpening(1.5, 0.5, 0.1)}}
	var st Study
	loads := []Load{Segment{Point{0.6, 0}, Point{0.6, 1}, 1}, Segment{Point{2.4, 0}, Point{2.4, 1}, 1}}
	if err := st.Run(&slab, [][]Load{loads}); err != nil {
		t.Fatal(err)
	}
	far, _ := st.Cases[0].At(1.0, 0.2)
	near(t, "moment far away", far.M.X, 0.6, 0.01)
	peak := st.Cases[0].Governing()
	// A hole of a tenth of the width raises it 1 percent over the infinite plate.
	near(t, "moment at the rim", peak.Value, 5.0/3*0.6, 0.02)
	if !(math.Abs(peak.At.X-1.5) <= 0.01) || !(math.Abs(math.Abs(peak.At.Y-0.5)-0.05) <= 0.01) {
		t.Errorf("the largest moment is at %v", peak.At)
	}
}

// A round opening wherever it falls on the grid gives the same slab.
func TestRoundOpeningMovesSmoothly(t *testing.T) {
	var last float64
	for k := range 12 {
		slab := Slab{Length: 2, Width: 1.2, Thickness: 0.1, E: 30e9, Nu: 0.2,
			Openings: []Opening{RoundOpening(0.8+0.01*float64(k), 0.6, 0.5)}}
		var s Solver
		var f Field
		if err := s.Factor(&slab, Mesh{Cells: [2]int{16, 10}}); err != nil {
			t.Fatal(err)
		}
		if err := s.Solve(&f, []Load{Uniform{1e4}}); err != nil {
			t.Fatal(err)
		}
		e := f.Extremes()
		if k > 0 {
			near(t, "w", e.W.Value, last, 0.01)
		}
		last = e.W.Value
	}
}
