package hydraulics

import "math"

// rising finds where a function that only rises crosses zero between lo and hi,
// by Ridders' method: each step halves the bracket at least and squares the
// error near the end. It returns the end nearest to zero where there is no
// crossing, and the number of steps.
func rising(f func(float64) float64, lo, hi float64) (x float64, steps int) {
	flo, fhi := f(lo), f(hi)
	switch {
	case !(flo < 0):
		return lo, 0
	case !(fhi > 0):
		return hi, 0
	}
	last := math.Inf(1)
	for steps = 1; steps <= 200; steps++ {
		mid := lo + (hi-lo)/2
		fmid := f(mid)
		x = mid + (mid-lo)*(-fmid)/math.Sqrt(fmid*fmid-flo*fhi)
		if fmid == 0 || !(x > lo && x < hi) {
			x = mid
		}
		fx := f(x)
		if fx == 0 || math.Abs(x-last) <= 2e-15*math.Abs(x) || hi-lo <= 2e-15*math.Abs(x) {
			return x, steps
		}
		last = x
		for _, p := range [2][2]float64{{mid, fmid}, {x, fx}} {
			if p[1] < 0 && p[0] > lo {
				lo, flo = p[0], p[1]
			} else if p[1] >= 0 && p[0] < hi {
				hi, fhi = p[0], p[1]
			}
		}
	}
	return x, steps
}

// logRatio is ln(a/b).
func logRatio[Q ~float64](a, b Q) float64 { return math.Log(float64(a) / float64(b)) }
