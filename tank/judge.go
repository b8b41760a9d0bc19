package tank

import (
	"fmt"

	"manway.example/manway"
)

// Facts are what was found of a tank, to be judged against a set of rules.
// Whatever was not measured stays not known.
type Facts struct {
	Bedrooms  int         // of the dwelling; 0: not known
	DailyFlow manway.Flow // 0: not known

	Liquid        manway.Volume // up to the outlet invert; 0: not known
	FirstLiquid   manway.Volume // of that in the first compartment; 0: not known
	Compartments  int           // 0: not known
	Form          Form
	LengthToWidth float64 // inside; 0: not known

	LiquidDepth, AirSpace, Drop   manway.Reading
	InletBelow, InletAbove        manway.Reading
	OutletBelow, OutletAbove      manway.Reading
	InsideDiameter, AccessSize    manway.Reading
	AccessBelowGrade, SoilCover   manway.Reading // negative: above grade
	WallThickness, RoofThickness  manway.Reading
	CoverMass                     manway.Mass // 0: not known
	CoverFastened, SecondaryGuard manway.Answer
}

// Facts are what the tank itself can say: capacities and proportions as far as
// inverts, walls and openings were measured.
func (t *Tank) Facts() Facts {
	var f Facts
	if t.n == 0 {
		return f
	}
	f.Compartments = t.n
	in := t.Inside
	switch t.shape.(type) {
	case Box:
		f.Form = PlumbWalls
	case HorizontalCylinder:
		f.Form = LyingCylinder
	case VerticalCylinder:
		f.Form = UprightRound
		f.InsideDiameter = manway.Read(in.Width)
	}
	if in.Width > 0 && t.known != nominalKnown {
		f.LengthToWidth = float64(in.Length) / float64(in.Width)
	}
	if out := t.Spec.OutletInvert; out > 0 {
		f.Liquid, _ = t.AtOutlet()
		f.FirstLiquid = manway.Volume(t.compartments[0].liquid(float64(out)))
		f.LiquidDepth = manway.Read(out)
		f.AirSpace = manway.Read(in.Height - out)
		if in := t.Spec.InletInvert; in > 0 {
			f.Drop = manway.Read(in - out)
		}
	}
	if !t.Assumed.Has(manway.AssumedWallThickness) {
		f.WallThickness = manway.Read(t.Spec.Wall)
	}
	if !t.Assumed.Has(manway.AssumedRoofThickness) && !lying(t.shape) {
		f.RoofThickness = manway.Read(t.Spec.Roof)
	}
	for i, a := range t.Spec.Access {
		least := a.Diameter
		if least == 0 {
			least = min(a.Length, a.Width)
		}
		if i == 0 || least < f.AccessSize.Length {
			f.AccessSize = manway.Read(least)
		}
	}
	return f
}

// Judge holds facts against every rule of the set that is for such a tank. A
// limit with two sides gives two checks. What was not measured is NotJudged
// with that reason; a remembered or superseded rule is NotJudged too, and says
// how the facts compare.
//
// Errors: a negative count, a volume, flow or length out of range.
//
// Source: the text of each rule, which its check cites.
func (s RuleSet) Judge(f Facts) (Judgement, error) {
	var faults manway.InputErrors
	faults.Under("RuleSet", s.Validate())
	if err := f.validate(); err != nil {
		faults = append(faults, err.(manway.InputErrors)...)
	}
	if len(faults) > 0 {
		return Judgement{}, faults
	}
	j := Judgement{Set: s.ID, Cautions: manway.LocalCode | manway.NotAnInspection}
	for _, r := range s.Capacity {
		j.add(r.Provenance, r.check(f))
	}
	for _, r := range s.Limits {
		switch applies, why := r.Scope.holds(f); {
		case applies:
			j.add(r.Provenance, r.checks(f)...)
		case why != "":
			j.add(r.Provenance, manway.Check{Name: r.Topic.String(), Kind: r.Topic.Kind(), Combination: manway.Service, Source: r.Source, Reason: why})
		}
	}
	return j, nil
}

// Judgement is a tank held against one set of rules. Local code governs, which
// its cautions say.
type Judgement struct {
	Set      string // id of the set
	Checks   []manway.Check
	Cautions manway.Cautions
}

func (j *Judgement) add(p Provenance, checks ...manway.Check) {
	if p.Mark == Memory {
		j.Cautions |= manway.RememberedFigure
	}
	j.Checks = append(j.Checks, checks...)
}

func (f Facts) validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Bedrooms", f.Bedrooms, 0, 100)
	manway.Within(&faults, "DailyFlow", f.DailyFlow, 0, 1e6*manway.GallonPerDay)
	manway.Within(&faults, "Liquid", f.Liquid, 0, 1e6*manway.Gallon)
	manway.Within(&faults, "FirstLiquid", f.FirstLiquid, 0, max(f.Liquid, 0)*(1+1e-9))
	manway.Within(&faults, "Compartments", f.Compartments, 0, maxPartitions+1)
	manway.Within(&faults, "LengthToWidth", f.LengthToWidth, 0, 100)
	manway.Within(&faults, "CoverMass", f.CoverMass, 0, 50000*manway.Pound)
	for i, m := range [...]manway.Reading{f.LiquidDepth, f.AirSpace, f.Drop, f.InletBelow, f.InletAbove, f.OutletBelow, f.OutletAbove,
		f.InsideDiameter, f.AccessSize, f.AccessBelowGrade, f.SoilCover, f.WallThickness, f.RoofThickness} {
		m.Within(&faults, measuredNames[i], -greatestSize, greatestSize)
	}
	return faults.Err()
}

// measuredNames stands in the order of validate.
var measuredNames = [...]string{"LiquidDepth", "AirSpace", "Drop", "InletBelow", "InletAbove", "OutletBelow", "OutletAbove",
	"InsideDiameter", "AccessSize", "AccessBelowGrade", "SoilCover", "WallThickness", "RoofThickness"}

// holds reports whether the scope is for such a tank; where it cannot be told,
// why not.
func (s Scope) holds(f Facts) (applies bool, why string) {
	switch {
	case s.Form != AnyForm && f.Form != AnyForm && s.Form != f.Form:
		return false, ""
	case s.Compartments > 0 && f.Compartments > 0 && f.Compartments < s.Compartments:
		return false, ""
	case f.Liquid > 0 && (s.From > 0 && f.Liquid < s.From || s.Below > 0 && f.Liquid >= s.Below):
		return false, ""
	case s.Form != AnyForm && f.Form == AnyForm:
		return false, "only for another form of tank, or the form is not known"
	case s.Compartments > 0 && f.Compartments == 0:
		return false, "not measured: number of compartments, on which the rule depends"
	case f.Liquid == 0 && (s.From > 0 || s.Below > 0):
		return false, "not measured: liquid capacity, on which the rule depends"
	}
	return true, ""
}

// check judges the liquid capacity, by the larger of what bedrooms and flow ask.
func (r CapacityRule) check(f Facts) manway.Check {
	c := manway.Check{Name: "liquid capacity", Kind: manway.KindVolume, Combination: manway.Service, Source: r.Source}
	byBedrooms, b := r.ForBedrooms(f.Bedrooms)
	byFlow, q := r.ForFlow(f.DailyFlow)
	switch {
	case !b && !q && f.Bedrooms == 0 && f.DailyFlow == 0:
		c.Reason = "bedrooms and daily flow not known"
		return c
	case !b && !q:
		c.Reason = "the rule says nothing for these bedrooms or this flow"
		return c
	case f.Liquid == 0:
		c.Demand = float64(max(byBedrooms, byFlow))
		c.Reason = "not measured: liquid capacity up to the outlet invert"
		return c
	}
	c.Demand, c.Capacity = float64(max(byBedrooms, byFlow)), float64(f.Liquid)
	c.Unfactored = c.Demand
	return r.settle(c.Judge())
}

// settle turns the verdict of a rule that only informs into words.
func (p Provenance) settle(c manway.Check) manway.Check {
	if p.Judges() || c.Status == manway.NotJudged {
		return c
	}
	why := "remembered, not read"
	if p.SupersededBy != "" {
		why = "superseded by " + p.SupersededBy
	}
	c.Reason = fmt.Sprintf("%s, so it only informs: by it the tank would %v", why, c.Status)
	c.Status = manway.NotJudged
	return c
}

// checks judges one limit, each side for itself.
func (r LimitRule) checks(f Facts) []manway.Check {
	c := manway.Check{Name: r.Topic.String(), Kind: r.Topic.Kind(), Combination: manway.Service, Source: r.Source}
	switch r.Topic {
	case CoverSecured:
		return []manway.Check{r.settle(r.secured(c, f))}
	case CoverFastened:
		return []manway.Check{r.settle(answered(c, f.CoverFastened))}
	case SecondaryGuard:
		return []manway.Check{r.settle(answered(c, f.SecondaryGuard))}
	}
	value, known := f.value(r.Topic)
	var list []manway.Check
	if r.Least.Set {
		least := c
		least.Name += ", at least"
		least.Demand, least.Capacity = r.Least.Value, value
		list = append(list, r.side(least, known))
	}
	if r.Most.Set {
		most := c
		most.Name += ", at most"
		most.Demand, most.Capacity = value, r.Most.Value
		list = append(list, r.side(most, known))
	}
	return list
}

func (r LimitRule) side(c manway.Check, known bool) manway.Check {
	if !known {
		c.Demand, c.Capacity = 0, 0
		c.Reason = "not measured"
		return c
	}
	c.Unfactored = c.Demand
	c = c.Judge()
	if r.Strict && c.Status == manway.Pass && manway.Reached(lengthOrNumber(c.Demand), lengthOrNumber(c.Capacity)) {
		c.Status = manway.Fail
	}
	return r.settle(c)
}

// lengthOrNumber is a bare number to be compared within the slack of the house.
type lengthOrNumber float64

// secured judges a cover that must be heavy or fastened.
func (r LimitRule) secured(c manway.Check, f Facts) manway.Check {
	switch {
	case f.CoverFastened == manway.Yes:
		c.Kind, c.Demand, c.Capacity = manway.Ratio, 1, 1
	case f.CoverMass == 0:
		c.Reason = "not measured: weight of the cover, and whether it is fastened"
		return c
	case f.CoverFastened == manway.Unknown && !manway.Reached(float64(f.CoverMass), r.Least.Value):
		c.Reason = "lighter than the rule asks, and whether it is fastened was not looked at"
		return c
	default:
		c.Demand, c.Capacity = r.Least.Value, float64(f.CoverMass)
	}
	c.Unfactored = c.Demand
	return c.Judge()
}

func answered(c manway.Check, a manway.Answer) manway.Check {
	c.Demand, c.Unfactored = 1, 1
	switch a {
	case manway.Yes:
		c.Capacity = 1
	case manway.No:
	default:
		c.Reason = "not looked at"
		return c
	}
	return c.Judge()
}

// value is what was found on a topic, in SI.
func (f Facts) value(t Topic) (v float64, known bool) {
	length := func(m manway.Reading) (float64, bool) { return float64(m.Length), m.Taken }
	switch t {
	case FirstShare:
		if f.Liquid == 0 || f.FirstLiquid == 0 {
			return 0, false
		}
		return float64(f.FirstLiquid) / float64(f.Liquid), true
	case FirstCapacity:
		return float64(f.FirstLiquid), f.FirstLiquid > 0
	case OutletShare:
		if !f.LiquidDepth.Taken || !f.OutletBelow.Taken || f.LiquidDepth.Length <= 0 {
			return 0, false
		}
		return float64(f.OutletBelow.Length) / float64(f.LiquidDepth.Length), true
	case LengthToWidth:
		return f.LengthToWidth, f.LengthToWidth > 0
	case LiquidDepth:
		return length(f.LiquidDepth)
	case AirSpace:
		return length(f.AirSpace)
	case InvertDrop:
		return length(f.Drop)
	case InletBelow:
		return length(f.InletBelow)
	case InletAbove:
		return length(f.InletAbove)
	case OutletBelow:
		return length(f.OutletBelow)
	case OutletAbove:
		return length(f.OutletAbove)
	case InsideDiameter:
		return length(f.InsideDiameter)
	case AccessSize:
		return length(f.AccessSize)
	case AccessBelowGrade:
		return length(f.AccessBelowGrade)
	case AccessAboveGrade:
		v, known = length(f.AccessBelowGrade)
		return -v, known
	case SoilCover:
		return length(f.SoilCover)
	case WallThickness:
		return length(f.WallThickness)
	case RoofThickness:
		return length(f.RoofThickness)
	}
	return 0, false
}
