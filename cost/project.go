package cost

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Project is money in (above 0) and out (below 0) at the ends of years, the
// first at year 0, today.
type Project []float64

func (p Project) validate(rate Rate) error {
	var faults manway.InputErrors
	manway.Within(&faults, "Project", len(p), 1, mostYears+1)
	for i, v := range p {
		if len(faults) < maxFaults {
			checkItem(&faults, "Project", i, "", v, -1e12, 1e12)
		}
	}
	checkRate(&faults, "Rate", rate)
	return faults.Err()
}

// Worth is a project's value at one rate.
type Worth struct {
	Present float64 // net present value
	Annual  float64 // the same as equal amounts at the ends of its years; 0 for year 0 alone
	Future  float64 // the same at its last year
}

// Worth is the value of the project:
//
//	PW = sum of flow (1+i)^-t, AW = PW (A/P), FW = PW (F/P)
//
// Source: ASTM E1074, net benefits.
func (p Project) Worth(i Rate) (Worth, error) {
	if err := p.validate(i); err != nil {
		return Worth{}, err
	}
	w := Worth{Present: p.presentWorth(i)}
	if n := float64(len(p) - 1); n > 0 {
		w.Annual = w.Present / seriesPresent(i, n)
		w.Future = w.Present / present(i, n)
	} else {
		w.Future = w.Present
	}
	return w, nil
}

func (p Project) presentWorth(i Rate) float64 {
	sum, v := 0.0, 1/(1+float64(i))
	for t := len(p) - 1; t >= 0; t-- { // Horner's rule
		sum = sum*v + p[t]
	}
	return sum
}

// Payback is the number of years after which what has come in covers what went
// out, the last year in proportion. Rate 0 is the simple payback; another rate
// discounts first. Never is where it is not covered.
//
// Source: ASTM E1121.
func (p Project) Payback(i Rate) (When, error) {
	if err := p.validate(i); err != nil {
		return When{}, err
	}
	return payback(p, i), nil
}

// payback is Payback of checked input.
func payback(p Project, i Rate) When {
	sum := 0.0
	for t, v := range p {
		v *= present(i, float64(t))
		if sum+v >= 0 {
			switch {
			case t == 0:
				return When{State: Always}
			case v <= 0:
				return When{State: InYears, Years: float64(t)}
			}
			return When{State: InYears, Years: float64(t-1) - sum/v}
		}
		sum += v
	}
	return When{State: Never}
}

// InternalRate is the rate at which the project is worth nothing, -50 % to
// 1000 %. It is refused where the sign of the flows changes never or more than
// once, since then there is none or there may be several.
//
// Source: ASTM E1057.
func (p Project) InternalRate() (Rate, error) {
	if err := p.validate(0); err != nil {
		return 0, err
	}
	changes, last := 0, 0.0
	for _, v := range p {
		if v != 0 {
			if last != 0 && math.Signbit(v) != math.Signbit(last) {
				changes++
			}
			last = v
		}
	}
	lo, hi := float64(leastRate), float64(mostRate)
	at := func(i float64) float64 { return p.presentWorth(Rate(i)) }
	if changes != 1 || math.Signbit(at(lo)) == math.Signbit(at(hi)) {
		return 0, manway.InputErrors{{Field: "Project", Value: strconv.Itoa(changes) + " changes of sign",
			Want: "money out first and in later or the reverse, with a rate between -50 % and 1000 %"}}
	}
	for range 200 {
		m := (lo + hi) / 2
		if m == lo || m == hi {
			break
		}
		if math.Signbit(at(m)) == math.Signbit(at(lo)) {
			lo = m
		} else {
			hi = m
		}
	}
	return Rate((lo + hi) / 2), nil
}

// Defender is what stands there and may be kept a year at a time: what keeping
// it costs now (an overhaul, a patch) and in each year from then on.
type Defender struct {
	Now    float64   // paid today in order to keep it
	Yearly []float64 // paid at the end of each further year
	Rate   Rate
}

// Marginal is what each further year costs at its end; the first carries what is
// paid now with interest:
//
//	year 1: now (1+i) + yearly 1, then yearly 2, 3, …
//
// A worth that could be had by selling it today is part of Now. Money within
// 1e12, 1 to 200 years, rate -50 % to 1000 %. Source: Newnan, replacement
// analysis by marginal cost.
func (d Defender) Marginal() ([]float64, error) {
	var faults manway.InputErrors
	checkFloat(&faults, "Now", d.Now, -1e12, 1e12)
	checkRate(&faults, "Rate", d.Rate)
	manway.Within(&faults, "Yearly", len(d.Yearly), 1, mostYears)
	for i, v := range d.Yearly {
		if len(faults) < maxFaults {
			checkItem(&faults, "Yearly", i, "", v, -1e12, 1e12)
		}
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	list := append([]float64(nil), d.Yearly...)
	list[0] += d.Now * (1 + float64(d.Rate))
	return list, nil
}

// KeepFor is how many more years to keep the defender against a challenger's
// least yearly cost: the first stretch of years whose equivalent annual cost is
// no more (one year, unless what is paid now is made good only later), and from
// there on until the first year that costs more. InYears with 0 is to replace
// it now; Never is that no year given costs more. Source: Newnan, replacement
// analysis: marginal cost of the defender against the least yearly cost of the
// challenger.
func (d Defender) KeepFor(challenger float64) (When, error) {
	marginal, err := d.Marginal()
	var faults manway.InputErrors
	faults.Under("", err)
	checkFloat(&faults, "Challenger", challenger, -1e12, 1e12)
	if err := faults.Err(); err != nil {
		return When{}, err
	}
	limit := challenger * (1 + near)
	if challenger < 0 {
		limit = challenger * (1 - near)
	}
	keep, sum := 0, 0.0
	for t, v := range marginal { // the first stretch of years that is worth it
		sum += v * present(d.Rate, float64(t+1))
		if sum/seriesPresent(d.Rate, float64(t+1)) <= limit {
			keep = t + 1
			break
		}
	}
	for keep > 0 && keep < len(marginal) && marginal[keep] <= limit { // and on, year by year
		keep++
	}
	if keep == len(marginal) {
		return When{State: Never}, nil
	}
	return When{State: InYears, Years: float64(keep)}, nil
}
