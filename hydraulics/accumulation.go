package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Accumulation is a published rate at which sludge and scum gather, for one
// person:
//
//	V(t) = fixed + rate × t^power, litres and years
type Accumulation struct {
	Name       string
	Condition  string  // where and of what it holds
	Fixed      float64 // L a person
	Rate       float64 // L a person and year
	RateHigh   float64 // upper end where a range is given; 0: Rate is one figure
	Power      float64
	From, To   float64 // years for which it was given
	Measured   bool    // measured on tanks, else a design figure
	Remembered bool    // the figure was not read in its source
	Source     manway.Citation
}

// Accumulations lists the models. They measure different things: wet or packed
// sludge, with or without scum, toilets only or all of the house. The South
// African figures are of pit latrines: none of septic tanks was found there.
func Accumulations() []Accumulation {
	return []Accumulation{
		{Name: "household table", Condition: "US houses, sludge and scum; derived from the table", Rate: manclRate * litresPerGallon, Power: 1, From: 0.1, To: 32, Source: manway.Citation{Source: mancl1984, Place: "fit to the table"}},
		{Name: "Ireland, first half year", Condition: "28 tanks, sludge", Rate: 92.7, Power: 1, From: 0, To: 0.5, Measured: true, Source: manway.Citation{Source: gray1995, Place: "abstract"}},
		{Name: "Ireland, any age", Condition: "28 tanks, sludge", Rate: 85.3, Power: 1, From: 0.5, To: 5, Measured: true, Source: manway.Citation{Source: gray1995, Place: "abstract"}},
		{Name: "Ireland, five years old", Condition: "sludge, packed with age", Rate: 0.178 * 365, Power: 1, From: 4, To: 6, Measured: true, Source: manway.Citation{Source: gray1995, Place: "rate at five years"}},
		{Name: "Ireland, first year", Condition: "27 tanks, sludge and scum", Rate: 250, Power: 1, From: 0, To: 1, Measured: true, Source: manway.Citation{Source: gill2022, Place: "abstract"}},
		{Name: "France, 33 systems", Condition: "design rate from measurements", Rate: 0.21 * 365, Power: 1, From: 0, To: 5, Measured: true, Source: manway.Citation{Source: philip1993, Place: "abstract"}},
		{Name: "South Africa, pit latrines", Condition: "pits without sullage, not tanks; upper end a margin for planning", Rate: 40, RateHigh: 60, Power: 1, From: 1, To: 9, Measured: true, Source: manway.Citation{Source: stillFoxon2012, Place: "abstract"}},
		{Name: "US septage", Condition: "septage hauled", Rate: 65 * litresPerGallon, RateHigh: 70 * litresPerGallon, Power: 1, From: 1, To: 10, Measured: true, Source: manway.Citation{Source: cooperRezek1977, Place: "quoting Kolega"}},
		{Name: "US regression", Condition: "sludge and scum", Rate: 178, Power: 0.675, From: 1, To: 8, Measured: true, Remembered: true, Source: manway.Citation{Source: bounds1997, Place: "regression"}},
		{Name: "Australia, New Zealand", Condition: "design allowance, sludge and scum", Rate: 80, Power: 1, From: 1, To: 10, Remembered: true, Source: manway.Citation{Source: asnzs1547, Place: "sludge allowance"}},
		{Name: "UK", Condition: "new to packed sludge, a trade estimate", Rate: 60, RateHigh: 90, Power: 1, From: 0, To: 5, Source: manway.Citation{Source: manway.Practice, Place: "trade page"}},
		{Name: "WHO", Condition: "toilets and sullage, 10 C and warmer", Rate: 40, Power: 1, From: 3, To: 10, Remembered: true, Source: manway.Citation{Source: who1992, Place: "chapter 8"}},
		{Name: "Brazil, 10 C or colder", Condition: "design, fresh sludge of 1 L a day", Fixed: 54, Rate: 40, Power: 1, From: 1, To: 5, Remembered: true, Source: manway.Citation{Source: nbr7229, Place: "table 3"}},
		{Name: "Brazil, 10 to 20 C", Condition: "design, fresh sludge of 1 L a day", Fixed: 25, Rate: 40, Power: 1, From: 1, To: 5, Remembered: true, Source: manway.Citation{Source: nbr7229, Place: "table 3"}},
		{Name: "Brazil, above 20 C", Condition: "design, fresh sludge of 1 L a day", Fixed: 17, Rate: 40, Power: 1, From: 1, To: 5, Remembered: true, Source: manway.Citation{Source: nbr7229, Place: "table 3"}},
		{Name: "Peru, 10 to 20 C", Condition: "design, cleaned yearly", Rate: 65, Power: 1, From: 1, To: 1, Source: manway.Citation{Source: is020, Place: "clause 6.3"}},
		{Name: "Peru, above 20 C", Condition: "design, cleaned yearly", Rate: 57, Power: 1, From: 1, To: 1, Source: manway.Citation{Source: is020, Place: "clause 6.3"}},
	}
}

const litresPerGallon = float64(manway.Gallon / manway.Litre)

// Volume is the sludge and scum of 1 to 1,000 people after a time within the
// model's own years, low and high.
//
// Source: the publication of each model, in its Source.
func (a Accumulation) Volume(people int, t manway.Duration) (low, high manway.Volume, err error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Fixed", a.Fixed, 0, 10000)
	manway.Within(&faults, "Rate", a.Rate, 0, 10000)
	manway.Within(&faults, "RateHigh", a.RateHigh, 0, 10000)
	manway.Within(&faults, "Power", a.Power, 0, 3)
	manway.Within(&faults, "From", a.From, 0, 100)
	manway.Within(&faults, "To", a.To, 0, 100)
	manway.Within(&faults, "People", people, 1, 1000)
	if len(faults) == 0 {
		const slack = 1e-9
		manway.Within(&faults, "Time", t, manway.Duration(a.From*(1-slack))*manway.Year, manway.Duration(a.To*(1+slack))*manway.Year)
	}
	if err := faults.Err(); err != nil {
		return 0, 0, err
	}
	grown := math.Pow(t.In(manway.Year), a.Power) * float64(people)
	fixed := a.Fixed * float64(people)
	return manway.Volume(fixed+a.Rate*grown) * manway.Litre, manway.Volume(fixed+max(a.Rate, a.RateHigh)*grown) * manway.Litre, nil
}

// Compared is one model at one time.
type Compared struct {
	Model     Accumulation
	Valid     bool // the time lies within the model's years
	Low, High manway.Volume
}

// Comparison is the models side by side.
type Comparison struct {
	Models    []Compared
	Low, High manway.Volume // over the models that are valid
	Spread    float64       // High over Low; 0 where fewer than two are valid
	Cautions  manway.Cautions
}

// CompareAccumulation sets the models side by side for 1 to 1,000 people and a
// time of more than 0 to 50 years. The spread is the answer: a factor of four
// among published rates is usual.
//
// Source: the publication of each model, in its Source.
func CompareAccumulation(people int, t manway.Duration) (Comparison, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "People", people, 1, 1000)
	manway.Within(&faults, "Time", t, 1*manway.Day, 50*manway.Year)
	if err := faults.Err(); err != nil {
		return Comparison{}, err
	}
	c := Comparison{Cautions: manway.EstimateOnly}
	valid := 0
	for _, a := range Accumulations() {
		m := Compared{Model: a}
		var err error
		if m.Low, m.High, err = a.Volume(people, t); err == nil {
			m.Valid = true
			if valid++; valid == 1 || m.Low < c.Low {
				c.Low = m.Low
			}
			c.High = max(c.High, m.High)
			if a.Remembered {
				c.Cautions |= manway.RememberedFigure
			}
		}
		c.Models = append(c.Models, m)
	}
	if valid > 1 {
		c.Spread = float64(c.High / c.Low)
	}
	return c, nil
}

// Basis lists the source of every model.
func (c Comparison) Basis() []manway.Citation {
	list := make([]manway.Citation, 0, len(c.Models))
	for _, m := range c.Models {
		list = append(list, m.Model.Source)
	}
	return list
}
