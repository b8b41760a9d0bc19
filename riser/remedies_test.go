package riser

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// Property (balance): for random conditions every remedy cures, delays
// or leaves each defect once, an unsafe opening is guarded first, whatever is
// entered or dug carries its whole scope, and no scope has an unknown code or a
// quantity of nothing.
func TestRemediesShareOutDefects(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	known := map[string]string{}
	for _, c := range ItemCodes() {
		known[c.Code] = c.Unit
	}
	for range 3000 {
		c, s := randomCondition(rng), randomSite(rng)
		defects, err := Defects(c)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.IsSortedFunc(defects, func(a, b Defect) int { return int(a.Severity) - int(b.Severity) }) {
			t.Fatalf("not urgent first: %+v", defects)
		}
		var kinds []DefectKind
		for _, d := range defects {
			if d.Reason == "" || d.Basis.Source == nil {
				t.Fatalf("%+v: want a reason and its source", d)
			}
			if !slices.Contains(kinds, d.Kind) {
				kinds = append(kinds, d.Kind)
			}
		}
		list, err := Remedies(c, s)
		if err != nil {
			t.Fatal(err)
		}
		if unsafe := slices.ContainsFunc(defects, unsafeOpening); unsafe != (len(list) > 0 && list[0].Kind == GuardNow) {
			t.Fatalf("unsafe opening %v, first remedy %+v", unsafe, list)
		}
		for _, r := range list {
			all := slices.Concat(r.Cures, r.Delays, r.Leaves)
			slices.Sort(all)
			want := slices.Sorted(slices.Values(kinds))
			if !slices.Equal(all, want) {
				t.Fatalf("%s: %v of %v", r.Kind, all, want)
			}
			checkScope(t, r, known)
		}
	}
}

func checkScope(t *testing.T, r Remedy, known map[string]string) {
	t.Helper()
	has := map[string]bool{}
	for _, i := range r.Scope {
		has[i.Code] = true
		if unit, ok := known[i.Code]; ok && unit != i.Unit || !ok && i.Code != "stack-ring" {
			t.Fatalf("%s: line %+v", r.Kind, i)
		}
		if !(i.Quantity > 0) || math.IsInf(i.Quantity, 0) || i.Working == "" || i.Basis.Source == nil || (i.Class == Labour) != (i.Crew > 0) {
			t.Fatalf("%s: line %+v", r.Kind, i)
		}
	}
	want := func(when bool, codes ...string) {
		for _, code := range codes {
			if when && !has[code] {
				t.Fatalf("%s: no %s in %v", r.Kind, code, has)
			}
		}
	}
	want(r.NeedsEntry, "entrant", "attendant", "entry-supervisor", "gas-meter", "blower", "retrieval", "permit-entry")
	want(r.NeedsDig, "locate", "wait-locate")
	want(r.NeedsPump && len(r.Unscoped) == 0, "pump-down")
	if r.NeedsEntry && (!r.Cautions.Has(manway.PermitEntry|manway.NeverEnter) || r.Permit == "" || !r.NeedsPump) {
		t.Fatalf("%s: entry without its cautions, permit or pump-down", r.Kind)
	}
	if r.NeedsDig && !r.Cautions.Has(manway.TrenchCollapse|manway.LocateUtilities|manway.MayFloat|manway.MayCave) {
		t.Fatalf("%s: dig without its cautions", r.Kind)
	}
}

func randomCondition(rng *rand.Rand) Condition {
	answer := func() manway.Answer { return manway.Answer(rng.IntN(3)) }
	reading := func(most manway.Length) manway.Reading {
		if rng.IntN(2) == 0 {
			return manway.Reading{}
		}
		return manway.Read(most * manway.Length(rng.Float64()))
	}
	c := Condition{CoverPresent: answer(), CoverDrops: answer(), CoverCracked: answer(), CoverStrength: manway.Status(rng.IntN(5)),
		CoverMass: manway.Mass(rng.IntN(200)), CrewLimit: manway.Mass(rng.IntN(100)), CoverDepth: reading(40 * manway.Inch), Fastened: answer(), Guard: answer(),
		Handle: lid.HandleState(rng.IntN(5)), RimGap: reading(3 * manway.Inch), Bearing: reading(2 * manway.Inch), JointSealed: answer(), JointGap: reading(manway.Inch),
		Roots: answer(), WaterStain: answer(), Odour: answer(), SpallDepth: reading(2 * manway.Inch), Thickness: manway.Read(3 * manway.Inch), SteelExposed: answer(),
		CrackWidth: reading(manway.Inch / 4), Settled: reading(2 * manway.Inch), RoofStrength: manway.Status(rng.IntN(5)), RoofSeen: rng.IntN(2) == 0}
	if rng.IntN(2) == 0 {
		c.Size = manway.Read(manway.Length(10+rng.IntN(20)) * manway.Inch)
	}
	if rng.IntN(8) == 0 {
		return Condition{Missing: manway.Yes}
	}
	return c
}

func randomSite(rng *rand.Rand) Site {
	if rng.IntN(4) == 0 {
		return Site{} // nothing is known
	}
	return Site{Port: 20 * manway.Inch, Bore: manway.Length(20+4*rng.IntN(2)) * manway.Inch, Outside: 30 * manway.Inch, JointDown: manway.Read(manway.Length(rng.IntN(40)) * manway.Inch),
		Standing: rng.IntN(4), StandingMass: 200, Height: manway.Length(1+rng.IntN(30)) * manway.Inch, Pit: Pit{Length: 30 * manway.Inch, Working: manway.Foot, Depth: manway.Length(1+rng.IntN(60)) * manway.Inch},
		SpallArea: manway.SquareFoot, SpallDepth: manway.Inch, Liquid: manway.Volume(rng.IntN(2)), TankVolume: 4, Emptying: manway.Answer(rng.IntN(3)), Water: manway.GroundwaterAt(manway.Length(rng.IntN(3)))}
}

// TestEveryDefectHasACure: whatever is found, some remedy cures it.
func TestEveryDefectHasACure(t *testing.T) {
	cured := map[DefectKind]bool{}
	for _, p := range catalogue {
		for _, k := range p.cures {
			cured[k] = true
		}
	}
	rng := rand.New(rand.NewPCG(1, 2))
	seen := map[DefectKind]bool{}
	for range 3000 {
		for _, d := range must(Defects(randomCondition(rng))) {
			seen[d.Kind] = true
		}
	}
	for k := range seen {
		if !cured[k] {
			t.Errorf("nothing cures %s", k)
		}
	}
	if len(seen) != 20 {
		t.Errorf("the trials found %d kinds of defect, want all 20", len(seen))
	}
}

// TestNoHeavierCover: no remedy for a cover that is too light or not fastened
// adds weight; what is proposed is a fastener and a secondary guard.
func TestNoHeavierCover(t *testing.T) {
	c := Condition{CoverPresent: manway.Yes, Fastened: manway.No, Guard: manway.No, CoverMass: 20, CrewLimit: 60, CoverDepth: manway.Read(0)}
	var kinds []RemedyKind
	for _, r := range must(Remedies(c, Site{})) {
		kinds = append(kinds, r.Kind)
		for _, i := range r.Scope {
			if i.Code == "cover-concrete" && r.Kind != ReplaceConcrete {
				t.Errorf("%s: a concrete cover is no guard", r.Kind)
			}
		}
	}
	if want := []RemedyKind{GuardNow, Fasteners, SecondaryGuard}; !slices.Equal(kinds[:3], want) {
		t.Errorf("got %v, want %v first", kinds, want)
	}
}

// TestNotSeenIsNoDefect: an access of which nothing was seen has no defect, and
// everything on the list of what was not seen.
func TestNotSeenIsNoDefect(t *testing.T) {
	var c Condition
	if d := must(Defects(c)); len(d) != 0 {
		t.Errorf("got %v", d)
	}
	if n := c.NotSeen(); len(n) != 23 {
		t.Errorf("%d things not seen: %v", len(n), n)
	}
	text, unsafe := Notice("inlet", nil)
	if unsafe || text != "" {
		t.Errorf("a notice for nothing: %q", text)
	}
}

// TestScopeFollowsTheStack: the rings of the chosen stack are priced where they
// suit the remedy, one by one and sealed one by one, and by the foot where they
// do not.
func TestScopeFollowsTheStack(t *testing.T) {
	stock := []Ring{{Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch}}
	stacks := must(StackOf(stock, Need{Port: 24 * manway.Inch, Gap: 26 * manway.Inch, Joint: manway.Inch / 2}))
	s := Site{Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, Height: 26 * manway.Inch, Stack: stacks.Best[0], CoverCode: "c24"}
	quantity := map[RemedyKind]map[string]float64{}
	for _, r := range must(Remedies(Condition{Roots: manway.Yes}, s)) {
		quantity[r.Kind] = map[string]float64{}
		for _, i := range r.Scope {
			quantity[r.Kind][i.Code] += i.Quantity
		}
	}
	concrete, plastic := quantity[ReplaceConcrete], quantity[ReplacePlastic]
	strip := 4 * (27*math.Pi + 2) / 12
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"concrete rings", concrete["ring-24x6"], 4}, {"no concrete by the foot", concrete["ring-concrete"], 0},
		{"strip of four joints", concrete["sealant-strip"], strip}, {"chosen cover", concrete["c24"], 1}, {"no other cover", concrete["cover-concrete"], 0},
		{"plastic by the foot", plastic["riser-plastic"], 26. / 12}, {"no concrete ring", plastic["ring-24x6"], 0}, {"strip of two joints", plastic["sealant-strip"], strip / 2},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-9) {
			t.Errorf("%s: got %v, want %v", c.what, c.got, c.want)
		}
	}
}

// TestEntryHours: the attendant stands by for all of the work inside, and the
// work is paid once.
func TestEntryHours(t *testing.T) {
	s := Site{Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, SpallArea: 10 * manway.SquareFoot, SpallDepth: manway.Inch, Liquid: 2}
	for _, r := range must(Remedies(Condition{Roots: manway.Yes}, s)) {
		if r.Kind != PatchFromInside {
			continue
		}
		hours := map[string]float64{}
		for _, i := range r.Scope {
			hours[i.Code] = i.Quantity
		}
		feet := math.Pi * 2
		work := feet*(0.10+0.05) + 10*0.05 // clean and seal the joint, patch
		near(t, "attendant", hours["attendant"], work+0.5+1, 1e-12)
		near(t, "entrant beside the work", hours["entrant"], 0.5, 1e-12)
		near(t, "work", hours["clean-joint"]+hours["seal-joint"]+hours["patch"], work, 1e-12)
		return
	}
	t.Error("no patch from inside")
}
