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
	Earlier      []PastReading  // readings since the last pump-out, oldest first; at most 20
}

// PastReading is the layers of the same compartments on an earlier day, nothing
// having been pumped since.
type PastReading struct {
	Date         manway.Date
	Compartments []Compartment // in the order of [Measured]; those without both layers say nothing
}

// Method says what a forecast rests on.
type Method uint8

// The methods, best first after none.
const (
	NoMethod       Method = iota // nothing measured, and the table has no answer
	ByTwoReadings                // sludge and scum between two readings of one filling
	ByMeasuredRate               // sludge and scum since the last pump-out
	ByTable                      // the household table
)

var methods = [...]string{"no answer", "rate between two readings", "measured rate", "household table"}

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
//	V(t) = V(now) × t/(visit - last)                                 from empty
//	V(t) = V(now) + (V(now) - V(then)) × (t - visit)/(visit - then)  between two readings
//
// sludge and scum each, through the real shape of each compartment until the
// rule asks for pumping; the compartment that asks first governs. The oldest
// earlier reading of a compartment is taken, as far as there is more in it now;
// fresh solids pack, so that a rate between two readings is nearer to that of the
// years to come than one from empty. Low and high have every layer an inch thicker
// or thinner, the other way at the earlier reading, and the last date off by its
// certainty. Solids pack with time, so that the straight line comes early rather
// than late (measured in Ireland: Gray 1995). Where nothing was measured or no
// date is known there is no answer; see [Measured.NextPumpOut] for the household table.
//
// Source: practice, the straight line through the measured solids; Gray 1995
// for how the rate falls with age.
func (m Measured) Forecast() (Forecast, error) {
	if err := m.Validate(); err != nil {
		return Forecast{}, err
	}
	f := Forecast{Governs: -1, Cautions: manway.EstimateOnly | manway.LocalCode}
	since := manway.Duration(0) // not known
	if days := m.Last.DaysUntil(m.Visit); m.LastKnown != Unknown && days >= 1 {
		since = manway.Duration(days) * manway.Day
	}
	off := [...]manway.Duration{Unknown: 0, OwnerSays: manway.Year, About: manway.Year / 2, Counted: 0}[m.LastKnown]
	ends := [...]end{
		{off: measuringError, since: max(since-off, manway.Day)}, {since: since}, {off: -measuringError, since: since + off},
	}
	for e := range ends {
		ends[e].left, ends[e].pumped = noWait, noWait
	}
	rate := manway.Flow(0)
	for i, c := range m.Compartments {
		then, read := m.earlier(i)
		if c.State == NotOpened || !c.Sludge.Taken || !c.Scum.Taken || since == 0 && !read {
			f.NotMeasured++
			continue
		}
		if f.Method == NoMethod || read {
			f.Method = ByMeasuredRate
			if read {
				f.Method = ByTwoReadings
			}
		}
		of := m
		if i < len(m.Compartments)-1 {
			of.DeviceBottom = manway.Reading{} // it stands in the last one
		}
		for e := range ends {
			k, gathered := of.pace(c, then, read, ends[e])
			if left := waitFor(k-1, gathered); left < ends[e].left {
				ends[e].left = left
				if e == likely {
					f.Governs, f.Growth = i, k
				}
			}
			ends[e].pumped = min(ends[e].pumped, waitFor(k, gathered))
			if e == likely && gathered > 0 {
				rate += m.solids(c, 0).Per(gathered)
			}
		}
	}
	if f.Method == NoMethod {
		return f, nil
	}
	f.Rate = rate
	f.Low, f.Likely, f.High = m.after(ends[0].left), m.after(ends[likely].left), m.after(ends[2].left)
	f.Pumped = Ends{m.after(ends[0].pumped), m.after(ends[likely].pumped), m.after(ends[2].pumped)}
	f.Due = f.Governs >= 0 && ends[likely].left <= 0
	return f, nil
}

// end is one end of a forecast, or its middle: how far the layers are off, the
// time since the last pump-out, and what comes of it.
type end struct {
	off          manway.Length
	since        manway.Duration
	left, pumped manway.Duration
}

// likely is the place of the middle among the ends.
const likely = 1

// noWait stands for solids that never reach the rule.
const noWait = manway.Duration(math.MaxFloat64)

// waitFor is some times a time in which solids gather; what is over is no wait.
func waitFor(times float64, gathered manway.Duration) manway.Duration {
	switch {
	case times <= 0:
		return 0
	case math.IsInf(times, 0) || gathered <= 0:
		return noWait
	}
	return manway.Duration(times) * gathered
}

// earlier is the oldest reading of a compartment that has less in it than now.
func (m Measured) earlier(i int) (then PastReading, ok bool) {
	now := m.Compartments[i]
	if !now.Sludge.Taken || !now.Scum.Taken {
		return then, false
	}
	for _, e := range m.Earlier {
		if i >= len(e.Compartments) || e.Date.DaysUntil(m.Visit) < 1 {
			continue
		}
		c := e.Compartments[i]
		if c.State == NotOpened || !c.Sludge.Taken || !c.Scum.Taken {
			continue
		}
		if c.Shape = now.Shape; m.solids(c, 0) < m.solids(now, 0) {
			return PastReading{e.Date, []Compartment{c}}, true
		}
	}
	return then, false
}

// pace is the factor on the solids of a compartment at which the rule asks, and
// the time in which they gathered, or would have at the rate between the
// readings; no time where they do not grow.
func (m Measured) pace(c Compartment, then PastReading, read bool, e end) (growth float64, gathered manway.Duration) {
	growth = m.growth(c, e.off)
	if !read {
		return growth, e.since
	}
	now, before := m.solids(c, e.off), m.solids(then.Compartments[0], -e.off)
	if now <= before {
		return growth, 0
	}
	between := manway.Duration(then.Date.DaysUntil(m.Visit)) * manway.Day
	return growth, manway.Duration(float64(now)/float64(now-before)) * between
}

// solids is the sludge and scum of a compartment, its layers being thicker by
// off.
func (m Measured) solids(c Compartment, off manway.Length) manway.Volume {
	s := m.thicker(c, off).layers(m.Outlet)
	return s.Sludge + s.Scum
}

// thicker is a compartment with both layers thicker by off, as far as they fit.
func (m Measured) thicker(c Compartment, off manway.Length) Compartment {
	c.Sludge.Length = min(max(c.Sludge.Length+off, 0), m.Outlet)
	c.Scum.Length = min(max(c.Scum.Length+off, 0), m.Outlet-c.Sludge.Length)
	return c
}

// after is the date a wait after the visit, and no date where the solids never
// reach the rule.
func (m Measured) after(wait manway.Duration) manway.Date {
	if wait > 200*manway.Year {
		return manway.Date{}
	}
	d, err := Span{true, wait}.After(m.Visit)
	if err != nil {
		return manway.Date{}
	}
	return d
}

// growth is the factor on the solids of a compartment at which the rule asks
// for pumping, 1 or less where it asks already, its layers being thicker by off;
// +Inf where there are none.
func (m Measured) growth(c Compartment, off manway.Length) float64 {
	c = m.thicker(c, off)
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
	manway.Within(&faults, "Compartments", len(m.Compartments), 1, 4)
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
	m.Visit.Within(&faults, "Visit")
	if m.LastKnown != Unknown {
		m.Last.Within(&faults, "Last")
		if len(faults) == 0 && m.Visit.Before(m.Last) {
			faults.Add("Last", m.Last.String(), "a date not after the visit of "+m.Visit.String())
		}
	}
	faults.Under("Rule", m.Rule.Validate())
	manway.Within(&faults, "Earlier", len(m.Earlier), 0, 20)
	for i, e := range m.Earlier {
		faults.Under(indexed("Earlier", i), m.validateEarlier(e))
	}
	return faults.Err()
}

// validateEarlier returns the faults of an earlier reading: its day lies after
// the last pump-out and before the visit.
func (m Measured) validateEarlier(e PastReading) error {
	var faults manway.InputErrors
	e.Date.Within(&faults, "Date")
	if len(faults) == 0 && (!e.Date.Before(m.Visit) || m.LastKnown != Unknown && e.Date.Before(m.Last)) {
		faults.Add("Date", e.Date.String(), "a date before the visit of "+m.Visit.String()+" and not before the last pump-out")
	}
	for i, c := range e.Compartments {
		var of manway.InputErrors
		c.Shape = nil
		if i < len(m.Compartments) {
			c.Shape = m.Compartments[i].Shape
		}
		c.validate(&of, m.Outlet)
		faults.Under(indexed("Compartments", i), of.Err())
	}
	return faults.Err()
}

// NextPumpOut is the next pump-out by the best method there is: the measured
// rate, else the household table for the liquid that is drawn down, counted
// from a pump-out on a date. The table says nothing of a tank that is left, so
// that only Pumped has dates then.
//
// Source: as [Measured.Forecast] or [Household.Interval].
func (m Measured) NextPumpOut(h Household, clean manway.Volume, from manway.Date) (Forecast, error) {
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
		if *end.date, err = end.span.After(from); err != nil {
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
	return []manway.Citation{{Source: gray1995, Place: "rate falls with age"}, {Source: manway.Practice, Place: "straight line through the measured solids"}}
}
