package hydraulics

import (
	"manway.example/manway"
	"manway.example/manway/tank"
)

// Chamber is a pump chamber. Levels are heights above its floor.
type Chamber struct {
	Area  manway.Area       // plan area of the liquid, 0.5 to 2,000 ft2: gallons per inch are Area times an inch; not used with Shape
	Shape *tank.Compartment // its real shape, where it is not a prism
	Off   manway.Length     // pump stops
	On    manway.Length     // pump starts
	Alarm manway.Length     // alarm sounds
	Top   manway.Length     // of what it may hold: the lowest of inlet invert and overflow
	Drain manway.Volume     // in the pressure pipe that runs back after each dose; 0: a check valve holds it
}

// Dosing is a pump chamber at its design flow.
type Dosing struct {
	Dose        manway.Volume   // drawn between On and Off
	NetDose     manway.Volume   // that leaves: Dose less what runs back
	PerInch     manway.Volume   // that an inch of level holds above On
	Reserve     manway.Volume   // above the alarm
	ReserveTime manway.Duration // until Top at the design flow, the pump being dead
	RunsPerDay  float64         // at the design flow
	DailyCheck  manway.Check    // reserve against the storage asked for, where it was
	Cautions    manway.Cautions
}

// Dosing reckons the chamber at a design flow of 1 to 100,000 gal/d:
//
//	dose    = V(on) - V(off)          net = dose - drain
//	reserve = V(top) - V(alarm)       time = reserve/flow
//	runs    = flow/net
//
// reserveWanted is the share of a day's flow that must fit above the alarm, 0
// where the local rule asks for none.
//
// Source: practice, gallons per inch and dose; EI 11C201, US Army Corps of
// Engineers, chapter 7.
func (c Chamber) Dosing(design manway.Flow, reserveWanted float64) (Dosing, error) {
	var faults manway.InputErrors
	c.validate(&faults)
	manway.Within(&faults, "Design", design, 1*manway.GallonPerDay, 100000*manway.GallonPerDay)
	manway.Within(&faults, "ReserveWanted", reserveWanted, 0, 5)
	dose := c.between(c.Off, c.On)
	if len(faults) == 0 && !(c.Drain < dose) {
		faults.Add("Drain", c.Drain.String(), "less than the dose of "+dose.String())
	}
	if err := faults.Err(); err != nil {
		return Dosing{}, err
	}
	d := Dosing{
		Dose: dose, NetDose: dose - c.Drain, PerInch: c.between(c.On, c.On+manway.Inch),
		Reserve: c.between(c.Alarm, c.Top), Cautions: manway.NeverEnter | manway.LocalCode | manway.GasAndIgnition,
	}
	d.ReserveTime = manway.Duration(float64(d.Reserve) / float64(design))
	d.RunsPerDay = float64(design.Times(manway.Day) / d.NetDose)
	d.DailyCheck = manway.Check{Name: "storage above the alarm", Kind: manway.KindVolume, Reason: "no storage asked for", Source: manway.Citation{Source: manway.Practice, Place: "storage above the alarm"}}
	if reserveWanted > 0 {
		d.DailyCheck.Reason = ""
		d.DailyCheck.Demand = reserveWanted * float64(design.Times(manway.Day))
		d.DailyCheck.Capacity = float64(d.Reserve)
		d.DailyCheck = d.DailyCheck.Judge()
	}
	return d, nil
}

// Drawdown is a pump's rate read from the fall of the level.
type Drawdown struct {
	Pumped manway.Volume // that left: the fall and what flowed in meanwhile
	Rate   manway.Flow
}

// Basis lists the source of the rate.
func (Drawdown) Basis() []manway.Citation { return Dosing{}.Basis()[:1] }

// Drawdown reads the rate of the pump from a fall of level, starting at On,
// over a time, with the flow that came in meanwhile, 0 where none:
//
//	rate = (V(on) - V(on - fall))/time + inflow
//
// Source: practice, the drawdown test.
func (c Chamber) Drawdown(fall manway.Length, over manway.Duration, inflow manway.Flow) (Drawdown, error) {
	var faults manway.InputErrors
	c.validate(&faults)
	manway.Within(&faults, "Fall", fall, 0, c.On)
	manway.Within(&faults, "Over", over, 1*manway.Second, 1*manway.Day)
	manway.Within(&faults, "Inflow", inflow, 0, 1000*manway.GallonPerMinute)
	if err := faults.Err(); err != nil {
		return Drawdown{}, err
	}
	pumped := c.between(c.On-fall, c.On) + inflow.Times(over)
	return Drawdown{pumped, pumped.Per(over)}, nil
}

// Usage is what a counter of runs says of the flow.
type Usage struct {
	Flow   manway.Flow
	PerDay float64      // runs
	Check  manway.Check // of the flow against the design flow
}

// Usage reads the counter of the pump: runs × net dose over the time between
// two readings, against the design flow of 1 to 100,000 gal/d.
//
// Source: as Dosing.
func (c Chamber) Usage(runs int, over manway.Duration, design manway.Flow) (Usage, error) {
	var faults manway.InputErrors
	c.validate(&faults)
	manway.Within(&faults, "Runs", runs, 0, 1e9)
	manway.Within(&faults, "Over", over, 1*manway.Hour, 50*manway.Year)
	manway.Within(&faults, "Design", design, 1*manway.GallonPerDay, 100000*manway.GallonPerDay)
	var net manway.Volume
	if len(faults) == 0 {
		if net = c.between(c.Off, c.On) - c.Drain; !(net > 0) {
			faults.Add("Drain", c.Drain.String(), "less than the dose")
		}
	}
	if err := faults.Err(); err != nil {
		return Usage{}, err
	}
	u := Usage{Flow: (net * manway.Volume(runs)).Per(over), PerDay: float64(runs) / over.In(manway.Day)}
	u.Check = manway.Check{
		Name: "flow against design", Kind: manway.KindFlow, Demand: float64(u.Flow), Capacity: float64(design),
		Source: manway.Citation{Source: manway.Practice, Place: "flow from pump cycles"},
	}.Judge()
	return u, nil
}

// Starts sets the volume that keeps a pump from starting more often than once in a
// time against that between On and Off: V = t Q/4, the worst inflow being half the
// pump's rate of 0.1 to 10,000 gal/min. The time is 1 min to a day.
//
// Source: EI 11C201, US Army Corps of Engineers, chapter 7.
func (c Chamber) Starts(pump manway.Flow, cycle manway.Duration) (manway.Check, error) {
	var faults manway.InputErrors
	c.validate(&faults)
	manway.Within(&faults, "Pump", pump, 0.1*manway.GallonPerMinute, 10000*manway.GallonPerMinute)
	manway.Within(&faults, "Cycle", cycle, 1*manway.Minute, 1*manway.Day)
	if err := faults.Err(); err != nil {
		return manway.Check{}, err
	}
	return manway.Check{
		Name: "volume between starts", Kind: manway.KindVolume, Demand: float64(pump.Times(cycle)) / 4, Capacity: float64(c.between(c.Off, c.On)),
		Source: manway.Citation{Source: usaceWetWell, Place: "chapter 7"},
	}.Judge(), nil
}

// CycleTime is the time from one start of the pump to the next at an inflow
// below its rate: t = V/inflow + V/(pump - inflow), V that between On and Off.
//
// Source: EI 11C201, US Army Corps of Engineers, chapter 7.
func (c Chamber) CycleTime(pump, inflow manway.Flow) (manway.Duration, error) {
	var faults manway.InputErrors
	c.validate(&faults)
	manway.Within(&faults, "Pump", pump, 0.1*manway.GallonPerMinute, 10000*manway.GallonPerMinute)
	manway.Within(&faults, "Inflow", inflow, 0.01*manway.GallonPerDay, pump*(1-1e-9))
	if err := faults.Err(); err != nil {
		return 0, err
	}
	v := float64(c.between(c.Off, c.On))
	return manway.Duration(v/float64(inflow) + v/float64(pump-inflow)), nil
}

// Limits of the plan area of a chamber.
const (
	leastChamber    = 0.5 * manway.SquareFoot
	greatestChamber = 2000 * manway.SquareFoot
)

// between is the volume between two levels.
func (c Chamber) between(low, high manway.Length) manway.Volume {
	if c.Shape == nil {
		return c.Area.Times(high - low)
	}
	top := Compartment{Shape: c.Shape}.height()
	a, _ := c.Shape.Volume(min(low, top))
	b, _ := c.Shape.Volume(min(high, top))
	return b - a
}

func (c Chamber) validate(faults *manway.InputErrors) {
	if c.Shape == nil {
		manway.Within(faults, "Area", c.Area, leastChamber, greatestChamber)
	} else if !(c.Shape.Full() > 0) {
		faults.Add("Shape", "none", "a compartment of a tank")
	} else {
		manway.Within(faults, "Top", c.Top, 0, Compartment{Shape: c.Shape}.height())
	}
	manway.Within(faults, "Off", c.Off, 0, 30*manway.Foot)
	manway.Within(faults, "On", c.On, c.Off+0.1*manway.Inch, 30*manway.Foot)
	manway.Within(faults, "Alarm", c.Alarm, c.On, 30*manway.Foot)
	manway.Within(faults, "Top", c.Top, c.Alarm, 30*manway.Foot)
	manway.Within(faults, "Drain", c.Drain, 0, 10000*manway.Gallon)
}

// Basis lists the sources of dosing.
func (Dosing) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "gallons per inch, dose and drawdown"}, {Source: usaceWetWell, Place: "chapter 7"}}
}

// Basis lists the sources of the flow from runs.
func (Usage) Basis() []manway.Citation { return Dosing{}.Basis() }

// Working is the dosing step by step.
func (d Dosing) Working(sys manway.System) manway.Working {
	return manway.Working{
		{Symbol: "dose", Formula: "V(on) - V(off)", Value: d.Dose.Text(sys)},
		{Symbol: "reserve", Formula: "V(top) - V(alarm)", Value: d.Reserve.Text(sys)},
		{Symbol: "time above the alarm", Formula: "reserve/flow", Value: d.ReserveTime.Text(sys)},
	}
}
