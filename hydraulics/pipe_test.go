package hydraulics_test

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
)

// Property (inverse): the root that is found satisfies Colebrook's equation to
// 1e-12, in few steps.
func TestColebrookResidual(t *testing.T) {
	most := 0
	for _, re := range []float64{4000, 4001, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9} {
		for _, share := range []float64{0, 1e-6, 1e-4, 1e-3, 0.01, 0.05} {
			f := reftable.Must[hydraulics.Friction](t)(rough(share).Friction(re))
			x := 1 / math.Sqrt(f.Factor)
			if off := x + 2*math.Log10(share/3.7+2.51/re*x); !(math.Abs(off) <= 1e-12*x) {
				t.Errorf("Re %g, e/D %g: off by %g", re, share, off)
			}
			most = max(most, f.Iterations)
		}
	}
	if most > 6 {
		t.Errorf("%d iterations: want 6 at most", most)
	}
	t.Logf("at most %d iterations", most)
}

// Property (continuous): between laminar and turbulent flow the factor meets both ends in value and
// slope.
func TestTransitionIsSmooth(t *testing.T) {
	factor := func(re float64) float64 {
		return reftable.Must[hydraulics.Friction](t)(rough(0.002).Friction(re)).Factor
	}
	for _, re := range []float64{2000, 4000} {
		const h = 0.01
		below, at, above := factor(re-h), factor(re), factor(re+h)
		if !(math.Abs(above-below) <= 1e-5*at) || !(math.Abs((above-at)-(at-below)) <= 1e-8*at) {
			t.Errorf("Re %g: %.12g %.12g %.12g: want one smooth curve", re, below, at, above)
		}
	}
}

// Property (inverse): depth from flow and flow from depth undo each other to 1e-12.
func TestDrainInverse(t *testing.T) {
	most := 0
	for _, d := range []hydraulics.Drain{
		{Diameter: 4 * manway.Inch, Slope: 0.0208, N: 0.013}, {Diameter: 3 * manway.Foot, Slope: 0.0005, N: 0.024}, {Diameter: 2 * manway.Inch, Slope: 0.04, N: 0.009},
	} {
		full := reftable.Must[hydraulics.DrainFlow](t)(d.AtDepth(d.Diameter))
		for _, share := range []float64{1e-9, 1e-6, 1e-3, 0.02, 0.3, 0.5, 0.9, 0.999999, 1, 1.0001, 1.05, 1.0756} {
			want := full.Full * manway.Flow(share)
			at := reftable.Must[hydraulics.DrainFlow](t)(d.AtFlow(want))
			if at.State != hydraulics.PartFull {
				t.Fatalf("%g of full: %v", share, at.State)
			}
			back := reftable.Must[hydraulics.DrainFlow](t)(d.AtDepth(at.Depth))
			// A depth is known to its last bit only: of a film that bit is more.
			if off := math.Abs(float64(back.Flow/want) - 1); off > 1e-12+4e-16/at.Share {
				t.Errorf("%g of full: flow %v back from depth %v, off by %g", share, back.Flow, at.Depth, off)
			}
			most = max(most, at.Steps)
		}
		over := reftable.Must[hydraulics.DrainFlow](t)(d.AtFlow(full.Full * 1.08))
		if over.State != hydraulics.Surcharged || over.Depth != d.Diameter {
			t.Errorf("1.08 of full: %v at %v, want surcharged", over.State, over.Depth)
		}
		if r := float64(full.Greatest / full.Full); !(math.Abs(r-1.0757) <= 5e-5) {
			t.Errorf("greatest flow %.5f of full: want 1.0757", r)
		}
	}
	if most > 20 {
		t.Errorf("%d steps: want 20 at most", most)
	}
	t.Logf("at most %d steps", most)
}

// No depth carries more than the greatest flow, and deeper carries more up to
// its depth of 0.938.
func TestDrainRises(t *testing.T) {
	d := hydraulics.Drain{Diameter: 6 * manway.Inch, Slope: 0.01, N: 0.013}
	last := manway.Flow(-1)
	for i := range 1001 {
		r := reftable.Must[hydraulics.DrainFlow](t)(d.AtDepth(d.Diameter * manway.Length(i) / 1000))
		if r.Flow > r.Greatest*(1+1e-12) {
			t.Fatalf("depth %v: %v above the greatest %v", r.Depth, r.Flow, r.Greatest)
		}
		if r.Share <= 0.938 && r.Flow <= last {
			t.Fatalf("depth %v: flow %v does not rise", r.Depth, r.Flow)
		}
		last = r.Flow
	}
}

// Property (inverse): the flow under a head takes that head.
func TestHoseBalance(t *testing.T) {
	w := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(sixty))
	for _, h := range []hydraulics.Hose{
		{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Fittings: 1.5},
		{Diameter: 1 * manway.Inch, Length: 1000 * manway.Foot, Roughness: 0.01 * manway.Inch},
		{Diameter: 4 * manway.Inch, Fittings: 0.01},
	} {
		for _, head := range []manway.Length{manway.Inch / 100, manway.Inch, manway.Foot, 30 * manway.Foot} {
			q := reftable.Must[hydraulics.HoseFlow](t)(h.AtHead(head, w))
			q = reftable.Must[hydraulics.HoseFlow](t)(h.AtFlow(q.Flow, w))
			if off := math.Abs(float64(q.Loss/head) - 1); off > 1e-9 {
				t.Errorf("%+v under %v: takes %v, off by %g", h, head, q.Loss, off)
			}
		}
	}
}

// Property (monotone): higher, warmer and heavier all make lifting harder, and what is missing and
// what is left are never both there.
func TestSuctionProperties(t *testing.T) {
	base := hydraulics.Suction{Temperature: sixty, Vacuum: 29 * manway.InchMercury, Lift: 12 * manway.Foot,
		Hose: hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Fittings: 1.5}}
	at := reftable.Must[hydraulics.Pull](t)(base.Pull())
	higher, warmer, heavier, longer := base, base, base, base
	higher.Altitude = 6000 * manway.Foot
	warmer.Temperature += 40
	heavier.SpecificGravity = 1.1
	longer.Hose.Length *= 2
	for name, s := range map[string]hydraulics.Suction{"higher": higher, "warmer": warmer, "heavier": heavier, "longer": longer} {
		p := reftable.Must[hydraulics.Pull](t)(s.Pull())
		if !(p.Hose.Flow < at.Hose.Flow) {
			t.Errorf("%s: %v, want less than %v", name, p.Hose.Flow, at.Hose.Flow)
		}
	}
	deep := base
	deep.Lift = 40 * manway.Foot
	p := reftable.Must[hydraulics.Pull](t)(deep.Pull())
	if p.Lifting != hydraulics.CannotLift || p.Left != 0 || !(math.Abs(float64(p.Missing-(deep.Lift-p.Available))) <= 1e-12) {
		t.Errorf("40 ft: %v, left %v, missing %v", p.Lifting, p.Left, p.Missing)
	}
	rated := base
	rated.UsualRate = 100 * manway.GallonPerMinute
	p = reftable.Must[hydraulics.Pull](t)(rated.Pull())
	if p.Lifting != hydraulics.LiftsByRate || p.Hose.Flow != rated.UsualRate {
		t.Errorf("usual rate: %v at %v", p.Hose.Flow, p.Lifting)
	}
}

// Property (two ways): of a box without friction worth its name the time to empty is volume over the
// usual rate; with the lift growing it takes longer.
func TestEmptyingTime(t *testing.T) {
	e := hydraulics.Emptying{Compartment: hydraulics.Compartment{Shape: &boxTank(t, 0).Compartments()[0], State: hydraulics.Opened}, From: 48 * manway.Inch,
		Suction: hydraulics.Suction{Temperature: sixty, Vacuum: 27 * manway.InchMercury, Lift: 9 * manway.Foot, UsualRate: 50 * manway.GallonPerMinute,
			Hose: hydraulics.Hose{Diameter: 4 * manway.Inch, Length: 50 * manway.Foot, Fittings: 1.5}}}
	r := reftable.Must[hydraulics.Emptied](t)(e.Time())
	want := float64(r.Volume / e.Suction.UsualRate.Times(1))
	if !r.Time.Known || !(math.Abs(float64(r.Time.Time)-want) <= 1e-9*want) {
		t.Errorf("at the usual rate: %v s, want %v s", float64(r.Time.Time), want)
	}
	e.Suction.UsualRate = 0
	r = reftable.Must[hydraulics.Emptied](t)(e.Time())
	fast, slow := float64(r.Volume/r.First.Hose.Flow.Times(1)), float64(r.Volume/r.Last.Hose.Flow.Times(1))
	if got := float64(r.Time.Time); !(got > fast && got < slow) {
		t.Errorf("by the balance: %v s, want between %v and %v", got, fast, slow)
	}
	e.Suction.Lift = 28 * manway.Foot
	r = reftable.Must[hydraulics.Emptied](t)(e.Time())
	if r.Time.Known || r.Lifting != hydraulics.CannotLift || !(r.Missing > 0) || !(r.Lowest > e.To && r.Lowest < e.From) {
		t.Errorf("28 ft: %+v", r)
	}
}
