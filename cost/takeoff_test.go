package cost_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

// takenOff is the line of one scope item.
func takenOff(t testing.TB, code string, quantity float64, unit string, own ...cost.Supply) cost.Line {
	t.Helper()
	lines, err := cost.Takeoff([]riser.Item{{Code: code, Quantity: quantity, Unit: unit}}, own...)
	if err != nil {
		t.Fatal(err)
	}
	return lines[0]
}

func exampleBook(t testing.TB) cost.Book {
	t.Helper()
	f, err := os.Open("../testdata/prices/example.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	return must(cost.ReadPriceBook(f))(t)
}

// Every code that a scope may carry can be taken off and priced: a material has
// a supply in its own unit, and the example book a price, which it calls
// invented.
func TestEveryScopeCodeIsKnown(t *testing.T) {
	book := exampleBook(t)
	for _, c := range riser.ItemCodes() {
		lines, err := cost.Takeoff([]riser.Item{{Code: c.Code, Description: c.Description, Class: c.Class, Quantity: 1.25, Unit: c.Unit, Crew: 1}})
		if err != nil {
			t.Errorf("%s: %v", c.Code, err)
			continue
		}
		l := lines[0]
		known := slices.ContainsFunc(cost.Supplies(), func(s cost.Supply) bool { return s.Code == c.Code })
		if known != (c.Class == riser.Material) {
			t.Errorf("%s is %v and has a supply: %v", c.Code, c.Class, known)
		}
		e := must(cost.Job{On: today, Book: book, Lines: lines, Terms: cost.Terms{Currency: "USD"}}.Estimate())(t)
		if !e.Complete {
			t.Errorf("%s as %s: %s", c.Code, l.Code, e.Missing[0].Reason)
		}
		if c.Class != riser.Wait && !e.Cautions.Has(manway.InventedPrices) {
			t.Errorf("%s: the price is not marked as invented", c.Code)
		}
	}
	for _, s := range cost.Supplies() {
		if err := s.Validate(); err != nil {
			t.Errorf("%s: %v", s.Code, err)
		}
	}
}

// Property (bounded): what is bought covers what is needed, by less than one more pack.
func TestPacksCover(t *testing.T) {
	for _, s := range cost.Supplies() {
		for _, q := range []float64{0, 0.001, 0.45, 1, 3, 7.1, 14.5, 100} {
			l := takenOff(t, s.Code, q, string(s.NetUnit))
			needed := q * (1 + s.WastePercent/100)
			if s.Bulking > 0 {
				needed *= s.Bulking
			}
			pack := l.Pack
			if pack == 0 {
				pack = 1
			}
			over := l.Quantity*pack - needed
			if over < -1e-9*needed || s.Whole && over >= pack || !(math.Abs(over-l.Leftover) <= 1e-9*math.Max(needed, 1)) {
				t.Errorf("%s %v: bought %v of %v, needed %v, left over %v", s.Code, q, l.Quantity, pack, needed, l.Leftover)
			}
			if s.Whole && l.Quantity != math.Trunc(l.Quantity) {
				t.Errorf("%s %v: %v packs", s.Code, q, l.Quantity)
			}
		}
	}
}

// Exactly three packs are three, a hair more is four.
func TestPackSlack(t *testing.T) {
	own := cost.Supply{Code: "ring", NetUnit: "INH", Unit: "EA", Pack: 6, Whole: true}
	for q, want := range map[float64]float64{18: 3, 18 + 1e-12: 3, 18.001: 4, 0: 0} {
		if got := takenOff(t, "ring", q, "INH", own).Quantity; got != want {
			t.Errorf("%v in of 6 in rings: %v, want %v", q, got, want)
		}
	}
}

// Two half bags are one bag, and merging leaves the rest alone.
func TestMerge(t *testing.T) {
	lines := must(cost.Takeoff([]riser.Item{
		{Code: "concrete", Quantity: 0.2, Unit: "FTQ", Working: "first"}, {Code: "dig-hand", Class: riser.Labour, Quantity: 2, Unit: "LH", Crew: 2},
		{Code: "concrete", Quantity: 0.2, Unit: "FTQ", Working: "second"}, {Code: "dig-hand", Class: riser.Labour, Quantity: 3, Unit: "LH", Crew: 2},
	}))(t)
	merged := cost.Merge(lines)
	if len(merged) != 2 || merged[0].Quantity != 1 || merged[1].Quantity != 5 || merged[1].Hours() != 2.5 {
		t.Errorf("%+v", merged)
	}
	if got := merged[0].Working().String(); !strings.Contains(got, "first; second") || !strings.Contains(got, "left over") {
		t.Errorf("working\n%s", got)
	}
	if lines[0].Net != 0.2 {
		t.Error("merging changed what was merged")
	}
	lines[2].Quantities = cost.Range{Low: 1, Likely: 1, High: 2}
	if got := cost.Merge(lines); len(got) != 3 {
		t.Errorf("a line with a range was merged: %d lines", len(got))
	}
}

func TestTakeoffFaults(t *testing.T) {
	_, err := cost.Takeoff([]riser.Item{
		{Code: "concrete", Quantity: -1, Unit: "FTQ"}, {Code: "concrete", Quantity: 1, Unit: "YDQ"}, {Code: "x y", Quantity: math.NaN(), Unit: "LB"},
	})
	faults, ok := err.(manway.InputErrors)
	if !ok || len(faults) != 5 {
		t.Fatalf("%v", err)
	}
	for i, want := range []string{"Scope[0].Quantity", "Scope[1].Unit", "Scope[2].Code", "Scope[2].Quantity", "Scope[2].Unit"} {
		if faults[i].Field != want {
			t.Errorf("fault %d is of %s, want %s", i, faults[i].Field, want)
		}
	}
}

// Base price and adders: only what goes beyond the band is charged.
func TestPumpOutAdders(t *testing.T) {
	band := cost.Band{Gallons: 1000 * manway.Gallon, Lids: 1, Cover: 6 * manway.Inch, Hose: 100 * manway.Foot}
	inside := cost.PumpOut{Gallons: 1000 * manway.Gallon, Covers: []manway.Length{6 * manway.Inch}, Hose: 100 * manway.Foot}
	lines := must(inside.Lines(band))(t)
	if len(lines) != 1 || lines[0].Code != "pump-base" {
		t.Errorf("within the band: %+v", lines)
	}
	more := cost.PumpOut{
		Gallons: 1201 * manway.Gallon, Covers: []manway.Length{18 * manway.Inch, 0, 12 * manway.Inch}, Hose: 140 * manway.Foot, Filters: 1,
		Crust: true, AfterHours: true, Loads: 2, Disposal: true, DisposalStep: 100 * manway.Gallon,
	}
	band.Step = 50 * manway.Gallon
	got := map[string]float64{}
	for _, l := range must(more.Lines(band))(t) {
		got[l.Code] += l.Quantity
	}
	for code, want := range map[string]float64{"pump-base": 1, "pump-over": 250, "lid-more": 2, "lid-deeper": 1.5, "hose-over": 40, "filter-clean": 1,
		"crust-break": 1, "after-hours": 1, "disposal": 1300, "disposal-load": 2} {
		if !(math.Abs(got[code]-want) <= 1e-9) {
			t.Errorf("%s: %v, want %v", code, got[code], want)
		}
	}
	truck := cost.Truck{Capacity: 1000 * manway.Gallon, Rate: 100 * manway.GallonPerMinute, Setup: manway.Hour / 2, RoundTrip: manway.Hour, Crew: 2}
	parts := must(truck.Lines(1500 * manway.Gallon))(t)
	if hours := parts[0].Quantity; !(math.Abs(hours-(0.5+0.25+2)) <= 1e-9) || parts[1].Hours() != hours || parts[3].Quantity != 2 {
		t.Errorf("truck: %+v", parts)
	}
}
