package hydraulics_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// Two compartments of 1,000 and 500 gal of liquid, 4 ft deep and 5 ft wide, with
// a partition of 3 in between.
func frontAndRear() (front, rear *tank.Compartment) {
	long := func(v manway.Volume) manway.Length {
		return manway.Length(float64(v) / float64(20*manway.SquareFoot))
	}
	made, err := tank.New(tank.Spec{
		Shape:      tank.Box{Length: long(1500*manway.Gallon) + 3*manway.Inch, Width: 5 * manway.Foot, Height: 5 * manway.Foot},
		Partitions: []tank.Partition{{At: long(1000 * manway.Gallon), Thickness: 3 * manway.Inch}},
	})
	if err != nil {
		panic(err)
	}
	parts := made.Compartments()
	return &parts[0], &parts[1]
}

// A quarter of the level of 4 ft is sludge, a twelfth is scum.
func ExampleCompartment_Layers() {
	front, _ := frontAndRear()
	s, err := hydraulics.Compartment{
		Name: "front", Shape: front, State: hydraulics.Opened, Level: manway.Read(48 * manway.Inch),
		Sludge: manway.Read(12 * manway.Inch), Scum: manway.Read(4 * manway.Inch),
	}.Layers(48 * manway.Inch)
	fmt.Println(s.Scum, s.Clear, s.Sludge, err)
	// Output: 83.33 gal 666.7 gal 250 gal <nil>
}

// 1,000 gal and four people are 2.6 years, 1,500 gal 4.2 (Mancl 1984): the rear
// compartment that is left costs 1.6 of them.
func ExamplePlan_Skipped() {
	front, rear := frontAndRear()
	none := manway.Read(0)
	plan, err := hydraulics.Case{
		Outlet: 48 * manway.Inch,
		Compartments: []hydraulics.Compartment{
			{Name: "front", Shape: front, State: hydraulics.Opened, Level: manway.Read(48 * manway.Inch), Sludge: none, Scum: none},
			{Name: "rear", Shape: rear, Reason: "lid too heavy"},
		},
		Dividers: []hydraulics.Divider{{Port: manway.Read(24 * manway.Inch)}},
	}.PumpOut()
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := plan.Skipped(hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d skipped: %.1f years instead of %.1f\n", s.Count, s.Pumped.Likely.Time.In(manway.Year), s.Whole.Likely.Time.In(manway.Year))
	t, err := plan.AtRate(50 * manway.GallonPerMinute)
	fmt.Println(plan.Remove, "at 50 gal/min:", t, err)
	// Output:
	// 1 skipped: 2.6 years instead of 4.2
	// 1,000 gal at 50 gal/min: 20 min <nil>
}

// The truck's own rate governs where the hose would carry more: 3/4 of 1,000 gal
// at 50 gal/min.
func ExampleEmptying_Time() {
	front, _ := frontAndRear()
	e, err := hydraulics.Emptying{
		Suction: hydraulics.Suction{
			Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 6 * manway.Foot, UsualRate: 50 * manway.GallonPerMinute,
			Hose: hydraulics.Hose{Diameter: 4 * manway.Inch, Length: 50 * manway.Foot, Fittings: 1.5},
		},
		Compartment: hydraulics.Compartment{Name: "front", Shape: front, State: hydraulics.Opened, Level: manway.Read(48 * manway.Inch)},
		From:        48 * manway.Inch, To: 12 * manway.Inch,
	}.Time()
	fmt.Println(e.Volume, e.Time.Time, err)
	// Output: 750 gal 15 min <nil>
}

// The gauge rose by 225 gal where the shape says 250.
func ExampleGauge_Read() {
	front, _ := frontAndRear()
	g := hydraulics.Gauge{
		Compartment: hydraulics.Compartment{Name: "front", Shape: front, State: hydraulics.Opened, Level: manway.Read(48 * manway.Inch)},
		From:        48 * manway.Inch, To: 36 * manway.Inch, Before: 100 * manway.Gallon, After: 325 * manway.Gallon,
	}
	r, err := g.Read()
	fmt.Printf("%v of %v: %.2f %v\n", r.Pumped, r.Computed, r.Ratio, err)
	s, err := g.Recalibrated()
	last := s.Volumes[len(s.Volumes)-1]
	fmt.Println("1,250 gal to the roof are taken as", last.Volume, err)
	// Output:
	// 225 gal of 250 gal: 0.90 <nil>
	// 1,250 gal to the roof are taken as 1,125 gal <nil>
}

// 14,000 lb of load at 64 lb/ft3 are 218.75 ft3, less than the tank holds.
func ExampleTruck_Full() {
	full, byWeight, err := hydraulics.Truck{
		Capacity: 2000 * manway.Gallon, Tare: 26000 * manway.Pound, Limit: 40000 * manway.Pound, Density: 64 * manway.PoundPerCubicFoot,
	}.Full()
	fmt.Printf("%.2f ft3, by weight %v, %v\n", full.In(manway.CubicFoot), byWeight, err)
	// Output: 218.75 ft3, by weight true, <nil>
}

// 1,500 gal fit; the other 1,500 are a second load.
func ExampleTruck_Loads() {
	l, err := hydraulics.Truck{Capacity: 2000 * manway.Gallon, Aboard: 500 * manway.Gallon}.Loads(3000 * manway.Gallon)
	fmt.Println(l.Loads, l.LeftRoom, err)
	// Output: 2 500 gal <nil>
}

// The third stop does not fit and is not left half pumped.
func ExampleTruck_Day() {
	d, err := hydraulics.Truck{Capacity: 2500 * manway.Gallon}.Day([]manway.Volume{1000 * manway.Gallon, 1000 * manway.Gallon, 800 * manway.Gallon})
	fmt.Println(d.Total, d.Trips, d.Left, err)
	// Output: 2,800 gal 2 800 gal <nil>
}

// Nebraska's nine tenths.
func ExampleSplit_HoldingTank() {
	c, err := hydraulics.Split{Known: true, Total: 1350 * manway.Gallon}.HoldingTank(2000 * manway.Gallon)
	use, _ := c.Use()
	fmt.Printf("use %.2f, %v\n", use, err)
	// Output: use 0.75, <nil>
}

// A month after the last day of January ends with February.
func ExampleSpan_After() {
	d, err := hydraulics.Span{Known: true, Time: manway.Year / 12}.After(manway.Date{Year: 2026, Month: 1, Day: 31})
	fmt.Println(d, err)
	// Output: 2026-02-28 <nil>
}

// Nothing was measured: the household table says 2.6 years, which are 31 whole
// months.
func ExampleMeasured_NextPumpOut() {
	front, _ := frontAndRear()
	visit := manway.Date{Year: 2026, Month: 3, Day: 15}
	f, err := hydraulics.Measured{
		Outlet: 48 * manway.Inch, Visit: visit, Rule: hydraulics.RuleEPA,
		Compartments: []hydraulics.Compartment{{Name: "front", Shape: front, State: hydraulics.Opened, Level: manway.Read(48 * manway.Inch)}},
	}.NextPumpOut(hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted}, 1000*manway.Gallon, visit)
	fmt.Println(f.Method, f.Pumped.Likely, err)
	// Output: household table 2028-10-15 <nil>
}

// Four people in five years: 40 L a person and year at the least, 76.9 gal at the
// most.
func ExampleCompareAccumulation() {
	c, err := hydraulics.CompareAccumulation(4, 5*manway.Year)
	fmt.Printf("%.0f L to %.0f gal, %v\n", c.Low.In(manway.Litre), c.High.In(manway.Gallon), err)
	// Output: 800 L to 1538 gal, <nil>
}
