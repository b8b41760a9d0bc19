package tank_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// A tank of 40 ft2 at two depths: 40 and 100 ft3 of 7.4805 gal.
func ExampleTank_ChartAt() {
	t, err := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 5 * manway.Foot, Height: 5 * manway.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	chart, err := t.ChartAt([]manway.Length{12 * manway.Inch, 30 * manway.Inch}, tank.ChartCase{})
	for _, row := range chart.Rows {
		fmt.Println(row.Depth, row.Volume)
	}
	fmt.Println(err)
	// Output:
	// 1 ft 299.2 gal
	// 2 ft 6 in 748.1 gal
	// <nil>
}

// 30 ft3 stand 18 in deep over 20 ft2.
func ExampleCompartment_Depth() {
	t, err := tank.New(tank.Spec{
		Shape:      tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot},
		Partitions: []tank.Partition{{At: 5 * manway.Foot, Thickness: 3 * manway.Inch}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	front := t.Compartments()[0]
	depth, err := front.Depth(30 * manway.CubicFoot)
	if err != nil {
		fmt.Println(err)
		return
	}
	area, err := front.Area(depth)
	fmt.Println(depth, area.In(manway.SquareFoot), err)
	// Output: 1 ft 6 in 20 <nil>
}

// What a truck took against inches dropped, from 4 ft to the floor.
func ExampleFromDrops() {
	s, err := tank.FromDrops(48*manway.Inch, []tank.Drop{
		{Dropped: 12 * manway.Inch, Pumped: 150 * manway.Gallon},
		{Dropped: 48 * manway.Inch, Pumped: 560 * manway.Gallon},
	})
	for _, v := range s.Volumes {
		fmt.Println(v.Depth, v.Volume)
	}
	fmt.Println(err)
	// Output:
	// 0 in 0 gal
	// 3 ft 410 gal
	// 4 ft 560 gal
	// <nil>
}

// A tank that stays while it is full and floats when it is pumped.
func ExampleTank_Stages() {
	t, err := tank.New(tank.Spec{
		Shape: tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Wall:  3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 3 * manway.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	stages, err := t.Stages(tank.FloatCase{Cover: 12 * manway.Inch, Lids: 150 * manway.Pound}, tank.Work{Found: 48 * manway.Inch, Dug: 6 * manway.CubicFoot})
	for _, s := range stages {
		fmt.Printf("%s: %v\n", s.Name, s.State)
	}
	fmt.Println(err)
	// Output:
	// as found: reaches the required factor
	// covers off: reaches the required factor
	// dug: reaches the required factor
	// pumped: floats
	// <nil>
}

func ExampleTank_Working() {
	t, err := tank.New(tank.Spec{Shape: tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch}})
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := t.Working(48*manway.Inch, manway.US)
	for _, step := range w {
		fmt.Println(step)
	}
	fmt.Println(err)
	// Output:
	// h = depth of liquid = 48 in
	// Vh = L W h / 231 = 96 x 60 x 48 / 231
	// V = volume below h = 1196.88 gal
	// <nil>
}
