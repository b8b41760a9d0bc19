package cost_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
)

// flipsOf is the flips as "parameter of option at value: below, above".
func flipsOf(t *testing.T, options []cost.Option, h cost.Horizon) (list []string) {
	t.Helper()
	for _, f := range must(cost.Compare(options, h))(t).Flips() {
		list = append(list, fmt.Sprintf("%v %s %.6g: %s, %s", f.Parameter, f.Of, f.At, f.Below, f.Above))
	}
	return list
}

// Each flip by hand, and none beyond what is varied: costs to three times what
// they are and down to nothing, rates to 20 %, horizons and lives to 60 years.
func TestFlipsByHand(t *testing.T) {
	h := cost.Horizon{Years: 10, Rate: 0.05, Currency: "USD", Unused: cost.NoCredit}
	ten := cost.SameLife(10)
	// What a year of upkeep is worth over ten: (P/A, 5 %, 10) = 7.72173.
	series := must(cost.Rate(0.05).Factors(10))(t).SeriesPresent
	at := func(x float64) string { return fmt.Sprintf("%.6g", x) }
	internal := func(first float64) cost.Rate { // at which ten payments of 20 are worth it
		return must(cost.Project{-first, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20}.InternalRate())(t)
	}
	for _, c := range []struct {
		name    string
		options []cost.Option
		h       cost.Horizon
		want    []string // of first cost, upkeep and rate
	}{
		{"first costs alone", []cost.Option{{ID: "a", First: usd(100), Life: ten}, {ID: "b", First: usd(290), Life: ten}}, h, []string{"first cost a 290: a, b", "first cost b 100: b, a"}},
		{"beyond three times", []cost.Option{{ID: "a", First: usd(100), Life: ten}, {ID: "b", First: usd(302), Life: ten}}, h, []string{"first cost b 100: b, a"}},
		{"upkeep alone", []cost.Option{{ID: "a", First: usd(0), Upkeep: usd(10), Life: ten}, {ID: "b", First: usd(0), Upkeep: usd(29), Life: ten}}, h, []string{"upkeep a 29: a, b", "upkeep b 10: b, a"}},
		{"upkeep beyond", []cost.Option{{ID: "a", First: usd(0), Upkeep: usd(10), Life: ten}, {ID: "b", First: usd(0), Upkeep: usd(31), Life: ten}}, h, []string{"upkeep b 10: b, a"}},
		// 100 + 20 (P/A) against 240: a wins by 240 - 100 - 154.43 = -14.43, so b does until its first cost is 254.43.
		{"both", []cost.Option{{ID: "a", First: usd(100), Upkeep: usd(20), Life: ten}, {ID: "b", First: usd(240), Life: ten}}, h,
			[]string{"first cost a " + at(240-20*series) + ": a, b", "first cost b " + at(100+20*series) + ": b, a", "upkeep a " + at(140/series) + ": a, b", "rate  " + at(float64(internal(140))) + ": b, a"}},
		// (P/A, i, 10) = 4.2 at 19.9 %, 4.17 at 20.2 %.
		{"rate within 20 %", []cost.Option{{ID: "a", Upkeep: usd(20), Life: ten}, {ID: "b", First: usd(84), Life: ten}}, h, []string{"first cost b " + at(20*series) + ": b, a", "upkeep a " + at(84/series) + ": a, b", "rate  " + at(float64(internal(84))) + ": b, a"}},
		{"rate beyond 20 %", []cost.Option{{ID: "a", Upkeep: usd(20), Life: ten}, {ID: "b", First: amount("83.4"), Life: ten}}, h, []string{"first cost b " + at(20*series) + ": b, a", "upkeep a " + at(83.4/series) + ": a, b"}},
	} {
		want := map[string]bool{}
		for _, f := range c.want {
			want[f] = true
		}
		for _, f := range flipsOf(t, c.options, c.h) {
			if strings.HasPrefix(f, "escalation") || strings.HasPrefix(f, "horizon") || strings.HasPrefix(f, "life") {
				continue
			}
			if !want[f] {
				t.Errorf("%s: %s is no flip of %v", c.name, f, c.want)
			}
			delete(want, f)
		}
		if len(want) > 0 {
			t.Errorf("%s: missing are %v among %v", c.name, want, flipsOf(t, c.options, c.h))
		}
	}
}

// Where nothing is discounted one of 20 a year flips with one of 1,000 that lasts
// for ever after 50 years, and with one of 1,200 after 60, the farthest that is
// looked; a life of so many years the other way round.
func TestFlipsOfYearsByHand(t *testing.T) {
	for first, want := range map[int64]string{1000: "horizon  51: a, b", 1180: "horizon  60: a, b", 1200: "", 1220: ""} {
		options := []cost.Option{{ID: "a", Upkeep: usd(20), Life: cost.SameLife(200)}, {ID: "b", First: usd(first), Forever: true}}
		got := ""
		for _, f := range flipsOf(t, options, cost.Horizon{Years: 10, Currency: "USD", Unused: cost.NoCredit}) {
			if strings.HasPrefix(f, "horizon") {
				got = f
			}
		}
		if got != want {
			t.Errorf("b of %d: %q, want %q", first, got, want)
		}
	}
	// 100 every life against 30 a year, straight-line credit: even at a life of 100/30 years.
	options := []cost.Option{{ID: "a", First: usd(100), Life: cost.SameLife(10)}, {ID: "b", Upkeep: usd(30), Life: cost.SameLife(10)}}
	found := false
	for _, f := range must(cost.Compare(options, cost.Horizon{Years: 20, Currency: "USD"}))(t).Flips() {
		if f.Parameter == cost.OfLife && f.Of == "a" {
			found = true
			if math.Abs(f.At-10./3) > 1e-6 || f.Below != "b" || f.Above != "a" || f.Now != 10 {
				t.Errorf("%+v", f)
			}
		}
	}
	if !found {
		t.Error("no flip of the life")
	}
}

// Property (two ways): a swing is what the comparison gives for an option that is
// changed by hand: the rate by 2 points and not below 0, costs by a fifth, the life
// from the bad to the good case.
func TestSwingsAreComparisons(t *testing.T) {
	for _, rate := range []cost.Rate{0.05, 0.01, 0} {
		h := horizon
		h.Rate = rate
		c := must(cost.Compare(choices(), h))(t)
		seen := map[string]int{}
		for _, s := range c.Swings {
			eac := func(x float64) decimal.Decimal {
				options, g := choices(), h
				for i := range options {
					o := &options[i]
					if o.ID != s.Option {
						continue
					}
					switch s.Parameter {
					case cost.OfRate:
						g.Rate = cost.Rate(x)
					case cost.OfFirst:
						o.First = decimal.NewFromFloat(x)
					case cost.OfUpkeep:
						o.Upkeep = decimal.NewFromFloat(x)
					case cost.OfLife:
						o.Life = cost.SameLife(x)
					}
				}
				for _, o := range courses(t, options, g) {
					if o.ID == s.Option {
						return o.Courses[cost.Usual].EquivalentAnnual
					}
				}
				return decimal.Decimal{}
			}
			if !s.Low.Equal(eac(s.From)) || !s.High.Equal(eac(s.To)) {
				t.Errorf("%v of %s from %v to %v: %v and %v, want %v and %v", s.Parameter, s.Option, s.From, s.To, s.Low, s.High, eac(s.From), eac(s.To))
			}
			seen[fmt.Sprintf("%v %s %.6g to %.6g", s.Parameter, s.Option, s.From, s.To)]++
		}
		low := math.Max(float64(rate)-0.02, 0)
		for _, want := range []string{"first cost patch 360 to 540", "first cost riser 1920 to 2880", "first cost ever 4000 to 6000", "upkeep patch 16 to 24", "upkeep ever 4 to 6",
			"life patch 1.5 to 6", "life riser 12 to 40", "life first-patch 1 to 6", fmt.Sprintf("rate ever %.6g to %.6g", low, float64(rate)+0.02)} {
			if seen[want] != 1 {
				t.Errorf("at %v: no swing %q among %v", rate, want, seen)
			}
		}
		if len(c.Swings) != 4+4+2+3 {
			t.Errorf("at %v: %d swings: %v", rate, len(c.Swings), seen)
		}
	}
}
