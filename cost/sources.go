package cost

import "manway.example/manway"

// Texts that only this package cites.
var (
	// hb135 is the life-cycle costing manual of US federal buildings.
	hb135 = &manway.Source{ID: "nist-hb135", Title: "Life-Cycle Costing Manual for the Federal Energy Management Program, Handbook 135", Body: "National Institute of Standards and Technology", Year: 1995}
	// astme917 is the measure of life-cycle cost that HB 135 follows.
	astme917 = &manway.Source{ID: "astm-e917", Title: "ASTM E917 Measuring Life-Cycle Costs of Buildings and Building Systems", Body: "ASTM International", Year: 2017}
	// iso4217 fixes the minor unit of each currency.
	iso4217 = &manway.Source{ID: "iso-4217", Title: "ISO 4217 Codes for the representation of currencies, List One", Body: "International Organization for Standardization", Year: 2026}
	// rec20 fixes the unit codes.
	rec20 = &manway.Source{ID: "unece-rec20", Title: "Recommendation 20, Codes for Units of Measure Used in International Trade, Revision 17", Body: "United Nations Economic Commission for Europe", Year: 2021}
	// fowlerMoney is where sharing out cents is told.
	fowlerMoney = &manway.Source{ID: "fowler-peaa", Title: "Patterns of Enterprise Application Architecture", Body: "M. Fowler", Year: 2002}
	// newnan is a textbook of engineering economy.
	newnan = &manway.Source{ID: "newnan-eea", Title: "Engineering Economic Analysis", Body: "Newnan, Eschenbach and Lavelle", Year: 2004}
	// storm is a book of man-hours.
	storm = &manway.Source{ID: "storm-manhours", Title: "Industrial Process Plant Construction Estimating and Man-Hour Analysis", Body: "Storm", Year: 2019}
	// navfacp405 is a planning handbook of man-hours and waste.
	navfacp405 = &manway.Source{ID: "navfac-p405", Title: "Seabee Planner's and Estimator's Handbook, NAVFAC P-405", Body: "US Naval Facilities Engineering Command", Year: 1994}
	// bagMix is the textbook yield of bagged mixes.
	bagMix = &manway.Source{ID: "bagged-mix", Title: "Yield of bagged concrete mix", Body: "", Year: 0}
	// fm5434 is a field manual of earthmoving.
	fm5434 = &manway.Source{ID: "fm-5-434", Title: "FM 5-434 Earthmoving Operations", Body: "US Army", Year: 2000}
	// trenchHours is a table of labour hours for work in small trenches.
	trenchHours = &manway.Source{ID: "trench-hours", Title: "Labour constants for excavation and trench work by hand"}
	// buildingEstimating is a textbook of quantities and costs.
	buildingEstimating = &manway.Source{ID: "estimating-building", Title: "Estimating in Building Construction", Body: "Dagostino and Peterson", Year: 2011}
	// manhoursManual is a manual of unit man-hours, its author not named.
	manhoursManual = &manway.Source{ID: "manhours-manual", Title: "Manual of unit man-hours"}
	// pagePiping is a book of man-hours for piping.
	pagePiping = &manway.Source{ID: "page-piping", Title: "Estimator's Piping Man-Hour Manual", Body: "J. S. Page", Year: 1999}
	// swellOfSoils is a table of the swell of soils.
	swellOfSoils = &manway.Source{ID: "swell-table", Title: "Swell of soils and rock"}
	// astme1057 is the measure of the internal rate of return.
	astme1057 = &manway.Source{ID: "astm-e1057", Title: "ASTM E1057 Measuring Internal Rate of Return and Adjusted Internal Rate of Return for Investments in Buildings", Body: "ASTM International", Year: 2015}
	// astme1074 is the measure of net benefits.
	astme1074 = &manway.Source{ID: "astm-e1074", Title: "ASTM E1074 Measuring Net Benefits and Net Savings for Investments in Buildings", Body: "ASTM International", Year: 2015}
	// astme1121 is the measure of payback.
	astme1121 = &manway.Source{ID: "astm-e1121", Title: "ASTM E1121 Measuring Payback for Investments in Buildings", Body: "ASTM International", Year: 2015}
	// astma615 fixes the nominal sizes and weights of reinforcing bars.
	astma615 = &manway.Source{ID: "astm-a615", Title: "A615 Standard Specification for Deformed and Plain Carbon-Steel Bars for Concrete Reinforcement", Body: "ASTM International", Year: 2020}
	// calRecycle gives weights of loose material for reports of waste.
	calRecycle = &manway.Source{ID: "calrecycle-weights", Title: "Solid waste facilities, calculations: volume to weight", Body: "California Department of Resources Recycling and Recovery", Year: 2026}
)
