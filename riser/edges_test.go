package riser

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway"
)

// The slot's formula holds below a Reynolds number of 2000 on twice the gap: for
// the gap at which it is 1990 by hand, g^3 = Re 12 mu^2 wall/(2 rho^2 g h), the flow
// is laminar, at 2010 it is not.
func TestLaminarBelow(t *testing.T) {
	const mu, wall, head = 1.307e-3, 0.0762, 0.3048
	density := float64(manway.WaterDensity)
	for re, laminar := range map[float64]bool{1990: true, 1999.9: true, 2000.1: false, 2010: false} {
		gap := math.Cbrt(re * 12 * mu * mu * wall / (2 * density * density * manway.StandardGravity * head))
		l := must(LeakOf(OpenJoint{Length: 1, Gap: manway.Length(gap), Wall: wall, Depth: 2 * head, Water: manway.GroundwaterAt(head)}))
		if math.Abs(l.Reynolds/re-1) > 1e-9 || l.Laminar != laminar {
			t.Errorf("Re %v: %v, laminar %v", re, l.Reynolds, l.Laminar)
		}
		if w := l.Working(manway.SI); w[0].Numbers != "609.6 mm - 304.8 mm" || w[0].Value != "304.8 mm" {
			t.Errorf("head %q = %q", w[0].Numbers, w[0].Value)
		}
		if l.Least != min(l.Slot, l.Orifice) {
			t.Errorf("the least of %v and %v is %v", l.Slot, l.Orifice, l.Least)
		}
	}
}

// A buried lid is uncovered by hand down to 2 ft, from no soil at all: the surface
// alone then takes its minutes, 1/2 a square foot of turf, and there is no trench
// that could cave in.
func TestUncoverAtTheSurface(t *testing.T) {
	u := must(Uncover(Buried{Diameter: 24 * manway.Inch}))
	near(t, "minutes", float64(u.Minutes/manway.Minute), math.Pi/4*9*0.5, 1e-9) // 24 + 2 x 6 in across
	if u.Soil != 0 || u.Cautions.Has(manway.TrenchCollapse) {
		t.Errorf("%+v", u)
	}
	if u = must(Uncover(Buried{Diameter: 24 * manway.Inch, Depth: manway.Inch})); !u.Cautions.Has(manway.TrenchCollapse) {
		t.Errorf("%+v", u)
	}
	// 1 ft of loam is pi/4 9 ft3 to dig at 2.20 and put back at 1.00 h a cubic metre.
	one := must(Uncover(Buried{Diameter: 24 * manway.Inch, Depth: manway.Foot}))
	near(t, "hours", float64(one.Minutes/manway.Hour), math.Pi/4*9*(0.5/60+0.028316846592*3.2), 1e-9)
	if _, err := Uncover(Buried{Diameter: 24 * manway.Inch, Depth: -1e-9}); err == nil {
		t.Error("less than no soil was taken")
	}
}

// A tape longer off than the distance it measured leaves the point unfixed.
func TestTapeOffByMoreThanItMeasured(t *testing.T) {
	for _, c := range []struct {
		a, b, tape float64 // in
		known      bool
	}{{60, 350, 2, true}, {1, 359.5, 2, false}, {359.5, 1, 2, false}, {200, 300, 0, true}} {
		p, err := Tie{Corners: 30 * manway.Foot, FromA: manway.Length(c.a) * manway.Inch, FromB: manway.Length(c.b) * manway.Inch, Tape: manway.Length(c.tape) * manway.Inch}.Position()
		if err != nil || p.OffKnown != c.known || !c.known && (p.Off != 0 || !p.Poor) {
			t.Errorf("%+v: %+v, %v", c, p, err)
		}
	}
}

// A stack in words: how many of which ring, and which is cut to what.
func TestStackInWords(t *testing.T) {
	rings := []Ring{{Code: "six", Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Mass: 60, CutStep: manway.Inch, Count: 3}}
	for gap, want := range map[manway.Length]string{12 * manway.Inch: "2 x six", 16 * manway.Inch: "2 x six + 1 x six cut to 4 in", 4 * manway.Inch: "1 x six cut to 4 in", 6 * manway.Inch: "1 x six"} {
		got := must(StackOf(rings, Need{Port: 24 * manway.Inch, Gap: gap}))
		if len(got.Best) == 0 || got.Best[0].String() != want {
			t.Errorf("%v: %v, want %q", gap, got.Best, want)
		}
	}
	if got := (Stack{}).String(); got != "no ring" {
		t.Errorf("%q", got)
	}
	w := Stack{Pieces: []Piece{{Count: 2, Height: 6 * manway.Inch}}, Cover: 0, Total: 15 * manway.Inch, Off: -manway.Inch}.Working(Need{Gap: 16 * manway.Inch, Joint: manway.Inch / 2, Covers: []Cover{{Stands: 2 * manway.Inch}}}, manway.US)
	if !strings.HasPrefix(w[0].Numbers, "2 x (6 in + 1/2 in) + 2 in") || w[0].Value != "1 ft 3 in" || w[1].Value != "-1 in" {
		t.Errorf("%v", w)
	}
}

// What lies on a buried lid, by a square foot of 36 in round (24 + 2 x 6): turf and
// loose gravel half a minute, pavers and a rooted bed two, bare soil none; asphalt, a
// slab or a deck is not lifted by hand. Common practice.
func TestSurfacesByHand(t *testing.T) {
	area := math.Pi / 4 * 9
	for s, want := range map[Surface]float64{Turf: 0.5, BareSoil: 0, LooseGravel: 0.5, Pavers: 2, RootedBed: 2, Asphalt: 0, ConcreteSlab: 0, Deck: 0} {
		u := must(Uncover(Buried{Diameter: 24 * manway.Inch, Surface: s}))
		near(t, s.String(), float64(u.Minutes/manway.Minute), area*want, 1e-9)
		if u.NotHand != (s == Asphalt || s == ConcreteSlab || s == Deck) {
			t.Errorf("%v by hand: %v", s, !u.NotHand)
		}
	}
}
