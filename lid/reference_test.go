package lid

import (
	"strconv"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

func rowsOf(t *testing.T, quantities ...string) reftable.Rows {
	return reftable.Load(t, "lid.csv").With("quantity", quantities...)
}

func yes(t *testing.T, row reftable.Row, key string) bool { return row.Input(t, key) == "yes" }

// TestEveryRowIsChecked holds the list of quantities below against the file: a
// row that no test reads proves nothing.
func TestEveryRowIsChecked(t *testing.T) {
	for _, row := range reftable.Load(t, "lid.csv") {
		found := false
		for q := range checks {
			found = found || q == row.Quantity
		}
		if !found {
			t.Errorf("%s: no test checks %q", row.ID, row.Quantity)
		}
	}
}

func TestReferences(t *testing.T) {
	for quantity, check := range checks {
		t.Run(quantity, func(t *testing.T) { rowsOf(t, quantity).Each(t, check) })
	}
}

type rowCheck = func(t *testing.T, row reftable.Row)

// checks says for each quantity of lid.csv how it is computed.
var checks = map[string]rowCheck{
	"hand limit origin": func(t *testing.T, row reftable.Row) { row.Check(t, inUnit(liftOf(t, row).AtOrigin.ByHand, row)) },
	"hand limit end":    func(t *testing.T, row reftable.Row) { row.Check(t, inUnit(liftOf(t, row).AtEnd.ByHand, row)) },
	"hand index origin": func(t *testing.T, row reftable.Row) { row.Check(t, liftOf(t, row).AtOrigin.IndexByHand) },
	"hand index end":    func(t *testing.T, row reftable.Row) { row.Check(t, liftOf(t, row).AtEnd.IndexByHand) },
	"limit origin":      func(t *testing.T, row reftable.Row) { row.Check(t, inUnit(liftOf(t, row).Limit, row)) },
	"index origin":      func(t *testing.T, row reftable.Row) { row.Check(t, liftOf(t, row).Index) },
	"task limit": func(t *testing.T, row reftable.Row) {
		row.Check(t, massOf(t, row, "free").In(manway.Pound)*frequency(row.Float(t, "frequency"), ShortSpell, false))
	},
	"task index": func(t *testing.T, row reftable.Row) {
		task := Task{massOf(t, row, "load"), massOf(t, row, "free"), row.Float(t, "frequency")}
		got, ok, err := CompositeIndex([]Task{task}, ShortSpell, false)
		if err != nil || !ok {
			t.Fatal(ok, err)
		}
		row.Check(t, got)
	},
	"composite index": compositeIndex,
	"average rate": func(t *testing.T, row reftable.Row) {
		got, err := AverageRate(row.Float(t, "rate"), manway.Duration(row.Float(t, "minutes"))*manway.Minute)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, got)
	},
	"frequency multiplier": func(t *testing.T, row reftable.Row) {
		var s Spell
		row.Read(t, "spell", &s)
		row.Check(t, frequency(row.Float(t, "frequency"), s, yes(t, row, "low")))
	},
	"grip multiplier": func(t *testing.T, row reftable.Row) {
		var g Grip
		row.Read(t, "grip", &g)
		row.Check(t, gripMultiplier(g, yes(t, row, "low")))
	},
	"spell": func(t *testing.T, row reftable.Row) {
		var work, rest manway.Duration
		row.Read(t, "work", &work)
		row.Read(t, "rest", &rest)
		got, err := SpellOf(work, rest)
		if err != nil {
			t.Fatal(err)
		}
		row.CheckText(t, got.String())
	},
	"horizontal multiplier": func(t *testing.T, row reftable.Row) {
		c, at := multiplierCell(t, row)
		row.Check(t, c.printedHorizontal(at, c.horizontal(at)))
	},
	"vertical multiplier": func(t *testing.T, row reftable.Row) {
		c, at := multiplierCell(t, row)
		row.Check(t, twoDecimals(c.vertical(at)))
	},
	"distance multiplier": func(t *testing.T, row reftable.Row) {
		c, at := multiplierCell(t, row)
		row.Check(t, c.printedDistance(at, c.distance(at)))
	},
	"asymmetry multiplier": func(t *testing.T, row reftable.Row) { row.Check(t, twoDecimals(asymmetry(row.Float(t, "at")))) },
	"load constant": func(t *testing.T, row reftable.Row) {
		var e Edition
		row.Read(t, "edition", &e)
		row.Check(t, inUnit(constants[e].load, row))
	},
	"one-person limit of a flat lid": func(t *testing.T, row reftable.Row) {
		width := lengthOf(t, row, "width")
		m, err := Lid{Shape: Disc, Diameter: width, Thickness: 3 * manway.Inch}.Move(MoveCase{})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, inUnit(m.OnePerson.Limit, row))
	},
	"team limit":     func(t *testing.T, row reftable.Row) { row.Check(t, teamLimit(t, row, TeamByShare)) },
	"doubling limit": func(t *testing.T, row reftable.Row) { row.Check(t, teamLimit(t, row, TeamByDoubling)) },
	"filter": func(t *testing.T, row reftable.Row) {
		var z Zone
		row.Read(t, "zone", &z)
		f := Filter{Zone: z, Far: yes(t, row, "far"), Women: yes(t, row, "women")}
		if _, ok := row.Lookup("turn"); ok {
			row.Read(t, "turn", &f.Turn)
		}
		if _, ok := row.Lookup("frequency"); ok {
			f.Frequency = row.Float(t, "frequency")
		}
		got, err := f.Limit()
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, inUnit(got, row))
	},
	"push start": func(t *testing.T, row reftable.Row) {
		start, _ := PushFilter(yes(t, row, "women"))
		row.Check(t, inUnit(start.Mass(), row))
	},
	"push keep": func(t *testing.T, row reftable.Row) {
		_, keep := PushFilter(yes(t, row, "women"))
		row.Check(t, inUnit(keep.Mass(), row))
	},
	"hand force low":  func(t *testing.T, row reftable.Row) { row.Check(t, handForce(t, row).Low.In(manway.PoundForce)) },
	"hand force high": func(t *testing.T, row reftable.Row) { row.Check(t, handForce(t, row).High.In(manway.PoundForce)) },
	"share of the weight": func(t *testing.T, row reftable.Row) {
		var way Way
		row.Read(t, "way", &way)
		k := movesOf(t, 200*manway.Pound, MoveCase{}).Methods[way]
		f := k.High
		if end, _ := row.Lookup("end"); end == "low" {
			f = k.Low
		}
		row.Check(t, f.In(manway.PoundForce)/200)
	},
	"advantage": func(t *testing.T, row reftable.Row) {
		row.Check(t, Bar{barLength(t, row, "load_arm"), barLength(t, row, "effort_arm")}.Advantage())
	},
	"bar force": func(t *testing.T, row reftable.Row) {
		bar := Bar{barLength(t, row, "load_arm"), barLength(t, row, "effort_arm")}
		row.Check(t, movesOf(t, massOf(t, row, "lid"), MoveCase{Bar: bar}).Methods[PryBar].High.In(manway.PoundForce))
	},
	"drag force": func(t *testing.T, row reftable.Row) { row.Check(t, dragForce(t, row).In(manway.PoundForce)) },
	"against the guideline": func(t *testing.T, row reftable.Row) {
		over := dragForce(t, row) > HandForceAt(PullTwoHands, lengthOf(t, row, "height")).Low
		row.CheckText(t, map[bool]string{true: "over", false: "under"}[over])
	},
	"friction": func(t *testing.T, row reftable.Row) {
		f, _ := Friction{}.filled()
		row.Check(t, f.High)
	},
	"rope tension": func(t *testing.T, row reftable.Row) {
		var p SidePull
		row.Read(t, "side", &p.Side)
		p.Span, p.Moved = lengthOf(t, row, "span"), lengthOf(t, row, "moved")
		got, err := p.Tension()
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, got.In(manway.PoundForce))
	},
	"volume":     func(t *testing.T, row reftable.Row) { row.Check(t, weighRow(t, row).Volume.In(manway.CubicFoot)) },
	"dry weight": func(t *testing.T, row reftable.Row) { row.Check(t, weighRow(t, row).Dry.In(manway.Pound)) },
	"frustum volume": func(t *testing.T, row reftable.Row) {
		ft := func(key string) manway.Length { return manway.Length(row.Float(t, key)) * manway.Foot }
		l := Lid{Shape: BevelledPlug, Diameter: ft("top"), BottomDiameter: ft("bottom"), Thickness: ft("h")}
		row.Check(t, manway.Volume(l.solid()).In(manway.CubicFoot)) // a trunk is thicker than any lid that Volume takes
	},
	"weight of a lid of 24 to 30 in, from": func(t *testing.T, row reftable.Row) {
		w, err := Lid{Shape: Disc, Diameter: lengthOf(t, row, "diameter"), Thickness: lengthOf(t, row, "thickness")}.Weigh()
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, w.Dry.In(manway.Pound))
	},
	"uniform load beta": func(t *testing.T, row reftable.Row) {
		across, _ := slabUniform(row.Float(t, "ratio"), 1, row.Float(t, "nu"))
		row.Check(t, 6*across)
	},
	"central load beta": func(t *testing.T, row reftable.Row) {
		row.Check(t, slabBeta(row.Float(t, "ratio"), 1, row.Float(t, "nu")))
	},
	"strength left": func(t *testing.T, row reftable.Row) { row.Check(t, bendRow(t, row).StrengthLeft) },
	"plain design moment": func(t *testing.T, row reftable.Row) {
		c := bendRow(t, row).Checks[1]
		row.Check(t, manway.MomentPerLength(c.Capacity).In(manway.KipFootPerFoot))
	},
	"insert factor":   func(t *testing.T, row reftable.Row) { row.Check(t, InsertFactor) },
	"hardware factor": func(t *testing.T, row reftable.Row) { row.Check(t, HardwareFactor) },
	"demand on each of two inserts": func(t *testing.T, row reftable.Row) {
		h := Handle{State: HandleSound, Waist: 0.5 * manway.Inch}
		row.Read(t, "load", &h.Load)
		r, err := concreteDisc.CheckHandle(h)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, manway.Force(r.Checks[0].Demand).In(manway.PoundForce)/row.Float(t, "legs"))
	},
	"breakout of one leg": func(t *testing.T, row reftable.Row) {
		l := Lid{Shape: Disc, Diameter: 60 * manway.Inch, Thickness: 12 * manway.Inch}
		row.Read(t, "strength", &l.Concrete.Strength)
		h := Handle{State: HandleSound, Waist: 0.5 * manway.Inch, Legs: 1, Embedment: lengthOf(t, row, "embedment"), Edge: lengthOf(t, row, "edge")}
		r, err := l.CheckHandle(h)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, r.Breakout.In(manway.PoundForce))
	},
	"first year low":  func(t *testing.T, row reftable.Row) { row.Check(t, micrometres(airRow(t, row, 1).Low)) },
	"first year high": func(t *testing.T, row reftable.Row) { row.Check(t, micrometres(airRow(t, row, 1).High)) },
	"time factor mean": func(t *testing.T, row reftable.Row) {
		row.Check(t, airRow(t, row, row.Float(t, "years")).Mean)
	},
	"time factor upper": func(t *testing.T, row reftable.Row) {
		row.Check(t, airRow(t, row, row.Float(t, "years")).Upper)
	},
	"hole cover load": func(t *testing.T, row reftable.Row) {
		var f manway.Force
		row.Read(t, "failure", &f)
		got, err := HoleCoverLoad(f)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, got.In(manway.PoundForce))
	},
	"opening over": func(t *testing.T, row reftable.Row) { row.Check(t, ruleRow(t, row).OpeningOver.In(manway.Inch)) },
	"opening from": func(t *testing.T, row reftable.Row) { row.Check(t, leastOpening(t, row).In(manway.Inch)) },
	"depth under":  func(t *testing.T, row reftable.Row) { row.Check(t, ruleRow(t, row).DepthUnder.In(manway.Inch)) },
	"weight":       func(t *testing.T, row reftable.Row) { row.Check(t, ruleRow(t, row).Weight.In(manway.Pound)) },
	"asks for a second guard": func(t *testing.T, row reftable.Row) {
		row.CheckText(t, answer(ruleRow(t, row).Secondary).String())
	},
	"asks for a lock or fastener": func(t *testing.T, row reftable.Row) {
		row.CheckText(t, answer(ruleRow(t, row).AnyOf == ByLock|ByFastener).String())
	},
}

// concreteDisc is a lid of 24 in and 3 in.
var concreteDisc = Lid{Shape: Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch}

func inUnit(m manway.Mass, row reftable.Row) float64 {
	if row.Unit == "kg" {
		return m.In(manway.Kilogram)
	}
	return m.In(manway.Pound)
}

func massOf(t *testing.T, row reftable.Row, key string) (m manway.Mass) {
	row.Read(t, key, &m)
	return m
}

func lengthOf(t *testing.T, row reftable.Row, key string) (x manway.Length) {
	row.Read(t, key, &x)
	return x
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
	l := Lift{Load: massOf(t, row, "load"), Frequency: row.Float(t, "frequency")}
	row.Read(t, "edition", &l.Edition)
	row.Read(t, "spell", &l.Spell)
	row.Read(t, "grip", &l.Grip)
	l.Origin = Reach{Horizontal: lengthOf(t, row, "origin_h"), Vertical: lengthOf(t, row, "origin_v")}
	l.Destination = Reach{Horizontal: lengthOf(t, row, "end_h"), Vertical: lengthOf(t, row, "end_v")}
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
	got, ok := rule(int(row.Float(t, "people")), massOf(t, row, "each"))
	if !ok {
		t.Fatal("no team limit")
	}
	return inUnit(got, row)
}

func handForce(t *testing.T, row reftable.Row) HandForce {
	var e Exertion
	row.Read(t, "exertion", &e)
	f := HandForceAt(e, lengthOf(t, row, "height"))
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
	return movesOf(t, massOf(t, row, "lid"), c).Methods[Drag].High
}

func weighRow(t *testing.T, row reftable.Row) Weight {
	var l Lid
	row.Read(t, "shape", &l.Shape)
	l.Diameter, l.Thickness = lengthOf(t, row, "diameter"), lengthOf(t, row, "thickness")
	if l.Shape == BevelledPlug {
		l.BottomDiameter = lengthOf(t, row, "bottom")
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
	l := Lid{Shape: Disc, Diameter: 24 * manway.Inch, Thickness: lengthOf(t, row, "thickness"), Loss: lengthOf(t, row, "loss")}
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
		if rule.applies(Guard{Opening: x, DepthKnown: true}) == Yes {
			return x
		}
	}
	t.Fatal("applies to none")
	return 0
}
