package riser

import (
	"math"
	"testing"

	"manway.example/manway"
)

// TestUpliftIsDisplacement: closed below, the uplift is the weight of the water
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

// TestUpliftFlangeWater: water presses on a flange from both sides, so a wider
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
