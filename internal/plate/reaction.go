package plate

import (
	"math"
)

// Reactions are the upward forces of the supports on the slab, N. The force at a
// node that several supports share is divided evenly between them.
type Reactions struct {
	Edges  [4]float64 // in the order of Slab.Edges; 0 at a free edge
	Lines  []float64
	Points []float64
	// Corners are the concentrated forces that thin-plate theory has where two
	// simple edges meet, twice the twisting moment: (0,0), (Length,0),
	// (Length,Width), (0,Width). Negative ones hold the corner down. They are
	// part of the edges' forces. A bearing-only slab has none.
	Corners [4]float64
}

// Reactions adds up the support forces, into the slices of r.
func (f *Field) Reactions(r *Reactions) {
	s := f.solver
	r.Edges, r.Corners = [4]float64{}, [4]float64{}
	r.Lines = zeroed(r.Lines, len(s.slab.Lines))
	r.Points = zeroed(r.Points, len(s.slab.Points))
	nx, ny := s.x.cells(), s.y.cells()
	for n := range s.nodes() {
		force := f.reaction[4*n]
		if force == 0 {
			continue
		}
		i, j := n/(ny+1), n%(ny+1)
		on := [4]bool{j == 0, i == nx, j == ny, i == 0}
		sharers := 0
		for side := range on {
			on[side] = on[side] && s.slab.Edges[side] != Free
			if on[side] {
				sharers++
			}
		}
		for k := range s.slab.Lines {
			if s.onLine(k, i, j) {
				sharers++
			}
		}
		for _, p := range s.slab.Points {
			if i == s.x.index(p.X) && j == s.y.index(p.Y) {
				sharers++
			}
		}
		force /= float64(sharers)
		for side := range on {
			if on[side] {
				r.Edges[side] += force
			}
		}
		for k := range s.slab.Lines {
			if s.onLine(k, i, j) {
				r.Lines[k] += force
			}
		}
		for k, p := range s.slab.Points {
			if i == s.x.index(p.X) && j == s.y.index(p.Y) {
				r.Points[k] += force
			}
		}
	}
	for k := range r.Corners {
		r.Corners[k] = f.cornerForce(k)
	}
}

func (s *Solver) onLine(k, i, j int) bool {
	l := s.slab.Lines[k]
	if l.Axis == X {
		return i == s.x.index(l.At)
	}
	return j == s.y.index(l.At)
}

// cornerForce is the upward concentrated force at a corner of two simple edges.
func (f *Field) cornerForce(k int) float64 {
	s := f.solver
	if s.slab.BearingOnly || s.slab.Edges[k] != Simple || s.slab.Edges[(k+3)%4] != Simple {
		return 0
	}
	p := s.slab.corners()[k]
	v, ok := f.At(p.X, p.Y)
	if !ok {
		return 0
	}
	return 2 * v.M.XY * [4]float64{1, -1, 1, -1}[k]
}

// Intensity is the support force per length at one place along an edge.
type Intensity struct {
	At        Point
	PerLength float64 // N/m, upwards
}

// EdgeForce appends the support force per length at the nodes of an edge to out.
// The concentrated corner forces are taken out. Between bilateral supports the
// line load is found that does the same work on every cubic along the edge as the
// nodal forces do; on bearings each nodal force is spread over its share of the
// edge.
func (f *Field) EdgeForce(side int, out []Intensity) []Intensity {
	s := f.solver
	nx, ny := s.x.cells(), s.y.cells()
	run := s.run[:0]
	a, at := &s.y, func(m int) int { return s.node(0, m) }
	switch side {
	case SideX1:
		at = func(m int) int { return s.node(nx, m) }
	case SideY0:
		a, at = &s.x, func(m int) int { return s.node(m, 0) }
	case SideY1:
		a, at = &s.x, func(m int) int { return s.node(m, ny) }
	}
	if s.slab.Edges[side] == Free {
		return out
	}
	for m := 0; m <= a.cells(); m++ {
		n := at(m)
		if s.state[4*n] == absent || len(run) > 0 && !s.slabBetween(at(m-1), n) {
			out = f.runForce(side, a, run, m-len(run), out)
			run = run[:0]
		}
		if s.state[4*n] != absent {
			run = append(run, int32(n))
		}
	}
	out = f.runForce(side, a, run, a.cells()+1-len(run), out)
	s.run = run
	return out
}

// runForce does EdgeForce for an unbroken run of nodes whose first is number m0
// along axis a.
func (f *Field) runForce(side int, a *axisGrid, run []int32, m0 int, out []Intensity) []Intensity {
	s := f.solver
	n := 2 * len(run)
	if n < 4 {
		return out
	}
	slope := iWy
	if a == &s.x {
		slope = iWx
	}
	k, v := zeroed(s.edgeK, n*n), resize(s.edgeV, n)
	s.edgeK, s.edgeV = k, v
	for m, node := range run {
		v[2*m] = f.reaction[4*int(node)+iW] - f.cornerAt(int(node))
		v[2*m+1] = f.reaction[4*int(node)+slope]
	}
	if s.slab.BearingOnly && s.slab.Edges[side] == Simple {
		for m, node := range run {
			x, y := s.place(int(node))
			share := 0.0
			if m > 0 {
				share += (a.lines[m0+m] - a.lines[m0+m-1]) / 2
			}
			if m+1 < len(run) {
				share += (a.lines[m0+m+1] - a.lines[m0+m]) / 2
			}
			out = append(out, Intensity{Point{x, y}, v[2*m] / share})
		}
		return out
	}
	for m := range len(run) - 1 {
		for p, w := range a.forms[m0+m].a0 {
			k[(2*m+p/4)*n+2*m+p%4] += w
		}
	}
	if !factorPanel(k, n, n, n) {
		return out
	}
	solveLower(k, v, n, n)
	solveUpper(k, v, n, n)
	for m, node := range run {
		x, y := s.place(int(node))
		out = append(out, Intensity{Point{x, y}, v[2*m]})
	}
	return out
}

// cornerAt is the concentrated force at a node, 0 where it is not a corner.
func (f *Field) cornerAt(n int) float64 {
	if k := f.solver.cornerOf(n); k >= 0 {
		return f.cornerForce(k)
	}
	return 0
}

// cornerOf is the number of the corner at a node, or -1.
func (s *Solver) cornerOf(n int) int {
	nx, ny := s.x.cells(), s.y.cells()
	for k, c := range [4]int{s.node(0, 0), s.node(nx, 0), s.node(nx, ny), s.node(0, ny)} {
		if c == n {
			return k
		}
	}
	return -1
}

// Shear is the average shear force per length, N/m, on a section of the slab: the
// section x = at from y = from to y = to when axis is X, and the other way round
// when it is Y. It comes from the equilibrium of moments, Qx = dMx/dx + dMxy/dy,
// averaged over the section: the first term from the moments on three sections no
// further away than half a thickness (or a cell of the mesh) and on the same side of edges and line
// supports, the second from the twisting moments at the ends. Positive shear goes
// with a moment that grows along the axis. On a line support it is the shear just
// before it. ok is false unless the sections are all slab.
func (f *Field) Shear(axis Axis, at, from, to float64) (q float64, ok bool) {
	s := f.solver
	if s == nil || !(to > from) {
		return 0, false
	}
	length := s.slab.Length
	if axis == Y {
		length = s.slab.Width
	}
	a := s.axis(axis)
	cell := a.find(math.Min(math.Max(at, 0), length))
	reach := math.Max(s.slab.Thickness/2, a.lines[cell+1]-a.lines[cell])
	lo, hi := math.Max(0, at-reach), math.Min(length, at+reach)
	for _, l := range s.slab.Lines {
		switch {
		case l.Axis != axis:
		case l.At < at:
			lo = math.Max(lo, l.At)
		default:
			hi = math.Min(hi, l.At)
		}
	}
	if !(hi > lo) {
		return 0, false
	}
	ok = true
	moment := func(a, b float64) (own, twist float64) {
		x, y := a, b
		if axis == Y {
			x, y = b, a
		}
		m, on := f.MomentAt(x, y)
		ok = ok && on
		if axis == Y {
			return m.Y, m.XY
		}
		return m.X, m.XY
	}
	// The parabola through three moments has this derivative at the section.
	h := (hi - lo) / 2
	u := (at - lo) / h // 0 to 2
	slope := [3]float64{u - 1.5, 2 - 2*u, u - 0.5}
	for k, c := range slope {
		a := lo + float64(k)*h*(1-1e-9)
		for g, t := range gauss8 {
			m, _ := moment(a, from+(to-from)*t)
			q += weight8[g] * c / h * m
		}
	}
	_, t0 := moment(at, from)
	_, t1 := moment(at, to)
	return q + (t1-t0)/(to-from), ok
}
