package lid

import (
	"math"

	"manway.example/manway"
)

// discArea is the area of a circle.
func discArea(diameter float64) float64 { return math.Pi / 4 * diameter * diameter }

// topArea is the plan area of the lid's top.
func (l Lid) topArea() float64 {
	if l.Shape.Round() {
		return discArea(float64(l.Diameter))
	}
	return float64(l.Length) * float64(l.Width)
}

// bottomArea is the plan area of its underside.
func (l Lid) bottomArea() float64 {
	switch l.Shape {
	case BevelledPlug, SteppedPlug:
		return discArea(float64(l.BottomDiameter))
	case TaperedSlab, SteppedSlab:
		return float64(l.BottomLength) * float64(l.BottomWidth)
	}
	return l.topArea()
}

// solid is the volume of the lid before recesses, in cubic metres:
//
//	disc, slab       V = A t
//	stepped          V = A1 flange + A2 (t - flange)
//	bevelled plug    V = pi t (R2 + R r + r2)/3        (frustum of a cone)
//	tapered slab     V = t/6 (A1 + 4 Am + A2)          (prismoidal formula)
//
// where Am has the mean length and the mean width. Both narrowing forms are
// exact.
func (l Lid) solid() float64 {
	t := float64(l.Thickness)
	top, bottom := l.topArea(), l.bottomArea()
	switch l.Shape {
	case SteppedPlug, SteppedSlab:
		f := float64(l.Flange)
		return top*f + bottom*(t-f)
	case BevelledPlug:
		R, r := float64(l.Diameter)/2, float64(l.BottomDiameter)/2
		return math.Pi * t / 3 * (R*R + R*r + r*r)
	case TaperedSlab:
		middle := (float64(l.Length) + float64(l.BottomLength)) / 2 * (float64(l.Width) + float64(l.BottomWidth)) / 2
		return t / 6 * (top + 4*middle + bottom)
	}
	return top * t
}

// recessed is the volume of all recesses of one piece.
func (l Lid) recessed() float64 {
	v := 0.0
	for _, r := range l.Recesses {
		v += r.volume(float64(l.Thickness))
	}
	return v
}

// Volume is the volume of one piece with its recesses taken out. It fails as
// [Lid.Validate] does.
//
// Source: geometry of cylinder, frustum and prismoid.
func (l Lid) Volume() (manway.Volume, error) {
	if err := l.Validate(); err != nil {
		return 0, err
	}
	return manway.Volume(l.solid() - l.recessed()), nil
}
