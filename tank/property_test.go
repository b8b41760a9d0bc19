package tank

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"manway.example/manway"
)

// lyingTank is a dished cylinder with a partition, so that no depth and no
// compartment is like another.
func lyingTank(t *testing.T) Tank {
	return must(t, Spec{Shape: shapes["dished"], Partitions: []Partition{{At: 1.5, Thickness: 0.1}}})
}

// Property (inverse): a compartment's depth for a volume holds that volume, and
// its surface is what a little more of depth holds.
func TestCompartmentDepthAndArea(t *testing.T) {
	box := must(t, Spec{Shape: shapes["draftfillet"], Partitions: []Partition{{At: 0.8, Thickness: 0.1}, {At: 1.7, Thickness: 0.05}}})
	lying := lyingTank(t)
	compartments := slices.Concat(box.Compartments(), lying.Compartments())
	for i := range compartments {
		c := &compartments[i]
		for k := 1; k < 20; k++ {
			v := c.Full() * manway.Volume(k) / 20
			d, err := c.Depth(v)
			if err != nil {
				t.Fatal(err)
			}
			back, err := c.Volume(d)
			if err != nil || !(math.Abs(float64(back-v)) <= 1e-12*float64(c.Full())) {
				t.Errorf("compartment %d: %v stand %v deep, which holds %v, %v", i, v, d, back, err)
			}
			const h = 1e-5
			over, _ := c.Volume(d + h)
			under, _ := c.Volume(d - h)
			a, err := c.Area(d)
			if slope := float64(over-under) / (2 * h); err != nil || !(math.Abs(slope/float64(a)-1) <= 1e-6) {
				t.Errorf("compartment %d at %v: surface %v, an inch more says %v, %v", i, d, float64(a), slope, err)
			}
		}
	}
}

// Property (bounded): the surfaces at floor and roof are given, and in the
// compartments of a box they are its floor: 1.5 m of width times 1 m and 1.9 m.
func TestAreaAtFloorAndRoof(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 3, Width: 1.5, Height: 1.4}, Partitions: []Partition{{At: 1, Thickness: 0.1}}})
	for i, want := range []float64{1.5, 2.85} {
		for _, depth := range []manway.Length{0, x.Inside.Height} {
			a, err := x.Compartments()[i].Area(depth)
			if err != nil || math.Abs(float64(a)-want) > 1e-12 {
				t.Errorf("compartment %d at %v: %v m2, %v, want %v", i, depth, float64(a), err, want)
			}
		}
	}
}

// Property (bounded): a partition may be 2 ft thick, and no thicker.
func TestThickestPartition(t *testing.T) {
	for thickness, fine := range map[manway.Length]bool{24 * in: true, 24.001 * in: false} {
		_, err := New(Spec{Shape: Box{Length: 3, Width: 1.5, Height: 1.5}, Partitions: []Partition{{At: 1, Thickness: thickness}}})
		if fine != (err == nil) {
			t.Errorf("%v: %v", thickness, err)
		}
	}
}

// Property (two ways): what the inches hold, each taken at its middle, adds up
// to the tank.
func TestPerUnitAddsUp(t *testing.T) {
	x := must(t, Spec{Shape: shapes["draftfillet"]})
	const n = 2000
	step := x.Inside.Height / n
	var sum manway.Volume
	for i := range n {
		v, err := x.PerUnit(step*(manway.Length(i)+0.5), step)
		if err != nil {
			t.Fatal(err)
		}
		sum += v
	}
	if !(math.Abs(float64(sum/x.Full())-1) <= 1e-6) {
		t.Errorf("%v by the inch, %v full", sum, x.Full())
	}
}

// Property (additive): two drops of the level one after the other lose what the
// whole drop does.
func TestLossesAdd(t *testing.T) {
	x := lyingTank(t)
	loss := func(depth, drop manway.Length) float64 {
		v, err := x.LossOf(depth, drop)
		if err != nil {
			t.Fatal(err)
		}
		return float64(v)
	}
	if a, b := loss(1.2, 0.3)+loss(0.9, 0.4), loss(1.2, 0.7); !(math.Abs(a-b) <= 1e-12) {
		t.Errorf("in two drops %v, in one %v", a, b)
	}
}

// Property (invariant): a chart measured down from the rim says of each depth
// what one measured up from the floor says.
func TestChartFromEitherEnd(t *testing.T) {
	x := lyingTank(t)
	depths := []manway.Length{0, 0.1, 0.75, 1.3, 1.5}
	up, err := x.ChartAt(depths, ChartCase{})
	if err != nil {
		t.Fatal(err)
	}
	down, err := x.ChartAt(depths, ChartCase{FromRim: true, Rim: 2})
	if err != nil {
		t.Fatal(err)
	}
	for i := range depths {
		a, b := up.Rows[i], down.Rows[i]
		if a.Depth != b.Depth || !(math.Abs(float64(a.Volume-b.Volume)) <= 1e-12) || !(math.Abs(float64(a.Reading+b.Reading-2)) <= 1e-12) && depths[i] != 0 {
			t.Errorf("%+v and %+v", a, b)
		}
	}
}

// Property (two ways): the line of the working, reckoned as it is printed, is the
// volume.
func TestWorkingCanBeRedone(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 96 * in, Width: 61 * in, Height: 60 * in}})
	w, err := x.Working(47*in, manway.US)
	if err != nil {
		t.Fatal(err)
	}
	product := 1.0
	for _, s := range w {
		if s.Symbol != "Vh" {
			continue
		}
		for k, f := range strings.FieldsFunc(s.Numbers, func(r rune) bool { return r == 'x' || r == '/' }) {
			v := number(t, f)
			if k == 3 {
				v = 1 / v
			}
			product *= v
		}
	}
	if got := volume(t, x, 47*in).In(manway.Gallon); !(math.Abs(product/got-1) <= 1e-9) {
		t.Errorf("the working comes to %v gal, the volume is %v", product, got)
	}
}

// Property (monotone): covers off, soil dug away and liquid pumped each leave less
// to hold the tank down.
func TestStagesGetWorse(t *testing.T) {
	x := must(t, Spec{Shape: shapes["draft"], Wall: 0.08, Roof: 0.1, Floor: 0.1})
	stages, err := x.Stages(FloatCase{Cover: 0.4, Lids: 100}, Work{Found: 1.2, Dug: 0.3, Left: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	for i := 1; i < len(stages); i++ {
		if !(stages[i].Factor < stages[i-1].Factor) {
			t.Errorf("%s: factor %v, before it %v", stages[i].Name, stages[i].Factor, stages[i-1].Factor)
		}
	}
}

// Property (monotone): more bedrooms and more flow never ask for less, and a tank
// that is large enough stays so when it is larger.
func TestCapacityRises(t *testing.T) {
	for _, s := range RuleSets() {
		for i, r := range s.Capacity {
			last := manway.Volume(0)
			for n := 1; n <= 12; n++ {
				if v, ok := r.ForBedrooms(n); ok {
					if v < last {
						t.Errorf("%s, rule %d: %d bedrooms ask for %v, one fewer for %v", s.ID, i, n, v, last)
					}
					last = v
				}
			}
		}
		passed := false
		for gallons := 200; gallons <= 4000; gallons += 50 {
			j, err := s.Judge(Facts{Bedrooms: 3, DailyFlow: 400 * manway.GallonPerDay, Liquid: manway.Volume(gallons) * manway.Gallon})
			if err != nil {
				t.Fatal(err)
			}
			pass := len(s.Capacity) > 0 && j.Checks[0].Status == manway.Pass
			if passed && !pass {
				t.Errorf("%s: %d gal are too little and less is not", s.ID, gallons)
			}
			passed = pass
		}
	}
}

// Property (scaling): twice the drop in twice the time, and twice the vacuum at
// both ends, say the same of the tank.
func TestLeakRates(t *testing.T) {
	use := func(l LeakTest) float64 {
		r, err := l.Judge()
		if err != nil {
			t.Fatal(err)
		}
		return r.Check.Demand / r.Check.Capacity
	}
	water := LeakTest{Standard: standard(t, "oregon"), Time: 24 * manway.Hour, Drop: 0.3 * in, Surface: 4 * manway.SquareFoot}
	longer := water
	longer.Time, longer.Drop = 2*water.Time, 2*water.Drop
	vacuum := LeakTest{Standard: standard(t, "washington-vacuum"), Time: 2 * manway.Minute, Start: 4 * manway.InchMercury, End: 3.5 * manway.InchMercury}
	deeper := vacuum
	deeper.Start, deeper.End = 2*vacuum.Start, 2*vacuum.End
	for _, pair := range [][2]LeakTest{{water, longer}, {vacuum, deeper}} {
		if a, b := use(pair[0]), use(pair[1]); !(math.Abs(a-b) <= 1e-12) {
			t.Errorf("%s: %v and %v", pair[0].Standard.ID, a, b)
		}
	}
}

// Property (scaling): a tank twice as large in all, with its steel, asks eight
// times the moment of its partition and its walls, from water twice as deep on
// panels twice as wide.
func TestPanelsScale(t *testing.T) {
	panels := func(size float64) (partition, wall, floor float64) {
		l := func(x float64) manway.Length { return manway.Length(x*size) * in }
		x := must(t, Spec{
			Shape: Box{Length: l(96), Width: l(60), Height: l(60)}, Wall: l(3), Roof: l(4), Floor: l(3),
			Partitions: []Partition{{At: l(48), Thickness: l(3)}},
		})
		steel := manway.Reinforcement{State: manway.SteelKnown, Diameter: l(0.25), Spacing: l(4), Cover: l(0.75), Yield: 60000 * manway.PSI}
		both := Steel{Inside: Mesh(steel), Outside: Mesh(steel)}
		p, err := x.Partition(PartitionCase{Concrete: strongConcrete, Steel: both})
		if err != nil {
			t.Fatal(err)
		}
		w, err := x.Wall(WallCase{Concrete: strongConcrete, Steel: both})
		if err != nil {
			t.Fatal(err)
		}
		f, err := x.Floor(FloorCase{Concrete: strongConcrete, Steel: both})
		if err != nil {
			t.Fatal(err)
		}
		return p.Loadings[0].Checks[0].Demand, w.Loadings[0].Checks[0].Demand, f.Loading.Checks[0].Demand
	}
	p1, w1, f1 := panels(1)
	p2, w2, f2 := panels(2)
	for name, ratio := range map[string]float64{"partition": p2 / p1, "wall": w2 / w1, "floor": f2 / f1} {
		if !(math.Abs(ratio/8-1) <= 1e-9) {
			t.Errorf("%s: moment %.9g times, want 8", name, ratio)
		}
	}
}

// Property (two ways): a round opening is as wide as an upright tank of its
// diameter, a rectangular one as a box.
func TestOpeningsAreLevels(t *testing.T) {
	for _, c := range []struct {
		opening Access
		tank    Shape
	}{
		{Access{Diameter: 0.6}, VerticalCylinder{Diameter: 0.6, Height: 1}},
		{Access{Length: 0.7, Width: 0.5}, Box{Length: 0.7, Width: 0.5, Height: 1}},
	} {
		if a, b := float64(c.opening.Area()), surface(t, must(t, Spec{Shape: c.tank}), 0.5); !(math.Abs(a/b-1) <= 1e-12) {
			t.Errorf("%+v: %v, surface of such a tank %v", c.opening, a, b)
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
