package cost_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/cost"
)

// The base price covers 1,000 gal, one lid under 6 in and 100 ft of hose.
func ExamplePumpOut() {
	p := cost.PumpOut{Gallons: 1250 * manway.Gallon, Covers: []manway.Length{6 * manway.Inch, 18 * manway.Inch}, Hose: 140 * manway.Foot}
	lines, err := p.Lines(cost.Band{Gallons: 1000 * manway.Gallon, Lids: 1, Cover: 6 * manway.Inch, Hose: 100 * manway.Foot})
	for _, l := range lines {
		fmt.Println(l.Code, l.Quantity, l.Unit)
	}
	fmt.Println(err)
	// Output:
	// pump-base 1 E51
	// pump-over 250 GLL
	// lid-more 1 EA
	// lid-deeper 1 FOT
	// hose-over 40 FOT
	// <nil>
}

func ExampleTruck() {
	t := cost.Truck{Capacity: 1000 * manway.Gallon, Rate: 100 * manway.GallonPerMinute, Setup: manway.Hour / 2, RoundTrip: manway.Hour, Crew: 2}
	lines, err := t.Lines(1500 * manway.Gallon)
	for _, l := range lines {
		fmt.Println(l.Code, l.Quantity, l.Unit)
	}
	fmt.Println(err)
	// Output:
	// truck 2.75 HUR
	// truck-crew 5.5 LH
	// disposal 1500 GLL
	// disposal-load 2 NL
	// <nil>
}

// 1.5 cubic yards dug by hand, two people.
func ExampleTask() {
	l, err := cost.Task{Name: "dig-hand", Quantity: 1.5, Unit: "YDQ", Crew: 2}.Line()
	fmt.Println(l.Quantity, l.Unit, l.Hours(), "h", l.Basis[0], err)
	// Output: 4.2 LH 2.1 h Storm, Industrial Process Plant Construction Estimating and Man-Hour Analysis (2019), p. 55 <nil>
}

func ExampleCrew() {
	days, err := cost.Crew{People: 4, Availability: 0.80, Hours: 9}.Days(80)
	fmt.Printf("%.4f %v\n", days, err)
	// Output: 2.7778 <nil>
}

// 1,000 cubic yards of dense clay swell by 30 % and fill 186 trucks of 7.
func ExampleHaul() {
	loose, loads, err := cost.Haul{Bank: 1000 * manway.CubicYard, SwellPercent: 30, Truck: 7 * manway.CubicYard}.Loads()
	fmt.Printf("%.0f yd3, %d loads %v\n", loose.In(manway.CubicYard), loads, err)
	// Output: 1300 yd3, 186 loads <nil>
}

// Only the prismoidal rule is exact.
func ExampleSlopedPit() {
	v, err := cost.SlopedPit{BottomWidth: 4 * manway.Foot, BottomLength: 8 * manway.Foot, TopWidth: 10 * manway.Foot, TopLength: 14 * manway.Foot, Depth: 6 * manway.Foot}.Volumes()
	fmt.Printf("%.0f %.0f %.0f %v\n", v.Prismoidal.In(manway.CubicFoot), v.AverageSides.In(manway.CubicFoot), v.AverageEndArea.In(manway.CubicFoot), err)
	// Output: 480 462 516 <nil>
}

// An order is rounded up: 21.49 cubic yards are 22.
func ExamplePlaced() {
	needed, packs, err := cost.Placed{Volume: 527.397 * manway.CubicFoot, WastePercent: 10, Pack: manway.CubicYard}.Order()
	fmt.Printf("%.2f yd3, order %d %v\n", needed.In(manway.CubicYard), packs, err)
	// Output: 21.49 yd3, order 22 <nil>
}

func ExampleMixVolume() {
	v, err := cost.MixVolume(60 * manway.Pound)
	fmt.Printf("%.2f ft3 %v\n", v.In(manway.CubicFoot), err)
	// Output: 0.45 ft3 <nil>
}

// A sack of cement with five gallons of water.
func ExampleGroutMix() {
	v, err := cost.GroutMix{Cement: 94 * manway.Pound, SpecificGravity: 3.15, Water: 5 * manway.Gallon}.Volume()
	fmt.Printf("%.2f ft3 %v\n", v.In(manway.CubicFoot), err)
	// Output: 1.15 ft3 <nil>
}

func ExampleUnitWeights() {
	yard := func(lb float64) manway.Density {
		return manway.Density(lb * float64(manway.Pound) / float64(manway.CubicYard))
	}
	c, err := cost.UnitWeights{Bank: yard(3000), Loose: yard(2310), Compacted: yard(3750)}.Conversion()
	fmt.Printf("%.2f %% swell, load factor %.2f, %.0f %% shrinkage %v\n", c.SwellPercent, c.LoadFactor, c.ShrinkagePercent, err)
	// Output: 29.87 % swell, load factor 0.77, 20 % shrinkage <nil>
}

func ExampleBulk_Haul() {
	b := cost.Bulks()[0]
	m, err := b.Haul(manway.CubicYard)
	fmt.Printf("%s: %.0f lb %v\n", b.Name, m.In(manway.Pound), err)
	// Output: earth, loose and dry: 2100 lb <nil>
}

// No. 4 bars at 12 in both ways in a slab of 83 by 100 ft.
func ExampleBarGrid() {
	along, across, total, err := cost.BarGrid{Width: 83 * manway.Foot, Length: 100 * manway.Foot, Cover: 2 * manway.Inch, Spacing: manway.Foot}.Bars()
	weight, _ := cost.BarWeight(4, total)
	fmt.Printf("%d and %d bars, %.0f lb %v\n", along, across, weight.In(manway.Pound), err)
	// Output: 83 and 100 bars, 11048 lb <nil>
}

func ExampleMesh() {
	m, err := cost.Mesh{Spacing: 6 * manway.Inch, Wire: 0.014 * manway.SquareInch}.BareWeight(100 * manway.SquareFoot)
	fmt.Printf("%.2f lb %v\n", m.In(manway.Pound), err)
	// Output: 19.04 lb <nil>
}

func ExampleUnit_Per() {
	feet, err := cost.Unit("YDQ").Per("FTQ")
	fmt.Println(feet, err)
	_, err = cost.Unit("CY").Per("FTQ")
	fmt.Println(err)
	// Output:
	// 27 <nil>
	// From.Unit "CY": want YDQ for a cubic yard
}
