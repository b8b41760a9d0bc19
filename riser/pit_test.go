package riser

import (
	"math"
	"testing"

	"manway.example/manway"
)

// Property (two ways): a pit's volume and top are the sum of thin upright columns,
// on level and on sloping ground.
func TestHoleAgainstColumns(t *testing.T) {
	for _, p := range []Pit{
		{Length: 4 * manway.Foot, Width: 6 * manway.Foot, Depth: 4 * manway.Foot},
		{Length: 3 * manway.Foot, Width: 7 * manway.Foot, Working: manway.Foot, Depth: 3 * manway.Foot, Ground: 9 * manway.Degree, Type: TypeBDeclared},
		{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 3 * manway.Foot},
		{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 3 * manway.Foot, Ground: 12 * manway.Degree},
		{Length: 30 * manway.Inch, Width: 50 * manway.Inch, Depth: 3 * manway.Foot, Ground: 6 * manway.Degree, Shored: true},
		{Length: 30 * manway.Inch, Depth: 3 * manway.Foot, Ground: 6 * manway.Degree, Shored: true},
	} {
		d := must(DigOf(p))
		volume, area := columns(p)
		near(t, "volume of "+d.Top[0].String(), float64(d.Hole), volume, 4e-3) // the columns at the rim are whole or missing
		near(t, "top of "+d.Top[0].String(), float64(d.TopArea), area, 4e-3)
	}
}

// columns sums a pit's columns over a grid of the plan.
func columns(p Pit) (volume, area float64) {
	a, b, g := float64(p.Length+2*p.Working), float64(p.Width+2*p.Working), math.Tan(float64(p.Ground))
	slope := p.Type.Slope()
	const step = 0.005
	for x := -4.0; x < 4; x += step {
		for y := -3.5; y < 3.5; y += step {
			var out float64 // beyond the bottom's edge
			u, v := x+step/2, y+step/2
			if p.Width == 0 {
				out = math.Hypot(u, v) - a/2
			} else {
				out = max(math.Abs(u)-a/2, math.Abs(v)-b/2)
			}
			high := float64(p.Depth) + g*u
			switch {
			case out > 0 && p.Shored:
				continue
			case out > 0:
				high -= out / slope
			}
			if high > 0 {
				volume += high * step * step
				area += step * step
			}
		}
	}
	return volume, area
}

// Property (continuous): the formulas for sloping ground tend to those for level
// ground. Property (symmetric): a level pit does not care which side is its length.
func TestHoleIsSteady(t *testing.T) {
	for _, width := range []manway.Length{0, 5 * manway.Foot} {
		level := must(DigOf(Pit{Length: 4 * manway.Foot, Width: width, Depth: 3 * manway.Foot}))
		slight := must(DigOf(Pit{Length: 4 * manway.Foot, Width: width, Depth: 3 * manway.Foot, Ground: 1e-6}))
		near(t, "slight slope", float64(slight.Hole), float64(level.Hole), 1e-9)
	}
	ab := must(DigOf(Pit{Length: 4 * manway.Foot, Width: 7 * manway.Foot, Depth: 3 * manway.Foot}))
	ba := must(DigOf(Pit{Length: 7 * manway.Foot, Width: 4 * manway.Foot, Depth: 3 * manway.Foot}))
	near(t, "turned", float64(ab.Hole), float64(ba.Hole), 1e-12)
}

// Property (monotone): flatter sides dig more, wherever the pit stands, and a
// shored pit digs least. Property (bounded): soil loosened takes more room than it
// had, and compacted less than loose.
func TestSlopeAndEarth(t *testing.T) {
	p := Pit{Length: 4 * manway.Foot, Width: 5 * manway.Foot, Depth: 4 * manway.Foot}
	flat := must(DigOf(p)).Hole
	p.Type = TypeBDeclared
	steep := must(DigOf(p)).Hole
	p.Shored = true
	plumb := must(DigOf(p)).Hole
	if !(TypeC.Slope() > TypeBDeclared.Slope() && flat > steep && steep > plumb) {
		t.Errorf("holes %v %v %v", flat, steep, plumb)
	}
	near(t, "shored", float64(plumb), float64(p.Length.Times(p.Width).Times(p.Depth)), 1e-12)
	for _, e := range []Earth{Loam, Sand, Clay} {
		if !(e.Loose() > 1 && e.Compacted() > 0.5 && e.Compacted() < e.Loose()) {
			t.Errorf("%v: loose %v, compacted %v", e, e.Loose(), e.Compacted())
		}
	}
}
