package manway

import (
	"fmt"
	"math"
	"strconv"
)

// Within adds a fault unless lo <= v <= hi, for quantities, counts and numbers
// without a unit; NaN is a fault. It allocates only where there is one.
func Within[Q ~int | ~float64](faults *InputErrors, field string, v, lo, hi Q) {
	if !(v >= lo && v <= hi) {
		faults.Add(field, shown(v), bound(lo)+" to "+bound(hi))
	}
}

// bound is a limit as an error shows it. One that is no number comes from another
// field, which has a fault of its own.
func bound[Q ~int | ~float64](v Q) string {
	if !finite(float64(v)) {
		return "a limit that another field spoils"
	}
	return shown(v)
}

// NotNegative adds a fault unless v is finite and 0 or more.
func NotNegative[Q ~float64](faults *InputErrors, field string, v Q) {
	if !(v >= 0) || math.IsInf(float64(v), 1) {
		faults.Add(field, shown(v), "0 or more and finite")
	}
}

// Absent adds a fault unless v is 0, as it must be where, for the reason given,
// it is not asked for: what contradicts itself is not ignored.
func Absent[Q ~float64](faults *InputErrors, field string, v Q, because string) {
	if v != 0 {
		faults.Add(field, shown(v), "0 where "+because)
	}
}

// shown is v as an error shows it: with its unit where it has one.
func shown[Q ~int | ~float64](v Q) string {
	if !finite(float64(v)) {
		return strconv.FormatFloat(float64(v), 'g', -1, 64)
	}
	switch v := any(v).(type) {
	case fmt.Stringer:
		return v.String()
	case int:
		return strconv.Itoa(v)
	}
	return strconv.FormatFloat(float64(v), 'g', 6, 64)
}

// slack is the relative distance within which a limit counts as reached, so
// that 18 in of 6 in rings is 3 rings and 15.6 of 46.8 is one third.
const slack = 1e-9

// Reached reports whether v is at or above limit, within one part in 1e9.
func Reached[Q ~float64](v, limit Q) bool {
	return float64(v) >= float64(limit)-slack*math.Abs(float64(limit))
}

// Pieces is how many whole pieces make up at least total: 18 in of 6 in rings
// is 3. It fails unless each is above 0, total is 0 or more, and the count is
// below a billion.
func Pieces[Q ~float64](total, each Q) (int, error) {
	n := math.Ceil(float64(total)/float64(each) - slack*math.Max(1, math.Abs(float64(total)/float64(each))))
	if !(each > 0) || !(total >= 0) || !(n < 1e9) {
		return 0, InputErrors{{Field: "Pieces", Value: fmt.Sprintf("%g by %g", float64(total), float64(each)), Want: "a total of 0 or more and pieces above 0, less than a billion of them"}}
	}
	return int(n), nil
}
