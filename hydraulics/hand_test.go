package hydraulics_test

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/limit"
	"manway.example/manway/internal/reftable"
	"manway.example/manway/tank"
)

// figures compares figures with those worked out beside them.
func figures(t *testing.T, rows ...figure) {
	t.Helper()
	for _, r := range rows {
		if !(math.Abs(r.got-r.want) <= 1e-9*max(math.Abs(r.want), 1e-3)) {
			t.Errorf("%s: %.12g, want %.12g", r.name, r.got, r.want)
		}
	}
}

type figure struct {
	name      string
	got, want float64
}

// A pump chamber of 20 ft2 by hand: 12.4675 gal an inch (20 x 144/231). Off at
// 10 in, on at 20 in, alarm at 26 in, top at 46 in, 24.675 gal run back: the dose
// is 124.675 gal, 100 gal net; 249.35 gal above the alarm. At 500 gal a day that
// is 5 runs and 0.4987 of a day; 0.5 of a day asked for is 250 gal: too little.
func TestChamberByHand(t *testing.T) {
	gal, perInch := manway.Gallon, 20*144.0/231
	c := hydraulics.Chamber{Area: 20 * manway.SquareFoot, Off: 10 * manway.Inch, On: 20 * manway.Inch, Alarm: 26 * manway.Inch, Top: 46 * manway.Inch}
	c.Drain = manway.Volume(10*perInch-100) * gal
	d := reftable.Must[hydraulics.Dosing](t)(c.Dosing(500*manway.GallonPerDay, 0.5))
	figures(t, figure{"dose", d.Dose.In(gal), 10 * perInch}, figure{"net", d.NetDose.In(gal), 100}, figure{"an inch", d.PerInch.In(gal), perInch},
		figure{"reserve", d.Reserve.In(gal), 20 * perInch}, figure{"days", d.ReserveTime.In(manway.Day), 20 * perInch / 500}, figure{"runs", d.RunsPerDay, 5},
		figure{"asked", manway.Volume(d.DailyCheck.Demand).In(gal), 250}, figure{"there", manway.Volume(d.DailyCheck.Capacity).In(gal), 20 * perInch})
	if d.DailyCheck.Status != manway.Fail {
		t.Errorf("249 of 250 gal: %v", d.DailyCheck.Status)
	}
	// The level falls 4 in in 2 minutes while 3 gal/min come in: 4 x 12.4675/2 + 3.
	down := reftable.Must[hydraulics.Drawdown](t)(c.Drawdown(4*manway.Inch, 2*manway.Minute, 3*manway.GallonPerMinute))
	figures(t, figure{"pumped", down.Pumped.In(gal), 4*perInch + 6}, figure{"rate", down.Rate.In(manway.GallonPerMinute), 2*perInch + 3})
	// 40 runs of 100 gal in 10 days: 400 gal a day, 4 runs, 0.8 of 500.
	u := reftable.Must[hydraulics.Usage](t)(c.Usage(40, 10*manway.Day, 500*manway.GallonPerDay))
	use, _ := u.Check.Use()
	figures(t, figure{"flow", u.Flow.In(manway.GallonPerDay), 400}, figure{"a day", u.PerDay, 4}, figure{"use", use, 0.8})
	// 30 gal, 20 gal/min out, 5 in: 30/5 + 30/15 = 8 min.
	cycle := reftable.Must[manway.Duration](t)(wetWell(30*gal).CycleTime(20*manway.GallonPerMinute, 5*manway.GallonPerMinute))
	figures(t, figure{"cycle", cycle.In(manway.Minute), 8})
}

// A truck weighed by hand: 15,000 lb empty, 1,000 gal of 63.648 lb/ft3 are 1000
// x 231/1728 x 63.648 = 8508.5 lb. Two loads of its 1,000 gal weigh no more
// than one.
func TestTruckWeighs(t *testing.T) {
	full := 1000.0 * 231 / 1728 * 1.02 * 62.4
	truck := hydraulics.Truck{Capacity: 1000 * manway.Gallon, Aboard: 200 * manway.Gallon, Tare: 15000 * manway.Pound, Limit: 30000 * manway.Pound}
	for _, c := range []struct {
		gallons, gross, left float64
	}{{500, 15000 + 0.7*full, 300}, {800, 15000 + full, 0}, {1500, 15000 + full, 300}, {0, 15000 + 0.2*full, 800}} {
		l := reftable.Must[hydraulics.Loads](t)(truck.Loads(manway.Volume(c.gallons) * manway.Gallon))
		figures(t, figure{"gross", l.Gross.In(manway.Pound), c.gross}, figure{"use", l.WeightUse, c.gross / 30000}, figure{"room left", l.LeftRoom.In(manway.Gallon), c.left})
	}
	truck.Aboard = truck.Capacity // no room: whole loads only
	if l := reftable.Must[hydraulics.Loads](t)(truck.Loads(1500 * manway.Gallon)); l.Loads != 2 || l.Trips != 2 {
		t.Errorf("a full truck makes %d loads and %d trips of 1,500 gal, want 2 and 2", l.Loads, l.Trips)
	}
	day := reftable.Must[hydraulics.Day](t)(hydraulics.Truck{Capacity: 1000 * manway.Gallon, Tare: 15000 * manway.Pound}.Day([]manway.Volume{500 * manway.Gallon, 1500 * manway.Gallon}))
	figures(t, figure{"gross at the first", day.Stops[0].Gross.In(manway.Pound), 15000 + full/2}, figure{"at the second", day.Stops[1].Gross.In(manway.Pound), 15000 + full},
		figure{"left", day.Left.In(manway.Gallon), 1000})
}

// The table of the code allows nothing where it has a dash.
func TestFixtureDashes(t *testing.T) {
	for _, size := range []float64{1.25, 1.5, 2, 2.5, 3, 4, 5, 6} {
		slopes := []float64{1. / 192}
		if size < 3 {
			slopes = append(slopes, 1./96)
		}
		for _, slope := range append(slopes, 1./400) {
			c := reftable.Must[manway.Check](t)(hydraulics.FixtureLoad(manway.Length(size)*manway.Inch, slope, 1, false))
			if c.Status != manway.NotPermitted || c.Capacity != 0 {
				t.Errorf("%g in at %g: %v, %g units", size, slope, c.Status, c.Capacity)
			}
		}
	}
	for _, size := range []float64{1.25, 2, 2.5, 3} {
		c := reftable.Must[manway.Check](t)(hydraulics.FixtureLoad(manway.Length(size)*manway.Inch, 0.5, 1, true))
		if (c.Status == manway.NotPermitted) != (size < 3) {
			t.Errorf("a water closet on %g in: %v", size, c.Status)
		}
	}
}

// A gauge agrees within a tenth, to 1e-9, and no farther.
func TestGaugeAgrees(t *testing.T) {
	c := twoCompartments(t, boxTank(t, 1)).Compartments[0]
	computed := reftable.Must[manway.Volume](t)(c.Shape.Volume(24*manway.Inch)) - reftable.Must[manway.Volume](t)(c.Shape.Volume(12*manway.Inch))
	for ratio, agrees := range map[float64]bool{0.899: false, 0.9: true, 0.905: true, 1: true, 1.095: true, 1.1: true, 1.101: false} {
		g := hydraulics.Gauge{Compartment: c, From: 24 * manway.Inch, To: 12 * manway.Inch, Before: 100 * manway.Gallon, Inflow: 20 * manway.Gallon}
		g.After = g.Before + g.Inflow + computed*manway.Volume(ratio)
		r := reftable.Must[hydraulics.GaugeReading](t)(g.Read())
		figures(t, figure{"ratio", r.Ratio, ratio}, figure{"computed", float64(r.Computed), float64(computed)})
		if r.Agrees != agrees {
			t.Errorf("a ratio of %g agrees: %v", ratio, r.Agrees)
		}
	}
}

// Six inches of sludge came in 731 days and twelve are asked for: as many more. A
// reading an inch off, of sludge and scum, gives 12/8 and 12/5 of it, and a
// pump-out known to half a year 548.375 or 913.625 days. The low end is after 0.5
// x 548.375 = 274.19 days, 9.008 months of 30.4375, the likely one after 731, 24.016
// months, the high one after 1.4 x 913.625 = 1279.1 days, 42.02 months: whole
// months count.
func TestForecastByHand(t *testing.T) {
	c := twoCompartments(t, boxTank(t, 1))
	c.Outlet = 24 * manway.Inch
	m := hydraulics.Measured{Outlet: 24 * manway.Inch, Compartments: c.Compartments[:1], LastKnown: hydraulics.About,
		Last: manway.Date{Year: 2022, Month: 1, Day: 1}, Visit: manway.Date{Year: 2024, Month: 1, Day: 2},
		Rule: hydraulics.Rule{Name: "half", Share: 0.5, Source: manway.Citation{Source: manway.Practice}}}
	m.Compartments[0].Sludge, m.Compartments[0].Scum = manway.Read(6*manway.Inch), manway.Read(0)
	f := reftable.Must[hydraulics.Forecast](t)(m.Forecast())
	for name, d := range map[string]struct {
		got  manway.Date
		want string
	}{"likely": {f.Likely, "2026-01-02"}, "low": {f.Low, "2024-10-02"}, "high": {f.High, "2027-07-02"}, "likely from empty": {f.Pumped.Likely, "2028-01-02"}} {
		if d.got.String() != d.want {
			t.Errorf("%s is %v, want %s", name, d.got, d.want)
		}
	}
	figures(t, figure{"growth", f.Growth, 2})
}

// A household of one month a year waits twelve times as long as one that is at
// home all year.
func TestMonthsStretch(t *testing.T) {
	h := hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted, Grinder: manway.No, Months: 12}
	whole := reftable.Must[hydraulics.HouseholdInterval](t)(h.Interval(1000 * manway.Gallon))
	for _, months := range []int{1, 3, 6} {
		h.Months = months
		r := reftable.Must[hydraulics.HouseholdInterval](t)(h.Interval(1000 * manway.Gallon))
		figures(t, figure{"stretch", float64(r.Likely.Time / whole.Likely.Time), 12 / float64(months)})
	}
}

// The flow through an outlet is at rest where it was found: a tank that is full
// to its outlet stays so, and what comes in goes out by a surge of one flow.
func TestRoutedVolumeIsCounted(t *testing.T) {
	made := reftable.Must[tank.Tank](t)(tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot}}))
	r := hydraulics.Route{Compartments: []*tank.Compartment{&made.Compartments()[0]}, OutletInvert: 48 * manway.Inch,
		Outlet: hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 1}}
	still := reftable.Must[hydraulics.Routed](t)(r.Route())
	if !(math.Abs((still.Peak - 48*manway.Inch).In(manway.Inch)) <= 1e-6) {
		t.Errorf("nothing comes in and the level is %v", still.Peak)
	}
}

// A rule asks for what it names and no more, and layers that fill the depth to
// the last hair are taken.
func TestRuleAsksForItsOwn(t *testing.T) {
	source := manway.Citation{Source: manway.Practice}
	s := hydraulics.Solids{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(20 * manway.Inch), Sludge: manway.Read(30 * manway.Inch), Scum: manway.Read(18 * manway.Inch)}
	for name, rule := range map[string]hydraulics.Rule{
		"sludge": {Name: "a", SludgeToOutlet: manway.Inch, Source: source}, "scum": {Name: "b", ScumToOutlet: manway.Inch, Source: source}, "share": {Name: "c", Share: 0.5, Source: source},
	} {
		r, err := rule.Trigger(s)
		if err != nil || r.Asked != 1 {
			t.Errorf("%s alone: %d checks, %v", name, r.Asked, err)
		}
	}
	s.Scum = manway.Read(18.001 * manway.Inch)
	if _, err := (hydraulics.Rule{Name: "c", Share: 0.5, Source: source}).Trigger(s); err == nil {
		t.Error("layers of more than the depth are taken")
	}
}

// A level at the roof is not in the riser, one above it is.
func TestLevelInTheRiser(t *testing.T) {
	c := twoCompartments(t, boxTank(t, 1))
	top := c.Compartments[0].Shape.Full()
	height := reftable.Must[manway.Length](t)(c.Compartments[0].Shape.Depth(top))
	for _, d := range []struct {
		level manway.Length
		riser bool
	}{{height, false}, {height + manway.Inch, true}} {
		c.Compartments[0].Level = manway.Read(d.level)
		p := reftable.Must[hydraulics.Plan](t)(c.PumpOut())
		if got := p.Compartments[0]; got.InRiser != d.riser || !(math.Abs(float64(got.From-height)) <= 1e-12) {
			t.Errorf("a level of %v under a roof at %v: in the riser %v, from %v", d.level, height, got.InRiser, got.From)
		}
	}
}

// Limits of pumps, suction, dividers and holding tanks.
func TestLimitsOfPumping(t *testing.T) {
	const gpm = manway.GallonPerMinute
	cycle := func(pump manway.Flow) error {
		_, err := wetWell(10*manway.Gallon).CycleTime(pump, 0.05*gpm)
		return err
	}
	limit.Check(t, gpm, cycle, limit.Between("Pump", 0.1*gpm, 10000*gpm))
	s := hydraulics.Suction{Temperature: 288.15 * manway.Kelvin, Vacuum: 20 * manway.InchMercury, Lift: 9 * manway.Foot, UsualRate: 50 * gpm,
		Hose: hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Fittings: 1.5}}
	pull := func(s hydraulics.Suction) error { _, err := s.Pull(); return err }
	limit.Check(t, s, pull, limit.Between("UsualRate", 0, 10000*gpm), limit.Between("Vacuum", manway.InchMercury, 30*manway.InchMercury),
		limit.Between("Lift", 0, 60*manway.Foot))
	c := twoCompartments(t, boxTank(t, 1))
	c.Dividers = []hydraulics.Divider{{Port: manway.Read(12 * manway.Inch), Judged: true, Difference: manway.Foot}}
	limit.Check(t, c, hydraulics.Case.Validate, limit.Between("Dividers[0].Difference", 0, 30*manway.Foot), limit.Between("Outlet", 6*manway.Inch, 30*manway.Foot))
	held := func(v manway.Volume) error {
		_, err := hydraulics.Split{Known: true, Total: 0}.HoldingTank(v)
		return err
	}
	limit.Check(t, 2000*manway.Gallon, held, limit.Between("Capacity", 10*manway.Gallon, 1e6*manway.Gallon))
}
