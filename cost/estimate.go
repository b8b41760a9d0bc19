package cost

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Job is what is to be priced: lines, the book that prices them, the day on
// which, and the terms.
type Job struct {
	Title string
	Lines []Line
	Book  Book
	On    manway.Date
	Terms Terms
}

// PricedLine is a line with its price. Where Priced is false the book has no
// price for it and Reason says why; its amount is not part of any sum.
type PricedLine struct {
	Line
	UnitPrice decimal.Decimal
	Amount    decimal.Decimal // quantity times unit price, rounded to the minor unit
	ToOwner   decimal.Decimal // the amount with its share of every charge; these add up to the total
	Priced    bool
	Reason    string
	Note      string // of the price book
}

// Charge is one addition to the lines: contingency, overhead, profit, the rest
// up to the minimum, a tax.
type Charge struct {
	Title   string
	Percent decimal.Decimal
	Of      decimal.Decimal // what the percentage is taken of
	Amount  decimal.Decimal
}

// PricedChange is a change order with its price, which holds without charges
// of its own: the terms' charges are added to it.
type PricedChange struct {
	ChangeOrder
	Amount decimal.Decimal
	Priced bool
	Reason string
}

// Missing is a line without a price.
type Missing struct{ Code, Description, Reason string }

// Estimate is the price of a job. Total is the sum of the amounts of the lines
// and the charges as printed. Complete is false where a price is missing; Total
// is then that of the priced lines only.
type Estimate struct {
	Title      string
	Currency   Currency
	Places     int // of the minor unit
	Rounding   Rounding
	On         manway.Date
	ValidUntil manway.Date // zero where the terms do not say
	Lines      []PricedLine
	Classes    [riser.Wait + 1]decimal.Decimal // sum of the lines of each class
	Direct     decimal.Decimal                 // sum of the lines
	Charges    []Charge
	Total      decimal.Decimal
	Complete   bool
	Missing    []Missing
	Changes    []PricedChange
	Exclusions []string
	Terms      Terms
	Cautions   manway.Cautions
}

// Estimate prices the job:
//
//	line    = quantity x unit price, rounded
//	direct  = sum of lines
//	cost    = direct + tax on purchase
//	+ contingency on cost
//	+ overhead on cost and contingency
//	+ profit as markup or margin, on the sum or on cost and contingency
//	+ rest up to the minimum charge
//	+ tax on sale
//	total   = sum of all printed amounts
//
// A waiting line that the book does not price is shown with its days and costs
// nothing. A unit in the book that differs from the line's is converted where
// both measure the same (a price a cubic yard for cubic feet), else the price is
// missing.
//
// It refuses more than 10,000 lines, no day, and what [Line.Validate] and
// [Terms.Validate] refuse. Source: common practice of contractors; minor units by
// ISO4217, units by Rec20, shares by largest remainder FowlerMoney.
func (j Job) Estimate() (Estimate, error) {
	if err := j.Validate(); err != nil {
		return Estimate{}, err
	}
	places, _ := j.Terms.Currency.MinorUnit()
	e := Estimate{
		Title: j.Title, Currency: j.Terms.Currency, Places: places, Rounding: j.Terms.Rounding, On: j.On,
		Lines: make([]PricedLine, len(j.Lines)), Complete: true,
		Exclusions: j.Terms.Exclusions, Terms: j.Terms,
		Cautions: manway.EstimateOnly | manway.LocalCode | manway.LicensedWork,
	}
	if j.Terms.ValidDays > 0 {
		e.ValidUntil = j.On.AddDays(j.Terms.ValidDays)
	}
	for i, l := range j.Lines {
		e.Lines[i] = j.price(l, places)
		e.note(e.Lines[i])
	}
	for c := range e.Classes {
		e.Classes[c] = e.sumOf(riser.Class(c))
	}
	e.charge()
	if e.Total.GreaterThan(maxMoney) {
		return Estimate{}, manway.InputErrors{{Field: "Lines", Value: "a total of " + e.Total.String(), Want: "a total within 1e12"}}
	}
	e.spread()
	e.changes(j)
	return e, nil
}

// Validate returns every fault of the job.
func (j Job) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Lines", len(j.Lines), 0, maxLines)
	if len(j.Lines) <= maxLines {
		for i := range j.Lines {
			if err := j.Lines[i].Validate(); err != nil {
				faults.Under("Lines["+strconv.Itoa(i)+"]", err)
			}
		}
	}
	if err := j.On.Validate(); err != nil {
		faults.Add("On", j.On.String(), "the day on which it is priced")
	}
	if err := j.Terms.Validate(); err != nil {
		faults.Under("Terms", err)
	}
	return faults.Err()
}

// price looks one line up and prices it.
func (j Job) price(l Line, places int) PricedLine {
	p := PricedLine{Line: l}
	unit, reason := j.unitPrice(l.Code, l.Unit)
	switch {
	case reason == "":
		p.UnitPrice, p.Note, p.Priced = unit.Price, unit.Note, true
		p.Amount = j.Terms.Rounding.round(exactQuantity(l.Quantity).Mul(unit.Price), places)
	case l.Class == riser.Wait:
		p.Priced, p.Note = true, "time only"
	default:
		p.Reason = reason
	}
	return p
}

// unitPrice is the price of a code in a unit, or why there is none.
func (j Job) unitPrice(code string, unit Unit) (Price, string) {
	price, ok := j.Book.Price(code, j.On)
	switch {
	case !ok && len(j.Book.prices[code]) > 0:
		return Price{}, fmt.Sprintf("first price from %s, after %s", j.Book.prices[code][0].ValidFrom, j.On)
	case !ok:
		return Price{}, "not in the price book"
	case price.Currency != j.Terms.Currency:
		return Price{}, fmt.Sprintf("price in %s, estimate in %s", price.Currency, j.Terms.Currency)
	case price.Unit == unit:
		return price, ""
	}
	per, err := unit.Per(price.Unit)
	if err != nil {
		return Price{}, fmt.Sprintf("price for %s, line in %s", price.Unit, unit)
	}
	price.Note = strings.TrimSpace(price.Note + fmt.Sprintf(" (book: %s for 1 %s)", price.Price, price.Unit))
	price.Price = price.Price.Mul(decimal.NewFromFloat(per)).Round(maxExponent)
	return price, ""
}

// note keeps what a line means for the whole estimate.
func (e *Estimate) note(l PricedLine) {
	if l.Priced {
		e.Direct = e.Direct.Add(l.Amount)
	} else {
		e.Complete = false
		e.Missing = append(e.Missing, Missing{l.Code, l.Description, l.Reason})
	}
	if strings.HasPrefix(l.Note, "invented") {
		e.Cautions |= manway.InventedPrices
	}
	if l.Remembered {
		e.Cautions |= manway.RememberedFigure
	}
}

// spread gives every line its share of the charges, so that the lines alone
// add up to the total.
func (e *Estimate) spread() {
	if !e.Direct.IsPositive() {
		return
	}
	weights := make([]decimal.Decimal, len(e.Lines))
	for i, l := range e.Lines {
		weights[i] = l.Amount
	}
	for i, s := range shares(e.Total, e.Places, weights) {
		e.Lines[i].ToOwner = s
	}
}

// changes prices the change orders, each with the same charges as the job.
func (e *Estimate) changes(j Job) {
	for _, c := range j.Terms.ChangeOrders {
		p := PricedChange{ChangeOrder: c}
		alone := Job{Book: j.Book, On: j.On, Terms: j.Terms}
		alone.Terms.Minimum = decimal.Decimal{}
		alone.Terms.ChangeOrders = nil
		one := alone.price(Line{Code: c.Code, Class: riser.Labour, Quantity: c.Quantity, Unit: c.Unit}, e.Places)
		p.Priced, p.Reason = one.Priced, one.Reason
		if one.Priced {
			sub := Estimate{Places: e.Places, Rounding: e.Rounding, Terms: alone.Terms, Lines: []PricedLine{one}, Direct: one.Amount}
			sub.charge()
			p.Amount = sub.Total
		}
		e.Changes = append(e.Changes, p)
	}
}

// Basis is where the rules of an estimate come from.
func (e Estimate) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: iso4217, Place: "minor units"},
		{Source: rec20, Place: "unit codes"},
		{Source: fowlerMoney, Place: "Money: allocation; shares by largest remainder"},
		{Source: manway.Practice, Place: "order of overhead, contingency, profit and tax"},
	}
}
