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

// A tire half over an opening, the lid handing its half to the rim, bends the roof
// more than one beside the opening: the place that is told does no less than one
// on the middle of any side of it.
func TestHalfOverAnOpening(t *testing.T) {
	for _, a := range []Access{
		{Along: 44 * in, Across: 6 * in, Length: 22 * in, Width: 18 * in},
		{Along: 30 * in, Length: 24 * in, Width: 24 * in},
		{Along: 60 * in, Length: 24 * in, Width: 20 * in},
		{Along: 60 * in, Across: -14 * in, Length: 20 * in, Width: 20 * in},
		{Along: 80 * in, Across: 10 * in, Length: 16 * in, Width: 24 * in},
	} {
		halfOver(t, a)
	}
}

func halfOver(t *testing.T, a Access) {
	t.Helper()
	tk, err := New(Spec{Shape: Box{Length: 120 * in, Width: 54 * in, Height: 50 * in}, Wall: 4 * in, Roof: 5 * in, Floor: 4 * in, Access: []Access{a}})
	if err != nil {
		t.Fatal(err)
	}
	c := RoofCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.5, 6, 0.75))}, Wheels: []manway.Wheel{manway.TruckWheel}}
	r := roofOf(t, &tk, c)
	pieces, err := tk.pieces(&c)
	if err != nil {
		t.Fatal(err)
	}
	p := &pieces[0]
	m, err := movingOf(manway.TruckWheel, 0)
	if err != nil {
		t.Fatal(err)
	}
	rest := tk.resting(p, c.Now, &c)
	var s plate.Solver
	if err := s.Factor(&p.slab, plate.Mesh{Scale: 1}); err != nil {
		t.Fatal(err)
	}
	o := p.slab.Openings[0]
	for _, at := range []plate.Point{
		{X: o.X - 1e-3, Y: o.Y + o.Width/2}, {X: o.X + o.Length + 1e-3, Y: o.Y + o.Width/2},
		{X: o.X + o.Length/2, Y: o.Y - 1e-3}, {X: o.X + o.Length/2, Y: o.Y + o.Width + 1e-3},
	} {
		for _, turned := range []bool{false, true} {
			var f plate.Field
			if err := s.Solve(&f, m.put(rest.loads(1.2), &p.slab, standing{at, turned}, 1.6)); err != nil {
				t.Fatal(err)
			}
			here := pulls(&f, &p.strength, nil, insideFace, p.overPartition)[insideFace][0].use
			if told := r.Loadings[3].use; told < 0.95*here {
				t.Errorf("%v by %v: at %v, turned %v, Use %g; told is %g", a.Length, a.Width, at, turned, here, told)
			}
		}
	}
}
