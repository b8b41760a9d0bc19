package tank

import "math"

// vessel is a volume as a function of depth, and its derivative.
type vessel interface {
	liquid(depth float64) float64
	surface(depth float64) float64
}

// invert finds the depth at which a vessel holds v, for 0 <= v <= full and
// depths from 0 to height, by Newton steps kept within a bracket that every
// step narrows:
//
//	d' = d - (V(d) - v)/A(d), or the middle where that leaves the bracket
//
// It ends where V(d) is within 1e-15 of full from v, or the bracket is down to
// neighbouring numbers; for a volume that grows with the depth one of the two
// comes within a few steps, at the latest after some sixty halvings.
func invert[V vessel](t V, v, full, height float64) float64 {
	if v == 0 {
		return 0
	}
	if v == full {
		return height
	}
	low, high := 0.0, height
	d := height * v / full
	for range 200 {
		off := t.liquid(d) - v
		if math.Abs(off) <= 1e-15*full {
			return d
		}
		if off > 0 {
			high = d
		} else {
			low = d
		}
		next := d - off/t.surface(d)
		if !(next > low && next < high) {
			next = low + (high-low)/2
		}
		if next == d || !(next > low && next < high) {
			return d
		}
		d = next
	}
	return d
}
