package cost

import (
	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// charge adds the charges of the terms and sets the total. Direct is known.
func (e *Estimate) charge() {
	t := e.Terms
	e.Charges, e.Total = nil, e.Direct
	add := func(title string, percent, of, exact decimal.Decimal, r Rounding) decimal.Decimal {
		if exact.IsZero() {
			return decimal.Decimal{}
		}
		c := Charge{Title: title, Percent: percent, Of: of, Amount: r.round(exact, e.Places)}
		e.Charges = append(e.Charges, c)
		e.Total = e.Total.Add(c.Amount)
		return c.Amount
	}
	for _, tax := range t.Taxes {
		if tax.At == OnPurchase {
			of := e.sumOf(tax.Class)
			add("tax on "+tax.Class.String()+" when bought", tax.Percent, of, percentOf(of, tax.Percent), tax.Rounding)
		}
	}
	cost := e.Total
	contingency := add("contingency", t.ContingencyPercent, cost, percentOf(cost, t.ContingencyPercent), t.Rounding)
	cost = cost.Add(contingency)
	add("overhead", t.OverheadPercent, cost, percentOf(cost, t.OverheadPercent), t.Rounding)
	if t.ProfitOn == OnSum {
		cost = e.Total
	}
	add("profit as "+t.ProfitAs.String(), t.ProfitPercent, cost, t.profitOf(cost), t.Rounding)
	if t.Minimum.GreaterThan(e.Total) {
		rest := t.Minimum.Sub(e.Total)
		add("up to the minimum charge", decimal.Decimal{}, t.Minimum, rest, t.Rounding)
	}
	e.taxSale(add)
}

// taxSale taxes the selling price of each class: its lines with their share of
// the price before tax.
func (e *Estimate) taxSale(add func(string, decimal.Decimal, decimal.Decimal, decimal.Decimal, Rounding) decimal.Decimal) {
	if !e.Direct.IsPositive() {
		return
	}
	var weights []decimal.Decimal
	for c := riser.Material; c <= riser.Wait; c++ {
		weights = append(weights, e.sumOf(c))
	}
	sold := shares(e.Total, e.Places, weights)
	for _, tax := range e.Terms.Taxes {
		if tax.At == OnSale {
			of := sold[tax.Class]
			add("tax on "+tax.Class.String()+" sold", tax.Percent, of, percentOf(of, tax.Percent), tax.Rounding)
		}
	}
}

// sumOf is the sum of the priced lines of one class.
func (e *Estimate) sumOf(c riser.Class) decimal.Decimal {
	var sum decimal.Decimal
	for i := range e.Lines {
		if e.Lines[i].Class == c {
			sum = sum.Add(e.Lines[i].Amount)
		}
	}
	return sum
}

// Working is how the total follows from the lines.
func (e Estimate) Working() manway.Working {
	money := func(d decimal.Decimal) string { return d.StringFixed(int32(e.Places)) + " " + string(e.Currency) }
	w := manway.Working{{Symbol: "direct", Formula: "sum of the lines, each rounded " + e.Rounding.String(), Value: money(e.Direct)}}
	for _, c := range e.Charges {
		s := manway.Step{Symbol: c.Title, Value: money(c.Amount)}
		switch {
		case c.Percent.IsZero():
			s.Formula, s.Numbers = "minimum - sum", money(c.Of)+" less what stands above"
		case c.Title == "profit as margin":
			s.Formula = "cost g / (1 - g)"
			s.Numbers = money(c.Of) + " x " + c.Percent.String() + " / (100 - " + c.Percent.String() + ")"
		default:
			s.Formula = "base x per cent"
			s.Numbers = money(c.Of) + " x " + c.Percent.String() + " %"
		}
		w = append(w, s)
	}
	return append(w, manway.Step{Symbol: "total", Formula: "sum of what is printed", Value: money(e.Total)})
}
