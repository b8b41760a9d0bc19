package plate

import (
	"math"
	"math/cmplx"
)

// The eccentric load on a disc. With z the point and s the load as complex
// numbers, in units of the radius, R = |z-s|, b = |s|, Michell's solution for the
// clamped disc under a unit force is
//
//	16 pi D w = (1-|z|^2)(1-b^2) + R^2 ln(R^2/|1-z s*|^2)
//
// and its edge moment -(1-b^2)^2/(4 pi |1-z s*|^2). Taking that moment away adds,
// for the simply supported disc, (1-|z|^2) h with h harmonic:
//
//	8 pi D h = (1-b^2) (1/(1+nu) + 2 Re sum (z s*)^n/(1+nu+2n))
//
// A patch is the mean of these over its area: the part (1/(8 pi)) R^2 ln R, which
// has no second derivative at R = 0, in closed form, the rest by Gauss points.
// J. H. Michell, Proc. London Math. Soc. 34, 1902; Timoshenko and
// Woinowsky-Krieger, Theory of Plates and Shells, art. 64.

// bend is a deflection with its second derivatives.
type bend struct{ w, xx, yy, xy float64 }

func (b *bend) add(k float64, o bend) {
	b.w += k * o.w
	b.xx += k * o.xx
	b.yy += k * o.yy
	b.xy += k * o.xy
}

// Patch is the response at a point to a force on a rectangle anywhere on the disc.
func (d Disc) Patch(p Patch, at Point) (Value, error) {
	if err := d.Check(); err != nil {
		return Value{}, err
	}
	if err := d.checkPatch(p, at); err != nil {
		return Value{}, err
	}
	a := d.Radius
	z := complex(at.X/a, at.Y/a)
	x0, y0, l, w := (p.X-p.Length/2)/a, (p.Y-p.Width/2)/a, p.Length/a, p.Width/a
	sum := singularMean(real(z)-x0-l, real(z)-x0, imag(z)-y0-w, imag(z)-y0)
	for g := range gauss8 {
		for h := range gauss8 {
			s := complex(x0+l*gauss8[g], y0+w*gauss8[h])
			sum.add(weight8[g]*weight8[h], d.regular(z, s))
		}
	}
	return Value{
		W: p.Force * a * a / d.Rigidity() * sum.w,
		M: Moment{-p.Force * (sum.xx + d.Nu*sum.yy), -p.Force * (sum.yy + d.Nu*sum.xx), -p.Force * (1 - d.Nu) * sum.xy},
	}, nil
}

func (d Disc) checkPatch(p Patch, at Point) error {
	var f Faults
	f.number("Force", p.Force)
	f.positive("Length", p.Length)
	f.positive("Width", p.Width)
	if far := math.Hypot(math.Abs(p.X)+p.Length/2, math.Abs(p.Y)+p.Width/2); !(far <= d.Radius*(1+1e-9)) {
		f.add("X", p.X, "a patch that stays on the disc")
	}
	if r := math.Hypot(at.X, at.Y); !(r <= d.Radius*(1+1e-9)) {
		f.add("At.X", at.X, "a point on the disc")
	}
	return f.err()
}

// regular is the response at z to a unit force at s, less R^2 ln R/(8 pi).
func (d Disc) regular(z, s complex128) bend {
	sc := cmplx.Conj(s)
	b2, z2 := real(s*sc), real(z*cmplx.Conj(z))
	u := z - s
	r2 := real(u * cmplx.Conj(u))
	den := 1 - z*sc
	g := 2 * math.Log(cmplx.Abs(den)) // ln |1-z s*|^2
	gz := -sc / den
	gzz := -gz * gz

	// Derivatives by z twice, and by z and its conjugate.
	const k = 1 / (16 * math.Pi)
	w := k * ((1-z2)*(1-b2) - r2*g)
	zz := -complex(k, 0) * (2*cmplx.Conj(u)*gz + complex(r2, 0)*gzz)
	mixed := k * (-(1 - b2) - g - 2*real(u*gz))
	if !d.Clamped {
		h, hz, hzz := d.release(z, s, b2)
		w += (1 - z2) * h
		zz += -2*cmplx.Conj(z)*hz + complex(1-z2, 0)*hzz
		mixed += -h - 2*real(z*hz)
	}
	sum, diff := 4*mixed, 4*real(zz)
	return bend{w, (sum + diff) / 2, (sum - diff) / 2, -2 * imag(zz)}
}

// release is the harmonic function h and its derivatives by z. Term n of the
// second derivative has power n-2 of q, so at the centre, q = 0, term 2 stays.
func (d Disc) release(z, s complex128, b2 float64) (h float64, hz, hzz complex128) {
	const most = 4000
	k := (1 - b2) / (8 * math.Pi)
	q, sc := z*cmplx.Conj(s), cmplx.Conj(s)
	sum, sum1, sum2 := complex(0, 0), complex(0, 0), complex(0, 0)
	power, power1, power2 := q, complex(1, 0), complex(0, 0) // q^n and lower
	size := cmplx.Abs(q)
	for n, left := 1.0, 1.0; n <= most && left*n*n > 1e-15; n++ {
		c := complex(1/(1+d.Nu+2*n), 0)
		sum += c * power
		sum1 += c * complex(n, 0) * power1
		sum2 += c * complex(n*(n-1), 0) * power2
		power, power1, power2 = power*q, power, power1
		if n > 1 {
			left *= size // |q|^(n-2) in the next round
		}
	}
	h = k * (1/(1+d.Nu) + 2*real(sum))
	return h, complex(k, 0) * sum1 * sc, complex(k, 0) * sum2 * sc * sc
}

// singularMean is the mean of R^2 ln R/(8 pi) and of its second derivatives over
// the rectangle x0..x1, y0..y1 of distances from the load.
func singularMean(x0, x1, y0, y1 float64) (b bend) {
	area := (x1 - x0) * (y1 - y0)
	for _, c := range [4]struct{ x, y, sign float64 }{{x1, y1, 1}, {x0, y1, -1}, {x1, y0, -1}, {x0, y0, 1}} {
		k := c.sign / (8 * math.Pi * area)
		ln, xx, yy, xy := primitives(c.x, c.y)
		own := c.x * c.y // primitive of 1
		b.xx += k * (2*ln + own + 2*xx)
		b.yy += k * (2*ln + own + 2*yy)
		b.xy += k * 2 * xy
	}
	// R^2 ln R itself is smooth enough for Gauss points on the parts on either
	// side of R = 0.
	for _, px := range split(x0, x1) {
		for _, py := range split(y0, y1) {
			part := (px[1] - px[0]) * (py[1] - py[0])
			if part == 0 {
				continue
			}
			for g := range gauss8 {
				for h := range gauss8 {
					x, y := px[0]+(px[1]-px[0])*gauss8[g], py[0]+(py[1]-py[0])*gauss8[h]
					r2 := x*x + y*y
					b.w += weight8[g] * weight8[h] * part / area * r2 * math.Log(r2) / (16 * math.Pi)
				}
			}
		}
	}
	return b
}

// split parts an interval at 0.
func split(a, b float64) [2][2]float64 {
	c := math.Min(math.Max(0, a), b)
	return [2][2]float64{{a, c}, {c, b}}
}

// primitives are the double integrals, from the axes to x, y, of ln R, x^2/R^2,
// y^2/R^2 and xy/R^2.
func primitives(x, y float64) (ln, xx, yy, xy float64) {
	r2 := x*x + y*y
	if r2 == 0 {
		return 0, 0, 0, 0
	}
	tx, ty := 0.0, 0.0 // x^2 atan(y/x), y^2 atan(x/y)
	if x != 0 {
		tx = x * x * math.Atan(y/x)
	}
	if y != 0 {
		ty = y * y * math.Atan(x/y)
	}
	l := math.Log(r2) / 2
	return x*y*l - 1.5*x*y + (tx+ty)/2, (tx + x*y - ty) / 2, (ty + x*y - tx) / 2, r2*l/2 - r2/4
}
