package tank

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
)

func newErr(s Spec) error { _, err := New(s); return err }

// The sizes that each shape may have.
func TestLimitsOfShapes(t *testing.T) {
	box := Box{Length: 2, Width: 1.5, Height: 1.5}
	limit.Check(t, Spec{Shape: box}, newErr, limit.Between("Shape.Length", leastSize, greatestSize),
		limit.Between("Shape.Width", leastSize, greatestSize), limit.Between("Shape.Height", leastSize, greatestSize))
	box.FloorLength, box.FloorWidth = 1.8, 1.2
	limit.Check(t, Spec{Shape: box}, newErr, limit.Between("Shape.FloorLength", manway.Length(1), 2), limit.Between("Shape.FloorWidth", manway.Length(0.75), 1.5))
	limit.Check(t, Spec{Shape: Box{Length: 2, Width: 1, Height: 1.5, Fillet: 0.1}}, newErr, limit.Between("Shape.Fillet", manway.Length(0), 0.5))
	limit.Check(t, Spec{Shape: Box{Length: 2, Width: 2, Height: 0.5, Fillet: 0.1}}, newErr, limit.AtMost("Shape.Fillet", manway.Length(0.5)))
	limit.Check(t, Spec{Shape: HorizontalCylinder{Diameter: 2, Length: 3}}, newErr,
		limit.Between("Shape.Diameter", leastSize, greatestSize), limit.Between("Shape.Length", leastSize, greatestSize))
	limit.Check(t, Spec{Shape: HorizontalEllipse{Width: 2, Height: 1.5, Length: 3}}, newErr, limit.Between("Shape.Width", leastSize, greatestSize),
		limit.Between("Shape.Height", leastSize, greatestSize), limit.Between("Shape.Length", leastSize, greatestSize))
	limit.Check(t, Spec{Shape: VerticalCylinder{Diameter: 2, Height: 1.5}}, newErr,
		limit.Between("Shape.Diameter", leastSize, greatestSize), limit.Between("Shape.Height", leastSize, greatestSize))
	limit.Check(t, Spec{Shape: Frustum{BottomDiameter: 2, TopDiameter: 1.5, Height: 1.5}}, newErr,
		limit.Between("Shape.BottomDiameter", leastSize, greatestSize), limit.Between("Shape.TopDiameter", leastSize, greatestSize),
		limit.Between("Shape.Height", leastSize, greatestSize))
	limit.Check(t, Spec{Shape: Sphere{Diameter: 2}}, newErr, limit.Between("Shape.Diameter", leastSize, greatestSize))
}

// Dished heads on a cylinder of radius 1 m. A depth or a knuckle counts from a
// millionth of the greatest.
func TestLimitsOfHeads(t *testing.T) {
	with := func(h Head) Spec { return Spec{Shape: HorizontalCylinder{Diameter: 2, Length: 3, Inlet: h}} }
	limit.Check(t, with(Head{Form: Torispherical, Crown: 2, Knuckle: 0.2}), newErr, limit.AtMost("Shape.Inlet.Form", Torispherical),
		limit.Between("Shape.Inlet.Crown", manway.Length(1), 20), limit.Between("Shape.Inlet.Knuckle", manway.Length(1e-6), 1))
	limit.Check(t, with(Head{Form: SphericalCap, Depth: 0.5}), newErr, limit.Between("Shape.Inlet.Depth", manway.Length(1e-6), 1))
	limit.Check(t, with(Head{Form: Ellipsoidal, Depth: 0.5}), newErr, limit.Between("Shape.Inlet.Depth", manway.Length(4e-6), 4))
	limit.Check(t, with(Head{}), newErr, limit.Between("Shape.Inlet.Depth", manway.Length(0), 0), limit.Between("Shape.Inlet.Crown", manway.Length(0), 0))
}

// What is known only by its gallons, and surveys.
func TestLimitsOfSurveys(t *testing.T) {
	limit.Check(t, Spec{Shape: Nominal{Volume: 1000 * manway.Gallon, Depth: 1.2, Height: 1.5, Length: 2.5}}, newErr,
		limit.Between("Shape.Volume", 50*manway.Gallon, 50000*manway.Gallon),
		limit.AtLeast("Shape.Depth", leastSize), limit.AtMost("Shape.Height", greatestSize),
		limit.Between("Shape.Height", manway.Length(1.2), greatestSize),
		limit.Between("Shape.Length", leastSize, greatestSize))
	areas := Spec{Shape: Surveyed{Areas: []AreaAt{{0, 1}, {0.5, 2}, {1, 2}}}}
	limit.Check(t, areas, newErr,
		limit.Between("Shape.Areas[0].Depth", manway.Length(0), 0), limit.Above("Shape.Areas[2].Depth", manway.Length(0.5)), limit.AtMost("Shape.Areas[2].Depth", greatestSize),
		limit.Between("Shape.Areas[2].Area", manway.Area(0), greatestSize.Times(greatestSize)),
		limit.AtLeast("Shape.Areas", 2))
	limit.Refuses(t, areas, newErr, "Shape.Areas[1].Area", func(s *Spec) {
		s.Shape = Surveyed{Areas: []AreaAt{{0, 0}, {0.5, 0}, {1, 2}}}
	})
	limit.Check(t, Spec{Shape: Surveyed{Volumes: []VolumeAt{{0, 0}, {0.5, 1}, {1, 2}}}}, newErr,
		limit.Between("Shape.Volumes[0].Volume", manway.Volume(0), 0), limit.Above("Shape.Volumes[2].Volume", manway.Volume(1)),
		limit.Below("Shape.Volumes[2].Volume", manway.Volume(1e9)))
	type readings struct {
		Start manway.Length
		Drops []Drop
	}
	fell := readings{1, []Drop{{0.5, 1}, {1, 2}}}
	call := func(r readings) error { _, err := FromDrops(r.Start, r.Drops); return err }
	limit.Check(t, fell, call,
		limit.Between("drops[1].Dropped", 1-manway.Inch/4, 1+manway.Inch/4), limit.AtLeast("drops", 2), limit.Between("drops[0].Pumped", 0, 1e6*manway.Gallon).In("Drops[0].Pumped"),
		limit.Between("start", leastSize, greatestSize))
	limit.Refuses(t, fell, call, "drops[1].Pumped", func(r *readings) { r.Drops = []Drop{{0.5, 1}, {1, 1}} })
	limit.Refuses(t, fell, call, "drops[0].Pumped", func(r *readings) { r.Drops = []Drop{{0.5, -1}, {1, 1}} })
}

// Walls, partitions, inverts and openings.
func TestLimitsOfSpec(t *testing.T) {
	spec := Spec{
		Shape: Box{Length: 3, Width: 1.5, Height: 1.5}, Wall: 0.1, Roof: 0.1, Floor: 0.1,
		Partitions: []Partition{{At: 1, Thickness: 0.1, Height: 1.4}}, InletInvert: 1.2, OutletInvert: 1.1, EmptyMass: 5000,
		Access: []Access{{Along: 0.5, Diameter: 0.5}, {Compartment: 1, Along: 2, Length: 0.5, Width: 0.6}},
	}
	const thin, thick = 0.05 * manway.Inch, 3 * manway.Foot
	limit.Check(t, spec, newErr,
		limit.Between("Wall", thin, thick), limit.Between("Roof", thin, thick), limit.Between("Floor", thin, thick),
		limit.Between("InletInvert", manway.Length(0), 1.5), limit.Between("OutletInvert", manway.Length(0), 1.5),
		limit.Between("EmptyMass", 20*manway.Pound, 500000*manway.Pound), limit.AtMost("Material", SteelShell),
		limit.Above("Partitions[0].At", manway.Length(0)), limit.Below("Partitions[0].At", manway.Length(2.9)),
		limit.Above("Partitions[0].Thickness", manway.Length(0)), limit.AtMost("Partitions[0].Thickness", 24*manway.Inch),
		limit.Between("Partitions[0].Opening", 0, 100*manway.SquareFoot),
		limit.Between("Partitions[0].Height", manway.Length(0.015), 1.5),
		limit.AtMost("Access", 20), limit.Between("Access[0].Compartment", 0, 1), limit.Between("Access[0].Along", manway.Length(0), 3),
		limit.Between("Access[0].Across", manway.Length(-0.75), 0.75), limit.Between("Access[0].Diameter", 4*manway.Inch, 10*manway.Foot),
		limit.Between("Access[1].Length", 4*manway.Inch, 20*manway.Foot), limit.Between("Access[1].Width", 4*manway.Inch, 20*manway.Foot))
	limit.Refuses(t, spec, newErr, "Shape", func(s *Spec) { s.Shape = nil })
	limit.Refuses(t, spec, newErr, "Partitions", func(s *Spec) { s.Partitions = make([]Partition, 4) })
	limit.Refuses(t, spec, newErr, "Partitions", func(s *Spec) { s.Shape = Sphere{Diameter: 3} })
	outside := spec
	outside.OutsideSizes, outside.Access, outside.Partitions = true, nil, nil
	limit.Check(t, outside, newErr, limit.AtMost("Shape.Width", greatestSize))
	limit.Refuses(t, outside, newErr, "Roof", func(s *Spec) { s.Roof = 0 })
	limit.Refuses(t, outside, newErr, "Shape.Width", func(s *Spec) { s.Wall = 0.7 })
	limit.Refuses(t, outside, newErr, "OutsideSizes", func(s *Spec) { s.Shape = shapes["areas"] })
}

// Depths and volumes that a tank and its compartments take.
func TestLimitsOfVolumes(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 3, Width: 1.5, Height: 1.5}, Partitions: []Partition{{At: 1, Thickness: 0.1}}})
	c := &x.Compartments()[0]
	limit.Check(t, 1, func(d manway.Length) error { return second(x.Volume(d)) }, limit.Between("depth", manway.Length(0), 1.5))
	limit.Check(t, 1, func(d manway.Length) error { return second(x.Area(d)) }, limit.Between("depth", manway.Length(0), 1.5))
	limit.Check(t, 1, func(d manway.Length) error { _, _, _, err := x.Range(d); return err }, limit.Between("depth", manway.Length(0), 1.5))
	limit.Check(t, 1, func(d manway.Length) error { return second(x.LossOf(d, 0)) }, limit.Between("depth", manway.Length(0), 1.5))
	limit.Check(t, 1, func(d manway.Length) error { return second(x.Working(d, manway.US)) }, limit.Between("depth", manway.Length(0), 1.5))
	limit.Check(t, 1, func(d manway.Length) error { return second(c.Volume(d)) }, limit.Between("depth", manway.Length(0), 1.5))
	limit.Check(t, 1, func(d manway.Length) error { return second(c.Area(d)) }, limit.Between("depth", manway.Length(0), 1.5))
	limit.Check(t, 1, func(v manway.Volume) error { return second(x.Depth(v)) }, limit.Between("volume", 0, x.Full()))
	limit.Check(t, 1, func(v manway.Volume) error { return second(c.Depth(v)) }, limit.Between("volume", 0, c.Full()))
	limit.Check(t, 1, func(u manway.Length) error { return second(x.PerUnit(1, u)) }, limit.Above("unit", manway.Length(0)), limit.AtMost("unit", greatestSize))
	limit.Refuses(t, x, func(x Tank) error { return second(x.Volume(0)) }, "Tank", func(x *Tank) { *x = Tank{} })
	type chart struct {
		Step   manway.Length
		Rim    manway.Length
		Depths []manway.Length
		From   bool
	}
	made := func(c chart) error { return second(x.Chart(ChartCase{Step: c.Step, FromRim: c.From, Rim: c.Rim})) }
	limit.Check(t, chart{Step: 0.1}, made, limit.Between("Step", manway.Millimetre, 1.5), limit.Between("Rim", manway.Length(0), 0))
	limit.Check(t, chart{Step: 0.1, From: true, Rim: 2}, made, limit.Between("Rim", 1.5, 1.5+greatestSize))
	limit.Check(t, chart{Depths: []manway.Length{1}}, func(c chart) error { return second(x.ChartAt(c.Depths, ChartCase{})) },
		limit.Between("Depths[0]", manway.Length(0), 1.5))
	limit.Refuses(t, x, func(x Tank) error { return second(x.Chart(ChartCase{Step: 0.1})) }, "Tank", func(x *Tank) { *x = Tank{} })
	limit.Refuses(t, x, func(x Tank) error { return second(x.ChartAt(nil, ChartCase{})) }, "Tank", func(x *Tank) { *x = Tank{} })
}

// What holds a tank down and lifts it, and its shell.
func TestLimitsOfFlotation(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 3, Width: 1.5, Height: 1.5}})
	c := FloatCase{Groundwater: manway.GroundwaterAt(1), Ballast: []Ballast{{Mass: 100, Density: 2400}}, Required: RequiredFactor{Value: 1.2}}
	limit.Check(t, c, func(c FloatCase) error { return second(x.Float(c)) },
		limit.Between("Cover", 0, 20*manway.Foot), limit.Between("Liquid", manway.Length(0), 1.5),
		limit.Between("Lids", 0, 50000*manway.Pound), limit.Between("Risers", 0, 100000*manway.Pound),
		limit.Between("RiserArea", manway.Area(0), 4.5), limit.Between("Dug", 0, 10000*manway.CubicFoot),
		limit.Between("Flange", 0, 5*manway.Foot), limit.Between("Wedge.Slope", 0, 0.6),
		limit.Between("Ballast[0].Mass", 0, 500000*manway.Pound),
		limit.Between("Ballast[0].Density", 63*manway.PoundPerCubicFoot, 800*manway.PoundPerCubicFoot),
		limit.Between("Required.Value", 1., 3))
	limit.Check(t, c, func(c FloatCase) error { return second(x.WaterLimit(c)) }, limit.Between("Cover", 0, 20*manway.Foot))
	lying := must(t, Spec{Shape: HorizontalCylinder{Diameter: 2, Length: 3}})
	limit.Check(t, c, func(c FloatCase) error { return second(lying.Float(c)) }, limit.Between("Flange", manway.Length(0), 0))
	float := func(x Tank) error { return second(x.Float(FloatCase{})) }
	limit.Refuses(t, x, float, "Tank", func(x *Tank) { *x = Tank{} })
	limit.Refuses(t, x, float, "Tank.Shape", func(x *Tank) { *x = must(t, Spec{Shape: shapes["areas"]}) })
	type work struct {
		Case FloatCase
		Work Work
	}
	limit.Check(t, work{c, Work{Found: 1, Dug: 1}}, func(w work) error { return second(x.Stages(w.Case, w.Work)) },
		limit.Between("Work.Found", manway.Length(0), 1.5), limit.Between("Work.Left", manway.Length(0), 1.5),
		limit.Between("Work.Dug", 0, 10000*manway.CubicFoot))
	weight := func(x Tank) error { return second(x.ShellWeight(manway.Concrete{})) }
	limit.Refuses(t, x, weight, "Tank", func(x *Tank) { *x = Tank{} })
	limit.Refuses(t, x, weight, "EmptyMass", func(x *Tank) { *x = must(t, Spec{Shape: shapes["areas"]}) })
}

// Rules and leak tests.
func TestLimitsOfRules(t *testing.T) {
	set := RuleSets()[0]
	judge := func(f Facts) error { return second(set.Judge(f)) }
	limit.Check(t, Facts{Liquid: 4, FirstLiquid: 3, LiquidDepth: manway.Read(1)}, judge,
		limit.Between("Bedrooms", 0, 100), limit.Between("DailyFlow", 0, 1e6*manway.GallonPerDay),
		limit.Between("Liquid", 0, 1e6*manway.Gallon), limit.Between("FirstLiquid", manway.Volume(0), 4*(1+1e-9)),
		limit.Between("Compartments", 0, 4), limit.Between("LengthToWidth", 0., 100),
		limit.Between("CoverMass", 0, 50000*manway.Pound),
		limit.Between("LiquidDepth", -greatestSize, greatestSize).In("LiquidDepth.Length"))
	limit.Refuses(t, set.ID, func(id string) error { return second(RuleSetOf(id)) }, "RuleSet", func(id *string) { *id = "no such set" })
	var water, vacuum LeakStandard
	for _, s := range LeakStandards() {
		if s.Vacuum > 0 {
			vacuum = s
		} else {
			water = s
		}
	}
	leak := func(l LeakTest) error { return second(l.Judge()) }
	limit.Check(t, LeakTest{Standard: water, Time: manway.Hour, Drop: 0.01, Surface: 1}, leak,
		limit.Between("Time", manway.Second, 30*manway.Day), limit.Between("Drop", 0, 20*manway.Foot),
		limit.Between("Surface", 0.1*manway.SquareFoot, 2000*manway.SquareFoot))
	limit.Check(t, LeakTest{Standard: vacuum, Time: manway.Hour, Start: 4 * manway.InchMercury, End: 3 * manway.InchMercury}, leak,
		limit.Between("Standard.Vacuum", 0, 30*manway.InchMercury), limit.Between("Standard.Keep", 0.0, 1), limit.Between("Standard.Hold", manway.Second, 30*manway.Day),
		limit.Between("Standard.Loss", 0, 1e6*manway.Gallon))
	limit.Check(t, LeakTest{Standard: vacuum, Time: manway.Hour, Start: 4 * manway.InchMercury, End: 3 * manway.InchMercury}, leak,
		limit.Between("Start", 0.1*manway.InchMercury, 30*manway.InchMercury), limit.Between("End", 0, 4*manway.InchMercury))
	limit.Refuses(t, LeakTest{Standard: water, Time: manway.Hour, Surface: 1}, leak, "Standard.Hold", func(l *LeakTest) { l.Standard = LeakStandard{} })
}

func TestLimitsOfRuleSets(t *testing.T) {
	set := RuleSet{ID: "own", Capacity: []CapacityRule{{Bedrooms: []BedroomStep{{UpTo: 3, Capacity: 3}}, EachMore: 1, Flow: []FlowStep{{UpTo: 1, Base: 1, Above: 0.1, Days: 1.5, Least: 1}}}},
		Limits: []LimitRule{{Most: Bound{true, 1}}}}
	zero := manway.Volume(0)
	limit.Check(t, set, RuleSet.Validate, limit.AtLeast("Capacity[0].Bedrooms[0].Capacity", zero), limit.AtLeast("Capacity[0].EachMore", zero),
		limit.AtLeast("Capacity[0].Flow[0].UpTo", manway.Flow(0)), limit.AtLeast("Capacity[0].Flow[0].Base", zero), limit.AtLeast("Capacity[0].Flow[0].Above", manway.Flow(0)),
		limit.Between("Capacity[0].Flow[0].Days", 0.0, 365), limit.AtLeast("Capacity[0].Flow[0].Least", zero),
		limit.AtMost("Limits[0].Topic", endOfTopics-1), limit.AtLeast("Limits[0].Scope.From", zero), limit.AtLeast("Limits[0].Scope.Below", zero))
	limit.Refuses(t, set, RuleSet.Validate, "Limits[0].Least.Value", func(s *RuleSet) { s.Limits[0].Least.Value = 1 })
	refused := func(ok bool, field string) error { // for a call that says only false
		if ok {
			return nil
		}
		return manway.InputErrors{{Field: field}}
	}
	days := func(r CapacityRule) error { _, ok := r.ForFlow(0.01); return refused(ok, "Flow[0].Days") }
	limit.Check(t, CapacityRule{Flow: []FlowStep{{Days: 1}}}, days, limit.Between("Flow[0].Days", 0.0, 365))
	rooms := func(r CapacityRule) error { _, ok := r.ForBedrooms(2); return refused(ok, "Bedrooms[0].Capacity") }
	limit.Check(t, CapacityRule{Bedrooms: []BedroomStep{{3, 1}}}, rooms, limit.AtLeast("Bedrooms[0].Capacity", zero))
}
