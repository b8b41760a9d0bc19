package cost_test

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/internal/limit"
	"manway.example/manway/riser"
)

func near(got, want float64) bool { return math.Abs(got-want) <= 1e-9*math.Max(math.Abs(want), 1e-6) }

// What is bought by hand: net with waste, over the pack, rounded up.
func TestSuppliesByHand(t *testing.T) {
	for _, c := range []struct {
		code, unit  string
		net, bought float64
	}{
		{"gravel", "YDQ", 10, 10 * 1.05 * 1.12 / 0.95},                    // loose over compacted
		{"fill", "YDQ", 10, 10 * 1.05 * 1.25 / 0.90},                      // loose over compacted
		{"topsoil", "YDQ", 10, 11},                                        // a tenth more
		{"wrap", "FTK", 10, 11},                                           // laps
		{"ring-concrete", "FOT", 2.5, 2.5},                                // as it is
		{"riser-plastic", "FOT", 2.5, 3},                                  // whole feet
		{"sealant-strip", "FOT", 27, 2},                                   // 28.35 ft, rolls of 14.5
		{"sealant-strip", "FOT", 28, 3},                                   // 29.4 ft
		{"sealant-bead", "INQ", 99, 6},                                    // 108.9 in3, tubes of 10.1 x 1.8046875 = 18.227
		{"sealant-bead", "INQ", 100, 7},                                   // 110 in3 of 109.4
		{"cement-plug", "FTQ", 0.34, 1}, {"cement-plug", "FTQ", 0.342, 2}, // 0.374 and 0.3762 of 50 x 0.0075 = 0.375
		{"repair-mortar", "FTQ", 0.34, 1}, {"repair-mortar", "FTQ", 0.342, 2},
		{"grout", "FTQ", 0.409, 1}, {"grout", "FTQ", 0.41, 2}, // 0.4499 and 0.451 of 0.45
		{"concrete", "FTQ", 0.409, 1}, {"concrete", "FTQ", 0.41, 2}, // 60 x 0.0075 = 0.45
		{"seed", "LBR", 2, 3}, // 2.1 lb
		{"tank", "GLL", 1000, 1000},
	} {
		if l := takenOff(t, c.code, c.net, c.unit); !near(l.Quantity, c.bought) {
			t.Errorf("%g of %s: %g bought, want %g", c.net, c.code, l.Quantity, c.bought)
		}
	}
}

// annual is F (A/P) over n years, present the worth of 1 a year for n years.
func worth(i, n float64) float64 { return (1 - math.Pow(1+i, -n)) / i }

// At the break-even life both cost the same a year, with upkeep, salvage and
// escalation: at the rate above it, 1.05/1.02 - 1, (P - S)(A/P) + S i + u of each.
// Put off by the break-even years, the dear one costs what it costs now:
// P - S + u (P/A) = (i (R - S) + v)(P/A).
func TestBreakEvenWithUpkeep(t *testing.T) {
	h := cost.Horizon{Years: 20, Rate: 0.05, Escalation: 0.02, Currency: "USD"}
	i := 1.05/1.02 - 1
	cheap := cost.Option{ID: "patch", First: usd(450), Life: cost.SameLife(4), Upkeep: usd(10), Salvage: usd(30)}
	dear := cost.Option{ID: "riser", First: usd(2400), Life: cost.SameLife(20), Upkeep: usd(25), Salvage: usd(200)}
	c := must(cost.Compare([]cost.Option{cheap, dear}, h))(t)
	b := c.BreakEven[0]
	n, k := b.Repeating.Years, b.Deferring.Years
	if got, want := 420/worth(i, n)+30*i+10, 2200/worth(i, 20)+200*i+25; !near(got, want) {
		t.Errorf("lasting %g years the patch costs %g a year, the riser %g", n, got, want)
	}
	if got, want := 420.0, (i*(2400-30)+25-10)*worth(i, k); !near(got, want) {
		t.Errorf("put off by %g years: %g and %g", k, got, want)
	}
	dear.Forever = true
	b = must(cost.Compare([]cost.Option{cheap, dear}, h))(t).BreakEven[0]
	if got, want := 420/worth(i, b.Repeating.Years)+30*i+10, 2400*i+25; !near(got, want) {
		t.Errorf("beside one for ever: %g a year, %g", got, want)
	}
	// 100 every 4 years from year 4 is 100 (A/F) a year.
	dear.Forever, dear.Events = false, []cost.Event{{Cost: usd(100), Year: 4, Every: 4}}
	b = must(cost.Compare([]cost.Option{cheap, dear}, h))(t).BreakEven[0]
	if got, want := 420/worth(i, b.Repeating.Years)+30*i+10, 2200/worth(i, 20)+200*i+25+100*i/(math.Pow(1+i, 4)-1); !near(got, want) {
		t.Errorf("with a cost every four years: %g a year, %g", got, want)
	}
}

// A life that ends with the horizon is sold off at its salvage, with or without
// credit for unused life: 1000 - 200 at no interest. One that ends half used is
// credited 200 + 800/2.
func TestSalvageAtTheEnd(t *testing.T) {
	o := cost.Option{ID: "a", First: usd(1000), Salvage: usd(200), Life: cost.SameLife(10)}
	for _, c := range []struct {
		unused cost.Unused
		years  int
		want   int64
	}{{cost.StraightLine, 10, 800}, {cost.NoCredit, 10, 800}, {cost.StraightLine, 5, 400}, {cost.NoCredit, 5, 1000}, {cost.StraightLine, 20, 1600}} {
		got := courses(t, []cost.Option{o}, cost.Horizon{Years: c.years, Unused: c.unused, Currency: "USD"})[0].Courses[cost.Usual]
		if !got.PresentValue.Equal(usd(c.want)) || c.years == 10 && len(got.Flows) != 2 {
			t.Errorf("%v over %d years: %v, want %d; %v", c.unused, c.years, got.PresentValue, c.want, got.Flows)
		}
	}
}

// Events up to a year fall on it too, where the years are not whole: 0.3, 0.6
// and 0.9 up to 0.9; 3 x 0.3 is a hair more than 0.9.
func TestEventsReachTheirEnd(t *testing.T) {
	o := cost.Option{ID: "a", First: usd(1000), Life: cost.SameLife(5), Events: []cost.Event{{Cost: usd(1), Year: 0.3, Every: 0.3, Until: 0.9}, {Cost: usd(10), Year: 2}}}
	if err := o.Validate(); err != nil {
		o.Events[0] = cost.Event{Cost: usd(1), Year: 1.1, Every: 1.1, Until: 3.3}
	}
	count := 0
	for _, f := range courses(t, []cost.Option{o}, cost.Horizon{Years: 5, Currency: "USD"})[0].Courses[cost.Usual].Flows {
		if f.Why == cost.Happened && f.Today == 1 {
			count++
		}
	}
	if count != 3 {
		t.Errorf("%d events, want 3", count)
	}
}

// What follows is found wherever it stands in the list.
func TestThenIsFoundAnywhere(t *testing.T) {
	patch := cost.Option{ID: "patch", First: usd(450), Life: cost.SameLife(3), Then: "riser"}
	renew := cost.Option{ID: "riser", First: usd(2400), Life: cost.SameLife(20)}
	h := cost.Horizon{Years: 20, Currency: "USD"}
	// 450 now and 2,400 in year 3, of which 3/20 is unused: 450 + 2400 x 17/20.
	for at, list := range [][]cost.Option{{patch, renew}, {renew, patch}} {
		if got := courses(t, list, h)[at].Courses[cost.Usual].PresentValue; !got.Equal(usd(2490)) {
			t.Errorf("in place %d: %v, want 2490", at, got)
		}
	}
}

// A comparison of too many payments is refused before it is made: 2 options of
// 100 years with 75 quarterly costs are 60,000 and more, with 45 36,000 and some.
func TestTooManyPayments(t *testing.T) {
	for events, refused := range map[int]bool{75: true, 45: false} {
		o := cost.Option{ID: "a", First: usd(1), Life: cost.SameLife(50)}
		for range events {
			o.Events = append(o.Events, cost.Event{Cost: usd(1), Year: 1, Every: 0.25})
		}
		other := o
		other.ID = "b"
		_, err := cost.Compare([]cost.Option{o, other}, cost.Horizon{Years: 100, Currency: "USD"})
		if (err != nil) != refused {
			t.Errorf("%d quarterly costs: %v", events, err)
		}
	}
}

// A comparison of 50,000 payments is taken and one of 50,001 is not. An option that
// lasts for ever has one life and upkeep in each of 64 years, 65; a cost every
// quarter adds 64 x 4 + 1 = 257, one every year 65, every 8 years 9, every 64
// years 2. 65 + 97 x 257 + 3 x 2 = 25,000, and two such options pay 50,000; 65 +
// 64 x 257 + 2 x 65 + 2 x 9 + 3 x 2 = 16,667, and three 50,001.
func TestMostPayments(t *testing.T) {
	for _, c := range []struct {
		options int
		events  map[float64]int // how many of each interval
		taken   bool
	}{
		{2, map[float64]int{0.25: 97, 64: 3}, true},
		{3, map[float64]int{0.25: 64, 1: 2, 8: 2, 64: 3}, false},
	} {
		var list []cost.Option
		for i := range c.options {
			o := cost.Option{ID: string(rune('a' + i)), First: usd(1), Forever: true}
			for every, n := range c.events {
				for range n {
					o.Events = append(o.Events, cost.Event{Cost: usd(1), Year: 1, Every: every})
				}
			}
			list = append(list, o)
		}
		if _, err := cost.Compare(list, cost.Horizon{Years: 64, Currency: "USD"}); (err == nil) != c.taken {
			t.Errorf("%d options of %v: %v", c.options, c.events, err)
		}
	}
}

// What is paid every 1.1 years from 1.1 until 3.3 is paid three times: 1.1 + 2 x 1.1
// is 3.3, though not in binary. Until 3.2 it is paid twice.
func TestUntilTheLastYear(t *testing.T) {
	for until, want := range map[float64]int64{3.3: 30, 3.2: 20, 0: 90} {
		o := cost.Option{ID: "a", Forever: true, Events: []cost.Event{{Cost: usd(10), Year: 1.1, Every: 1.1, Until: until}}}
		if got := courses(t, []cost.Option{o}, cost.Horizon{Years: 10, Currency: "USD"})[0].Courses[cost.Usual].PresentValue; !got.Equal(usd(want)) {
			t.Errorf("until %g: %v, want %d", until, got, want)
		}
	}
}

// The deviation of a normal value cut off at 3 deviations, by Simpson's rule on
// x^2 phi(x) over -3 to 3.
func TestCutNormal(t *testing.T) {
	var mass, spread float64
	const steps = 6000
	for k := range steps + 1 {
		x := -3 + 6*float64(k)/steps
		w := []float64{2, 4}[k%2]
		if k == 0 || k == steps {
			w = 1
		}
		mass += w * math.Exp(-x*x/2)
		spread += w * x * x * math.Exp(-x*x/2)
	}
	m := must(cost.Range{Low: 0, Likely: 3, High: 6, Shape: cost.Normal}.Moments())(t)
	if want := math.Sqrt(spread / mass); !(math.Abs(m.SD-want) <= 1e-10) {
		t.Errorf("deviation %.12g, want %.12g", m.SD, want)
	}
}

// Each part of a line is checked.
func TestPartsOfALine(t *testing.T) {
	good := cost.Line{Code: "dig-hand", Class: riser.Labour, Quantity: 7, Unit: "LH", Prices: cost.Range{Low: 1, Likely: 2, High: 3}, Quantities: cost.Range{Low: 5, Likely: 7, High: 9}}
	if err := good.Validate(); err != nil {
		t.Error(err)
	}
	for name, change := range map[string]func(*cost.Line){
		"Code":        func(l *cost.Line) { l.Code = "" },
		"Description": func(l *cost.Line) { l.Description = "\tdig" },
		"Quantity":    func(l *cost.Line) { l.Quantity = -1 },
		"Crew":        func(l *cost.Line) { l.Crew = 101 },
		"Prices":      func(l *cost.Line) { l.Prices = cost.Range{Low: 3, Likely: 2, High: 1} },
		"Quantities":  func(l *cost.Line) { l.Quantities = cost.Range{Low: 3, Likely: 2, High: 1} },
	} {
		l := good
		change(&l)
		if l.Validate() == nil {
			t.Errorf("%s: nothing is refused", name)
		}
	}
	for _, h := range []cost.Horizon{{Years: 5, Currency: "USD", Unused: 2}, {Years: 5, Currency: "USD", Prices: 2}, {Years: 0, Currency: "USD"}, {Years: 201, Currency: "USD"}} {
		if h.Validate() == nil {
			t.Errorf("%+v is taken", h)
		}
	}
}

// Money below one unit flips too: 8 a year for 10 years on 100 against 104 flips
// at 0.4 a year.
func TestFlipBelowOne(t *testing.T) {
	a := cost.Option{ID: "a", First: usd(100), Upkeep: decimal.RequireFromString("0.8"), Life: cost.SameLife(10)}
	b := cost.Option{ID: "b", First: usd(104), Life: cost.SameLife(10)}
	for _, f := range must(cost.Compare([]cost.Option{a, b}, cost.Horizon{Years: 10, Currency: "USD"}))(t).Flips() {
		if f.Parameter == cost.OfUpkeep && f.Of == "a" && math.Abs(f.At-0.4) < 1e-6 && f.Below == "a" && f.Above == "b" {
			return
		}
	}
	t.Error("the upkeep at which the answer changes was not found")
}

// The limits of what a pump-out, a truck, a grid of bars and a pit may be.
func TestLimitsOfWork(t *testing.T) {
	p := cost.PumpOut{Gallons: 1250 * manway.Gallon, Covers: []manway.Length{6 * manway.Inch}}
	lines := func(b cost.Band) error { _, err := p.Lines(b); return err }
	limit.Check(t, cost.Band{Gallons: 1000 * manway.Gallon, Lids: 1}, lines, limit.Between("Band.Lids", 0, 100).In("Lids"))
	load := func(x cost.Truck) error { _, err := x.Lines(1500 * manway.Gallon); return err }
	limit.Check(t, cost.Truck{Capacity: 1000 * manway.Gallon, Rate: 100 * manway.GallonPerMinute, Crew: 2}, load,
		limit.Between("Truck.Rate", manway.GallonPerMinute, 2000*manway.GallonPerMinute).In("Rate"))
	bars := func(g cost.BarGrid) error { _, _, _, err := g.Bars(); return err }
	limit.Check(t, cost.BarGrid{Width: 20 * manway.Foot, Length: 20 * manway.Foot, Cover: 2 * manway.Inch, Spacing: manway.Foot}, bars,
		limit.Between("Spacing", manway.Inch, 10*manway.Foot))
	pit := func(s cost.SlopedPit) error { _, err := s.Volumes(); return err }
	limit.Check(t, cost.SlopedPit{BottomWidth: 4 * manway.Foot, BottomLength: 8 * manway.Foot, TopWidth: 10 * manway.Foot, TopLength: 14 * manway.Foot, Depth: 6 * manway.Foot}, pit,
		limit.AtMost("TopLength", 1000*manway.Foot), limit.AtMost("TopWidth", 1000*manway.Foot))
}
