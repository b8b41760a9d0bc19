package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/tank"
)

// output is the chart of one tank.
type output struct {
	tank         tank.Tank
	full, liquid manway.Volume
	depth        manway.Length // of the liquid
	n            int           // of compartments
	compartments [4]compartment
	chart        tank.Chart
}

// compartment is one of them at the liquid depth.
type compartment struct {
	volume  manway.Volume
	share   float64
	perInch manway.Volume
}

// compute makes the chart of a tank.
func compute(in *input) (output, error) {
	t, faults := tankinput.New(in.Spec())
	if len(faults) > 0 {
		return output{}, faults
	}
	out := output{tank: t}
	out.at(in, &faults)
	out.rows(in, &faults)
	return out, faults.Err()
}

// at fills in what the tank holds at the liquid depth, or full.
func (o *output) at(in *input, faults *manway.InputErrors) {
	o.depth = o.tank.Inside.Height
	if in.LiquidDepth != nil {
		o.depth = *in.LiquidDepth
		manway.Within(faults, "LiquidDepth", o.depth, 0, o.tank.Inside.Height)
	}
	if len(*faults) > 0 {
		return
	}
	o.full = o.tank.Full()
	o.liquid, _ = o.tank.Volume(o.depth)
	for i, c := range o.tank.Compartments() {
		v, _ := c.Volume(o.depth)
		area, _ := c.Area(o.depth)
		o.compartments[i] = compartment{volume: v, perInch: area.Times(manway.Inch)}
		if o.liquid > 0 {
			o.compartments[i].share = float64(v) / float64(o.liquid)
		}
		o.n++
	}
}

// rows fills in the chart at the depths asked for, or at every step.
func (o *output) rows(in *input, faults *manway.InputErrors) {
	c := tank.ChartCase{Step: in.Step}
	if in.Rim != nil {
		c.FromRim, c.Rim = true, *in.Rim
	}
	var err error
	if in.Depths == nil {
		o.chart, err = o.tank.Chart(c)
	} else {
		o.chart, err = o.tank.ChartAt(in.Depths, c)
	}
	if err != nil {
		*faults = append(*faults, tankinput.Renamed(err)...)
	}
}
