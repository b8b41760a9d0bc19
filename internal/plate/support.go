package plate

// What becomes of one unknown of a node.
const (
	absent  uint8 = iota // no slab at the node
	fixed                // held at zero
	unknown              // eliminated
	contact              // a bearing support that may open: eliminated last
)

// Unknowns of a node, in order; 4*node+iW is its place in a vector.
const (
	iW = iota
	iWy
	iWx
	iWxy
)

// bearing is a node on a support that cannot pull.
type bearing struct {
	node int32
	// next are the neighbours of the node along its supports, by their index,
	// -1 for none: two along x, then two along y.
	next [4]int32
}

func (s *Solver) node(i, j int) int { return i*(s.y.cells()+1) + j }

func (s *Solver) nodes() int { return (s.x.cells() + 1) * (s.y.cells() + 1) }

// markUnknowns decides what becomes of every unknown.
func (s *Solver) markUnknowns() {
	nx, ny := s.x.cells(), s.y.cells()
	s.state = zeroed(s.state, 4*s.nodes())
	for c, kind := range s.kind {
		if kind == void {
			continue
		}
		i, j := s.cell(c)
		for k := range 4 {
			n := s.node(i+k>>1, j+k&1)
			for u := range 4 {
				s.state[4*n+u] = unknown
			}
		}
	}
	s.bearings = s.bearings[:0]
	s.bearingAt = resize(s.bearingAt, s.nodes())
	for i := range s.bearingAt {
		s.bearingAt[i] = -1
	}
	for side, edge := range s.slab.Edges {
		if edge == Free {
			continue
		}
		switch side {
		case SideY0:
			s.hold(Y, 0, edge)
		case SideY1:
			s.hold(Y, ny, edge)
		case SideX0:
			s.hold(X, 0, edge)
		case SideX1:
			s.hold(X, nx, edge)
		}
	}
	for _, l := range s.slab.Lines {
		s.hold(l.Axis, s.axis(l.Axis).index(l.At), Simple)
	}
	for _, p := range s.slab.Points {
		n := s.node(s.x.index(p.X), s.y.index(p.Y))
		if s.slab.BearingOnly {
			s.bear(n)
			s.lower(4*n+iW, contact)
		} else {
			s.lower(4*n+iW, fixed)
		}
	}
}

// lower sets the state of an unknown unless a stronger one holds already.
func (s *Solver) lower(u int, state uint8) {
	if s.state[u] > state || s.state[u] == unknown {
		s.state[u] = state
	}
}

// bear makes a node a bearing and gives its index.
func (s *Solver) bear(n int) int32 {
	if s.bearingAt[n] < 0 {
		s.bearingAt[n] = int32(len(s.bearings))
		s.bearings = append(s.bearings, bearing{int32(n), [4]int32{-1, -1, -1, -1}})
	}
	return s.bearingAt[n]
}

// hold supports the nodes of one grid line: across x at line k, or across y.
func (s *Solver) hold(axis Axis, k int, edge Edge) {
	count, along, slope := s.y.cells(), iWy, iWx
	if axis == Y {
		count, along, slope = s.x.cells(), iWx, iWy
	}
	at := func(m int) int {
		if axis == X {
			return s.node(k, m)
		}
		return s.node(m, k)
	}
	state := fixed
	if s.slab.BearingOnly && edge == Simple {
		state = contact
	}
	previous := int32(-1)
	for m := 0; m <= count; m++ {
		n := at(m)
		if s.state[4*n] == absent {
			previous = -1
			continue
		}
		s.lower(4*n+iW, state)
		s.lower(4*n+along, state)
		if edge == Clamped {
			s.lower(4*n+slope, fixed)
			s.lower(4*n+iWxy, fixed)
		}
		if state != contact {
			continue
		}
		b := s.bear(n)
		if previous >= 0 && s.slabBetween(at(m-1), n) {
			d := 0
			if axis == X {
				d = 2
			}
			s.bearings[b].next[d] = previous
			s.bearings[previous].next[d+1] = b
		}
		previous = b
	}
}

// slabBetween says whether two neighbouring nodes share a cell of slab.
func (s *Solver) slabBetween(a, b int) bool {
	ny := s.y.cells()
	i, j := a/(ny+1), a%(ny+1)
	if s.isSlab(i, j) {
		return true
	}
	if b-a == 1 {
		return s.isSlab(i-1, j)
	}
	return s.isSlab(i, j-1)
}

// isSlab says whether there is slab in the cell i, j.
func (s *Solver) isSlab(i, j int) bool {
	nx, ny := s.x.cells(), s.y.cells()
	return i >= 0 && i < nx && j >= 0 && j < ny && s.kind[i*ny+j] != void
}
