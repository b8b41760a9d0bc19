package riser

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Ring is one kind of riser ring in stock or on order.
type Ring struct {
	Code     string        // of the price book; empty: ring-24x6 by bore and height in inches
	Count    int           // how many there are; 0: as many as needed
	Height   manway.Length // without its joint, 1 in to 8 ft
	Bore     manway.Length // inside diameter, 6 in to 10 ft; of an adapter at its bottom
	TopBore  manway.Length // of an adapter at its top; 0: the same as Bore
	Outside  manway.Length // outside diameter; 0: not known
	Plastic  bool          // not concrete
	Mass     manway.Mass   // up to 3 t; 0: not known, then taken from the geometry of a concrete ring
	Cost     int64         // in the smallest unit of one currency, up to 4,000,000; 0: not known
	CutStep  manway.Length // it may be cut down by whole steps of this; 0: it may not be cut
	CutLeast manway.Length // least height that may be left of it; 0: one CutStep
}

// Adapter reports whether r joins two bores.
func (r Ring) Adapter() bool { return r.TopBore != 0 && !oneBore(r.TopBore, r.Bore) }

// code is the ring's code, ring-24x6 by bore and height in inches where it has
// none.
func (r Ring) code() string {
	if r.Code != "" {
		return r.Code
	}
	return "ring-" + num(r.Bore.In(manway.Inch)) + "x" + num(r.Height.In(manway.Inch))
}

// top is the bore at the top of r.
func (r Ring) top() manway.Length {
	if r.TopBore != 0 {
		return r.TopBore
	}
	return r.Bore
}

// sameBore is how far two bores may differ and still be one nominal bore: 24 in
// and 610 mm are.
const sameBore = manway.Inch / 8

func oneBore(a, b manway.Length) bool { return math.Abs(float64(a-b)) <= float64(sameBore)*(1+1e-9) }

// RingMass is the mass of a round ring of concrete or plastic:
//
//	m = pi/4 (outside^2 - bore^2) height density
//
// The bore of an adapter is the mean of its areas. It fails unless outside is
// above the bore and the density is 50 to 200 lb/ft3. Source: geometry; no
// table of ring weights was found that could be cited.
func RingMass(r Ring, density manway.Density) (manway.Mass, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Height", r.Height, manway.Inch, 8*manway.Foot)
	manway.Within(&faults, "Bore", r.Bore, 6*manway.Inch, 10*manway.Foot)
	if r.TopBore != 0 {
		manway.Within(&faults, "TopBore", r.TopBore, 6*manway.Inch, 10*manway.Foot)
	}
	manway.Within(&faults, "Outside", r.Outside, max(r.Bore, r.TopBore)+manway.Inch/16, 14*manway.Foot)
	manway.Within(&faults, "density", density, 50*manway.PoundPerCubicFoot, 200*manway.PoundPerCubicFoot)
	if len(faults) > 0 {
		return 0, faults
	}
	return r.solid().Times(density), nil
}

// solid is the volume of the ring's wall.
func (r Ring) solid() manway.Volume {
	o, b, t := float64(r.Outside), float64(r.Bore), float64(r.top())
	return manway.Volume(math.Pi / 4 * (o*o - (b*b+t*t)/2) * float64(r.Height))
}

// mass is what r weighs, from its geometry where no mass is given.
func (r Ring) mass() (manway.Mass, manway.Assumptions) {
	if r.Mass > 0 {
		return r.Mass, 0
	}
	return r.solid().Times(manway.UsualConcreteDensity), manway.AssumedConcreteDensity
}

func (r Ring) validate(faults *manway.InputErrors, at string) {
	f := func(name string) string { return at + "." + name }
	manway.Within(faults, f("Count"), r.Count, 0, 10000)
	manway.Within(faults, f("Height"), r.Height, manway.Inch, 8*manway.Foot)
	manway.Within(faults, f("Bore"), r.Bore, 6*manway.Inch, 10*manway.Foot)
	if r.TopBore != 0 {
		manway.Within(faults, f("TopBore"), r.TopBore, 6*manway.Inch, 10*manway.Foot)
	}
	if r.Outside != 0 {
		manway.Within(faults, f("Outside"), r.Outside, max(r.Bore, r.TopBore), 14*manway.Foot)
	}
	manway.Within(faults, f("Mass"), r.Mass, 0, 3*manway.Tonne)
	if r.Mass == 0 && (r.Outside == 0 || r.Plastic) {
		faults.Add(f("Mass"), "not known", "a mass, or the outside diameter of a concrete ring")
	}
	if r.Cost < 0 || r.Cost > 4000000 {
		faults.Add(f("Cost"), strconv.FormatInt(r.Cost, 10), "0 to 4000000 in the smallest unit of the currency")
	}
	manway.Within(faults, f("CutStep"), r.CutStep, 0, max(r.Height, 0))
	if r.CutStep != 0 && !(r.CutStep >= manway.Millimetre) {
		faults.Add(f("CutStep"), r.CutStep.Text(manway.SI), "0 or at least 1 mm")
	}
	manway.Within(faults, f("CutLeast"), r.CutLeast, 0, max(r.Height, 0))
	if r.Adapter() && r.CutStep != 0 {
		faults.Add(f("CutStep"), r.CutStep.String(), "0 for an adapter: it is not cut")
	}
}
