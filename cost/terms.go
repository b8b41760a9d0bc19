package cost

import (
	"strconv"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Profit says what the profit percentage is a part of.
type Profit uint8

// The two ways to state profit. A markup m is the margin m/(1+m): a markup of
// 25 % is a margin of 20 %.
const (
	Markup Profit = iota // per cent of the cost: price = cost (1 + m)
	Margin               // per cent of the price: price = cost / (1 - g)
)

var profits = [...]string{"markup", "margin"}

// String is markup or margin.
func (p Profit) String() string { return manway.Word(profits[:], p) }

// MarshalText is the same as String.
func (p Profit) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads markup or margin.
func (p *Profit) UnmarshalText(text []byte) error {
	return manway.ReadWord(p, "profit", profits[:], text)
}

// Stacking says what profit is reckoned on: overhead of 10 % and then a markup
// of 10 % are 1.21 on the sum and 1.20 on the cost alone.
type Stacking uint8

// The two stackings.
const (
	OnSum  Stacking = iota // profit on cost, contingency and overhead
	OnCost                 // profit on cost and contingency, beside overhead
)

var stackings = [...]string{"on-sum", "on-cost"}

// String is on-sum or on-cost.
func (s Stacking) String() string { return manway.Word(stackings[:], s) }

// MarshalText is the same as String.
func (s Stacking) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads on-sum or on-cost.
func (s *Stacking) UnmarshalText(text []byte) error {
	return manway.ReadWord(s, "stacking", stackings[:], text)
}

// TaxedAt says who pays a tax on one class of lines, which differs by state and
// by the kind of contract.
type TaxedAt uint8

// The two places of a tax.
const (
	// OnPurchase is paid by the contractor when buying; it is a cost, before
	// contingency, overhead and profit.
	OnPurchase TaxedAt = iota
	// OnSale is charged to the owner on the selling price of the lines, with
	// their share of contingency, overhead and profit.
	OnSale
)

var taxPlaces = [...]string{"on-purchase", "on-sale"}

// String is on-purchase or on-sale.
func (t TaxedAt) String() string { return manway.Word(taxPlaces[:], t) }

// MarshalText is the same as String.
func (t TaxedAt) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads on-purchase or on-sale.
func (t *TaxedAt) UnmarshalText(text []byte) error {
	return manway.ReadWord(t, "taxed at", taxPlaces[:], text)
}

// Tax is a tax on one class of lines. Its own rounding is there because tax law
// may ask for half-up where the estimate rounds half-even.
type Tax struct {
	Class    riser.Class
	Percent  decimal.Decimal
	At       TaxedAt
	Rounding Rounding
}

// ChangeOrder is work priced beforehand for what may be found: rock, water, a
// rotten roof. It is not part of the total.
type ChangeOrder struct {
	If       string // what is found
	Work     string // what is done then
	Code     string // of its price
	Quantity float64
	Unit     Unit
}

// Terms are the rules by which lines become a price.
type Terms struct {
	Currency           Currency
	Rounding           Rounding
	OverheadPercent    decimal.Decimal // of cost and contingency
	ContingencyPercent decimal.Decimal // of cost, for what is in the scope and not foreseen
	ProfitPercent      decimal.Decimal
	ProfitAs           Profit
	ProfitOn           Stacking
	Taxes              []Tax
	Minimum            decimal.Decimal // least charge before tax on the sale; 0 for none
	ValidDays          int             // days that the price holds; 0 where it is not said
	Exclusions         []string
	ChangeOrders       []ChangeOrder
}

// Validate returns every fault of t.
func (t Terms) Validate() error {
	var faults manway.InputErrors
	_, err := t.Currency.MinorUnit()
	faults.Under("", err)
	if int(t.Rounding) >= len(roundings) {
		faults.Add("Rounding", t.Rounding.String(), "half-even or half-up")
	}
	checkPercent(&faults, "OverheadPercent", t.OverheadPercent, 1000)
	checkPercent(&faults, "ContingencyPercent", t.ContingencyPercent, 1000)
	checkNotNegative(&faults, "Minimum", t.Minimum)
	manway.Within(&faults, "ValidDays", t.ValidDays, 0, 3650)
	if int(t.ProfitAs) >= len(profits) {
		faults.Add("ProfitAs", t.ProfitAs.String(), "markup or margin")
	}
	if int(t.ProfitOn) >= len(stackings) {
		faults.Add("ProfitOn", t.ProfitOn.String(), "on-sum or on-cost")
	}
	if checkPercent(&faults, "ProfitPercent", t.ProfitPercent, 1000) && t.ProfitAs == Margin && !t.ProfitPercent.LessThan(hundred) {
		faults.Add("ProfitPercent", t.ProfitPercent.String()+" %", "a margin below 100 %")
	}
	manway.Within(&faults, "Taxes", len(t.Taxes), 0, 100)
	for i, tax := range t.Taxes {
		at := "Taxes[" + strconv.Itoa(i) + "]."
		checkPercent(&faults, at+"Percent", tax.Percent, 100)
		if tax.Class > riser.Wait {
			faults.Add(at+"Class", tax.Class.String(), "material, labour, equipment, haulage, fee or wait")
		}
		if int(tax.At) >= len(taxPlaces) {
			faults.Add(at+"At", tax.At.String(), "on-purchase or on-sale")
		}
		if int(tax.Rounding) >= len(roundings) {
			faults.Add(at+"Rounding", tax.Rounding.String(), "half-even or half-up")
		}
	}
	manway.Within(&faults, "ChangeOrders", len(t.ChangeOrders), 0, 100)
	for i, c := range t.ChangeOrders {
		at := "ChangeOrders[" + strconv.Itoa(i) + "]"
		checkFloat(&faults, at+".Quantity", c.Quantity, 0, 1e9)
		faults.Under(at, c.Unit.Validate())
	}
	return faults.Err()
}

var hundred = decimal.NewFromInt(100)

// percentOf is percent of amount, not rounded.
func percentOf(amount, percent decimal.Decimal) decimal.Decimal {
	return amount.Mul(percent).Shift(-2)
}

// profitOf is the profit on a cost, not rounded beyond 16 places.
func (t Terms) profitOf(cost decimal.Decimal) decimal.Decimal {
	if t.ProfitAs == Margin {
		return cost.Mul(t.ProfitPercent).DivRound(hundred.Sub(t.ProfitPercent), 16)
	}
	return percentOf(cost, t.ProfitPercent)
}

// AsMarkup is a profit in per cent as a markup on the cost: g/(1-g) for a margin g
// of 0 to below 100 %, itself for a markup of 0 to 1000 %. Source: the usual
// definitions of trade.
func (p Profit) AsMarkup(percent decimal.Decimal) (decimal.Decimal, error) {
	if err := p.checkPercent(percent); err != nil || p == Markup {
		return percent, err
	}
	return percent.Mul(hundred).DivRound(hundred.Sub(percent), 12), nil
}

// AsMargin is the reverse, a profit in per cent as a margin of the price: m/(1+m) for
// a markup m. Source: the usual definitions of trade.
func (p Profit) AsMargin(percent decimal.Decimal) (decimal.Decimal, error) {
	if err := p.checkPercent(percent); err != nil || p == Margin {
		return percent, err
	}
	return percent.Mul(hundred).DivRound(hundred.Add(percent), 12), nil
}

func (p Profit) checkPercent(percent decimal.Decimal) error {
	var faults manway.InputErrors
	switch p {
	case Markup:
		checkPercent(&faults, "Percent", percent, 1000)
	case Margin:
		if checkPercent(&faults, "Percent", percent, 100) && percent.Equal(hundred) {
			faults.Add("Percent", "100 %", "below 100 %")
		}
	default:
		faults.Add("Profit", p.String(), "markup or margin")
	}
	return faults.Err()
}
