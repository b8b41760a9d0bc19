package hydraulics_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
)

// At a mile above the sea the air carries 28 ft of cold water, less than any pump
// can lift.
func ExampleSuction_Atmosphere() {
	air, err := hydraulics.Suction{Altitude: 5280 * manway.Foot}.Atmosphere()
	if err != nil {
		fmt.Println(err)
		return
	}
	cold, err := hydraulics.WaterAt(277.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f kPa, %v of water\n", air.In(manway.Kilopascal), cold.Head(air))
	// Output:
	// 83.4 kPa, 27 ft 11 in of water
}

// A hose of 3 in at 200 gal a minute, by the friction law and by Hazen and
// Williams, and what it passes under 10 ft.
func ExampleHose_AtFlow() {
	water, err := hydraulics.WaterAt(288.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	hose := hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, C: 140}
	f, err := hose.AtFlow(200*manway.GallonPerMinute, water)
	fmt.Println(f.Loss, err)
	loss, err := hose.HazenWilliams(200 * manway.GallonPerMinute)
	fmt.Println(loss, err)
	under, err := hose.AtHead(10*manway.Foot, water)
	fmt.Println(under.Flow, err)
	friction, err := rough(0).Friction(1e5)
	fmt.Printf("f %.4f %v\n", friction.Factor, err)
	// Output:
	// 9 ft 7 3/4 in <nil>
	// 9 ft 7 3/4 in <nil>
	// 204 gal/min <nil>
	// f 0.0180 <nil>
}

// A pump of 405 ft3/min draws a tank of 750 ft3 from 760 to 150 torr in three
// minutes.
func ExampleTruck_VacuumTime() {
	t, err := hydraulics.Truck{Capacity: 750 * manway.CubicFoot}.VacuumTime(405*manway.CubicFootPerSecond/60, 101325, 101325*150/760.)
	fmt.Printf("%.2f min %v\n", t.In(manway.Minute), err)
	// Output:
	// 3.00 min <nil>
}

// A 4 in drain at 1/4 in a foot, half full, and the fixture units it may carry.
func ExampleDrain_AtDepth() {
	d := hydraulics.Drain{Diameter: 4 * manway.Inch, Slope: 1. / 48, N: 0.013}
	half, err := d.AtDepth(2 * manway.Inch)
	fmt.Printf("%.2f of the full flow %v\n", float64(half.Flow/half.Full), err)
	c, err := hydraulics.FixtureLoad(4*manway.Inch, 1./48, 180, true)
	fmt.Println(c.Demand, "of", c.Capacity, "units:", c.Status, err)
	// Output:
	// 0.50 of the full flow <nil>
	// 180 of 216 units: pass <nil>
}

// What passes a hole of 1 in2 under a foot of water, a weir and a notch; and how
// long a tank takes to drain through the hole.
func ExampleOrifice() {
	q, err := hydraulics.Orifice{Area: manway.SquareInch, Coefficient: 0.61}.Flow(manway.Foot)
	fmt.Println(q, err)
	q, err = hydraulics.Weir{Crest: 3 * manway.Foot}.Flow(3 * manway.Inch)
	fmt.Println(q, err)
	q, err = hydraulics.Weir{Notch: 90 * manway.Degree}.Flow(3 * manway.Inch)
	fmt.Println(q, err)
	t, err := hydraulics.Orifice{Area: manway.SquareInch, Coefficient: 0.61}.DrainTime(32*manway.SquareFoot, 4*manway.Foot, 0)
	fmt.Printf("%.1f h %v\n", t.In(manway.Hour), err)
	h, err := hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 0.2}.Head(10 * manway.GallonPerMinute)
	fmt.Println(h.Head, h.Rise, err)
	// Output:
	// 15.25 gal/min <nil>
	// 551.1 gal/min <nil>
	// 35.04 gal/min <nil>
	// 1.0 h <nil>
	// 2 1/8 in 7/8 in <nil>
}

// A pump chamber of 17.5 ft2: floats 6 in apart dose 65 gal, a fall of 6 in in two
// minutes is 33 gal a minute, and 640 runs in 120 days 349 gal a day.
func ExampleChamber_Dosing() {
	c := hydraulics.Chamber{Area: 17.5 * manway.SquareFoot, Off: 46 * manway.Inch, On: 52 * manway.Inch, Alarm: 54 * manway.Inch, Top: 66 * manway.Inch}
	d, err := c.Dosing(300*manway.GallonPerDay, 0)
	fmt.Println(d.Dose, err)
	fall, err := c.Drawdown(6*manway.Inch, 2*manway.Minute, 0)
	fmt.Println(fall.Rate, err)
	use, err := c.Usage(640, 120*manway.Day, 400*manway.GallonPerDay)
	fmt.Printf("%.0f gal a day, %v %v\n", use.Flow.In(manway.GallonPerDay), use.Check.Status, err)
	starts, err := c.Starts(30*manway.GallonPerMinute, 10*manway.Minute)
	fmt.Println(manway.Volume(starts.Demand), starts.Status, err)
	cycle, err := c.CycleTime(30*manway.GallonPerMinute, 15*manway.GallonPerMinute)
	fmt.Println(cycle, err)
	// Output:
	// 65.45 gal <nil>
	// 32.73 gal/min <nil>
	// 349 gal a day, pass <nil>
	// 75 gal fail <nil>
	// 8.727 min <nil>
}

// A tank of 1,000 gal a third full of solids holds 300 gal a day for 2.2 days; its
// level falls a quarter inch over 32 ft2 in a day.
func ExampleRetention_Times() {
	r, err := hydraulics.Retention{Liquid: 1000 * manway.Gallon, Solids: 333 * manway.Gallon, Average: 300 * manway.GallonPerDay}.Times()
	fmt.Printf("%.1f days %v\n", r.Now.In(manway.Day), err)
	w, err := hydraulics.WaterTest{Area: 32 * manway.SquareFoot, Liquid: 1000 * manway.Gallon, Change: manway.Inch / 4, Over: manway.Day}.Result()
	fmt.Println(w.Moved, err)
	// Output:
	// 2.2 days <nil>
	// 4.987 gal <nil>
}

// Five people for a year by three standards, the sludge of a model, and the
// straight line through the household table.
func ExampleServed_PeruSizing() {
	s := hydraulics.Served{People: 5, PerPerson: 150 * manway.LitrePerDay, Years: 1, Climate: hydraulics.Warm}
	peru, err := s.PeruSizing()
	fmt.Printf("Peru %.0f L %v\n", peru.Total.In(manway.Litre), err)
	who, err := s.WHOSizing(false)
	fmt.Printf("WHO %.0f L %v\n", who.Total.In(manway.Litre), err)
	brazil, err := s.BrazilSizing(1 * manway.LitrePerDay)
	fmt.Printf("Brazil %.0f L %v\n", brazil.Total.In(manway.Litre), err)
	model := hydraulics.Accumulations()[2]
	low, high, err := model.Volume(4, 3*manway.Year)
	fmt.Println(model.Name, low, high, err)
	// Output:
	// Peru 1463 L <nil>
	// WHO 1010 L <nil>
	// Brazil 2035 L <nil>
	// Ireland, any age 270.4 gal 270.4 gal <nil>
}
