package riser_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

func ExampleDig_While() {
	box, err := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot},
		Wall: 3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 4 * manway.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := riser.DigOf(riser.Pit{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 2 * manway.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	o, err := d.While(&box, tank.FloatCase{Cover: 2 * manway.Foot}, tank.WallCase{Cover: 2 * manway.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("held down by %.0f lbf before, %.0f lbf with the pit open\n", o.Before.Down.In(manway.PoundForce), o.During.Down.In(manway.PoundForce))
	fmt.Println("may be pumped dry meanwhile:", o.Emptying)
	// Output:
	// held down by 10538 lbf before, 7661 lbf with the pit open
	// may be pumped dry meanwhile: no
}

func ExampleSoilType() {
	for _, s := range []riser.SoilType{riser.TypeC, riser.TypeBDeclared} {
		fmt.Println(s, s.Slope(), "horizontal to 1 vertical")
	}
	// Output:
	// C 1.5 horizontal to 1 vertical
	// B-declared 1 horizontal to 1 vertical
}

func ExampleEarth() {
	for _, e := range []riser.Earth{riser.Sand, riser.Loam, riser.Clay} {
		fmt.Printf("%v: 1 yd3 dug is %.2f yd3 loose and %.2f yd3 compacted\n", e, e.Loose(), e.Compacted())
	}
	// Output:
	// sand: 1 yd3 dug is 1.11 yd3 loose and 0.95 yd3 compacted
	// loam: 1 yd3 dug is 1.25 yd3 loose and 0.90 yd3 compacted
	// clay: 1 yd3 dug is 1.43 yd3 loose and 0.90 yd3 compacted
}

func ExampleUncover() {
	u, err := riser.Uncover(riser.Buried{Diameter: 24 * manway.Inch, Depth: 8 * manway.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f ft3 of soil, %.0f minutes\n", u.Soil.In(manway.CubicFoot), u.Minutes.In(manway.Minute))
	// Output:
	// 4.7 ft3 of soil, 29 minutes
}

func ExampleHose_Run() {
	r, err := riser.Hose{Along: 90 * manway.Foot, Fall: -3 * manway.Foot, Bottom: 8 * manway.Foot, Inlet: 4 * manway.Foot, Section: 25 * manway.Foot}.Run()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r)
	// Output:
	// 102 ft 5/8 in of hose in 5 sections, lift 15 ft
}
