package riser_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// wall is that of a plastic riser of 24 in, 1/2 in thick, by what polyethylene
// has left of its stiffness after years.
var wall = riser.Wall{Diameter: 24 * manway.Inch, Thickness: manway.Inch / 2, Modulus: 22000 * manway.PSI, Poisson: 0.4}

func ExampleWall_Buckling() {
	b, err := wall.Buckling(200 * manway.PSI)
	if err != nil {
		fmt.Println(err)
		return
	}
	head := b.Tube.In(manway.PSI) / 0.433 // psi of a foot of water
	fmt.Printf("alone %.3f psi, %.2f ft of water; held by soil %.2f psi\n", b.Tube.In(manway.PSI), head, b.Soil.In(manway.PSI))
	// Output:
	// alone 0.474 psi, 1.09 ft of water; held by soil 11.24 psi
}

func ExampleWall_Stiffness() {
	ps, err := wall.Stiffness()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f psi\n", ps.In(manway.PSI))
	// Output:
	// 0.89 psi
}

func ExampleWall_Deflection() {
	flat, err := wall.Deflection(riser.Squash{Load: manway.PSI, Reaction: 200 * manway.PSI})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f %% of the diameter\n", 100*flat)
	// Output:
	// 0.81 % of the diameter
}

func ExampleWall_Press() {
	p, err := wall.Press(riser.Surround{Depth: 2 * manway.Foot, Wheel: manway.PickupWheel})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("water %.2f psi, earth %.2f psi\n", p.Water.In(manway.PSI), p.Earth.In(manway.PSI))
	for _, c := range p.Checks {
		fmt.Printf("%s: %v\n", c.Name, c.Status)
	}
	for _, a := range p.Assumed.List() {
		fmt.Println("taken:", a.Taken)
	}
	// Output:
	// water 0.87 psi, earth 0.50 psi
	// riser wall, buckling: not shown
	// riser wall, ring compression: not judged
	// taken: groundwater at grade
	// taken: soil weights and friction on the unfavourable side
}

func ExampleRingMass() {
	m, err := riser.RingMass(riser.Ring{Height: manway.Foot, Bore: 48 * manway.Inch, Outside: 58 * manway.Inch}, 150*manway.PoundPerCubicFoot)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f lb a foot\n", m.In(manway.Pound))
	// Output:
	// 867 lb a foot
}
