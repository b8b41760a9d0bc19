package cost_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

// Property (two ways): with every line drawn from a range of no width a simulation
// gives the total of the estimate in each draw, whatever the charges: taxes when
// bought and when sold, contingency, overhead, profit as markup or margin, on the
// sum or beside overhead. Only what the estimate rounds to cents parts them.
func TestSimulationWithoutSpread(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 15))
	percent := func(most int64) decimal.Decimal { return decimal.New(rng.Int64N(most*10), -1) }
	for trial := range 60 {
		job := mixed(t)
		job.Terms.ChangeOrders = nil
		job.Terms.OverheadPercent, job.Terms.ContingencyPercent, job.Terms.ProfitPercent = percent(30), percent(20), percent(40)
		job.Terms.ProfitAs, job.Terms.ProfitOn = cost.Profit(rng.IntN(2)), cost.Stacking(rng.IntN(2))
		job.Terms.Taxes = nil
		for c := riser.Material; c <= riser.Fee; c++ {
			for _, at := range []cost.TaxedAt{cost.OnPurchase, cost.OnSale} {
				if rng.IntN(3) == 0 {
					job.Terms.Taxes = append(job.Terms.Taxes, cost.Tax{Class: c, Percent: percent(15), At: at})
				}
			}
		}
		drawn := 0
		for i := range job.Lines {
			if l := &job.Lines[i]; l.Class != riser.Wait && rng.IntN(2) == 0 || i == 0 {
				l.Quantities = cost.Range{Low: l.Quantity, Likely: l.Quantity, High: l.Quantity, Shape: cost.Shape(rng.IntN(3))}
				drawn++
			}
		}
		e := must(job.Estimate())(t)
		s := must(e.Simulate(cost.Simulation{Draws: 1000, Seed: 1}))(t)
		total := e.Total.InexactFloat64()
		for what, got := range map[string]decimal.Decimal{"P10": s.P10, "P50": s.P50, "P90": s.P90, "mean": s.Mean} {
			if math.Abs(got.InexactFloat64()-total) > 0.1 {
				t.Fatalf("trial %d, %+v: %s is %v, the estimate %v", trial, job.Terms, what, got, total)
			}
		}
		if s.SD.InexactFloat64() != 0 || len(s.Drivers) != drawn || s.Draws != 1000 || s.Seed != 1 {
			t.Fatalf("trial %d: spread %v, %d drivers, want %d", trial, s.SD, len(s.Drivers), drawn)
		}
	}
}

// Property (additive): where lines are drawn independently their parts of the
// variance add up to all of it, the greatest first, and are as the squares of
// their deviations.
func TestDriversShareTheVariance(t *testing.T) {
	job := mixed(t)
	job.Terms = cost.Terms{Currency: "USD"}
	widths := []float64{4, 2, 0.5}
	sum := 0.0
	for i, w := range widths {
		l := &job.Lines[i]
		l.Quantities = cost.Range{Low: 10 - w, Likely: 10, High: 10 + w, Shape: cost.Triangular}
	}
	e := must(job.Estimate())(t)
	s := must(e.Simulate(cost.Simulation{Draws: 200_000, Seed: 5}))(t)
	var squares []float64
	for i, w := range widths {
		sd := w / math.Sqrt(6) * e.Lines[i].UnitPrice.InexactFloat64()
		squares = append(squares, sd*sd)
		sum += sd * sd
	}
	if sd := s.SD.InexactFloat64(); math.Abs(sd/math.Sqrt(sum)-1) > 0.01 {
		t.Errorf("deviation %v, by the parts %v", sd, math.Sqrt(sum))
	}
	parts, before := 0.0, math.Inf(1)
	for _, d := range s.Drivers {
		parts += d.Part
		if d.Part > before || d.Code != e.Lines[d.Line].Code {
			t.Errorf("drivers %+v", s.Drivers)
		}
		before = d.Part
		if want := squares[d.Line] / sum; math.Abs(d.Part-want) > 0.02 {
			t.Errorf("%s has %v of the variance, want %v", d.Code, d.Part, want)
		}
	}
	if math.Abs(parts-1) > 1e-9 {
		t.Errorf("the parts add up to %v", parts)
	}
}

// Longest texts of a price book, in bytes: 500 are taken and 501 refused, in every
// cell that is text.
func TestLengthsOfCells(t *testing.T) {
	long := func(n int) string {
		text := make([]byte, n)
		for i := range text {
			text[i] = 'x'
		}
		return string(text)
	}
	for n, fine := range map[int]bool{500: true, 501: false} {
		for _, row := range []string{"a," + long(n) + ",EA,1,USD,2026-01-01,", "a,b,EA,1,USD,2026-01-01," + long(n)} {
			_, err := cost.ReadPriceBook(strings.NewReader(cost.BookHeader + "\n" + row + "\n"))
			if fine != (err == nil) {
				t.Errorf("a cell of %d bytes: %v", n, err)
			}
		}
		l := cost.Line{Code: "a", Description: long(n), Quantity: 1, Unit: "EA"}
		if err := l.Validate(); fine != (err == nil) {
			t.Errorf("a description of %d bytes: %v", n, err)
		}
		o := cost.Option{ID: "a", Title: long(n), Life: cost.SameLife(3)}
		if err := o.Validate(); fine != (err == nil) {
			t.Errorf("a title of %d bytes: %v", n, err)
		}
	}
	for n, fine := range map[int]bool{64: true, 65: false} {
		l := cost.Line{Code: long(n), Quantity: 1, Unit: "EA"}
		if err := l.Validate(); fine != (err == nil) {
			t.Errorf("a code of %d bytes: %v", n, err)
		}
	}
}
