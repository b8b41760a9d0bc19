package riser

import (
	"math"

	"manway.example/manway"
)

// hole is the geometry of a pit in metres: a rectangle a x b, or a circle of
// diameter a where b is 0, at depth h below the ground at its middle, sides m
// horizontal to one vertical, ground rising by g to one along a.
type hole struct{ a, b, h, m, g float64 }

func (p Pit) hole() hole {
	h := hole{a: float64(p.Length + 2*p.Working), h: float64(p.Depth), m: p.Type.Slope(), g: math.Tan(float64(p.Ground))}
	if p.Shored {
		h.m = 0
	}
	if p.Width != 0 {
		h.b = float64(p.Width + 2*p.Working)
	}
	return h
}

// rim is how far uphill and downhill of the middle the pit meets the ground.
func (h hole) rim() (up, down float64) {
	reach := h.m*h.h + h.a/2
	return reach / (1 - h.m*h.g), reach / (1 + h.m*h.g)
}

// across is the width of the pit's top across the slope.
func (h hole) across() float64 {
	if h.b == 0 {
		return 2 * (h.m*h.h + h.a/2) / math.Sqrt(1-h.m*h.m*h.g*h.g)
	}
	return h.b + 2*h.m*(h.h+h.g*h.a/2)
}

// volume is that of the whole pit; see [DigOf] for the formulas.
func (h hole) volume() float64 {
	if h.b == 0 {
		return h.cone()
	}
	if h.g == 0 {
		return h.h * (h.a*h.b + h.m*h.h*(h.a+h.b) + 4./3*h.m*h.m*h.h*h.h)
	}
	up, down := h.rim()
	half := h.a / 2
	return prismoid(-down, -half, h.section) + prismoid(-half, half, h.section) + prismoid(half, up, h.section)
}

// cone is the volume of a round pit: of the cone down to its point, cut by the
// plane of the ground, less the point below the bottom.
func (h hole) cone() float64 {
	r := h.a / 2
	if h.m == 0 {
		return math.Pi * r * r * h.h
	}
	if h.g == 0 {
		R := r + h.m*h.h
		return math.Pi * h.h / 3 * (R*R + R*r + r*r)
	}
	H := h.h + r/h.m
	return math.Pi/3*h.m*h.m*H*H*H/math.Pow(1-h.m*h.m*h.g*h.g, 1.5) - math.Pi/3*r*r*r/h.m
}

// depth is that of the pit's lowest line at x along the slope, and widen by how
// much the bottom is wider there than b.
func (h hole) depth(x float64) (depth, widen float64) {
	beyond := max(math.Abs(x)-h.a/2, 0)
	depth = h.h + h.g*x
	if beyond > 0 && h.m > 0 {
		depth -= beyond / h.m
		widen = 2 * beyond
	}
	return max(depth, 0), widen
}

// section is the area of the pit across the slope at x.
func (h hole) section(x float64) float64 {
	d, widen := h.depth(x)
	return d * (h.b + widen + h.m*d)
}

// breadth is the width of the pit's top at x.
func (h hole) breadth(x float64) float64 {
	d, widen := h.depth(x)
	return h.b + widen + 2*h.m*d
}

// area is that of the pit's top in plan.
func (h hole) area() float64 {
	up, down := h.rim()
	if h.b == 0 {
		return math.Pi / 4 * (up + down) * h.across()
	}
	half := h.a / 2
	return prismoid(-down, -half, h.breadth) + prismoid(-half, half, h.breadth) + prismoid(half, up, h.breadth)
}

// prismoid is length/6 (first + 4 middle + last), exact where the section is a
// cubic along the length or simpler.
func prismoid(from, to float64, section func(float64) float64) float64 {
	if !(to > from) {
		return 0
	}
	return (to - from) / 6 * (section(from) + 4*section((from+to)/2) + section(to))
}

// measure fills the sizes of a dig.
func (d *Dig) measure() {
	h := d.Pit.hole()
	d.Slope = h.m
	d.Bottom = [2]manway.Length{manway.Length(h.a), manway.Length(h.b)}
	up, down := h.rim()
	d.Uphill, d.Downhill = manway.Length(up), manway.Length(down)
	d.Top[0] = d.Uphill + d.Downhill
	if h.b != 0 || h.g != 0 {
		d.Top[1] = manway.Length(h.across())
	}
	d.Deepest = manway.Length(h.h + h.g*up)
	d.TopArea = manway.Area(h.area())
	d.Hole = manway.Volume(h.volume())
}
