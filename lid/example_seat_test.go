package lid_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// A round plate of 24 in and 3 in is pi/4 x 2 ft x 2 ft x 1/4 ft.
func ExampleLid_Volume() {
	v, err := lid.Lid{Shape: lid.Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch, Material: lid.OfConcrete}.Volume()
	fmt.Printf("%.4f ft3 %v\n", v.In(manway.CubicFoot), err)
	// Output: 0.7854 ft3 <nil>
}

// Let in by its 3 in, the same lid needs 24 in x (1/sqrt(1 - 1/64) - 1) of play
// to be tipped.
func ExampleLid_Sit() {
	s, err := lid.Lid{Shape: lid.Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch, Material: lid.OfConcrete}.Sit(
		lid.Seat{Fit: lid.LetIn, Opening: 20 * manway.Inch, Gap: 0.25 * manway.Inch, GapKnown: true})
	fmt.Printf("rises %v, tips %v with more than %.4f in, %v\n", s.Rise, s.Tip, s.TipGap.In(manway.Inch), err)
	// Output: rises 3 in, tips yes with more than 0.1897 in, <nil>
}
