package plate

import "math"

// checkHeld fails with ErrNotHeld when some connected piece of the slab can move
// without bending: its supports must stop w = 1, w = x and w = y in any mixture.
func (s *Solver) checkHeld() error {
	s.piece = zeroed(s.piece, len(s.kind))
	for c, kind := range s.kind {
		if kind == void || s.piece[c] {
			continue
		}
		if !s.pieceHeld(c) {
			return ErrNotHeld
		}
	}
	return nil
}

// pieceHeld visits the piece of slab that cell c belongs to and looks at the
// smallest pivot of the sum of its supports' constraints on the three motions.
func (s *Solver) pieceHeld(c int) bool {
	var g [3][3]float64
	stop := func(v [3]float64) {
		for a := range 3 {
			for b := range 3 {
				g[a][b] += v[a] * v[b]
			}
		}
	}
	cx, cy := s.slab.Length/2, s.slab.Width/2
	size := math.Max(cx, cy)
	s.queue = append(s.queue[:0], int32(c))
	s.piece[c] = true
	for len(s.queue) > 0 {
		c := int(s.queue[len(s.queue)-1])
		s.queue = s.queue[:len(s.queue)-1]
		i, j := s.cell(c)
		for k := range 4 {
			n := s.node(i+k>>1, j+k&1)
			x, y := s.place(n)
			held := func(u int) bool { return s.state[4*n+u] == fixed || s.state[4*n+u] == contact }
			if held(iW) {
				stop([3]float64{1, (x - cx) / size, (y - cy) / size})
			}
			if held(iWx) {
				stop([3]float64{0, 1, 0})
			}
			if held(iWy) {
				stop([3]float64{0, 0, 1})
			}
		}
		for _, d := range [4][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
			if a, b := i+d[0], j+d[1]; s.isSlab(a, b) && s.joined(i, j, d) {
				if next := a*s.y.cells() + b; !s.piece[next] {
					s.piece[next] = true
					s.queue = append(s.queue, int32(next))
				}
			}
		}
	}
	return positiveDefinite(g)
}

// joined says whether slab crosses the side of cell i, j in direction d: not if
// that side lies within one round opening.
func (s *Solver) joined(i, j int, d [2]int) bool {
	i0, i1, j0, j1 := i, i+1, j, j+1
	switch {
	case d[0] < 0:
		i1 = i
	case d[0] > 0:
		i0 = i + 1
	case d[1] < 0:
		j1 = j
	default:
		j0 = j + 1
	}
	for _, o := range s.rounds {
		if math.Hypot(s.x.lines[i0]-o.x, s.y.lines[j0]-o.y) <= o.r*(1+1e-9) &&
			math.Hypot(s.x.lines[i1]-o.x, s.y.lines[j1]-o.y) <= o.r*(1+1e-9) {
			return false
		}
	}
	return true
}

// positiveDefinite says whether elimination with the largest pivot first meets no
// pivot that is nearly zero.
func positiveDefinite(g [3][3]float64) bool {
	var done [3]bool
	largest := math.Max(g[0][0], math.Max(g[1][1], g[2][2]))
	for range 3 {
		p := -1
		for k := range 3 {
			if !done[k] && (p < 0 || g[k][k] > g[p][p]) {
				p = k
			}
		}
		if !(g[p][p] > 1e-9*largest) {
			return false
		}
		done[p] = true
		for a := range 3 {
			for b := range 3 {
				if !done[a] && !done[b] {
					g[a][b] -= g[a][p] * g[p][b] / g[p][p]
				}
			}
		}
	}
	return true
}
