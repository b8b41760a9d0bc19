package tank

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// points is the number of points of the Gauss-Legendre rule. Against 400 points
// the greatest difference is below 1e-13 of the volume of the head.
const points = 48

// gauss holds the nodes and weights of the rule on 0 to 1.
var gauss = func() (rule struct{ x, w [points]float64 }) {
	quad.Legendre{}.FixedLocations(rule.x[:], rule.w[:], 0, 1)
	return rule
}()

// A spherical cap of base radius r and depth a lies on a sphere of radius
// rho = (a^2 + r^2)/2a whose centre is c = rho - a behind the base. Its section
// at height z over the axis is the part of a circle of radius sqrt(rho^2 - z^2)
// beyond a chord at c.

// crown is such a cap.
type crown struct{ r, a, c float64 }

func newCap(r, a float64) *crown { return &crown{r, a, (r - a) * (r + a) / (2 * a)} }

func (k *crown) volume(depth float64) float64 { return k.below(depth - k.r) }
func (k *crown) area(depth float64) float64   { return k.section(depth - k.r) }

// section is the section at height z over the axis.
func (k *crown) section(z float64) float64 {
	return beyond(k.c, math.Sqrt(max(0, (k.r-z)*(k.r+z))))
}

// shallow is the depth over base radius below which the closed form of a cap
// loses digits, and its section is summed instead.
const shallow = 0.3

// below is the volume of the cap below height z over the axis. With
// s = sqrt(r^2 - z^2) the antiderivative of the section is
//
//	F(z) = (rho^2 z - z^3/3) atan(s/c) - 2/3 c z s
//	       - c (r^2 + 2 rho^2)/3 atan(z/s) + 2/3 rho^3 atan(c z/(rho s))
//
// and F(-r) = -F(r) = -pi/6 a^2 (2 rho + c).
func (k *crown) below(z float64) float64 {
	r, a, c := k.r, k.a, k.c
	rho := c + a
	half := math.Pi / 6 * a * a * (2*rho + c)
	switch {
	case z <= -r:
		return 0
	case z >= r:
		return 2 * half
	case a < shallow*r && z > 0:
		return 2*half - capBySum(r, c, -z)
	case a < shallow*r:
		return capBySum(r, c, z)
	}
	s := math.Sqrt((r - z) * (r + z))
	return max(0, half+(rho*rho-z*z/3)*z*math.Atan2(s, c)-2*c*z*s/3-
		c*(r*r+2*rho*rho)/3*math.Atan2(z, s)+2*rho*rho*rho/3*math.Atan2(c*z, rho*s))
}

// capBySum integrates the section over z = -r cos(phi), which is smooth to the
// ends.
func capBySum(r, c, z float64) float64 {
	end := 2 * math.Asin(math.Sqrt((r+z)/(2*r)))
	sum := 0.0
	for i, x := range gauss.x {
		s := r * math.Sin(end*x)
		sum += gauss.w[i] * beyond(c, s) * s
	}
	return sum * end
}

// toris is a torispherical head: a crown of radius crown, which is a spherical
// cap of base radius rim and depth rise, on a knuckle of radius knuckle that
// turns from the cylinder by the angle turn.
//
//	sin(pi/2 - turn) = (r - knuckle)/(crown - knuckle)
//	depth = crown - sqrt((crown - knuckle)^2 - (r - knuckle)^2)
type toris struct {
	r, crown, knuckle float64
	turn              float64
	rim, rise, depth  float64
	cap               crown
	half              float64 // of its volume
}

func newToris(r, crown, knuckle float64) toris {
	t := toris{r: r, crown: crown, knuckle: knuckle}
	if crown <= r || knuckle >= r { // a hemisphere
		t.knuckle = 0
		t.rim, t.rise, t.depth = r, r, r
		t.cap = *newCap(r, r)
		t.half = t.below(0)
		return t
	}
	// The line through both centres leans by psi from the axis.
	psi := math.Asin((r - knuckle) / (crown - knuckle))
	t.turn = math.Pi/2 - psi
	t.rim = crown * math.Sin(psi)
	t.rise = 2 * crown * math.Sin(psi/2) * math.Sin(psi/2)
	t.depth = t.rise + knuckle*math.Cos(psi)
	t.cap = *newCap(t.rim, t.rise)
	t.half = t.below(0)
	return t
}

// volume is the volume of the head below a depth. The part above the axis
// mirrors the part below.
func (t *toris) volume(depth float64) float64 {
	if z := depth - t.r; z > 0 {
		return 2*t.half - t.below(z)
	}
	return t.below(t.r - depth)
}

// below is the volume of the head that lies deeper than m under its axis: the
// crown as a cap, and of the knuckle the sum of circular segments
//
//	r(theta) = r - knuckle (1 - cos theta),  dx = knuckle cos theta d theta
func (t *toris) below(m float64) float64 {
	v := t.knuckleSum(m, func(r float64) float64 { return segment(r, r-m) })
	if m < t.rim {
		v += t.cap.below(-m)
	}
	return v
}

// area is the section of the head at a depth.
func (t *toris) area(depth float64) float64 {
	m := math.Abs(depth - t.r)
	a := t.knuckleSum(m, func(r float64) float64 { return chord(r, r-m) })
	if m < t.rim {
		a += t.cap.section(m)
	}
	return a
}

// knuckleSum integrates f of the radius along the axis of the knuckle, as far
// as the radius is above m. Near the place where it equals m the integrand is
// an odd power of the root of the distance: with theta = edge (1 - u^2) it is
// smooth in u.
func (t *toris) knuckleSum(m float64, f func(r float64) float64) float64 {
	if t.knuckle == 0 || m >= t.r {
		return 0
	}
	sum := 0.0
	cos := 1 - (t.r-m)/t.knuckle // of the angle where the radius is m
	if cos <= -0.5 {
		for i, x := range gauss.x {
			cos := math.Cos(t.turn * x)
			sum += gauss.w[i] * f(t.r-t.knuckle*(1-cos)) * cos
		}
		return sum * t.turn * t.knuckle
	}
	edge := 2 * math.Asin(math.Sqrt((t.r-m)/(2*t.knuckle)))
	first := math.Sqrt(max(0, 1-t.turn/edge))
	for i, x := range gauss.x {
		u := first + (1-first)*x
		theta := edge * (1 - u) * (1 + u)
		half := math.Sin(theta / 2)
		sum += gauss.w[i] * f(t.r-2*t.knuckle*half*half) * math.Cos(theta) * 2 * u
	}
	return sum * (1 - first) * edge * t.knuckle
}
