package riser_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// bed is the joint below a ring of 24 in with a wall of 3 in.
var bed = riser.Joint{Inside: 24 * manway.Inch, Outside: 30 * manway.Inch, Closed: manway.Inch / 2}

func ExampleJoint() {
	fmt.Println("wall", bed.Wall())
	fmt.Println("inside", bed.InsideLength(), "centreline", bed.Length(), "outside", bed.OutsideLength())
	fmt.Printf("volume %.1f in3\n", bed.Volume().In(manway.CubicInch))
	// Output:
	// wall 3 in
	// inside 6 ft 3 3/8 in centreline 7 ft 7/8 in outside 7 ft 10 1/4 in
	// volume 127.2 in3
}

func ExampleStripNeed_Times() {
	one, err := bed.Strip(riser.Strip{Width: manway.Inch, Height: manway.Inch, Roll: 14*manway.Foot + 6*manway.Inch, Overlap: 2 * manway.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	four, err := one.Times(4)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(four.Length, "rolls", four.Rolls, "left", four.Left)
	// Output:
	// 28 ft 11 1/4 in rolls 2 left 3/4 in
}

func ExampleJoint_Bead() {
	bead := riser.Bead{Width: manway.Inch / 2, Depth: manway.Inch / 2, Inner: true, Outer: true, Tube: 10.1 * manway.FluidOunce}
	n, err := bed.Bead(bead)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n.Length, "of bead, tubes", n.Tubes)
	fmt.Println("a tube gives", bead.Yield())
	// Output:
	// 14 ft 1 5/8 in of bead, tubes 3
	// a tube gives 6 ft 7/8 in
}

func ExampleJoint_Cement() {
	n, err := bed.Cement(manway.Inch, false, riser.MixBag(80*manway.Pound))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f in3, bags %d\n", n.Volume.In(manway.CubicInch), n.Packs)
	// Output:
	// 39.3 in3, bags 1
}

func ExamplePack_For() {
	n, err := riser.MixBag(80 * manway.Pound).For(manway.CubicYard)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("bags", n.Packs)
	// Output:
	// bags 45
}
