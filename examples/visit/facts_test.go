package visit

import (
	"bytes"
	"math"
	"os"
	"slices"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
)

// What the rules are told of a survey, by hand: lids at 8 in under a riser of 10,
// 14 and 20 in below grade, of which the deepest counts; of 18 lb on a scale and
// heavier, of which the lightest counts; one fastened, one not, one not looked at,
// and guarded alike; an outlet 3 in below the inlet. None of it hangs on the order.
func TestFactsForTheRules(t *testing.T) {
	b, err := os.ReadFile("testdata/printed/three-openings.json")
	if err != nil {
		t.Fatal(err)
	}
	s, err := Read(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	s.Household.Bedrooms = 3
	for turn := range 6 {
		i, j := turn%3, turn/3
		turned := s
		turned.Accesses = slices.Concat(s.Accesses[i:], s.Accesses[:i])
		if j == 1 {
			slices.Reverse(turned.Accesses)
		}
		v, err := Run(turned, cost.Book{})
		if err != nil {
			t.Fatal(err)
		}
		f := v.facts()
		near := func(what string, got manway.Reading, want float64) {
			t.Helper()
			if !got.Taken || math.Abs(got.Length.In(manway.Inch)-want) > 1e-9 {
				t.Errorf("turn %d: %s %+v, want %v in", turn, what, got, want)
			}
		}
		near("below grade", f.AccessBelowGrade, 20)
		near("soil", f.SoilCover, 8)
		near("drop", f.Drop, 3)
		if math.Abs(f.CoverMass.In(manway.Pound)-18) > 1e-9 || f.CoverFastened != manway.No || f.SecondaryGuard != manway.No || f.Bedrooms != 3 {
			t.Errorf("turn %d: %+v", turn, f)
		}
	}
	for k, want := range []struct {
		below             float64
		fastened, guarded manway.Answer
	}{{-2, manway.Yes, manway.Yes}, {14, manway.No, manway.No}, {20, manway.Unknown, manway.Unknown}} {
		one := s
		one.Accesses = s.Accesses[k : k+1]
		one.Compartments, one.Tank.InletInvert = nil, manway.Reading{}
		v, err := Run(one, cost.Book{})
		if err != nil {
			t.Fatal(err)
		}
		f := v.facts()
		if math.Abs(f.AccessBelowGrade.Length.In(manway.Inch)-want.below) > 1e-9 || !f.AccessBelowGrade.Taken || f.CoverFastened != want.fastened || f.SecondaryGuard != want.guarded || f.Drop.Taken || f.CoverMass != v.Accesses[0].Moves.Weight.Now {
			t.Errorf("only %s: %+v", one.Accesses[0].Name, f)
		}
	}
}

// Concrete that does not count still hangs from the roof: 0.4 in of 150 lb/ft3 is 5
// lbf/ft2.
func TestUnsoundConcreteStillWeighs(t *testing.T) {
	v := Visit{RoofTried: RoofTried{Used: true, Unsound: manway.Unsound{Depth: 0.4 * manway.Inch}}}
	v.Survey.Tank.Density = 150 * manway.PoundPerCubicFoot
	if got := v.unsoundWeight().In(manway.PSF); math.Abs(got-5) > 1e-9 {
		t.Errorf("%v lbf/ft2, want 5", got)
	}
	if v.RoofTried.Used = false; v.unsoundWeight() != 0 || v.roofLoss() != 0 {
		t.Errorf("nothing was tried: %v and %v", v.unsoundWeight(), v.roofLoss())
	}
}
