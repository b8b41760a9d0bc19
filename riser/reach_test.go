package riser

import (
	"testing"

	"manway.example/manway"
)

// Property (inverse): where the reveal is measured, the finished top stands that
// high once it has settled, on any ground.
func TestReachStandsAsAsked(t *testing.T) {
	for _, from := range []Edge{Uphill, Centre, Downhill} {
		a := Access{Cover: 26 * manway.Inch, Slope: 7 * manway.Degree, Span: 30 * manway.Inch, From: from, Reveal: 2 * manway.Inch,
			Settlement: manway.Inch / 2, GradeRise: 3 * manway.Inch, CoverThickness: 3 * manway.Inch}
		r := must(ReachOf(a))
		stands := [...]manway.Length{r.Uphill, r.Centre, r.Downhill}[from]
		near(t, from.String(), stands.In(manway.Inch), 2, 1e-12)
		near(t, "top", float64(r.Top), float64(r.Height+a.CoverThickness), 1e-12)
		if !(r.Uphill < r.Centre && r.Centre < r.Downhill) {
			t.Errorf("from %v: %v %v %v must grow downhill", from, r.Uphill, r.Centre, r.Downhill)
		}
	}
}

// A roof near grade needs no ring, and the cover on it
// stands as high as it is thick.
func TestReachAtTheRoof(t *testing.T) {
	r := must(ReachOf(Access{Cover: 2 * manway.Inch, CoverThickness: 4 * manway.Inch}))
	if !r.NoRing || r.Height != 0 || r.Centre.String() != "2 in" {
		t.Errorf("got %+v", r)
	}
	if w := r.Working(manway.US); len(w) != 2 || w[1].Formula != "nothing to make up" {
		t.Errorf("nothing is made up, and the working is %v", w)
	}
	w := must(ReachOf(Access{Cover: 20 * manway.Inch, CoverThickness: 4 * manway.Inch})).Working(manway.US)
	if len(w) != 3 || w[2].Value != "1 ft 4 in" { // 20 - 4 in
		t.Errorf("16 in are made up, and the working is %v", w)
	}
}

// Each step of the working by hand: a riser of 800 mm on ground of 10 degrees has
// its uphill edge 400 tan 10 = 70.5 mm up, and 400 + 50 + 60 + 20 mm of cover,
// raised grade, reveal and settlement make 600.5 mm with it, less 80 mm of cover on
// top. Downhill the edge is below the middle.
func TestReachWorkingByHand(t *testing.T) {
	for _, c := range []struct {
		from   Edge
		values [3]string
	}{{Uphill, [3]string{"70.5 mm", "600.5 mm", "520.5 mm"}}, {Centre, [3]string{"0 mm", "530 mm", "450 mm"}}, {Downhill, [3]string{"-70.5 mm", "459.5 mm", "379.5 mm"}}} {
		a := Access{Cover: 0.4, Slope: 10 * manway.Degree, Span: 0.8, From: c.from, GradeRise: 0.05, Reveal: 0.06, Settlement: 0.02, CoverThickness: 0.08}
		for i, step := range must(ReachOf(a)).Working(manway.SI) {
			var got, want manway.Length
			if err := got.UnmarshalText([]byte(step.Value)); err != nil {
				t.Fatal(err)
			}
			if err := want.UnmarshalText([]byte(c.values[i])); err != nil {
				t.Fatal(err)
			}
			near(t, c.from.String()+", "+step.Symbol, got.In(manway.Millimetre), want.In(manway.Millimetre), 0.51)
		}
	}
}
