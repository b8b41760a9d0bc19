package hydraulics_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// The worked line of the household table: 1,000 gal and four people.
func ExampleInterval() {
	t, err := hydraulics.Interval(4, 1000*manway.Gallon)
	fmt.Println(t, err)
	_, err = hydraulics.Interval(4, 3000*manway.Gallon)
	fmt.Println(err)
	// Output:
	// 2.6 yr <nil>
	// Tank 3,000 gal: want 500 gal to 2,500 gal
}

func ExampleHousehold_Interval() {
	h := hydraulics.Household{People: 4, PeopleKnown: hydraulics.About}
	r, err := h.Interval(1000 * manway.Gallon)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2g years, %.2g to %.2g\n", r.Likely.Time.In(manway.Year), r.Low.Time.In(manway.Year), r.High.Time.In(manway.Year))
	// Output: 2.6 years, 1.3 to 3.7
}

func ExampleCase_PumpOut() {
	made, err := tank.New(tank.Spec{
		Shape:      tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot},
		Partitions: []tank.Partition{{At: 5 * manway.Foot, Thickness: 3 * manway.Inch}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	shape := made.Compartments()
	plan, err := hydraulics.Case{
		Outlet: 48 * manway.Inch,
		Compartments: []hydraulics.Compartment{
			{Name: "front", Shape: &shape[0], State: hydraulics.Opened, Level: manway.Read(48 * manway.Inch),
				Sludge: manway.Read(12 * manway.Inch), Scum: manway.Read(4 * manway.Inch)},
			{Name: "rear", Shape: &shape[1], Reason: "lid under the deck"},
		},
		Dividers: []hydraulics.Divider{{Port: manway.Read(24 * manway.Inch)}},
		Keeps:    []hydraulics.Keep{{Name: "flotation", Judged: true, Level: 10 * manway.Inch}},
	}.PumpOut()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range plan.Compartments {
		fmt.Println(c.Ticket(manway.US))
	}
	fmt.Println("not below", plan.Keep)
	// Output:
	// front: remove 448.8 gal, from 4 ft to 1 ft, held by partition
	// rear: not opened (lid under the deck), not pumped, holds up to 329.1 gal
	// not below 10 in
}

// 22 in of sludge and scum in 72 in are 30 %: more than a quarter.
func ExampleRule_Trigger() {
	r, err := hydraulics.RuleEPA.Trigger(hydraulics.Solids{
		Outlet: 72 * manway.Inch, Sludge: manway.Read(16 * manway.Inch), Scum: manway.Read(6 * manway.Inch),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range r.List() {
		fmt.Printf("%s: %v\n", c.Name, c.Status)
	}
	fmt.Println("pump:", r.Pump)
	// Output:
	// sludge to outlet: not judged
	// scum to outlet: not judged
	// share of liquid depth: fail
	// pump: true
}

func ExampleSuction_Pull() {
	s := hydraulics.Suction{
		Altitude: 5000 * manway.Foot, Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 30 * manway.Foot,
		Hose: hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Fittings: 1.5},
	}
	p, err := s.Pull()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Lifting, p.Missing)
	s.Lift = 12 * manway.Foot
	p, _ = s.Pull()
	fmt.Println(p.Lifting)
	// Output:
	// cannot lift 2 ft 9 3/8 in
	// flow by the head that is left
}

// An 8 in sewer at 0.5 % and n 0.013 carries 0.854 ft3/s full.
func ExampleDrain_AtFlow() {
	d := hydraulics.Drain{Diameter: 8 * manway.Inch, Slope: 0.005, N: 0.013}
	r, err := d.AtFlow(0.427 * manway.CubicFootPerSecond)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f ft3/s full, half of it runs at %.3f of the diameter, self-cleansing %v\n", r.Full.In(manway.CubicFootPerSecond), r.Share, r.SelfCleansing)
	// Output: 0.854 ft3/s full, half of it runs at 0.500 of the diameter, self-cleansing true
}

func ExampleFound_Arrival() {
	f, err := hydraulics.Found{
		Outlet: 48 * manway.Inch, Level: manway.Read(53 * manway.Inch), Area: 32 * manway.SquareFoot,
		Runback: hydraulics.Runback{Seen: manway.Yes, Rise: 2 * manway.Inch, Over: 10 * manway.Minute},
	}.Arrival()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.PointsTo)
	fmt.Println(f.Above, f.Over, f.RanBack)
	// Output:
	// high with runback: points to a field that is not taking water
	// 5 in 99.74 gal 39.9 gal
}

func ExampleRoute_Route() {
	made, _ := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot}})
	r, err := hydraulics.Route{
		Compartments: []*tank.Compartment{&made.Compartments()[0]}, OutletInvert: 48 * manway.Inch,
		Outlet: hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 0.02}, InletInvert: manway.Read(51 * manway.Inch),
		Surges: []hydraulics.Surge{hydraulics.Bath.Begin(7 * manway.Hour), hydraulics.Laundry.Begin(7.5 * manway.Hour)},
	}.Route()
	fmt.Println("above the outlet:", r.Peak > 49*manway.Inch, "to the inlet:", r.InletAt.Known, "nothing lost:", r.Imbalance < 1e-9, err)
	// Output: above the outlet: true to the inlet: false nothing lost: true <nil>
}
