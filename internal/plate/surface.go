package plate

// At is the ordinate of the surface at a point: the quantity under a unit force
// there. It is 0 off the slab. Under is the accurate way for a load of some
// size; this is a quick one, to rank places by.
func (in *Influence) At(p Point) float64 {
	s := in.field.solver
	if s == nil || !s.ready || !s.slab.onSlab(p.X, p.Y) {
		return 0
	}
	i, j := s.slabCell(p.X, p.Y)
	if !s.isSlab(i, j) {
		return 0
	}
	return in.field.raw(i, j, p.X, p.Y)[0]
}
