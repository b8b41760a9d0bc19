package lid

import (
	"fmt"
	"strconv"

	"manway.example/manway"
)

// What water adds to a concrete lid, as a share of its dry weight: common
// practice of the trade; immersion tests of dense concrete give 4 to 5 %.
const (
	usualAbsorption = 0.05 // soaked
	dampShare       = 0.4  // of what it takes up when soaked
)

// Weight is what a lid weighs.
type Weight struct {
	Solid    manway.Volume // one piece before recesses
	Recesses manway.Volume // taken out of it
	Volume   manway.Volume // Solid less Recesses
	Density  manway.Density
	Dry      manway.Mass // one piece
	Damp     manway.Mass
	Soaked   manway.Mass
	Now      manway.Mass // one piece as it is; dry where the moisture is unknown
	Heaviest manway.Mass // one piece at most: soaked where the moisture is unknown
	Pieces   int
	All      manway.Mass // all pieces, at Heaviest
	OnTop    manway.Mass // soil or gravel on one piece, to be cleared before lifting
	Cautions manway.Cautions
	Assumed  manway.Assumptions

	lid Lid
}

// Weigh gives the weight of a lid. For concrete
//
//	dry = (solid - recesses) x density
//	soaked = dry x (1 + absorption),   damp = dry x (1 + 0.4 absorption)
//
// A measured weight takes the place of all of them: it is the lid as it is
// now. The thickness lost is not taken off: the lid as made is the heavier
// one. Soil on top is the prism over the lid's top. A flat lid of more than
// 50 lb carries the caution HeavyLift.
//
// It fails with [manway.InputErrors] as [Lid.Validate] does.
//
// Source: geometry; the density and the water of concrete are common
// practice.
func (l Lid) Weigh() (Weight, error) {
	if err := l.Validate(); err != nil {
		return Weight{}, err
	}
	w := Weight{
		Solid:    manway.Volume(l.solid()),
		Recesses: manway.Volume(l.recessed()),
		Pieces:   max(l.Pieces, 1),
		lid:      l,
	}
	w.Volume = w.Solid - w.Recesses
	if l.Measured > 0 {
		w.Density = manway.Density(float64(l.Measured) / float64(w.Volume))
		w.Dry, w.Damp, w.Soaked = l.Measured, l.Measured, l.Measured
		w.Now, w.Heaviest = l.Measured, l.Measured
	} else {
		w.reckon()
	}
	w.All = times(w.Heaviest, float64(w.Pieces))
	if l.Overburden.Depth > 0 {
		soil, made := l.Overburden.Soil.AsLoad()
		density := soil.Moist
		if l.Moisture == Soaked {
			density = soil.Saturated
		}
		w.OnTop = manway.Area(l.topArea()).Times(l.Overburden.Depth).Times(density)
		w.Assumed |= made
	}
	if w.Heaviest > heavyLift {
		w.Cautions |= manway.HeavyLift
	}
	w.Cautions |= manway.FingersAndFeet | manway.GuardHole | manway.NeverEnter
	return w, nil
}

// heavyLift is the weight from which a lid carries the caution HeavyLift: about
// the load constant of the revised lifting equation, 51 lb.
const heavyLift = 50 * manway.Pound

// reckon gives the weights of concrete by its density.
func (w *Weight) reckon() {
	l := w.lid
	concrete, made := l.Concrete.Filled()
	w.Assumed |= made &^ manway.AssumedConcreteStrength
	w.Density = concrete.Density
	w.Dry = w.Volume.Times(w.Density)
	w.Damp = times(w.Dry, 1+dampShare*l.absorption())
	w.Soaked = times(w.Dry, 1+l.absorption())
	switch l.Moisture {
	case Damp:
		w.Now = w.Damp
	case Soaked:
		w.Now = w.Soaked
	default:
		w.Now = w.Dry
	}
	w.Heaviest = w.Now
	if l.Moisture == MoistureUnknown {
		w.Heaviest = w.Soaked
		w.Assumed |= manway.AssumedDryLid
	}
}

func (l Lid) absorption() float64 {
	if l.Absorption > 0 {
		return l.Absorption
	}
	return usualAbsorption
}

// Basis is where the weight comes from.
func (Weight) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: manway.Practice, Place: "volume of cylinder, frustum and prismoid; 150 lb/ft3 reinforced concrete; 5 % water when soaked"},
	}
}

// Working is the weight step by step.
func (w Weight) Working(s manway.System) manway.Working {
	l := w.lid
	d := func(x manway.Length) string { return x.Text(s) }
	var formula, numbers string
	switch l.Shape {
	case Disc:
		formula, numbers = "pi d2 t/4", fmt.Sprintf("pi (%s)2 x %s/4", d(l.Diameter), d(l.Thickness))
	case BevelledPlug:
		formula, numbers = "pi t (D2 + D d + d2)/12", fmt.Sprintf("D %s, d %s, t %s", d(l.Diameter), d(l.BottomDiameter), d(l.Thickness))
	case SteppedPlug:
		formula, numbers = "pi/4 (D2 f + d2 (t - f))", fmt.Sprintf("D %s, d %s, f %s, t %s", d(l.Diameter), d(l.BottomDiameter), d(l.Flange), d(l.Thickness))
	case Slab:
		formula, numbers = "L B t", fmt.Sprintf("%s x %s x %s", d(l.Length), d(l.Width), d(l.Thickness))
	case TaperedSlab:
		formula, numbers = "t/6 (A1 + 4 Am + A2)", fmt.Sprintf("A1 %s x %s, A2 %s x %s, Am of the mean sides, t %s", d(l.Length), d(l.Width), d(l.BottomLength), d(l.BottomWidth), d(l.Thickness))
	case SteppedSlab:
		formula, numbers = "A1 f + A2 (t - f)", fmt.Sprintf("A1 %s x %s, A2 %s x %s, f %s, t %s", d(l.Length), d(l.Width), d(l.BottomLength), d(l.BottomWidth), d(l.Flange), d(l.Thickness))
	}
	steps := manway.Working{{Symbol: "solid", Formula: formula, Numbers: numbers, Value: volume(w.Solid, s)}}
	if w.Recesses > 0 {
		steps = append(steps, manway.Step{Symbol: "recesses", Formula: "sum of area x depth", Value: volume(w.Recesses, s)},
			manway.Step{Symbol: "volume", Formula: "solid - recesses", Value: volume(w.Volume, s)})
	}
	if l.Measured > 0 {
		return append(steps, manway.Step{Symbol: "weight", Formula: "measured", Value: w.Now.Text(s)})
	}
	a := strconv.FormatFloat(l.absorption(), 'g', 4, 64)
	return append(steps,
		manway.Step{Symbol: "dry", Formula: "volume x density", Numbers: volume(w.Volume, s) + " x " + w.Density.Text(s), Value: w.Dry.Text(s)},
		manway.Step{Symbol: "damp", Formula: "dry (1 + 0.4 absorption)", Numbers: w.Dry.Text(s) + " (1 + 0.4 x " + a + ")", Value: w.Damp.Text(s)},
		manway.Step{Symbol: "soaked", Formula: "dry (1 + absorption)", Numbers: w.Dry.Text(s) + " (1 + " + a + ")", Value: w.Soaked.Text(s)},
	)
}

// volume is v in cubic feet or litres: nobody thinks of concrete in gallons.
func volume(v manway.Volume, s manway.System) string {
	if s == manway.SI {
		return v.Text(s)
	}
	return strconv.FormatFloat(v.In(manway.CubicFoot), 'f', 4, 64) + " ft3"
}
