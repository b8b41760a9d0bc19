package tank

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway"
)

const in = manway.Inch

// roofTank has two compartments, a square and a round opening.
func roofTank(t testing.TB) *Tank {
	tk, err := New(Spec{
		Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60 * in}, Wall: 3 * in, Roof: 4 * in, Floor: 4 * in,
		Partitions: []Partition{{At: 62 * in, Thickness: 3 * in}},
		Access: []Access{
			{Compartment: 0, Along: 24 * in, Length: 24 * in, Width: 24 * in},
			{Compartment: 1, Along: 80 * in, Diameter: 20 * in},
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	return &tk
}

func bar(d, s, c float64) manway.Reinforcement {
	return manway.Reinforcement{
		State: manway.SteelKnown, Diameter: manway.Length(d) * in, Spacing: manway.Length(s) * in,
		Cover: manway.Length(c) * in, Yield: 60000 * manway.PSI,
	}
}

func knownRoof() RoofCase {
	return RoofCase{
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI},
		Steel:    Steel{Inside: Mesh(bar(0.375, 6, 0.75))},
		Now:      RoofLoad{Cover: 12 * in, Wetness: SoakedSoil},
		Planned:  &RoofLoad{Cover: 20 * in, Wetness: SoakedSoil, Risers: []Riser{{Access: 0, Mass: 500 * manway.Pound, Wall: 3 * in}}},
	}
}

func roofOf(t *testing.T, tk *Tank, c RoofCase) RoofStrength {
	t.Helper()
	r, err := tk.Roof(c)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Nothing passes while the steel is not known, or where there is none; what the
// planned load adds is the same whatever is known of the strength.
func TestRoofUnknownAndPlain(t *testing.T) {
	tk := roofTank(t)
	known := roofOf(t, tk, knownRoof())
	for _, state := range []manway.SteelState{manway.SteelUnknown, manway.SteelNone} {
		c := knownRoof()
		none := manway.Reinforcement{State: state}
		c.Steel = Steel{Mesh(none), Mesh(none)}
		want := map[manway.SteelState]manway.Status{manway.SteelUnknown: manway.NotShown, manway.SteelNone: manway.NotPermitted}[state]
		r := roofOf(t, tk, c)
		for _, l := range r.Loadings {
			for _, check := range l.Checks {
				if check.Status != want {
					t.Errorf("steel %v: %s, %s is %v, want %v", state, l.Name, check.Name, check.Status, want)
				}
			}
			if l.HeaviestKnown {
				t.Errorf("steel %v: %s has a heaviest wheel", state, l.Name)
			}
		}
		if r.Cover.Known || r.Governs >= 0 || !r.Cautions.Has(manway.KeepOffRoof|manway.Screening) {
			t.Errorf("steel %v: cover %+v, governs %d, %v", state, r.Cover, r.Governs, r.Cautions)
		}
		if state == manway.SteelUnknown && !strings.Contains(r.Loadings[0].Checks[0].Reason, "of plain concrete") {
			t.Errorf("no figure for comparison: %q", r.Loadings[0].Checks[0].Reason)
		}
		if !r.Change.Known || r.Change.Load != known.Change.Load || !(math.Abs(r.Change.Moment/known.Change.Moment-1) <= 1e-9) {
			t.Errorf("steel %v: change %+v, with known steel %+v", state, r.Change, known.Change)
		}
		if text := r.Change.Text(); !strings.Contains(text, "adds 45 % to the weight") {
			t.Errorf("change says %q", text)
		}
	}
}

// The weight now and after by hand: 99 in by 63 in between bearings less the
// two openings of 576 and 314 in2, 4 in of concrete, 12 in and 20 in of soil
// at 130 lb/ft3, the soil on the openings, the riser instead of it.
func TestRoofChangeByHand(t *testing.T) {
	r := roofOf(t, roofTank(t), knownRoof())
	round := math.Pi * 100
	net := (99*63 - 576 - round) / 144
	now := net*(50+130) + (576+round)/144*130
	after := net*(50+130*20.0/12) + round/144*130*20/12 + 500
	if got := r.Change.Now.In(manway.PoundForce); !(math.Abs(got-now) <= 1e-6*now) {
		t.Errorf("now %g lbf, by hand %g", got, now)
	}
	if got := r.Change.After.In(manway.PoundForce); !(math.Abs(got-after) <= 1e-6*after) {
		t.Errorf("after %g lbf, by hand %g", got, after)
	}
}

// A middle piece of a roof of planks is a beam across the tank: its moment is
// q L2/8, its shear one depth from the wall q (L/2 - d), whatever the plate.
func TestPlankIsABeam(t *testing.T) {
	tk, err := New(Spec{Shape: Box{Length: 120 * in, Width: 60 * in, Height: 60 * in}, Wall: 4 * in, Roof: 4 * in, Floor: 4 * in})
	if err != nil {
		t.Fatal(err)
	}
	c := RoofCase{
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI}, Steel: Steel{Inside: Mesh(bar(0.375, 6, 0.75))},
		Joints: []manway.Length{24 * in, 48 * in, 72 * in, 96 * in}, Now: RoofLoad{Cover: 12 * in, Wetness: DrySoil}, Soil: manway.Soil{Moist: 120 * manway.PoundPerCubicFoot},
	}
	r := roofOf(t, &tk, c)
	if r.Pieces != 5 {
		t.Fatalf("%d pieces, want 5", r.Pieces)
	}
	span := 64.0 / 12
	q := 50 + 120.0
	bend := r.Loadings[0].Checks[0]
	if got, want := bend.Unfactored/float64(manway.PoundForceFootPerFoot), q*span*span/8; !(math.Abs(got/want-1) <= 0.02) {
		t.Errorf("moment %g lbf ft/ft, beam %g", got, want)
	}
	d := (4 - 0.75 - 1.5*0.375) / 12
	shear := r.Loadings[0].Checks[1]
	if got, want := shear.Unfactored/float64(manway.PoundForcePerFoot), q*(span/2-d); !(math.Abs(got/want-1) <= 0.02) {
		t.Errorf("shear %g lbf/ft, beam %g", got, want)
	}
	// as a beam, phi Mn of No. 3 at 6 in at d = 2.6875 in
	if got := bend.Capacity / float64(manway.PoundForceFootPerFoot); !(math.Abs(got-2510) <= 5) {
		t.Errorf("strength %g lbf ft/ft, by hand 0.9 x 0.2209 x 60000 (2.6875 - 0.325/2)/12 = 2510", got)
	}
}

// Property (monotone): more soil and more wear use more.
func TestRoofMonotonic(t *testing.T) {
	tk := roofTank(t)
	last := 0.0
	for _, cover := range []float64{0, 6, 12, 24, 36} {
		c := knownRoof()
		c.Planned, c.Now.Cover = nil, manway.Length(cover)*in
		if use := roofOf(t, tk, c).Loadings[0].Use(); use <= last {
			t.Errorf("%g in of soil use %g, less cover %g", cover, use, last)
		} else {
			last = use
		}
	}
	strength := math.Inf(1) // cover that is eaten weighs less and carries no less; never more
	for _, loss := range []float64{0, 0.25, 0.5, 0.7} {
		c := knownRoof()
		c.Loss = manway.Length(loss) * in
		check := roofOf(t, tk, c).Loadings[2].Checks[0]
		if check.Capacity > strength*(1+1e-12) {
			t.Errorf("loss %g in: strength %g, before %g", loss, check.Capacity, strength)
		}
		strength = check.Capacity
	}
	c := knownRoof()
	c.Loss = 0.75 * in
	if s := roofOf(t, tk, c).Loadings[0].Status(); s != manway.NotShown {
		t.Errorf("bare steel is %v, want not shown", s)
	}
}

// The limits are limits: at the cover found Use is 1, under the wheel found too.
func TestRoofLimits(t *testing.T) {
	tk := roofTank(t)
	c := knownRoof()
	c.Planned = nil
	r := roofOf(t, tk, c)
	if !r.Cover.Known {
		t.Fatal("no limit of cover")
	}
	at := c
	at.Now.Cover = r.Cover.Depth
	if use := roofOf(t, tk, at).Loadings[0].Use(); !(math.Abs(use-1) <= 0.01) {
		t.Errorf("under %v Use is %g", r.Cover.Depth, use)
	}
	pickup := r.Loadings[4]
	if !pickup.HeaviestKnown {
		t.Fatal("no heaviest wheel")
	}
	w := manway.PickupWheel
	w.Load = pickup.Heaviest
	c.Wheels = []manway.Wheel{w}
	if use := roofOf(t, tk, c).Loadings[3].Use(); !(math.Abs(use-1) <= 0.03) {
		t.Errorf("under a wheel of %v Use is %g", w.Load, use)
	}
}

// Property (symmetric): a tank mirrored about its centre line has the same roof.
func TestRoofMirrored(t *testing.T) {
	spec := Spec{Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60 * in}, Wall: 3 * in, Roof: 4 * in, Floor: 4 * in,
		Access: []Access{{Along: 24 * in, Across: 9 * in, Length: 24 * in, Width: 18 * in}}}
	a, err := New(spec)
	if err != nil {
		t.Fatal(err)
	}
	spec.Access = []Access{{Along: 72 * in, Across: -9 * in, Length: 24 * in, Width: 18 * in}}
	b, err := New(spec)
	if err != nil {
		t.Fatal(err)
	}
	c := knownRoof()
	c.Planned = nil
	ra, rb := roofOf(t, &a, c), roofOf(t, &b, c)
	for k := range ra.Loadings {
		if x, y := ra.Loadings[k].Use(), rb.Loadings[k].Use(); math.Abs(x/y-1) > 0.03 { // the screening mesh is not symmetric
			t.Errorf("%s: %g and %g", ra.Loadings[k].Name, x, y)
		}
	}
}

// A partition is a support only where it was seen to touch; then top steel
// counts too, and a roof without it is not shown.
func TestRoofContact(t *testing.T) {
	tk := roofTank(t)
	c := knownRoof()
	c.Planned = nil
	free := roofOf(t, tk, c)
	c.Contact = []bool{true}
	c.Steel.Outside = Mesh(bar(0.375, 6, 0.75))
	touches := roofOf(t, tk, c)
	for k, l := range touches.Loadings {
		if l.Use() < free.Loadings[k].Use()*(1-1e-9) {
			t.Errorf("%s: both ways %g, free alone %g: the worse must govern", l.Name, l.Use(), free.Loadings[k].Use())
		}
	}
	if free.Loadings[0].Status() != manway.Pass {
		t.Errorf("free roof %v", free.Loadings[0].Status())
	}
}

// A spall is judged by what is left in it.
func TestRoofSpall(t *testing.T) {
	tk := roofTank(t)
	c := knownRoof()
	c.Planned = nil
	c.Spalls = []Spall{{Along: 50 * in, Length: 10 * in, Width: 10 * in, Depth: 1 * in}} // deeper than the cover
	if s := roofOf(t, tk, c).Loadings[0].Status(); s != manway.NotShown {
		t.Errorf("steel bare in a spall is %v, want not shown", s)
	}
	c.Spalls[0].Depth = 0.5 * in
	if s := roofOf(t, tk, c).Loadings[0].Status(); s != manway.Pass {
		t.Errorf("a spall within the cover is %v, want pass", s)
	}
}

func TestRoofNotJudged(t *testing.T) {
	for name, spec := range map[string]Spec{
		"plastic":  {Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60 * in}, Material: PlasticShell},
		"cylinder": {Shape: HorizontalCylinder{Diameter: 60 * in, Length: 96 * in}},
	} {
		tk, err := New(spec)
		if err != nil {
			t.Fatal(err)
		}
		r := roofOf(t, &tk, RoofCase{})
		if len(r.Loadings) != 0 || len(r.NotJudged) != 1 || r.NotJudged[0].Status != manway.NotJudged || !r.Cautions.Has(manway.KeepOffRoof) {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

func TestRoofRefuses(t *testing.T) {
	tk := roofTank(t)
	nan := manway.Length(math.NaN())
	_, err := tk.Roof(RoofCase{
		Loss: 5 * in, Spalls: []Spall{{Along: nan}}, Contact: []bool{true, true}, Joints: []manway.Length{-1},
		Now: RoofLoad{Cover: nan, Risers: []Riser{{Access: 7}}}, Person: manway.Person{Mass: 1}, Wheels: []manway.Wheel{{}},
	})
	faults, ok := err.(manway.InputErrors)
	if !ok || len(faults) < 9 {
		t.Fatalf("%v: want every fault at once", err)
	}
	for _, field := range []string{"Loss", "Spalls[0].Along", "Contact", "Joints[0]", "Now.Cover", "Now.Risers[0].Access", "Person.Mass", "Wheels[0].Load"} {
		if !strings.Contains(err.Error(), field) {
			t.Errorf("no fault of %s in %v", field, err)
		}
	}
	var zero Tank
	if _, err := zero.Roof(RoofCase{}); err == nil {
		t.Error("a tank that was not made has a roof")
	}
}

func TestRoofWorking(t *testing.T) {
	r := roofOf(t, roofTank(t), knownRoof())
	text := r.Working(manway.US).String()
	for _, want := range []string{"span across", "bars both ways: phi Mn, reinforced", "truck at", "punching", "unknowns"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	for _, c := range r.Checks() {
		if c.Status == manway.Pass || c.Status == manway.Fail {
			if c.Source.Source == nil || c.Phi == 0 || !(c.Unfactored > 0) || c.Unfactored > c.Demand {
				t.Errorf("%s: source %v, phi %g, unfactored %g of %g", c.Name, c.Source, c.Phi, c.Unfactored, c.Demand)
			}
		}
	}
	if !r.Solved.Converged || r.Solved.Residual > 1e-9 {
		t.Errorf("solved %+v", r.Solved)
	}
}

// No roof panics, or has a figure that is not finite.
func FuzzRoof(f *testing.F) {
	tk := roofTank(f)
	f.Add(4000.0, 0.375, 6.0, 0.75, 0.0, 12.0, 20.0, 500.0, 50.0, uint8(0x12)) // the roof of the tests
	f.Add(0.0, 0.0, 0.0, 0.0, 3.4, 240.0, 0.0, 0.0, 0.0, uint8(0))             // nothing known, worn to the least
	f.Add(2500.0, 1.5, 1.0, 0.1, 0.05, 0.0, 36.0, 20000.0, 95.0, uint8(0xff))
	f.Fuzz(func(t *testing.T, fc, db, spacing, cover, loss, soil, planned, mass, spall float64, flags uint8) {
		l := func(x float64) manway.Length { return manway.Length(x) * in }
		steel := manway.Reinforcement{State: manway.SteelState(flags % 4), Diameter: l(db), Spacing: l(spacing), Cover: l(cover)}
		c := RoofCase{
			Concrete: manway.Concrete{Strength: manway.Pressure(fc) * manway.PSI}, Steel: Steel{Inside: Mesh(steel)}, Loss: l(loss),
			Spalls: []Spall{{Along: l(spall), Length: l(8), Width: l(8), Depth: l(loss / 2)}}, Now: RoofLoad{Cover: l(soil)},
			Wheels: []manway.Wheel{manway.PickupWheel},
		}
		if flags&16 != 0 {
			c.Planned = &RoofLoad{Cover: l(planned), Risers: []Riser{{Mass: manway.Mass(mass) * manway.Pound}}}
		}
		if flags&32 != 0 {
			c.Contact = []bool{true}
		}
		if flags&64 != 0 {
			c.Joints = []manway.Length{l(spall)}
		}
		r, err := tk.Roof(c)
		if err != nil {
			return
		}
		for _, check := range r.Checks() {
			for _, x := range []float64{check.Demand, check.Capacity, check.Unfactored} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("%+v: %+v", c, check)
				}
			}
		}
		for _, x := range []float64{r.Change.Load, r.Change.Moment, float64(r.Cover.Depth), float64(r.Weakest.Along), r.Solved.Error} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v: %+v", c, r)
			}
		}
	})
}

func BenchmarkRoof(b *testing.B) {
	tk := roofTank(b)
	for _, name := range []string{"steel=known", "steel=unknown", "person-only"} {
		c := knownRoof()
		switch name {
		case "steel=unknown":
			c.Steel = Steel{}
		case "person-only": // as daysheet screens
			c.Wheels = []manway.Wheel{}
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := tk.Roof(c); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(name+"/all-cores", func(b *testing.B) {
			b.ReportAllocs()
			b.RunParallel(func(pb *testing.PB) {
				for pb.Next() {
					if _, err := tk.Roof(c); err != nil {
						b.Error(err)
					}
				}
			})
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "roofs/s")
		})
	}
}
