package lid

import (
	"math"
	"testing"

	"manway.example/manway"
)

// navier is the moment across the short side a at the centre of a simply
// supported rectangle under a load on a central square of half width c, by the
// double sine series: nothing in common with the single series in use.
func navier(load, half, b, a, nu float64, terms int) float64 {
	sum := 0.0
	for m := 1; m <= terms; m += 2 {
		for n := 1; n <= terms; n += 2 {
			x, y := float64(m)*math.Pi/a, float64(n)*math.Pi/b
			// Coefficient of the load, sin at the centre taken twice.
			p := 4 * load / (a * b) * sinc(x*half) * sinc(y*half)
			sum += p * (x*x + nu*y*y) / ((x*x + y*y) * (x*x + y*y))
		}
	}
	return sum
}

func sinc(x float64) float64 { return math.Sin(x) / x }

func TestSlabUniformAgainstNavier(t *testing.T) {
	for _, c := range []struct{ b, a float64 }{{1, 1}, {1.5, 1}, {30, 20}, {4, 1}} {
		// The whole plate as the loaded patch, with its own half widths.
		want := 0.0
		for m := 1; m <= 999; m += 2 {
			for n := 1; n <= 999; n += 2 {
				x, y := float64(m)*math.Pi/c.a, float64(n)*math.Pi/c.b
				sign := float64(1 - (m/2+n/2)%2*2)
				want += sign * 16 / (math.Pi * math.Pi * float64(m*n)) * (x*x + poisson*y*y) / ((x*x + y*y) * (x*x + y*y))
			}
		}
		across, _ := slabUniform(c.b, c.a, poisson)
		if got := across * c.a * c.a; !close(got, want, 2e-4) {
			t.Errorf("%v: %v, double series %v", c, got, want)
		}
	}
}

func TestSlabPatchAgainstNavier(t *testing.T) {
	for _, c := range []struct{ b, a float64 }{{1, 1}, {1.5, 1}, {2.5, 1}} {
		const r = 0.05
		half := r * math.Sqrt(math.Pi) / 2 // a square of the same area is within 1 % of the circle here
		got, want := slabPatch(1, r, c.b, c.a, poisson), navier(1, half, c.b, c.a, poisson, 801)
		if !close(got, want, 0.01) {
			t.Errorf("%v: %v, double series %v", c, got, want)
		}
	}
}

func TestPlateLimits(t *testing.T) {
	// A patch as wide as the disc is the uniform load.
	a := 0.4
	if p, u := discPatch(math.Pi*a*a, a, a, poisson), discUniform(1, a, poisson); !close(p, u, 1e-12) {
		t.Errorf("patch over the whole %v, uniform %v", p, u)
	}
	// A long slab is a strip; a square has the same moment both ways.
	if across, along := slabUniform(20, 1, poisson); !close(across, 0.125, 1e-9) || !close(along, poisson/8, 1e-9) {
		t.Errorf("strip %v %v", across, along)
	}
	if across, along := slabUniform(1, 1, poisson); !close(across, along, 1e-9) {
		t.Errorf("square %v %v", across, along)
	}
	// A thin load is taken wider than it is, a wide one as it is, and the two
	// meet within two hundredths (1.18322 - 0.675 = 0.508 of the thickness).
	if r := patchRadius(0.01, 0.1); !(r > 0.01) || patchRadius(0.06, 0.1) != 0.06 || !close(patchRadius(0.0499999, 0.1), 0.05, 0.02) {
		t.Errorf("patch radius %v", r)
	}
}

// No lid ever passes this screening, and each check that is not judged says
// why.
func TestBendNeverPasses(t *testing.T) {
	for name, l := range lids {
		for _, steel := range []manway.Reinforcement{{}, {State: manway.SteelNone}, {State: manway.SteelKnown, Diameter: 0.25 * in, Spacing: 6 * in, Cover: 1 * in}} {
			l.Thickness = 12 * in // far more than enough
			b, err := l.Bend(BendCase{Steel: steel})
			if err != nil {
				t.Fatal(name, err)
			}
			want := map[manway.SteelState]manway.Status{manway.SteelUnknown: manway.NotShown, manway.SteelNone: manway.NotPermitted, manway.SteelKnown: manway.NotJudged}[steel.State]
			for _, c := range b.Checks {
				if c.Status != want || c.Reason == "" || c.Demand <= 0 || c.Capacity <= 0 {
					t.Errorf("%s, steel %v: %+v", name, steel.State, c)
				}
			}
			if !b.Cautions.Has(manway.Screening | manway.KeepOffRoof) {
				t.Errorf("%s: cautions %v", name, b.Cautions)
			}
		}
	}
}

func TestBendWorksByHand(t *testing.T) {
	// Disc of 24 in and 3 in, 150 lb/ft3, dry, person of 300 lb, in lbf and in:
	// q = 0.26042 lbf/in2, M own = 0.26042 x 144 x 3.2/16 = 7.500 lbf in/in;
	// M person = 300/(4 pi) (1.2 ln 4 + 1 - 0.8 x 9/576) = 63.290 lbf in/in.
	l := Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in, Moisture: Dry}
	b, err := l.Bend(BendCase{})
	if err != nil {
		t.Fatal(err)
	}
	perInch := func(m manway.MomentPerLength) float64 { return m.In(manway.PoundForceFootPerFoot) }
	if got := perInch(b.OwnMoment); !close(got, 7.5, 1e-9) {
		t.Errorf("own %v", got)
	}
	want := 300 / (4 * math.Pi) * (1.2*math.Log(4) + 1 - 0.8*9.0/576)
	if got := perInch(b.LiveMoment); !close(got, want, 1e-9) || !close(got, 63.29, 1e-3) {
		t.Errorf("person %v, want %v", got, want)
	}
	// Mn = 5 sqrt(2500) 9/6 = 375 lbf in/in, 0.6 of it against 1.2 x 7.5 + 1.6 x 63.29.
	c := b.Checks[1]
	if use, ok := c.Use(); !ok || !close(use, (1.2*7.5+1.6*want)/(0.6*375), 1e-9) {
		t.Errorf("use %v", use)
	}
	// Hole cover: twice the person with the lid's own weight.
	if got := manway.MomentPerLength(b.Checks[2].Demand); !close(perInch(got), 7.5+2*want, 1e-9) {
		t.Errorf("hole cover demand %v", perInch(got))
	}
}

func TestBendRoundPieces(t *testing.T) {
	l := lids["disc"]
	l.Pieces = 2
	b, err := l.Bend(BendCase{Steel: manway.Reinforcement{State: manway.SteelNone}})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range b.Checks {
		if c.Status != manway.NotJudged || c.Reason == "" {
			t.Errorf("half of a disc: %+v", c)
		}
	}
}

// Property (monotone): the more is lost, the less the section has.
func TestBendWear(t *testing.T) {
	last := math.Inf(1)
	for _, loss := range []manway.Length{0, 0.5 * in, 1 * in, 2 * in, 2.9 * in} {
		l := lids["disc"]
		l.Loss = loss
		b, err := l.Bend(BendCase{})
		if err != nil {
			t.Fatal(err)
		}
		if c := b.Checks[0].Capacity; !(c < last) {
			t.Errorf("loss %v: capacity %v, not below %v", loss, c, last)
		} else {
			last = c
		}
	}
}

func TestBendPieces(t *testing.T) {
	l := Lid{Shape: Slab, Length: 48 * in, Width: 12 * in, Thickness: 4 * in, Pieces: 4, Moisture: Dry}
	b, err := l.Bend(BendCase{})
	if err != nil {
		t.Fatal(err)
	}
	q := 150 * 4.0 / 1728 // lbf/in2
	if own, live := b.OwnMoment.In(manway.PoundForceFootPerFoot), b.LiveMoment.In(manway.PoundForceFootPerFoot); !close(own, q*48*48/8, 1e-9) || !close(live, 300*48/4/12.0, 1e-9) {
		t.Errorf("own %v, person %v", own, live)
	}
	for _, c := range []BendCase{{Span: 25 * in}, {Long: 20 * in}} {
		if _, err := lids["disc"].Bend(c); len(fields(err)) != 1 {
			t.Errorf("%+v: %v", c, err)
		}
	}
}
