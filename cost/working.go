package cost

import (
	"strconv"

	"manway.example/manway"
)

// Working is how the present value and the yearly cost of one option come about
// in one scenario, flow by flow. It is empty for an option that is not there.
func (c Comparison) Working(option string, s Scenario) manway.Working {
	h := c.Horizon
	var w manway.Working
	for _, o := range c.Options {
		if o.ID != option || s >= scenarios {
			continue
		}
		k := o.Courses[s]
		money := func(v float64) string { return strconv.FormatFloat(v, 'f', c.Places, 64) }
		sum := 0.0
		for _, f := range k.Flows {
			paid, factor := h.paid(f), present(h.Rate, f.Year)
			sum += paid * factor
			w = append(w, manway.Step{
				Symbol: f.Why.String() + " of " + f.Of + ", year " + shortNumber(f.Year), Formula: "paid / (1+d)^t",
				Numbers: money(paid) + " x " + strconv.FormatFloat(factor, 'f', 6, 64), Value: money(paid * factor),
			})
		}
		series := escalatingPresent(h.Rate, h.Escalation, float64(h.Years))
		w = append(w,
			manway.Step{Symbol: "PV", Formula: "sum of the above", Value: money(sum) + " " + string(h.Currency)},
			manway.Step{Symbol: "a year", Formula: "PV / UPV*", Numbers: money(sum) + " / " + strconv.FormatFloat(series, 'f', 6, 64), Value: money(sum/series) + " " + string(h.Currency)})
	}
	return w
}

// Working is how the two lives come about.
func (p PatchOrReplace) Working() manway.Working {
	l, err := p.Lives()
	if err != nil {
		return nil
	}
	annual := p.Replace.InexactFloat64()/seriesPresent(p.Rate, p.ReplaceLife) + p.ReplaceUpkeep.InexactFloat64()
	year := func(w When) string {
		if w.State != InYears {
			return w.State.String()
		}
		return shortNumber(w.Years) + " yr"
	}
	return manway.Working{
		{Symbol: "E", Formula: "R (A/P) + v", Numbers: p.Replace.String() + " x " + shortNumber(1/seriesPresent(p.Rate, p.ReplaceLife)) + " + " + p.ReplaceUpkeep.String(), Value: shortNumber(annual) + " a year"},
		{Symbol: "n", Formula: "-ln(1 - i P/(E - u)) / ln(1+i)", Numbers: "i " + p.Rate.String() + ", P " + p.Patch.String() + ", u " + p.PatchUpkeep.String(), Value: year(l.Repeating)},
		{Symbol: "k", Formula: "-ln(1 - i P/(i R + v - u)) / ln(1+i)", Numbers: "i " + p.Rate.String() + ", P " + p.Patch.String() + ", R " + p.Replace.String(), Value: year(l.Deferring)},
	}
}
