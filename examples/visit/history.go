package visit

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// emptied reports whether the tank was pumped at an earlier visit.
func (e Earlier) emptied() bool {
	return e.Emptied == manway.Yes || e.Emptied != manway.No && e.Pumped > 0
}

// lastPumped is the last pump-out before the readings of a day, the latest that
// the household's date and the history tell, and how it is known. What was read
// at an earlier visit was read before it pumped; a pump-out of the day of this
// visit counts as one.
func (s Survey) lastPumped(before manway.Date) (last manway.Date, known hydraulics.Certainty) {
	h := s.Household
	if !h.LastPumped.IsZero() && (h.LastPumped.Before(before) || before == s.Date) {
		last, known = h.LastPumped, h.LastKnown
		if known == hydraulics.Unknown {
			known = s.certainty("household.last_pumped")
		}
	}
	for i, e := range s.History {
		if e.emptied() && e.Date.Before(before) && (last.IsZero() || last.Before(e.Date)) {
			last, known = e.Date, s.certainty(fmt.Sprintf("history[%d].date", i))
		}
	}
	return last, known
}

// certainty is how the date at a path is known: written down, where nothing else
// was said.
func (s Survey) certainty(path string) hydraulics.Certainty {
	if c := s.saidCertainty(path); c != hydraulics.Unknown {
		return c
	}
	return hydraulics.Counted
}

// readSince is what was read after the last pump-out at earlier visits.
func (s Survey) readSince(last manway.Date, now []hydraulics.Compartment) (list []hydraulics.PastReading) {
	for _, e := range s.History {
		if e.Date.Before(last) || !e.Date.Before(s.Date) || len(e.Compartments) == 0 || e.Date == last {
			continue
		}
		list = append(list, hydraulics.PastReading{Date: e.Date, Compartments: e.read(now)})
	}
	return list
}

// read is the compartments as they were found at that visit.
func (e Earlier) read(now []hydraulics.Compartment) []hydraulics.Compartment {
	list := make([]hydraulics.Compartment, len(now))
	for i := range list {
		list[i] = hydraulics.Compartment{Name: now[i].Name, Shape: now[i].Shape}
		if i < len(e.Compartments) && (e.Compartments[i].Sludge.Taken || e.Compartments[i].Scum.Taken || e.Compartments[i].Level.Taken) {
			c := e.Compartments[i]
			list[i].State, list[i].Level, list[i].Sludge, list[i].Scum = hydraulics.Opened, c.Level, c.Sludge, c.Scum
		}
	}
	return list
}

// earlierFilling takes the rate of an earlier filling where nothing was measured
// in this one: from a pump-out to the layers that a later visit read. The dates
// are counted from this visit.
func (v *Visit) earlierFilling(m hydraulics.Measured) error {
	if v.Pump.Forecast.Method != hydraulics.ByTable && v.Pump.Forecast.Method != hydraulics.NoMethod {
		return nil
	}
	for i := len(v.Survey.History) - 1; i >= 0; i-- {
		e := v.Survey.History[i]
		if len(e.Compartments) == 0 {
			continue
		}
		m.Visit, m.Compartments, m.Earlier = e.Date, e.read(m.Compartments), nil
		m.Last, m.LastKnown = v.Survey.lastPumped(e.Date)
		f, err := m.Forecast()
		if err != nil {
			return under("History", i, err)
		}
		if f.Method == hydraulics.NoMethod {
			continue
		}
		later := e.Date.DaysUntil(v.Survey.Date)
		for _, d := range [...]*manway.Date{&f.Pumped.Low, &f.Pumped.Likely, &f.Pumped.High} {
			if !d.IsZero() {
				*d = d.AddDays(later)
			}
		}
		f.Low, f.Likely, f.High, f.Due = manway.Date{}, manway.Date{}, manway.Date{}, false
		v.Pump.Forecast = f
		return nil
	}
	return nil
}

// levels reads the levels of all visits together.
func (v *Visit) levels(c hydraulics.Case) error {
	if len(v.Survey.History) == 0 {
		return nil
	}
	var seen []hydraulics.LevelSeen
	for _, e := range v.Survey.History {
		seen = append(seen, hydraulics.LevelSeen{Date: e.Date, Level: e.Level})
	}
	seen = append(seen, hydraulics.LevelSeen{Date: v.Survey.Date, Level: v.Survey.arrivalLevel()})
	var err error
	v.Pump.Trend, err = hydraulics.LevelTrend(c.Outlet, seen)
	return err
}

// validateHistory adds the faults of the earlier visits.
func (s Survey) validateHistory(t tank.Tank, faults *manway.InputErrors) {
	manway.Within(faults, "History", len(s.History), 0, 19)
	for i, e := range s.History {
		field := fmt.Sprintf("History[%d]", i)
		faults.Under(field, e.validate(s, t))
		if i > 0 && e.Date.Before(s.History[i-1].Date) {
			faults.Add(field+".Date", e.Date.String(), "not before the visit above it: oldest first")
		}
	}
}

func (e Earlier) validate(s Survey, t tank.Tank) error {
	var faults manway.InputErrors
	e.Date.Within(&faults, "Date")
	if len(faults) == 0 && s.Date.Validate() == nil && !e.Date.Before(s.Date) {
		faults.Add("Date", e.Date.String(), "before the visit, "+s.Date.String())
	}
	manway.Within(&faults, "Pumped", e.Pumped, 0, 20000*manway.Gallon)
	if e.Level.Taken {
		manway.Within(&faults, "Level", e.Level.Length, 0, s.insideHeight(t))
	}
	if n := len(s.Tank.Partitions) + 1; len(e.Compartments) > n {
		faults.Add("Compartments", fmt.Sprint(len(e.Compartments)), fmt.Sprintf("at most %d, one more than partitions", n))
	}
	for i, c := range e.Compartments {
		faults.Under(fmt.Sprintf("Compartments[%d]", i), c.validate(s.Tank.OutletInvert, s.insideHeight(t)))
	}
	manway.Within(&faults, "Offers", len(e.Offers), 0, 100)
	for i, o := range e.Offers {
		faults.Under(fmt.Sprintf("Offers[%d]", i), o.validate())
		if !o.Date.IsZero() {
			faults.Under(fmt.Sprintf("Offers[%d]", i), o.Date.Validate())
		}
	}
	return faults.Err()
}

// offers is every offer, those of earlier visits with their day.
func (s Survey) offers() []Offer {
	var all []Offer
	for _, e := range s.History {
		for _, o := range e.Offers {
			if o.Date.IsZero() {
				o.Date = e.Date
			}
			all = append(all, o)
		}
	}
	return append(all, s.Offers...)
}

// historySection is what earlier visits found, and what they say together.
func (v Visit) historySection() Section {
	sys := v.Survey.Units
	s := Section{
		ID: "history", Title: "Earlier visits", For: ForCrew,
		Method:   "Levels of all visits against the outlet invert; what was offered, done and declined; the rate of solids stands under the next pump-out.",
		Basis:    v.Pump.Trend.Basis(),
		Cautions: v.Pump.Trend.Cautions,
	}
	if len(v.Survey.History) > 0 {
		t := Table{ID: "visits", Columns: []string{"Visit", "Pumped", "Level", "Sludge and scum"}}
		for _, e := range v.Survey.History {
			row := []Cell{words("date", e.Date.String()), words("pumped", "no"), unknown("level_in", "not read"), unknown("layers", "not read")}
			switch {
			case e.Pumped > 0:
				row[1] = amount(sys, "pumped_gal", e.Pumped, manway.Gallon)
			case e.emptied():
				row[1] = words("pumped", "yes")
			}
			if e.Level.Taken {
				row[2] = amount(sys, "level_in", e.Level.Length, manway.Inch)
			}
			if layers := e.layers(sys); layers != "" {
				row[3] = words("layers", layers)
			}
			t.Rows = append(t.Rows, row)
		}
		s.Tables = []Table{t}
	}
	s.Says = v.historySays()
	if len(s.Tables) == 0 && len(s.Says) == 0 {
		s.For = ForDesk
		s.Unjudged = []string{"No earlier visit was given: two readings of sludge and scum give this household's own rate."}
	}
	return s
}

// historySays is what the visits say together, and what came of earlier offers.
func (v Visit) historySays() (says []string) {
	if l := v.Pump.Trend; l.Trend != hydraulics.NoTrend {
		line := fmt.Sprintf("Level: %s (%d of %d high, %d low)", l.Trend, l.High, l.Read, l.Low)
		switch l.Trend {
		case hydraulics.HighAgain:
			line += ": this points to a system that backs up"
		case hydraulics.LowAgain:
			line += ": this points to a leak"
		}
		says = append(says, line+".")
	}
	for _, o := range v.Survey.offers() {
		if o.State == "declined" || o.State == "done" {
			says = append(says, fmt.Sprintf("%s on %s: %s%s.", strings.ToUpper(o.State[:1])+o.State[1:], o.Date, v.remedyTitle(o), forAccess(o.Access)))
		}
	}
	return says
}

func forAccess(access string) string {
	if access == "" {
		return ""
	}
	return ", " + access
}

// remedyTitle is the title of the remedy of an offer.
func (v Visit) remedyTitle(o Offer) string {
	for _, a := range v.Accesses {
		for _, r := range a.Remedies {
			if r.Kind == o.Remedy {
				return r.Title
			}
		}
	}
	return codeWords.Replace(string(o.Remedy))
}

// layers is the sludge and scum read in each compartment.
func (e Earlier) layers(sys manway.System) string {
	var list []string
	for i, c := range e.Compartments {
		if c.Sludge.Taken && c.Scum.Taken {
			list = append(list, fmt.Sprintf("compartment %d: %s and %s", i+1, c.Sludge.Length.Text(sys), c.Scum.Length.Text(sys)))
		}
	}
	return strings.Join(list, "; ")
}
