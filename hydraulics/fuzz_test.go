package hydraulics_test

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
)

// finite ends the test where a result with a nil error holds NaN or an infinity.
func finite(t *testing.T, err error, values ...float64) {
	t.Helper()
	if err != nil {
		return
	}
	for i, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("value %d is %v with a nil error", i, v)
		}
	}
}

func FuzzPipes(f *testing.F) {
	f.Add(0.1, 30.0, 1e-5, 0.01, 3.0, 290.0)             // a hose
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0)                  // nothing
	f.Add(0.1, 0.0, 0.0, 1e-9, 1e-6, 273.15)             // no length, hardly a flow
	f.Add(math.NaN(), math.Inf(1), -1.0, 1e300, 2.0, 1.) // not numbers
	f.Add(0.6096, 16093.0, 0.03, 2.8, 300.0, 373.15)     // all at their ends
	f.Fuzz(func(t *testing.T, d, l, e, q, head, k float64) {
		w, err := hydraulics.WaterAt(manway.Temperature(k))
		finite(t, err, float64(w.Density), w.Viscosity, float64(w.Vapour))
		h := hydraulics.Hose{Diameter: manway.Length(d), Length: manway.Length(l), Roughness: manway.Length(e), Fittings: q}
		r, err := h.AtFlow(manway.Flow(q), w)
		finite(t, err, float64(r.Loss), float64(r.Velocity), r.Reynolds, r.Friction.Factor)
		r, err = h.AtHead(manway.Length(head), w)
		finite(t, err, float64(r.Loss), float64(r.Flow), r.Friction.Factor)
		h.C = k
		loss, err := h.HazenWilliams(manway.Flow(q))
		finite(t, err, float64(loss))
		fr, err := rough(e).Friction(q)
		finite(t, err, fr.Factor)
		p, err := hydraulics.Suction{Temperature: manway.Temperature(k), Altitude: manway.Length(l), Vacuum: manway.Pressure(q * 1e5), Lift: manway.Length(head), Hose: h, SpecificGravity: e}.Pull()
		finite(t, err, float64(p.Available), float64(p.Left), float64(p.Missing), float64(p.Hose.Flow))
		dr := hydraulics.Drain{Diameter: manway.Length(d), Slope: e, N: k}
		at, err := dr.AtFlow(manway.Flow(q))
		finite(t, err, float64(at.Depth), float64(at.Velocity), float64(at.Radius))
		at, err = dr.AtDepth(manway.Length(head))
		finite(t, err, float64(at.Flow), float64(at.Velocity))
		o, err := hydraulics.Outlet{Diameter: manway.Length(d), Open: e}.Head(manway.Flow(q))
		finite(t, err, float64(o.Head), float64(o.Critical), float64(o.Clear))
	})
}

func FuzzPumpOut(f *testing.F) {
	f.Add(1.2, 1.2, 0.3, 0.1, 0.7, 0.2, 0.5, uint8(2)) // as found
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(0)) // empty, not opened
	f.Add(1.2, 1.5, 0.75, 0.75, 1.5, 0.0, 1.5, uint8(7))
	f.Add(math.NaN(), math.Inf(1), -1.0, 1e300, 2.0, 1.0, math.NaN(), uint8(15))
	f.Fuzz(func(t *testing.T, outlet, level, sludge, scum, port, apart, keep float64, bits uint8) {
		c := twoCompartments(t, lyingTank(t))
		c.Outlet = manway.Length(outlet)
		read := func(v float64, bit uint8) manway.Reading {
			return manway.Reading{Taken: bits&bit != 0, Length: manway.Length(v)}
		}
		c.Compartments[0].Level, c.Compartments[0].Sludge, c.Compartments[0].Scum = read(level, 1), read(sludge, 2), read(scum, 2)
		c.Compartments[1].State = hydraulics.Opening(bits >> 4 & 3)
		c.Compartments[1].Level, c.Compartments[1].Sludge, c.Compartments[1].Scum = read(level, 8), manway.Reading{}, manway.Reading{}
		c.Dividers[0] = hydraulics.Divider{Port: read(port, 4), Judged: bits&8 != 0, Difference: manway.Length(apart)}
		c.Keeps = []hydraulics.Keep{{Name: "flotation", Judged: bits&64 != 0, Level: manway.Length(keep)}}
		p, err := c.PumpOut()
		finite(t, err, float64(p.Remove), float64(p.Stays), float64(p.Keep), float64(p.Apart))
		for _, out := range p.Compartments {
			finite(t, err, float64(out.Remove), float64(out.Stays), float64(out.To), float64(out.Now.Clear))
			if out.Remove < -1e-12 || out.To > out.From {
				t.Fatalf("%+v: pumping raised the level", out)
			}
		}
		m := hydraulics.Measured{Outlet: c.Outlet, DeviceBottom: read(port, 4), Compartments: c.Compartments, Rule: hydraulics.RuleEPA,
			Last: manway.Date{Year: 2020, Month: 1, Day: 31}, LastKnown: hydraulics.About, Visit: manway.Date{Year: 2024, Month: 2, Day: 29}}
		fc, err := m.Forecast()
		finite(t, err, float64(fc.Rate), fc.Growth)
	})
}

func FuzzRoute(f *testing.F) {
	f.Add(1.2, 0.05, 1e-6, 0.01, 0.7, 15.0, 3600.0)
	f.Add(1.2, 0.0, 1e-3, 0.0, 0.0, 300.0, 60.0) // closed, fast
	f.Add(0.03, 1.0, 0.02, 10.0, 0.0, 1.0, 61.0) // outlet at the floor, a flood
	f.Add(math.NaN(), -1.0, math.Inf(1), 1e300, 2.0, 0.0, 1e9)
	f.Fuzz(func(t *testing.T, outlet, open, base, surge, start, step, over float64) {
		r := dayRoute(t, lyingTank(t))
		r.OutletInvert, r.Outlet.Open, r.Base = manway.Length(outlet), open, manway.Flow(base)
		r.Start = manway.Read(manway.Length(start))
		r.InletInvert = manway.Reading{}
		r.Slots[0].Invert = manway.Length(outlet) / 2
		r.Surges = []hydraulics.Surge{{Over: manway.Minute, Volume: manway.Volume(surge)}}
		r.Step, r.Over = manway.Duration(step), manway.Duration(math.Min(over, 7200))
		done, err := r.Route()
		finite(t, err, float64(done.Peak), float64(done.In), float64(done.Out), float64(done.Stored), done.Imbalance)
		if err == nil && done.Imbalance > 1e-9 {
			t.Fatalf("off by %g", done.Imbalance)
		}
		for _, now := range done.Series {
			finite(t, err, float64(now.Levels[0]), float64(now.Levels[1]), float64(now.Out))
			if now.Levels[0] < 0 || now.Levels[1] < 0 || now.Out < 0 {
				t.Fatalf("%+v", now)
			}
		}
	})
}

func FuzzTables(f *testing.F) {
	f.Add(4, 3.785, 2.6, 30.0, 1.0)
	f.Add(0, 0.0, 0.0, 0.0, 0.0)
	f.Add(10, 1.9, math.NaN(), math.Inf(-1), -3.0)
	f.Fuzz(func(t *testing.T, n int, a, b, c, d float64) {
		i, err := hydraulics.Interval(n, manway.Volume(a))
		finite(t, err, float64(i))
		h, err := hydraulics.Household{People: n, PeopleKnown: hydraulics.Certainty(n & 3), Bedrooms: n, Months: n}.Interval(manway.Volume(a))
		finite(t, err, float64(h.Low.Time), float64(h.Likely.Time), float64(h.High.Time))
		span := hydraulics.Span{Known: true, Time: manway.Duration(b)}
		if date, err := span.After(manway.Date{Year: 2000 + n%100, Month: 2, Day: 28}); err == nil && date.Validate() != nil {
			t.Fatalf("%v is no date", date)
		}
		for _, rule := range hydraulics.Rules() {
			r, err := rule.Trigger(hydraulics.Solids{Outlet: manway.Length(a), DeviceBottom: manway.Read(manway.Length(b)), Level: manway.Read(manway.Length(c)), Sludge: manway.Read(manway.Length(d)), Scum: manway.Read(manway.Length(d))})
			for _, check := range r.List() {
				finite(t, err, check.Demand, check.Capacity)
			}
		}
		l, err := hydraulics.Truck{Capacity: manway.Volume(a), Aboard: manway.Volume(b), Tare: manway.Mass(c), Limit: manway.Mass(d)}.Loads(manway.Volume(c))
		finite(t, err, float64(l.Room), float64(l.LeftRoom), float64(l.Gross), l.WeightUse)
		ch := hydraulics.Chamber{Area: manway.Area(a), Off: manway.Length(b), On: manway.Length(c), Alarm: manway.Length(d), Top: manway.Length(d)}
		ds, err := ch.Dosing(manway.Flow(a), d)
		finite(t, err, float64(ds.Dose), float64(ds.ReserveTime), ds.RunsPerDay)
		rt, err := hydraulics.Retention{Liquid: manway.Volume(a), Solids: manway.Volume(b), Average: manway.Flow(c), LeakIn: manway.Flow(d)}.Times()
		finite(t, err, float64(rt.Now), float64(rt.NowWithLeak))
		cy, err := wetWell(manway.Volume(a)).CycleTime(manway.Flow(b), manway.Flow(c))
		finite(t, err, float64(cy))
		wt, err := hydraulics.WaterTest{Area: manway.Area(a), Liquid: manway.Volume(b), Change: manway.Length(c), Over: manway.Duration(d)}.Result()
		finite(t, err, float64(wt.PerDay), wt.ShareDay)
	})
}

func FuzzSeptage(f *testing.F) {
	f.Add(4047.0, 45.0, 0.0, 3.8, 3.0)
	f.Add(1e-300, 1e-300, -1.0, 1e300, math.Inf(1))
	f.Add(math.NaN(), 0.0, 5e-324, 0.0, 1.0)
	f.Fuzz(func(t *testing.T, area, nitrogen, spread, load, width float64) {
		r, err := hydraulics.SeptageField{Area: manway.Area(area), Nitrogen: manway.Mass(nitrogen), Spread: manway.Volume(spread)}.Rate()
		finite(t, err, float64(r.Most), float64(r.Depth), float64(r.Left))
		d, err := r.Drive(manway.Volume(load), manway.Length(width))
		finite(t, err, float64(d))
	})
}
