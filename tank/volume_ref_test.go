package tank

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// must is the tank of a Spec that has no faults.
func must(t testing.TB, s Spec) Tank {
	t.Helper()
	x, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func volume(t testing.TB, x Tank, depth manway.Length) manway.Volume {
	t.Helper()
	v, err := x.Volume(depth)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// A lying cylinder of 1 m with flat ends is the circle of the tables.
func TestCircleTables(t *testing.T) {
	x := must(t, Spec{Shape: HorizontalCylinder{Diameter: 1, Length: 1}})
	rows := reftable.Load(t, "tank.csv")
	full := math.Pi / 4
	for prefix, got := range map[string]func(depth float64) float64{
		"tank-circle-area-":  func(d float64) float64 { return float64(volume(t, x, manway.Length(d))) / full },
		"tank-chow-area-":    func(d float64) float64 { return float64(volume(t, x, manway.Length(d))) },
		"tank-circle-width-": func(d float64) float64 { return surface(t, x, d) },
		"tank-chow-width-":   func(d float64) float64 { return surface(t, x, d) },
	} {
		rows.Under(prefix).Each(t, func(t *testing.T, row reftable.Row) {
			row.Check(t, got(row.Float(t, "y/D")))
		})
	}
}

func surface(t testing.TB, x Tank, depth float64) float64 {
	t.Helper()
	a, err := x.Area(manway.Length(depth))
	if err != nil {
		t.Fatal(err)
	}
	return float64(a)
}

// lengths reads several inputs of a row.
func lengths(t *testing.T, row reftable.Row, keys ...string) []manway.Length {
	t.Helper()
	list := make([]manway.Length, len(keys))
	for i, key := range keys {
		row.Read(t, key, &list[i])
	}
	return list
}

func headOf(t *testing.T, row reftable.Row) Head {
	t.Helper()
	var h Head
	if err := h.Form.UnmarshalText([]byte(row.Input(t, "head"))); err != nil {
		t.Fatal(err)
	}
	if h.Form == Torispherical {
		l := lengths(t, row, "crown", "knuckle")
		h.Crown, h.Knuckle = l[0], l[1]
	} else {
		h.Depth = lengths(t, row, "a")[0]
	}
	return h
}

func TestDishedHeads(t *testing.T) {
	rows := reftable.Load(t, "tank.csv")
	rows.Under("tank-jones-").With("head", "ellipsoidal", "spherical-cap", "torispherical").Each(t, func(t *testing.T, row reftable.Row) {
		l := lengths(t, row, "D", "L", "h")
		h := headOf(t, row)
		v := volume(t, must(t, Spec{Shape: HorizontalCylinder{l[0], l[1], h, h}}), l[2])
		if row.Unit == "m3" {
			row.Check(t, float64(v))
		} else {
			row.Check(t, v.In(manway.Gallon))
		}
	})
	rows.Under("tank-jones-one-head").Each(t, func(t *testing.T, row reftable.Row) {
		l := lengths(t, row, "D", "a", "h")
		h := Head{Form: Ellipsoidal, Depth: l[1]}
		body := HorizontalCylinder{Diameter: l[0], Length: 100 * manway.Inch}
		flat := volume(t, must(t, Spec{Shape: body}), l[2])
		body.Outlet = h
		row.Check(t, (volume(t, must(t, Spec{Shape: body}), l[2]) - flat).In(manway.Gallon))
	})
}

// Factors of pairs of heads: V/(h^2 (1.5 d - h)), at several levels.
func TestHeadFactors(t *testing.T) {
	rows := reftable.Load(t, "tank.csv").Under("tank-heads-")
	rows.With("head", "hemispherical", "ellipsoidal").Each(t, func(t *testing.T, row reftable.Row) {
		var h Head
		if err := h.Form.UnmarshalText([]byte(row.Input(t, "head"))); err != nil {
			t.Fatal(err)
		}
		for _, depth := range []float64{0.1, 0.5, 0.77, 1} {
			row.Check(t, 2*h.end(0.5).volume(depth)/(depth*depth*(1.5-depth)))
		}
	})
	rows.With("head", "torispherical").Each(t, func(t *testing.T, row reftable.Row) {
		got := 2 * Head{Form: Torispherical, Crown: 1, Knuckle: 0.06}.end(0.5).volume(1)
		row.Check(t, got)
		if math.Abs(got-0.1077) < 0.05 {
			t.Errorf("%v agrees with the factor that is wrong", got)
		}
	})
}

func TestRectangles(t *testing.T) {
	rows := reftable.Load(t, "tank.csv")
	box := func(t *testing.T, row reftable.Row) (Box, manway.Length) {
		l := lengths(t, row, "L", "W", "depth")
		return Box{Length: l[0], Width: l[1], Height: l[2] + manway.Foot}, l[2]
	}
	for _, id := range []string{"tank-heger-2019", "tank-conv-1196"} {
		rows.Under(id).Each(t, func(t *testing.T, row reftable.Row) {
			b, depth := box(t, row)
			row.Check(t, volume(t, must(t, Spec{Shape: b}), depth).In(manway.Gallon))
		})
	}
	// The range of a tank known by its nominal gallons holds what it measures.
	rows.Under("tank-va-nominal-").Each(t, func(t *testing.T, row reftable.Row) {
		b, depth := box(t, row)
		var nominal manway.Volume
		if err := nominal.UnmarshalText([]byte(row.Printed + " gal")); err != nil {
			t.Fatal(err)
		}
		x := must(t, Spec{Shape: Nominal{Volume: nominal, Depth: depth}})
		low, high, known, err := x.Range(depth)
		measured := volume(t, must(t, Spec{Shape: b}), depth)
		row.Check(t, measured.In(manway.Gallon))
		if err != nil || !known || !(low <= measured*1.0005 && measured <= high*1.0005) {
			t.Errorf("%v nominal: range %v to %v (%v, %v), measured %v", nominal, low, high, known, err, measured)
		}
		if got := volume(t, x, depth); !(math.Abs(float64(got-nominal)) <= 1e-12) {
			t.Errorf("%v nominal holds %v", nominal, got)
		}
	})
}

func TestUnits(t *testing.T) {
	rows := reftable.Load(t, "tank.csv")
	for id, got := range map[string]float64{
		"tank-gal-per-ft3": manway.CubicFoot.In(manway.Gallon),
		"tank-yd3":         manway.CubicYard.In(manway.CubicMetre),
		"tank-in3":         manway.CubicInch.In(manway.Millilitre),
		"tank-ft3-dm3":     manway.CubicFoot.In(manway.Litre),
		"tank-water-gal":   manway.Gallon.Times(manway.WaterDensity).In(manway.Pound),
		"tank-sg-concrete": (2.40 * manway.WaterDensity).In(manway.PoundPerCubicFoot),
	} {
		rows.Under(id).Each(t, func(t *testing.T, row reftable.Row) { row.Check(t, got) })
	}
}
