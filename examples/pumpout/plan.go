package main

import (
	"errors"
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// output is all that is said of one stop.
type output struct {
	brief    hydraulics.Brief
	found    hydraulics.Finding
	rules    []ruled
	forecast hydraulics.Forecast
	dated    bool // the visit has a date, so that there is a forecast
	skipped  hydraulics.Skipped
	gauges   []gauged
	cautions manway.Cautions
}

// gauged is the truck's gauge set against one compartment.
type gauged struct {
	compartment string
	hydraulics.GaugeReading
}

// ruled is one rule set against one compartment.
type ruled struct {
	compartment string
	hydraulics.TriggerResult
}

// compute plans one stop.
func compute(in *input) (output, error) {
	spec, faults := in.Spec()
	spec.OutletInvert = in.Outlet
	made, faults := tankinput.New(spec, faults)
	if len(faults) > 0 {
		return output{}, faults
	}
	c, err := in.plan(&made)
	if err == nil {
		err = in.check(c)
	}
	if err != nil {
		return output{}, err
	}
	var out output
	if out.brief.Plan, err = c.PumpOut(); err != nil {
		return output{}, err
	}
	out.brief.People, out.brief.Tools = in.People, in.Tools
	for i, found := range out.brief.Plan.Compartments {
		lid := hydraulics.LidFound{Name: found.Name}
		if i < len(in.Compartments) {
			lid.Depth, lid.Note = in.Compartments[i].LidDepth, in.Compartments[i].LidNote
		}
		out.brief.Lids = append(out.brief.Lids, lid)
	}
	for _, step := range []func(*input, hydraulics.Case) error{out.truck, out.pull, out.arrive, out.trigger, out.next, out.gauge} {
		if err := step(in, c); err != nil {
			return output{}, err
		}
	}
	out.cautions |= out.brief.Plan.Cautions
	return out, nil
}

// check finds every fault of a record before anything is reckoned.
func (in *input) check(c hydraulics.Case) error {
	var faults manway.InputErrors
	add := func(err error) {
		var list manway.InputErrors
		if errors.As(err, &list) {
			for _, f := range list {
				faults.Add(fieldNames.Replace(f.Field), f.Value, f.Want)
			}
		}
	}
	add(c.Validate())
	if in.Truck != 0 {
		add(in.onTruck().Validate())
	}
	if in.Lift.Taken {
		_, err := in.suction().Pull()
		add(err)
	}
	add(in.household().Validate())
	if f, err := in.found(c); err == nil {
		add(f.Validate())
	}
	for _, d := range []struct {
		field string
		date  manway.Date
	}{{"Date", in.Date}, {"LastPumped", in.LastPumped}} {
		if !d.date.IsZero() {
			d.date.Within(&faults, d.field)
		}
	}
	if !in.Date.IsZero() && in.LastKnown != hydraulics.Unknown && (in.LastPumped.IsZero() || in.Date.Before(in.LastPumped)) {
		faults.Add("LastPumped", in.LastPumped.String(), "a date not after that of the visit")
	}
	return faults.Err()
}

// fieldNames turns the paths of package hydraulics into those of the record.
var fieldNames = strings.NewReplacer("Hose.Diameter", "HoseDiameter", "Hose.Length", "Hose", "Hose.Fittings", "Fittings",
	"Capacity", "Truck", "Dividers", "Ports", "].Port", "]", "].Difference", "]", "Keeps[1].Level", "NotBelow", "People", "Residents",
	"PeopleKnown", "ResidentsKnown", "Runback.Seen", "Runback", "Runback.", "", "Devices.Inlet", "InletBaffle", "Devices.Outlet", "OutletBaffle", "Devices.", "")

// onTruck is the truck.
func (in *input) onTruck() hydraulics.Truck {
	return hydraulics.Truck{Capacity: in.Truck, Aboard: in.Aboard, Tare: in.Tare, Limit: in.Limit}
}

// suction is the hose with its lift from the level as found.
func (in *input) suction() hydraulics.Suction {
	return hydraulics.Suction{
		Altitude: in.Altitude, Temperature: in.Temperature, Vacuum: in.Vacuum, Lift: in.Lift.Length,
		Hose:      hydraulics.Hose{Diameter: in.HoseDiameter, Length: in.Hose, Fittings: in.Fittings},
		UsualRate: in.UsualRate, LightTank: in.LightTank,
	}
}

// found is what stood in the tank on arrival, by the compartment nearest to the
// outlet in which a level was read.
func (in *input) found(c hydraulics.Case) (hydraulics.Found, error) {
	f := hydraulics.Found{
		Outlet: c.Outlet, Inlet: in.Inlet,
		Runback: hydraulics.Runback{Seen: in.Runback, Rise: in.Rise, Over: in.Over},
		Devices: hydraulics.Devices{Inlet: in.InletBaffle, Outlet: in.OutletBaffle, Filter: in.Filter},
	}
	for i, found := range c.Compartments {
		area, err := found.Shape.Area(c.Outlet)
		if err != nil {
			return f, err
		}
		f.Area += area
		if found.Level.Taken {
			f.Level, f.Elsewhere = found.Level, i < len(c.Compartments)-1
		}
	}
	if !in.Date.IsZero() && !in.LastPumped.IsZero() && in.LastKnown != hydraulics.Unknown {
		if days := in.LastPumped.DaysUntil(in.Date); days >= 0 {
			f.SincePumped = hydraulics.Span{Known: true, Time: manway.Duration(days) * manway.Day}
		}
	}
	return f, nil
}

// plan is the case of a tank and what was found in it.
func (in *input) plan(made *tank.Tank) (hydraulics.Case, error) {
	shapes := made.Compartments()
	c := hydraulics.Case{Outlet: in.Outlet, Dividers: make([]hydraulics.Divider, len(shapes)-1)}
	var faults manway.InputErrors
	manway.Within(&faults, "Compartments", len(in.Compartments), 0, len(shapes))
	manway.Within(&faults, "Ports", len(in.Ports), 0, len(shapes)-1)
	manway.Within(&faults, "Carries", len(in.Carries), 0, len(shapes)-1)
	if err := faults.Err(); err != nil {
		return c, err
	}
	for i := range shapes {
		to := hydraulics.Compartment{Name: fmt.Sprintf("compartment %d", i+1), Shape: &shapes[i]}
		if i < len(in.Compartments) {
			from := in.Compartments[i]
			if from.Name != "" {
				to.Name = from.Name
			}
			to.State, to.Reason, to.Level, to.Sludge, to.Scum = from.State, from.Reason, from.Level, from.Sludge, from.Scum
		}
		c.Compartments = append(c.Compartments, to)
	}
	for i := range c.Dividers {
		if i < len(in.Ports) {
			c.Dividers[i].Port = in.Ports[i]
		}
		if i < len(in.Carries) {
			c.Dividers[i].Judged, c.Dividers[i].Difference = in.Carries[i].Taken, in.Carries[i].Length
		}
	}
	var err error
	c.Keeps, err = in.keeps(made)
	return c, err
}

// keeps are the levels not to go below.
func (in *input) keeps(made *tank.Tank) ([]hydraulics.Keep, error) {
	float := hydraulics.Keep{Name: "flotation"}
	if in.Cover.Taken {
		f, err := made.Float(tank.FloatCase{Cover: in.Cover.Length, Groundwater: in.Groundwater})
		if err != nil {
			return nil, tankinput.Renamed(err)
		}
		float.Judged, float.Assumed = true, f.Assumed
		switch f.Leave {
		case tank.LeaveAtLeast:
			float.Level = min(f.LeastLiquid, made.Inside.Height)
		case tank.LeaveNotShown:
			float.Level = in.Outlet
		}
	}
	keeps := []hydraulics.Keep{float}
	if in.NotBelow.Taken {
		name := in.Because
		if name == "" {
			name = "as given"
		}
		return append(keeps, hydraulics.Keep{Name: name, Judged: true, Level: in.NotBelow.Length}), nil
	}
	return append(keeps, hydraulics.Keep{Name: "empty walls"}), nil
}

// truck counts the loads.
func (o *output) truck(in *input, _ hydraulics.Case) error {
	if in.Truck == 0 {
		return nil
	}
	var err error
	o.brief.Loads, err = in.onTruck().Loads(o.brief.Plan.Remove)
	o.brief.LoadsKnown = err == nil
	return err
}

// pull reckons hose and lift, and how long each compartment takes.
func (o *output) pull(in *input, c hydraulics.Case) error {
	if !in.Lift.Taken {
		if in.UsualRate == 0 {
			return nil
		}
		var err error
		o.brief.Minutes.Time, err = o.brief.Plan.AtRate(in.UsualRate)
		o.brief.Minutes.Known = err == nil
		return err
	}
	s := in.suction()
	b := &o.brief
	b.HoseLength, b.Lift, b.PullKnown = in.Hose, in.Lift.Length, true
	b.Minutes.Known = true
	for i, p := range b.Plan.Compartments {
		if p.State != hydraulics.Opened || !(p.From > p.To) {
			continue
		}
		e, err := hydraulics.Emptying{Suction: s, Compartment: c.Compartments[i], From: p.From, To: p.To}.Time()
		if err != nil {
			return err
		}
		if b.Pull.Atmosphere == 0 || e.Last.Lifting == hydraulics.CannotLift {
			b.Pull = e.First
			if e.Last.Lifting == hydraulics.CannotLift {
				b.Pull, b.Lift = e.Last, s.Lift+p.From-p.To
			}
		}
		b.Minutes.Known = b.Minutes.Known && e.Time.Known
		b.Minutes.Time += e.Time.Time
		o.cautions |= e.Cautions
	}
	b.PullKnown = b.Pull.Atmosphere > 0
	return nil
}

// arrive reads the level on arrival.
func (o *output) arrive(in *input, c hydraulics.Case) error {
	f, err := in.found(c)
	if err != nil {
		return err
	}
	o.found, err = f.Arrival()
	return err
}

// trigger sets every rule against every compartment that was opened.
func (o *output) trigger(in *input, c hydraulics.Case) error {
	for i, found := range c.Compartments {
		if found.State == hydraulics.NotOpened {
			continue
		}
		s := hydraulics.Solids{Outlet: c.Outlet, DeviceBottom: in.DeviceBottom, Level: found.Level, Sludge: found.Sludge, Scum: found.Scum}
		if i < len(c.Compartments)-1 {
			s.DeviceBottom = manway.Reading{} // the outlet device stands in the last one
		}
		if now := o.brief.Plan.Compartments[i].AtOutlet; now.LayersKnown && now.Total > 0 {
			s.Share = hydraulics.Fraction{Known: true, Value: float64((now.Sludge + now.Scum) / now.Total)}
		}
		for _, rule := range hydraulics.Rules() {
			r, err := rule.Trigger(s)
			if err != nil {
				return err
			}
			o.rules = append(o.rules, ruled{found.Name, r})
		}
	}
	return nil
}

// gauge sets the truck's gauge against the gallons of each compartment.
func (o *output) gauge(in *input, c hydraulics.Case) error {
	for i, found := range in.Compartments {
		if found.GaugeBefore == nil || found.GaugeAfter == nil {
			continue
		}
		plan := o.brief.Plan.Compartments[i]
		r, err := hydraulics.Gauge{Compartment: c.Compartments[i], From: plan.From, To: plan.To, Before: *found.GaugeBefore, After: *found.GaugeAfter}.Read()
		if err != nil {
			var faults manway.InputErrors
			faults.Under(fmt.Sprintf("Compartments[%d].Gauge", i), err)
			return faults
		}
		o.gauges = append(o.gauges, gauged{plan.Name, r})
	}
	return nil
}

// household is who lives on the tank.
func (in *input) household() hydraulics.Household {
	return hydraulics.Household{People: in.Residents, PeopleKnown: in.ResidentsKnown, Bedrooms: in.Bedrooms, Grinder: in.Grinder, Months: in.Months}
}

// next forecasts the next pump-out from the date of the visit.
func (o *output) next(in *input, c hydraulics.Case) error {
	var err error
	if o.skipped, err = o.brief.Plan.Skipped(in.household()); err != nil || in.Date.IsZero() {
		return err
	}
	m := hydraulics.Measured{
		Outlet: c.Outlet, DeviceBottom: in.DeviceBottom, Compartments: c.Compartments,
		Last: in.LastPumped, LastKnown: in.LastKnown, Visit: in.Date, Rule: hydraulics.RuleEPA,
	}
	o.forecast, err = m.NextPumpOut(in.household(), o.brief.Plan.Clean, in.Date)
	o.dated = err == nil
	o.cautions |= o.forecast.Cautions
	return err
}
