package tank

import (
	"fmt"
	"strings"
	"time"

	"manway.example/manway"
)

// RuleSets lists every set of rules, built anew on each call.
func RuleSets() []RuleSet {
	return []RuleSet{
		virginia(), loudounCounty(), washington(), northCarolina(), northCarolinaStatute(), idaho(), iowa(), ohio(), pennsylvania(),
		massachusetts(), connecticut(), hamden(), minnesota(), carver(), ramsey(), wyandotte(), ipsdc(), oregon(), tennessee(), arizona(),
		texas(), wisconsin(), indiana(), cassCounty(), upc(), usphs(), england(),
	}
}

// RuleSetOf is the set with an id.
//
// Errors: an id that no set has; the error lists them.
func RuleSetOf(id string) (RuleSet, error) {
	sets := RuleSets()
	ids := make([]string, len(sets))
	for i, s := range sets {
		if s.ID == id {
			return s, nil
		}
		ids[i] = s.ID
	}
	return RuleSet{}, manway.InputErrors{{Field: "RuleSet", Value: fmt.Sprintf("%q", id), Want: strings.Join(ids, ", ")}}
}

// asRead is the provenance of a row read in its source.
func asRead(s *manway.Source, section string) Provenance {
	return Provenance{Source: manway.Citation{Source: s, Place: section}, Mark: Seen}
}

// quoted is that of a row read in a text that quotes the source.
func quoted(s *manway.Source, section string) Provenance {
	return Provenance{Source: manway.Citation{Source: s, Place: section}, Mark: SeenSecondary}
}

// remembered is that of a row not found in print.
func remembered(s *manway.Source, section string) Provenance {
	return Provenance{Source: manway.Citation{Source: s, Place: section}}
}

func (p Provenance) from(year int, month time.Month, day int) Provenance {
	p.From = manway.Date{Year: year, Month: month, Day: day}
	return p
}

func (p Provenance) superseded(by string) Provenance {
	p.SupersededBy = by
	return p
}

// at makes a row of these sources at another section.
func (p Provenance) at(section string) Provenance {
	p.Source.Place = section
	return p
}

func atLeast[Q ~float64](p Provenance, t Topic, x Q) LimitRule {
	return LimitRule{Provenance: p, Topic: t, Least: Bound{true, float64(x)}}
}

func atMost[Q ~float64](p Provenance, t Topic, x Q) LimitRule {
	return LimitRule{Provenance: p, Topic: t, Most: Bound{true, float64(x)}}
}

func between[Q ~float64](p Provenance, t Topic, lo, hi Q) LimitRule {
	return LimitRule{Provenance: p, Topic: t, Least: Bound{true, float64(lo)}, Most: Bound{true, float64(hi)}}
}

// needed is a rule that asks for something to be there.
func needed(p Provenance, t Topic) LimitRule {
	return LimitRule{Provenance: p, Topic: t, Least: Bound{true, 1}}
}

func (r LimitRule) when(s Scope) LimitRule {
	r.Scope = s
	return r
}

// steps makes a table of bedrooms and gallons.
func steps(pairs ...int) []BedroomStep {
	list := make([]BedroomStep, 0, len(pairs)/2)
	for i := 0; i+1 < len(pairs); i += 2 {
		list = append(list, BedroomStep{pairs[i], manway.Volume(pairs[i+1]) * manway.Gallon})
	}
	return list
}

// Short names for the units of the tables.
const (
	inch   = manway.Inch
	foot   = manway.Foot
	pound  = manway.Pound
	gallon = manway.Gallon
	perDay = manway.GallonPerDay
)
