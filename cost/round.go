package cost

import (
	"fmt"
	"math"
	"strconv"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Rounding is how a tie is rounded to the minor unit.
type Rounding uint8

// The two roundings. The digits beyond the last kept one are looked at in full,
// never rounded twice.
const (
	HalfEven Rounding = iota // 0.125 -> 0.12, 0.135 -> 0.14
	HalfUp                   // 0.125 -> 0.13, -0.125 -> -0.13
)

var roundings = [...]string{"half-even", "half-up"}

// String is half-even or half-up.
func (r Rounding) String() string { return manway.Word(roundings[:], r) }

// MarshalText is the same as String.
func (r Rounding) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads half-even or half-up.
func (r *Rounding) UnmarshalText(text []byte) error {
	return manway.ReadWord(r, "rounding", roundings[:], text)
}

// Round is d to the given number of decimal places, 0 to 12; d within 1e12 and of
// 40 digits at most. Source: common practice; tax law often asks for half-up.
func (r Rounding) Round(d decimal.Decimal, places int) (decimal.Decimal, error) {
	var faults manway.InputErrors
	checkNumber(&faults, "Amount", d)
	manway.Within(&faults, "Places", places, 0, 12)
	if err := faults.Err(); err != nil {
		return decimal.Decimal{}, err
	}
	return r.round(d, places), nil
}

func (r Rounding) round(d decimal.Decimal, places int) decimal.Decimal {
	if r == HalfUp {
		return d.Round(int32(places)) // half away from zero
	}
	return d.RoundBank(int32(places))
}

// Limits of every decimal that comes in.
const (
	maxDigits   = 40 // of the coefficient
	maxExponent = 15 // either way
)

var maxMoney = decimal.New(1, 12)

// checkNumber adds a fault unless d has few enough digits to reckon with and
// lies within ±1e12.
func checkNumber(faults *manway.InputErrors, field string, d decimal.Decimal) bool {
	if d.Exponent() < -2*maxExponent || d.Exponent() > maxExponent || d.Coefficient().BitLen() > maxDigits*10/3 {
		faults.Add(field, fmt.Sprintf("of %d digits and exponent %d", d.NumDigits(), d.Exponent()), "a number of at most 40 digits, within 1e12")
		return false
	}
	if d.Abs().GreaterThan(maxMoney) {
		faults.Add(field, d.String(), "-1e12 to 1e12")
		return false
	}
	return true
}

// checkNotNegative is checkNumber for a number of 0 or more.
func checkNotNegative(faults *manway.InputErrors, field string, d decimal.Decimal) bool {
	if !checkNumber(faults, field, d) {
		return false
	}
	if d.IsNegative() {
		faults.Add(field, d.String(), "0 or more, up to 1e12")
		return false
	}
	return true
}

// checkPercent is checkNumber for a percentage of 0 to at most most.
func checkPercent(faults *manway.InputErrors, field string, d decimal.Decimal, most int64) bool {
	if !checkNumber(faults, field, d) {
		return false
	}
	if d.IsNegative() || d.GreaterThan(decimal.NewFromInt(most)) {
		faults.Add(field, d.String()+" %", "0 % to "+strconv.FormatInt(most, 10)+" %")
		return false
	}
	return true
}

// checkFloat adds a fault unless v is finite and lo <= v <= hi.
func checkFloat(faults *manway.InputErrors, field string, v, lo, hi float64) bool {
	n := len(*faults)
	manway.Within(faults, field, v, lo, hi)
	return len(*faults) == n
}

// checkItem is checkFloat for an item of a list; its name is put together only
// for a fault.
func checkItem(faults *manway.InputErrors, list string, i int, field string, v, lo, hi float64) bool {
	if v >= lo && v <= hi {
		return true
	}
	return checkFloat(faults, indexed(list, i)+field, v, lo, hi)
}

// indexed is the name of an item of a list: Weights[2].
func indexed(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// quantityPlaces is how many decimals of a quantity are priced. A billionth of
// a unit is far below what anything here is measured in, and takes the noise of
// binary fractions off.
const quantityPlaces = 9

// exactQuantity is a float64 quantity as the decimal that is priced.
func exactQuantity(q float64) decimal.Decimal {
	return decimal.NewFromFloat(q).RoundBank(quantityPlaces)
}

// amountOf is a float64 of money rounded to the minor unit; it fails where the
// amount is not finite or beyond 1e15.
func amountOf(v float64, places int, r Rounding) (decimal.Decimal, error) {
	if !(math.Abs(v) <= 1e15) {
		return decimal.Decimal{}, manway.InputErrors{{Field: "Amount", Value: strconv.FormatFloat(v, 'g', 6, 64), Want: "within 1e15"}}
	}
	// Noise of the float below a billionth is taken off before the tie is judged.
	return r.round(decimal.NewFromFloat(v).RoundBank(quantityPlaces), places), nil
}
