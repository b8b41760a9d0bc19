package cost_test

import (
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
)

// Property (additive): shares add up, none is off by a whole minor unit, and none with a greater
// weight is smaller.
func TestSharesAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		total := decimal.New(r.Int64N(1_000_000), -2)
		weights := make([]decimal.Decimal, 1+r.IntN(12))
		var all decimal.Decimal
		for i := range weights {
			weights[i] = decimal.New(r.Int64N(10_000), -int32(r.IntN(5)))
			all = all.Add(weights[i])
		}
		if all.IsZero() {
			continue
		}
		list := must(cost.Currency("USD").Shares(total, weights))(t)
		var sum decimal.Decimal
		for i, s := range list {
			sum = sum.Add(s)
			exact := total.Mul(weights[i]).DivRound(all, 12)
			if s.Sub(exact).Abs().GreaterThanOrEqual(decimal.New(1, -2)) {
				t.Errorf("share %s of %s for %s, exact %s", s, total, weights[i], exact)
			}
			for k, o := range list {
				if weights[i].GreaterThan(weights[k]) && s.LessThan(o) {
					t.Errorf("weight %s gets %s, weight %s gets %s", weights[i], s, weights[k], o)
				}
			}
		}
		if !sum.Equal(total) {
			t.Errorf("shares of %s add up to %s", total, sum)
		}
	}
}

func TestSharesRefuse(t *testing.T) {
	one := []decimal.Decimal{usd(1)}
	for name, err := range map[string]error{
		"half a cent":     second(cost.Currency("USD").Shares(decimal.New(5, -3), one)),
		"negative total":  second(cost.Currency("USD").Shares(usd(-1), one)),
		"negative weight": second(cost.Currency("USD").Shares(usd(1), []decimal.Decimal{usd(-1), usd(2)})),
		"no weight":       second(cost.Currency("USD").Shares(usd(1), []decimal.Decimal{usd(0)})),
		"no weights":      second(cost.Currency("USD").Shares(usd(1), nil)),
		"no currency":     second(cost.Currency("").Shares(usd(1), one)),
		"too large":       second(cost.Currency("USD").Shares(decimal.New(1, 1_000_000_000), one)),
		"too fine":        second(cost.Currency("USD").Shares(usd(1), []decimal.Decimal{decimal.New(1, -1_000_000_000)})),
	} {
		if err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}

func second[T any](_ T, err error) error { return err }
