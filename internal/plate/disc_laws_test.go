package plate

import (
	"math"
	"testing"
)

// What a disc answers at a radius is bound together by the theory of plates:
//
//	slope = dw/dr,  Mr = -D (w'' + nu w'/r),  Mt = -D (w'/r + nu w'')
//
// for a disc that is none of unit size, by differences of the deflection.
func TestDiscsKeepTheLawsOfPlates(t *testing.T) {
	for _, clamped := range []bool{false, true} {
		d := Disc{Radius: 0.7, Thickness: 0.1, E: 25e9, Nu: 0.3, Clamped: clamped}
		for name, at := range map[string]func(float64) (Polar, error){
			"uniform":    func(r float64) (Polar, error) { return d.Uniform(10e3, r) },
			"concentric": func(r float64) (Polar, error) { return d.Concentric(10e3, 0.2, r) },
			"nearly all": func(r float64) (Polar, error) { return d.Concentric(10e3, 0.65, r) },
		} {
			for _, r := range []float64{0.1, 0.3, 0.5, 0.6} {
				const h = 2e-4
				var w [5]float64
				for k := range w {
					p, err := at(r + float64(k-2)*h)
					if err != nil {
						t.Fatal(err)
					}
					w[k] = p.W
				}
				first := (w[0] - 8*w[1] + 8*w[3] - w[4]) / (12 * h)
				second := (-w[0] + 16*w[1] - 30*w[2] + 16*w[3] - w[4]) / (12 * h * h)
				p, _ := at(r)
				rigid := d.Rigidity()
				for _, c := range []struct {
					what      string
					got, want float64
				}{{"slope", p.Slope, first}, {"Mr", p.Radial, -rigid * (second + d.Nu*first/r)}, {"Mt", p.Tangential, -rigid * (first/r + d.Nu*second)}} {
					if scale := math.Max(math.Abs(c.want), map[bool]float64{true: math.Abs(w[2]), false: 1}[c.what == "slope"]); !(math.Abs(c.got-c.want) <= 1e-5*scale) {
						t.Errorf("%s, clamped %v, r %g: %s is %g, by differences %g", name, clamped, r, c.what, c.got, c.want)
					}
				}
			}
			rim, err := at(d.Radius)
			if err != nil {
				t.Fatal(err)
			}
			held := rim.Radial
			if clamped {
				held = rim.Slope * d.Rigidity()
			}
			if !(math.Abs(rim.W) <= 1e-12) || !(math.Abs(held) <= 1e-6) {
				t.Errorf("%s, clamped %v: the rim has w %g and %g where it should have none", name, clamped, rim.W, held)
			}
		}
	}
}

// A patch stays on the disc and a point too, to 1e-9 of the radius, in every
// direction.
func TestLimitsOfPatches(t *testing.T) {
	d := Disc{Radius: 0.5, Thickness: 0.1, E: 25e9, Nu: 0.2}
	reach := math.Sqrt(0.25-0.01) - 0.1 // of the middle of a square of 0.2 m along an axis
	for _, c := range []struct {
		p     Patch
		at    Point
		taken bool
	}{
		{Patch{reach * 0.9999, 0, 0.2, 0.2, 1}, Point{}, true}, {Patch{-reach * 0.9999, 0, 0.2, 0.2, 1}, Point{}, true},
		{Patch{0, reach * 0.9999, 0.2, 0.2, 1}, Point{}, true}, {Patch{0, -reach * 0.9999, 0.2, 0.2, 1}, Point{}, true},
		{Patch{reach * 1.0001, 0, 0.2, 0.2, 1}, Point{}, false}, {Patch{-reach * 1.0001, 0, 0.2, 0.2, 1}, Point{}, false},
		{Patch{0, reach * 1.0001, 0.2, 0.2, 1}, Point{}, false}, {Patch{0, -reach * 1.0001, 0.2, 0.2, 1}, Point{}, false},
		{Patch{0, 0, 0.2, 0.2, 1}, Point{0.5, 0}, true}, {Patch{0, 0, 0.2, 0.2, 1}, Point{0, -0.5}, true},
		{Patch{0, 0, 0.2, 0.2, 1}, Point{0.5 * (1 + 1e-8), 0}, false}, {Patch{0, 0, 0.2, 0.2, 1}, Point{0.36, 0.36}, false},
		{Patch{0, 0, 0, 0.2, 1}, Point{}, false}, {Patch{0, 0, 0.2, -1, 1}, Point{}, false}, {Patch{0, 0, 0.2, 0.2, math.NaN()}, Point{}, false},
	} {
		if _, err := d.Patch(c.p, c.at); (err == nil) != c.taken {
			t.Errorf("%+v at %+v: %v", c.p, c.at, err)
		}
	}
}

// The residual of a study is the greatest of its cases'.
func TestStudyTakesTheGreatestResidual(t *testing.T) {
	var st Study
	slab := Slab{Length: 3, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.3}
	cases := [][]Load{{Uniform{Pressure: 10e3}}, {Patch{X: 1, Y: 0.5, Length: 0.2, Width: 0.2, Force: 1e3}}, {Patch{X: 2.5, Y: 1.3, Length: 0.2, Width: 0.2, Force: 1e3}}}
	if err := st.Run(&slab, cases); err != nil {
		t.Fatal(err)
	}
	greatest, least := 0.0, math.Inf(1)
	for i := range st.Cases {
		greatest, least = math.Max(greatest, st.Cases[i].Residual), math.Min(least, st.Cases[i].Residual)
	}
	if st.Residual != greatest || !(least < greatest) {
		t.Errorf("residual %g; those of the cases go from %g to %g", st.Residual, least, greatest)
	}
}
