package plate

import (
	"errors"
	"math"
)

// ErrTips is the error for loads under which a slab on bearing-only supports has
// no equilibrium: it tips or lifts off.
var ErrTips = errors.New("plate: the slab tips or lifts off its bearings under this load")

// ErrContact is the error for a search of the bearings in contact that did not
// settle.
var ErrContact = errors.New("plate: the search for the bearings in contact did not settle")

const (
	mostSteps = 600   // of the search
	patience  = 8     // steps without fewer wrong bearings, before only one is changed
	loosest   = 1e-9  // pivot, as a part of its diagonal, of a slab that tips
	softness  = 1e-10 // stiffness of an open bearing in the careful search, as a part of the slab's
)

// readySeat makes what is left of a new factorisation ready for seat.
func (s *Solver) readySeat() {
	n, k := len(s.order)-s.held, s.bearingStiffness()
	for a := range n {
		for b := range a {
			k[b*n+a] = k[a*n+b]
		}
	}
	s.seatK = resize(s.seatK, n*n)
	s.loose = s.loose[:0]
}

// seat finds which bearings stay in contact and their displacements. The
// unknowns on bearings are eliminated last, so what is left of the stiffness is
// a small dense matrix: v holds their condensed loads on entry, their
// displacements on return. Deflections count positive downwards, the way the
// loads push. A bearing opens where it would pull and closes where the slab would
// sink into it.
//
// The slope along a support is held too where a bearing and its neighbours are in
// contact, as it is along a bilateral support. With that rule the search nearly
// always settles in a few steps, but it need not. If it does not, the bearings
// are taken as separate points with free slopes, which is a convex problem: its
// linear complementarity conditions are met after finitely many steps when the
// first wrong bearing alone is changed as soon as changing all of them no longer
// helps (K. G. Murty 1974; J. J. Judice and F. M. Pires 1994). Slopes are then
// held again where that makes no bearing pull.
//
// The search may start from the contacts on another mesh.
func (s *Solver) seat(v []float64, from []seating) error {
	s.open = zeroed(s.open, len(s.bearings))
	s.loosened = zeroed(s.loosened, len(s.bearings))
	if len(v) == 0 {
		return nil
	}
	s.seatLoad = append(s.seatLoad[:0], v...)
	if len(from) > 0 {
		s.recall(from)
		if s.search(v) {
			return nil
		}
		clear(s.open)
	}
	if s.search(v) {
		return nil
	}
	clear(s.open)
	s.loosen()
	s.soften(true)
	found := s.search(v)
	s.soften(false)
	if !found {
		return ErrContact
	}
	return s.tighten(v)
}

// soften begins or ends the careful search. What was factorised is of no use to
// it.
func (s *Solver) soften(soft bool) {
	s.soft = soft
	s.loose = s.loose[:0]
}

// seating is whether a slab had lifted off a bearing.
type seating struct {
	at   Point
	open bool
}

// recall opens each bearing whose nearest one in from was open.
func (s *Solver) recall(from []seating) {
	for b := range s.bearings {
		x, y := s.place(int(s.bearings[b].node))
		nearest := math.Inf(1)
		for _, old := range from {
			if d := math.Abs(old.at.X-x) + math.Abs(old.at.Y-y); d < nearest {
				nearest, s.open[b] = d, old.open
			}
		}
	}
}

// loosen frees every slope.
func (s *Solver) loosen() {
	for b := range s.loosened {
		s.loosened[b] = true
	}
}

// tighten holds the slopes of bearings in contact, except where that would make
// one wrong.
func (s *Solver) tighten(v []float64) error {
	clear(s.loosened)
	for {
		if !s.settle(v) {
			return ErrTips
		}
		s.findWrong(v)
		if len(s.wrong) == 0 {
			return nil
		}
		grown := false
		free := func(b int32) {
			if b >= 0 && !s.loosened[b] {
				s.loosened[b] = true
				grown = true
			}
		}
		for _, b := range s.wrong {
			free(b)
			for _, n := range s.bearings[b].next {
				free(n)
			}
		}
		if !grown {
			s.loosen()
			if !s.settle(v) {
				return ErrTips
			}
			return nil
		}
	}
}

// search changes contacts until none is wrong. It gives up when there is no
// equilibrium, or after many steps; with slopes held, when patience ends.
func (s *Solver) search(v []float64) bool {
	best, left := len(v)+1, patience
	for range mostSteps {
		if !s.settle(v) {
			return false
		}
		s.findWrong(v)
		wrong := s.wrong
		if len(wrong) == 0 {
			return true
		}
		left--
		if len(wrong) < best {
			best, left = len(wrong), patience
		}
		if left < 0 {
			if !s.soft {
				return false
			}
			wrong = wrong[:1]
		}
		for _, b := range wrong {
			s.open[b] = !s.open[b]
		}
	}
	return false
}

// bearingStiffness is the dense stiffness of the unknowns on bearings, both
// triangles of it.
func (s *Solver) bearingStiffness() []float64 {
	root := &s.fronts[len(s.fronts)-1]
	return s.updates[2*root.depth+root.side]
}

// settle solves for the bearing displacements with the present contacts.
func (s *Solver) settle(v []float64) bool {
	n, m := len(v), s.factorLoose(len(v))
	clear(v)
	if m < 0 {
		return false
	}
	s.seatV = resize(s.seatV, n)
	x := s.seatV[:m]
	for a, row := range s.loose[:m] {
		x[a] = s.seatLoad[row]
	}
	solveLower(s.seatK, x, m, n)
	solveUpper(s.seatK, x, m, n)
	for a, row := range s.loose[:m] {
		v[row] = x[a]
	}
	return true
}

// factorLoose makes the Cholesky factor of the stiffness of the m loose ones of n
// bearing unknowns, or gives -1 where they have no equilibrium. They stand in the
// order in which they came loose: what was factorised before stays as far as all
// of it is loose still, and the rest follows. So the steps of a search, and the
// searches of other load cases on the way to much the same contacts, factorise
// little that is new.
func (s *Solver) factorLoose(n int) (m int) {
	s.placed = zeroed(s.placed, n)
	keep := 0
	for keep < len(s.loose) && !s.seated(int(s.loose[keep])) {
		s.placed[s.loose[keep]] = true
		keep++
	}
	m = keep
	for c := range n {
		if s.placed[c] || s.seated(c) {
			continue
		}
		s.loose = append(s.loose[:m], int32(c))
		m++
	}
	if m == keep {
		return m
	}
	k, p := s.bearingStiffness(), s.seatK
	for a := keep; a < m; a++ {
		row := int(s.loose[a])
		for b, col := range s.loose[:a+1] {
			p[a*n+b] = k[row*n+int(col)]
		}
		if s.soft && s.order[s.held+row]%4 == iW {
			p[a*n+a] += softness * k[row*(n+1)]
		}
	}
	solveRows(p, p[keep*n:], m-keep, keep, n)
	subtractOuter(p[keep*n+keep:], m-keep, n, p[keep*n:], keep, n)
	ok := factorPanel(p[keep*n+keep:], m-keep, m-keep, n)
	for a := keep; ok && a < m; a++ {
		pivot := p[a*n+a]
		ok = s.soft || pivot*pivot > loosest*k[int(s.loose[a])*(n+1)]
	}
	if !ok {
		s.loose = s.loose[:keep]
		return -1
	}
	return m
}

// seated says whether bearing unknown c is held at zero.
func (s *Solver) seated(c int) bool {
	d := int(s.order[s.held+c])
	b := s.bearingAt[d/4]
	if s.open[b] {
		return false
	}
	next := s.bearings[b].next
	if s.loosened[b] && d%4 != iW {
		return false
	}
	switch d % 4 {
	case iWx:
		return !s.opened(next[0]) && !s.opened(next[1])
	case iWy:
		return !s.opened(next[2]) && !s.opened(next[3])
	}
	return true
}

func (s *Solver) opened(b int32) bool { return b >= 0 && s.open[b] }

// findWrong lists the bearings that pull and the open ones that the slab sinks
// into.
func (s *Solver) findWrong(v []float64) {
	n, k := len(v), s.bearingStiffness()
	s.seatV = resize(s.seatV, n)
	most := 0.0 // the largest support force, for scale
	for c := range n {
		if s.order[s.held+c]%4 == iW && s.seated(c) {
			force := s.seatLoad[c] - kernel.Ddot(n, k[c*n:], 1, v, 1)
			s.seatV[c] = force
			most = max(most, force, -force)
		}
	}
	const slack = 1e-8
	s.wrong = s.wrong[:0]
	for c := range n {
		d := s.order[s.held+c]
		if d%4 != iW {
			continue
		}
		b := s.bearingAt[d/4]
		by := -s.seatV[c] // how strongly it pulls, or would have to push
		if s.open[b] {
			by = v[c] * k[c*(n+1)]
		}
		if by > slack*most {
			s.wrong = append(s.wrong, b)
		}
	}
}
