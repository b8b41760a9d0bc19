package riser

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
)

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

// Property (balance): every piece that is fitted has its hours in the scope, those of
// common practice: an adapter 2, a guard or handle 1/2, a fastener 1/10.
func TestEveryPieceIsFitted(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 5))
	seen := map[string]bool{}
	for range 300 {
		for _, r := range must(Remedies(randomCondition(rng), randomSite(rng))) {
			sum := map[string]float64{}
			for _, i := range r.Scope {
				sum[i.Code] += i.Quantity
			}
			for _, c := range []struct {
				piece, task string
				each        float64
			}{{"adapter", "fit-adapter", 2}, {"guard-secondary", "fit-guard", 0.5}, {"handle-anchored", "fit-handle", 0.5}, {"fastener", "fit-fasteners", 0.1}} {
				near(t, string(r.Kind)+", "+c.task, sum[c.task], c.each*sum[c.piece], 1e-12)
				seen[c.piece] = seen[c.piece] || sum[c.piece] > 0
			}
		}
	}
	if len(seen) != 4 || !seen["adapter"] || !seen["handle-anchored"] {
		t.Errorf("fitted were %v: the trials prove little", seen)
	}
}

// Old rings are hauled by their weight: it is wanting where rings stand whose
// weight is not known.
func TestWeightOfOldRingsIsWanting(t *testing.T) {
	for _, c := range []struct {
		s       Site
		wanting bool
	}{{Site{}, false}, {Site{Standing: 2}, true}, {Site{Standing: 2, StandingMass: 200}, false}} {
		list := must(Remedies(Condition{Roots: manway.Yes}, c.s))
		i := slices.IndexFunc(list, func(r Remedy) bool { return r.Kind == ReplaceConcrete })
		if i < 0 || slices.Contains(list[i].Unscoped, "weight of the old rings and cover") != c.wanting {
			t.Errorf("%+v: %+v", c.s, list)
		}
	}
}

// The lawn over a pit is seeded with 3 lb per 1,000 ft2, common practice: 0.3 lb
// over a shored pit of 10 ft by 10 ft.
func TestLawnSeed(t *testing.T) {
	s := Site{Pit: Pit{Length: 10 * manway.Foot, Width: 10 * manway.Foot, Depth: 2 * manway.Foot, Shored: true}}
	for _, r := range must(Remedies(Condition{Roots: manway.Yes}, s)) {
		for _, i := range r.Scope {
			if r.Kind == OutsideCollar && i.Code == "seed" {
				near(t, "pounds", i.Quantity, 0.3, 1e-12)
				return
			}
		}
	}
	t.Error("no seed")
}
