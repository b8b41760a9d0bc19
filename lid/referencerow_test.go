package lid

import (
	"strconv"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// concreteDisc is a lid of 24 in and 3 in.
var concreteDisc = Lid{Shape: Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch}

func inUnit(m manway.Mass, row reftable.Row) float64 {
	if row.Unit == "kg" {
		return m.In(manway.Kilogram)
	}
	return m.In(manway.Pound)
}

func barLength(t *testing.T, row reftable.Row, key string) manway.Length {
	text := row.Input(t, key)
	text = strings.TrimSpace(strings.TrimSuffix(text, "in"))
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return manway.Length(x) * manway.Inch
}

func liftOf(t *testing.T, row reftable.Row) LiftLimit {
	t.Helper()
	l := Lift{Load: reftable.In[manway.Mass](t, row, "load"), Frequency: row.Float(t, "frequency")}
	row.Read(t, "edition", &l.Edition)
	row.Read(t, "spell", &l.Spell)
	row.Read(t, "grip", &l.Grip)
	l.Origin = Hands{Horizontal: reftable.In[manway.Length](t, row, "origin_h"), Vertical: reftable.In[manway.Length](t, row, "origin_v")}
	l.Destination = Hands{Horizontal: reftable.In[manway.Length](t, row, "end_h"), Vertical: reftable.In[manway.Length](t, row, "end_v")}
	r, err := l.Limit()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func compositeIndex(t *testing.T, row reftable.Row) {
	split := func(key string) []string { return strings.Split(row.Input(t, key), "/") }
	num := func(s string) float64 { v, _ := strconv.ParseFloat(strings.TrimSuffix(s, " lb"), 64); return v }
	loads, free, rates := split("loads"), split("free"), split("frequencies")
	var tasks []Task
	for i := range loads {
		// Backwards, so that the order is the function's own work.
		tasks = append([]Task{{manway.Mass(num(loads[i])) * manway.Pound, manway.Mass(num(free[i])) * manway.Pound, num(rates[i])}}, tasks...)
	}
	got, ok, err := CompositeIndex(tasks, ShortSpell, false)
	if err != nil || !ok {
		t.Fatal(ok, err)
	}
	row.Check(t, got)
}

func multiplierCell(t *testing.T, row reftable.Row) (*liftConstants, float64) {
	var e Edition
	row.Read(t, "edition", &e)
	return &constants[e], row.Float(t, "at")
}

func teamLimit(t *testing.T, row reftable.Row, rule func(int, manway.Mass) (manway.Mass, bool)) float64 {
	got, ok := rule(int(row.Float(t, "people")), reftable.In[manway.Mass](t, row, "each"))
	if !ok {
		t.Fatal("no team limit")
	}
	return inUnit(got, row)
}

func handForce(t *testing.T, row reftable.Row) HandForce {
	var e Exertion
	row.Read(t, "exertion", &e)
	f := HandForceAt(e, reftable.In[manway.Length](t, row, "height"))
	if !f.Known {
		t.Fatal("not known at this height")
	}
	return f
}

// movesOf moves a lid of a measured weight.
func movesOf(t *testing.T, weight manway.Mass, c MoveCase) Moves {
	t.Helper()
	l := concreteDisc
	l.Measured = weight
	m, err := l.Move(c)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func dragForce(t *testing.T, row reftable.Row) manway.Force {
	mu := row.Float(t, "friction")
	c := MoveCase{Seat: Seat{Friction: Friction{mu, mu}}}
	return movesOf(t, reftable.In[manway.Mass](t, row, "lid"), c).Methods[Drag].High
}

func weighRow(t *testing.T, row reftable.Row) Weight {
	var l Lid
	row.Read(t, "shape", &l.Shape)
	l.Diameter, l.Thickness = reftable.In[manway.Length](t, row, "diameter"), reftable.In[manway.Length](t, row, "thickness")
	if l.Shape == BevelledPlug {
		l.BottomDiameter = reftable.In[manway.Length](t, row, "bottom")
	}
	if _, ok := row.Lookup("density"); ok {
		row.Read(t, "density", &l.Concrete.Density)
	}
	w, err := l.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func bendRow(t *testing.T, row reftable.Row) Bending {
	l := Lid{Shape: Disc, Diameter: 24 * manway.Inch, Thickness: reftable.In[manway.Length](t, row, "thickness"), Loss: reftable.In[manway.Length](t, row, "loss")}
	if _, ok := row.Lookup("strength"); ok {
		row.Read(t, "strength", &l.Concrete.Strength)
	}
	b, err := l.Bend(BendCase{})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func airRow(t *testing.T, row reftable.Row, years float64) Attack {
	class, metal := C3, Steel
	if _, ok := row.Lookup("class"); ok {
		row.Read(t, "class", &class)
	}
	row.Read(t, "metal", &metal)
	a, err := AirLoss(metal, class, manway.Duration(years)*manway.Year)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func micrometres(x manway.Length) float64 { return x.In(manway.Millimetre) * 1000 }

func ruleRow(t *testing.T, row reftable.Row) GuardRule {
	r, ok := GuardRuleOf(row.Input(t, "rule"))
	if !ok {
		t.Fatal("no such rule")
	}
	if r.Source.Source.ID != row.Source {
		t.Errorf("rule cites %s, the row %s", r.Source.Source.ID, row.Source)
	}
	return r
}

// leastOpening is the least opening, to a thousandth of an inch, that a rule is about.
func leastOpening(t *testing.T, row reftable.Row) manway.Length {
	rule := ruleRow(t, row)
	for i := 1; i < 100000; i++ {
		x := manway.Length(i) * manway.Inch / 1000
		if rule.applies(Guard{Opening: x, DepthKnown: true}) == manway.Yes {
			return x
		}
	}
	t.Fatal("applies to none")
	return 0
}
