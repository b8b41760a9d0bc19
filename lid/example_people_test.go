package lid_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/lid"
)

func ExampleCrew_Together() {
	crew := lid.Crew{People: 2, Limit: 60 * manway.Pound}
	together, ok := crew.Together()
	fmt.Printf("%.0f lb %v\n", together.In(manway.Pound), ok)
	// Output:
	// 80 lb true
}

// The two rules for teams, side by side.
func ExampleTeamByShare() {
	for n := 1; n <= 3; n++ {
		share, _ := lid.TeamByShare(n, 60*manway.Pound)
		double, _ := lid.TeamByDoubling(n, 60*manway.Pound)
		fmt.Printf("%d: %.0f lb, %.0f lb\n", n, share.In(manway.Pound), double.In(manway.Pound))
	}
	// Output:
	// 1: 60 lb, 60 lb
	// 2: 80 lb, 120 lb
	// 3: 90 lb, 165 lb
}

func ExampleFilter_Limit() {
	m, err := lid.Filter{Zone: lid.ShinToKnuckle, Far: true, Turn: 60 * manway.Degree}.Limit()
	if err != nil {
		fmt.Println(err)
		return
	}
	start, keep := lid.PushFilter(false)
	fmt.Printf("lift %.0f kg, push %.0f N to start and %.0f N to keep it moving\n", m.In(manway.Kilogram), start.In(manway.Newton), keep.In(manway.Newton))
	// Output:
	// lift 9 kg, push 196 N to start and 98 N to keep it moving
}

func ExampleSpellOf() {
	for _, rest := range []manway.Duration{90 * manway.Minute, 30 * manway.Minute, 10 * manway.Minute} {
		s, err := lid.SpellOf(90*manway.Minute, rest)
		fmt.Println("90 min of lifting,", rest, "of rest:", s, err)
	}
	// Output:
	// 90 min of lifting, 1.5 h of rest: moderate <nil>
	// 90 min of lifting, 30 min of rest: moderate <nil>
	// 90 min of lifting, 10 min of rest: long <nil>
}

// Page 16 of the manual: 10 lifts a minute for 8 of 15 minutes.
func ExampleAverageRate() {
	rate, err := lid.AverageRate(10, 8*manway.Minute)
	fmt.Printf("%.2f a minute %v\n", rate, err)
	// Output:
	// 5.33 a minute <nil>
}

// Page 28 of the manual: three tasks in one spell.
func ExampleCompositeIndex() {
	index, ok, err := lid.CompositeIndex([]lid.Task{
		{Load: 30 * manway.Pound, Free: 20 * manway.Pound, Frequency: 1},
		{Load: 20 * manway.Pound, Free: 20 * manway.Pound, Frequency: 2},
		{Load: 10 * manway.Pound, Free: 15 * manway.Pound, Frequency: 4},
	}, lid.ShortSpell, false)
	fmt.Printf("%.1f %v %v\n", index, ok, err)
	// Output:
	// 1.9 true <nil>
}

func ExampleBar_Advantage() {
	fmt.Println(lid.Bar{LoadArm: 4 * manway.Inch, EffortArm: 44 * manway.Inch}.Advantage())
	// Output:
	// 11
}

func ExampleSidePull_Tension() {
	pull, err := lid.SidePull{Side: 40 * manway.PoundForce, Span: 20 * manway.Foot, Moved: 6 * manway.Inch}.Tension()
	fmt.Println(pull, err)
	// Output:
	// 400 lbf <nil>
}

func ExampleHoleCoverLoad() {
	may, err := lid.HoleCoverLoad(1000 * manway.PoundForce)
	fmt.Println(may, err)
	// Output:
	// 500 lbf <nil>
}
