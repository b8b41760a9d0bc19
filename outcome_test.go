package manway

import "testing"

func TestOutcome(t *testing.T) {
	for _, c := range []struct {
		check Check
		want  string
	}{
		{Check{Demand: 1, Capacity: 2, Status: Pass}, "within"},
		{Check{Demand: 2, Capacity: 2, Status: Pass}, "within"},
		{Check{Demand: 3, Capacity: 2, Status: Fail}, "above"},
		{Check{Demand: 2, Capacity: 2, Status: Fail}, "reached"},       // a third of solids is enough
		{Check{Demand: 3, Capacity: 0, Status: Fail}, "not met"},       // nothing to divide by
		{Check{Status: Pass}, "met"},                                   // a fastener that is there
		{Check{Demand: 1, Capacity: 2, Status: NotShown}, "not shown"}, // figures for comparison only
		{Check{}, "not judged"},
	} {
		if got := c.check.Outcome(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.check, got, c.want)
		}
	}
}
