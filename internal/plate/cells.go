package plate

import (
	"math"
	"slices"
)

// What a cell of the grid is made of.
const (
	void  uint8 = iota // inside an opening
	solid              // all slab
	cut                // crossed by the rim of a round opening
)

// fictitious is the part of its stiffness that a cut cell keeps in the opening,
// so that a cell with a sliver of slab still has a well-conditioned stiffness.
const fictitious = 1e-7

// round is a round opening.
type round struct{ x, y, r float64 }

// strip is one abscissa of the integration over the solid part of a cell: at x,
// with the given weight, the slab goes from y0 to y1.
type strip struct{ x, weight, y0, y1 float64 }

// cell is one rectangle of the grid.
func (s *Solver) cell(c int) (i, j int) { ny := s.y.cells(); return c / ny, c % ny }

func (s *Solver) cellRect(c int) Rect {
	i, j := s.cell(c)
	return Rect{s.x.lines[i], s.y.lines[j], s.x.lines[i+1], s.y.lines[j+1]}
}

// classify finds what each cell is made of and its flexural rigidity.
func (s *Solver) classify() {
	slab := &s.slab
	n := s.x.cells() * s.y.cells()
	s.kind = resize(s.kind, n)
	s.rigidity = resize(s.rigidity, n)
	s.cutForm = resize(s.cutForm, n)
	s.cutK = s.cutK[:0]
	s.rounds = s.rounds[:0]
	for _, o := range slab.Openings {
		if o.Diameter > 0 {
			s.rounds = append(s.rounds, round{o.X, o.Y, o.Diameter / 2})
		}
	}
	for c := range n {
		r := s.cellRect(c)
		mx, my := (r.X0+r.X1)/2, (r.Y0+r.Y1)/2
		t := slab.Thickness
		for _, z := range slab.Zones {
			if mx > z.X0 && mx < z.X1 && my > z.Y0 && my < z.Y1 {
				t = z.Thickness
			}
		}
		s.rigidity[c] = slab.E * t * t * t / (12 * (1 - slab.Nu*slab.Nu))
		s.kind[c] = s.madeOf(r)
		if s.kind[c] == cut {
			s.cutForm[c] = int32(len(s.cutK))
			s.cutK = append(s.cutK, [256]float64{})
			s.cutStiffness(&s.cutK[len(s.cutK)-1], c)
		}
	}
}

// madeOf says whether a cell is solid, void or cut.
func (s *Solver) madeOf(r Rect) uint8 {
	mx, my := (r.X0+r.X1)/2, (r.Y0+r.Y1)/2
	kind := solid
	for _, o := range s.slab.Openings {
		if o.Diameter == 0 && o.contains(mx, my) {
			return void
		}
	}
	for _, o := range s.rounds {
		dx := math.Max(0, math.Max(r.X0-o.x, o.x-r.X1))
		dy := math.Max(0, math.Max(r.Y0-o.y, o.y-r.Y1))
		fx := math.Max(math.Abs(r.X0-o.x), math.Abs(r.X1-o.x))
		fy := math.Max(math.Abs(r.Y0-o.y), math.Abs(r.Y1-o.y))
		switch {
		case math.Hypot(fx, fy) <= o.r*(1+1e-12):
			return void
		case math.Hypot(dx, dy) < o.r*(1-1e-9):
			kind = cut
		}
	}
	return kind
}

// cutStiffness integrates the stiffness of a cut cell over its solid part.
func (s *Solver) cutStiffness(k *[256]float64, c int) {
	i, j := s.cell(c)
	d, nu := s.rigidity[c], s.slab.Nu
	r := s.cellRect(c)
	hx, hy := r.X1-r.X0, r.Y1-r.Y0
	addStiffness(k, fictitious*d, nu, &s.x.forms[i], &s.y.forms[j])
	s.solidStrips(r)
	for a := 0; a < len(s.strips); {
		var fx, fy forms
		st := s.strips[a]
		n, dn, ddn := hermite((st.x-r.X0)/hx, hx)
		fx.add(st.weight, &n, &dn, &ddn)
		for ; a < len(s.strips) && s.strips[a].x == st.x; a++ {
			y0, y1 := s.strips[a].y0, s.strips[a].y1
			for g := range gauss4 {
				n, dn, ddn := hermite((y0+(y1-y0)*gauss4[g]-r.Y0)/hy, hy)
				fy.add(weight4[g]*(y1-y0), &n, &dn, &ddn)
			}
		}
		addStiffness(k, d, nu, &fx, &fy)
	}
}

// solidStrips fills s.strips with the solid part of r. Between the places where
// a rim enters or leaves r, or is vertical, the abscissae follow x = 3s^2-2s^3,
// which takes away the square-root ends of a circle, at eight Gauss points.
func (s *Solver) solidStrips(r Rect) {
	b := append(s.ends[:0], r.X0, r.X1)
	for _, o := range s.rounds {
		b = append(b, o.x-o.r, o.x+o.r)
		for _, y := range [2]float64{r.Y0, r.Y1} {
			if h := o.r*o.r - (y-o.y)*(y-o.y); h > 0 {
				b = append(b, o.x-math.Sqrt(h), o.x+math.Sqrt(h))
			}
		}
	}
	slices.Sort(b)
	s.ends = b
	s.strips = s.strips[:0]
	for k := 1; k < len(b); k++ {
		lo, hi := math.Max(b[k-1], r.X0), math.Min(b[k], r.X1)
		if !(hi-lo > 1e-12*(r.X1-r.X0)) {
			continue
		}
		for g, t := range gauss8 {
			x := lo + (hi-lo)*t*t*(3-2*t)
			s.columns(x, weight8[g]*6*t*(1-t)*(hi-lo), r.Y0, r.Y1)
		}
	}
}

// columns appends the solid intervals of the vertical at x.
func (s *Solver) columns(x, weight, y0, y1 float64) {
	for y0 < y1 {
		// The first rim that ends the solid interval from y0.
		lo, hi := y1, y1
		for _, o := range s.rounds {
			h := o.r*o.r - (x-o.x)*(x-o.x)
			if h <= 0 {
				continue
			}
			bottom, top := o.y-math.Sqrt(h), o.y+math.Sqrt(h)
			if top > y0 && bottom < lo {
				lo, hi = math.Max(bottom, y0), top
			}
		}
		if lo > y0 {
			s.strips = append(s.strips, strip{x, weight, y0, lo})
		}
		y0 = math.Max(hi, y0)
	}
}
