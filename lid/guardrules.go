package lid

import "manway.example/manway"

// Texts of law and advice on the guarding of openings.
var (
	texas        = &manway.Source{ID: "tx-30-285-38", Title: "30 TAC 285.38, Prevention of unauthorized access to on-site sewage facilities", Body: "Texas Commission on Environmental Quality", Year: 2023}
	texas2012    = &manway.Source{ID: "tx-30-tac-285-2012", Title: "30 TAC 285.38 (text of 2012)", Body: "State of Texas", Year: 2012}
	wisconsin    = &manway.Source{ID: "wi-sps-384-25", Title: "SPS 384.25, POWTS treatment and holding components (copy)", Body: "Wisconsin Department of Safety and Professional Services", Year: 2024}
	indiana      = &manway.Source{ID: "in-16-41-25-3", Title: "Indiana Code 16-41-25-3, Residential onsite sewage systems installed after July 1, 1996", Body: "Indiana General Assembly", Year: 2022}
	minnesota    = &manway.Source{ID: "minn-r-7080", Title: "Minnesota Rules, chapter 7080, Individual Subsurface Sewage Treatment Systems", Body: "Minnesota Pollution Control Agency", Year: 2008}
	northDakota  = &manway.Source{ID: "nd-lid-safety", Title: "Lid safety, advice", Body: "North Dakota Environmental Health Association", Year: 2018}
	elDorado     = &manway.Source{ID: "ca-el-dorado", Title: "Septic components", Body: "El Dorado County, California", Year: 2020}
	islandCounty = &manway.Source{ID: "wa-island-county", Title: "Septic maintenance", Body: "Island County, Washington", Year: 2020}
	england      = &manway.Source{ID: "uk-ad-h", Title: "Approved Document H, Drainage and waste disposal", Body: "UK Government", Year: 2002}
	treatment    = &manway.Source{ID: "nsf-40", Title: "NSF/ANSI 40 Residential Wastewater Treatment Systems", Body: "NSF International", Year: 2018}
)

// guardRules stands in alphabetical order of the code.
var guardRules = [...]GuardRule{
	{Code: "ca-el-dorado", Wants: "locked where the lid is at grade", AnyOf: ByLock,
		Source: manway.Citation{Source: elDorado, Place: "septic components page"}},
	{Code: "in-16-41-25-3", Wants: "riser over 6 in at ground level, installed after 1 July 1996: fastened, and a cap or plug below",
		OpeningOver: 6 * manway.Inch, AnyOf: ByFastener | ByLock, Secondary: true,
		Source: manway.Citation{Source: indiana, Place: "IC 16-41-25-3"}},
	{Code: "mn-7080.1970", Wants: "locked, bolted, screwed, or at least 95 lb and not to be slid or flipped; warning label",
		Binding: Remembered, AnyDepth: true, AnyOf: ByLock | ByFastener | ByWeight, Weight: 95 * manway.Pound, Label: true,
		Source: manway.Citation{Source: minnesota, Place: "7080.1970 item C"}},
	{Code: "mn-7080.2290", Wants: "holding tank: secured where less than 6 in of soil covers it",
		DepthUnder: 6 * manway.Inch, AnyOf: ByLock | ByFastener,
		Source: manway.Citation{Source: minnesota, Place: "7080.2290 item C"}},
	{Code: "nd-advice", Wants: "at least 95 lb, bolts, screws or a lock; a second guard suggested",
		Binding: Advice, AnyDepth: true, AnyOf: ByLock | ByFastener | ByWeight, Weight: 95 * manway.Pound, Secondary: true,
		Source: manway.Citation{Source: northDakota, Place: "lid safety"}},
	{Code: "nsf-40", Wants: "treatment unit: padlock, cover removed with a tool, or at least 65 lb",
		Binding: Remembered, AnyDepth: true, AnyOf: ByLock | ByFastener | ByWeight, Weight: 65 * manway.Pound,
		Source: manway.Citation{Source: treatment, Place: "access protection"}},
	{Code: "osha-1926.502", Wants: "during construction work: cover secured against displacement, and marked",
		OpeningOver: 1.999 * manway.Inch, AnyDepth: true, AnyOf: ByLock | ByFastener, Label: true,
		Source: manway.Citation{Source: manway.OSHA1926, Place: "1926.500(b), 1926.502(i)(3)-(4)"}},
	{Code: "tx-285.38", Wants: "permits from 1 September 2023: a plug, cap or restraint below the riser's cap",
		AnyDepth: true, Secondary: true,
		Source: manway.Citation{Source: texas, Place: "285.38(c)"}},
	{Code: "tx-285.38-2012", Wants: "padlock, cover removed with a tool, or at least 65 lb",
		Binding: Repealed, AnyDepth: true, AnyOf: ByLock | ByFastener | ByWeight, Weight: 65 * manway.Pound,
		Source: manway.Citation{Source: texas2012, Place: "285.38(e)(3)"}},
	{Code: "uk-ad-h", Wants: "access cover lockable or made so that nobody gets in",
		AnyDepth: true, AnyOf: ByLock | ByFastener,
		Source: manway.Citation{Source: england, Place: "septic tanks, access covers"}},
	{Code: "wa-island-county", Wants: "secured or lockable",
		AnyDepth: true, AnyOf: ByLock | ByFastener,
		Source: manway.Citation{Source: islandCounty, Place: "maintenance page"}},
	{Code: "wi-384.25-label", Wants: "warning label on the cover of an opening over 8 in",
		OpeningOver: 8 * manway.Inch, AnyDepth: true, Label: true,
		Source: manway.Citation{Source: wisconsin, Place: "SPS 384.25(8)"}},
	{Code: "wi-384.25-lock", Wants: "opening over 8 in at or above ground: locking device or equal",
		OpeningOver: 8 * manway.Inch, AnyOf: ByLock | ByFastener,
		Source: manway.Citation{Source: wisconsin, Place: "SPS 384.25(7)(h)"}},
}

// GuardRules is the list of rules that are known here, each with its source.
// They are examples of what authorities ask for; the one that governs is the
// local one.
func GuardRules() []GuardRule {
	list := guardRules
	return list[:]
}

// GuardRuleOf is the rule of a code, false where there is none.
func GuardRuleOf(code string) (GuardRule, bool) {
	for _, r := range guardRules {
		if r.Code == code {
			return r, true
		}
	}
	return GuardRule{}, false
}
