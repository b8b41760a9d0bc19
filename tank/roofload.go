package tank

import (
	"math"
	"strconv"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
)

// load judges loading k in a place on a piece and keeps what is the worst so far.
func (j *roofJudge) load(here kept, k int, dead [2][2]float64) error {
	p := here.p
	old := &j.r.Loadings[k]
	l := Loading{Name: old.Name, Source: old.Source, Moving: k >= fixed, Load: old.Load}
	combination := manway.DeadLive
	if k == 0 {
		combination = manway.Dead
	}
	f := combination.Factors()
	var at standing
	field := &j.field
	var loads []plate.Load
	switch {
	case k == 1:
		loads = j.crowd(p, f.Live)
	case k >= fixed:
		at = here.at[k-fixed]
		loads = j.moving[k-fixed].put(loads, &p.slab, at, f.Live)
		l.At, l.Turned = p.place(at.Point), at.turned
	}
	if err := j.solver.SolveOnto(field, plate.Scaled{Factor: f.Dead, Field: &j.dead}, loads); err != nil {
		return modelFaults("Roof", err)
	}
	worst := pulls(field, &p.strength, p.zones, insideFace, p.overPartition)
	j.bending(&l, "bending, underside", worst[insideFace], combination)
	if len(p.slab.Lines) > 0 {
		j.bending(&l, "bending, top over a partition", worst[outsideFace], combination)
	}
	if k >= fixed {
		l.add(j.wheelShear(p, &j.moving[k-fixed], dead, combination))
		punch, err := j.punching(p, &j.moving[k-fixed], combination)
		if err != nil {
			return err
		}
		l.add(punch)
	} else {
		l.add(j.shear(p, dead, shears(field, p), combination))
	}
	j.keep(k, l, here)
	return nil
}

// overPartition reports whether a point lies over an inner support, within two
// thicknesses of its line: elsewhere hogging of a roof that lies free on its
// walls is not needed to carry anything, and is not judged.
func (p *piece) overPartition(at plate.Point) bool {
	for _, l := range p.slab.Lines {
		if math.Abs(at.X-l.At) <= 2*p.slab.Thickness {
			return true
		}
	}
	return false
}

// bending adds the checks of one face: of the part that counts, and of the part
// that does not.
func (j *roofJudge) bending(l *Loading, name string, kinds [2]pull, combination manway.Combination) {
	f := combination.Factors()
	for kind, p := range kinds {
		if p.use == 0 {
			continue
		}
		if kind == 1 && kinds[0].use > 0 {
			name += ", where the steel does not count"
		}
		dead := 0.0
		if v, ok := j.dead.MomentAt(p.at.X, p.at.Y); ok {
			all := measuresOf(v)
			dead = p.of(&all, insideFace)
		}
		c := manway.Check{
			Name: name, Kind: manway.KindMomentPerLength, Demand: p.demand, Combination: combination,
			Unfactored: unfactored(p.demand, dead, f),
		}
		l.Checks, l.uses = append(l.Checks, judged(c, *p.standing)), append(l.uses, p.use)
		if p.use > l.use {
			l.use, l.bend, l.dead = p.use, p, dead
		}
	}
}

// unfactored is the demand with every factor 1, given what of it is dead.
func unfactored(demand, dead float64, f manway.Factors) float64 {
	if f.Live == 0 {
		return demand / f.Dead
	}
	return dead + (demand-f.Dead*dead)/f.Live
}

// judged judges a check by a strength; where nothing counts it says what plain
// concrete would have, for comparison.
func judged(c manway.Check, st concrete.Standing) manway.Check {
	c = st.Judge(c)
	if st.Design == 0 && st.AsPlain > 0 {
		c.Reason += "; for comparison only: of plain concrete it would use " + percent(c.Demand/st.AsPlain)
	}
	return c
}

// percent is a share in whole percent.
func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 0, 64) + " %" }

// window is the width over which a shear force is averaged: three thicknesses,
// at least a foot.
func (p *piece) window() float64 { return math.Max(3*p.slab.Thickness, float64(manway.Foot)) }

// shears are the greatest shear forces per length of a field, by the face that
// is pulled where they act, along (0) and across (1): on sections one depth from
// each support, averaged over a window. At inner supports the top is pulled.
func shears(f *plate.Field, p *piece) (most [2][2]float64) {
	sections := func(face int, axis plate.Axis, at, size float64) {
		n := max(int(math.Round(size/p.window())), 1)
		for i := range n {
			from, to := size*float64(i)/float64(n), size*float64(i+1)/float64(n)
			if q, ok := sectionShear(f, &p.slab, axis, at, from, to); ok {
				most[face][axis] = math.Max(most[face][axis], math.Abs(q))
			}
		}
	}
	s := &p.slab
	d := float64(p.strength.depth[insideFace])
	if s.Edges[plate.SideX0] != plate.Free {
		sections(insideFace, plate.X, d, s.Width)
	}
	if s.Edges[plate.SideX1] != plate.Free {
		sections(insideFace, plate.X, s.Length-d, s.Width)
	}
	for _, l := range s.Lines {
		d := float64(p.strength.depth[outsideFace])
		sections(outsideFace, plate.X, l.At-d, s.Width)
		sections(outsideFace, plate.X, l.At+d, s.Width)
	}
	sections(insideFace, plate.Y, d, s.Length)
	sections(insideFace, plate.Y, s.Width-d, s.Length)
	return most
}

// sectionShear is the shear force per length on a section. Where it ends at a free
// edge, thin-plate theory lets part of the force run along that edge, as much as
// the twisting moment there: it belongs to the section too.
func sectionShear(f *plate.Field, s *plate.Slab, axis plate.Axis, at, from, to float64) (float64, bool) {
	q, ok := f.Shear(axis, at, from, to)
	if !ok {
		return 0, false
	}
	size, low, high := s.Width, plate.SideY0, plate.SideY1
	if axis == plate.Y {
		size, low, high = s.Length, plate.SideX0, plate.SideX1
	}
	twist := func(b float64) float64 {
		x, y := at, b
		if axis == plate.Y {
			x, y = b, at
		}
		m, _ := f.MomentAt(x, y)
		return m.XY / (to - from)
	}
	if from == 0 && s.Edges[low] == plate.Free {
		q += twist(0)
	}
	if to == size && s.Edges[high] == plate.Free {
		q -= twist(size)
	}
	return q, true
}

// shear is the check of one-way shear under a load that lies all over.
func (j *roofJudge) shear(p *piece, dead, demand [2][2]float64, combination manway.Combination) manway.Check {
	face, dir := p.worseShear(demand)
	return judged(manway.Check{
		Name: "one-way shear", Kind: manway.KindLineLoad, Combination: combination,
		Demand: demand[face][dir], Unfactored: unfactored(demand[face][dir], dead[face][dir], combination.Factors()),
	}, p.strength.shear[face][dir])
}

// worseShear is the face and direction in which a demand uses most of the
// strength.
func (p *piece) worseShear(demand [2][2]float64) (face, dir int) {
	worst := -1.0
	for f := range 2 {
		for d, st := range p.strength.shear[f] {
			capacity := st.Design
			if capacity == 0 {
				capacity = st.AsPlain
			}
			if use := demand[f][d] / capacity; use > worst {
				worst, face, dir = use, f, d
			}
		}
	}
	return face, dir
}

// wheelShear is the check of one-way shear with a load one depth from a
// support. It goes to the near support as on a beam and spreads at 45 degrees
// on its way, over its side and twice the depth, or beside a joint or an opening
// over its side and the depth; the two wheels of an axle count together where
// their strips meet. What rests there is at its worst
// section at the same time.
func (j *roofJudge) wheelShear(p *piece, m *moving, dead [2][2]float64, combination manway.Combination) manway.Check {
	f := combination.Factors()
	short, long := math.Min(m.along, m.across), math.Max(m.along, m.across)
	var demand, live [2][2]float64
	for face := range 2 {
		if face == outsideFace && len(p.slab.Lines) == 0 {
			continue
		}
		d := float64(p.strength.depth[face])
		for dir, span := range [2]float64{p.slab.Length, p.slab.Width} {
			if face == outsideFace && dir == 1 {
				continue // inner supports cross the tank
			}
			other := [2]float64{p.slab.Width, p.slab.Length}[dir]
			side, deep := math.Min(short, other), math.Min(long, span)
			force := float64(m.on.Pressure) * side * deep
			spread := 2 * d
			if p.oneSided(dir, d+deep) {
				spread = d
			}
			strip := math.Min(side+spread, other)
			per := force / strip
			if m.pair > 0 && m.pair < strip {
				per = 2 * force / (strip + m.pair)
			}
			live[face][dir] = per * math.Max(1-(d+deep/2)/span, 0.5)
			demand[face][dir] = f.Dead*dead[face][dir] + f.Live*live[face][dir]
		}
	}
	face, dir := p.worseShear(demand)
	return judged(manway.Check{
		Name: "one-way shear", Kind: manway.KindLineLoad, Combination: combination,
		Demand: demand[face][dir], Unfactored: dead[face][dir] + live[face][dir],
	}, p.strength.shear[face][dir])
}

// oneSided reports whether a load on its way to a support in a direction may be
// kept from spreading to one side: by a joint beside it, or by an opening as near
// to the support as it reaches.
func (p *piece) oneSided(dir int, reach float64) bool {
	s := &p.slab
	if dir == 1 && (s.Edges[plate.SideX0] == plate.Free || s.Edges[plate.SideX1] == plate.Free) {
		return true
	}
	for _, o := range s.Openings {
		x0, x1, y0, y1 := o.X, o.X+o.Length, o.Y, o.Y+o.Width
		if r := o.Diameter / 2; r > 0 {
			x0, x1, y0, y1 = o.X-r, o.X+r, o.Y-r, o.Y+r
		}
		if dir == 1 {
			if math.Min(y0, s.Width-y1) < reach {
				return true
			}
			continue
		}
		near := math.Inf(1)
		if s.Edges[plate.SideX0] != plate.Free {
			near = math.Min(near, x0)
		}
		if s.Edges[plate.SideX1] != plate.Free {
			near = math.Min(near, s.Length-x1)
		}
		for _, l := range s.Lines {
			near = math.Min(near, math.Max(x0-l.At, l.At-x1))
		}
		if near < reach {
			return true
		}
	}
	return false
}

// punching is the check of a load pushing through where the roof is thinnest,
// beside an opening or a joint where there is one.
func (j *roofJudge) punching(p *piece, m *moving, combination manway.Combination) (manway.Check, error) {
	position := concrete.Interior
	if len(p.slab.Openings) > 0 || p.slab.Edges[plate.SideX0] == plate.Free || p.slab.Edges[plate.SideX1] == plate.Free {
		position = concrete.AtEdge
	}
	members := append(make([]member, 0, 1+len(p.zones)), p.strength.member)
	for i := range p.zones {
		members = append(members, p.zones[i].member)
	}
	sides := [2]manway.Length{manway.Length(math.Min(m.along, p.slab.Length)), manway.Length(math.Min(m.across, p.slab.Width))}
	var least concrete.Standing
	for i, mb := range members {
		for dir := range 2 {
			st, err := mb.strip(insideFace, dir).Punching(sides[dir], sides[1-dir], position)
			if err != nil {
				return manway.Check{}, err
			}
			if i == 0 && dir == 0 || worse(st, least) {
				least = st
			}
		}
	}
	force := float64(m.on.Pressure) * float64(sides[0]) * float64(sides[1])
	return judged(manway.Check{
		Name: "punching", Kind: manway.KindForce, Combination: combination,
		Demand: combination.Factors().Live * force, Unfactored: force,
	}, least), nil
}

// heaviest fills in the load that brings the governing Use to 1.
func (l *Loading) heaviest(load manway.Force, f manway.Factors) {
	limit := math.Inf(1)
	for _, c := range l.Checks {
		if c.Status != manway.Pass && c.Status != manway.Fail {
			return
		}
		// Unfactored = dead + live, Demand = 1.2 dead + 1.6 live
		live := (c.Demand - f.Dead*c.Unfactored) / (f.Live - f.Dead)
		room := c.Capacity - f.Dead*(c.Unfactored-live)
		if live > 0 {
			limit = math.Min(limit, room/(f.Live*live))
		}
	}
	if limit > 0 && !math.IsInf(limit, 1) {
		l.Heaviest, l.HeaviestKnown = manway.Force(limit)*load, true
	}
}

// worseThan reports whether l says worse than other: by status first, then by
// what it uses.
func (l *Loading) worseThan(other *Loading) bool {
	if a, b := gravity(l.Status()), gravity(other.Status()); a != b {
		return a > b
	}
	if a, b := l.Use(), other.Use(); more(a, b) || more(b, a) {
		return more(a, b)
	}
	return more(l.use, other.use)
}

// more reports whether a exceeds b beyond rounding. Of two places that do the same,
// such as mirror images, the one found first is kept.
func more(a, b float64) bool {
	const tie = 1e-9
	return a > b+tie*math.Abs(b)
}

// Use is the greatest Use of the checks that ran, or, where none did, of the
// bending compared with plain concrete.
func (l Loading) Use() float64 {
	if l.Governs < 0 || l.Governs >= len(l.Checks) {
		return l.use
	}
	use, _ := l.Checks[l.Governs].Use()
	return use
}

// gravity ranks what a status says.
func gravity(s manway.Status) int {
	switch s {
	case manway.Fail:
		return 2
	case manway.Pass:
		return 0
	default:
		return 1
	}
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
