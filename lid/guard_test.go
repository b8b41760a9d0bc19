package lid

import (
	"testing"

	"manway.example/manway"
)

func findingOf(t *testing.T, l Lid, g Guard, code string) (Finding, GuardCheck) {
	t.Helper()
	rule, ok := GuardRuleOf(code)
	if !ok {
		t.Fatalf("no rule %s", code)
	}
	r, err := l.CheckGuard(g, []GuardRule{rule})
	if err != nil {
		t.Fatal(err)
	}
	return r.Findings[0], r
}

func TestGuardFindings(t *testing.T) {
	heavy, light := lids["disc"], lids["disc"]
	heavy.Measured, light.Measured = 118*manway.Pound, 40*manway.Pound
	atGrade := Guard{Opening: 20 * in, DepthKnown: true, Fastened: manway.No, Locked: manway.No, Secondary: manway.No, Label: manway.No}
	with := func(change func(*Guard)) Guard { g := atGrade; change(&g); return g }
	for _, c := range []struct {
		name  string
		lid   Lid
		guard Guard
		code  string
		want  manway.Status
	}{
		{"nothing holds it", light, atGrade, "wi-384.25-lock", manway.Fail},
		{"heavy is no lock", heavy, atGrade, "wi-384.25-lock", manway.Fail},
		{"locked", light, with(func(g *Guard) { g.Locked = manway.Yes }), "wi-384.25-lock", manway.Pass},
		{"not looked at", light, with(func(g *Guard) { g.Locked = manway.Unknown }), "wi-384.25-lock", manway.NotJudged},
		{"below grade", light, with(func(g *Guard) { g.Depth = 1 * in }), "wi-384.25-lock", manway.NotJudged},
		{"depth unknown", light, with(func(g *Guard) { g.DepthKnown = false }), "wi-384.25-lock", manway.NotJudged},
		{"small opening", light, with(func(g *Guard) { g.Opening = 8 * in }), "wi-384.25-lock", manway.NotJudged},
		{"fastened without a cap", light, with(func(g *Guard) { g.Fastened = manway.Yes }), "in-16-41-25-3", manway.Fail},
		{"fastened and a cap", light, with(func(g *Guard) { g.Fastened, g.Secondary = manway.Yes, manway.Yes }), "in-16-41-25-3", manway.Pass},
		{"5 in of soil", light, with(func(g *Guard) { g.Depth = 5 * in }), "mn-7080.2290", manway.Fail},
		{"6 in of soil", light, with(func(g *Guard) { g.Depth = 6 * in }), "mn-7080.2290", manway.NotJudged},
		{"a remembered rule", heavy, with(func(g *Guard) { g.Label = manway.Yes }), "mn-7080.1970", manway.NotJudged},
		{"a repealed rule", light, atGrade, "tx-285.38-2012", manway.NotJudged},
		{"no second guard", heavy, atGrade, "tx-285.38", manway.Fail},
		{"no label", heavy, atGrade, "wi-384.25-label", manway.Fail},
	} {
		f, _ := findingOf(t, c.lid, c.guard, c.code)
		if f.Status != c.want || (f.Status != manway.Pass) != (f.Reason != "") {
			t.Errorf("%s, %s: %v (%s), want %v", c.name, c.code, f.Status, f.Reason, c.want)
		}
	}
}

// The change proposed is a fastener and a second guard, whatever the weight,
// and a guard by weight that the crew will not lift is a conflict.
func TestNeverAHeavierLid(t *testing.T) {
	l := lids["disc"]
	for _, weight := range []manway.Mass{40 * manway.Pound, 94 * manway.Pound, 96 * manway.Pound, 400 * manway.Pound} {
		l.Measured = weight
		g := Guard{Opening: 20 * in, DepthKnown: true, Fastened: manway.No, Locked: manway.No, Secondary: manway.No, Crew: Crew{1, 50 * manway.Pound}}
		f, r := findingOf(t, l, g, "nd-advice")
		if !r.AddFastener || !r.AddSecondary || !r.GuardNow {
			t.Errorf("%v: %+v", weight, r)
		}
		if byWeight := weight > 95*manway.Pound; f.WeightOnly != byWeight || r.WeightConflict != byWeight {
			t.Errorf("%v: by weight only %v, conflict %v", weight, f.WeightOnly, r.WeightConflict)
		}
	}
	g := Guard{Opening: 20 * in, DepthKnown: true, Fastened: manway.Yes, Secondary: manway.Yes}
	l.Measured = 400 * manway.Pound
	if f, r := findingOf(t, l, g, "nd-advice"); r.AddFastener || r.AddSecondary || r.WeightConflict || f.WeightOnly || r.GuardNow {
		t.Errorf("fastened with a second guard: %+v %+v", f, r)
	}
}

func TestGuardRulesAreWhole(t *testing.T) {
	rules := GuardRules()
	for i, r := range rules {
		if r.Code == "" || r.Wants == "" || r.Source.Source == nil || r.Source.Place == "" || r.AnyOf == 0 && !r.Secondary && !r.Label || (r.AnyOf&ByWeight != 0) != (r.Weight > 0) {
			t.Errorf("rule %d is not whole: %+v", i, r)
		}
		if i > 0 && rules[i-1].Code >= r.Code {
			t.Errorf("%s stands before %s", rules[i-1].Code, r.Code)
		}
	}
	rules[0].Code = "changed"
	if GuardRules()[0].Code == "changed" {
		t.Error("the list of rules can be changed from outside")
	}
	r, err := lids["disc"].CheckGuard(Guard{Opening: 20 * in}, GuardRules())
	if err != nil || r.Rules != len(rules) {
		t.Errorf("all rules at once: %d %v", r.Rules, err)
	}
	if _, err := lids["disc"].CheckGuard(Guard{Locked: 9}, make([]GuardRule, 17)); len(fields(err)) != 2+1+17 {
		t.Errorf("faults %v", fields(err))
	}
}
