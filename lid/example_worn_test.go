package lid_test

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/lid"
)

func ExampleAirLoss() {
	a, err := lid.AirLoss(lid.Steel, lid.C3, 20*manway.Year)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("a bar has lost %.2f to %.2f mm of its diameter\n", a.BarLow.In(manway.Millimetre), a.BarHigh.In(manway.Millimetre))
	// Output:
	// a bar has lost 0.24 to 0.56 mm of its diameter
}

func ExampleSulfide_PerYear() {
	c, cautions, err := lid.Sulfide{Reaction: 0.4, Flux: 0.1, Alkalinity: 0.2}.PerYear()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f mm a year, remembered: %v\n", c.In(manway.Millimetre), cautions.Has(manway.RememberedFigure))
	// Output:
	// 2.28 mm a year, remembered: true
}

func ExampleWornBar() {
	b, err := lid.WornBar(0.5*manway.Inch, 0.45*manway.Inch)
	fmt.Printf("%.0f %% of the steel left, brittle: %v %v\n", 100*b.Area, b.Brittle, err)
	// Output:
	// 81 % of the steel left, brittle: true <nil>
}
