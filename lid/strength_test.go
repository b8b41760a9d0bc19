package lid

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway"
)

func disc24() Lid {
	return Lid{Shape: Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch, Loss: 0.25 * manway.Inch, Moisture: Dry,
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI, Density: 150 * manway.PoundPerCubicFoot}}
}

func quarterInchMesh() manway.Reinforcement {
	return manway.Reinforcement{State: manway.SteelKnown, Diameter: 0.25 * manway.Inch, Spacing: 4 * manway.Inch, Cover: 0.75 * manway.Inch, Yield: 60000 * manway.PSI}
}

func onTop() Seat { return Seat{Fit: OnTop, Opening: 20 * manway.Inch} }

func strengthOf(t *testing.T, l Lid, c StrengthCase) Strength {
	t.Helper()
	s, err := l.Strength(c)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func named(t *testing.T, s Strength, name string) manway.Check {
	t.Helper()
	for _, c := range s.Checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no check %q", name)
	return manway.Check{}
}

// The same disc by the plate package: uniform and concentric load.
func TestDiscAgreesWithPlate(t *testing.T) {
	s := strengthOf(t, disc24(), StrengthCase{Seat: onTop(), Steel: quarterInchMesh()})
	s.judged.s = &s
	d := s.judged.disc()
	own, err := d.Uniform(s.judged.q, 0)
	if err != nil {
		t.Fatal(err)
	}
	load, err := d.Concentric(s.judged.person, float64(boot), 0)
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(s.judged.response.dead/own.Radial-1) <= 1e-9) || !(math.Abs(s.judged.response.person/load.Radial-1) <= 1e-9) {
		t.Errorf("%+v, plate %g and %g", s.judged.response, own.Radial, load.Radial)
	}
}

// Neither an unknown nor a plain lid ever passes; unknown steel never has more
// strength than known steel.
func TestLidUnknownAndPlain(t *testing.T) {
	for _, shape := range []Lid{disc24(), {Shape: Slab, Length: 36 * manway.Inch, Width: 24 * manway.Inch, Thickness: 6 * manway.Inch}} {
		c := StrengthCase{Seat: onTop()}
		unknown := strengthOf(t, shape, c)
		c.Steel.State = manway.SteelNone
		plain := strengthOf(t, shape, c)
		c.Steel = quarterInchMesh()
		known := strengthOf(t, shape, c)
		for i, check := range unknown.Checks[1:] {
			if check.Status != manway.NotShown || !strings.Contains(check.Reason, "cannot be shown by arithmetic") {
				t.Errorf("unknown: %s is %v", check.Name, check.Status)
			}
			if p := plain.Checks[1+i]; p.Status != manway.NotPermitted || !(p.Capacity > 0) {
				t.Errorf("plain: %s is %v, capacity %g", p.Name, p.Status, p.Capacity)
			}
			if check.Capacity > known.Checks[1+i].Capacity {
				t.Errorf("%s: unknown %g beats known %g", check.Name, check.Capacity, known.Checks[1+i].Capacity)
			}
		}
		if unknown.Known || plain.Known || !known.Known || !unknown.Cautions.Has(manway.KeepOffRoof|manway.Screening) {
			t.Errorf("heaviest known: %v, %v, %v", unknown.Known, plain.Known, known.Known)
		}
	}
}

// The heaviest person is the one whose governing Use is 1.
func TestHeaviestPerson(t *testing.T) {
	steel := quarterInchMesh()
	steel.Diameter, steel.Spacing = 0.2*manway.Inch, 6*manway.Inch
	l := disc24()
	l.Diameter, l.Thickness, l.Loss = 48*manway.Inch, 2.5*manway.Inch, 0
	seat := Seat{Fit: OnTop, Opening: 44 * manway.Inch}
	s := strengthOf(t, l, StrengthCase{Seat: seat, Steel: steel})
	if !s.Known {
		t.Fatal("no heaviest person")
	}
	scale := float64(s.Heaviest / manway.UsualPerson)
	worst := 0.0
	for _, name := range []string{"bending, a person", "one-way shear, a person"} {
		c := named(t, s, name)
		live := (c.Demand - 1.2*c.Unfactored) / 0.4
		worst = math.Max(worst, (1.2*(c.Unfactored-live)+1.6*live*scale)/c.Capacity)
	}
	if !(math.Abs(worst-1) <= 1e-9) {
		t.Errorf("under %v the Use is %g", s.Heaviest, worst)
	}
}

// Property (monotone): a chipped seat is never better than a whole one, and lets a
// disc tip.
func TestChippedSeat(t *testing.T) {
	c := StrengthCase{Seat: onTop(), Steel: quarterInchMesh()}
	whole := strengthOf(t, disc24(), c)
	c.Seat.Chips = []Chip{{Along: 3 * manway.Inch, In: 3 * manway.Inch, Height: manway.Inch}}
	chipped := strengthOf(t, disc24(), c)
	if !chipped.Chipped || whole.Chipped {
		t.Fatal("chips not seen")
	}
	for _, check := range whole.Checks[1:] {
		if named(t, chipped, check.Name).Demand < check.Demand*(1-1e-9) {
			t.Errorf("%s: chipped %g, whole %g", check.Name, named(t, chipped, check.Name).Demand, check.Demand)
		}
	}
	tip := named(t, chipped, "does not tip on three points")
	if tip.Status != manway.Fail { // 300 lb at the rim against 118 lb of lid
		t.Errorf("tipping is %v: %g against %g", tip.Status, tip.Demand, tip.Capacity)
	}
	slab := Lid{Shape: Slab, Length: 36 * manway.Inch, Width: 24 * manway.Inch, Thickness: 3 * manway.Inch, Moisture: Dry}
	c.Seat.OpeningLong = 32 * manway.Inch
	two := strengthOf(t, slab, c)
	c.Seat.Chips = nil
	four := strengthOf(t, slab, c)
	if a, b := named(t, two, "bending, own weight").Demand, named(t, four, "bending, own weight").Demand; a <= b {
		t.Errorf("slab on two sides %g, on four %g", a, b)
	}
}

// A lid of one piece is the same whether its one piece is said or not: it bears on
// four sides, one of two pieces on two.
func TestOnePieceBearsAllRound(t *testing.T) {
	slab := Lid{Shape: Slab, Length: 40 * manway.Inch, Width: 30 * manway.Inch, Thickness: 3 * manway.Inch, Moisture: Dry}
	own := func(pieces int) float64 {
		slab.Pieces = pieces
		s := strengthOf(t, slab, StrengthCase{Seat: Seat{Fit: OnTop, Opening: 26 * manway.Inch, OpeningLong: 36 * manway.Inch}, Steel: quarterInchMesh()})
		return named(t, s, "bending, own weight").Unfactored
	}
	if unsaid, one, two := own(0), own(1), own(2); one != unsaid || !(two > one) {
		t.Errorf("own weight bends a lid by %g, of one piece %g, of two %g", unsaid, one, two)
	}
}

// One of several pieces is a beam: q L2/8.
func TestPieceIsABeam(t *testing.T) {
	slab := Lid{Shape: Slab, Length: 60 * manway.Inch, Width: 12 * manway.Inch, Thickness: 4 * manway.Inch, Pieces: 4, Moisture: Dry}
	s := strengthOf(t, slab, StrengthCase{Seat: Seat{Fit: OnTop, Opening: 48 * manway.Inch, OpeningLong: 56 * manway.Inch}, Steel: quarterInchMesh()})
	span := s.Long.In(manway.Foot)
	want := 50 * span * span / 8
	if got := named(t, s, "bending, own weight").Unfactored / float64(manway.PoundForceFootPerFoot); !(math.Abs(got/want-1) <= 0.02) {
		t.Errorf("%g lbf ft/ft, beam of %g ft %g", got, span, want)
	}
}

// The slab on a whole seat bends as the handbook's plate where its corners are
// held, and more since they are not.
func TestSlabCornersRise(t *testing.T) {
	slab := Lid{Shape: Slab, Length: 40 * manway.Inch, Width: 40 * manway.Inch, Thickness: 3 * manway.Inch, Moisture: Dry}
	s := strengthOf(t, slab, StrengthCase{Seat: Seat{Fit: OnTop, Opening: 36 * manway.Inch}, Steel: quarterInchMesh()})
	side := s.Span.In(manway.Foot)
	held, _ := slabUniform(1, 1, poisson)
	got := named(t, s, "bending, own weight").Unfactored / float64(manway.PoundForceFootPerFoot) / (37.5 * side * side)
	if !(got > held && got < 1.5*held) {
		t.Errorf("coefficient %g, with held corners %g", got, held)
	}
	if !s.Solved.Converged || !(s.Solved.Error > 0 && s.Solved.Error <= 0.01) { // no mesh is without an error
		t.Errorf("solved %+v", s.Solved)
	}
}

// A fall is only ever a bound: it passes or it is not shown.
func TestFallIsABound(t *testing.T) {
	thick := disc24()
	thick.Thickness, thick.Loss = 10*manway.Inch, 0
	steel := quarterInchMesh()
	steel.Diameter, steel.Spacing = 1*manway.Inch, 3*manway.Inch
	for name, c := range map[string]struct {
		l    Lid
		fall manway.Length
		want manway.Status
	}{
		"thin lid": {disc24(), 2 * manway.Foot, manway.NotShown},
		"set down": {thick, 0.001 * manway.Inch, manway.Pass},
	} {
		s := strengthOf(t, c.l, StrengthCase{Seat: onTop(), Steel: steel, Fall: c.fall})
		if got := named(t, s, "bending, a fall from "+c.fall.String()).Status; got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

func TestFallsThrough(t *testing.T) {
	slab := Lid{Shape: Slab, Length: 26 * manway.Inch, Width: 20 * manway.Inch, Thickness: 3 * manway.Inch}
	s := strengthOf(t, slab, StrengthCase{Seat: Seat{Fit: OnTop, Opening: 18 * manway.Inch, OpeningLong: 24 * manway.Inch}, Steel: quarterInchMesh()})
	if s.Checks[0].Status != manway.Fail || s.Falls != manway.Yes || !s.Cautions.Has(manway.KeepOffRoof) {
		t.Errorf("%+v", s.Checks[0])
	}
	unknown := strengthOf(t, slab, StrengthCase{Steel: quarterInchMesh()})
	if unknown.Checks[0].Status != manway.NotJudged || unknown.Span != slab.Width {
		t.Errorf("opening not measured: %v, span %v", unknown.Checks[0].Status, unknown.Span)
	}
}

func TestLidNotJudgedAndRefused(t *testing.T) {
	iron := Lid{Shape: Disc, Diameter: 24 * manway.Inch, Thickness: 1 * manway.Inch, Material: OfIron, Measured: 130 * manway.Pound}
	s := strengthOf(t, iron, StrengthCase{})
	if len(s.NotJudged) == 0 || s.Governs != -1 || !s.Cautions.Has(manway.KeepOffRoof) {
		t.Errorf("%+v", s)
	}
	_, err := disc24().Strength(StrengthCase{People: 99, Gear: manway.Mass(math.NaN()), Fall: -1, Wheels: []manway.Wheel{{}}, Steel: manway.Reinforcement{State: 7}, Seat: Seat{Opening: -1}})
	faults, ok := err.(manway.InputErrors)
	if !ok || len(faults) == 0 {
		t.Errorf("%v", err)
	}
	if _, err := disc24().Strength(StrengthCase{People: 99, Gear: manway.Mass(math.NaN()), Fall: -1}); len(err.(manway.InputErrors)) != 3 {
		t.Errorf("%v: want three faults", err)
	}
}

// No lid panics, or has a figure that is not finite.
func FuzzStrength(f *testing.F) {
	f.Add(24.0, 3.0, 0.25, 20.0, 4000.0, 0.25, 4.0, 0.75, 2.0, uint8(2))  // the lid of the tests
	f.Add(120.0, 0.25, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(0x10))    // the thinnest
	f.Add(36.0, 24.0, 23.0, 35.9, 2500.0, 1.5, 1.0, 1.0, 20.0, uint8(34)) // worn away, chipped
	f.Fuzz(func(t *testing.T, size, thick, loss, hole, fc, db, spacing, cover, fall float64, flags uint8) {
		in := func(x float64) manway.Length { return manway.Length(x) * manway.Inch }
		l := Lid{Shape: Disc, Diameter: in(size), Thickness: in(thick), Loss: in(loss), Concrete: manway.Concrete{Strength: manway.Pressure(fc) * manway.PSI}}
		if flags&16 != 0 {
			l = Lid{Shape: Slab, Length: in(size * 1.5), Width: in(size), Thickness: in(thick), Loss: in(loss), Pieces: int(flags & 1)}
		}
		c := StrengthCase{
			Seat: Seat{Fit: OnTop, Opening: in(hole)}, Fall: manway.Length(fall) * manway.Foot, Wheels: []manway.Wheel{manway.MowerWheel},
			Steel: manway.Reinforcement{State: manway.SteelState(flags % 4), Diameter: in(db), Spacing: in(spacing), Cover: in(cover)},
		}
		if flags&32 != 0 {
			c.Seat.Chips = []Chip{{Along: in(3), In: in(size), Height: in(1)}}
		}
		s, err := l.Strength(c)
		if err != nil {
			return
		}
		for _, check := range s.Checks {
			for _, x := range []float64{check.Demand, check.Capacity, check.Unfactored} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("%+v, %+v: %+v", l, c, check)
				}
			}
		}
		if x := float64(s.Heaviest); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("heaviest %v", s.Heaviest)
		}
	})
}

func BenchmarkStrength(b *testing.B) {
	slab := Lid{Shape: Slab, Length: 36 * manway.Inch, Width: 24 * manway.Inch, Thickness: 3 * manway.Inch}
	for name, l := range map[string]Lid{"disc": disc24(), "slab": slab} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := l.Strength(StrengthCase{Seat: onTop(), Steel: quarterInchMesh()}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// The ledge of a lid with a step is left to whoever looks at it; a plain disc has
// none.
func TestLedgeIsNotJudged(t *testing.T) {
	stepped := disc24()
	stepped.Shape, stepped.BottomDiameter, stepped.Flange = SteppedPlug, 19*manway.Inch, 1.5*manway.Inch
	for _, l := range []Lid{disc24(), stepped} {
		s := strengthOf(t, l, StrengthCase{Seat: onTop(), Steel: quarterInchMesh()})
		left := false
		for _, c := range s.NotJudged {
			left = left || c.Name == "flange"
		}
		if left != (l.Shape == SteppedPlug) {
			t.Errorf("%v: the flange is left open: %v", l.Shape, left)
		}
	}
}

// Where nothing is known of the steel no strength counts, and each check says what
// of plain concrete it would use, by demand over that; with known steel none does.
func TestPlainForComparison(t *testing.T) {
	for _, steel := range []manway.Reinforcement{{}, quarterInchMesh()} {
		c := named(t, strengthOf(t, disc24(), StrengthCase{Seat: onTop(), Steel: steel}), "bending, own weight")
		_, figure, said := strings.Cut(c.Reason, "of plain concrete it would use ")
		if said != (steel.State == manway.SteelUnknown) {
			t.Errorf("%v: %q", steel.State, c.Reason)
		}
		// 2.75 in left, 5 sqrt(4000) psi and 0.60 (ACI 318-19 14.5.2.1, 21.2.1)
		plain := 0.6 * 5 * math.Sqrt(4000) * 2.75 * 2.75 / 6 // lbf in/in
		if want := 100 * c.Demand / float64(manway.PoundForceFootPerFoot) / plain; said && !strings.HasPrefix(figure, number(want)) {
			t.Errorf("%q, want %s %%", c.Reason, number(want))
		}
	}
}
