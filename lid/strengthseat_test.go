package lid

import (
	"math"
	"testing"

	"manway.example/manway"
)

func chipsOf(along ...manway.Length) []Chip {
	var list []Chip
	for _, a := range along {
		list = append(list, Chip{Along: a, In: 3 * manway.Inch, Height: manway.Inch})
	}
	return list
}

// A person at the rim of a disc on three points, midway between two of them: each
// of those carries 1/3 + b/(3 a) of him, at 0.866 a from the section through him
// and the middle. Over that section, 2 a long, the moments add up to that less
// what half his boots, w/4 off it, take away; the greatest is more than the mean.
func TestPersonAtTheRimOfAChippedSeat(t *testing.T) {
	c := StrengthCase{Seat: onTop(), Steel: quarterInchMesh(), Person: manway.Person{Mass: 300 * manway.Pound}}
	c.Seat.Chips = chipsOf(3 * manway.Inch)
	s := strengthOf(t, disc24(), c)
	a, w := s.Span.In(manway.Inch)/2, 3*math.Sqrt(math.Pi)
	b := math.Sqrt(a*a-w*w/4) - w/2
	mean := 300 * ((1./3+b/(3*a))*math.Sqrt(3)/2*a - w/8) / (2 * a)
	got := (named(t, s, "bending, a person").Unfactored - named(t, s, "bending, own weight").Unfactored) / float64(manway.PoundForceFootPerFoot)
	if !(got > mean && got < 2*mean) {
		t.Errorf("%g lbf in/in, the mean of the section is %g", got, mean)
	}
	if middle := 300 / (4 * math.Pi) * (1.2*math.Log(a/3) + 1 - 0.8*9/(4*a*a)); !(got > 1.5*middle) {
		t.Errorf("%g lbf in/in at the rim, %g in the middle of a whole seat", got, middle)
	}
}

// A chip of half the rim leaves the middle of the lid on the line between the ends
// of the bearing: whoever steps on it tips it, and nothing is shown. A chip of 40
// percent: the line lies a cos 72 deg = 0.309 a from the middle.
func TestLongChip(t *testing.T) {
	heavy := disc24()
	heavy.Overburden.Depth = 4 * manway.Foot
	steel := quarterInchMesh()
	steel.Spacing = 2 * manway.Inch
	around := manway.Length(22*math.Pi) * manway.Inch // the middle of the bearing
	for _, c := range []struct{ share, hold float64 }{{0.5, 0}, {0.4, 0.30902}, {0.2, 0.5}} {
		k := StrengthCase{Seat: onTop(), Steel: steel}
		k.Seat.Chips = chipsOf(manway.Length(c.share) * around)
		s := strengthOf(t, heavy, k)
		tip := named(t, s, "does not tip on three points")
		radius := float64(s.Span) / 2
		if want := c.hold * radius * float64(s.Dead); !(math.Abs(tip.Capacity-want) <= 1e-4*float64(s.Dead)) {
			t.Errorf("chip of %g: holds %g, want %g", c.share, tip.Capacity, want)
		}
		if want := (1 - c.hold) * radius * 300 * float64(manway.PoundForce); !(math.Abs(tip.Demand-want) <= 1e-4*want) {
			t.Errorf("chip of %g: tips %g, want %g", c.share, tip.Demand, want)
		}
		own := named(t, s, "bending, own weight")
		if want := map[bool]manway.Status{true: manway.NotShown, false: manway.Pass}[c.share > 1./3]; own.Status != want {
			t.Errorf("chip of %g: own weight %v, want %v (%g of %g)", c.share, own.Status, want, own.Demand, own.Capacity)
		}
		if c.share > 1./3 && s.Known {
			t.Errorf("chip of %g: a heaviest person is given", c.share)
		}
	}
}

// A tire of 10 in by 20 in in the middle of a disc of 24 in bends it across the
// tire. A force at rho from the middle (of a radius 1) gives there, by the first
// and the third term of its Fourier series, with nu = 0.2,
//
//	(Mx + My)/2 = 1/(4 pi) ((1 + nu) ln(1/rho) + (1 - nu)(1 - rho2)/2)
//	(Mx - My)/2 = -(1 - nu)/(8 pi) (1 - rho2 + rho4/3 - (4/3 (1 - nu) rho4 + 2 (1 + nu) rho2)/(10 + 2 nu)) cos(2 theta)
//
// and their mean over the tire is taken here.
func TestTireOnADisc(t *testing.T) {
	const n, nu = 400, 0.2
	sum := 0.0
	for i := range n {
		for k := range n {
			x, y := 5*((float64(i)+0.5)/n)/12, 10*((float64(k)+0.5)/n)/12
			r2 := x*x + y*y
			mean := (-(1+nu)*math.Log(r2)/2 + (1-nu)*(1-r2)/2) / (4 * math.Pi)
			b := (r2*r2*(1-nu)*4/3 + r2*(2+2*nu)) / (10 + 2*nu)
			dev := -(1 - nu) / (16 * math.Pi) * (2 - 2*(r2-r2*r2/3) - 2*b)
			sum += (mean + dev*(x*x-y*y)/r2) / (n * n)
		}
	}
	c := StrengthCase{Seat: Seat{Fit: OnTop}, Steel: quarterInchMesh(), Wheels: []manway.Wheel{manway.TruckWheel}}
	s := strengthOf(t, disc24(), c)
	want := sum * 1.33 * 16000
	got := (named(t, s, "bending, truck").Unfactored - named(t, s, "bending, own weight").Unfactored) / float64(manway.PoundForceFootPerFoot)
	if !(math.Abs(got/want-1) <= 1e-3) {
		t.Errorf("%g lbf in/in, want %g", got, want)
	}
	if force := named(t, s, "punching, truck").Unfactored / float64(manway.PoundForce); !(math.Abs(force/21280-1) <= 1e-9) {
		t.Errorf("a tire of 22.4 in across is wholly on the lid: %g lbf of 21280", force)
	}
}

// Where the disc is smaller than the tire only the part on it counts: the disc
// itself where the tire covers it.
func TestTireOnASmallDisc(t *testing.T) {
	for _, c := range []struct{ length, width, radius, want float64 }{
		{10, 20, 12, 200},
		{30, 30, 12, math.Pi * 144},
		{2e-3, 30, 12, 2e-3 * 24}, // a thin strip across it
		{24, 24 * math.Cos(math.Pi/6), 12, // a strip cut off at 30 degrees on both sides: the disc less two segments
			math.Pi*144 - 144*(math.Pi/3-math.Sin(math.Pi/3))},
	} {
		if got := onDisc(c.length, c.width, c.radius); !(math.Abs(got/c.want-1) <= 1e-6) {
			t.Errorf("%g x %g on %g: %g, want %g", c.length, c.width, c.radius, got, c.want)
		}
	}
}

func TestRoundPiecesAreNotJudged(t *testing.T) {
	l := disc24()
	l.Pieces = 2
	s := strengthOf(t, l, StrengthCase{Seat: onTop(), Steel: quarterInchMesh()})
	if s.Known || s.Governs != -1 || !s.Cautions.Has(manway.KeepOffRoof) || len(s.Checks) > 1 {
		t.Errorf("half a disc is judged as a whole one: %+v", s.Checks)
	}
}

// At a side that bears nothing a load spreads to one side only: a boot of 5.317 in
// with the steel at d in, (1.6 x 300)/(5.317 + d).
func TestShearAtAFreeSide(t *testing.T) {
	piece := Lid{Shape: Slab, Length: 48 * manway.Inch, Width: 16 * manway.Inch, Thickness: 4 * manway.Inch, Pieces: 3, Moisture: Dry}
	for pieces, spread := range map[int]float64{3: 1, 1: 2} {
		piece.Pieces = pieces
		s := strengthOf(t, piece, StrengthCase{Seat: Seat{Fit: OnTop, Opening: 14 * manway.Inch, OpeningLong: 44 * manway.Inch}, Steel: quarterInchMesh()})
		d := 4 - 0.75 - 0.375 // less a bar and a half
		dead := s.judged.q * max(float64(s.Span)/2-d*float64(manway.Inch), 0)
		live := named(t, s, "one-way shear, a person").Unfactored - dead
		want := 300 / (3*math.Sqrt(math.Pi) + spread*d)
		if got := live / float64(manway.PoundForcePerInch); !(math.Abs(got/want-1) <= 1e-6) {
			t.Errorf("%d pieces: %g lbf/in, want %g", pieces, got, want)
		}
	}
}

// Property (two ways): on a lid so small that the boots of a person, 3 in x sqrt(pi)
// = 5.3 in square, are longer than half of it, they stand on its middle half. A
// wheel that presses on that half with as much, 300 lb of which a third is its
// impact (AASHTO LRFD: 33 percent without cover), bends the lid as much.
func TestBootsOnASmallLid(t *testing.T) {
	slab := Lid{Shape: Slab, Length: 10 * manway.Inch, Width: 8 * manway.Inch, Thickness: 2 * manway.Inch, Moisture: Dry}
	steel := quarterInchMesh()
	steel.Spacing = 2 * manway.Inch
	c := StrengthCase{Seat: Seat{Fit: OnTop, Opening: 6 * manway.Inch, OpeningLong: 8 * manway.Inch}, Steel: steel, Person: manway.Person{Mass: 300 * manway.Pound}}
	s := strengthOf(t, slab, c)
	wheel := manway.Wheel{Name: "half the lid", Load: 300 * manway.PoundForce / 1.33, Length: s.Long / 2, Width: s.Span / 2}
	c.Wheels = []manway.Wheel{wheel}
	s = strengthOf(t, slab, c)
	person, other := named(t, s, "bending, a person").Unfactored, named(t, s, "bending, half the lid").Unfactored
	if math.Abs(person/other-1) > 1e-9 {
		t.Errorf("a person bends it by %g, the wheel by %g", person, other)
	}
}
