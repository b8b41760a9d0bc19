package tank

import (
	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// FloorCase is the floor of an emptied tank over groundwater.
type FloorCase struct {
	Concrete    manway.Concrete
	Steel       Steel         // Inside is the upper side
	Loss        manway.Length // worn off the upper side
	Cover       manway.Length // soil over the roof
	Groundwater manway.Groundwater
}

// FloorStrength is an unreviewed screening of a floor under uplift.
type FloorStrength struct {
	Uplift  manway.Pressure // of the groundwater, unfactored
	Weight  manway.Pressure // of the floor
	Loading Loading
	// Groundwater is how high it may stand over the inside of the floor before the
	// floor of the empty tank is no longer shown to stand.
	Groundwater Limit
	NotJudged   []manway.Check
	Assumed     manway.Assumptions
	Cautions    manway.Cautions
	Case        FloorCase

	strips strips
}

// Checks is every check of the floor in one list, and then what is not judged.
func (f FloorStrength) Checks() []manway.Check {
	return flat([]Loading{f.Loading}, f.NotJudged)
}

// Floor screens the floor of an empty rectangular concrete tank between its
// walls, pressed up by groundwater and down by its own weight, 1.6 H - 0.9 D, light
// where the density is not known.
// Downwards it lies on the ground and is not judged. Whether its edges turn in
// the walls is not known: both ways are run and taken as in Wall. Whether the
// whole tank stays down is for Float.
//
// Errors: [manway.InputErrors], every fault at once. Other shapes and materials,
// and a floor of more than half its length or width, are NotJudged.
//
// Source: as Wall.
func (t *Tank) Floor(c FloorCase) (FloorStrength, error) {
	var faults manway.InputErrors
	if !t.made(&faults) {
		return FloorStrength{}, faults
	}
	faults.Under("Concrete", c.Concrete.Validate())
	faults.Under("Steel", c.Steel.Validate())
	faults.Under("Groundwater", c.Groundwater.Validate())
	manway.Within(&faults, "Loss", c.Loss, 0, max(t.Spec.Floor-thinnest, 0))
	manway.Within(&faults, "Cover", c.Cover, 0, 20*manway.Foot)
	if len(faults) > 0 {
		return FloorStrength{}, faults
	}
	f := FloorStrength{
		Case: c, Assumed: t.Assumed & manway.AssumedFloorThickness,
		Cautions: t.Cautions | manway.Screening | manway.LocalCode | manway.NeverEnter | manway.MayFloat,
	}
	if reason := t.noSlabs(); reason != "" {
		f.NotJudged = []manway.Check{{Name: "floor", Reason: reason}}
		f.Loading.Governs = -1
		return f, nil
	}
	return f, f.run(t)
}

func (f *FloorStrength) run(t *Tank) error {
	c := f.Case
	g, made := t.groundRound(manway.Soil{}, c.Groundwater, c.Cover)
	f.Assumed |= made &^ manway.AssumedSoil
	if !c.Groundwater.Known {
		f.Cautions |= manway.GroundwaterUnknown
	}
	filled, light := c.Concrete.AsBallast()
	f.Assumed |= light
	thickness := t.Spec.Floor - c.Loss
	weight := float64(filled.Density) * manway.StandardGravity * float64(thickness)
	half := float64(min(t.Spec.Wall, thickness)) / 2
	p, err := newPanel("floor", member{filled, thickness, c.Loss, c.Steel},
		float64(t.Inside.Length)+2*half, float64(t.Inside.Width)+2*half, [4]plate.Edge{}, nil)
	if err != nil {
		return err
	}
	made, warn := p.strength.made()
	f.strips = p.strength.member.strips()
	f.Assumed |= made
	f.Cautions |= warn
	uplift := func(water float64) float64 {
		return max(water+float64(t.Spec.Floor), 0) * g.waterUnitWeight
	}
	f.Uplift, f.Weight = manway.Pressure(uplift(g.water)), manway.Pressure(weight)
	if p.open != "" {
		f.NotJudged = []manway.Check{p.unjudged()}
		f.Loading.Governs = -1
		f.Cautions |= manway.DoNotEmpty
		return nil
	}
	if f.Loading, err = p.lifted(uplift(g.water), weight); err != nil {
		return err
	}
	f.Groundwater = limitOf(g.grade, func(water float64) (float64, bool) {
		if water == 0 { // groundwater at the inside of the floor: its weight may be enough
			water = 1e-9
		}
		u, err := p.lifted(uplift(water), weight)
		return u.Use(), err == nil && u.ran()
	})
	if f.Groundwater.State != LimitNone && f.Loading.Status() != manway.Pass {
		f.Cautions |= manway.DoNotEmpty
	}
	for _, open := range [...][2]string{
		{"floor on the ground", "what the ground bears is not judged"},
		{"joint of floor and walls", "not visible"},
		{"anchorage of the steel", "not visible"},
	} {
		f.NotJudged = append(f.NotJudged, manway.Check{Name: open[0], Reason: open[1]})
	}
	return nil
}

// ran reports whether every check of a loading ran.
func (l *Loading) ran() bool {
	for _, c := range l.Checks {
		if c.Status != manway.Pass && c.Status != manway.Fail {
			return false
		}
	}
	return len(l.Checks) > 0
}

// lifted judges a floor under uplift less its own weight.
func (p *panel) lifted(uplift, weight float64) (Loading, error) {
	f := manway.DeadResisting.Factors()
	net := f.Earth*uplift - f.Dead*weight
	if net <= 0 {
		c := manway.Check{Name: "bending, inside face", Kind: manway.KindMomentPerLength, Combination: manway.DeadResisting,
			Source: manway.DeadResisting.Source()}
		return Loading{Name: "floor: empty, under uplift", Checks: []manway.Check{c.Judge()}, Governs: 0}, nil
	}
	source := manway.Citation{Source: manway.Practice, Place: "head of groundwater under the floor"}
	l, err := p.judge(pushed{
		name: "empty, under uplift", far: insideFace, combination: manway.DeadResisting, factor: 1, source: source,
		loads: func(float64) []plate.Load { return []plate.Load{plate.Uniform{Pressure: net}} },
	})
	for i := range l.Checks { // moments and shears go with the pressure
		l.Checks[i].Unfactored = l.Checks[i].Demand * (uplift - weight) / net
	}
	return l, err
}
