package lid

import (
	"testing"

	"manway.example/manway"
)

// calculations are the calculations whose time and allocations count.
var calculations = []struct {
	name string
	run  func() error
}{
	{"Weigh", func() error { _, err := lids["bevelled plug"].Weigh(); return err }},
	{"Weigh/recesses", func() error { _, err := recessed.Weigh(); return err }},
	{"Sit", func() error {
		_, err := lids["bevelled plug"].Sit(Seat{Fit: Bevel, Opening: 20 * in, Chips: chips})
		return err
	}},
	{"Move", func() error {
		_, err := lids["bevelled plug"].Move(MoveCase{Seat: Seat{Fit: Bevel}, Crew: Crew{2, 50 * manway.Pound}, Bond: 40 * manway.PoundForce})
		return err
	}},
	{"Lift.Limit", func() error { _, err := usual.Limit(); return err }},
	{"CompositeIndex", func() error { _, _, err := CompositeIndex(tasks, ShortSpell, true); return err }},
	{"CheckHandle", func() error { _, err := lids["disc"].CheckHandle(soundHandle); return err }},
	{"AirLoss", func() error { _, err := AirLoss(Steel, C4, 20*manway.Year); return err }},
	{"CheckGuard/13 rules", func() error {
		_, err := lids["disc"].CheckGuard(Guard{Opening: 20 * in, DepthKnown: true}, allRules)
		return err
	}},
	{"Bend/disc", func() error { _, err := lids["disc"].Bend(BendCase{}); return err }},
	{"Bend/slab", func() error { _, err := lids["slab"].Bend(BendCase{}); return err }},
	{"HandForceAt", func() error { HandForceAt(PullTwoHands, 40*in); return nil }},
	{"Filter.Limit", func() error { _, err := Filter{Far: true}.Limit(); return err }},
	{"HoleCoverLoad", func() error { _, err := HoleCoverLoad(1300 * manway.PoundForce); return err }},
	{"SidePull", func() error {
		_, err := SidePull{20 * manway.PoundForce, 4 * manway.Foot, 0.48 * in}.Tension()
		return err
	}},
	{"SpellOf", func() error { _, err := SpellOf(75*manway.Minute, 10*manway.Minute); return err }},
}

var (
	recessed = Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in, Recesses: []Recess{{Diameter: 4 * in}, {Length: 6 * in, Width: 2 * in, Depth: 1 * in}}}
	chips    = []Chip{{Along: 3 * in, In: 1 * in, Height: 0.5 * in}}
	tasks    = []Task{{30 * manway.Pound, 20 * manway.Pound, 1}, {20 * manway.Pound, 20 * manway.Pound, 2}}
	allRules = GuardRules()
)

// The closed forms do not allocate.
func TestAllocations(t *testing.T) {
	for _, c := range calculations {
		if err := c.run(); err != nil {
			t.Fatal(c.name, err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = c.run() }); n != 0 {
			t.Errorf("%s allocates %v times", c.name, n)
		}
	}
}

func BenchmarkCalculations(b *testing.B) {
	for _, c := range calculations {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := c.run(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkBareArithmetic is the floor: the weight of a disc and half of it,
// with nothing checked.
func BenchmarkBareArithmetic(b *testing.B) {
	b.ReportAllocs()
	d, t, sum := 0.6096, 0.0762, 0.0
	for b.Loop() {
		sum += discArea(d) * t * 2402.77 * 9.80665 / 2
	}
	_ = sum
}
