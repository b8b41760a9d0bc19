package tank

import (
	"errors"
	"math"
	"strings"
	"testing"

	"manway.example/manway"
)

// All faults of a Spec come at once, each by its own path.
func TestNewRefuses(t *testing.T) {
	nan := manway.Length(math.NaN())
	for _, c := range []struct {
		name   string
		spec   Spec
		fields string
	}{
		{"nothing", Spec{}, "Shape"},
		{"sizes", Spec{Shape: Box{Length: nan, Width: -1, Height: 1e6}}, "Shape.Length Shape.Width Shape.Height"},
		{"floor", Spec{Shape: Box{Length: 2, Width: 1, Height: 1, FloorLength: 2.1, FloorWidth: 0.3}}, "Shape.FloorLength Shape.FloorWidth"},
		{"fillet", Spec{Shape: Box{Length: 2, Width: 1, Height: 1, Fillet: 0.6}}, "Shape.Fillet"},
		{"fillet over height", Spec{Shape: Box{Length: 2, Width: 2, Height: 0.4, Fillet: 0.5}}, "Shape.Fillet"},
		{"heads", Spec{Shape: HorizontalCylinder{1.5, 2, Head{Form: 9}, Head{Form: Torispherical, Crown: 0.5, Knuckle: 0.9}}}, "Shape.Inlet.Form Shape.Outlet.Crown Shape.Outlet.Knuckle"},
		{"partitions", Spec{Shape: shapes["box"], Partitions: []Partition{{At: 2, Thickness: 0.1}, {At: 1, Thickness: 0.1, Height: 3}}}, "Partitions[1].At Partitions[1].Height"},
		{"four partitions", Spec{Shape: shapes["box"], Partitions: make([]Partition, 4)}, "Partitions"},
		{"partition under the draft", Spec{Shape: shapes["draft"], Partitions: []Partition{{At: 0.05, Thickness: 0.1}}}, "Partitions[0].At"},
		{"not prismatic", Spec{Shape: shapes["frustum"], Partitions: []Partition{{At: 0.5, Thickness: 0.1}}}, "Partitions"},
		{"inverts", Spec{Shape: shapes["box"], InletInvert: 2, OutletInvert: -1}, "InletInvert OutletInvert"},
		{"access", Spec{Shape: shapes["box"], Access: []Access{{Compartment: 1, Along: 9, Across: 1, Diameter: 0.5}, {}}}, "Access[0].Compartment Access[0].Along Access[0].Across Access[1].Length Access[1].Width"},
		{"outside", Spec{Shape: shapes["box"], OutsideSizes: true, Wall: 0.1}, "Roof Floor"},
		{"thick walls", Spec{Shape: Box{Length: 1, Width: 1, Height: 1}, OutsideSizes: true, Wall: 0.48, Roof: 0.1, Floor: 0.1}, "Shape.Length Shape.Width"},
		{"outside of a survey", Spec{Shape: shapes["areas"], OutsideSizes: true, Wall: 0.1, Roof: 0.1, Floor: 0.1}, "OutsideSizes"},
		{"survey", Spec{Shape: Surveyed{Areas: []AreaAt{{0.1, 1}, {0.1, -1}}}}, "Shape.Areas[0].Depth Shape.Areas[1].Depth Shape.Areas[1].Area"},
		{"survey of both", Spec{Shape: Surveyed{Areas: []AreaAt{{0, 1}, {1, 1}}, Volumes: []VolumeAt{{0, 0}, {1, 1}}}}, "Shape.Areas"},
		{"falling volumes", Spec{Shape: Surveyed{Volumes: []VolumeAt{{0, 0}, {1, 2}, {2, 1}}}}, "Shape.Volumes[2].Volume"},
		{"nominal", Spec{Shape: Nominal{Volume: 1, Depth: 0}}, "Shape.Depth"},
		{"material and mass", Spec{Shape: shapes["box"], Material: 9, EmptyMass: 1}, "EmptyMass Material"},
	} {
		_, err := New(c.spec)
		var faults manway.InputErrors
		if !errors.As(err, &faults) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		var got []string
		for _, f := range faults {
			got = append(got, f.Field)
		}
		for _, want := range strings.Fields(c.fields) {
			found := false
			for _, g := range got {
				found = found || g == want
			}
			if !found {
				t.Errorf("%s: no fault for %s in %v", c.name, want, got)
			}
		}
		if len(got) != len(strings.Fields(c.fields)) {
			t.Errorf("%s: faults %v, want %s", c.name, got, c.fields)
		}
	}
}

func TestArgumentsAreRefused(t *testing.T) {
	x := must(t, Spec{Shape: shapes["box"]})
	c := &x.Compartments()[0]
	for _, d := range []manway.Length{-1e-9, x.Inside.Height + 1e-9, manway.Length(math.NaN()), manway.Length(math.Inf(1))} {
		for what, err := range map[string]error{
			"Volume": second(x.Volume(d)), "Area": second(x.Area(d)), "compartment": second(c.Volume(d)), "compartment area": second(c.Area(d)),
			"Depth": second(x.Depth(manway.Volume(d) * 10)), "compartment depth": second(c.Depth(manway.Volume(d) * 10)), "PerUnit": second(x.PerUnit(d, manway.Inch)),
		} {
			if err == nil {
				t.Errorf("%s of %v was given", what, float64(d))
			}
		}
	}
	var zero Tank
	var none Compartment
	for what, err := range map[string]error{
		"Volume": second(zero.Volume(0)), "Area": second(zero.Area(0)), "Depth": second(zero.Depth(0)), "compartment": second(none.Volume(0)),
		"ShellWeight": second(zero.ShellWeight(manway.Concrete{})), "Float": second(zero.Float(FloatCase{})), "WaterLimit": second(zero.WaterLimit(FloatCase{})),
		"Chart": second(zero.Chart(ChartCase{Step: 1})), "ChartAt": second(zero.ChartAt(nil, ChartCase{})), "Stages": second(zero.Stages(FloatCase{}, Work{})),
	} {
		if err == nil {
			t.Errorf("%s of no tank was given", what)
		}
	}
	if v, known := zero.AtOutlet(); known || v != 0 || len(zero.Compartments()) != 0 {
		t.Error("no tank has an outlet or compartments")
	}
	if v, known := x.AtOutlet(); known || v != 0 {
		t.Errorf("without an outlet invert %v stand at the outlet, known %v", v, known)
	}
}

func second[A any](_ A, err error) error { return err }

// What the caller does to its own Spec afterwards changes nothing.
func TestSpecIsCopied(t *testing.T) {
	parts := []Partition{{At: 1, Thickness: 0.1}}
	x := must(t, Spec{Shape: shapes["box"], Partitions: parts})
	before := x.liquid(1)
	parts[0].At, parts[0].Thickness = 0.2, 0.5
	x.Spec.Partitions[0].At = 0.3
	if x.liquid(1) != before || x.Compartments()[0].To != 1 {
		t.Error("the tank changed with the caller's list")
	}
}

// Property (two ways): inside sizes, and outside sizes with walls, tell of the
// same tank.
func TestOutsideSizes(t *testing.T) {
	for name, s := range shapes {
		if _, ok := s.(Surveyed); ok {
			continue
		}
		const wall, roof, floor = 0.08, 0.1, 0.12
		spec := Spec{Shape: s.shrunk(-wall, -roof/2, -floor/2), OutsideSizes: true, Wall: wall, Roof: roof / 2, Floor: floor / 2}
		x, y := must(t, Spec{Shape: s}), must(t, spec)
		if !(math.Abs(x.full-y.full) <= 1e-12*x.full) || !(math.Abs(float64(x.Inside.Height-y.Inside.Height)) <= 1e-12) {
			t.Errorf("%s: inside %v, from outside %v", name, x.full, y.full)
		}
	}
}

// Property (bounded): the range holds the volume and is wider where less is known.
func TestRange(t *testing.T) {
	in := manway.Inch
	inside := must(t, Spec{Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60 * in}})
	outside := must(t, Spec{Shape: Box{Length: 102 * in, Width: 66 * in, Height: 67 * in}, OutsideSizes: true, Wall: 3 * in, Roof: 4 * in, Floor: 3 * in})
	width := func(x Tank) float64 {
		low, high, known, err := x.Range(48 * in)
		v := volume(t, x, 48*in)
		if err != nil || !known || !(low < v && v < high) {
			t.Fatalf("%v to %v around %v: %v, %v", low, high, v, known, err)
		}
		return (high - low).In(manway.Gallon)
	}
	if got, want := width(inside), (96.5*60.5-95.5*59.5)*48/231; !(math.Abs(got-want) <= 1e-6) {
		t.Errorf("inside: %v gal wide, want %v", got, want)
	}
	if a, b := width(inside), width(outside); !(b > 2*a) {
		t.Errorf("outside %v gal wide, inside %v", b, a)
	}
	survey := must(t, Spec{Shape: shapes["areas"]})
	if _, _, known, err := survey.Range(1); known || err != nil {
		t.Errorf("a survey has a range: %v", err)
	}
}

// Property (inverse): the survey holds at each level read what the truck took
// below it.
func TestFromDrops(t *testing.T) {
	in, gal := manway.Inch, manway.Gallon
	s, err := FromDrops(48*in, []Drop{{0, 0}, {12 * in, 250 * gal}, {30 * in, 610 * gal}, {48 * in, 1000 * gal}})
	if err != nil {
		t.Fatal(err)
	}
	x := must(t, Spec{Shape: s})
	for depth, want := range map[manway.Length]float64{0: 0, 18 * in: 390, 36 * in: 750, 48 * in: 1000} {
		if got := volume(t, x, depth).In(gal); !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("at %v: %v gal, want %v", depth, got, want)
		}
	}
	if later, err := FromDrops(48*in, []Drop{{12 * in, 250 * gal}, {48 * in, 1000 * gal}}); err != nil || len(later.Volumes) != 3 {
		t.Errorf("first reading below the start: %+v, %v", later, err)
	}
	for name, drops := range map[string][]Drop{
		"one": {{0, 0}}, "not to the floor": {{0, 0}, {40 * in, 900 * gal}}, "upwards": {{0, 0}, {30 * in, 600 * gal}, {20 * in, 700 * gal}, {48 * in, 1000 * gal}},
		"falling gauge": {{0, 0}, {30 * in, 1200 * gal}, {48 * in, 1000 * gal}}, "nan": {{0, manway.Volume(math.NaN())}, {48 * in, 1000 * gal}},
	} {
		if s, err := FromDrops(48*in, drops); err == nil {
			t.Errorf("%s: taken, %+v", name, s)
		}
	}
}

// Property (additive): each row has the volume at its depth, and the compartments
// sum up to it.
func TestChart(t *testing.T) {
	in := manway.Inch
	x := must(t, Spec{Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60.5 * in}, Partitions: []Partition{{At: 62 * in, Thickness: 3 * in}}})
	up, err := x.Chart(ChartCase{Step: in})
	if err != nil || len(up.Rows) != 62 || up.Rows[0].Depth != 0 || up.Rows[61].Depth != 60.5*in {
		t.Fatalf("%d rows, %v", len(up.Rows), err)
	}
	down, err := x.Chart(ChartCase{Step: in / 4, FromRim: true, Rim: 80 * in})
	if err != nil || len(down.Rows) != 60*4+3 {
		t.Fatalf("%d rows, %v", len(down.Rows), err)
	}
	for _, row := range append(up.Rows, down.Rows...) {
		if v := volume(t, x, row.Depth); v != row.Volume {
			t.Errorf("at %v: %v, volume %v", row.Depth, row.Volume, v)
		}
		if sum := row.Compartments[0] + row.Compartments[1]; !(math.Abs(float64(sum-row.Volume)) <= 1e-12) {
			t.Errorf("at %v: compartments %v of %v", row.Depth, sum, row.Volume)
		}
	}
	first, last := down.Rows[0], down.Rows[len(down.Rows)-1]
	if !(math.Abs(float64(first.Reading-19.5*in)) <= 1e-12) || last.Depth != 0 {
		t.Errorf("from %v to depth %v", first.Reading, last.Depth)
	}
	if cm, err := x.Chart(ChartCase{Step: manway.Centimetre}); err != nil || len(cm.Rows) != 155 {
		t.Errorf("%d rows by the centimetre, %v", len(cm.Rows), err)
	}
	if gal, err := x.PerUnit(30*in, in); err != nil || !(math.Abs(gal.In(manway.Gallon)-93*60.0/231) <= 1e-9) {
		t.Errorf("%v an inch, %v", gal, err)
	}
	for _, c := range []ChartCase{{}, {Step: -1}, {Step: manway.Length(math.NaN())}, {Step: in, Rim: 90 * in}, {Step: in, FromRim: true, Rim: 50 * in}, {Step: 70 * in}} {
		if _, err := x.Chart(c); err == nil {
			t.Errorf("%+v was taken", c)
		}
	}
}

func TestFacts(t *testing.T) {
	in := manway.Inch
	x := must(t, Spec{Shape: Box{Length: 96 * in, Width: 48 * in, Height: 60 * in}, OutletInvert: 48 * in, InletInvert: 51 * in, Wall: 3 * in,
		Partitions: []Partition{{At: 62 * in, Thickness: 3 * in}}, Access: []Access{{Along: 10 * in, Diameter: 24 * in}, {Along: 50 * in, Length: 20 * in, Width: 18 * in}}})
	f := x.Facts()
	near := func(m manway.Reading, want manway.Length) bool {
		return m.Taken && math.Abs(float64(m.Length-want)) < 1e-12
	}
	if !near(f.LiquidDepth, 48*in) || !near(f.AirSpace, 12*in) || !near(f.Drop, 3*in) || !near(f.AccessSize, 18*in) || !near(f.WallThickness, 3*in) {
		t.Errorf("%+v", f)
	}
	if f.RoofThickness.Taken || f.Compartments != 2 || f.LengthToWidth != 2 || f.Form != PlumbWalls {
		t.Errorf("%+v", f)
	}
	if !(math.Abs(float64(f.FirstLiquid/f.Liquid)-62.0/93) <= 1e-12) {
		t.Errorf("share %v", f.FirstLiquid/f.Liquid)
	}
	unknown := must(t, Spec{Shape: shapes["areas"]})
	if f := unknown.Facts(); f.Liquid != 0 || f.LiquidDepth.Taken || f.Form != AnyForm || f.WallThickness.Taken {
		t.Errorf("%+v", f)
	}
}
