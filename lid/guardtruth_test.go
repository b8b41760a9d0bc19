package lid

import (
	"testing"

	"manway.example/manway"
)

// settled gives every way in which what is not known may turn out.
func settled(answers [4]manway.Answer) (list [][4]manway.Answer) {
	list = [][4]manway.Answer{answers}
	for i := range answers {
		var next [][4]manway.Answer
		for _, a := range list {
			if a[i] != manway.Unknown {
				next = append(next, a)
				continue
			}
			for _, known := range []manway.Answer{manway.Yes, manway.No} {
				a[i] = known
				next = append(next, a)
			}
		}
		list = next
	}
	return list
}

// meets says of an opening of which all is known whether it meets a rule.
func meets(r GuardRule, a [4]manway.Answer, weight manway.Mass) bool {
	fastened, locked, secondary, label := a[0] == manway.Yes, a[1] == manway.Yes, a[2] == manway.Yes, a[3] == manway.Yes
	held := r.AnyOf == 0 || r.AnyOf&ByLock != 0 && locked || r.AnyOf&ByFastener != 0 && fastened || r.AnyOf&ByWeight != 0 && weight >= r.Weight
	return held && (!r.Secondary || secondary) && (!r.Label || label)
}

// Property (two ways): what is not known of an opening leaves a rule met, or not
// met, only where it is so whichever way that turns out; every rule of the list is
// tried with every answer, at depths and openings on both sides of its limits, and
// with a lid a pound lighter and heavier than it asks for.
func TestGuardWhicheverWayItTurnsOut(t *testing.T) {
	three := []manway.Answer{manway.Unknown, manway.Yes, manway.No}
	statuses := map[manway.Status]int{}
	for _, rule := range GuardRules() {
		for i := range 81 {
			a := [4]manway.Answer{three[i%3], three[i/3%3], three[i/9%3], three[i/27]}
			for _, depth := range []float64{-1, 0, 0.5, 5.9, 6, 30} { // in; below 0 is not known
				for _, opening := range []manway.Length{1.9 * in, 5 * in, 7 * in, 8 * in, 24 * in} {
					for _, weight := range []manway.Mass{40 * manway.Pound, rule.Weight - manway.Pound, rule.Weight, rule.Weight + manway.Pound} {
						if weight < manway.Pound {
							continue
						}
						f := guarded(t, rule, a, depth, opening, weight)
						statuses[f.Status]++
						checkFinding(t, rule, a, depth, opening, weight, f)
						if t.Failed() {
							return
						}
					}
				}
			}
		}
	}
	for _, s := range []manway.Status{manway.Pass, manway.Fail, manway.NotJudged} {
		if statuses[s] < 100 {
			t.Errorf("%d trials came to %v: they prove little", statuses[s], s)
		}
	}
}

func guarded(t *testing.T, rule GuardRule, a [4]manway.Answer, depth float64, opening manway.Length, weight manway.Mass) Finding {
	t.Helper()
	l := lids["disc"]
	l.Measured = weight
	g := Guard{Opening: opening, Fastened: a[0], Locked: a[1], Secondary: a[2], Label: a[3]}
	if g.DepthKnown = depth >= 0; g.DepthKnown {
		g.Depth = manway.Length(depth) * in
	}
	r, err := l.CheckGuard(g, []GuardRule{rule})
	if err != nil {
		t.Fatal(err)
	}
	shut := a[0] == manway.Yes || a[1] == manway.Yes
	if r.AddFastener == shut || r.AddSecondary != (a[2] != manway.Yes) || r.GuardNow != (!shut && depth <= 0) {
		t.Errorf("%v at %v in: add a fastener %v, a second guard %v, guard now %v", a, depth, r.AddFastener, r.AddSecondary, r.GuardNow)
	}
	conflict := r.Findings[0].WeightOnly && weight > 50*manway.Pound
	if r.WeightConflict != conflict || conflict && (r.ConflictWeight != weight || r.ConflictLimit != 50*manway.Pound || r.ConflictByLimit) {
		t.Errorf("%s: a lid of %v, by weight only %v: conflict %v, %v against %v", rule.Code, weight, r.Findings[0].WeightOnly, r.WeightConflict, r.ConflictWeight, r.ConflictLimit)
	}
	if r.Cautions.Has(manway.RememberedFigure) != (rule.Binding == Remembered) {
		t.Errorf("%s: cautions %v", rule.Code, r.Cautions)
	}
	return r.Findings[0]
}

func checkFinding(t *testing.T, rule GuardRule, a [4]manway.Answer, depth float64, opening manway.Length, weight manway.Mass, f Finding) {
	t.Helper()
	applies := manway.Yes
	switch {
	case opening <= rule.OpeningOver:
		applies = manway.No
	case rule.AnyDepth:
	case depth < 0:
		applies = manway.Unknown
	case rule.DepthUnder == 0 && depth > 0, rule.DepthUnder > 0 && manway.Length(depth)*in >= rule.DepthUnder:
		applies = manway.No
	}
	all, none, byWeight := true, true, true
	for _, known := range settled(a) {
		yes := meets(rule, known, weight)
		all, none = all && yes, none && !yes
	}
	byWeight = rule.AnyOf&ByWeight != 0 && weight >= rule.Weight && !(rule.AnyOf&ByLock != 0 && a[1] == manway.Yes) && !(rule.AnyOf&ByFastener != 0 && a[0] == manway.Yes)
	met := manway.Unknown
	switch {
	case applies != manway.Yes:
		byWeight = false
	case all:
		met = manway.Yes
	case none:
		met = manway.No
	}
	status := manway.NotJudged
	if applies == manway.Yes && rule.Binding == InForce {
		status = map[manway.Answer]manway.Status{manway.Yes: manway.Pass, manway.No: manway.Fail}[met]
	}
	if f.Applies != applies || f.Met != met || f.Status != status || f.WeightOnly != byWeight || (f.Reason == "") != (status == manway.Pass) {
		t.Errorf("%s, %v, %v in deep, opening %v, %v: %+v; want applies %v, met %v, %v, by weight %v", rule.Code, a, depth, opening, weight, f, applies, met, status, byWeight)
	}
	if status != manway.Fail {
		return
	}
	// What is missing for certain is named, the fastener first.
	want := "no warning label"
	held := rule.AnyOf == 0 || byWeight || rule.AnyOf&ByLock != 0 && a[1] != manway.No || rule.AnyOf&ByFastener != 0 && a[0] != manway.No
	if !held {
		want = "no lock or fastener holds it shut"
	} else if rule.Secondary && a[2] == manway.No {
		want = "no second guard under the lid"
	}
	if f.Reason != want {
		t.Errorf("%s, %v: %q, want %q", rule.Code, a, f.Reason, want)
	}
}
