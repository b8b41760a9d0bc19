package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Climate is the ambient temperature that a design standard asks about.
type Climate uint8

// The climates: the coldest month at or below 10 C, above 10 to 20 C, above 20 C.
const (
	Cold Climate = iota
	Mild
	Warm
)

var climates = [...]string{"10 C or colder", "10 to 20 C", "above 20 C"}

// String is the climate in words.
func (c Climate) String() string { return manway.Word(climates[:], c) }

// MarshalText is the same as String.
func (c Climate) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText accepts the words of String.
func (c *Climate) UnmarshalText(text []byte) error {
	return manway.ReadWord(c, "climate", climates[:], text)
}

// Served is who a tank is to serve between two cleanings.
type Served struct {
	People    int         // 1 to 10,000
	PerPerson manway.Flow // wastewater, 1 to 1,000 L/d
	Years     int         // between cleanings
	Climate   Climate
}

// Sizing is the liquid capacity that a standard asks for, in its parts.
type Sizing struct {
	Retention manway.Duration
	Liquid    manway.Volume // for the wastewater
	Solids    manway.Volume // for sludge, and scum where the standard has it there
	Reserve   manway.Volume // a fixed part: 1,000 L in Brazil, 0.7 m3 of scum in Peru
	Total     manway.Volume
	Cautions  manway.Cautions
	source    manway.Citation
}

// Basis lists the source of the sizing.
func (s Sizing) Basis() []manway.Citation { return []manway.Citation{s.source} }

// Working is the sizing step by step.
func (s Sizing) Working(sys manway.System) manway.Working {
	return manway.Working{
		{Symbol: "retention", Value: s.Retention.Text(sys)},
		{Symbol: "total", Formula: "liquid + solids + reserve", Numbers: s.Liquid.Text(sys) + " + " + s.Solids.Text(sys) + " + " + s.Reserve.Text(sys), Value: s.Total.Text(sys)},
	}
}

func (s Served) validate(most int) error {
	var faults manway.InputErrors
	manway.Within(&faults, "People", s.People, 1, 10000)
	manway.Within(&faults, "PerPerson", s.PerPerson, 1*manway.LitrePerDay, 1000*manway.LitrePerDay)
	manway.Within(&faults, "Years", s.Years, 1, most)
	if s.Climate > Warm {
		faults.Add("Climate", s.Climate.String(), "10 C or colder, 10 to 20 C, above 20 C")
	}
	return faults.Err()
}

// daily is the wastewater of a day.
func (s Served) daily() manway.Volume {
	return s.PerPerson.Times(manway.Day) * manway.Volume(s.People)
}

// brazilRetention is the days of retention by the litres of a day.
var brazilRetention = [...]struct{ upTo, days float64 }{
	{1500, 1}, {3000, 0.92}, {4500, 0.83}, {6000, 0.75}, {7500, 0.67}, {9000, 0.58}, {math.Inf(1), 0.5},
}

// brazilDays is K, the days of fresh sludge that are left after one year; each
// further year adds 40.
var brazilDays = [...]float64{Cold: 94, Mild: 65, Warm: 57}

// BrazilSizing is the capacity by NBR 7229:1993 for 1 to 5 years:
//
//	V = 1000 L + N (C T + K Lf)
//
// with Lf the fresh sludge of a person in a day, 1 L of a permanent house. T is
// 1 day up to 1,500 L/d down to half a day above 9,000; K = 54, 25 or 17 + 40 a
// year by climate. The tables of T and K are remembered.
//
// Source: NBR 7229:1993.
func (s Served) BrazilSizing(freshSludge manway.Flow) (Sizing, error) {
	var faults manway.InputErrors
	faults.Under("Served", s.validate(5))
	manway.Within(&faults, "FreshSludge", freshSludge, 0, 5*manway.LitrePerDay)
	if err := faults.Err(); err != nil {
		return Sizing{}, err
	}
	litres, days := float64(s.daily()/manway.Litre), 0.0
	for _, row := range brazilRetention {
		if litres <= row.upTo*(1+1e-9) {
			days = row.days
			break
		}
	}
	k := brazilDays[s.Climate] + 40*float64(s.Years-1)
	r := Sizing{
		Retention: manway.Duration(days) * manway.Day, Liquid: s.daily() * manway.Volume(days),
		Solids:  freshSludge.Times(manway.Duration(k)*manway.Day) * manway.Volume(s.People),
		Reserve: 1000 * manway.Litre, Cautions: manway.LocalCode | manway.RememberedFigure,
		source: manway.Citation{Source: nbr7229, Place: "5.7, tables 2 and 3"},
	}
	return r.summed(), nil
}

// PeruSizing is the capacity by IS.020 for a cleaning every year:
//
//	retention = 1.5 - 0.3 log10(P q) days, at least 6 h     q in L/d
//	liquid    = P q × retention    solids = ta P, ta = 94, 65 or 57 L    scum 0.7 m3
//
// ta of the cold climate is remembered.
//
// Source: IS.020.
func (s Served) PeruSizing() (Sizing, error) {
	if err := s.validate(1); err != nil {
		return Sizing{}, err
	}
	litres := float64(s.daily() / manway.Litre)
	days := max(1.5-0.3*math.Log10(litres), 0.25)
	r := Sizing{
		Retention: manway.Duration(days) * manway.Day, Liquid: s.daily() * manway.Volume(days),
		Solids:  manway.Volume(brazilDays[s.Climate]*float64(s.People)) * manway.Litre,
		Reserve: 0.7 * manway.CubicMetre, Cautions: manway.LocalCode,
		source: manway.Citation{Source: is020, Place: "6.2 to 6.4"},
	}
	if s.Climate == Cold {
		r.Cautions |= manway.RememberedFigure
	}
	return r.summed(), nil
}

// whoFactor is F by years, 1 to 6 and more, and climate.
var whoFactor = [...][3]float64{
	{Cold: 2.5, Mild: 1.5, Warm: 1.3}, {Cold: 1.5, Mild: 1.15, Warm: 1}, {Cold: 1.27, Mild: 1, Warm: 1},
	{Cold: 1.15, Mild: 1, Warm: 1}, {Cold: 1.06, Mild: 1, Warm: 1}, {Cold: 1, Mild: 1, Warm: 1},
}

// WHOSizing is the capacity by the WHO guide of 1992, for 1 to 10 years and
// sewage of 0.9 of the water used, which PerPerson is already:
//
//	A = P q × hours/24    B = P N F S    capacity = A + B
//
// S is 40 L a person and year, 25 where only toilets drain to it; hours are 24
// up to 6 m3/d, 33 - 1.5 Q to 14 m3/d, 12 above. F, S and hours are remembered.
//
// Source: A guide to the development of on-site sanitation, World Health
// Organization, 1992.
func (s Served) WHOSizing(toiletsOnly bool) (Sizing, error) {
	if err := s.validate(10); err != nil {
		return Sizing{}, err
	}
	rate := 40.0
	if toiletsOnly {
		rate = 25
	}
	hours := min(max(33-1.5*float64(s.daily()/manway.CubicMetre), 12), 24)
	f := whoFactor[min(s.Years, len(whoFactor))-1][s.Climate]
	r := Sizing{
		Retention: manway.Duration(hours) * manway.Hour, Liquid: s.daily() * manway.Volume(hours/24),
		Solids:   manway.Volume(rate*f*float64(s.People*s.Years)) * manway.Litre,
		Cautions: manway.LocalCode | manway.RememberedFigure,
		source:   manway.Citation{Source: who1992, Place: "chapter 8"},
	}
	return r.summed(), nil
}

func (s Sizing) summed() Sizing {
	s.Total = s.Liquid + s.Solids + s.Reserve
	return s
}
