package tank

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"manway.example/manway"
)

var inches = regexp.MustCompile(`\d in\b`)

// The working of every shape ends at its volume, and says each compartment.
func TestWorking(t *testing.T) {
	for name, s := range shapes {
		spec := Spec{Shape: s}
		if _, _, ok := s.ends(); ok {
			spec.Partitions = []Partition{{At: s.Inside().Length / 2, Thickness: 0.05}}
		}
		x := must(t, spec)
		depth := x.Inside.Height / 3
		v := volume(t, x, depth)
		w, err := x.Working(depth, manway.SI)
		if want := fmt.Sprintf("%.2f L", v.In(manway.Litre)); err != nil || !strings.Contains(w.String(), want) || inches.MatchString(w.String()) {
			t.Errorf("%s: %v, no %s, or inches, in\n%s", name, err, want, w)
		}
		w, err = x.Working(depth, manway.US)
		if err != nil {
			t.Fatal(err)
		}
		text := w.String()
		want := fmt.Sprintf("%.2f gal", v.In(manway.Gallon))
		if !strings.Contains(text, want) || strings.Contains(text, "NaN") {
			t.Errorf("%s: no %s in\n%s", name, want, text)
		}
		if n := strings.Count(text, "= compartment ="); n != len(x.Compartments()) && len(spec.Partitions) > 0 {
			t.Errorf("%s: %d compartments in\n%s", name, n, text)
		}
	}
	x := must(t, Spec{Shape: shapes["box"]})
	if _, err := x.Working(99, manway.US); err == nil {
		t.Error("a depth above the roof was worked out")
	}
	s, err := x.ShellWeight(manway.Concrete{})
	if err != nil || !strings.Contains(s.Working(manway.US).String(), fmt.Sprintf("%.0f lb", s.Mass.In(manway.Pound))) {
		t.Errorf("%v\n%v", err, s.Working(manway.US))
	}
	if text := s.Working(manway.SI).String(); !strings.Contains(text, fmt.Sprintf("%.0f kg", float64(s.Mass))) || strings.Contains(text, "lb") {
		t.Error(text)
	}
}

// The drafted box by its working: the formula over h, Lf, Lh, Wf and Wh is that
// of the volume.
func TestBoxWorkingFormula(t *testing.T) {
	b := Box{Length: 2.5, Width: 1.4, Height: 1.6, FloorLength: 2.3, FloorWidth: 1.3}
	x := must(t, Spec{Shape: b})
	h := 0.7
	lh, wh := 2.3+0.2*h/1.6, 1.3+0.1*h/1.6
	if got, want := x.liquid(h), h*(2.3*1.3+(2.3*wh+lh*1.3)/2+lh*wh)/3; got-want > 1e-12 || want-got > 1e-12 {
		t.Errorf("%v, by the working %v", got, want)
	}
}

// The balance reads in the units that are asked for, and nothing else stands in
// it: a floating box by hand is in the tests of Float.
func TestFlotationWorkingUnits(t *testing.T) {
	box, err := New(Spec{Shape: Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch}})
	if err != nil {
		t.Fatal(err)
	}
	f, err := box.Float(FloatCase{Cover: 12 * manway.Inch})
	if err != nil {
		t.Fatal(err)
	}
	us, si := f.Working(manway.US).String(), f.Working(manway.SI).String()
	for _, c := range []struct {
		text        string
		has, hasNot []string
	}{{us, []string{"lbf", "lb/ft3", "ft3"}, []string{"kN", "kg/m3"}}, {si, []string{"kN", "kg/m3", "m3"}, []string{"lbf", "ft3"}}} {
		for _, unit := range c.has {
			if !strings.Contains(c.text, unit) {
				t.Errorf("no %s in\n%s", unit, c.text)
			}
		}
		for _, unit := range c.hasNot {
			if strings.Contains(c.text, unit) {
				t.Errorf("%s in\n%s", unit, c.text)
			}
		}
	}
}

// A balance that somebody made by hand, with weights of soil and no soil, is still
// written in figures.
func TestWorkingOfABalanceMadeByHand(t *testing.T) {
	f := Flotation{MoistSoil: 2000, SubmergedSoil: 1000, Down: 3000, Uplift: 4000, Factor: 0.75}
	for _, sys := range []manway.System{manway.US, manway.SI} {
		if text := f.Working(sys).String(); strings.Contains(text, "Inf") || strings.Contains(text, "NaN") {
			t.Error(text)
		}
	}
}
