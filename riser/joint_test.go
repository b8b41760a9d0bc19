package riser

import (
	"math"
	"math/rand/v2"
	"testing"

	"manway.example/manway"
)

// Property (two ways): cement right through the wall fills the joint, from either
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

// Property (bounded): whatever the joint, the strip fills at least half of it with
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
		if n.Fill < halfVolume*(1-1e-9) || n.Runs > 1 && n.Fill*float64(n.Runs-1)/float64(n.Runs) >= halfVolume {
			t.Fatalf("%+v: %+v", j, n)
		}
		near(t, "rolls", float64(n.Length+n.Left), float64(manway.Length(n.Rolls)*n.Roll), 1e-9)
	}
}

// Property (balance): the two edges of a joint are together as long as twice its
// centreline, its volume is that of the outer body less the inner one, and a
// joint twice as large has twice the length and eight times the volume.
func TestJointLengths(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 8))
	for range 500 {
		in := manway.Length(6+rng.Float64()*50) * manway.Inch
		j := Joint{Inside: in, Outside: in + manway.Length(1+rng.Float64()*20)*manway.Inch, Closed: manway.Length(0.1+rng.Float64()) * manway.Inch, Square: rng.IntN(2) == 0}
		near(t, "edges", float64(j.InsideLength()+j.OutsideLength()), float64(2*j.Length()), 1e-12)
		across := func(d manway.Length) float64 { // area within a diameter or side
			if j.Square {
				return float64(d.Times(d))
			}
			return math.Pi / 4 * float64(d.Times(d))
		}
		near(t, "volume", float64(j.Volume()), (across(j.Outside)-across(j.Inside))*float64(j.Closed), 1e-11)
		near(t, "wall", float64(j.Inside+2*j.Wall()), float64(j.Outside), 1e-12)
		twice := Joint{2 * j.Inside, 2 * j.Outside, j.Square, 2 * j.Closed}
		near(t, "length of one twice as large", float64(twice.Length()), float64(2*j.Length()), 1e-12)
		near(t, "volume of one twice as large", float64(twice.Volume()), float64(8*j.Volume()), 1e-12)
	}
}

// Property (additive): beads along both edges take the sealant of one along
// each, and a tube gives the length that its volume fills; half the width gives
// twice the length.
func TestBeadAddsUp(t *testing.T) {
	j := Joint{Inside: 24 * manway.Inch, Outside: 30 * manway.Inch, Closed: manway.Inch / 2}
	for _, round := range []bool{false, true} {
		b := Bead{Width: manway.Inch / 2, Depth: manway.Inch / 2, Round: round, Tube: 300 * manway.Millilitre}
		inner, outer, both := b, b, b
		inner.Inner, outer.Outer, both.Inner, both.Outer = true, true, true, true
		a, c, all := must(j.Bead(inner)), must(j.Bead(outer)), must(j.Bead(both))
		near(t, "length", float64(a.Length+c.Length), float64(all.Length), 1e-12)
		near(t, "volume", float64(a.Volume+c.Volume), float64(all.Volume), 1e-12)
		near(t, "bought", float64(all.Volume+all.Left), float64(manway.Volume(all.Tubes)*b.Tube), 1e-12)
		near(t, "volume of one yield", float64(all.Volume)/float64(all.Length)*float64(b.Yield()), float64(b.Tube), 1e-12)
		thin := b
		thin.Width /= 2
		near(t, "half the width", float64(thin.Yield()), float64(2*b.Yield()), 1e-12)
	}
}

// Property (bounded): the packs bought give the volume, and one less does not.
// Property (additive): strip for several joints is that of one, so many times,
// with rolls counted over all of them.
func TestBoughtIsEnough(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 2))
	for range 500 {
		p := MixBag(manway.Mass(20+rng.Float64()*80) * manway.Pound)
		v := manway.Volume(rng.Float64()*3) * manway.CubicFoot
		n := must(p.For(v))
		if short := manway.Volume(n.Packs-1) * p.Yield; manway.Volume(n.Packs)*p.Yield < v*(1-1e-9) || n.Packs > 0 && short >= v {
			t.Fatalf("%d packs of %v for %v", n.Packs, p.Yield, v)
		}
	}
	one := must(benchJoint.Strip(Strip{Width: manway.Inch, Height: manway.Inch, Roll: 14.5 * manway.Foot, Overlap: 2 * manway.Inch}))
	for joints := range 12 {
		all := must(one.Times(joints))
		near(t, "length", float64(all.Length), float64(joints)*float64(one.Length), 1e-12)
		near(t, "bought", float64(all.Length+all.Left), float64(manway.Length(all.Rolls)*all.Roll), 1e-9)
		if all.Rolls > joints*one.Rolls || all.Left >= all.Roll {
			t.Errorf("%d joints: %+v", joints, all)
		}
	}
}
