package riser

import (
	"math"
	"testing"

	"manway.example/manway"
)

// Bores are one where they differ by an eighth of an inch, and not where by a
// hundredth more.
func TestOneBore(t *testing.T) {
	const eighth = manway.Inch / 8
	for _, c := range []struct {
		apart manway.Length
		one   bool
	}{{0, true}, {eighth * 0.999, true}, {eighth, true}, {eighth * 1.005, false}, {-eighth, true}, {-eighth * 1.005, false}} {
		if oneBore(24*manway.Inch+c.apart, 24*manway.Inch) != c.one {
			t.Errorf("%v apart: one bore %v", c.apart, !c.one)
		}
	}
}

// A closed shaft of 2 ft under 3 ft of water is lifted by 62.4 x 3 x pi = 588.1
// lbf, a flange of 3 ft round it holds pi/4 (3^2 - 2^2) x 3 ft of soil that weighs
// 100 - 62.4 lb/ft3 under water: 442.96 lbf. Half again the lift, less the soil
// and 100 lb, is 339.2 lbf for six anchors. What weighs just as much as lifts it
// stays down.
func TestUpliftByHand(t *testing.T) {
	up, soil := 62.4*3*math.Pi, math.Pi/4*5*3*(100-62.4)
	l := Light{Outside: 2 * manway.Foot, Bore: 22 * manway.Inch, Flange: 3 * manway.Foot, Base: 3 * manway.Foot, Closed: true,
		Mass: 100 * manway.Pound, Water: manway.GroundwaterAt(0), Anchors: 6}
	u, err := UpliftOf(l)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"up", u.Up.In(manway.PoundForce), up}, {"soil", u.Soil.In(manway.PoundForce), soil}, {"safety", u.Safety, (100 + soil) / up},
		{"fasten", u.Fasten.In(manway.PoundForce), 1.5*up - 100 - soil}, {"each", u.Each.In(manway.PoundForce), (1.5*up - 100 - soil) / 6},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-9*c.want) {
			t.Errorf("%s: %g, want %g", c.name, c.got, c.want)
		}
	}
	l.Flange = 0
	for over, lifts := range map[float64]bool{1 - 1e-8: true, 1 - 1e-10: false, 1: false, 1.01: false} {
		l.Mass = manway.Mass(up*over) * manway.Pound
		if u, err = UpliftOf(l); err != nil || u.Lifts != lifts {
			t.Errorf("%v of the lift: lifts %v, %v", over, u.Lifts, err)
		}
	}
}

// The notice is given where an opening is not safe, and then only.
func TestNoticeIsGiven(t *testing.T) {
	if text, ok := Notice("lid", nil); ok || text != "" {
		t.Errorf("nothing was found, and the notice is %q", text)
	}
	list, err := Defects(Condition{CoverPresent: manway.No})
	if err != nil {
		t.Fatal(err)
	}
	if text, ok := Notice("lid", list); !ok || text == "" {
		t.Errorf("the hole is open (%v), and the notice is %q, %v", list, text, ok)
	}
}

// Tapes that cross at less than 30 degrees place a cover poorly. Over corners 30
// ft apart two equal tapes of 15/sin(14.5 deg) = 59.9 ft cross at 29 degrees, of
// 15/sin(15.5 deg) = 56.1 ft at 31.
func TestTapesThatCrossFlat(t *testing.T) {
	for degrees, poor := range map[float64]bool{29: true, 31: false, 90: false} {
		long := manway.Length(15/math.Sin(degrees/2*math.Pi/180)) * manway.Foot
		p, err := Tie{Corners: 30 * manway.Foot, FromA: long, FromB: long}.Position()
		if err != nil || p.Poor != poor || !(math.Abs(p.Angle.In(manway.Degree)-degrees) <= 1e-9) {
			t.Errorf("%g degrees: %v, poor %v, %v", degrees, p.Angle, p.Poor, err)
		}
	}
}

// All that presses is in the hoop force, and a third of the buckling pressure is
// what a wall is judged by.
func TestPressIsCounted(t *testing.T) {
	w := Wall{Diameter: 24 * manway.Inch, Thickness: 0.5 * manway.Inch, Modulus: 110000 * manway.PSI, Poisson: 0.4}
	p, err := w.Press(Surround{Depth: 3 * manway.Foot, Water: manway.GroundwaterAt(manway.Foot), Wheel: manway.PickupWheel})
	if err != nil {
		t.Fatal(err)
	}
	b, err := w.Buckling(0)
	if err != nil {
		t.Fatal(err)
	}
	// 2,000 lbf, z 3 ft, x = 3 sqrt(2/3): 3 P z x^2/(pi (x^2 + z^2)^2.5) = 3 x 2000
	// x 3 x 6/(pi 15^2.5) lbf/ft2.
	wheel := 3 * 2000 * 3 * 6 / (math.Pi * math.Pow(15, 2.5))
	hoop := (p.Earth + p.Water + p.Wheel).In(manway.PSF) * 2 / 2
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"wheel", p.Wheel.In(manway.PSF), wheel}, {"water", p.Water.In(manway.PSF), 2 * 62.4},
		{"earth", p.Earth.In(manway.PSF), (1 - math.Sin(28*math.Pi/180)) * (120 + 2*(130-62.4))},
		{"hoop", p.Hoop.In(manway.PoundForcePerFoot), hoop}, {"buckling", p.Checks[0].Capacity, float64(b.Tube) / 3},
		{"demand", p.Checks[0].Demand, float64(p.Earth + p.Water)},
		{"hoop stress", p.Checks[1].Demand, (1.6*float64(p.Earth+p.Water) + 1.6*float64(p.Wheel)) * 24},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-9*c.want) {
			t.Errorf("%s: %g, want %g", c.name, c.got, c.want)
		}
	}
}
