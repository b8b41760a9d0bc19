package tank

import (
	"fmt"
	"math"

	"manway.example/manway"
)

// Validate returns the faults of s: figures of a rule that are negative or no
// numbers, a step with nothing in it, a topic that does not exist. The sets of
// [RuleSets] have none.
func (s RuleSet) Validate() error {
	var faults manway.InputErrors
	for i, r := range s.Capacity {
		faults.Under(fmt.Sprintf("Capacity[%d]", i), r.validate())
	}
	for i, r := range s.Limits {
		var of manway.InputErrors
		if int(r.Topic) >= len(topics) {
			of.Add("Topic", r.Topic.String(), "a topic of this package")
		}
		r.Least.validate(&of, "Least")
		r.Most.validate(&of, "Most")
		manway.NotNegative(&of, "Scope.From", r.Scope.From)
		manway.NotNegative(&of, "Scope.Below", r.Scope.Below)
		faults.Under(fmt.Sprintf("Limits[%d]", i), of.Err())
	}
	return faults.Err()
}

func (b Bound) validate(faults *manway.InputErrors, field string) {
	if math.IsNaN(b.Value) || math.IsInf(b.Value, 0) {
		faults.Add(field+".Value", fmt.Sprint(b.Value), "a finite number")
	} else if !b.Set && b.Value != 0 {
		faults.Add(field+".Value", fmt.Sprint(b.Value), "0 where not Set")
	}
}

func (r CapacityRule) validate() error {
	var faults manway.InputErrors
	for i, s := range r.Bedrooms {
		manway.NotNegative(&faults, fmt.Sprintf("Bedrooms[%d].Capacity", i), s.Capacity)
	}
	manway.NotNegative(&faults, "EachMore", r.EachMore)
	for i, s := range r.Flow {
		var of manway.InputErrors
		manway.NotNegative(&of, "UpTo", s.UpTo)
		manway.NotNegative(&of, "Base", s.Base)
		manway.NotNegative(&of, "Above", s.Above)
		manway.Within(&of, "Days", s.Days, 0, 365)
		manway.NotNegative(&of, "Least", s.Least)
		faults.Under(fmt.Sprintf("Flow[%d]", i), of.Err())
	}
	return faults.Err()
}
