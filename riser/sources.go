package riser

import "manway.example/manway"

// Sources used by this package. Several are cited by other rooms too, under the
// same ids.
var (
	texas285      = &manway.Source{ID: "tx-30-285-38", Title: "30 TAC 285.38, Prevention of unauthorized access to on-site sewage facilities", Body: "Texas Commission on Environmental Quality", Year: 2023}
	texas285Old   = &manway.Source{ID: "tx-30-tac-285-2012", Title: "30 TAC 285.38 (text of 2012)", Body: "State of Texas", Year: 2012}
	wisconsin384  = &manway.Source{ID: "wi-sps-384-25", Title: "SPS 384.25, POWTS treatment and holding components (copy)", Body: "Wisconsin Department of Safety and Professional Services", Year: 2024}
	minnesota7080 = &manway.Source{ID: "minn-r-7080", Title: "Minnesota Rules, chapter 7080, Individual Subsurface Sewage Treatment Systems", Body: "Minnesota Pollution Control Agency", Year: 2008}
	carolina130A  = &manway.Source{ID: "nc-gs-130a-335-1", Title: "General Statutes 130A-335.1, Effluent filters and access devices for certain septic tank systems", Body: "North Carolina General Assembly", Year: 2006}
	oregon340     = &manway.Source{ID: "oar-340-073", Title: "OAR 340-073-0025, Septic tanks (copy)", Body: "Oregon Department of Environmental Quality", Year: 2024}
	virginia811   = &manway.Source{ID: "va-one-call", Title: "Underground Utility Damage Prevention Act, Code of Virginia 56-265.14 to 56-265.32", Body: "General Assembly of Virginia", Year: 2023}
	aci224R       = &manway.Source{ID: "aci-224r", Title: "ACI 224R-01 Control of Cracking in Concrete Structures", Body: "American Concrete Institute", Year: 2001}
	astmC990      = &manway.Source{ID: "astm-c990", Title: "C990 Standard Specification for Joints for Concrete Pipe, Manholes, and Precast Box Sections Using Preformed Flexible Joint Sealants", Body: "ASTM International", Year: 2009}
	fm5434        = &manway.Source{ID: "fm-5-434", Title: "FM 5-434 Earthmoving Operations", Body: "US Army", Year: 2000}
	storm2019     = &manway.Source{ID: "storm-manhours", Title: "Industrial Process Plant Construction Estimating and Man-Hour Analysis", Body: "Storm", Year: 2019}
	coverHours    = &manway.Source{ID: "manhours-manual", Title: "Manual of unit man-hours"}
	handTrench    = &manway.Source{ID: "trench-hours", Title: "Labour constants for excavation and trench work by hand"}
	bagMix        = &manway.Source{ID: "bagged-mix", Title: "Yield of bagged concrete mix"}
	burnett       = &manway.Source{ID: "burnett-anchoring", Title: "Permit file, tank anchoring sheet", Body: "Burnett County, Wisconsin", Year: 2000}
	marylandLife  = &manway.Source{ID: "umd-septics", Title: "Financial Resources for Septic Systems", Body: "University of Maryland Extension", Year: 2022}
	fluids        = &manway.Source{ID: "orifice-forms", Title: "Orifice and parallel plates, the usual forms of fluid mechanics"}
	statics       = &manway.Source{ID: "statics", Title: "Geometry and statics"}
)

// Basis lists what the package rests on.
func Basis() []manway.Citation {
	return []manway.Citation{
		{Source: statics, Place: "levels, lengths, prismoids, hydrostatics"},
		{Source: texas285, Place: "285.38(c)-(d)"},
		{Source: texas285Old, Place: "285.38(d)-(e)"},
		{Source: wisconsin384, Place: "384.25(7)(h)"},
		{Source: minnesota7080, Place: "7080.2290 C"},
		{Source: carolina130A, Place: "(b)"},
		{Source: oregon340, Place: "0025(2)"},
		{Source: manway.OSHA1926, Place: "Subpart P, 1926.500(b), 1926.502(i)"},
		{Source: manway.OSHA1910, Place: "1910.146"},
		{Source: virginia811, Place: "56-265.17, 56-265.19"},
		{Source: aci224R, Place: "Table 4.1"},
		{Source: astmC990, Place: "scope; half-volume rule in submittals"},
		{Source: bagMix, Place: "0.0075 ft3/lb"},
		{Source: fm5434, Place: "Table 1-1"},
		{Source: storm2019, Place: "p. 55"},
		{Source: handTrench, Place: "hand trench to 1 m"},
		{Source: coverHours, Place: "remove frame and cover"},
		{Source: burnett, Place: "lift x 1.5"},
		{Source: marylandLife, Place: "tank life"},
		{Source: fluids, Place: "orifice; parallel plates"},
		manway.Citation{Source: manway.Practice, Place: "limits and hours marked so"},
	}
}
