package visit_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
)

// kinds are the reminders of a day as "kind, days: what".
func kinds(v visit.Visit, on manway.Date) (list []string, days []int) {
	for _, r := range v.FollowUp(on) {
		list = append(list, r.Kind+": "+r.What)
		days = append(days, r.Days)
	}
	return list, days
}

// An urgent defect is on the list until a remedy of that opening is written down
// as done, on the day of the visit or later: not one of another opening, not one
// that was only offered, and not one of before.
func TestUnsafeOpeningUntilDone(t *testing.T) {
	s := readFile(t, "three-openings")
	day := s.Date
	for _, c := range []struct {
		offer visit.Offer
		left  bool
	}{
		{visit.Offer{Access: "middle", State: "done", Date: day}, false},
		{visit.Offer{Access: "middle", State: "done", Date: day.AddDays(30)}, false},
		{visit.Offer{Access: "middle", State: "done", Date: day.AddDays(-1)}, true},
		{visit.Offer{Access: "middle", State: "accepted", Date: day}, true},
		{visit.Offer{Access: "last", State: "done", Date: day}, true},
	} {
		c.offer.Remedy = riser.NewCover
		s.Offers = []visit.Offer{c.offer}
		v, _ := page(t, s, cost.Book{})
		list, days := kinds(v, day.AddDays(7))
		i := slices.IndexFunc(list, func(text string) bool { return strings.HasPrefix(text, "unsafe opening: middle: ") })
		if c.left != (i >= 0) || i >= 0 && days[i] != 7 {
			t.Errorf("%+v: the list is %v, %v days", c.offer, list, days)
		}
	}
}

// An offer without an answer is on the list from its fourteenth day, one that was
// declined from its own; one that was accepted or done is not.
func TestOffersOnTheList(t *testing.T) {
	s := readText(t, fifteen)
	for _, c := range []struct {
		state string
		after int
		want  string
	}{
		{"", 13, ""}, {"", 14, "offer unanswered: lid: new-cover"}, {"open", 13, ""}, {"open", 14, "offer unanswered: lid: new-cover"},
		{"accepted", 100, ""}, {"done", 100, ""}, {"declined", 0, "remedy declined: lid: new-cover"}, {"declined", 100, "remedy declined: lid: new-cover"},
	} {
		s.Offers = []visit.Offer{{Date: s.Date, Remedy: riser.NewCover, Access: "lid", State: c.state}}
		v, _ := page(t, s, cost.Book{})
		list, days := kinds(v, s.Date.AddDays(c.after))
		i := slices.IndexFunc(list, func(text string) bool {
			return !strings.HasPrefix(text, "pump-out due") && !strings.HasPrefix(text, "unsafe")
		})
		if (i >= 0) != (c.want != "") || i >= 0 && (list[i] != c.want || days[i] != c.after) {
			t.Errorf("%q after %d days: %v, %v days", c.state, c.after, list, days)
		}
	}
}

// A pump-out is on the list from sixty days before it is due. It is due now where
// a rule asks for it and the tank was left, on the forecast day where none asks,
// and counted from this visit where it was pumped. The table of households gives
// no day to call on.
func TestPumpOutOnTheList(t *testing.T) {
	full := readText(t, fifteen)
	v, _ := page(t, full, cost.Book{})
	if list, days := kinds(v, full.Date.AddDays(3)); !slices.Contains(list, "pump-out due: asked for by US EPA (compartment 1), New Hampshire (compartment 1), Minnesota practice (compartment 1)") || days[0] != 3 {
		t.Errorf("a full tank: %v, %v days", list, days)
	}
	due := func(s visit.Survey, on func(v visit.Visit) manway.Date, how string) {
		t.Helper()
		v, _ := page(t, s, cost.Book{})
		day := on(v)
		if day.IsZero() {
			t.Fatalf("%s: no day", how)
		}
		for after, want := range map[int]bool{-61: false, -60: true, 0: true, 400: true} {
			list, days := kinds(v, day.AddDays(after))
			if i := slices.Index(list, "pump-out due: "+how); want != (i >= 0) || i >= 0 && days[i] != after {
				t.Errorf("%s, %d days after it is due: %v, %v days", how, after, list, days)
			}
		}
	}
	pumped := func(v visit.Visit) manway.Date { return v.Pump.Forecast.Pumped.Likely }
	left := func(v visit.Visit) manway.Date { return v.Pump.Forecast.Likely }
	full.Done.Pumped = manway.Yes
	due(full, pumped, "by the household table, counted from this visit")
	half := readText(t, fifteen)
	half.Household.LastPumped = half.Date.AddMonths(-12)
	half.Compartments[0] = visit.Contents{Level: manway.Read(48 * manway.Inch), Sludge: manway.Read(3 * manway.Inch), Scum: manway.Read(1 * manway.Inch)}
	due(half, left, "by the "+hydraulics.ByMeasuredRate.String())
	before := half
	before.Household.LastPumped = half.Date.AddMonths(-36)
	before.History = []visit.Earlier{{Date: half.Date.AddMonths(-12), Compartments: []visit.Contents{{Sludge: manway.Read(2 * manway.Inch), Scum: manway.Read(1 * manway.Inch)}}}}
	due(before, left, "by the "+hydraulics.ByTwoReadings.String())
	unknown := half
	unknown.Household.LastPumped, unknown.Household.People, unknown.Household.Known = manway.Date{}, 4, hydraulics.Counted
	v, _ = page(t, unknown, cost.Book{})
	if v.Pump.Forecast.Method != hydraulics.ByTable {
		t.Fatalf("by %v", v.Pump.Forecast.Method)
	}
	if list, _ := kinds(v, unknown.Date.AddMonths(240)); slices.ContainsFunc(list, func(text string) bool { return strings.HasPrefix(text, "pump-out due") }) {
		t.Errorf("by the table: %v", list)
	}
}

// Where nothing was measured now, the filling between an earlier pump-out and the
// layers read two years after it gives the days: what it says of the tank pumped
// then is counted from now.
func TestEarlierFillingGivesTheRate(t *testing.T) {
	s := readText(t, fifteen)
	s.Compartments = nil
	then := s.Date.AddMonths(-36)
	read := []visit.Contents{{Level: manway.Read(48 * manway.Inch), Sludge: manway.Read(4 * manway.Inch), Scum: manway.Read(1 * manway.Inch)}}
	s.Household.LastPumped = s.Date.AddMonths(-12)
	s.History = []visit.Earlier{
		{Date: then.AddMonths(-24), Emptied: manway.Yes},
		{Date: then, Compartments: read},
		{Date: s.Date.AddMonths(-12), Emptied: manway.Yes},
	}
	v, _ := page(t, s, cost.Book{})
	f := v.Pump.Forecast
	// The same tank seen on the day of that reading.
	past := s
	past.Date, past.History, past.Compartments = then, s.History[:1], read
	past.Household.LastPumped = manway.Date{}
	w, _ := page(t, past, cost.Book{})
	g := w.Pump.Forecast
	later := then.DaysUntil(s.Date)
	if f.Method != g.Method || f.Method != hydraulics.ByMeasuredRate || f.Rate != g.Rate {
		t.Errorf("by %v at %v, then by %v at %v", f.Method, f.Rate, g.Method, g.Rate)
	}
	for _, d := range [][2]manway.Date{{f.Pumped.Low, g.Pumped.Low}, {f.Pumped.Likely, g.Pumped.Likely}, {f.Pumped.High, g.Pumped.High}} {
		if !d[0].IsZero() && d[0] != d[1].AddDays(later) || d[0].IsZero() != d[1].IsZero() {
			t.Errorf("%v now and %v then, %d days apart", d[0], d[1], later)
		}
	}
	if !f.Likely.IsZero() || f.Due {
		t.Errorf("what is in the tank now is not known, and it is left until %v, due %v", f.Likely, f.Due)
	}
	// The latest filling that was read counts: 15 in before the tank was pumped a year
	// ago, four years (1,461 days) after it was pumped the time before, are half as
	// much again a year as 5 in after two (730).
	s.History[2].Compartments = []visit.Contents{{Level: manway.Read(48 * manway.Inch), Sludge: manway.Read(14 * manway.Inch), Scum: manway.Read(1 * manway.Inch)}}
	if v, _ = page(t, s, cost.Book{}); !(math.Abs(float64(v.Pump.Forecast.Rate/f.Rate)-15./1461/(5./730)) <= 1e-9) {
		t.Errorf("15 in give %v, 5 in %v", v.Pump.Forecast.Rate, f.Rate)
	}
}
