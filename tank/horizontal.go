package tank

import "manway.example/manway"

// HorizontalCylinder is a lying round tank. Length is its straight part;
// partitions stand in it, and the dished heads add to the first and the last
// compartment. The liquid of the straight part is
//
//	V = L (r^2 acos((r-h)/r) - (r-h) sqrt(2rh - h^2))
//
// and that of each head is told at [Head].
type HorizontalCylinder struct {
	Diameter, Length manway.Length // inside; Length of the straight part
	Inlet, Outlet    Head          // the zero value is a flat head
}

// Inside is the extent.
func (c HorizontalCylinder) Inside() Extent {
	r := float64(c.Diameter) / 2
	return Extent{
		Length: c.Length, Width: c.Diameter, Height: c.Diameter,
		InletHead: manway.Length(c.Inlet.reach(r)), OutletHead: manway.Length(c.Outlet.reach(r)),
	}
}

func (c HorizontalCylinder) validate(faults *manway.InputErrors) {
	had := len(*faults)
	size(faults, "Diameter", c.Diameter)
	size(faults, "Length", c.Length)
	if len(*faults) == had {
		c.Inlet.validate(faults, "Inlet", c.Diameter/2)
		c.Outlet.validate(faults, "Outlet", c.Diameter/2)
	}
}

func (c HorizontalCylinder) shrunk(wall, _, _ manway.Length) Shape {
	r := c.Diameter / 2
	inside := HorizontalCylinder{c.Diameter - 2*wall, c.Length, c.Inlet.shrunk(r, wall), c.Outlet.shrunk(r, wall)}
	for _, h := range [...]Head{c.Inlet, c.Outlet} {
		if h.Form == Flat {
			inside.Length -= wall
		}
	}
	return inside
}

func (c HorizontalCylinder) ends() (from, to float64, ok bool) { return 0, float64(c.Length), true }

func (c HorizontalCylinder) solid() solid {
	r := float64(c.Diameter) / 2
	return &barrel{radius: r, wide: 1, inlet: c.Inlet.end(r), outlet: c.Outlet.end(r)}
}

// barrel is a lying cylinder, or an oval that is wide times as wide as high.
type barrel struct {
	radius, wide  float64
	inlet, outlet end // nil: flat
}

// end is a dished head of a barrel.
type end interface {
	volume(depth float64) float64
	area(depth float64) float64
}

func (b *barrel) volume(s span, depth float64) float64 {
	v := (s.to - s.from) * b.wide * segment(b.radius, depth)
	if s.inlet && b.inlet != nil {
		v += b.inlet.volume(depth)
	}
	if s.outlet && b.outlet != nil {
		v += b.outlet.volume(depth)
	}
	return v
}

func (b *barrel) area(s span, depth float64) float64 {
	a := (s.to - s.from) * b.wide * chord(b.radius, depth)
	if s.inlet && b.inlet != nil {
		a += b.inlet.area(depth)
	}
	if s.outlet && b.outlet != nil {
		a += b.outlet.area(depth)
	}
	return a
}

// HorizontalEllipse is a lying oval tank with flat ends: its section is an
// ellipse of the given width and height, its liquid that of a circle of the
// same height times width/height.
type HorizontalEllipse struct {
	Width, Height, Length manway.Length // inside
}

// Inside is the extent.
func (e HorizontalEllipse) Inside() Extent {
	return Extent{Length: e.Length, Width: e.Width, Height: e.Height}
}

func (e HorizontalEllipse) validate(faults *manway.InputErrors) {
	size(faults, "Width", e.Width)
	size(faults, "Height", e.Height)
	size(faults, "Length", e.Length)
}

func (e HorizontalEllipse) shrunk(wall, _, _ manway.Length) Shape {
	return HorizontalEllipse{e.Width - 2*wall, e.Height - 2*wall, e.Length - 2*wall}
}

func (e HorizontalEllipse) ends() (from, to float64, ok bool) { return 0, float64(e.Length), true }

func (e HorizontalEllipse) solid() solid {
	return &barrel{radius: float64(e.Height) / 2, wide: float64(e.Width) / float64(e.Height)}
}
