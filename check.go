package manway

import "math"

// Status is the outcome of a check.
type Status uint8

// The outcomes. The zero value is NotJudged, so that a check that was never
// filled in says so.
const (
	NotJudged    Status = iota // something needed was not known, or the method does not reach it
	Pass                       // demand is at most capacity
	Fail                       // demand is above capacity
	NotShown                   // cannot be shown by arithmetic with what is known
	NotPermitted               // outside what the code lets one count on
)

var statuses = [...]string{"not judged", "pass", "fail", "not shown", "not permitted"}

// String is the outcome in words.
func (s Status) String() string { return Word(statuses[:], s) }

// MarshalText is the same as String.
func (s Status) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Check is one thing judged: what is asked of a part (Demand) against what it
// has (Capacity), the same way up everywhere: Use is Demand/Capacity, and a
// check passes at 1 or less.
//
// Demand and Capacity are in the SI unit of Kind. Demand is already factored
// by Combination, Capacity already reduced by Phi; Unfactored is the demand
// with every load factor 1. A check that could not run keeps status NotJudged,
// NotShown or NotPermitted and says why in Reason; figures given beside such a
// status are for comparison only.
type Check struct {
	Name        string
	Kind        Kind
	Demand      float64
	Capacity    float64
	Unfactored  float64
	Combination Combination
	Phi         float64 // strength reduction factor in Capacity; 0 where there is none
	Source      Citation
	Status      Status
	Reason      string
}

// Judge sets the status of c by its figures: Pass where Demand is at most
// Capacity within one part in 1e9, Fail otherwise. Demand without capacity is
// a fail, and figures that are not finite leave the check NotJudged.
func (c Check) Judge() Check {
	switch {
	case !finite(c.Demand) || !finite(c.Capacity):
		c.Status, c.Reason = NotJudged, "the figures are not finite"
		c.Demand, c.Capacity = 0, 0
	case c.Demand <= 0 || c.Capacity > 0 && c.Demand <= c.Capacity*(1+slack):
		c.Status = Pass
	default:
		c.Status = Fail
	}
	return c
}

// Use is Demand/Capacity. It is false where the check did not run, or there is
// no capacity to divide by, or so little that the quotient overflows.
func (c Check) Use() (use float64, ok bool) {
	if c.Capacity <= 0 || c.Status == NotJudged {
		return 0, false
	}
	if use = c.Demand / c.Capacity; !finite(use) {
		return 0, false
	}
	return use, true
}

// Governing is the index of the check that governs among those that ran: a
// fail without capacity first, then the greatest Use. It is -1 where none ran.
func Governing(checks []Check) int {
	worst, at := math.Inf(-1), -1
	for i, c := range checks {
		if c.Status != Pass && c.Status != Fail {
			continue
		}
		use, ok := c.Use()
		if !ok {
			use = math.Inf(1)
			if c.Status == Pass {
				use = 0
			}
		}
		if use > worst {
			worst, at = use, i
		}
	}
	return at
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
