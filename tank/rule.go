package tank

import (
	"math"

	"manway.example/manway"
)

// RuleSet is what one authority or model code asks of a tank: least liquid
// capacity, and limits of proportions, access and covers. The rows stand as
// they were read; local code governs and may have changed since.
type RuleSet struct {
	ID       string // such as "us-va"
	Name     string // of the place or code
	Capacity []CapacityRule
	Limits   []LimitRule
}

// Provenance is where a row comes from and whether it can judge.
type Provenance struct {
	Source       manway.Citation // text, year and section
	From         manway.Date     // effective from; no date: not known
	SupersededBy string          // what replaced it; empty: nothing that is known
	Mark         Mark
}

// Judges reports whether a row gives pass or fail: a remembered or superseded
// one only informs.
func (p Provenance) Judges() bool { return p.Mark != Memory && p.SupersededBy == "" }

// Mark says how well a row is known.
type Mark uint8

// The marks. The zero value is the least.
const (
	Memory        Mark = iota // remembered, not found in print
	SeenSecondary             // read in a text that quotes the source
	Seen                      // read in the source or a reprint of it
)

var marks = [...]string{"memory", "seen-secondary", "seen"}

// String is the mark in words.
func (m Mark) String() string { return manway.Word(marks[:], m) }

// MarshalText is the same as String.
func (m Mark) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// CapacityRule is the least liquid capacity, by bedrooms or by daily flow.
type CapacityRule struct {
	Provenance
	Bedrooms []BedroomStep // by rising numbers
	EachMore manway.Volume // for each bedroom above the last step; 0: the table ends there
	Flow     []FlowStep    // by rising flow
	Note     string        // for what, where it is not a dwelling's tank
}

// BedroomStep is the capacity up to a number of bedrooms.
type BedroomStep struct {
	UpTo     int
	Capacity manway.Volume
}

// FlowStep is the capacity for daily flows up to a limit:
//
//	Base + Days (flow - Above), at least Least
type FlowStep struct {
	UpTo   manway.Flow // 0: no limit
	Before bool        // UpTo itself belongs to the next step
	Base   manway.Volume
	Above  manway.Flow
	Days   float64
	Least  manway.Volume
}

// day is the time that the daily flow of a rule stands for.
const day = 86400.0

// ForBedrooms is the capacity for a number of bedrooms; false where the rule
// does not say or has figures that are none.
//
// Source: that of the rule.
func (r CapacityRule) ForBedrooms(n int) (manway.Volume, bool) {
	if n < 1 || len(r.Bedrooms) == 0 || r.validate() != nil {
		return 0, false
	}
	for _, s := range r.Bedrooms {
		if n <= s.UpTo {
			return s.Capacity, true
		}
	}
	last := r.Bedrooms[len(r.Bedrooms)-1]
	if r.EachMore == 0 || n > 100 {
		return 0, false
	}
	all := last.Capacity + manway.Volume(n-last.UpTo)*r.EachMore
	return all, all <= math.MaxFloat64
}

// ForFlow is the capacity for a daily flow up to 1,000,000 gallons; false where
// the rule does not say or has figures that are none.
//
// Source: that of the rule.
func (r CapacityRule) ForFlow(q manway.Flow) (manway.Volume, bool) {
	if !(q > 0 && q <= 1e6*manway.GallonPerDay) || r.validate() != nil {
		return 0, false
	}
	for _, s := range r.Flow {
		if s.UpTo == 0 || q < s.UpTo || q == s.UpTo && !s.Before {
			return max(s.Least, s.Base+manway.Volume(s.Days*day*float64(q-s.Above))), true
		}
	}
	return 0, false
}

// Bound is one side of a limit, or none.
type Bound struct {
	Set   bool
	Value float64 // in the SI unit of the topic
}

// LimitRule is one limit: at least Least and at most Most.
type LimitRule struct {
	Provenance
	Topic       Topic
	Least, Most Bound
	Strict      bool  // the limits themselves do not pass
	Scope       Scope // the tanks it is for
}

// Scope says for which tanks a rule is. The zero value is every tank.
type Scope struct {
	From, Below  manway.Volume // of liquid capacity; 0: no limit
	Form         Form
	Compartments int // this many or more; 0: any
}

// Form is what a rule tells tanks apart by.
type Form uint8

// The forms.
const (
	AnyForm Form = iota
	PlumbWalls
	LyingCylinder
	UprightRound
)

// Topic is what a limit is about.
type Topic uint8

// The topics, with their units.
const (
	FirstShare       Topic = iota // of the first compartment in the liquid capacity
	FirstCapacity                 // of the first compartment
	LiquidDepth                   // floor to outlet invert
	AirSpace                      // outlet invert to underside of the roof
	InvertDrop                    // inlet invert over outlet invert
	InletBelow                    // inlet fitting, below the liquid
	InletAbove                    // and above it
	OutletShare                   // outlet fitting below the liquid, as a share of its depth
	OutletBelow                   // outlet fitting, below the liquid
	OutletAbove                   // and above it
	LengthToWidth                 // inside
	InsideDiameter                // of an upright round tank
	AccessSize                    // least size of the smallest opening
	AccessBelowGrade              // cover or riser top, below grade
	AccessAboveGrade              // the same, above grade
	SoilCover                     // over the roof
	CoverSecured                  // weight of the cover, or a fastener that needs a tool or key
	CoverFastened                 // a fastener, whatever the weight
	SecondaryGuard                // a plug, cap or grate below the cover
	WallThickness
	RoofThickness
	endOfTopics
)

var topics = [...]struct {
	name string
	kind manway.Kind
}{
	FirstShare:       {"first compartment's share", manway.Ratio},
	FirstCapacity:    {"first compartment's capacity", manway.KindVolume},
	LiquidDepth:      {"liquid depth", manway.KindLength},
	AirSpace:         {"air space", manway.KindLength},
	InvertDrop:       {"drop from inlet to outlet", manway.KindLength},
	InletBelow:       {"inlet fitting below the liquid", manway.KindLength},
	InletAbove:       {"inlet fitting above the liquid", manway.KindLength},
	OutletShare:      {"outlet fitting's share of the liquid depth", manway.Ratio},
	OutletBelow:      {"outlet fitting below the liquid", manway.KindLength},
	OutletAbove:      {"outlet fitting above the liquid", manway.KindLength},
	LengthToWidth:    {"length over width", manway.Ratio},
	InsideDiameter:   {"inside diameter", manway.KindLength},
	AccessSize:       {"least size of the access", manway.KindLength},
	AccessBelowGrade: {"access below grade", manway.KindLength},
	AccessAboveGrade: {"access above grade", manway.KindLength},
	SoilCover:        {"soil over the tank", manway.KindLength},
	CoverSecured:     {"cover heavy enough or fastened", manway.KindMass},
	CoverFastened:    {"cover fastened", manway.Ratio},
	SecondaryGuard:   {"guard below the cover", manway.Ratio},
	WallThickness:    {"wall thickness", manway.KindLength},
	RoofThickness:    {"roof thickness", manway.KindLength},
}

// String is the topic in words.
func (t Topic) String() string {
	if int(t) < len(topics) {
		return topics[t].name
	}
	return "unknown topic"
}

// MarshalText is the same as String.
func (t Topic) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// Kind is the quantity of the topic's limits.
func (t Topic) Kind() manway.Kind {
	if int(t) < len(topics) {
		return topics[t].kind
	}
	return manway.Ratio
}
