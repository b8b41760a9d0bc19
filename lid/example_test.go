package lid_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// A bevelled plug of concrete, its moisture unknown.
func ExampleLid_Weigh() {
	w, err := lid.Lid{
		Shape: lid.BevelledPlug, Diameter: 26 * manway.Inch, BottomDiameter: 24 * manway.Inch, Thickness: 4 * manway.Inch,
	}.Weigh()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("dry %.1f lb, soaked %.1f lb\n", w.Dry.In(manway.Pound), w.Soaked.In(manway.Pound))
	for _, a := range w.Assumed.List() {
		fmt.Println("assumed:", a.Taken)
	}
	// Output:
	// dry 170.5 lb, soaked 179.1 lb
	// assumed: concrete of 150 lb/ft3 (2,400 kg/m3)
	// assumed: concrete anywhere from dry to soaked
}

// Forces first; beside them the limit for one person and the crew's own.
func ExampleLid_Move() {
	m, err := lid.Lid{
		Shape: lid.Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch, Moisture: lid.Dry,
	}.Move(lid.MoveCase{
		Seat: lid.Seat{Fit: lid.OnTop},
		Crew: lid.Crew{People: 2, Limit: 50 * manway.Pound},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, k := range m.Methods {
		fmt.Printf("%-22s %5.1f to %5.1f lbf, crew: %v\n", k.Way, k.Low.In(manway.PoundForce), k.High.In(manway.PoundForce), k.Crew.Status)
	}
	fmt.Printf("one person: %.1f lb, lifting index %.1f\n", m.OnePerson.Limit.In(manway.Pound), m.OnePerson.Index)
	// Output:
	// tip about the far edge  58.9 to  58.9 lbf, crew: pass
	// walk out                40.0 to  60.0 lbf, crew: pass
	// drag                    70.7 to  94.2 lbf, crew: fail
	// hook                    94.2 to  94.2 lbf, crew: fail
	// fulcrum bar             53.0 to  60.1 lbf, crew: pass
	// pry bar                  5.4 to   5.4 lbf, crew: pass
	// hoist                  117.8 to 117.8 lbf, crew: not judged
	// one person: 17.1 lb, lifting index 6.9
}

// Example 1 of the manual (Pub. 94-110, pp. 33-37): the printed limits are 16.3
// lb at the origin and 14.5 lb at the destination, with indices 2.7 and 3.0.
func ExampleLift_Limit() {
	r, err := lid.Lift{
		Load:        44 * manway.Pound,
		Origin:      lid.Hands{Horizontal: 23 * manway.Inch, Vertical: 15 * manway.Inch},
		Destination: lid.Hands{Horizontal: 23 * manway.Inch, Vertical: 64 * manway.Inch},
		Control:     true,
		Grip:        lid.FairGrip,
	}.Limit()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("origin %.1f lb, index %.1f\n", r.AtOrigin.ByHand.In(manway.Pound), r.AtOrigin.IndexByHand)
	fmt.Printf("%v %.1f lb, index %.1f\n", r.Governs, r.ByHand.In(manway.Pound), r.IndexByHand)
	// Output:
	// origin 16.3 lb, index 2.7
	// destination 14.5 lb, index 3.0
}

// A lift on the knees is outside the equation: no number.
func ExampleLift_Limit_notCovered() {
	r, _ := lid.Lift{Load: 40 * manway.Pound, Outside: lid.Kneeling}.Limit()
	fmt.Println(r.Standing, "-", r.Outside)
	// Output: not covered - kneeling
}

// What a worn lid of unknown steel is compared with.
func ExampleLid_Bend() {
	b, err := lid.Lid{
		Shape: lid.Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch, Loss: 1 * manway.Inch,
	}.Bend(lid.BendCase{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(lid.Title)
	fmt.Printf("strength left %.2f\n", b.StrengthLeft)
	for _, c := range b.Checks {
		use, _ := c.Use()
		fmt.Printf("%s: use %.2f, %v\n", c.Name, use, c.Status)
	}
	// Output:
	// Unreviewed screening of the lid in bending, not a design
	// strength left 0.44
	// bending under its own weight: use 0.11, not shown
	// bending with a person on it: use 1.11, not shown
	// hole cover: twice the person: use 0.81, not shown
}

// A handle that has lost an eighth of its diameter is not lifted on.
func ExampleLid_CheckHandle() {
	r, err := lid.Lid{Shape: lid.Disc, Diameter: 24 * manway.Inch, Thickness: 4 * manway.Inch}.CheckHandle(lid.Handle{
		State: lid.HandleSound, Waist: 0.4375 * manway.Inch, AsMade: 0.5 * manway.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.State, r.DoNotLift)
	// Output: necked true
}

// A lid held by its weight alone, at grade.
func ExampleLid_CheckGuard() {
	rule, _ := lid.GuardRuleOf("in-16-41-25-3")
	r, err := lid.Lid{Shape: lid.Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch}.CheckGuard(lid.Guard{
		Opening: 20 * manway.Inch, DepthKnown: true, Fastened: manway.No, Locked: manway.No, Secondary: manway.No,
	}, []lid.GuardRule{rule})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Findings[0].Status, "-", r.Findings[0].Reason)
	fmt.Println("add a fastener:", r.AddFastener, "- add a second guard:", r.AddSecondary)
	// Output:
	// fail - no lock or fastener holds it shut
	// add a fastener: true - add a second guard: true
}
