package tank

import (
	"math"

	"manway.example/manway"
)

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
func (f HeadForm) String() string { return manway.Word(headForms[:], f) }

// MarshalText is the same as String.
func (f HeadForm) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText accepts flat, hemispherical, ellipsoidal, spherical-cap and
// torispherical.
func (f *HeadForm) UnmarshalText(text []byte) error {
	return manway.ReadWord(f, "head", headForms[:], text)
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

// shrunk is the inside of a head whose outside is h, on a cylinder of outside
// radius r, for walls of even thickness.
func (h Head) shrunk(r, wall manway.Length) Head {
	switch h.Form {
	case Ellipsoidal, SphericalCap:
		h.Depth = manway.Length(h.reach(float64(r))) - wall
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

// end prepares a dished head of a cylinder of radius r; nil for a flat one.
func (h Head) end(r float64) end {
	switch h.Form {
	case Flat:
		return nil
	case SphericalCap:
		return newCap(r, float64(h.Depth))
	case Torispherical:
		t := newToris(r, float64(h.Crown), float64(h.Knuckle))
		return &t
	}
	return &ellipsoid{r, math.Pi / 2 * h.reach(r)}
}

// ellipsoid is half an ellipsoid of revolution on its equator of radius r; k is
// pi/2 times its depth.
type ellipsoid struct{ radius, k float64 }

func (e *ellipsoid) volume(depth float64) float64 {
	return e.k * depth * depth * (1 - depth/(3*e.radius))
}

func (e *ellipsoid) area(depth float64) float64 { return e.k / e.radius * depth * (2*e.radius - depth) }
