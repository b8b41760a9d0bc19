package lid_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// A worn lid with a mesh that was measured, and the same lid unseen.
func ExampleLid_Strength() {
	l := lid.Lid{
		Shape: lid.Disc, Diameter: 24 * manway.Inch, Thickness: 3 * manway.Inch, Loss: 0.25 * manway.Inch, Moisture: lid.Soaked,
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI},
	}
	mesh := manway.Reinforcement{State: manway.SteelKnown, Diameter: 0.25 * manway.Inch, Spacing: 4 * manway.Inch, Cover: 0.75 * manway.Inch, Yield: 60000 * manway.PSI}
	for _, steel := range []manway.Reinforcement{mesh, {}} {
		s, err := l.Strength(lid.StrengthCase{Seat: lid.Seat{Fit: lid.OnTop, Opening: 20 * manway.Inch}, Steel: steel})
		if err != nil {
			fmt.Println(err)
			return
		}
		cover := s.Checks[4]
		fmt.Println(steel.State, "-", cover.Name, "-", cover.Status)
	}
	// Output:
	// known - hole cover: twice people and gear - pass
	// unknown - hole cover: twice people and gear - not shown
}

// Three quarters of an inch in thirty years: not longer than so long, never a
// date.
func ExampleWear_Loss() {
	loss, err := lid.Wear{Protected: 3 * manway.Inch, Now: 2.25 * manway.Inch, Age: 30 * manway.Year}.Loss()
	if err != nil {
		fmt.Println(err)
		return
	}
	left, err := loss.Until(1.75 * manway.Inch)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(left.State, left.NotLonger)
	// Output: not longer than 20 yr
}
