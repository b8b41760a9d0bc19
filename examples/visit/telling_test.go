package visit

import (
	"slices"
	"testing"
)

// Another decision tells more than any other figure, one that may hurt someone
// more than one about dates, and then the greater share; from wherever one
// begins.
func TestOrderOfChanges(t *testing.T) {
	want := []Change{
		{What: "float", Decides: true, rank: 0, Share: 0.9}, {What: "lid", Decides: true, rank: 0, Share: 0.1},
		{What: "level", Decides: true, rank: 1, Share: 1}, {What: "gallons", rank: 2, Share: 0.8}, {What: "roof", rank: 0, Share: 0.3},
	}
	for turn := range want {
		got := slices.Concat(want[turn:], want[:turn])
		slices.SortStableFunc(got, Change.against)
		if !slices.Equal(got, want) {
			t.Errorf("from %d: %v", turn, got)
		}
	}
	for i, a := range want {
		for j, b := range want {
			if sign := a.against(b); (sign < 0) != (i < j) || (sign > 0) != (i > j) {
				t.Errorf("%s against %s: %d", a.What, b.What, sign)
			}
		}
	}
	if a, b := want[3], want[3]; a.against(b) != 0 {
		t.Error("equal changes are not equal")
	} else if b.Share += 1e-9; a.against(b) != 0 {
		t.Error("shares a rounding error apart are not equal")
	}
}
