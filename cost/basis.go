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
