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

// roofing is the screening of the roof; not known without cover and the lid's
// size and place.
type roofing struct {
	known  bool
	use    known[float64] // of the check that governs
	load   string         // that governs
	status manway.Status  // the worst of all loadings
}

// roof screens the roof under its soil, a crowd and a person, with an opening as
// large as the lid.
func (j *job) roof(t *tank.Tank) {
	in := j.in
	if in.Cover == nil || in.LidAt == 0 || in.LidDia == 0 {
		return
	}
	bars := manway.Reinforcement{State: in.Steel}
	if in.Steel == manway.SteelKnown {
		bars.Diameter, bars.Spacing, bars.Cover = in.Bar, in.BarSpacing, in.BarCover
	} else if in.Bar != 0 || in.BarSpacing != 0 || in.BarCover != 0 {
		j.faults.Add("Steel", in.Steel.String(), "known, where bars are given")
		return
	}
	r, err := t.Roof(tank.RoofCase{
		Steel: tank.Steel{Inside: tank.Mesh(bars)}, Now: tank.RoofLoad{Cover: *in.Cover}, Wheels: []manway.Wheel{},
	})
	if err != nil {
		j.refuse(err, "Steel.Inside.Along.Diameter", "Bar", "Steel.Inside.Along.Spacing", "BarSpacing", "Steel.Inside.Along.Cover", "BarCover",
			"Steel.Inside.Across.Diameter", "Bar", "Steel.Inside.Across.Spacing", "BarSpacing", "Steel.Inside.Across.Cover", "BarCover", "Now.Cover", "Cover")
		return
	}
	j.out.cautions |= r.Cautions
	j.out.roof = roofing{known: true, status: manway.Pass}
	for _, l := range r.Loadings {
		if s := l.Status(); s != manway.Pass && j.out.roof.status != manway.Fail {
			j.out.roof.status = s
		}
	}
	if len(r.Loadings) == 0 {
		j.out.roof.status = manway.NotJudged
	}
	if r.Governs >= 0 {
		l := r.Loadings[r.Governs]
		j.out.roof.load = l.Name
		if l.Governs >= 0 {
			use, ok := l.Checks[l.Governs].Use()
			j.out.roof.use = known[float64]{use, ok}
		}
	}
}
