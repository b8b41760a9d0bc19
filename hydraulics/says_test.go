package hydraulics_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
)

// Every result names its sources, each with a title, and those that a person
// may redo by hand print their working.
func TestResultsSayWhereTheyComeFrom(t *testing.T) {
	c := twoCompartments(t, lyingTank(t))
	plan := reftable.Must[hydraulics.Plan](t)(c.PumpOut())
	house := hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted}
	suction := hydraulics.Suction{Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 9 * manway.Foot, Hose: hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot}}
	pull := reftable.Must[hydraulics.Pull](t)(suction.Pull())
	drain := hydraulics.Drain{Diameter: 4 * manway.Inch, Slope: 0.02, N: 0.013}
	retention := hydraulics.Retention{Liquid: 1000 * manway.Gallon, Average: 300 * manway.GallonPerDay}
	times := reftable.Must[hydraulics.RetentionTimes](t)(retention.Times())
	interval := reftable.Must[hydraulics.HouseholdInterval](t)(house.Interval(1000 * manway.Gallon))
	chamber := hydraulics.Chamber{Area: 17.5 * manway.SquareFoot, Off: 10 * manway.Inch, On: 16 * manway.Inch, Alarm: 20 * manway.Inch, Top: 40 * manway.Inch}
	dosing := reftable.Must[hydraulics.Dosing](t)(chamber.Dosing(300*manway.GallonPerDay, 0.5))
	finding := reftable.Must[hydraulics.Finding](t)(hydraulics.Found{Outlet: 48 * manway.Inch, Level: manway.Read(1), Area: 3, Runback: hydraulics.Runback{Seen: manway.Yes, Rise: 0.1, Over: 60}}.Arrival())
	flow := reftable.Must[hydraulics.DrainFlow](t)(drain.AtDepth(2 * manway.Inch))
	size := reftable.Must[hydraulics.Sizing](t)(hydraulics.Served{People: 5, PerPerson: 180 * manway.LitrePerDay, Years: 1}.BrazilSizing(manway.LitrePerDay))
	for name, basis := range map[string][]manway.Citation{
		"water": hydraulics.Water{}.Basis(), "friction": hydraulics.Friction{}.Basis(), "hose": hydraulics.HoseFlow{}.Basis(), "pull": pull.Basis(), "emptied": hydraulics.Emptied{}.Basis(),
		"drain": flow.Basis(), "outlet": hydraulics.OutletHead{}.Basis(), "routed": hydraulics.Routed{}.Basis(), "interval": interval.Basis(),
		"measured": hydraulics.Forecast{Method: hydraulics.ByMeasuredRate}.Basis(), "table": hydraulics.Forecast{Method: hydraulics.ByTable}.Basis(), "finding": finding.Basis(),
		"plan": plan.Basis(), "skipped": hydraulics.Skipped{}.Basis(), "loads": hydraulics.Loads{}.Basis(), "day": hydraulics.Day{}.Basis(), "gauge": hydraulics.GaugeReading{}.Basis(),
		"dosing": dosing.Basis(), "usage": hydraulics.Usage{}.Basis(), "retention": times.Basis(), "water test": hydraulics.WaterTestResult{}.Basis(), "sizing": size.Basis(),
		"rule": hydraulics.TriggerResult{Rule: hydraulics.RuleEPA}.Basis(), "models": reftable.Must[hydraulics.Comparison](t)(hydraulics.CompareAccumulation(4, manway.Year)).Basis(),
	} {
		if len(basis) == 0 {
			t.Errorf("%s has no source", name)
		}
		for _, b := range basis {
			if b.Source == nil || b.Source.Title == "" || b.Place == "" {
				t.Errorf("%s: %+v", name, b)
			}
		}
	}
	workings := func(sys manway.System) map[string]manway.Working {
		return map[string]manway.Working{
			"plan": plan.Working(sys), "pull": pull.Working(suction, sys), "drain": flow.Working(drain, sys), "retention": times.Working(retention, sys),
			"interval": interval.Working(house), "dosing": dosing.Working(sys), "finding": finding.Working(sys), "sizing": size.Working(sys),
		}
	}
	us, si := workings(manway.US), workings(manway.SI)
	inUS := regexp.MustCompile(`\d (in|ft|ft2|gal|gal/min|lb|psi)\b`)
	for name := range us {
		for _, working := range []manway.Working{us[name], si[name]} {
			text := working.String()
			if len(working) < 2 || strings.Contains(text, "NaN") || strings.Contains(text, "unknown value") {
				t.Errorf("%s: %q", name, text)
			}
		}
		if text := si[name].String(); inUS.MatchString(text) {
			t.Errorf("%s: customary units in the working in SI: %q", name, text)
		}
		if text := us[name].String(); name != "interval" && !inUS.MatchString(text) {
			t.Errorf("%s: no customary unit in %q", name, text)
		}
	}
	if got := interval.Working(house).String(); !strings.Contains(got, "2.6 yr") {
		t.Errorf("the working of 1,000 gal and four people does not end at 2.6 yr: %q", got)
	}
}

// Property (two ways): leaving a compartment costs the years that the table says
// of the whole and of the part.
func TestSkippedCostsYears(t *testing.T) {
	c := twoCompartments(t, boxTank(t, 1))
	c.Compartments[1] = hydraulics.Compartment{Name: "rear", Shape: c.Compartments[1].Shape}
	c.Dividers[0] = hydraulics.Divider{Judged: true, Difference: 5 * manway.Foot}
	p := reftable.Must[hydraulics.Plan](t)(c.PumpOut())
	h := hydraulics.Household{People: 3, PeopleKnown: hydraulics.Counted, Grinder: manway.No, Months: 12}
	s := reftable.Must[hydraulics.Skipped](t)(p.Skipped(h))
	front := reftable.Must[manway.Duration](t)(hydraulics.Interval(3, p.Compartments[0].Capacity))
	all := reftable.Must[manway.Duration](t)(hydraulics.Interval(3, p.Compartments[0].Capacity+p.Compartments[1].Capacity))
	if s.Count != 1 || !s.Lost.Known || !(math.Abs(float64(s.Lost.Time-(all-front))) <= 1e-6) || !(s.Lost.Time > manway.Year/2) {
		t.Errorf("%+v, want %v lost", s, all-front)
	}
	if d := reftable.Must[manway.Duration](t)(p.AtRate(100 * manway.GallonPerMinute)); !(math.Abs(float64(d)-float64(p.Remove)/float64(100*manway.GallonPerMinute)) <= 1e-9) {
		t.Errorf("at the usual rate: %v", d)
	}
}

// Property (two ways): a chamber of a real shape is the prism where the shape is
// one.
func TestChamberByShape(t *testing.T) {
	shape := &boxTank(t, 0).Compartments()[0]
	prism := hydraulics.Chamber{Area: 32 * manway.SquareFoot, Off: 10 * manway.Inch, On: 16 * manway.Inch, Alarm: 20 * manway.Inch, Top: 40 * manway.Inch, Drain: 20 * manway.Gallon}
	real := prism
	real.Area, real.Shape = 0, shape
	a := reftable.Must[hydraulics.Dosing](t)(prism.Dosing(300*manway.GallonPerDay, 1))
	b := reftable.Must[hydraulics.Dosing](t)(real.Dosing(300*manway.GallonPerDay, 1))
	if !(math.Abs(float64(a.Dose/b.Dose)-1) <= 1e-12) || !(math.Abs(float64(a.ReserveTime/b.ReserveTime)-1) <= 1e-12) {
		t.Errorf("prism %+v, shape %+v", a, b)
	}
	perInch := 32. * 144 / 231 // gal
	if got := a.NetDose.In(manway.Gallon); !(math.Abs(got-(6*perInch-20)) <= 1e-9) {
		t.Errorf("net dose %v gal, want %v", got, 6*perInch-20)
	}
	if got, want := a.ReserveTime.In(manway.Hour), 20*perInch/300*24; !(math.Abs(got-want) <= 1e-9) || a.DailyCheck.Status != manway.Pass {
		t.Errorf("%v h above the alarm, want %v; %v", got, want, a.DailyCheck.Status)
	}
	u := reftable.Must[hydraulics.Usage](t)(prism.Usage(90, 30*manway.Day, 300*manway.GallonPerDay))
	if !(math.Abs(u.PerDay-3) <= 1e-12) || !(math.Abs(u.Flow.In(manway.GallonPerDay)-3*(6*perInch-20)) <= 1e-9) || u.Check.Status != manway.Pass {
		t.Errorf("%+v", u)
	}
}

// Solids and leaks shorten retention, each by its own share.
func TestRetention(t *testing.T) {
	r := hydraulics.Retention{Liquid: 1200 * manway.Gallon, Solids: 600 * manway.Gallon, Average: 400 * manway.GallonPerDay, Peak: 800 * manway.GallonPerDay, LeakIn: 400 * manway.GallonPerDay}
	got := reftable.Must[hydraulics.RetentionTimes](t)(r.Times())
	for _, c := range []struct {
		name string
		is   manway.Duration
		days float64
	}{{"clean", got.Clean, 3}, {"now", got.Now, 1.5}, {"clean at peak", got.CleanPeak.Time, 1.5}, {"now at peak", got.NowPeak.Time, 0.75}, {"now with the leak", got.NowWithLeak, 0.75}} {
		if !(math.Abs(c.is.In(manway.Day)-c.days) <= 1e-12) {
			t.Errorf("%s: %v d, want %v", c.name, c.is.In(manway.Day), c.days)
		}
	}
	if got.Check.Status != manway.Fail {
		t.Errorf("18 h against 24 h: %v", got.Check.Status)
	}
}

// 1/4 in a day over 32 ft2 of 1,000 gal is 4.987 gal: half a percent.
func TestWaterTest(t *testing.T) {
	r := reftable.Must[hydraulics.WaterTestResult](t)(hydraulics.WaterTest{Area: 32 * manway.SquareFoot, Liquid: 1000 * manway.Gallon, Change: manway.Inch / 4, Over: manway.Day, Design: 300 * manway.GallonPerDay}.Result())
	if got, want := r.Moved.In(manway.Gallon), 32*144*0.25/231; !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("%v gal, want %v", got, want)
	}
	if r.Checks[0].Status != manway.Fail || r.Checks[1].Status != manway.Pass || r.Checks[2].Status != manway.NotJudged {
		t.Errorf("%v %v %v", r.Checks[0].Status, r.Checks[1].Status, r.Checks[2].Status)
	}
	if !r.ShareDesign.Known || !(math.Abs(r.ShareDesign.Value-32*144*0.25/231/300) <= 1e-12) {
		t.Errorf("share of design %v", r.ShareDesign)
	}
	rising := reftable.Must[hydraulics.WaterTestResult](t)(hydraulics.WaterTest{Area: 32 * manway.SquareFoot, Liquid: 1000 * manway.Gallon, Change: manway.Inch / 4, Over: manway.Day, Rising: true}.Result())
	if rising.PerDay != r.PerDay || rising.Checks[0].Status != manway.NotJudged || rising.Checks[1].Status != manway.NotJudged {
		t.Errorf("a rising level is judged as a loss: %+v", rising.Checks)
	}
	if c := reftable.Must[manway.Check](t)(hydraulics.Split{}.HoldingTank(1000 * manway.Gallon)); c.Status != manway.NotJudged || c.Reason == "" {
		t.Errorf("an unknown total: %+v", c)
	}
	h := reftable.Must[manway.Check](t)(hydraulics.Split{Known: true, Total: 901 * manway.Gallon}.HoldingTank(1000 * manway.Gallon))
	if h.Status != manway.Fail {
		t.Errorf("a holding tank above 90 %%: %v", h.Status)
	}
}

// The message names what a crew must know, in order, and no more than five
// lines of it.
func TestBrief(t *testing.T) {
	c := twoCompartments(t, boxTank(t, 1))
	c.Compartments[1] = hydraulics.Compartment{Name: "rear", Shape: c.Compartments[1].Shape, State: hydraulics.CleanoutOnly}
	c.Keeps = []hydraulics.Keep{{Name: "flotation", Judged: true, Level: 20.3 * manway.Inch, Assumed: manway.AssumedGroundwaterAtGrade | manway.AssumedSoil}, {Name: "walls"}}
	b := hydraulics.Brief{Plan: reftable.Must[hydraulics.Plan](t)(c.PumpOut()), Lids: []hydraulics.LidFound{{Name: "front", Depth: manway.Read(8 * manway.Inch), Note: "two people"}, {Name: "rear"}}}
	lines := b.Lines(manway.US)
	for i, want := range []string{"front, 8 in down (two people); rear, depth not measured", "rear: cleanout only", "lift not reckoned", "DO NOT GO BELOW 1 ft 8 1/2 in above the floor (flotation; groundwater not known, taken at grade; 1 more value not measured); not judged: walls", "room not said"} {
		if !strings.Contains(lines[i], want) {
			t.Errorf("line %d %q: want %q", i+1, lines[i], want)
		}
	}
	if ticket := b.Plan.Compartments[1].Ticket(manway.US); !strings.Contains(ticket, "looking and rodding") {
		t.Errorf("%q", ticket)
	}
	if si := b.Lines(manway.SI); strings.Contains(strings.Join(si[:], " "), " gal") {
		t.Errorf("gallons in SI: %q", si)
	}
}
