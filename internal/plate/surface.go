package plate

// Surfaces are the influence surfaces of the three moments at one point, to rank
// places by. The zero value is ready for Solver.Surfaces.
type Surfaces struct{ of [3]Influence }

// Surfaces finds the influence surfaces of the moments at a point. On a
// bearing-only slab, which has none, they are those of the slab held down by its
// bearings. It fails with Faults for a point off the slab.
func (s *Solver) Surfaces(in *Surfaces, at Point) error {
	for k := range in.of {
		if err := s.surface(&in.of[k], MomentX+Quantity(k), at); err != nil {
			return err
		}
	}
	return nil
}

// At is the moment that a unit force at p makes at the point of the surfaces, 0
// where p is off the slab. Influence.Under is the accurate way for a load of some
// size; this is a quick one.
func (in *Surfaces) At(p Point) (m Moment) {
	s := in.of[0].field.solver
	i, j, ok := s.cellAt(p.X, p.Y)
	if !ok || !s.ready {
		return m
	}
	nx, _, _ := hermite((p.X-s.x.lines[i])/(s.x.lines[i+1]-s.x.lines[i]), s.x.lines[i+1]-s.x.lines[i])
	ny, _, _ := hermite((p.Y-s.y.lines[j])/(s.y.lines[j+1]-s.y.lines[j]), s.y.lines[j+1]-s.y.lines[j])
	for a := range 16 {
		di, dj, unk := corner(a)
		d, w := 4*s.node(i+di, j+dj)+unk, nx[a>>2]*ny[a&3]
		m.X += w * in.of[0].field.u[d]
		m.Y += w * in.of[1].field.u[d]
		m.XY += w * in.of[2].field.u[d]
	}
	return m
}
