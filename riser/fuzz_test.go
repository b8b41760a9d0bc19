package riser

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"manway.example/manway"
)

// sound fails where err is nil and any number in v is NaN or infinite.
func sound(t *testing.T, err error, v any) {
	t.Helper()
	if err != nil {
		if err.Error() == "" {
			t.Fatal("an error without a word")
		}
		return
	}
	finiteIn(t, reflect.ValueOf(v), reflect.TypeOf(v).String())
}

func finiteIn(t *testing.T, v reflect.Value, path string) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s is %v with a nil error", path, x)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finiteIn(t, v.Field(i), path+"."+v.Type().Field(i).Name)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			finiteIn(t, v.Index(i), path+"[]")
		}
	}
}

func FuzzReachOf(f *testing.F) {
	f.Add(0.66, 0.07, 0.76, 0.05, 0.01, 0.0, 0.08, 0.1, uint8(0)) // a usual access
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(1))       // a roof at grade
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(9))
	f.Fuzz(func(t *testing.T, cover, slope, span, reveal, settle, rise, thick, roof float64, from uint8) {
		r, err := ReachOf(Access{manway.Length(cover), manway.Angle(slope), manway.Length(span), Edge(from), manway.Length(reveal), manway.Length(settle), manway.Length(rise), manway.Length(thick), manway.Length(roof)})
		sound(t, err, r)
		if err == nil && (r.Height < 0 || r.Uphill > r.Downhill) {
			t.Fatalf("%+v", r)
		}
		_ = r.Working(manway.SI).String()
	})
}

func FuzzDigOf(f *testing.F) {
	f.Add(0.76, 0.0, 0.3, 0.66, 0.0, 0.0, uint8(0), false, 0.0, 0.0)
	f.Add(2.4, 1.5, 0.3, 1.5, 0.15, 1900.0, uint8(1), true, 0.1, 0.1)
	f.Add(0.76, 0.0, 0.3, 5.9, 0.52, 0.0, uint8(0), false, 0.0, 0.0) // the rim uphill far away
	f.Fuzz(func(t *testing.T, length, width, working, depth, ground, density float64, kind uint8, shored bool, standing, refill float64) {
		d, err := DigOf(Pit{Length: manway.Length(length), Width: manway.Length(width), Working: manway.Length(working), Depth: manway.Length(depth), Ground: manway.Angle(ground),
			Type: SoilType(kind & 3), Shored: shored, Earth: Earth(kind >> 2 & 3), Density: manway.Density(density), Standing: manway.Volume(standing), Refill: manway.Volume(refill)})
		sound(t, err, d)
		if err == nil && (d.Hole <= 0 || d.Bank < 0 || d.Backfill < 0 || d.TopArea <= 0 || d.Deepest < d.Pit.Depth) {
			t.Fatalf("%+v", d)
		}
	})
}

func FuzzLeakOf(f *testing.F) {
	f.Add(2.1, 0.001, 0.07, 0.66, true, 0.3, 0.0, 0.0)
	f.Add(2.1, 0.001, 0.07, 0.66, false, 0.0, 0.5, 1e-5)
	f.Fuzz(func(t *testing.T, length, gap, wall, depth float64, known bool, water, inside, design float64) {
		l, err := LeakOf(OpenJoint{manway.Length(length), manway.Length(gap), manway.Length(wall), manway.Length(depth), manway.Groundwater{Known: known, Depth: manway.Length(water)}, manway.Reading{Taken: inside != 0, Length: manway.Length(inside)}, manway.Flow(design)})
		sound(t, err, l)
		if err == nil && (l.Least < 0 || l.Least > l.Orifice || l.Least > l.Slot || l.Dry != (l.Head == 0)) {
			t.Fatalf("%+v", l)
		}
	})
}

func FuzzUpliftOf(f *testing.F) {
	f.Add(0.66, 0.6, 0.8, 0.9, 20.0, true, 0.3, 4, 1.5)
	f.Add(0.66, 0.6, 0.0, 0.9, 0.0, false, 0.0, 0, 0.0)
	f.Fuzz(func(t *testing.T, outside, bore, flange, base, mass float64, known bool, water float64, anchors int, factor float64) {
		u, err := UpliftOf(Light{Outside: manway.Length(outside), Bore: manway.Length(bore), Flange: manway.Length(flange), Base: manway.Length(base), Mass: manway.Mass(mass), Water: manway.Groundwater{Known: known, Depth: manway.Length(water)}, Anchors: anchors, Factor: factor})
		sound(t, err, u)
		if err == nil && (u.Fasten < 0 || u.Lifts && u.NoUplift) {
			t.Fatalf("%+v", u)
		}
	})
}

func FuzzPress(f *testing.F) {
	f.Add(0.6, 0.0127, 1.5e8, 0.4, 0.9, 0.5)
	f.Add(0.7, 0.08, 2.5e10, 0.2, 2.0, 0.0) // concrete, the wheel at the wall
	f.Fuzz(func(t *testing.T, diameter, thickness, modulus, poisson, depth, away float64) {
		w := Wall{manway.Length(diameter), manway.Length(thickness), manway.Pressure(modulus), poisson}
		p, err := w.Press(Surround{Depth: manway.Length(depth), Wheel: manway.TruckWheel, Away: manway.Length(away)})
		sound(t, err, p)
		b, err := w.Buckling(0)
		sound(t, err, b)
	})
}

func FuzzTie(f *testing.F) {
	f.Add(9.0, 5.0, 7.0, 0.05)
	f.Add(5.0, 3.0, 2.0, 0.0) // on the line
	f.Fuzz(func(t *testing.T, corners, a, b, tape float64) {
		p, err := Tie{Corners: manway.Length(corners), FromA: manway.Length(a), FromB: manway.Length(b), Tape: manway.Length(tape)}.Position()
		sound(t, err, p)
	})
}

func FuzzJoint(f *testing.F) {
	f.Add(0.6, 0.76, 0.0127, false, 0.0254, 0.0254, 4.4, 0.05)
	f.Add(0.3, 0.31, 0.0016, true, 0.1, 0.0064, 300.0, 0.0)
	f.Fuzz(func(t *testing.T, inside, outside, closed float64, square bool, width, height, roll, overlap float64) {
		j := Joint{manway.Length(inside), manway.Length(outside), square, manway.Length(closed)}
		n, err := j.Strip(Strip{manway.Length(width), manway.Length(height), manway.Length(roll), manway.Length(overlap)})
		sound(t, err, n)
		b, err := j.Bead(Bead{Width: manway.Length(width), Depth: manway.Length(height), Tube: 0.0003})
		sound(t, err, b)
		c, err := j.Cement(manway.Length(width), square, MixBag(30))
		sound(t, err, c)
	})
}

// FuzzStackOf tries stocks of any sizes: what is found must keep every rule, and
// the number found must be that counted.
func FuzzStackOf(f *testing.F) {
	f.Add(uint64(1), 0.66, 0.0254, 0.0127, 0.0127)
	f.Add(uint64(77), 2.0, 0.1, 0.1, 0.0)
	f.Add(uint64(3), 0.0, 0.0, 0.0, math.NaN())
	f.Fuzz(func(t *testing.T, seed uint64, gap, below, above, joint float64) {
		rng := rand.New(rand.NewPCG(seed, 5))
		rings := stockOf(1 + rng.IntN(8))
		for i := range rings {
			rings[i].Count = rng.IntN(3)
			if rng.IntN(20) == 0 {
				rings[i].Height = manway.Length(rng.NormFloat64())
			}
		}
		need := Need{Port: 24 * manway.Inch, Gap: manway.Length(math.Mod(gap, 3)), Below: manway.Length(below), Above: manway.Length(above), Joint: manway.Length(joint)}
		s, err := StackOf(rings, need)
		sound(t, err, s)
		if err != nil {
			return
		}
		if len(s.Best) > bestStacks || s.Feasible < uint64(len(s.Best)) || len(s.Best) < bestStacks && !s.AtLeast && s.Feasible != uint64(len(s.Best)) {
			t.Fatalf("listed %d, counted %d", len(s.Best), s.Feasible)
		}
		for _, b := range s.Best {
			if b.Off < -need.Below-1e-6 || b.Off > need.Above+1e-6 {
				t.Fatalf("%v off by %v", b, b.Off)
			}
			for _, p := range b.Pieces {
				if c := rings[p.Ring].Count; c > 0 && p.Count > c {
					t.Fatalf("%v of %d in stock", b, c)
				}
			}
		}
	})
}

// FuzzRemedies tries conditions and sites made from a seed, with one field of
// each spoiled.
func FuzzRemedies(f *testing.F) {
	f.Add(uint64(1), 0.0)
	f.Add(uint64(2), math.NaN())
	f.Add(uint64(3), -1.0)
	f.Fuzz(func(t *testing.T, seed uint64, spoil float64) {
		rng := rand.New(rand.NewPCG(seed, 6))
		c, s := randomCondition(rng), randomSite(rng)
		c.SpallDepth = manway.Read(manway.Length(spoil))
		s.Height = manway.Length(spoil)
		r, err := Remedies(c, s)
		sound(t, err, r)
		d, err := Defects(c)
		sound(t, err, d)
		if err == nil {
			_, _ = Notice("a", d)
		}
	})
}
