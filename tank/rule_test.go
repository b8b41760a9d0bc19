package tank

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

func setOf(t *testing.T, row reftable.Row) RuleSet {
	t.Helper()
	s, err := RuleSetOf(row.Input(t, "set"))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Every capacity in the files is what the rules give.
func TestCapacityRows(t *testing.T) {
	rows := reftable.Load(t, "tank.csv").Under("rule-")
	capacity := func(t *testing.T, row reftable.Row) CapacityRule {
		n, err := strconv.Atoi(row.Input(t, "rule"))
		s := setOf(t, row)
		if err != nil || n >= len(s.Capacity) {
			t.Fatalf("no rule %d in %s", n, s.ID)
		}
		r := s.Capacity[n]
		if place := r.Source.Place; place != row.Place || r.Source.Source.ID != row.Source {
			t.Errorf("rule cites %s %s", r.Source.Source.ID, place)
		}
		if row.Status != "derived" && r.Mark.String() != row.Status {
			t.Errorf("rule is marked %v", r.Mark)
		}
		return r
	}
	var byBedrooms, byFlow reftable.Rows
	for _, row := range rows {
		if _, ok := row.Lookup("bedrooms"); ok {
			byBedrooms = append(byBedrooms, row)
		}
		if _, ok := row.Lookup("flow"); ok {
			byFlow = append(byFlow, row)
		}
	}
	byBedrooms.Each(t, func(t *testing.T, row reftable.Row) {
		v, ok := capacity(t, row).ForBedrooms(int(row.Float(t, "bedrooms")))
		if !ok {
			t.Fatal("the rule does not say")
		}
		unit := manway.Gallon
		if row.Unit == "L" {
			unit = manway.Litre
		}
		row.Check(t, v.In(unit))
	})
	byFlow.Each(t, func(t *testing.T, row reftable.Row) {
		var q manway.Flow
		row.Read(t, "flow", &q)
		v, ok := capacity(t, row).ForFlow(q)
		if !ok {
			t.Fatal("the rule does not say")
		}
		row.Check(t, v.In(manway.Gallon))
	})
}

// Every limit of the rules stands in the files, and the other way round.
func TestLimitRows(t *testing.T) {
	type side struct {
		rule  LimitRule
		limit float64
		used  bool
	}
	sides := map[string][]*side{}
	key := func(set, topic, bound, place, source string) string {
		return strings.Join([]string{set, topic, bound, place, source}, "|")
	}
	for _, s := range RuleSets() {
		for _, r := range s.Limits {
			for bound, limit := range map[string]Bound{"least": r.Least, "most": r.Most} {
				if limit.Set {
					k := key(s.ID, r.Topic.String(), bound, r.Source.Place, r.Source.Source.ID)
					sides[k] = append(sides[k], &side{rule: r, limit: limit.Value})
				}
			}
		}
	}
	rows := reftable.Load(t, "tank.csv").Under("rule-").With("quantity", "limit")
	rows.Each(t, func(t *testing.T, row reftable.Row) {
		for _, s := range sides[key(row.Input(t, "set"), row.Input(t, "topic"), row.Input(t, "bound"), row.Place, row.Source)] {
			if s.used {
				continue // two rules at one place come in the order of the rows
			}
			s.used = true
			row.Check(t, s.limit/unitOf(t, row.Unit))
			if s.rule.Mark.String() != row.Status {
				t.Errorf("rule is marked %v", s.rule.Mark)
			}
			return
		}
		t.Errorf("no rule for this row")
	})
	for k, list := range sides {
		for _, s := range list {
			if !s.used {
				t.Errorf("no row for the rule %s", k)
			}
		}
	}
}

func unitOf(t *testing.T, name string) float64 {
	t.Helper()
	units := map[string]float64{"": 1, "%": 0.01, "in": float64(manway.Inch), "ft": float64(manway.Foot), "lb": float64(manway.Pound),
		"gal": float64(manway.Gallon), "inHg": float64(manway.InchMercury), "min": float64(manway.Minute), "h": float64(manway.Hour)}
	u, ok := units[name]
	if !ok {
		t.Fatalf("unit %q", name)
	}
	return u
}

func TestRuleSetsAreWhole(t *testing.T) {
	authorities := map[string]bool{}
	ids := map[string]bool{}
	for _, s := range RuleSets() {
		if ids[s.ID] || s.ID == "" || s.Name == "" {
			t.Errorf("set %q: id not its own, or no name", s.ID)
		}
		ids[s.ID] = true
		check := func(p Provenance) {
			if p.Source.Source == nil || p.Source.Source.Year == 0 || p.Source.Place == "" {
				t.Errorf("%s: a rule without text, year or section", s.ID)
				return
			}
			authorities[p.Source.Source.Body] = true
			if !p.From.IsZero() && p.From.Validate() != nil {
				t.Errorf("%s: effective %v", s.ID, p.From)
			}
		}
		for _, c := range s.Capacity {
			check(c.Provenance)
			for i, step := range c.Flow {
				if last := step.UpTo == 0 && i == len(c.Flow)-1; i > 0 && !last && !(step.UpTo > c.Flow[i-1].UpTo) {
					t.Errorf("%s: flows do not rise", s.ID)
				}
			}
		}
		for _, l := range s.Limits {
			check(l.Provenance)
			if l.Topic >= endOfTopics || l.Least.Set && l.Most.Set && !(l.Least.Value <= l.Most.Value) || !l.Least.Set && !l.Most.Set {
				t.Errorf("%s: limit %v to %v of %v", s.ID, l.Least, l.Most, l.Topic)
			}
		}
	}
	if len(authorities) < 12 {
		t.Errorf("%d authorities, want 12 or more", len(authorities))
	}
	t.Logf("%d sets of %d authorities", len(ids), len(authorities))
	if _, err := RuleSetOf("nowhere"); err == nil {
		t.Error("a set that is not there was found")
	}
}

// Property (continuous): the published steps of a formula by flow meet where the
// texts say they do.
func TestFlowStepsMeet(t *testing.T) {
	pa := pennsylvania().Capacity[0]
	for _, q := range []float64{500, 5000, 7500, 10000} {
		below, _ := pa.ForFlow(manway.Flow(q) * manway.GallonPerDay * (1 - 1e-9))
		above, _ := pa.ForFlow(manway.Flow(q) * manway.GallonPerDay * (1 + 1e-9))
		if !(math.Abs(float64(above-below)) <= 1e-6*float64(below)) {
			t.Errorf("%v gal/d: %v below, %v above", q, below, above)
		}
	}
	nc := northCarolina().Capacity[0]
	for q, want := range map[float64]float64{600: 1200, 600.001: 1202, 1499.999: 2255, 1500: 2250} {
		if v, ok := nc.ForFlow(manway.Flow(q) * manway.GallonPerDay); !ok || !(math.Abs(v.In(manway.Gallon)-want) <= 0.01) {
			t.Errorf("%v gal/d: %v, want %v gal", q, v.In(manway.Gallon), want)
		}
	}
}

func find(t *testing.T, j Judgement, name string) manway.Check {
	t.Helper()
	for _, c := range j.Checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no check %q among %d", name, len(j.Checks))
	return manway.Check{}
}

// A tank just so, one that fails, and one of which nothing is known.
func TestJudge(t *testing.T) {
	in := manway.Inch
	good := must(t, Spec{
		Shape: Box{Length: 96 * in, Width: 60 * in, Height: 64 * in}, Wall: 3 * in, Roof: 4 * in,
		Partitions:  []Partition{{At: 62 * in, Thickness: 3 * in}},
		InletInvert: 49.5 * in, OutletInvert: 48 * in,
		Access: []Access{{Along: 12 * in, Diameter: 20 * in}},
	})
	f := good.Facts()
	f.Bedrooms = 3
	f.OutletBelow = manway.Read(18 * in)
	va := virginia()
	j, err := va.Judge(f)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]manway.Status{
		"liquid capacity":                                      manway.Pass,
		"liquid depth, at least":                               manway.Pass,
		"liquid depth, at most":                                manway.Pass,
		"air space, at least":                                  manway.Pass,
		"drop from inlet to outlet, at least":                  manway.Pass,
		"drop from inlet to outlet, at most":                   manway.Pass,
		"outlet fitting's share of the liquid depth, at least": manway.Pass,
		"inlet fitting below the liquid, at least":             manway.NotJudged,
	} {
		if c := find(t, j, name); c.Status != want {
			t.Errorf("%s: %v (%v), want %v", name, c.Status, c.Reason, want)
		}
	}
	if !j.Cautions.Has(manway.LocalCode) {
		t.Error("local code is not named")
	}
	// The limits of a strict rule fail themselves, and a backward pitch fails.
	for drop, want := range map[manway.Length][2]manway.Status{
		1 * in: {manway.Fail, manway.Pass}, 2 * in: {manway.Pass, manway.Fail}, -1 * in: {manway.Fail, manway.Pass}, 0: {manway.Fail, manway.Pass},
	} {
		f.Drop = manway.Read(drop)
		j, _ := va.Judge(f)
		a, b := find(t, j, "drop from inlet to outlet, at least"), find(t, j, "drop from inlet to outlet, at most")
		if a.Status != want[0] || b.Status != want[1] {
			t.Errorf("drop of %v: %v and %v, want %v", drop, a.Status, b.Status, want)
		}
	}
	for _, s := range RuleSets() {
		j, err := s.Judge(Facts{})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range j.Checks {
			if c.Status != manway.NotJudged || c.Reason == "" {
				t.Errorf("%s, %s: %v (%q) though nothing is known", s.ID, c.Name, c.Status, c.Reason)
			}
		}
	}
}

// A superseded or remembered rule informs and never judges.
func TestOldRulesInform(t *testing.T) {
	f := Facts{Bedrooms: 3, Liquid: 400 * manway.Gallon, FirstLiquid: 200 * manway.Gallon, LiquidDepth: manway.Read(20 * manway.Inch),
		AirSpace: manway.Read(1 * manway.Inch), CoverMass: 20 * manway.Pound, CoverFastened: manway.No, Compartments: 2, Form: PlumbWalls, LengthToWidth: 1}
	for _, id := range []string{"usphs-1967", "us-mn-ramsey-1989", "us-nc", "us-mn", "us-oh", "ipsdc-2012"} {
		s, err := RuleSetOf(id)
		if err != nil {
			t.Fatal(err)
		}
		j, err := s.Judge(f)
		if err != nil {
			t.Fatal(err)
		}
		informed := 0
		for _, c := range j.Checks {
			if strings.Contains(c.Reason, "only informs") {
				informed++
				if c.Status != manway.NotJudged || !strings.Contains(c.Reason, "fail") {
					t.Errorf("%s, %s: %v, %q", id, c.Name, c.Status, c.Reason)
				}
			}
		}
		if informed == 0 {
			t.Errorf("%s: no rule informs", id)
		}
	}
}

func TestCovers(t *testing.T) {
	wy := wyandotte()
	name := CoverSecured.String()
	for _, c := range []struct {
		mass     manway.Mass
		fastened manway.Answer
		want     manway.Status
	}{
		{0, manway.Unknown, manway.NotJudged}, {0, manway.No, manway.NotJudged}, {0, manway.Yes, manway.Pass},
		{65 * manway.Pound, manway.Unknown, manway.Pass}, {64 * manway.Pound, manway.Unknown, manway.NotJudged},
		{64 * manway.Pound, manway.No, manway.Fail}, {64 * manway.Pound, manway.Yes, manway.Pass}, {70 * manway.Pound, manway.No, manway.Pass},
	} {
		j, err := wy.Judge(Facts{CoverMass: c.mass, CoverFastened: c.fastened})
		if err != nil {
			t.Fatal(err)
		}
		if got := find(t, j, name); got.Status != c.want {
			t.Errorf("%v, fastened %v: %v, want %v", c.mass, c.fastened, got.Status, c.want)
		}
	}
	in := indiana()
	for a, want := range map[manway.Answer]manway.Status{manway.Unknown: manway.NotJudged, manway.No: manway.Fail, manway.Yes: manway.Pass} {
		j, _ := in.Judge(Facts{SecondaryGuard: a, CoverFastened: manway.Yes})
		if got := find(t, j, SecondaryGuard.String()); got.Status != want {
			t.Errorf("guard %v: %v, want %v", a, got.Status, want)
		}
	}
	tx := texas()
	for depth, want := range map[manway.Length]manway.Status{-3 * manway.Inch: manway.Pass, -1 * manway.Inch: manway.Fail, 5 * manway.Inch: manway.Fail} {
		j, _ := tx.Judge(Facts{AccessBelowGrade: manway.Read(depth)})
		if got := find(t, j, AccessAboveGrade.String()+", at least"); got.Status != want {
			t.Errorf("access %v below grade: %v, want %v", depth, got.Status, want)
		}
	}
}

// Scope: the depth that Tennessee asks for depends on the capacity.
func TestScope(t *testing.T) {
	tn := tennessee()
	depth := func(liquid manway.Volume) (names []string) {
		j, err := tn.Judge(Facts{Liquid: liquid, LiquidDepth: manway.Read(70 * manway.Inch)})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range j.Checks {
			if strings.HasPrefix(c.Name, "liquid depth") {
				names = append(names, c.Name+" "+c.Status.String())
			}
		}
		return names
	}
	for liquid, want := range map[manway.Volume]string{
		1000 * manway.Gallon: "liquid depth, at least pass,liquid depth, at most fail",
		3000 * manway.Gallon: "liquid depth, at most pass",
		0:                    "liquid depth not judged,liquid depth not judged",
	} {
		if got := strings.Join(depth(liquid), ","); got != want {
			t.Errorf("%v: %q, want %q", liquid, got, want)
		}
	}
}

func TestJudgeRefuses(t *testing.T) {
	_, err := virginia().Judge(Facts{Bedrooms: -1, DailyFlow: manway.Flow(math.NaN()), Liquid: -1, FirstLiquid: 5, Drop: manway.Read(manway.Length(math.Inf(1)))})
	faults, ok := err.(manway.InputErrors)
	if !ok || len(faults) != 5 {
		t.Errorf("%d faults, want 5: %v", len(faults), err)
	}
}
