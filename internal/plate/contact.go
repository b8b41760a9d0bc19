package plate

import (
	"errors"

	"gonum.org/v1/gonum/blas"
)

// ErrTips is the error for loads under which a slab on bearing-only supports has
// no equilibrium: it tips or lifts off.
var ErrTips = errors.New("plate: the slab tips or lifts off its bearings under this load")

// ErrContact is the error for a search of the bearings in contact that did not
// settle.
var ErrContact = errors.New("plate: the search for the bearings in contact did not settle")

const (
	boldSteps = 12  // steps that change every wrong bearing at once
	mostSteps = 400 // steps after which the search is given up
)

// seat finds which bearings stay in contact and their displacements. The
// unknowns on bearings are eliminated last, so what is left of the stiffness is
// a small dense matrix: v holds their condensed loads on entry, their
// displacements on return. A bearing opens where it would pull and closes where
// the slab would sink into it; the slope along a support is held at a bearing
// whose neighbours are in contact too. Deflections count positive downwards, the
// way the loads push.
func (s *Solver) seat(v []float64) error {
	s.open = zeroed(s.open, len(s.bearings))
	if len(v) == 0 {
		return nil
	}
	root := &s.fronts[len(s.fronts)-1]
	k := s.updates[2*root.depth+root.side]
	s.seatLoad = append(s.seatLoad[:0], v...)
	bold := true
	for step := 0; step < mostSteps; step++ {
		if step == boldSteps {
			bold = false
		}
		if !s.settle(k, v) {
			if !bold {
				return ErrTips
			}
			// Opening one bearing at a time finds an equilibrium if there is one.
			bold = false
			clear(s.open)
			continue
		}
		if s.adjust(k, v, bold) {
			return nil
		}
	}
	return ErrContact
}

// settle solves for the bearing displacements with the present contacts.
func (s *Solver) settle(k, v []float64) bool {
	n := len(v)
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
	}
	if !factorPanel(s.seatK, m, m) {
		return false
	}
	for a, row := range s.loose {
		if p := s.seatK[a*m+a]; !(p*p > leastPivot*k[int(row)*(n+1)]) {
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
	switch d % 4 {
	case iWx:
		return !s.opened(next[0]) && !s.opened(next[1])
	case iWy:
		return !s.opened(next[2]) && !s.opened(next[3])
	}
	return true
}

func (s *Solver) opened(b int32) bool { return b >= 0 && s.open[b] }

// adjust opens bearings that pull and closes those that the slab sinks into: all
// of them when bold, else the worst one. It reports true when none is wrong.
func (s *Solver) adjust(k, v []float64, bold bool) bool {
	n := len(v)
	most := 0.0 // the largest support force, for scale
	s.seatV = resize(s.seatV, n)
	copy(s.seatV, s.seatLoad)
	kernel.Dsymv(blas.Lower, n, -1, k, n, v, 1, 1, s.seatV, 1)
	for c, force := range s.seatV {
		if s.order[s.held+c]%4 == iW {
			most = max(most, force, -force)
		}
	}
	const slack = 1e-9
	worst, worstBy, right := int32(-1), 0.0, true
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
		if by <= slack*most {
			continue
		}
		right = false
		if bold {
			s.open[b] = !s.open[b]
		}
		if by > worstBy {
			worst, worstBy = b, by
		}
	}
	if !bold && worst >= 0 {
		s.open[worst] = !s.open[worst]
	}
	return right
}
