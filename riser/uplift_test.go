package riser

import (
	"math"
	"testing"

	"manway.example/manway"
)

// Property (two ways): closed below, the uplift is the weight of the water
// that the shaft displaces; open, that of its wall alone.
func TestUpliftIsDisplacement(t *testing.T) {
	l := Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Base: 3 * manway.Foot, Water: manway.GroundwaterAt(manway.Foot), Anchors: 4}
	open := must(UpliftOf(l))
	wall := Ring{Height: 2 * manway.Foot, Bore: l.Bore, Outside: l.Outside}
	near(t, "open", float64(open.Up), float64(must(RingMass(wall, manway.WaterDensity)).Weight()), 1e-12)
	l.Closed = true
	closed := must(UpliftOf(l))
	full := math.Pi / 4 * l.Outside.Times(l.Outside).Times(2*manway.Foot)
	near(t, "closed", float64(closed.Up), float64(full.Times(manway.WaterDensity).Weight()), 1e-12)
	near(t, "each anchor", float64(4*closed.Each), 1.5*float64(closed.Up), 1e-12)
	l.Water = manway.GroundwaterAt(4 * manway.Foot)
	if dry := must(UpliftOf(l)); !dry.NoUplift || dry.Lifts || dry.Fasten != 0 {
		t.Errorf("no water: %+v", dry)
	}
}

// Property (monotone): water presses on a flange from both sides, so a wider
// flange only adds soil.
func TestUpliftFlangeWater(t *testing.T) {
	l := Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Base: 3 * manway.Foot, Water: manway.GroundwaterAt(0)}
	bare := must(UpliftOf(l))
	l.Flange = 36 * manway.Inch
	wide := must(UpliftOf(l))
	if wide.Up != bare.Up || !(wide.Soil > 0) || !(wide.Safety > bare.Safety) {
		t.Errorf("bare %+v wide %+v", bare, wide)
	}
}

// Property (additive): two rings on each other weigh what one of both heights
// does, and a bore filled with a plug of its size is a full cylinder.
func TestRingMassAdds(t *testing.T) {
	r := Ring{Height: 4 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch}
	tall := r
	tall.Height = 10 * manway.Inch
	rest := r
	rest.Height = 6 * manway.Inch
	const d = manway.UsualConcreteDensity
	near(t, "height", float64(must(RingMass(r, d))+must(RingMass(rest, d))), float64(must(RingMass(tall, d))), 1e-12)
	inner := Ring{Height: r.Height, Bore: 18 * manway.Inch, Outside: r.Bore}
	both := Ring{Height: r.Height, Bore: inner.Bore, Outside: r.Outside}
	near(t, "rings in each other", float64(must(RingMass(r, d))+must(RingMass(inner, d))), float64(must(RingMass(both, d))), 1e-12)
}
