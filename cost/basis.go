package cost

import "manway.example/manway"

// Basis is where the factors come from.
func (Factors) Basis() []manway.Citation {
	return []manway.Citation{{Source: HB135, Place: "discount factors"}}
}

// Basis is where the yearly cost comes from.
func (Yearly) Basis() []manway.Citation {
	return []manway.Citation{{Source: HB135, Place: "annual value"}, {Source: ASTME917, Place: "life-cycle cost"}}
}

// Basis is where the break-even lives come from: the annual value, solved for
// the life.
func (Lifetimes) Basis() []manway.Citation {
	return []manway.Citation{{Source: HB135, Place: "annual value, solved for the life of the cheaper one"}}
}

// Basis is where the worth of a project comes from.
func (Worth) Basis() []manway.Citation {
	return []manway.Citation{{Source: ASTME1074, Place: "net benefits"}, {Source: ASTME1121, Place: "payback"}, {Source: ASTME1057, Place: "internal rate of return"}}
}

// Basis is where the conversion of soil volumes comes from.
func (Conversion) Basis() []manway.Citation {
	return []manway.Citation{{Source: FM5434, Place: "soil volume changes"}}
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
		{Source: HB135, Place: "discount factors, annual value, present value, study period"},
		{Source: ASTME917, Place: "life-cycle cost"},
		{Source: ASTME1057, Place: "internal rate of return"},
		{Source: ASTME1074, Place: "net benefits"},
		{Source: ASTME1121, Place: "payback"},
		{Source: Newnan, Place: "replacement analysis by marginal cost"},
		{Source: ISO4217, Place: "List One, minor units"},
		{Source: Rec20, Place: "unit codes and conversion factors"},
		{Source: FowlerMoney, Place: "Money: allocation"},
		{Source: Storm, Place: "pp. 54-55, man-hours"},
		{Source: NAVFACP405, Place: "man-hour tables, duration of an activity, waste"},
		{Source: TrenchHours, Place: "hand trench up to 1 m deep"},
		{Source: BuildingEstimating, Place: "Fig. 10.17; trucks and loads"},
		{Source: ManhoursManual, Place: "removal"},
		{Source: PagePiping, Place: "p. 196"},
		{Source: FM5434, Place: "Table 1-1, soil volume changes"},
		{Source: Swell, Place: "swell of soils"},
		{Source: CalRecycle, Place: "calculations: volume to weight"},
		{Source: ASTMA615, Place: "nominal weights of bars"},
		{Source: BagMix, Place: "0.0075 ft3 a pound"},
		{Source: manway.NISTHandbook44, Place: "1 fl oz = 1.8046875 in3"},
		{Source: manway.Practice, Place: "order of the charges, three-point estimates, markup and margin, rounding, takeoff of pits, grids and sheets"},
	}
}
