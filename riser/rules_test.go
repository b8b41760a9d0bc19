package riser

import (
	"strings"
	"testing"

	"manway.example/manway"
)

// Reasons are written in the units that are asked for.
func TestReasonsInSI(t *testing.T) {
	defects, err := Defects(Condition{Units: manway.SI, JointGap: manway.Read(10 * manway.Millimetre), CoverDepth: manway.Read(400 * manway.Millimetre)})
	if err != nil || len(defects) == 0 {
		t.Fatalf("defects are %v, %v", defects, err)
	}
	for _, d := range defects {
		if !strings.Contains(d.Reason, " mm") {
			t.Errorf("%s: %q is not in millimetres", d.Kind, d.Reason)
		}
	}
}
