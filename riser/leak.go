package riser

import (
	"math"

	"manway.example/manway"
)

// OpenJoint is a gap between ring and roof, or between two rings, with ground
// water outside.
type OpenJoint struct {
	Length manway.Length      // of the open part, along the joint; 1/100 in to 50 ft
	Gap    manway.Length      // its width, 1/1000 in to 4 in
	Wall   manway.Length      // length of the way through, 1/2 in to 2 ft
	Depth  manway.Length      // of the joint below grade, 0 to 20 ft
	Water  manway.Groundwater //
	Inside manway.Reading     // depth below grade of the liquid inside, where it stands above the joint; not taken: below the joint
	Design manway.Flow        // design flow of the house; 0: not known
}

// Leakage is the water that comes in through an open joint, by two formulas.
type Leakage struct {
	Joint    OpenJoint
	Head     manway.Length // of water over the joint, or between outside and inside
	Dry      bool          // the joint lies above the water: both flows are 0
	Orifice  manway.Flow   // as through a sharp-edged orifice
	Slot     manway.Flow   // as laminar flow between parallel plates
	Reynolds float64       // of the slot flow: its formula holds below about 2000
	Laminar  bool          // it does
	Least    manway.Flow   // the smaller of the two, an upper bound of what the gap lets in
	Share    float64       // of the design flow, by Least
	HasShare bool          // the design flow is known
	Assumed  manway.Assumptions
	Cautions manway.Cautions
}

// Constants of the leak.
const (
	orificeC       = 0.61     // sharp-edged orifice under water
	waterViscosity = 1.307e-3 // Pa s at 10 C
	laminarBelow   = 2000.0   // Reynolds number on twice the gap
)

// LeakOf is the groundwater that an open joint lets in:
//
//	head    = depth of the joint (or of the liquid inside) - depth of the water
//	orifice = 0.61 length gap sqrt(2 g head)
//	slot    = length gap^3 rho g head/(12 mu wall)        water at 10 C
//	Re      = rho (slot/(length gap)) 2 gap/mu
//
// Neither counts what the soil holds back, so both are upper bounds, and the
// smaller is the nearer one. Groundwater that is not known is taken at grade.
// It fails unless every field is in its range. Source: the usual forms of fluid
// mechanics; C 0.60 to 0.62 in the texts; no published figure for a tank joint
// was found.
func LeakOf(j OpenJoint) (Leakage, error) {
	if err := j.validate(); err != nil {
		return Leakage{}, err
	}
	l := Leakage{Joint: j, Cautions: manway.EstimateOnly}
	water, made := j.Water.Taken()
	if l.Assumed = made; made != 0 {
		l.Cautions |= manway.GroundwaterUnknown
	}
	low := j.Depth
	if j.Inside.Taken {
		low = min(low, j.Inside.Length)
	}
	l.Head = low - water
	if !(l.Head > 0) {
		l.Head, l.Dry, l.Laminar = 0, true, true
	}
	rho, h, g, b, wall := float64(manway.WaterDensity), float64(l.Head), float64(j.Gap), float64(j.Length), float64(j.Wall)
	l.Orifice = manway.Flow(orificeC * b * g * math.Sqrt(2*manway.StandardGravity*h))
	slot := b * g * g * g * rho * manway.StandardGravity * h / (12 * waterViscosity * wall)
	l.Slot = manway.Flow(slot)
	l.Reynolds = rho * slot / b * 2 / waterViscosity
	l.Laminar = l.Reynolds < laminarBelow
	l.Least = min(l.Orifice, l.Slot)
	if j.Design > 0 {
		l.Share, l.HasShare = float64(l.Least/j.Design), true
	}
	return l, nil
}

func (j OpenJoint) validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Length", j.Length, manway.Inch/100, 50*manway.Foot)
	manway.Within(&faults, "Gap", j.Gap, manway.Inch/1000, 4*manway.Inch)
	manway.Within(&faults, "Wall", j.Wall, manway.Inch/2, 2*manway.Foot)
	manway.Within(&faults, "Depth", j.Depth, 0, 20*manway.Foot)
	faults.Under("Water", j.Water.Validate())
	j.Inside.Within(&faults, "Inside", 0, 20*manway.Foot)
	manway.NotNegative(&faults, "Design", j.Design)
	if j.Design != 0 && !(j.Design >= manway.GallonPerDay) {
		faults.Add("Design", j.Design.String(), "0 (not known) or at least 1 gal/d")
	}
	return faults.Err()
}

// Working is the leak step by step.
func (l Leakage) Working(s manway.System) manway.Working {
	j := l.Joint
	t := func(x manway.Length) string { return x.Text(s) }
	day := func(q manway.Flow) string { return q.Times(manway.Day).Text(s) + " a day" }
	water, _ := j.Water.Taken()
	return manway.Working{
		{Symbol: "head", Formula: "joint or liquid inside - groundwater", Numbers: t(water+l.Head) + " - " + t(water), Value: t(l.Head)},
		{Symbol: "orifice", Formula: "0.61 length gap sqrt(2 g head)", Numbers: "0.61 x " + t(j.Length) + " x " + j.Gap.Text(manway.SI) + " x sqrt(2 g x " + t(l.Head) + ")", Value: day(l.Orifice)},
		{Symbol: "slot", Formula: "length gap^3 rho g head/(12 mu wall)", Numbers: t(j.Length) + " x " + j.Gap.Text(manway.SI) + "^3 x rho g x " + t(l.Head) + "/(12 mu x " + t(j.Wall) + ")", Value: day(l.Slot)},
		{Symbol: "least", Formula: "the smaller", Value: day(l.Least)},
	}
}

// Basis is where the two formulas come from.
func (Leakage) Basis() []manway.Citation {
	return []manway.Citation{{Source: fluids, Place: "orifice under water, C 0.61"}, {Source: fluids, Place: "laminar flow between parallel plates"}}
}
