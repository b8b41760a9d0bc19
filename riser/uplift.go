package riser

import (
	"math"

	"manway.example/manway"
)

// Light is a sealed riser that groundwater may lift off the roof.
type Light struct {
	Outside manway.Length      // outside diameter of the shaft, 6 in to 14 ft
	Bore    manway.Length      // inside diameter at the base, below Outside
	Flange  manway.Length      // outside diameter of its base flange; 0: none
	Base    manway.Length      // depth of the base below grade, above 0 to 20 ft
	Closed  bool               // a plug or bottom closes it below, so that water lifts on the whole of it
	Mass    manway.Mass        // of riser and cover, 0 to 10 t
	Soil    manway.Soil        // on the flange
	Water   manway.Groundwater //
	Anchors int                // fastenings to the roof, 0 to 100
	Factor  float64            // wanted over the uplift, 1 to 5; 0: 1.5
}

// Uplift is what lifts a riser, what holds it, and what its fastening must take.
type Uplift struct {
	Riser    Light
	Head     manway.Length // of water over the base
	Up       manway.Force
	Weight   manway.Force // of riser and cover
	Soil     manway.Force // on the flange, submerged below the water
	Factor   float64      // wanted
	Safety   float64      // (weight + soil)/up
	Lifts    bool         // up is above what holds it: it needs its fastening
	NoUplift bool         // nothing lifts; Safety is not given
	Fasten   manway.Force // what all anchors together must hold with the factor; 0 where none is needed
	Each     manway.Force // of the anchors, shared evenly; 0 where there are none
	Assumed  manway.Assumptions
	Cautions manway.Cautions
}

// UpliftOf is the force of groundwater on a sealed riser:
//
//	up     = rho g head pi/4 (outside^2 - bore^2)     open to the tank below
//	up     = rho g head pi/4 outside^2                closed below
//	fasten = factor up - weight - soil on the flange
//
// The water is taken to reach under the base as far as the bore, as it does once
// a bond has let go. Soil counts only straight above the flange, light where it
// is not known and submerged below the water; friction is not counted. Water
// that is not known is taken at grade. It fails unless every field is in its
// range. Source: hydrostatics; the factor 1.5 is that of a county anchoring
// sheet for tanks; 1.2 is named too.
func UpliftOf(l Light) (Uplift, error) {
	if err := l.validate(); err != nil {
		return Uplift{}, err
	}
	u := Uplift{Riser: l, Factor: l.Factor, Cautions: manway.MayFloat}
	if u.Factor == 0 {
		u.Factor = 1.5
	}
	water, made := l.Water.Taken()
	if made != 0 {
		u.Cautions |= manway.GroundwaterUnknown
	}
	earth, light := l.Soil.AsBallast()
	u.Head = max(l.Base-water, 0)
	o, b, f := float64(l.Outside), float64(l.Bore), float64(max(l.Flange, l.Outside))
	area := math.Pi / 4 * (o*o - b*b)
	if l.Closed {
		area = math.Pi / 4 * o * o
	}
	gamma := float64(manway.WaterDensity) * manway.StandardGravity
	u.Up = manway.Force(gamma * float64(u.Head) * area)
	u.Weight = l.Mass.Weight()
	if f > o {
		dry, wet := float64(l.Base-u.Head), float64(u.Head)
		ring := math.Pi / 4 * (f*f - o*o)
		u.Soil = manway.Force(ring * manway.StandardGravity * (float64(earth.Moist)*dry + float64(earth.Saturated-manway.WaterDensity)*wet))
		made |= light
	}
	u.Assumed = made
	if u.Up > 0 {
		u.Safety = float64((u.Weight + u.Soil) / u.Up)
	} else {
		u.NoUplift = true
	}
	u.Lifts = !(u.Weight+u.Soil >= u.Up*(1-1e-9))
	u.Fasten = max(manway.Force(u.Factor)*u.Up-u.Weight-u.Soil, 0)
	if l.Anchors > 0 {
		u.Each = u.Fasten / manway.Force(l.Anchors)
	}
	return u, nil
}

func (l Light) validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Outside", l.Outside, 6*manway.Inch, 14*manway.Foot)
	manway.Within(&faults, "Bore", l.Bore, manway.Inch, l.Outside)
	if l.Flange != 0 {
		manway.Within(&faults, "Flange", l.Flange, l.Outside, 20*manway.Foot)
	}
	manway.Within(&faults, "Base", l.Base, manway.Inch/10, 20*manway.Foot)
	manway.Within(&faults, "Mass", l.Mass, 0, 10*manway.Tonne)
	faults.Under("Soil", l.Soil.Validate())
	faults.Under("Water", l.Water.Validate())
	manway.Within(&faults, "Anchors", l.Anchors, 0, 100)
	if l.Factor != 0 {
		manway.Within(&faults, "Factor", l.Factor, 1, 5)
	}
	return faults.Err()
}

// Working is the uplift step by step.
func (u Uplift) Working(s manway.System) manway.Working {
	l := u.Riser
	t := func(x manway.Length) string { return x.Text(s) }
	area, numbers := "pi/4 (outside^2 - bore^2)", "pi/4 ("+t(l.Outside)+"^2 - "+t(l.Bore)+"^2)"
	if l.Closed {
		area, numbers = "pi/4 outside^2", "pi/4 "+t(l.Outside)+"^2"
	}
	return manway.Working{
		{Symbol: "head", Formula: "base - groundwater", Numbers: t(l.Base) + " - " + t(l.Base-u.Head), Value: t(u.Head)},
		{Symbol: "up", Formula: "rho g head " + area, Numbers: "rho g " + t(u.Head) + " " + numbers, Value: u.Up.Text(s)},
		{Symbol: "fasten", Formula: "factor up - weight - soil, at least 0", Numbers: num(u.Factor) + " x " + u.Up.Text(s) + " - " + u.Weight.Text(s) + " - " + u.Soil.Text(s), Value: u.Fasten.Text(s)},
	}
}

// Basis is where the uplift comes from.
func (Uplift) Basis() []manway.Citation {
	return []manway.Citation{{Source: statics, Place: "hydrostatics"}, {Source: burnett, Place: "lift x 1.5"}}
}
