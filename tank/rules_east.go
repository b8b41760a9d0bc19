package tank

import (
	"time"

	"manway.example/manway"
)

func virginia() RuleSet {
	p := asRead(virginia610, "12VAC5-610-815").from(2000, time.July, 1)
	drop := between(p.at("12VAC5-610-815 C"), InvertDrop, 1*inch, 2*inch)
	drop.Strict = true
	return RuleSet{
		ID: "us-va", Name: "Virginia",
		Capacity: []CapacityRule{{
			Provenance: p.at("12VAC5-610-815 A, Table 5.2"), Bedrooms: steps(1, 750, 2, 750, 3, 900, 4, 1200, 5, 1500),
			Flow: []FlowStep{{Days: 2, Least: 750 * gallon}},
		}},
		Limits: []LimitRule{
			between(p.at("12VAC5-610-815 B"), LiquidDepth, 4*foot, 8*foot),
			atLeast(p.at("12VAC5-610-815 B"), AirSpace, 1*foot),
			drop,
			between(p.at("12VAC5-610-815 C"), InletBelow, 6*inch, 8*inch),
			between(p.at("12VAC5-610-815 C"), InletAbove, 8*inch, 10*inch),
			between(p.at("12VAC5-610-815 C"), OutletShare, 0.35, 0.40),
			between(p.at("12VAC5-610-815 C"), OutletAbove, 8*inch, 10*inch),
		},
	}
}

func loudounCounty() RuleSet {
	p := asRead(loudoun, "septic tanks (a), (e)")
	return RuleSet{ID: "us-va-loudoun", Name: "Loudoun County, Virginia", Limits: []LimitRule{
		atMost(p.at("septic tanks (a)"), SoilCover, 48*inch),
		atMost(p.at("septic tanks (e)"), AccessBelowGrade, 6*inch),
	}}
}

func northCarolina() RuleSet {
	p := asRead(carolina18E, ".0801").from(2024, time.January, 1)
	old := asRead(carolina18A, ".1954(a)").superseded("15A NCAC 18E, effective 2024-01-01")
	return RuleSet{
		ID: "us-nc", Name: "North Carolina",
		Capacity: []CapacityRule{{
			Provenance: p.at(".0801 Tables XIV, XV"), Bedrooms: steps(4, 1000, 5, 1250),
			Flow: []FlowStep{
				{UpTo: 600 * perDay, Days: 2},
				{UpTo: 1500 * perDay, Before: true, Days: 1.17, Base: 500 * gallon},
				{UpTo: 4500 * perDay, Days: 0.75, Base: 1125 * gallon},
				{Days: 1},
			},
		}},
		Limits: []LimitRule{
			atLeast(p.at(".1403(b)(1)"), WallThickness, 2.5*inch),
			atLeast(p.at(".1403(b)(1)"), RoofThickness, 3*inch),
			atLeast(old.at(".1954(a)(1)"), LiquidDepth, 36*inch),
			atLeast(old.at(".1954(a)(2)"), AirSpace, 9*inch),
			atLeast(old.at(".1954(a)(3)"), LengthToWidth, 2.0).when(Scope{Form: PlumbWalls}),
			atLeast(old.at(".1954(a)(6)"), InvertDrop, 2*inch),
			between(old.at(".1954(a)(6)"), OutletShare, 0.25, 0.40),
		},
	}
}

func northCarolinaStatute() RuleSet {
	p := asRead(carolina130A, "130A-335.1(b)(4), (5)")
	return RuleSet{ID: "us-nc-statute", Name: "North Carolina, statute", Limits: []LimitRule{
		atMost(p, AccessBelowGrade, 6*inch),
	}}
}

func pennsylvania() RuleSet {
	p := asRead(pennsylvania73, "73.31").from(1997, time.November, 8)
	return RuleSet{
		ID: "us-pa", Name: "Pennsylvania",
		Capacity: []CapacityRule{{
			// 400 gal/d up to 3 bedrooms and 100 more for each, by the table of flows.
			Provenance: p.at("73.31(a)(1)-(3)"), Bedrooms: steps(3, 900, 4, 1250), EachMore: 150 * gallon,
			Flow: []FlowStep{
				{UpTo: 500 * perDay, Base: 900 * gallon, Above: 400 * perDay, Days: 3.5, Least: 900 * gallon},
				{UpTo: 5000 * perDay, Base: 1250 * gallon, Above: 500 * perDay, Days: 1.5},
				{UpTo: 7500 * perDay, Base: 8000 * gallon, Above: 5000 * perDay, Days: 1.45},
				{UpTo: 10000 * perDay, Base: 11625 * gallon, Above: 7500 * perDay, Days: 1.35},
				{Days: 1.5},
			},
		}},
		Limits: []LimitRule{
			atLeast(p.at("73.31(b)(1)(i)"), WallThickness, 2.5*inch),
			atLeast(p.at("73.31(b)(1)(ii)"), RoofThickness, 3*inch),
		},
	}
}

func massachusetts() RuleSet {
	return RuleSet{ID: "us-ma", Name: "Massachusetts", Capacity: []CapacityRule{{
		Provenance: quoted(massachusetts15, "15.223"), Flow: []FlowStep{{Days: 2, Least: 1500 * gallon}},
	}}}
}

func hamden() RuleSet {
	p := asRead(hamden50, "chapter 50 (A)")
	return RuleSet{
		ID: "us-ct-hamden", Name: "Hamden, Connecticut",
		Capacity: []CapacityRule{{Provenance: p.at("chapter 50"), Bedrooms: steps(2, 750, 3, 900, 4, 1200), EachMore: 250 * gallon, Note: "a disposal unit adds 50 %"}},
		Limits: []LimitRule{
			atLeast(p, FirstShare, 2.0/3).when(Scope{Compartments: 2}),
			atLeast(p, LiquidDepth, 36*inch),
			atLeast(p, AirSpace, 8*inch),
			atLeast(p, InvertDrop, 3*inch),
			atLeast(p, OutletBelow, 18*inch),
			atMost(p, OutletShare, 0.5),
			atLeast(p, OutletAbove, 6*inch),
			atLeast(p, InletAbove, 6*inch),
		},
	}
}

func tennessee() RuleSet {
	p := asRead(tennessee48, "0400-48-01-.09").from(2013, time.September, 18)
	return RuleSet{
		ID: "us-tn", Name: "Tennessee",
		Capacity: []CapacityRule{{
			Provenance: p.at("0400-48-01-.08"), Bedrooms: steps(2, 750, 3, 900, 4, 1000), EachMore: 250 * gallon,
			Flow: []FlowStep{
				{UpTo: 500 * perDay, Least: 750 * gallon},
				{UpTo: 1500 * perDay, Days: 1.5},
				{Base: 1125 * gallon, Days: 0.75},
			},
		}},
		Limits: []LimitRule{
			between(p.at("0400-48-01-.09(1)"), FirstShare, 2.0/3, 3.0/4),
			between(p.at("0400-48-01-.09(2)(a)"), LiquidDepth, 30*inch, 60*inch).when(Scope{Below: 3000 * gallon}),
			atMost(p.at("0400-48-01-.09(2)(a)"), LiquidDepth, 78*inch).when(Scope{From: 3000 * gallon}),
			atLeast(p.at("0400-48-01-.09(2)(b)"), WallThickness, 2.5*inch),
		},
	}
}

func connecticut() RuleSet {
	now := quoted(connecticutStd, "septic tank capacity").from(2018, time.January, 1)
	old := quoted(connecticutStd, "septic tank capacity, to 2017").superseded("the standards of 2018")
	return RuleSet{ID: "us-ct", Name: "Connecticut", Capacity: []CapacityRule{
		{Provenance: now, Bedrooms: steps(3, 1000, 5, 1250, 7, 1500), Note: "a grinder adds 250 gal"},
		{Provenance: old, Bedrooms: steps(3, 1000, 4, 1250, 5, 1500, 6, 2000)},
	}}
}

// england counts users, not bedrooms: 2,700 L for up to 4 of them and 180 L for
// each more; 150 L for each and 2,000 L by BS 6297:2007, never below 2,700 L;
// 180 L for each and 2,000 L by its edition of 1983.
func england() RuleSet {
	const users = "by users, not bedrooms: give the number of users"
	l := func(upTo int, litres float64) BedroomStep {
		return BedroomStep{upTo, manway.Volume(litres) * manway.Litre}
	}
	return RuleSet{ID: "uk-england", Name: "England", Capacity: []CapacityRule{
		{Provenance: quoted(approvedH, "H2"), Bedrooms: []BedroomStep{l(4, 2700)}, EachMore: 180 * manway.Litre, Note: users},
		{Provenance: quoted(bs6297new, "tank capacity"), Bedrooms: []BedroomStep{l(4, 2700), l(5, 2750)}, EachMore: 150 * manway.Litre, Note: users},
		{Provenance: quoted(bs6297old, "tank capacity").superseded("BS 6297:2007"), Bedrooms: []BedroomStep{l(1, 2180)}, EachMore: 180 * manway.Litre, Note: users},
	}}
}
