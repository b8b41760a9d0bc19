package cost

import (
	"cmp"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Why is what a cash flow is for.
type Why uint8

// The kinds of cash flow.
const (
	FirstCost Why = iota
	Renewed
	KeptUp
	Happened   // an event
	SoldOff    // salvage at the end of a life
	UnusedLife // credit at the end of the horizon; no cash
)

var whyWords = [...]string{"first cost", "renewal", "upkeep", "event", "salvage", "unused life"}

// String is the kind in words.
func (w Why) String() string { return manway.Word(whyWords[:], w) }

// MarshalText is the same as String.
func (w Why) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// Flow is one payment: in prices of today, and as paid at its year with
// escalation, to the minor unit. Income is negative.
type Flow struct {
	Year  float64
	Today float64
	Paid  decimal.Decimal
	Why   Why
	Of    string // id of the option in service
}

// near is the slack in which a year counts as reached.
const near = 1e-9

// flows is every payment of an option in one scenario up to the horizon, in the
// order of years. Options are checked.
func (h Horizon) flows(options []Option, o Option, s Scenario) []Flow {
	var list []Flow
	h.walk(options, o, s, func(f Flow) { list = append(list, f) })
	slices.SortStableFunc(list, func(a, b Flow) int { return cmp.Compare(a.Year, b.Year) })
	return list
}

// value is the present value of an option in the usual scenario.
func (h Horizon) value(options []Option, o Option) float64 {
	sum := 0.0
	h.walk(options, o, Usual, func(f Flow) { sum += h.paid(f) * present(h.Rate, f.Year) })
	return sum
}

// figures is the money of an option as numbers.
type figures struct{ first, renewal, upkeep, rise, salvage float64 }

func (o Option) figures() figures {
	return figures{
		o.First.InexactFloat64(), o.renewal().InexactFloat64(), o.Upkeep.InexactFloat64(),
		o.UpkeepRise.InexactFloat64(), o.Salvage.InexactFloat64(),
	}
}

// walk gives every payment to each, life after life.
func (h Horizon) walk(options []Option, o Option, s Scenario, each func(Flow)) {
	n := float64(h.Years)
	add := func(year, amount float64, why Why) {
		if amount != 0 && year <= n+near {
			each(Flow{Year: year, Today: amount, Why: why, Of: o.ID})
		}
	}
	f := o.figures()
	price, why := f.first, FirstCost
	for start := 0.0; start < n-near; {
		end := math.Inf(1)
		if !o.Forever {
			end = start + o.Life.in(s)
		}
		add(start, price, why)
		o.service(s, f, start, math.Min(end, n), add)
		switch {
		case o.Forever && h.Unused == StraightLine:
			add(n, -price, UnusedLife)
		case o.Forever:
		case end <= n+near:
			add(math.Min(end, n), -f.salvage, SoldOff)
		case h.Unused == StraightLine:
			add(n, -(f.salvage + (price-f.salvage)*(end-n)/o.Life.in(s)), UnusedLife)
		}
		start, price, why = end, f.renewal, Renewed
		if next, ok := find(options, o.Then); ok {
			o, f = next, next.figures()
			price = f.first
		}
	}
}

// service adds upkeep and events of one life from start to end. Upkeep falls at
// the ends of calendar years of the study; that of the year in which a life
// ends is paid by the life that ends on or after that day.
func (o Option) service(s Scenario, f figures, start, end float64, add func(year, amount float64, why Why)) {
	if f.upkeep != 0 || f.rise != 0 {
		for k, year := 0.0, math.Floor(start+near)+1; year <= end+near; k, year = k+1, year+1 {
			add(year, f.upkeep+f.rise*k, KeptUp)
		}
	}
	for _, e := range o.Events {
		if e.Only != nil && *e.Only != s {
			continue
		}
		cost := e.Cost.InexactFloat64()
		for k := 0.0; ; k++ {
			after := e.Year + k*e.Every
			if start+after > end+near || e.Until > 0 && after > e.Until+near {
				break
			}
			add(start+after, cost, Happened)
			if e.Every == 0 {
				break
			}
		}
	}
}

// paid is a flow in the money of the horizon at its year.
func (h Horizon) paid(f Flow) float64 {
	if h.Escalation == 0 {
		return f.Today
	}
	return f.Today * math.Exp(f.Year*math.Log1p(float64(h.Escalation)))
}

// presentValue is the sum of the flows at their present values.
func (h Horizon) presentValue(flows []Flow) float64 {
	sum := 0.0
	for _, f := range flows {
		sum += h.paid(f) * present(h.Rate, f.Year)
	}
	return sum
}

// equivalentAnnual spreads a present value over the horizon as equal payments
// at the ends of years, in prices that rise with the escalation: in prices of
// today where there is none.
func (h Horizon) equivalentAnnual(pv float64) float64 {
	return pv / escalatingPresent(h.Rate, h.Escalation, float64(h.Years))
}
