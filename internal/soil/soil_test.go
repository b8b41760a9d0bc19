package soil

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

const pcf = manway.PoundPerCubicFoot

// One layer, wet or not: the closed forms of the triangle and the rectangle.
func TestThrustClosedForm(t *testing.T) {
	s := manway.Soil{Moist: 120 * pcf, Saturated: 130 * pcf, Friction: 30 * manway.Degree}
	h, q := 6*manway.Foot, 240*manway.PSF
	g := Ground{Layers: []Layer{{0, s}}, Surcharge: q} // at rest: K0 = 0.5
	th := reftable.Must[Thrust](t)(g.Thrust(0, h))
	if want := 0.5 * (120*36/2 + 240*6); !(math.Abs(th.Force.In(manway.PoundForcePerFoot)-want) <= 1e-9*want) {
		t.Errorf("dry %v, want %g lbf/ft", th.Force, want)
	}
	g.HasWater = true // at grade
	th = reftable.Must[Thrust](t)(g.Thrust(0, h))
	if want := 0.5*((130-62.4)*36/2+240*6) + 62.4*36/2; !(math.Abs(th.Force.In(manway.PoundForcePerFoot)-want) <= 1e-9*want) {
		t.Errorf("soaked %v, want %g lbf/ft", th.Force, want)
	}
}

// A layer cut in two is the same ground.
func TestLayersJoin(t *testing.T) {
	s := manway.Soil{Moist: 110 * pcf, Saturated: 125 * pcf, Friction: 28 * manway.Degree}
	one := Ground{Layers: []Layer{{0, s}}, HasWater: true, Water: 3 * manway.Foot, Surcharge: 100 * manway.PSF}
	two := one
	two.Layers = []Layer{{2 * manway.Foot, s}, {4 * manway.Foot, s}, {0, s}}
	a, b := reftable.Must[Thrust](t)(one.Thrust(1*manway.Foot, 8*manway.Foot)), reftable.Must[Thrust](t)(two.Thrust(1*manway.Foot, 8*manway.Foot))
	if !(math.Abs(float64(a.Force/b.Force)-1) <= 1e-12) || !(math.Abs(float64(a.Height/b.Height)-1) <= 1e-12) {
		t.Errorf("%+v and %+v", a, b)
	}
}

// Rising water presses more.
func TestWaterRises(t *testing.T) {
	s, _ := manway.Soil{}.AsLoad()
	last := manway.LineLoad(0)
	for d := 8.0; d >= 0; d -= 0.5 {
		th := reftable.Must[Thrust](t)(Ground{Layers: []Layer{{0, s}}, HasWater: true, Water: manway.Length(d) * manway.Foot}.Thrust(0, 8*manway.Foot))
		if th.Force < last {
			t.Errorf("water at %g ft: %v, below %v", d, th.Force, last)
		}
		last = th.Force
	}
}

func TestCoverBelowTwoFeet(t *testing.T) {
	for _, c := range []struct {
		cover  manway.Length
		spread bool
		wheels int
		width  manway.Length
	}{
		{0, false, 1, 20 * manway.Inch},
		{23.9 * manway.Inch, false, 1, 20 * manway.Inch},
		{2 * manway.Foot, true, 1, (20 + 1.15*24) * manway.Inch},
		{3.76 * manway.Foot, true, 1, (20 + 1.15*12*3.76) * manway.Inch},
		{3.77 * manway.Foot, true, 2, (72 + 20 + 1.15*12*3.77) * manway.Inch}, // the two grow together at 3.77 ft
	} {
		got := reftable.Must[Contact](t)(AASHTO.Wheel(manway.TruckWheel, c.cover))
		if got.Spread != c.spread || got.Wheels != c.wheels || !(math.Abs(float64(got.Width-c.width)) <= 1e-9) {
			t.Errorf("cover %v: %+v", c.cover, got)
		}
		if force := float64(got.Pressure.Times(got.Length.Times(got.Width))); !(math.Abs(force-float64(got.Load)) <= 1e-9*force) {
			t.Errorf("cover %v: pressure times area %g, load %g", c.cover, force, float64(got.Load))
		}
	}
	for _, c := range []struct{ inches, impact float64 }{{0, 0.3}, {12, 0.3}, {12.5, 0.2}, {24, 0.2}, {25, 0.1}, {35.5, 0.1}, {36, 0}, {60, 0}} {
		if got := reftable.Must[float64](t)(PrecastPractice.Impact(manway.Length(c.inches) * manway.Inch)); got != c.impact {
			t.Errorf("impact under %g in: %g, want %g", c.inches, got, c.impact)
		}
	}
}

// A rectangle far away is a point load; the stress under it sums to the load.
func TestRectangleLimits(t *testing.T) {
	r := Rectangle{1000, 2, 1}
	far := reftable.Must[manway.Pressure](t)(r.Stress(30, 20, 40))
	point := reftable.Must[manway.Pressure](t)(PointStress(2000, manway.Length(math.Hypot(30, 20)), 40))
	if !(math.Abs(float64(far/point)-1) <= 1e-3) {
		t.Errorf("far: %v, point %v", far, point)
	}
	var sum float64
	const step = 0.25
	for x := -40.0; x <= 40; x += step {
		for y := -40.0; y <= 40; y += step {
			sum += float64(reftable.Must[manway.Pressure](t)(r.Stress(manway.Length(x), manway.Length(y), 2))) * step * step
		}
	}
	if math.Abs(sum-2000) > 0.005*2000 { // what lies beyond 40 m is missing
		t.Errorf("stress sums to %g N, want 2000", sum)
	}
	if a, b := reftable.Must[manway.Pressure](t)(r.Stress(0.3, 0.7, 1)), reftable.Must[manway.Pressure](t)(Rectangle{1000, 1, 2}.Stress(0.7, 0.3, 1)); !(math.Abs(float64(a-b)) <= 1e-9) {
		t.Errorf("turned by 90 degrees: %v, %v", a, b)
	}
}

func TestBeside(t *testing.T) {
	for _, c := range []struct {
		wall, distance manway.Length
		across         bool
		feet           float64
	}{
		{4 * manway.Foot, 0, false, 5}, {5 * manway.Foot, 0, true, 4}, {7.5 * manway.Foot, 0, true, 3.5},
		{7.5 * manway.Foot, 0.5 * manway.Foot, false, 4.25}, {7.5 * manway.Foot, 1 * manway.Foot, false, 2}, {30 * manway.Foot, 0, true, 2},
	} {
		h := reftable.Must[manway.Length](t)(Beside{c.wall, c.distance, c.across}.Height())
		if !(math.Abs(h.In(manway.Foot)-c.feet) <= 1e-9) {
			t.Errorf("%+v: %v, want %g ft", c, h, c.feet)
		}
	}
}

// The loads of people as their sources print them.
func TestLoadsOfPeople(t *testing.T) {
	if psf, feet, inches := Crowd.In(manway.PSF), ConcentratedPatch.In(manway.Foot), FootPatch.In(manway.Inch); psf != 100 || feet != 2.5 || !(math.Abs(inches-8) <= 1e-12) {
		t.Errorf("crowd %g lb/ft2, patch %g ft, shoes %g in: want 100, 2.5, 8", psf, feet, inches)
	}
	// Twice 200 lb and 50 lb, or twice an axle of 300 lb: 600 lb.
	if f := reftable.Must[manway.Force](t)(HoleCover(200*manway.Pound, 50*manway.Pound, 300*manway.PoundForce)); !(math.Abs(f.In(manway.PoundForce)-600) <= 1e-9) {
		t.Errorf("under an axle of 300 lbf: %v", f)
	}
}

// The table of the manual as remembered: what one volume of earth, clay and rock
// becomes loose and compacted.
func TestSpoilRemembered(t *testing.T) {
	for s, want := range map[Spoil][2]float64{CommonEarth: {1.25, 0.90}, ClaySpoil: {1.43, 0.90}, BlastedRock: {1.50, 1.30}} {
		v := reftable.Must[Volumes](t)(s.FromBank(1))
		if got := [2]float64{float64(v.Loose), float64(v.Compacted)}; got != want || v.Warn != manway.RememberedFigure {
			t.Errorf("%v: %v, %v, want %v and a caution", s, got, v.Warn, want)
		}
	}
	if _, err := CommonEarth.FromBank(1e6); err != nil {
		t.Error(err)
	}
}

// The wheels of ASTM C890 as remembered: 16,000, 12,000 and 8,000 lbf on 10 in
// by 20 in, 6 ft apart.
func TestWheelsRemembered(t *testing.T) {
	for _, c := range []struct {
		wheel manway.Wheel
		load  float64
	}{{HeavyTraffic, 16000}, {MediumTraffic, 12000}, {LightTraffic, 8000}} {
		w := c.wheel
		got := [4]float64{w.Load.In(manway.PoundForce), w.Length.In(manway.Inch), w.Width.In(manway.Inch), w.Gauge.In(manway.Foot)}
		for i, want := range [4]float64{c.load, 10, 20, 6} {
			if !(math.Abs(got[i]-want) <= 1e-9*want) {
				t.Errorf("%s: %v", w.Name, got)
			}
		}
	}
}

// Impact factors: a load put on at once presses twice; energy balances.
func TestFall(t *testing.T) {
	w := manway.Length(0.0001)
	if n := reftable.Must[float64](t)(Fall(0, w)); n != Step {
		t.Errorf("no height: %g, want %g", n, Step)
	}
	h := manway.Length(0.3)
	n := reftable.Must[float64](t)(Fall(h, w))
	if got, want := float64(h)+n*float64(w), n*n*float64(w)/2; !(math.Abs(got-want) <= 1e-9*want) {
		t.Errorf("fall of %g, strain energy %g", got, want)
	}
}

func TestEmbankmentFactor(t *testing.T) {
	for _, c := range []struct{ h, fe float64 }{{0, 1}, {2, 1.08}, {3.75, 1.15}, {10, 1.15}} {
		if got := reftable.Must[float64](t)(EmbankmentFactor(manway.Length(c.h)*manway.Foot, 5*manway.Foot)); !(math.Abs(got-c.fe) <= 1e-12) {
			t.Errorf("%g ft: %g, want %g", c.h, got, c.fe)
		}
	}
}

func TestRingLimits(t *testing.T) {
	r := Ring{24 * manway.Inch, 0.5 * manway.Inch, 110000 * manway.PSI, 0.4}
	b := reftable.Must[Buckling](t)(r.Buckling(400 * manway.PSI))
	if !(math.Abs(float64(b.Ring/b.Tube)-(1-0.16)) <= 1e-12) {
		t.Errorf("ring over tube %g, want 1 - nu2", float64(b.Ring/b.Tube))
	}
	dry := reftable.Must[manway.Pressure](t)(r.Allowable(Support{Cover: 4 * manway.Foot, Reaction: 400 * manway.PSI}))
	wet := reftable.Must[manway.Pressure](t)(r.Allowable(Support{Cover: 4 * manway.Foot, Water: 4 * manway.Foot, Reaction: 400 * manway.PSI}))
	if !(math.Abs(float64(wet/dry)-math.Sqrt(0.67)) <= 1e-12) {
		t.Errorf("flooded over dry %g, want sqrt(0.67)", float64(wet/dry))
	}
	// E I = 110000 x 0.5^3/12 = 1145.833 lb in. At 48 in, two diameters,
	// B' = 4 (48^2 + 24 x 48)/(1.5 x 120^2) = 0.64 and FS = 2.5: sqrt(32 x 0.64 x
	// 400 x 1145.833/24^3)/2.5 = sqrt(679.01)/2.5 = 10.4231 psi.
	if !(math.Abs(dry.In(manway.PSI)-10.4231) <= 0.0001) {
		t.Errorf("two diameters down: %v", dry)
	}
	// At 24 in under 12 in of water Rw = 0.835, B' = 4 x 2 x 24^2/(1.5 x 72^2) =
	// 16/27, FS = 3: sqrt(32 x 0.835 x 16/27 x 400 x 1145.833/24^3)/3 = sqrt(524.99)/3.
	shallow := reftable.Must[manway.Pressure](t)(r.Allowable(Support{Cover: 2 * manway.Foot, Water: 1 * manway.Foot, Reaction: 400 * manway.PSI}))
	if !(math.Abs(shallow.In(manway.PSI)-7.6376) <= 0.0002) {
		t.Errorf("one diameter down, half flooded: %v", shallow)
	}
	if c := reftable.Must[manway.LineLoad](t)(r.Compression(1000, 0)); !(math.Abs(float64(c)-0.86*1000*12*0.0254) <= 1e-9) {
		t.Errorf("compression %v", c)
	}
}

func TestRefuses(t *testing.T) {
	nan := math.NaN()
	l := manway.Length(nan)
	for name, f := range map[string]func() error{
		"coefficient": func() error { _, err := State(9).Coefficient(manway.Angle(nan)); return err },
		"ground":      func() error { _, err := Ground{}.LateralAt(l); return err },
		"layer":       func() error { _, err := Ground{Layers: []Layer{{l, manway.Soil{}}}}.Thrust(0, 1); return err },
		"upside down": func() error { _, err := Ground{Layers: []Layer{{0, manway.Soil{}}}}.Thrust(2, 1); return err },
		"wheel":       func() error { _, err := AASHTO.Wheel(manway.Wheel{}, l); return err },
		"rule":        func() error { _, err := Rule(7).Impact(0); return err },
		"point":       func() error { _, err := PointStress(manway.Force(nan), l, 0); return err },
		"corner":      func() error { _, err := CornerInfluence(nan, -1); return err },
		"rectangle":   func() error { _, err := Rectangle{}.Stress(l, l, l); return err },
		"beside":      func() error { _, err := Beside{l, -1, true}.Pressure(0); return err },
		"spoil":       func() error { _, err := Spoil(9).FromBank(manway.Volume(nan)); return err },
		"hole":        func() error { _, err := HoleCover(manway.Mass(nan), -1, 0); return err },
		"fall":        func() error { _, err := Fall(l, 0); return err },
		"trench":      func() error { _, _, err := Trench{}.Load(); return err },
		"ring":        func() error { _, err := Ring{}.Buckling(manway.Pressure(nan)); return err },
		"allowable":   func() error { _, err := Ring{}.Allowable(Support{l, l, -1}); return err },
		"compression": func() error { _, err := Ring{}.Compression(-1, -1); return err },
		"stiffness":   func() error { _, err := Ring{l, l, 0, 2}.Stiffness(); return err },
		"deflection":  func() error { _, err := Buried{}.Deflection(); return err },
		"embankment":  func() error { _, err := EmbankmentFactor(l, 0); return err },
	} {
		if _, ok := f().(manway.InputErrors); !ok {
			t.Errorf("%s: %v, want InputErrors", name, f())
		}
	}
}

var sink float64

func TestNoAllocation(t *testing.T) {
	g := Ground{Layers: []Layer{{0, manway.Soil{Moist: 120 * pcf, Saturated: 130 * pcf, Friction: 0.5}}}, HasWater: true}
	for name, f := range map[string]func(){
		"lateral":   func() { v, _ := g.LateralAt(2); sink += float64(v.Water) },
		"thrust":    func() { v, _ := g.Thrust(0, 2); sink += float64(v.Force) },
		"wheel":     func() { v, _ := AASHTO.Wheel(manway.TruckWheel, 1); sink += v.Impact },
		"rectangle": func() { v, _ := (Rectangle{1, 1, 1}).Stress(0, 0, 1); sink += float64(v) },
		"beside":    func() { v, _ := (Beside{2, 0, true}).Pressure(120 * pcf); sink += float64(v) },
		"ring":      func() { v, _ := (Ring{0.6, 0.01, 1e9, 0.4}).Buckling(1e6); sink += float64(v.Tube) },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %g allocations", name, n)
		}
	}
}

// No ground makes the thrust panic, or not finite with a nil error.
func FuzzThrust(f *testing.F) {
	f.Add(3.0, 16.0, 30.0, 18.0, 35.0, 3.0, 0.0, 0.0, 6.0) // the textbook's two layers
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(math.NaN(), 16.0, 30.0, 18.0, 35.0, math.Inf(1), 1e300, -1.0, 6.0)
	f.Fuzz(func(t *testing.T, thick, w1, phi1, w2, phi2, water, q, top, foot float64) {
		g := Ground{
			Layers: []Layer{
				{manway.Length(thick), manway.Soil{Moist: weighing(w1), Saturated: weighing(w1), Friction: manway.Angle(phi1) * manway.Degree}},
				{0, manway.Soil{Moist: weighing(w2), Saturated: weighing(w2), Friction: manway.Angle(phi2) * manway.Degree}},
			},
			HasWater: water >= 0, Water: manway.Length(water), Surcharge: manway.Pressure(q),
		}
		th, err := g.Thrust(manway.Length(top), manway.Length(foot))
		if err != nil {
			return
		}
		for _, x := range []float64{float64(th.Force), float64(th.Height), float64(th.Moment)} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v: %+v", g, th)
			}
		}
	})
}
