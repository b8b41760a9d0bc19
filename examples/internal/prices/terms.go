package prices

import (
	"strconv"

	"manway.example/manway"
	"manway.example/manway/cost"
)

// Terms are the terms of an estimate as they are read.
type Terms struct {
	Currency           cost.Currency `json:"currency"`
	Rounding           cost.Rounding `json:"rounding"`
	OverheadPercent    Number        `json:"overhead_percent"`
	ContingencyPercent Number        `json:"contingency_percent"`
	ProfitPercent      Number        `json:"profit_percent"`
	ProfitAs           cost.Profit   `json:"profit_as"`
	ProfitOn           cost.Stacking `json:"profit_on"`
	Taxes              []Tax         `json:"taxes"`
	Minimum            Number        `json:"minimum"`
	ValidDays          int           `json:"valid_days"`
	Exclusions         []string      `json:"exclusions"`
	ChangeOrders       []ChangeOrder `json:"change_orders"`
}

// Tax is a tax on one class of lines.
type Tax struct {
	Class    string        `json:"class"`
	Percent  Number        `json:"percent"`
	At       cost.TaxedAt  `json:"at"`
	Rounding cost.Rounding `json:"rounding"`
}

// ChangeOrder is work priced beforehand.
type ChangeOrder struct {
	If       string  `json:"if"`
	Work     string  `json:"work"`
	Code     string  `json:"code"`
	Quantity float64 `json:"quantity"`
	Unit     string  `json:"unit"`
}

// newest is the day of prices where none is given: the last day that a book can
// know of, so that the newest prices hold.
var newest = manway.Date{Year: 9999, Month: 12, Day: 31}

// Job is lines to be priced on a day, or on no day, without their book.
func (t Terms) Job(title string, lines []cost.Line, day *manway.Date) (cost.Job, error) {
	var faults manway.InputErrors
	out := cost.Terms{
		Currency: t.Currency, Rounding: t.Rounding, OverheadPercent: t.OverheadPercent.Decimal, ContingencyPercent: t.ContingencyPercent.Decimal,
		ProfitPercent: t.ProfitPercent.Decimal, ProfitAs: t.ProfitAs, ProfitOn: t.ProfitOn, Minimum: t.Minimum.Decimal, ValidDays: t.ValidDays, Exclusions: t.Exclusions,
	}
	for i, tax := range t.Taxes {
		class, err := readClass(tax.Class)
		if err != nil {
			faults.Under("Terms.Taxes["+strconv.Itoa(i)+"]", err)
		}
		out.Taxes = append(out.Taxes, cost.Tax{Class: class, Percent: tax.Percent.Decimal, At: tax.At, Rounding: tax.Rounding})
	}
	for _, c := range t.ChangeOrders {
		out.ChangeOrders = append(out.ChangeOrders, cost.ChangeOrder{If: c.If, Work: c.Work, Code: c.Code, Quantity: c.Quantity, Unit: cost.Unit(c.Unit)})
	}
	on := newest
	if day != nil {
		on = *day
	} else {
		out.ValidDays = 0 // days from no day
	}
	return cost.Job{Title: title, Lines: lines, On: on, Terms: out}, faults.Err()
}
