package tank

import (
	"math"
	"sync"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
)

// RoofStrength is an unreviewed screening of a roof: what is asked of it, piece
// by piece and load by load, against what its concrete and steel are shown to
// have.
type RoofStrength struct {
	Loadings []Loading
	Governs  int   // index in Loadings of the one that governs, -1 where no check ran
	Weakest  Point // where its moments come nearest to the strength, on the roof's middle
	Change   RoofChange
	Cover    CoverLimit
	// NotJudged lists what this screening leaves open.
	NotJudged []manway.Check
	Pieces    int
	Solved    Solved
	Assumed   manway.Assumptions
	Cautions  manway.Cautions
	Case      RoofCase // as reckoned

	roof, along, across manway.Length // as built; spans
	own, soil           manway.Pressure
	strips              strips
}

// Loading is one load on the roof and its checks, each at its own worst place.
type Loading struct {
	Name   string
	Moving bool           // it may stand anywhere; else it lies all over
	At     Point          // of its middle, on the roof, where it bends that most
	Turned bool           // it rolls across the tank
	Load   manway.Force   // of one wheel or person, with impact; 0 where it lies all over
	Checks []manway.Check // bending, one-way shear, punching; a second bending check where part of the roof does not count
	// Governs is the index of the check that governs, -1 where none ran.
	Governs int
	// Heaviest is the standing wheel, or person, that brings the Use of the
	// governing check to 1, where that is worst, on the same rectangle: linear in
	// the load. Known where every check ran and nothing else uses the roof up.
	Heaviest      manway.Force
	HeaviestKnown bool
	Source        manway.Citation
	// Edges says, of a wall, partition or floor, how its edges were taken: turning
	// or held, and whether partitions brace it; empty for a roof.
	Edges string

	uses []float64 // of Checks, as they rank the places
	use  float64   // greatest use in bending, run or compared
	bend pull
	dead float64 // of the measure of bend, unfactored
}

// Status is the worst of the loading's checks: Pass only where all passed.
func (l Loading) Status() manway.Status {
	status := manway.Pass
	for _, c := range l.Checks {
		if c.Status != manway.Pass && (status == manway.Pass || c.Status == manway.Fail) {
			status = c.Status
		}
	}
	if len(l.Checks) == 0 {
		return manway.NotJudged
	}
	return status
}

// Checks is every check of the roof in one list, and then what is not judged.
func (r RoofStrength) Checks() []manway.Check {
	var list []manway.Check
	for _, l := range r.Loadings {
		list = append(list, l.Checks...)
	}
	return append(list, r.NotJudged...)
}

// Solved says how the plate was solved.
type Solved struct {
	CellsX, CellsY, Unknowns int
	Residual                 float64 // unbalanced force over the load, the worst of what was checked: what rests there, and the load that governs
	Error                    float64 // relative, of the governing moment: what the last mesh changed
	Converged                bool    // Error is at most 2 percent
}

// Roof screens the roof of a rectangular concrete tank as a thin plate that lies
// on the walls and can lift off them, with its openings and spalls:
//
//	dead      1.4 D: its own weight, the soil, risers on their openings
//	crowd     1.2 D + 1.6 L, 100 lb/ft2
//	person    1.2 D + 1.6 L, on 8 in square at the worst place
//	wheels    the same, with impact, at the worst place and turned the worse way
//
// Below 2 ft of cover a wheel stands on the roof as it stands on the ground
// (AASHTO LRFD 3.6.1.2.6). The worst place is found by influence surfaces. A
// partition supports the roof only where Contact says that it was seen to touch;
// then both ways are run and the worse governs. Bending is judged by the moments
// of Wood and Armer where steel counts, by the principal moment elsewhere; in
// shear, the section one depth from the support; punching on the perimeter half
// a depth outside the load, three-sided where the roof has an opening. Corners
// of rectangular openings are judged half a thickness away from them.
//
// What counts follows from what is known of the steel: see the package
// internal/concrete. Unknown steel is NotShown, a plain roof NotPermitted, with
// figures for comparison only.
//
// Errors: [manway.InputErrors], every fault at once. A tank of another material
// or shape is no error: its checks are NotJudged.
//
// Source: thin plates after Timoshenko and Woinowsky-Krieger; strength and load
// combinations of ACI 318-19; wheels of AASHTO LRFD and crowd of ASCE 7-16.
func (t *Tank) Roof(c RoofCase) (RoofStrength, error) {
	var faults manway.InputErrors
	c.validate(&faults, t)
	if len(faults) > 0 {
		return RoofStrength{}, faults
	}
	r := RoofStrength{
		Governs: -1, Case: c, Assumed: t.Assumed & (manway.AssumedRoofThickness | manway.AssumedInsideDepth | manway.AssumedWallThickness),
		Cautions: t.Cautions | manway.Screening | manway.LocalCode | manway.NeverEnter,
	}
	if reason := t.noSlabs(); reason != "" {
		r.Cautions |= manway.KeepOffRoof | manway.VehicleOverTank
		r.NotJudged = []manway.Check{{Name: "roof", Reason: reason}}
		return r, nil
	}
	j := roofJudge{t: t, c: &c, r: &r, workplace: workplaces.Get().(*workplace)}
	defer workplaces.Put(j.workplace)
	if err := j.run(); err != nil {
		return RoofStrength{}, err
	}
	return r, nil
}

// noSlabs says why the tank has no flat slabs that are judged, or is empty.
func (t *Tank) noSlabs() string {
	if t.Spec.Material != ConcreteShell {
		return "the strength of a tank of " + t.Spec.Material.String() + " is not judged: keep off"
	}
	if _, ok := t.shape.(Box); !ok {
		return "only rectangular tanks have their slabs and walls judged: keep off"
	}
	return ""
}

// roofJudge works a roof out.
type roofJudge struct {
	t      *Tank
	c      *RoofCase
	r      *RoofStrength
	after  *RoofLoad // the load that is judged: planned where there is a plan
	moving []moving
	kept   []kept // where each loading of the result stands
	*workplace
}

// workplace is the memory in which roofs are solved, used again from one to the
// next: nothing of what it held before counts.
type workplace struct {
	solver plate.Solver
	field  plate.Field // of the loading at hand
	dead   plate.Field // of what rests there, unfactored
}

var workplaces = sync.Pool{New: func() any { return new(workplace) }}

// kept is the piece, its supports and the place from which a loading was kept.
type kept struct {
	p     *piece
	lines []plate.Line
	after rest
	at    []standing // of each moving load
}

func (j *roofJudge) run() error {
	j.after = &j.c.Now
	if j.c.Planned != nil {
		j.after = j.c.Planned
	}
	_, made := j.after.soil(j.c.Soil)
	j.r.Assumed |= made
	pieces, err := j.t.pieces(j.c)
	if err != nil {
		return err
	}
	j.r.Pieces = len(pieces)
	j.kept = make([]kept, fixed+1+len(j.c.wheels()))
	if err := j.loadings(); err != nil {
		return err
	}
	made, warn := pieces[0].strength.made()
	j.r.Assumed |= made
	j.r.Cautions |= warn
	j.describe(pieces)
	for i := range pieces {
		if err := j.piece(&pieces[i]); err != nil {
			return err
		}
	}
	return j.settle(pieces)
}

// describe keeps what Working tells.
func (j *roofJudge) describe(pieces []piece) {
	r, p := j.r, &pieces[0]
	rest := j.t.resting(p, *j.after, j.c)
	r.roof, r.across = j.t.Spec.Roof, manway.Length(p.slab.Width)
	for i := range pieces {
		r.along += manway.Length(pieces[i].slab.Length)
	}
	r.own, r.soil = manway.Pressure(rest.own), manway.Pressure(rest.soil)
	r.strips = p.strength.member.strips()
}

// loadings sets the loads up: those that lie all over, then those that move.
func (j *roofJudge) loadings() error {
	practice := manway.Citation{Source: manway.Practice, Place: "weight of what stands there"}
	j.r.Loadings = []Loading{
		{Name: "soil and own weight", Source: practice},
		{Name: "crowd", Source: manway.Citation{Source: manway.ASCE7_16, Place: "Table 4.3-1, yards and terraces, remembered"}},
	}
	person, made := j.c.Person.Filled()
	j.r.Assumed |= made
	foot := manway.Wheel{Name: "person", Load: person.Mass.Weight(), Length: soil.FootPatch, Width: soil.FootPatch, Source: practice}
	on := soil.Contact{Length: foot.Length, Width: foot.Width, Load: foot.Load, Pressure: foot.Load.Over(foot.Length.Times(foot.Width)), Wheels: 1}
	j.moving = []moving{{name: foot.Name, wheel: foot, on: on, along: float64(foot.Length), across: float64(foot.Width), source: foot.Source}}
	for _, w := range j.c.wheels() {
		m, err := movingOf(w, j.after.Cover)
		if err != nil {
			return err
		}
		j.moving = append(j.moving, m)
	}
	for _, m := range j.moving {
		j.r.Loadings = append(j.r.Loadings, Loading{Name: m.name, Moving: true, Load: m.on.Load, Source: m.source})
	}
	return nil
}

// fixed is how many loadings lie all over the roof.
const fixed = 2

// piece judges one piece, without and with the partitions that touch it.
func (j *roofJudge) piece(p *piece) error {
	if len(p.notes) > 0 {
		for _, note := range p.notes {
			j.r.NotJudged = append(j.r.NotJudged, manway.Check{Name: "a piece of the roof", Reason: note})
		}
		return nil
	}
	if err := j.way(p); err != nil {
		return err
	}
	if p.slab.Lines = j.t.supports(p, j.c.Contact); len(p.slab.Lines) > 0 {
		return j.way(p)
	}
	return nil
}

// screenMesh is the mesh on which every load is screened; the governing one is
// solved again on finer ones.
const screenMesh = 1.4

// way judges a piece on its present supports.
func (j *roofJudge) way(p *piece) error {
	if err := j.solver.Factor(&p.slab, plate.Mesh{Scale: screenMesh}); err != nil {
		return modelFaults("Roof", err)
	}
	after := j.t.resting(p, *j.after, j.c)
	if err := p.slab.CheckLoads(after.loads(1)); err != nil { // a riser that reaches over the wall: on the opening's edge
		for i := range after.rings {
			after.rings[i].Offset = 0
		}
	}
	here := kept{p: p, lines: p.slab.Lines, after: after}
	shear, err := j.rest(here)
	if err != nil {
		return err
	}
	w := newSearch(p, &j.solver)
	here.at = make([]standing, len(j.moving))
	for k := range fixed {
		if err := j.load(here, k, shear); err != nil {
			return err
		}
	}
	for k, found := range w.worst(j.moving, &j.dead) {
		if err := j.move(w, here, k, found, shear); err != nil {
			return err
		}
	}
	return j.compare(p, after)
}

// nearly is how near the worst by influence a place must come to be solved.
const nearly = 0.8

// move judges moving load k in the worst places found, on the slab that can lift
// off; it is then moved once more, by the influence of the point where it does
// most.
func (j *roofJudge) move(w *search, here kept, k int, found [2]best, shear [2][2]float64) error {
	at := here.at
	best := math.Max(found[0].use[0], found[1].use[0])
	for i := range 2 * most {
		way := &found[i/most]
		if i%most >= way.n || way.use[i%most] < nearly*best {
			continue
		}
		place := way.at[i%most]
		here.at = append([]standing(nil), at...)
		here.at[k] = place
		if err := j.load(here, fixed+k, shear); err != nil {
			return err
		}
	}
	l, was := &j.r.Loadings[fixed+k], j.kept[fixed+k]
	if was.p != here.p || len(was.at) == 0 {
		return nil
	}
	of := plate.Point{X: l.bend.at.X - here.p.from, Y: l.bend.at.Y + here.p.half}
	place, ok := w.nudge(of, was.at[k], &j.moving[k])
	if !ok {
		return nil
	}
	here.at = append([]standing(nil), at...)
	here.at[k] = place
	return j.load(here, fixed+k, shear)
}

// balanced checks that a field balances its loads, and keeps how nearly.
func (j *roofJudge) balanced(f *plate.Field) error {
	if err := f.Balance(); err != nil {
		return modelFaults("Roof", err)
	}
	j.r.Solved.Residual = math.Max(j.r.Solved.Residual, f.Residual)
	return nil
}

// rest solves what rests on a piece, unfactored, and gives its shears.
func (j *roofJudge) rest(here kept) ([2][2]float64, error) {
	if err := j.solver.SolveOnto(&j.dead, plate.Scaled{}, here.after.loads(1)); err != nil {
		return [2][2]float64{}, modelFaults("Roof", err)
	}
	return shears(&j.dead, here.p), j.balanced(&j.dead)
}

// finer are the meshes on which the governing load is solved again, until its
// moment moves by no more than settled.
var finer = [...]float64{1, 0.7}

const settled = 0.02

// refine solves loading k again on finer meshes.
func (j *roofJudge) refine(k int) error {
	here := j.kept[k]
	here.p.slab.Lines = here.lines
	l := &j.r.Loadings[k]
	coarse := *l
	for _, scale := range finer {
		before := l.use
		if err := j.solver.Factor(&here.p.slab, plate.Mesh{Scale: scale}); err != nil {
			return modelFaults("Roof", err)
		}
		shear, err := j.rest(here)
		if err != nil {
			return err
		}
		l.Checks, l.uses = nil, nil
		if err := j.load(here, k, shear); err != nil {
			return err
		}
		if err := j.balanced(&j.field); err != nil {
			return err
		}
		s := &j.r.Solved
		s.CellsX, s.CellsY = j.solver.Cells()
		s.Unknowns = j.solver.Unknowns()
		s.Error = math.Abs(before/l.use - 1)
		s.Converged = s.Error <= settled
		if s.Converged || l.Governs < 0 { // figures for comparison need no more
			break
		}
	}
	name := ""
	for i, use := range l.uses {
		if use == l.use {
			name = l.Checks[i].Name
		}
	}
	l.merge(&coarse, name) // the other checks as they were, where they say worse
	j.close(k)
	return nil
}
