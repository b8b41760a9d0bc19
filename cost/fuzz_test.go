package cost_test

import (
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

// A book is read whole or refused with lines; what was read can be written and
// read again.
func FuzzReadPriceBook(f *testing.F) {
	f.Add(cost.BookHeader + "\na,thing,EA,1.50,USD,2026-01-01,invented\n")
	f.Add("\ufeff# remark\r\n" + cost.BookHeader + "\r\na,\"x, \"\"y\"\"\",EA,0,JPY,2026-12-31,\r\n") // spreadsheet's CSV
	f.Add(cost.BookHeader + "\na,\"open,EA,1,USD,2026-01-01,\n")                                      // quote that never closes
	f.Add(cost.BookHeader + "\na,b,EA,1e400,USD,0000-00-00,\n")
	f.Add(cost.BookHeader + "\n=cmd,@x,EA,00000000000000000000001,USD,2026-01-01,-\n")
	f.Fuzz(func(t *testing.T, text string) {
		book, err := cost.ReadPriceBook(strings.NewReader(text))
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		for _, p := range book.Prices() {
			if p.Price.IsNegative() || p.Code == "" || p.ValidFrom.IsZero() {
				t.Errorf("%+v was read", p)
			}
			if got, ok := book.Price(p.Code, p.ValidFrom); !ok || !got.Price.Equal(p.Price) {
				t.Errorf("%+v is not found on its day: %+v", p, got)
			}
		}
	})
}

// No factor is NaN or infinite with a nil error.
func FuzzFactors(f *testing.F) {
	f.Add(0.03, 0.02, 20)
	f.Add(0.0, 0.0, 200)      // counts
	f.Add(-0.5, 10.0, 200)    // the widest rates
	f.Add(1e-300, -1e-16, 17) // beside 0
	f.Add(math.NaN(), math.Inf(1), -1)
	f.Fuzz(func(t *testing.T, rate, escalation float64, years int) {
		if v, err := cost.Rate(rate).Factors(years); err == nil {
			for _, x := range []float64{v.SinglePresent, v.SingleCompound, v.SeriesPresent, v.SeriesCompound, v.CapitalRecovery, v.SinkingFund, v.GradientAnnual, v.GradientPresent} {
				if !(x >= 0) || math.IsInf(x, 0) {
					t.Errorf("rate %v, %d years: %+v", rate, years, v)
				}
			}
		}
		if v, err := cost.Rate(rate).Escalating(cost.Rate(escalation), years); err == nil && (!(v >= 0) || math.IsInf(v, 0)) {
			t.Errorf("rate %v, escalation %v, %d years: %v", rate, escalation, years, v)
		}
	})
}

// A comparison is refused or finite: totals never fall where there is no income,
// and the curve ends in the last mark.
func FuzzCompare(f *testing.F) {
	f.Add(450.0, 3.0, 20.0, 0.0, 2400.0, 20.0, 0.05, 0.0, 20, uint8(0))
	f.Add(0.0, 0.1, 0.0, 1.0, 0.0, 1000.0, -0.5, -0.5, 200, uint8(3))
	f.Add(1e12, 0.3333333333, 1e12, 1e12, 1e-12, 7.0, 10.0, 10.0, 1, uint8(7))
	f.Add(math.NaN(), math.Inf(1), -1.0, -1.0, 5e-324, 1e308, math.NaN(), 0.0, 0, uint8(1))
	f.Fuzz(func(t *testing.T, first, life, upkeep, salvage, dear, long, rate, escalation float64, years int, kind uint8) {
		num := func(v float64) decimal.Decimal {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return decimal.New(1, math.MaxInt32)
			}
			return decimal.NewFromFloat(v)
		}
		options := []cost.Option{
			{ID: "a", First: num(first), Life: cost.SameLife(life), Upkeep: num(upkeep), Salvage: num(salvage)},
			{ID: "b", First: num(dear), Life: cost.SameLife(long), Events: []cost.Event{{Cost: num(upkeep), Year: life, Every: long}}},
		}
		if kind&1 != 0 {
			options[0].Then = "b"
		}
		if kind&2 != 0 {
			options[1].Forever = true
		}
		h := cost.Horizon{Years: years, Rate: cost.Rate(rate), Escalation: cost.Rate(escalation), Unused: cost.Unused(kind >> 2 & 1), Currency: "USD"}
		c, err := cost.Compare(options, h)
		if err != nil {
			return
		}
		for _, o := range c.Options {
			for _, k := range o.Courses {
				if last := k.Marks[len(k.Marks)-1]; last.Year != years || !last.Paid.Equal(k.Curve[years].Paid) {
					t.Errorf("%+v ends at %+v", k.Curve, last)
				}
			}
		}
		for _, b := range c.BreakEven {
			for _, w := range []cost.When{b.Repeating, b.Deferring} {
				if w.State == cost.InYears && !(w.Years > 0 && w.Years <= 1e6) {
					t.Errorf("%+v", b)
				}
			}
		}
		for _, o := range options {
			if y, err := o.OneLife(cost.Bad, h.Rate); err == nil && (math.IsNaN(y.Annual+y.PresentWorth) || math.IsInf(y.Annual+y.PresentWorth, 0)) {
				t.Errorf("%+v at %v: %+v", o, h.Rate, y)
			}
		}
	})
}

// An estimate is refused, or its printed amounts add up.
func FuzzEstimate(f *testing.F) {
	f.Add("6.79", 8.0, "12.5", "15", "6.25", uint8(0))
	f.Add("0.005", 1.0, "0", "99.999999", "100", uint8(3)) // a margin near 100 %
	f.Add("1000000000000", 1e9, "1000", "1000", "0", uint8(1))
	f.Add("1e999999999", math.NaN(), "-1", "1e-999999999", "x", uint8(2))
	f.Fuzz(func(t *testing.T, price string, quantity float64, overhead, profit, tax string, kind uint8) {
		book, err := cost.ReadPriceBook(strings.NewReader(cost.BookHeader + "\na,a,YDQ," + price + ",USD,2026-01-01,\nb,b,EA,3.335,USD,2026-01-01,\n"))
		if err != nil {
			return
		}
		num := func(s string) decimal.Decimal {
			if len(s) > 100 {
				return decimal.Decimal{}
			}
			d, _ := decimal.NewFromString(s)
			return d
		}
		job := cost.Job{Book: book, On: today, Lines: []cost.Line{
			{Code: "a", Quantity: quantity, Unit: "FTQ", Quantities: cost.Range{Low: quantity / 2, Likely: quantity, High: quantity * 2, Shape: cost.Shape(kind & 1)}},
			{Code: "b", Class: riser.Labour, Quantity: 3, Unit: "EA"},
		}, Terms: cost.Terms{
			Currency: "USD", Rounding: cost.Rounding(kind & 1), OverheadPercent: num(overhead), ProfitPercent: num(profit), ProfitAs: cost.Profit(kind >> 1 & 1),
			Taxes: []cost.Tax{{Class: riser.Material, Percent: num(tax), At: cost.TaxedAt(kind >> 2 & 1)}},
		}}
		e, err := job.Estimate()
		if err != nil {
			return
		}
		var sum, shares decimal.Decimal
		for _, l := range e.Lines {
			sum, shares = sum.Add(l.Amount), shares.Add(l.ToOwner)
		}
		for _, c := range e.Charges {
			sum = sum.Add(c.Amount)
		}
		if !sum.Equal(e.Total) || !shares.Equal(e.Total) {
			t.Errorf("total %s, lines and charges %s, shares %s", e.Total, sum, shares)
		}
		if s, err := e.Simulate(cost.Simulation{Draws: 1000, Seed: 1}); err == nil && s.P10.GreaterThan(s.P90) {
			t.Errorf("P10 %s above P90 %s", s.P10, s.P90)
		}
	})
}

// A scope is refused or bought in finite quantities that cover it.
func FuzzTakeoff(f *testing.F) {
	f.Add("concrete", 3.0, "FTQ", 10.0, 0.45)
	f.Add("x", 18.0, "INH", 0.0, 6.0)
	f.Add("", math.NaN(), "LB", -1.0, 0.0)
	f.Add("seed", 5e-324, "LBR", 100.0, 1e-6)
	f.Fuzz(func(t *testing.T, code string, quantity float64, unit string, waste, pack float64) {
		own := cost.Supply{Code: "x", NetUnit: cost.Unit(unit), Unit: "EA", WastePercent: waste, Pack: pack, Whole: true}
		item := riser.Item{Code: code, Quantity: quantity, Unit: unit}
		lines, err := cost.Takeoff([]riser.Item{item, item}, own)
		if err != nil {
			return
		}
		for _, l := range append(lines, cost.Merge(lines)...) {
			if !(l.Quantity >= 0) || math.IsInf(l.Quantity, 0) || !(l.Leftover >= 0) || strings.Contains(l.Working().String(), "NaN") {
				t.Errorf("%+v", l)
			}
		}
	})
}
