package visit

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

// FloatAnswer is whether the emptied tank may float.
type FloatAnswer struct {
	tank.Flotation
	Limit tank.WaterLimit // groundwater at this depth or deeper lets it be emptied
}

// PumpAnswer is what to pump, what the level on arrival points to, and when to
// come again.
type PumpAnswer struct {
	hydraulics.Plan
	Loads    hydraulics.Loads
	HasTruck bool
	Found    hydraulics.Finding
	Trend    hydraulics.Levels // of this visit and earlier ones, where there is a history
	Rules    []RuleAnswer
	Skipped  hydraulics.Skipped  // the household table, and what compartments left out cost
	Forecast hydraulics.Forecast // the best method there is, pumped now or left
	Pull     hydraulics.Pull
	Hose     riser.HoseRun
	HasHose  bool
}

// RuleAnswer is a published rule set against one compartment.
type RuleAnswer struct {
	Compartment int // 1 at the inlet
	hydraulics.TriggerResult
}

// float works out flotation with every lid off and the tank pumped dry, under
// the least soil that was measured: the stage at which tanks come up.
func (v *Visit) float() error {
	c := tank.FloatCase{
		Cover: v.leastCover(), Groundwater: v.Survey.Ground.Groundwater, Soil: v.Survey.Ground.soil(),
		Concrete: manway.Concrete{Strength: v.Survey.Tank.Strength, Density: v.Survey.Tank.Density},
	}
	var err error
	if v.Float.Flotation, err = v.Tank.Float(c); err != nil {
		return err
	}
	v.Float.Limit, err = v.Tank.WaterLimit(c)
	return err
}

func (v *Visit) leastCover() manway.Length {
	least := v.Survey.Accesses[0].Cover
	for _, a := range v.Survey.Accesses {
		least = min(least, a.Cover)
	}
	return least
}

// opened says whether a compartment was opened, and if not why.
func (s Survey) opened(compartment int) (state hydraulics.Opening, why string) {
	for _, a := range s.Accesses {
		if a.Compartment != compartment {
			continue
		}
		if a.Opened == manway.Yes {
			return hydraulics.Opened, ""
		}
		why = a.WhyNot
	}
	if why == "" {
		why = "no opening found over it"
	}
	return hydraulics.NotOpened, why
}

// pump plans the pump-out and reads levels, triggers and the next date.
func (v *Visit) pump() error {
	s := v.Survey
	c := hydraulics.Case{Outlet: s.Tank.OutletInvert, Keeps: v.keeps(), Dividers: make([]hydraulics.Divider, len(s.Tank.Partitions))}
	shapes := v.Tank.Compartments()
	for i, p := range s.Tank.Partitions {
		c.Dividers[i].Port = p.Port
		switch limit := v.Walls.Partitions[i].Difference; limit.State {
		case tank.LimitAt:
			c.Dividers[i].Judged, c.Dividers[i].Difference = true, limit.At
		case tank.LimitNone:
			c.Dividers[i].Judged, c.Dividers[i].Difference = true, v.Tank.Inside.Height
		}
	}
	for i := range shapes {
		in := hydraulics.Compartment{Name: fmt.Sprintf("compartment %d", i+1), Shape: &shapes[i]}
		in.State, in.Reason = s.opened(i + 1)
		if in.State == hydraulics.Opened && i < len(s.Compartments) {
			in.Level, in.Sludge, in.Scum = s.Compartments[i].Level, s.Compartments[i].Sludge, s.Compartments[i].Scum
		}
		c.Compartments = append(c.Compartments, in)
	}
	var err error
	if v.Pump.Plan, err = c.PumpOut(); err != nil {
		return err
	}
	if s.Truck.Capacity > 0 {
		v.Pump.HasTruck = true
		if v.Pump.Loads, err = (hydraulics.Truck{Capacity: s.Truck.Capacity, Aboard: s.Truck.Aboard}).Loads(v.Pump.Remove); err != nil {
			return err
		}
	}
	for _, step := range []func(hydraulics.Case) error{v.arrive, v.levels, v.trigger, v.next, v.suction} {
		if err := step(c); err != nil {
			return err
		}
	}
	return nil
}

// keeps are the levels not to go below.
func (v *Visit) keeps() []hydraulics.Keep {
	f := v.Float
	keep := hydraulics.Keep{Name: "flotation", Judged: true, Assumed: f.Assumed}
	switch f.Leave {
	case tank.LeaveAtLeast:
		keep.Level = min(f.LeastLiquid, v.Tank.Inside.Height)
	case tank.LeaveNotShown:
		keep.Level = v.Survey.Tank.OutletInvert
	}
	return []hydraulics.Keep{keep, {Name: "walls and floor of the emptied tank", Judged: v.Walls.standEmpty(), Assumed: v.Walls.Wall.Assumed}}
}

// arrivalLevel is the level on arrival; where it was not written down by itself,
// that of the last compartment that was opened and read.
func (s Survey) arrivalLevel() manway.Reading {
	if s.Arrival.Level.Taken {
		return s.Arrival.Level
	}
	for i := len(s.Compartments) - 1; i >= 0; i-- {
		if state, _ := s.opened(i + 1); state == hydraulics.Opened && s.Compartments[i].Level.Taken {
			return s.Compartments[i].Level
		}
	}
	return manway.Reading{}
}

func (v *Visit) arrive(c hydraulics.Case) error {
	a := v.Survey.Arrival
	area, err := v.Tank.Area(c.Outlet)
	if err != nil {
		return err
	}
	found := hydraulics.Found{
		Outlet: c.Outlet, Inlet: v.Survey.Tank.InletInvert, Level: v.Survey.arrivalLevel(), Area: area,
		Runback: hydraulics.Runback{Seen: a.Runback, Rise: a.Rise, Over: a.Over},
		Devices: hydraulics.Devices{Inlet: a.Inlet, Outlet: a.Outlet, Filter: a.Filter},
	}
	if pumped, _ := v.Survey.lastPumped(v.Survey.Date); !pumped.IsZero() {
		days := pumped.DaysUntil(v.Survey.Date)
		found.SincePumped = hydraulics.Span{Known: true, Time: manway.Duration(days) * manway.Day}
	}
	v.Pump.Found, err = found.Arrival()
	return err
}

// rules are the published rules that a visit is set against: a clearance, a
// third of the depth, a quarter of the volume.
var rules = [...]hydraulics.Rule{hydraulics.RuleEPA, hydraulics.RuleNewHamp, hydraulics.RuleMinnesota}

// deviceBottom is the bottom of the outlet tee, which hangs in the last
// compartment only.
func (v *Visit) deviceBottom(compartment int) manway.Reading {
	if compartment == len(v.Survey.Tank.Partitions) {
		return v.Survey.Tank.OutletDevice
	}
	return manway.Reading{}
}

func (v *Visit) trigger(c hydraulics.Case) error {
	for i, in := range c.Compartments {
		if in.State != hydraulics.Opened {
			continue
		}
		solids := hydraulics.Solids{Outlet: c.Outlet, Level: in.Level, Sludge: in.Sludge, Scum: in.Scum, DeviceBottom: v.deviceBottom(i)}
		if split := v.Pump.Compartments[i].AtOutlet; split.LayersKnown && split.Total > 0 {
			solids.Share = hydraulics.Fraction{Known: true, Value: float64(split.Sludge+split.Scum) / float64(split.Total)}
		}
		for _, rule := range rules {
			result, err := rule.Trigger(solids)
			if err != nil {
				return err
			}
			v.Pump.Rules = append(v.Pump.Rules, RuleAnswer{i + 1, result})
		}
	}
	return nil
}

func (v *Visit) next(c hydraulics.Case) error {
	h := v.Survey.Household
	household := hydraulics.Household{People: h.People, PeopleKnown: h.certainty(), Bedrooms: h.Bedrooms, Grinder: h.Grinder, Months: h.Months}
	var err error
	if v.Pump.Skipped, err = v.Pump.Plan.Skipped(household); err != nil {
		return err
	}
	last, known := v.Survey.lastPumped(v.Survey.Date)
	m := hydraulics.Measured{
		Outlet: c.Outlet, DeviceBottom: v.Survey.Tank.OutletDevice, Compartments: c.Compartments,
		Last: last, LastKnown: known, Visit: v.Survey.Date, Rule: hydraulics.RuleEPA,
		Earlier: v.Survey.readSince(last, c.Compartments),
	}
	if v.Pump.Forecast, err = m.NextPumpOut(household, v.Pump.Clean, v.Survey.Date); err != nil {
		return err
	}
	return v.earlierFilling(m)
}

// The vacuum truck that is reckoned with: 3 in hose, 25 inHg, its inlet 4 ft
// above the ground, couplings and bends of K 3. Common practice of the trade.
const (
	truckVacuum = 25 * manway.InchMercury
	truckHose   = 3 * manway.Inch
	truckInlet  = 4 * manway.Foot
	truckBends  = 3.0
	hoseSection = 25 * manway.Foot
	usualLiquid = manway.Temperature(288.15) // 15 C
)

// suction reckons hose and lift, where the way to the truck was measured.
func (v *Visit) suction(hydraulics.Case) error {
	t := v.Survey.Truck
	if t.Capacity == 0 || !t.Hose.Taken {
		return nil
	}
	bottom := v.leastCover() + v.Tank.Spec.Roof + v.Tank.Inside.Height
	run, err := riser.Hose{Along: t.Hose.Length, Fall: -t.Rise, Inlet: truckInlet, Bottom: bottom, Section: hoseSection}.Run()
	if err != nil {
		return err
	}
	v.Pump.Hose, v.Pump.HasHose = run, true
	v.Pump.Pull, err = hydraulics.Suction{
		Altitude: t.Altitude, Temperature: usualLiquid, Vacuum: truckVacuum, Lift: max(run.Lift, 0),
		Hose:      hydraulics.Hose{Diameter: truckHose, Length: run.Length, Fittings: truckBends},
		LightTank: v.Tank.Spec.Material != tank.ConcreteShell,
	}.Pull()
	return err
}

// pumpNow reports whether a rule asks for pumping.
func (v Visit) pumpNow() bool {
	for _, r := range v.Pump.Rules {
		if r.Pump {
			return true
		}
	}
	return false
}
