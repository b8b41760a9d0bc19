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
