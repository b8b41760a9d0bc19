package lid

import "math"

// poisson is Poisson's ratio of concrete in these plate formulas, the usual
// value.
const poisson = 0.2

// patchRadius is the radius that thin-plate theory must use for a load on a
// circle of radius r: below half the thickness t it is sqrt(1.6 r2 + t2) -
// 0.675 t (Westergaard; Roark, Table 11.2 note).
func patchRadius(r, t float64) float64 {
	if r < 0.5*t {
		return math.Sqrt(1.6*r*r+t*t) - 0.675*t
	}
	return r
}

// discUniform is the bending moment per length at the centre of a simply
// supported circular plate of radius a under q:  q a2 (3 + nu)/16.
func discUniform(q, a, nu float64) float64 { return q * a * a * (3 + nu) / 16 }

// discPatch is the same under a load W on a central circle of radius r:
//
//	W/(4 pi) [(1 + nu) ln(a/r) + 1 - (1 - nu) r2/(4 a2)]
//
// With r = a it is discUniform.
func discPatch(w, r, a, nu float64) float64 {
	return w / (4 * math.Pi) * ((1+nu)*math.Log(a/r) + 1 - (1-nu)*r*r/(4*a*a))
}

// levyTerms is enough: the terms fall as exp(-m pi b/a) with b >= a.
const levyTerms = 19

// slabUniform are the moments per length over q a2 at the centre of a simply
// supported rectangle a x b, a the short side, across and along it (Levy's
// single series):
//
//	Mx = 1/8 + sum of pi2 m2 (A - nu (A + 2B)) sin(m pi/2),  My = nu/8 + sum of pi2 m2 (nu A - (A + 2B)) sin(m pi/2)
//	A = -2 (c tanh c + 2)/(pi5 m5 cosh c),  B = 2/(pi5 m5 cosh c),  c = m pi b/(2 a),  m odd
func slabUniform(b, a, nu float64) (across, along float64) {
	across, along = 1.0/8, nu/8
	sign := 1.0
	for m := 1.0; m <= levyTerms; m += 2 {
		c := m * math.Pi * b / (2 * a)
		k := sign / (math.Pow(math.Pi, 3) * m * m * m * math.Cosh(c)) // pi2 m2 taken in
		A, B := -2*(c*math.Tanh(c)+2)*k, 2*k
		across += A - nu*(A+2*B)
		along += nu*A - (A + 2*B)
		sign = -sign
	}
	return across, along
}

// slabBeta is the number beta in the moment across the short side a under a
// load W on a small central circle of radius r,
//
//	M = W/(4 pi) [(1 + nu) ln(2 a/(pi r)) + beta]
//	beta = 1 + 2 sum of ((1 + nu)(tanh c - 1) - (1 - nu) c/cosh2 c)/m,  c = m pi b/(2 a),  m odd
//
// from the single series of a concentrated load; Roark prints it in Table 11.4
// case 1b.
func slabBeta(b, a, nu float64) float64 {
	sum := 0.0
	for m := 1.0; m <= levyTerms; m += 2 {
		c := m * math.Pi * b / (2 * a)
		cosh := math.Cosh(c)
		sum += ((1+nu)*(math.Tanh(c)-1) - (1-nu)*c/(cosh*cosh)) / m
	}
	return 1 + 2*sum
}

// slabPatch is the moment per length under the load, across the short side.
func slabPatch(w, r, b, a, nu float64) float64 {
	return w / (4 * math.Pi) * ((1+nu)*math.Log(2*a/(math.Pi*r)) + slabBeta(b, a, nu))
}
