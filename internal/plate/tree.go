package plate

import (
	"math"
	"slices"
)

// Nested dissection (A. George, "Nested dissection of a regular finite element
// mesh", 1973): the slab is halved again and again by lines of the grid. The
// unknowns inside a half are eliminated before those of the line, so the work of
// a factorisation grows as n^1.5 and not n^2 as it does for a band.

// leafCells is the most cells along a side of a rectangle that is not halved.
const leafCells = 3

// front is the dense part of the stiffness of one rectangle of cells: the
// unknowns that are eliminated there, then those it shares with others.
type front struct {
	i0, i1, j0, j1 int // cells
	left, right    int // halves, -1 for a rectangle that is not halved
	depth, side    int // which update matrix it writes

	first  int // elimination number of its first own unknown
	e, r   int // unknowns eliminated, unknowns passed on
	inner  int // of those passed on, how many are not on bearings: the first
	rows   int // where its unknowns stand in Solver.rows
	up     int // where the places in the parent of those passed on stand in Solver.up
	panel  int // where its e columns stand in Solver.panels
	parent int
}

// plan lays out the elimination for the current grid and supports.
func (s *Solver) plan() {
	s.fronts = s.fronts[:0]
	s.order = s.order[:0]
	s.number = resize(s.number, len(s.state))
	for i := range s.number {
		s.number[i] = -1
	}
	s.rows, s.up = s.rows[:0], s.up[:0]
	root := s.halve(0, s.x.cells(), 0, s.y.cells(), 0, 0)
	s.fronts[root].parent = -1
	s.held = len(s.order)
	for _, b := range s.bearings {
		for u := range iWxy {
			if d := 4*int(b.node) + u; s.state[d] == contact {
				s.number[d] = int32(len(s.order))
				s.order = append(s.order, int32(d))
			}
		}
	}
	size, depth := 0, 0
	s.flops = 0
	for k := range s.fronts {
		f := &s.fronts[k]
		s.gatherRows(f)
		f.panel = size
		size += (f.e + f.r) * f.e
		depth = max(depth, f.depth)
		e, r := float64(f.e), float64(f.r)
		s.flops += e*e*e/3 + e*e*r + e*r*r
	}
	s.panels = resize(s.panels, size)
	s.updates = resize(s.updates, 2*(depth+1))
	for k := range s.fronts {
		s.linkRows(&s.fronts[k])
	}
}

// halve adds the fronts of a rectangle of cells, halves first, and numbers the
// unknowns that are eliminated in each.
func (s *Solver) halve(i0, i1, j0, j1, depth, side int) int {
	f := front{i0: i0, i1: i1, j0: j0, j1: j1, left: -1, right: -1, depth: depth, side: side}
	own := [4]int{i0, i1, j0, j1} // the nodes from which unknowns are eliminated
	switch wide, high := i1-i0, j1-j0; {
	case wide <= leafCells && high <= leafCells:
	case wide >= high:
		m := s.cutAt(X, i0, i1, j0, j1)
		f.left = s.halve(i0, m, j0, j1, depth+1, 0)
		f.right = s.halve(m, i1, j0, j1, depth+1, 1)
		own[0], own[1] = m, m
	default:
		m := s.cutAt(Y, j0, j1, i0, i1)
		f.left = s.halve(i0, i1, j0, m, depth+1, 0)
		f.right = s.halve(i0, i1, m, j1, depth+1, 1)
		own[2], own[3] = m, m
	}
	f.first = len(s.order)
	s.eliminate(&f, own[0], own[1], own[2], own[3])
	f.e = len(s.order) - f.first
	k := len(s.fronts)
	if f.left >= 0 {
		s.fronts[f.left].parent, s.fronts[f.right].parent = k, k
	}
	s.fronts = append(s.fronts, f)
	return k
}

// cutAt is the line between lo and hi on which a rectangle is best halved: of
// those near its middle the one with the fewest unknowns, such as one through an
// opening.
func (s *Solver) cutAt(axis Axis, lo, hi, from, to int) int {
	middle := (lo + hi) / 2
	best, least := middle, math.MaxInt
	for off := range (hi-lo)/6 + 1 {
		for _, m := range [2]int{middle - off, middle + off} {
			n := 0
			for k := from; k <= to; k++ {
				node := s.node(m, k)
				if axis == Y {
					node = s.node(k, m)
				}
				for u := range 4 {
					if s.state[4*node+u] == unknown {
						n++
					}
				}
			}
			if n < least {
				best, least = m, n
			}
		}
	}
	return best
}

// eliminate numbers the unknowns of nodes i0..i1, j0..j1 that no rectangle
// outside f shares.
func (s *Solver) eliminate(f *front, i0, i1, j0, j1 int) {
	nx, ny := s.x.cells(), s.y.cells()
	for i := i0; i <= i1; i++ {
		if i == f.i0 && i > 0 || i == f.i1 && i < nx {
			continue
		}
		for j := j0; j <= j1; j++ {
			if j == f.j0 && j > 0 || j == f.j1 && j < ny {
				continue
			}
			n := s.node(i, j)
			for d := 4 * n; d < 4*n+4; d++ {
				if s.state[d] == unknown && s.number[d] < 0 {
					s.number[d] = int32(len(s.order))
					s.order = append(s.order, int32(d))
				}
			}
		}
	}
}

// gatherRows lists the unknowns of a front by their elimination number.
func (s *Solver) gatherRows(f *front) {
	f.rows = len(s.rows)
	if f.left < 0 {
		for i := f.i0; i <= f.i1; i++ {
			for n := s.node(i, f.j0); n <= s.node(i, f.j1); n++ {
				for d := 4 * n; d < 4*n+4; d++ {
					if s.number[d] >= 0 {
						s.rows = append(s.rows, s.number[d])
					}
				}
			}
		}
		slices.Sort(s.rows[f.rows:])
	} else {
		a, b := s.passed(f.left), s.passed(f.right)
		for len(a) > 0 && len(b) > 0 {
			switch {
			case a[0] < b[0]:
				s.rows, a = append(s.rows, a[0]), a[1:]
			case a[0] > b[0]:
				s.rows, b = append(s.rows, b[0]), b[1:]
			default:
				s.rows, a, b = append(s.rows, a[0]), a[1:], b[1:]
			}
		}
		s.rows = append(append(s.rows, a...), b...)
	}
	f.r = len(s.rows) - f.rows - f.e
	f.inner, _ = slices.BinarySearch(s.rows[f.rows+f.e:], int32(s.held))
}

// passed lists the unknowns that a front passes on.
func (s *Solver) passed(k int) []int32 {
	f := &s.fronts[k]
	return s.rows[f.rows+f.e : f.rows+f.e+f.r]
}

// linkRows finds the places in the parent of the unknowns that f passes on. Both
// lists are in order, and the parent's holds all of f's.
func (s *Solver) linkRows(f *front) {
	f.up = len(s.up)
	if f.parent < 0 {
		return
	}
	p := &s.fronts[f.parent]
	place := int32(0)
	for _, row := range s.rows[f.rows+f.e : f.rows+f.e+f.r] {
		for s.rows[p.rows+int(place)] != row {
			place++
		}
		s.up = append(s.up, place)
	}
}
