package plate

import (
	"math"
	"testing"
)

// A patch at the centre against the disc of the same area, whose closed form is
// another one: they differ only by the shape of the load.
func TestCentralPatchIsNearlyADisc(t *testing.T) {
	for _, clamped := range []bool{false, true} {
		d := unitDisc(0.2, clamped)
		side := 0.02 * math.Sqrt(math.Pi)
		for _, r := range []float64{0.3, 0.7, 1} {
			p, err := d.Concentric(1, 0.02, r)
			if err != nil {
				t.Fatal(err)
			}
			v, err := d.Patch(Patch{0, 0, side, side, 1}, Point{0, r})
			if err != nil {
				t.Fatal(err)
			}
			if !(math.Abs(v.W-p.W) <= 1e-6) || !(math.Abs(v.M.Y-p.Radial) <= 2e-4) || !(math.Abs(v.M.X-p.Tangential) <= 2e-4) {
				t.Errorf("clamped %v, r %v: %+v, want %+v", clamped, r, v, p)
			}
		}
	}
}

// The centre is a point like others, also under a patch beside it: the moments
// there are those of the points round it.
func TestMomentsAtTheCentre(t *testing.T) {
	for _, clamped := range []bool{false, true} {
		d := unitDisc(0.2, clamped)
		p := Patch{X: 0.58, Y: -0.25, Length: 0.25, Width: 0.25, Force: 1}
		centre, err := d.Patch(p, Point{})
		if err != nil {
			t.Fatal(err)
		}
		const r = 1e-6
		mean := Moment{}
		for _, at := range []Point{{r, 0}, {0, r}, {-r, 0}, {0, -r}} {
			v, err := d.Patch(p, at)
			if err != nil {
				t.Fatal(err)
			}
			mean.X, mean.Y, mean.XY = mean.X+v.M.X/4, mean.Y+v.M.Y/4, mean.XY+v.M.XY/4
		}
		if !(math.Abs(centre.M.X-mean.X) <= 1e-9) || !(math.Abs(centre.M.Y-mean.Y) <= 1e-9) || !(math.Abs(centre.M.XY-mean.XY) <= 1e-9) {
			t.Errorf("clamped %v: %+v at the centre, %+v round it", clamped, centre.M, mean)
		}
	}
}

// Many patches that tile the disc make a uniform load.
func TestPatchesTileToUniform(t *testing.T) {
	d := unitDisc(0.3, false)
	const n = 24
	at := Point{0.31, -0.22}
	var sum Value
	area := 0.0
	for i := range n {
		for j := range n {
			p := Patch{X: (2*float64(i)+1)/n - 1, Y: (2*float64(j)+1)/n - 1, Length: 2.0 / n, Width: 2.0 / n, Force: 4.0 / (n * n)}
			if math.Hypot(math.Abs(p.X)+1.0/n, math.Abs(p.Y)+1.0/n) > 1 {
				continue
			}
			area += p.Force
			v, err := d.Patch(p, at)
			if err != nil {
				t.Fatal(err)
			}
			sum.W += v.W
			sum.M.X += v.M.X
			sum.M.Y += v.M.Y
		}
	}
	// What is missing lies along the rim, where loads bend the disc little.
	u := d.uniform(1, math.Hypot(at.X, at.Y))
	if missing := 1 - area/math.Pi; !(missing > 0 && missing < 0.15) {
		t.Fatalf("missing %g", missing)
	}
	near(t, "w", sum.W, u.W, 0.02)
	near(t, "Mx + My", sum.M.X+sum.M.Y, u.Radial+u.Tangential, 0.03)
}

// Maxwell: w at B from a load at A is w at A from a load at B.
func TestPatchReciprocity(t *testing.T) {
	for _, clamped := range []bool{false, true} {
		d := unitDisc(0.2, clamped)
		a, b := Point{0.5, 0.2}, Point{-0.3, 0.7}
		va, err := d.Patch(Patch{a.X, a.Y, 1e-4, 1e-4, 1}, b)
		if err != nil {
			t.Fatal(err)
		}
		vb, err := d.Patch(Patch{b.X, b.Y, 1e-4, 1e-4, 1}, a)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "w", va.W, vb.W, 1e-7)
	}
}

// The moments are the second derivatives of the deflection, and the simply
// supported rim has neither deflection nor radial moment.
func TestPatchMomentsFromDeflections(t *testing.T) {
	p := Patch{0.5, 0.2, 0.3, 0.2, 1}
	for _, clamped := range []bool{false, true} {
		d := unitDisc(0.3, clamped)
		w := func(x, y float64) float64 {
			v, err := d.Patch(p, Point{x, y})
			if err != nil {
				t.Fatal(err)
			}
			return v.W
		}
		for _, at := range []Point{{0.45, 0.25}, {-0.2, 0.1}, {0.8, -0.3}} {
			const h = 2e-3
			x, y := at.X, at.Y
			xx := (w(x+h, y) - 2*w(x, y) + w(x-h, y)) / (h * h)
			yy := (w(x, y+h) - 2*w(x, y) + w(x, y-h)) / (h * h)
			xy := (w(x+h, y+h) - w(x+h, y-h) - w(x-h, y+h) + w(x-h, y-h)) / (4 * h * h)
			v, _ := d.Patch(p, at)
			for _, pair := range [][2]float64{{v.M.X, -(xx + 0.3*yy)}, {v.M.Y, -(yy + 0.3*xx)}, {v.M.XY, -0.7 * xy}} {
				if !(math.Abs(pair[0]-pair[1]) <= 1e-4) {
					t.Errorf("clamped %v at %v: %g, differences give %g", clamped, at, pair[0], pair[1])
				}
			}
		}
		v, err := d.Patch(p, Point{0.6, -0.8})
		if err != nil {
			t.Fatal(err)
		}
		c, s := 0.6, -0.8
		radial := v.M.X*c*c + v.M.Y*s*s + 2*v.M.XY*c*s
		if !(math.Abs(v.W) <= 1e-12) || !clamped && !(math.Abs(radial) <= 1e-9) {
			t.Errorf("clamped %v: at the rim w %g, radial moment %g", clamped, v.W, radial)
		}
	}
}

// On three points the work of the load is the energy of bending, and nothing but
// the three points holds the rim.
func TestThreePointSupport(t *testing.T) {
	d := unitDisc(0.2, false)
	force := math.Pi // of unit pressure
	at := func(r, theta float64) (Polar, float64) {
		p, twist, err := d.ThreePoint(force, r, theta)
		if err != nil {
			t.Fatal(err)
		}
		u := d.uniform(1, r)
		return Polar{p.W + u.W, p.Slope + u.Slope, p.Radial + u.Radial, p.Tangential + u.Tangential}, twist
	}
	work, energy := 0.0, 0.0
	const nr, nt = 60, 48
	nu := d.Nu
	for i := range nr {
		for j := range nt {
			r, theta := (float64(i)+0.5)/nr, (float64(j)+0.5)*math.Pi/3/nt
			p, twist := at(r, theta)
			dA := 6 * r / nr * math.Pi / 3 / nt
			work += p.W * dA
			// M : curvature, with D = 1.
			energy += dA * (p.Radial*p.Radial + p.Tangential*p.Tangential - 2*nu*p.Radial*p.Tangential + 2*(1+nu)*twist*twist) / (1 - nu*nu)
		}
	}
	near(t, "work and energy", energy, work, 0.01)
	rim, _ := at(1, math.Pi/3)
	if !(math.Abs(rim.Radial) <= 1e-9) {
		t.Errorf("radial moment on the free rim %g", rim.Radial)
	}
	if seat, _ := at(1, 0); !(math.Abs(seat.W) <= 1e-9) {
		t.Errorf("w at a support %g", seat.W)
	}
	centre, _ := at(0, 0)
	near(t, "moment at the centre", centre.Radial, d.uniform(1, 0).Radial, 1e-12)
	if !(rim.Tangential > centre.Radial) {
		t.Errorf("the rim between supports has %g, the centre %g", rim.Tangential, centre.Radial)
	}
}

func TestDiscRefusals(t *testing.T) {
	d := unitDisc(0.2, false)
	for field, err := range map[string]error{
		"Radius":    Disc{Thickness: 1, E: 1}.Check(),
		"Thickness": Disc{Radius: 1, E: 1}.Check(),
		"E":         Disc{Radius: 1, Thickness: 1}.Check(),
		"Nu":        Disc{Radius: 1, Thickness: 1, E: 1, Nu: -0.1}.Check(),
		"C":         second(d.Concentric(1, 2, 0)),
		"R":         second(d.Concentric(1, 0.5, 2)),
		"Force":     second(d.Concentric(math.NaN(), 0.5, 0)),
		"X":         second(d.Patch(Patch{0.9, 0, 0.4, 0.4, 1}, Point{})),
		"At.X":      second(d.Patch(Patch{0.2, 0, 0.4, 0.4, 1}, Point{1, 1})),
		"Q":         second(d.Uniform(math.NaN(), 0)),
		"Inner":     Annulus{Outer: 1, Inner: 1, Thickness: 1, E: 1, OuterRim: RimSimple}.Check(),
		"OuterRim":  Annulus{Outer: 1, Inner: 0.5, Thickness: 1, E: 1, OuterRim: RimGuided}.Check(),
		"HoleRim":   second(Annulus{Outer: 1, Inner: 0.5, Thickness: 1, E: 1, OuterRim: RimSimple}.At(AnnularLoad{HoleRim: math.Inf(1)}, 0.7)),
	} {
		checkFault(t, err, field)
	}
	_, _, err := unitDisc(0.2, true).ThreePoint(1, 0, 0)
	checkFault(t, err, "Clamped")
}

func second[T any](_ T, err error) error { return err }
