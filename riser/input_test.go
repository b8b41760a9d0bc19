package riser

import (
	"errors"
	"math"
	"testing"

	"manway.example/manway"
)

// TestEveryFaultIsNamed: each calculation tells all that is wrong at once, by the
// path of the field.
func TestEveryFaultIsNamed(t *testing.T) {
	nan := manway.Length(math.NaN())
	fails := func(_ any, err error) error { return err }
	for _, c := range []struct {
		name string
		err  error
		want []string
	}{
		{"reach", fails(ReachOf(Access{Cover: -1, Slope: 2, Reveal: nan, From: 7})), []string{"Cover", "Slope", "Span", "From", "Reveal"}},
		{"reach cut below the roof", fails(ReachOf(Access{Cover: 0.1, GradeRise: -0.2})), []string{"GradeRise"}},
		{"stack", fails(StackOf([]Ring{{Height: 1e9, Bore: 1, Cost: -1}}, Need{Port: nan, Covers: []Cover{{Fits: 1, Stands: -1}}})),
			[]string{"rings[0].Height", "rings[0].Mass", "rings[0].Cost", "need.Port", "need.Covers[0].Stands"}},
		{"heights without a common step", fails(StackOf([]Ring{{Height: 0.1234567, Bore: 0.6, Mass: 9}, {Height: 0.2345678, Bore: 0.6, Mass: 9}, {Height: 0.3456781, Bore: 0.6, Mass: 9}}, Need{Port: 0.6, Gap: 3})), []string{"rings"}},
		{"ring mass", fails(RingMass(Ring{Height: 0.1, Bore: 0.6, Outside: 0.5}, 1)), []string{"Outside", "density"}},
		{"strip", fails(Joint{Inside: 1, Outside: 0.5, Closed: 0}.Strip(Strip{})), []string{"Joint.Outside", "Joint.Closed", "Width", "Height", "Roll"}},
		{"cement", fails(benchJoint.Cement(1, false, Pack{})), []string{"depth", "Pack.Mass", "Pack.Yield"}},
		{"pit", fails(DigOf(Pit{Length: nan, Depth: 7, Type: 9, Earth: 9, Density: 1, Refill: -1})), []string{"Length", "Depth", "Type", "Earth", "Density", "Refill"}},
		{"pit on a cliff", fails(DigOf(Pit{Length: 2, Depth: 0.2, Ground: 0.5})), []string{"Ground"}},
		{"more in the pit than its volume", fails(DigOf(Pit{Length: 0.5, Depth: 0.5, Standing: 99})), []string{"Standing"}},
		{"leak", fails(LeakOf(OpenJoint{Length: 1, Gap: nan, Wall: 0.1, Water: manway.GroundwaterAt(-1), Design: 1e-12})), []string{"Gap", "Water.Depth", "Design"}},
		{"uplift", fails(UpliftOf(Light{Outside: 0.6, Bore: 0.7, Base: 0, Factor: 9})), []string{"Bore", "Base", "Factor"}},
		{"wall", fails(Wall{}.Press(Surround{})), []string{"Wall.Diameter", "Wall.Thickness", "Wall.Modulus", "Depth"}},
		{"tie", fails(Tie{FromA: -1}.Position()), []string{"Corners", "FromA"}},
		{"uncover", fails(Uncover(Buried{Diameter: 0.6, Depth: 1, Surface: 99})), []string{"Depth", "Surface"}},
		{"hose", fails(Hose{Along: -1}.Run()), []string{"Along", "Section"}},
		{"condition", fails(Defects(Condition{Roots: 9, SpallDepth: manway.Read(0.1), Thickness: manway.Read(0.05), CoverPresent: manway.Yes, Missing: manway.Yes})), []string{"Roots", "SpallDepth", "CoverPresent"}},
		{"remedies", fails(Remedies(Condition{Handle: 9}, Site{Bore: 1, Outside: 0.9, LocateDays: -1})), []string{"Condition.Handle", "Site.Outside", "Site.LocateDays"}},
	} {
		var faults manway.InputErrors
		if !errors.As(c.err, &faults) {
			t.Errorf("%s: got %v, want input errors", c.name, c.err)
			continue
		}
		for _, want := range c.want {
			found := false
			for _, f := range faults {
				found = found || f.Field == want
			}
			if !found {
				t.Errorf("%s: no fault of %s in: %v", c.name, want, c.err)
			}
		}
	}
}

// TestWordsReadBack: every word that is written is read.
func TestWordsReadBack(t *testing.T) {
	for i := range 3 {
		check(t, Edge(i), new(Edge))
		check(t, Earth(i), new(Earth))
	}
	for i := range 2 {
		check(t, SoilType(i), new(SoilType))
	}
	for i := range surfaces {
		check(t, Surface(i), new(Surface))
	}
}

func check[T comparable, P interface {
	*T
	UnmarshalText([]byte) error
}](t *testing.T, v T, into P) {
	t.Helper()
	text, err := any(v).(interface{ MarshalText() ([]byte, error) }).MarshalText()
	if err != nil {
		t.Fatal(err)
	}
	if err := into.UnmarshalText(text); err != nil || *into != v {
		t.Errorf("%v: read %v, %v", v, *into, err)
	}
	if into.UnmarshalText([]byte("no such word")) == nil {
		t.Errorf("%T: a word that is none was read", v)
	}
}
