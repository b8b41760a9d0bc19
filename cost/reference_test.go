package cost_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/internal/reftable"
	"manway.example/manway/riser"
)

func rows(t *testing.T, prefix string) reftable.Rows {
	t.Helper()
	return reftable.Load(t, "cost.csv").Under(prefix)
}

func rate(t testing.TB, row reftable.Row, key string) cost.Rate {
	t.Helper()
	var r cost.Rate
	row.Read(t, key, &r)
	return r
}

// number is an input that may be missing, 0 then.
func number(t testing.TB, row reftable.Row, key string) float64 {
	t.Helper()
	if _, ok := row.Lookup(key); !ok {
		return 0
	}
	return row.Float(t, key)
}

func money(t testing.TB, row reftable.Row, key string) decimal.Decimal {
	t.Helper()
	return decimal.NewFromFloat(number(t, row, key))
}

func must[T any](v T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func TestPublishedFactors(t *testing.T) {
	rows(t, "fac-").Each(t, func(t *testing.T, row reftable.Row) {
		i, n := rate(t, row, "rate"), int(row.Float(t, "years"))
		f := must(i.Factors(n))(t)
		name := row.Input(t, "factor")
		if name == "P/A*" {
			row.Check(t, must(i.Escalating(rate(t, row, "escalation"), n))(t))
			return
		}
		got, ok := map[string]float64{
			"P/F": f.SinglePresent, "F/P": f.SingleCompound, "P/A": f.SeriesPresent, "F/A": f.SeriesCompound,
			"A/P": f.CapitalRecovery, "A/F": f.SinkingFund, "A/G": f.GradientAnnual, "P/G": f.GradientPresent,
		}[name]
		if !ok {
			t.Fatalf("no factor %q", name)
		}
		row.Check(t, got)
		if name == "F/P" && i <= 0.5 { // what 1 costs that rises so while one waits
			row.Check(t, must(cost.WaitingCost{Now: decimal.NewFromInt(1), Years: float64(n), Escalation: i}.Price())(t).Later)
		}
	})
}

// option is the option that a row describes.
func option(t testing.TB, row reftable.Row) cost.Option {
	t.Helper()
	o := cost.Option{ID: "o", First: money(t, row, "first"), Upkeep: money(t, row, "upkeep"), Salvage: money(t, row, "salvage")}
	if life := row.Input(t, "life"); life == "forever" {
		o.Forever = true
	} else {
		o.Life = cost.SameLife(row.Float(t, "life"))
	}
	if _, ok := row.Lookup("event"); ok {
		o.Events = append(o.Events, cost.Event{Cost: money(t, row, "event"), Year: row.Float(t, "from"), Every: number(t, row, "every")})
	}
	if _, ok := row.Lookup("now"); ok {
		o.Events = append(o.Events, cost.Event{Cost: money(t, row, "now")})
	}
	return o
}

func TestPublishedOneLife(t *testing.T) {
	rows(t, "one-").Each(t, func(t *testing.T, row reftable.Row) {
		y := must(option(t, row).OneLife(cost.Usual, rate(t, row, "rate")))(t)
		if row.Quantity == "worth" {
			row.Check(t, y.PresentWorth)
			if o := option(t, row); o.Forever && len(o.Events) == 0 {
				row.Check(t, o.First.InexactFloat64()+o.Upkeep.InexactFloat64()*must(rate(t, row, "rate").Perpetuity(1))(t))
			}
		} else {
			row.Check(t, y.Annual)
		}
	})
}

func TestPublishedHorizons(t *testing.T) {
	rows(t, "hor-").Each(t, func(t *testing.T, row reftable.Row) {
		o := option(t, row)
		scale := decimal.NewFromInt(1_000_000) // cents are too coarse for a unit cost
		if row.Quantity == "annual" {
			o.First = o.First.Mul(scale)
		}
		h := cost.Horizon{Years: int(row.Float(t, "years")), Rate: rate(t, row, "rate"), Currency: "USD"}
		c := must(cost.Compare([]cost.Option{o}, h))(t)
		course := c.Options[0].Courses[cost.Usual]
		if row.Quantity == "annual" {
			row.Check(t, course.EquivalentAnnual.Div(scale).InexactFloat64())
		} else {
			row.Check(t, course.PresentValue.InexactFloat64())
		}
	})
}

func flows(t testing.TB, row reftable.Row, key string) []float64 {
	t.Helper()
	var list []float64
	for f := range strings.FieldsSeq(row.Input(t, key)) {
		list = append(list, must(strconv.ParseFloat(f, 64))(t))
	}
	return list
}

func TestPublishedProjects(t *testing.T) {
	rows(t, "prj-").Each(t, func(t *testing.T, row reftable.Row) {
		p := cost.Project(flows(t, row, "flows"))
		switch row.Quantity {
		case "rate":
			row.Check(t, 100*float64(must(p.InternalRate())(t)))
		case "payback":
			row.Check(t, must(p.Payback(rate(t, row, "rate")))(t).Years)
		default:
			w := must(p.Worth(rate(t, row, "rate")))(t)
			row.Check(t, map[string]float64{"present": w.Present, "annual": w.Annual, "future": w.Future}[row.Quantity])
		}
	})
	rows(t, "keep-").Each(t, func(t *testing.T, row reftable.Row) {
		d := cost.Defender{Now: row.Float(t, "now"), Yearly: flows(t, row, "yearly"), Rate: rate(t, row, "rate")}
		if row.Quantity == "years kept" {
			row.Check(t, must(d.KeepFor(row.Float(t, "challenger")))(t).Years)
		} else {
			row.Check(t, must(d.Marginal())(t)[0])
		}
	})
}

func TestPublishedRates(t *testing.T) {
	rows(t, "rate-").Each(t, func(t *testing.T, row reftable.Row) {
		inflation := rate(t, row, "inflation")
		if row.Quantity == "nominal rate" {
			row.Check(t, 100*float64(rate(t, row, "real").Nominal(inflation)))
			h := cost.Horizon{Years: 10, Rate: rate(t, row, "real"), Currency: "USD"}
			row.Check(t, 100*float64(must(h.As(cost.Nominal, inflation))(t).Rate))
			return
		}
		f := must(inflation.Factors(int(row.Float(t, "years"))))(t)
		row.Check(t, row.Float(t, "amount")*f.SinglePresent)
	})
	rows(t, "equal-").Each(t, func(t *testing.T, row reftable.Row) {
		a := cost.Tariff{Fixed: row.Float(t, "fixed_a"), Each: row.Float(t, "each_a")}
		at, ok, err := a.EqualTo(cost.Tariff{Fixed: row.Float(t, "fixed_b"), Each: row.Float(t, "each_b")})
		if err != nil || !ok {
			t.Fatal(ok, err)
		}
		if row.Quantity == "cost" {
			row.Check(t, at.Cost)
		} else {
			row.Check(t, at.Quantity)
		}
	})
}

// The closed form, and the same question asked of Compare.
func TestPatchOrReplaceRows(t *testing.T) {
	rows(t, "patch-").Each(t, func(t *testing.T, row reftable.Row) {
		p := cost.PatchOrReplace{Patch: money(t, row, "patch"), Replace: money(t, row, "replace"), ReplaceLife: row.Float(t, "life"), Rate: rate(t, row, "rate")}
		alone := must(p.Lives())(t)
		var pair cost.Lifetimes
		if p.Patch.LessThan(p.Replace) {
			options := []cost.Option{{ID: "patch", First: p.Patch, Life: cost.SameLife(3)}, {ID: "replace", First: p.Replace, Life: cost.SameLife(p.ReplaceLife)}}
			c := must(cost.Compare(options, cost.Horizon{Years: 20, Rate: p.Rate, Currency: "USD"}))(t)
			pair = c.BreakEven[0].Lifetimes
		} else {
			pair = alone
		}
		for _, l := range [...]cost.Lifetimes{alone, pair} {
			w := l.Repeating
			if row.Quantity == "deferring" {
				w = l.Deferring
			}
			if row.Printed == "never" {
				row.CheckText(t, w.State.String())
				continue
			}
			if w.State != cost.InYears {
				t.Fatalf("state %v", w.State)
			}
			row.Check(t, w.Years)
		}
	})
}

func TestPublishedRanges(t *testing.T) {
	rows(t, "pert-").Each(t, func(t *testing.T, row reftable.Row) {
		r := cost.Range{Low: row.Float(t, "low"), Likely: row.Float(t, "likely"), High: row.Float(t, "high")}
		m := must(r.ThreePoint())(t)
		row.Check(t, map[string]float64{"mean": m.Mean, "sd": m.SD}[row.Quantity])
		if row.Quantity == "mean" { // that of the shape which is drawn from too
			row.Check(t, must(r.Moments())(t).Mean)
		}
	})
	rows(t, "sum-").Each(t, func(t *testing.T, row reftable.Row) {
		var parts []cost.Moments
		for triple := range strings.FieldsSeq(row.Input(t, "triples")) {
			var v [3]float64
			for i, s := range strings.Split(triple, "/") {
				v[i] = must(strconv.ParseFloat(s, 64))(t)
			}
			parts = append(parts, must(cost.Range{Low: v[0], Likely: v[1], High: v[2]}.ThreePoint())(t))
		}
		m := must(cost.SumOf(parts, row.Float(t, "rho")))(t)
		row.Check(t, map[string]float64{"mean": m.Mean, "sd": m.SD}[row.Quantity])
	})
}

// priceOf is the total of one line of a cost under terms.
func priceOf(t testing.TB, amount string, terms cost.Terms) cost.Estimate {
	t.Helper()
	book := must(cost.ReadPriceBook(strings.NewReader(cost.BookHeader + "\nx,thing,EA," + amount + ",USD,2026-01-01,\n")))(t)
	terms.Currency = "USD"
	job := cost.Job{Lines: []cost.Line{{Code: "x", Quantity: 1, Unit: "EA"}}, Book: book, On: manway.Date{Year: 2026, Month: 11, Day: 25}, Terms: terms}
	return must(job.Estimate())(t)
}

func TestPublishedMarkups(t *testing.T) {
	rows(t, "margin-").Each(t, func(t *testing.T, row reftable.Row) {
		margin := must(cost.Markup.AsMargin(money(t, row, "markup")))(t)
		row.Check(t, margin.InexactFloat64())
		if back := must(cost.Margin.AsMarkup(margin))(t); back.Sub(money(t, row, "markup")).Abs().GreaterThan(decimal.New(1, -8)) {
			t.Errorf("the margin of %s is the markup %s", row.Input(t, "markup"), back)
		}
	})
	check := func(t *testing.T, row reftable.Row) {
		terms := cost.Terms{ProfitPercent: money(t, row, "profit"), OverheadPercent: money(t, row, "overhead")}
		if err := terms.ProfitAs.UnmarshalText([]byte(row.Input(t, "as"))); err != nil {
			t.Fatal(err)
		}
		if on, ok := row.Lookup("on"); ok {
			if err := terms.ProfitOn.UnmarshalText([]byte(on)); err != nil {
				t.Fatal(err)
			}
		}
		row.Check(t, priceOf(t, row.Input(t, "cost"), terms).Total.InexactFloat64())
	}
	rows(t, "price-").Each(t, check)
	rows(t, "stack-").Each(t, check)
}

func TestPublishedRounding(t *testing.T) {
	rule := func(t *testing.T, row reftable.Row) cost.Rounding {
		var r cost.Rounding
		row.Read(t, "rule", &r)
		return r
	}
	rows(t, "round-").Each(t, func(t *testing.T, row reftable.Row) {
		d := must(rule(t, row).Round(decimal.RequireFromString(row.Input(t, "value")), int(row.Float(t, "places"))))(t)
		row.Check(t, d.InexactFloat64())
	})
	rows(t, "tax-").Each(t, func(t *testing.T, row reftable.Row) {
		terms := cost.Terms{Taxes: []cost.Tax{{Class: riser.Material, Percent: money(t, row, "percent"), At: cost.OnSale, Rounding: rule(t, row)}}}
		row.Check(t, priceOf(t, row.Input(t, "taxable"), terms).Charges[0].Amount.InexactFloat64())
	})
	rows(t, "share-").Each(t, func(t *testing.T, row reftable.Row) {
		var weights []decimal.Decimal
		for w := range strings.FieldsSeq(row.Input(t, "weights")) {
			weights = append(weights, decimal.RequireFromString(w))
		}
		got := "shares"
		for _, s := range must(cost.Currency("USD").Shares(decimal.RequireFromString(row.Input(t, "total")), weights))(t) {
			got += " " + s.StringFixed(2)
		}
		row.CheckText(t, got)
	})
	rows(t, "minor-").Each(t, func(t *testing.T, row reftable.Row) {
		places, err := cost.Currency(row.Input(t, "code")).MinorUnit()
		if row.Printed == "none" {
			if err == nil {
				t.Errorf("minor unit %d", places)
			}
			row.CheckText(t, "none")
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, float64(places))
	})
}

func TestPublishedUnits(t *testing.T) {
	rows(t, "unit-").Each(t, func(t *testing.T, row reftable.Row) {
		unit, to := cost.Unit(row.Input(t, "unit")), cost.Unit(row.Input(t, "to"))
		scale := 1.0
		if to == "s" { // Rec 20 has the second as SEC, which no estimate uses
			to, scale = "MIN", 60
		}
		row.Check(t, must(unit.Per(to))(t)*scale)
	})
}

func TestPublishedLabour(t *testing.T) {
	rows(t, "lab-").Each(t, func(t *testing.T, row reftable.Row) {
		task := cost.Task{Name: row.Input(t, "task"), Quantity: row.Float(t, "quantity"), Unit: cost.Unit(row.Input(t, "unit")), Crew: 2}
		l := must(task.Line())(t)
		if row.Quantity == "man-days" {
			row.Check(t, must(cost.Crew{People: 1, Availability: 1, Hours: 8}.Days(l.Quantity))(t))
			return
		}
		row.Check(t, l.Quantity)
		row.Check(t, l.Hours()*2) // of a crew of two
	})
	rows(t, "crew-").Each(t, func(t *testing.T, row reftable.Row) {
		c := cost.Crew{People: int(row.Float(t, "people")), Availability: row.Float(t, "availability"), Hours: row.Float(t, "hours")}
		row.Check(t, must(c.Days(8*row.Float(t, "days")))(t))
	})
	if got := len(cost.Productivities()); got < 37 {
		t.Errorf("%d rows of productivity", got)
	}
}

func TestPublishedSupplies(t *testing.T) {
	rows(t, "swell-").Each(t, func(t *testing.T, row reftable.Row) {
		for _, e := range cost.Swells() {
			if e.Ground == row.Input(t, "soil") {
				row.Check(t, e.Percent)
				return
			}
		}
		t.Fatal("no such soil")
	})
	supply := func(t *testing.T, row reftable.Row) cost.Supply {
		for _, s := range cost.Supplies() {
			if s.Code == row.Input(t, "code") {
				return s
			}
		}
		t.Fatal("no such supply")
		return cost.Supply{}
	}
	reftable.Load(t, "riser.csv").With("quantity", "bag yield").Each(t, func(t *testing.T, row reftable.Row) {
		var m manway.Mass
		row.Read(t, "bag", &m)
		row.Check(t, must(cost.MixVolume(m))(t).In(manway.CubicFoot))
	})
	rows(t, "bulk-").Each(t, func(t *testing.T, row reftable.Row) { row.Check(t, supply(t, row).Bulking) })
	rows(t, "waste-").Each(t, func(t *testing.T, row reftable.Row) { row.Check(t, supply(t, row).WastePercent) })
}

func ExampleCurrency_MinorUnit() {
	for _, c := range []cost.Currency{"USD", "JPY", "KWD"} {
		places, err := c.MinorUnit()
		fmt.Println(c, places, err)
	}
	// Output:
	// USD 2 <nil>
	// JPY 0 <nil>
	// KWD 3 <nil>
}
