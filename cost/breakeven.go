package cost

import (
	"math"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// WhenState says whether there is a year at all.
type WhenState uint8

// The states of a [When].
const (
	NotJudged WhenState = iota // Reason says why
	InYears                    // Years holds the answer
	Always                     // the cheaper one pays however short it lasts
	Never                      // it pays however long it lasts: not at all
)

var whenWords = [...]string{"not judged", "years", "always", "never"}

// String is the state in words.
func (s WhenState) String() string { return manway.Word(whenWords[:], s) }

// MarshalText is the same as String.
func (s WhenState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// When is a number of years, or the state that there is none.
type When struct {
	State  WhenState
	Years  float64 // where State is InYears
	Reason string  // where State is NotJudged
}

// PatchOrReplace is a cheap measure against a dear one that lasts. All money is
// of today; Rate is real.
type PatchOrReplace struct {
	Patch         decimal.Decimal // cost of the cheap one
	PatchUpkeep   decimal.Decimal // a year
	Replace       decimal.Decimal // cost of the dear one
	ReplaceUpkeep decimal.Decimal // a year
	ReplaceLife   float64         // years
	Rate          Rate
}

// Lifetimes are the shortest lives at which a patch pays, by two questions.
type Lifetimes struct {
	// Repeating is the life at which patching again and again costs the same a
	// year as replacing again and again.
	Repeating When
	// Deferring is how long one patch must put the same replacement off so that
	// it is worth its cost.
	Deferring When
}

// Lives is how long the patch must last:
//
//	repeating  n = -ln(1 - i P/(E - u)) / ln(1+i), at i = 0: P/(E - u)
//	deferring  k = -ln(1 - i P/(i R + v - u)) / ln(1+i), at i = 0: P/(v - u)
//
// with P the patch, u its upkeep, R the replacement, v its upkeep, and
// E = R (A/P) + v the yearly cost of the replacement. Where the logarithm has no
// value the patch never pays. The two questions have different answers: the
// first repeats both for ever, the second moves only the first date of the
// replacement.
//
// Source: NIST Handbook 135 annual cost method, solved for the life; own derivation.
func (p PatchOrReplace) Lives() (Lifetimes, error) {
	var faults manway.InputErrors
	checkNotNegative(&faults, "Patch", p.Patch)
	checkNumber(&faults, "PatchUpkeep", p.PatchUpkeep)
	checkNotNegative(&faults, "Replace", p.Replace)
	checkNumber(&faults, "ReplaceUpkeep", p.ReplaceUpkeep)
	checkFloat(&faults, "ReplaceLife", p.ReplaceLife, leastLife, 1000)
	checkRate(&faults, "Rate", p.Rate)
	if err := faults.Err(); err != nil {
		return Lifetimes{}, err
	}
	i := float64(p.Rate)
	cost, u := p.Patch.InexactFloat64(), p.PatchUpkeep.InexactFloat64()
	r, v := p.Replace.InexactFloat64(), p.ReplaceUpkeep.InexactFloat64()
	return Lifetimes{
		Repeating: recovered(cost, r/seriesPresent(p.Rate, p.ReplaceLife)+v-u, p.Rate),
		Deferring: recovered(cost, i*r+v-u, p.Rate),
	}, nil
}

// recovered is the number of years in which yearly savings pay a cost back:
// cost = saving (P/A).
func recovered(cost, saving float64, i Rate) When {
	switch {
	case cost <= 0:
		return When{State: Always}
	case saving <= 0:
		return When{State: Never}
	case i == 0:
		return finiteYears(cost / saving)
	}
	used := float64(i) * cost / saving
	if !(used < 1-1e-12) {
		return When{State: Never}
	}
	return finiteYears(-math.Log1p(-used) / math.Log1p(float64(i)))
}

// finiteYears is y, never where it is beyond any life, and always where it is
// too small to be told from nothing.
func finiteYears(y float64) When {
	switch {
	case !(y <= 1e6):
		return When{State: Never}
	case y == 0:
		return When{State: Always}
	}
	return When{State: InYears, Years: y}
}

// BreakEven is how long a cheaper option must last to cost no more a year than
// a dearer one in its usual life, and how long it must put the dearer one off.
type BreakEven struct {
	Cheap, Dear string
	Lifetimes
	// Payback is the year, as things usually go, by which the higher first cost
	// has come back in what the cheaper one costs more later; Discounted counts
	// each year at its present value. Never is not within the horizon.
	Payback, Discounted When
}

// paybacks fills in the paybacks of every pair from what both pay by year in the
// usual case.
func (c *Comparison) paybacks() {
	paid := map[string]Project{}
	for _, o := range c.Options {
		years := make(Project, c.Horizon.Years+1)
		for _, f := range o.Courses[Usual].Flows {
			if f.Why != UnusedLife {
				years[int(math.Ceil(f.Year-near))] += f.Paid.InexactFloat64()
			}
		}
		paid[o.ID] = years
	}
	saved := make(Project, c.Horizon.Years+1)
	for i := range c.BreakEven {
		b := &c.BreakEven[i]
		for t := range saved {
			saved[t] = paid[b.Cheap][t] - paid[b.Dear][t]
		}
		b.Payback, b.Discounted = payback(saved, 0), payback(saved, c.Horizon.Rate)
	}
}

// breakEvens pairs every option with every one of a higher first cost.
func breakEvens(options []Option, h Horizon) []BreakEven {
	var list []BreakEven
	for _, cheap := range options {
		for _, dear := range options {
			if cheap.First.LessThan(dear.First) {
				list = append(list, breakEven(cheap, dear, h.net()))
			}
		}
	}
	return list
}

// net is the rate above the escalation: what prices of today are discounted at.
func (h Horizon) net() Rate { return (h.Rate - h.Escalation) / (1 + h.Escalation) }

func breakEven(cheap, dear Option, i Rate) BreakEven {
	b := BreakEven{Cheap: cheap.ID, Dear: dear.ID}
	for _, o := range [...]Option{cheap, dear} {
		if reason := o.uneven(); reason != "" {
			w := When{Reason: o.ID + " has " + reason}
			b.Repeating, b.Deferring = w, w
			return b
		}
	}
	if cheap.Then != "" && cheap.Then != dear.ID {
		w := When{Reason: cheap.ID + " is followed by another option than " + dear.ID}
		b.Repeating, b.Deferring = w, w
		return b
	}
	u, v := cheap.yearly(i), dear.yearly(i)
	cost, salvage := cheap.First.InexactFloat64(), cheap.Salvage.InexactFloat64()
	b.Repeating = When{Reason: cheap.ID + " is not repeated"}
	if cheap.Then == "" {
		b.Repeating = recovered(cost-salvage, dear.annual(Usual, i)-u-salvage*float64(i), i)
	}
	b.Deferring = recovered(cost-salvage, float64(i)*(dear.First.InexactFloat64()-salvage)+v-u, i)
	return b
}

// uneven is what keeps an option's yearly cost from being the same in each of
// its years; empty where nothing does.
func (o Option) uneven() string {
	switch {
	case !o.UpkeepRise.IsZero():
		return "upkeep that rises"
	case o.Renewal.Valid && !o.Renewal.Decimal.Equal(o.First):
		return "a renewal at another price than its first cost"
	}
	for _, e := range o.Events {
		if e.Every == 0 || e.Until != 0 || e.Only != nil {
			return "a cost that does not come back"
		}
	}
	return ""
}

// yearly is the upkeep with events that come back spread over their years.
func (o Option) yearly(i Rate) float64 {
	sum := o.Upkeep.InexactFloat64()
	for _, e := range o.Events {
		if e.Every > 0 {
			sum += e.Cost.InexactFloat64() * present(i, e.Year-e.Every) / (seriesPresent(i, e.Every) / present(i, e.Every))
		}
	}
	return sum
}

// annual is the yearly cost of an even option over its life:
//
//	(F - S)(A/P) + S i + u, for ever: F i + u
func (o Option) annual(s Scenario, i Rate) float64 {
	first, salvage := o.First.InexactFloat64(), o.Salvage.InexactFloat64()
	if o.Forever {
		return first*float64(i) + o.yearly(i)
	}
	return (first-salvage)/seriesPresent(i, o.Life.in(s)) + salvage*float64(i) + o.yearly(i)
}
