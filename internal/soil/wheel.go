package soil

import (
	"math"

	"manway.example/manway"
)

// Contact is a wheel, or the two wheels of an axle grown together, where it
// meets the roof: a rectangle under a uniform pressure.
type Contact struct {
	Length   manway.Length // in the direction of travel
	Width    manway.Length
	Load     manway.Force    // with impact, of all wheels in the rectangle
	Pressure manway.Pressure // Load over the rectangle
	Impact   float64         // share added to the standing load
	Wheels   int             // 1, or 2 where the two of an axle overlap
	Spread   bool            // whether the load has spread through fill
	Warn     manway.Cautions
}

// Rule is a rule for the spread of wheels through fill and their impact.
type Rule uint8

// The rules. The zero value is the bridge code's.
const (
	// AASHTO spreads by the live load distribution factor 1.15 of select
	// granular fill, from 2 ft of cover; with less the wheel stands on the
	// roof as it stands on the ground (LRFD 3.6.1.2.6, 4.6.2.10, 3.6.2.2).
	AASHTO Rule = iota
	// AASHTOAnyDepth spreads by 1.15 from the first inch: what tables of soil
	// pressure list, not what a roof may count on.
	AASHTOAnyDepth
	// PrecastPractice spreads by 1.75 and takes impact by steps: ASTM C890
	// as remembered.
	PrecastPractice
)

// LeastSpreadCover is the cover from which the bridge code lets a wheel spread
// (AASHTO LRFD 3.6.1.2.6a).
const LeastSpreadCover manway.Length = 2 * manway.Foot

const (
	spreadAASHTO = 1.15 // LLDF of select granular fill, 3.6.1.2.6b; remembered
	spreadC890   = 1.75 // both sides together, remembered
)

// Impact is the share of a wheel's load that its movement adds, at a depth of
// cover of 0 to 100 ft:
//
//	AASHTO  0.33 (1 - 0.125 D), 0 from 8 ft, D in ft        LRFD 3.6.2.2
//	C890    0.30 to 12 in, 0.20 to 24 in, 0.10 to 35 in, 0  remembered
//
// Between the whole inches of C890's steps the higher impact holds.
func (r Rule) Impact(cover manway.Length) (float64, error) {
	var faults manway.InputErrors
	validateCover(&faults, r, cover)
	if len(faults) > 0 {
		return 0, faults
	}
	return r.impact(cover), nil
}

func validateCover(faults *manway.InputErrors, r Rule, cover manway.Length) {
	manway.Within(faults, "Rule", int(r), int(AASHTO), int(PrecastPractice))
	manway.Within(faults, "Cover", cover, 0, 100*manway.Foot)
}

func (r Rule) impact(cover manway.Length) float64 {
	if r != PrecastPractice {
		return math.Max(0, 0.33*(1-0.125*cover.In(manway.Foot))) // Eq. 3.6.2.2-1
	}
	switch {
	case manway.Reached(12*manway.Inch, cover):
		return 0.30
	case manway.Reached(24*manway.Inch, cover):
		return 0.20
	case !manway.Reached(cover, 36*manway.Inch):
		return 0.10
	default:
		return 0
	}
}

// Wheel is how a wheel on the ground presses on a roof under a depth of cover:
//
//	length = tire length + f H,  width = tire width + f H
//	load   = P (1 + impact)
//
// with f of the rule. Where the widths of the two wheels of an axle overlap,
// they press as one rectangle that reaches over both, with both loads:
// width = tire width + gauge + f H.
//
// The multiple presence factor of 1.2 for one loaded lane is not in it; whoever
// designs a bridge multiplies. Source: AASHTO LRFD 3.6.1.2.6, or ASTM C890,
// whose figures are remembered and carry that caution.
func (r Rule) Wheel(w manway.Wheel, cover manway.Length) (Contact, error) {
	var faults manway.InputErrors
	if err := w.Validate(); err != nil {
		faults.Under("Wheel", err)
	}
	validateCover(&faults, r, cover)
	if len(faults) > 0 {
		return Contact{}, faults
	}
	return r.contact(w, cover), nil
}

// OneWheel is Wheel for a wheel alone, with no other on its axle.
func (r Rule) OneWheel(w manway.Wheel, cover manway.Length) (Contact, error) {
	w.Gauge = 0
	return r.Wheel(w, cover)
}

func (r Rule) contact(w manway.Wheel, cover manway.Length) Contact {
	c := Contact{Length: w.Length, Width: w.Width, Impact: r.impact(cover), Wheels: 1}
	f := manway.Length(spreadAASHTO)
	switch r {
	case PrecastPractice:
		f, c.Warn = spreadC890, manway.RememberedFigure
	case AASHTO:
		if !manway.Reached(cover, LeastSpreadCover) {
			f = 0
		}
	}
	if spread := manway.Length(float64(f) * float64(cover)); spread > 0 {
		c.Spread = true
		c.Length += spread
		c.Width += spread
		if w.Gauge > 0 && c.Width > w.Gauge {
			c.Width += w.Gauge
			c.Wheels = 2
		}
	}
	c.Load = manway.Force(1+c.Impact) * manway.Force(c.Wheels) * w.Load
	c.Pressure = c.Load.Over(c.Length.Times(c.Width))
	return c
}

// Wheels of ASTM C890 as remembered, on the same 10 in by 20 in tire.
var (
	HeavyTraffic  = manway.Wheel{Name: "A-16", Load: 16000 * manway.PoundForce, Length: 10 * manway.Inch, Width: 20 * manway.Inch, Gauge: 6 * manway.Foot, Source: manway.Citation{Source: C890, Place: "A-16, remembered"}}
	MediumTraffic = manway.Wheel{Name: "A-12", Load: 12000 * manway.PoundForce, Length: 10 * manway.Inch, Width: 20 * manway.Inch, Gauge: 6 * manway.Foot, Source: manway.Citation{Source: C890, Place: "A-12, remembered"}}
	LightTraffic  = manway.Wheel{Name: "A-8", Load: 8000 * manway.PoundForce, Length: 10 * manway.Inch, Width: 20 * manway.Inch, Gauge: 6 * manway.Foot, Source: manway.Citation{Source: C890, Place: "A-8, remembered"}}
)

// MultiplePresence is the factor of the bridge code on one loaded lane (AASHTO
// LRFD Table 3.6.1.1.2-1). Results here leave it out.
const MultiplePresence = 1.2

// EmbankmentFactor is what the soil over a buried box weighs on it, over the
// weight of the prism straight above:
//
//	Fe = 1 + 0.20 H/B, at most 1.15
//
// for a box of outside width B, above 0, under a height H of fill compacted
// beside it. Source: AASHTO LRFD 12.11.2.2.1.
func EmbankmentFactor(cover, width manway.Length) (float64, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Cover", cover, 0, 100*manway.Foot)
	manway.Within(&faults, "Width", width, 1*manway.Inch, 1000*manway.Foot)
	if len(faults) > 0 {
		return 0, faults
	}
	return math.Min(1.15, 1+0.20*float64(cover/width)), nil
}
