package plate

import "math"

// spot is a place that is looked at in every field of a mesh.
type spot struct {
	Point
	cell int32
	// The deflection is that at half-steps a, b (0 to 2) of the cell; -1 is
	// anywhere in it.
	a, b int8
	// x and y are the Gauss lines from which the moment is interpolated: none in a
	// cell that is cut, where it is that of the element itself.
	x, y stencil
}

// Scan visits the points that Extremes looks at.
func (f *Field) Scan(visit func(Point, Moment)) {
	s := f.solver
	if s == nil {
		return
	}
	s.findSpots()
	for k := range s.spots {
		visit(s.spots[k].Point, f.momentAt(&s.spots[k]))
	}
}

// findSpots lists the spots of a new mesh.
func (s *Solver) findSpots() {
	if len(s.spots) > 0 {
		return
	}
	s.findSingular()
	ny := s.y.cells()
	for i := range s.x.cells() {
		for j := range ny {
			switch s.kind[i*ny+j] {
			case solid:
				s.cellSpots(i, j)
			case cut:
				s.cutSpots(i, j)
			}
		}
	}
	for _, o := range s.rounds {
		s.circleSpots(Point{o.x, o.y}, o.r, 96)
	}
	r := s.slab.Thickness / 2
	for _, p := range s.singular {
		s.circleSpots(p, r*(1+1e-6), 32)
	}
}

// addSpot adds a point of cell i, j, but not near a singular one.
func (s *Solver) addSpot(i, j, a, b int, p Point, x, y stencil) {
	if s.nearSingular(p.X, p.Y) {
		return
	}
	x, y = s.sources(i, j, p, x, y)
	s.spots = append(s.spots, spot{p, int32(i*s.y.cells() + j), int8(a), int8(b), x, y})
}

// cellSpots adds the lower corner, two sides and the middle of a solid cell, and
// its upper sides where the next cell does not have the same moments there.
func (s *Solver) cellSpots(i, j int) {
	ends := [2]int{2, 2}
	if i+1 == s.x.cells() || s.x.barrier[i+1] || s.kind[(i+1)*s.y.cells()+j] != solid {
		ends[0] = 3
	}
	if j+1 == s.y.cells() || s.y.barrier[j+1] || s.kind[i*s.y.cells()+j+1] != solid {
		ends[1] = 3
	}
	for a := range ends[0] {
		x := s.x.lines[i] + float64(a)/2*(s.x.lines[i+1]-s.x.lines[i])
		for b := range ends[1] {
			y := s.y.lines[j] + float64(b)/2*(s.y.lines[j+1]-s.y.lines[j])
			s.addSpot(i, j, a, b, Point{x, y}, s.x.halves[3*i+a], s.y.halves[3*j+b])
		}
	}
}

// cutSpots adds points of the part of a cut cell that is slab.
func (s *Solver) cutSpots(i, j int) {
	r := s.cellRect(i*s.y.cells() + j)
	const steps = 4
	for a := range steps + 1 {
		x := r.X0 + (r.X1-r.X0)*float64(a)/steps
		for b := range steps + 1 {
			y := r.Y0 + (r.Y1-r.Y0)*float64(b)/steps
			if s.slab.onSlab(x, y) {
				s.addSpot(i, j, -1, -1, Point{x, y}, stencil{}, stencil{})
			}
		}
	}
}

// circleSpots adds n points of a circle, where they are on the slab.
func (s *Solver) circleSpots(c Point, r float64, n int) {
	for k := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(n))
		p := Point{c.X + r*cos, c.Y + r*sin}
		if i, j, ok := s.cellAt(p.X, p.Y); ok {
			s.addSpot(i, j, -1, -1, p, s.x.stencilAt(i, p.X), s.y.stencilAt(j, p.Y))
		}
	}
}

// momentAt is the moment at a spot.
func (f *Field) momentAt(at *spot) Moment {
	return f.momentFrom(int(at.cell), &at.x, &at.y, at.Point)
}

// deflectionAt is the deflection at a spot.
func (f *Field) deflectionAt(at *spot) float64 {
	i, j := f.solver.cell(int(at.cell))
	if at.a < 0 {
		return f.raw(i, j, at.X, at.Y)[0]
	}
	return f.deflection(i, j, int(at.a), int(at.b))
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
