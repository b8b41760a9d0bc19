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

// Property (monotone): a reading that grows worse never makes the worst defect
// less urgent.
func TestWorseIsNeverMilder(t *testing.T) {
	for name, of := range map[string]func(manway.Length) Condition{
		"gap beside the cover": func(x manway.Length) Condition { return Condition{RimGap: manway.Read(x)} },
		"gap of the joint":     func(x manway.Length) Condition { return Condition{JointGap: manway.Read(x)} },
		"crack":                func(x manway.Length) Condition { return Condition{CrackWidth: manway.Read(x)} },
		"spall": func(x manway.Length) Condition {
			return Condition{SpallDepth: manway.Read(x), Thickness: manway.Read(6 * manway.Inch)}
		},
		"settlement": func(x manway.Length) Condition { return Condition{Settled: manway.Read(x)} },
	} {
		worst, found := Watch+1, false
		for i := range 128 {
			x, now := manway.Length(i)*manway.Inch/64, Watch+1
			for _, d := range must(Defects(of(x))) {
				now = min(now, d.Severity)
			}
			if now > worst {
				t.Errorf("%s of %v: %v after %v", name, x, now, worst)
			}
			worst, found = now, found || now <= Watch
		}
		if !found {
			t.Errorf("no %s was a defect: the trials prove nothing", name)
		}
	}
}
