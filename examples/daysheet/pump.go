package main

import (
	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// rule says that a compartment is to be pumped when sludge and scum reach a
// third of the liquid depth.
var rule = hydraulics.RuleNewHamp

// fields of the readings in a compartment.
var fields = [compartments][2]string{{"Sludge1", "Scum1"}, {"Sludge2", "Scum2"}}

// readings are sludge and scum of a compartment.
func (in *input) readings(i int) (sludge, scum manway.Reading) {
	if i == 0 {
		return reading(in.Sludge1), reading(in.Scum1)
	}
	return reading(in.Sludge2), reading(in.Scum2)
}

func reading(l *manway.Length) manway.Reading {
	if l == nil {
		return manway.Reading{}
	}
	return manway.Read(*l)
}

// pump fills in what the compartments hold and what is to be pumped of it.
func (j *job) pump(t *tank.Tank) {
	for i := j.out.n; i < compartments; i++ {
		sludge, scum := j.in.readings(i)
		for k, r := range [...]manway.Reading{sludge, scum} {
			if r.Taken {
				j.faults.Add(fields[i][k], r.String(), "nothing: there is no partition")
			}
		}
	}
	shapes := t.Compartments()
	for i := range shapes {
		j.compartment(i, &shapes[i])
	}
	if len(j.faults) == 0 {
		j.sum()
	}
}

// compartment fills in what one of them holds, and whether it is to be pumped.
func (j *job) compartment(i int, shape *tank.Compartment) {
	v, err := shape.Volume(j.in.Depth)
	if err != nil {
		j.refuse(err)
	}
	sludge, scum := j.in.readings(i)
	found, err := rule.Trigger(hydraulics.Solids{Outlet: j.in.Depth, Sludge: sludge, Scum: scum})
	if err != nil {
		j.refuse(err, "Outlet", "Depth", "Sludge", fields[i][0], "Scum", fields[i][1])
		return
	}
	c := &j.out.compartments[i]
	c.liquid = is(v)
	switch {
	case found.Pump:
		c.pump = c.liquid
	case found.Complete:
		c.pump = is[manway.Volume](0)
	}
	c.solids = known[float64]{found.Checks[0].Demand, found.Complete}
}

// sum adds the compartments up; no total is known where one of them is not.
func (j *job) sum() {
	liquid, pump := is[manway.Volume](0), is[manway.Volume](0)
	for _, c := range j.out.compartments[:j.out.n] {
		liquid.v += c.liquid.v
		pump.v += c.pump.v
		pump.ok = pump.ok && c.pump.ok
	}
	j.out.liquid = liquid
	if !pump.ok {
		return
	}
	j.out.pump = pump
	if j.in.Truck == 0 {
		return
	}
	l, err := hydraulics.Truck{Capacity: j.in.Truck}.Loads(pump.v)
	if err != nil {
		j.refuse(err, "Truck.Capacity", "Truck", "Volume", "Depth")
		return
	}
	j.out.loads = is(float64(l.Loads))
}

// read are the compartments as they were found.
func (j *job) read(t *tank.Tank) []hydraulics.Compartment {
	shapes := t.Compartments()
	list := make([]hydraulics.Compartment, len(shapes))
	for i := range shapes {
		list[i] = hydraulics.Compartment{Shape: &shapes[i], State: hydraulics.Opened}
		list[i].Sludge, list[i].Scum = j.in.readings(i)
	}
	return list
}

// layers fills in sludge and scum of all compartments.
func (j *job) layers(t *tank.Tank) {
	all := hydraulics.Split{Known: true, LayersKnown: true}
	for _, c := range j.read(t) {
		s, err := c.Layers(j.in.Depth)
		if err != nil {
			j.refuse(err)
			return
		}
		all = all.Plus(s)
	}
	j.out.sludge = known[manway.Volume]{all.Sludge, all.LayersKnown}
	j.out.scum = known[manway.Volume]{all.Scum, all.LayersKnown}
}

// next fills in the time between pump-outs of the whole tank.
func (j *job) next(*tank.Tank) {
	if j.in.People == nil {
		return
	}
	h := hydraulics.Household{People: *j.in.People, PeopleKnown: hydraulics.Counted}
	var err error
	if j.out.next, err = h.Interval(j.out.liquid.v); err != nil {
		j.refuse(err)
		return
	}
	j.out.cautions |= j.out.next.Cautions
}

// forecast fills in the date at which the rule will ask for pumping.
func (j *job) forecast(t *tank.Tank) {
	in := j.in
	if in.Pumped.IsZero() || in.Visited.IsZero() {
		return
	}
	f, err := hydraulics.Measured{
		Outlet: in.Depth, Compartments: j.read(t), Rule: rule,
		Last: in.Pumped, LastKnown: hydraulics.Counted, Visit: in.Visited,
	}.Forecast()
	if err != nil {
		j.refuse(err, "Last", "Pumped", "Visit", "Visited")
		return
	}
	if f.NotMeasured == 0 {
		j.out.nextOn = f.Likely
	}
	j.out.cautions |= f.Cautions
}
