package riser

import (
	"testing"

	"manway.example/manway"
)

// TestWheelPressesMost: no distance from the wall presses more than the one
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

// TestWallDeflection: a wall of pipe stiffness 46 psi in soil of 1,000 psi under
// 10 ft of 120 lb/ft3 is flattened by 1.228 percent (by hand: 0.1 x 8.333/(0.149
// x 46 + 61)).
func TestWallDeflection(t *testing.T) {
	w := Wall{Diameter: 24 * manway.Inch, Thickness: manway.Inch}
	w.Modulus = manway.Pressure(46 * 0.149 * 12 * 12 * 12 * 12 * float64(manway.PSI))
	dx := must(w.Deflection(Squash{Load: 1200 * manway.PSF, Reaction: 1000 * manway.PSI}))
	near(t, "deflection", dx, 0.1*1200/144/(0.149*46+61), 1e-12)
}
