package riser

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/soil"
)

// Wall is the round wall of a plastic or concrete riser.
type Wall struct {
	Diameter  manway.Length   // of the middle of the wall, 4 to 240 in
	Thickness manway.Length   // 0.01 in to a fifth of Diameter
	Modulus   manway.Pressure // of elasticity for the time that the load lasts, 1,000 psi to 40e6 psi
	Poisson   float64         // 0 to 0.5
}

func (w Wall) ring() soil.Ring { return soil.Ring(w) }

// Buckling is the even pressures from outside at which the wall buckles.
type Buckling struct {
	Ring manway.Pressure // a short ring alone: 3 E I/r^3
	Tube manway.Pressure // a long tube: E t^3/(4 (1 - nu^2) r^3)
	Soil manway.Pressure // held by soil of modulus E': 2 sqrt(E'/(1 - nu^2) E I/r^3)
}

// Buckling is the pressures of water and soil at which the wall buckles, with a
// modulus of soil reaction of 0 to 10,000 psi. Riser backfill that nobody
// tested is reckoned with 0: then only Ring and Tube stand. Source: Moser, pp.
// 111-113.
func (w Wall) Buckling(reaction manway.Pressure) (Buckling, error) {
	b, err := w.ring().Buckling(reaction)
	return Buckling{b.Ring, b.Tube, b.Soil}, err
}

// Stiffness is the pipe stiffness E I/(0.149 r^3) of the wall. Source: Moser,
// chapter 3.
func (w Wall) Stiffness() (manway.Pressure, error) { return w.ring().Stiffness() }

// Squash is what flattens a wall sideways, as backfill that presses from one
// side does.
type Squash struct {
	Load     manway.Pressure // above what presses across, 0 to 1,000 psi
	Reaction manway.Pressure // modulus of soil reaction E', 0 to 10,000 psi
	Lag      float64         // 1 to 2; 0: 1
	Bedding  float64         // 0.083 to 0.110; 0: 0.1
}

// Deflection is how much of its diameter the wall is flattened by, with the pipe
// formula turned on its side:
//
//	dD/D = lag K p/(0.149 PS + 0.061 E')
//
// Source: modified Iowa formula, Moser, chapter 3.
func (w Wall) Deflection(s Squash) (float64, error) {
	ps, err := w.Stiffness()
	if err != nil {
		return 0, err
	}
	var faults manway.InputErrors
	if !(ps >= 0.1*manway.PSI && ps <= 10000*manway.PSI) {
		faults.Add("Thickness", w.Thickness.String(), "a wall of stiffness 0.1 psi to 10,000 psi, not "+ps.String())
	}
	manway.Within(&faults, "Reaction", s.Reaction, 0, 10000*manway.PSI)
	if len(faults) > 0 {
		return 0, faults
	}
	return soil.Buried{Stiffness: ps, Soil: s.Reaction, Load: s.Load, Lag: s.Lag, Bedding: s.Bedding}.Deflection()
}

// Surround is what presses on a riser wall from outside at one depth.
type Surround struct {
	Depth    manway.Length // below grade, above 0 to 20 ft
	Soil     manway.Soil
	Water    manway.Groundwater
	Wheel    manway.Wheel    // that may stand near it; Load 0: none
	Reaction manway.Pressure // modulus of soil reaction E' that a tested backfill is known to have, 0 to 10,000 psi; 0: not known, not counted
	Away     manway.Length   // as near as the wheel's middle may come to the wall, 0 to 100 ft
}

// Press is the pressures on a riser wall, and what they come to.
type Press struct {
	Earth    manway.Pressure // at rest, submerged below the water
	Water    manway.Pressure
	Wheel    manway.Pressure // of the wheel where it presses most; 0 where none stands near it
	From     manway.Length   // that place from the wall
	Hoop     manway.LineLoad // in the wall, along it: pressure x radius
	Checks   [2]manway.Check
	Assumed  manway.Assumptions
	Cautions manway.Cautions
}

// factorOnBuckling is the factor on the buckling pressure of a ring (Moser, p.
// 113: 3.0 where cover is below twice the diameter).
const factorOnBuckling = 3.0

// Press is what presses on the wall at a depth:
//
//	earth = (1 - sin phi) (weight of the soil above, submerged below the water)
//	water = rho g (depth - water)
//	wheel = 3 P z x^2/(pi R^5),  R^2 = x^2 + z^2,  x the greater of away and z sqrt(2/3)
//	hoop  = (earth + water + wheel) D/2
//
// and the checks: buckling, earth and water against 1/3.0 of the Tube pressure, or
// of the Soil pressure where the reaction of the backfill is known and gives
// more; and of a concrete wall the hoop stress. A wall that buckles alone, with
// backfill of which nothing is known, is not shown rather than failed. A wheel
// presses most at sqrt(2/3) of the depth from the wall; it is put there, or at
// away where that is farther. It presses from one side, which flattens and does
// not buckle: it stands beside the first check. It fails unless every field is
// in its range. Sources: Jaky; Moser pp. 111-113; Boussinesq's horizontal stress,
// doubled for a wall that does not give way, the same as AASHTO LRFD 3.11.6.2 with
// nu 0.5 (remembered).
func (w Wall) Press(s Surround) (Press, error) {
	if err := s.validate(w); err != nil {
		return Press{}, err
	}
	var p Press
	water, made := s.Water.Taken()
	earth, heavy := s.Soil.AsLoad()
	p.Assumed = made | heavy
	ground := soil.Ground{Layers: []soil.Layer{{Soil: earth}}, Water: water, HasWater: true}
	at, err := ground.LateralAt(s.Depth)
	if err != nil {
		return Press{}, err
	}
	p.Earth, p.Water = at.Effective, at.Water
	if s.Wheel.Load > 0 {
		z := float64(s.Depth)
		x := max(float64(s.Away), z*math.Sqrt(2./3))
		p.From = manway.Length(x)
		r := math.Hypot(x, z)
		p.Wheel = manway.Pressure(3 * float64(s.Wheel.Load) * z * x * x / (math.Pi * math.Pow(r, 5)))
		p.Cautions |= manway.VehicleOverTank | manway.RememberedFigure
	}
	p.Hoop = manway.LineLoad(float64(p.Earth+p.Water+p.Wheel) * float64(w.Diameter) / 2)
	p.Cautions |= manway.Screening
	if made != 0 {
		p.Cautions |= manway.GroundwaterUnknown
	}
	p.Checks = w.checks(p, s.Reaction)
	return p, nil
}

// concreteFrom tells a concrete wall from a plastic one by its modulus.
const concreteFrom = 1e6 * manway.PSI

// checks judges buckling and, of concrete, the hoop stress.
func (w Wall) checks(p Press, reaction manway.Pressure) [2]manway.Check {
	buckling := manway.Check{Name: "riser wall, buckling", Kind: manway.KindPressure, Combination: manway.Service,
		Demand: float64(p.Earth + p.Water), Unfactored: float64(p.Earth + p.Water), Source: manway.Citation{Source: soil.Moser, Place: "pp. 111-113, factor 3.0"}}
	if b, err := w.Buckling(reaction); err == nil {
		buckling.Capacity = float64(max(b.Tube, b.Soil)) / factorOnBuckling
	}
	buckling = buckling.Judge()
	if buckling.Status == manway.Fail && reaction == 0 {
		buckling.Status, buckling.Reason = manway.NotShown, "the wall alone would buckle, ribs and the support of the soil are not counted"
	}
	hoop := manway.Check{Name: "riser wall, ring compression", Kind: manway.KindPressure, Combination: manway.DeadLive,
		Unfactored: float64(p.Hoop) / float64(w.Thickness), Source: manway.Citation{Source: manway.ACI318_19, Place: "14.5.3, 21.2.1 (plain concrete 0.60)"}}
	f := manway.DeadLive.Factors()
	hoop.Demand = (f.Earth*float64(p.Earth+p.Water) + f.Live*float64(p.Wheel)) * float64(w.Diameter) / 2 / float64(w.Thickness)
	if w.Modulus < concreteFrom {
		hoop.Reason = "the strength of the plastic over the years is not known"
		return [2]manway.Check{buckling, hoop}
	}
	hoop.Phi = 0.60
	hoop.Capacity = hoop.Phi * 0.60 * float64(manway.LeastConcreteStrength)
	return [2]manway.Check{buckling, hoop.Judge()}
}

func (s Surround) validate(w Wall) error {
	var faults manway.InputErrors
	faults.Under("Wall", w.ring().Validate())
	manway.Within(&faults, "Depth", s.Depth, manway.Inch/10, 20*manway.Foot)
	faults.Under("Soil", s.Soil.Validate())
	faults.Under("Water", s.Water.Validate())
	manway.Within(&faults, "Reaction", s.Reaction, 0, 10000*manway.PSI)
	if s.Wheel.Load != 0 {
		faults.Under("Wheel", s.Wheel.Validate())
		manway.Within(&faults, "Away", s.Away, 0, 100*manway.Foot)
	}
	return faults.Err()
}

// Basis is where the pressures and checks come from.
func (Press) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: soil.Moser, Place: "pp. 111-113"},
		{Source: manway.AASHTOLRFD, Place: "3.11.6.2, remembered"},
		{Source: manway.ACI318_19, Place: "14.5.3"},
	}
}
