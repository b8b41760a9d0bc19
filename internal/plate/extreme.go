package plate

import "math"

// Extreme is the largest or smallest value of a quantity and where it is.
type Extreme struct {
	Value float64
	At    Point
}

// Extremes are the largest values in the slab under one load case. Moments within
// half the slab's thickness of a singular point are left out, where those of
// thin-plate theory have no limit: the corner of a rectangular opening, a point
// support, the corner where a clamped edge meets a free one, and the end of a
// support on the rim of a round opening.
type Extremes struct {
	W, Rise      Extreme // largest deflection downwards; upwards (0 or less)
	MxMax, MxMin Extreme
	MyMax, MyMin Extreme
	MxyMax       Extreme // largest twisting moment by size, with its sign
	Sag, Hog     Extreme // largest first and smallest second principal moment
}

// Governing is the principal moment that is largest by size.
func (e *Extremes) Governing() Extreme {
	if -e.Hog.Value > e.Sag.Value {
		return e.Hog
	}
	return e.Sag
}

// Extremes searches the slab: the corners, sides and middles of the cells, the
// rims of round openings, and the circles round singular points; the deflections
// from there to the top between those places.
func (f *Field) Extremes() (e Extremes) {
	first := true
	f.Scan(func(p Point, v Value) {
		e.Take(p, v, first)
		first = false
	})
	if !first {
		f.climb(&e.W, 1)
		f.climb(&e.Rise, -1)
	}
	return e
}

// climb moves a deflection, times sign, to the top beside it: to the highest of
// the four points round it, which come nearer when none is higher.
func (f *Field) climb(e *Extreme, sign float64) {
	const nearest = 1.0 / 256 // of a cell: the top is flat, so what is left is below 1e-5
	slab := &f.solver.slab
	nx, ny := f.solver.Cells()
	dx, dy := slab.Length/float64(nx)/4, slab.Width/float64(ny)/4
	for step, moves := 1.0, 0; step > nearest && moves < 64; {
		from := *e
		for _, p := range [4]Point{{from.At.X - step*dx, from.At.Y}, {from.At.X + step*dx, from.At.Y},
			{from.At.X, from.At.Y - step*dy}, {from.At.X, from.At.Y + step*dy}} {
			if v, ok := f.At(p.X, p.Y); ok && sign*v.W > sign*e.Value+1e-7*math.Abs(e.Value) {
				*e = Extreme{v.W, p}
			}
		}
		if moves++; e.At == from.At {
			step /= 2
		}
	}
}

// Take counts one more point in; the first sets every value.
func (e *Extremes) Take(p Point, v Value, first bool) {
	m1, m2 := v.M.bounds()
	if first {
		*e = Extremes{Extreme{v.W, p}, Extreme{v.W, p}, Extreme{v.M.X, p}, Extreme{v.M.X, p}, Extreme{v.M.Y, p},
			Extreme{v.M.Y, p}, Extreme{v.M.XY, p}, Extreme{m1, p}, Extreme{m2, p}}
		return
	}
	e.W.raise(v.W, p)
	e.Rise.drop(v.W, p)
	e.MxMax.raise(v.M.X, p)
	e.MxMin.drop(v.M.X, p)
	e.MyMax.raise(v.M.Y, p)
	e.MyMin.drop(v.M.Y, p)
	if math.Abs(v.M.XY) > math.Abs(e.MxyMax.Value)*(1+tie) {
		e.MxyMax = Extreme{v.M.XY, p}
	}
	e.Sag.raise(m1, p)
	e.Hog.drop(m2, p)
}

// Ties go to the place found first: a value counts as larger only beyond rounding.
const tie = 1e-9

func (e *Extreme) raise(v float64, at Point) {
	if v > e.Value+tie*math.Abs(e.Value) {
		*e = Extreme{v, at}
	}
}

func (e *Extreme) drop(v float64, at Point) {
	if v < e.Value-tie*math.Abs(e.Value) {
		*e = Extreme{v, at}
	}
}

// Scan visits the points that Extremes looks at.
func (f *Field) Scan(visit func(Point, Value)) {
	s := f.solver
	if s == nil {
		return
	}
	s.findSingular()
	ny := s.y.cells()
	for i := range s.x.cells() {
		for j := range ny {
			switch s.kind[i*ny+j] {
			case solid:
				f.scanCell(i, j, visit)
			case cut:
				f.scanCut(i, j, visit)
			}
		}
	}
	for _, o := range s.rounds {
		f.scanCircle(Point{o.x, o.y}, o.r, 96, visit)
	}
	r := s.slab.Thickness / 2
	for _, p := range s.singular {
		f.scanCircle(p, r*(1+1e-6), 32, visit)
	}
}

// scanCell visits the lower corner, two sides and the middle of a solid cell, and
// its upper sides where the next cell does not have the same moments there.
func (f *Field) scanCell(i, j int, visit func(Point, Value)) {
	s := f.solver
	ends := [2]int{2, 2}
	if i+1 == s.x.cells() || s.x.barrier[i+1] || s.kind[(i+1)*s.y.cells()+j] != solid {
		ends[0] = 3
	}
	if j+1 == s.y.cells() || s.y.barrier[j+1] || s.kind[i*s.y.cells()+j+1] != solid {
		ends[1] = 3
	}
	for a := range ends[0] {
		x := s.x.lines[i] + float64(a)/2*(s.x.lines[i+1]-s.x.lines[i])
		sx := &s.x.halves[3*i+a]
		for b := range ends[1] {
			y := s.y.lines[j] + float64(b)/2*(s.y.lines[j+1]-s.y.lines[j])
			if s.nearSingular(x, y) {
				continue
			}
			v := Value{M: f.momentIn(i, j, sx, &s.y.halves[3*j+b], x, y)}
			v.W = f.deflection(i, j, a, b)
			visit(Point{x, y}, v)
		}
	}
}

// deflection at half-steps a, b (0 to 2) of cell i, j.
func (f *Field) deflection(i, j, a, b int) float64 {
	s := f.solver
	hx, hy := s.x.lines[i+1]-s.x.lines[i], s.y.lines[j+1]-s.y.lines[j]
	nx, ny := halfway(a, hx), halfway(b, hy)
	w := 0.0
	for p := range 4 {
		if nx[p] == 0 {
			continue
		}
		for q := range 4 {
			w += nx[p] * ny[q] * f.u[4*s.node(i+p>>1, j+q>>1)+2*(p&1)+q&1]
		}
	}
	return w
}

// halfway gives the Hermite functions at the start, middle or end of h.
func halfway(a int, h float64) [4]float64 {
	switch a {
	case 0:
		return [4]float64{0: 1}
	case 2:
		return [4]float64{2: 1}
	}
	return [4]float64{0.5, h / 8, 0.5, -h / 8}
}

// scanCut visits the part of a cut cell that is slab.
func (f *Field) scanCut(i, j int, visit func(Point, Value)) {
	s := f.solver
	r := s.cellRect(i*s.y.cells() + j)
	const steps = 4
	for a := range steps + 1 {
		x := r.X0 + (r.X1-r.X0)*float64(a)/steps
		for b := range steps + 1 {
			y := r.Y0 + (r.Y1-r.Y0)*float64(b)/steps
			if s.slab.onSlab(x, y) && !s.nearSingular(x, y) {
				visit(Point{x, y}, f.inCell(i, j, x, y))
			}
		}
	}
}

// inCell evaluates the element of one cell.
func (f *Field) inCell(i, j int, x, y float64) Value {
	v := f.raw(i, j, x, y)
	return Value{v[0], f.solver.moment(i*f.solver.y.cells()+j, v[1], v[2], v[3])}
}

// scanCircle visits n points of a circle, where they are on the slab.
func (f *Field) scanCircle(c Point, r float64, n int, visit func(Point, Value)) {
	for k := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(n))
		x, y := c.X+r*cos, c.Y+r*sin
		if !f.solver.nearSingular(x, y) {
			if v, ok := f.At(x, y); ok {
				visit(Point{x, y}, v)
			}
		}
	}
}

// findSingular lists the points where moments have no limit.
func (s *Solver) findSingular() {
	slab := &s.slab
	s.singular = append(s.singular[:0], slab.Points...)
	for _, o := range slab.Openings {
		if o.Diameter > 0 {
			s.rimEnds(o)
		} else {
			s.openingCorners(o)
		}
	}
	corners := slab.corners()
	for k, p := range corners {
		a, b := slab.Edges[(k+3)%4], slab.Edges[k]
		if a == Clamped && b == Free || a == Free && b == Clamped {
			s.singular = append(s.singular, p)
		}
	}
}

// corners are those of the slab; number k is where edge k begins.
func (s *Slab) corners() [4]Point {
	return [4]Point{{0, 0}, {s.Length, 0}, {s.Length, s.Width}, {0, s.Width}}
}

// openingCorners adds the corners of a rectangular opening inside the slab, and
// where its sides end on a clamped edge.
func (s *Solver) openingCorners(o Opening) {
	slab := &s.slab
	b := o.bounds()
	for _, p := range [4]Point{{b.X0, b.Y0}, {b.X1, b.Y0}, {b.X1, b.Y1}, {b.X0, b.Y1}} {
		if p.X > 0 && p.X < slab.Length && p.Y > 0 && p.Y < slab.Width {
			s.singular = append(s.singular, p)
		}
	}
	for _, x := range [2]float64{b.X0, b.X1} {
		for k, y := range [2]float64{0, slab.Width} {
			if slab.Edges[2*k] == Clamped && x > 0 && x < slab.Length && y >= b.Y0 && y <= b.Y1 {
				s.singular = append(s.singular, Point{x, y})
			}
		}
	}
	for _, y := range [2]float64{b.Y0, b.Y1} {
		for k, x := range [2]float64{slab.Length, 0} {
			if slab.Edges[2*k+1] == Clamped && y > 0 && y < slab.Width && x >= b.X0 && x <= b.X1 {
				s.singular = append(s.singular, Point{x, y})
			}
		}
	}
}

// rimEnds adds the points where a support meets the rim of a round opening
// aslant.
func (s *Solver) rimEnds(o Opening) {
	slab := &s.slab
	r := o.Diameter / 2
	at := func(axis Axis, c float64) {
		if axis == X {
			if h := r*r - (c-o.X)*(c-o.X); h > 0 {
				s.singular = append(s.singular, Point{c, o.Y - math.Sqrt(h)}, Point{c, o.Y + math.Sqrt(h)})
			}
		} else if h := r*r - (c-o.Y)*(c-o.Y); h > 0 {
			s.singular = append(s.singular, Point{o.X - math.Sqrt(h), c}, Point{o.X + math.Sqrt(h), c})
		}
	}
	for _, l := range slab.Lines {
		at(l.Axis, l.At)
	}
	for k, c := range [4]float64{0, slab.Length, slab.Width, 0} {
		if slab.Edges[k] != Free {
			at([4]Axis{Y, X, Y, X}[k], c)
		}
	}
}

func (s *Solver) nearSingular(x, y float64) bool {
	r := s.slab.Thickness / 2
	for _, p := range s.singular {
		if math.Abs(x-p.X) < r && math.Hypot(x-p.X, y-p.Y) < r {
			return true
		}
	}
	return false
}
