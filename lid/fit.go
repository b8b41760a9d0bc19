package lid

import "manway.example/manway"

import "math"

// falls says whether the lid can fall through its hole, turned any way.
//
// A straight-sided lid passes a hole flat, on edge along its length or on edge
// along its width; each is a rectangle or a circle that must go through the
// hole. A narrowing lid is taken by its top, its widest part. Where it goes
// only with the two deepest chips of the rim added to the hole, the answer is
// unknown.
func (l Lid) falls(s Seat) manway.Answer {
	if s.Opening == 0 {
		return manway.Unknown
	}
	hole := [2]float64{float64(s.Opening), float64(s.OpeningLong)}
	if l.passes(hole) {
		return manway.Yes
	}
	first, second := 0.0, 0.0
	for _, c := range s.Chips {
		if in := float64(c.In); in > first {
			first, second = in, first
		} else {
			second = max(second, in)
		}
	}
	hole[0] += first + second
	if hole[1] > 0 {
		hole[1] += first + second
	}
	if l.passes(hole) {
		return manway.Unknown
	}
	return manway.No
}

// passes says whether the lid goes through a hole.
func (l Lid) passes(hole [2]float64) bool {
	t := float64(l.Thickness)
	if l.Shape.Round() {
		D := float64(l.Diameter)
		return circlePasses(D, hole) || rectanglePasses(D, t, hole)
	}
	L, W := float64(l.Length), float64(l.Width)
	return rectanglePasses(L, W, hole) || rectanglePasses(L, t, hole) || rectanglePasses(W, t, hole)
}

// circlePasses says whether a circle goes through a hole {short side, long
// side}, or {diameter, 0}.
func circlePasses(diameter float64, hole [2]float64) bool { return diameter <= hole[0] }

// rectanglePasses says whether a rectangle goes through a hole. In a round
// hole its diagonal must go; in a rectangle a x b (a >= b) a rectangle p x q
// (p >= q) goes where p <= a and q <= b, or turned, where q <= b and
//
//	((a + b)/(p + q))2 + ((a - b)/(p - q))2 >= 2        (Carver 1957)
func rectanglePasses(p, q float64, hole [2]float64) bool {
	b, a := hole[0], hole[1]
	p, q = math.Max(p, q), math.Min(p, q)
	if a == 0 {
		return math.Hypot(p, q) <= b
	}
	if q > b {
		return false
	}
	if p <= a {
		return true
	}
	if p == q {
		return false
	}
	sum, difference := (a+b)/(p+q), (a-b)/(p-q)
	return sum*sum+difference*difference >= 2
}
