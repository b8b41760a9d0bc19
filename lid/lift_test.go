package lid

import (
	"testing"

	"manway.example/manway"
)

// usual is a lift that the equation covers, not at any corner of it.
var usual = Lift{
	Load: 40 * manway.Pound, Frequency: 1.5, Grip: FairGrip,
	Origin:      Hands{Horizontal: 14 * in, Vertical: 12 * in, Turn: 20 * manway.Degree},
	Destination: Hands{Horizontal: 18 * in, Vertical: 44 * in},
}

func limitOf(t *testing.T, l Lift) LiftLimit {
	t.Helper()
	r, err := l.Limit()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Property (monotone): each term that grows worse lowers the limit.
func TestLiftFalls(t *testing.T) {
	base := limitOf(t, usual).Limit
	for name, change := range map[string]func(*Lift){
		"farther":  func(l *Lift) { l.Origin.Horizontal += 2 * in },
		"lower":    func(l *Lift) { l.Origin.Vertical -= 6 * in; l.Destination.Vertical -= 6 * in },
		"turned":   func(l *Lift) { l.Origin.Turn += 30 * manway.Degree },
		"more":     func(l *Lift) { l.Frequency = 3 },
		"longer":   func(l *Lift) { l.Spell = LongSpell },
		"poor":     func(l *Lift) { l.Grip = PoorGrip },
		"travel":   func(l *Lift) { l.Destination.Vertical = 70 * in },
		"with end": func(l *Lift) { l.Control = true; l.Destination.Horizontal = 24 * in },
	} {
		l := usual
		change(&l)
		if r := limitOf(t, l); !(r.Limit < base) {
			t.Errorf("%s: %v, not below %v", name, r.Limit, base)
		}
	}
}

// Beyond any end of the tables nobody should lift; at the ends there is still
// a limit.
func TestLiftEnds(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Lift)
		want   Standing
	}{
		"reach at 25 in":      {func(l *Lift) { l.Origin.Horizontal = 25 * in }, Limited},
		"reach over 25 in":    {func(l *Lift) { l.Origin.Horizontal = 25.01 * in }, NoLift},
		"height at 70 in":     {func(l *Lift) { l.Origin.Vertical = 70 * in }, Limited},
		"height over 70 in":   {func(l *Lift) { l.Origin.Vertical = 70.01 * in }, NoLift},
		"turned 135":          {func(l *Lift) { l.Origin.Turn = 135 * manway.Degree }, Limited},
		"turned more":         {func(l *Lift) { l.Origin.Turn = 136 * manway.Degree }, NoLift},
		"12 a minute low":     {func(l *Lift) { l.Frequency = 12 }, Limited},
		"16 a minute":         {func(l *Lift) { l.Frequency = 16 }, NoLift},
		"one hand":            {func(l *Lift) { l.Outside = OneHanded }, NotCovered},
		"metric at 63 cm":     {func(l *Lift) { l.Edition = MetricEdition; l.Origin.Horizontal = 63 * manway.Centimetre }, Limited},
		"metric beyond 63 cm": {func(l *Lift) { l.Edition = MetricEdition; l.Origin.Horizontal = 63.1 * manway.Centimetre }, NoLift},
	} {
		l := usual
		c.change(&l)
		r := limitOf(t, l)
		if r.Standing != c.want || (r.Standing == Limited) != (r.Limit > 0) || (r.Standing == Limited) != (r.Index > 0) {
			t.Errorf("%s: %v, limit %v, index %v, want %v", name, r.Standing, r.Limit, r.Index, c.want)
		}
	}
}

// The two editions are not the same, and near each other: 23 kg is 0.6 % below
// 51 lb, 25 cm 1.6 % below 10 in.
func TestEditionsDiffer(t *testing.T) {
	l := usual
	us := limitOf(t, l).Limit
	l.Edition = MetricEdition
	if metric := limitOf(t, l).Limit; metric == us || !close(float64(metric), float64(us), 0.03) {
		t.Errorf("us %v, metric %v", us, metric)
	}
}

// By hand and at full precision differ by no more than the rounding of six
// multipliers to two decimals.
func TestByHandIsNear(t *testing.T) {
	for h := 10; h <= 25; h++ {
		l := usual
		l.Origin.Horizontal = manway.Length(h) * in
		r := limitOf(t, l)
		if !close(float64(r.Limit), float64(r.ByHand), 0.04) {
			t.Errorf("H %d: %v, by hand %v", h, r.Limit, r.ByHand)
		}
	}
}

func TestLiftFaults(t *testing.T) {
	l := Lift{Edition: 7, Frequency: -1, Origin: Hands{Horizontal: -1, Turn: 4}, Destination: Hands{Vertical: 9 * manway.Foot}}
	want := []string{"Edition", "Origin.Horizontal", "Origin.Turn", "Destination.Vertical", "Frequency"}
	_, err := l.Limit()
	if got := fields(err); len(got) != len(want) {
		t.Errorf("faults %v, want %v", got, want)
	}
}

func TestTeamsThatDoNotCount(t *testing.T) {
	for _, n := range []int{-1, 0, 4, 99} {
		if m, ok := TeamByShare(n, 20*manway.Kilogram); ok || m != 0 {
			t.Errorf("%d people: %v %v", n, m, ok)
		}
	}
	// The rule in use never allows more than the doubling or what was measured.
	for n := 1; n <= 3; n++ {
		a, _ := TeamByShare(n, 20*manway.Kilogram)
		b, _ := TeamByDoubling(n, 20*manway.Kilogram)
		if a > b {
			t.Errorf("%d people: share %v above doubling %v", n, a, b)
		}
	}
}

// Property (bounded): a task with itself repeated is never better than alone; and
// beyond the table there is no index.
func TestCompositeIndex(t *testing.T) {
	task := Task{Load: 20 * manway.Pound, Free: 20 * manway.Pound, Frequency: 3}
	one, _, _ := CompositeIndex([]Task{task}, ShortSpell, true)
	two, ok, err := CompositeIndex([]Task{task, task}, ShortSpell, true)
	if err != nil || !ok || !(two > one) {
		t.Errorf("once %v, twice %v, %v %v", one, two, ok, err)
	}
	if _, ok, err := CompositeIndex([]Task{task, task, task, task, task, task}, ShortSpell, true); ok || err != nil {
		t.Errorf("18 a minute: %v %v, want no index", ok, err)
	}
	if _, _, err := CompositeIndex(nil, ShortSpell, true); err == nil {
		t.Error("no task: want an error")
	}
}

func TestOutsideText(t *testing.T) {
	var o Outside
	if err := o.UnmarshalText([]byte("kneeling, one-handed")); err != nil || o != Kneeling|OneHanded {
		t.Errorf("%v %v", o, err)
	}
	if err := o.UnmarshalText([]byte("tired")); err == nil {
		t.Error("tired was accepted")
	}
	if err := o.UnmarshalJSON([]byte(`["astride"]`)); err != nil || o != Astride {
		t.Errorf("%v %v", o, err)
	}
}

// The working is that of the end that governs: its limit is the limit of the lift,
// at the destination where the hands reach 24 in there.
func TestLiftWorkingIsOfTheEndThatGoverns(t *testing.T) {
	far := usual
	far.Control, far.Destination.Horizontal = true, 24*in
	for _, c := range []struct {
		l       Lift
		symbol  string
		reached manway.Length
	}{{usual, "RWL at origin", usual.Origin.Horizontal}, {far, "RWL at destination", far.Destination.Horizontal}} {
		r := limitOf(t, c.l)
		w := r.Working(manway.US)
		if w[0].Numbers != "H "+c.reached.Text(manway.US) {
			t.Errorf("%s: reckoned with %q", c.symbol, w[0].Numbers)
		}
		if last := w[6]; last.Symbol != c.symbol || last.Value != r.Limit.Text(manway.US) {
			t.Errorf("%s %s, want %s %v", last.Symbol, last.Value, c.symbol, r.Limit)
		}
	}
}
