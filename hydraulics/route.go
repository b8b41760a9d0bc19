package hydraulics

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// Surge is water that comes in beside the base flow: a bath let out, a washer.
type Surge struct {
	At     manway.Duration // from the start, 0 to 31 d
	Over   manway.Duration // 1 s to 31 d
	Volume manway.Volume   // 0 to 10,000 gal
}

// Usual surges of a house: a full bathtub, a load of laundry, a tank-type
// closet (EPA 1980 design manual section 4 and extension texts: 36 gal, 40 gal,
// 4.3 gal at up to 25 gal/min). Times are common practice.
var (
	Bath    = Surge{Over: 6 * manway.Minute, Volume: 36 * manway.Gallon}
	Laundry = Surge{Over: 3 * manway.Minute, Volume: 40 * manway.Gallon}
	Flush   = Surge{Over: 11 * manway.Second, Volume: 4.3 * manway.Gallon}
)

// Begin is the surge at a time from the start.
func (s Surge) Begin(at manway.Duration) Surge {
	s.At = at
	return s
}

// Slot is the opening between two compartments.
type Slot struct {
	Area   manway.Area   // 1 in2 to 50 ft2
	Invert manway.Length // its lowest point above the floor
}

// Route follows the levels of the compartments through a time of inflow.
type Route struct {
	Compartments []*tank.Compartment // 1 to 4, from the inlet
	Slots        []Slot              // one fewer
	OutletInvert manway.Length       // above the floor
	Outlet       Outlet
	InletInvert  manway.Reading // marks a time, and where Spill is not taken nothing else
	Spill        manway.Reading // level at which liquid leaves another way (floor drain, lid); not taken: the roof
	Start        manway.Reading // level in all compartments; not taken: the outlet invert
	Base         manway.Flow
	Surges       []Surge         // at most 1,000
	Over         manway.Duration // 1 min to 31 d; 0: a day
	Step         manway.Duration // 1 s to 5 min; 0: 15 s
}

// Instant is the state at one time: the levels above the floor.
type Instant struct {
	Time   manway.Duration
	Levels [4]manway.Length
	Inflow manway.Flow
	Out    manway.Flow
}

// Routed is what happened.
type Routed struct {
	Series       []Instant // first, last and every few steps, at most 1,441
	Compartments int
	Peak         manway.Length // highest level of the first compartment
	PeakAt       manway.Duration
	InletAt      Span // first time that the surface reaches the inlet invert; not known: it does not, or the invert is not known
	RoofAt       Span // the inside of the roof
	SpillAt      Span // the level at which it spills
	In, Out      manway.Volume
	Spilled      manway.Volume
	Stored       manway.Volume // end less start
	Imbalance    float64       // |In - Out - Spilled - Stored| over In and what was there
	Steps        int
	Cautions     manway.Cautions
}

// Route runs the levels through the time by a semi-implicit step that cannot
// run away, whatever its length:
//
//	dV/dt = inflow - outflow        of each compartment, by its real shape
//	slot    Q = 0.61 A √(2g Δh), with Δh at the end of the step (a quadratic in Q)
//	outlet  Q(h) of Outlet.Head, from a table over the head, with h at the end
//	        of the step (one Newton step)
//
// Volumes are what is kept, so that nothing is lost: In = Out + Spilled +
// Stored to rounding. The end of the pipe is free; a field that is full is
// shown by a smaller open share. It is an estimate: the open share is declared.
//
// Source: critical flow at the outlet after Maurer 2023, chapter 5; the
// orifice of [Orifice] between compartments; flows of fixtures EPA
// 625/1-80-012, section 4.
func (r Route) Route() (Routed, error) {
	if err := r.Validate(); err != nil {
		return Routed{}, err
	}
	run := newRun(r)
	for run.steps < run.total {
		run.step()
	}
	return run.result(), nil
}

// Validate returns the faults of r.
func (r Route) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Compartments", len(r.Compartments), 1, 4)
	manway.Within(&faults, "Slots", len(r.Slots), max(len(r.Compartments)-1, 0), max(len(r.Compartments)-1, 0))
	height := manway.Length(math.Inf(1))
	for i, c := range r.Compartments {
		if c == nil || !(c.Full() > 0) {
			faults.Add(indexed("Compartments", i), "none", "a compartment of a tank")
			continue
		}
		height = min(height, Compartment{Shape: c}.height())
	}
	if !math.IsInf(float64(height), 1) {
		manway.Within(&faults, "OutletInvert", r.OutletInvert, 1*manway.Inch, height-manway.Inch/10)
		r.InletInvert.Within(&faults, "InletInvert", 0, height)
		r.Spill.Within(&faults, "Spill", r.OutletInvert, height)
		r.Start.Within(&faults, "Start", 0, height)
	}
	for i, s := range r.Slots {
		manway.Within(&faults, indexed("Slots", i)+".Area", s.Area, 1*manway.SquareInch, 50*manway.SquareFoot)
		manway.Within(&faults, indexed("Slots", i)+".Invert", s.Invert, 0, r.OutletInvert)
	}
	var outlet manway.InputErrors
	r.Outlet.validate(&outlet)
	faults.Under("Outlet", outlet.Err())
	manway.Within(&faults, "Base", r.Base, 0, 1*manway.CubicFootPerSecond)
	manway.Within(&faults, "Surges", len(r.Surges), 0, 1000)
	for i, s := range r.Surges {
		manway.Within(&faults, indexed("Surges", i)+".At", s.At, 0, 31*manway.Day)
		manway.Within(&faults, indexed("Surges", i)+".Over", s.Over, 1*manway.Second, 31*manway.Day)
		manway.Within(&faults, indexed("Surges", i)+".Volume", s.Volume, 0, 10000*manway.Gallon)
	}
	if r.Over != 0 {
		manway.Within(&faults, "Over", r.Over, 1*manway.Minute, 31*manway.Day)
	}
	if r.Step != 0 {
		manway.Within(&faults, "Step", r.Step, 1*manway.Second, 5*manway.Minute)
	}
	return faults.Err()
}

// Basis lists the sources of the routing.
func (Routed) Basis() []manway.Citation {
	return []manway.Citation{{Source: maurer2023, Place: "chapter 5, critical flow"}, {Source: epa1980, Place: "section 4, flows of fixtures"}, {Source: manway.Practice, Place: "open share declared on site"}}
}
