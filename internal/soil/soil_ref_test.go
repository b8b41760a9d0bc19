package soil

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

func TestPrecastWheels(t *testing.T) {
	wheels := map[string]manway.Wheel{"A16": HeavyTraffic, "A12": MediumTraffic, "A8": LightTraffic}
	rows := reftable.Load(t, "soil.csv")
	rows.With("quantity", "wheel load").Each(t, func(t *testing.T, row reftable.Row) {
		row.Check(t, wheels[row.Input(t, "wheel")].Load.In(manway.PoundForce))
	})
	rows.With("quantity", "pressure C890").Each(t, func(t *testing.T, row reftable.Row) {
		c := reftable.Must[Contact](t)(PrecastPractice.OneWheel(wheels[row.Input(t, "wheel")], reftable.In[manway.Length](t, row, "cover")))
		row.Check(t, c.Pressure.In(manway.PSF))
		if !c.Warn.Has(manway.RememberedFigure) {
			t.Error("a remembered rule does not say so")
		}
	})
}

func TestBridgeWheels(t *testing.T) {
	reftable.Load(t, "soil.csv").Under("L3-").Each(t, func(t *testing.T, row reftable.Row) {
		c := reftable.Must[Contact](t)(AASHTOAnyDepth.OneWheel(manway.TruckWheel, reftable.In[manway.Length](t, row, "cover")))
		row.Check(t, map[string]float64{
			"impact": 100 * c.Impact, "length": c.Length.In(manway.Foot), "width": c.Width.In(manway.Foot),
			"pressure AASHTO": c.Pressure.In(manway.PSF), "pressure with 1.2": MultiplePresence * c.Pressure.In(manway.PSF),
		}[row.Quantity])
	})
}

func TestStressTables(t *testing.T) {
	rows := reftable.Load(t, "soil.csv")
	rows.Under("L5-").Each(t, func(t *testing.T, row reftable.Row) {
		stress := PointStress
		if row.Quantity == "I Westergaard" {
			stress = LayeredPointStress
		}
		row.Check(t, float64(reftable.Must[manway.Pressure](t)(stress(1, manway.Length(row.Float(t, "r_over_z")), 1))))
	})
	rows.Under("L6-").Each(t, func(t *testing.T, row reftable.Row) {
		row.Check(t, reftable.Must[float64](t)(CornerInfluence(row.Float(t, "m"), row.Float(t, "n"))))
	})
	rows.With("quantity", "point stress").Each(t, func(t *testing.T, row reftable.Row) {
		var p manway.Force
		row.Read(t, "p", &p)
		r := math.Hypot(float64(reftable.In[manway.Length](t, row, "x")), float64(reftable.In[manway.Length](t, row, "y")))
		row.Check(t, reftable.Must[manway.Pressure](t)(PointStress(p, manway.Length(r), reftable.In[manway.Length](t, row, "z"))).In(manway.Kilopascal))
	})
	rows.With("quantity", "centre stress").Each(t, func(t *testing.T, row reftable.Row) {
		r := Rectangle{reftable.In[manway.Pressure](t, row, "q"), reftable.In[manway.Length](t, row, "length"), reftable.In[manway.Length](t, row, "width")}
		row.Check(t, reftable.Must[manway.Pressure](t)(r.Stress(0, 0, reftable.In[manway.Length](t, row, "z"))).In(manway.PSF))
	})
}

func TestCoefficients(t *testing.T) {
	reftable.Load(t, "soil.csv").With("quantity", "Ka", "Kp", "K0").Each(t, func(t *testing.T, row reftable.Row) {
		state := map[string]State{"Ka": Active, "Kp": Passive, "K0": AtRest}[row.Quantity]
		row.Check(t, reftable.Must[float64](t)(state.Coefficient(reftable.In[manway.Angle](t, row, "phi"))))
	})
}

func TestEarthPressureExamples(t *testing.T) {
	rows := reftable.Load(t, "soil.csv")
	rows.Under("L7-05").Each(t, func(t *testing.T, row reftable.Row) {
		top, moist, sat := reftable.In[manway.Length](t, row, "top"), weighing(row.Float(t, "moist_kN_m3")), weighing(row.Float(t, "sat_kN_m3"))
		g := Ground{
			Layers: []Layer{
				{top, manway.Soil{Moist: moist, Saturated: moist, Friction: reftable.In[manway.Angle](t, row, "phi")}},
				{0, manway.Soil{Moist: sat, Saturated: sat, Friction: reftable.In[manway.Angle](t, row, "phi2")}},
			},
			HasWater: true, Water: reftable.In[manway.Length](t, row, "water"), State: Active,
		}
		th := reftable.Must[Thrust](t)(g.Thrust(0, top+reftable.In[manway.Length](t, row, "bottom")))
		row.Check(t, map[string]float64{"active force": th.Force.In(manway.KilonewtonPerMetre), "height": float64(th.Height)}[row.Quantity])
	})
	rows.Under("L7-06").Each(t, func(t *testing.T, row reftable.Row) {
		k := reftable.Must[float64](t)(Active.Coefficient(reftable.In[manway.Angle](t, row, "phi")))
		row.Check(t, k*reftable.In[manway.Pressure](t, row, "vertical").In(manway.Kilopascal))
	})
	rows.With("quantity", "active force", "overturning").Under("L7-07").Each(t, func(t *testing.T, row reftable.Row) {
		g := Ground{Layers: []Layer{{0, manway.Soil{Moist: reftable.In[manway.Density](t, row, "moist"), Saturated: 130 * manway.PoundPerCubicFoot, Friction: reftable.In[manway.Angle](t, row, "phi")}}}, State: Active}
		th := reftable.Must[Thrust](t)(g.Thrust(0, reftable.In[manway.Length](t, row, "h")))
		row.Check(t, map[string]float64{"active force": th.Force.In(manway.PoundForcePerFoot), "overturning": th.Moment.In(manway.PoundForce)}[row.Quantity])
	})
	rows.Under("L7-08").Each(t, func(t *testing.T, row reftable.Row) {
		h := reftable.In[manway.Length](t, row, "h")
		g := Ground{Layers: []Layer{{0, manway.Soil{Saturated: 100 * manway.PoundPerCubicFoot}}}, HasWater: true}
		row.Check(t, float64(reftable.Must[At](t)(g.LateralAt(h)).Water)*float64(h)/2/float64(manway.PoundForcePerFoot))
	})
}

// weighing is the density of what weighs so many kN/m3.
func weighing(kn float64) manway.Density { return manway.Density(kn * 1000 / manway.StandardGravity) }

func TestSoilWeights(t *testing.T) {
	got := map[string]float64{
		"soil weight as load":        manway.HeavySoilMoist.In(manway.PoundPerCubicFoot),
		"saturated soil as load":     manway.HeavySoilSaturated.In(manway.PoundPerCubicFoot),
		"water":                      manway.WaterDensity.In(manway.PoundPerCubicFoot),
		"side of concentrated patch": ConcentratedPatch.In(manway.Foot),
	}
	rows := reftable.Load(t, "soil.csv")
	for quantity, v := range got {
		rows.With("quantity", quantity).Each(t, func(t *testing.T, row reftable.Row) { row.Check(t, v) })
	}
}

func TestRingExamples(t *testing.T) {
	rows := reftable.Load(t, "soil.csv")
	rows.Under("R1-02").Each(t, func(t *testing.T, row reftable.Row) {
		cd, p, err := Trench{reftable.In[manway.Length](t, row, "cover"), reftable.In[manway.Length](t, row, "width"), reftable.In[manway.Density](t, row, "density"), row.Float(t, "friction")}.Load()
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, map[string]float64{"Cd": cd, "soil pressure": p.In(manway.PSF)}[row.Quantity])
	})
	ring := func(t *testing.T, row reftable.Row) Ring {
		return Ring{reftable.In[manway.Length](t, row, "diameter"), reftable.In[manway.Length](t, row, "t"), reftable.In[manway.Pressure](t, row, "e"), row.Float(t, "nu")}
	}
	buried := func(t *testing.T, row reftable.Row, stiffness manway.Pressure) float64 {
		b := Buried{stiffness, reftable.In[manway.Pressure](t, row, "soil"), reftable.In[manway.Pressure](t, row, "load"), row.Float(t, "lag"), row.Float(t, "bedding")}
		return 100 * reftable.Must[float64](t)(b.Deflection())
	}
	rows.Under("R1-03").Each(t, func(t *testing.T, row reftable.Row) {
		ps := reftable.Must[manway.Pressure](t)(ring(t, row).Stiffness())
		row.Check(t, map[string]float64{"stiffness": ps.In(manway.PSI), "deflection": buried(t, row, ps)}[row.Quantity])
	})
	rows.With("quantity", "deflection by PS").Each(t, func(t *testing.T, row reftable.Row) {
		row.Check(t, buried(t, row, reftable.In[manway.Pressure](t, row, "stiffness")))
	})
	rows.With("quantity", "tube buckling").Each(t, func(t *testing.T, row reftable.Row) {
		row.Check(t, reftable.Must[Buckling](t)(ring(t, row).Buckling(0)).Tube.In(manway.PSI))
	})
}

func TestSpoilTable(t *testing.T) {
	reftable.Load(t, "soil.csv").Under("spoil-sand").Each(t, func(t *testing.T, row reftable.Row) {
		v := reftable.Must[Volumes](t)(SandSpoil.FromBank(manway.Volume(row.Float(t, "bank"))))
		row.Check(t, map[string]float64{"loose sand": float64(v.Loose), "compacted sand": float64(v.Compacted)}[row.Quantity])
	})
}

func TestHoleCover(t *testing.T) {
	reftable.Load(t, "structure.csv").Under("H1-hole").Each(t, func(t *testing.T, row reftable.Row) {
		var people, gear manway.Mass
		row.Read(t, "people", &people)
		row.Read(t, "gear", &gear)
		row.Check(t, reftable.Must[manway.Force](t)(HoleCover(people, gear, 0)).In(manway.PoundForce))
	})
}
