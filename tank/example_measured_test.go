package tank_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// A box of 8 by 5 ft holds 160 ft3 below 4 ft, 40 ft2 wide; known to half an inch
// all round it may hold some 25 gal more or less.
func ExampleTank_Volume() {
	t, err := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 5 * manway.Foot, Height: 5 * manway.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := t.Volume(4 * manway.Foot)
	fmt.Println(v, v.In(manway.CubicFoot), err)
	a, err := t.Area(4 * manway.Foot)
	fmt.Println(a.In(manway.SquareFoot), err)
	low, high, known, err := t.Range(4 * manway.Foot)
	fmt.Println(low, high, known, err)
	// Output:
	// 1,197 gal 160 <nil>
	// 40 <nil>
	// 1,181 gal 1,213 gal true <nil>
}

// A shell of 4 in all round a hollow of 8 by 5 by 5 ft: 104 by 68 by 68 in outside
// less 96 by 60 by 60 in inside is 78.3 ft3 of 150 lb, less an opening of 4 ft2.
func ExampleTank_ShellWeight() {
	t, err := tank.New(tank.Spec{
		Shape: tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Wall:  4 * manway.Inch, Roof: 4 * manway.Inch, Floor: 4 * manway.Inch,
		Access: []tank.Access{{Along: 20 * manway.Inch, Length: 24 * manway.Inch, Width: 24 * manway.Inch}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := t.ShellWeight(manway.Concrete{})
	fmt.Println(s.Mass, err)
	fmt.Printf("%.2f ft2 of opening\n", t.Spec.Access[0].Area().In(manway.SquareFoot))
	// Output:
	// 11,544 lb <nil>
	// 4.00 ft2 of opening
}

// A level that falls an inch in a tank of 40 ft2 is 25 gal; in the riser of a
// test, 0.4 in over 4 ft2 in a day is just allowed by Oregon's.
func ExampleLeakTest_Judge() {
	t, err := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 5 * manway.Foot, Height: 5 * manway.Foot}})
	if err != nil {
		fmt.Println(err)
		return
	}
	lost, err := t.LossOf(48*manway.Inch, 1*manway.Inch)
	fmt.Println(lost, err)
	r, err := tank.LeakTest{
		Standard: tank.LeakStandards()[0], Time: 24 * manway.Hour, Drop: 0.4 * manway.Inch, Surface: 4 * manway.SquareFoot,
	}.Judge()
	fmt.Println(r.Loss, r.Check.Status, err)
	// Output:
	// 24.94 gal <nil>
	// 0.9974 gal pass <nil>
}

// What one state asks of a house of four bedrooms, and another of 600 gal a day.
func ExampleCapacityRule_ForBedrooms() {
	for _, id := range []string{"us-va", "us-pa"} {
		set, err := tank.RuleSetOf(id)
		if err != nil {
			fmt.Println(err)
			return
		}
		rule := set.Capacity[0]
		fmt.Println(rule.Source.Source.Title)
		fmt.Println(rule.ForBedrooms(4))
		fmt.Println(rule.ForFlow(600 * manway.GallonPerDay))
	}
	// Output:
	// 12VAC5-610, Sewage Handling and Disposal Regulations
	// 1,200 gal true
	// 1,200 gal true
	// 25 Pa. Code 73.31, Standards for septic tanks
	// 1,250 gal true
	// 1,400 gal true
}

// Walls and floor of which the steel is not known: nothing is shown, and the
// groundwater that was not measured is taken at grade, 79 in over the bottom.
func ExampleTank_Wall() {
	t, err := tank.New(tank.Spec{
		Shape: tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Wall:  3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 3 * manway.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := t.Wall(tank.WallCase{Cover: 12 * manway.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(tank.StrengthTitle)
	fmt.Println(w.Loadings[0].Name, "-", w.Loadings[0].Status())
	fmt.Println(w.Assumed.Has(manway.AssumedGroundwaterAtGrade))
	f, err := t.Floor(tank.FloorCase{Cover: 12 * manway.Inch})
	fmt.Println(f.Loading.Name, "-", f.Loading.Status(), "under", f.Uplift, err)
	// Output:
	// Unreviewed screening of what stands there, not a design
	// side wall: full, soil dug away - not shown
	// true
	// floor: empty, under uplift - not shown under 2.853 psi <nil>
}
