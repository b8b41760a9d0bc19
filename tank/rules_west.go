package tank

import "time"

func washington() RuleSet {
	size := asRead(washington272A, "246-272A-0232 Table VII").from(2007, time.July, 1)
	p := asRead(washington272C, "246-272C-0220").from(2009, time.December, 19)
	return RuleSet{
		ID: "us-wa", Name: "Washington",
		Capacity: []CapacityRule{
			{Provenance: size, Bedrooms: steps(3, 900, 4, 1000), EachMore: 250 * gallon},
			{Provenance: size.at("246-272A-0232(2)(c)"), Flow: []FlowStep{{Days: 3}}, Note: "nonresidential"},
		},
		Limits: []LimitRule{
			between(p.at("246-272C-0220(1)"), FirstShare, 0.5, 2.0/3).when(Scope{Compartments: 2}),
			atLeast(p.at("246-272C-0220(2)(a)"), InletBelow, 8*inch),
			atLeast(p.at("246-272C-0220(2)(c)"), InvertDrop, 2*inch),
			between(p.at("246-272C-0220(3)"), OutletShare, 0.30, 0.40).when(Scope{Form: PlumbWalls}),
			between(p.at("246-272C-0220(3)"), OutletShare, 0.25, 0.35).when(Scope{Form: LyingCylinder}),
		},
	}
}

func idaho() RuleSet {
	p := asRead(idaho5801, "58.01.03.007").from(2022, time.March, 31)
	return RuleSet{ID: "us-id", Name: "Idaho", Capacity: []CapacityRule{
		{Provenance: p, Bedrooms: steps(2, 900, 4, 1000), EachMore: 250 * gallon},
	}}
}

func oregon() RuleSet {
	p := asRead(oregon073, "340-073-0025(1)")
	return RuleSet{ID: "us-or", Name: "Oregon", Limits: []LimitRule{
		atLeast(p.at("340-073-0025(1)(b)"), FirstShare, 2.0/3).when(Scope{Compartments: 2}),
		atLeast(p.at("340-073-0025(1)(c)"), LiquidDepth, 30*inch),
		atLeast(p.at("340-073-0025(2)"), AccessSize, 18*inch),
	}}
}

func arizona() RuleSet {
	p := asRead(arizonaA314, "R18-9-A314(1)").from(2005, time.November, 12)
	return RuleSet{ID: "us-az", Name: "Arizona", Limits: []LimitRule{
		between(p.at("R18-9-A314(1)(c)(i)"), FirstShare, 0.67, 0.75).when(Scope{Compartments: 2}),
		atLeast(p.at("R18-9-A314(1)(c)(iii)"), LiquidDepth, 42*inch),
		between(p.at("R18-9-A314(1)(c)(iv)"), LengthToWidth, 2.0, 3.0).when(Scope{Form: PlumbWalls, From: 1001 * gallon}),
		atLeast(p.at("R18-9-A314(1)(d)"), AccessSize, 20*inch),
		atMost(p.at("R18-9-A314(1)(d)(iii)"), AccessBelowGrade, 6*inch),
	}}
}

func texas() RuleSet {
	p := asRead(texas285, "285.38").from(2023, time.September, 1)
	return RuleSet{ID: "us-tx", Name: "Texas", Limits: []LimitRule{
		atLeast(p.at("285.38(b)"), AccessSize, 12*inch),
		atLeast(p.at("285.38(c): permitted on or after 2023-09-01"), AccessAboveGrade, 2*inch),
		needed(p.at("285.38(c): permitted on or after 2023-09-01"), SecondaryGuard),
		atLeast(remembered(texas285, "285.38(d)(3)"), CoverSecured, 65*pound),
	}}
}

func ipsdc() RuleSet {
	p := asRead(ipsdc2012, "section 802")
	return RuleSet{
		ID: "ipsdc-2012", Name: "International Private Sewage Disposal Code 2012",
		Capacity: []CapacityRule{{
			Provenance: remembered(ipsdc2012, "Table 802.7.1"), Bedrooms: steps(2, 750, 3, 1000, 4, 1200, 5, 1425, 6, 1650, 7, 1875, 8, 2100),
		}},
		Limits: []LimitRule{
			atLeast(p, FirstShare, 2.0/3).when(Scope{Compartments: 2}),
			atLeast(p, FirstCapacity, 500*gallon).when(Scope{Compartments: 2}),
			between(p, LiquidDepth, 30*inch, 6*foot),
			atLeast(p, AirSpace, 8*inch),
			atLeast(p, InsideDiameter, 48*inch).when(Scope{Form: UprightRound}),
		},
	}
}

func upc() RuleSet {
	return RuleSet{ID: "upc", Name: "Uniform Plumbing Code", Capacity: []CapacityRule{{
		Provenance: quoted(upcH, "Table H 201.1(1)"), Bedrooms: steps(2, 750, 3, 1000, 4, 1200, 6, 1500),
	}}}
}

func usphs() RuleSet {
	p := remembered(phs526, "table of liquid capacity").superseded("EPA Onsite Wastewater Treatment Systems Manual, 2002")
	return RuleSet{ID: "usphs-1967", Name: "US Public Health Service 1967", Capacity: []CapacityRule{{
		Provenance: p, Bedrooms: steps(2, 750, 3, 900, 4, 1000), EachMore: 250 * gallon,
	}}}
}
