package cost

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// benchJob is an estimate of n priced lines, each with a range of quantity and
// of price where ranged is set.
func benchJob(b testing.TB, n int, ranged bool) Job {
	b.Helper()
	var book strings.Builder
	book.WriteString(BookHeader + "\n")
	lines := make([]Line, n)
	for i := range lines {
		fmt.Fprintf(&book, "line-%d,line,LH,%d.25,USD,2026-01-01,invented\n", i, 20+i)
		lines[i] = Line{Code: fmt.Sprintf("line-%d", i), Class: riser.Class(i % 5), Quantity: 1.5 + float64(i), Unit: "LH"}
		if ranged {
			q, p := lines[i].Quantity, 20.25+float64(i)
			lines[i].Quantities = Range{0.8 * q, q, 1.5 * q, PERT}
			lines[i].Prices = Range{0.9 * p, p, 1.2 * p, PERT}
		}
	}
	prices, err := ReadPriceBook(strings.NewReader(book.String()))
	if err != nil {
		b.Fatal(err)
	}
	return Job{Lines: lines, Book: prices, On: manway.Date{Year: 2026, Month: 11, Day: 25}, Terms: Terms{
		Currency: "USD", OverheadPercent: decimal.NewFromInt(12), ProfitPercent: decimal.NewFromInt(15), ContingencyPercent: decimal.NewFromInt(5),
		Taxes: []Tax{{Class: riser.Material, Percent: decimal.NewFromFloat(6.5), Rounding: HalfUp}},
	}}
}

func BenchmarkEstimate(b *testing.B) {
	job := benchJob(b, 40, false)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := job.Estimate(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSimulate(b *testing.B) {
	for _, ranges := range []int{40, 80} {
		b.Run(fmt.Sprintf("lines=40/ranges=%d", ranges), func(b *testing.B) {
			job := benchJob(b, 40, true)
			for i := range job.Lines {
				if ranges == 40 {
					job.Lines[i].Prices = Range{}
				}
			}
			e, err := job.Estimate()
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := e.Simulate(Simulation{Draws: 100_000, Seed: 1}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.N)*100_000/b.Elapsed().Seconds(), "draws/s")
		})
	}
}

// The floor under BenchmarkSimulate: as many bare uniform numbers on one core.
func BenchmarkBareGenerator(b *testing.B) {
	source := rand.NewPCG(1, 2)
	for b.Loop() {
		var sum float64
		for range 100_000 * 40 {
			sum += float64(source.Uint64()>>11) * 0x1p-53
		}
		if sum == 0 {
			b.Fatal("no numbers")
		}
	}
	b.ReportMetric(float64(b.N)*100_000/b.Elapsed().Seconds(), "draws/s")
}

func BenchmarkReadPriceBook(b *testing.B) {
	var book strings.Builder
	book.WriteString(BookHeader + "\n")
	for i := range 10_000 {
		fmt.Fprintf(&book, "code-%d,some material of the trade,EA,%d.%02d,USD,2026-01-01,invented\n", i, i%900, i%100)
	}
	text := book.String()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ReadPriceBook(strings.NewReader(text)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCompare(b *testing.B) {
	options := []Option{
		{ID: "patch", First: decimal.NewFromInt(450), Life: Lives{6, 3, 1}},
		{ID: "riser", First: decimal.NewFromInt(2400), Life: Lives{40, 20, 12}},
		{ID: "patch-riser", First: decimal.NewFromInt(450), Life: Lives{6, 3, 1}, Then: "riser"},
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Compare(options, Horizon{Years: 20, Rate: 0.05, Currency: "USD"}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRateFactors(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Rate(0.03).Factors(20); err != nil {
			b.Fatal(err)
		}
	}
}

// The floor under BenchmarkRateFactors: one power.
func BenchmarkBarePower(b *testing.B) {
	x, sum := 1.03, 0.0
	for b.Loop() {
		sum += math.Pow(x, -20)
	}
	if sum == 0 {
		b.Fatal("no power")
	}
}

func BenchmarkPatchOrReplace(b *testing.B) {
	p := PatchOrReplace{Patch: decimal.NewFromInt(450), Replace: decimal.NewFromInt(2400), ReplaceLife: 20, Rate: 0.05}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Lives(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTakeoff(b *testing.B) {
	scope := make([]riser.Item, 40)
	for i := range scope {
		scope[i] = riser.Item{Code: "concrete", Quantity: 1.5 + float64(i), Unit: "FTQ"}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Takeoff(scope); err != nil {
			b.Fatal(err)
		}
	}
}
