package riser

import (
	"slices"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// Limits of the rules by which defects are found. Those without a source are
// common practice of the trade.
const (
	holeSize       = 2 * manway.Inch        // a gap this wide is a hole (29 CFR 1926.500(b))
	secureAbove    = 6 * manway.Inch        // a cover with less soil over it must be secured (Minn. R. 7080.2290 C)
	heavyCoverFrom = 29.5 * manway.Kilogram // the weight that one text once took for a fastener (30 TAC 285.38, 2012)
	foundWithin    = 6 * manway.Inch        // a cover deeper than this is raised (N.C. G.S. 130A-335.1(b))
	riserFrom      = 12 * manway.Inch       // a tank deeper than this needs a riser (30 TAC 285.38(d), 2012)
	leastOpening   = 18 * manway.Inch       // service access (OAR 340-073-0025(2))
	goodBearing    = 1 * manway.Inch        // practice
	narrowGap      = manway.Inch / 8        // practice: roots and soil pass a wider one
	wideGap        = manway.Inch / 2        // practice
	shallowSpall   = manway.Inch / 4        // practice
	crackInSoil    = 0.012 * manway.Inch    // tolerable crack width in moist air and soil (ACI 224R Table 4.1, read in a text that quotes it)
	openCrack      = manway.Inch / 8        // practice
	noticedSinking = 1 * manway.Inch        // practice
)

func practice(place string) manway.Citation {
	return manway.Citation{Source: manway.Practice, Place: place}
}

// Defects is what is wrong at an access by written rules, the most urgent
// first and an unsafe opening before everything. What was not seen gives no
// defect: [Condition.NotSeen] lists it. A cover that is not fastened is taken as
// within reach of children where its depth was not seen. It fails unless every observation is
// within its range.
//
// Source: each defect names the rule it was found by.
func Defects(c Condition) ([]Defect, error) {
	if err := c.Validate(); err != nil {
		return nil, err
	}
	f := finder{c: c}
	if c.Missing == manway.Yes {
		f.add(AccessMissing, Plan, "there is no access here: this part cannot be pumped or looked into", manway.Citation{Source: oregon340, Place: "0025(2): an access in each compartment"})
		return f.list, nil
	}
	f.opening()
	f.cover()
	f.joint()
	f.concrete()
	f.place()
	slices.SortStableFunc(f.list, func(a, b Defect) int { return int(a.Severity) - int(b.Severity) })
	return f.list, nil
}

// finder collects defects.
type finder struct {
	c    Condition
	list []Defect
}

func (f *finder) add(kind DefectKind, s Severity, reason string, basis manway.Citation) {
	f.list = append(f.list, Defect{kind, s, reason, basis})
}

// opening: can somebody fall in, or open it.
func (f *finder) opening() {
	c := f.c
	covers := manway.Citation{Source: manway.OSHA1926, Place: "1926.502(i)"}
	switch {
	case c.CoverPresent == manway.No:
		f.add(OpenHole, Urgent, "no lid lies on the opening", covers)
	case c.CoverDrops == manway.Yes:
		f.add(OpenHole, Urgent, "the lid rocks or can fall through its opening", covers)
	case c.Bearing.Taken && c.Bearing.Length <= 0:
		f.add(OpenHole, Urgent, "the lid no longer bears on its rim", covers)
	case c.RimGap.AtLeast(holeSize):
		f.add(OpenHole, Urgent, "the gap beside the lid is "+c.RimGap.Length.Text(c.Units)+", 2 in or more: a hole", manway.Citation{Source: manway.OSHA1926, Place: "1926.500(b)"})
	}
	switch {
	case c.CoverStrength == manway.Fail:
		f.add(CoverUnsound, Urgent, "the screening does not show that the lid carries a person", manway.Citation{Source: manway.OSHA1926, Place: "1926.502(i)(2)"})
	case c.CoverCracked == manway.Yes:
		f.add(CoverUnsound, Urgent, "a crack goes through the lid", practice("a lid cracked through is not stood on"))
	case c.CoverStrength == manway.NotShown || c.CoverStrength == manway.NotPermitted:
		f.add(CoverUnsound, Soon, "it cannot be shown that the lid carries a person", manway.Citation{Source: manway.OSHA1926, Place: "1926.502(i)(2)"})
	}
	f.fastening()
}

// fastening: what keeps a child out.
func (f *finder) fastening() {
	c := f.c
	within := !c.CoverDepth.AtLeast(secureAbove) // at grade, or not known
	if c.Fastened == manway.No {
		at := manway.Citation{Source: wisconsin384, Place: "384.25(7)(h)"}
		if c.CoverDepth.AtLeast(0) {
			at = manway.Citation{Source: minnesota7080, Place: "7080.2290 C: secured with less than 6 in of soil over it"}
		}
		switch {
		case !within:
			f.add(CoverUnfastened, Plan, "nothing but "+c.CoverDepth.Length.Text(c.Units)+" of soil keeps the lid shut", at)
		case c.CoverMass >= heavyCoverFrom:
			f.add(CoverUnfastened, Soon, "only its weight of "+c.CoverMass.Text(c.Units)+" keeps the lid shut: weight is no fastener, it keeps the crew out first", at)
		default:
			f.add(CoverUnfastened, Urgent, "the lid can be opened without a tool", at)
		}
	}
	if c.Guard == manway.No {
		s, reason := Plan, "nothing below the lid holds a child if the lid fails or is left off"
		if within && c.Fastened != manway.Yes {
			s = Soon
		}
		f.add(GuardMissing, s, reason, manway.Citation{Source: texas285, Place: "285.38(c): secondary plug, cap or restraint"})
	}
}

// cover: can it be lifted.
func (f *finder) cover() {
	c := f.c
	if c.aboveCrew() {
		f.add(CoverTooHeavy, Plan, "the lid of "+c.CoverMass.Text(c.Units)+" is above the "+c.CrewLimit.Text(c.Units)+" that this crew may move: it will not be opened", practice("the crew's own limit"))
	}
	if c.Handle != lid.HandleUnknown && c.Handle != lid.HandleSound {
		f.add(HandleUnsound, Soon, "the handle is "+c.Handle.String()+": the lid must not be lifted by it", practice("a doubtful handle is not lifted on"))
	}
	bearing := c.Bearing.Taken && c.Bearing.Length > 0 && c.Bearing.Below(goodBearing)
	switch {
	case bearing:
		f.add(RimChipped, Soon, "the lid bears on only "+c.Bearing.Length.Text(c.Units)+" of rim", practice("1 in of bearing at least"))
	case c.RimGap.AtLeast(narrowGap) && !c.RimGap.AtLeast(holeSize):
		f.add(RimChipped, Plan, "the gap of "+c.RimGap.Length.Text(c.Units)+" beside the lid lets water, insects and odour through", practice("a lid closes within 1/8 in"))
	}
}

// joint: is it tight.
func (f *finder) joint() {
	c := f.c
	joined := manway.Citation{Source: texas285, Place: "285.38(d): joint watertight"}
	if c.Roots == manway.Yes {
		f.add(JointRoots, Soon, "roots grow through the joint: they hold it open and reach the outlet", practice("roots show an open joint"))
	}
	switch {
	case c.JointGap.AtLeast(wideGap):
		f.add(JointGap, Soon, "the joint is open by "+c.JointGap.Length.Text(c.Units)+": soil can wash in and the ground over it sink", joined)
	case c.JointGap.AtLeast(narrowGap):
		f.add(JointGap, Plan, "the joint is open by "+c.JointGap.Length.Text(c.Units), joined)
	case c.JointGap.Taken && c.JointGap.Length > 0:
		f.add(JointGap, Watch, "the joint is open by "+c.JointGap.Length.Text(c.Units), joined)
	}
	if c.JointSealed == manway.No {
		s := Plan
		if c.WaterStain == manway.Yes || c.Roots == manway.Yes {
			s = Soon
		}
		f.add(JointUnsealed, s, "the ring is only set on, with no sealant in the joint", joined)
	}
	if c.WaterStain == manway.Yes {
		f.add(WaterEnters, Soon, "stains or running water show that groundwater enters: the drain field takes it too", joined)
	}
	if c.Odour == manway.Yes {
		f.add(OdourEscapes, Plan, "gas escapes at the lid or joint", practice("a tight access does not smell"))
	}
}

// concrete: how much of the ring or neck is left.
func (f *finder) concrete() {
	c := f.c
	if c.SteelExposed == manway.Yes {
		f.add(SteelExposed, Soon, "steel is exposed: it rusts, swells and breaks off more concrete", practice("steel that shows is no longer protected"))
	}
	if d := c.SpallDepth; d.Taken && d.Length > 0 {
		lost := 0.0
		if c.Thickness.Taken {
			lost = float64(d.Length / c.Thickness.Length)
		}
		switch {
		case manway.Reached(lost, 0.5):
			f.add(Spalled, Urgent, d.Length.Text(c.Units)+" of "+c.Thickness.Length.Text(c.Units)+" is gone, half or more: nobody and nothing on it", practice("half the thickness"))
		case manway.Reached(lost, 1./3) || c.SteelExposed == manway.Yes:
			f.add(Spalled, Soon, d.Length.Text(c.Units)+" of concrete is gone, a third or more of its thickness or down to the steel", practice("a third of the thickness"))
		case d.AtLeast(shallowSpall):
			f.add(Spalled, Plan, d.Length.Text(c.Units)+" of concrete is gone", practice("1/4 in"))
		default:
			f.add(Spalled, Watch, "the surface is lost to "+d.Length.Text(c.Units), practice("1/4 in"))
		}
	}
	if w := c.CrackWidth; w.Taken && w.Length > 0 {
		in := manway.Citation{Source: aci224R, Place: "Table 4.1, in soil: 0.012 in"}
		switch {
		case w.AtLeast(openCrack):
			f.add(Cracked, Soon, "a crack is open by "+openCrack.Text(c.Units)+" or more", practice("1/8 in"))
		case w.AtLeast(crackInSoil):
			f.add(Cracked, Plan, "a crack is wider than 0.012 in (0.3 mm)", in)
		default:
			f.add(Cracked, Watch, "a hairline crack", in)
		}
	}
}

// place: where the access is and what it stands on.
func (f *finder) place() {
	c := f.c
	switch {
	case c.CoverDepth.AtLeast(riserFrom + manway.Millimetre/100):
		f.add(TooDeep, Plan, "the lid lies "+c.CoverDepth.Length.Text(c.Units)+" below grade, deeper than "+riserFrom.Text(c.Units), manway.Citation{Source: texas285Old, Place: "285.38(d)"})
	case c.CoverDepth.AtLeast(foundWithin + manway.Millimetre/100):
		f.add(TooDeep, Plan, "the lid lies "+c.CoverDepth.Length.Text(c.Units)+" below grade, deeper than "+foundWithin.Text(c.Units), manway.Citation{Source: carolina130A, Place: "(b)"})
	}
	switch {
	case c.Settled.AtLeast(noticedSinking):
		f.add(Settled, Soon, "riser or lid has sunk or tilted by "+c.Settled.Length.Text(c.Units), practice("1 in"))
	case c.Settled.Taken && c.Settled.Length > 0:
		f.add(Settled, Watch, "riser or lid has sunk or tilted by "+c.Settled.Length.Text(c.Units), practice("1 in"))
	}
	if c.Size.Below(leastOpening) {
		f.add(AccessTooSmall, Plan, "the opening of "+c.Size.Length.Text(c.Units)+" is less than 18 in", manway.Citation{Source: oregon340, Place: "0025(2)"})
	}
	switch {
	case !c.RoofSeen:
	case c.RoofStrength == manway.Fail:
		f.add(RoofNotShown, Urgent, "the screening does not show that the roof here carries what it must: keep off", practice("screening of the roof"))
	case c.RoofStrength == manway.NotShown || c.RoofStrength == manway.NotPermitted:
		f.add(RoofNotShown, Soon, "it cannot be shown that the roof here carries what it must: keep off", practice("screening of the roof"))
	}
}

// unsafeOpening reports whether d makes the opening one that must be guarded
// before the crew leaves.
func unsafeOpening(d Defect) bool {
	switch d.Kind {
	case OpenHole, CoverUnsound, CoverUnfastened, RoofNotShown, Spalled:
		return d.Severity == Urgent
	}
	return false
}
