package cost

import (
	"math"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Rate is a rate per year as a fraction: 0.03 is 3 %. It reads "3 %" or "3%"; a
// bare number is refused, since 3 and 0.03 are both written for 3 %.
type Rate float64

// Percent is a rate of one per cent a year: 3 * Percent.
const Percent Rate = 0.01

// String is the rate in per cent.
func (r Rate) String() string {
	return strconv.FormatFloat(round12(float64(r)*100), 'g', -1, 64) + " %"
}

// MarshalText is the rate in per cent, losslessly; NaN and infinities are an
// error.
func (r Rate) MarshalText() ([]byte, error) {
	if math.IsNaN(float64(r)) || math.IsInf(float64(r), 0) {
		return nil, &manway.InputError{Field: "rate", Value: shortNumber(float64(r)), Want: "a finite rate"}
	}
	digits, exponent, _ := strings.Cut(strconv.FormatFloat(float64(r), 'e', -1, 64), "e")
	power, err := strconv.Atoi(exponent)
	if err != nil {
		return nil, err
	}
	if power += 2; power >= -6 && power < 15 { // plain digits for the rates that people use
		return []byte(decimal.RequireFromString(digits).Shift(int32(power)).String() + " %"), nil
	}
	return []byte(digits + "e" + strconv.Itoa(power) + " %"), nil
}

// UnmarshalText reads a percentage.
func (r *Rate) UnmarshalText(text []byte) error {
	v, err := readPercent(string(text))
	if err != nil {
		return &manway.InputError{Field: "rate", Value: strconv.Quote(clip(string(text))), Want: "a percentage a year, such as 3 %"}
	}
	*r = Rate(v)
	return nil
}

// The widest rates and periods that are reckoned with; powers stay finite.
const (
	leastRate Rate = -0.5
	mostRate  Rate = 10
	mostYears      = 200
)

func checkRate(faults *manway.InputErrors, field string, r Rate) {
	manway.Within(faults, field, r, leastRate, mostRate)
}

// Factors are the discount and compound interest factors of one rate i and n
// whole years, for payments at the ends of years. The names in brackets are
// those of interest tables.
type Factors struct {
	SinglePresent   float64 // (P/F) = 1/(1+i)^n, HB 135: SPV
	SingleCompound  float64 // (F/P) = (1+i)^n
	SeriesPresent   float64 // (P/A) = ((1+i)^n-1)/(i(1+i)^n), at i = 0: n; HB 135: UPV
	SeriesCompound  float64 // (F/A) = ((1+i)^n-1)/i, at i = 0: n
	CapitalRecovery float64 // (A/P) = i(1+i)^n/((1+i)^n-1), at i = 0: 1/n
	SinkingFund     float64 // (A/F) = i/((1+i)^n-1), at i = 0: 1/n
	GradientAnnual  float64 // (A/G) = 1/i - n/((1+i)^n-1), at i = 0: (n-1)/2
	GradientPresent float64 // (P/G) = (A/G)(P/A); the first step of the gradient falls in year 2
}

// Factors are the discount factors of the rate, -50 % to 1000 %, and n years, 1 to
// 200. A/P = A/F + i holds.
//
// Source: NIST Handbook 135, section 5 and its annual supplement; textbook tables.
func (r Rate) Factors(n int) (Factors, error) {
	var faults manway.InputErrors
	checkRate(&faults, "Rate", r)
	manway.Within(&faults, "Years", n, 1, mostYears)
	if err := faults.Err(); err != nil {
		return Factors{}, err
	}
	f := Factors{
		SinglePresent:  present(r, float64(n)),
		SingleCompound: 1 / present(r, float64(n)),
		SeriesPresent:  seriesPresent(r, float64(n)),
	}
	f.SeriesCompound = f.SeriesPresent * f.SingleCompound
	f.CapitalRecovery = 1 / f.SeriesPresent
	f.SinkingFund = 1 / f.SeriesCompound
	f.GradientAnnual = gradientAnnual(r, n)
	f.GradientPresent = f.GradientAnnual * f.SeriesPresent
	return f, nil
}

// present is (1+i)^-t.
func present(i Rate, t float64) float64 { return math.Exp(-t * math.Log1p(float64(i))) }

// seriesPresent is (1-(1+i)^-t)/i; written with expm1 so that a small rate
// loses no digits. At i = 0 it is t.
func seriesPresent(i Rate, t float64) float64 {
	if i == 0 {
		return t
	}
	return -math.Expm1(-t*math.Log1p(float64(i))) / float64(i)
}

// gradientAnnual is 1/i - n/((1+i)^n-1); below a rate of 1e-4 the two terms
// cancel and the sum that the closed form stands for is taken instead.
func gradientAnnual(i Rate, n int) float64 {
	if n == 1 {
		return 0
	}
	if math.Abs(float64(i)) >= 1e-4 {
		return 1/float64(i) - float64(n)/math.Expm1(float64(n)*math.Log1p(float64(i)))
	}
	sum := 0.0
	for t := n; t > 1; t-- {
		sum += float64(t-1) * present(i, float64(t))
	}
	return sum / seriesPresent(i, float64(n))
}

// Escalating is the present worth at rate d = r of a yearly payment of 1 today's money
// that rises by e a year, the first rise falling in year 1, over 0 to 200 years:
// the UPV* of HB 135,
//
//	UPV* = (1+e)/(d-e) (1 - ((1+e)/(1+d))^n), at d = e: n
//
// Source: NIST Handbook 135, modified uniform present value.
func (r Rate) Escalating(e Rate, years int) (float64, error) {
	var faults manway.InputErrors
	checkRate(&faults, "Rate", r)
	checkRate(&faults, "Escalation", e)
	manway.Within(&faults, "Years", years, 0, mostYears)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	v := escalatingPresent(r, e, float64(years))
	if math.IsInf(v, 0) {
		return 0, manway.InputErrors{{Field: "Escalation", Value: e.String(), Want: "a rate at which the series stays finite"}}
	}
	return v, nil
}

// escalatingPresent is the series at the net rate j = (1+d)/(1+e) - 1.
func escalatingPresent(d, e Rate, years float64) float64 {
	return seriesPresent((d-e)/(1+e), years)
}

// Nominal is the nominal rate of a real rate under inflation, and Real the real
// rate of a nominal one:
//
//	1 + nominal = (1 + real)(1 + inflation)
//
// The rates multiply, they never add: 4 % real and 3.5 % inflation are 7.64 %.
func (r Rate) Nominal(inflation Rate) Rate { return r + inflation + r*inflation }

// Real is the reverse of Nominal.
func (r Rate) Real(inflation Rate) Rate { return (r - inflation) / (1 + inflation) }

// Perpetuity is the present worth of 1 a year for ever, first paid after
// the given years, 1 for an ordinary series: 1/i, one year before its first payment.
// The rate is above 0, at most 1000 %. Source: capitalized cost of textbooks.
func (r Rate) Perpetuity(firstYear int) (float64, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Rate", r, 1e-6, mostRate)
	manway.Within(&faults, "FirstYear", firstYear, 0, mostYears)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return present(r, float64(firstYear-1)) / float64(r), nil
}
