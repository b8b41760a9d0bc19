package hydraulics_test

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
)

// near wants two figures alike to a part in 1e9.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// Property (monotone): air is thinner higher up; warmer water is thinner, and
// boils away more.
func TestAirAndWater(t *testing.T) {
	last := manway.Pressure(math.Inf(1))
	for h := manway.Length(-400); h <= 11000; h += 100 {
		p := reftable.Must[manway.Pressure](t)(hydraulics.Suction{Altitude: h}.Atmosphere())
		if !(p < last) {
			t.Errorf("at %v: %v after %v", h, p, last)
		}
		last = p
	}
	cold := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(273.15))
	for c := manway.Temperature(1); c <= 100; c++ {
		w := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(273.15 + c))
		if !(w.Vapour > cold.Vapour && w.Viscosity < cold.Viscosity) || c > 4 && !(w.Density < cold.Density) {
			t.Errorf("at %v C: %+v after %+v", c, w, cold)
		}
		cold = w
	}
}

// Property (additive): lengths of hose one after the other lose what each does,
// pressures stand as high together as apart, and a tank is pumped down in two
// stretches of time as in one.
func TestInSeries(t *testing.T) {
	w := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(sixty))
	q := 150 * manway.GallonPerMinute
	one, two, three := hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 40, C: 140}, hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 60, Fittings: 2, C: 140}, hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100, Fittings: 2, C: 140}
	loss := func(h hydraulics.Hose) float64 {
		return float64(reftable.Must[hydraulics.HoseFlow](t)(h.AtFlow(q, w)).Loss)
	}
	near(t, "Darcy and Weisbach", loss(one)+loss(two), loss(three))
	hazen := func(h hydraulics.Hose) float64 { return float64(reftable.Must[manway.Length](t)(h.HazenWilliams(q))) }
	near(t, "Hazen and Williams", hazen(one)+hazen(two), hazen(three))
	near(t, "head", float64(w.Head(20000)+w.Head(30000)), float64(w.Head(50000)))
	down := func(from, to manway.Pressure) float64 {
		return float64(reftable.Must[manway.Duration](t)(hydraulics.Truck{Capacity: 10}.VacuumTime(0.1, from, to)))
	}
	near(t, "vacuum", down(1e5, 6e4)+down(6e4, 2e4), down(1e5, 2e4))
	emptied := func(from, to manway.Length) float64 {
		return float64(reftable.Must[manway.Duration](t)(hydraulics.Orifice{Area: 0.001, Coefficient: 0.61}.DrainTime(2, from, to)))
	}
	near(t, "draining", emptied(1.5, 0.7)+emptied(0.7, 0.1), emptied(1.5, 0.1))
}

// Property (scaling): by Froude's law all lengths doubled let 2^2.5 times the flow
// through an opening or over a weir, and take 2^0.5 times as long to drain.
func TestFroude(t *testing.T) {
	flow := func(q manway.Flow, err error) float64 { return float64(reftable.Must[manway.Flow](t)(q, err)) }
	times := math.Pow(2, 2.5)
	near(t, "orifice", flow(hydraulics.Orifice{Area: 0.04, Coefficient: 0.61}.Flow(0.6)), times*flow(hydraulics.Orifice{Area: 0.01, Coefficient: 0.61}.Flow(0.3)))
	near(t, "weir", flow(hydraulics.Weir{Crest: 2}.Flow(0.4)), times*flow(hydraulics.Weir{Crest: 1}.Flow(0.2)))
	near(t, "notch", flow(hydraulics.Weir{Notch: 1}.Flow(0.4)), times*flow(hydraulics.Weir{Notch: 1}.Flow(0.2)))
	seconds := func(d manway.Duration, err error) float64 { return float64(reftable.Must[manway.Duration](t)(d, err)) }
	near(t, "draining", seconds(hydraulics.Orifice{Area: 0.004, Coefficient: 0.61}.DrainTime(8, 2, 0.5)), math.Sqrt2*seconds(hydraulics.Orifice{Area: 0.001, Coefficient: 0.61}.DrainTime(2, 1, 0.25)))
	near(t, "outlet", float64(reftable.Must[hydraulics.OutletHead](t)(hydraulics.Outlet{Diameter: 0.2, Open: 0.3}.Head(0.001*manway.Flow(times))).Head),
		2*float64(reftable.Must[hydraulics.OutletHead](t)(hydraulics.Outlet{Diameter: 0.1, Open: 0.3}.Head(0.001)).Head))
}

// Property (two ways): a tank drains in the time that the flow through its hole,
// summed over the levels, takes.
func TestDrainTimeBySteps(t *testing.T) {
	const n = 20000
	sum := 0.0
	for i := range n {
		h := 0.25 + 0.75*(float64(i)+0.5)/n
		sum += 2 * 0.75 / n / float64(reftable.Must[manway.Flow](t)(hydraulics.Orifice{Area: 0.001, Coefficient: 0.61}.Flow(manway.Length(h))))
	}
	got := float64(reftable.Must[manway.Duration](t)(hydraulics.Orifice{Area: 0.001, Coefficient: 0.61}.DrainTime(2, 1, 0.25)))
	if !(math.Abs(sum/got-1) <= 1e-7) {
		t.Errorf("%v s, by steps %v s", got, sum)
	}
}

// Property (monotone): a steeper or a larger drain never carries fewer units.
func TestFixtureLoadRises(t *testing.T) {
	most := func(nominal manway.Length, slope float64) float64 {
		return reftable.Must[manway.Check](t)(hydraulics.FixtureLoad(nominal, slope, 1, false)).Capacity
	}
	sizes := []manway.Length{2, 3, 4, 6, 8, 10, 12, 15}
	for i, d := range sizes {
		last := 0.0
		for _, slope := range []float64{1. / 192, 1. / 96, 1. / 48, 1. / 24} {
			units := most(d*manway.Inch, slope)
			if units < last || i > 0 && units < most(sizes[i-1]*manway.Inch, slope) {
				t.Errorf("%v in at %v: %v units", d, slope, units)
			}
			last = units
		}
	}
}

// Property (inverse): a pump that has the least working volume for a time starts
// once in that time at half its rate, and less often at any other inflow.
func TestWetWellCycle(t *testing.T) {
	pump, cycle := 30*manway.GallonPerMinute, 10*manway.Minute
	v := working(t, pump, cycle)
	near(t, "at half the rate", float64(reftable.Must[manway.Duration](t)(wetWell(v).CycleTime(pump, pump/2))), float64(cycle))
	for share := manway.Flow(0.05); share < 1; share += 0.05 {
		if c := reftable.Must[manway.Duration](t)(wetWell(v).CycleTime(pump, share*pump)); c < cycle*(1-1e-9) {
			t.Errorf("at %v of the rate it starts every %v", share, c)
		}
	}
}

// Property (balance): what a pump moves is what the level fell and what flowed in;
// as many runs again in as long again are the same flow.
func TestChamberBalance(t *testing.T) {
	c := hydraulics.Chamber{Area: 17.5 * manway.SquareFoot, Off: 10 * manway.Inch, On: 16 * manway.Inch, Alarm: 20 * manway.Inch, Top: 40 * manway.Inch, Drain: manway.Gallon}
	still := reftable.Must[hydraulics.Drawdown](t)(c.Drawdown(5*manway.Inch, 3*manway.Minute, 0))
	fed := reftable.Must[hydraulics.Drawdown](t)(c.Drawdown(5*manway.Inch, 3*manway.Minute, 2*manway.GallonPerMinute))
	near(t, "rate", float64(fed.Rate-still.Rate), float64(2*manway.GallonPerMinute))
	a := reftable.Must[hydraulics.Usage](t)(c.Usage(40, 7*manway.Day, 300*manway.GallonPerDay))
	b := reftable.Must[hydraulics.Usage](t)(c.Usage(80, 14*manway.Day, 300*manway.GallonPerDay))
	near(t, "flow", float64(b.Flow), float64(a.Flow))
	d := reftable.Must[hydraulics.Dosing](t)(c.Dosing(a.Flow, 0))
	near(t, "runs a day at that flow", d.RunsPerDay, a.PerDay)
}

// Property (monotone): the table never gives more people or a smaller tank longer; a
// household's range holds its likely interval, and
// more people shorten it; a later interval is never an earlier date.
func TestIntervalsOrdered(t *testing.T) {
	for people := 2; people <= 8; people++ {
		few, many := reftable.Must[manway.Duration](t)(hydraulics.Interval(people-1, 1200*manway.Gallon)), reftable.Must[manway.Duration](t)(hydraulics.Interval(people, 1200*manway.Gallon))
		if larger := reftable.Must[manway.Duration](t)(hydraulics.Interval(people, 1500*manway.Gallon)); !(many < few && many < larger) {
			t.Errorf("%d people: %v, one fewer %v, in a larger tank %v", people, many, few, larger)
		}
		h := hydraulics.Household{People: people, PeopleKnown: hydraulics.About}
		r := reftable.Must[hydraulics.HouseholdInterval](t)(h.Interval(1200 * manway.Gallon))
		h.People--
		if fewer := reftable.Must[hydraulics.HouseholdInterval](t)(h.Interval(1200 * manway.Gallon)); !(r.Low.Time <= r.Likely.Time && r.Likely.Time <= r.High.Time && r.Likely.Time < fewer.Likely.Time) {
			t.Errorf("%d people: %+v, one fewer %+v", people, r, fewer)
		}
	}
	last := manway.Date{Year: 2024, Month: 1, Day: 31}
	next := last
	for days := manway.Duration(0); days < 900; days++ {
		d := reftable.Must[manway.Date](t)(hydraulics.Span{Known: true, Time: days * manway.Day}.After(last))
		if d.Before(next) {
			t.Errorf("%v after: %v before %v", days*manway.Day, d, next)
		}
		next = d
	}
}

// Property (scaling): twice the people leave twice the sludge, and a standard's
// tank is the sum of its parts and never smaller for more people.
func TestPeopleAndSludge(t *testing.T) {
	for _, m := range hydraulics.Accumulations() {
		years := manway.Duration((m.From + m.To) / 2)
		low, high, err := m.Volume(3, years*manway.Year)
		low2, high2, err2 := m.Volume(6, years*manway.Year)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		near(t, m.Name+", low", float64(low2), 2*float64(low))
		near(t, m.Name+", high", float64(high2), 2*float64(high))
	}
	last := [3]manway.Volume{}
	for people := 1; people < 200; people++ {
		s := hydraulics.Served{People: people, PerPerson: 150 * manway.LitrePerDay, Years: 1, Climate: hydraulics.Warm}
		for i, size := range [3]hydraulics.Sizing{
			reftable.Must[hydraulics.Sizing](t)(s.BrazilSizing(manway.LitrePerDay)), reftable.Must[hydraulics.Sizing](t)(s.PeruSizing()), reftable.Must[hydraulics.Sizing](t)(s.WHOSizing(false)),
		} {
			near(t, "sum of the parts", float64(size.Liquid+size.Solids+size.Reserve), float64(size.Total))
			if size.Solids < last[i] {
				t.Errorf("%d people: solids of %v, one fewer %v", people, size.Solids, last[i])
			}
			last[i] = size.Solids
		}
	}
}

// Property (additive): the layers of a compartment make up what stands in it, at
// any level.
func TestLayersAdd(t *testing.T) {
	c := twoCompartments(t, lyingTank(t)).Compartments[0]
	for _, level := range []manway.Length{20, 30, 48, 55} {
		s := reftable.Must[hydraulics.Split](t)(c.Layers(level * manway.Inch))
		near(t, "layers", float64(s.Scum+s.Clear+s.Sludge), float64(reftable.Must[manway.Volume](t)(c.Shape.Volume(level*manway.Inch))))
	}
}

// Property (scaling): over twice the area the same levels are twice the gallons; a
// tank twice as large with twice the flow keeps them as long; twice the fall in
// twice the time is the same loss a day.
func TestLevelsScale(t *testing.T) {
	f := hydraulics.Found{Outlet: 1.2, Level: manway.Read(1.3), Area: 3, Runback: hydraulics.Runback{Seen: manway.Yes, Rise: 0.1, Over: 600}}
	one := reftable.Must[hydraulics.Finding](t)(f.Arrival())
	f.Area *= 2
	two := reftable.Must[hydraulics.Finding](t)(f.Arrival())
	near(t, "over the outlet", float64(two.Over), 2*float64(one.Over))
	near(t, "run back", float64(two.RanBack), 2*float64(one.RanBack))
	r := hydraulics.Retention{Liquid: 4, Solids: 1, Average: 1e-5, Peak: 3e-5, LeakIn: 1e-6}
	small := reftable.Must[hydraulics.RetentionTimes](t)(r.Times())
	large := reftable.Must[hydraulics.RetentionTimes](t)(hydraulics.Retention{Liquid: 8, Solids: 2, Average: 2e-5, Peak: 6e-5, LeakIn: 2e-6}.Times())
	near(t, "retention", float64(large.Now), float64(small.Now))
	near(t, "with the leak", float64(large.NowWithLeak), float64(small.NowWithLeak))
	w := hydraulics.WaterTest{Area: 3, Liquid: 4, Change: 0.01, Over: manway.Day}
	day := reftable.Must[hydraulics.WaterTestResult](t)(w.Result())
	w.Change, w.Over = 2*w.Change, 2*w.Over
	days := reftable.Must[hydraulics.WaterTestResult](t)(w.Result())
	near(t, "loss a day", float64(days.PerDay), float64(day.PerDay))
	holding := func(k manway.Volume) float64 {
		c := reftable.Must[manway.Check](t)(hydraulics.Split{Known: true, Total: 2 * k}.HoldingTank(3 * k))
		return c.Demand / c.Capacity
	}
	near(t, "holding tank", holding(2), holding(1))
}

// Property (monotone): more sludge never takes back what a rule says, and never
// puts the next pump-out off.
func TestMoreSludge(t *testing.T) {
	for _, rule := range hydraulics.Rules() {
		pump := false
		s := hydraulics.Solids{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(28 * manway.Inch), DeviceTop: manway.Read(54 * manway.Inch), Level: manway.Read(48 * manway.Inch), Scum: manway.Read(3 * manway.Inch)}
		for depth := manway.Length(0); depth <= 45; depth++ {
			s.Sludge = manway.Read(depth * manway.Inch)
			now := reftable.Must[hydraulics.TriggerResult](t)(rule.Trigger(s)).Pump
			if pump && !now {
				t.Errorf("%s: %v in of sludge need no pumping and less does", rule.Name, depth)
			}
			pump = now
		}
	}
	m := hydraulics.Measured{Outlet: 48 * manway.Inch, Compartments: twoCompartments(t, boxTank(t, 1)).Compartments[:1], LastKnown: hydraulics.Counted,
		Last: manway.Date{Year: 2022, Month: 1, Day: 1}, Visit: manway.Date{Year: 2024, Month: 1, Day: 1}, Rule: hydraulics.RuleEPA}
	var last manway.Date
	for depth := manway.Length(9); depth > 1; depth-- {
		m.Compartments[0].Sludge = manway.Read(depth * manway.Inch)
		f := reftable.Must[hydraulics.Forecast](t)(m.Forecast())
		next := reftable.Must[hydraulics.Forecast](t)(m.NextPumpOut(hydraulics.Household{}, 1000*manway.Gallon, m.Visit))
		if f.Likely != next.Likely || f.Likely.Before(last) {
			t.Errorf("%v in: %v (%v), with an inch more %v", depth, f.Likely, next.Likely, last)
		}
		last = f.Likely
	}
}

// Property (bounded): the loads hold the volume and one load fewer does not; no
// load is more than the tank or the limit; at twice the rate pumping takes half as
// long.
func TestLoadsHold(t *testing.T) {
	truck := hydraulics.Truck{Capacity: 2500 * manway.Gallon, Aboard: 700 * manway.Gallon, Tare: 15000 * manway.Pound, Limit: 33000 * manway.Pound}
	full, byWeight, err := truck.Full()
	if err != nil || !byWeight || !(full < truck.Capacity) {
		t.Fatalf("full at %v, by weight %v, %v", full, byWeight, err)
	}
	for volume := 100 * manway.Gallon; volume < 12000*manway.Gallon; volume += 137 * manway.Gallon {
		l := reftable.Must[hydraulics.Loads](t)(truck.Loads(volume))
		holds := func(loads int) manway.Volume { return l.Room + full*manway.Volume(loads-1) }
		if !(holds(l.Loads) >= volume*(1-1e-9) && (l.Loads == 1 || holds(l.Loads-1) < volume)) || l.Gross > truck.Limit*(1+1e-9) {
			t.Errorf("%v: %d loads of %v, room %v, gross %v", volume, l.Loads, full, l.Room, l.Gross)
		}
	}
	p := reftable.Must[hydraulics.Plan](t)(twoCompartments(t, boxTank(t, 1)).PumpOut())
	slow, fast := reftable.Must[manway.Duration](t)(p.AtRate(100*manway.GallonPerMinute)), reftable.Must[manway.Duration](t)(p.AtRate(200*manway.GallonPerMinute))
	near(t, "time", float64(slow), 2*float64(fast))
}
