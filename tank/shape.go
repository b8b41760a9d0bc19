package tank

import "manway.example/manway"

// Shape is the hollow of a tank: [Box], [VerticalCylinder],
// [HorizontalCylinder], [HorizontalEllipse], [Frustum], [Sphere], [Surveyed]
// or [Nominal].
//
// Lengths run from the inside of the inlet end, heights from the floor (the
// lowest point inside).
type Shape interface {
	// Inside is the extent of the hollow.
	Inside() Extent

	// validate adds what is wrong with the sizes; the rest is asked only of a
	// shape without faults.
	validate(faults *manway.InputErrors)
	// shrunk is the shape whose outside sizes are the receiver.
	shrunk(wall, roof, floor manway.Length) Shape
	// ends says between which positions a partition may stand; ok is false
	// where the shape takes none.
	ends() (from, to float64, ok bool)
	// solid prepares the geometry for being asked often.
	solid() solid
}

// solid is the geometry of a shape in SI: the liquid of a span below a depth,
// and its surface. Depths run from 0 to the inside height.
type solid interface {
	volume(s span, depth float64) float64
	area(s span, depth float64) float64
}

// span is a stretch of the length. Where it reaches an end, the end wall and its
// head bound it, wherever they are at a height. A shape that takes no partition
// has one span, the whole.
type span struct {
	from, to      float64
	inlet, outlet bool // it reaches that end
}

// whole is the span of a shape from end to end.
func whole(s Shape) span { return span{to: float64(s.Inside().Length), inlet: true, outlet: true} }

// Extent is the inside size of a tank: the straight length, the greatest width
// and height, and how far dished heads reach beyond the straight length.
type Extent struct {
	Length, Width, Height manway.Length
	InletHead, OutletHead manway.Length
}

// The range of any inside size: from a small pump chamber to the largest tank
// that is still set in one piece.
const (
	leastSize    = 4 * manway.Inch
	greatestSize = 100 * manway.Foot
)

func size(faults *manway.InputErrors, field string, x manway.Length) {
	manway.Within(faults, field, x, leastSize, greatestSize)
}
