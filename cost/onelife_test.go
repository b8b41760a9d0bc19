package cost_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
)

// randomOption is an option with whole years of life, upkeep that rises, salvage
// and events of every kind.
func randomOption(rng *rand.Rand) cost.Option {
	o := cost.Option{ID: "any", First: usd(rng.Int64N(9000)), Upkeep: usd(rng.Int64N(300)), UpkeepRise: usd(rng.Int64N(20)), Salvage: usd(rng.Int64N(500) - 100)}
	bad := float64(1 + rng.IntN(10))
	o.Life = cost.Lives{Bad: bad, Usual: bad + float64(rng.IntN(10)), Good: bad + 10 + float64(rng.IntN(20))}
	for range rng.IntN(4) {
		e := cost.Event{Cost: usd(rng.Int64N(800) - 200), Year: float64(rng.IntN(20)) / 2, Every: []float64{0, 0.5, 1, 2.5, 3}[rng.IntN(5)], Until: []float64{0, 4, 7.5, 30}[rng.IntN(4)]}
		if rng.IntN(3) == 0 {
			only := cost.Scenario(rng.IntN(3))
			e.Only = &only
		}
		o.Events = append(o.Events, e)
	}
	return o
}

// Property (two ways): the cost over one life is that of its payments put down one
// by one and discounted each by itself: the first cost, upkeep at the end of each
// year and more every year, events as often as they come, the salvage at the end.
func TestOneLifePaymentByPayment(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 14))
	for trial := range 400 {
		o := randomOption(rng)
		s, i := cost.Scenario(rng.IntN(3)), cost.Rate(rng.Float64()*0.2-0.03)
		n := [...]float64{o.Life.Good, o.Life.Usual, o.Life.Bad}[s]
		worth := func(amount decimal.Decimal, year float64) float64 {
			return amount.InexactFloat64() * math.Pow(1+float64(i), -year)
		}
		want := worth(o.First, 0) - worth(o.Salvage, n)
		for year := 1.0; year <= n; year++ {
			want += worth(o.Upkeep, year) + worth(o.UpkeepRise, year)*(year-1)
		}
		for _, e := range o.Events {
			for at := e.Year; at <= n && (e.Until == 0 || at <= e.Until) && (e.Only == nil || *e.Only == s); at += e.Every {
				want += worth(e.Cost, at)
				if e.Every == 0 {
					break
				}
			}
		}
		got := must(o.OneLife(s, i))(t)
		series := 0.0
		for year := 1.0; year <= n; year++ {
			series += math.Pow(1+float64(i), -year)
		}
		if !(math.Abs(got.PresentWorth-want) <= 1e-8*(1+math.Abs(want))) || !(math.Abs(got.Annual-want/series) <= 1e-8*(1+math.Abs(want))) {
			t.Fatalf("trial %d: %+v in %v at %v: %+v, payment by payment %v, a year %v", trial, o, s, i, got, want, want/series)
		}
	}
}

// Property (two ways): an option that lasts for ever costs what its payments of
// 3,000 years come to.
func TestForeverIsManyYears(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 71))
	for range 100 {
		o := randomOption(rng)
		o.Forever, o.Salvage = true, decimal.Decimal{}
		s, i := cost.Scenario(rng.IntN(3)), cost.Rate(0.03+rng.Float64()*0.1)
		want := o.First.InexactFloat64()
		for year := 1.0; year <= 3000; year++ {
			want += (o.Upkeep.InexactFloat64() + o.UpkeepRise.InexactFloat64()*(year-1)) * math.Pow(1+float64(i), -year)
		}
		for _, e := range o.Events {
			for at := e.Year; at <= 3000 && (e.Until == 0 || at <= e.Until) && (e.Only == nil || *e.Only == s); at += e.Every {
				want += e.Cost.InexactFloat64() * math.Pow(1+float64(i), -at)
				if e.Every == 0 {
					break
				}
			}
		}
		got := must(o.OneLife(s, i))(t)
		if !(math.Abs(got.PresentWorth-want) <= 1e-7*(1+math.Abs(want))) || !(math.Abs(got.Annual-want*float64(i)) <= 1e-7*(1+math.Abs(want))) {
			t.Fatalf("%+v in %v at %v: %+v, year by year %v", o, s, i, got, want)
		}
	}
}

// Property (balance): a course adds up: the present value is that of its payments,
// each at its year with its rise in price, the yearly cost pays it off in equal
// payments that rise alike, what has been paid by the last year is every payment but
// the credit, and a purchase is counted where one was made.
func TestCoursesAddUp(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 61))
	for range 60 {
		o := randomOption(rng)
		h := cost.Horizon{Years: 3 + rng.IntN(30), Rate: cost.Rate(rng.Float64() * 0.1), Escalation: cost.Rate(rng.Float64()*0.06 - 0.01), Currency: "USD", Unused: cost.Unused(rng.IntN(2))}
		for s, k := range courses(t, []cost.Option{o}, h)[0].Courses {
			pv, paid, credit, purchases := 0.0, 0.0, 0.0, 0
			for _, f := range k.Flows {
				then := f.Today * math.Pow(1+float64(h.Escalation), f.Year)
				pv += then * math.Pow(1+float64(h.Rate), -f.Year)
				if math.Abs(f.Paid.InexactFloat64()-then) > 0.0051 {
					t.Fatalf("%v paid in year %v is %v, want %v", f.Why, f.Year, f.Paid, then)
				}
				switch f.Why {
				case cost.UnusedLife:
					credit -= f.Paid.InexactFloat64()
					continue
				case cost.FirstCost, cost.Renewed:
					purchases++
				}
				paid += f.Paid.InexactFloat64()
			}
			series := 0.0
			for year := 1.0; year <= float64(h.Years); year++ {
				series += math.Pow((1+float64(h.Escalation))/(1+float64(h.Rate)), year)
			}
			last := k.Marks[len(k.Marks)-1]
			if math.Abs(k.PresentValue.InexactFloat64()-pv) > 0.0051 || math.Abs(k.EquivalentAnnual.InexactFloat64()-pv/series) > 0.0051 || math.Abs(last.Paid.InexactFloat64()-paid) > 1e-6 ||
				math.Abs(k.UnusedLife.InexactFloat64()-credit) > 1e-6 || k.Purchases != purchases || last.Year != h.Years || len(k.Curve) != h.Years+1 {
				t.Fatalf("%+v over %+v, %v: %+v\npresent value %v, a year %v, paid %v, credit %v, %d purchases", o, h, cost.Scenario(s), k, pv, pv/series, paid, credit, purchases)
			}
			for y, m := range k.Curve {
				if m.Year != y {
					t.Fatalf("year %d of the curve is %d", y, m.Year)
				}
			}
		}
	}
}

// Property (two ways): waiting costs what its payments come to, year by year.
func TestWaitingYearByYear(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 77))
	for range 200 {
		w := cost.WaitingCost{Now: usd(rng.Int64N(9000)), Years: float64(rng.IntN(40)) / 4, Escalation: cost.Rate(rng.Float64()*0.1 - 0.02), Damage: usd(rng.Int64N(900)), Meanwhile: usd(rng.Int64N(200)), Rate: cost.Rate(rng.Float64() * 0.1)}
		e, i := 1+float64(w.Escalation), 1+float64(w.Rate)
		later := (w.Now.InexactFloat64() + w.Damage.InexactFloat64()) * math.Pow(e, w.Years)
		want := later * math.Pow(i, -w.Years)
		for year := 1.0; year <= w.Years; year++ {
			want += w.Meanwhile.InexactFloat64() * math.Pow(e/i, year)
		}
		got := must(w.Price())(t)
		if !(math.Abs(got.Later-later) <= 1e-8*(1+later)) || !(math.Abs(got.PresentValue-want) <= 1e-8*(1+want)) || !(math.Abs(got.Extra-want+w.Now.InexactFloat64()) <= 1e-8*(1+want)) {
			t.Fatalf("%+v: %+v, want %v later, %v now", w, got, later, want)
		}
	}
}
