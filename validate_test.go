package manway_test

import (
	"math"
	"testing"

	"manway.example/manway"
)

// A limit that is no number is not shown: the fault of the field that it comes
// from shows it.
func TestLimitThatIsNoNumber(t *testing.T) {
	for _, c := range []struct {
		lo, hi manway.Length
		want   string
	}{
		{0, manway.Foot, "0 in to 1 ft"},
		{0, manway.Length(math.NaN()), "0 in to a limit that another field spoils"},
		{manway.Length(math.Inf(-1)), manway.Foot, "a limit that another field spoils to 1 ft"},
	} {
		var faults manway.InputErrors
		manway.Within(&faults, "To", 2*manway.Foot, c.lo, c.hi)
		if len(faults) != 1 || faults[0].Field != "To" || faults[0].Value != "2 ft" || faults[0].Want != c.want {
			t.Errorf("%v, want one of To, 2 ft, %q", faults, c.want)
		}
	}
}
