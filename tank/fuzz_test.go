package tank

import (
	"math"
	"testing"

	"manway.example/manway"
)

// fuzzShape is a shape of one of the kinds with these sizes.
func fuzzShape(kind uint8, a, b, c, d, e float64) Shape {
	l := func(x float64) manway.Length { return manway.Length(x) }
	switch kind % 8 {
	case 0:
		return Box{l(a), l(b), l(c), l(d), l(e), 0}
	case 1:
		return Box{l(a), l(b), l(c), 0, l(d), l(e)}
	case 2:
		return VerticalCylinder{l(a), l(b)}
	case 3:
		return HorizontalCylinder{l(a), l(b), Head{Form: HeadForm(kind / 8 % 6), Depth: l(c), Crown: l(d), Knuckle: l(e)}, Head{Form: Ellipsoidal}}
	case 4:
		return HorizontalEllipse{l(a), l(b), l(c)}
	case 5:
		return Frustum{l(a), l(b), l(c)}
	case 6:
		return Surveyed{Volumes: []VolumeAt{{0, 0}, {l(a), manway.Volume(b)}, {l(c), manway.Volume(d)}}}
	}
	return Nominal{Volume: manway.Volume(a), Depth: l(b), Height: l(c), Length: l(d)}
}

// No sizes make a panic; a tank without faults has finite volumes that grow with
// the depth, and depths that give them back.
func FuzzTank(f *testing.F) {
	f.Add(uint8(0), 2.5, 1.4, 1.6, 2.3, 1.3, 1.2, 0.08, 1.0, 0.5)    // drafted box with a partition
	f.Add(uint8(1), 2.5, 1.4, 1.6, 1.3, 0.7, 1.2, 0.08, 0.0, 0.99)   // fillet as large as fits
	f.Add(uint8(35), 1.5, 2.6, 0.0, 1.5, 0.09, 1.2, 0.08, 0.5, 1e-9) // torispherical, near its bottom
	f.Add(uint8(27), 1.5, 2.6, 1e-5, 0.0, 0.0, 1.2, 0.08, 0.5, 1.0)  // shallow cap
	f.Add(uint8(6), 0.3, 0.7, 0.9, 2.4, 0.0, 0.0, 0.0, 0.0, 0.3)     // survey
	f.Add(uint8(4), math.NaN(), math.Inf(1), -1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, kind uint8, a, b, c, d, e, at, thick, top, share float64) {
		spec := Spec{Shape: fuzzShape(kind, a, b, c, d, e)}
		if thick != 0 {
			spec.Partitions = []Partition{{manway.Length(at), manway.Length(thick), manway.Length(top), 0}}
		}
		x, err := New(spec)
		if err != nil {
			return
		}
		if !(x.full > 0) || math.IsInf(x.full, 0) {
			t.Fatalf("%+v holds %v", spec, x.full)
		}
		if !(share >= 0 && share <= 1) {
			return
		}
		depth := manway.Length(share * x.height)
		v, err := x.Volume(depth)
		if err != nil || !(v >= 0 && float64(v) <= x.full*(1+1e-12)) {
			t.Fatalf("%+v at %v: %v, %v", spec, depth, v, err)
		}
		if area, err := x.Area(depth); err != nil || !(area >= -1e-9) || math.IsInf(float64(area), 0) {
			t.Fatalf("%+v at %v: area %v, %v", spec, depth, area, err)
		}
		parts := manway.Volume(0)
		for i := range x.Compartments() {
			p, err := x.compartments[i].Volume(depth)
			if err != nil || !(float64(p) >= -1e-12*x.full) {
				t.Fatalf("%+v compartment %d: %v, %v", spec, i, p, err)
			}
			parts += p
		}
		if float64(parts) > float64(v)+1e-9*x.full {
			t.Fatalf("%+v at %v: compartments %v, total %v", spec, depth, parts, v)
		}
		back, err := x.Depth(min(v, x.Full()))
		if err != nil {
			t.Fatalf("%+v: depth of %v: %v", spec, v, err)
		}
		if again := x.liquid(float64(back)); !(math.Abs(again-float64(v)) <= 1e-12*x.full) {
			t.Fatalf("%+v: %v at %v, %v at the depth given back", spec, v, depth, again)
		}
	})
}

// No flotation case makes a panic or a figure that is not finite.
func FuzzFloat(f *testing.F) {
	f.Add(uint8(0), 0.6, 0.3, 0.0, 50.0, 0.3, 0.1, 0.25, 500.0) // common
	f.Add(uint8(3), 0.0, 9.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)     // dry ground
	f.Add(uint8(5), 6.0, -1.0, 0.0, 0.0, 3.0, 1.5, 0.6, 1e5)    // unknown water, everything at its end
	f.Fuzz(func(t *testing.T, kind uint8, cover, water, liquid, mass, area, flange, slope, ballast float64) {
		all := []string{"box", "draftfillet", "upright", "dished", "oval", "frustum", "cone down", "sphere"}
		x, err := New(Spec{Shape: shapes[all[int(kind)%len(all)]]})
		if err != nil {
			t.Fatal(err)
		}
		c := FloatCase{
			Cover: manway.Length(cover), Liquid: manway.Length(liquid), Lids: manway.Mass(mass), RiserArea: manway.Area(area),
			Flange: manway.Length(flange), Wedge: Wedge{slope, kind > 127}, Ballast: []Ballast{{manway.Mass(ballast), 2400, kind%2 == 0}},
			Dug: manway.Volume(area),
		}
		if water >= 0 {
			c.Groundwater = manway.GroundwaterAt(manway.Length(water))
		}
		r, err := x.Float(c)
		if err != nil {
			return
		}
		for _, v := range []float64{float64(r.Shell), float64(r.Contents), float64(r.MoistSoil), float64(r.SubmergedSoil), float64(r.Ballast),
			float64(r.Down), float64(r.Uplift), float64(r.Displaced), r.Factor, float64(r.LeastLiquid)} {
			if !(v >= 0) || math.IsInf(v, 0) {
				t.Fatalf("%+v: %+v", c, r)
			}
		}
		if _, err := x.WaterLimit(c); err != nil {
			t.Fatal(err)
		}
		if len(r.Working(manway.SI)) < 8 {
			t.Fatal("no working")
		}
	})
}
