package hydraulics

import "math"

// segment is the wetted part of a circle of diameter 1 whose water subtends
// the angle theta at the centre, 0 to 2 pi.
type segment struct {
	area, perimeter, top, depth float64
}

// segmentAt gives the elements of the segment:
//
//	area = (θ - sin θ)/8   perimeter = θ/2   top width = sin θ/2   depth = (1 - cos θ/2)/2
func segmentAt(theta float64) segment {
	s, c := math.Sincos(theta / 2)
	return segment{area: thetaLessSine(theta) / 8, perimeter: theta / 2, top: s, depth: (1 - c) / 2}
}

// thetaLessSine is θ - sin θ, by its series where the two nearly cancel.
func thetaLessSine(theta float64) float64 {
	if theta > 0.1 {
		return theta - math.Sin(theta)
	}
	t2 := theta * theta
	return theta * t2 / 6 * (1 - t2/20*(1-t2/42*(1-t2/72)))
}

// thetaAt is the angle for a depth of 0 to 1 diameters.
func thetaAt(depth float64) float64 {
	return 4 * math.Asin(math.Sqrt(math.Min(math.Max(depth, 0), 1)))
}
