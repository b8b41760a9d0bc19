package lid

import "manway.example/manway"

// Crew is the people who move the lid and what they say they can do. Its limit
// always counts.
type Crew struct {
	People int         `json:"people"` // 1 to 6; 0: one
	Limit  manway.Mass `json:"limit"`  // that each of them will lift, 5 to 200 lb; 0: not said
}

// Validate returns the faults of c.
func (c Crew) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "People", c.People, 0, 6)
	if c.Limit != 0 {
		manway.Within(&faults, "Limit", c.Limit, 5*manway.Pound, 200*manway.Pound)
	}
	return faults.Err()
}

// Together is what the crew lifts as a team by the rule of two thirds and one
// half; false where the limit was not said or more than three would lift. Source:
// HSE, L23, as [TeamByShare].
func (c Crew) Together() (manway.Mass, bool) {
	if c.Limit == 0 {
		return 0, false
	}
	return TeamByShare(max(c.People, 1), c.Limit)
}

// TeamByShare is what n people of one capacity lift together by the practice
// rule of the UK guidance: two lift two thirds of the sum, three one half.
// More than three at one lid are not counted on: the answer is false. The rule
// is no part of the lifting equation, which has none for teams. Each up to 1,000
// lb. Source: HSE, L23.
func TeamByShare(n int, each manway.Mass) (manway.Mass, bool) {
	switch {
	case !(each >= 0 && each <= 1000*manway.Pound):
		return 0, false
	case n == 1:
		return each, true
	case n == 2:
		return 2 * each * 2 / 3, true
	case n == 3:
		return 3 * each / 2, true
	}
	return 0, false
}

// TeamByDoubling is the same by another rule: two lift twice what one lifts, and
// each further person adds at most three quarters of it. It allows more than
// TeamByShare and is shown beside it only. 1 to 6 people, each up to 1,000 lb.
// Source: MIL-STD-1472D.
func TeamByDoubling(n int, each manway.Mass) (manway.Mass, bool) {
	if n < 1 || n > 6 || !(each >= 0 && each <= 1000*manway.Pound) {
		return 0, false
	}
	if n == 1 {
		return each, true
	}
	return 2*each + times(each, float64(n-2))*3/4, true
}
