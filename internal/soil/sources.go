package soil

import "manway.example/manway"

// Sources that only this package cites.
var (
	// Das is the textbook of geotechnical engineering.
	Das = &manway.Source{ID: "das-geotechnical", Title: "Principles of Geotechnical Engineering", Body: "Braja M. Das", Year: 2010}
	// C890 is the US practice for loads on precast wastewater structures. Its
	// text was not at hand: every figure of it here is remembered.
	C890 = &manway.Source{ID: "astm-c890", Title: "C890 Standard Practice for Minimum Structural Design Loading for Monolithic or Sectional Precast Concrete Water and Wastewater Structures", Body: "ASTM International", Year: 2013}
	// Moser is the textbook of buried pipe.
	Moser = &manway.Source{ID: "moser-buried-pipe", Title: "Buried Pipe Design", Body: "A. P. Moser", Year: 2001}
	// NavyEquipment is the training manual with the table of soil volumes.
	NavyEquipment = &manway.Source{ID: "navy-equipment", Title: "Equipment Operator, Basic (training manual)", Body: "US Navy", Year: 1994}
)

// Basis lists what the package rests on.
func Basis() []manway.Citation {
	return []manway.Citation{
		{Source: Das, Place: "chapters 10 and 13"},
		{Source: manway.AASHTOLRFD, Place: "3.6.1.2.6, 3.6.2.2, 3.11.6.4, 12.11.2.2"},
		{Source: C890, Place: "remembered"},
		{Source: manway.ASCE7_16, Place: "Table 4.3-1, 4.4"},
		{Source: manway.OSHA1926, Place: "1926.502(i)"},
		{Source: Moser, Place: "pp. 111-113"},
		{Source: NavyEquipment, Place: "Table 10-1"},
	}
}
