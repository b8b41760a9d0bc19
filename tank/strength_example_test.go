package tank_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// A roof of which the steel is not known carries nothing that arithmetic can
// show; what a new riser and more soil add to it holds all the same.
func ExampleTank_Roof() {
	t, err := tank.New(tank.Spec{
		Shape: tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Wall:  3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 4 * manway.Inch,
		Access: []tank.Access{{Along: 24 * manway.Inch, Length: 24 * manway.Inch, Width: 24 * manway.Inch}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := t.Roof(tank.RoofCase{
		Now:     tank.RoofLoad{Cover: 12 * manway.Inch},
		Planned: &tank.RoofLoad{Cover: 20 * manway.Inch, Risers: []tank.Riser{{Access: 0, Mass: 500 * manway.Pound, Wall: 3 * manway.Inch}}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(tank.StrengthTitle)
	fmt.Println(r.Loadings[2].Name, r.Loadings[2].Status())
	fmt.Printf("adds %.0f %% to the weight it carries\n", 100*r.Change.Load)
	// Output:
	// Unreviewed screening of what stands there, not a design
	// person not shown
	// adds 45 % to the weight it carries
}

// A partition with a light soft mesh may be loaded from one side only so far.
func ExampleTank_Partition() {
	t, err := tank.New(tank.Spec{
		Shape:      tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Partitions: []tank.Partition{{At: 62 * manway.Inch, Thickness: 3 * manway.Inch}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	wire := manway.Reinforcement{State: manway.SteelKnown, Diameter: 0.17 * manway.Inch, Spacing: 4 * manway.Inch, Cover: 0.9 * manway.Inch, Yield: 24000 * manway.PSI}
	p, err := t.Partition(tank.PartitionCase{
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI}, Steel: tank.Steel{Inside: tank.Mesh(wire)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Loadings[p.Governs].Status(), p.Difference.State)
	// Output: fail up to
}
