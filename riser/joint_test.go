package riser

import (
	"math/rand/v2"
	"testing"

	"manway.example/manway"
)

// TestJointVolume: cement right through the wall fills the joint, from either
// side, round and square.
func TestJointVolume(t *testing.T) {
	for _, square := range []bool{false, true} {
		j := Joint{Inside: 24 * manway.Inch, Outside: 30 * manway.Inch, Closed: manway.Inch / 2, Square: square}
		for _, outside := range []bool{false, true} {
			need := must(j.Cement(j.Wall(), outside, MixBag(80*manway.Pound)))
			near(t, "through the wall", float64(need.Volume), float64(j.Volume()), 1e-12)
		}
		if !(j.InsideLength() < j.Length() && j.Length() < j.OutsideLength()) {
			t.Errorf("lengths %v %v %v", j.InsideLength(), j.Length(), j.OutsideLength())
		}
	}
}

// TestStripFills: whatever the joint, the strip fills at least half of it with
// the fewest runs.
func TestStripFills(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 2000 {
		in := manway.Length(12+rng.Float64()*36) * manway.Inch
		j := Joint{Inside: in, Outside: in + manway.Length(2+rng.Float64()*10)*manway.Inch, Closed: manway.Length(0.2+rng.Float64()) * manway.Inch}
		n, err := j.Strip(Strip{Width: manway.Inch, Height: manway.Inch, Roll: 14.5 * manway.Foot, Overlap: 2 * manway.Inch})
		if err != nil {
			continue // the runs do not fit
		}
		if n.Fill < HalfVolume*(1-1e-9) || n.Runs > 1 && n.Fill*float64(n.Runs-1)/float64(n.Runs) >= HalfVolume {
			t.Fatalf("%+v: %+v", j, n)
		}
		near(t, "rolls", float64(n.Length+n.Left), float64(manway.Length(n.Rolls)*n.Roll), 1e-9)
	}
}
