package concrete

import "manway.example/manway"

// Sources that only this package cites.
var (
	// ASTMA615 is the US standard for deformed bars.
	ASTMA615 = &manway.Source{ID: "astm-a615", Title: "A615 Standard Specification for Deformed and Plain Carbon-Steel Bars for Concrete Reinforcement", Body: "ASTM International", Year: 2020}
	// ASTMA1064 is the US standard for wire and welded wire.
	ASTMA1064 = &manway.Source{ID: "astm-a1064", Title: "A1064 Standard Specification for Carbon-Steel Wire and Welded Wire Reinforcement", Body: "ASTM International", Year: 2018}
)

// Basis lists what the package rests on.
func Basis() []manway.Citation {
	return []manway.Citation{
		{Source: manway.ACI318_19, Place: "chapters 14, 17, 19 to 22 and 27"},
		{Source: ASTMA615, Place: "Table 1"},
		{Source: ASTMA1064, Place: "wire sizes"},
	}
}
