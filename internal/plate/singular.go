package plate

import "math"

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
