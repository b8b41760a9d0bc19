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
	// Storm is a book of man-hours.
	Storm = &manway.Source{ID: "storm-manhours", Title: "Industrial Process Plant Construction Estimating and Man-Hour Analysis", Body: "Storm", Year: 2019}
	// NAVFACP405 is a planning handbook of man-hours and waste.
	NAVFACP405 = &manway.Source{ID: "navfac-p405", Title: "Seabee Planner's and Estimator's Handbook, NAVFAC P-405", Body: "US Naval Facilities Engineering Command", Year: 1994}
	// BagMix is the textbook yield of bagged mixes.
	BagMix = &manway.Source{ID: "bagged-mix", Title: "Yield of bagged concrete mix", Body: "", Year: 0}
	// FM5434 is a field manual of earthmoving.
	FM5434 = &manway.Source{ID: "fm-5-434", Title: "FM 5-434 Earthmoving Operations", Body: "US Army", Year: 2000}
)
