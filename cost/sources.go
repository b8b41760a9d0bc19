package cost

import "manway.example/manway"

// Texts that only this package cites.
var (
	// HB135 is the life-cycle costing manual of US federal buildings.
	HB135 = &manway.Source{ID: "nist-hb135", Title: "Life-Cycle Costing Manual for the Federal Energy Management Program, Handbook 135", Body: "National Institute of Standards and Technology", Year: 1995}
	// ASTME917 is the measure of life-cycle cost that HB 135 follows.
	ASTME917 = &manway.Source{ID: "astm-e917", Title: "ASTM E917 Measuring Life-Cycle Costs of Buildings and Building Systems", Body: "ASTM International", Year: 2017}
	// ISO4217 fixes the minor unit of each currency.
	ISO4217 = &manway.Source{ID: "iso-4217", Title: "ISO 4217 Codes for the representation of currencies, List One", Body: "International Organization for Standardization", Year: 2026}
	// Rec20 fixes the unit codes.
	Rec20 = &manway.Source{ID: "unece-rec20", Title: "Recommendation 20, Codes for Units of Measure Used in International Trade, Revision 17", Body: "United Nations Economic Commission for Europe", Year: 2021}
	// FowlerMoney is where sharing out cents is told.
	FowlerMoney = &manway.Source{ID: "fowler-peaa", Title: "Patterns of Enterprise Application Architecture", Body: "M. Fowler", Year: 2002}
	// Newnan is a textbook of engineering economy.
	Newnan = &manway.Source{ID: "newnan-eea", Title: "Engineering Economic Analysis", Body: "Newnan, Eschenbach and Lavelle", Year: 2004}
	// Storm is a book of man-hours.
	Storm = &manway.Source{ID: "storm-manhours", Title: "Industrial Process Plant Construction Estimating and Man-Hour Analysis", Body: "Storm", Year: 2019}
	// NAVFACP405 is a planning handbook of man-hours and waste.
	NAVFACP405 = &manway.Source{ID: "navfac-p405", Title: "Seabee Planner's and Estimator's Handbook, NAVFAC P-405", Body: "US Naval Facilities Engineering Command", Year: 1994}
	// BagMix is the textbook yield of bagged mixes.
	BagMix = &manway.Source{ID: "bagged-mix", Title: "Yield of bagged concrete mix", Body: "", Year: 0}
	// FM5434 is a field manual of earthmoving.
	FM5434 = &manway.Source{ID: "fm-5-434", Title: "FM 5-434 Earthmoving Operations", Body: "US Army", Year: 2000}
	// TrenchHours is a table of labour hours for work in small trenches.
	TrenchHours = &manway.Source{ID: "trench-hours", Title: "Labour constants for excavation and trench work by hand"}
	// BuildingEstimating is a textbook of quantities and costs.
	BuildingEstimating = &manway.Source{ID: "estimating-building", Title: "Estimating in Building Construction", Body: "Dagostino and Peterson", Year: 2011}
	// ManhoursManual is a manual of unit man-hours, its author not named.
	ManhoursManual = &manway.Source{ID: "manhours-manual", Title: "Manual of unit man-hours"}
	// PagePiping is a book of man-hours for piping.
	PagePiping = &manway.Source{ID: "page-piping", Title: "Estimator's Piping Man-Hour Manual", Body: "J. S. Page", Year: 1999}
	// Swell is a table of the swell of soils.
	Swell = &manway.Source{ID: "swell-table", Title: "Swell of soils and rock"}
	// ASTME1057 is the measure of the internal rate of return.
	ASTME1057 = &manway.Source{ID: "astm-e1057", Title: "ASTM E1057 Measuring Internal Rate of Return and Adjusted Internal Rate of Return for Investments in Buildings", Body: "ASTM International", Year: 2015}
	// ASTME1074 is the measure of net benefits.
	ASTME1074 = &manway.Source{ID: "astm-e1074", Title: "ASTM E1074 Measuring Net Benefits and Net Savings for Investments in Buildings", Body: "ASTM International", Year: 2015}
	// ASTME1121 is the measure of payback.
	ASTME1121 = &manway.Source{ID: "astm-e1121", Title: "ASTM E1121 Measuring Payback for Investments in Buildings", Body: "ASTM International", Year: 2015}
	// ASTMA615 fixes the nominal sizes and weights of reinforcing bars.
	ASTMA615 = &manway.Source{ID: "astm-a615", Title: "A615 Standard Specification for Deformed and Plain Carbon-Steel Bars for Concrete Reinforcement", Body: "ASTM International", Year: 2020}
	// CalRecycle gives weights of loose material for reports of waste.
	CalRecycle = &manway.Source{ID: "calrecycle-weights", Title: "Solid waste facilities, calculations: volume to weight", Body: "California Department of Resources Recycling and Recovery", Year: 2026}
)
