package tank

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"manway.example/manway"
)

// shapes are tanks of every kind, none of them with sizes that hide a mistake.
var shapes = map[string]Shape{
	"box":         Box{Length: 2.5, Width: 1.4, Height: 1.6},
	"draft":       Box{Length: 2.5, Width: 1.4, Height: 1.6, FloorLength: 2.3, FloorWidth: 1.3},
	"fillet":      Box{Length: 2.5, Width: 1.4, Height: 1.6, Fillet: 0.15},
	"draftfillet": Box{Length: 2.5, Width: 1.4, Height: 1.6, FloorLength: 2.2, FloorWidth: 1.35, Fillet: 0.2},
	"upright":     VerticalCylinder{Diameter: 1.7, Height: 1.5},
	"flat":        HorizontalCylinder{Diameter: 1.5, Length: 2.6},
	"round":       HorizontalCylinder{1.5, 2.6, Head{Form: Hemispherical}, Head{Form: Hemispherical}},
	"elliptic":    HorizontalCylinder{1.5, 2.6, Head{Form: Ellipsoidal}, Head{Form: Ellipsoidal, Depth: 0.3}},
	"capped":      HorizontalCylinder{1.5, 2.6, Head{Form: SphericalCap, Depth: 0.2}, Head{Form: SphericalCap, Depth: 0.5}},
	"dished":      HorizontalCylinder{1.5, 2.6, Head{Form: Torispherical, Crown: 1.5, Knuckle: 0.09}, Head{Form: Torispherical, Crown: 1.2, Knuckle: 0.15}},
	"mixed":       HorizontalCylinder{1.5, 2.6, Head{}, Head{Form: Torispherical, Crown: 1.5, Knuckle: 0.2}},
	"oval":        HorizontalEllipse{Width: 1.9, Height: 1.3, Length: 2.4},
	"frustum":     Frustum{BottomDiameter: 1.2, TopDiameter: 1.8, Height: 1.4},
	"cone down":   Frustum{BottomDiameter: 1.8, TopDiameter: 1.2, Height: 1.4},
	"sphere":      Sphere{Diameter: 1.6},
	"areas":       Surveyed{Areas: []AreaAt{{0, 2}, {0.4, 2.5}, {1, 2.7}, {1.3, 1.9}}},
	"volumes":     Surveyed{Volumes: []VolumeAt{{0, 0}, {0.3, 0.7}, {0.9, 2.4}, {1.3, 3.1}}},
}

// Property (two ways): the volume is the integral of the surface; it begins at
// nothing and grows.
func TestVolumeIsIntegralOfArea(t *testing.T) {
	for name, s := range shapes {
		x := must(t, Spec{Shape: s})
		if v := volume(t, x, 0); v != 0 {
			t.Errorf("%s: %v at depth 0", name, v)
		}
		last := 0.0
		for i := 1; i <= 16; i++ {
			d := x.height * float64(i) / 16
			v := float64(volume(t, x, manway.Length(d)))
			if !(v > last) {
				t.Errorf("%s: %v at %v after %v", name, v, d, last)
			}
			// z = d sin^2 takes the root out of round bottoms; the breaks of a
			// survey or a fillet are left to many short pieces.
			sum, pieces := 0.0, 400
			for k := range pieces {
				a, b := float64(k)/float64(pieces)*math.Pi/2, float64(k+1)/float64(pieces)*math.Pi/2
				sum += quad.Fixed(func(p float64) float64 {
					return surface(t, x, d*math.Sin(p)*math.Sin(p)) * 2 * d * math.Sin(p) * math.Cos(p)
				}, a, b, 8, nil, 0)
			}
			limit := 3e-9
			if _, ok := s.(Surveyed); ok {
				limit = 1e-7 // its surface has bends
			}
			if !(math.Abs(sum-v) <= limit*x.full) {
				t.Errorf("%s: integral of the surface to %v is %.12g, volume %.12g", name, d, sum, v)
			}
			last = v
		}
	}
}

// Property (inverse): the depth for a volume holds that volume.
func TestDepthInvertsVolume(t *testing.T) {
	for name, s := range shapes {
		x := must(t, Spec{Shape: s})
		for i := range 1001 {
			v := x.full * float64(i) / 1000
			d, err := x.Depth(manway.Volume(v))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if back := x.liquid(float64(d)); !(math.Abs(back-v) <= 1e-12*x.full) {
				t.Errorf("%s: depth %v of %v holds %v", name, float64(d), v, back)
			}
		}
		for _, v := range []float64{1e-18, 1e-12, 1e-6, 1 - 1e-6, 1 - 1e-12, 1 - 1e-16} {
			d, err := x.Depth(manway.Volume(v * x.full))
			if back := x.liquid(float64(d)); err != nil || !(math.Abs(back-v*x.full) <= 1e-12*x.full) {
				t.Errorf("%s: %v of full: depth %v, %v back, %v", name, v, float64(d), back/x.full, err)
			}
		}
	}
}

// Property (scaling): twice the size holds eight times as much.
func TestScaling(t *testing.T) {
	for name, s := range shapes {
		x := must(t, Spec{Shape: s})
		y := must(t, Spec{Shape: twice(s)})
		for i := 1; i < 10; i++ {
			d := x.height * float64(i) / 10
			if got, want := float64(volume(t, y, manway.Length(2*d))), 8*float64(volume(t, x, manway.Length(d))); !(math.Abs(got-want) <= 1e-12*y.full) {
				t.Errorf("%s at %v: %v, want %v", name, d, got, want)
			}
		}
	}
}

func twice(s Shape) Shape {
	switch s := s.(type) {
	case Box:
		return Box{2 * s.Length, 2 * s.Width, 2 * s.Height, 2 * s.FloorLength, 2 * s.FloorWidth, 2 * s.Fillet}
	case VerticalCylinder:
		return VerticalCylinder{2 * s.Diameter, 2 * s.Height}
	case HorizontalCylinder:
		head := func(h Head) Head { return Head{h.Form, 2 * h.Depth, 2 * h.Crown, 2 * h.Knuckle} }
		return HorizontalCylinder{2 * s.Diameter, 2 * s.Length, head(s.Inlet), head(s.Outlet)}
	case HorizontalEllipse:
		return HorizontalEllipse{2 * s.Width, 2 * s.Height, 2 * s.Length}
	case Frustum:
		return Frustum{2 * s.BottomDiameter, 2 * s.TopDiameter, 2 * s.Height}
	case Sphere:
		return Sphere{2 * s.Diameter}
	case Surveyed:
		var big Surveyed
		for _, l := range s.Areas {
			big.Areas = append(big.Areas, AreaAt{2 * l.Depth, 4 * l.Area})
		}
		for _, l := range s.Volumes {
			big.Volumes = append(big.Volumes, VolumeAt{2 * l.Depth, 8 * l.Volume})
		}
		return big
	}
	return nil
}

// Property (symmetric): a lying tank and a sphere hold as much below a level as
// above its mirror.
func TestSymmetry(t *testing.T) {
	for _, name := range []string{"flat", "round", "elliptic", "capped", "dished", "mixed", "oval", "sphere"} {
		x := must(t, Spec{Shape: shapes[name]})
		for i := range 50 {
			d := x.height * float64(i) / 99
			if sum := x.liquid(d) + x.liquid(x.height-d); !(math.Abs(sum-x.full) <= 1e-13*x.full) {
				t.Errorf("%s: %v and its mirror hold %v of %v", name, d, sum, x.full)
			}
			if a, b := surface(t, x, d), surface(t, x, x.height-d); !(math.Abs(a-b) <= 1e-12*a+1e-14) {
				t.Errorf("%s: surface %v at %v, %v at its mirror", name, a, d, b)
			}
		}
	}
}

// Shapes that meet each other in a limit agree there.
func TestLimits(t *testing.T) {
	r := manway.Length(0.75)
	body := func(h Head) Shape { return HorizontalCylinder{2 * r, 2.6, h, h} }
	for _, c := range []struct {
		name string
		a, b Shape
		off  float64
	}{
		{"ellipsoid of depth r is a hemisphere", body(Head{Form: Ellipsoidal, Depth: r}), body(Head{Form: Hemispherical}), 1e-15},
		{"cap of depth r is a hemisphere", body(Head{Form: SphericalCap, Depth: r}), body(Head{Form: Hemispherical}), 1e-14},
		{"cap near depth r", body(Head{Form: SphericalCap, Depth: r * (1 - 1e-9)}), body(Head{Form: Hemispherical}), 1e-8},
		{"crown of radius r is a hemisphere", body(Head{Form: Torispherical, Crown: r, Knuckle: 0.1}), body(Head{Form: Hemispherical}), 1e-14},
		{"crown near radius r", body(Head{Form: Torispherical, Crown: r * (1 + 1e-9), Knuckle: 0.1}), body(Head{Form: Hemispherical}), 1e-4},
		{"knuckle of radius r is a hemisphere", body(Head{Form: Torispherical, Crown: 2 * r, Knuckle: r}), body(Head{Form: Hemispherical}), 1e-14},
		{"knuckle of almost nothing is a cap", body(Head{Form: Torispherical, Crown: 2 * r, Knuckle: r * 1e-6}), body(Head{Form: SphericalCap, Depth: r * (2 - manway.Length(math.Sqrt(3)))}), 1e-5},
		{"shallow cap is flat", body(Head{Form: SphericalCap, Depth: r * 1e-6}), body(Head{}), 1e-6},
		{"even frustum is a cylinder", Frustum{1.5, 1.5, 1.2}, VerticalCylinder{1.5, 1.2}, 1e-15},
		{"round oval is a cylinder", HorizontalEllipse{1.5, 1.5, 2.6}, HorizontalCylinder{Diameter: 1.5, Length: 2.6}, 1e-15},
		{"box turned by 90 degrees", Box{Length: 2.5, Width: 1.4, Height: 1.6, FloorLength: 2.2, FloorWidth: 1.35, Fillet: 0.2},
			Box{Length: 1.4, Width: 2.5, Height: 1.6, FloorLength: 1.35, FloorWidth: 2.2, Fillet: 0.2}, 1e-14},
		{"box without draft", Box{Length: 2.5, Width: 1.4, Height: 1.6, FloorLength: 2.5, FloorWidth: 1.4 * (1 - 1e-12)}, Box{Length: 2.5, Width: 1.4, Height: 1.6}, 1e-11},
		{"small fillet", Box{Length: 2.5, Width: 1.4, Height: 1.6, Fillet: 1e-5}, Box{Length: 2.5, Width: 1.4, Height: 1.6}, 1e-9},
		{"survey of a box", Surveyed{Areas: []AreaAt{{0, 3.5}, {0.7, 3.5}, {1.6, 3.5}}}, Box{Length: 2.5, Width: 1.4, Height: 1.6}, 1e-14},
		{"gauge on a box", Surveyed{Volumes: []VolumeAt{{0, 0}, {0.7, 2.45}, {1.6, 5.6}}}, Box{Length: 2.5, Width: 1.4, Height: 1.6}, 1e-14},
	} {
		x, y := must(t, Spec{Shape: c.a}), must(t, Spec{Shape: c.b})
		for i := range 21 {
			d := min(x.height, y.height) * float64(i) / 20
			if a, b := x.liquid(d), y.liquid(d); !(math.Abs(a-b) <= c.off*y.full) {
				t.Errorf("%s: %v and %v at %v", c.name, a, b, d)
			}
		}
	}
}

// A fillet of a drafted box by its own geometry: a ball of its radius rolled
// along floor and wall leaves this half width free.
func TestFilletByBall(t *testing.T) {
	b := Box{Length: 2.5, Width: 1.4, Height: 1.6, FloorLength: 2.2, FloorWidth: 1.35, Fillet: 0.2}
	half := func(top, floor, z float64) float64 {
		alpha := math.Atan((top - floor) / 2 / 1.6)
		wall := floor/2 + z*math.Tan(alpha)
		// Centre of the ball: one radius over the floor and from the wall.
		centre := floor/2 + 0.2*math.Tan(alpha) - 0.2/math.Cos(alpha)
		if z > 0.2*(1-math.Sin(alpha)) {
			return wall
		}
		return centre + math.Sqrt(0.04-(0.2-z)*(0.2-z))
	}
	for _, depth := range []float64{0.01, 0.1, 0.19, 0.2, 0.7, 1.6} {
		sum, n := 0.0, 200000
		for i := range n {
			p := (float64(i) + 0.5) / float64(n)
			z := depth * p * p // fine steps where the arc begins
			sum += 4 * half(2.5, 2.2, z) * half(1.4, 1.35, z) * 2 * depth * p / float64(n)
		}
		x := must(t, Spec{Shape: b})
		if got := x.liquid(depth); !(math.Abs(got-sum) <= 1e-9*sum) {
			t.Errorf("at %v: %.12g, want %.12g", depth, got, sum)
		}
	}
}

// The rule of 48 points against one of 400, on crowns and knuckles from sharp
// to round, at levels on and beside every edge.
func TestQuadratureError(t *testing.T) {
	fine := make([]float64, 400)
	weight := make([]float64, 400)
	quad.Legendre{}.FixedLocations(fine, weight, 0, 1)
	worst := 0.0
	for _, crown := range []float64{1.001, 1.2, 2, 4, 15} {
		for _, knuckle := range []float64{0.001, 0.06, 0.2, 0.7, 0.99} {
			h := newToris(1, crown, knuckle)
			full := h.volume(2)
			for _, m := range levelsOf(h) {
				sum := 0.0
				for i, x := range fine {
					sum += weight[i] * knuckleTerm(h, m, x)
				}
				got := h.knuckleSum(m, func(r float64) float64 { return segment(r, r-m) })
				worst = max(worst, math.Abs(got-sum)/full)
			}
		}
	}
	t.Logf("greatest error %.2g of the volume of the head", worst)
	if worst > 1e-13 {
		t.Errorf("quadrature is off by %v of the head's volume", worst)
	}
	for _, a := range []float64{1e-6, 0.01, 0.1, 0.2999, 0.3} {
		for _, z := range []float64{-0.999, -0.5, 0, 0.3, 0.9, 1} {
			k := newCap(1, a)
			end := 2 * math.Asin(math.Sqrt((1+z)/2))
			sum := 0.0
			for i, x := range fine {
				s := math.Sin(end * x)
				sum += weight[i] * beyond(k.c, s) * s * end
			}
			full := math.Pi * a * (3 + a*a) / 6
			if got := k.below(z); !(math.Abs(got-sum) <= 1e-13*full) {
				t.Errorf("cap of depth %v at %v: %v, want %v", a, z, got, sum)
			}
		}
	}
}

func levelsOf(h toris) []float64 {
	list := []float64{0, 1e-9, 1e-3, 0.1, 0.5, 0.9, 0.999, 1}
	for _, edge := range []float64{h.rim, 1 - h.knuckle, 1 - 1.5*h.knuckle} {
		for _, off := range []float64{-1e-3, -1e-9, 0, 1e-9, 1e-3} {
			if m := edge + off; m >= 0 && m <= 1 {
				list = append(list, m)
			}
		}
	}
	return list
}

// knuckleTerm is the integrand of the knuckle in a variable that is smooth at
// its end for every level, so that the fine rule is exact to rounding.
func knuckleTerm(h toris, m, x float64) float64 {
	edge := h.turn
	if c := 1 - (h.r-m)/h.knuckle; c > math.Cos(h.turn) {
		edge = math.Acos(min(1, c))
	}
	u := x * x * (3 - 2*x) // zero slope at both ends
	theta := edge * (1 - u)
	r := h.r - h.knuckle*(1-math.Cos(theta))
	return segment(r, r-m) * h.knuckle * math.Cos(theta) * edge * 6 * x * (1 - x)
}

// Property (additive): the compartments, what stands over low partitions and the
// room of the partitions make up the tank.
func TestPartitionsShareTheTank(t *testing.T) {
	for _, name := range []string{"box", "draft", "draftfillet", "upright", "flat", "round", "capped", "dished", "mixed", "oval"} {
		s := shapes[name]
		l := s.Inside().Length
		parts := []Partition{{At: 0.4 * l, Thickness: 0.07}, {At: 0.6 * l, Thickness: 0.05, Height: 0.8}, {At: 0.8 * l, Thickness: 0.04, Height: s.Inside().Height}}
		x := must(t, Spec{Shape: s, Partitions: parts})
		whole := must(t, Spec{Shape: s})
		if n := len(x.Compartments()); n != 4 {
			t.Fatalf("%s: %d compartments", name, n)
		}
		for i := range 30 {
			d := x.height * float64(i) / 29
			sum, room := 0.0, 0.0
			for k := range x.Compartments() {
				v, err := x.Compartments()[k].Volume(manway.Length(d))
				if err != nil {
					t.Fatal(err)
				}
				sum += float64(v)
			}
			for _, p := range parts {
				top := float64(p.Height)
				if top == 0 {
					top = x.height
				}
				room1 := s.solid().volume(span{from: float64(p.At), to: float64(p.At + p.Thickness)}, min(d, top))
				over := s.solid().volume(span{from: float64(p.At), to: float64(p.At + p.Thickness)}, d) - room1
				sum += over
				room += room1
			}
			if total := x.liquid(d); !(math.Abs(sum-total) <= 1e-13*x.full) {
				t.Errorf("%s at %v: compartments and what is over the partitions %v, total %v", name, d, sum, total)
			}
			if total := x.liquid(d) + room; !(math.Abs(total-whole.liquid(d)) <= 1e-13*whole.full) {
				t.Errorf("%s at %v: with the partitions %v, without %v", name, d, total, whole.liquid(d))
			}
		}
	}
}

func TestClosedFormsDoNotAllocate(t *testing.T) {
	for name, s := range shapes {
		spec := Spec{Shape: s}
		if _, _, ok := s.ends(); ok {
			spec.Partitions = []Partition{{At: s.Inside().Length / 2, Thickness: 0.05}}
		}
		x := must(t, spec)
		depth := manway.Length(x.height * 0.43)
		v := volume(t, x, depth)
		half := v / 9
		for what, f := range map[string]func(){
			"Volume": func() { _, _ = x.Volume(depth) },
			"Area":   func() { _, _ = x.Area(depth) },
			"Depth":  func() { _, _ = x.Depth(v) },
			"compartment": func() {
				c := &x.Compartments()[0]
				_, _ = c.Volume(depth)
				_, _ = c.Depth(half)
			},
		} {
			if n := testing.AllocsPerRun(20, f); n != 0 {
				t.Errorf("%s of %s: %v allocations", what, name, n)
			}
		}
	}
	x := must(t, Spec{Shape: shapes["box"]})
	c := FloatCase{Cover: 0.5, Liquid: 0.2, Lids: 50}
	for what, f := range map[string]func(){
		"ShellWeight": func() { _, _ = x.ShellWeight(manway.Concrete{}) },
		"Float":       func() { _, _ = x.Float(c) },
		"WaterLimit":  func() { _, _ = x.WaterLimit(c) },
	} {
		if n := testing.AllocsPerRun(20, f); n != 0 {
			t.Errorf("%s: %v allocations", what, n)
		}
	}
}
