package riser

import (
	"maps"
	"math"
	"slices"
	"testing"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// worn is an access with so much wrong that every remedy of a riser is proposed.
func worn() Condition {
	return Condition{CoverPresent: manway.Yes, CoverDepth: manway.Read(20 * manway.Inch), Handle: lid.HandleRusted, Fastened: manway.No, Guard: manway.No, Roots: manway.Yes, Odour: manway.Yes,
		RoofSeen: true, RoofStrength: manway.NotShown, CoverDrops: manway.Yes, Size: manway.Read(17 * manway.Inch)}
}

// measured is a site of which all is known: a shored pit of 54 in round, 18 in
// deep, and one of 12 by 9 ft, 9 ft deep, for the tank.
func measured() Site {
	return Site{Port: 20 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, JointDown: manway.Read(18 * manway.Inch), Standing: 2, StandingMass: 300 * manway.Pound, Height: 26 * manway.Inch,
		Pit:       Pit{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 18 * manway.Inch, Shored: true},
		TankPit:   Pit{Length: 12 * manway.Foot, Width: 9 * manway.Foot, Depth: 9 * manway.Foot, Shored: true},
		SpallArea: 10 * manway.SquareFoot, SpallDepth: manway.Inch, Liquid: 500 * manway.Gallon, TankVolume: 1000 * manway.Gallon}
}

// scopes are the quantities of each remedy by their codes.
func scopes(c Condition, s Site) (all map[RemedyKind]map[string]float64) {
	all = map[RemedyKind]map[string]float64{}
	for _, r := range must(Remedies(c, s)) {
		all[r.Kind] = map[string]float64{}
		for _, i := range r.Scope {
			all[r.Kind][i.Code] += i.Quantity
		}
	}
	return all
}

// Every line of every remedy by hand. The joint is 2 pi ft inside, 2 1/2 pi
// outside and 2 1/4 pi in its middle, closed to 1/2 in. The pit is pi/4 (4 1/2)^2
// 1 1/2 ft3; common earth takes nine tenths of its room when it is compacted
// again, so that a tenth of the pit is brought in; the lawn gets 4 in of topsoil
// and 3 lb of seed per 1000 ft2. Hours by hand are 2.20 and 1.00 a cubic metre, of
// machines 0.2 and 0.6 a cubic yard.
func TestScopesByHand(t *testing.T) {
	const m3 = 0.3048 * 0.3048 * 0.3048 // of a cubic foot
	area := math.Pi / 4 * 4.5 * 4.5
	pit := area * 1.5
	dig := map[string]float64{"locate": 1, "wait-locate": 3, "dig-hand": pit * m3 * 2.2, "backfill-hand": pit * m3, "shoring": 1, "fill": pit / 27 / 10, "topsoil": area / 3 / 27, "seed": 3 * area / 1000}
	closing := map[string]float64{"fit-cover": 0.5, "fastener": 4, "fit-fasteners": 0.4, "guard-secondary": 1, "fit-guard": 0.5}
	strip := (27*math.Pi + 2) / 12
	joint := map[string]float64{"sealant-strip": strip, "seal-joint": 0.05 * 2.25 * math.Pi}
	gear := map[string]float64{"gas-meter": 1, "blower": 1, "retrieval": 1, "permit-entry": 1, "entry-supervisor": 0.5, "entrant": 0.5}
	lines := func(all ...map[string]float64) map[string]float64 {
		sum := map[string]float64{}
		for _, m := range all {
			for code, x := range m {
				sum[code] += x
			}
		}
		return sum
	}
	type m = map[string]float64
	collar := math.Pi * 36 * 36 / 1728
	inside := 0.15*2*math.Pi + 0.05*10
	old, rings := m{"lift-ring": 2.5, "debris-haul": 300}, m{"ring-concrete": 26. / 12, "set-ring": 1, "hoist": 1}
	want := map[RemedyKind]m{
		GuardNow:        {"barrier": 1, "temporary-cover": 1, "notice": 1, "guard-opening": 0.5},
		Fasteners:       {"fastener": 4, "fit-fasteners": 0.4},
		SecondaryGuard:  {"guard-secondary": 1, "fit-guard": 0.5},
		NewCover:        lines(closing, m{"cover-plastic": 1}),
		NewHandle:       {"handle-anchored": 1, "fit-handle": 0.5},
		ResealFromGrade: {"sealant-bead": math.Pi * 24 / 4, "clean-joint": 0.2 * math.Pi, "seal-joint": 0.1 * math.Pi},
		OutsideCollar: lines(dig, m{"sealant-bead": math.Pi * 30 / 4, "clean-joint": 0.25 * math.Pi, "seal-joint": 0.125 * math.Pi, "concrete": collar, "place-concrete": collar * 2 / 27,
			"wrap": 2.5 * math.Pi, "wait-cure": 1}),
		RebedRing: lines(dig, joint, joint, m{"lift-ring": 2.5, "set-ring": 2, "hoist": 1}),
		PatchFromInside: lines(gear, m{"repair-mortar": 10. / 12, "patch": 0.5, "cement-plug": math.Pi * 25 / 2 / 1728, "clean-joint": 0.2 * math.Pi, "seal-joint": 0.1 * math.Pi,
			"pump-down": 500, "attendant": inside + 1.5}),
		FitAdapter:      lines(dig, joint, m{"adapter": 1, "fit-adapter": 2}),
		RaiseToGrade:    lines(dig, rings, joint, closing, m{"cover-plastic": 1}),
		ReplacePlastic:  lines(dig, old, joint, joint, closing, m{"adapter": 1, "fit-adapter": 2, "riser-plastic": 26. / 12, "set-ring": 1, "cover-plastic": 1}),
		ReplaceConcrete: lines(dig, old, rings, joint, closing, m{"cover-concrete": 1}),
		CutAccess:       lines(dig, rings, joint, closing, m{"pump-down": 500, "engineer": 1, "concrete-saw": 1, "cut-opening": 4, "cover-plastic": 1}),
		ReplaceTank: {"locate": 1, "wait-locate": 3, "excavator": 36*0.2 + 36*0.6, "shoring": 1, "fill": 3.6, "topsoil": 12. * 9 / 3 / 27, "seed": 3 * 108. / 1000, "pump-down": 500, "tank": 1000,
			"engineer": 1},
	}
	got := scopes(worn(), measured())
	if len(got) != len(catalogue) {
		t.Errorf("%d remedies of %d are proposed", len(got), len(catalogue))
	}
	for kind, scope := range want {
		codes := slices.Sorted(maps.Keys(scope))
		if has := slices.Sorted(maps.Keys(got[kind])); !slices.Equal(has, codes) {
			t.Errorf("%s has %v, want %v", kind, has, codes)
		}
		for code, x := range scope {
			near(t, string(kind)+", "+code, got[kind][code], x, 1e-9*x)
		}
	}
}

// What nobody measured is named once, by the remedies that need it, and left out
// of the scope instead of guessed.
func TestWantsOfAnUnknownSite(t *testing.T) {
	const pit, ring, height, liquid = "depth and size of the pit", "inside and outside diameter of the ring", "height of the new riser", "gallons to pump down"
	want := map[RemedyKind][]string{
		GuardNow: nil, Fasteners: nil, SecondaryGuard: nil, NewCover: nil, NewHandle: nil,
		ResealFromGrade: {ring}, OutsideCollar: {pit, ring}, RebedRing: {pit, "number of rings that stand there"}, PatchFromInside: {ring, liquid}, RaiseToGrade: {pit, height},
		ReplacePlastic: {pit, height, ring}, ReplaceConcrete: {pit, height}, CutAccess: {pit, liquid, height},
		ReplaceTank: {"depth and size of the whole excavation", liquid, "volume of the new tank"},
	}
	list := must(Remedies(worn(), Site{}))
	if len(list) != len(want) {
		t.Errorf("%d remedies, want %d", len(list), len(want))
	}
	for _, r := range list {
		if !slices.Equal(r.Unscoped, want[r.Kind]) {
			t.Errorf("%s wants %q, should want %q", r.Kind, r.Unscoped, want[r.Kind])
		}
	}
	for _, r := range must(Remedies(worn(), measured())) {
		if len(r.Unscoped) > 0 {
			t.Errorf("all is known, and %s wants %q", r.Kind, r.Unscoped)
		}
	}
}

// Lines that a site changes, by hand: days of notice, a ladder from 4 ft down,
// topsoil as deep as is said, a joint that closes to 1/4 in, soil that is left
// over where a part of the pit is not refilled, and none of it moved where less
// than a fiftieth is left.
func TestScopesFollowTheSite(t *testing.T) {
	base := scopes(worn(), measured())[OutsideCollar]
	pit, area := math.Pi/4*4.5*4.5*1.5, math.Pi/4*4.5*4.5
	for _, c := range []struct {
		what string
		set  func(*Site)
		want map[string]float64 // 0: no such line
	}{
		{"notice", func(s *Site) { s.LocateDays = 5 }, map[string]float64{"wait-locate": 5}},
		{"sloped", func(s *Site) { s.Pit.Shored = false }, map[string]float64{"shoring": 0}},
		{"just below 4 ft", func(s *Site) { s.Pit.Depth = 3.99 * manway.Foot }, map[string]float64{"ladder": 0}},
		{"4 ft", func(s *Site) { s.Pit.Depth = 4 * manway.Foot }, map[string]float64{"ladder": 1}},
		{"topsoil", func(s *Site) { s.Topsoil = 6 * manway.Inch }, map[string]float64{"topsoil": area / 2 / 27}},
		{"joint", func(s *Site) { s.JointClosed = manway.Inch / 4 }, map[string]float64{"sealant-bead": math.Pi * 30 / 8}},
		// A third is not refilled: 1/3 - 2/3 (1/0.9 - 1) of the pit is left over, a quarter more when it is loose.
		{"left over", func(s *Site) { s.Pit.Refill = manway.Volume(pit/3) * manway.CubicFoot },
			map[string]float64{"fill": 0, "spoil-haul": pit / 27 * (1 - 2/2.7) * 1.25, "backfill-hand": pit * 2 / 3 * 0.028316846592}},
		// 0.9 (1 - 0.019) of it refilled leaves 1.9 %, with 2.1 % it is hauled.
		{"even", func(s *Site) { s.Pit.Refill = manway.Volume(pit*(1-0.9*0.981)) * manway.CubicFoot }, map[string]float64{"fill": 0, "spoil-haul": 0}},
		{"uneven", func(s *Site) { s.Pit.Refill = manway.Volume(pit*(1-0.9*0.979)) * manway.CubicFoot }, map[string]float64{"fill": 0, "spoil-haul": pit / 27 * 0.021 * 1.25}},
	} {
		s := measured()
		c.set(&s)
		got := scopes(worn(), s)[OutsideCollar]
		for code, want := range c.want {
			if math.Abs(got[code]-want) > 1e-9*max(want, 1) {
				t.Errorf("%s: %s is %v, want %v (%v before)", c.what, code, got[code], want, base[code])
			}
		}
	}
	for _, spall := range [][2]float64{{10, 0}, {0, 1}, {0, 0}} {
		s := measured()
		s.SpallArea, s.SpallDepth = manway.Area(spall[0])*manway.SquareFoot, manway.Length(spall[1])*manway.Inch
		if got := scopes(worn(), s)[PatchFromInside]; got["patch"] != 0 || got["repair-mortar"] != 0 {
			t.Errorf("spalled by %v ft2 and %v in: %v", spall[0], spall[1], got)
		}
	}
}
