package plate

import (
	"math"
	"math/cmplx"
)

// A patch on a disc that bears on three points of its rim, at 0, 120 and 240
// degrees, is the same patch on the whole rim and, on a disc free all round, the
// points' forces less the reaction of the rim. With s the load, rho = |s|, theta
// its angle, in units of the radius, the points carry
//
//	Fi = F (1/3 + 2/3 rho cos(theta - theta i))
//
// and the reaction of the rim has, by Betti, the harmonics of the disc whose rim
// is bent to cos n theta and turns freely,
//
//	F/(pi a) f(rho) cos n(theta - ...),  f = (rho^(n+2) - k rho^n)/(1 - k)
//	k = ((n+2)(n+1) + nu (n+2-n^2))/(n (n-1) (1-nu))
//
// Harmonic n of the difference, cn F/(pi a), bends the free disc to
//
//	B cn (rho^(n+2) - k rho^n) cos n theta,  B = F a^2/(2 pi D n (n+1) (3+nu))
//
// Those of n = 0 and 1 vanish: the points hold the load by themselves.

// harmonics is how many are summed at the rim; inside they die out sooner.
const harmonics = 1200

// freeRim is k.
func freeRim(n, nu float64) float64 {
	return ((n+2)*(n+1) + nu*(n+2-n*n)) / (n * (n - 1) * (1 - nu))
}

// ThreePointPatch is the response at each of a list of points to a patch on the
// disc, borne on three points of its rim at 0, 120 and 240 degrees: somebody
// standing off the middle of a lid on a chipped seat. A point may pull: what holds
// it down must be judged beside it. Moments have no limit at the three points.
// The edge must not be Clamped.
func (d Disc) ThreePointPatch(p Patch, at []Point) ([]Value, error) {
	var f Faults
	d.check(&f)
	if d.Clamped {
		f.add("Clamped", 1, "a rim that is free to rotate")
	}
	if len(f) > 0 {
		return nil, f
	}
	c := d.differences(p)
	var seats [3]float64 // what the differences alone move the points by
	for i := range seats {
		seats[i] = d.ripple(c, cmplx.Rect(1, 2*math.Pi/3*float64(i))).w
	}
	list := make([]Value, len(at))
	for i, point := range at {
		v, err := d.Patch(p, point)
		if err != nil {
			return nil, err
		}
		z := complex(point.X/d.Radius, point.Y/d.Radius)
		add := d.ripple(c, z)
		for k, w := range seats { // the plane through the three points
			add.w -= w * pointShare(z, k)
		}
		v.W += p.Force * d.Radius * d.Radius / d.Rigidity() * add.w
		v.M.X -= p.Force * (add.xx + d.Nu*add.yy)
		v.M.Y -= p.Force * (add.yy + d.Nu*add.xx)
		v.M.XY -= p.Force * (1 - d.Nu) * add.xy
		list[i] = v
	}
	return list, nil
}

// pointShare is the share of a force at z that point k of three carries.
func pointShare(z complex128, k int) float64 {
	return 1./3 + 2./3*real(z*cmplx.Rect(1, -2*math.Pi/3*float64(k)))
}

// differences are the harmonics cn, from n = 2 on, of the points' forces less the
// reaction of the rim, for a force of 1.
func (d Disc) differences(p Patch) []complex128 {
	c := make([]complex128, harmonics)
	x0, y0 := p.X-p.Length/2, p.Y-p.Width/2
	for k := range 3 {
		turn := cmplx.Rect(1, -2*math.Pi/3*float64(k))
		share := complex(pointShare(complex(p.X/d.Radius, p.Y/d.Radius), k), 0)
		power := turn * turn
		for i := range c {
			c[i] += share * power
			power *= turn
		}
	}
	for g := range gauss8 {
		for h := range gauss8 {
			s := complex((x0+p.Length*gauss8[g])/d.Radius, (y0+p.Width*gauss8[h])/d.Radius)
			sc, rho2 := cmplx.Conj(s), real(s*cmplx.Conj(s))
			weight, power := weight8[g]*weight8[h], sc*sc
			for i := range c {
				k := freeRim(float64(i+2), d.Nu)
				c[i] -= complex(weight*(rho2-k)/(1-k), 0) * power
				power *= sc
			}
		}
	}
	for i := range c { // tapered, a series of terms like cos(n theta)/n is summed smoothly
		c[i] *= complex((1+math.Cos(math.Pi*float64(i+2)/(harmonics+2)))/2, 0)
	}
	return c
}

// ripple is what the harmonics bend the free disc to at z, for a force of 1, with
// its second derivatives: Re(phi + |z|^2 psi), phi and psi power series.
func (d Disc) ripple(c []complex128, z complex128) bend {
	var phi, zz, psi complex128 // zz: the second derivative by z, twice
	mixed := 0.0                // by z and its conjugate
	z2, size := real(z*cmplx.Conj(z)), cmplx.Abs(z)
	power, left := complex(1, 0), 1.0 // z^(n-2)
	for i, cn := range c {
		n := float64(i + 2)
		b := cn * complex(1/(2*math.Pi*n*(n+1)*(3+d.Nu)), 0) * power
		k := freeRim(n, d.Nu)
		phi -= complex(k, 0) * b * z * z
		psi += b * z * z
		zz += b * complex(n*(n-1)*(z2-k)+2*n*z2, 0)
		mixed += (n + 1) * real(b*z*z)
		power *= z
		if left *= size; left*n < 1e-14 {
			break
		}
	}
	w := real(phi) + z2*real(psi)
	sum, diff := 4*mixed, 2*real(zz)
	return bend{w, (sum + diff) / 2, (sum - diff) / 2, -imag(zz)}
}
