package tank

import "manway.example/manway"

// The texts of the rules. The year is that of the text; where the text does not
// tell, it is the year of the copy that was read, and the title says so.
var (
	virginia610     = &manway.Source{ID: "va-12vac5-610", Title: "12VAC5-610, Sewage Handling and Disposal Regulations", Body: "Virginia Department of Health", Year: 2000}
	loudoun         = &manway.Source{ID: "loudoun-code", Title: "Codified ordinances on septic tanks (copy)", Body: "Loudoun County, Virginia", Year: 2024}
	washington272A  = &manway.Source{ID: "wac-246-272a", Title: "WAC 246-272A, On-site sewage systems", Body: "Washington State Board of Health", Year: 2005}
	washington272C  = &manway.Source{ID: "wac-246-272c", Title: "WAC 246-272C, On-site sewage system tanks", Body: "Washington State Board of Health", Year: 2009}
	washington272B  = &manway.Source{ID: "wac-246-272b", Title: "WAC 246-272B, Large on-site sewage systems", Body: "Washington State Department of Health", Year: 2011}
	carolina18E     = &manway.Source{ID: "nc-15a-18e", Title: "15A NCAC 18E, Wastewater treatment and dispersal systems", Body: "North Carolina Commission for Public Health", Year: 2024}
	carolina18A     = &manway.Source{ID: "nc-15a-18a-1954", Title: "15A NCAC 18A .1954, Minimum standards for precast reinforced concrete tanks", Body: "North Carolina Commission for Public Health", Year: 1990}
	carolina130A    = &manway.Source{ID: "nc-gs-130a-335-1", Title: "General Statutes 130A-335.1, Effluent filters and access devices for certain septic tank systems", Body: "North Carolina General Assembly", Year: 2006}
	idaho5801       = &manway.Source{ID: "idapa-58-01-03", Title: "IDAPA 58.01.03, Individual/Subsurface Sewage Disposal Rules", Body: "Idaho Department of Environmental Quality", Year: 2022}
	iowa69          = &manway.Source{ID: "iowa-567-69", Title: "567 IAC 69, Private sewage disposal systems (copy)", Body: "Iowa Department of Natural Resources", Year: 2024}
	ohio2007        = &manway.Source{ID: "ohio-3701-29-07", Title: "OAC 3701-29-07, Septic tanks", Body: "Ohio Department of Health", Year: 2007}
	ohio2015        = &manway.Source{ID: "ohio-3701-29-12", Title: "OAC 3701-29-12, Tanks, pumps and controls, and building sewers", Body: "Ohio Department of Health", Year: 2015}
	pennsylvania73  = &manway.Source{ID: "pa-25-73-31", Title: "25 Pa. Code 73.31, Standards for septic tanks", Body: "Pennsylvania Environmental Quality Board", Year: 1997}
	massachusetts15 = &manway.Source{ID: "ma-310-cmr-15", Title: "310 CMR 15.223, Septic tanks (as restated by a town; copy)", Body: "Massachusetts Department of Environmental Protection", Year: 2024}
	hamden50        = &manway.Source{ID: "hamden-ch-50", Title: "Town code chapter 50, septic tanks (copy)", Body: "Town of Hamden, Connecticut", Year: 2024}
	minnesota7080   = &manway.Source{ID: "minn-r-7080", Title: "Minnesota Rules, chapter 7080, Individual Subsurface Sewage Treatment Systems", Body: "Minnesota Pollution Control Agency", Year: 2008}
	carver52        = &manway.Source{ID: "carver-52-021", Title: "County code 52.021, amendments to Minnesota Rules 7080 (copy)", Body: "Carver County, Minnesota", Year: 2024}
	ramsey1989      = &manway.Source{ID: "ramsey-1989", Title: "City ordinance on sewage systems, text of Minnesota Rules 7080", Body: "City of Ramsey, Minnesota", Year: 1989}
	wyandotte30     = &manway.Source{ID: "wyandotte-30-265", Title: "County code 30-265 (copy)", Body: "Unified Government of Wyandotte County, Kansas", Year: 2024}
	ipsdc2012       = &manway.Source{ID: "ipsdc-2012", Title: "International Private Sewage Disposal Code", Body: "International Code Council", Year: 2012}
	oregon073       = &manway.Source{ID: "oar-340-073", Title: "OAR 340-073-0025, Septic tanks (copy)", Body: "Oregon Department of Environmental Quality", Year: 2024}
	tennessee48     = &manway.Source{ID: "tn-0400-48-01", Title: "Rules 0400-48-01, Subsurface sewage disposal systems", Body: "Tennessee Department of Environment and Conservation", Year: 2013}
	arizonaA314     = &manway.Source{ID: "az-r18-9-a314", Title: "R18-9-A314, Septic tank design, manufacturing, and installation", Body: "Arizona Department of Environmental Quality", Year: 2005}
	texas285        = &manway.Source{ID: "tx-30-285-38", Title: "30 TAC 285.38, Prevention of unauthorized access to on-site sewage facilities", Body: "Texas Commission on Environmental Quality", Year: 2023}
	wisconsin384    = &manway.Source{ID: "wi-sps-384-25", Title: "SPS 384.25, POWTS treatment and holding components (copy)", Body: "Wisconsin Department of Safety and Professional Services", Year: 2024}
	indiana16       = &manway.Source{ID: "in-16-41-25-3", Title: "Indiana Code 16-41-25-3, Residential onsite sewage systems installed after July 1, 1996", Body: "Indiana General Assembly", Year: 2022}
	cass14          = &manway.Source{ID: "cass-county-onsite", Title: "On-site sewage treatment rules, item 14 (copy)", Body: "Cass County, North Dakota", Year: 2024}
	upcH            = &manway.Source{ID: "upc-h-201", Title: "Uniform Plumbing Code, Appendix H", Body: "International Association of Plumbing and Mechanical Officials", Year: 2012}
	phs526          = &manway.Source{ID: "usphs-526", Title: "Manual of Septic-Tank Practice, Publication 526", Body: "US Public Health Service", Year: 1967}
	approvedH       = &manway.Source{ID: "uk-approved-h2", Title: "Approved Document H, Drainage and waste disposal, H2 (as quoted)", Body: "HM Government, England", Year: 2015}
	astmC1227       = &manway.Source{ID: "astm-c1227", Title: "C1227 Standard Specification for Precast Concrete Septic Tanks", Body: "ASTM International", Year: 2013}
	connecticutStd  = &manway.Source{ID: "ct-technical-standards", Title: "Technical standards for subsurface sewage disposal systems (as quoted)", Body: "Connecticut Department of Public Health", Year: 2018}
	bs6297new       = &manway.Source{ID: "bs-6297-2007", Title: "BS 6297 Code of practice for the design and installation of drainage fields (as quoted)", Body: "British Standards Institution", Year: 2007}
	bs6297old       = &manway.Source{ID: "bs-6297-1983", Title: "BS 6297 Code of practice for design and installation of small sewage treatment works and cesspools (as quoted)", Body: "British Standards Institution", Year: 1983}
)
