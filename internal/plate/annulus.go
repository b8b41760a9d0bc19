package plate

import (
	"fmt"
	"math"
)

// Rim says how one rim of an annular plate is held.
type Rim uint8

// The rims of an annular plate.
const (
	RimFree    Rim = iota // no support
	RimSimple             // deflection zero, free to rotate
	RimClamped            // deflection and slope zero
	RimGuided             // slope zero, free to move up and down
)

// Annulus is a circular plate with a concentric round hole: a lid with an
// inspection hole, a roof ring.
type Annulus struct {
	Outer, Inner, Thickness float64 // radii and thickness, m
	E, Nu                   float64 // Pa, -
	OuterRim, InnerRim      Rim
}

// AnnularLoad is a load that is the same all round.
type AnnularLoad struct {
	Pressure float64 // Pa on the whole plate
	// Growing is a pressure that grows in proportion from 0 at the hole to this
	// value at the outer rim, Pa.
	Growing float64
	HoleRim float64 // N/m along the rim of the hole
}

// Check reports every fault of the plate at once, as Faults.
func (a Annulus) Check() error {
	var f Faults
	f.positive("Outer", a.Outer)
	if !(a.Inner >= smallest && a.Inner < a.Outer) {
		f.add("Inner", a.Inner, fmt.Sprintf("above 0 and below Outer, %g", a.Outer))
	}
	f.positive("Thickness", a.Thickness)
	if a.Thickness > a.Outer {
		f.add("Thickness", a.Thickness, "at most the outer radius: this is a theory of thin plates")
	}
	f.positive("E", a.E)
	if !(a.Nu >= 0 && a.Nu < 0.5) {
		f.add("Nu", a.Nu, "0 or more and below 0.5")
	}
	for _, r := range [2]Rim{a.OuterRim, a.InnerRim} {
		if r > RimGuided {
			f.add("Rim", float64(r), "RimFree, RimSimple, RimClamped or RimGuided")
		}
	}
	holds := func(r Rim) bool { return r == RimSimple || r == RimClamped }
	if !holds(a.OuterRim) && !holds(a.InnerRim) {
		f.add("OuterRim", float64(a.OuterRim), "a rim that holds the plate")
	}
	return f.err()
}

// At is the response at radius r. The general solution, with rho = r/Outer,
//
//	w = c0 + c1 rho^2 + c2 ln rho + c3 rho^2 ln rho + q r^4/(64 D) + p r^5/(225 D)
//
// (p the growth of the pressure per length) meets two conditions at each rim: of
// deflection, slope, radial moment and shear, the two that it holds. Timoshenko
// and Woinowsky-Krieger, Theory of Plates and Shells, art. 17.
func (a Annulus) At(load AnnularLoad, r float64) (Polar, error) {
	if err := a.Check(); err != nil {
		return Polar{}, err
	}
	var f Faults
	f.number("Pressure", load.Pressure)
	f.number("Growing", load.Growing)
	f.number("HoleRim", load.HoleRim)
	f.between("R", r, a.Inner, a.Outer)
	if len(f) > 0 {
		return Polar{}, f
	}
	D := a.E * a.Thickness * a.Thickness * a.Thickness / (12 * (1 - a.Nu*a.Nu))
	// Lengths in Outer, forces so that D = 1: w comes out over Outer^4/D.
	p := load.Growing / (1 - a.Inner/a.Outer)
	q := load.Pressure - p*a.Inner/a.Outer
	rim := load.HoleRim / a.Outer
	var m [4][5]float64 // the four conditions with their right-hand sides
	row := 0
	for k, kind := range [2]Rim{a.OuterRim, a.InnerRim} {
		rho, shear := 1.0, 0.0
		if k == 1 {
			rho, shear = a.Inner/a.Outer, rim
		}
		g := a.general(rho, q, p)
		for _, i := range conditions[kind] {
			m[row] = g[i]
			m[row][4] = -g[i][4]
			if i == 3 {
				m[row][4] += shear
			}
			row++
		}
	}
	c, ok := solve4(&m)
	if !ok {
		return Polar{}, ErrNotHeld
	}
	g := a.general(r/a.Outer, q, p)
	var v [4]float64
	for i := range v {
		v[i] = g[i][4]
		for j := range 4 {
			v[i] += g[i][j] * c[j]
		}
	}
	tangential := 0.0
	for j, t := range a.tangential(r/a.Outer, q, p) {
		if j == 4 {
			tangential += t
		} else {
			tangential += t * c[j]
		}
	}
	o := a.Outer
	return Polar{o * o * o * o / D * v[0], o * o * o / D * v[1], o * o * v[2], o * o * tangential}, nil
}

// conditions are the two of deflection (0), slope (1), radial moment (2) and shear
// (3) that each rim fixes.
var conditions = [...][2]int{RimFree: {2, 3}, RimSimple: {0, 2}, RimClamped: {0, 1}, RimGuided: {1, 3}}

// terms are the derivatives of order 0, 1 and 2 of the four functions and of the
// particular solution at rho.
func terms(rho, q, p float64) (w, w1, w2 [5]float64) {
	l := math.Log(rho)
	w = [5]float64{1, rho * rho, l, rho * rho * l, q*math.Pow(rho, 4)/64 + p*math.Pow(rho, 5)/225}
	w1 = [5]float64{0, 2 * rho, 1 / rho, 2*rho*l + rho, q*math.Pow(rho, 3)/16 + p*math.Pow(rho, 4)/45}
	w2 = [5]float64{0, 2, -1 / (rho * rho), 2*l + 3, 3*q*rho*rho/16 + 4*p*math.Pow(rho, 3)/45}
	return w, w1, w2
}

// general gives deflection, slope, radial moment and the load carried outwards
// per length (the derivative of the Laplacian), for the four functions and the
// particular solution.
func (a Annulus) general(rho, q, p float64) (g [4][5]float64) {
	w, w1, w2 := terms(rho, q, p)
	g[0], g[1] = w, w1
	for j := range 5 {
		g[2][j] = -(w2[j] + a.Nu*w1[j]/rho)
	}
	g[3] = [5]float64{3: 4 / rho, 4: q*rho/2 + p*rho*rho/3}
	return g
}

func (a Annulus) tangential(rho, q, p float64) (t [5]float64) {
	_, w1, w2 := terms(rho, q, p)
	for j := range 5 {
		t[j] = -(w1[j]/rho + a.Nu*w2[j])
	}
	return t
}

// solve4 solves four equations, the right-hand side last, by elimination with the
// largest pivot. It is written out because a library call would allocate.
func solve4(m *[4][5]float64) (x [4]float64, ok bool) {
	for k := range 4 {
		p := k
		for i := k + 1; i < 4; i++ {
			if math.Abs(m[i][k]) > math.Abs(m[p][k]) {
				p = i
			}
		}
		m[k], m[p] = m[p], m[k]
		if m[k][k] == 0 {
			return x, false
		}
		for i := k + 1; i < 4; i++ {
			f := m[i][k] / m[k][k]
			for j := k; j < 5; j++ {
				m[i][j] -= f * m[k][j]
			}
		}
	}
	for k := 3; k >= 0; k-- {
		x[k] = m[k][4]
		for j := k + 1; j < 4; j++ {
			x[k] -= m[k][j] * x[j]
		}
		x[k] /= m[k][k]
	}
	return x, true
}
