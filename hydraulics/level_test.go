package hydraulics_test

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
	"manway.example/manway/tank"
)

// Property (balance): nothing is lost in a day, whatever the outlet, the shape and the step; the
// volumes of the shapes at the last levels say the same as the books.
func TestRouteBalance(t *testing.T) {
	for name, made := range map[string]*tank.Tank{"one box": boxTank(t, 0), "two": boxTank(t, 1), "three": boxTank(t, 2), "cylinder": lyingTank(t)} {
		for _, open := range []float64{0, 0.005, 0.05, 1} {
			for _, step := range []manway.Duration{0, 2 * manway.Second, 5 * manway.Minute} {
				r := dayRoute(t, made)
				r.Outlet.Open, r.Step = open, step
				done := reftable.Must[hydraulics.Routed](t)(r.Route())
				if done.Imbalance > 1e-9 {
					t.Errorf("%s, open %v, step %v: off by %g", name, open, step, done.Imbalance)
				}
				first, last := done.Series[0], done.Series[len(done.Series)-1]
				stored := manway.Volume(0)
				for i, c := range r.Compartments {
					stored += reftable.Must[manway.Volume](t)(c.Volume(last.Levels[i])) - reftable.Must[manway.Volume](t)(c.Volume(first.Levels[i]))
				}
				if off := math.Abs(float64(stored - done.Stored)); off > 5e-5 { // of 4 m3: the table of levels has 256 straight pieces
					t.Errorf("%s, open %v, step %v: levels hold %v more than the books", name, open, step, stored-done.Stored)
				}
			}
		}
	}
}

// A closed outlet fills the tank by its own shape: the time to the inlet and to
// the roof is volume over inflow.
func TestRouteClosedOutlet(t *testing.T) {
	made := boxTank(t, 1)
	r := dayRoute(t, made)
	r.Outlet.Open, r.Surges, r.Base = 0, nil, 400*manway.GallonPerDay
	done := reftable.Must[hydraulics.Routed](t)(r.Route())
	area := manway.Area(0)
	for _, c := range r.Compartments {
		area += reftable.Must[manway.Area](t)(c.Area(48 * manway.Inch))
	}
	for _, m := range []struct {
		name string
		got  hydraulics.Span
		rise manway.Length
	}{{"inlet", done.InletAt, 3 * manway.Inch}, {"roof", done.RoofAt, 12 * manway.Inch}} {
		want := float64(area.Times(m.rise)) / float64(r.Base)
		if !m.got.Known || !(math.Abs(float64(m.got.Time)-want) <= 60) {
			t.Errorf("%s: %v, want %.0f s", m.name, m.got, want)
		}
	}
	if done.Out != 0 || !(done.Spilled > 0) {
		t.Errorf("out %v, spilled %v", done.Out, done.Spilled)
	}
}

// A steady inflow ends at the head that the outlet needs for it.
func TestRouteSettlesAtTheHead(t *testing.T) {
	made := boxTank(t, 1)
	for _, open := range []float64{0.05, 0.3, 1} {
		r := dayRoute(t, made)
		r.Outlet.Open, r.Surges, r.Base, r.Over = open, nil, 3*manway.GallonPerMinute, 3*manway.Day
		done := reftable.Must[hydraulics.Routed](t)(r.Route())
		want := reftable.Must[hydraulics.OutletHead](t)(r.Outlet.Head(r.Base)).Head
		last := done.Series[len(done.Series)-1].Levels[len(r.Compartments)-1] - r.OutletInvert
		if !(math.Abs(float64(last-want)) <= 0.0005) {
			t.Errorf("open %v: ends at %v, want %v", open, last, want)
		}
	}
}

// Shorter steps end at the same peak: the error falls with the step.
func TestRouteConverges(t *testing.T) {
	r := dayRoute(t, lyingTank(t))
	peak := func(step manway.Duration) float64 {
		r.Step = step
		return float64(reftable.Must[hydraulics.Routed](t)(r.Route()).Peak)
	}
	fine := peak(1 * manway.Second)
	coarse, middle := math.Abs(peak(60*manway.Second)-fine), math.Abs(peak(15*manway.Second)-fine)
	if !(middle < coarse/2) || middle > 0.001 {
		t.Errorf("peak off by %g m at 60 s, %g m at 15 s", coarse, middle)
	}
}

// Property (monotone): less open area stands higher; clear is the least.
func TestOutletHeadRises(t *testing.T) {
	last := manway.Length(0)
	for _, open := range []float64{1, 0.99, 0.5, 0.1, 0.01} {
		h := reftable.Must[hydraulics.OutletHead](t)(hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: open}.Head(5 * manway.GallonPerMinute))
		if !(h.Head > last) || h.Clear > h.Head {
			t.Errorf("open %v: %v after %v", open, h.Head, last)
		}
		last = h.Head
	}
	last = 0
	for gpm := 1.0; gpm < 1000; gpm *= 1.2 {
		h := reftable.Must[hydraulics.OutletHead](t)(hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 1}.Head(manway.Flow(gpm) * manway.GallonPerMinute))
		if !(h.Head > last) {
			t.Errorf("%.3g gal/min: %v after %v", gpm, h.Head, last)
		}
		last = h.Head
	}
	closed := reftable.Must[hydraulics.OutletHead](t)(hydraulics.Outlet{Diameter: 4 * manway.Inch}.Head(manway.GallonPerMinute))
	if !closed.Closed {
		t.Error("an outlet with nothing open is not closed")
	}
}

func TestTruck(t *testing.T) {
	gal := func(v float64) manway.Volume { return manway.Volume(v) * manway.Gallon }
	truck := hydraulics.Truck{Capacity: gal(2500), Aboard: gal(500)}
	for _, c := range []struct{ volume, loads, trips, left float64 }{
		{0, 0, 0, 2000}, {1500, 1, 0, 500}, {2000, 1, 0, 0}, {2001, 2, 1, 2499}, {4500, 2, 1, 0}, {4501, 3, 2, 2499},
	} {
		l := reftable.Must[hydraulics.Loads](t)(truck.Loads(gal(c.volume)))
		if float64(l.Loads) != c.loads || float64(l.Trips) != c.trips || !(math.Abs(l.LeftRoom.In(manway.Gallon)-c.left) <= 1e-6) {
			t.Errorf("%v gal: %d loads, %d trips, %v left; want %v", c.volume, l.Loads, l.Trips, l.LeftRoom, c)
		}
	}
	truck.Tare, truck.Limit = 15000*manway.Pound, 25000*manway.Pound
	l := reftable.Must[hydraulics.Loads](t)(truck.Loads(gal(500)))
	if want := 10000 / (1.02 * 62.4) * 1728 / 231; !l.ByWeight || !(math.Abs(l.Full.In(manway.Gallon)-want) <= 1e-6) {
		t.Errorf("full by weight at %v gal, want %v", l.Full.In(manway.Gallon), want)
	}
}

// Property (bounded): a day never holds more than the truck.
func TestDay(t *testing.T) {
	gal := manway.Gallon
	truck := hydraulics.Truck{Capacity: 2500 * gal, Aboard: 400 * gal}
	day := reftable.Must[hydraulics.Day](t)(truck.Day([]manway.Volume{1000 * gal, 1250 * gal, 0, 3000 * gal, 900 * gal}))
	want := []struct{ before, during int }{{0, 0}, {1, 0}, {0, 0}, {0, 1}, {1, 0}}
	for i, s := range day.Stops {
		if s.TripsBefore != want[i].before || s.TripsDuring != want[i].during || s.Aboard > truck.Capacity {
			t.Errorf("stop %d: %+v, want %+v", i, s, want[i])
		}
	}
	if day.Trips != 4 || !(math.Abs(day.Total.In(gal)-6150) <= 1e-9) {
		t.Errorf("%d trips, %v", day.Trips, day.Total)
	}
}

// Property (inverse): a gauge that reads a fifth more than the shape makes a shape that holds it.
func TestGaugeRecalibrates(t *testing.T) {
	c := twoCompartments(t, lyingTank(t)).Compartments[0]
	g := hydraulics.Gauge{Compartment: c, From: 48 * manway.Inch, To: 6 * manway.Inch, Before: 300 * manway.Gallon}
	computed := reftable.Must[manway.Volume](t)(c.Shape.Volume(g.From)) - reftable.Must[manway.Volume](t)(c.Shape.Volume(g.To))
	g.After = g.Before + computed*1.2
	r := reftable.Must[hydraulics.GaugeReading](t)(g.Read())
	if !(math.Abs(r.Ratio-1.2) <= 1e-12) || r.Agrees {
		t.Errorf("ratio %v, agrees %v", r.Ratio, r.Agrees)
	}
	made := reftable.Must[tank.Tank](t)(tank.New(tank.Spec{Shape: reftable.Must[tank.Surveyed](t)(g.Recalibrated())}))
	now := reftable.Must[manway.Volume](t)(made.Volume(g.From)) - reftable.Must[manway.Volume](t)(made.Volume(g.To))
	if !(math.Abs(float64(now/r.Pumped)-1) <= 0.001) {
		t.Errorf("recalibrated shape holds %v between the levels, the gauge read %v", now, r.Pumped)
	}
}

// By the measured rate the next date is where the rule's limit is reached.
func TestForecast(t *testing.T) {
	c := twoCompartments(t, boxTank(t, 1))
	day := func(y, m, d int) manway.Date {
		return manway.Date{Year: y, Month: 1, Day: 1}.AddMonths(m - 1).AddDays(d - 1)
	}
	m := hydraulics.Measured{Outlet: c.Outlet, Compartments: c.Compartments[:1], Last: day(2022, 1, 1), LastKnown: hydraulics.Counted, Visit: day(2024, 1, 1),
		Rule: hydraulics.Rule{Name: "half", Share: 0.5, Source: manway.Citation{Source: manway.Practice}}}
	m.Compartments[0].Sludge, m.Compartments[0].Scum = manway.Read(9*manway.Inch), manway.Read(3*manway.Inch)
	f := reftable.Must[hydraulics.Forecast](t)(m.Forecast()) // 12 of 24 in in two years of 730 days: two more
	if f.Method != hydraulics.ByMeasuredRate || !(math.Abs(f.Growth-2) <= 1e-9) || f.Due || f.Likely.Year != 2025 || f.Likely.Month != 12 && f.Likely != day(2026, 1, 1) {
		t.Errorf("%+v", f)
	}
	if !f.Low.Before(f.Likely) || !f.Likely.Before(f.High) {
		t.Errorf("low %v, likely %v, high %v", f.Low, f.Likely, f.High)
	}
	m.Compartments[0].Sludge = manway.Read(23 * manway.Inch)
	if f = reftable.Must[hydraulics.Forecast](t)(m.Forecast()); !f.Due || f.Likely != m.Visit || !(math.Abs(f.Growth-24./26) <= 1e-9) || f.Pumped.Likely != day(2025, 11, 1) {
		t.Errorf("26 of 24 in: %+v", f)
	}
	m.LastKnown = hydraulics.Unknown
	h := hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted, Grinder: manway.No, Months: 12}
	f = reftable.Must[hydraulics.Forecast](t)(m.NextPumpOut(h, 1000*manway.Gallon, m.Visit))
	if f.Method != hydraulics.ByTable || f.Pumped.Likely.String() != "2026-08-01" || !f.Likely.IsZero() {
		t.Errorf("by the table: %+v", f)
	}
	f = reftable.Must[hydraulics.Forecast](t)(m.NextPumpOut(hydraulics.Household{}, 1000*manway.Gallon, m.Visit))
	if f.Method != hydraulics.NoMethod || !f.Likely.IsZero() {
		t.Errorf("nothing known: %+v", f)
	}
}

// Property (bounded): every published rate lies within the spread that is told.
func TestAccumulationSpread(t *testing.T) {
	c := reftable.Must[hydraulics.Comparison](t)(hydraulics.CompareAccumulation(4, 3*manway.Year))
	valid := 0
	for _, m := range c.Models {
		if m.Valid {
			valid++
			if !(m.Low > 0 && m.Low <= m.High && m.Low >= c.Low && m.High <= c.High) {
				t.Errorf("%s: %v to %v outside %v to %v", m.Model.Name, m.Low, m.High, c.Low, c.High)
			}
		}
	}
	if valid < 8 || c.Spread < 2 || !c.Cautions.Has(manway.RememberedFigure) {
		t.Errorf("%d models, spread %v, %v", valid, c.Spread, c.Cautions)
	}
}
