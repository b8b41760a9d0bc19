package cost

import (
	"math"
	"testing"
)

// The nearest change on each side is found, not one beyond it: b wins between
// 6.5 and 8.5, c below 2.5.
func TestNearestChange(t *testing.T) {
	wins := func(x float64) string {
		switch {
		case x < 2.5:
			return "c"
		case x > 6.5 && x < 8.5:
			return "b"
		}
		return "a"
	}
	list := nearest(5, 0, 10, 1, wins)
	if len(list) != 2 || math.Abs(list[0].At-2.5) > 1e-9 || list[0].Below != "c" || list[0].Above != "a" ||
		math.Abs(list[1].At-6.5) > 1e-9 || list[1].Below != "a" || list[1].Above != "b" {
		t.Errorf("%+v", list)
	}
	// The last step is cut at the end: nothing beyond 10 is asked.
	for _, f := range nearest(5, 0, 10, 3, func(x float64) string {
		if x < 0 || x > 10 {
			t.Errorf("asked at %g", x)
		}
		return map[bool]string{true: "a", false: "b"}[x < 9.5]
	}) {
		if !(math.Abs(f.At-9.5) <= 1e-9) {
			t.Errorf("%+v", f)
		}
	}
}
