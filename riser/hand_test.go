package riser

import (
	"math"
	"strings"
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

// The working of a pit names the formula of its own shape: the frustum of a cone
// where it is round, the prismoid where it is not, those of sloping ground where
// its sides reach it, and of a shored pit the ones of level ground.
func TestPitWorkingIsOfItsShape(t *testing.T) {
	for _, c := range []struct {
		width  manway.Length
		ground manway.Angle
		shored bool
		want   string
	}{
		{0, 0, false, "pi h/3 (R"}, {3 * manway.Foot, 0, false, "h [a b"}, {0, manway.Degree, false, "pi/3 s^2 H^3"}, {3 * manway.Foot, manway.Degree, false, "prismoids"},
		{0, manway.Degree, true, "pi h/3 (R"}, {3 * manway.Foot, manway.Degree, true, "h [a b"}, {0, 0, true, "pi h/3 (R"},
	} {
		d := must(DigOf(Pit{Length: 30 * manway.Inch, Width: c.width, Working: manway.Foot, Depth: 2 * manway.Foot, Ground: c.ground, Shored: c.shored}))
		if got := d.Working(manway.US)[0].Formula; !strings.HasPrefix(got, c.want) {
			t.Errorf("a pit %v wide in ground of %v, shored %v: %q, want %q", c.width, c.ground, c.shored, got, c.want)
		}
	}
}

// The scope says of the pit what a digger measures: 54 in at the bottom, 54 + 2 x
// 27 in at grade, 18 in deep.
func TestPitOfTheScopeIsMeasured(t *testing.T) {
	s := measured()
	s.Pit.Shored = false
	for _, r := range must(Remedies(worn(), s)) {
		for _, i := range r.Scope {
			if want := "pit 4 ft 6 in at the bottom, 9 ft at grade, 1 ft 6 in deep: "; i.Code == "dig-hand" && !strings.HasPrefix(i.Working, want) {
				t.Errorf("%s: %q", r.Kind, i.Working)
			}
		}
	}
}

// Two rings of 6 in that there are reach 12 in of a gap of 20 in and no more;
// with one that may be cut to 4 in beside them, 18 in.
func TestNearestOfFewRings(t *testing.T) {
	rings := []Ring{{Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Count: 2, Mass: 60}}
	need := Need{Port: 24 * manway.Inch, Gap: 20 * manway.Inch}
	for _, want := range []manway.Length{12 * manway.Inch, 18 * manway.Inch} {
		got := must(StackOf(rings, need))
		if len(got.Best) != 0 || len(got.Nearest) != 1 || math.Abs(float64(got.Nearest[0].Total-want)) > 1e-9 {
			t.Errorf("%d kinds of ring: %+v, want %v alone", len(rings), got.Nearest, want)
		}
		rings = append(rings, Ring{Code: "cut", Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Count: 1, Mass: 60, CutStep: 2 * manway.Inch, CutLeast: 4 * manway.Inch})
	}
}

// An adapter that is narrower than the port at its lower end alone is not set on
// it either.
func TestNarrowAdapterIsNotUsed(t *testing.T) {
	adapter := Ring{Code: "a", Height: 6 * manway.Inch, Bore: 20 * manway.Inch, TopBore: 24 * manway.Inch, Mass: 60}
	got := must(StackOf([]Ring{adapter}, Need{Port: 24 * manway.Inch, Gap: 6 * manway.Inch}))
	if len(got.Best) != 0 || len(got.Unused) != 1 || !strings.Contains(got.Unused[0], "bore "+adapter.Bore.String()+" is narrower than the port") {
		t.Errorf("best %v, unused %q", got.Best, got.Unused)
	}
}

// The space bared round a cover is 6 in where nothing is said: a cover of 24 in
// under 6 in of soil is a disc of 36 in, pi/4 x 3^2 x 1/2 ft3.
func TestUncoverSixInchesRound(t *testing.T) {
	u := must(Uncover(Buried{Diameter: 24 * manway.Inch, Depth: 6 * manway.Inch}))
	near(t, "soil", u.Soil.In(manway.CubicFoot), math.Pi/4*9/2, 1e-12)
}

// How far a place is off by its tapes. Both tapes of 50 ft over corners 60 ft
// apart meet at (30, 40) ft; with one 2 ft long and the other 2 ft short along =
// (52^2 - 48^2 + 60^2)/120 = 33 1/3 ft, the farthest of the four. Both of 31 ft
// meet flat, at out = sqrt(31^2 - 30^2): there it is both of them short, which
// by thousandths of a foot is hardly more than both long.
func TestTapeOff(t *testing.T) {
	along := (52*52 - 48*48 + 60*60) / 120.
	cases := []struct{ long, tape, off float64 }{
		{50, 2, math.Hypot(along-30, math.Sqrt(52*52-along*along)-40)},
		{31, 0.001, math.Sqrt(31*31-30*30) - math.Sqrt(30.999*30.999-30*30)},
	}
	for _, c := range cases {
		long := manway.Length(c.long) * manway.Foot
		p := must(Tie{Corners: 60 * manway.Foot, FromA: long, FromB: long, Tape: manway.Length(c.tape) * manway.Foot}.Position())
		near(t, "off", p.Off.In(manway.Foot), c.off, 1e-9)
	}
}

// A cover at the foot of a corner is tied to one corner alone: the tapes do not
// cross.
func TestTieAtACorner(t *testing.T) {
	p := must(Tie{Corners: 30 * manway.Foot, FromA: 0, FromB: 30 * manway.Foot}.Position())
	if p.Angle != 0 || !p.Poor || p.Along != 0 || p.Out != 0 {
		t.Errorf("%+v", p)
	}
}

// Soil of which nothing is known weighs as heavy soil does and one
// that was weighed as it weighs.
func TestSpoilByItsDensity(t *testing.T) {
	p := Pit{Length: 30 * manway.Inch, Depth: 2 * manway.Foot}
	for density, want := range map[manway.Density]float64{0: manway.HeavySoilMoist.In(manway.PoundPerCubicFoot), 95 * manway.PoundPerCubicFoot: 95} {
		p.Density = density
		d := must(DigOf(p))
		near(t, "spoil", d.Spoil.In(manway.Pound), d.Bank.In(manway.CubicFoot)*want, 1e-9)
		if d.Assumed.Has(manway.AssumedSoil) != (density == 0) {
			t.Errorf("soil of %v: assumed %v", density, d.Assumed)
		}
	}
}

// Nothing is assumed of rings whose mass is known; of others the density of
// concrete is.
func TestMassOfRingsAssumed(t *testing.T) {
	r := Ring{Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch}
	for mass, want := range map[manway.Mass]manway.Assumptions{60: 0, 0: manway.AssumedConcreteDensity} {
		r.Mass = mass
		if got := must(StackOf([]Ring{r}, Need{Port: 24 * manway.Inch, Gap: 6 * manway.Inch})).Assumed; got != want {
			t.Errorf("a ring of %v: assumed %v, want %v", mass, got, want)
		}
	}
}

// Buckling is judged in service: its pressure with factors is that without.
func TestBucklingIsService(t *testing.T) {
	p := must(benchWall.Press(Surround{Depth: 4 * manway.Foot, Water: manway.GroundwaterAt(manway.Foot)}))
	if c := p.Checks[0]; !(p.Water > 0) || c.Unfactored != c.Demand {
		t.Errorf("%v with factors, %v without", c.Demand, c.Unfactored)
	}
}

// A ring of 6 in that can be cut to 3 in and to nothing else makes up 9 in
// with a whole one.
func TestOneCut(t *testing.T) {
	rings := []Ring{{Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Mass: 60, CutStep: 3 * manway.Inch}}
	got := must(StackOf(rings, Need{Port: 24 * manway.Inch, Gap: 9 * manway.Inch}))
	if got.Feasible != 1 || len(got.Best) != 1 || got.Best[0].String() != "1 x ring-24x6 + 1 x ring-24x6 cut to 3 in" {
		t.Errorf("%d stacks: %v", got.Feasible, got.Best)
	}
}

// Of more than twenty stacks the best twenty are listed. Rings of 1 in by eight
// codes make up 2 in in 8 x 9/2 = 36 ways.
func TestTwentyAreListed(t *testing.T) {
	var rings []Ring
	for i := range 8 {
		rings = append(rings, Ring{Code: string(rune('a' + i)), Height: manway.Inch, Bore: 24 * manway.Inch, Mass: 10})
	}
	got := must(StackOf(rings, Need{Port: 24 * manway.Inch, Gap: 2 * manway.Inch}))
	if got.Feasible != 36 || len(got.Best) != 20 {
		t.Errorf("%d stacks, %d listed", got.Feasible, len(got.Best))
	}
}

// Water that nobody measured is cautioned of, water that was measured is not.
func TestUpliftOfUnknownWater(t *testing.T) {
	l := Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Base: 3 * manway.Foot}
	for water, unknown := range map[manway.Groundwater]bool{{}: true, manway.GroundwaterAt(manway.Foot): false} {
		l.Water = water
		u := must(UpliftOf(l))
		if u.Cautions.Has(manway.GroundwaterUnknown) != unknown || (u.Assumed != 0) != unknown {
			t.Errorf("%+v: cautions %v, assumed %v", water, u.Cautions, u.Assumed)
		}
	}
}
