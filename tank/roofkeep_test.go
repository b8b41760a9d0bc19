package tank

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// Both ways are run where a partition was seen to touch the roof: no check may say
// less than without it, whichever check governs the loading.
func TestContactNeverHidesACheck(t *testing.T) {
	for _, size := range [][2]float64{{68, 50}, {96, 60}, {132, 73}} {
		spec := Spec{
			Shape: Box{Length: manway.Length(size[0]) * in, Width: manway.Length(size[1]) * in, Height: 50 * in}, Wall: 4 * in, Roof: 5 * in, Floor: 4 * in,
			Partitions: []Partition{{At: manway.Length(0.6*size[0]) * in, Thickness: 3 * in}},
		}
		tk, err := New(spec)
		if err != nil {
			t.Fatal(err)
		}
		c := RoofCase{
			Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.5, 6, 0.75)), Outside: Mesh(bar(0.5, 6, 0.75))},
			Now: RoofLoad{Cover: 6 * in, Wetness: DrySoil}, Wheels: []manway.Wheel{manway.PickupWheel},
		}
		alone := roofOf(t, &tk, c)
		c.Contact = []bool{true}
		touched := roofOf(t, &tk, c)
		for k, l := range alone.Loadings {
			for _, check := range l.Checks {
				if got := checkNamed(t, touched.Loadings[k].Checks, check.Name); got.Demand < 0.97*check.Demand { // coarse and fine mesh
					t.Errorf("%v, %s: %s asks %g where the partition touches, %g where not", size, l.Name, check.Name, got.Demand, check.Demand)
				}
			}
		}
	}
}

// What the theory of thin plates does not cover is not judged, and no fault.
func TestPiecesThatAreNotPlates(t *testing.T) {
	for name, c := range map[string]struct {
		box    Box
		roof   manway.Length
		joints []manway.Length
		want   string
	}{
		"an opening that ends at a joint":   {Box{Length: 100 * in, Width: 60 * in, Height: 50 * in}, 4 * in, []manway.Length{26 * in}, "reaches over a joint"},
		"a roof as thick as it is wide":     {Box{Length: 30 * in, Width: 28 * in, Height: 50 * in}, 20 * in, nil, "two thicknesses"},
		"a piece of the roof of 6 in width": {Box{Length: 100 * in, Width: 60 * in, Height: 50 * in}, 4 * in, []manway.Length{50 * in, 56 * in}, "two thicknesses"},
	} {
		tk, err := New(Spec{Shape: c.box, Wall: 3 * in, Roof: c.roof, Floor: 4 * in, Access: []Access{{Along: 14 * in, Length: 24 * in, Width: 24 * in}}})
		if err != nil {
			t.Fatal(err)
		}
		r := roofOf(t, &tk, RoofCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.5, 6, 1))}, Joints: c.joints, Wheels: []manway.Wheel{}})
		told := false
		for _, check := range r.NotJudged {
			told = told || strings.Contains(check.Reason, c.want)
		}
		if !told || r.Cover.Known || !r.Cautions.Has(manway.KeepOffRoof) {
			t.Errorf("%s: %+v", name, r.NotJudged)
		}
	}
}

// A mesh of #4 at 4 in, 1 1/4 in from the inside of a wall of 3 in, has d = 1.5 in
// where the outside is pulled: As 60 ksi/(0.85 x 4 ksi x 12) is a = 0.87 in, c =
// 1.02 in, and the concrete crushes while the steel has 0.003 (1.5 - 1.02)/1.02, below
// its yield. Such a wall does not bend before it breaks, so that the way that asks
// more is given.
func TestBrittleWall(t *testing.T) {
	push := liquidPush("liquid", float64(50*in), insideFace)
	for _, c := range []struct {
		steel manway.Reinforcement
		pick  func(a, b float64) float64
	}{{bar(0.5, 4, 1.25), math.Max}, {bar(0.25, 4, 1.25), math.Min}} {
		p, err := newPanel("wall", member{strongConcrete, 3 * in, 0, Steel{Inside: Mesh(c.steel)}}, float64(60*in), float64(50*in), [4]plate.Edge{plate.SideY1: plate.Free}, nil)
		if err != nil {
			t.Fatal(err)
		}
		turning, _ := p.way(0, push)
		held, _ := p.way(1, push)
		given, err := p.judge(push)
		if want := c.pick(turning.Use(), held.Use()); err != nil || given.Use() != want {
			t.Errorf("%v bars: Use %g, turning %g, held %g, %v", c.steel.Diameter, given.Use(), turning.Use(), held.Use(), err)
		}
	}
}
