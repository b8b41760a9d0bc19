package visit_test

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
)

// fifteen is a survey of fifteen values read on site.
const fifteen = `{"id": "fifteen", "date": "2026-11-20",
  "tank": {"kind": "box", "length": "96 in", "width": "60 in", "height": "60 in", "outlet_invert": "48 in"},
  "accesses": [{"name": "lid", "compartment": 1, "opening": "20 in", "opened": "yes", "cover": "18 in",
    "lid": {"shape": "disc", "diameter": "24 in", "thickness": "3 in"}, "seen": {"handle": "rusted", "fastened": "no"}}],
  "compartments": [{"level": "49.5 in", "sludge": "12 in", "scum": "4 in"}],
  "household": {"people": "about 4"}, "money": {"prices": "book"}}`

// Fifteen values on site are enough for a whole page: every main section has
// something to say, with figures where it is about figures.
func TestFifteenValues(t *testing.T) {
	_, book := read(t, "rusted-handle.json")
	v, text := page(t, readText(t, fifteen), book)
	says := map[string]bool{}
	for _, s := range v.Sections {
		says[s.ID] = len(s.Says)+len(s.Facts)+len(s.Tables)+len(s.Checks) > 0
	}
	for _, id := range []string{"first", "seen", "drawing", "glance", "remedies", "next", "not_checked", "crew", "tank", "pump_out", "lids", "reach", "flotation", "close_out", "taken", "structure", "materials", "dip_chart"} {
		has := says[id]
		for _, s := range v.Sections {
			has = has || s.ID == id && len(s.Figures) > 0
		}
		if !has {
			t.Errorf("section %s has nothing to say", id)
		}
	}
	// 48 x 60 x 96 in3 to the outlet; 16 in of solids in 48.
	for _, want := range []string{"1,197 gal", "Pump now", "Would change the most: ", "Stands for a measurement: lid of lid, neither sounded nor probed, so taken as dull"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

// What would change the most is found by working the visit at both ends: its
// outcomes are those of surveys in which the value was measured, and a value that
// is known is not asked for.
func TestMostTellingIsReckoned(t *testing.T) {
	s := readText(t, fifteen)
	v, _ := page(t, s, cost.Book{})
	if len(v.Changes) == 0 || !strings.Contains(v.Changes[0].Measure, "groundwater") || !v.Changes[0].Decides {
		t.Fatalf("the first of the changes is %+v", v.Changes)
	}
	for _, end := range []struct {
		depth manway.Length
		says  string
	}{{0, v.Changes[0].AtLow}, {90 * manway.Inch, v.Changes[0].AtHigh}} {
		s.Ground.Groundwater = manway.GroundwaterAt(end.depth)
		known, _ := page(t, s, cost.Book{})
		if !strings.HasPrefix(end.says, known.Float.State.String()) {
			t.Errorf("with water %v down the tank %v, the change says %q", end.depth, known.Float.State, end.says)
		}
		for _, c := range known.Changes {
			if strings.Contains(c.Measure, "groundwater") {
				t.Errorf("groundwater is known and asked for: %+v", c)
			}
		}
		if len(known.Changes) > 0 && known.Changes[0].Measure == v.Changes[0].Measure {
			t.Error("another survey has the same answer")
		}
	}
	// Not knowing when it was pumped matters for the date, and only so long.
	asked := func(s visit.Survey) bool {
		v, _ := page(t, s, cost.Book{})
		for _, c := range v.Changes {
			if strings.Contains(c.Measure, "last pumped") && c.What == "the next pump-out" {
				return true
			}
		}
		return false
	}
	if !asked(s) {
		t.Error("the last pump-out is not known and not asked for")
	}
	s.Household.LastPumped = manway.Date{Year: 2023, Month: 5, Day: 1}
	if asked(s) {
		t.Error("the last pump-out is known and asked for")
	}
}

// Each of the five kinds of figure has the measurement that moves it the most,
// and moves as the shape says: gallons with the length, a lid's weight with its
// thickness and the square of its diameter, its pull and its Use with its
// thickness, the price of a new tank with its length.
func TestWhatDrivesEachFigure(t *testing.T) {
	_, book := read(t, "rusted-handle.json")
	text := strings.NewReplacer(
		`"length": "96 in"`, `"length": "96 in ± 2 in"`, `"width": "60 in"`, `"width": "60 in ± 1/2 in"`,
		`"diameter": "24 in", "thickness": "3 in"`, `"diameter": "24 in ± 1/4 in", "thickness": "3 in ± 1/2 in"`,
		`"cover": "18 in"`, `"cover": "18 in ± 3 in"`).Replace(fifteen)
	s := readText(t, text)
	s.Accesses[0].Lid.Steel = manway.SteelNone
	v, _ := page(t, s, book)
	by := map[string]visit.Spread{}
	for _, f := range v.Spreads {
		by[f.Key] = f
	}
	drives := func(key, want string) visit.Spread {
		t.Helper()
		f, ok := by[key]
		if !ok || f.Drives != want || !(f.Low < f.Value && f.Value < f.High) {
			t.Errorf("%s is %+v, want it driven by %s", key, f, want)
		}
		return f
	}
	// 2 in of 96 against 1/2 of 60: both move the gallons by their share.
	gal := drives("liquid_gal", "tank.length")
	full := 96 * 60 * 48 / 231.0
	if off := full * math.Hypot(2./96, 0.5/60); !(math.Abs(gal.High-full-off) <= 1e-6*full) {
		t.Errorf("gallons to %v, by hand %v", gal.High, full+off)
	}
	// 1/2 of 3 in is a sixth, 1/4 of 24 in twice a ninety-sixth.
	weight := drives("lid_lb", "accesses[0].lid.thickness")
	if off := weight.Value * math.Hypot(1./6, (24.25*24.25-24*24)/(24*24)); !(math.Abs(weight.High-weight.Value-off) <= 1e-6*weight.Value) {
		t.Errorf("weight to %v, by hand %v", weight.High, weight.Value+off)
	}
	drives("lid_pull_lbf", "accesses[0].lid.thickness")
	drives("lid_use", "accesses[0].lid.thickness")
	// A new tank is dug for and filled by its volume, which the length moves most.
	tank := drives("lid_replace_tank_usd", "tank.length")
	if up, down := tank.High-tank.Value, tank.Value-tank.Low; !(math.Abs(up-down) <= 0.02*up) {
		t.Errorf("the price goes up by %v and down by %v", up, down)
	}
}

// A pick stands for the measured loss that the root package gives it: the lid is
// screened with what is left, and weighs as made.
func TestPickStandsForLoss(t *testing.T) {
	picked := readText(t, strings.Replace(fifteen, `"thickness": "3 in"}`, `"thickness": "3 in", "tried": {"sound": "hollow", "bars": "stained"}}`, 1))
	measured := readText(t, strings.Replace(fifteen, `"thickness": "3 in"}`, `"thickness": "3 in", "loss": "1.5 in"}`, 1))
	a, text := page(t, picked, cost.Book{})
	b, _ := page(t, measured, cost.Book{})
	if a.Accesses[0].Strength.Left != b.Accesses[0].Strength.Left || !(math.Abs(a.Accesses[0].Strength.Left.In(manway.Inch)-1.5) <= 1e-12) {
		t.Errorf("hollow leaves %v, a loss of 1.5 in leaves %v", a.Accesses[0].Strength.Left, b.Accesses[0].Strength.Left)
	}
	if got, want := a.Accesses[0].Moves.Weight.Heaviest, b.Accesses[0].Moves.Weight.Heaviest; got != want {
		t.Errorf("it weighs %v, want %v", got, want)
	}
	if want := "Stands for a measurement: lid of lid, hollow under the hammer, bars stained: 1 1/2 in of the concrete is not counted."; !strings.Contains(text, want) {
		t.Errorf("the page does not say %q", want)
	}
	for _, name := range []string{`"material": "plastic", "measured": "30 lb", `, `"material": "iron", "measured": "90 lb", `} {
		v, _ := page(t, readText(t, strings.Replace(fifteen, `"shape": "disc"`, name+`"shape": "disc"`, 1)), cost.Book{})
		if v.Accesses[0].Tried != (manway.Unsound{}) {
			t.Errorf("a lid of %s has picks of concrete", name)
		}
	}
	roof := strings.Replace(fifteen, `"outlet_invert"`, `"roof_edge": "3 to 4 in", "roof_tried": {"sound": "ringing"}, "outlet_invert"`, 1)
	v, text := page(t, readText(t, roof), cost.Book{})
	if v.Tank.Spec.Roof != 3*manway.Inch || v.RoofTried.Depth != 0 || !strings.Contains(text, "the edge at the opening, 3 to 4 in: a roof of 3 in") {
		t.Errorf("roof %v, not counted %v", v.Tank.Spec.Roof, v.RoofTried.Depth)
	}
}

// Two readings of one filling give the rate, the level that stood high twice is
// told, and what was declined has its day; the last pump-out alone works too.
func TestHistory(t *testing.T) {
	text := strings.Replace(fifteen, `"household"`, `"arrival": {"level": "49.5 in"}, "history": [
    {"date": "2021", "emptied": "yes", "pumped": "about 900 gal"},
    {"date": "2024-11-20", "level": "50 in", "compartments": [{"sludge": "9 in", "scum": "3 in"}],
     "offers": [{"remedy": "replace-plastic", "access": "lid", "state": "declined"}, {"remedy": "new-cover", "access": "lid", "state": "done"}]}], "household"`, 1)
	s := readText(t, text)
	v, said := page(t, s, cost.Book{})
	if v.Pump.Forecast.Method != hydraulics.ByTwoReadings || v.Pump.Trend.Trend != hydraulics.HighAgain {
		t.Errorf("by %v, level %v", v.Pump.Forecast.Method, v.Pump.Trend.Trend)
	}
	// 16 in now, 12 in two years (730 days) ago, a box: 2 in a year.
	perYear := float64(v.Pump.Forecast.Rate) * float64(manway.Day) * 365 / float64(manway.Inch) / float64(96*60*manway.SquareInch)
	if !(math.Abs(perYear-2) <= 1e-9) {
		t.Errorf("the tank fills by %v in a year, want 2", perYear)
	}
	for _, want := range []string{"Level: high again (2 of 2 high, 0 low): this points to a system that backs up", "Declined on 2024-11-20: ", "Done on 2024-11-20: ", "rate between two readings"} {
		if !strings.Contains(said, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	kinds := map[string]manway.Date{}
	for _, r := range v.FollowUp(manway.Date{Year: 2026, Month: 12, Day: 1}) {
		kinds[r.Kind] = r.Since
	}
	if kinds["remedy declined"] != (manway.Date{Year: 2024, Month: 11, Day: 20}) {
		t.Errorf("follow up %v", kinds)
	}
	alone := readText(t, strings.Replace(fifteen, `"people": "about 4"`, `"people": "about 4", "last_pumped": "2023-11-20"`, 1))
	if v, _ := page(t, alone, cost.Book{}); v.Pump.Forecast.Method != hydraulics.ByMeasuredRate {
		t.Errorf("the last pump-out alone gives %v", v.Pump.Forecast.Method)
	}
	for was, is := range map[string]string{
		`"date": "2024-11-20"`: `"date": "2026-11-20"`, `"date": "2021"`: `"date": "2025"`, `"sludge": "9 in"`: `"sludge": "50 in"`, `"level": "50 in"`: `"level": "90 in"`,
	} {
		if _, err := visit.Read(strings.NewReader(strings.Replace(text, was, is, 1))); err == nil || !strings.Contains(err.Error(), "history[") {
			t.Errorf("%s in place of %s gives %v", is, was, err)
		}
	}
}

// The crew gets five lines; the list before leaving ticks what was written down and
// says what was not done; a field says what it takes and how long it waits.
func TestCrewAndCloseOut(t *testing.T) {
	v, _ := page(t, readText(t, fifteen), cost.Book{})
	sections := func(v visit.Visit) map[string]visit.Section {
		all := map[string]visit.Section{}
		for _, s := range v.Sections {
			all[s.ID] = s
		}
		return all
	}
	crew := sections(v)["crew"].Says
	if len(crew) != 5 {
		t.Fatalf("the crew gets %d lines: %q", len(crew), crew)
	}
	for i, lead := range []string{"Lids: ", "Pump: ", "Hose: ", "DO NOT GO BELOW ", "Truck: "} {
		if !strings.HasPrefix(crew[i], lead) {
			t.Errorf("line %d is %q, want %q first", i+1, crew[i], lead)
		}
	}
	done := strings.Replace(strings.Replace(fifteen, `"handle"`, `"drops": "yes", "handle"`, 1), `"household"`, `"done": {"lids_on": "yes", "notice_left": "no", "gauge_before": "100 gal", "gauge_after": "600 gal",
    "disposal_site": "north field", "disposal_ticket": "7", "disposal_volume": "500 gal", "field": {"name": "north", "area": "1 acre", "nitrogen": "100 lb"}}, "household"`, 1)
	v, _ = page(t, readText(t, done), cost.Book{})
	text := strings.Join(sections(v)["close_out"].Says, "\n")
	for _, want := range []string{
		"☑ lid: lid on, every fastener in.", "☐ NOT DONE: Left with the owner: ", "☑ Truck gauge read before and after each compartment: 100 gal / 600 gal",
		"☑ Disposal ticket: site north field volume 500 gal number 7", "The truck's gauge says 500 gal", "takes up to 38,462 gal in 365 days", "inject it, or plough it in within 6 hours",
		"Not before 2028-01-20: food crops that touch the soil.", "Keep the record for 5 years.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the list lacks %q:\n%s", want, text)
		}
	}
}

// What may be in a tank that nobody measured is asked for, from no solids to a third
// of the depth to the outlet: with that much the visit says what a survey says in
// which 16 of 48 in were read.
func TestSolidsThatMayBeThere(t *testing.T) {
	bare := readText(t, fifteen)
	bare.Compartments = nil
	v, _ := page(t, bare, cost.Book{})
	for _, c := range v.Changes {
		if c.Measure != "sludge and scum in compartment 1" {
			continue
		}
		at := map[float64]string{0: c.AtLow, 16: c.AtHigh}
		for sludge, want := range at {
			s := bare
			s.Compartments = []visit.Contents{{Level: manway.Read(48 * manway.Inch), Sludge: manway.Read(manway.Length(sludge) * manway.Inch), Scum: manway.Read(0)}}
			known, _ := page(t, s, cost.Book{})
			got := map[string]string{"the next pump-out": known.Pump.Forecast.Pumped.Likely.String(), "the level on arrival": known.Pump.Found.PointsTo.String()}[c.What]
			if got != want {
				t.Errorf("%v in of sludge: %s %s, the change says %s", sludge, c.What, got, want)
			}
		}
		if c.Low != "no solids" || c.High != "a third of solids" {
			t.Errorf("%+v", c)
		}
		return
	}
	t.Errorf("not asked for: %+v", v.Changes)
}
