package cost_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
)

func usd(v int64) decimal.Decimal { return decimal.NewFromInt(v) }

// choices are options of every kind: equal and unequal lives, upkeep, events,
// salvage, one that another takes over from, and one that lasts for ever.
func choices() []cost.Option {
	return []cost.Option{
		{ID: "patch", First: usd(450), Life: cost.Lives{Good: 6, Usual: 3, Bad: 1.5}, Upkeep: usd(20)},
		{ID: "riser", First: usd(2400), Life: cost.Lives{Good: 40, Usual: 20, Bad: 12}, Salvage: usd(100), Events: []cost.Event{{Cost: usd(40), Year: 5, Every: 5}}},
		{ID: "first-patch", First: usd(450), Life: cost.Lives{Good: 6, Usual: 3, Bad: 1}, Then: "riser"},
		{ID: "ever", First: usd(5000), Forever: true, Upkeep: usd(5), UpkeepRise: usd(1)},
	}
}

var horizon = cost.Horizon{Years: 20, Rate: 0.05, Escalation: 0.01, Currency: "USD"}

func courses(t testing.TB, options []cost.Option, h cost.Horizon) []cost.Outlook {
	t.Helper()
	return must(cost.Compare(options, h))(t).Options
}

// What has been paid by year 5 is the total of a horizon of 5 years.
func TestMarksAreHorizons(t *testing.T) {
	long := courses(t, choices(), horizon)
	for _, years := range []int{5, 10} {
		h := horizon
		h.Years = years
		for i, o := range courses(t, choices(), h) {
			for s, k := range o.Courses {
				got, want := long[i].Courses[s].Curve[years].Paid, k.Marks[len(k.Marks)-1].Paid
				// A salvage on the very last day belongs to both, a renewal to neither.
				if !got.Equal(want) {
					t.Errorf("%s %v by year %d: %v, a horizon of %d years %v", o.ID, cost.Scenario(s), years, got, years, want)
				}
			}
		}
	}
}

// Property (invariant): real and nominal reckoning give the same present values and the same winner.
func TestRealAndNominal(t *testing.T) {
	nominal := must(horizon.As(cost.Nominal, 0.035))(t)
	if !(nominal.Rate > horizon.Rate && nominal.Escalation > horizon.Escalation) || nominal.Prices != cost.Nominal {
		t.Fatalf("%+v", nominal)
	}
	back := must(nominal.As(cost.Real, 0.035))(t)
	if !(math.Abs(float64(back.Rate-horizon.Rate)) <= 1e-15) {
		t.Errorf("rate comes back as %v", back.Rate)
	}
	a, b := courses(t, choices(), horizon), courses(t, choices(), nominal)
	for i := range a {
		for s := range a[i].Courses {
			x, y := a[i].Courses[s].PresentValue, b[i].Courses[s].PresentValue
			if x.Sub(y).Abs().GreaterThan(decimal.New(1, -2)) {
				t.Errorf("%s: real %v, nominal %v", a[i].ID, x, y)
			}
			if end := len(a[i].Courses[s].Marks) - 1; a[i].ID == "patch" && !b[i].Courses[s].Marks[end].Paid.GreaterThan(a[i].Courses[s].Marks[end].Paid) {
				t.Errorf("%s: money of the day is not more than prices of today", a[i].ID)
			}
		}
	}
}

// Property (two ways): over a whole number of lives the horizon and the single life cost the same a
// year: the least common multiple of 4 and 6 is 12.
func TestUnequalLivesRepeat(t *testing.T) {
	options := []cost.Option{
		{ID: "four", First: usd(1000), Upkeep: usd(70), Salvage: usd(150), Life: cost.SameLife(4)},
		{ID: "six", First: usd(1300), Upkeep: usd(60), UpkeepRise: usd(5), Life: cost.SameLife(6)},
	}
	for i, o := range courses(t, options, cost.Horizon{Years: 12, Rate: 0.07, Currency: "USD"}) {
		one := must(options[i].OneLife(cost.Usual, 0.07))(t).Annual
		if got := o.Courses[cost.Usual].EquivalentAnnual.InexactFloat64(); !(math.Abs(got-one) <= 0.005+1e-9) {
			t.Errorf("%s: %v a year over 12 years, %v over one life", o.ID, got, one)
		}
	}
}

// Property (inverse): at the break-even life the patch costs the same a year as the replacement, and
// one that puts it off just so long costs the same at once.
func TestBreakEvenIsEven(t *testing.T) {
	p := cost.PatchOrReplace{Patch: usd(450), PatchUpkeep: usd(15), Replace: usd(2400), ReplaceUpkeep: usd(4), ReplaceLife: 20, Rate: 0.05}
	l := must(p.Lives())(t)
	patch := cost.Option{ID: "p", First: p.Patch, Upkeep: p.PatchUpkeep, Life: cost.SameLife(l.Repeating.Years)}
	replace := cost.Option{ID: "r", First: p.Replace, Upkeep: p.ReplaceUpkeep, Life: cost.SameLife(20)}
	a, b := must(patch.OneLife(cost.Usual, 0.05))(t).Annual, must(replace.OneLife(cost.Usual, 0.05))(t).Annual
	if !close12(a, b) && !(math.Abs(a-b) <= 1e-9) {
		t.Errorf("%v and %v a year at %v years", a, b, l.Repeating.Years)
	}
	k, i := l.Deferring.Years, 0.05
	v := math.Pow(1+i, -k)
	series := (1 - v) / i
	if wait, now := 450+15*series+2400*v, 2400+4*series; !(math.Abs(wait-now) <= 1e-9*now) {
		t.Errorf("putting off %v years: %v, replacing now %v", k, wait, now)
	}
}

func TestBreakEvenStates(t *testing.T) {
	for name, c := range map[string]struct {
		p                    cost.PatchOrReplace
		repeating, deferring cost.WhenState
	}{
		"free patch":          {cost.PatchOrReplace{Replace: usd(2400), ReplaceLife: 20, Rate: 0.05}, cost.Always, cost.Always},
		"dear upkeep":         {cost.PatchOrReplace{Patch: usd(450), PatchUpkeep: usd(500), Replace: usd(2400), ReplaceLife: 20, Rate: 0.05}, cost.Never, cost.Never},
		"patch above all":     {cost.PatchOrReplace{Patch: usd(9000), Replace: usd(2400), ReplaceLife: 20, Rate: 0.05}, cost.Never, cost.Never},
		"no time value":       {cost.PatchOrReplace{Patch: usd(450), Replace: usd(2400), ReplaceLife: 20}, cost.InYears, cost.Never},
		"negative rate stays": {cost.PatchOrReplace{Patch: usd(450), Replace: usd(2400), ReplaceLife: 20, Rate: -0.01}, cost.InYears, cost.Never},
	} {
		l := must(c.p.Lives())(t)
		if l.Repeating.State != c.repeating || l.Deferring.State != c.deferring {
			t.Errorf("%s: %+v", name, l)
		}
	}
}

// Property (scaling): costs twice as high are twice the present value; the order of the options does
// not touch their figures.
func TestCompareScalesAndReorders(t *testing.T) {
	plain := courses(t, choices(), horizon)
	double := choices()
	for i := range double {
		o := &double[i]
		o.First, o.Upkeep, o.UpkeepRise, o.Salvage = o.First.Mul(usd(2)), o.Upkeep.Mul(usd(2)), o.UpkeepRise.Mul(usd(2)), o.Salvage.Mul(usd(2))
		for k := range o.Events {
			o.Events[k].Cost = o.Events[k].Cost.Mul(usd(2))
		}
	}
	twice := courses(t, double, horizon)
	reversed := choices()
	for i, j := 0, len(reversed)-1; i < j; i, j = i+1, j-1 {
		reversed[i], reversed[j] = reversed[j], reversed[i]
	}
	back := courses(t, reversed, horizon)
	for i := range plain {
		for s := range plain[i].Courses {
			x, y := plain[i].Courses[s].PresentValue.Mul(usd(2)), twice[i].Courses[s].PresentValue
			if x.Sub(y).Abs().GreaterThan(decimal.New(2, -2)) {
				t.Errorf("%s: twice %v is %v", plain[i].ID, x, y)
			}
		}
		if d := cmp.Diff(plain[i], back[len(back)-1-i]); d != "" {
			t.Errorf("%s in another order:\n%s", plain[i].ID, d)
		}
	}
}

// Property (continuous): the value left at the end has no jump where a life ends with the horizon.
func TestUnusedLifeIsContinuous(t *testing.T) {
	pv := func(life float64) float64 {
		return courses(t, []cost.Option{{ID: "x", First: usd(1000), Salvage: usd(200), Life: cost.SameLife(life)}}, cost.Horizon{Years: 20, Rate: 0.05, Currency: "USD"})[0].Courses[0].PresentValue.InexactFloat64()
	}
	for _, life := range []float64{5, 10, 20} {
		if below, at, above := pv(life-1e-6), pv(life), pv(life+1e-6); !(math.Abs(below-at) <= 0.02) || !(math.Abs(above-at) <= 0.02) {
			t.Errorf("life %v: %v, %v, %v", life, below, at, above)
		}
	}
}

// Beyond a flip another option wins, on this side the one that won before.
func TestFlipsFlip(t *testing.T) {
	options := choices()
	c := must(cost.Compare(options, horizon))(t)
	if len(c.Flips()) == 0 {
		t.Fatal("no flip")
	}
	for _, f := range c.Flips() {
		for _, side := range []struct {
			by   float64
			want string
		}{{-1e-4, f.Below}, {1e-4, f.Above}} {
			h, o := horizon, choices()
			x := f.At * (1 + side.by)
			for i := range o {
				if o[i].ID != f.Of {
					continue
				}
				switch f.Parameter {
				case cost.OfFirst:
					o[i].First = decimal.NewFromFloat(x)
				case cost.OfUpkeep:
					o[i].Upkeep = decimal.NewFromFloat(x)
				case cost.OfLife:
					o[i].Life = cost.SameLife(x)
				}
			}
			switch f.Parameter {
			case cost.OfRate:
				h.Rate = cost.Rate(x)
			case cost.OfEscalation:
				h.Escalation = cost.Rate(x)
			case cost.OfHorizon:
				if side.by > 0 && f.At < f.Now || side.by < 0 && f.At > f.Now {
					h.Years = int(f.At) + map[bool]int{true: 1, false: -1}[side.by > 0]
				} else {
					h.Years = int(f.At)
				}
			}
			if got := must(cost.Compare(o, h))(t).Cheapest[cost.Usual]; got != side.want {
				t.Errorf("%v of %q at %v: %s wins, want %s", f.Parameter, f.Of, x, got, side.want)
			}
		}
	}
}

// Property (monotone): planned upkeep pays where it keeps off an early failure, and not where the
// failure is as late and as cheap without it.
func TestNeglect(t *testing.T) {
	n := cost.Neglect{Visit: usd(350), Every: 3, Repair: usd(9000), LastsKept: cost.Lives{Good: 50, Usual: 40, Bad: 25}, LastsLeft: cost.Lives{Good: 20, Usual: 12, Bad: 7}}
	c := must(cost.Compare(must(n.Options())(t), cost.Horizon{Years: 40, Rate: 0.03, Currency: "USD"}))(t)
	if c.Cheapest[cost.Usual] != "upkeep" || c.Cheapest[cost.Bad] != "upkeep" {
		t.Errorf("cheapest %v", c.Cheapest)
	}
	// By hand: 9000 in years 12, 24 and 36, less 8/12 of the last unused in year 40:
	// 9000 (1.03^-12 + 1.03^-24 + 1.03^-36) - 6000 x 1.03^-40 = 12005.77.
	if got := c.Options[1].Courses[cost.Usual].PresentValue; !got.Equal(amount("12005.77")) {
		t.Errorf("neglect costs %s", got)
	}
	n.LastsLeft = n.LastsKept
	c = must(cost.Compare(must(n.Options())(t), cost.Horizon{Years: 40, Rate: 0.03, Currency: "USD"}))(t)
	if c.Cheapest[cost.Usual] != "neglect" {
		t.Errorf("where upkeep changes nothing: %v", c.Cheapest)
	}
	n.LastsKept.Bad, n.Every = 60, 0
	if _, err := n.Options(); err == nil {
		t.Error("no interval and lives out of order were taken")
	}
}

func TestWaiting(t *testing.T) {
	w := cost.WaitingCost{Now: usd(2400), Years: 3, Escalation: 0.04, Damage: usd(600), Rate: 0.04}
	got := must(w.Price())(t)
	if !(math.Abs(got.Extra-600) <= 1e-9) || !(math.Abs(got.Later-3000*math.Pow(1.04, 3)) <= 1e-9) {
		t.Errorf("at rate and escalation alike only the damage is extra: %+v", got)
	}
}

// By hand: 450 in years 3, 6, 9, 12, 15 and 18 against 1,950 more today. After
// year 12 1,800 have come back, and 150 of the 450 of year 15 do the rest.
func TestPaybackOfTheDearer(t *testing.T) {
	options := []cost.Option{{ID: "patch", First: usd(450), Life: cost.SameLife(3)}, {ID: "riser", First: usd(2400), Life: cost.SameLife(20)}}
	b := must(cost.Compare(options, cost.Horizon{Years: 20, Rate: 0.05, Currency: "USD"}))(t).BreakEven[0]
	if b.Payback.State != cost.InYears || !(math.Abs(b.Payback.Years-(14+150.0/450)) <= 1e-9) {
		t.Errorf("payback %+v", b.Payback)
	}
	if b.Discounted.State != cost.Never { // 450 (v^3 + v^6 + ... + v^18) = 1668.6 at 5 %
		t.Errorf("discounted payback %+v", b.Discounted)
	}
}

// The working's last figures are those of the result.
func TestWorkingAgrees(t *testing.T) {
	c := must(cost.Compare(choices(), horizon))(t)
	for _, o := range c.Options {
		for s, k := range o.Courses {
			w := c.Working(o.ID, cost.Scenario(s))
			if len(w) != len(k.Flows)+2 || w[len(w)-1].Value != k.EquivalentAnnual.StringFixed(2)+" USD" || w[len(w)-2].Value != k.PresentValue.StringFixed(2)+" USD" {
				t.Errorf("%s %v: %+v, want %s and %s", o.ID, cost.Scenario(s), w[max(len(w)-2, 0):], k.PresentValue, k.EquivalentAnnual)
			}
		}
	}
	if w := c.Working("nobody", cost.Usual); len(w) != 0 {
		t.Errorf("working of nobody: %v", w)
	}
}
