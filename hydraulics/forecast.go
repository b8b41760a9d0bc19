package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Measured is a tank whose sludge and scum were measured some time after it
// was pumped.
type Measured struct {
	Outlet       manway.Length  // outlet invert above the floor
	DeviceBottom manway.Reading // bottom of the outlet tee or baffle in the last compartment, above the floor
	Compartments []Compartment  // 1 to 4; those without both layers are left out and counted
	Last         manway.Date    // of the last pump-out, of all compartments that were measured
	LastKnown    Certainty      // about: half a year either way; owner says: a year
	Visit        manway.Date    // of the measurement
	Rule         Rule           // that says when to pump
}

// Method says what a forecast rests on.
type Method uint8

// The methods, best first after none.
const (
	NoMethod       Method = iota // nothing measured, and the table has no answer
	ByMeasuredRate               // sludge and scum since the last pump-out
	ByTable                      // the household table
)

var methods = [...]string{"no answer", "measured rate", "household table"}

// String is the method in words.
func (m Method) String() string { return manway.Word(methods[:], m) }

// MarshalText is the same as String.
func (m Method) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// Forecast is the next pump-out.
type Forecast struct {
	Method            Method
	Low, Likely, High manway.Date // if it is left now; no date where that end has no answer
	Pumped            Ends        // if it is pumped at the visit
	Due               bool        // the rule asks for pumping now
	Rate              manway.Flow // of solids, all measured compartments, with ByMeasuredRate
	Growth            float64     // Likely: solids at the trigger over solids now, from the last pump-out
	Governs           int         // index of the compartment that asks first; -1: none
	NotMeasured       int         // compartments left out
	Assumed           manway.Assumptions
	Cautions          manway.Cautions
}

// Ends is a date with its low and high end; no date where one has no answer.
type Ends struct{ Low, Likely, High manway.Date }

// measuringError is how well a rod or core reads a layer: common practice.
const measuringError = 1 * manway.Inch

// Forecast is the next pump-out by the measured rate:
//
//	V(t) = V(now) × t/(visit - last)       sludge and scum each, from empty
//
// through the real shape of each compartment until the rule asks for pumping;
// the compartment that asks first governs. Low and high have every layer an
// inch thicker or thinner and the last date off by its certainty. Solids pack
// with time, so that the straight line comes early rather than late (measured
// in Ireland: Gray 1995). Where nothing was measured or no date is known there
// is no answer; see [NextPumpOut] for the household table.
//
// Source: practice, the straight line through the measured solids; Gray 1995
// for how the rate falls with age.
func (m Measured) Forecast() (Forecast, error) {
	if err := m.Validate(); err != nil {
		return Forecast{}, err
	}
	f := Forecast{Governs: -1, Cautions: manway.EstimateOnly | manway.LocalCode}
	days := m.Last.DaysUntil(m.Visit)
	if m.LastKnown == Unknown || days < 1 {
		f.NotMeasured = len(m.Compartments)
		return f, nil
	}
	since := manway.Duration(days) * manway.Day
	likely, low, high := math.Inf(1), math.Inf(1), math.Inf(1)
	solids := manway.Volume(0)
	for i, c := range m.Compartments {
		of := m
		if c.State == NotOpened || !c.Sludge.Taken || !c.Scum.Taken {
			f.NotMeasured++
			continue
		}
		f.Method = ByMeasuredRate
		s := c.layers(m.Outlet)
		solids += s.Sludge + s.Scum
		if i < len(m.Compartments)-1 {
			of.DeviceBottom = manway.Reading{} // it stands in the last one
		}
		if k := of.growth(c, 0); k < likely {
			likely, f.Governs = k, i
		}
		low = min(low, of.growth(c, measuringError))
		high = min(high, of.growth(c, -measuringError))
	}
	if f.Method == NoMethod {
		return f, nil
	}
	f.Rate = solids.Per(since)
	off := [...]manway.Duration{Unknown: 0, OwnerSays: manway.Year, About: manway.Year / 2, Counted: 0}[m.LastKnown]
	soon, late := max(since-off, manway.Day), since+off
	f.Low, f.Likely, f.High = m.dateOf(low-1, soon), m.dateOf(likely-1, since), m.dateOf(high-1, late)
	f.Pumped = Ends{m.dateOf(low, soon), m.dateOf(likely, since), m.dateOf(high, late)}
	if f.Due = likely <= 1; !math.IsInf(likely, 0) {
		f.Growth = likely
	}
	return f, nil
}

// dateOf is the date some times since after the visit, the visit itself where
// that is over, and no date where the solids do not grow.
func (m Measured) dateOf(times float64, since manway.Duration) manway.Date {
	wait := manway.Duration(max(times, 0)) * since
	if math.IsInf(times, 0) || wait > 200*manway.Year {
		return manway.Date{}
	}
	d, err := NextDate(m.Visit, wait)
	if err != nil {
		return manway.Date{}
	}
	return d
}

// growth is the factor on the solids of a compartment at which the rule asks
// for pumping, 1 or less where it asks already, its layers being thicker by off;
// +Inf where there are none.
func (m Measured) growth(c Compartment, off manway.Length) float64 {
	c.Sludge.Length = min(max(c.Sludge.Length+off, 0), m.Outlet)
	c.Scum.Length = min(max(c.Scum.Length+off, 0), m.Outlet-c.Sludge.Length)
	s := c.layers(m.Outlet)
	if s.Sludge+s.Scum <= 0 {
		return math.Inf(1)
	}
	most := float64(s.Total / (s.Sludge + s.Scum))
	worst := func(k float64) float64 {
		use := m.useAt(c, s, k)
		if math.IsInf(use, 1) {
			return 1e6
		}
		return use - 1
	}
	k, _ := rising(worst, 0, most)
	return k
}

// useAt is the greatest Use of the rule's checks with the solids k times what
// they are.
func (m Measured) useAt(c Compartment, s Split, k float64) float64 {
	sludge, _ := c.Shape.Depth(min(s.Sludge*manway.Volume(k), s.Total))
	under, _ := c.Shape.Depth(max(s.Total-s.Scum*manway.Volume(k), 0))
	scum := max(m.Outlet-under, 0)
	if sludge+scum > m.Outlet {
		scum = m.Outlet - sludge
	}
	checks, err := m.Rule.Trigger(Solids{
		Outlet: m.Outlet, DeviceBottom: m.DeviceBottom, Sludge: manway.Read(sludge), Scum: manway.Read(scum),
		Share: Fraction{true, min(float64((s.Sludge+s.Scum)/s.Total)*k, 1)},
	})
	if err != nil {
		return math.Inf(1)
	}
	worst := 0.0
	for _, check := range checks.Checks[:checks.Asked] {
		use, ok := check.Use()
		switch {
		case ok:
			worst = math.Max(worst, use)
		case check.Status == manway.Fail:
			return math.Inf(1)
		}
	}
	return worst
}

// Validate returns the faults of m.
func (m Measured) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Outlet", m.Outlet, 6*manway.Inch, 30*manway.Foot)
	m.DeviceBottom.Within(&faults, "DeviceBottom", 0, m.Outlet)
	manway.WithinCount(&faults, "Compartments", len(m.Compartments), 1, 4)
	for i, c := range m.Compartments {
		var of manway.InputErrors
		c.validate(&of, m.Outlet)
		if c.State != NotOpened && c.Sludge.Taken && c.Scum.Taken && c.Sludge.Length+c.Scum.Length > m.Outlet*(1+1e-9) {
			of.Add("Scum", c.Scum.Length.String(), "sludge and scum together at most the outlet's height of "+m.Outlet.String())
		}
		faults.Under(indexed("Compartments", i), of.Err())
	}
	if m.LastKnown > Counted {
		faults.Add("LastKnown", m.LastKnown.String(), "unknown, owner says, about or counted")
	}
	faults.Under("Visit", m.Visit.Validate())
	if m.LastKnown != Unknown {
		faults.Under("Last", m.Last.Validate())
		if len(faults) == 0 && m.Visit.Before(m.Last) {
			faults.Add("Last", m.Last.String(), "a date not after the visit of "+m.Visit.String())
		}
	}
	if m.Rule.Name == "" {
		faults.Add("Rule", "none", "a rule of this package")
	}
	return faults.Err()
}

// NextPumpOut is the next pump-out by the best method there is: the measured
// rate, else the household table for the liquid that is drawn down, counted
// from a pump-out on a date. The table says nothing of a tank that is left, so
// that only Pumped has dates then.
//
// Source: as [Measured.Forecast] or [Household.Interval].
func NextPumpOut(m Measured, h Household, clean manway.Volume, from manway.Date) (Forecast, error) {
	f, err := m.Forecast()
	if err != nil || f.Method != NoMethod {
		return f, err
	}
	t, err := h.Interval(clean)
	if err != nil {
		return Forecast{}, err
	}
	f.Cautions |= t.Cautions
	f.Assumed |= t.Assumed
	if !t.Answered {
		return f, nil
	}
	f.Method = ByTable
	for _, end := range [...]struct {
		date *manway.Date
		span Span
	}{{&f.Pumped.Low, t.Low}, {&f.Pumped.Likely, t.Likely}, {&f.Pumped.High, t.High}} {
		if !end.span.Known {
			continue
		}
		if *end.date, err = NextDate(from, end.span.Time); err != nil {
			return Forecast{}, err
		}
	}
	return f, nil
}

// Basis lists the sources of the forecast.
func (f Forecast) Basis() []manway.Citation {
	if f.Method == ByTable {
		return HouseholdInterval{}.Basis()
	}
	return []manway.Citation{{Source: Gray1995, Place: "rate falls with age"}, {Source: manway.Practice, Place: "straight line through the measured solids"}}
}
