package tank

import "time"

func iowa() RuleSet {
	p := asRead(iowa69, "69.8(2)")
	return RuleSet{ID: "us-ia", Name: "Iowa", Capacity: []CapacityRule{{
		Provenance: p.at("69.8(2)a, b"), Bedrooms: steps(3, 1250, 4, 1500, 5, 1750, 6, 2000),
		Flow: []FlowStep{{Days: 2}},
	}}}
}

func ohio() RuleSet {
	old := asRead(ohio2007, "3701-29-07").from(2007, time.July, 30).superseded("OAC 3701-29-12, effective 2015-01-01")
	now := quoted(ohio2015, "3701-29-12").from(2015, time.January, 1)
	return RuleSet{
		ID: "us-oh", Name: "Ohio",
		Capacity: []CapacityRule{
			{Provenance: now, Bedrooms: steps(2, 1000, 3, 1500, 5, 2000, 6, 2500), EachMore: 250 * gallon},
			{Provenance: old.at("3701-29-07(A)"), Bedrooms: steps(2, 1000, 3, 1500, 5, 2000, 100, 2500)},
		},
		Limits: []LimitRule{
			between(now, FirstShare, 0.5, 2.0/3).when(Scope{Compartments: 2}),
			atLeast(old.at("3701-29-07(C)"), InvertDrop, 2*inch),
			atLeast(old.at("3701-29-07(D)"), InletBelow, 6*inch),
			atLeast(old.at("3701-29-07(E)"), OutletAbove, 6*inch),
			atLeast(old.at("3701-29-07(E)"), OutletBelow, 18*inch),
			atLeast(old.at("3701-29-07(F)"), LiquidDepth, 4*foot),
			atLeast(old.at("3701-29-07(G)"), AirSpace, 12*inch),
			atLeast(old.at("3701-29-07(H)"), AccessSize, 10*inch),
			atMost(old.at("3701-29-07(H)"), AccessBelowGrade, 0*inch),
		},
	}
}

func minnesota() RuleSet {
	p := asRead(minnesota7080, "7080.2290").from(2008, time.February, 4)
	return RuleSet{
		ID: "us-mn", Name: "Minnesota",
		Capacity: []CapacityRule{{
			Provenance: p, Bedrooms: steps(2, 1000, 3, 1200), EachMore: 400 * gallon, Note: "a holding tank",
		}},
		Limits: []LimitRule{
			atLeast(p, AccessSize, 20*inch),
			between(p, AccessBelowGrade, 6*inch, 12*inch),
			atLeast(remembered(minnesota7080, "7080.1970 C"), CoverSecured, 95*pound),
		},
	}
}

func carver() RuleSet {
	return RuleSet{ID: "us-mn-carver", Name: "Carver County, Minnesota", Capacity: []CapacityRule{{
		Provenance: asRead(carver52, "52.021(D)"), Bedrooms: steps(2, 1500, 4, 2000, 6, 2250, 9, 3000),
		Note: "a disposal unit or a lift in the basement adds 50 %",
	}}}
}

func ramsey() RuleSet {
	p := asRead(ramsey1989, "sewage ordinance, table").superseded("Minnesota Rules 7080 of 2008 and later ordinances")
	return RuleSet{ID: "us-mn-ramsey-1989", Name: "Ramsey, Minnesota, text of 1989", Capacity: []CapacityRule{{
		Provenance: p, Bedrooms: steps(3, 1000, 4, 1250, 5, 1500), EachMore: 250 * gallon,
		Flow: []FlowStep{
			{UpTo: 1500 * perDay, Days: 1.5, Least: 1000 * gallon},
			{Base: 1125 * gallon, Days: 0.75},
		},
	}}}
}

func wyandotte() RuleSet {
	p := asRead(wyandotte30, "30-265")
	return RuleSet{
		ID: "us-ks-wyandotte", Name: "Wyandotte County, Kansas",
		// 2.5 days of 150 gal/d a bedroom, at least 1,000 gal.
		Capacity: []CapacityRule{{Provenance: p.at("30-265(2)"), Bedrooms: steps(2, 1000, 3, 1125), EachMore: 375 * gallon}},
		Limits: []LimitRule{
			between(p.at("30-265(3)"), LiquidDepth, 3*foot, 6.5*foot),
			atLeast(p.at("30-265(4)"), InvertDrop, 3*inch),
			atLeast(p.at("30-265(5)"), OutletAbove, 8*inch),
			atLeast(p.at("30-265(5)"), OutletBelow, 18*inch),
			atLeast(p.at("30-265(6)"), AirSpace, 10*inch),
			atLeast(p.at("30-265(7)"), AccessSize, 20*inch),
			atLeast(p.at("30-265(7)"), CoverSecured, 65*pound),
		},
	}
}

func wisconsin() RuleSet {
	return RuleSet{ID: "us-wi", Name: "Wisconsin", Limits: []LimitRule{
		needed(asRead(wisconsin384, "SPS 384.25(7)(h): cover at or above grade, opening over 8 in"), CoverFastened),
	}}
}

func indiana() RuleSet {
	p := asRead(indiana16, "16-41-25-3").from(1996, time.June, 30)
	return RuleSet{ID: "us-in", Name: "Indiana", Limits: []LimitRule{
		needed(p, CoverFastened),
		needed(p, SecondaryGuard),
	}}
}

func cassCounty() RuleSet {
	p := asRead(cass14, "p. 22, item 14")
	return RuleSet{ID: "us-nd-cass", Name: "Cass County, North Dakota", Limits: []LimitRule{
		between(p, FirstShare, 0.5, 2.0/3).when(Scope{Compartments: 2}),
		atLeast(p.at("p. 22, item 14 f"), AccessSize, 18*inch),
	}}
}
