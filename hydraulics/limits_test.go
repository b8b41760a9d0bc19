package hydraulics_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/limit"
	"manway.example/manway/internal/reftable"
	"manway.example/manway/tank"
)

// refused is the error of a calculation.
func refused[A any](_ A, err error) error { return err }

const (
	gallon   = manway.Gallon
	perDay   = manway.GallonPerDay
	perMin   = manway.GallonPerMinute
	mostRoom = 30 * manway.Foot // of levels over the floor
)

// Water, pipes and the air over them.
func TestLimitsOfPipes(t *testing.T) {
	water := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(sixty))
	limit.Check(t, sixty, func(x manway.Temperature) error { return refused(hydraulics.WaterAt(x)) },
		limit.Between("Temperature", manway.Temperature(273.15), 373.15))
	limit.Check(t, 0, func(x manway.Length) error { return refused(hydraulics.Suction{Altitude: x}.Atmosphere()) },
		limit.Between("Altitude", -1500*manway.Foot, 11000*manway.Metre))
	type moody struct{ Reynolds, Roughness float64 }
	limit.Check(t, moody{1e5, 1e-4}, func(m moody) error { return refused(rough(m.Roughness).Friction(m.Reynolds)) },
		limit.Above("Reynolds", 0.), limit.AtMost("Reynolds", 1e9), limit.Between("Roughness", 0, 0.05))

	type hosed struct {
		hydraulics.Hose
		Flow  manway.Flow
		Head  manway.Length
		Water hydraulics.Water
	}
	run := hosed{hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Roughness: 1e-5, Fittings: 1.5, C: 140}, 200 * perMin, 10 * manway.Foot, water}
	atFlow := func(h hosed) error { return refused(h.Hose.AtFlow(h.Flow, h.Water)) }
	atHead := func(h hosed) error { return refused(h.Hose.AtHead(h.Head, h.Water)) }
	byC := func(h hosed) error { return refused(h.Hose.HazenWilliams(h.Flow)) }
	limit.Check(t, run, atFlow,
		limit.Between("Diameter", 0.25*manway.Inch, 24*manway.Inch), limit.Between("Length", 0, 52800*manway.Foot),
		limit.Between("Roughness", 0, 0.05*3*manway.Inch), limit.Between("Fittings", 0., 1000), limit.Between("C", 60., 160),
		limit.Between("Flow", 1e-9*manway.CubicMetrePerSecond, 100*manway.CubicFootPerSecond),
		limit.Between("Water.Density", 500*manway.KilogramPerCubicMetre, 2000*manway.KilogramPerCubicMetre),
		limit.Between("Water.Viscosity", 1e-8, 1e-2), limit.Between("Water.Vapour", 0, 200*manway.Kilopascal))
	limit.Check(t, run, atHead, limit.Between("Head", 1e-4*manway.Inch, 1000*manway.Foot))
	limit.Refuses(t, run, atHead, "Length", func(h *hosed) { h.Length, h.Fittings = 0, 0 })
	limit.Check(t, run, byC, limit.Between("Flow", 0, 100*manway.CubicFootPerSecond), limit.Between("C", 60., 160))
	limit.Refuses(t, run, byC, "C", func(h *hosed) { h.C = 0 })

	suction := hydraulics.Suction{Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 9 * manway.Foot, Hose: run.Hose, SpecificGravity: 1.02, UsualRate: 0.01}
	pull := func(s hydraulics.Suction) error { return refused(s.Pull()) }
	limit.Check(t, suction, pull,
		limit.Between("Vacuum", 1*manway.InchMercury, 30*manway.InchMercury), limit.Between("Lift", 0, 60*manway.Foot),
		limit.Between("SpecificGravity", 0.9, 1.3), limit.Between("UsualRate", 0, 10000*perMin))
	limit.Refuses(t, suction, pull, "Hose.Length", func(s *hydraulics.Suction) { s.Hose.Length, s.Hose.Fittings = 0, 0 })
	limit.Refuses(t, suction, pull, "Temperature", func(s *hydraulics.Suction) { s.Temperature = 373.1 })

	type pumped struct {
		hydraulics.Truck
		Displacement manway.Flow
		From, To     manway.Pressure
	}
	limit.Check(t, pumped{hydraulics.Truck{Capacity: 10}, 0.1, 1e5, 5e4}, func(p pumped) error { return refused(p.VacuumTime(p.Displacement, p.From, p.To)) },
		limit.Between("Capacity", 10*gallon, 15000*gallon),
		limit.Between("Displacement", 1e-6*manway.CubicMetrePerSecond, 100*manway.CubicMetrePerSecond),
		limit.Between("To", 1*manway.Pascal, 200*manway.Kilopascal), limit.Between("From", 50*manway.Kilopascal, 200*manway.Kilopascal))
}

// Drains, outlets and openings.
func TestLimitsOfDrains(t *testing.T) {
	type drained struct {
		hydraulics.Drain
		Depth manway.Length
		Flow  manway.Flow
	}
	d := drained{hydraulics.Drain{Diameter: 4 * manway.Inch, Slope: 0.02, N: 0.013}, 2 * manway.Inch, 0.001}
	limit.Check(t, d, func(d drained) error { return refused(d.AtDepth(d.Depth)) },
		limit.Between("Diameter", 0.5*manway.Inch, 12*manway.Foot), limit.Between("Slope", 0.0001, 0.5), limit.Between("N", 0.007, 0.04),
		limit.Between("Depth", 0, 4*manway.Inch))
	limit.Check(t, d, func(d drained) error { return refused(d.AtFlow(d.Flow)) }, limit.Between("Flow", 0, 10000*manway.CubicMetrePerSecond))
	type fixtures struct {
		Nominal manway.Length
		Slope   float64
		Units   int
	}
	load := func(f fixtures) error { return refused(hydraulics.FixtureLoad(f.Nominal, f.Slope, f.Units, true)) }
	limit.Check(t, fixtures{4 * manway.Inch, 0.02, 100}, load, limit.Between("Slope", 0, 0.5), limit.Between("Units", 0, 100000))
	limit.Refuses(t, fixtures{4 * manway.Inch, 0.02, 100}, load, "Nominal", func(f *fixtures) { f.Nominal = 3.9 * manway.Inch })
	type outlet struct {
		hydraulics.Outlet
		Flow manway.Flow
	}
	limit.Check(t, outlet{hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 0.3}, 0.001}, func(o outlet) error { return refused(o.Head(o.Flow)) },
		limit.Between("Diameter", 1*manway.Inch, 24*manway.Inch), limit.Between("Open", 0., 1), limit.Between("Flow", 0, 10*manway.CubicFootPerSecond))
	type opening struct {
		hydraulics.Orifice
		Plan           manway.Area
		Head, From, To manway.Length
	}
	o := opening{hydraulics.Orifice{Area: 0.01, Coefficient: 0.61}, 2, 0.1, 1, 0.5}
	limit.Check(t, o, func(o opening) error { return refused(o.Flow(o.Head)) },
		limit.Between("Area", 0, 100*manway.SquareFoot), limit.Between("Head", 0, 100*manway.Foot), limit.Between("Coefficient", 0.5, 1))
	limit.Check(t, o, func(o opening) error { return refused(o.DrainTime(o.Plan, o.From, o.To)) },
		limit.Between("Plan", 0.01*manway.SquareFoot, 100000*manway.SquareFoot), limit.Between("Area", 1e-6*manway.SquareFoot, manway.Area(2)),
		limit.Between("From", 0, 100*manway.Foot), limit.Between("To", 0, manway.Length(1)), limit.Between("Coefficient", 0.5, 1))
	type weir struct {
		hydraulics.Weir
		Head manway.Length
	}
	over := func(w weir) error { return refused(w.Flow(w.Head)) }
	limit.Check(t, weir{hydraulics.Weir{Crest: 1}, 0.1}, over,
		limit.Between("Crest", 1*manway.Inch, 100*manway.Foot), limit.Between("Head", 0, manway.Length(0.5)))
	limit.Refuses(t, weir{hydraulics.Weir{Crest: 1}, 0.1}, over, "Notch", func(w *weir) { w.Notch = 1 })
	limit.Check(t, weir{hydraulics.Weir{Notch: 1}, 0.1}, over,
		limit.Between("Notch", 20*manway.Degree, 100*manway.Degree), limit.Between("Head", 0, 2*manway.Foot))
}

// What is in a tank, when it is pumped, and what for.
func TestLimitsOfSolids(t *testing.T) {
	made := boxTank(t, 1)
	c := twoCompartments(t, made)
	layers := func(x hydraulics.Compartment) error { return refused(x.Layers(48 * manway.Inch)) }
	limit.Check(t, c.Compartments[0], layers, limit.AtMost("State", hydraulics.Opened), limit.Between("Scum", 0, 35*manway.Inch))
	limit.Check(t, hydraulics.Compartment{Shape: c.Compartments[0].Shape, State: hydraulics.Opened, Scum: manway.Read(0)}, layers,
		limit.Between("Scum", 0, 48*manway.Inch), limit.Between("Sludge", 0, 48*manway.Inch))
	limit.Check(t, hydraulics.Compartment{Shape: c.Compartments[0].Shape, State: hydraulics.Opened, Level: manway.Read(1)}, layers,
		limit.Between("Level", 0, 25*manway.Foot))
	limit.Refuses(t, c.Compartments[0], layers, "Shape", func(x *hydraulics.Compartment) { x.Shape = nil })
	limit.Refuses(t, c.Compartments[0], layers, "State", func(x *hydraulics.Compartment) { x.State = hydraulics.NotOpened })

	solids := hydraulics.Solids{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(30 * manway.Inch), DeviceTop: manway.Read(52 * manway.Inch), Level: manway.Read(48 * manway.Inch),
		Sludge: manway.Read(8 * manway.Inch), Scum: manway.Read(4 * manway.Inch), Share: hydraulics.Fraction{Known: true, Value: 0.2}}
	limit.Check(t, solids, func(s hydraulics.Solids) error { return refused(hydraulics.RuleNebraska.Trigger(s)) },
		limit.Between("Outlet", 6*manway.Inch, mostRoom), limit.Between("DeviceBottom", 0, 48*manway.Inch),
		limit.Between("DeviceTop", 48*manway.Inch, 40*manway.Foot), limit.Between("Level", 0, 40*manway.Foot),
		limit.Between("Scum", 0, 40*manway.Inch), limit.Between("Share.Value", 0., 1))
	limit.Check(t, hydraulics.Solids{Outlet: 48 * manway.Inch, Sludge: manway.Read(1)}, func(s hydraulics.Solids) error { return refused(hydraulics.RuleEPA.Trigger(s)) },
		limit.Between("Sludge", 0, 48*manway.Inch))

	plan := func(x hydraulics.Case) error { return refused(x.PumpOut()) }
	c.Dividers[0] = hydraulics.Divider{Judged: true, Port: manway.Read(1)}
	c.Keeps = []hydraulics.Keep{{Judged: true}}
	limit.Check(t, c, plan,
		limit.AtLeast("Outlet", 6*manway.Inch), limit.Between("Dividers[0].Difference", 0, mostRoom), limit.Between("Dividers[0].Port", 0, mostRoom),
		limit.Between("Keeps[0].Level", 0, mostRoom), limit.AtLeast("Compartments", 1), limit.AtMost("Compartments", 4), limit.Between("Dividers", 1, 1),
		limit.AtMost("Outlet", mostRoom))
	limit.Refuses(t, c, plan, "Compartments[0].Shape", func(x *hydraulics.Case) { x.Outlet = 61 * manway.Inch })
	limit.Check(t, 100*perMin, func(q manway.Flow) error {
		return refused(reftable.Must[hydraulics.Plan](t)(c.PumpOut()).AtRate(q))
	},
		limit.Between("Usual", 1*perMin, 10000*perMin))
	limit.Check(t, hydraulics.Household{}, func(h hydraulics.Household) error {
		return refused(reftable.Must[hydraulics.Plan](t)(c.PumpOut()).Skipped(h))
	},
		limit.Between("Bedrooms", 0, 50))
	type holding struct{ Total, Capacity manway.Volume }
	limit.Check(t, holding{2, 3}, func(h holding) error {
		return refused(hydraulics.Split{Known: true, Total: h.Total}.HoldingTank(h.Capacity))
	},
		limit.Between("Total", 0, manway.Volume(6)), limit.Between("Capacity", 10*gallon, 1e6*gallon))
}

// Households, rates and dates.
func TestLimitsOfIntervals(t *testing.T) {
	type house struct {
		People int
		Tank   manway.Volume
	}
	rows := house{4, 1000 * gallon}
	limit.Check(t, rows, func(h house) error { return refused(hydraulics.Interval(h.People, h.Tank)) },
		limit.Between("People", 1, 10), limit.Between("Tank", 500*gallon, 2500*gallon))
	limit.Check(t, house{10, 1000 * gallon}, func(h house) error { return refused(hydraulics.Interval(h.People, h.Tank)) }, limit.AtLeast("Tank", 750*gallon))
	h := hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted, Bedrooms: 3, Months: 12}
	interval := func(h hydraulics.Household) error { return refused(h.Interval(1000 * gallon)) }
	limit.Check(t, h, interval, limit.Between("People", 1, 100), limit.Between("Bedrooms", 0, 50), limit.Between("Months", 0, 12),
		limit.AtMost("PeopleKnown", hydraulics.Counted), limit.AtMost("Grinder", manway.Yes))
	limit.Refuses(t, h, interval, "PeopleKnown", func(h *hydraulics.Household) { h.PeopleKnown = hydraulics.Unknown })
	type date struct {
		manway.Date
		hydraulics.Span
	}
	after := func(d date) error { return refused(d.Span.After(d.Date)) }
	from := date{manway.Date{Year: 2024, Month: 3, Day: 1}, hydraulics.Span{Known: true, Time: manway.Year}}
	limit.Check(t, from, after, limit.AtMost("Date.Year", 9000), limit.Between("Time", 0, 200*manway.Year))
	limit.Refuses(t, from, after, "Known", func(d *date) { d.Known = false })
	type grown struct {
		People int
		Time   manway.Duration
	}
	years := hydraulics.Accumulation{Rate: 80, Power: 1, From: 1, To: 10}
	limit.Check(t, grown{4, 3 * manway.Year}, func(g grown) error { _, _, err := years.Volume(g.People, g.Time); return err },
		limit.Between("People", 1, 1000), limit.Between("Time", (1-1e-9)*manway.Year, 10*(1+1e-9)*manway.Year))
	model := func(a hydraulics.Accumulation) error { _, _, err := a.Volume(4, 3*manway.Year); return err }
	limit.Check(t, years, model, limit.Between("Fixed", 0.0, 10000), limit.Between("Rate", 0.0, 10000), limit.Between("RateHigh", 0.0, 10000),
		limit.Between("Power", 0.0, 3), limit.Between("From", 0.0, 100), limit.Between("To", 0.0, 100))
	limit.Check(t, grown{4, 3 * manway.Year}, func(g grown) error { return refused(hydraulics.CompareAccumulation(g.People, g.Time)) },
		limit.Between("People", 1, 1000), limit.Between("Time", 1*manway.Day, 50*manway.Year))

	served := hydraulics.Served{People: 5, PerPerson: 180 * manway.LitrePerDay, Years: 1}
	limit.Check(t, served, func(s hydraulics.Served) error { return refused(s.PeruSizing()) },
		limit.Between("People", 1, 10000), limit.Between("PerPerson", 1*manway.LitrePerDay, 1000*manway.LitrePerDay), limit.AtLeast("Years", 1),
		limit.AtMost("Climate", hydraulics.Warm))
	limit.Check(t, served, func(s hydraulics.Served) error { return refused(s.WHOSizing(false)) }, limit.AtLeast("Years", 1))
	type brazil struct {
		Served      hydraulics.Served
		FreshSludge manway.Flow
	}
	limit.Check(t, brazil{served, manway.LitrePerDay}, func(b brazil) error { return refused(b.Served.BrazilSizing(b.FreshSludge)) },
		limit.Between("FreshSludge", 0, 5*manway.LitrePerDay), limit.AtMost("Served.Years", 5))

	day := func(y int) manway.Date { return manway.Date{Year: y, Month: 1, Day: 1} }
	m := hydraulics.Measured{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(30 * manway.Inch), Compartments: twoCompartments(t, boxTank(t, 1)).Compartments,
		Last: day(2020), LastKnown: hydraulics.Counted, Visit: day(2024), Rule: hydraulics.RuleEPA}
	forecast := func(m hydraulics.Measured) error { return refused(m.Forecast()) }
	limit.Check(t, m, forecast, limit.AtLeast("Outlet", 6*manway.Inch), limit.AtMost("Outlet", mostRoom), limit.Between("DeviceBottom", 0, 48*manway.Inch),
		limit.Between("Compartments", 1, 4), limit.AtMost("LastKnown", hydraulics.Counted), limit.AtMost("Compartments[0].Scum", 34*manway.Inch))
	limit.Check(t, m, func(m hydraulics.Measured) error {
		return refused(m.NextPumpOut(h, 1000*gallon, day(2024)))
	}, limit.AtLeast("Outlet", 6*manway.Inch))
	limit.Refuses(t, m, forecast, "Visit", func(m *hydraulics.Measured) { m.Visit.Month = 13 })
	limit.Refuses(t, m, forecast, "Last", func(m *hydraulics.Measured) { m.Last = day(2025) })
	limit.Refuses(t, m, forecast, "Rule.Name", func(m *hydraulics.Measured) { m.Rule = hydraulics.Rule{} })
}

// Levels: on arrival, through a day, by a gauge, in a test of the water.
func TestLimitsOfLevels(t *testing.T) {
	found := hydraulics.Found{Outlet: 1.2, Inlet: manway.Read(1.3), Level: manway.Read(1.3), Area: 3,
		Runback: hydraulics.Runback{Seen: manway.Yes, Rise: 0.1, Over: 600}, SincePumped: hydraulics.Span{Known: true, Time: 1e8}}
	arrival := func(f hydraulics.Found) error { return refused(f.Arrival()) }
	limit.Check(t, found, arrival,
		limit.Between("Outlet", 6*manway.Inch, mostRoom), limit.Between("Inlet", 0, 40*manway.Foot), limit.Between("Level", 0, 60*manway.Foot),
		limit.Between("Area", 0, 10000*manway.SquareFoot), limit.AtMost("Runback.Seen", manway.Yes), limit.Between("Runback.Rise", 0, 10*manway.Foot),
		limit.Between("Runback.Over", 1*manway.Second, 7*manway.Day), limit.Between("SincePumped.Time", 0, 200*manway.Year),
		limit.AtMost("Devices.Inlet", hydraulics.NoneFitted))
	r := dayRoute(t, boxTank(t, 1))
	r.Over, r.Step, r.Spill, r.Start = 2*manway.Hour, manway.Minute, manway.Read(59*manway.Inch), manway.Read(48*manway.Inch)
	route := func(r hydraulics.Route) error { return refused(r.Route()) }
	limit.Check(t, r, route,
		limit.Between("OutletInvert", 1*manway.Inch, 59.9*manway.Inch), limit.Between("InletInvert", 0, 60*manway.Inch),
		limit.Between("Spill", 48*manway.Inch, 60*manway.Inch), limit.Between("Start", 0, 60*manway.Inch),
		limit.Between("Slots[0].Area", 1*manway.SquareInch, 50*manway.SquareFoot), limit.Between("Slots[0].Invert", 0, 48*manway.Inch),
		limit.Between("Base", 0, 1*manway.CubicFootPerSecond), limit.AtMost("Surges", 1000),
		limit.Between("Surges[0].At", 0, 31*manway.Day), limit.Between("Surges[0].Over", 1*manway.Second, 31*manway.Day),
		limit.Between("Surges[0].Volume", 0, 10000*gallon), limit.Between("Step", 1*manway.Second, 5*manway.Minute),
		limit.AtLeast("Compartments", 1), limit.AtMost("Compartments", 4), limit.Between("Slots", 1, 1))
	r.Step = 5 * manway.Minute
	limit.Check(t, r, route, limit.Between("Over", 1*manway.Minute, 31*manway.Day))
	limit.Refuses(t, r, route, "Compartments[0]", func(r *hydraulics.Route) { r.Compartments = []*tank.Compartment{nil, r.Compartments[1]} })

	c := twoCompartments(t, boxTank(t, 1)).Compartments[0]
	g := hydraulics.Gauge{Compartment: c, From: 48 * manway.Inch, To: 6 * manway.Inch, Before: 300 * gallon, After: 800 * gallon, Inflow: gallon}
	limit.Check(t, g, func(g hydraulics.Gauge) error { return refused(g.Read()) },
		limit.Between("From", 1*manway.Inch, 40*manway.Foot), limit.Between("To", 0, 47*manway.Inch), limit.Between("Before", 0, 15000*gallon), limit.Between("After", 300*gallon, 15000*gallon),
		limit.Between("Inflow", 0, 500*gallon))
	computed := reftable.Must[hydraulics.GaugeReading](t)(g.Read()).Computed
	limit.Check(t, g, func(g hydraulics.Gauge) error { return refused(g.Recalibrated()) },
		limit.Between("After", 301*gallon+computed/2, 301*gallon+2*computed))
	e := hydraulics.Emptying{Suction: hydraulics.Suction{Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 4 * manway.Foot, UsualRate: 0.01,
		Hose: hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot}}, Compartment: c, From: 48 * manway.Inch, To: 6 * manway.Inch}
	limit.Check(t, e, func(e hydraulics.Emptying) error { return refused(e.Time()) },
		limit.Between("To", 0, 48*manway.Inch), limit.Between("Inflow", 0, 1000*perMin))
	limit.Check(t, hydraulics.WaterTest{Area: 3, Liquid: 4, Wetted: 10, Change: 0.01, Over: manway.Day, Design: 300 * perDay},
		func(w hydraulics.WaterTest) error { return refused(w.Result()) },
		limit.Between("Area", 0.5*manway.SquareFoot, 10000*manway.SquareFoot), limit.Between("Liquid", 10*gallon, 1e6*gallon),
		limit.Between("Wetted", 0, 100000*manway.SquareFoot), limit.Between("Change", 0, 20*manway.Foot),
		limit.Between("Over", 1*manway.Minute, 30*manway.Day), limit.Between("Design", 0, 1e6*perDay))
	limit.Check(t, hydraulics.Retention{Liquid: 4, Solids: 1, Average: 300 * perDay, Peak: 900 * perDay, LeakIn: perDay},
		func(r hydraulics.Retention) error { return refused(r.Times()) },
		limit.Between("Liquid", 10*gallon, 1e6*gallon), limit.Between("Solids", 0, manway.Volume(4)), limit.Between("Average", 0.1*perDay, 1e6*perDay),
		limit.Between("Peak", 300*perDay, 1e8*perDay), limit.Between("LeakIn", 0, 1e6*perDay))
}

// Trucks and pump chambers.
func TestLimitsOfTrucksAndChambers(t *testing.T) {
	type loaded struct {
		Truck  hydraulics.Truck
		Volume manway.Volume
		Stops  []manway.Volume
	}
	l := loaded{hydraulics.Truck{Capacity: 2500 * gallon, Aboard: 300 * gallon, Tare: 15000 * manway.Pound, Limit: 40000 * manway.Pound, Density: 64 * manway.PoundPerCubicFoot}, 1, []manway.Volume{1}}
	loads := func(l loaded) error { return refused(l.Truck.Loads(l.Volume)) }
	limit.Check(t, l, loads,
		limit.Between("Truck.Capacity", 10*gallon, 15000*gallon), limit.Between("Truck.Aboard", 0, 2500*gallon),
		limit.Between("Truck.Tare", 500*manway.Pound, 100000*manway.Pound), limit.Between("Truck.Limit", 15001*manway.Pound, 200000*manway.Pound),
		limit.Between("Truck.Density", 60*manway.PoundPerCubicFoot, 80*manway.PoundPerCubicFoot), limit.Between("Volume", 0, 1e6*gallon))
	limit.Refuses(t, l, loads, "Truck.Aboard", func(l *loaded) { l.Truck.Limit = 16000 * manway.Pound })
	limit.Check(t, l, func(l loaded) error { return refused(l.Truck.Day(l.Stops)) }, limit.Between("Stops[0]", 0, 1e6*gallon), limit.Between("Stops", 1, 200))
	limit.Check(t, l.Truck, func(x hydraulics.Truck) error { _, _, err := x.Full(); return err }, limit.Between("Capacity", 10*gallon, 15000*gallon))

	type pumped struct {
		hydraulics.Chamber
		Design, Inflow manway.Flow
		ReserveWanted  float64
		Fall           manway.Length
		Over           manway.Duration
		Runs           int
	}
	p := pumped{hydraulics.Chamber{Area: 17.5 * manway.SquareFoot, Off: 10 * manway.Inch, On: 16 * manway.Inch, Alarm: 20 * manway.Inch, Top: 40 * manway.Inch, Drain: gallon},
		300 * perDay, 0, 0.5, 5 * manway.Inch, 2 * manway.Hour, 100}
	dosing := func(p pumped) error { return refused(p.Dosing(p.Design, p.ReserveWanted)) }
	usage := func(p pumped) error { return refused(p.Usage(p.Runs, p.Over, p.Design)) }
	limit.Check(t, p, dosing,
		limit.Between("Area", 0.5*manway.SquareFoot, 2000*manway.SquareFoot), limit.Between("Off", 0, mostRoom),
		limit.Between("On", 10.1*manway.Inch, mostRoom), limit.Between("Alarm", 16*manway.Inch, mostRoom),
		limit.Between("Top", 20*manway.Inch, mostRoom),
		limit.Between("Design", 1*perDay, 100000*perDay), limit.Between("ReserveWanted", 0., 5))
	large := p
	large.Area, large.Off = 2000*manway.SquareFoot, 0
	limit.Check(t, large, dosing, limit.Between("Drain", 0, 10000*gallon))
	limit.Refuses(t, p, dosing, "Drain", func(p *pumped) { p.Drain = 66 * gallon })
	limit.Refuses(t, p, usage, "Drain", func(p *pumped) { p.Drain = 66 * gallon })
	limit.Refuses(t, p, dosing, "Shape", func(p *pumped) { p.Shape = new(tank.Compartment) })
	limit.Check(t, p, func(p pumped) error { return refused(p.Drawdown(p.Fall, p.Over, p.Inflow)) },
		limit.Between("Fall", 0, 16*manway.Inch), limit.Between("Over", 1*manway.Second, 1*manway.Day), limit.Between("Inflow", 0, 1000*perMin))
	limit.Check(t, p, usage, limit.Between("Runs", 0, 1_000_000_000), limit.Between("Over", 1*manway.Hour, 50*manway.Year), limit.Between("Design", 1*perDay, 100000*perDay))
	type well struct {
		hydraulics.Chamber
		Pump, Inflow manway.Flow
		Cycle        manway.Duration
	}
	w := well{wetWell(gallon * 75), 30 * perMin, 10 * perMin, 10 * manway.Minute}
	limit.Check(t, w, func(w well) error { return refused(w.Starts(w.Pump, w.Cycle)) },
		limit.Between("Pump", 0.1*perMin, 10000*perMin), limit.Between("Cycle", 1*manway.Minute, 1*manway.Day))
	limit.Check(t, w, func(w well) error { return refused(w.CycleTime(w.Pump, w.Inflow)) },
		limit.Between("Inflow", 0.01*perDay, 30*perMin*(1-1e-9)), limit.AtMost("Pump", 10000*perMin))
	w.Inflow = 0.05 * perMin
	limit.Check(t, w, func(w well) error { return refused(w.CycleTime(w.Pump, w.Inflow)) }, limit.AtLeast("Pump", 0.1*perMin))
}

func TestLimitsOfPumpRules(t *testing.T) {
	limit.Check(t, hydraulics.RuleEPA, hydraulics.Rule.Validate, limit.Between("SludgeToOutlet", 0, 10*manway.Foot), limit.Between("ScumToOutlet", 0, 10*manway.Foot),
		limit.Between("ScumToTop", 0, 10*manway.Foot), limit.Between("Share", 0.0, 1))
	limit.Refuses(t, hydraulics.RuleEPA, hydraulics.Rule.Validate, "Name", func(r *hydraulics.Rule) { r.Name = "" })
	limit.Check(t, hydraulics.Plan{Remove: 1}, func(p hydraulics.Plan) error { return refused(p.AtRate(0.01)) }, limit.Between("Remove", 0, 1e6*manway.Gallon))
}
