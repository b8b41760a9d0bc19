package tank

import (
	"math"

	"manway.example/manway"
)

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
	inside := HorizontalCylinder{c.Diameter - 2*wall, c.Length, c.Inlet.shrunk(wall), c.Outlet.shrunk(wall)}
	for _, h := range [...]Head{c.Inlet, c.Outlet} {
		if h.Form == Flat {
			inside.Length -= wall
		}
	}
	return inside
}

func (c HorizontalCylinder) ends() (from, to float64, ok bool) { return 0, float64(c.Length), true }

func (c HorizontalCylinder) volume(from, to, depth float64) float64 {
	r, l := float64(c.Diameter)/2, float64(c.Length)
	v := (min(to, l) - max(from, 0)) * segment(r, depth)
	if from <= 0 && c.Inlet.Form != Flat {
		v += c.Inlet.volume(r, depth)
	}
	if to >= l && c.Outlet.Form != Flat {
		v += c.Outlet.volume(r, depth)
	}
	return v
}

func (c HorizontalCylinder) area(from, to, depth float64) float64 {
	r, l := float64(c.Diameter)/2, float64(c.Length)
	a := (min(to, l) - max(from, 0)) * chord(r, depth)
	if from <= 0 && c.Inlet.Form != Flat {
		a += c.Inlet.area(r, depth)
	}
	if to >= l && c.Outlet.Form != Flat {
		a += c.Outlet.area(r, depth)
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

func (e HorizontalEllipse) volume(from, to, depth float64) float64 {
	return (min(to, float64(e.Length)) - max(from, 0)) * e.flattening() * segment(float64(e.Height)/2, depth)
}

func (e HorizontalEllipse) area(from, to, depth float64) float64 {
	return (min(to, float64(e.Length)) - max(from, 0)) * e.flattening() * chord(float64(e.Height)/2, depth)
}

func (e HorizontalEllipse) flattening() float64 { return float64(e.Width) / float64(e.Height) }

// HeadForm is the form of one end of a lying cylinder.
type HeadForm uint8

// The forms of a head. The zero value is flat.
const (
	Flat HeadForm = iota
	Hemispherical
	Ellipsoidal
	SphericalCap
	Torispherical
)

var headForms = [...]string{"flat", "hemispherical", "ellipsoidal", "spherical-cap", "torispherical"}

// String is the form in words.
func (f HeadForm) String() string {
	if int(f) < len(headForms) {
		return headForms[f]
	}
	return "unknown form of head"
}

// MarshalText is the same as String.
func (f HeadForm) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText accepts flat, hemispherical, ellipsoidal, spherical-cap and
// torispherical.
func (f *HeadForm) UnmarshalText(text []byte) error {
	for i, name := range headForms {
		if name == string(text) {
			*f = HeadForm(i)
			return nil
		}
	}
	return &manway.InputError{Field: "head", Value: `"` + string(text) + `"`, Want: "flat, hemispherical, ellipsoidal, spherical-cap or torispherical"}
}

// Head is one end of a lying cylinder of inside radius r, all sizes inside.
//
//	Flat           nothing beyond the straight part
//	Hemispherical  depth a = r
//	Ellipsoidal    depth a, r/2 (2:1) where Depth is 0:
//	               V = pi a h^2 (1 - h/3r) / 2
//	SphericalCap   depth a, 0 < a <= r: part of a sphere of radius (a^2 + r^2)/2a;
//	               closed form, for shallow caps by quadrature
//	Torispherical  Crown >= r, 0 < Knuckle <= r: the crown in closed form, the
//	               knuckle by quadrature
//
// Quadrature is Gauss-Legendre of 48 points in a variable that leaves the
// integrand smooth; its error stays below 1e-13 of the head's volume.
// Source: Jones, Calculating Tank Volume.
type Head struct {
	Form           HeadForm
	Depth          manway.Length // Ellipsoidal (0: 2:1) and SphericalCap
	Crown, Knuckle manway.Length // Torispherical
}

func (h Head) validate(faults *manway.InputErrors, field string, r manway.Length) {
	if int(h.Form) >= len(headForms) {
		faults.Add(field+".Form", h.Form.String(), "a form of head of this package")
		return
	}
	switch {
	case h.Form == SphericalCap:
		within(faults, field+".Depth", h.Depth, r)
	case h.Form == Ellipsoidal && h.Depth != 0:
		within(faults, field+".Depth", h.Depth, 4*r)
	case h.Depth != 0:
		faults.Add(field+".Depth", h.Depth.String(), "no depth for a "+h.Form.String()+" head")
	}
	switch {
	case h.Form == Torispherical:
		manway.Within(faults, field+".Crown", h.Crown, r, 20*r)
		within(faults, field+".Knuckle", h.Knuckle, r)
	case h.Crown != 0 || h.Knuckle != 0:
		faults.Add(field+".Crown", h.Crown.String(), "no crown or knuckle for a "+h.Form.String()+" head")
	}
}

// within adds a fault unless x is above a millionth of its limit, and at most
// the limit.
func within(faults *manway.InputErrors, field string, x, limit manway.Length) {
	if !(x >= limit*1e-6 && x <= limit) {
		faults.Add(field, x.String(), "above 0, at most "+limit.String())
	}
}

// shrunk is the inside of a head whose outside is h, for walls of even
// thickness.
func (h Head) shrunk(wall manway.Length) Head {
	switch h.Form {
	case Ellipsoidal, SphericalCap:
		if h.Depth != 0 {
			h.Depth -= wall
		}
	case Torispherical:
		h.Crown -= wall
		h.Knuckle -= wall
	}
	return h
}

// reach is the depth of the head.
func (h Head) reach(r float64) float64 {
	switch h.Form {
	case Hemispherical:
		return r
	case Ellipsoidal:
		if h.Depth == 0 {
			return r / 2
		}
		return float64(h.Depth)
	case SphericalCap:
		return float64(h.Depth)
	case Torispherical:
		t := newToris(r, float64(h.Crown), float64(h.Knuckle))
		return t.depth
	}
	return 0
}

func (h Head) volume(r, depth float64) float64 {
	switch h.Form {
	case SphericalCap:
		return capVolume(r, float64(h.Depth), depth-r)
	case Torispherical:
		t := newToris(r, float64(h.Crown), float64(h.Knuckle))
		return t.volume(depth - r)
	}
	return math.Pi / 2 * h.reach(r) * depth * depth * (1 - depth/(3*r))
}

func (h Head) area(r, depth float64) float64 {
	switch h.Form {
	case SphericalCap:
		return capArea(r, float64(h.Depth), depth-r)
	case Torispherical:
		t := newToris(r, float64(h.Crown), float64(h.Knuckle))
		return t.area(depth - r)
	}
	return math.Pi / 2 * h.reach(r) / r * depth * (2*r - depth)
}
