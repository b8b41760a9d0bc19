package tank

import "math"

// segment is the area of a circle of radius r below a chord at height h above
// its lowest point:
//
//	phi = acos((r - h)/r) = 2 asin(sqrt(h/2r))
//	A   = r^2 phi - (r - h) sqrt(h (2r - h))
//
// The second form of phi keeps its digits for shallow liquid; above the middle
// the area is the circle less the segment on top. h is taken within 0 and 2r.
func segment(r, h float64) float64 {
	less := h
	if h > r {
		less = 2*r - h
	}
	if !(less > 0) {
		if h > r {
			return math.Pi * r * r
		}
		return 0
	}
	x := less / (2 * r)
	a := 2 * r * (r*math.Asin(math.Sqrt(x)) - (r-less)*math.Sqrt(x*(1-x)))
	if h > r {
		return math.Pi*r*r - a
	}
	return a
}

// chord is the width of the circle at height h above its lowest point.
func chord(r, h float64) float64 {
	h = min(max(h, 0), 2*r)
	return 2 * math.Sqrt(h*(2*r-h))
}

// beyond is the area of a circle of radius sqrt(c^2 + s^2) beyond a chord at
// distance c from the centre, s being half the chord:
//
//	A = (c^2 + s^2) atan(s/c) - c s
//
// For a chord near the rim the two terms cancel and their series is summed.
func beyond(c, s float64) float64 {
	t := s / c
	if !(t < 0.1) {
		return (c*c+s*s)*math.Atan2(s, c) - c*s
	}
	// (1 + t^2) atan t - t = 2 sum (-1)^(k+1) t^(2k+1) / ((2k-1)(2k+1)); the
	// ninth term is below 1e-16 of the first.
	t2, power, sum := t*t, t*t*t, 0.0
	for k := 1.0; k < 10; k++ {
		sum += power / ((2*k - 1) * (2*k + 1))
		power *= -t2
	}
	return 2 * c * c * sum
}
