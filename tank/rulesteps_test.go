package tank

import (
	"strconv"
	"testing"

	"manway.example/manway/internal/reftable"
)

// The last of the bedrooms of each step of a rule is one that a row of the files
// was read for, and beyond the last step a rule says nothing unless it says what
// each more asks for.
func TestBedroomStepsEndWhereTheRowsDo(t *testing.T) {
	read := map[string]bool{}
	for _, row := range reftable.Load(t, "tank.csv").Under("rule-") {
		if n, ok := row.Lookup("bedrooms"); ok {
			read[row.Input(t, "set")+" "+row.Input(t, "rule")+" "+n] = true
		}
	}
	for _, s := range RuleSets() {
		for i, r := range s.Capacity {
			for k, step := range r.Bedrooms {
				if k == len(r.Bedrooms)-1 && r.EachMore > 0 || step.UpTo == 100 {
					continue // goes on by so much each, or for all there are
				}
				if !read[s.ID+" "+strconv.Itoa(i)+" "+strconv.Itoa(step.UpTo)] {
					t.Errorf("%s, rule %d: no row for %d bedrooms, where a step ends", s.ID, i, step.UpTo)
				}
			}
			if n := len(r.Bedrooms); n > 0 {
				if v, ok := r.ForBedrooms(r.Bedrooms[n-1].UpTo + 1); ok != (r.EachMore > 0) {
					t.Errorf("%s, rule %d: %v beyond the last step, %v for each more", s.ID, i, v, r.EachMore)
				}
			}
		}
	}
}
