package lid

import (
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
		row.Check(t, reftable.In[manway.Mass](t, row, "free").In(manway.Pound)*frequency(row.Float(t, "frequency"), ShortSpell, false))
	},
	"task index": func(t *testing.T, row reftable.Row) {
		task := Task{reftable.In[manway.Mass](t, row, "load"), reftable.In[manway.Mass](t, row, "free"), row.Float(t, "frequency")}
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
		width := reftable.In[manway.Length](t, row, "width")
		m, err := Lid{Shape: Disc, Diameter: width, Thickness: 3 * manway.Inch}.Move(MoveCase{})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, inUnit(m.OnePerson.Limit, row))
	},
	"team limit": func(t *testing.T, row reftable.Row) {
		row.Check(t, teamLimit(t, row, func(n int, each manway.Mass) (manway.Mass, bool) { return Crew{n, each}.Together() }))
		row.Check(t, teamLimit(t, row, TeamByShare))
	},
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
		row.Check(t, movesOf(t, reftable.In[manway.Mass](t, row, "lid"), MoveCase{Bar: bar}).Methods[PryBar].High.In(manway.PoundForce))
	},
	"drag force": func(t *testing.T, row reftable.Row) { row.Check(t, dragForce(t, row).In(manway.PoundForce)) },
	"against the guideline": func(t *testing.T, row reftable.Row) {
		over := dragForce(t, row) > HandForceAt(PullTwoHands, reftable.In[manway.Length](t, row, "height")).Low
		row.CheckText(t, map[bool]string{true: "over", false: "under"}[over])
	},
	"friction": func(t *testing.T, row reftable.Row) {
		f, _ := Friction{}.filled()
		row.Check(t, f.High)
	},
	"rope tension": func(t *testing.T, row reftable.Row) {
		var p SidePull
		row.Read(t, "side", &p.Side)
		p.Span, p.Moved = reftable.In[manway.Length](t, row, "span"), reftable.In[manway.Length](t, row, "moved")
		got, err := p.Tension()
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, got.In(manway.PoundForce))
	},
	"volume":     func(t *testing.T, row reftable.Row) { row.Check(t, weighRow(t, row).Volume.In(manway.CubicFoot)) },
	"dry weight": func(t *testing.T, row reftable.Row) { row.Check(t, weighRow(t, row).Dry.In(manway.Pound)) },
	"frustum volume": func(t *testing.T, row reftable.Row) {
		third := func(key string) manway.Length { return manway.Length(row.Float(t, key)/3) * manway.Foot } // a trunk is thicker than any lid
		l := Lid{Shape: BevelledPlug, Diameter: third("top"), BottomDiameter: third("bottom"), Thickness: third("h")}
		row.Check(t, 27*must(l.Volume()).In(manway.CubicFoot))
	},
	"weight of a lid of 24 to 30 in, from": func(t *testing.T, row reftable.Row) {
		w, err := Lid{Shape: Disc, Diameter: reftable.In[manway.Length](t, row, "diameter"), Thickness: reftable.In[manway.Length](t, row, "thickness")}.Weigh()
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
	"insert factor":   func(t *testing.T, row reftable.Row) { row.Check(t, insertFactor) },
	"hardware factor": func(t *testing.T, row reftable.Row) { row.Check(t, hardwareFactor) },
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
		h := Handle{State: HandleSound, Waist: 0.5 * manway.Inch, Legs: 1, Embedment: reftable.In[manway.Length](t, row, "embedment"), Edge: reftable.In[manway.Length](t, row, "edge")}
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
	"weight": func(t *testing.T, row reftable.Row) {
		rule := ruleRow(t, row)
		row.Check(t, rule.Weight.In(manway.Pound))
		for share, met := range map[float64]bool{1: true, 0.999: false} { // what CheckGuard makes of it
			l := concreteDisc
			l.Measured = times(rule.Weight, share)
			g := Guard{Opening: 20 * manway.Inch, Fastened: manway.No, Locked: manway.No, Secondary: manway.Yes, Label: manway.Yes}
			if f := must(l.CheckGuard(g, []GuardRule{rule})).Findings[0]; f.WeightOnly != met {
				t.Errorf("%v: %+v", l.Measured, f)
			}
		}
	},
	"loss of area beyond which a bar is brittle": func(t *testing.T, row reftable.Row) {
		lo, hi := 0.0, 1.0 // share of the diameter left
		for hi-lo > 1e-9 {
			if m := (lo + hi) / 2; must(WornBar(manway.Inch, manway.Length(m)*manway.Inch)).Brittle {
				lo = m
			} else {
				hi = m
			}
		}
		row.Check(t, 100*(1-lo*lo))
	},
	"asks for a second guard": func(t *testing.T, row reftable.Row) {
		row.CheckText(t, answer(ruleRow(t, row).Secondary).String())
	},
	"asks for a lock or fastener": func(t *testing.T, row reftable.Row) {
		row.CheckText(t, answer(ruleRow(t, row).AnyOf == ByLock|ByFastener).String())
	},
}
