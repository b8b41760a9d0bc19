package plate

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/blas"
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
	s.soft = false
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
	s.soft = true
	found := s.search(v)
	s.soft = false
	if !found {
		return ErrContact
	}
	return s.tighten(v)
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

// bearingStiffness is the dense stiffness of the unknowns on bearings.
func (s *Solver) bearingStiffness() []float64 {
	root := &s.fronts[len(s.fronts)-1]
	return s.updates[2*root.depth+root.side]
}

// settle solves for the bearing displacements with the present contacts.
func (s *Solver) settle(v []float64) bool {
	n, k := len(v), s.bearingStiffness()
	s.loose = s.loose[:0]
	for c := range n {
		if !s.seated(c) {
			s.loose = append(s.loose, int32(c))
		}
	}
	clear(v)
	m := len(s.loose)
	if m == 0 {
		return true
	}
	s.seatK, s.seatV = resize(s.seatK, m*m), resize(s.seatV, m)
	for a, row := range s.loose {
		s.seatV[a] = s.seatLoad[row]
		for b, col := range s.loose[:a+1] {
			s.seatK[a*m+b] = k[int(row)*n+int(col)]
		}
		if s.soft && s.order[s.held+int(row)]%4 == iW {
			s.seatK[a*m+a] += softness * k[int(row)*(n+1)]
		}
	}
	if !factorPanel(s.seatK, m, m) {
		return false
	}
	for a, row := range s.loose {
		if p := s.seatK[a*m+a]; !s.soft && !(p*p > loosest*k[int(row)*(n+1)]) {
			return false
		}
	}
	kernel.Dtrsv(blas.Lower, blas.NoTrans, blas.NonUnit, m, s.seatK, m, s.seatV, 1)
	kernel.Dtrsv(blas.Lower, blas.Trans, blas.NonUnit, m, s.seatK, m, s.seatV, 1)
	for a, row := range s.loose {
		v[row] = s.seatV[a]
	}
	return true
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
	copy(s.seatV, s.seatLoad)
	kernel.Dsymv(blas.Lower, n, -1, k, n, v, 1, 1, s.seatV, 1)
	most := 0.0 // the largest support force, for scale
	for c, force := range s.seatV {
		if s.order[s.held+c]%4 == iW {
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
