package tank

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
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
	Wheel    WheelLimit
	Cover    CoverLimit
	// NotJudged lists what this screening leaves open.
	NotJudged []manway.Check
	Pieces    int
	Mesh      Mesh2
	Assumed   manway.Assumptions
	Cautions  manway.Cautions
	Case      RoofCase // as reckoned

	work roofWork
}

// Loading is one load on the roof, at its worst place, and its checks.
type Loading struct {
	Name   string
	Moving bool           // it stands at At; else it lies all over
	At     Point          // of its middle, on the roof
	Turned bool           // it rolls across the tank
	Load   manway.Force   // of one wheel or person, with impact; 0 where it lies all over
	Checks []manway.Check // bending, one-way shear, punching; a second bending check where part of the roof does not count
	// Governs is the index of the check that governs, -1 where none ran.
	Governs int
	Source  manway.Citation
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

// Mesh2 says how the plate was solved.
type Mesh2 struct {
	CellsX, CellsY, Unknowns int
	Residual                 float64 // unbalanced force over the load
	Error                    float64 // of the governing moment, from two meshes
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
	j := roofJudge{t: t, c: &c, r: &r}
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
	solver plate.Solver
	field  plate.Field
	worst  float64 // greatest use of any bending that ran or was compared
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
	if err := j.loadings(); err != nil {
		return err
	}
	made, warn := pieces[0].strength.made()
	j.r.Assumed |= made
	j.r.Cautions |= warn
	for i := range pieces {
		if err := j.piece(&pieces[i]); err != nil {
			return err
		}
	}
	j.settle(pieces)
	return nil
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

// way judges a piece on its present supports.
func (j *roofJudge) way(p *piece) error {
	if err := j.solver.Factor(&p.slab, plate.Mesh{}); err != nil {
		return modelFaults("Roof", err)
	}
	if j.r.Mesh.Unknowns < j.solver.Unknowns() {
		j.r.Mesh.CellsX, j.r.Mesh.CellsY = j.solver.Cells()
		j.r.Mesh.Unknowns = j.solver.Unknowns()
	}
	w, err := newSearch(p.slab, &p.strength)
	if err != nil {
		return modelFaults("Roof", err)
	}
	places := w.worst(j.moving)
	after := j.t.resting(p, *j.after, j.c)
	if err := p.slab.CheckLoads(after.loads(1)); err != nil { // a riser that reaches over the wall: on the opening's edge
		for i := range after.rings {
			after.rings[i].Offset = 0
		}
	}
	for k := range j.r.Loadings {
		if err := j.load(p, k, after, places); err != nil {
			return err
		}
	}
	return j.compare(p, after)
}

// load judges loading k on a piece and keeps it where it is the worst so far.
func (j *roofJudge) load(p *piece, k int, after rest, places []best) error {
	l := Loading{Name: j.r.Loadings[k].Name, Source: j.r.Loadings[k].Source, Moving: k >= fixed, Load: j.r.Loadings[k].Load}
	combination := manway.DeadLive
	if k == 0 {
		combination = manway.Dead
	}
	f := combination.Factors()
	loads := after.loads(f.Dead)
	var at standing
	switch {
	case k == 1:
		loads = append(loads, j.crowd(p, f.Live)...)
	case k >= fixed:
		at = places[k-fixed].at
		loads = j.moving[k-fixed].put(loads, &p.slab, at, f.Live)
		l.At, l.Turned = p.place(at.Point), at.turned
	}
	if err := j.solver.Solve(&j.field, loads); err != nil {
		return modelFaults("Roof", err)
	}
	j.r.Mesh.Residual = math.Max(j.r.Mesh.Residual, j.field.Residual)
	worst := pulls(&j.field, &p.strength, p.zones, insideFace)
	use := 0.0
	for _, kind := range worst[insideFace] {
		if kind.use > 0 {
			l.Checks = append(l.Checks, bendingCheck("bending, underside", kind, combination))
		}
		use = math.Max(use, kind.use)
	}
	if len(p.slab.Lines) > 0 {
		for _, kind := range worst[outsideFace] {
			if kind.use > 0 {
				l.Checks = append(l.Checks, bendingCheck("bending, top over a partition", kind, combination))
			}
			use = math.Max(use, kind.use)
		}
	}
	l.Checks = append(l.Checks, j.shear(p, k, at, after, combination))
	if k >= fixed {
		l.Checks = append(l.Checks, j.punching(p, &j.moving[k-fixed], after, combination))
	}
	j.keep(p, k, l, worst, use)
	return nil
}

// crowd is people all over the piece, and on the lids of its openings.
func (j *roofJudge) crowd(p *piece, factor float64) []plate.Load {
	pressure := factor * float64(soil.Crowd)
	list := []plate.Load{plate.Uniform{Pressure: pressure}}
	for k, i := range p.opening {
		a := j.t.Spec.Access[i]
		around := 2 * float64(a.Length+a.Width)
		if a.Diameter > 0 {
			around = math.Pi * float64(a.Diameter)
		}
		list = append(list, plate.Ring{Opening: k, PerLength: pressure * float64(a.Area()) / around})
	}
	return list
}

// bendingCheck is the check of one pull.
func bendingCheck(name string, p pull, combination manway.Combination) manway.Check {
	return judged(manway.Check{Name: name, Kind: manway.KindMomentPerLength, Demand: p.demand, Combination: combination}, p.standing)
}

// judged judges a check by a strength; where nothing counts it says what plain
// concrete would have, for comparison.
func judged(c manway.Check, st concrete.Standing) manway.Check {
	c = st.Judge(c)
	if st.Design == 0 && st.AsPlain > 0 {
		c.Reason += "; for comparison only, plain concrete would be used " + share(c.Demand/st.AsPlain)
	}
	return c
}
