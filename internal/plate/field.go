package plate

import "math"

// Field is the answer to one load case. The zero value is ready for Solve. It
// stays valid until its Solver factorises again.
type Field struct {
	Load     float64 // total load, N
	Reaction float64 // total upward support force, N
	// Residual is the largest unbalanced nodal force, or the difference between
	// loads and reactions if that is larger, as a part of the load (its parts
	// added without sign).
	Residual float64
	// Uplift says where a bearing-only slab has lifted off its supports.
	Uplift Uplift

	solver    *Solver
	u         []float64 // unknowns of the nodes
	force     []float64 // loads on them
	condensed []float64 // the same, eliminated
	reaction  []float64 // support forces on them
	free      []bool    // the unknowns on bearings that are not held
	seats     []seating
	curve     [][3]float64
}

// Uplift is how far a slab rises from its bearings.
type Uplift struct {
	Length float64 // m of support without contact (each node counts its share)
	Most   float64 // m, the largest rise of a support point
	At     Point   // where that is
	// Corners says which corners have lifted: (0,0), (Length,0),
	// (Length,Width), (0,Width).
	Corners [4]bool
}

// Moment is a bending moment per length at a point, N (N m per m). Mx bends
// about the y axis and stretches fibres along x. Positive moments stretch the far
// face, the one away from a load that pushes.
type Moment struct{ X, Y, XY float64 }

// Value is what the slab does at one point.
type Value struct {
	W float64 // deflection, m, positive with the load
	M Moment
}

// Principal gives the principal moments, first the larger, and the angle from the
// x axis to the direction in which the first one stretches fibres.
func (m Moment) Principal() (first, second, angle float64) {
	first, second = m.bounds()
	return first, second, math.Atan2(m.XY, (m.X-m.Y)/2) / 2
}

// bounds gives the principal moments without their direction.
func (m Moment) bounds() (first, second float64) {
	mean, half := (m.X+m.Y)/2, (m.X-m.Y)/2
	r := math.Sqrt(half*half + m.XY*m.XY)
	return mean + r, mean - r
}

// WoodArmer gives the moments for which reinforcement along x and along y is
// proportioned, on the far face (bottom, 0 or more) and on the near face (top, 0
// or less). R. H. Wood, "The reinforcement of slabs in accordance with a
// pre-determined field of moments", and G. S. T. Armer, Concrete 2, 1968.
func (m Moment) WoodArmer() (bottom, top [2]float64) {
	t := math.Abs(m.XY)
	bottom = [2]float64{m.X + t, m.Y + t}
	top = [2]float64{m.X - t, m.Y - t}
	for k, other := range [2]float64{m.Y, m.X} {
		own := [2]float64{m.X, m.Y}[k]
		if bottom[k] < 0 {
			bottom[k] = 0
			bottom[1-k] = max(0, other+m.XY*m.XY/math.Abs(own))
		}
		if top[k] > 0 {
			top[k] = 0
			top[1-k] = min(0, other-m.XY*m.XY/math.Abs(own))
		}
	}
	return bottom, top
}

// curvatures computes the second derivatives of the deflection at the two by two
// Gauss points of each cell, where those of cubic elements are most accurate.
func (f *Field) curvatures() {
	s := f.solver
	nx, ny := s.x.cells(), s.y.cells()
	f.curve = resize(f.curve, 4*nx*ny)
	for i := range nx {
		for j := range ny {
			if s.kind[i*ny+j] == void {
				continue
			}
			var u [4][4]float64 // by the functions of x, then of y
			for p := range 4 {
				base := 4*s.node(i+p>>1, j) + 2*(p&1)
				u[p] = [4]float64{f.u[base], f.u[base+1], f.u[base+4], f.u[base+5]}
			}
			for b := range 2 {
				y := &s.y.shapes[2*j+b]
				var w, wy, wyy [4]float64
				for p := range 4 {
					w[p], wy[p], wyy[p] = dot4(&u[p], &y.n), dot4(&u[p], &y.d), dot4(&u[p], &y.dd)
				}
				for a := range 2 {
					x := &s.x.shapes[2*i+a]
					f.curve[(2*i+a)*2*ny+2*j+b] = [3]float64{dot4(&w, &x.dd), dot4(&wyy, &x.n), dot4(&wy, &x.d)}
				}
			}
		}
	}
}

func dot4(a, b *[4]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] + a[3]*b[3] }

// raw evaluates the element of cell i, j: w, wxx, wyy, wxy.
func (f *Field) raw(i, j int, x, y float64) (v [4]float64) {
	s := f.solver
	hx, hy := s.x.lines[i+1]-s.x.lines[i], s.y.lines[j+1]-s.y.lines[j]
	nx, dx, ddx := hermite((x-s.x.lines[i])/hx, hx)
	ny, dy, ddy := hermite((y-s.y.lines[j])/hy, hy)
	for p := range 4 {
		base := 4*s.node(i+p>>1, j) + 2*(p&1)
		over := base + 4
		u := [4]float64{f.u[base], f.u[base+1], f.u[over], f.u[over+1]}
		var w, wy, wyy float64
		for q := range 4 {
			w += u[q] * ny[q]
			wy += u[q] * dy[q]
			wyy += u[q] * ddy[q]
		}
		v[0] += nx[p] * w
		v[1] += ddx[p] * w
		v[2] += nx[p] * wyy
		v[3] += dx[p] * wy
	}
	return v
}

// moment turns second derivatives in cell c into moments.
func (s *Solver) moment(c int, wxx, wyy, wxy float64) Moment {
	d, nu := s.rigidity[c], s.slab.Nu
	return Moment{-d * (wxx + nu*wyy), -d * (wyy + nu*wxx), -d * (1 - nu) * wxy}
}

// stencil is an interpolation from up to four Gauss lines of one direction.
type stencil struct {
	from, count int
	weight      [4]float64
}

// stencilAt chooses the Gauss lines to interpolate from at c in interval i: its
// own two and, where no barrier is between, the two of the nearest neighbour.
func (a *axisGrid) stencilAt(i int, c float64) stencil {
	st := stencil{from: 2 * i, count: 2}
	low := i > 0 && !a.barrier[i]
	high := i+1 < a.cells() && !a.barrier[i+1]
	switch {
	case low && (!high || c-a.lines[i] < a.lines[i+1]-c):
		st = stencil{from: 2*i - 2, count: 4}
	case high:
		st = stencil{from: 2 * i, count: 4}
	}
	if st.count == 2 {
		return a.own(i, c)
	}
	scale := &a.scale[st.from/2]
	g := a.gauss[st.from:][:4]
	d0, d1, d2, d3 := c-g[0], c-g[1], c-g[2], c-g[3]
	st.weight = [4]float64{scale[0] * d1 * d2 * d3, scale[1] * d0 * d2 * d3, scale[2] * d0 * d1 * d3, scale[3] * d0 * d1 * d2}
	return st
}

// lagrange fills in, for the four Gauss lines from each interval on, what makes
// each of Lagrange's polynomials through them 1 on its own line.
func (a *axisGrid) lagrange() {
	a.scale = resize(a.scale, a.cells()-1)
	for i := range a.scale {
		g := a.gauss[2*i:][:4]
		for k := range g {
			p := 1.0
			for l := range g {
				if l != k {
					p *= g[k] - g[l]
				}
			}
			a.scale[i][k] = 1 / p
		}
	}
}

// own is the stencil of the interval's own two lines.
func (a *axisGrid) own(i int, c float64) stencil {
	g := a.gauss[2*i:][:2]
	t := (c - g[0]) / (g[1] - g[0])
	return stencil{2 * i, 2, [4]float64{1 - t, t}}
}

// clearCells says whether the cells that two stencils draw on are all solid.
func (s *Solver) clearCells(a, b *stencil) bool {
	for i := a.from / 2; 2*i < a.from+a.count; i++ {
		for j := b.from / 2; 2*j < b.from+b.count; j++ {
			c := i*s.y.cells() + j
			if s.kind[c] != solid {
				return false
			}
		}
	}
	return true
}

// sources are the Gauss lines from which the moment at p in cell i, j is
// interpolated: x and y where the slab is smooth there, else the cell's own; none
// in a cell that is cut.
func (s *Solver) sources(i, j int, p Point, x, y stencil) (stencil, stencil) {
	switch {
	case s.kind[i*s.y.cells()+j] == cut:
		return stencil{}, stencil{}
	case !s.clearCells(&x, &y):
		return s.x.own(i, p.X), s.y.own(j, p.Y)
	}
	return x, y
}

// momentFrom is the moment at p in cell c from its sources.
func (f *Field) momentFrom(c int, x, y *stencil, p Point) Moment {
	s := f.solver
	if x.count == 0 {
		i, j := s.cell(c)
		v := f.raw(i, j, p.X, p.Y)
		return s.moment(c, v[1], v[2], v[3])
	}
	var wxx, wyy, wxy float64
	ny := 2 * s.y.cells()
	for k, wx := range x.weight[:x.count] {
		line := f.curve[(x.from+k)*ny+y.from:][:y.count]
		for q := range line {
			w := wx * y.weight[q]
			wxx += w * line[q][0]
			wyy += w * line[q][1]
			wxy += w * line[q][2]
		}
	}
	return s.moment(c, wxx, wyy, wxy)
}

// At evaluates the field at a point of the slab; ok is false off the slab or in
// an opening. On a line where moments jump (a change of thickness) it takes the
// side with the smaller coordinates.
func (f *Field) At(x, y float64) (v Value, ok bool) {
	i, j, ok := f.solver.cellAt(x, y)
	if !ok {
		return v, false
	}
	return Value{f.raw(i, j, x, y)[0], f.momentIn(i, j, Point{x, y})}, true
}

// MomentAt is the moment of At.
func (f *Field) MomentAt(x, y float64) (m Moment, ok bool) {
	i, j, ok := f.solver.cellAt(x, y)
	if !ok {
		return m, false
	}
	return f.momentIn(i, j, Point{x, y}), true
}

// cellAt is the cell of slab that holds x, y, if there is one.
func (s *Solver) cellAt(x, y float64) (i, j int, ok bool) {
	if s == nil || !s.slab.onSlab(x, y) {
		return 0, 0, false
	}
	i, j = s.slabCell(x, y)
	return i, j, s.isSlab(i, j)
}

// momentIn is the moment at p in cell i, j.
func (f *Field) momentIn(i, j int, p Point) Moment {
	s := f.solver
	x, y := s.sources(i, j, p, s.x.stencilAt(i, p.X), s.y.stencilAt(j, p.Y))
	return f.momentFrom(i*s.y.cells()+j, &x, &y, p)
}

// lift reports where bearings have opened.
func (f *Field) lift() {
	s := f.solver
	f.Uplift = Uplift{}
	f.seats = f.seats[:0]
	nx, ny := s.x.cells(), s.y.cells()
	for b, open := range s.open {
		n := int(s.bearings[b].node)
		x, y := s.place(n)
		f.seats = append(f.seats, seating{Point{x, y}, open})
		if !open {
			continue
		}
		i, j := n/(ny+1), n%(ny+1)
		f.Uplift.Length += s.share(b)
		if rise := -f.u[4*n]; rise > f.Uplift.Most {
			f.Uplift.Most = rise
			f.Uplift.At = Point{s.x.lines[i], s.y.lines[j]}
		}
		switch {
		case i == 0 && j == 0:
			f.Uplift.Corners[0] = true
		case i == nx && j == 0:
			f.Uplift.Corners[1] = true
		case i == nx && j == ny:
			f.Uplift.Corners[2] = true
		case i == 0 && j == ny:
			f.Uplift.Corners[3] = true
		}
	}
}

// share is the length of support that belongs to a bearing: half of the way to
// each neighbour.
func (s *Solver) share(b int) float64 {
	x, y := s.place(int(s.bearings[b].node))
	sum := 0.0
	for _, n := range s.bearings[b].next {
		if n >= 0 {
			nx, ny := s.place(int(s.bearings[n].node))
			sum += math.Hypot(nx-x, ny-y) / 2
		}
	}
	return sum
}

// place is where a node is.
func (s *Solver) place(n int) (x, y float64) {
	ny := s.y.cells() + 1
	return s.x.lines[n/ny], s.y.lines[n%ny]
}
