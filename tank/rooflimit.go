package tank

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// RoofChange is what the planned load adds to what the roof carries now. It
// does not depend on the strength, and holds where that is not known.
type RoofChange struct {
	Known  bool         // something is planned
	Now    manway.Force // all that rests on the roof, with its own weight
	After  manway.Force
	Load   float64 // After/Now - 1
	Moment float64 // the same of the greatest bending moment
	now    float64
	after  float64
}

// CoverLimit is the depth of soil, as wet and over as much as else rests there,
// that brings the Use of bending or shear under dead load (1.4 D) to 1: linear
// in the depth.
type CoverLimit struct {
	Known bool // every check under dead load ran
	Depth manway.Length
}

// compare adds a piece to the change, and finds how deep a cover it carries.
func (j *roofJudge) compare(p *piece, after rest) error {
	c := &j.r.Change
	if j.c.Planned != nil {
		before := j.t.resting(p, j.c.Now, j.c)
		if err := p.slab.CheckLoads(before.loads(1)); err != nil {
			for i := range before.rings {
				before.rings[i].Offset = 0
			}
		}
		if len(p.slab.Lines) == 0 { // each piece once
			c.Now += manway.Force(before.force)
			c.After += manway.Force(after.force)
		}
		if err := j.solver.SolveOnto(&j.field, plate.Scaled{}, before.loads(1)); err != nil {
			return modelFaults("Roof", err)
		}
		c.now, c.after = math.Max(c.now, greatest(&j.field)), math.Max(c.after, greatest(&j.dead))
	}
	return j.deepest(p, after)
}

// greatest is the greatest principal moment of a field.
func greatest(f *plate.Field) float64 {
	e := f.Extremes()
	return math.Abs(e.Governing().Value)
}

// deepest lowers the cover limit to what a piece carries: the demand grows
// linearly from one cover to another.
func (j *roofJudge) deepest(p *piece, after rest) error {
	dead := &j.r.Loadings[0]
	for _, c := range dead.Checks {
		if c.Status != manway.Pass && c.Status != manway.Fail {
			j.r.Cover = CoverLimit{}
			return nil
		}
	}
	// another cover: none, or a foot where there is none
	other := *j.after
	if other.Cover > 0 {
		other.Cover = 0
	} else {
		other.Cover = manway.Foot
	}
	there := j.t.resting(p, other, j.c)
	for i := range there.rings {
		if len(after.rings) == len(there.rings) {
			there.rings[i].Offset = after.rings[i].Offset
		} else {
			there.rings[i].Offset = 0
		}
	}
	f := manway.Dead.Factors().Dead
	if err := j.solver.SolveOnto(&j.field, plate.Scaled{}, there.loads(f)); err != nil {
		return modelFaults("Roof", err)
	}
	bending := func(field *plate.Field) (most float64) {
		for _, kinds := range pulls(field, &p.strength, p.zones, insideFace, p.overPartition) {
			most = math.Max(most, kinds[0].use)
		}
		return most
	}
	limit := j.limit(f*bending(&j.dead), bending(&j.field), other.Cover)
	u1, u2 := j.shearUse(p, shears(&j.dead, p), f), j.shearUse(p, shears(&j.field, p), 1)
	limit = math.Min(limit, j.limit(u1, u2, other.Cover))
	if limit = math.Max(limit, 0); !j.r.Cover.Known || manway.Length(limit) < j.r.Cover.Depth {
		j.r.Cover = CoverLimit{!math.IsInf(limit, 0), manway.Length(limit)}
		if math.IsInf(limit, 0) {
			j.r.Cover = CoverLimit{}
		}
	}
	return nil
}

// limit is the cover at which a use that is u1 under the present cover and u2
// under another reaches 1.
func (j *roofJudge) limit(u1, u2 float64, other manway.Length) float64 {
	slope := (u1 - u2) / float64(j.after.Cover-other)
	if !(slope > 0) {
		return math.Inf(1)
	}
	return float64(other) + (1-u2)/slope
}

// shearUse is the greatest use by shears times a factor.
func (j *roofJudge) shearUse(p *piece, demand [2][2]float64, factor float64) float64 {
	face, dir := p.worseShear(demand)
	return factor * demand[face][dir] / p.strength.shear[face][dir].Design
}

// settle finishes the result when every piece was judged.
func (j *roofJudge) settle(pieces []piece) error {
	r := j.r
	if c := &r.Change; j.c.Planned != nil && c.Now > 0 && c.now > 0 {
		c.Known = true
		c.Load, c.Moment = float64(c.After/c.Now)-1, c.after/c.now-1
	}
	worst := -1
	for k := range r.Loadings {
		l := &r.Loadings[k]
		if len(l.Checks) == 0 {
			l.Governs = -1
			continue
		}
		if worst < 0 || more(l.use, r.Loadings[worst].use) {
			worst = k
		}
	}
	if worst >= 0 {
		if err := j.refine(worst); err != nil {
			return err
		}
	}
	for k := range r.Loadings {
		if l := &r.Loadings[k]; l.Governs >= 0 && (r.Governs < 0 || l.worseThan(&r.Loadings[r.Governs])) {
			r.Governs = k
		}
	}
	if worst >= 0 {
		at := r.Loadings[worst].bend.at
		r.Weakest = Point{Along: manway.Length(at.X), Across: manway.Length(at.Y)}
	}
	r.Cautions |= manway.VehicleOverTank | manway.MayCave | manway.GuardHole
	for k := range r.Loadings {
		if k <= fixed && r.Loadings[k].Status() != manway.Pass {
			r.Cautions |= manway.KeepOffRoof
		}
	}
	for i := range pieces {
		if pieces[i].notes != nil {
			r.Cautions |= manway.KeepOffRoof
			r.Cover = CoverLimit{}
		}
	}
	j.open()
	return nil
}

// open lists what a roof's screening leaves open.
func (j *roofJudge) open() {
	leave := func(name, reason string) {
		j.r.NotJudged = append(j.r.NotJudged, manway.Check{Name: name, Reason: reason})
	}
	leave("anchorage and laps of the steel", "not visible")
	leave("bearing of the roof on its walls", "the seat was not measured")
	for i, a := range j.t.Spec.Access {
		if i == 0 && a.Area() > 0 {
			leave("lids in the openings", "judged by themselves, by package lid")
		}
	}
	if len(j.c.Contact) < j.t.n-1 || contactless(j.c.Contact) {
		if j.t.n > 1 {
			leave("support by a partition", "not seen to touch the roof: not counted")
		}
	}
}

func contactless(contact []bool) bool {
	for _, c := range contact {
		if !c {
			return true
		}
	}
	return false
}
