package cost_test

import (
	"math"
	"runtime"
	"testing"

	"github.com/google/go-cmp/cmp"

	"manway.example/manway/cost"
)

// ranged is the mixed job with ranges of every shape, without charges.
func ranged(t testing.TB) cost.Estimate {
	t.Helper()
	job := mixed(t)
	job.Terms = cost.Terms{Currency: "USD"}
	job.Lines[0].Quantities = cost.Range{Low: 6, Likely: 8, High: 14}
	job.Lines[1].Quantities = cost.Range{Low: 5, Likely: 7.233, High: 16, Shape: cost.Triangular}
	job.Lines[1].Prices = cost.Range{Low: 40, Likely: 46.35, High: 60}
	job.Lines[3].Prices = cost.Range{Low: 1, Likely: 1.5, High: 2, Shape: cost.Normal}
	return must(job.Estimate())(t)
}

// The same seed gives the same bits whatever the number of cores.
func TestSimulationDoesNotDependOnCores(t *testing.T) {
	e := ranged(t)
	ask := cost.Simulation{Draws: 20_001, Seed: 42}
	first := must(e.Simulate(ask))(t)
	for _, cores := range []int{1, 3, 8} {
		before := runtime.GOMAXPROCS(cores)
		again := must(e.Simulate(ask))(t)
		runtime.GOMAXPROCS(before)
		if d := cmp.Diff(first, again); d != "" {
			t.Errorf("on %d cores:\n%s", cores, d)
		}
	}
	ask.Seed = 43
	if other := must(e.Simulate(ask))(t); cmp.Equal(first.P50, other.P50) && cmp.Equal(first.Mean, other.Mean) {
		t.Error("another seed gives the same answer")
	}
}

// Property (two ways): mean and deviation agree with the closed forms within what so many draws
// leave open: four standard errors.
func TestSimulationAgreesWithMoments(t *testing.T) {
	e := ranged(t)
	const draws = 200_000
	s := must(e.Simulate(cost.Simulation{Draws: draws, Seed: 7}))(t)
	product := func(a, b cost.Moments) cost.Moments { // of independent factors
		return cost.Moments{Mean: a.Mean * b.Mean, SD: math.Sqrt(a.SD*a.SD*b.SD*b.SD + a.SD*a.SD*b.Mean*b.Mean + b.SD*b.SD*a.Mean*a.Mean)}
	}
	moments := func(r cost.Range) cost.Moments { return must(r.Moments())(t) }
	parts := []cost.Moments{
		product(moments(e.Lines[0].Quantities), cost.Moments{Mean: 6.79}),
		product(moments(e.Lines[1].Quantities), moments(e.Lines[1].Prices)),
		{Mean: 65}, {Mean: 125},
		product(cost.Moments{Mean: 27.5}, moments(e.Lines[3].Prices)),
	}
	want := must(cost.SumOf(parts, 0))(t)
	mean, sd := s.Mean.InexactFloat64(), s.SD.InexactFloat64()
	if !(math.Abs(mean-want.Mean) <= 4*want.SD/math.Sqrt(draws)+0.01) || !(math.Abs(sd/want.SD-1) <= 0.01) {
		t.Errorf("mean %v, sd %v, want %+v", mean, sd, want)
	}
	if !(s.P10.LessThan(s.P50) && s.P50.LessThan(s.P90)) {
		t.Errorf("P10 %s, P50 %s, P90 %s", s.P10, s.P50, s.P90)
	}
	sum := 0.0
	for _, d := range s.Drivers {
		sum += d.Part
	}
	if !(math.Abs(sum-1) <= 1e-9) || s.Drivers[0].Code != "dig" || len(s.Drivers) != 3 {
		t.Errorf("drivers %+v add up to %v", s.Drivers, sum)
	}
}

// One triangular line: its percentiles are known exactly.
func TestSimulationPercentiles(t *testing.T) {
	book := bookOf(t, "x,x,EA,100,USD,2026-01-01,")
	r := cost.Range{Low: 2, Likely: 3, High: 7, Shape: cost.Triangular}
	e := must(cost.Job{On: today, Book: book, Lines: []cost.Line{{Code: "x", Quantity: 3, Unit: "EA", Quantities: r}}, Terms: cost.Terms{Currency: "USD"}}.Estimate())(t)
	s := must(e.Simulate(cost.Simulation{Draws: 400_000, Seed: 1}))(t)
	quantile := func(p float64) float64 { // inverse of the triangular distribution
		if p < 0.2 {
			return 100 * (2 + math.Sqrt(p*5*1))
		}
		return 100 * (7 - math.Sqrt((1-p)*5*4))
	}
	for p, got := range map[float64]float64{0.1: s.P10.InexactFloat64(), 0.5: s.P50.InexactFloat64(), 0.9: s.P90.InexactFloat64()} {
		if !(math.Abs(got-quantile(p)) <= 1) {
			t.Errorf("P%.0f %v, want %v", 100*p, got, quantile(p))
		}
	}
}

// A minimum charge holds in every draw, and charges widen in proportion.
func TestSimulationOfCharges(t *testing.T) {
	job := mixed(t)
	job.Lines[1].Quantities = cost.Range{Low: 5, Likely: 7.233, High: 9.466, Shape: cost.Normal}
	plain := must(must(job.Estimate())(t).Simulate(cost.Simulation{Draws: 50_000, Seed: 3}))(t)
	total := must(job.Estimate())(t).Total.InexactFloat64()
	if !(math.Abs(plain.Mean.InexactFloat64()-total) <= 0.01*total) {
		t.Errorf("mean %s, estimate %v", plain.Mean, total)
	}
	job.Terms.Minimum = usd(1000)
	floor := must(must(job.Estimate())(t).Simulate(cost.Simulation{Draws: 50_000, Seed: 3}))(t)
	if !floor.P10.Equal(usd(1000)) {
		t.Errorf("P10 %s under a minimum of 1000", floor.P10)
	}
}

func TestRangeShapes(t *testing.T) {
	for _, r := range []cost.Range{{Low: 1, Likely: 1, High: 1}, {Low: 0, Likely: 0, High: 5}, {Low: 2, Likely: 7, High: 7, Shape: cost.Triangular}} {
		m := must(r.Moments())(t)
		if !(m.Mean >= r.Low && m.Mean <= r.High && m.SD >= 0 && m.SD <= (r.High-r.Low)/2) {
			t.Errorf("%+v: %+v", r, m)
		}
	}
	for _, r := range []cost.Range{{Low: 3, Likely: 2, High: 5}, {Low: 1, Likely: 6, High: 5}, {Low: -1, Likely: 2, High: 3}, {Low: 1, Likely: math.NaN(), High: 3},
		{Low: 1, Likely: 2, High: math.Inf(1)}, {Low: 1, Likely: 4, High: 5, Shape: cost.Normal}, {Low: 1, Likely: 2, High: 3, Shape: 9}} {
		if _, err := r.Moments(); err == nil {
			t.Errorf("%+v was taken", r)
		}
	}
}
