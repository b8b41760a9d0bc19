package cost

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"
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
func (w Why) String() string { return word(whyWords[:], int(w)) }

// MarshalText is the same as String.
func (w Why) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// Flow is one payment: in prices of today, and as paid at its year with
// escalation, to the minor unit. Income is negative.
type Flow struct {
	Year  float64
	Today decimal.Decimal
	Paid  decimal.Decimal
	Why   Why
	Of    string // id of the option in service
}

// near is the slack in which a year counts as reached.
const near = 1e-9

// flows is every payment of an option in one scenario up to the horizon, in the
// order of years. Options are checked.
func (h Horizon) flows(options []Option, o Option, s Scenario) []Flow {
	n := float64(h.Years)
	var list []Flow
	add := func(year float64, amount decimal.Decimal, why Why, of string) {
		if !amount.IsZero() && year <= n+near {
			list = append(list, Flow{Year: year, Today: amount, Why: why, Of: of})
		}
	}
	price, why := o.First, FirstCost
	for start := 0.0; start < n-near; {
		end := math.Inf(1)
		if !o.Forever {
			end = start + o.Life.in(s)
		}
		add(start, price, why, o.ID)
		h.service(o, s, start, math.Min(end, n), add)
		switch left := (end - n) / o.Life.in(s); {
		case o.Forever && h.Unused == StraightLine:
			add(n, price.Neg(), UnusedLife, o.ID)
		case o.Forever:
		case end <= n+near:
			add(math.Min(end, n), o.Salvage.Neg(), SoldOff, o.ID)
		case h.Unused == StraightLine:
			part := decimal.NewFromFloat(left)
			add(n, o.Salvage.Add(price.Sub(o.Salvage).Mul(part)).Neg(), UnusedLife, o.ID)
		}
		start = end
		price, why = o.renewal(), Renewed
		if next, ok := find(options, o.Then); ok {
			o, price = next, next.First
		}
	}
	slices.SortStableFunc(list, func(a, b Flow) int {
		switch {
		case a.Year < b.Year:
			return -1
		case a.Year > b.Year:
			return 1
		}
		return 0
	})
	return list
}

// service adds upkeep and events of one life from start to end. Upkeep falls at
// the ends of calendar years of the study; that of the year in which a life
// ends is paid by the life that ends on or after that day.
func (h Horizon) service(o Option, s Scenario, start, end float64, add func(float64, decimal.Decimal, Why, string)) {
	if !o.Upkeep.IsZero() || !o.UpkeepRise.IsZero() {
		for k, year := 0, math.Floor(start+near)+1; year <= end+near; k, year = k+1, year+1 {
			add(year, o.Upkeep.Add(o.UpkeepRise.Mul(decimal.NewFromInt(int64(k)))), KeptUp, o.ID)
		}
	}
	for _, e := range o.Events {
		if e.Only != nil && *e.Only != s {
			continue
		}
		for k := 0.0; ; k++ {
			after := e.Year + k*e.Every
			if start+after > end+near || e.Until > 0 && after > e.Until+near {
				break
			}
			add(start+after, e.Cost, Happened, o.ID)
			if e.Every == 0 {
				break
			}
		}
	}
}

// paid is a flow in the money of the horizon at its year.
func (h Horizon) paid(f Flow) float64 {
	return f.Today.InexactFloat64() * math.Exp(f.Year*math.Log1p(float64(h.Escalation)))
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
