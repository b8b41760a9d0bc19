package riser

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"manway.example/manway"
)

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*max(math.Abs(want), 1e-300)) && got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// TestReachStandsAsAsked: where the reveal is measured, the finished top stands
// that high once it has settled, on any ground.
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

// TestReachAtTheRoof: a roof near grade needs no ring, and the cover on it
// stands as high as it is thick.
func TestReachAtTheRoof(t *testing.T) {
	r := must(ReachOf(Access{Cover: 2 * manway.Inch, CoverThickness: 4 * manway.Inch}))
	if !r.NoRing || r.Height != 0 || r.Centre.String() != "2 in" {
		t.Errorf("got %+v", r)
	}
}

// TestOneAnswerInBothSystems: the same lengths in inches and in millimetres.
func TestOneAnswerInBothSystems(t *testing.T) {
	us := must(DigOf(Pit{Length: 30 * manway.Inch, Working: 12 * manway.Inch, Depth: 40 * manway.Inch, Ground: 5 * manway.Degree}))
	si := must(DigOf(Pit{Length: 762 * manway.Millimetre, Working: 304.8 * manway.Millimetre, Depth: 1016 * manway.Millimetre, Ground: 5 * manway.Degree}))
	near(t, "hole", float64(us.Hole), float64(si.Hole), 1e-12)
	near(t, "spoil", float64(us.Spoil), float64(si.Spoil), 1e-12)
	a := must(LeakOf(OpenJoint{Length: 90 * manway.Inch, Gap: manway.Inch / 8, Wall: 3 * manway.Inch, Depth: 30 * manway.Inch}))
	b := must(LeakOf(OpenJoint{Length: 2286 * manway.Millimetre, Gap: 3.175 * manway.Millimetre, Wall: 76.2 * manway.Millimetre, Depth: 762 * manway.Millimetre}))
	near(t, "orifice", float64(a.Orifice), float64(b.Orifice), 1e-12)
	near(t, "slot", float64(a.Slot), float64(b.Slot), 1e-12)
}

// TestHoleAgainstColumns compares the pit's volume and top with the sum of thin
// upright columns, on level and on sloping ground.
func TestHoleAgainstColumns(t *testing.T) {
	for _, p := range []Pit{
		{Length: 4 * manway.Foot, Width: 6 * manway.Foot, Depth: 4 * manway.Foot},
		{Length: 3 * manway.Foot, Width: 7 * manway.Foot, Working: manway.Foot, Depth: 3 * manway.Foot, Ground: 9 * manway.Degree, Type: TypeBDeclared},
		{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 3 * manway.Foot},
		{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 3 * manway.Foot, Ground: 12 * manway.Degree},
		{Length: 30 * manway.Inch, Width: 50 * manway.Inch, Depth: 3 * manway.Foot, Ground: 6 * manway.Degree, Shored: true},
		{Length: 30 * manway.Inch, Depth: 3 * manway.Foot, Ground: 6 * manway.Degree, Shored: true},
	} {
		d := must(DigOf(p))
		volume, area := columns(p)
		near(t, "volume of "+d.Top[0].String(), float64(d.Hole), volume, 4e-3) // the columns at the rim are whole or missing
		near(t, "top of "+d.Top[0].String(), float64(d.TopArea), area, 4e-3)
	}
}

// columns sums a pit's columns over a grid of the plan.
func columns(p Pit) (volume, area float64) {
	a, b, g := float64(p.Length+2*p.Working), float64(p.Width+2*p.Working), math.Tan(float64(p.Ground))
	slope := p.Type.Slope()
	const step = 0.005
	for x := -4.0; x < 4; x += step {
		for y := -3.5; y < 3.5; y += step {
			var out float64 // beyond the bottom's edge
			u, v := x+step/2, y+step/2
			if p.Width == 0 {
				out = math.Hypot(u, v) - a/2
			} else {
				out = max(math.Abs(u)-a/2, math.Abs(v)-b/2)
			}
			high := float64(p.Depth) + g*u
			switch {
			case out > 0 && p.Shored:
				continue
			case out > 0:
				high -= out / slope
			}
			if high > 0 {
				volume += high * step * step
				area += step * step
			}
		}
	}
	return volume, area
}

// TestHoleIsSteady: the formulas for sloping ground tend to those for level
// ground, and a level pit does not care which side is its length.
func TestHoleIsSteady(t *testing.T) {
	for _, width := range []manway.Length{0, 5 * manway.Foot} {
		level := must(DigOf(Pit{Length: 4 * manway.Foot, Width: width, Depth: 3 * manway.Foot}))
		slight := must(DigOf(Pit{Length: 4 * manway.Foot, Width: width, Depth: 3 * manway.Foot, Ground: 1e-6}))
		near(t, "slight slope", float64(slight.Hole), float64(level.Hole), 1e-9)
	}
	ab := must(DigOf(Pit{Length: 4 * manway.Foot, Width: 7 * manway.Foot, Depth: 3 * manway.Foot}))
	ba := must(DigOf(Pit{Length: 7 * manway.Foot, Width: 4 * manway.Foot, Depth: 3 * manway.Foot}))
	near(t, "turned", float64(ab.Hole), float64(ba.Hole), 1e-12)
}

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

// TestLeakLaws: an orifice grows with the gap and the root of the head, a slot
// with the cube of the gap and the head; above the water nothing flows.
func TestLeakLaws(t *testing.T) {
	base := OpenJoint{Length: 7 * manway.Foot, Gap: manway.Inch / 64, Wall: 3 * manway.Inch, Depth: 3 * manway.Foot, Water: manway.GroundwaterAt(2 * manway.Foot)}
	a := must(LeakOf(base))
	wide := base
	wide.Gap *= 2
	b := must(LeakOf(wide))
	near(t, "orifice by gap", float64(b.Orifice/a.Orifice), 2, 1e-12)
	near(t, "slot by gap", float64(b.Slot/a.Slot), 8, 1e-12)
	deep := base
	deep.Water = manway.GroundwaterAt(0)
	deep.Depth = 4 * manway.Foot // four times the head of 1 ft
	c := must(LeakOf(deep))
	near(t, "orifice by head", float64(c.Orifice/a.Orifice), 2, 1e-12)
	near(t, "slot by head", float64(c.Slot/a.Slot), 4, 1e-12)
	dry := base
	dry.Water = manway.GroundwaterAt(5 * manway.Foot)
	if d := must(LeakOf(dry)); !d.Dry || d.Least != 0 {
		t.Errorf("above the water: %+v", d)
	}
	unknown := base
	unknown.Water = manway.Groundwater{}
	if u := must(LeakOf(unknown)); u.Head != base.Depth || !u.Assumed.Has(manway.AssumedGroundwaterAtGrade) {
		t.Errorf("unknown water: %+v", u)
	}
}

// TestUpliftIsDisplacement: closed below, the uplift is the weight of the water
// that the shaft displaces; open, that of its wall alone.
func TestUpliftIsDisplacement(t *testing.T) {
	l := Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Base: 3 * manway.Foot, Water: manway.GroundwaterAt(manway.Foot), Anchors: 4}
	open := must(UpliftOf(l))
	wall := Ring{Height: 2 * manway.Foot, Bore: l.Bore, Outside: l.Outside}
	near(t, "open", float64(open.Up), float64(must(RingMass(wall, manway.WaterDensity)).Weight()), 1e-12)
	l.Closed = true
	closed := must(UpliftOf(l))
	full := math.Pi / 4 * l.Outside.Times(l.Outside).Times(2*manway.Foot)
	near(t, "closed", float64(closed.Up), float64(full.Times(manway.WaterDensity).Weight()), 1e-12)
	near(t, "each anchor", float64(4*closed.Each), 1.5*float64(closed.Up), 1e-12)
	l.Water = manway.GroundwaterAt(4 * manway.Foot)
	if dry := must(UpliftOf(l)); !dry.NoUplift || dry.Lifts || dry.Fasten != 0 {
		t.Errorf("no water: %+v", dry)
	}
}

// TestUpliftFlangeWater: water presses on a flange from both sides, so a wider
// flange only adds soil.
func TestUpliftFlangeWater(t *testing.T) {
	l := Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Base: 3 * manway.Foot, Water: manway.GroundwaterAt(0)}
	bare := must(UpliftOf(l))
	l.Flange = 36 * manway.Inch
	wide := must(UpliftOf(l))
	if wide.Up != bare.Up || !(wide.Soil > 0) || !(wide.Safety > bare.Safety) {
		t.Errorf("bare %+v wide %+v", bare, wide)
	}
}

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

// TestWheelPressesMost: no distance from the wall presses more than the one
// taken, unless the wheel cannot come so near.
func TestWheelPressesMost(t *testing.T) {
	w := Wall{Diameter: 24 * manway.Inch, Thickness: manway.Inch / 2, Modulus: 22000 * manway.PSI, Poisson: 0.4}
	s := Surround{Depth: 3 * manway.Foot, Wheel: manway.PickupWheel, Water: manway.GroundwaterAt(10 * manway.Foot)}
	most := must(w.Press(s))
	for x := manway.Length(0.1); x < 10; x += 0.1 {
		s.Away = x
		if p := must(w.Press(s)); p.Wheel > most.Wheel*(1+1e-12) {
			t.Errorf("at %v: %v above %v", x, p.Wheel, most.Wheel)
		}
	}
	if p := must(w.Press(s)); !(p.Wheel < most.Wheel/2) || p.From < 9 {
		t.Errorf("a wheel 10 m away presses %v", p.Wheel)
	}
}

// TestWallDeflection: a wall of pipe stiffness 46 psi in soil of 1,000 psi under
// 10 ft of 120 lb/ft3 is flattened by 1.228 percent (by hand: 0.1 x 8.333/(0.149
// x 46 + 61)).
func TestWallDeflection(t *testing.T) {
	w := Wall{Diameter: 24 * manway.Inch, Thickness: manway.Inch}
	w.Modulus = manway.Pressure(46 * 0.149 * 12 * 12 * 12 * 12 * float64(manway.PSI))
	dx := must(w.Deflection(Squash{Load: 1200 * manway.PSF, Reaction: 1000 * manway.PSI}))
	near(t, "deflection", dx, 0.1*1200/144/(0.149*46+61), 1e-12)
}
