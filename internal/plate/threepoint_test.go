package plate

import (
	"math"
	"testing"
)

// Statics needs no theory of plates: on a section straight across the disc the
// moments add up to those of the forces on one side of it. For a load at 3/4 of
// the radius, midway between the points at 120 and 240 degrees, those two carry
// 1/3 + 2/3 x 3/4 x cos 60 = 7/12 of it each and the third 1 - 14/12 = -1/6.
func TestThreePointPatchBalances(t *testing.T) {
	d := unitDisc(0.2, false)
	p := Patch{X: -0.75, Length: 0.3, Width: 0.4, Force: 1}
	for _, section := range []struct{ x, want float64 }{
		{-0.55, -(0.75 - 0.55)},                 // only the load is beyond it
		{-0.3, 14./12*(0.5-0.3) - (0.75 - 0.3)}, // the two points too
		{0, 14./12*0.5 - 0.75},                  // the middle
		{0.5, -1. / 6 * (1 - 0.5)},              // from the other side, the third point pulls
		{0.8, -1. / 6 * (1 - 0.8)},
	} {
		half := math.Sqrt(1 - section.x*section.x)
		sum := 0.0
		for part := range 20 {
			var at []Point
			for _, g := range gauss8 {
				at = append(at, Point{section.x, half * (2*(float64(part)+g)/20 - 1)})
			}
			list, err := d.ThreePointPatch(p, at)
			if err != nil {
				t.Fatal(err)
			}
			for k, v := range list {
				sum += weight8[k] * 2 * half / 20 * v.M.X
			}
		}
		near(t, "moment of the section", sum, section.want, 0.004)
	}
}

// In the middle of the disc the load is the same all round, and both ways of
// reckoning agree.
func TestThreePointPatchInTheMiddle(t *testing.T) {
	d := unitDisc(0.2, false)
	p := Patch{Length: 0.2, Width: 0.2, Force: 3}
	at := []Point{{0, 0}, {0.3, 0.2}, {-0.7, 0}, {math.Cos(math.Pi / 3), math.Sin(math.Pi / 3)}}
	list, err := d.ThreePointPatch(p, at)
	if err != nil {
		t.Fatal(err)
	}
	for i, z := range at {
		r, theta := math.Hypot(z.X, z.Y), math.Atan2(z.Y, z.X)
		whole, err := d.Patch(p, z)
		if err != nil {
			t.Fatal(err)
		}
		add, twist, err := d.ThreePoint(3, r, theta)
		if err != nil {
			t.Fatal(err)
		}
		sin, cos := math.Sincos(theta)
		want := whole.M
		want.X += add.Radial*cos*cos + add.Tangential*sin*sin - 2*twist*sin*cos
		want.Y += add.Radial*sin*sin + add.Tangential*cos*cos + 2*twist*sin*cos
		near(t, "w", list[i].W, whole.W+add.W, 2e-3)
		near(t, "Mx", list[i].M.X, want.X, 2e-3)
		near(t, "My", list[i].M.Y, want.Y, 2e-3)
	}
}

// A load at A moves B by what the same load at B moves A, and the points do not
// move.
func TestThreePointPatchReciprocity(t *testing.T) {
	d := unitDisc(0.25, false)
	one := func(p Point, at ...Point) []Value {
		list, err := d.ThreePointPatch(Patch{X: p.X, Y: p.Y, Length: 1e-3, Width: 1e-3, Force: 1}, at)
		if err != nil {
			t.Fatal(err)
		}
		return list
	}
	a, b := Point{-0.8, 0.1}, Point{0.3, -0.55}
	points := []Point{{1, 0}, {-0.5, math.Sqrt(3) / 2}, {-0.5, -math.Sqrt(3) / 2}}
	near(t, "Maxwell", one(a, b)[0].W, one(b, a)[0].W, 1e-5)
	for _, v := range one(a, points...) {
		if !(math.Abs(v.W) <= 1e-12) {
			t.Errorf("a point of support moves by %g", v.W)
		}
	}
	// where somebody stands at the rim between two points, the disc bends more
	// than where he stands in the middle
	rim, middle := Point{-0.8, 0}, Point{}
	if r, m := one(rim, Point{-0.6, 0})[0].M.Y, one(middle, Point{-0.2, 0})[0].M.Y; !(r > 1.3*m) {
		t.Errorf("0.2 from the load: at the rim %g, in the middle %g", r, m)
	}
}
