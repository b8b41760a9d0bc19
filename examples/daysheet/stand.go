package main

import (
	"manway.example/manway"
	"manway.example/manway/tank"
)

// floating is whether the emptied tank stays down; not known without height and
// cover.
type floating struct {
	known       bool
	state       tank.FloatState
	factor      known[float64]
	leave       tank.LeaveState
	leastLiquid known[manway.Length]
}

// float fills in the flotation of the tank pumped dry with its lids off.
func (j *job) float(t *tank.Tank) {
	if j.in.Height == 0 || j.in.Cover == nil {
		return
	}
	c := tank.FloatCase{Cover: *j.in.Cover}
	if j.in.Groundwater != nil {
		c.Groundwater = manway.GroundwaterAt(*j.in.Groundwater)
	}
	f, err := t.Float(c)
	if err != nil {
		j.refuse(err, "Groundwater.Depth", "Groundwater")
		return
	}
	j.out.float = floating{known: true, state: f.State, leave: f.Leave}
	if f.State != tank.NoUplift {
		j.out.float.factor = is(f.Factor)
	}
	if f.Leave != tank.LeaveNotShown {
		j.out.float.leastLiquid = is(f.LeastLiquid)
	}
	j.out.cautions |= f.Cautions
}
