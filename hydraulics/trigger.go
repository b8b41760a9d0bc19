package hydraulics

import "manway.example/manway"

// Rule is a published rule that says when solids must be pumped. A clearance
// of 0 means that the rule does not speak of it.
type Rule struct {
	Name           string
	SludgeToOutlet manway.Length // least from the top of sludge up to the bottom of the outlet device
	ScumToOutlet   manway.Length // least from the bottom of scum down to the bottom of the outlet device
	ScumToTop      manway.Length // least from the top of scum up to the top of the outlet device
	Share          float64       // greatest share of sludge and scum together
	OfVolume       bool          // the share is of liquid volume, else of liquid depth
	AtShare        bool          // reaching the share is enough, else it must be passed
	Source         manway.Citation
}

// The rules, by the body that made them. They differ: scum within 3 in or
// within 6 in of the outlet, a quarter, 30 % or a third of depth or volume.
var (
	RuleEPA         = Rule{Name: "US EPA", SludgeToOutlet: 12 * manway.Inch, ScumToOutlet: 6 * manway.Inch, Share: 0.25, Source: manway.Citation{Source: epaSepticSmart, Place: "inspect and pump frequently"}}
	RuleNebraska    = Rule{Name: "Nebraska", SludgeToOutlet: 12 * manway.Inch, ScumToOutlet: 3 * manway.Inch, ScumToTop: 1 * manway.Inch, Source: manway.Citation{Source: nebraska124, Place: "fact sheet 12-041"}}
	RuleElDorado    = Rule{Name: "El Dorado County", SludgeToOutlet: 12 * manway.Inch, ScumToOutlet: 3 * manway.Inch, Source: manway.Citation{Source: elDorado, Place: "septic tank maintenance"}}
	RuleNorthStPaul = Rule{Name: "North St Paul", SludgeToOutlet: 12 * manway.Inch, ScumToOutlet: 3 * manway.Inch, Source: manway.Citation{Source: northStPaul, Place: "maintenance of septic tanks"}}
	RuleMinnesota   = Rule{Name: "Minnesota practice", Share: 0.25, OfVolume: true, Source: manway.Citation{Source: mn7080, Place: "operation and maintenance"}}
	RuleNewHamp     = Rule{Name: "New Hampshire", Share: 1. / 3, AtShare: true, Source: manway.Citation{Source: nhEnvWq1023, Place: "1023.01"}}
	RuleIreland     = Rule{Name: "EPA Ireland", Share: 0.30, OfVolume: true, Source: manway.Citation{Source: epaIreland, Place: "desludging"}}
)

// Rules lists every rule.
func Rules() []Rule {
	return []Rule{RuleEPA, RuleNebraska, RuleElDorado, RuleNorthStPaul, RuleMinnesota, RuleNewHamp, RuleIreland}
}

// Validate returns the faults of r; the rules of this package have none.
func (r Rule) Validate() error {
	var faults manway.InputErrors
	if r.Name == "" {
		faults.Add("Name", "none", "the name of a rule, such as one of this package")
	}
	manway.Within(&faults, "SludgeToOutlet", r.SludgeToOutlet, 0, 10*manway.Foot)
	manway.Within(&faults, "ScumToOutlet", r.ScumToOutlet, 0, 10*manway.Foot)
	manway.Within(&faults, "ScumToTop", r.ScumToTop, 0, 10*manway.Foot)
	manway.Within(&faults, "Share", r.Share, 0, 1)
	return faults.Err()
}

// Solids is what a rule looks at in one compartment: the layers and the outlet
// device, all as heights above the floor or thicknesses. A reading that was not
// taken leaves the checks that need it not judged.
type Solids struct {
	Outlet       manway.Length  // outlet invert above the floor: the liquid depth
	DeviceBottom manway.Reading // bottom of the outlet tee or baffle above the floor
	DeviceTop    manway.Reading // its top above the floor
	Level        manway.Reading // surface as found, the top of scum, above the floor
	Sludge       manway.Reading // thickness on the floor
	Scum         manway.Reading // thickness
	Share        Fraction       // sludge and scum over liquid volume; not known: rules by volume are not judged
}

// Fraction is a share that is known or not.
type Fraction struct {
	Known bool
	Value float64
}

// triggerChecks is how many checks a rule may bring.
const triggerChecks = 4

// TriggerResult is a rule set against one compartment: Use above 1 means pump.
type TriggerResult struct {
	Rule     Rule
	Checks   [triggerChecks]manway.Check // sludge clearance, scum clearance, scum below the top, share
	Asked    int                         // how many of them the rule asks for, those first
	Pump     bool                        // a check that ran says pump
	Complete bool                        // every check that the rule asks for ran
	Cautions manway.Cautions
}

// List is the checks that the rule asks for.
func (r TriggerResult) List() []manway.Check {
	return append([]manway.Check(nil), r.Checks[:min(max(r.Asked, 0), len(r.Checks))]...)
}

// Basis lists the source of the rule.
func (r TriggerResult) Basis() []manway.Citation { return []manway.Citation{r.Rule.Source} }

// Trigger sets the rule against the solids of a compartment. Each part of the
// rule is a check whose Use passes 1 when the tank is to be pumped:
//
//	sludge clearance   sludge/(device bottom - clearance)
//	scum clearance     scum/(outlet - device bottom - clearance)
//	scum below top     (level - outlet)/(device top - outlet - clearance)
//	share of depth     (sludge + scum)/(share × outlet height)
//	share of volume    volume share/share
//
// Scum is judged as it hangs when the liquid stands at the outlet. A rule that says "reaching" asks for pumping at a Use of 1, the others above
// it. Pass says only that this rule does not ask for pumping yet.
//
// Source: the text of the rule, in its Source.
func (r Rule) Trigger(s Solids) (TriggerResult, error) {
	var faults manway.InputErrors
	faults.Under("Rule", r.Validate())
	if err := s.Validate(); err != nil {
		faults = append(faults, err.(manway.InputErrors)...)
	}
	if len(faults) > 0 {
		return TriggerResult{}, faults
	}
	result := TriggerResult{Rule: r, Complete: true, Cautions: manway.LocalCode}
	add := func(c manway.Check, ran bool) {
		c.Source = r.Source
		if ran {
			c = c.Judge()
			if r.AtShare && c.Status == manway.Pass && manway.Reached(c.Demand, c.Capacity) {
				c.Status = manway.Fail
			}
			result.Pump = result.Pump || c.Status == manway.Fail
		} else {
			result.Complete = false
		}
		result.Checks[result.Asked] = c
		result.Asked++
	}
	if r.SludgeToOutlet > 0 {
		add(r.sludgeCheck(s))
	}
	if r.ScumToOutlet > 0 {
		add(r.scumCheck(s))
	}
	if r.ScumToTop > 0 {
		add(r.topCheck(s))
	}
	if r.Share > 0 {
		add(r.shareCheck(s))
	}
	return result, nil
}

// sludgeCheck sets the height of sludge against the height it may have.
func (r Rule) sludgeCheck(s Solids) (manway.Check, bool) {
	c := manway.Check{Name: "sludge to outlet", Kind: manway.KindLength}
	if !s.Sludge.Taken || !s.DeviceBottom.Taken {
		c.Reason = "needs sludge and the bottom of the outlet device"
		return c, false
	}
	c.Demand = float64(s.Sludge.Length)
	c.Capacity = max(float64(s.DeviceBottom.Length-r.SludgeToOutlet), 0)
	return c, true
}

// scumCheck sets the scum against what may hang below the outlet: the depth of
// the device bottom under the outlet invert less the clearance.
func (r Rule) scumCheck(s Solids) (manway.Check, bool) {
	c := manway.Check{Name: "scum to outlet", Kind: manway.KindLength}
	if !s.Scum.Taken || !s.DeviceBottom.Taken {
		c.Reason = "needs scum and the bottom of the outlet device"
		return c, false
	}
	c.Demand = float64(s.Scum.Length)
	c.Capacity = max(float64(s.Outlet-s.DeviceBottom.Length-r.ScumToOutlet), 0)
	return c, true
}

// topCheck sets the height of the scum's top above the outlet against the
// height that the device leaves.
func (r Rule) topCheck(s Solids) (manway.Check, bool) {
	c := manway.Check{Name: "scum below the top of the device", Kind: manway.KindLength}
	if !s.Level.Taken || !s.DeviceTop.Taken {
		c.Reason = "needs the top of scum and the top of the outlet device"
		return c, false
	}
	c.Demand = max(float64(s.Level.Length-s.Outlet), 0)
	c.Capacity = max(float64(s.DeviceTop.Length-r.ScumToTop-s.Outlet), 0)
	return c, true
}

// shareCheck sets sludge and scum together against their share.
func (r Rule) shareCheck(s Solids) (manway.Check, bool) {
	c := manway.Check{Name: "share of liquid depth", Kind: manway.Ratio, Capacity: r.Share}
	if r.OfVolume {
		c.Name = "share of liquid volume"
		if !s.Share.Known {
			c.Reason, c.Capacity = "needs sludge and scum as gallons", 0
			return c, false
		}
		c.Demand = s.Share.Value
		return c, true
	}
	if !s.Sludge.Taken || !s.Scum.Taken {
		c.Reason, c.Capacity = "needs sludge and scum", 0
		return c, false
	}
	c.Demand = float64((s.Sludge.Length + s.Scum.Length) / s.Outlet)
	return c, true
}

// surface is the higher of level and outlet: solids were measured under it.
func (s Solids) surface() manway.Length {
	if s.Level.Taken {
		return max(s.Level.Length, s.Outlet)
	}
	return s.Outlet
}

// Validate returns the faults of s.
func (s Solids) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Outlet", s.Outlet, 6*manway.Inch, 30*manway.Foot)
	s.DeviceBottom.Within(&faults, "DeviceBottom", 0, s.Outlet)
	s.DeviceTop.Within(&faults, "DeviceTop", s.Outlet, 40*manway.Foot)
	s.Level.Within(&faults, "Level", 0, 40*manway.Foot)
	s.Sludge.Within(&faults, "Sludge", 0, s.surface())
	s.Scum.Within(&faults, "Scum", 0, s.surface())
	if s.Sludge.Taken && s.Scum.Taken && s.Sludge.Length+s.Scum.Length > s.surface()*(1+1e-9) {
		faults.Add("Scum", s.Scum.Length.String(), "sludge and scum together at most the depth of "+s.surface().String())
	}
	if s.Share.Known {
		manway.Within(&faults, "Share.Value", s.Share.Value, 0, 1)
	} else {
		manway.Within(&faults, "Share.Value", s.Share.Value, 0, 0)
	}
	return faults.Err()
}

// holdingTankLimit is the share of its capacity at which a holding tank is
// pumped (Nebraska, fact sheet 12-041).
const holdingTankLimit = 0.90

// HoldingTank sets what a holding tank holds against 0.9 of its capacity of 10
// to 1,000,000 gal; where its total is not known it is not judged.
//
// Source: Nebraska, fact sheet 12-041.
func (s Split) HoldingTank(capacity manway.Volume) (manway.Check, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Capacity", capacity, 10*manway.Gallon, 1e6*manway.Gallon)
	manway.Within(&faults, "Total", s.Total, 0, 2*capacity)
	if err := faults.Err(); err != nil {
		return manway.Check{}, err
	}
	c := manway.Check{Name: "holding tank", Kind: manway.KindVolume, Capacity: holdingTankLimit * float64(capacity), Source: RuleNebraska.Source}
	if !s.Known {
		c.Reason = "not measured: what it holds"
		return c, nil
	}
	c.Demand = float64(s.Total)
	return c.Judge(), nil
}
