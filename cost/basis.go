package cost

import "manway.example/manway"

// Basis is where the factors come from.
func (Factors) Basis() []manway.Citation {
	return []manway.Citation{{Source: hb135, Place: "discount factors"}}
}

// Basis is where the yearly cost comes from.
func (Yearly) Basis() []manway.Citation {
	return []manway.Citation{{Source: hb135, Place: "annual value"}, {Source: astme917, Place: "life-cycle cost"}}
}

// Basis is where the break-even lives come from: the annual value, solved for
// the life.
func (Lifetimes) Basis() []manway.Citation {
	return []manway.Citation{{Source: hb135, Place: "annual value, solved for the life of the cheaper one"}}
}

// Basis is where the worth of a project comes from.
func (Worth) Basis() []manway.Citation {
	return []manway.Citation{{Source: astme1074, Place: "net benefits"}, {Source: astme1121, Place: "payback"}, {Source: astme1057, Place: "internal rate of return"}}
}

// Basis is where the conversion of soil volumes comes from.
func (Conversion) Basis() []manway.Citation {
	return []manway.Citation{{Source: fm5434, Place: "soil volume changes"}}
}

// Basis is where the three rules for a pit come from.
func (PitVolumes) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "prismoidal rule, average sides, average end area"}}
}

// Basis is where the range of a price comes from.
func (Spread) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "three-point estimates, drawn independently of each other"}}
}

// Basis lists what the package rests on.
func Basis() []manway.Citation {
	return []manway.Citation{
		{Source: hb135, Place: "discount factors, annual value, present value, study period"},
		{Source: astme917, Place: "life-cycle cost"},
		{Source: astme1057, Place: "internal rate of return"},
		{Source: astme1074, Place: "net benefits"},
		{Source: astme1121, Place: "payback"},
		{Source: newnan, Place: "replacement analysis by marginal cost"},
		{Source: iso4217, Place: "List One, minor units"},
		{Source: rec20, Place: "unit codes and conversion factors"},
		{Source: fowlerMoney, Place: "Money: allocation"},
		{Source: storm, Place: "pp. 54-55, man-hours"},
		{Source: navfacp405, Place: "man-hour tables, duration of an activity, waste"},
		{Source: trenchHours, Place: "hand trench up to 1 m deep"},
		{Source: buildingEstimating, Place: "Fig. 10.17; trucks and loads"},
		{Source: manhoursManual, Place: "removal"},
		{Source: pagePiping, Place: "p. 196"},
		{Source: fm5434, Place: "Table 1-1, soil volume changes"},
		{Source: swellOfSoils, Place: "swell of soils"},
		{Source: calRecycle, Place: "calculations: volume to weight"},
		{Source: astma615, Place: "nominal weights of bars"},
		{Source: bagMix, Place: "0.0075 ft3 a pound"},
		{Source: manway.NISTHandbook44, Place: "1 fl oz = 1.8046875 in3"},
		{Source: manway.Practice, Place: "order of the charges, three-point estimates, markup and margin, rounding, takeoff of pits, grids and sheets"},
	}
}
