package lid

import (
	"testing"

	"manway.example/manway"
)

// How a lid lies says by how much it must rise and which ways out of its seat
// there are: on top it slides and walks at once; let in it must rise by the depth
// that is said, or by its thickness; in a step by what is below its flange.
func TestWaysOutOfASeat(t *testing.T) {
	const yes, no, open = manway.Yes, manway.No, manway.Unknown
	stepped, slab := lids["stepped plug"], lids["slab"] // 27 over 23 in, 5 in thick with a flange of 2; 30 x 20 x 4 in
	narrow := Lid{Shape: Slab, Length: 9 * in, Width: 5 * in, Thickness: 6 * in}
	for _, c := range []struct {
		name      string
		lid       Lid
		seat      Seat
		rise      float64 // in
		slide     manway.Answer
		tip       manway.Answer
		leaves    Leaving
		possible  [Hoist + 1]manway.Answer // tip, walk out, drag, hook, fulcrum bar, pry bar, hoist
		leastWays Way
	}{
		{"unknown", slab, Seat{}, 0, open, open, LeavesUnknown, [...]manway.Answer{open, open, open, yes, open, open, yes}, PryBar},
		{"unknown, a depth said", slab, Seat{Depth: 2 * in}, 0, open, open, LeavesUnknown, [...]manway.Answer{open, open, open, yes, open, open, yes}, PryBar},
		{"on top", slab, Seat{Fit: OnTop}, 0, yes, yes, SlidesOut, [...]manway.Answer{yes, yes, yes, yes, yes, yes, yes}, PryBar},
		{"let in, play not known", slab, Seat{Fit: LetIn}, 4, no, open, LeavesUnknown, [...]manway.Answer{open, no, no, yes, open, open, yes}, PryBar},
		{"let in, wide play", slab, Seat{Fit: LetIn, Gap: 2 * in, GapKnown: true}, 4, no, yes, TipsOut, [...]manway.Answer{yes, no, no, yes, yes, yes, yes}, PryBar},
		{"let in, no play", slab, Seat{Fit: LetIn, GapKnown: true}, 4, no, no, LiftsStraight, [...]manway.Answer{no, no, no, yes, no, no, yes}, Hook},
		{"let in by 1 in", slab, Seat{Fit: LetIn, Depth: 1 * in, Gap: 0.1 * in, GapKnown: true}, 1, no, yes, TipsOut, [...]manway.Answer{yes, no, no, yes, yes, yes, yes}, PryBar},
		{"deeper than wide", narrow, Seat{Fit: LetIn}, 6, no, no, LiftsStraight, [...]manway.Answer{no, no, no, yes, no, no, yes}, Hook},
		{"in a step", stepped, Seat{Fit: Step}, 3, no, open, LeavesUnknown, [...]manway.Answer{open, no, no, yes, open, open, yes}, PryBar},
		{"in a step, wide play", stepped, Seat{Fit: Step, Gap: 1 * in, GapKnown: true}, 3, no, yes, TipsOut, [...]manway.Answer{yes, no, no, yes, yes, yes, yes}, PryBar},
	} {
		m, err := c.lid.Move(MoveCase{Seat: c.seat})
		if err != nil {
			t.Fatal(c.name, err)
		}
		s := m.Seating
		if !close(s.Rise.In(in), c.rise, 1e-12) || s.Slide != c.slide || s.Walk != c.slide || s.Tip != c.tip || s.Leaves != c.leaves {
			t.Errorf("%s: rises %v, slides %v, walks %v, tips %v, leaves %v", c.name, s.Rise, s.Slide, s.Walk, s.Tip, s.Leaves)
		}
		for way, want := range c.possible {
			if k := m.Methods[way]; k.Possible != want || k.Way != Way(way) || want == no && k.Reason == "" {
				t.Errorf("%s, %v: possible %v (%s), want %v", c.name, Way(way), k.Possible, k.Reason, want)
			}
		}
		if m.Least != c.leastWays {
			t.Errorf("%s: the least is %v, want %v", c.name, m.Least, c.leastWays)
		}
		for _, k := range m.Methods[:Hoist] {
			if k.Possible != no && k.FirstPull < m.Methods[m.Least].FirstPull {
				t.Errorf("%s: %v takes less than %v", c.name, k.Way, m.Least)
			}
		}
	}
}

// What is assumed is told, and the one that would change the forces most first:
// the density, then how wet it is, then the friction; a lid on a scale leaves the
// friction.
func TestMeasureFirst(t *testing.T) {
	l := lids["disc"]
	known := manway.Concrete{Strength: 4000 * manway.PSI, Density: 150 * manway.PoundPerCubicFoot}
	for _, c := range []struct {
		change func(*Lid, *MoveCase)
		want   manway.Assumptions
	}{
		{func(l *Lid, c *MoveCase) {}, manway.AssumedConcreteDensity},
		{func(l *Lid, c *MoveCase) { l.Concrete = known }, manway.AssumedDryLid},
		{func(l *Lid, c *MoveCase) { l.Concrete, l.Moisture = known, Soaked }, manway.AssumedFriction},
		{func(l *Lid, c *MoveCase) { l.Measured = 100 * manway.Pound }, manway.AssumedFriction},
		{func(l *Lid, c *MoveCase) { l.Measured, c.Seat.Friction = 100*manway.Pound, Friction{0.5, 0.7} }, 0},
	} {
		lid, k := l, MoveCase{Seat: Seat{Fit: OnTop}}
		c.change(&lid, &k)
		m, err := lid.Move(k)
		if err != nil {
			t.Fatal(err)
		}
		if m.MeasureFirst != c.want || c.want != 0 && !m.Assumed.Has(c.want) {
			t.Errorf("%+v: measure %v first, want %v, of %v", lid, m.MeasureFirst.List(), c.want.List(), m.Assumed.List())
		}
	}
}

// The weight of soil on a lid is that of its moist state, of a lid that has lain in
// water its saturated one; the caution of a heavy lift comes above 50 lb.
func TestWeightOnTopByHand(t *testing.T) {
	l := lids["slab"] // 30 x 20 in
	l.Overburden = Overburden{Depth: 18 * in, Soil: manway.Soil{Moist: 110 * manway.PoundPerCubicFoot, Saturated: 125 * manway.PoundPerCubicFoot}}
	for moisture, want := range map[Moisture]float64{MoistureUnknown: 110, Dry: 110, Damp: 110, Soaked: 125} {
		l.Moisture = moisture
		w, err := l.Weigh()
		if err != nil {
			t.Fatal(err)
		}
		if got := w.OnTop.In(manway.Pound); !close(got, 30*20./144*1.5*want, 1e-9) {
			t.Errorf("%v: %v lb on top, want %v", moisture, got, 30*20./144*1.5*want)
		}
	}
	for weight, heavy := range map[float64]bool{49.9: false, 50.1: true} {
		l.Measured = manway.Mass(weight) * manway.Pound
		w, err := l.Weigh()
		if err != nil {
			t.Fatal(err)
		}
		if w.Cautions.Has(manway.HeavyLift) != heavy || !close(w.Density.In(manway.PoundPerCubicFoot), weight/(30*20*4./1728), 1e-9) {
			t.Errorf("%v lb: heavy %v, %v", weight, w.Cautions.Has(manway.HeavyLift), w.Density)
		}
	}
	l.Pieces = 3
	if w, err := l.Weigh(); err != nil || !close(w.All.In(manway.Pound), 3*50.1, 1e-9) && !close(w.All.In(manway.Pound), 3*49.9, 1e-9) || w.Pieces != 3 {
		t.Errorf("three pieces weigh %v, %v", w.All, err)
	}
}
