package cost_test

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/internal/hostile"
	"manway.example/manway/riser"
)

func abused(t testing.TB) hostile.Room {
	book := must(cost.ReadPriceBook(strings.NewReader(cost.BookHeader + "\nconcrete,bagged mix,FTQ,9.50,USD,2026-01-01,invented\nlabour,crew hour,LH,85,USD,2026-01-01,invented\n")))(t)
	on := manway.Date{Year: 2026, Month: 11, Day: 25}
	lines := []cost.Line{
		{Code: "concrete", Class: riser.Material, Quantity: 4, Unit: "FTQ", Quantities: cost.Range{Low: 3, Likely: 4, High: 6, Shape: cost.PERT}},
		{Code: "labour", Class: riser.Labour, Quantity: 6, Unit: "LH", Crew: 2, Prices: cost.Range{Low: 80, Likely: 85, High: 99}},
	}
	job := cost.Job{Title: "riser", Lines: lines, Book: book, On: on, Terms: cost.Terms{
		Currency: "USD", OverheadPercent: usd(12), ProfitPercent: usd(15), ContingencyPercent: usd(5), ValidDays: 30, Exclusions: []string{"rock"},
		Taxes:        []cost.Tax{{Class: riser.Material, Percent: decimal.NewFromFloat(6.5), Rounding: cost.HalfUp}},
		ChangeOrders: []cost.ChangeOrder{{If: "rock is met", Work: "breaking", Code: "labour", Quantity: 2, Unit: "LH"}},
	}}
	estimate := must(job.Estimate())(t)
	compared := must(cost.Compare(choices(), horizon))(t)
	spread := must(estimate.Simulate(cost.Simulation{Draws: 1000, Seed: 1}))(t)
	read := func(text string) (cost.Book, error) { return cost.ReadPriceBook(strings.NewReader(text)) }
	return hostile.Room{
		Funcs: []any{
			cost.Bulks, cost.Swells, cost.Compare, cost.MixVolume, cost.Productivities, cost.SameLife,
			read, cost.SumOf, cost.BarWeight, cost.Supplies, cost.Takeoff, cost.Merge, cost.Basis,
		},
		Sealed: []any{cost.Book{}, cost.Estimate{}, cost.Comparison{}, cost.Outlook{}, cost.Spread{}},
		Apart:  map[string]string{"ReadPriceBook": "as read, from a text"},
		Refuse: map[string]string{"BookError.Unwrap": "gives the fault that it is made of"},
		Slow:   []string{"Estimate.Simulate", "Compare", "Comparison.Working"},
		Seeds: []any{
			book, job, estimate, compared, spread, lines[0], lines[1], choices(), choices()[0], choices()[1], choices()[2], choices()[3], horizon, usd(450), usd(12), decimal.RequireFromString("6.5"),
			cost.PatchOrReplace{Patch: usd(450), Replace: usd(2400), ReplaceLife: 20, Rate: 0.05}, cost.UnitWeights{Bank: 1900, Loose: 1500, Compacted: 2000},
			cost.Haul{Bank: 4, SwellPercent: 25, Truck: 5}, cost.SlopedPit{BottomWidth: 1, BottomLength: 2, TopWidth: 3, TopLength: 4, Depth: 2}, cost.Placed{Volume: 0.3, WastePercent: 10, Pack: 0.017},
			cost.GroutMix{Cement: 42, SpecificGravity: 3.15, Water: 0.02}, cost.Rate(0.05), cost.Margin, cost.Bulks()[0],
			cost.Task{Name: "dig-hand", Quantity: 3, Unit: "FTQ", Crew: 2}, cost.Crew{People: 2, Availability: 0.8, Hours: 8},
			cost.Neglect{Visit: usd(350), Every: 3, Repair: usd(9000), LastsKept: cost.SameLife(30), LastsLeft: cost.SameLife(12)},
			cost.WaitingCost{Now: usd(2000), Years: 3, Escalation: 0.03, Damage: usd(500), Meanwhile: usd(20), Rate: 0.05}, cost.Project{-1000, 300, 400, 500}, cost.Defender{Now: 2000, Yearly: []float64{300, 400, 600}, Rate: 0.05},
			cost.PumpOut{Gallons: 4, Covers: []manway.Length{0.3, 0.6}, Hose: 30, Filters: 1, Loads: 1, Disposal: true, DisposalStep: 0.4}, cost.Band{Gallons: 4, Lids: 1, Cover: 0.3, Hose: 15, Step: 0.4},
			cost.Truck{Capacity: 9, Rate: 0.01, Setup: 1800, RoundTrip: 5400, Crew: 2}, cost.Quote{Title: "riser", On: on, Currency: "USD", Saw: []string{"crack"}, Ways: []cost.Way{{Title: "patch", Price: usd(450)}}},
			cost.Range{Low: 1, Likely: 2, High: 4}, cost.Moments{Mean: 10, SD: 2}, cost.Unit("FTQ"), cost.Unit("LH"), cost.Unit("EA"), cost.Currency("USD"), cost.Simulation{Draws: 1000, Seed: 1},
			cost.BarGrid{Width: 2, Length: 3, Cover: 0.05, Spacing: 0.2}, cost.Mesh{Spacing: 0.15, Wire: 2e-5}, cost.Supply{Code: "grit", NetUnit: "FTQ", Unit: "BG", Pack: 0.5, Whole: true},
			cost.Tariff{Fixed: 100, Each: 3}, []riser.Item{{Code: "concrete", Quantity: 3, Unit: "FTQ"}}, cost.BookError{Line: 3, InputError: manway.InputError{Field: "price", Value: "x", Want: "a price"}},
			cost.BookErrors{{Line: 3, InputError: manway.InputError{Field: "price", Value: "x", Want: "a price"}}}, cost.HalfUp, cost.Nominal, cost.Usual,
		},
		Calls: [][]any{
			{read, cost.BookHeader + "\nconcrete,bagged mix,FTQ,9.50,USD,2026-01-01,invented\n"}, {cost.Bulk.Haul, cost.Bulks()[0], 3 * manway.CubicMetre},
			{cost.Currency.Shares, cost.Currency("USD"), usd(100), []decimal.Decimal{usd(1), usd(2), usd(4)}}, {cost.Profit.AsMarkup, cost.Margin, usd(30)}, {cost.Profit.AsMargin, cost.Markup, usd(30)}, {cost.Unit.Per, cost.Unit("FTQ"), cost.Unit("YDQ")},
			{cost.Estimate.Simulate, estimate, cost.Simulation{Draws: 1000, Seed: 1}},
		},
	}
}

func TestHostile(t *testing.T) { abused(t).Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused(f).Fuzz(f) }
