package tank

import (
	"math"

	"manway.example/manway"
)

// VerticalCylinder is an upright round tank with a flat floor. A partition
// across it stands on a chord, its position measured along the diameter from
// the inlet:
//
//	V = depth (A(to) - A(from)),  A(x) the circular segment of height x
type VerticalCylinder struct {
	Diameter, Height manway.Length // inside
}

// Inside is the extent; the length is the diameter.
func (c VerticalCylinder) Inside() Extent {
	return Extent{Length: c.Diameter, Width: c.Diameter, Height: c.Height}
}

func (c VerticalCylinder) validate(faults *manway.InputErrors) {
	size(faults, "Diameter", c.Diameter)
	size(faults, "Height", c.Height)
}

func (c VerticalCylinder) shrunk(wall, roof, floor manway.Length) Shape {
	return VerticalCylinder{c.Diameter - 2*wall, c.Height - roof - floor}
}

func (c VerticalCylinder) ends() (from, to float64, ok bool) { return 0, float64(c.Diameter), true }

func (c VerticalCylinder) solid() solid { return &column{float64(c.Diameter) / 2} }

// column is an upright cylinder.
type column struct{ radius float64 }

func (c *column) volume(s span, depth float64) float64 { return c.area(s, depth) * depth }

func (c *column) area(s span, _ float64) float64 {
	if s.inlet && s.outlet {
		return math.Pi * c.radius * c.radius
	}
	return segment(c.radius, s.to) - segment(c.radius, s.from)
}

// Frustum is an upright round tank that narrows or widens evenly with the
// height. It takes no partition.
//
//	r(z) = r0 + (r1 - r0) z/H
//	V    = pi z (r0^2 + r0 r(z) + r(z)^2) / 3
type Frustum struct {
	BottomDiameter, TopDiameter, Height manway.Length // inside
}

// Inside is the extent; length and width are the larger diameter.
func (f Frustum) Inside() Extent {
	d := max(f.BottomDiameter, f.TopDiameter)
	return Extent{Length: d, Width: d, Height: f.Height}
}

func (f Frustum) validate(faults *manway.InputErrors) {
	size(faults, "BottomDiameter", f.BottomDiameter)
	size(faults, "TopDiameter", f.TopDiameter)
	size(faults, "Height", f.Height)
}

func (f Frustum) shrunk(wall, roof, floor manway.Length) Shape {
	return Frustum{f.BottomDiameter - 2*wall, f.TopDiameter - 2*wall, f.Height - roof - floor}
}

func (f Frustum) ends() (from, to float64, ok bool) { return 0, 0, false }

func (f Frustum) solid() solid {
	return &cone{float64(f.BottomDiameter) / 2, float64(f.TopDiameter-f.BottomDiameter) / 2 / float64(f.Height)}
}

// cone is a frustum: its radius at the bottom, and what it grows by for each
// unit of height.
type cone struct{ radius, slope float64 }

func (c *cone) volume(_ span, depth float64) float64 {
	r := c.radius + c.slope*depth
	return math.Pi / 3 * depth * (c.radius*c.radius + c.radius*r + r*r)
}

func (c *cone) area(_ span, depth float64) float64 {
	r := c.radius + c.slope*depth
	return math.Pi * r * r
}

// Sphere is a round tank. It takes no partition.
//
//	V = pi h^2 (3r - h) / 3
type Sphere struct {
	Diameter manway.Length // inside
}

// Inside is the extent.
func (s Sphere) Inside() Extent {
	return Extent{Length: s.Diameter, Width: s.Diameter, Height: s.Diameter}
}

func (s Sphere) validate(faults *manway.InputErrors) { size(faults, "Diameter", s.Diameter) }

func (s Sphere) shrunk(wall, _, _ manway.Length) Shape { return Sphere{s.Diameter - 2*wall} }

func (s Sphere) ends() (from, to float64, ok bool) { return 0, 0, false }

func (s Sphere) solid() solid { return &ball{float64(s.Diameter)} }

// ball is a sphere.
type ball struct{ diameter float64 }

func (b *ball) volume(_ span, depth float64) float64 {
	return math.Pi / 3 * depth * depth * (1.5*b.diameter - depth)
}

func (b *ball) area(_ span, depth float64) float64 { return math.Pi * depth * (b.diameter - depth) }
