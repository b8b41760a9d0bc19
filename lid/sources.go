package lid

import "manway.example/manway"

// Sources that only this package cites.
var (
	// niosh94110 is the manual of the revised lifting equation.
	niosh94110 = &manway.Source{ID: "niosh-94-110", Title: "Applications Manual for the Revised NIOSH Lifting Equation, Pub. 94-110 (rev. 9/2021)", Body: "Waters, Putz-Anderson, Garg; National Institute for Occupational Safety and Health", Year: 1994}
	// hseTeam is the rule of two thirds and one half for lifting in a team.
	hseTeam = &manway.Source{ID: "hse-l23", Title: "Manual Handling Operations Regulations, guidance on regulations (L23)", Body: "Health and Safety Executive (UK)", Year: 2016}
	// milstd1472D is the US military rule for lifting in a team.
	milstd1472D = &manway.Source{ID: "mil-std-1472d", Title: "MIL-STD-1472D Human Engineering Design Criteria", Body: "US Department of Defense", Year: 1989}
	// pushPull is the guideline table of hand forces by hand height.
	pushPull = &manway.Source{ID: "bwc-osu-push-pull", Title: "Push-pull guidelines", Body: "Ohio Bureau of Workers' Compensation and Ohio State University", Year: 2018}
	// coverRemoval is the paper that measured the forces of cover tools.
	coverRemoval = &manway.Source{ID: "iea-2003-covers", Title: "Manhole cover removal by utility workers (XV Triennial Congress)", Body: "International Ergonomics Association", Year: 2003}
	// pciFriction is the handbook that gives concrete on concrete 0.8.
	pciFriction = &manway.Source{ID: "pci-handbook", Title: "PCI Design Handbook", Body: "Precast/Prestressed Concrete Institute", Year: 2010}
	// serway is the physics text with the lever and friction.
	serway = &manway.Source{ID: "serway-beichner", Title: "Physics for Scientists and Engineers, 5th ed.", Body: "Serway and Beichner", Year: 2000}
	// timoshenko is the book of plates.
	timoshenko = &manway.Source{ID: "timoshenko-plates", Title: "Theory of Plates and Shells, 2nd ed.", Body: "Stephen P. Timoshenko and Sergius Woinowsky-Krieger, McGraw-Hill", Year: 1959}
	// roark is the handbook of stress and strain.
	roark = &manway.Source{ID: "roark-formulas", Title: "Roark's Formulas for Stress and Strain", Body: "Warren C. Young, Richard G. Budynas and Ali M. Sadegh, McGraw-Hill", Year: 2012}
	// carver is the theorem of a rectangle inside a rectangle.
	carver = &manway.Source{ID: "carver-1957", Title: "Solution to problem E 1225, rectangles in rectangles, American Mathematical Monthly 64", Body: "Carver", Year: 1957}
	// iso9223 gives the first year of corrosion in air by category.
	iso9223 = &manway.Source{ID: "iso-9223", Title: "ISO 9223:2012 Corrosion of metals and alloys, Corrosivity of atmospheres, Classification, determination and estimation", Body: "International Organization for Standardization", Year: 2012}
	// iso9224 gives corrosion in air over the years.
	iso9224 = &manway.Source{ID: "iso-9224", Title: "ISO 9224:2012 Corrosion of metals and alloys, Corrosivity of atmospheres, Guiding values for the corrosivity categories", Body: "International Organization for Standardization", Year: 2012}
)

// Basis lists what the package rests on.
func Basis() []manway.Citation {
	list := []manway.Citation{
		{Source: niosh94110, Place: "pp. 7-29"},
		{Source: hseTeam, Place: "lowering, pushing and team lifting"},
		{Source: milstd1472D, Place: "two persons"},
		{Source: pushPull, Place: "hand forces by height"},
		{Source: coverRemoval, Place: "forces of cover tools"},
		{Source: serway, Place: "lever and friction"},
		{Source: pciFriction, Place: "concrete on concrete"},
		{Source: timoshenko, Place: "circular and rectangular plates"},
		{Source: roark, Place: "Tables 11.2 and 11.4"},
		{Source: carver, Place: "a rectangle through a rectangle"},
		{Source: manway.ACI318_19, Place: "14.5, 17.6, 21.2, 22.3, 22.5, 22.6"},
		{Source: manway.AASHTOLRFD, Place: "3.6.1.2, 3.6.2.2"},
		{Source: manway.OSHA1926, Place: "1926.500(b), 1926.502(i), 1926.704(c), (d)"},
		{Source: iso9223, Place: "Table 2"},
		{Source: iso9224, Place: "Tables 2 and 3"},
		{Source: pomeroy1974, Place: "loss of concrete by sulfide, remembered"},
		{Source: wellsMelchers2015, Place: "abstract"},
		{Source: almusallam2001, Place: "loss of area beyond which a bar is brittle"},
		{Source: manway.Practice, Place: "volumes, two measured thicknesses, turning in a recess"},
	}
	return append(list, GuardCheck{}.Basis()...)
}
