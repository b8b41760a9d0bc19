package tank

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
	"manway.example/manway/internal/plate"
)

// panel is a wall, partition or floor as a plate in its bounding ways of being
// held: its built-in edges free to turn, which gives the most in the middle, and
// held against turning, which gives the most at the edges; each without and with
// the partitions that brace it. One that is no plate has no such way, and says
// why in open.
type panel struct {
	name     string
	open     string
	strength strength
	slabs    []plate.Slab
	solvers  []*plate.Solver
	turning  []bool // edges of the slab turn freely
	field    plate.Field
}

// newPanel makes a panel of a length and height on edges held as given; simple
// edges are clamped in the second way. Every set of lines makes two ways more.
func newPanel(name string, m member, length, height float64, edges [4]plate.Edge, lines ...[]plate.Line) (*panel, error) {
	s, err := m.strength()
	if err != nil {
		return nil, err
	}
	p := &panel{name: name, strength: s}
	if p.open = noPlate(length, height, float64(m.thickness)); p.open != "" {
		return p, nil
	}
	for _, l := range lines {
		for _, turning := range [...]bool{true, false} {
			slab := plate.Slab{
				Length: length, Width: height, Thickness: float64(m.thickness), E: elastic(m.concrete), Nu: poisson,
				Edges: edges, Lines: l,
			}
			for i, e := range edges {
				if e == plate.Simple && !turning {
					slab.Edges[i] = plate.Clamped
				}
			}
			p.slabs = append(p.slabs, slab)
			p.turning = append(p.turning, turning)
		}
	}
	for i := range p.slabs {
		solver := new(plate.Solver)
		if err := solver.Factor(&p.slabs[i], plate.Mesh{}); err != nil {
			return nil, modelFaults(name, err)
		}
		p.solvers = append(p.solvers, solver)
	}
	return p, nil
}

// pushed is what presses on a panel: loads that push towards the face far, with
// the factor of the combination on them, and what they are without it.
type pushed struct {
	name        string
	far         int
	combination manway.Combination
	factor      float64
	loads       func(factor float64) []plate.Load
	source      manway.Citation
}

// judge judges the panel under a load in each way of being held. Sections whose
// steel counts and stretches (phi 0.90, tension-controlled) bend far before they
// break, so that one way that carries the load is enough (the lower bound theorem;
// ACI 318-19 8.2.1): the way that asks less is the one that is given. Where a
// check of a way did not run, or a section crushes first, it may be brittle, and
// the way that asks more is given.
func (p *panel) judge(b pushed) (Loading, error) {
	var given Loading
	for i := range p.solvers {
		l, err := p.way(i, b)
		if err != nil {
			return l, err
		}
		less := i > 0 && l.worseThan(&given)
		if l.bends() && (i == 0 || given.bends()) {
			less = i > 0 && given.worseThan(&l)
		}
		if i == 0 || less {
			given = l
		}
	}
	return given, nil
}

// unjudged is the check of a panel that is no plate.
func (p *panel) unjudged() manway.Check { return manway.Check{Name: p.name, Reason: p.open} }

// bends reports whether all checks ran, on sections that bend before they break.
func (l *Loading) bends() bool {
	for _, c := range l.Checks {
		if c.Kind == manway.KindMomentPerLength && !manway.Reached(c.Phi, concrete.PhiTension) {
			return false
		}
	}
	return l.ran()
}

// way judges the panel held in way i: bending of each face and one-way shear.
func (p *panel) way(i int, b pushed) (Loading, error) {
	l := Loading{Name: p.name + ": " + b.name, Source: b.source, Governs: -1, Edges: "held"}
	if p.turning[i] {
		l.Edges = "turning"
	}
	if len(p.slabs[i].Lines) > 0 {
		l.Edges += ", braced"
	}
	if err := p.solvers[i].Solve(&p.field, b.loads(b.factor)); err != nil {
		return l, modelFaults(p.name, err)
	}
	names := [2]string{insideFace: "bending, inside face", outsideFace: "bending, outside face"}
	for face, kinds := range pulls(&p.field, &p.strength, nil, b.far, nil) {
		for _, k := range kinds {
			if k.use == 0 {
				continue
			}
			c := manway.Check{Name: names[face], Kind: manway.KindMomentPerLength, Combination: b.combination, Demand: k.demand, Unfactored: k.demand / b.factor}
			l.Checks = append(l.Checks, judged(c, *k.standing))
			l.use = math.Max(l.use, k.use)
		}
	}
	l.Checks = append(l.Checks, p.shear(i, b))
	l.Governs = manway.Governing(l.Checks)
	return l, nil
}

// heavier reports whether check a uses more than b, or fewer of its figures
// count.
func heavier(a, b manway.Check) bool {
	if x, y := gravity(a.Status), gravity(b.Status); x != y {
		return x > y
	}
	return a.Demand*b.Capacity > b.Demand*a.Capacity
}

// shear is the one-way shear of way i on sections one depth from the held edges.
// Where the edge turns freely the face away from the load is pulled there, else
// the other.
func (p *panel) shear(i int, b pushed) manway.Check {
	face := b.far
	if !p.turning[i] {
		face = 1 - b.far
	}
	s, d := &p.slabs[i], float64(p.strength.depth[face])
	window := math.Max(3*s.Thickness, float64(manway.Foot))
	var most [2]float64
	sections := func(axis plate.Axis, at, size float64) {
		n := max(int(math.Round(size/window)), 1)
		for k := range n {
			if q, ok := sectionShear(&p.field, s, axis, at, size*float64(k)/float64(n), size*float64(k+1)/float64(n)); ok {
				most[axis] = math.Max(most[axis], math.Abs(q))
			}
		}
	}
	for side, at := range [4]float64{d, s.Length - d, s.Width - d, d} {
		switch {
		case s.Edges[side] == plate.Free:
		case side%2 == 0:
			sections(plate.Y, at, s.Length)
		default:
			sections(plate.X, at, s.Width)
		}
	}
	for _, l := range s.Lines {
		sections(plate.X, l.At-d, s.Width)
		sections(plate.X, l.At+d, s.Width)
	}
	var worst manway.Check
	for dir, q := range most {
		c := judged(manway.Check{
			Name: "one-way shear", Kind: manway.KindLineLoad, Combination: b.combination, Demand: q, Unfactored: q / b.factor,
		}, p.strength.shear[face][dir])
		if dir == 0 || heavier(c, worst) {
			worst = c
		}
	}
	return worst
}

// use is the greatest Use of bending and shear under a load; false where a check
// did not run.
func (p *panel) use(b pushed) (float64, bool) {
	if p.open != "" {
		return 0, false
	}
	l, err := p.judge(b)
	if err != nil {
		return 0, false
	}
	most := 0.0
	for _, c := range l.Checks {
		u, ok := c.Use()
		if !ok && c.Demand > 0 || c.Status != manway.Pass && c.Status != manway.Fail {
			return 0, false
		}
		most = math.Max(most, u)
	}
	return most, true
}

// LimitState is the kind of answer to "up to where is it shown to stand?".
type LimitState uint8

// The answers. The zero value is LimitUnknown.
const (
	LimitUnknown LimitState = iota // the strength is not shown at all
	LimitNone                      // shown to stand over the whole range
	LimitAt                        // up to the figure given
	LimitNever                     // not shown to stand even without
)

var limitStates = [...]string{"not shown", "over the whole range", "up to", "not even without"}

// String is the answer in words.
func (s LimitState) String() string { return manway.Word(limitStates[:], s) }

// MarshalText is the same as String.
func (s LimitState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Limit is how far something may go before Use passes 1.
type Limit struct {
	State LimitState
	At    manway.Length // where State is LimitAt
}

// limitOf finds the greatest x in 0..most at which use(x), which grows, is at
// most 1, to a sixteenth of an inch.
func limitOf(most float64, use func(x float64) (float64, bool)) Limit {
	full, ok := use(most)
	none, ok2 := use(0)
	switch {
	case !ok || !ok2:
		return Limit{}
	case manway.Reached(1, full):
		return Limit{State: LimitNone}
	case !manway.Reached(1, none):
		return Limit{State: LimitNever}
	}
	lo, hi := 0.0, most
	for hi-lo > float64(manway.Inch)/16 {
		mid := (lo + hi) / 2
		u, ok := use(mid)
		if !ok {
			return Limit{}
		}
		if manway.Reached(1, u) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return Limit{LimitAt, manway.Length(lo)}
}
