package lid

import (
	"math"
	"testing"

	"manway.example/manway"
)

// meanDistance is the mean distance of the points of a lid, or of its rim, from
// a point of the rim, over the arm, by adding up many of them.
func meanDistance(l Lid, rim bool) float64 {
	const n = 1200
	sum, weight := 0.0, 0.0
	add := func(d, w float64) { sum += d * w; weight += w }
	if l.Shape.Round() {
		R := float64(l.Diameter) / 2
		for i := range n {
			a := (float64(i) + 0.5) / n * 2 * math.Pi
			if rim {
				add(math.Hypot(R*math.Cos(a)-R, R*math.Sin(a)), 1)
				continue
			}
			for j := range n {
				r := R * (float64(j) + 0.5) / n
				add(math.Hypot(r*math.Cos(a)-R, r*math.Sin(a)), r)
			}
		}
		return sum / weight / (2 * R)
	}
	a, b := float64(l.Length), float64(l.Width)
	for i := range n {
		x := a * (float64(i) + 0.5) / n
		if rim {
			y := b * (float64(i) + 0.5) / n
			add(x, a)
			add(math.Hypot(x, b), a)
			add(y, b)
			add(math.Hypot(a, y), b)
			continue
		}
		for j := range n {
			add(math.Hypot(x, b*(float64(j)+0.5)/n), 1)
		}
	}
	return sum / weight / math.Hypot(a, b)
}

func TestTurningAgainstSum(t *testing.T) {
	for _, name := range []string{"disc", "slab"} {
		whole, rim := lids[name].turning()
		if w, r := meanDistance(lids[name], false), meanDistance(lids[name], true); !close(whole, w, 1e-4) || !close(rim, r, 1e-4) {
			t.Errorf("%s: turning %v %v, sums %v %v", name, whole, rim, w, r)
		}
	}
}

func TestMethodsOnSeats(t *testing.T) {
	for _, c := range []struct {
		name, lid string
		seat      Seat
		no        []Way
	}{
		{"on top", "disc", Seat{Fit: OnTop}, nil},
		{"let in tight", "disc", Seat{Fit: LetIn, GapKnown: true}, []Way{Tip, WalkOut, Drag, FulcrumBar, PryBar}},
		{"let in with play", "disc", Seat{Fit: LetIn, Gap: 1 * in, GapKnown: true}, []Way{WalkOut, Drag}},
		{"unknown", "disc", Seat{}, nil},
	} {
		m, err := lids[c.lid].Move(MoveCase{Seat: c.seat})
		if err != nil {
			t.Fatal(err)
		}
		no := map[Way]bool{}
		for _, w := range c.no {
			no[w] = true
		}
		for _, k := range m.Methods {
			if (k.Possible == manway.No) != no[k.Way] {
				t.Errorf("%s: %v possible %v (%s)", c.name, k.Way, k.Possible, k.Reason)
			}
			if k.Possible == manway.No && k.Reason == "" {
				t.Errorf("%s: %v is excluded without a reason", c.name, k.Way)
			}
		}
		if no[m.Least] {
			t.Errorf("%s: the least force is by %v, which is excluded", c.name, m.Least)
		}
	}
}

// A lid wider than 30 in has no one-person answer; nor has one that the
// equation does not cover.
func TestOnePerson(t *testing.T) {
	for _, e := range []Edition{USEdition, MetricEdition} {
		for _, d := range []manway.Length{29.5 * in, 30.01 * in, 48 * in, 10 * manway.Foot} {
			m, err := Lid{Shape: Disc, Diameter: d, Thickness: 3 * in}.Move(MoveCase{Edition: e})
			if err != nil {
				t.Fatal(err)
			}
			if wide := d > 30*in; (m.OnePerson.Standing == Limited) == wide {
				t.Errorf("%v %v: %v", e, d, m.OnePerson.Standing)
			}
		}
	}
	m, err := lids["disc"].Move(MoveCase{Outside: Kneeling | OneHanded})
	if err != nil {
		t.Fatal(err)
	}
	if m.OnePerson.Standing != NotCovered || m.OnePerson.Limit != 0 || m.Alone.Status != manway.NotJudged || m.Team[1].Valid {
		t.Errorf("kneeling: %+v, alone %+v", m.OnePerson, m.Alone)
	}
}

// Hands at the rim of a lid deeper than they reach above the ground are below
// the feet: no number.
func TestBelowFeet(t *testing.T) {
	for below, want := range map[manway.Length]Standing{0: Limited, 5 * in: Limited, 7 * in: NotCovered} {
		m, err := lids["disc"].Move(MoveCase{Below: below})
		if err != nil {
			t.Fatal(err)
		}
		if m.OnePerson.Standing != want || (want == NotCovered) != (m.OnePerson.Outside == BelowFeet) {
			t.Errorf("%v below the feet: %v, %v", below, m.OnePerson.Standing, m.OnePerson.Outside)
		}
	}
}

func TestCrewLimitCounts(t *testing.T) {
	l := lids["disc"]
	l.Measured = 120 * manway.Pound
	for _, c := range []struct {
		crew Crew
		way  Way
		want manway.Status
	}{
		{Crew{}, Tip, manway.NotJudged},
		{Crew{1, 60 * manway.Pound}, Tip, manway.Pass}, // 60 of 60
		{Crew{1, 59 * manway.Pound}, Tip, manway.Fail},
		{Crew{2, 73 * manway.Pound}, Hook, manway.Pass}, // 96 of 97.3
		{Crew{2, 71 * manway.Pound}, Hook, manway.Fail}, // 96 of 94.7
		{Crew{4, 100 * manway.Pound}, Tip, manway.NotJudged},
		{Crew{2, 100 * manway.Pound}, Hoist, manway.NotJudged},
	} {
		m, err := l.Move(MoveCase{Crew: c.crew, Seat: Seat{Fit: OnTop}})
		if err != nil {
			t.Fatal(err)
		}
		got := m.Methods[c.way].Crew
		if got.Status != c.want || (got.Status == manway.NotJudged) != (got.Reason != "") {
			t.Errorf("%+v %v: %v (%s), want %v", c.crew, c.way, got.Status, got.Reason, c.want)
		}
	}
}

func TestFirstPull(t *testing.T) {
	free, _ := lids["disc"].Move(MoveCase{})
	bound, _ := lids["disc"].Move(MoveCase{Bond: 100 * manway.PoundForce})
	if !free.Cautions.Has(manway.FirstPull) || bound.Cautions.Has(manway.FirstPull) {
		t.Error("the caution of the first pull must stand where no bond is declared, and only there")
	}
	for i, k := range bound.Methods {
		more := float64((k.FirstPull - free.Methods[i].FirstPull) / manway.PoundForce)
		want := map[Way]float64{Tip: 50, Drag: 100, Hook: 80, FulcrumBar: 51, Hoist: 100}[k.Way]
		if want != 0 && !close(more, want, 1e-9) {
			t.Errorf("%v: bond adds %v lbf, want %v", k.Way, more, want)
		}
		if k.Low > k.High || k.High > k.FirstPull {
			t.Errorf("%v: %v, %v, %v are not in order", k.Way, k.Low, k.High, k.FirstPull)
		}
	}
}

func TestSlings(t *testing.T) {
	l := lids["disc"]
	l.Measured = 300 * manway.Pound
	for _, c := range []struct {
		slings Slings
		want   float64 // lbf in one leg
	}{
		{Slings{}, 300}, {Slings{Legs: 2}, 150}, {Slings{Legs: 4}, 150},
		{Slings{Legs: 3, Lean: 60 * manway.Degree}, 300}, // 150/cos 60
		{Slings{Legs: 1, Lean: 45 * manway.Degree}, 300}, // one leg hangs straight
	} {
		m, err := l.Move(MoveCase{Slings: c.slings})
		if err != nil {
			t.Fatal(err)
		}
		if !close(m.SlingLeg.In(manway.PoundForce), c.want, 1e-9) || m.GearLimit != 5*m.SlingLeg {
			t.Errorf("%+v: leg %v, gear %v, want %v lbf", c.slings, m.SlingLeg, m.GearLimit, c.want)
		}
	}
}

func TestMoveFaultsTogether(t *testing.T) {
	_, err := Lid{Shape: Disc, Diameter: 24 * in}.Move(MoveCase{
		Seat: Seat{Fit: Bevel, Friction: Friction{0.9, 0.2}}, Crew: Crew{People: 9}, Bond: -1, Bar: Bar{LoadArm: 1}, Outside: 1 << 15,
	})
	want := []string{"Thickness", "Seat.Friction.Low", "Crew.People", "Bond", "Bar.LoadArm", "Outside"}
	got := fields(err)
	if len(got) != len(want) {
		t.Fatalf("faults %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("fault %d is %s, want %s", i, got[i], want[i])
		}
	}
}
