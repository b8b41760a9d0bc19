package cost

import (
	"math"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Parameter is what is varied to see when an answer changes.
type Parameter uint8

// The parameters.
const (
	OfRate Parameter = iota
	OfEscalation
	OfHorizon
	OfFirst  // first cost of an option, with a renewal at the same price
	OfUpkeep // yearly upkeep of an option
	OfLife   // life of an option in years
)

var parameterWords = [...]string{"rate", "escalation", "horizon", "first cost", "upkeep", "life"}

// String is the parameter in words.
func (p Parameter) String() string { return manway.Word(parameterWords[:], p) }

// MarshalText is the same as String.
func (p Parameter) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// Flip is a value of one parameter, all else unchanged, beyond which another
// option has the least present value in the usual scenario. Rates are
// fractions, lives and horizons years, costs money.
type Flip struct {
	Parameter Parameter
	Of        string  // id of the option whose cost or life it is; empty for the others
	Now       float64 // the value used
	At        float64 // the value at which the answer changes
	Below     string  // id of the cheapest below At
	Above     string  // id of the cheapest above At
}

// How far parameters are varied.
const (
	flipRate    = 0.20 // rate and escalation, from 0 or from a negative rate that is used
	flipYears   = 60   // horizon
	flipLife    = 60   // life, in quarters of a year
	flipFactor  = 3    // first cost and upkeep, times
	flipHalving = 50
)

// Flips is where the cheapest in the usual scenario changes: the nearest change
// of the answer on each side of every parameter, others held. It is searched for
// when asked.
func (c Comparison) Flips() []Flip {
	options, h := c.given, c.Horizon
	if len(options) < 2 {
		return nil
	}
	var list []Flip
	scan := func(p Parameter, of string, now, lo, hi, step float64, winner func(float64) string) {
		for _, f := range nearest(now, lo, hi, step, winner) {
			f.Parameter, f.Of, f.Now = p, of, now
			list = append(list, f)
		}
	}
	at := func(h Horizon) string { return winner(options, h) }
	lowest := math.Min(0, float64(h.Rate))
	scan(OfRate, "", float64(h.Rate), lowest, math.Max(flipRate, float64(h.Rate)), 0.01, func(x float64) string {
		g := h
		g.Rate = Rate(x)
		return at(g)
	})
	lowest = math.Min(0, float64(h.Escalation))
	scan(OfEscalation, "", float64(h.Escalation), lowest, math.Max(flipRate, float64(h.Escalation)), 0.01, func(x float64) string {
		g := h
		g.Escalation = Rate(x)
		return at(g)
	})
	list = append(list, horizonFlips(options, h)...)
	for i, o := range options {
		others := valuesWithout(options, h, o.ID)
		vary := func(change func(*Option, float64)) func(float64) string {
			return func(x float64) string {
				changed := append([]Option(nil), options...)
				change(&changed[i], x)
				return winnerBeside(changed, h, others)
			}
		}
		if first := o.First.InexactFloat64(); first > 0 {
			scan(OfFirst, o.ID, first, 0, flipFactor*first, first/4, vary(func(o *Option, x float64) { o.First = decimal.NewFromFloat(x) }))
		}
		if upkeep := o.Upkeep.InexactFloat64(); upkeep > 0 {
			scan(OfUpkeep, o.ID, upkeep, 0, flipFactor*upkeep, upkeep/4, vary(func(o *Option, x float64) { o.Upkeep = decimal.NewFromFloat(x) }))
		}
		if !o.Forever {
			life := o.Life.Usual
			scan(OfLife, o.ID, life, 0.5, math.Max(flipLife, life), 0.5, vary(func(o *Option, x float64) { o.Life = SameLife(x) }))
		}
	}
	return list
}

// winner is the id of the least present value in the usual scenario.
func winner(options []Option, h Horizon) string { return winnerBeside(options, h, nil) }

// winnerBeside is winner with the present values of some options known.
func winnerBeside(options []Option, h Horizon, known map[string]float64) string {
	best, id := math.Inf(1), ""
	for _, o := range options {
		v, ok := known[o.ID]
		if !ok {
			v = h.value(options, o)
		}
		if v < best {
			best, id = v, o.ID
		}
	}
	return id
}

// valuesWithout is the present value of every option that a change of one of
// them leaves alone: neither that one nor one that it follows.
func valuesWithout(options []Option, h Horizon, id string) map[string]float64 {
	known := map[string]float64{}
	for _, o := range options {
		touched := false
		for steps, at := 0, o; steps <= len(options); steps++ {
			touched = touched || at.ID == id
			next, ok := find(options, at.Then)
			if !ok {
				break
			}
			at = next
		}
		if !touched {
			known[o.ID] = h.value(options, o)
		}
	}
	return known
}

// nearest looks from now down to lo and up to hi for the first change.
func nearest(now, lo, hi, step float64, winner func(float64) string) []Flip {
	base := winner(now)
	var list []Flip
	for _, way := range [...]float64{-1, 1} {
		end := hi
		if way < 0 {
			end = lo
		}
		for a := now; way*(end-a) > 1e-12; {
			b := a + way*step
			if way*(b-end) > 0 {
				b = end
			}
			if other := winner(b); other != base {
				list = append(list, bisect(a, b, base, winner))
				break
			}
			a = b
		}
	}
	return list
}

// bisect narrows the change between a, where base wins, and b.
func bisect(a, b float64, base string, winner func(float64) string) Flip {
	other := winner(b)
	for range flipHalving {
		m := (a + b) / 2
		if m == a || m == b {
			break
		}
		if w := winner(m); w == base {
			a = m
		} else {
			b, other = m, w
		}
	}
	f := Flip{At: round12(b), Below: base, Above: other}
	if b < a {
		f.Below, f.Above = other, base
	}
	return f
}

// horizonFlips varies the horizon in whole years.
func horizonFlips(options []Option, h Horizon) []Flip {
	base := winner(options, h)
	var list []Flip
	for _, way := range [...]int{-1, 1} {
		for y := h.Years + way; y >= 1 && y <= max(flipYears, h.Years); y += way {
			g := h
			g.Years = y
			if g.Validate() != nil {
				break
			}
			other := winner(options, g)
			if other == base {
				continue
			}
			f := Flip{Parameter: OfHorizon, Now: float64(h.Years), At: float64(y), Below: base, Above: other}
			if way < 0 {
				f.Below, f.Above = other, base
			}
			list = append(list, f)
			break
		}
	}
	return list
}

// Swing is how far one parameter moves an option's equivalent annual cost in
// the usual scenario.
type Swing struct {
	Option    string
	Parameter Parameter
	From, To  float64         // values of the parameter
	Low, High decimal.Decimal // equivalent annual cost at From and at To
}

// Steps of the sensitivity table.
const (
	swingRate = 0.02
	swingCost = 0.20
)

// swings varies rate, first cost, upkeep and life of each option.
func swings(options []Option, h Horizon, places int) []Swing {
	var list []Swing
	for i, o := range options {
		eac := func(change func(*Option, *Horizon, float64), x float64) decimal.Decimal {
			changed, g := append([]Option(nil), options...), h
			change(&changed[i], &g, x)
			d, _ := amountOf(g.equivalentAnnual(g.value(changed, changed[i])), places, HalfEven)
			return d
		}
		add := func(p Parameter, from, to float64, change func(*Option, *Horizon, float64)) {
			list = append(list, Swing{o.ID, p, round12(from), round12(to), eac(change, from), eac(change, to)})
		}
		low := math.Max(float64(h.Rate)-swingRate, math.Min(0, float64(h.Rate)))
		add(OfRate, low, math.Min(float64(h.Rate)+swingRate, float64(mostRate)), func(_ *Option, g *Horizon, x float64) { g.Rate = Rate(x) })
		if v := o.First.InexactFloat64(); v > 0 {
			add(OfFirst, v*(1-swingCost), v*(1+swingCost), func(o *Option, _ *Horizon, x float64) { o.First = decimal.NewFromFloat(x) })
		}
		if v := o.Upkeep.InexactFloat64(); v > 0 {
			add(OfUpkeep, v*(1-swingCost), v*(1+swingCost), func(o *Option, _ *Horizon, x float64) { o.Upkeep = decimal.NewFromFloat(x) })
		}
		if !o.Forever && o.Life.Bad < o.Life.Good {
			add(OfLife, o.Life.Bad, o.Life.Good, func(o *Option, _ *Horizon, x float64) { o.Life = SameLife(x) })
		}
	}
	return list
}

// Basis is where the methods of a comparison come from.
func (c Comparison) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: hb135, Place: "present value, annual value, residual value"},
		{Source: astme917, Place: "life-cycle cost"},
	}
}
