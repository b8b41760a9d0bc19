package cost

import (
	"math"

	"manway.example/manway"
)

// Yearly is the cost of one option over one of its own lives.
type Yearly struct {
	PresentWorth float64 // of one life; of all time for an option that lasts for ever
	Annual       float64 // as equal payments at the ends of the years of that life
}

// OneLife is what an option costs over one life, which is its yearly cost for
// as long as it is repeated alike, so that unequal lives compare:
//
//	P = F - S (P/F) + u (P/A) + g (P/G) + events, for ever: F + u/i
//	A = P (A/P), for ever: P i
//
// Rate and money are both real or both nominal. The life in the scenario must be
// whole years where the upkeep rises; an event outside the life is refused.
//
// Source: NIST Handbook 135 annual value; textbook equivalent uniform annual cost.
func (o Option) OneLife(s Scenario, i Rate) (Yearly, error) {
	var faults manway.InputErrors
	faults.Under("", o.Validate())
	checkRate(&faults, "Rate", i)
	if s >= scenarios {
		faults.Add("Scenario", s.String(), "good, usual or bad")
	}
	if err := faults.Err(); err != nil {
		return Yearly{}, err
	}
	if o.Forever {
		return o.forever(s, i)
	}
	n := o.Life.in(s)
	if n > mostYears {
		faults.Add("Life", shortNumber(n), "at most 200 years")
	}
	if n != math.Trunc(n) && !o.UpkeepRise.IsZero() {
		faults.Add("Life", shortNumber(n), "whole years where the upkeep rises")
	}
	if err := faults.Err(); err != nil {
		return Yearly{}, err
	}
	series := seriesPresent(i, n)
	p := o.First.InexactFloat64() - o.Salvage.InexactFloat64()*present(i, n) + o.Upkeep.InexactFloat64()*series
	if !o.UpkeepRise.IsZero() {
		p += o.UpkeepRise.InexactFloat64() * gradientAnnual(i, int(n)) * series
	}
	p += o.eventsPresent(s, i, n)
	return Yearly{PresentWorth: p, Annual: p / series}, nil
}

// forever is OneLife of an option that is never renewed: its capitalized cost.
func (o Option) forever(s Scenario, i Rate) (Yearly, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Rate", i, 1e-6, mostRate)
	if err := faults.Err(); err != nil {
		return Yearly{}, err
	}
	p := o.First.InexactFloat64() + o.Upkeep.InexactFloat64()/float64(i)
	p += o.UpkeepRise.InexactFloat64() / float64(i) / float64(i)
	p += o.eventsPresent(s, i, math.Inf(1))
	return Yearly{PresentWorth: p, Annual: p * float64(i)}, nil
}

// eventsPresent is the present worth of the events up to year n.
func (o Option) eventsPresent(s Scenario, i Rate, n float64) float64 {
	sum := 0.0
	for _, e := range o.Events {
		if e.Only != nil && *e.Only != s || e.Year > n+near || e.Until > 0 && e.Year > e.Until+near {
			continue
		}
		last := n
		if e.Until > 0 {
			last = math.Min(n, e.Until)
		}
		times := 1.0
		if e.Every > 0 {
			times = math.Floor((last-e.Year)/e.Every+near) + 1 // Inf for an endless series
		}
		one := e.Cost.InexactFloat64() * present(i, e.Year)
		if times > 1 {
			// A series of payments every k years at the rate (1+i)^k - 1 a step.
			step := Rate(math.Expm1(e.Every * math.Log1p(float64(i))))
			one *= 1 + seriesPresent(step, times-1)
		}
		sum += one
	}
	return sum
}
