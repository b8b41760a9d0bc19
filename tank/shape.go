package tank

import "manway.example/manway"

// Shape is the hollow of a tank: [Box], [VerticalCylinder],
// [HorizontalCylinder], [HorizontalEllipse], [Frustum], [Sphere], [Surveyed]
// or [Nominal].
//
// Lengths run from the inside of the inlet end, heights from the floor (the
// lowest point inside). In the unexported methods all is in SI; from and to are
// positions along the length, from <= 0 standing for the inlet end with its
// head and to >= the length for the outlet end with its head.
type Shape interface {
	// Inside is the extent of the hollow.
	Inside() Extent

	// validate adds what is wrong with the sizes; the geometry below is asked
	// only of a shape without faults.
	validate(faults *manway.InputErrors)
	// shrunk is the shape whose outside sizes are the receiver.
	shrunk(wall, roof, floor manway.Length) Shape
	// ends says between which positions a partition may stand; ok is false
	// where the shape takes none.
	ends() (from, to float64, ok bool)
	// volume and area are the liquid and its surface between two positions.
	volume(from, to, depth float64) float64
	area(from, to, depth float64) float64
}

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
