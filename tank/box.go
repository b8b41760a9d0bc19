package tank

import (
	"math"

	"manway.example/manway"
)

// Box is a rectangular tank, its walls plumb or drafted, with a fillet along
// the four edges of its floor or without.
//
// Draft leans all walls outwards evenly, so that the floor is centred under
// Length and Width, which are then the sizes at the height. The fillet is a
// quarter round, tangent to floor and wall and mitred in the corners:
//
//	half(z) = c + sqrt(z (2r - z))     below the tangent point, z < r (1 - sin a)
//	half(z) = floor/2 + z tan a        above it
//	V       = integral of length(z) width(z), closed form
//
// Errors: a size outside 4 in to 100 ft, a floor larger than the top or less
// than half of it, a fillet that does not fit.
type Box struct {
	Length, Width, Height   manway.Length // inside
	FloorLength, FloorWidth manway.Length // inside at the floor; 0: as above
	Fillet                  manway.Length // radius along the floor's edges; 0: none
}

// Inside is the extent at the height.
func (b Box) Inside() Extent { return Extent{Length: b.Length, Width: b.Width, Height: b.Height} }

func (b Box) validate(faults *manway.InputErrors) {
	had := len(*faults)
	size(faults, "Length", b.Length)
	size(faults, "Width", b.Width)
	size(faults, "Height", b.Height)
	if b.FloorLength != 0 {
		manway.Within(faults, "FloorLength", b.FloorLength, b.Length/2, b.Length)
	}
	if b.FloorWidth != 0 {
		manway.Within(faults, "FloorWidth", b.FloorWidth, b.Width/2, b.Width)
	}
	manway.NotNegative(faults, "Fillet", b.Fillet)
	if b.Fillet == 0 || len(*faults) > had {
		return
	}
	long, across := b.sides()
	if !(long.half[0] >= 0 && across.half[0] >= 0) || b.Fillet > b.Height {
		faults.Add("Fillet", b.Fillet.String(), "at most the height and half the floor's width")
	}
}

func (b Box) shrunk(wall, roof, floor manway.Length) Shape {
	b.Length -= 2 * wall
	b.Width -= 2 * wall
	b.Height -= roof + floor
	if b.FloorLength != 0 {
		b.FloorLength -= 2 * wall
	}
	if b.FloorWidth != 0 {
		b.FloorWidth -= 2 * wall
	}
	return b
}

func (b Box) ends() (from, to float64, ok bool) {
	if b.plumb() {
		return 0, float64(b.Length), true
	}
	long, _ := b.sides()
	return float64(b.Length)/2 - long.at(0), float64(b.Length)/2 + long.at(0), true
}

func (b Box) plumb() bool {
	return b.Fillet == 0 && (b.FloorLength == 0 || b.FloorLength == b.Length) && (b.FloorWidth == 0 || b.FloorWidth == b.Width)
}

func (b Box) solid() solid {
	if b.plumb() {
		return &prism{float64(b.Width)}
	}
	long, across := b.sides()
	return &drafted{float64(b.Length) / 2, long, across}
}

// prism is a box without draft and fillet.
type prism struct{ width float64 }

func (p *prism) volume(s span, depth float64) float64 { return (s.to - s.from) * p.width * depth }
func (p *prism) area(s span, _ float64) float64       { return (s.to - s.from) * p.width }

// drafted is a box with draft or fillet.
type drafted struct {
	middle       float64 // half the length at the top
	long, across side
}

func (b *drafted) volume(s span, depth float64) float64 {
	fixed, ends := b.reach(s)
	if b.long.radius == 0 { // (fixed + ends long(z)) 2 across(z), term by term
		l, a, m, c := fixed+ends*b.long.half[1], b.across.half[1], ends*b.long.lean, b.across.lean
		return 2 * depth * (l*a + depth*((l*c+a*m)/2+depth*m*c/3))
	}
	var sum, z float64
	for _, top := range [...]float64{min(b.long.tangent, b.across.tangent), max(b.long.tangent, b.across.tangent), depth} {
		if top = min(top, depth); top > z {
			l, w := b.long.on(z), b.across.on(z)
			l = linear{fixed + ends*l.one, ends * l.z, ends * l.arc}
			sum += 2 * (l.times(w, b.long.radius, top) - l.times(w, b.long.radius, z))
			z = top
		}
	}
	return sum
}

func (b *drafted) area(s span, depth float64) float64 {
	fixed, ends := b.reach(s)
	return (fixed + ends*b.long.at(depth)) * 2 * b.across.at(depth)
}

// reach parts the length of a span into what does not change with the height
// and the number of half lengths, one for each end wall.
func (b *drafted) reach(s span) (fixed, ends float64) {
	if s.inlet {
		s.from, ends = b.middle, ends+1
	}
	if s.outlet {
		s.to, ends = b.middle, ends+1
	}
	return s.to - s.from, ends
}

// side is half a horizontal size of a box as a function of the height.
type side struct {
	half    [2]float64 // half size at the floor: where the arc's centre stands; where the wall's plane meets the floor
	lean    float64    // tangent of the draft angle
	radius  float64
	tangent float64 // height at which the fillet meets the wall
}

func (b Box) sides() (long, across side) {
	return newSide(b.Length, b.FloorLength, b.Height, b.Fillet), newSide(b.Width, b.FloorWidth, b.Height, b.Fillet)
}

func newSide(top, floor, height, fillet manway.Length) side {
	if floor == 0 {
		floor = top
	}
	s := side{lean: float64(top-floor) / 2 / float64(height), radius: float64(fillet)}
	s.half[1] = float64(floor) / 2
	cos := 1 / math.Hypot(1, s.lean)
	s.tangent = s.radius * (1 - s.lean*cos)
	s.half[0] = s.half[1] + s.tangent*s.lean - s.radius*cos
	return s
}

// on is the half size from height z up to the next tangent point.
func (s side) on(z float64) linear {
	if z < s.tangent {
		return linear{one: s.half[0], arc: 1}
	}
	return linear{one: s.half[1], z: s.lean}
}

func (s side) at(z float64) float64 {
	f := s.on(z)
	return f.one + f.z*z + f.arc*math.Sqrt(max(0, z*(2*s.radius-z)))
}

// linear is one + z*z + arc*sqrt(z (2r - z)).
type linear struct{ one, z, arc float64 }

// times is the integral of f g from 0 to z, r being the radius of the arcs:
//
//	int s = segment/2, int z s = r int s - s^3/3, int s^2 = r z^2 - z^3/3
func (f linear) times(g linear, r, z float64) float64 {
	sum := f.one*g.one*z + (f.one*g.z+f.z*g.one)*z*z/2 + f.z*g.z*z*z*z/3
	if f.arc == 0 && g.arc == 0 {
		return sum
	}
	s := math.Sqrt(max(0, z*(2*r-z)))
	is := segment(r, z) / 2
	return sum + (f.one*g.arc+f.arc*g.one)*is + (f.z*g.arc+f.arc*g.z)*(r*is-s*s*s/3) + f.arc*g.arc*(r-z/3)*z*z
}
