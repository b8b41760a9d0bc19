package hydraulics

import "manway.example/manway"

// Basis lists where the functions that give a bare quantity come from; every
// result lists its own.
func Basis() []manway.Citation {
	return []manway.Citation{
		{Source: iso2533, Place: "sections 2.3 and 2.7, pressure of the air"},
		{Source: epanet22, Place: "Table 3.1, Hazen and Williams"},
		{Source: francis1883, Place: "weir with end contractions"},
		{Source: mancl1984, Place: "household table"},
		{Source: usaceWetWell, Place: "chapter 7, wet wells"},
		{Source: manway.Practice, Place: "orifice, notch, draining, vacuum, truck gauge and loads, dates"},
	}
}

// Sources that only this package cites.
var (
	// mancl1984 is the household table of years between pump-outs.
	mancl1984 = &manway.Source{ID: "mancl-1984", Title: "Estimating septic tank pumping frequency, Journal of Environmental Engineering 110(1)", Body: "Mancl, ASCE", Year: 1984}
	// epaSepticSmart is the guidance of the US EPA on when to pump.
	epaSepticSmart = &manway.Source{ID: "epa-septicsmart", Title: "SepticSmart: How to care for your septic system", Body: "US Environmental Protection Agency"}
	// nebraska124 is Nebraska's rule on when a tank must be pumped.
	nebraska124 = &manway.Source{ID: "ne-title-124", Title: "Title 124 and fact sheet 12-041, Septic tank maintenance", Body: "Nebraska Department of Environmental Quality", Year: 2016}
	// mn7080 is the operating practice taught under Minnesota's rules.
	mn7080 = &manway.Source{ID: "mn-onsite", Title: "Onsite Sewage Treatment Program, manual for septic system professionals", Body: "University of Minnesota"}
	// nhEnvWq1023 is New Hampshire's rule.
	nhEnvWq1023 = &manway.Source{ID: "nh-env-wq-1023", Title: "Env-Wq 1023.01, Septic tank pumping", Body: "New Hampshire Department of Environmental Services"}
	// elDorado is a county rule of California.
	elDorado = &manway.Source{ID: "ca-el-dorado", Title: "Septic components", Body: "El Dorado County, California", Year: 2020}
	// northStPaul is a city code of Minnesota.
	northStPaul = &manway.Source{ID: "north-st-paul-code", Title: "City code, individual sewage treatment systems", Body: "City of North St Paul, Minnesota"}
	// epaIreland is the Irish code of practice for houses.
	epaIreland = &manway.Source{ID: "epa-ireland-cop", Title: "Code of Practice: Domestic Waste Water Treatment Systems", Body: "Environmental Protection Agency, Ireland", Year: 2021}
	// iso2533 is the standard atmosphere.
	iso2533 = &manway.Source{ID: "iso-2533", Title: "ISO 2533 Standard Atmosphere", Body: "International Organization for Standardization", Year: 1975}
	// buck1981 is the equation for the vapour pressure of water.
	buck1981 = &manway.Source{ID: "buck-1981", Title: "New equations for computing vapor pressure and enhancement factor, Journal of Applied Meteorology 20", Body: "Buck, American Meteorological Society", Year: 1981}
	// kell1975 is the equation for the density of water.
	kell1975 = &manway.Source{ID: "kell-1975", Title: "Density, thermal expansivity and compressibility of liquid water, Journal of Chemical and Engineering Data 20(1)", Body: "Kell, American Chemical Society", Year: 1975}
	// kestin1978 is the equation for the viscosity of water.
	kestin1978 = &manway.Source{ID: "kestin-1978", Title: "Viscosity of liquid water in the range -8 C to 150 C, Journal of Physical and Chemical Reference Data 7(3)", Body: "Kestin, Sokolov and Wakeham, NIST", Year: 1978}
	// colebrook1939 is the friction law of commercial pipe.
	colebrook1939 = &manway.Source{ID: "colebrook-1939", Title: "Turbulent flow in pipes, Journal of the Institution of Civil Engineers 11", Body: "Colebrook, Institution of Civil Engineers", Year: 1939}
	// epanet22 is a manual with friction formulas and coefficients.
	epanet22 = &manway.Source{ID: "epanet-2.2", Title: "EPANET 2.2 User Manual, EPA/600/R-20/133", Body: "US Environmental Protection Agency", Year: 2020}
	// fhwa1979 is where design values of Manning's n stand.
	fhwa1979 = &manway.Source{ID: "fhwa-1979", Title: "Design of Urban Highway Drainage, FHWA-TS-79-225", Body: "Federal Highway Administration", Year: 1979}
	// maurer2023 is an open text with the equations of part-full pipes.
	maurer2023 = &manway.Source{ID: "maurer-hydraulics", Title: "Hydraulics and Water Resources: Examples Using R", Body: "Maurer", Year: 2023}
	// ipc2018 is a US plumbing code.
	ipc2018 = &manway.Source{ID: "ipc-2018", Title: "International Plumbing Code", Body: "International Code Council", Year: 2018}
	// aspe2 gives the self-cleansing velocity of drains.
	aspe2 = &manway.Source{ID: "aspe-databook-2", Title: "Plumbing Engineering Design Handbook, volume 2", Body: "American Society of Plumbing Engineers", Year: 2010}
	// francis1883 is the weir formula.
	francis1883 = &manway.Source{ID: "francis-1883", Title: "Lowell Hydraulic Experiments", Body: "Francis", Year: 1883}
	// epa1980 is the design manual for onsite systems.
	epa1980 = &manway.Source{ID: "epa-1980-design-manual", Title: "Design Manual: Onsite Wastewater Treatment and Disposal Systems, EPA 625/1-80-012", Body: "US Environmental Protection Agency", Year: 1980}
	// nawt is a code of practice for pumping.
	nawt = &manway.Source{ID: "nawt-pumping", Title: "Code of practice for pumping septic tanks", Body: "National Association of Wastewater Technicians"}
	// usaceWetWell is the instruction on wet wells.
	usaceWetWell = &manway.Source{ID: "usace-ei-11c201", Title: "EI 11C201 Wastewater collection and pumping", Body: "US Army Corps of Engineers", Year: 1997}
	// epa832F00079 is the fact sheet on septic tanks.
	epa832F00079 = &manway.Source{ID: "epa-832-f-00-079", Title: "Decentralized systems technology fact sheet: septic system tank, EPA 832-F-00-079", Body: "US Environmental Protection Agency", Year: 2000}
	// bcManual is British Columbia's manual of practice.
	bcManual = &manway.Source{ID: "bc-spm", Title: "Sewerage System Standard Practice Manual, version 3", Body: "British Columbia Ministry of Health", Year: 2014}
	// en12566 is the European standard for prefabricated septic tanks.
	en12566 = &manway.Source{ID: "en-12566-1", Title: "EN 12566-1 Small wastewater treatment systems, prefabricated septic tanks", Body: "European Committee for Standardization", Year: 2016}
	// gray1995 measured sludge in Irish tanks.
	gray1995 = &manway.Source{ID: "gray-1995", Title: "The influence of sludge accumulation rate on septic tank design, Environmental Technology 16(8)", Body: "Gray", Year: 1995}
	// stillFoxon2012 gives how fast pit latrines fill in South Africa.
	stillFoxon2012 = &manway.Source{ID: "still-foxon-2012", Title: "Tackling the challenges of full pit latrines, volume 2: How fast do pit toilets fill up?, WRC report 1745/2/12", Body: "Still and Foxon, Water Research Commission, South Africa", Year: 2012}
	// gill2022 measured sludge in Irish tanks.
	gill2022 = &manway.Source{ID: "gill-2022", Title: "Sludge accumulation in domestic septic tanks in Ireland", Body: "Gill and others", Year: 2022}
	// philip1993 measured sludge in 33 systems.
	philip1993 = &manway.Source{ID: "philip-1993", Title: "Septic tank sludges: accumulation rate and biochemical characteristics, Water Science and Technology 28(10)", Body: "Philip and others, IAWQ", Year: 1993}
	// cooperRezek1977 is a US review of septage.
	cooperRezek1977 = &manway.Source{ID: "cooper-rezek-1977", Title: "Septage management in the United States", Body: "Cooper and Rezek, US Environmental Protection Agency", Year: 1977}
	// asnzs1547 is the Australian and New Zealand standard.
	asnzs1547 = &manway.Source{ID: "as-nzs-1547", Title: "AS/NZS 1547 On-site domestic wastewater management", Body: "Standards Australia, Standards New Zealand", Year: 2012}
	// who1992 is the guide to on-site sanitation.
	who1992 = &manway.Source{ID: "who-1992", Title: "A guide to the development of on-site sanitation", Body: "Franceys, Pickford and Reed, World Health Organization", Year: 1992}
	// nbr7229 is the Brazilian standard.
	nbr7229 = &manway.Source{ID: "nbr-7229-1993", Title: "NBR 7229 Projeto, construção e operação de sistemas de tanques sépticos", Body: "ABNT", Year: 1993}
	// is020 is the Peruvian standard.
	is020 = &manway.Source{ID: "is-020", Title: "IS.020 Tanques sépticos", Body: "Ministerio de Vivienda, Construcción y Saneamiento, Perú", Year: 2006}
	// bounds1997 is a US regression.
	bounds1997 = &manway.Source{ID: "bounds-1997", Title: "Design and performance of septic tanks", Body: "Bounds, ASTM", Year: 1997}
	// cfr503 is the federal rule on spreading septage on land.
	cfr503 = &manway.Source{ID: "cfr-40-503", Title: "40 CFR Part 503, Standards for the Use or Disposal of Sewage Sludge", Body: "US Environmental Protection Agency", Year: 1993}
	// wac173308 is Washington's rule, which has the federal equation.
	wac173308 = &manway.Source{ID: "wa-wac-173-308", Title: "WAC 173-308-270, Septage applied to the land", Body: "Washington State Department of Ecology", Year: 2007}
	// nr113 is Wisconsin's rule, which has the federal waits.
	nr113 = &manway.Source{ID: "wi-nr-113", Title: "NR 113, Servicing septic or holding tanks", Body: "Wisconsin Department of Natural Resources", Year: 2024}
)
