package tank

import (
	"math"

	"manway.example/manway"
)

// Nominal is a tank of which only the gallons it was sold by and one depth are
// known. It is taken as a box of that volume below that depth:
//
//	area = Volume/Depth, width = sqrt(area/2), length = 2 width
//
// unless its length was measured. Tanks printed beside their nominal gallons
// (12VAC5-610-815 Table 5.3) hold between 2.3 % less and 11.3 % more, which is
// the range of every volume of such a tank.
type Nominal struct {
	Volume manway.Volume // nominal gallons, 50 to 50,000 gal
	Depth  manway.Length // of liquid below the outlet, to which Volume belongs
	Height manway.Length // inside; 0: not known, Depth + 8 in is taken
	Length manway.Length // inside; 0: not known, twice the width is taken
}

// The least air space over the liquid of the International Private Sewage
// Disposal Code (2012, section 802), taken where the height is not known.
const usualAirSpace = 8 * manway.Inch

// Inside is the extent of the box that stands for the tank.
func (n Nominal) Inside() Extent { return n.box().Inside() }

func (n Nominal) validate(faults *manway.InputErrors) {
	had := len(*faults)
	manway.Within(faults, "Volume", n.Volume, 50*manway.Gallon, 50000*manway.Gallon)
	size(faults, "Depth", n.Depth)
	if n.Height != 0 {
		manway.Within(faults, "Height", n.Height, n.Depth, greatestSize)
	}
	if n.Length != 0 {
		size(faults, "Length", n.Length)
	}
	if len(*faults) == had {
		n.box().validate(faults)
	}
}

// box is the box that stands for the tank.
func (n Nominal) box() Box {
	area := float64(n.Volume) / float64(n.Depth)
	b := Box{Length: n.Length, Height: n.Height}
	if b.Length == 0 {
		b.Length = manway.Length(math.Sqrt(2 * area))
	}
	b.Width = manway.Length(area / float64(b.Length))
	if b.Height == 0 {
		b.Height = n.Depth + usualAirSpace
	}
	return b
}

func (n Nominal) shrunk(wall, roof, floor manway.Length) Shape {
	return n.box().shrunk(wall, roof, floor)
}
func (n Nominal) ends() (from, to float64, ok bool) { return n.box().ends() }
func (n Nominal) solid() solid                      { return n.box().solid() }
