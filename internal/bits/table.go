package main

import (
	"manway.example/manway"
	"manway.example/manway/tank"
)

// calculation is one calculation with its input put in.
type calculation struct {
	name string
	do   func() (any, error)
}

// table is what is compared: the main calculations of every room, each with one
// invented input, and the visits of the surveys in the given files.
func table(sites []string) []calculation {
	var all []calculation
	for _, room := range [][]calculation{structure(), tanks(), lids(), risers(), liquids(), money(), visits(sites)} {
		all = append(all, room...)
	}
	return all
}

// with puts the input of a calculation in.
func with[In, Out any](do func(In) (Out, error), in In) func() (any, error) {
	return func() (any, error) { return do(in) }
}

// of takes a method that needs no more than its receiver.
func of[Out any](do func() (Out, error)) func() (any, error) {
	return func() (any, error) { return do() }
}

const (
	inch = manway.Inch
	foot = manway.Foot
)

var (
	strong = manway.Concrete{Strength: 4000 * manway.PSI, Density: 150 * manway.PoundPerCubicFoot}
	wires  = manway.Reinforcement{State: manway.SteelKnown, Diameter: 0.25 * inch, Spacing: 4 * inch, Cover: 0.75 * inch, Yield: 60000 * manway.PSI}
	clay   = manway.Soil{Moist: 120 * manway.PoundPerCubicFoot}
)

// box is a tank of two compartments with an opening over each.
func box() *tank.Tank {
	return made(tank.Spec{
		Shape: tank.Box{Length: 98 * inch, Width: 59 * inch, Height: 61 * inch},
		Wall:  3 * inch, Roof: 4 * inch, Floor: 3.5 * inch,
		Partitions:   []tank.Partition{{At: 62 * inch, Thickness: 3 * inch}},
		Access:       []tank.Access{{Along: 24 * inch, Length: 24 * inch, Width: 20 * inch}, {Compartment: 1, Along: 80 * inch, Diameter: 20 * inch}},
		OutletInvert: 48 * inch,
	})
}

// drum is a lying cylinder with dished ends.
func drum() *tank.Tank {
	dished := tank.Head{Form: tank.Torispherical, Crown: 60 * inch, Knuckle: 4 * inch}
	return made(tank.Spec{Shape: tank.HorizontalCylinder{Diameter: 61 * inch, Length: 97 * inch, Inlet: dished, Outlet: dished}})
}

func made(s tank.Spec) *tank.Tank {
	t, err := tank.New(s)
	if err != nil {
		panic(err) // the table is fixed: no user gets here
	}
	return &t
}
