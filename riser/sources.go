package riser

import "manway.example/manway"

// Sources used by this package alone.
var (
	texas285      = &manway.Source{ID: "tx-285", Title: "30 Texas Administrative Code Chapter 285, On-Site Sewage Facilities", Body: "State of Texas", Year: 2023}
	texas285Old   = &manway.Source{ID: "tx-285-2012", Title: "30 Texas Administrative Code Chapter 285, text of 2012", Body: "State of Texas", Year: 2012}
	wisconsin384  = &manway.Source{ID: "wi-sps-384", Title: "Wisconsin Administrative Code SPS 384", Body: "State of Wisconsin"}
	carolina130A  = &manway.Source{ID: "nc-130a-335", Title: "North Carolina General Statutes 130A-335.1", Body: "State of North Carolina"}
	indiana1641   = &manway.Source{ID: "in-16-41-25", Title: "Indiana Code 16-41-25", Body: "State of Indiana"}
	oregon340     = &manway.Source{ID: "or-340-073", Title: "Oregon Administrative Rules 340-073", Body: "State of Oregon"}
	minnesota7080 = &manway.Source{ID: "mn-7080", Title: "Minnesota Rules Chapter 7080", Body: "State of Minnesota"}
	aci224R       = &manway.Source{ID: "aci-224r", Title: "ACI 224R-01 Control of Cracking in Concrete Structures", Body: "American Concrete Institute", Year: 2001}
	astmC990      = &manway.Source{ID: "astm-c990", Title: "C990 Joints for Concrete Pipe, Manholes and Precast Box Sections Using Preformed Flexible Joint Sealants", Body: "ASTM International"}
	fm5434        = &manway.Source{ID: "fm-5-434", Title: "FM 5-434 Earthmoving Operations", Body: "US Army", Year: 2000}
	storm2019     = &manway.Source{ID: "storm-2019", Title: "Industrial Process Plant Construction Estimating and Man-Hour Analysis", Body: "Storm, Gulf Professional Publishing", Year: 2019}
	coverHours    = &manway.Source{ID: "manhours-manual", Title: "Manual of labour hours for site work (trade page)"}
	burnett       = &manway.Source{ID: "burnett-anchoring", Title: "Anchoring sheet for buried tanks, permit file", Body: "Burnett County, Wisconsin"}
	handTrench    = &manway.Source{ID: "hand-trench-hours", Title: "Table of hours for hand trenches by soil (trade page)"}
	marylandLife  = &manway.Source{ID: "umd-septics-2022", Title: "Financial Resources for Septic Systems", Body: "University of Maryland Extension", Year: 2022}
	hydraulicsHB  = &manway.Source{ID: "orifice-handbook", Title: "Discharge of a sharp-edged orifice and flow between parallel plates, the usual forms of fluid mechanics"}
	statics       = &manway.Source{ID: "statics", Title: "Geometry and statics"}
)
