package riser

import (
	"math"
	"math/rand/v2"
	"slices"
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

// The working of a pit names the formula of its own shape: the frustum of a cone
// where it is round, the prismoid where it is not.
func TestPitWorkingIsOfItsShape(t *testing.T) {
	for width, want := range map[manway.Length]string{0: "pi h/3", 3 * manway.Foot: "a b"} {
		d := must(DigOf(Pit{Length: 30 * manway.Inch, Width: width, Working: manway.Foot, Depth: 2 * manway.Foot}))
		if got := d.Working(manway.US)[0].Formula; !strings.Contains(got, want) {
			t.Errorf("a pit %v wide: %q, want %q in it", width, got, want)
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
	if len(got.Best) != 0 || len(got.Unused) != 1 || !strings.Contains(got.Unused[0], "narrower than the port") {
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

// Groundwater at 1 ft is above the bottom of a pit of 1 1/2 ft, and not of one of
// 9 in: the joint there cannot be sealed from outside in the one, it can in the
// other.
func TestJointUnderWater(t *testing.T) {
	for depth, wet := range map[manway.Length]bool{18 * manway.Inch: true, 9 * manway.Inch: false} {
		s := Site{Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, Pit: Pit{Length: 30 * manway.Inch, Depth: depth}, Water: manway.GroundwaterAt(manway.Foot)}
		list := must(Remedies(Condition{Roots: manway.Yes}, s))
		i := slices.IndexFunc(list, func(r Remedy) bool { return r.Kind == OutsideCollar })
		if i < 0 || strings.Contains(list[i].RuledOut, "groundwater") != wet {
			t.Errorf("a pit of %v: %+v", depth, list)
		}
	}
}

// A bearing of 1/2 in is a chipped rim; one of 1 1/2 in is none, nor is an
// opening without any, which is no bearing that was measured on a rim.
func TestBearingOfTheCover(t *testing.T) {
	for bearing, chipped := range map[manway.Length]bool{0: false, manway.Inch / 2: true, 3 * manway.Inch / 2: false} {
		list := must(Defects(Condition{Bearing: manway.Read(bearing)}))
		if got := slices.ContainsFunc(list, func(d Defect) bool { return d.Kind == RimChipped }); got != chipped {
			t.Errorf("a bearing of %v: chipped %v: %v", bearing, got, list)
		}
	}
}

// Three rings that stand there take three times the hours of one to lift off, and
// where none stands nobody is paid for it.
func TestRingsAreLiftedOff(t *testing.T) {
	hours := func(standing int) (sum float64) {
		for _, r := range must(Remedies(Condition{Roots: manway.Yes}, Site{Standing: standing})) {
			for _, i := range r.Scope {
				if r.Kind == ReplaceConcrete && i.Code == "lift-ring" {
					sum += i.Quantity
				}
			}
		}
		return sum
	}
	if one := hours(1); !(one > 0) || math.Abs(hours(3)-3*one) > 1e-12 || hours(0) != 0 {
		t.Errorf("lifting off none, one and three rings takes %v, %v and %v h", hours(0), one, hours(3))
	}
}

// Nobody knows the life of a remedy to a part of a year: it is told in whole
// years, the bad case no longer than the usual and that no longer than the good.
func TestLivesAreWholeYears(t *testing.T) {
	for _, p := range catalogue {
		for _, years := range p.life {
			if years != math.Trunc(years) {
				t.Errorf("%s lasts %v years", p.kind, years)
			}
		}
		if !slices.IsSorted(p.life[:]) {
			t.Errorf("%s lasts %v years, want low, usual, high", p.kind, p.life)
		}
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

// The severities on both sides of each limit: of practice (1/8 and 1/2 in of a
// joint, 1/4 in, a third and half of a spalled wall, 1/8 in of a crack, 1 in of
// settlement), 0.012 in of a crack in soil (ACI 224R), a hole of 2 in (29 CFR
// 1926.500(b)), a lid deeper than 6 in (N.C. G.S. 130A-335.1), an opening below
// 18 in (OAR 340-073-0025).
func TestSeveritiesByLimit(t *testing.T) {
	const none = Watch + 1
	spalled := func(x manway.Length) Condition {
		return Condition{SpallDepth: manway.Read(x), Thickness: manway.Read(3 * manway.Inch)}
	}
	for _, c := range []struct {
		kind DefectKind
		of   func(manway.Length) Condition
		want map[float64]Severity // by inches
	}{
		{JointGap, func(x manway.Length) Condition { return Condition{JointGap: manway.Read(x)} }, map[float64]Severity{0: none, 0.12: Watch, 0.13: Plan, 0.49: Plan, 0.51: Soon}},
		{RimChipped, func(x manway.Length) Condition { return Condition{RimGap: manway.Read(x)} }, map[float64]Severity{0.12: none, 0.13: Plan, 1.99: Plan, 2.01: none}},
		{OpenHole, func(x manway.Length) Condition { return Condition{RimGap: manway.Read(x)} }, map[float64]Severity{1.99: none, 2.01: Urgent}},
		{Spalled, spalled, map[float64]Severity{0: none, 0.24: Watch, 0.26: Plan, 0.99: Plan, 1.01: Soon, 1.49: Soon, 1.51: Urgent}},
		{Cracked, func(x manway.Length) Condition { return Condition{CrackWidth: manway.Read(x)} }, map[float64]Severity{0: none, 0.0119: Watch, 0.0121: Plan, 0.124: Plan, 0.126: Soon}},
		{Settled, func(x manway.Length) Condition { return Condition{Settled: manway.Read(x)} }, map[float64]Severity{0: none, 0.99: Watch, 1.01: Soon}},
		{TooDeep, func(x manway.Length) Condition { return Condition{CoverDepth: manway.Read(x)} }, map[float64]Severity{5.99: none, 6.01: Plan, 12.1: Plan}},
		{AccessTooSmall, func(x manway.Length) Condition { return Condition{Size: manway.Read(x)} }, map[float64]Severity{17.9: Plan, 18: none}},
	} {
		for inches, want := range c.want {
			got := Severity(none)
			for _, d := range must(Defects(c.of(manway.Length(inches) * manway.Inch))) {
				if d.Kind == c.kind {
					got = d.Severity
				}
			}
			if got != want {
				t.Errorf("%s of %g in: severity %d, want %d", c.kind, inches, got, want)
			}
		}
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

// A backhoe digs a cubic yard in 0.2 h and a loader fills one in 0.6 h (the hours
// of a published table): a shored pit of 12 ft by 9 ft, 9 ft deep is 36 yd3, and
// where the new tank takes 16 of them 36 x 0.2 + 20 x 0.6 = 19.2 h.
func TestExcavatorHours(t *testing.T) {
	s := Site{TankPit: Pit{Length: 12 * manway.Foot, Width: 9 * manway.Foot, Depth: 9 * manway.Foot, Shored: true, Refill: 16 * manway.CubicYard}}
	for _, r := range must(Remedies(Condition{RoofSeen: true, RoofStrength: manway.Fail}, s)) {
		for _, i := range r.Scope {
			if r.Kind == ReplaceTank && i.Code == "excavator" {
				near(t, "hours", i.Quantity, 19.2, 1e-9)
				return
			}
		}
	}
	t.Error("no excavator replaces the tank")
}

// Buckling is judged in service: its pressure with factors is that without.
func TestBucklingIsService(t *testing.T) {
	p := must(benchWall.Press(Surround{Depth: 4 * manway.Foot, Water: manway.GroundwaterAt(manway.Foot)}))
	if c := p.Checks[0]; !(p.Water > 0) || c.Unfactored != c.Demand {
		t.Errorf("%v with factors, %v without", c.Demand, c.Unfactored)
	}
}

// An adapter is proposed where the riser has another bore than its port, and where
// both were measured.
func TestAdapterForTwoBores(t *testing.T) {
	for _, c := range []struct {
		port, bore manway.Length
		proposed   bool
	}{{20 * manway.Inch, 24 * manway.Inch, true}, {24 * manway.Inch, 24 * manway.Inch, false}, {0, 24 * manway.Inch, false}, {20 * manway.Inch, 0, false}} {
		list := must(Remedies(Condition{Roots: manway.Yes}, Site{Port: c.port, Bore: c.bore}))
		if got := slices.ContainsFunc(list, func(r Remedy) bool { return r.Kind == FitAdapter }); got != c.proposed {
			t.Errorf("port %v, bore %v: adapter %v", c.port, c.bore, got)
		}
	}
}

// A remedy lasts longer in the usual case than in the bad one and longest in the
// good one; only the guard, which bridges the time to a remedy, has no life.
func TestRemediesLast(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 7))
	for range 200 {
		for _, r := range must(Remedies(randomCondition(rng), randomSite(rng))) {
			if l := r.Life; !(l.Low > 0 && l.Low < l.Usual && l.Usual < l.High) && (r.Kind != GuardNow || l.High != 0) {
				t.Fatalf("%s lasts %+v", r.Kind, l)
			}
		}
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

// Common practice: two people where something heavy is moved or cut, one
// elsewhere.
func TestCrewsOfTasks(t *testing.T) {
	heavy := []string{"lift-ring", "set-ring", "fit-adapter", "fit-cover", "place-concrete", "cut-opening"}
	for _, task := range tasks {
		want := 1
		if slices.Contains(heavy, task.code) {
			want = 2
		}
		if task.crew != want {
			t.Errorf("%s takes %d people, want %d", task.code, task.crew, want)
		}
	}
}

// A roof or cover that fails its screening is urgent, one that cannot be shown to
// carry is seen to soon, and one that passes or was not judged is no defect; nor
// is a roof that nobody looked at.
func TestScreeningsByStatus(t *testing.T) {
	const none = Watch + 1
	for status, want := range map[manway.Status]Severity{manway.NotJudged: none, manway.Pass: none, manway.Fail: Urgent, manway.NotShown: Soon, manway.NotPermitted: Soon} {
		roof, cover, unseen := Severity(none), Severity(none), len(must(Defects(Condition{RoofStrength: status})))
		for _, d := range must(Defects(Condition{RoofSeen: true, RoofStrength: status, CoverStrength: status})) {
			switch d.Kind {
			case RoofNotShown:
				roof = d.Severity
			case CoverUnsound:
				cover = d.Severity
			}
		}
		if roof != want || cover != want || unseen != 0 {
			t.Errorf("%v: roof %d, cover %d, want %d; %d defects of a roof not seen", status, roof, cover, want, unseen)
		}
	}
}
