package concrete

import (
	"math"
	"strconv"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// Units of moment and the like in which the tables print.
const (
	kipFoot = manway.KipFoot
	inch    = manway.Inch
)

// readLength, readPressure and readArea read one input of a row.
func concreteOf(t *testing.T, row reftable.Row) manway.Concrete {
	return manway.Concrete{Strength: reftable.In[manway.Pressure](t, row, "fc")}
}

// phi11 is phi of the 2011 and 2014 codes: 0.9 from a strain of 0.005, 0.65
// below 0.002.
func phi11(strain float64) float64 {
	return math.Min(0.9, math.Max(0.65, 0.65+(strain-0.002)*250/3))
}

func TestFlexureExamples(t *testing.T) {
	rows := reftable.Load(t, "concrete.csv").With("quantity",
		"a", "c", "strain", "Mn", "design moment", "phi 318-11", "design moment 318-11").With("place",
		"Example 3.1", "Example 3.2", "Example 3.4", "Example 4.6", "beam of the chapter on flexure")
	rows.Each(t, func(t *testing.T, row reftable.Row) {
		f := reftable.Must[Flexure](t)(Section{
			Concrete: concreteOf(t, row), Width: reftable.In[manway.Length](t, row, "b"), Depth: reftable.In[manway.Length](t, row, "d"),
			Steel: reftable.In[manway.Area](t, row, "as"), Yield: reftable.In[manway.Pressure](t, row, "fy"),
		}.Flexure())
		row.Check(t, map[string]float64{
			"a": f.StressBlock.In(inch), "c": f.NeutralAxis.In(inch), "strain": f.Strain,
			"Mn": f.Nominal.In(kipFoot), "design moment": f.Design.In(kipFoot),
			"phi 318-11":           phi11(f.Strain),
			"design moment 318-11": phi11(f.Strain) * f.Nominal.In(kipFoot),
		}[row.Quantity])
	})
}

func TestCrackingExample(t *testing.T) {
	reftable.Load(t, "concrete.csv").With("place", "Example 2.1").Each(t, func(t *testing.T, row reftable.Row) {
		var m manway.Moment
		row.Read(t, "m", &m)
		b, h := reftable.In[manway.Length](t, row, "b"), reftable.In[manway.Length](t, row, "h")
		s := float64(b.Times(h).Times(h)) / 6
		fr := reftable.Must[manway.Pressure](t)(ModulusOfRupture(concreteOf(t, row)))
		row.Check(t, map[string]float64{
			"fibre stress":       manway.Pressure(float64(m) / s).In(manway.PSI),
			"modulus of rupture": fr.In(manway.PSI),
			"cracking moment":    manway.Moment(float64(fr) * s).In(kipFoot),
		}[row.Quantity])
	})
}

// The one-way slab of Example 4.6: the steel that the moment asks for is found
// by halving on this package's own strength.
func TestSlabExample(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C1-06").Each(t, func(t *testing.T, row reftable.Row) {
		if bar, ok := row.Lookup("bar"); ok {
			n, _ := strconv.Atoi(bar)
			d := reftable.Must[Bar](t)(BarOf(n)).Diameter
			row.Check(t, AreaPerWidth(d, reftable.In[manway.Length](t, row, "spacing")).In(inch)*12)
			return
		}
		c := concreteOf(t, row)
		h, d, span := reftable.In[manway.Length](t, row, "h"), reftable.In[manway.Length](t, row, "d"), reftable.In[manway.Length](t, row, "span")
		var density manway.Density
		row.Read(t, "density", &density)
		f := manway.DeadLive.Factors()
		dead := manway.Pressure(float64(density) * manway.StandardGravity * float64(h))
		wu := manway.Pressure(f.Dead)*dead + manway.Pressure(f.Live)*reftable.In[manway.Pressure](t, row, "live")
		mu := manway.Moment(float64(wu) * float64(span*span) / 8 * float64(manway.Foot))
		strength := func(as float64) Flexure {
			return reftable.Must[Flexure](t)(Section{c, manway.Foot, d, manway.Area(as) * manway.SquareInch, reftable.In[manway.Pressure](t, row, "fy")}.Flexure())
		}
		lo, hi := 0.01, 2.0
		for range 60 {
			if mid := (lo + hi) / 2; strength(mid).Design < mu {
				lo = mid
			} else {
				hi = mid
			}
		}
		row.Check(t, map[string]float64{
			"factored load": wu.In(manway.PSF), "factored moment": mu.In(kipFoot),
			"moment over phi b d2": float64(mu) / strength(hi).Phi / float64(manway.Foot*d*d) / float64(manway.PSI),
			"ratio":                hi / (12 * d.In(inch)), "steel": hi,
			"temperature steel": LeastSlabRatio * 12 * h.In(inch),
		}[row.Quantity])
	})
}

func TestMomentTable(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C3-").Each(t, func(t *testing.T, row reftable.Row) {
		b, d := 12*inch, 10*inch
		f := reftable.Must[Flexure](t)(Section{
			concreteOf(t, row), b, d, manway.Area(row.Float(t, "rho")) * b.Times(d), reftable.In[manway.Pressure](t, row, "fy"),
		}.Flexure())
		row.Check(t, float64(f.Nominal)/float64(b*d*d)/float64(manway.PSI))
	})
}

func TestRatioTable(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C4-").Each(t, func(t *testing.T, row reftable.Row) {
		c, fy := concreteOf(t, row), reftable.In[manway.Pressure](t, row, "fy")
		ratio := reftable.Must[float64](t)
		row.Check(t, map[string]float64{
			"balanced ratio":        ratio(RatioAtStrain(c, fy, float64(fy/SteelModulus))),
			"ratio at strain 0.005": ratio(RatioAtStrain(c, fy, 0.005)),
			"least beam ratio":      ratio(LeastBeamRatio(c, fy)),
		}[row.Quantity])
	})
}

func TestBarTable(t *testing.T) {
	reftable.Load(t, "concrete.csv").With("place", "Table 1", "Table A.6").Each(t, func(t *testing.T, row reftable.Row) {
		b := reftable.Must[Bar](t)(BarOf(int(row.Float(t, "bar"))))
		switch row.Quantity {
		case "bar diameter":
			row.Check(t, b.Diameter.In(inch))
		case "bar area":
			row.Check(t, b.Area.In(manway.SquareInch))
		case "bar weight":
			row.Check(t, b.Weight.In(manway.PoundForcePerFoot))
		default: // Table A.6 takes the round areas
			row.Check(t, AreaPerWidth(b.Diameter, reftable.In[manway.Length](t, row, "spacing")).In(inch)*12)
		}
	})
}

func TestWireTables(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C7-").Each(t, func(t *testing.T, row reftable.Row) {
		m := reftable.Must[Mesh](t)(ReadMesh(row.Input(t, "style")))
		row.Check(t, AreaPerWidth(m.Along.Diameter, m.AlongSpacing).In(inch)*12)
		row.Check(t, AreaPerWidth(m.Across.Diameter, m.AcrossSpacing).In(inch)*12)
	})
	reftable.Load(t, "concrete.csv").Under("C8-").Each(t, func(t *testing.T, row reftable.Row) {
		w := reftable.Must[Wire](t)(WireOf(row.Float(t, "w")))
		switch row.Quantity {
		case "wire diameter":
			row.Check(t, w.Diameter.In(inch))
		case "wire weight":
			row.Check(t, w.Weight.In(manway.PoundForcePerFoot))
		default:
			row.Check(t, AreaPerWidth(w.Diameter, reftable.In[manway.Length](t, row, "spacing")).In(inch)*12)
		}
	})
}

func TestModulusTable(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C9-").Each(t, func(t *testing.T, row reftable.Row) {
		c := concreteOf(t, row)
		row.Read(t, "density", &c.Density)
		row.Check(t, reftable.Must[manway.Pressure](t)(ElasticModulus(c)).In(manway.PSI))
	})
}

func TestOneWayShearTable(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C2-").Each(t, func(t *testing.T, row reftable.Row) {
		b, d := reftable.In[manway.Length](t, row, "b"), reftable.In[manway.Length](t, row, "d")
		rho := 0.0033
		if _, ok := row.Lookup("rho"); ok {
			rho = row.Float(t, "rho")
		}
		v := reftable.Must[Shear](t)(Section{concreteOf(t, row), b, d, manway.Area(rho) * b.Times(d), 60000 * manway.PSI}.OneWayShear())
		row.Check(t, map[string]float64{
			"size effect": v.SizeEffect, "Vc": v.Nominal.In(manway.PoundForce),
			// the 2011 form has neither the size effect nor the steel ratio
			"Vc old": v.Nominal.In(manway.PoundForce) * 2 / (8 * v.SizeEffect * math.Cbrt(rho)),
		}[row.Quantity])
	})
}

// The 2011 code has no size effect, so it is divided out of the strength.
func TestPunchingExamples(t *testing.T) {
	rows := reftable.Load(t, "concrete.csv")
	rows.Under("C1-10").Each(t, func(t *testing.T, row reftable.Row) {
		c, d, side := reftable.In[manway.Length](t, row, "c"), reftable.In[manway.Length](t, row, "d"), reftable.In[manway.Length](t, row, "side")
		p := Punching{Concrete: concreteOf(t, row), Length: c, Width: c, Depth: d}
		v := reftable.Must[Shear](t)(p.Strength())
		vu := reftable.In[manway.Pressure](t, row, "q").Times(side.Times(side) - (c + d).Times(c+d))
		by4 := float64(vu) / (v.Phi * float64(v.Stress) / v.SizeEffect * float64(p.Perimeter()))
		row.Check(t, map[string]float64{
			"perimeter": p.Perimeter().In(inch), "factored shear": vu.In(manway.Kip),
			"depth by 4":     manway.Length(by4).In(inch),
			"depth by alpha": manway.Length(by4 * 4 / (2 + 40*float64(d/p.Perimeter()))).In(inch),
		}[row.Quantity])
	})
	rows.Under("C1-17").Each(t, func(t *testing.T, row reftable.Row) {
		c := reftable.In[manway.Length](t, row, "c")
		v := reftable.Must[Shear](t)(Punching{Concrete: concreteOf(t, row), Length: c, Width: c, Depth: reftable.In[manway.Length](t, row, "d")}.Strength())
		row.Check(t, v.Design.In(manway.Kilonewton)/v.SizeEffect)
	})
}

func TestBearingExample(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C1-12").Each(t, func(t *testing.T, row reftable.Row) {
		b := Bearing{Concrete: concreteOf(t, row), Loaded: reftable.In[manway.Area](t, row, "a1")}
		if _, ok := row.Lookup("a2"); ok {
			b.Support = reftable.In[manway.Area](t, row, "a2")
		}
		row.Check(t, reftable.Must[BearingStrength](t)(b.Strength()).Design.In(manway.Kip))
	})
}

func TestPlainExample(t *testing.T) {
	reftable.Load(t, "concrete.csv").Under("C1-13").Each(t, func(t *testing.T, row reftable.Row) {
		p := Plain{concreteOf(t, row), reftable.In[manway.Length](t, row, "b"), reftable.In[manway.Length](t, row, "h"), true}
		f := reftable.Must[PlainFlexure](t)(p.Flexure())
		v := reftable.Must[Shear](t)(p.Shear())
		row.Check(t, map[string]float64{
			"section modulus": float64(f.Modulus) / math.Pow(float64(inch), 3),
			"design moment":   f.Design.In(kipFoot), "design shear": v.Design.In(manway.Kip),
		}[row.Quantity])
	})
}

// What is left of a worn plain slab.
func TestWornPlain(t *testing.T) {
	reftable.Load(t, "structure.csv").Under("D3-").Each(t, func(t *testing.T, row reftable.Row) {
		h, loss := reftable.In[manway.Length](t, row, "h"), reftable.In[manway.Length](t, row, "loss")
		strength := func(h manway.Length) manway.Moment {
			return reftable.Must[PlainFlexure](t)(Plain{concreteOf(t, row), manway.Foot, h, false}.Flexure()).Design
		}
		row.Check(t, map[string]float64{
			"strength left":       float64(strength(h-loss) / strength(h)),
			"stiffness left":      math.Pow(float64((h-loss)/h), 3),
			"plain design moment": strength(h - loss).In(kipFoot),
		}[row.Quantity])
	})
}

func TestBreakoutExamples(t *testing.T) {
	reftable.Load(t, "concrete.csv").With("quantity", "Nb", "area ratio", "psi_ed", "Ncb").Each(t, func(t *testing.T, row reftable.Row) {
		b := Breakout{Concrete: concreteOf(t, row), Embedment: reftable.In[manway.Length](t, row, "hef"), Coefficient: row.Float(t, "kc")}
		if _, ok := row.Lookup("edge"); ok {
			b.Edge = reftable.In[manway.Length](t, row, "edge")
		}
		if _, ok := row.Lookup("area"); ok {
			b.Area = reftable.In[manway.Area](t, row, "area")
		}
		if _, ok := row.Lookup("psi_ec"); ok {
			b.Eccentricity = 1.5 * b.Embedment * manway.Length(1/row.Float(t, "psi_ec")-1)
		}
		s := reftable.Must[BreakoutStrength](t)(b.Strength())
		row.Check(t, map[string]float64{
			"Nb": s.Single.In(manway.PoundForce), "area ratio": float64(s.Area / s.Full),
			"psi_ed": s.PsiED, "Ncb": s.Nominal.In(manway.PoundForce),
		}[row.Quantity])
	})
	reftable.Load(t, "concrete.csv").Under("C10-05").Each(t, func(t *testing.T, row reftable.Row) {
		s := reftable.Must[EdgeBreakoutStrength](t)(EdgeBreakout{
			Concrete: concreteOf(t, row), Bearing: reftable.In[manway.Length](t, row, "le"),
			Diameter: reftable.In[manway.Length](t, row, "da"), Edge: reftable.In[manway.Length](t, row, "ca"),
		}.Strength())
		row.Check(t, map[string]float64{
			"Vb by diameter": s.ByDiameter.In(manway.PoundForce), "Vb by edge": s.ByEdge.In(manway.PoundForce),
		}[row.Quantity])
	})
}
