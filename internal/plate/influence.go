package plate

import (
	"errors"
	"math"
)

// Quantity is what an influence surface is for.
type Quantity uint8

// The quantities that have influence surfaces.
const (
	Deflection Quantity = iota
	MomentX
	MomentY
	MomentXY
)

// ErrOneWay is the error for adding up answers of a bearing-only slab, where they
// do not add up.
var ErrOneWay = errors.New("plate: a bearing-only slab has no influence surface and no superposition")

// Influence is an influence surface: the deflections, by the reciprocal theorem,
// under the load whose work is one quantity at one point. The zero value is
// ready for Solver.Influence.
type Influence struct {
	field Field
	load  []float64
}

// Influence finds the influence surface of a quantity at a point, so that the
// same quantity under any other loads costs no more than applying them. It fails
// with ErrOneWay, or with Faults for a point off the slab.
func (s *Solver) Influence(in *Influence, q Quantity, at Point) error {
	switch {
	case !s.ready:
		return ErrNotFactored
	case s.slab.BearingOnly:
		return ErrOneWay
	case q > MomentXY:
		return fault("Quantity", float64(q), "Deflection, MomentX, MomentY or MomentXY")
	}
	return s.surface(in, q, at)
}

// surface is Influence, with bearings that hold the slab down.
func (s *Solver) surface(in *Influence, q Quantity, at Point) error {
	switch {
	case !s.ready:
		return ErrNotFactored
	case !s.slab.onSlab(at.X, at.Y):
		return fault("At.X", at.X, "a point on the slab")
	}
	i, j := s.slabCell(at.X, at.Y)
	f := &in.field
	f.solver = s
	f.force = zeroed(f.force, len(s.state))
	if q == Deflection {
		s.load = loader{s: s, out: f.force}
		s.load.point(at.X, at.Y, 1)
	} else {
		s.momentLoad(f.force, q, i, j, at)
	}
	v := s.v[:s.held]
	for n, d := range s.order[:s.held] {
		v[n] = f.force[d]
	}
	s.forward(v)
	return s.substitute(f, v)
}

// momentLoad fills out with what the moment at a point takes from each unknown:
// the same interpolation that Field.At makes.
func (s *Solver) momentLoad(out []float64, q Quantity, i, j int, at Point) {
	c := i*s.y.cells() + j
	a, b := s.sources(i, j, at, s.x.stencilAt(i, at.X), s.y.stencilAt(j, at.Y))
	if a.count == 0 {
		s.curvatureLoad(out, q, c, i, j, at, 1)
		return
	}
	for p, wx := range a.weight[:a.count] {
		for r, wy := range b.weight[:b.count] {
			g, h := a.from+p, b.from+r
			s.curvatureLoad(out, q, c, g/2, h/2, Point{s.x.gauss[g], s.y.gauss[h]}, wx*wy)
		}
	}
}

// curvatureLoad adds weight times what the moment from the curvatures of cell
// i, j at a point takes from its unknowns. The rigidity is that of cell c.
func (s *Solver) curvatureLoad(out []float64, q Quantity, c, i, j int, at Point, weight float64) {
	hx, hy := s.x.lines[i+1]-s.x.lines[i], s.y.lines[j+1]-s.y.lines[j]
	nx, dx, ddx := hermite((at.X-s.x.lines[i])/hx, hx)
	ny, dy, ddy := hermite((at.Y-s.y.lines[j])/hy, hy)
	for k := range 16 {
		di, dj, unk := corner(k)
		p, r := k>>2, k&3
		m := s.moment(c, ddx[p]*ny[r], nx[p]*ddy[r], dx[p]*dy[r])
		v := [3]float64{m.X, m.Y, m.XY}[q-MomentX]
		out[4*s.node(i+di, j+dj)+unk] += weight * v
	}
}

// Under gives the quantity under a load case. It fails with Faults for bad loads.
func (in *Influence) Under(loads []Load) (float64, error) {
	s := in.field.solver
	if s == nil {
		return 0, ErrNotFactored
	}
	if err := s.slab.CheckLoads(loads); err != nil {
		return 0, err
	}
	in.load = resize(in.load, len(s.state))
	if err := s.fill(in.load, loads); err != nil {
		return 0, err
	}
	sum := 0.0
	for d, u := range in.field.u {
		sum += u * in.load[d]
	}
	return sum, nil
}

// Scaled is one field of a combination with its load factor.
type Scaled struct {
	Factor float64 // -1e15 to 1e15
	Field  *Field
}

func (p Scaled) bounded() bool { return math.Abs(p.Factor) <= largest }

// Combine makes f the sum of factored fields of one Solver, without solving
// again: the load combinations of a structure that answers in proportion. It
// fails with ErrOneWay on a bearing-only slab, with ErrNotFactored when there is
// nothing to add.
func (f *Field) Combine(parts ...Scaled) error {
	if len(parts) == 0 || parts[0].Field.solver == nil {
		return ErrNotFactored
	}
	s := parts[0].Field.solver
	if s.slab.BearingOnly {
		return ErrOneWay
	}
	f.solver = s
	f.u, f.force = zeroed(f.u, len(s.state)), zeroed(f.force, len(s.state))
	f.Load = 0
	for k, p := range parts {
		if p.Field.solver != s || !p.bounded() {
			return fault("Parts", float64(k), "fields of one Solver, each times -1e15 to 1e15")
		}
		f.Load += p.Factor * p.Field.Load
		for d := range f.u {
			f.u[d] += p.Factor * p.Field.u[d]
			f.force[d] += p.Factor * p.Field.force[d]
		}
	}
	s.balance(f)
	f.curvatures()
	f.Uplift = Uplift{}
	return nil
}
