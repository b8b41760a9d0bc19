package tank

import (
	"errors"
	"math"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

const kip = 1000 * manway.PoundForce

// The permit calculation of a round tank under a slab, term by term.
func TestHoldDown(t *testing.T) {
	rows := reftable.Load(t, "tank.csv").Under("tank-f2-")
	l := lengths(t, rows[0], "D", "L", "cover", "riser")
	var empty manway.Mass
	rows[0].Read(t, "mass", &empty)
	var soil, concrete manway.Density
	rows[0].Read(t, "moist", &soil)
	rows[0].Read(t, "concrete", &concrete)
	var slab, deadmen manway.Volume
	rows[0].Read(t, "slab", &slab)
	rows[0].Read(t, "deadmen", &deadmen)
	x := must(t, Spec{
		Shape: HorizontalCylinder{Diameter: l[0], Length: l[1]}, OutsideSizes: true,
		Wall: 0.25 * manway.Inch, Material: FibreglassShell, EmptyMass: empty,
	})
	riser := manway.Area(math.Pi / 4 * float64(l[3]) * float64(l[3]))
	f, err := x.Float(FloatCase{
		Cover: l[2], Groundwater: manway.GroundwaterAt(0), Soil: manway.Soil{Moist: soil, Saturated: soil},
		RiserArea: riser, Wedge: Wedge{Slope: rows[0].Float(t, "slope")},
		Ballast: []Ballast{{slab.Times(concrete), concrete, true}, {deadmen.Times(concrete), concrete, false}},
	})
	if err != nil {
		t.Fatal(err)
	}
	sunk := float64(soil-manway.WaterDensity) * manway.StandardGravity
	deadmenSunk := float64(deadmen) * float64(concrete-manway.WaterDensity) * manway.StandardGravity
	got := map[string]float64{
		"tank":        (f.Displaced - riser.Times(l[2])).In(manway.CubicFoot),
		"sump":        riser.Times(l[2]).In(manway.CubicFoot),
		"uplift":      f.Uplift.In(kip),
		"soil":        manway.Volume(float64(f.SubmergedSoil) / sunk).In(manway.CubicFoot),
		"soil-weight": f.SubmergedSoil.In(kip),
		"deadmen":     manway.Force(deadmenSunk).In(kip),
		"down":        f.Down.In(kip),
		"factor":      f.Factor,
	}
	rows.Each(t, func(t *testing.T, row reftable.Row) {
		v, ok := got[strings.TrimPrefix(row.ID, "tank-f2-")]
		if !ok {
			t.Fatal("no figure for this row")
		}
		row.Check(t, v)
	})
	if f.State != StaysDown || f.Check.Status != manway.Pass || f.Required.Value != 1.2 {
		t.Errorf("state %v, check %v, required %v", f.State, f.Check.Status, f.Required.Value)
	}
}

func TestPublishedBuoyancy(t *testing.T) {
	rows := reftable.Load(t, "tank.csv")
	lift := func(v manway.Volume) float64 {
		return float64(v.Times(manway.WaterDensity)) * manway.StandardGravity / float64(manway.PoundForce)
	}
	// A tank of the outside sizes of a row, in water to its top.
	sunk := func(t *testing.T, row reftable.Row) Flotation {
		t.Helper()
		spec := Spec{OutsideSizes: true, Wall: 0.25 * manway.Inch, Roof: 0.25 * manway.Inch, Floor: 0.25 * manway.Inch, Material: PlasticShell}
		if _, ok := row.Lookup("diameter"); ok {
			l := lengths(t, row, "diameter", "height")
			spec.Shape = VerticalCylinder{l[0], l[1]}
		} else {
			l := lengths(t, row, "L", "W", "H")
			spec.Shape = Box{Length: l[0], Width: l[1], Height: l[2]}
		}
		if _, ok := row.Lookup("mass"); ok {
			row.Read(t, "mass", &spec.EmptyMass)
		}
		x := must(t, spec)
		f, err := x.Float(FloatCase{})
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	for _, id := range []string{"tank-f5-volume", "tank-f6-volume", "tank-f7-volume"} {
		rows.Under(id).Each(t, func(t *testing.T, row reftable.Row) { row.Check(t, sunk(t, row).Displaced.In(manway.CubicFoot)) })
	}
	rows.Under("tank-f6-gallons").Each(t, func(t *testing.T, row reftable.Row) { row.Check(t, sunk(t, row).Displaced.In(manway.Gallon)) })
	rows.Under("tank-f6-lift").Each(t, func(t *testing.T, row reftable.Row) { row.Check(t, sunk(t, row).Uplift.In(manway.PoundForce)) })
	rows.Under("tank-f6-short").Each(t, func(t *testing.T, row reftable.Row) {
		f := sunk(t, row)
		row.Check(t, (f.Uplift - f.Down).In(manway.PoundForce))
		if f.State != Floats {
			t.Errorf("state %v", f.State)
		}
	})
	rows.Under("tank-f7-inch").Each(t, func(t *testing.T, row reftable.Row) {
		l := lengths(t, row, "L", "W")
		spec := Spec{Shape: Box{Length: l[0], Width: l[1], Height: 54 * manway.Inch}, OutsideSizes: true, Wall: manway.Inch, Roof: manway.Inch, Floor: manway.Inch}
		var soil manway.Density
		row.Read(t, "soil", &soil)
		x := must(t, spec)
		f, err := x.Float(FloatCase{Cover: manway.Inch, Groundwater: manway.GroundwaterAt(manway.Foot), Soil: manway.Soil{Moist: soil}})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, f.MoistSoil.In(manway.PoundForce))
	})
	var displaced manway.Volume
	rows.Under("tank-f3-").Each(t, func(t *testing.T, row reftable.Row) {
		if _, ok := row.Lookup("displaced"); ok {
			if err := displaced.UnmarshalText([]byte(row.Input(t, "displaced"))); err != nil {
				t.Fatal(err)
			}
		}
		restraint := 0.0
		for _, key := range []string{"restraint", "overburden", "slab", "pumps", "tanks"} {
			if _, ok := row.Lookup(key); ok {
				var m manway.Mass
				row.Read(t, key, &m)
				restraint += m.In(manway.Pound)
			}
		}
		switch row.ID {
		case "tank-f3-buoyancy":
			row.Check(t, lift(displaced))
		case "tank-f3-restraint":
			row.Check(t, restraint)
		case "tank-f3-excess":
			row.Check(t, restraint-lift(displaced))
		}
	})
}

func TestRequiredFactors(t *testing.T) {
	factors := map[string]RequiredFactor{"san-joaquin": SanJoaquinFactor, "burnett": BurnettFactor}
	reftable.Load(t, "tank.csv").Under("tank-factor-").Each(t, func(t *testing.T, row reftable.Row) {
		f := factors[row.Input(t, "factor")]
		row.Check(t, f.Value)
		if f.Source.Place != row.Place || f.Source.Source.ID != row.Source {
			t.Errorf("cites %v", f.Source)
		}
	})
}

// A box with everything plumb, by hand: concrete 150, soil 120 and 130 lb/ft3,
// water 2 ft below grade.
func TestFloatByHand(t *testing.T) {
	in := manway.Inch
	x := must(t, Spec{Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60 * in}, Wall: 4 * in, Roof: 4 * in, Floor: 4 * in,
		Partitions: []Partition{{At: 62 * in, Thickness: 3 * in}}})
	c := FloatCase{
		Cover: 36 * in, Groundwater: manway.GroundwaterAt(24 * in), Liquid: 12 * in,
		Concrete: manway.Concrete{Density: 150 * manway.PoundPerCubicFoot},
		Soil:     manway.Soil{Moist: 120 * manway.PoundPerCubicFoot, Saturated: 130 * manway.PoundPerCubicFoot},
		Lids:     200 * manway.Pound, Risers: 400 * manway.Pound, RiserArea: 4 * manway.SquareFoot, Flange: 6 * in,
	}
	f, err := x.Float(c)
	if err != nil {
		t.Fatal(err)
	}
	plan := 104.0 / 12 * 68 / 12
	ledge := 116.0/12*80/12 - plan
	shell := plan*68/12 - 8.0*5*5 + 3.0/12*5*5
	lb := func(x float64) manway.Force { return manway.Force(x) * manway.PoundForce }
	for _, w := range []struct {
		name      string
		got, want manway.Force
	}{
		{"shell and ledge", f.Shell, lb(150 * (shell + ledge*4/12))},
		{"contents", f.Contents, lb(62.4 * (8 - 0.25) * 5)},
		{"moist soil", f.MoistSoil, lb(120 * (plan + ledge - 4) * 2)},
		{"soil under water", f.SubmergedSoil, lb(67.6 * ((plan+ledge-4)*1 + ledge*64/12))},
		{"uplift", f.Uplift, lb(62.4 * (plan*68/12 + ledge*4/12 + 4*1))},
		{"covers and risers", f.Lids + f.Risers, lb(600)},
	} {
		if !(math.Abs(float64(w.got-w.want)) <= 1e-9*float64(w.want)) {
			t.Errorf("%s: %v, want %v", w.name, w.got.In(manway.PoundForce), w.want.In(manway.PoundForce))
		}
	}
	if sum := f.Shell + f.Lids + f.Risers + f.Contents + f.MoistSoil + f.SubmergedSoil + f.Ballast; !(math.Abs(float64(sum-f.Down)) <= 1e-9*float64(f.Down)) {
		t.Errorf("parts %v, sum %v", sum, f.Down)
	}
}

// Concrete of unknown density is taken no heavier than concrete of normal weight
// may be; with a density that is known, or a tank that was weighed, nothing is
// assumed, but for a ledge.
func TestFloatOfUnknownConcrete(t *testing.T) {
	spec := Spec{Shape: shapes["box"]}
	x := must(t, spec)
	unknown, err := x.Float(FloatCase{Cover: 0.6})
	if err != nil {
		t.Fatal(err)
	}
	reftable.Load(t, "tank.csv").Under("tank-light-concrete").Each(t, func(t *testing.T, row reftable.Row) {
		row.Check(t, unknown.Case.Concrete.Density.In(manway.PoundPerCubicFoot)/1000)
	})
	said := manway.Concrete{Density: 135 * manway.PoundPerCubicFoot}
	known, err := x.Float(FloatCase{Cover: 0.6, Concrete: said})
	if err != nil || known.Down != unknown.Down || known.Assumed.Has(manway.AssumedLightConcrete) {
		t.Errorf("known: %v down, unknown %v; %v, %v", known.Down, unknown.Down, known.Assumed.List(), err)
	}
	whole, err := x.ShellWeight(manway.Concrete{})
	if ratio := float64(unknown.Shell) / float64(whole.Mass.Weight()); err != nil || !(math.Abs(ratio-0.9) <= 1e-12) {
		t.Errorf("the shell is taken at %g of its usual weight, want 135/150; %v", ratio, err)
	}
	spec.EmptyMass = 4000
	weighed := must(t, spec)
	for flange, assumed := range map[manway.Length]bool{0: false, 0.2: true} {
		f, err := weighed.Float(FloatCase{Cover: 0.6, Flange: flange})
		if err != nil || f.Assumed.Has(manway.AssumedLightConcrete) != assumed {
			t.Errorf("weighed, flange %v: %v, %v", flange, f.Assumed.List(), err)
		}
	}
	plastic := must(t, Spec{Shape: shapes["box"], Material: PlasticShell})
	if f, err := plastic.Float(FloatCase{Cover: 0.6}); err != nil || f.Assumed.Has(manway.AssumedLightConcrete) {
		t.Errorf("plastic: %v, %v", f.Assumed.List(), err)
	}
}

// What is unknown is taken on the unfavourable side, and said.
func TestFloatUnknown(t *testing.T) {
	x := must(t, Spec{Shape: shapes["box"]})
	unknown, err := x.Float(FloatCase{Cover: 0.6})
	if err != nil {
		t.Fatal(err)
	}
	if !unknown.Assumed.Has(manway.AssumedGroundwaterAtGrade|manway.AssumedSoil|manway.AssumedWallThickness|manway.AssumedLightConcrete) || unknown.Assumed.Has(manway.AssumedConcreteDensity) {
		t.Errorf("assumed %v", unknown.Assumed.List())
	}
	if !unknown.Cautions.Has(manway.GroundwaterUnknown | manway.MayFloat | manway.LocalCode) {
		t.Errorf("cautions %v", unknown.Cautions)
	}
	for _, depth := range []manway.Length{0, 0.3, 1, 2, 5} {
		known, err := x.Float(FloatCase{Cover: 0.6, Groundwater: manway.GroundwaterAt(depth)})
		if err != nil {
			t.Fatal(err)
		}
		if known.Assumed.Has(manway.AssumedGroundwaterAtGrade) || known.State != NoUplift && known.Factor < unknown.Factor {
			t.Errorf("water at %v: factor %v below %v of unknown water", depth, known.Factor, unknown.Factor)
		}
	}
	dry, err := x.Float(FloatCase{Cover: 0.6, Groundwater: manway.GroundwaterAt(5)})
	if err != nil || dry.State != NoUplift || dry.Factor != 0 || dry.Check.Status != manway.Pass || dry.Leave != LeaveNone {
		t.Errorf("dry ground: %+v, %v", dry, err)
	}
}

// Property (inverse): at the least level the tank has just the required factor.
func TestLeastLiquid(t *testing.T) {
	for name, s := range shapes {
		if _, ok := s.(Surveyed); ok {
			continue
		}
		spec := Spec{Shape: s, Wall: 0.08, Material: ConcreteShell}
		if !lying(s) {
			spec.Roof, spec.Floor = 0.1, 0.1
		}
		x := must(t, spec)
		c := FloatCase{Cover: 0.1, Required: RequiredFactor{1.25, manway.Citation{Source: manway.Practice}}}
		f, err := x.Float(c)
		if err != nil {
			t.Fatal(err)
		}
		if f.Leave != LeaveAtLeast {
			t.Errorf("%s: %v, factor %v", name, f.Leave, f.Factor)
			continue
		}
		c.Liquid = f.LeastLiquid
		at, err := x.Float(c)
		if err != nil || !(math.Abs(at.Factor-1.25) <= 1e-9) {
			t.Errorf("%s: factor %v at the least level, %v", name, at.Factor, err)
		}
	}
}

// Property (inverse): with water at the limit the tank has the required factor,
// with a millimetre more it has not.
func TestWaterLimit(t *testing.T) {
	x := must(t, Spec{Shape: shapes["box"], Wall: 0.08, Roof: 0.1, Floor: 0.1})
	c := FloatCase{Cover: 0.3}
	limit, err := x.WaterLimit(c)
	if err != nil || limit.AnyLevel {
		t.Fatalf("%+v, %v", limit, err)
	}
	for off, want := range map[manway.Length]FloatState{0: StaysDown, 0.001: StaysDown, -0.001: Short} {
		c.Groundwater = manway.GroundwaterAt(limit.Depth + off)
		f, err := x.Float(c)
		if err != nil || f.State != want {
			t.Errorf("water %v off the limit %v: %v (factor %v), want %v; %v", off, limit.Depth, f.State, f.Factor, want, err)
		}
	}
	c.Ballast = []Ballast{{Mass: 20000, Density: 2400}}
	if heavy, err := x.WaterLimit(c); err != nil || !heavy.AnyLevel {
		t.Errorf("20 t of ballast: %+v, %v", heavy, err)
	}
}

// Property (monotone): every weight more holds the tank down better.
func TestFloatMonotone(t *testing.T) {
	x := must(t, Spec{Shape: shapes["draft"], Wall: 0.08, Roof: 0.1, Floor: 0.1})
	base := FloatCase{Cover: 0.4, Liquid: 0.1, RiserArea: 0.3, Dug: 0.2}
	factor := func(change func(*FloatCase)) float64 {
		c := base
		change(&c)
		f, err := x.Float(c)
		if err != nil {
			t.Fatal(err)
		}
		return f.Factor
	}
	was := factor(func(*FloatCase) {})
	for name, change := range map[string]func(*FloatCase){
		"lids":    func(c *FloatCase) { c.Lids = 100 },
		"risers":  func(c *FloatCase) { c.Risers = 100 },
		"liquid":  func(c *FloatCase) { c.Liquid = 0.2 },
		"flange":  func(c *FloatCase) { c.Flange = 0.15 },
		"wedge":   func(c *FloatCase) { c.Wedge.Slope = 0.25 },
		"not dug": func(c *FloatCase) { c.Dug = 0 },
		"ballast": func(c *FloatCase) { c.Ballast = []Ballast{{Mass: 500, Density: 2400}} },
		"soil":    func(c *FloatCase) { c.Soil = manway.Soil{Moist: 1900, Saturated: 2100} },
	} {
		if now := factor(change); !(now > was) {
			t.Errorf("%s: factor %v, was %v", name, now, was)
		}
	}
	if a, b := factor(func(c *FloatCase) { c.Wedge = Wedge{0.25, false} }), factor(func(c *FloatCase) { c.Wedge = Wedge{0.25, true} }); !(b > a) {
		t.Errorf("wedge at the ends too: %v, along the sides %v", b, a)
	}
}

func TestFloatRefuses(t *testing.T) {
	x := must(t, Spec{Shape: shapes["flat"]})
	_, err := x.Float(FloatCase{
		Cover: -1, Liquid: 9, Lids: manway.Mass(math.NaN()), Flange: 1, Wedge: Wedge{Slope: 2},
		Ballast: []Ballast{{Mass: 5, Density: 900}}, Required: RequiredFactor{Value: 0.5}, Groundwater: manway.GroundwaterAt(-1),
		Concrete: manway.Concrete{Density: 5},
	})
	var faults manway.InputErrors
	if !errors.As(err, &faults) {
		t.Fatal(err)
	}
	for _, field := range []string{"Cover", "Liquid", "Lids", "Flange", "Wedge.Slope", "Ballast[0].Density", "Required.Value", "Groundwater.Depth", "Concrete.Density"} {
		if !strings.Contains(err.Error(), field+" ") {
			t.Errorf("no fault for %s in %v", field, err)
		}
	}
	s := must(t, Spec{Shape: shapes["areas"], EmptyMass: 900})
	if _, err := s.Float(FloatCase{}); err == nil {
		t.Error("a surveyed tank floats without an outside")
	}
}
