package concrete_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
)

// Example 4.6 of McCormac and Brown: a 6 in slab with No. 4 bars at 10 in.
func ExampleSection_Flexure() {
	f, err := concrete.Section{
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI},
		Width:    manway.Foot, Depth: 5 * manway.Inch,
		Steel: 0.24 * manway.SquareInch, Yield: 60000 * manway.PSI,
	}.Flexure()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("a %.3f in, phi %.2f, phi Mn %.3f kip ft\n", f.StressBlock.In(manway.Inch), f.Phi, f.Design.In(manway.KipFoot))
	// Output: a 0.353 in, phi 0.90, phi Mn 5.209 kip ft
}

// A 4 in roof of which the steel is not known: nothing can be shown, whatever
// the figure.
func ExampleStrip() {
	s := concrete.Strip{Thickness: 4 * manway.Inch}
	bending, err := s.Bending()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(bending.Counts, bending.Design, manway.MomentPerLength(bending.AsPlain))
	// Output: not shown 0 400 lbf ft/ft
}
