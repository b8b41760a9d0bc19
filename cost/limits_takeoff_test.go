package cost_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/internal/limit"
	"manway.example/manway/riser"
)

func TestLimitsOfQuantities(t *testing.T) {
	type bars struct{ Grid cost.BarGrid }
	g := bars{cost.BarGrid{Width: 5 * manway.Foot, Length: 8 * manway.Foot, Cover: 2 * manway.Inch, Spacing: manway.Foot}}
	limit.Check(t, g, func(x bars) error { _, _, _, err := x.Grid.Bars(); return err },
		limit.Between("Spacing", manway.Inch, 10*manway.Foot).In("Grid.Spacing"), limit.Between("Cover", 0, manway.Foot).In("Grid.Cover"),
		limit.Between("Width", 4*manway.Inch, 1000*manway.Foot).In("Grid.Width"), limit.Between("Length", 4*manway.Inch, 1000*manway.Foot).In("Grid.Length"))
	type bar struct {
		Number int
		Length manway.Length
	}
	limit.Check(t, bar{4, manway.Foot}, func(x bar) error { return second(cost.BarWeight(x.Number, x.Length)) }, limit.AtLeast("Number", 3), limit.Between("Length", 0, 1e7*manway.Foot))
	limit.Check(t, bar{18, manway.Foot}, func(x bar) error { return second(cost.BarWeight(x.Number, x.Length)) }, limit.AtMost("Number", 18))
	type mesh struct {
		Mesh cost.Mesh
		Area manway.Area
	}
	limit.Check(t, mesh{cost.Mesh{Spacing: 6 * manway.Inch, Wire: 0.014 * manway.SquareInch}, 40 * manway.SquareFoot}, func(x mesh) error { return second(x.Mesh.BareWeight(x.Area)) },
		limit.Between("Spacing", manway.Inch, 2*manway.Foot).In("Mesh.Spacing"), limit.Between("Wire", 0.001*manway.SquareInch, manway.SquareInch).In("Mesh.Wire"), limit.Between("Area", 0, 1e6*manway.SquareFoot))
	limit.Check(t, cost.UnitWeights{Bank: 1900, Loose: 1500, Compacted: 2050}, func(w cost.UnitWeights) error { return second(w.Conversion()) },
		limit.AtMost("Bank", 5000*manway.KilogramPerCubicMetre), limit.Between("Loose", 10*manway.KilogramPerCubicMetre, 1900*manway.KilogramPerCubicMetre), limit.Between("Compacted", 10*manway.KilogramPerCubicMetre, 5000*manway.KilogramPerCubicMetre))
	limit.Check(t, cost.UnitWeights{Bank: 10, Loose: 10, Compacted: 10}, func(w cost.UnitWeights) error { return second(w.Conversion()) }, limit.AtLeast("Bank", 10*manway.KilogramPerCubicMetre))
	limit.Check(t, cost.UnitWeights{Bank: 5000, Loose: 5000, Compacted: 10}, func(w cost.UnitWeights) error { return second(w.Conversion()) }, limit.AtMost("Loose", 5000*manway.KilogramPerCubicMetre))
	limit.Check(t, cost.Haul{Bank: 5, SwellPercent: 25, Truck: 4}, func(h cost.Haul) error { return third(h.Loads()) },
		limit.Between("Bank", 0, 1e6*manway.CubicMetre), limit.Between("SwellPercent", 0.0, 100), limit.Between("Truck", 0.01*manway.CubicMetre, 1000*manway.CubicMetre))
	limit.Check(t, cost.SlopedPit{BottomWidth: 1, BottomLength: 2, TopWidth: 3, TopLength: 4, Depth: 1}, func(p cost.SlopedPit) error { return second(p.Volumes()) },
		limit.AtLeast("BottomWidth", manway.Length(0)), limit.AtLeast("BottomLength", manway.Length(0)), limit.Between("TopWidth", manway.Metre, 1000*manway.Foot), limit.Between("TopLength", 2*manway.Metre, 1000*manway.Foot), limit.Between("Depth", 0, 1000*manway.Foot))
	limit.Check(t, cost.SlopedPit{BottomWidth: 1000 * manway.Foot, BottomLength: 1000 * manway.Foot, TopWidth: 1000 * manway.Foot, TopLength: 1000 * manway.Foot, Depth: 1}, func(p cost.SlopedPit) error { return second(p.Volumes()) },
		limit.AtMost("BottomWidth", 1000*manway.Foot), limit.AtMost("BottomLength", 1000*manway.Foot))
	limit.Check(t, cost.Placed{Volume: 2, WastePercent: 5, Pack: 0.02}, func(p cost.Placed) error { return third(p.Order()) },
		limit.Between("Volume", 0, 1e6*manway.CubicMetre), limit.Between("WastePercent", 0.0, 100), limit.Between("Pack", 1e-6*manway.CubicMetre, 1000*manway.CubicMetre))
	limit.Check(t, manway.Pound, func(m manway.Mass) error { return second(cost.MixVolume(m)) }, limit.Between("Dry", 0, 1e6*manway.Pound))
	limit.Check(t, cost.GroutMix{Cement: 40, SpecificGravity: 3.15, Water: 0.02}, func(g cost.GroutMix) error { return second(g.Volume()) },
		limit.Between("Cement", 0, 1e6*manway.Pound), limit.Between("SpecificGravity", 1.0, 5), limit.Between("Water", 0, 1e5*manway.Gallon))
	type haul struct {
		cost.Bulk
		Loose manway.Volume
	}
	limit.Check(t, haul{cost.Bulks()[0], manway.CubicYard}, func(x haul) error { return second(x.Haul(x.Loose)) },
		limit.Between("Weight", 1*manway.PoundPerCubicFoot, 1000*manway.PoundPerCubicFoot), limit.Between("Loose", 0, 1e6*manway.CubicMetre))
}

func TestLimitsOfLabour(t *testing.T) {
	task := cost.Task{Name: "dig-hand", Quantity: 3, Unit: "YDQ", Crew: 2, Delay: 1.5}
	limit.Check(t, task, func(x cost.Task) error { return second(x.Line()) }, limit.Between("Quantity", 0.0, 1e9), limit.Between("Crew", 1, 100), limit.Between("Delay", 1.0, 5))
	limit.Refuses(t, task, func(x cost.Task) error { return second(x.Line()) }, "Name", func(x *cost.Task) { x.Name = "rest" })
	limit.Refuses(t, task, func(x cost.Task) error { return second(x.Line()) }, "Unit", func(x *cost.Task) { x.Unit = "CY" })
	type crew struct {
		Crew        cost.Crew
		LabourHours float64
	}
	limit.Check(t, crew{cost.Crew{People: 2, Availability: 0.8, Hours: 8}, 6}, func(x crew) error { return second(x.Crew.Days(x.LabourHours)) },
		limit.Between("LabourHours", 0.0, 1e9), limit.Between("Crew.People", 1, 1000), limit.Between("Crew.Availability", 0.1, 1), limit.Between("Crew.Hours", 1.0, 16))
	limit.Refuses(t, cost.Unit("YDQ"), func(u cost.Unit) error { return second(u.Per("FTQ")) }, "To", func(u *cost.Unit) { *u = "FOT" })
	limit.Refuses(t, cost.Currency("USD"), func(c cost.Currency) error { return second(c.MinorUnit()) }, "Currency", func(c *cost.Currency) { *c = "XAU" })
}

func TestLimitsOfPumpOuts(t *testing.T) {
	type pump struct {
		PumpOut cost.PumpOut
		Band    cost.Band
	}
	x := pump{cost.PumpOut{Gallons: 4, Covers: []manway.Length{0.3}, Hose: 30, Filters: 1, Loads: 1, DisposalStep: 0.4}, cost.Band{Gallons: 4, Lids: 1, Cover: 0.2, Hose: 30, Step: 0.2}}
	const most, far = 1e5 * manway.Gallon, 5280 * manway.Foot
	limit.Check(t, x, func(x pump) error { return second(x.PumpOut.Lines(x.Band)) },
		limit.Between("Gallons", 0, most).In("PumpOut.Gallons"), limit.AtMost("Covers", 100).In("PumpOut.Covers"), limit.Between("Covers[0]", 0, 30*manway.Foot).In("PumpOut.Covers[0]"),
		limit.Between("Hose", 0, far).In("PumpOut.Hose"), limit.Between("Filters", 0, 100).In("PumpOut.Filters"), limit.Between("Loads", 0, 1000).In("PumpOut.Loads"),
		limit.Between("DisposalStep", manway.Gallon/10, most).In("PumpOut.DisposalStep"), limit.Between("Band.Step", manway.Gallon/10, most),
		limit.Between("Band.Gallons", 0, most), limit.Between("Band.Lids", 0, 100), limit.Between("Band.Cover", 0, 30*manway.Foot), limit.Between("Band.Hose", 0, far))
	type truck struct {
		Truck   cost.Truck
		Gallons manway.Volume
	}
	limit.Check(t, truck{cost.Truck{Capacity: 8, Rate: 0.006, Setup: manway.Hour, RoundTrip: manway.Hour, Crew: 2}, 4}, func(x truck) error { return second(x.Truck.Lines(x.Gallons)) },
		limit.Between("Gallons", 0, most), limit.Between("Truck.Capacity", 50*manway.Gallon, 2e4*manway.Gallon), limit.Between("Truck.Rate", manway.GallonPerMinute, 2000*manway.GallonPerMinute),
		limit.Between("Truck.Setup", 0, manway.Day), limit.Between("Truck.RoundTrip", 0, manway.Day), limit.Between("Truck.Crew", 1, 20))
}

func TestLimitsOfTakeoff(t *testing.T) {
	type scope struct {
		Scope    []riser.Item
		Supplies []cost.Supply
	}
	x := scope{[]riser.Item{{Code: "a", Quantity: 3, Unit: "FTQ", Crew: 2}}, []cost.Supply{{Code: "a", NetUnit: "FTQ", Unit: "EA", WastePercent: 5, Bulking: 1.2, Pack: 0.5}}}
	limit.Check(t, x, func(x scope) error { return second(cost.Takeoff(x.Scope, x.Supplies...)) },
		limit.AtMost("Scope", 10000), limit.Between("Scope[0].Quantity", 0.0, 1e9), limit.Between("Scope[0].Crew", 0, 100), limit.AtMost("Scope[0].Class", riser.Wait),
		limit.Between("Supplies[0].WastePercent", 0.0, 100), limit.Between("Supplies[0].Bulking", 1.0, 3), limit.Between("Supplies[0].Pack", 1e-6, 1e6))
	limit.Refuses(t, x, func(x scope) error { return second(cost.Takeoff(x.Scope, x.Supplies...)) }, "Scope[0].Code", func(x *scope) { x.Scope = []riser.Item{{Unit: "FTQ"}} })
	limit.Refuses(t, x, func(x scope) error { return second(cost.Takeoff(x.Scope, x.Supplies...)) }, "Scope[0].Description", func(x *scope) { x.Scope = []riser.Item{{Code: "a", Unit: "FTQ", Description: "two\nlines"}} })
	limit.Refuses(t, x, func(x scope) error { return second(cost.Takeoff(x.Scope, x.Supplies...)) }, "Scope[0].Unit", func(x *scope) { x.Scope = []riser.Item{{Code: "a", Unit: "FOT"}} })
}

// plainJob is a job with its percentages and its minimum as bare numbers.
type plainJob struct {
	Lines []cost.Line
	On    manway.Date
	Terms plainTerms
}

type plainTerms struct {
	Currency                                           cost.Currency
	Rounding                                           cost.Rounding
	OverheadPercent, ContingencyPercent, ProfitPercent float64
	ProfitAs                                           cost.Profit
	ProfitOn                                           cost.Stacking
	Taxes                                              []plainTax
	Minimum                                            float64
	ValidDays                                          int
	ChangeOrders                                       []cost.ChangeOrder
}

type plainTax struct {
	Class    riser.Class
	Percent  float64
	At       cost.TaxedAt
	Rounding cost.Rounding
}

func (p plainTerms) terms() cost.Terms {
	t := cost.Terms{Currency: p.Currency, Rounding: p.Rounding, OverheadPercent: dec(p.OverheadPercent), ContingencyPercent: dec(p.ContingencyPercent), ProfitPercent: dec(p.ProfitPercent),
		ProfitAs: p.ProfitAs, ProfitOn: p.ProfitOn, Minimum: dec(p.Minimum), ValidDays: p.ValidDays, ChangeOrders: p.ChangeOrders}
	for _, x := range p.Taxes {
		t.Taxes = append(t.Taxes, cost.Tax{Class: x.Class, Percent: dec(x.Percent), At: x.At, Rounding: x.Rounding})
	}
	return t
}

func estimateRefused(x plainJob) error {
	return second(cost.Job{Lines: x.Lines, On: x.On, Terms: x.Terms.terms()}.Estimate())
}

func TestLimitsOfJob(t *testing.T) {
	x := plainJob{[]cost.Line{{Code: "a", Quantity: 3, Unit: "EA", Crew: 2}}, manway.Date{Year: 2026, Month: 11, Day: 25},
		plainTerms{Currency: "USD", Taxes: []plainTax{{Percent: 6}}, ChangeOrders: []cost.ChangeOrder{{Code: "rock", Quantity: 1, Unit: "YDQ"}}}}
	limit.Check(t, x, estimateRefused,
		limit.AtMost("Lines", 10000), limit.Between("Lines[0].Quantity", 0.0, 1e9), limit.Between("Lines[0].Crew", 0, 100), limit.AtMost("Lines[0].Class", riser.Wait),
		limit.AtMost("Terms.Rounding", cost.HalfUp),
		limit.Between("Terms.OverheadPercent", 0.0, 1000), limit.Between("Terms.ContingencyPercent", 0.0, 1000), limit.Between("Terms.ProfitPercent", 0.0, 1000),
		limit.AtMost("Terms.ProfitAs", cost.Margin), limit.AtMost("Terms.ProfitOn", cost.OnCost),
		limit.Between("Terms.Minimum", 0, mostMoney), limit.Between("Terms.ValidDays", 0, 3650),
		limit.AtMost("Terms.Taxes", 100), limit.Between("Terms.Taxes[0].Percent", 0.0, 100), limit.AtMost("Terms.Taxes[0].Class", riser.Wait), limit.AtMost("Terms.Taxes[0].At", cost.OnSale), limit.AtMost("Terms.Taxes[0].Rounding", cost.HalfUp),
		limit.AtMost("Terms.ChangeOrders", 100), limit.Between("Terms.ChangeOrders[0].Quantity", 0.0, 1e9))
	limit.Refuses(t, x, estimateRefused, "On", func(x *plainJob) { x.On = manway.Date{} })
	limit.Refuses(t, x, estimateRefused, "Lines[0].Code", func(x *plainJob) { x.Lines = []cost.Line{{Unit: "EA"}} })
	limit.Refuses(t, x, estimateRefused, "Lines[0].Description", func(x *plainJob) { x.Lines = []cost.Line{{Code: "a", Unit: "EA", Description: "two\nlines"}} })
	x.Terms.ProfitAs, x.Terms.ProfitPercent = cost.Margin, 20
	limit.Check(t, x, estimateRefused, limit.Below("Terms.ProfitPercent", 100.0))
	book := cost.BookHeader + "\na,thing,EA,1000000000.00,USD,2026-01-01,\n"
	limit.Refuses(t, x, func(x plainJob) error {
		return second(cost.Job{Lines: x.Lines, Book: must(cost.ReadPriceBook(strings.NewReader(book)))(t), On: x.On, Terms: cost.Terms{Currency: "USD"}}.Estimate())
	}, "Lines", func(x *plainJob) { x.Lines = []cost.Line{{Code: "a", Quantity: 1001, Unit: "EA"}} }) // above 1e12 in all
}

func TestLimitsOfSimulation(t *testing.T) {
	type simulation struct {
		Draws             int
		Places            int
		Direct            float64
		Amount, UnitPrice float64
		Lines             int
		Complete          bool
	}
	line := cost.Line{Code: "a", Quantity: 3, Unit: "EA", Quantities: cost.Range{Low: 1, Likely: 3, High: 5}}
	refused := simulation{Draws: 1000, Places: 2, Direct: 30, Amount: 30, UnitPrice: 10, Lines: 1, Complete: true}
	limit.Check(t, refused, func(x simulation) error {
		return simulated(x.Draws, x.Places, x.Lines, x.Direct, x.Amount, x.UnitPrice, x.Complete, line)
	},
		limit.Between("Draws", 1000, 1000000), limit.Between("Places", 0, 12), limit.Between("Direct", 0, mostMoney), limit.Between("Amount", 0, mostMoney), limit.Between("UnitPrice", 0, mostMoney))
	limit.Refuses(t, refused, func(x simulation) error {
		return simulated(x.Draws, x.Places, x.Lines, x.Direct, x.Amount, x.UnitPrice, x.Complete, line)
	}, "Estimate", func(x *simulation) { x.Complete = false })
	limit.Refuses(t, refused, func(x simulation) error {
		return simulated(x.Draws, x.Places, x.Lines, x.Direct, x.Amount, x.UnitPrice, x.Complete, line)
	}, "Lines", func(x *simulation) { x.Lines = 0 })
	limit.Check(t, 1, func(n int) error { return simulated(1000, 2, n, 30, 30, 10, n < 100, line) }, limit.AtMost("Lines", 10000)) // so many are not drawn
}

// simulated draws the total of an estimate of n lines alike.
func simulated(draws, places, n int, direct, amount, price float64, complete bool, line cost.Line) error {
	e := cost.Estimate{Currency: "USD", Places: places, Direct: dec(direct), Complete: complete, Terms: cost.Terms{Currency: "USD"}}
	for range n {
		e.Lines = append(e.Lines, cost.PricedLine{Line: line, Amount: dec(amount), UnitPrice: dec(price), Priced: true})
	}
	return second(e.Simulate(cost.Simulation{Draws: draws}))
}

func decs(list []float64) (out []decimal.Decimal) {
	for _, v := range list {
		out = append(out, dec(v))
	}
	return out
}

func TestLimitsOfMoney(t *testing.T) {
	limit.Check(t, 25.0, func(v float64) error { return second(cost.Markup.AsMargin(dec(v))) }, limit.Between("Percent", 0.0, 1000))
	limit.Check(t, 20.0, func(v float64) error { return second(cost.Margin.AsMarkup(dec(v))) }, limit.AtLeast("Percent", 0.0), limit.Below("Percent", 100.0))
	limit.Refuses(t, cost.Margin, func(p cost.Profit) error { return second(p.AsMarkup(dec(20))) }, "Profit", func(p *cost.Profit) { *p = cost.Margin + 1 })
	type rounded struct {
		Amount float64
		Places int
	}
	limit.Check(t, rounded{1.25, 1}, func(x rounded) error { return second(cost.HalfUp.Round(dec(x.Amount), x.Places)) }, limit.Between("Amount", -mostMoney, mostMoney), limit.Between("Places", 0, 12))
	limit.Refuses(t, decimal.New(1, 0), func(d decimal.Decimal) error { return second(cost.HalfUp.Round(d, 2)) }, "Amount", func(d *decimal.Decimal) { *d = decimal.New(1, 1000000) })
	type shares struct {
		Total   float64
		Weights []float64
	}
	x := shares{10, []float64{1, 2}}
	limit.Check(t, x, func(x shares) error { return second(cost.Currency("USD").Shares(dec(x.Total), decs(x.Weights))) },
		limit.Between("Total", 0, mostMoney), limit.Between("Weights[0]", 0, mostMoney))
	limit.Refuses(t, x, func(x shares) error { return second(cost.Currency("USD").Shares(dec(x.Total), decs(x.Weights))) }, "Weights", func(x *shares) { x.Weights = []float64{0, 0} })
}

// bookRefused reads a price book and gives its faults as those of any input.
func bookRefused(text string) error {
	_, err := cost.ReadPriceBook(strings.NewReader(text))
	var list cost.BookErrors
	if !errors.As(err, &list) {
		return err
	}
	var faults manway.InputErrors
	for _, f := range list {
		faults = append(faults, &f.InputError)
	}
	return faults
}

func TestLimitsOfBook(t *testing.T) {
	book := cost.BookHeader + "\na,thing,EA,1.00,USD,2026-01-01,\n"
	limit.Refuses(t, book, bookRefused, "Book", func(s *string) { *s += strings.Repeat("#\n", 8<<20) })
	limit.Refuses(t, book, bookRefused, "Header", func(s *string) { *s = "code" + *s })
	limit.Refuses(t, book, bookRefused, "Row", func(s *string) { *s += "a,b\n" })
	limit.Refuses(t, book, bookRefused, "Code", func(s *string) { *s += "a b,thing,EA,1.00,USD,2026-01-01,\n" })
	limit.Refuses(t, book, bookRefused, "Description", func(s *string) { *s += "b, ,EA,1.00,USD,2026-01-01,\n" })
	limit.Refuses(t, book, bookRefused, "Price", func(s *string) { *s += "b,thing,EA,-1.00,USD,2026-01-01,\n" })
	limit.Refuses(t, book, bookRefused, "ValidFrom", func(s *string) { *s += "b,thing,EA,1.00,USD,2026-02-30,\n" })
}
