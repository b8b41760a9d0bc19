package riser

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"manway.example/manway"
)

// TestTieRoundTrip: points on either side of the line come back from their
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

// TestTiesThatDoNotMeet are refused, and the triangle of 3, 4 and 5 is where it
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
