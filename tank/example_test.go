package tank_test

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// A two-compartment box: what each compartment holds at the outlet, and at what
// depth the tank holds 500 gallons.
func ExampleNew() {
	t, err := tank.New(tank.Spec{
		Shape:        tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Partitions:   []tank.Partition{{At: 62 * manway.Inch, Thickness: 3 * manway.Inch}},
		OutletInvert: 48 * manway.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range t.Compartments() {
		c := &t.Compartments()[i]
		v, _ := c.Volume(48 * manway.Inch)
		fmt.Printf("compartment %d: %v\n", i+1, v)
	}
	depth, _ := t.Depth(500 * manway.Gallon)
	perInch, _ := t.PerUnit(depth, manway.Inch)
	fmt.Println("500 gal stand", depth, "deep; an inch holds", perInch)
	// Output:
	// compartment 1: 773 gal
	// compartment 2: 386.5 gal
	// 500 gal stand 1 ft 8 3/4 in deep; an inch holds 24.16 gal
}

// Every fault of a Spec is named at once.
func ExampleNew_faults() {
	_, err := tank.New(tank.Spec{
		Shape:      tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Partitions: []tank.Partition{{At: 94 * manway.Inch, Thickness: 3 * manway.Inch}},
		Access:     []tank.Access{{Compartment: 2, Diameter: 20 * manway.Inch}},
	})
	for _, f := range err.(manway.InputErrors) {
		fmt.Println(f)
	}
	// Output:
	// Partitions[0].At 7 ft 10 in: want both faces within the floor, beyond 0 in and short of 8 ft
	// Access[0].Compartment 2: want 0 to 1
}

// The dip chart of a lying steel tank with dished heads, read down from the rim
// of its riser.
func ExampleTank_Chart() {
	head := tank.Head{Form: tank.Ellipsoidal}
	t, err := tank.New(tank.Spec{Shape: tank.HorizontalCylinder{Diameter: 60 * manway.Inch, Length: 96 * manway.Inch, Inlet: head, Outlet: head}})
	if err != nil {
		fmt.Println(err)
		return
	}
	chart, err := t.Chart(tank.ChartCase{Step: 20 * manway.Inch, FromRim: true, Rim: 80 * manway.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range chart.Rows {
		fmt.Printf("%v down, %v deep: %v\n", row.Reading, row.Depth, row.Volume)
	}
	// Output:
	// 1 ft 8 in down, 5 ft deep: 1,420 gal
	// 3 ft 4 in down, 3 ft 4 in deep: 1,014 gal
	// 5 ft down, 1 ft 8 in deep: 406.3 gal
	// 6 ft 8 in down, 0 in deep: 0 gal
}

// Whether an emptied tank may float, where the groundwater was not measured.
func ExampleTank_Float() {
	t, err := tank.New(tank.Spec{
		Shape: tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Wall:  3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 3 * manway.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := t.Float(tank.FloatCase{Cover: 12 * manway.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v: factor %.2f, asked for %.1f\n", f.State, f.Factor, f.Required.Value)
	fmt.Println(f.Leave, f.LeastLiquid)
	limit, _ := t.WaterLimit(f.Case)
	fmt.Println("has its factor when empty where groundwater is deeper than", limit.Depth)
	fmt.Println(f.Assumed.Has(manway.AssumedGroundwaterAtGrade), f.Cautions.Has(manway.DoNotEmpty))
	// Output:
	// floats: factor 0.61, asked for 1.2
	// leave at least 3 ft 9 7/8 in
	// has its factor when empty where groundwater is deeper than 2 ft 10 3/4 in
	// true true
}

// A surveyed tank held against one set of rules.
func ExampleRuleSet_Judge() {
	t, err := tank.New(tank.Spec{
		Shape:       tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
		Partitions:  []tank.Partition{{At: 48 * manway.Inch, Thickness: 3 * manway.Inch}},
		InletInvert: 50 * manway.Inch, OutletInvert: 48 * manway.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	rules, err := tank.RuleSetOf("us-tn")
	if err != nil {
		fmt.Println(err)
		return
	}
	facts := t.Facts()
	facts.Bedrooms = 4
	j, err := rules.Judge(facts)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range j.Checks {
		fmt.Println(strings.TrimSpace(fmt.Sprint(c.Name, ": ", c.Status, " ", c.Reason)))
	}
	// Output:
	// liquid capacity: pass
	// first compartment's share, at least: fail
	// first compartment's share, at most: pass
	// liquid depth, at least: pass
	// liquid depth, at most: pass
	// wall thickness, at least: not judged not measured
}
