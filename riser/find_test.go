package riser

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"manway.example/manway"
)

// Property (inverse): points on either side of the line come back from their
// distances, within the stated error when the tape is off.
func TestTieRoundTrip(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for range 2000 {
		c := 10 + 40*rng.Float64()
		x, y := -20+80*rng.Float64(), 4+40*rng.Float64()
		a, b := math.Hypot(x, y), math.Hypot(x-c, y)
		p := must(Tie{Corners: manway.Length(c), FromA: manway.Length(a), FromB: manway.Length(b), Tape: 2 * manway.Inch}.Position())
		near(t, "along", float64(p.Along)+100, x+100, 1e-9)
		near(t, "out", float64(p.Out), y, 1e-6)
		if !p.OffKnown {
			continue
		}
		tape := float64(2 * manway.Inch)
		q, err := Tie{Corners: manway.Length(c), FromA: manway.Length(a + tape*(2*rng.Float64()-1)), FromB: manway.Length(b + tape*(2*rng.Float64()-1))}.Position()
		if err != nil {
			continue
		}
		if off := math.Hypot(float64(q.Along-p.Along), float64(q.Out-p.Out)); off > float64(p.Off)*1.05+1e-9 {
			t.Errorf("off by %v, said at most %v (angle %v)", off, p.Off, p.Angle)
		}
	}
}

// Ties that do not meet are refused, and the triangle of 3, 4 and 5 is where it
// is.
func TestTiesThatDoNotMeet(t *testing.T) {
	if _, err := (Tie{Corners: 30 * manway.Foot, FromA: 10 * manway.Foot, FromB: 12 * manway.Foot}).Position(); err == nil || !strings.Contains(err.Error(), "FromB") {
		t.Errorf("got %v", err)
	}
	p := must(Tie{Corners: 5 * manway.Foot, FromA: 3 * manway.Foot, FromB: 4 * manway.Foot}.Position())
	near(t, "along", p.Along.In(manway.Foot), 1.8, 1e-12)
	near(t, "out", p.Out.In(manway.Foot), 2.4, 1e-12)
	near(t, "angle", p.Angle.In(manway.Degree), 90, 1e-12)
}

// Property (symmetric): a hose is as long uphill as downhill, and the lifts of the
// two are as far from that on level ground. Property (additive): a longer pull is
// laid in as many sections as both its parts, or one less.
func TestHoseUpAndDown(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 90))
	for range 500 {
		h := Hose{Along: manway.Length(rng.Float64()*500) * manway.Foot, Fall: manway.Length(rng.Float64()*40) * manway.Foot, Inlet: 4 * manway.Foot, Bottom: 8 * manway.Foot, Section: 25 * manway.Foot}
		down := must(h.Run())
		h.Fall = -h.Fall
		up := must(h.Run())
		level := must(Hose{Along: h.Along, Inlet: h.Inlet, Bottom: h.Bottom, Section: h.Section}.Run())
		near(t, "length", float64(up.Length), float64(down.Length), 1e-12)
		near(t, "lift", float64(up.Lift+down.Lift), float64(2*level.Lift), 1e-9)
		a := must(Hose{Along: h.Along, Section: h.Section}.Run())
		b := must(Hose{Along: 100 * manway.Foot, Section: h.Section}.Run())
		both := must(Hose{Along: h.Along + 100*manway.Foot, Section: h.Section}.Run())
		near(t, "pull", float64(both.Length), float64(a.Length+b.Length), 1e-12)
		if n := a.Sections + b.Sections; both.Sections != n && both.Sections != n-1 {
			t.Errorf("%d sections for %d and %d", both.Sections, a.Sections, b.Sections)
		}
	}
}

// Property (scaling): twice as deep is twice the soil and, on bare soil, twice the
// time; heavier ground takes longer, and a surface never saves time.
func TestUncoverByDepth(t *testing.T) {
	last := manway.Duration(0)
	for _, e := range []Earth{Sand, Loam, Clay} {
		b := Buried{Diameter: 24 * manway.Inch, Depth: 6 * manway.Inch, Surface: BareSoil, Earth: e}
		once := must(Uncover(b))
		b.Depth *= 2
		twice := must(Uncover(b))
		near(t, "soil", float64(twice.Soil), float64(2*once.Soil), 1e-12)
		near(t, "minutes", float64(twice.Minutes), float64(2*once.Minutes), 1e-12)
		if once.Minutes <= last {
			t.Errorf("%v takes %v, the lighter ground before it %v", e, once.Minutes, last)
		}
		last = once.Minutes
		for s := range Surface(len(surfaces)) {
			b.Surface = s
			if u := must(Uncover(b)); u.Minutes < twice.Minutes || u.NotHand == surfaces[s].hand {
				t.Errorf("%v: %+v, bare %v", s, u, twice.Minutes)
			}
		}
	}
}

// Two tapes that fall short of each other by what both may be off still meet, on
// the line of the corners, and no shorter ones do; nor two that differ by more than
// the corners and both tapes.
func TestTapesThatJustMeet(t *testing.T) {
	const hair = 1e-6
	for _, c := range []struct {
		a, b  float64 // feet
		meets bool
	}{{10, 19 + hair, true}, {10, 19 - hair, false}, {45, 14 - hair, false}, {45, 14 + hair, true}, {14 + hair, 45, true}, {14 - hair, 45, false}} {
		p, err := Tie{Corners: 30 * manway.Foot, FromA: manway.Length(c.a) * manway.Foot, FromB: manway.Length(c.b) * manway.Foot, Tape: 6 * manway.Inch}.Position()
		if c.meets != (err == nil) || err == nil && (p.Out != 0 || p.OffKnown) {
			t.Errorf("%v and %v ft over 30: %+v, %v", c.a, c.b, p, err)
		}
	}
}
