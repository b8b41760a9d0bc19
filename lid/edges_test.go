package lid

import (
	"math"
	"testing"

	"manway.example/manway"
)

// A chip that does not go through the bearing takes nothing of what three points
// need: beside a chip of 3 in right through, one of 40 percent of the rim that is
// half an inch deep changes nothing but the least bearing.
func TestShallowChipIsNoLongChip(t *testing.T) {
	steel := quarterInchMesh()
	seat := onTop()
	seat.Chips = chipsOf(3 * in)
	one := strengthOf(t, disc24(), StrengthCase{Seat: seat, Steel: steel})
	seat.Chips = append(seat.Chips, Chip{Along: 28 * in, In: 0.5 * in, Height: 1 * in})
	two := strengthOf(t, disc24(), StrengthCase{Seat: seat, Steel: steel})
	if len(one.Checks) != len(two.Checks) || !one.Chipped || !two.Chipped {
		t.Fatalf("%d checks, then %d", len(one.Checks), len(two.Checks))
	}
	for i, c := range one.Checks {
		if d := two.Checks[i]; c.Status != d.Status || c.Demand != d.Demand || c.Capacity != d.Capacity {
			t.Errorf("%s: %v of %v, %v; then %v of %v, %v", c.Name, c.Demand, c.Capacity, c.Status, d.Demand, d.Capacity, d.Status)
		}
	}
	sit := func(s Seat) Seating {
		r, err := disc24().Sit(s)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	if r := sit(seat).Rim; !close(r.Gap.In(manway.SquareInch), 3, 1e-9) || r.Least != 0 {
		t.Errorf("%+v", r)
	}
	seat.Chips = seat.Chips[1:]
	if r := sit(seat).Rim; r.Gap != 0 || r.Whole != 1 || r.OpenAir != manway.No || !close(r.Least.In(in), 1.5, 1e-9) || r.Narrow {
		t.Errorf("a shallow chip alone: %+v", r)
	}
}

// The two deepest chips are what lets a lid slip through a hole: where it goes only
// with both added the answer is open, whatever the order of the chips.
func TestTwoDeepestChips(t *testing.T) {
	l := lids["disc"] // 24 in
	for _, c := range []struct {
		hole  float64
		chips []float64
		want  manway.Answer
	}{
		{20, nil, manway.No}, {24, nil, manway.Yes}, {20, []float64{2, 1.9}, manway.No}, {20, []float64{2, 2}, manway.Unknown}, {20, []float64{2, 1, 2}, manway.Unknown}, {20, []float64{1, 2, 2}, manway.Unknown},
		{20, []float64{3, 1, 0.5}, manway.Unknown}, {20, []float64{0.5, 1, 3}, manway.Unknown}, {20, []float64{1, 3, 0.9}, manway.Unknown}, {20, []float64{0.9, 3, 0.9}, manway.No}, {20, []float64{4}, manway.Unknown}, {0, []float64{9}, manway.Unknown},
	} {
		seat := Seat{Fit: OnTop, Opening: manway.Length(c.hole) * in}
		for _, depth := range c.chips {
			seat.Chips = append(seat.Chips, Chip{Along: 1 * in, In: manway.Length(depth) * in, Height: 1 * in})
		}
		r, err := l.Sit(seat)
		if err != nil {
			t.Fatal(err)
		}
		if r.Falls != c.want || r.Cautions.Has(manway.KeepOffRoof) != (c.want == manway.Yes) {
			t.Errorf("hole of %v in, chips %v: falls %v, want %v", c.hole, c.chips, r.Falls, c.want)
		}
	}
}

// Where a team's limit is not known there is none, not even a little.
func TestNoTeamNoLimit(t *testing.T) {
	for _, c := range []Crew{{}, {People: 2}, {People: 4, Limit: 50 * manway.Pound}, {People: 6, Limit: 50 * manway.Pound}} {
		if m, ok := c.Together(); ok || m != 0 {
			t.Errorf("%+v: %v, %v", c, m, ok)
		}
	}
	for people, want := range map[int]float64{0: 60, 1: 60, 2: 80, 3: 90} { // two thirds of 120, half of 180
		if m, ok := (Crew{People: people, Limit: 60 * manway.Pound}).Together(); !ok || !close(m.In(manway.Pound), want, 1e-12) {
			t.Errorf("%d people: %v, %v, want %v lb", people, m, ok, want)
		}
	}
}

// Table 5 (Pub. 94-110, p. 15) at its ends: full below its first row, nothing above
// its last, whichever the spell.
func TestEndsOfTheFrequencyTable(t *testing.T) {
	for _, c := range []struct {
		rate  float64
		spell Spell
		low   bool
		want  float64
	}{
		{0, ShortSpell, false, 1}, {0.1, LongSpell, true, 0.85}, {0.2, ModerateSpell, false, 0.95}, {15, ShortSpell, false, 0.28}, {15.01, ShortSpell, false, 0}, {60, ShortSpell, true, 0}, {12, ShortSpell, true, 0.37}, {12.5, ShortSpell, true, 0.185},
		{13, ShortSpell, true, 0}, {10, LongSpell, false, 0.13}, {10, LongSpell, true, 0}, {11, LongSpell, false, 0}, {0.35, ShortSpell, false, 0.985}, {2.5, LongSpell, false, 0.6},
	} {
		if got := frequency(c.rate, c.spell, c.low); !close(got, c.want, 1e-12) {
			t.Errorf("%v a minute, %v, low %v: %v, want %v", c.rate, c.spell, c.low, got, c.want)
		}
	}
}

// A five is rounded up as the printed tables do, where the nearest binary number is
// a hair below it too.
func TestTwoDecimals(t *testing.T) {
	for m, want := range map[float64]float64{0.285: 0.29, 0.575: 0.58, 1.005: 1.01, 0.284: 0.28, 0.2849: 0.28, 0.5: 0.5, 0: 0, 1: 1, 0.995: 1} {
		if got := twoDecimals(m); got != want {
			t.Errorf("%v is printed as %v, want %v", m, got, want)
		}
	}
}

// Below half the thickness a load spreads as by Westergaard's rule, at it and above
// it stands as it is: for a thickness of 1 and radii of 0.3, 0.498, 0.5 and 0.502.
func TestPatchRadiusAtHalfTheThickness(t *testing.T) {
	for r, want := range map[float64]float64{0.3: math.Sqrt(1.6*0.09+1) - 0.675, 0.498: math.Sqrt(1.6*0.498*0.498+1) - 0.675, 0.5: 0.5, 0.502: 0.502, 2: 2} {
		if got := patchRadius(r, 1); !close(got, want, 1e-12) {
			t.Errorf("a radius of %v counts as %v, want %v", r, got, want)
		}
	}
}

// A lid on one leg pulls it straight, whatever lean is said; on two or more two of
// them carry, each more by 1/cos of its lean; hardware is rated for five times that.
func TestSlingLegsByHand(t *testing.T) {
	l := lids["disc"]
	l.Measured = 100 * manway.Pound
	for legs := range 5 {
		for degrees, cos := range map[float64]float64{0: 1, 30: math.Sqrt(3) / 2, 60: 0.5} {
			m, err := l.Move(MoveCase{Seat: Seat{Fit: OnTop}, Bond: 20 * manway.PoundForce, Slings: Slings{Legs: legs, Lean: manway.Angle(degrees) * manway.Degree}})
			if err != nil {
				t.Fatal(err)
			}
			want := 120.0
			if legs > 1 {
				want = 120 / 2 / cos
			}
			if !close(m.SlingLeg.In(manway.PoundForce), want, 1e-9) || !close(m.GearLimit.In(manway.PoundForce), 5*want, 1e-9) {
				t.Errorf("%d legs at %v degrees: %v and %v, want %v lbf", legs, degrees, m.SlingLeg, m.GearLimit, want)
			}
		}
	}
}
