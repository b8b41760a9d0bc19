package cost

import (
	"math/big"
	"slices"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Shares divides total in the proportion of weights, to the minor unit of c, so
// that the shares add up to total exactly: every share is rounded down and the
// minor units left over go one each to the largest remainders, at equal
// remainders to the first. 5 cents by 30 and 70 is 2 and 3.
//
// It refuses a total that is not a whole number of minor units, a negative
// total or weight, and weights that are all 0.
//
// Source: the allocation problem in Fowler, Patterns of Enterprise Application
// Architecture, Money; the rule is the largest remainder of apportionment.
func (c Currency) Shares(total decimal.Decimal, weights []decimal.Decimal) ([]decimal.Decimal, error) {
	var faults manway.InputErrors
	places, err := c.MinorUnit()
	faults.Under("", err)
	sound := checkNotNegative(&faults, "Total", total)
	if sound && err == nil && !total.Equal(total.Truncate(int32(places))) {
		faults.Add("Total", total.String(), "a whole number of minor units of "+string(c))
	}
	some := false
	for i, w := range weights {
		if checkNotNegative(&faults, indexed("Weights", i), w) && !w.IsZero() {
			some = true
		}
	}
	if !some && len(faults) == 0 {
		faults.Add("Weights", "none above 0", "at least one above 0")
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return shares(total, places, weights), nil
}

// shares is Shares of checked input. Exact: integers throughout.
func shares(total decimal.Decimal, places int, weights []decimal.Decimal) []decimal.Decimal {
	units := total.Shift(int32(places)).BigInt()
	lowest := int32(0)
	for _, w := range weights {
		lowest = min(lowest, w.Exponent())
	}
	sum := new(big.Int)
	whole := make([]*big.Int, len(weights))
	for i, w := range weights {
		whole[i] = w.Shift(-lowest).BigInt()
		sum.Add(sum, whole[i])
	}
	floors, remainders := make([]*big.Int, len(weights)), make([]*big.Int, len(weights))
	left := new(big.Int).Set(units)
	order := make([]int, len(weights))
	for i, w := range whole {
		floors[i], remainders[i] = new(big.Int).QuoRem(new(big.Int).Mul(units, w), sum, new(big.Int))
		left.Sub(left, floors[i])
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return remainders[b].Cmp(remainders[a]) })
	for _, i := range order[:left.Int64()] {
		floors[i].Add(floors[i], big.NewInt(1))
	}
	list := make([]decimal.Decimal, len(weights))
	for i, f := range floors {
		list[i] = decimal.NewFromBigInt(f, int32(-places))
	}
	return list
}
