package plate

import "math"

// Disc is a solid circular slab, a lid on a round seat: centre at the origin,
// the rim simply supported or, with Clamped, held against rotation.
type Disc struct {
	Radius, Thickness float64 // m
	E, Nu             float64 // Pa, -
	Clamped           bool
}

// Check reports every fault of the disc at once, as Faults.
func (d Disc) Check() error {
	var f Faults
	d.check(&f)
	return f.err()
}

func (d Disc) check(f *Faults) {
	f.positive("Radius", d.Radius)
	f.positive("Thickness", d.Thickness)
	if d.Thickness > d.Radius {
		f.add("Thickness", d.Thickness, "at most the radius: this is a theory of thin plates")
	}
	f.positive("E", d.E)
	if !(d.Nu >= 0 && d.Nu < 0.5) {
		f.add("Nu", d.Nu, "0 or more and below 0.5")
	}
}

// Rigidity is E t^3/(12 (1-nu^2)), N m.
func (d Disc) Rigidity() float64 {
	return d.E * d.Thickness * d.Thickness * d.Thickness / (12 * (1 - d.Nu*d.Nu))
}

// Polar is the response of a circular plate at one radius to a load that is the
// same all round: deflection, slope dw/dr, and the radial and tangential moments
// per length, positive with tension on the far face.
type Polar struct{ W, Slope, Radial, Tangential float64 }

// Uniform is the response at radius r (0 to Radius) to a pressure q on the whole
// disc. With rho = r/a:
//
//	simple:   w = q a^4/(64 D) (1-rho^2) ((5+nu)/(1+nu) - rho^2)
//	          Mr = q a^2/16 (3+nu)(1-rho^2), Mt = q a^2/16 (3+nu - (1+3nu) rho^2)
//	clamped:  w = q a^4/(64 D) (1-rho^2)^2
//	          Mr = q a^2/16 (1+nu - (3+nu) rho^2), Mt = q a^2/16 (1+nu - (1+3nu) rho^2)
//
// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, art. 16.
func (d Disc) Uniform(q, r float64) (Polar, error) {
	if err := d.checkAt("Q", q, r); err != nil {
		return Polar{}, err
	}
	return d.uniform(q, r), nil
}

// checkAt reports the faults of the disc, of a load and of a radius.
func (d Disc) checkAt(name string, load, r float64) error {
	var f Faults
	d.check(&f)
	f.number(name, load)
	f.between("R", r, 0, d.Radius)
	return f.err()
}

func (d Disc) uniform(q, r float64) Polar {
	a, nu, rho2 := d.Radius, d.Nu, r*r/(d.Radius*d.Radius)
	k := q * a * a * a * a / (64 * d.Rigidity())
	m := q * a * a / 16
	if d.Clamped {
		return Polar{
			W:          k * (1 - rho2) * (1 - rho2),
			Slope:      -4 * k * r / (a * a) * (1 - rho2),
			Radial:     m * (1 + nu - (3+nu)*rho2),
			Tangential: m * (1 + nu - (1+3*nu)*rho2),
		}
	}
	c := (5 + nu) / (1 + nu)
	return Polar{
		W:          k * (1 - rho2) * (c - rho2),
		Slope:      -2 * k * r / (a * a) * (c + 1 - 2*rho2),
		Radial:     m * (3 + nu) * (1 - rho2),
		Tangential: m * (3 + nu - (1+3*nu)*rho2),
	}
}

// Concentric is the response at radius r to a force spread evenly over the disc
// of radius c at the centre, 0 < c <= Radius. It follows from Annular's general
// solution; at the centre, with gamma = c/a, simply supported:
//
//	M = W/(4 pi) ((1+nu) ln(1/gamma) + 1 - (1-nu) gamma^2/4)
func (d Disc) Concentric(force, c, r float64) (Polar, error) {
	if err := d.checkAt("Force", force, r); err != nil {
		return Polar{}, err
	}
	var f Faults
	if f.between("C", c, smallest, d.Radius); len(f) > 0 {
		return Polar{}, f
	}
	q := force / (math.Pi * c * c)
	if c == d.Radius {
		return d.uniform(q, r), nil
	}
	return d.patchedUniform(q, c, r), nil
}

// patchedUniform solves the pressure q on r < c. Outside, the solution that the
// load would have in an endless plate is k (r^2 + c^2/2) ln r; inside, it is
// q r^4/(64 D) and a paraboloid that joins it with equal deflection and slope.
// The paraboloid e + g (r/a)^2 then meets the conditions at the rim.
func (d Disc) patchedUniform(q, c, r float64) Polar {
	a, nu, D := d.Radius, d.Nu, d.Rigidity()
	k, u := q*c*c/(8*D), q/(64*D)
	outer := func(r float64) (w, w1, w2 float64) {
		l := math.Log(r / a)
		return k * (r*r + c*c/2) * l, k * (2*r*l + r + c*c/(2*r)), k * (2*l + 3 - c*c/(2*r*r))
	}
	_, rim1, rim2 := outer(a) // the deflection there is 0
	g := -(rim2 + nu*rim1/a) * a * a / (2 * (1 + nu))
	if d.Clamped {
		g = -rim1 * a / 2
	}
	var w, w1, w2, over float64 // w, w', w'', w'/r
	if r >= c {
		w, w1, w2 = outer(r)
		over = w1 / r
	} else {
		joint, joint1, _ := outer(c)
		b := (joint1 - 4*u*c*c*c) / (2 * c)
		w = u*(r*r*r*r-c*c*c*c) + b*(r*r-c*c) + joint
		w1, w2, over = 4*u*r*r*r+2*b*r, 12*u*r*r+2*b, 4*u*r*r+2*b
	}
	w += g * (r*r/(a*a) - 1)
	w1 += 2 * g * r / (a * a)
	w2 += 2 * g / (a * a)
	over += 2 * g / (a * a)
	return Polar{w, w1, -D * (w2 + nu*over), -D * (over + nu*w2)}
}

// ThreePoint is what is added at r, theta to the response to any load that is the
// same all round, of total force, when the disc no longer bears on its whole rim
// but on three points of it, at theta = 0, 120 and 240 degrees: a lid that rocks
// on a chipped seat. The reaction of the whole rim, force/(2 pi a), becomes
//
//	force/(2 pi a) (1 + 2 sum cos n theta),  n = 3, 6, 9 ...
//
// Each harmonic bends the disc, free at its rim, to (A rho^n + B rho^(n+2)) cos
// n theta with
//
//	B = force a^2/(2 pi D n (n+1) (3+nu))
//	A = -B ((n+2)(n+1) + nu (n+2-n^2))/(n (n-1) (1-nu))
//
// The centre is not bent by them, it only sinks. Moments have no limit at the
// three points themselves. The edge must not be Clamped.
func (d Disc) ThreePoint(force, r, theta float64) (add Polar, twist float64, err error) {
	if err := d.checkAt("Force", force, r); err != nil {
		return Polar{}, 0, err
	}
	var f Faults
	f.number("Theta", theta)
	if d.Clamped {
		f.add("Clamped", 1, "a rim that is free to rotate")
	}
	if len(f) > 0 {
		return Polar{}, 0, f
	}
	const terms = 1200
	nu, rho := d.Nu, r/d.Radius
	var w, w1, wrr, tangential, shear float64
	power := rho // rho^(n-2)
	for m := 1; m <= terms; m++ {
		n := float64(3 * m)
		// The taper sums a series of terms like cos(n theta)/n smoothly.
		taper := (1 + math.Cos(math.Pi*float64(m)/terms)) / 2
		b := taper / (2 * math.Pi * n * (n + 1) * (3 + nu))
		a := -b * ((n+2)*(n+1) + nu*(n+2-n*n)) / (n * (n - 1) * (1 - nu))
		sin, cos := math.Sincos(n * theta)
		rho2 := rho * rho
		w += (a+b*rho2)*power*rho2*cos - (a + b)
		w1 += (n*a + (n+2)*b*rho2) * power * rho * cos
		wrr += (n*(n-1)*a + (n+2)*(n+1)*b*rho2) * power * cos
		tangential += (n*a + (n+2)*b*rho2 - n*n*(a+b*rho2)) * power * cos
		shear -= n * ((n-1)*a + (n+1)*b*rho2) * power * sin
		power *= rho * rho2
	}
	D := d.Rigidity()
	return Polar{
		W:          force * d.Radius * d.Radius / D * w,
		Slope:      force * d.Radius / D * w1,
		Radial:     -force * (wrr + nu*tangential),
		Tangential: -force * (tangential + nu*wrr),
	}, -force * (1 - nu) * shear, nil
}
