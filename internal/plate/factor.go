package plate

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/blas"
)

// ErrNotHeld is the error for a slab, or a part of it, that its supports leave
// free to move.
var ErrNotHeld = errors.New("plate: the supports leave the slab, or a part of it, free to move")

// leastPivot is the smallest pivot, as a part of its diagonal before elimination,
// that is not taken for rounding: checkHeld has found the slab held.
const leastPivot = 1e-13

// factor computes the fronts from the leaves to the root.
func (s *Solver) factor() error {
	s.diagonal = zeroed(s.diagonal, len(s.order))
	for k := range s.fronts {
		f := &s.fronts[k]
		m := f.e + f.r
		p := s.panels[f.panel:][:m*f.e]
		clear(p)
		u := resize(s.updates[2*f.depth+f.side], f.r*f.r)
		s.updates[2*f.depth+f.side] = u
		for i := range f.r { // its lower triangle is all that counts
			clear(u[i*f.r:][:i+1])
		}
		if f.left < 0 {
			s.assemble(f, p, u)
		} else {
			s.extend(f.left, f, p, u)
			s.extend(f.right, f, p, u)
		}
		if !factorPanel(p, m, f.e, f.e) {
			return ErrNotHeld
		}
		for i := range f.e {
			if v := p[i*f.e+i]; !(v*v > leastPivot*s.diagonal[f.first+i]) {
				return ErrNotHeld
			}
		}
		subtractOuter(u, f.r, f.r, p[f.e*f.e:], f.e, f.e)
	}
	s.readySeat()
	return nil
}

// stiffness gives the stiffness of a cell, in buf when it has to be formed.
func (s *Solver) stiffness(c int, buf *[256]float64) *[256]float64 {
	if s.kind[c] == cut {
		return &s.cutK[s.cutForm[c]]
	}
	i, j := s.cell(c)
	*buf = [256]float64{}
	addStiffness(buf, s.rigidity[c], s.slab.Nu, &s.x.forms[i], &s.y.forms[j])
	return buf
}

// assemble adds the cells of a leaf to its panel and update matrix.
func (s *Solver) assemble(f *front, p, u []float64) {
	rows := s.rows[f.rows:][:f.e+f.r]
	s.local = resize(s.local, len(s.order))
	for k, row := range rows {
		s.local[row] = int32(k)
	}
	var place [16]int
	for i := f.i0; i < f.i1; i++ {
		for j := f.j0; j < f.j1; j++ {
			c := i*s.y.cells() + j
			if s.kind[c] == void {
				continue
			}
			k := s.stiffness(c, &s.cellK)
			for a := range 16 {
				di, dj, unk := corner(a)
				place[a] = -1
				if n := s.number[4*s.node(i+di, j+dj)+unk]; n >= 0 {
					place[a] = int(s.local[n])
					s.diagonal[n] += k[17*a]
				}
			}
			for a, row := range place {
				for b, col := range place {
					switch {
					case col < 0 || row < col:
					case col < f.e:
						p[row*f.e+col] += k[16*a+b]
					default:
						u[(row-f.e)*f.r+col-f.e] += k[16*a+b]
					}
				}
			}
		}
	}
}

// extend adds the update matrix of a half to the front of the whole.
func (s *Solver) extend(half int, f *front, p, u []float64) {
	h := &s.fronts[half]
	from := s.updates[2*h.depth+h.side]
	up := s.up[h.up:][:h.r]
	own := 0 // how many of them are eliminated in f
	for own < h.r && int(up[own]) < f.e {
		own++
	}
	for a, row := range up {
		src := from[a*h.r:][:a+1]
		dst := p[int(row)*f.e:][:f.e]
		for b, col := range up[:min(own, a+1)] {
			dst[col] += src[b]
		}
		if a < own {
			continue
		}
		rest := u[(int(row)-f.e)*f.r:][:f.r]
		for b := own; b <= a; b++ {
			rest[int(up[b])-f.e] += src[b]
		}
	}
}

// forward eliminates the right-hand side v, which is in the order of
// elimination. It may end before the bearings, which are held then. Where nothing
// presses there is nothing to eliminate: a load on one place goes up one path of
// the tree.
func (s *Solver) forward(v []float64) {
	for k := range s.fronts {
		f := &s.fronts[k]
		own := v[f.first:][:f.e]
		if isZero(own) {
			continue
		}
		p := s.panels[f.panel:]
		solveLower(p, own, f.e, f.e)
		r := s.onward(f, len(v))
		if r == 0 {
			continue
		}
		w := s.work[:r]
		clear(w)
		kernel.Dgemv(blas.NoTrans, r, f.e, 1, p[f.e*f.e:], f.e, own, 1, 0, w, 1)
		for a, row := range s.rows[f.rows+f.e:][:r] {
			v[row] -= w[a]
		}
	}
}

// onward is how many unknowns a front passes on to a right-hand side of n.
func (s *Solver) onward(f *front, n int) int {
	if n == s.held {
		return f.inner
	}
	return f.r
}

// backward substitutes from the root to the leaves.
func (s *Solver) backward(v []float64) {
	for k := len(s.fronts) - 1; k >= 0; k-- {
		f := &s.fronts[k]
		if f.e == 0 {
			continue
		}
		p := s.panels[f.panel:]
		own := v[f.first:][:f.e]
		if r := s.onward(f, len(v)); r > 0 {
			w := s.work[:r]
			for a, row := range s.rows[f.rows+f.e:][:r] {
				w[a] = v[row]
			}
			kernel.Dgemv(blas.Trans, r, f.e, -1, p[f.e*f.e:], f.e, w, 1, 1, own, 1)
		}
		solveUpper(p, own, f.e, f.e)
	}
}

// isZero says whether every number of v is zero.
func isZero(v []float64) bool {
	for _, x := range v {
		if x != 0 {
			return false
		}
	}
	return true
}

// isFinite says whether every number of v is finite.
func isFinite(v []float64) bool {
	sum := 0.0
	for _, x := range v {
		sum += x * 0
	}
	return !math.IsNaN(sum)
}
