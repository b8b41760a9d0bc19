package main

import (
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/record"
)

func writeJSON(j *record.JSON, in *input, out *output) {
	c := out.comparison
	j.Text("id", in.ID)
	j.Text("title", in.Title)
	j.Int("years", c.Horizon.Years)
	j.Number("rate_percent", 100*float64(c.Horizon.Rate))
	j.Number("escalation_percent", 100*float64(c.Horizon.Escalation))
	j.Text("money", c.Horizon.Prices.String())
	j.Text("unused_life", c.Horizon.Unused.String())
	j.Text("currency", string(c.Horizon.Currency))
	j.List("options")
	for i := range out.options {
		out.optionJSON(j, i)
	}
	j.End()
	j.Object("least_present_value")
	for s, id := range c.Cheapest {
		j.Text(cost.Scenario(s).String(), id)
	}
	j.End()
	evenJSON(j, c.BreakEven)
	j.List("flips")
	for _, f := range c.Flips() {
		j.Object("")
		j.Text("parameter", f.Parameter.String())
		j.Text("of", f.Of)
		j.Number("now", f.Now)
		j.Number("at", f.At)
		j.Text("below", f.Below)
		j.Text("above", f.Above)
		j.End()
	}
	j.End()
	j.List("swings")
	for _, s := range c.Swings {
		j.Object("")
		j.Text("option", s.Option)
		j.Text("parameter", s.Parameter.String())
		j.Number("from", s.From)
		j.Number("to", s.To)
		j.Text("a_year_from", fixed(c, s.Low))
		j.Text("a_year_to", fixed(c, s.High))
		j.End()
	}
	j.End()
	j.Any("cautions", out.quote.Cautions)
	var sources []string
	for _, b := range c.Basis() {
		sources = append(sources, b.String())
	}
	j.Texts("sources", sources)
}

func evenJSON(j *record.JSON, list []cost.BreakEven) {
	j.List("break_even")
	for _, b := range list {
		j.Object("")
		j.Text("cheap", b.Cheap)
		j.Text("dear", b.Dear)
		whenJSON(j, "repeating", b.Repeating)
		whenJSON(j, "deferring", b.Deferring)
		whenJSON(j, "payback", b.Payback)
		whenJSON(j, "discounted_payback", b.Discounted)
		j.End()
	}
	j.End()
}

func whenJSON(j *record.JSON, key string, w cost.When) {
	j.Object(key)
	j.Text("state", w.State.String())
	if w.State == cost.InYears {
		j.Number("years", w.Years)
	}
	if w.Reason != "" {
		j.Text("reason", w.Reason)
	}
	j.End()
}

// optionJSON writes one option, its lines where it was priced and its courses
// where it was compared.
func (out *output) optionJSON(j *record.JSON, i int) {
	c, o := out.comparison, out.options[i]
	j.Object("")
	j.Text("id", o.ID)
	j.Text("title", o.Title)
	j.Text("first", fixed(c, o.First.Decimal))
	if o.RuledOut != "" {
		j.Text("ruled_out", o.RuledOut)
	}
	if e := out.estimates[i]; e != nil {
		j.List("lines")
		for _, l := range e.Lines {
			j.Object("")
			j.Text("code", l.Code)
			j.Text("description", l.Description)
			j.Number("quantity", l.Quantity)
			j.Text("unit", string(l.Unit))
			j.Text("unit_price", l.UnitPrice.String())
			j.Text("amount", l.Amount.StringFixed(int32(e.Places)))
			j.Text("to_owner", l.ToOwner.StringFixed(int32(e.Places)))
			j.End()
		}
		j.End()
	}
	if w := out.quote.Ways[i]; w.Low.Valid {
		j.Text("first_p10", fixed(c, w.Low.Decimal))
		j.Text("first_p90", fixed(c, w.High.Decimal))
	}
	for _, view := range c.Options {
		if view.ID != o.ID {
			continue
		}
		for s, k := range view.Courses {
			courseJSON(j, c, cost.Scenario(s), k)
		}
	}
	j.End()
}

// courseJSON writes one scenario of an option.
func courseJSON(j *record.JSON, c cost.Comparison, s cost.Scenario, k cost.Course) {
	j.Object(s.String())
	j.Number("life_years", k.Life)
	j.Int("purchases", k.Purchases)
	j.List("paid")
	for _, m := range k.Marks {
		j.Object("")
		j.Int("year", m.Year)
		j.Text("amount", fixed(c, m.Paid))
		j.End()
	}
	j.End()
	j.Text("unused_life", fixed(c, k.UnusedLife))
	j.Text("present_value", fixed(c, k.PresentValue))
	j.Text("equivalent_annual", fixed(c, k.EquivalentAnnual))
	if k.Repeated.Valid {
		j.Text("repeated_annual", fixed(c, k.Repeated.Decimal))
	}
	j.List("curve")
	for _, m := range k.Curve {
		j.Text("", fixed(c, m.Paid))
	}
	j.End()
	j.End()
}
