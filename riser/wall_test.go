package riser

import (
	"math"
	"testing"

	"manway.example/manway"
)

// Property (bounded): no distance from the wall presses more than the one
// taken, unless the wheel cannot come so near.
func TestWheelPressesMost(t *testing.T) {
	w := Wall{Diameter: 24 * manway.Inch, Thickness: manway.Inch / 2, Modulus: 22000 * manway.PSI, Poisson: 0.4}
	s := Surround{Depth: 3 * manway.Foot, Wheel: manway.PickupWheel, Water: manway.GroundwaterAt(10 * manway.Foot)}
	most := must(w.Press(s))
	for x := manway.Length(0.1); x < 10; x += 0.1 {
		s.Away = x
		if p := must(w.Press(s)); p.Wheel > most.Wheel*(1+1e-12) {
			t.Errorf("at %v: %v above %v", x, p.Wheel, most.Wheel)
		}
	}
	if p := must(w.Press(s)); !(p.Wheel < most.Wheel/2) || p.From < 9 {
		t.Errorf("a wheel 10 m away presses %v", p.Wheel)
	}
}

// A wall of pipe stiffness 46 psi in soil of 1,000 psi under
// 10 ft of 120 lb/ft3 is flattened by 1.228 percent (by hand: 0.1 x 8.333/(0.149
// x 46 + 61)).
func TestWallDeflection(t *testing.T) {
	w := Wall{Diameter: 24 * manway.Inch, Thickness: manway.Inch}
	w.Modulus = manway.Pressure(46 * 0.149 * 12 * 12 * 12 * 12 * float64(manway.PSI))
	dx := must(w.Deflection(Squash{Load: 1200 * manway.PSF, Reaction: 1000 * manway.PSI}))
	near(t, "deflection", dx, 0.1*1200/144/(0.149*46+61), 1e-12)
}

// Property (scaling): a wall twice as thick and as wide is as stiff, one of twice
// the thickness eight times, and so it buckles; held by soil, it buckles at
// 2^1.5 times, and with the root of the soil's modulus. Alone a ring buckles at
// 1 - nu^2 of a long tube.
func TestWallScales(t *testing.T) {
	w := benchWall
	thick, large := w, w
	thick.Thickness *= 2
	large.Thickness, large.Diameter = 2*w.Thickness, 2*w.Diameter
	near(t, "stiffness by thickness", float64(must(thick.Stiffness())/must(w.Stiffness())), 8, 1e-12)
	near(t, "stiffness of one twice as large", float64(must(large.Stiffness())/must(w.Stiffness())), 1, 1e-12)
	const soil = 200 * manway.PSI
	a, b := must(w.Buckling(soil)), must(thick.Buckling(soil))
	near(t, "ring", float64(b.Ring/a.Ring), 8, 1e-12)
	near(t, "tube", float64(b.Tube/a.Tube), 8, 1e-12)
	near(t, "in soil", float64(b.Soil/a.Soil), math.Pow(2, 1.5), 1e-12)
	near(t, "in stiffer soil", float64(must(w.Buckling(4*soil)).Soil/a.Soil), 2, 1e-12)
	near(t, "ring and tube", float64(a.Ring/a.Tube), 1-w.Poisson*w.Poisson, 1e-12)
	if alone := must(w.Buckling(0)); alone.Soil != 0 || alone.Tube != a.Tube {
		t.Errorf("without soil: %+v", alone)
	}
}

// Property (scaling): a wall is flattened in proportion to the load and the lag.
// Property (monotone): the less, the stiffer soil and wall are.
func TestDeflectionScales(t *testing.T) {
	w, s := benchWall, Squash{Load: 4 * manway.PSI, Reaction: 200 * manway.PSI}
	base := must(w.Deflection(s))
	half, lagged, stiff, thick := s, s, s, w
	half.Load, lagged.Lag, stiff.Reaction = s.Load/2, 1.5, 2*s.Reaction
	thick.Thickness *= 1.2
	near(t, "half the load", must(w.Deflection(half)), base/2, 1e-12)
	near(t, "lag", must(w.Deflection(lagged)), 1.5*base, 1e-12)
	if !(must(w.Deflection(stiff)) < base && must(thick.Deflection(s)) < base) {
		t.Error("stiffer soil or wall is flattened more")
	}
	near(t, "no load", must(w.Deflection(Squash{Reaction: s.Reaction})), 0, 0)
}

// Property (balance): what presses from both sides is held by the wall's two
// cuts, and with water to grade the water alone is that of its depth.
func TestHoopHoldsThePress(t *testing.T) {
	for _, depth := range []manway.Length{manway.Foot, 3 * manway.Foot, 10 * manway.Foot} {
		p := must(benchWall.Press(Surround{Depth: depth, Water: manway.GroundwaterAt(0), Wheel: manway.PickupWheel, Away: manway.Foot}))
		near(t, "hoop", 2*float64(p.Hoop), float64(p.Earth+p.Water+p.Wheel)*float64(benchWall.Diameter), 1e-12)
		near(t, "water", float64(p.Water), float64(manway.WaterDensity)*manway.StandardGravity*float64(depth), 1e-12)
		dry := must(benchWall.Press(Surround{Depth: depth, Water: manway.GroundwaterAt(20 * manway.Foot)}))
		if dry.Water != 0 || dry.Earth < p.Earth {
			t.Errorf("at %v dry earth presses %v, submerged %v", depth, dry.Earth, p.Earth)
		}
	}
}
