package tank

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
)

var strongConcrete = manway.Concrete{Strength: 4000 * manway.PSI}

// longTank is so long that its walls and floor bend as strips.
func longTank(t *testing.T, wall, floor float64) *Tank {
	tk, err := New(Spec{
		Shape: Box{Length: 60 * manway.Foot, Width: 6 * manway.Foot, Height: 5 * manway.Foot},
		Wall:  manway.Length(wall) * in, Roof: 6 * in, Floor: manway.Length(floor) * in,
		Partitions: []Partition{{At: 30 * manway.Foot, Thickness: 4 * in}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return &tk
}

func checkNamed(t *testing.T, list []manway.Check, name string) manway.Check {
	t.Helper()
	for _, c := range list {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no check %q", name)
	return manway.Check{}
}

// A wall built in at its foot and free elsewhere is a cantilever: liquid to its
// head bends the foot by gamma H3/6, soil, water and a truck as their triangles
// and rectangles do.
func TestWallLoadsOnACantilever(t *testing.T) {
	tk := longTank(t, 6, 6)
	g, _ := tk.groundRound(manway.Soil{Moist: 120 * manway.PoundPerCubicFoot, Saturated: 130 * manway.PoundPerCubicFoot, Friction: 30 * manway.Degree},
		manway.GroundwaterAt(3*manway.Foot), 0)
	g.surcharge = float64(240 * manway.PSF)
	slab := plate.Slab{Length: 1, Width: float64(5 * manway.Foot), Thickness: 0.15, E: 25e9, Edges: [4]plate.Edge{plate.Clamped, plate.Free, plate.Free, plate.Free}}
	var s plate.Solver
	if err := s.Factor(&slab, plate.Mesh{}); err != nil {
		t.Fatal(err)
	}
	foot := func(b pushed) float64 {
		var f plate.Field
		if err := s.Solve(&f, b.loads(1)); err != nil {
			t.Fatal(err)
		}
		v, _ := f.At(0.5, 1e-6)
		return -v.M.Y / float64(manway.PoundForce)
	}
	// grade stands 5.5 ft over the floor, water 2.5 ft, K0 = 1 - sin 30 = 0.5
	soil := 0.0
	const n = 4000
	for i := range n {
		y := 5 * (float64(i) + 0.5) / n
		p := 0.5 * 120 * (5.5 - y)
		if y < 2.5 {
			p = 0.5*(120*3+(130-62.4)*(2.5-y)) + 62.4*(2.5-y)
		}
		soil += p * y * 5 / n
	}
	for _, c := range []struct {
		name string
		got  float64
		want float64
	}{
		{"liquid", foot(liquidPush("", float64(5*manway.Foot), outsideFace)), 62.4 * 125 / 6},
		{"difference of 2 ft", foot(differencePush(float64(5*manway.Foot), float64(2*manway.Foot), outsideFace)), 62.4 * (125 - 27) / 6},
		{"soil and water", foot(g.push("", false, 0)), soil},
		{"truck", foot(g.push("", true, 0)), soil + 0.5*240*25/2},
	} {
		if !(math.Abs(c.got/c.want-1) <= 0.005) {
			t.Errorf("%s: %g lbf ft/ft, cantilever %g", c.name, c.got, c.want)
		}
	}
}

// Package soil gives the same thrust for the same ground.
func TestWallLoadsAreTheGround(t *testing.T) {
	tk := roofTank(t)
	s := manway.Soil{Moist: 115 * manway.PoundPerCubicFoot, Saturated: 128 * manway.PoundPerCubicFoot, Friction: 32 * manway.Degree}
	g, _ := tk.groundRound(s, manway.GroundwaterAt(2*manway.Foot), 1*manway.Foot)
	thrust, err := soil.Ground{Layers: []soil.Layer{{Soil: s}}, HasWater: true, Water: 2 * manway.Foot}.Thrust(16*in, 76*in)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	height := float64(60 * in)
	for _, l := range g.push("", false, 0).loads(1) {
		w := l.(plate.Liquid)
		low, high := w.Level, math.Max(w.Level-height, 0)
		sum += w.UnitWeight * (low*low - high*high) / 2
	}
	if !(math.Abs(sum/float64(thrust.Force)-1) <= 1e-12) {
		t.Errorf("loads %g N/m, ground %g", sum, float64(thrust.Force))
	}
}

// Property (inverse): the height of groundwater found is the one at which Use
// is 1.
func TestWallGroundwaterLimit(t *testing.T) {
	tk := roofTank(t)
	c := WallCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.192, 4, 0.5)), Outside: Mesh(bar(0.192, 4, 0.5))}, TopHeld: true,
		Soil: manway.Soil{Moist: 90 * manway.PoundPerCubicFoot, Friction: 35 * manway.Degree}}
	w, err := tk.Wall(c)
	if err != nil {
		t.Fatal(err)
	}
	if w.Groundwater.State != LimitAt {
		t.Fatalf("limit %+v", w.Groundwater)
	}
	grade := tk.Inside.Height + tk.Spec.Roof
	c.Groundwater = manway.GroundwaterAt(grade - w.Groundwater.At)
	at, err := tk.Wall(c)
	if err != nil {
		t.Fatal(err)
	}
	use := math.Max(at.Loadings[1].Use(), at.Loadings[4].Use())
	if !(math.Abs(use-1) <= 0.01) {
		t.Errorf("at the limit of %v Use is %g", w.Groundwater.At, use)
	}
	if !w.Assumed.Has(manway.AssumedGroundwaterAtGrade) || at.Assumed.Has(manway.AssumedGroundwaterAtGrade) || !w.Cautions.Has(manway.GroundwaterUnknown|manway.DoNotEmpty|manway.RememberedFigure) {
		t.Errorf("assumed %v, cautions %v", w.Assumed.List(), w.Cautions)
	}
}

// Unknown steel shows no wall, partition or floor to stand, and says so.
func TestWallUnknown(t *testing.T) {
	tk := roofTank(t)
	w, err := tk.Wall(WallCase{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := tk.Partition(PartitionCase{})
	if err != nil {
		t.Fatal(err)
	}
	f, err := tk.Floor(FloorCase{})
	if err != nil {
		t.Fatal(err)
	}
	for _, list := range [][]manway.Check{w.Checks(), p.Checks(), f.Checks()} {
		for _, c := range list {
			if c.Status != manway.NotShown && c.Status != manway.NotJudged {
				t.Errorf("%s is %v", c.Name, c.Status)
			}
			if c.Reason == "" {
				t.Errorf("%s gives no reason", c.Name)
			}
		}
	}
	if w.Groundwater.State != LimitUnknown || p.Difference.State != LimitUnknown || f.Groundwater.State != LimitUnknown || w.Governs != -1 {
		t.Errorf("limits %v, %v, %v", w.Groundwater.State, p.Difference.State, f.Groundwater.State)
	}
	if !strings.Contains(p.Order, "nearly equal") {
		t.Errorf("order %q", p.Order)
	}
}

// A partition too thin for a full difference of levels gets the difference at
// which its Use is 1.
func TestPartitionDifference(t *testing.T) {
	tk := roofTank(t)
	wire := bar(0.17, 4, 0.9)
	wire.Yield = 24000 * manway.PSI
	c := PartitionCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(wire)}}
	p, err := tk.Partition(c)
	if err != nil {
		t.Fatal(err)
	}
	if p.Difference.State != LimitAt || !(p.Difference.At > 0 && p.Difference.At < p.Liquid) {
		t.Fatalf("difference %+v of %v", p.Difference, p.Liquid)
	}
	if p.Loadings[p.Governs].Status() != manway.Fail || !strings.Contains(p.Order, "never more than") {
		t.Errorf("%v, %q", p.Loadings[p.Governs].Status(), p.Order)
	}
	if !p.Cautions.Has(manway.UnequalLevels | manway.Screening) {
		t.Errorf("cautions %v", p.Cautions)
	}
}

// Property (two ways): a long floor is a strip between its walls: net uplift w bends it by w L2/8
// where it turns freely and by w L2/12 at the walls where it does not.
func TestFloorIsAStrip(t *testing.T) {
	tk := longTank(t, 6, 6)
	f, err := tk.Floor(FloorCase{Concrete: strongConcrete, Steel: Steel{Inside: Mesh(bar(0.625, 6, 1.5)), Outside: Mesh(bar(0.625, 6, 1.5))}})
	if err != nil {
		t.Fatal(err)
	}
	net := 62.4*(5+0.5+0.5) - 67.5 // water at grade 5.5 ft over a floor of 0.5 ft at 135 lb/ft3
	span := 6.5
	p, err := newPanel("floor", member{strongConcrete, 6 * in, 0, f.Case.Steel}, float64(60*manway.Foot+6*in), float64(6*manway.Foot+6*in), [4]plate.Edge{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	push := pushed{name: "net", far: insideFace, factor: 1, loads: func(float64) []plate.Load {
		return []plate.Load{plate.Uniform{Pressure: net * float64(manway.PSF)}}
	}}
	for i, c := range []struct {
		face string
		want float64
	}{{"bending, inside face", net * span * span / 8}, {"bending, outside face", net * span * span / 12}} {
		l, err := p.way(i, push)
		if err != nil {
			t.Fatal(err)
		}
		if got := checkNamed(t, l.Checks, c.face).Demand / float64(manway.PoundForce); !(math.Abs(got/c.want-1) <= 0.02) {
			t.Errorf("edges %s: %g lbf ft/ft, strip %g", l.Edges, got, c.want)
		}
	}
	// the one that asks less is given
	turning, _ := p.way(0, push)
	held, _ := p.way(1, push)
	given, err := p.judge(push)
	if err != nil || given.Use() != math.Min(turning.Use(), held.Use()) {
		t.Errorf("given %g, turning %g, held %g, %v", given.Use(), turning.Use(), held.Use(), err)
	}
	if got := float64(f.Uplift-f.Weight) / float64(manway.PSF); !(math.Abs(got/net-1) <= 1e-9) {
		t.Errorf("net uplift %g lbf/ft2, by hand %g", got, net)
	}
	dry, err := tk.Floor(FloorCase{Concrete: strongConcrete, Groundwater: manway.GroundwaterAt(20 * manway.Foot)})
	if err != nil {
		t.Fatal(err)
	}
	if dry.Loading.Status() != manway.Pass || dry.Uplift != 0 {
		t.Errorf("no groundwater: %v, uplift %v", dry.Loading.Status(), dry.Uplift)
	}
}

func TestWallsRefuse(t *testing.T) {
	tk := roofTank(t)
	nan := manway.Length(math.NaN())
	_, err1 := tk.Wall(WallCase{Loss: 9 * in, Cover: nan, Liquid: 99 * manway.Foot, Vehicle: Vehicle{Distance: -1}, Braced: make([]bool, 4)})
	_, err2 := tk.Partition(PartitionCase{Partition: 3, Liquid: nan})
	_, err3 := tk.Floor(FloorCase{Loss: nan, Cover: -1})
	for i, want := range []int{5, 2, 2} {
		faults, ok := []error{err1, err2, err3}[i].(manway.InputErrors)
		if !ok || len(faults) != want {
			t.Errorf("%d: %v, want %d faults", i, faults, want)
		}
	}
}

func BenchmarkWalls(b *testing.B) {
	tk := roofTank(b)
	steel := Steel{Inside: Mesh(bar(0.375, 6, 1))}
	b.Run("wall", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := tk.Wall(WallCase{Concrete: strongConcrete, Steel: steel}); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("partition", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := tk.Partition(PartitionCase{Concrete: strongConcrete, Steel: steel}); err != nil {
				b.Fatal(err)
			}
		}
	})
}
