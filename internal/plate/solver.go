package plate

import (
	"errors"
	"fmt"
	"math"
)

// Solver holds one slab on one mesh, factorised: any number of load cases are
// then solved at little cost. The zero value is ready for Factor. A Solver keeps
// its memory, so that factoring another slab of no more unknowns, or solving
// another load case into a used Field, does not allocate. It is not safe for use
// by several goroutines at once.
type Solver struct {
	slab Slab
	x, y axisGrid

	kind     []uint8 // of each cell
	rigidity []float64
	rounds   []round
	cutForm  []int32 // which of cutK belongs to a cut cell
	cutK     [][256]float64

	state     []uint8 // of each unknown
	bearings  []bearing
	bearingAt []int32 // bearing of each node, or -1

	fronts  []front
	order   []int32 // unknown of each elimination number
	number  []int32 // elimination number of each unknown, or -1
	held    int     // first elimination number on a bearing
	rows    []int32
	up      []int32
	panels  []float64
	updates [][]float64
	flops   float64

	// Work space.
	diagonal, work, v []float64
	local, loose      []int32
	cellK             [256]float64
	ends              []float64
	strips            []strip
	singular          []Point
	spots             []spot
	open              []bool
	wrong, queue      []int32
	piece             []bool
	loosened          []bool // bearings whose slopes are free
	soft              bool   // open bearings keep a little stiffness
	seatK, seatV      []float64
	seatLoad          []float64
	placed            []bool
	load              loader
	edgeK, edgeV      []float64
	run               []int32
	ready             bool
}

// Factor meshes and factorises a slab. The slices of the slab must not change
// while the Solver is in use. Fields solved before are no longer valid. The error
// is Faults for a slab that is not one, ErrNotHeld for one that can move.
func (s *Solver) Factor(slab *Slab, m Mesh) error {
	s.ready = false
	s.spots = s.spots[:0]
	if err := slab.Check(); err != nil {
		return err
	}
	if err := m.check(); err != nil {
		return err
	}
	s.slab = *slab
	s.makeGrid(m)
	const most = 1 << 15 // nodes: about a second
	if n := s.nodes(); n > most {
		return fault("Mesh", float64(n), fmt.Sprintf("at most %d nodes", most))
	}
	s.classify()
	s.markUnknowns()
	if err := s.checkHeld(); err != nil {
		return err
	}
	s.plan()
	if len(s.order) == 0 {
		return fault("Edges", 0, "a slab that can bend somewhere")
	}
	s.work = resize(s.work, len(s.order))
	s.v = resize(s.v, len(s.order))
	if err := s.factor(); err != nil {
		return err
	}
	s.ready = true
	return nil
}

// Unknowns is the number of equations of the present mesh.
func (s *Solver) Unknowns() int { return len(s.order) }

// Cells is the number of cells of the present mesh along x and y.
func (s *Solver) Cells() (nx, ny int) { return s.x.cells(), s.y.cells() }

// Flops is the number of multiplications and additions that the factorisation
// took.
func (s *Solver) Flops() float64 { return s.flops }

// ErrResidual is the error for a solution whose forces do not balance: it is not
// to be used.
var ErrResidual = errors.New("plate: the solution does not balance the loads")

// ErrNotFactored is the error of a Solver that holds no factorised slab.
var ErrNotFactored = errors.New("plate: no slab has been factorised")

// Solve finds the deflections under one load case. It fails with Faults for bad
// loads, ErrTips, ErrContact or ErrResidual.
func (s *Solver) Solve(f *Field, loads []Load) error {
	if err := s.deflect(f, Scaled{}, loads, nil); err != nil {
		return err
	}
	return f.Balance()
}

// SolveOnto finds the deflections and moments under the loads of another field of
// this Solver, times a factor, and these loads on top of them. Loads add up even
// where, on bearings, their answers do not: only what is added is eliminated.
// The support forces are left to Balance, for fields that are only compared with
// one another do not need them. It fails as Solve does.
func (s *Solver) SolveOnto(f *Field, base Scaled, loads []Load) error {
	return s.deflect(f, base, loads, nil)
}

// deflect is Solve up to the moments. The search for the bearings in contact
// starts from what they were in from.
func (s *Solver) deflect(f *Field, base Scaled, loads []Load, from []seating) error {
	if !s.ready {
		return ErrNotFactored
	}
	if b := base.Field; b != nil && (b == f || b.solver != s || len(b.condensed) != len(s.order)) {
		return fault("Base", base.Factor, "another field of this Solver")
	}
	if !base.bounded() {
		return fault("Base", base.Factor, "-1e15 to 1e15 times another field")
	}
	if err := s.slab.CheckLoads(loads); err != nil {
		return err
	}
	f.solver = s
	f.force = resize(f.force, len(s.state))
	if err := s.fill(f.force, loads); err != nil {
		return err
	}
	s.condense(f, base)
	f.Load = 0
	for d := 0; d < len(f.force); d += 4 {
		f.Load += f.force[d]
	}
	if err := s.displace(f, from); err != nil {
		return err
	}
	f.curvatures()
	f.lift()
	f.free = resize(f.free, len(s.order)-s.held)
	for c := range f.free {
		f.free[c] = !s.seated(c)
	}
	return nil
}

// Balance finds the support forces of a field and checks that they balance the
// loads; Solve has done so. It fails with ErrResidual.
func (f *Field) Balance() error {
	if f.solver == nil {
		return ErrNotFactored
	}
	f.solver.balance(f)
	if !(f.Residual <= 1e-6) {
		return ErrResidual
	}
	return nil
}

// condense eliminates the loads of f and adds those of another field to them.
func (s *Solver) condense(f *Field, base Scaled) {
	f.condensed = resize(f.condensed, len(s.order))
	for n, d := range s.order {
		f.condensed[n] = f.force[d]
	}
	s.forward(f.condensed)
	if base.Field == nil {
		return
	}
	for n, v := range base.Field.condensed {
		f.condensed[n] += base.Factor * v
	}
	for d, v := range base.Field.force {
		f.force[d] += base.Factor * v
	}
}

// displace solves for the displacements that the condensed loads of f make.
func (s *Solver) displace(f *Field, from []seating) error {
	copy(s.v, f.condensed)
	if err := s.seat(s.v[s.held:], from); err != nil {
		return err
	}
	return s.substitute(f, s.v)
}

// substitute makes the displacements of f those of the condensed loads v.
func (s *Solver) substitute(f *Field, v []float64) error {
	s.backward(v)
	f.u = zeroed(f.u, len(s.state))
	for n, d := range s.order[:len(v)] {
		f.u[d] = v[n]
	}
	if !isFinite(f.u) {
		return ErrResidual
	}
	return nil
}

// balance computes what is left when the loads are taken from the forces in the
// slab: the support forces where it is held, the residual elsewhere.
func (s *Solver) balance(f *Field) {
	f.reaction = resize(f.reaction, len(f.force))
	s.internal(f.u, f.reaction, 0, s.x.cells(), 0, s.y.cells())
	size, left, total := 0.0, 0.0, 0.0
	for d, load := range f.force {
		r := load - f.reaction[d]
		f.reaction[d] = r
		if s.state[d] == unknown || s.state[d] == contact && f.free[int(s.number[d])-s.held] || s.state[d] == absent {
			f.reaction[d] = 0
			if d%4 == iW && s.state[d] != absent {
				left = math.Max(left, math.Abs(r))
			}
		}
		if d%4 == iW {
			size += math.Abs(load)
			total += f.reaction[d]
		}
	}
	f.Reaction = total
	f.Residual = math.Max(left, math.Abs(total-f.Load))
	if size > 0 {
		f.Residual /= size
	}
}

// internal fills out with the nodal forces of cells i0..i1, j0..j1 displaced by u.
func (s *Solver) internal(u, out []float64, i0, i1, j0, j1 int) {
	clear(out)
	var place [16]int
	var local [16]float64
	for i := i0; i < i1; i++ {
		for j := j0; j < j1; j++ {
			c := i*s.y.cells() + j
			if s.kind[c] == void {
				continue
			}
			for a := range 16 {
				di, dj, unk := corner(a)
				place[a] = 4*s.node(i+di, j+dj) + unk
				local[a] = u[place[a]]
			}
			var pull [16]float64
			if s.kind[c] == cut {
				times(&s.cutK[s.cutForm[c]], &local, &pull)
			} else {
				timesForms(s.rigidity[c], s.slab.Nu, &s.x.forms[i], &s.y.forms[j], &local, &pull)
			}
			for a, v := range pull {
				out[place[a]] += v
			}
		}
	}
}
