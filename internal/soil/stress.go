package soil

import (
	"math"

	"manway.example/manway"
)

// PointStress is the vertical stress at depth z under elastic ground, at a
// horizontal distance r from a point load P on its surface:
//
//	sigma = I P/z^2,  I = 3/(2 pi) (1 + (r/z)^2)^(-5/2)
//
// Depth 0.01 m to 1000 m. Source: Boussinesq; Das, 10.4.
func PointStress(p manway.Force, r, z manway.Length) (manway.Pressure, error) {
	return pointStress(p, r, z, boussinesq)
}

// LayeredPointStress is the same by Westergaard, for ground with thin stiff
// layers that keep it from giving sideways, Poisson's ratio 0:
//
//	sigma = I P/z^2,  I = 1/pi (1 + 2 (r/z)^2)^(-3/2)
//
// Source: Westergaard; Das, chapter 10.
func LayeredPointStress(p manway.Force, r, z manway.Length) (manway.Pressure, error) {
	return pointStress(p, r, z, westergaard)
}

func boussinesq(k float64) float64  { return 3 / (2 * math.Pi) * math.Pow(1+k*k, -2.5) }
func westergaard(k float64) float64 { return 1 / math.Pi * math.Pow(1+2*k*k, -1.5) }

func pointStress(p manway.Force, r, z manway.Length, influence func(float64) float64) (manway.Pressure, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Load", p, 0, 1e9*manway.Newton)
	manway.Within(&faults, "Offset", r, 0, 1e4*manway.Metre)
	manway.Within(&faults, "Depth", z, 0.01*manway.Metre, 1000*manway.Metre)
	if len(faults) > 0 {
		return 0, faults
	}
	return manway.Pressure(influence(float64(r/z)) * float64(p) / (float64(z) * float64(z))), nil
}

// CornerInfluence is the vertical stress under the corner of a rectangle B by
// L with a uniform pressure on it, at depth z, over that pressure; m = B/z and
// n = L/z, each 0 to 1e4:
//
//	I = 1/(4 pi) [2 m n sqrt(V)/(V + m2 n2) (V + 1)/V + atan(2 m n sqrt(V)/(V - m2 n2))]
//
// with V = m2 + n2 + 1 and the angle between 0 and pi. Source: Newmark;
// Fadum; Das, 10.9.
func CornerInfluence(m, n float64) (float64, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "M", m, 0, 1e4)
	manway.Within(&faults, "N", n, 0, 1e4)
	if len(faults) > 0 {
		return 0, faults
	}
	return cornerInfluence(m, n), nil
}

func cornerInfluence(m, n float64) float64 {
	v := m*m + n*n + 1
	mn := m * m * n * n
	root := 2 * m * n * math.Sqrt(v)
	return (root/(v+mn)*(v+1)/v + math.Atan2(root, v-mn)) / (4 * math.Pi)
}

// Rectangle is a uniform pressure on a rectangle of the surface.
type Rectangle struct {
	Pressure manway.Pressure // 0 or more
	Length   manway.Length   // along x, above 0
	Width    manway.Length   // along y, above 0
}

// Stress is the vertical stress at depth z, above 0, under the point (x, y)
// from the rectangle's centre: the sum of four corner influences, negative
// where the point lies outside. Source: Das, 10.9 (superposition).
func (r Rectangle) Stress(x, y, z manway.Length) (manway.Pressure, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Pressure", r.Pressure, 0, 1e9*manway.Pascal)
	manway.Within(&faults, "Length", r.Length, 0.001*manway.Metre, 1e4*manway.Metre)
	manway.Within(&faults, "Width", r.Width, 0.001*manway.Metre, 1e4*manway.Metre)
	manway.Within(&faults, "X", x, -1e4*manway.Metre, 1e4*manway.Metre)
	manway.Within(&faults, "Y", y, -1e4*manway.Metre, 1e4*manway.Metre)
	manway.Within(&faults, "Depth", z, 0.01*manway.Metre, 1000*manway.Metre)
	if len(faults) > 0 {
		return 0, faults
	}
	var sum float64
	for _, sx := range [...]float64{-1, 1} {
		for _, sy := range [...]float64{-1, 1} {
			m := float64(r.Length/2+manway.Length(sx)*x) / float64(z)
			n := float64(r.Width/2+manway.Length(sy)*y) / float64(z)
			sum += math.Copysign(1, m) * math.Copysign(1, n) * cornerInfluence(math.Abs(m), math.Abs(n))
		}
	}
	return manway.Pressure(max(sum, 0)) * r.Pressure, nil
}
