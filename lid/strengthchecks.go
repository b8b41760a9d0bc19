package lid

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
	"manway.example/manway/internal/soil"
)

// judge works a lid out.
type judge struct {
	l      Lid
	c      StrengthCase
	s      *Strength
	weight Weight

	bending, shear concrete.Standing
	depth          float64 // to the steel, or the thickness
	q              float64 // dead pressure, Pa
	person, people float64 // N: one standing person; all with their gear
	response       response
}

func (j *judge) run() error {
	strip := j.l.strip(j.c.Steel)
	var err error
	if j.bending, err = strip.Bending(); err != nil {
		return err
	}
	if j.shear, err = strip.Shear(); err != nil {
		return err
	}
	j.depth = float64(j.l.left())
	if !j.bending.Plain {
		j.depth = float64(strip.EffectiveDepth())
	}
	j.s.Assumed |= j.bending.Made
	j.s.Cautions |= j.bending.Warn
	person, made := j.c.Person.Filled()
	j.s.Assumed |= made
	j.person = float64(person.Mass.Weight())
	j.people = float64(max(j.c.People, 1))*j.person + float64(j.c.Gear.Weight())
	// the slab or disc between its bearings under the lid's heaviest density
	density := float64(j.weight.Heaviest) / float64(j.weight.Volume)
	j.q = density*manway.StandardGravity*float64(j.l.Thickness) + float64(j.weight.OnTop.Weight())/j.l.topArea()
	j.s.Dead = j.weight.Heaviest.Weight() + j.weight.OnTop.Weight()
	if err := j.respond(); err != nil {
		return err
	}
	j.own()
	if err := j.standing(); err != nil {
		return err
	}
	for _, w := range j.c.Wheels {
		if err := j.wheel(w); err != nil {
			return err
		}
	}
	j.broken()
	j.rest()
	return nil
}

// broken withholds what passed where so much of the rim is gone that three points
// 120 degrees apart, or two short sides, cannot be counted on.
func (j *judge) broken() {
	whole := j.l.rim(j.c.Seat).Whole
	if !j.s.Chipped || manway.Reached(1./3, j.longestChip()) && manway.Reached(whole, 0.5) {
		return
	}
	j.s.Heaviest, j.s.Known = 0, false
	for i := range j.s.Checks {
		if c := &j.s.Checks[i]; c.Status == manway.Pass && c.Demand > 0 {
			c.Status = manway.NotShown
			c.Reason = "cannot be shown by arithmetic: more than a third of the rim in one piece, or half of it in all, bears nothing"
		}
	}
}

// longestChip is the share of the rim that the longest chip through the bearing
// takes.
func (j *judge) longestChip() (share float64) {
	rim := j.l.rim(j.c.Seat)
	for _, c := range j.c.Seat.Chips {
		if manway.Reached(c.In, rim.Bearing) && rim.Around > 0 {
			share = math.Max(share, float64(c.Along/rim.Around))
		}
	}
	return share
}

// own is the check of the lid's own weight and the soil on it.
func (j *judge) own() {
	m := j.response.dead
	j.add(manway.Check{
		Name: "bending, own weight", Kind: manway.KindMomentPerLength, Combination: manway.Dead,
		Demand: manway.Dead.Factors().Dead * m, Unfactored: m,
	}, j.bending)
}

// standing are the checks of people.
func (j *judge) standing() error {
	f := manway.DeadLive.Factors()
	dead, live := j.response.dead, j.response.person
	bend := func(name string, factor float64) {
		j.add(manway.Check{
			Name: name, Kind: manway.KindMomentPerLength, Combination: manway.DeadLive,
			Demand: f.Dead*dead + f.Live*factor*live, Unfactored: dead + factor*live,
		}, j.bending)
	}
	bend("bending, a person", 1)
	bend("bending, a hard step", soil.Step)
	cover := j.bending
	if cover.Phi > 0 {
		cover.Design, cover.AsPlain = cover.Design/cover.Phi, cover.AsPlain/concrete.PhiPlain
	}
	cover.Phi = 0
	cover.Source = manway.Citation{Source: manway.OSHA1926, Place: "1926.502(i)(2)"}
	all := live * j.people / j.person
	j.add(manway.Check{
		Name: "hole cover: twice people and gear", Kind: manway.KindMomentPerLength, Combination: manway.Service,
		Demand: dead + 2*all, Unfactored: dead + all,
	}, cover)
	if err := j.fall(cover, dead, live); err != nil {
		return err
	}
	side := float64(boot) * math.Sqrt(math.Pi)
	j.shearing("one-way shear, a person", side, side, j.person)
	if err := j.punch("punching, a person", side, side, j.person); err != nil {
		return err
	}
	j.heaviest(f)
	return nil
}

// fall is the bound of a person coming down from a height.
func (j *judge) fall(nominal concrete.Standing, dead, live float64) error {
	if j.c.Fall == 0 {
		return nil
	}
	n, err := soil.Fall(j.c.Fall, manway.Length(j.response.sink))
	if err != nil {
		return err
	}
	c := manway.Check{
		Name: "bending, a fall from " + j.c.Fall.String(), Kind: manway.KindMomentPerLength, Combination: manway.Service,
		Demand: dead + n*live, Unfactored: dead + live,
	}
	j.add(c, nominal)
	if last := &j.s.Checks[len(j.s.Checks)-1]; last.Status == manway.Fail {
		last.Status = manway.NotShown
		last.Reason = "cannot be shown by arithmetic: the bound puts all the energy of the fall into the lid and none into the body"
	}
	return nil
}

// wheel are the checks of one wheel of a vehicle, in the middle of the lid.
func (j *judge) wheel(w manway.Wheel) error {
	on, err := soil.AASHTO.OneWheel(w, j.l.Overburden.Depth)
	if err != nil {
		return err
	}
	moment, err := j.wheelMoment(on)
	if err != nil {
		return err
	}
	f := manway.DeadLive.Factors()
	j.add(manway.Check{
		Name: "bending, " + w.Name, Kind: manway.KindMomentPerLength, Combination: manway.DeadLive,
		Demand: f.Dead*j.response.dead + f.Live*moment, Unfactored: j.response.dead + moment,
	}, j.bending)
	length, width, force := j.clip(on)
	j.shearing("one-way shear, "+w.Name, length, width, force)
	return j.punch("punching, "+w.Name, length, width, force)
}

// add judges a check by a strength and keeps it. Where nothing counts it says
// what plain concrete would have.
func (j *judge) add(c manway.Check, st concrete.Standing) {
	c = st.Judge(c)
	if st.Design == 0 && st.AsPlain > 0 {
		c.Reason += "; for comparison only: of plain concrete it would use " + number(100*c.Demand/st.AsPlain) + " %"
	}
	j.s.Checks = append(j.s.Checks, c)
}

// shearing is the check of one-way shear with a load one depth from the seat: it
// goes there as on a beam, spreading at 45 degrees over its side and twice the
// depth, at a side that bears nothing over its side and the depth.
func (j *judge) shearing(name string, length, width, force float64) {
	f := manway.DeadLive.Factors()
	span := float64(j.s.Span)
	dead := j.q * math.Max(span/2-j.depth, 0)
	if j.s.Long == 0 {
		dead /= 2 // a disc: area over circumference
	}
	spread := 2 * j.depth
	if j.freeSide() {
		spread = j.depth
	}
	strip := math.Min(math.Min(length, width)+spread, span)
	live := force / strip
	j.add(manway.Check{
		Name: name, Kind: manway.KindLineLoad, Combination: manway.DeadLive,
		Demand: f.Dead*dead + f.Live*live, Unfactored: dead + live,
	}, j.shear)
}

// freeSide reports whether a side of the lid bears nothing, where a load may
// stand flush with it.
func (j *judge) freeSide() bool { return j.s.Chipped || j.l.Pieces > 1 }

// punch is the check of a load pushing through, on three sides where it may stand
// at a side that bears nothing or at a hole.
func (j *judge) punch(name string, length, width, force float64) error {
	position := concrete.Interior
	if j.freeSide() || len(j.l.Recesses) > 0 {
		position = concrete.AtEdge
	}
	// at an edge, the longer side pointing inwards counts twice: the shorter does
	shorter, longer := math.Min(length, width), math.Max(length, width)
	st, err := j.l.strip(j.c.Steel).Punching(manway.Length(longer), manway.Length(shorter), position)
	if err != nil {
		return err
	}
	j.add(manway.Check{
		Name: name, Kind: manway.KindForce, Combination: manway.DeadLive,
		Demand: manway.DeadLive.Factors().Live * force, Unfactored: force,
	}, st)
	return nil
}

// heaviest fills in the person standing still that brings the governing of
// bending, shear and punching to 1.
func (j *judge) heaviest(f manway.Factors) {
	limit := math.Inf(1)
	for _, c := range j.s.Checks {
		if c.Combination != manway.DeadLive || c.Name == "bending, a hard step" {
			continue
		}
		if c.Status != manway.Pass && c.Status != manway.Fail {
			return
		}
		// Demand = 1.2 dead + 1.6 live, Unfactored = dead + live
		live := (c.Demand - f.Dead*c.Unfactored) / (f.Live - f.Dead)
		if c.Name == "punching, a person" {
			live = c.Unfactored
		}
		limit = math.Min(limit, (c.Capacity-c.Demand+f.Live*live)/(f.Live*live))
	}
	if limit > 0 && !math.IsInf(limit, 1) {
		j.s.Heaviest, j.s.Known = manway.Force(limit*j.person).Mass(), true
	}
}

// rest closes the list: tipping on three points, what is not judged, cautions.
func (j *judge) rest() {
	s := j.s
	if s.Chipped && s.Long == 0 {
		// about the line through two points of bearing 120 degrees apart, or as far
		// as the longest chip
		radius, hold := float64(s.Span)/2, 0.0
		if chip := math.Max(j.longestChip(), 1./3); chip < 0.5 { // else the lid has its middle over the chip
			hold = radius * math.Cos(math.Pi*chip)
		}
		arm := radius - hold
		c := manway.Check{
			Name: "does not tip on three points", Kind: manway.KindMoment, Combination: manway.Service,
			Demand: j.person * arm, Unfactored: j.person * arm, Capacity: float64(s.Dead) * hold,
			Source: manway.Citation{Source: manway.Practice, Place: "statics, a person at the rim between two points"},
		}
		s.Checks = append(s.Checks, c.Judge())
	}
	s.Governs = manway.Governing(s.Checks)
	if s.Governs >= 0 {
		if _, figures := s.Checks[s.Governs].Use(); !figures && s.Checks[s.Governs].Status == manway.Pass {
			s.Governs = -1 // only that it cannot fall through was shown
		}
	}
	leave := func(name, reason string) { s.NotJudged = append(s.NotJudged, manway.Check{Name: name, Reason: reason}) }
	leave("anchorage of the steel", "not visible")
	if len(j.l.Recesses) > 0 {
		leave("pockets and holes in the lid", "not in the plate: the section beside them is thinner")
	}
	if j.l.Shape.stepped() {
		leave("flange", "the ledge on which it bears is not judged")
	}
	if s.Chipped {
		leave("the rim where the lid still bears", "a broken seat can break further")
	}
	for _, c := range s.Checks {
		if c.Status != manway.Pass {
			s.Cautions |= manway.KeepOffRoof
		}
	}
}
