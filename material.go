package manway

import "math"

// Concrete is the concrete of a lid, roof, wall or ring. The zero value is
// concrete of which nothing is known.
type Concrete struct {
	Strength Pressure `json:"strength"` // specified compressive strength f'c, 1,000 to 15,000 psi; 0: not known, 2,500 psi is taken
	Density  Density  `json:"density"`  // with its steel, 90 to 200 lb/ft3; 0: not known, 150 lb/ft3 is taken, 135 where its weight holds down
}

// Filled is c with what is not known replaced by [LeastConcreteStrength] and
// [UsualConcreteDensity], and the assumptions that were made.
func (c Concrete) Filled() (Concrete, Assumptions) {
	var made Assumptions
	if c.Strength == 0 {
		c.Strength, made = LeastConcreteStrength, made|AssumedConcreteStrength
	}
	if c.Density == 0 {
		c.Density, made = UsualConcreteDensity, made|AssumedConcreteDensity
	}
	return c, made
}

// AsBallast is c with a density that is not known taken at the light end of
// normal weight, for concrete whose weight holds something down.
func (c Concrete) AsBallast() (Concrete, Assumptions) {
	if c.Density != 0 {
		return c, 0
	}
	c.Density = LightConcreteDensity
	return c, AssumedLightConcrete
}

// Validate returns the faults of c.
func (c Concrete) Validate() error {
	var faults InputErrors
	if c.Strength != 0 {
		Within(&faults, "Strength", c.Strength, 1000*PSI, 15000*PSI)
	}
	if c.Density != 0 {
		Within(&faults, "Density", c.Density, 90*PoundPerCubicFoot, 200*PoundPerCubicFoot)
	}
	return faults.Err()
}

// SteelState says what is known of the steel in a section.
type SteelState uint8

// What may be known of the steel. The zero value is unknown.
const (
	SteelUnknown SteelState = iota
	SteelNone
	SteelKnown
)

var steelStates = [...]string{"unknown", "none", "known"}

// String is unknown, none or known.
func (s SteelState) String() string { return Word(steelStates[:], s) }

// MarshalText is the same as String.
func (s SteelState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts unknown, none and known.
func (s *SteelState) UnmarshalText(text []byte) error {
	return ReadWord(s, "steel", steelStates[:], text)
}

// Reinforcement is one layer of steel near the tension face, per width of
// section. The zero value is steel of which nothing is known.
type Reinforcement struct {
	State    SteelState `json:"state"`
	Diameter Length     `json:"diameter"` // of a bar or wire as it is now, 0.05 to 1.5 in
	Spacing  Length     `json:"spacing"`  // between bars, 1 to 36 in
	Cover    Length     `json:"cover"`    // from the tension face to the bar's surface, 0 or more
	Yield    Pressure   `json:"yield"`    // 24,000 to 100,000 psi; 0: not known, 40,000 psi is taken
}

// Validate returns the faults of r. Steel that is not known has no sizes.
func (r Reinforcement) Validate() error {
	var faults InputErrors
	if r.State > SteelKnown {
		faults.Add("State", r.State.String(), "unknown, none or known")
	} else if r.State == SteelKnown {
		Within(&faults, "Diameter", r.Diameter, 0.05*Inch, 1.5*Inch)
		Within(&faults, "Spacing", r.Spacing, 1*Inch, 36*Inch)
		Within(&faults, "Cover", r.Cover, 0, 12*Inch)
		if r.Yield != 0 {
			Within(&faults, "Yield", r.Yield, 24000*PSI, 100000*PSI)
		}
	} else {
		state := "State is " + r.State.String()
		Absent(&faults, "Diameter", r.Diameter, state)
		Absent(&faults, "Spacing", r.Spacing, state)
		Absent(&faults, "Cover", r.Cover, state)
		Absent(&faults, "Yield", r.Yield, state)
	}
	return faults.Err()
}

// WithArea is r with bars of a share of their area, 0 to 1: what corrosion left.
func (r Reinforcement) WithArea(share float64) Reinforcement {
	r.Diameter *= Length(math.Sqrt(min(max(share, 0), 1)))
	return r
}
