package lid

import (
	"math"
	"math/rand/v2"
	"testing"

	"manway.example/manway"
)

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// Property (scaling): the forces by hand and of every tool go with the weight of
// the lid, and the bond adds the same whatever it weighs.
func TestForcesGoWithTheWeight(t *testing.T) {
	c := MoveCase{Seat: Seat{Fit: OnTop, Friction: Friction{0.6, 0.8}}, Bond: 40 * manway.PoundForce}
	one, two := movesOf(t, 100*manway.Pound, c), movesOf(t, 200*manway.Pound, c)
	for w := range int(Hoist) + 1 {
		a, b := one.Methods[w], two.Methods[w]
		if !close(float64(b.Low), 2*float64(a.Low), 1e-12) || !close(float64(b.High), 2*float64(a.High), 1e-12) {
			t.Errorf("%v: %v to %v, of twice the lid %v to %v", a.Way, a.Low, a.High, b.Low, b.High)
		}
		if !close(float64(b.FirstPull-b.High), float64(a.FirstPull-a.High), 1e-9) {
			t.Errorf("%v: the bond adds %v and %v", a.Way, a.FirstPull-a.High, b.FirstPull-b.High)
		}
	}
}

// Property (balance): about the block of a bar the moments of lid and hands are
// equal. Property (invariant): a bar of twice the size has the same advantage.
func TestBarBalances(t *testing.T) {
	b := Bar{LoadArm: 3 * manway.Inch, EffortArm: 40 * manway.Inch}
	force := movesOf(t, 160*manway.Pound, MoveCase{Bar: b}).Methods[PryBar].High
	if load := (160 * manway.Pound).Weight() / 2; !close(float64(force)*float64(b.EffortArm), float64(load)*float64(b.LoadArm), 1e-12) {
		t.Errorf("%v at %v does not hold %v at %v", force, b.EffortArm, load, b.LoadArm)
	}
	if twice := (Bar{2 * b.LoadArm, 2 * b.EffortArm}); !close(twice.Advantage(), b.Advantage(), 1e-12) {
		t.Errorf("advantage %v and %v", b.Advantage(), twice.Advantage())
	}
}

// Property (balance): the two halves of a taut rope hold the side force between
// them, as far as the small angle goes.
func TestRopeBalances(t *testing.T) {
	for _, moved := range []manway.Length{1, 2, 6} {
		p := SidePull{Side: 20 * manway.PoundForce, Span: 30 * manway.Foot, Moved: moved * manway.Inch}
		pull := must(p.Tension())
		sin := math.Sin(math.Atan(float64(2 * p.Moved / p.Span)))
		if held := 2 * float64(pull) * sin; !close(held, float64(p.Side), 0.01) || held > float64(p.Side) {
			t.Errorf("moved %v: the rope holds %v of %v", p.Moved, held, float64(p.Side))
		}
	}
}

// Property (inverse): a cover that fails at twice a load may carry that load.
func TestHoleCoverTwice(t *testing.T) {
	for _, load := range []manway.Force{0, 300 * manway.PoundForce, 4 * manway.Kip} {
		if got := must(HoleCoverLoad(2 * load)); got != load {
			t.Errorf("%v, want %v", got, load)
		}
	}
}

// Property (bounded): a team never lifts more than all of its people alone, nor
// less than one of them; by the cautious rule each lifts no more in a larger team.
func TestTeamsAreNoSum(t *testing.T) {
	const each = 40 * manway.Pound
	last := manway.Mass(math.Inf(1))
	for n := 1; n <= 6; n++ {
		all := times(each, float64(n))
		double, ok := TeamByDoubling(n, each)
		if !ok || double > all || double < each {
			t.Errorf("%d by doubling: %v", n, double)
		}
		share, ok := TeamByShare(n, each)
		if crew, said := (Crew{People: n, Limit: each}).Together(); crew != share || said != ok {
			t.Errorf("%d: the crew lifts %v, a team %v", n, crew, share)
		}
		if !ok {
			continue
		}
		if share > double || share < each || times(share, 1/float64(n)) > last {
			t.Errorf("%d by share: %v, by doubling %v", n, share, double)
		}
		last = times(share, 1/float64(n))
	}
}

// Property (monotone): more work is never a shorter spell, more rest never a
// longer one.
func TestSpellsGrow(t *testing.T) {
	for rest := manway.Duration(0); rest <= 2*manway.Hour; rest += 10 * manway.Minute {
		last := ShortSpell
		for work := manway.Duration(0); work <= 8*manway.Hour; work += 10 * manway.Minute {
			now := must(SpellOf(work, rest))
			if now < last || now < must(SpellOf(work, rest+manway.Hour)) {
				t.Errorf("%v of work, %v of rest: %v after %v", work, rest, now, last)
			}
			last = now
		}
	}
}

// Property (additive): lifts of two stretches of a period add up, and lifting all
// the time is the rate itself.
func TestRatesAddUp(t *testing.T) {
	a, b := must(AverageRate(10, 4*manway.Minute)), must(AverageRate(10, 7*manway.Minute))
	if both := must(AverageRate(10, 11*manway.Minute)); !close(a+b, both, 1e-12) {
		t.Errorf("%v and %v, together %v", a, b, both)
	}
	if all := must(AverageRate(10, 15*manway.Minute)); !close(all, 10, 1e-12) {
		t.Errorf("all the time %v", all)
	}
}

// Property (monotone): farther, more turned or more often never allows more, and
// keeping a load moving never more than starting it.
func TestFilterFalls(t *testing.T) {
	for z := range Zone(len(zones)) {
		for _, women := range []bool{false, true} {
			last := manway.Mass(math.Inf(1))
			for _, f := range []Filter{
				{}, {Turn: 60 * manway.Degree}, {Turn: 120 * manway.Degree}, {Turn: 120 * manway.Degree, Frequency: 1},
				{Turn: 120 * manway.Degree, Frequency: 6}, {Turn: 120 * manway.Degree, Frequency: 20}, {Turn: 120 * manway.Degree, Frequency: 20, Far: true},
			} {
				f.Zone, f.Women = z, women
				if m := must(f.Limit()); m >= last {
					t.Errorf("%+v: %v, not below %v", f, m, last)
				} else {
					last = m
				}
			}
		}
	}
	start, keep := PushFilter(false)
	lower, least := PushFilter(true)
	if keep > start || least > lower || lower > start || least > keep {
		t.Errorf("%v %v %v %v", start, keep, lower, least)
	}
}

// Property (monotone): a lock, a fastener, a second guard or a label more never
// breaks a rule that was met, nor does a heavier lid.
func TestMoreGuardsNeverBreakARule(t *testing.T) {
	rules := GuardRules()
	rng := rand.New(rand.NewPCG(1, 7))
	for range 500 {
		yes := func() manway.Answer { return []manway.Answer{manway.No, manway.Yes}[rng.IntN(2)] }
		g := Guard{Opening: 20 * in, DepthKnown: true, Depth: manway.Length(rng.IntN(3)) * 4 * in, Fastened: yes(), Locked: yes(), Secondary: yes(), Label: yes()}
		light, heavy := concreteDisc, concreteDisc
		light.Measured, heavy.Measured = 40*manway.Pound, 120*manway.Pound
		before := must(light.CheckGuard(g, rules))
		more := g
		for _, a := range []*manway.Answer{&more.Fastened, &more.Locked, &more.Secondary, &more.Label} {
			if rng.IntN(2) == 0 {
				*a = manway.Yes
			}
		}
		after := must(heavy.CheckGuard(more, rules))
		for i := range rules {
			if before.Findings[i].Met == manway.Yes && after.Findings[i].Met != manway.Yes {
				t.Errorf("%s: met by %+v, not by %+v", rules[i].Code, g, more)
			}
		}
	}
}

// Property (monotone): a thicker bar and a deeper one hold more; more load on the
// same handle never passes what failed.
func TestHandleGrows(t *testing.T) {
	h := Handle{State: HandleSound, Waist: 0.4 * in, Spacing: 6 * in, Embedment: 2 * in, Edge: 8 * in, Load: 100 * manway.PoundForce}
	base := must(concreteDisc.CheckHandle(h))
	thick, deep, loaded := h, h, h
	thick.Waist, deep.Embedment, loaded.Load = 0.5*in, 2.5*in, 3*h.Load
	if r := must(concreteDisc.CheckHandle(thick)); r.Steel <= base.Steel || r.Bar <= base.Bar {
		t.Errorf("a thicker bar: %v, %v", r.Steel, r.Bar)
	}
	if r := must(concreteDisc.CheckHandle(deep)); r.Breakout <= base.Breakout {
		t.Errorf("a deeper bar: %v, not above %v", r.Breakout, base.Breakout)
	}
	r := must(concreteDisc.CheckHandle(loaded))
	for i := range r.Checks {
		if a, b := base.Checks[i], r.Checks[i]; a.Status == manway.Fail && b.Status == manway.Pass || b.Demand < a.Demand {
			t.Errorf("%s: %v, with thrice the load %v", a.Name, a.Status, b.Status)
		}
	}
}

// Property (scaling): twice as old is half the loss a year, and twice the loss
// twice; the share that is left does not depend on the age. Property (invariant):
// a bar of twice the size keeps the same share.
func TestWearScales(t *testing.T) {
	w := Wear{Protected: 4 * in, Now: 3 * in, Age: 20 * manway.Year}
	a := must(w.Loss())
	w.Age *= 2
	old := must(w.Loss())
	w.Now = 2 * in
	worn := must(w.Loss())
	if !close(float64(old.PerYear), float64(a.PerYear)/2, 1e-12) || !close(float64(worn.PerYear), 2*float64(old.PerYear), 1e-12) || old.Plain != a.Plain {
		t.Errorf("%+v, %+v, %+v", a, old, worn)
	}
	b, c := must(WornBar(0.5*in, 0.4*in)), must(WornBar(1*in, 0.8*in))
	if !close(b.Area, c.Area, 1e-12) || b.Brittle != c.Brittle {
		t.Errorf("%+v and %+v", b, c)
	}
	whole := must(WornBar(0.5*in, 0.5*in))
	if whole.Area != 1 || whole.Brittle || b.Area >= whole.Area {
		t.Errorf("whole %+v, worn %+v", whole, b)
	}
}

// Property (scaling): the loss by sulfide goes with what reacts and what arrives,
// and against what the concrete has to give.
func TestSulfideScales(t *testing.T) {
	s := Sulfide{Reaction: 0.4, Flux: 0.1, Alkalinity: 0.2}
	base, _, err := s.PerYear()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		s    Sulfide
		want float64
	}{{Sulfide{0.8, 0.1, 0.2}, 2}, {Sulfide{0.4, 0.3, 0.2}, 3}, {Sulfide{0.4, 0.1, 0.8}, 0.25}, {Sulfide{0.4, 0, 0.2}, 0}} {
		if got, _, _ := c.s.PerYear(); !close(float64(got), c.want*float64(base), 1e-12) {
			t.Errorf("%+v: %v times, want %v", c.s, float64(got/base), c.want)
		}
	}
}
