package soil

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
)

// second is the error of a calculation.
func second[T any](_ T, err error) error { return err }

func TestLimitsOfPressure(t *testing.T) {
	limit.Check(t, 30*manway.Degree, func(a manway.Angle) error { return second(Active.Coefficient(a)) },
		limit.Between("Friction", 0, 50*manway.Degree))
	limit.Check(t, AtRest, func(s State) error { return second(s.Coefficient(0.5)) }, limit.AtMost("State", Passive))
	soil := manway.Soil{Moist: 110 * manway.PoundPerCubicFoot, Saturated: 125 * manway.PoundPerCubicFoot, Friction: 30 * manway.Degree}
	g := Ground{Layers: []Layer{{Thickness: 1, Soil: soil}, {Soil: soil}}, HasWater: true, Water: 1}
	limit.Check(t, g, Ground.Validate, limit.Between("Water", 0, 1000*manway.Foot),
		limit.Between("Surcharge", 0, 100000*manway.PSF), limit.AtMost("State", Passive),
		limit.AtMost("Layers", 1000*manway.Foot).In("Layers[0].Thickness"), limit.Above("Layers", 0*manway.Foot).In("Layers[0].Thickness"),
		limit.Between("Layers", 0*manway.Foot, 1000*manway.Foot).In("Layers[1].Thickness"))
	eight := Ground{Layers: make([]Layer, 8)}
	for i := range eight.Layers[:7] {
		eight.Layers[i].Thickness = 1
	}
	limit.Refuses(t, eight, Ground.Validate, "Layers", func(g *Ground) { g.Layers = append([]Layer{{Thickness: 1}}, g.Layers...) })
	limit.Refuses(t, eight, Ground.Validate, "Layers", func(g *Ground) { g.Layers = nil })
	limit.Refuses(t, g, Ground.Validate, "Layers", func(g *Ground) { g.Layers = []Layer{{Soil: manway.Soil{Friction: -1}}} })
	limit.Check(t, 1, func(z manway.Length) error { return second(g.LateralAt(z)) }, limit.Between("Depth", 0, 1000*manway.Foot))
	limit.Check(t, 0, func(z manway.Length) error { return second(g.Thrust(z, 2)) }, limit.Between("Top", 0, 1000*manway.Foot))
	limit.Check(t, 3, func(z manway.Length) error { return second(g.Thrust(2, z)) }, limit.Between("Foot", manway.Length(2), 1000*manway.Foot))
	limit.Check(t, Beside{Wall: 5 * manway.Foot}, func(b Beside) error { return second(b.Height()) },
		limit.Between("Wall", 0, 100*manway.Foot), limit.Between("Distance", 0, 1000*manway.Foot))
	limit.Check(t, 110*manway.PoundPerCubicFoot, func(d manway.Density) error { return second(Beside{Wall: 2}.Pressure(d)) },
		limit.Between("Moist", 60*manway.PoundPerCubicFoot, 150*manway.PoundPerCubicFoot))
}

func TestLimitsOfStress(t *testing.T) {
	const most, deepest = 1e4 * manway.Metre, 1000 * manway.Metre
	for _, f := range []func(p manway.Force, r, z manway.Length) (manway.Pressure, error){PointStress, LayeredPointStress} {
		limit.Check(t, 1, func(p manway.Force) error { return second(f(p, 1, 1)) }, limit.Between("Load", 0, 1e9*manway.Newton))
		limit.Check(t, 1, func(r manway.Length) error { return second(f(1, r, 1)) }, limit.Between("Offset", 0, most))
		limit.Check(t, 1, func(z manway.Length) error { return second(f(1, 1, z)) }, limit.Between("Depth", 0.01*manway.Metre, deepest))
	}
	limit.Check(t, 1, func(m float64) error { return second(CornerInfluence(m, 1)) }, limit.Between("M", 0.0, 1e4))
	limit.Check(t, 1, func(n float64) error { return second(CornerInfluence(1, n)) }, limit.Between("N", 0.0, 1e4))
	r := Rectangle{Pressure: 1, Length: 1, Width: 1}
	limit.Check(t, r, func(r Rectangle) error { return second(r.Stress(0, 0, 1)) }, limit.Between("Pressure", 0, 1e9*manway.Pascal),
		limit.Between("Length", 0.001*manway.Metre, most), limit.Between("Width", 0.001*manway.Metre, most))
	limit.Check(t, 1, func(x manway.Length) error { return second(r.Stress(x, 0, 1)) }, limit.Between("X", -most, most))
	limit.Check(t, 1, func(y manway.Length) error { return second(r.Stress(0, y, 1)) }, limit.Between("Y", -most, most))
	limit.Check(t, 1, func(z manway.Length) error { return second(r.Stress(0, 0, z)) }, limit.Between("Depth", 0.01*manway.Metre, deepest))
}

func TestLimitsOfLoads(t *testing.T) {
	for name, f := range map[string]func(manway.Mass) error{
		"People": func(m manway.Mass) error { return second(HoleCover(m, 0, 0)) },
		"Gear":   func(m manway.Mass) error { return second(HoleCover(0, m, 0)) },
	} {
		limit.Check(t, 1, f, limit.Between(name, 0, 1e6*manway.Pound))
	}
	limit.Check(t, 1, func(axle manway.Force) error { return second(HoleCover(0, 0, axle)) }, limit.Between("Axle", 0, 1e6*manway.PoundForce))
	limit.Check(t, 1, func(h manway.Length) error { return second(Fall(h, 0.001)) }, limit.Between("Height", 0, 20*manway.Foot))
	limit.Check(t, 0.001, func(w manway.Length) error { return second(Fall(1, w)) }, limit.Between("Standing", 1e-9*manway.Metre, 1*manway.Foot))
	limit.Check(t, 1, func(c manway.Length) error { return second(AASHTO.Impact(c)) }, limit.Between("Cover", 0, 100*manway.Foot))
	limit.Check(t, 1, func(c manway.Length) error { return second(EmbankmentFactor(c, 1)) }, limit.AtLeast("Cover", 0*manway.Foot))
	limit.Check(t, 1, func(w manway.Length) error { return second(EmbankmentFactor(1, w)) }, limit.Between("Width", 1*manway.Inch, 1000*manway.Foot))
	limit.Check(t, AASHTO, func(r Rule) error { return second(r.Impact(1)) }, limit.AtMost("Rule", PrecastPractice))
	limit.Check(t, 1, func(v manway.Volume) error { return second(CommonEarth.FromBank(v)) }, limit.Between("Bank", manway.Volume(0), 1e6))
	limit.Check(t, CommonEarth, func(s Spoil) error { return second(s.FromBank(1)) }, limit.AtMost("Spoil", BlastedRock))
}

func TestLimitsOfRings(t *testing.T) {
	limit.Check(t, Trench{Cover: 1, Width: 1, Density: 1800, Friction: 0.15}, func(x Trench) error { _, _, err := x.Load(); return err },
		limit.Between("Cover", 0, 100*manway.Foot), limit.Between("Width", 0.5*manway.Foot, 100*manway.Foot),
		limit.Between("Density", 60*manway.PoundPerCubicFoot, 160*manway.PoundPerCubicFoot), limit.Between("Friction", 0.05, 0.5))
	r := Ring{Diameter: 24 * manway.Inch, Thickness: 0.5 * manway.Inch, Modulus: 110000 * manway.PSI, Poisson: 0.4}
	limit.Check(t, r, Ring.Validate, limit.Between("Diameter", 4*manway.Inch, 240*manway.Inch),
		limit.Between("Thickness", 0.01*manway.Inch, 24*manway.Inch/5), limit.Between("Modulus", 1000*manway.PSI, 40e6*manway.PSI), limit.Between("Poisson", 0.0, 0.5))
	limit.Check(t, Buried{Stiffness: 50 * manway.PSI, Soil: 400 * manway.PSI, Load: 10 * manway.PSI, Lag: 1.5, Bedding: 0.1},
		func(b Buried) error { return second(b.Deflection()) },
		limit.Between("Stiffness", 0.1*manway.PSI, 10000*manway.PSI), limit.Between("Soil", 0, 10000*manway.PSI), limit.Between("Load", 0, 1000*manway.PSI),
		limit.Between("Lag", 1.0, 2.0), limit.Between("Bedding", 0.083, 0.110))
	limit.Check(t, 1, func(e manway.Pressure) error { return second(r.Buckling(e)) }, limit.Between("Reaction", 0, 10000*manway.PSI))
	limit.Check(t, Support{Cover: 4 * manway.Foot, Water: 1 * manway.Foot, Reaction: 400 * manway.PSI}, func(s Support) error { return second(r.Allowable(s)) },
		limit.Between("Cover", 0.1*manway.Inch, 100*manway.Foot), limit.Between("Water", 0, 4*manway.Foot), limit.Between("Reaction", 0, 10000*manway.PSI))
	limit.Check(t, 1, func(p manway.Pressure) error { return second(r.Compression(p, 0)) }, limit.Between("Dead", 0, 1000*manway.PSI))
	limit.Check(t, 1, func(p manway.Pressure) error { return second(r.Compression(0, p)) }, limit.Between("Live", 0, 1000*manway.PSI))
}

// Every fault of the two things asked about stands in one error.
func TestFaultsOfBoth(t *testing.T) {
	_, err := Beside{Wall: -1}.Pressure(0)
	if faults, ok := err.(manway.InputErrors); !ok || len(faults) != 2 {
		t.Errorf("%v, want a fault of Wall and one of Moist", err)
	}
	_, err = Beside{Wall: -1}.Pressure(2000)
	if faults, ok := err.(manway.InputErrors); !ok || len(faults) != 1 {
		t.Errorf("%v, want a fault of Wall", err)
	}
}
