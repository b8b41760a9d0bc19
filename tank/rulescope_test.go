package tank

import (
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
)

// Scope: what is asked of the first compartment is asked as soon as there is a
// second one, in every set, and not of a single one; Tennessee allows no other
// tank than one of two. 400 of 1000 gal are less than any of them wants.
func TestFirstOfTwoCompartments(t *testing.T) {
	sets := 0
	for _, s := range RuleSets() {
		if !slices.ContainsFunc(s.Limits, func(r LimitRule) bool { return r.Topic == FirstShare }) {
			continue
		}
		sets++
		for n := 1; n <= 3; n++ {
			j, err := s.Judge(Facts{Liquid: 1000 * manway.Gallon, FirstLiquid: 400 * manway.Gallon, Compartments: n})
			if err != nil {
				t.Fatal(err)
			}
			asked := slices.ContainsFunc(j.Checks, func(c manway.Check) bool {
				return c.Name == FirstShare.String()+", at least" && (c.Status == manway.Fail || strings.Contains(c.Reason, "fail"))
			})
			if want := n > 1 || s.ID == "us-tn"; asked != want {
				t.Errorf("%s, %d compartments, 40 %% in the first: asked %v, want %v", s.ID, n, asked, want)
			}
		}
	}
	if sets < 8 {
		t.Errorf("%d sets ask for a share", sets)
	}
}

// Scope: Arizona asks for a length of two to three widths of a tank over 1000 gal
// with plumb walls (R18-9-A314(1)(c)(iv)).
func TestLengthToWidthInArizona(t *testing.T) {
	for _, c := range []struct {
		gallons int
		form    Form
		want    bool
	}{{1000, PlumbWalls, false}, {1001, PlumbWalls, true}, {1500, PlumbWalls, true}, {1500, LyingCylinder, false}} {
		j, err := arizona().Judge(Facts{Liquid: manway.Volume(c.gallons) * manway.Gallon, Form: c.form, LengthToWidth: 1.5})
		if err != nil {
			t.Fatal(err)
		}
		fails := slices.ContainsFunc(j.Checks, func(k manway.Check) bool {
			return k.Name == LengthToWidth.String()+", at least" && k.Status == manway.Fail
		})
		if fails != c.want {
			t.Errorf("%d gal, %v: a length of 1.5 widths fails: %v, want %v", c.gallons, c.form, fails, c.want)
		}
	}
}
