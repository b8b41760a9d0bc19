package plate

import (
	"math"
	"slices"
)

// loader turns loads into forces on the unknowns of the nodes.
type loader struct {
	s    *Solver
	out  []float64
	lost bool // some load found no slab to act on
}

// fill makes out the nodal forces of a load case.
func (s *Solver) fill(out []float64, loads []Load) error {
	clear(out)
	for i, load := range loads {
		s.load = loader{s: s, out: out}
		load.apply(&s.load)
		if s.load.lost {
			f := fault("", 0, "a load that lies on the slab")
			f.under(0, "Loads", i)
			return f
		}
	}
	return nil
}

func (u Uniform) apply(l *loader) { l.pressure(l.s.whole(), u.Pressure, 0, 0) }
func (p Linear) apply(l *loader)  { l.pressure(l.s.whole(), p.At0, p.PerX, p.PerY) }

func (q Liquid) apply(l *loader) {
	r := l.s.whole()
	r.Y1 = math.Min(r.Y1, q.Level)
	l.pressure(r, q.UnitWeight*q.Level, 0, -q.UnitWeight)
}

func (p Patch) apply(l *loader) {
	r := Rect{p.X - p.Length/2, p.Y - p.Width/2, p.X + p.Length/2, p.Y + p.Width/2}
	area := l.s.solidArea(r)
	if !(area > 1e-9*p.Length*p.Width) {
		l.lost = true
		return
	}
	l.pressure(r, p.Force/area, 0, 0)
}

func (g Segment) apply(l *loader) {
	// Between crossings of the grid the shape functions are of degree 6 at most.
	s := l.s
	cuts := append(s.ends[:0], 0, 1)
	if dx := g.To.X - g.From.X; dx != 0 {
		for _, c := range s.x.lines {
			cuts = append(cuts, (c-g.From.X)/dx)
		}
	}
	if dy := g.To.Y - g.From.Y; dy != 0 {
		for _, c := range s.y.lines {
			cuts = append(cuts, (c-g.From.Y)/dy)
		}
	}
	slices.Sort(cuts)
	s.ends = cuts
	length := math.Hypot(g.To.X-g.From.X, g.To.Y-g.From.Y)
	for k := 1; k < len(cuts); k++ {
		a, b := max(cuts[k-1], 0), min(cuts[k], 1)
		if !(b > a) {
			continue
		}
		for q := range gauss4 {
			t := a + (b-a)*gauss4[q]
			l.point(g.From.X+t*(g.To.X-g.From.X), g.From.Y+t*(g.To.Y-g.From.Y), g.PerLength*length*(b-a)*weight4[q])
		}
	}
}

func (r Ring) apply(l *loader) {
	o := l.s.slab.Openings[r.Opening]
	if o.Diameter == 0 {
		for _, side := range r.sides(o) {
			side.apply(l)
		}
		return
	}
	const parts = 720 // evenly spaced points integrate a periodic function well
	radius := o.Diameter/2 + r.Offset
	for k := range parts {
		sin, cos := math.Sincos((float64(k) + 0.5) * 2 * math.Pi / parts)
		l.point(o.X+radius*cos, o.Y+radius*sin, r.PerLength*2*math.Pi*radius/parts)
	}
}

func (s *Solver) whole() Rect { return Rect{0, 0, s.slab.Length, s.slab.Width} }

// point adds one force.
func (l *loader) point(x, y, force float64) {
	s := l.s
	i, j := s.slabCell(x, y)
	if !s.isSlab(i, j) {
		l.lost = true
		return
	}
	hx, hy := s.x.lines[i+1]-s.x.lines[i], s.y.lines[j+1]-s.y.lines[j]
	nx, _, _ := hermite((x-s.x.lines[i])/hx, hx)
	ny, _, _ := hermite((y-s.y.lines[j])/hy, hy)
	l.spread(i, j, force, &nx, &ny)
}

// slabCell is the cell that holds x, y: where that is on a line of the grid, one
// that is not void.
func (s *Solver) slabCell(x, y float64) (int, int) {
	i, j := s.x.find(x), s.y.find(y)
	if s.isSlab(i, j) {
		return i, j
	}
	slack := 1e-9 * (s.slab.Length + s.slab.Width)
	near := func(a *axisGrid, c float64, k int) (int, int) {
		lo, hi := k, k
		if c < a.lines[k]+slack {
			lo--
		}
		if c > a.lines[k+1]-slack {
			hi++
		}
		return lo, hi
	}
	i0, i1 := near(&s.x, x, i)
	j0, j1 := near(&s.y, y, j)
	for a := i0; a <= i1; a++ {
		for b := j0; b <= j1; b++ {
			if s.isSlab(a, b) {
				return a, b
			}
		}
	}
	return i, j
}

// spread adds weight times the product of x and y functions to a cell's nodes.
func (l *loader) spread(i, j int, weight float64, nx, ny *[4]float64) {
	for p := range 4 {
		for q := range 4 {
			n := l.s.node(i+p>>1, j+q>>1)
			l.out[4*n+2*(p&1)+q&1] += weight * nx[p] * ny[q]
		}
	}
}

// pressure adds the pressure p0 + px x + py y on the solid part of r.
func (l *loader) pressure(r Rect, p0, px, py float64) {
	s := l.s
	r = s.clip(r)
	if !(r.X1 > r.X0 && r.Y1 > r.Y0) {
		return
	}
	for i := s.x.find(r.X0); i <= s.x.find(r.X1); i++ {
		nx, xnx := s.x.integrals(i, r.X0, r.X1)
		for j := s.y.find(r.Y0); j <= s.y.find(r.Y1); j++ {
			c := i*s.y.cells() + j
			switch s.kind[c] {
			case solid:
				ny, yny := s.y.integrals(j, r.Y0, r.Y1)
				for q := range ny {
					yny[q] = p0*ny[q] + py*yny[q]
				}
				l.spread(i, j, 1, &nx, &yny)
				if px != 0 {
					l.spread(i, j, px, &xnx, &ny)
				}
			case cut:
				l.cutPressure(i, j, r, p0, px, py)
			}
		}
	}
}

// integrals are those of the Hermite functions of interval i over its part from lo
// to hi, and of the functions times the coordinate.
func (a *axisGrid) integrals(i int, lo, hi float64) (n, cn [4]float64) {
	at, h := a.lines[i], a.lines[i+1]-a.lines[i]
	lo, hi = max(lo, at), min(hi, a.lines[i+1])
	if !(hi > lo) {
		return n, cn
	}
	for g := range gauss4 {
		c := lo + (hi-lo)*gauss4[g]
		f, _, _ := hermite((c-at)/h, h)
		for k := range f {
			n[k] += weight4[g] * (hi - lo) * f[k]
			cn[k] += weight4[g] * (hi - lo) * c * f[k]
		}
	}
	return n, cn
}

// cutPressure integrates a pressure over the solid part of a cut cell in r.
func (l *loader) cutPressure(i, j int, r Rect, p0, px, py float64) {
	s := l.s
	cell := s.cellRect(i*s.y.cells() + j)
	part := Rect{max(r.X0, cell.X0), max(r.Y0, cell.Y0), min(r.X1, cell.X1), min(r.Y1, cell.Y1)}
	if !(part.X1 > part.X0 && part.Y1 > part.Y0) {
		return
	}
	s.solidStrips(part)
	hx, hy := cell.X1-cell.X0, cell.Y1-cell.Y0
	for _, st := range s.strips {
		nx, _, _ := hermite((st.x-cell.X0)/hx, hx)
		var sum [4]float64
		for g := range gauss4 {
			y := st.y0 + (st.y1-st.y0)*gauss4[g]
			ny, _, _ := hermite((y-cell.Y0)/hy, hy)
			w := weight4[g] * (st.y1 - st.y0) * (p0 + px*st.x + py*y)
			for q := range sum {
				sum[q] += w * ny[q]
			}
		}
		l.spread(i, j, st.weight, &nx, &sum)
	}
}

// clip cuts r to the slab.
func (s *Solver) clip(r Rect) Rect {
	return Rect{max(r.X0, 0), max(r.Y0, 0), min(r.X1, s.slab.Length), min(r.Y1, s.slab.Width)}
}

// solidArea is the area of slab in r.
func (s *Solver) solidArea(r Rect) float64 {
	r = s.clip(r)
	area := 0.0
	for i := s.x.find(r.X0); i <= s.x.find(r.X1); i++ {
		for j := s.y.find(r.Y0); j <= s.y.find(r.Y1); j++ {
			c := i*s.y.cells() + j
			cell := s.cellRect(c)
			part := Rect{max(r.X0, cell.X0), max(r.Y0, cell.Y0), min(r.X1, cell.X1), min(r.Y1, cell.Y1)}
			if s.kind[c] == void || !(part.X1 > part.X0 && part.Y1 > part.Y0) {
				continue
			}
			if s.kind[c] == solid {
				area += (part.X1 - part.X0) * (part.Y1 - part.Y0)
				continue
			}
			s.solidStrips(part)
			for _, st := range s.strips {
				area += st.weight * (st.y1 - st.y0)
			}
		}
	}
	return area
}
