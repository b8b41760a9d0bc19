package lid

import (
	"math"
	"testing"

	"manway.example/manway"
)

// clears says by turning the lid in small steps whether it can be tipped out
// of a recess: every corner below the top of the recess must stay clear of
// the walls. It slides the pivot along as a crew would, to wherever the far
// wall lets it.
func clears(width, deep, gap float64) bool {
	for i := 1; i <= 200000; i++ {
		a := float64(i) / 200000 * math.Asin(math.Min(1, deep/width))
		sin, cos := math.Sincos(a)
		// Far side leans back over the far wall's top edge: it pushes the pivot in.
		pivot := deep * sin / cos
		near := pivot + width*cos // near lower corner
		if width*sin < deep && near > width+gap {
			return false
		}
	}
	return true
}

// Property (two ways): the play that tipping needs is found by turning the lid in
// small steps.
func TestTipGapLetIn(t *testing.T) {
	for _, c := range []struct{ width, deep float64 }{{24, 4}, {24, 1}, {18, 3}, {36, 6}} {
		l := Lid{Shape: Disc, Diameter: manway.Length(c.width) * in, Thickness: manway.Length(c.deep) * in}
		s, err := l.Sit(Seat{Fit: LetIn})
		if err != nil {
			t.Fatal(err)
		}
		need := s.TipGap.In(in)
		if !clears(c.width, c.deep, need*1.001) || clears(c.width, c.deep, need*0.99) {
			t.Errorf("%v: gap %v in is not the least that lets it tip", c, need)
		}
		if s.Tip != manway.Unknown || s.Slide != manway.No || s.Rise != l.Thickness {
			t.Errorf("%v: %+v", c, s)
		}
	}
}

// bevelClears turns a plug about its far top edge and looks whether its near
// lower corner leaves the seat's cone.
func bevelClears(top, bottom, thick float64) bool {
	run := (top - bottom) / 2
	x0, z0 := top-run, -thick // near lower corner, pivot at the origin
	for i := 1; i <= 20000; i++ {
		a := float64(i) / 20000 * math.Pi / 4
		sin, cos := math.Sincos(a)
		x, z := x0*cos-z0*sin, x0*sin+z0*cos
		if z >= 0 {
			break
		}
		wall := top + z/thick*run // of the seat at that height
		if x > wall+1e-9 {
			return false
		}
	}
	return true
}

func TestTipBevel(t *testing.T) {
	for _, c := range []struct{ top, bottom, thick float64 }{
		{26, 24, 4}, {24, 22, 3}, {24, 23.5, 4}, {24, 23, 6}, {20, 19.9, 3}, {20, 18.5, 3.7}, {30, 28, 5},
	} {
		l := Lid{Shape: BevelledPlug, Diameter: manway.Length(c.top) * in, BottomDiameter: manway.Length(c.bottom) * in, Thickness: manway.Length(c.thick) * in}
		s, err := l.Sit(Seat{Fit: Bevel})
		if err != nil {
			t.Fatal(err)
		}
		if want := answer(bevelClears(c.top, c.bottom, c.thick)); s.Tip != want {
			t.Errorf("%v: tip %v, turned in steps %v", c, s.Tip, want)
		}
		if (s.Leaves == LiftsStraight) != (s.Tip == manway.No) {
			t.Errorf("%v: %v beside tip %v", c, s.Leaves, s.Tip)
		}
	}
}

func TestTipStep(t *testing.T) {
	l := Lid{Shape: SteppedPlug, Diameter: 27 * in, BottomDiameter: 23 * in, Thickness: 5 * in, Flange: 2 * in}
	s, err := l.Sit(Seat{Fit: Step, Gap: 0.1 * in, GapKnown: true})
	if err != nil {
		t.Fatal(err)
	}
	// The near lower corner turns on an arc of radius sqrt(25^2 + 3^2).
	if want := math.Hypot(25, 3) - 25; !close(s.TipGap.In(in), want, 1e-9) || s.Tip != manway.No || !close(s.Rise.In(in), 3, 1e-12) {
		t.Errorf("%+v, want a gap of %v in", s, want)
	}
	s, _ = l.Sit(Seat{Fit: Step, Gap: 0.25 * in, GapKnown: true})
	if s.Tip != manway.Yes || s.Leaves != TipsOut {
		t.Errorf("with 1/4 in of play: %+v", s)
	}
}

func TestWedge(t *testing.T) {
	l := Lid{Shape: BevelledPlug, Diameter: 26 * in, BottomDiameter: 24 * in, Thickness: 4 * in, Measured: 170 * manway.Pound}
	for _, c := range []struct {
		friction Friction
		want     manway.Answer
	}{
		{Friction{0.3, 0.6}, manway.Yes},     // tangent 1/4 below both
		{Friction{0.1, 0.2}, manway.No},      // above both
		{Friction{0.2, 0.3}, manway.Unknown}, // between
	} {
		s, err := l.Sit(Seat{Fit: Bevel, Friction: c.friction})
		if err != nil {
			t.Fatal(err)
		}
		if s.Wedges != c.want {
			t.Errorf("%v: wedges %v, want %v", c.friction, s.Wedges, c.want)
		}
		if (s.Extra > 0) != (c.want != manway.No) {
			t.Errorf("%v: extra %v", c.friction, s.Extra)
		}
	}
	// Equilibrium of the wedge: pressed in by S, the side force N has
	// N (sin a + mu cos a) = S; pulled out, the extra is N (mu cos a - sin a).
	s, _ := l.Sit(Seat{Fit: Bevel, Friction: Friction{0.5, 0.5}, DrivenBy: 300 * manway.Pound})
	a := math.Atan(0.25)
	n := 470 / (math.Sin(a) + 0.5*math.Cos(a))
	if want := n * (0.5*math.Cos(a) - math.Sin(a)); !close(s.Extra.In(manway.PoundForce), want, 1e-9) {
		t.Errorf("extra %v, by equilibrium %v lbf", s.Extra, want)
	}
}

func TestFitsItsShape(t *testing.T) {
	for _, c := range []struct {
		shape string
		fit   Fit
	}{{"disc", Bevel}, {"slab", Step}, {"bevelled plug", Step}} {
		if _, err := lids[c.shape].Sit(Seat{Fit: c.fit}); len(fields(err)) != 1 {
			t.Errorf("%s on %v: %v", c.shape, c.fit, err)
		}
	}
}

// passesTurned turns a rectangle p x q by small steps and looks whether it
// goes into a x b.
func passesTurned(p, q, a, b float64) bool {
	for i := 0; i <= 90000; i++ {
		sin, cos := math.Sincos(float64(i) / 90000 * math.Pi / 2)
		if p*cos+q*sin <= a+1e-12 && p*sin+q*cos <= b+1e-12 {
			return true
		}
	}
	return false
}

func TestRectanglePasses(t *testing.T) {
	for _, a := range []float64{10, 16} {
		for _, b := range []float64{6, 10} {
			for p := 1.0; p < 20; p += 0.7 {
				for q := 0.5; q <= p; q += 0.9 {
					hole := [2]float64{math.Min(a, b), math.Max(a, b)}
					if got, want := rectanglePasses(p, q, hole), passesTurned(p, q, hole[1], hole[0]); got != want {
						t.Fatalf("%v x %v into %v: %v, turned %v", p, q, hole, got, want)
					}
				}
			}
		}
	}
}

func TestFalls(t *testing.T) {
	for _, c := range []struct {
		name string
		lid  Lid
		seat Seat
		want manway.Answer
	}{
		{"hole not measured", lids["disc"], Seat{}, manway.Unknown},
		{"disc over a smaller hole", lids["disc"], Seat{Opening: 20 * in}, manway.No},
		{"disc over a hole of its size", lids["disc"], Seat{Opening: 24 * in}, manway.Yes},
		{"slab falls through a square hole on its diagonal", Lid{Shape: Slab, Length: 24 * in, Width: 22 * in, Thickness: 3 * in}, Seat{Opening: 20 * in, OpeningLong: 20 * in}, manway.Yes},
		{"thick slab does not", Lid{Shape: Slab, Length: 24 * in, Width: 24 * in, Thickness: 8 * in}, Seat{Opening: 20 * in, OpeningLong: 20 * in}, manway.No},
		{"rim broken on both sides", lids["disc"], Seat{Opening: 20 * in, Chips: []Chip{{Along: 5 * in, In: 2 * in}, {Along: 5 * in, In: 2 * in}}}, manway.Unknown},
		{"disc on edge through a long hole", lids["disc"], Seat{Opening: 10 * in, OpeningLong: 30 * in}, manway.Yes},
	} {
		s, err := c.lid.Sit(c.seat)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if s.Falls != c.want {
			t.Errorf("%s: %v, want %v", c.name, s.Falls, c.want)
		}
	}
}

func TestRim(t *testing.T) {
	l := lids["disc"] // 24 in over 20: bearing of 2 in
	s, err := l.Sit(Seat{Fit: OnTop, Opening: 20 * in, Chips: []Chip{{Along: 6 * in, In: 2 * in, Height: 0.5 * in}, {Along: 4 * in, In: 1.25 * in, Height: 0.5 * in}}})
	if err != nil {
		t.Fatal(err)
	}
	r := s.Rim
	if !close(r.Bearing.In(in), 2, 1e-12) || !close(r.Gap.In(manway.SquareInch), 3, 1e-12) || r.OpenAir != manway.Yes || r.Least != 0 || !r.Narrow {
		t.Errorf("%+v", r)
	}
	if want := 1 - 6/(math.Pi*22); !close(r.Whole, want, 1e-12) {
		t.Errorf("whole %v, want %v", r.Whole, want)
	}
	// In a recess with play it may lie against one side.
	if s, _ := l.Sit(Seat{Fit: LetIn, Opening: 20 * in, Gap: 0.5 * in, GapKnown: true}); !close(s.Rim.Least.In(in), 1.75, 1e-12) {
		t.Errorf("with half an inch of play: %v", s.Rim.Least)
	}
	if s, _ := l.Sit(Seat{}); !s.Rim.NotKnown || s.Rim.OpenAir != manway.Unknown {
		t.Errorf("opening not measured: %+v", s.Rim)
	}
}
