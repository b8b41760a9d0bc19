package visit

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
)

// firstSection is what must be done before anyone gets hurt.
func (v Visit) firstSection() Section {
	s := Section{
		ID: "first", Title: "Before anyone gets hurt",
		Method: "Defects that the written rules call urgent, and the cautions that say stop.",
	}
	for i, a := range v.Survey.Accesses {
		for _, d := range v.Accesses[i].Defects {
			if d.Severity == riser.Urgent {
				s.Says = append(s.Says, fmt.Sprintf("%s: %s. Guard it before leaving, tell the owner in writing.", a.Name, d.Reason))
				s.Basis = merge(s.Basis, []manway.Citation{d.Basis})
			}
		}
	}
	if len(s.Says) == 0 {
		s.Says = append(s.Says, "No urgent defect was seen in what could be reached; the rest stands under Not checked. Put every lid back and fasten it.")
	}
	if v.Float.Check.Status != manway.Pass || v.Pump.Keep > 0 {
		s.Says = append(s.Says, "Do not empty the tank: leave "+v.keepCell().Text+".")
	} else if !v.Pump.KeepJudged {
		s.Says = append(s.Says, "The walls of the emptied tank were not judged: keep machines and people back from it and refill it soon.")
	}
	says, basis := v.Survey.gasSays()
	s.Says = append(s.Says, says...)
	s.Basis = merge(s.Basis, basis)
	s.Says = append(s.Says, "Nobody enters the tank or puts their head in it, and nobody stands or drives on its roof.")
	return s
}

// sawSection is what was seen, most urgent first.
func (v Visit) sawSection() Section {
	s := Section{
		ID: "seen", Title: "What we saw",
		Method: "Each observation set against a written rule, which gives how soon it matters.",
	}
	table := Table{ID: "defects", Prose: true, Columns: []string{"How soon", "Where", "What and why"}}
	for severity := riser.Urgent; severity <= riser.Watch; severity++ {
		for i, a := range v.Survey.Accesses {
			for _, d := range v.Accesses[i].Defects {
				if d.Severity != severity {
					continue
				}
				table.Rows = append(table.Rows, []Cell{words("severity", strings.ToUpper(severity.String())), words("access", a.Name), words("reason", d.Reason+".")})
				s.Basis = merge(s.Basis, []manway.Citation{d.Basis})
			}
		}
	}
	if len(table.Rows) == 0 {
		s.Says = []string{"No defect was seen in what could be reached; the rest stands under Not checked."}
		return s
	}
	s.Says = []string{howSoon}
	s.Tables = []Table{table}
	return s
}

// howSoon explains the words that say how soon something matters.
const howSoon = "URGENT is before we leave, SOON within weeks, PLAN with the next work on that opening, WATCH is to be looked at again."

// photoSection is room for photographs.
func (v Visit) photoSection() Section {
	s := Section{ID: "photos", Title: "Photographs", Method: "Room to paste or draw: each opening as found and as left."}
	for _, a := range v.Survey.Accesses {
		s.Photos = append(s.Photos, a.Name+", as found", a.Name+", as left")
	}
	return s
}

// glanceSection is the visit in a few figures.
func (v Visit) glanceSection() Section {
	sys := v.Survey.Units
	s := Section{ID: "glance", Title: "At a glance", Method: "The main figures of the sections for the crew, which have their methods and sources.", Basis: v.Tank.Basis()}
	full, _ := v.Tank.AtOutlet()
	s.Facts = []Fact{
		{"The tank holds", amount(sys, "liquid_gal", full, manway.Gallon)},
		{"To pump at this visit", amount(sys, "pump_gal", v.Pump.Remove, manway.Gallon)},
		{"Do not pump below", v.keepCell()},
		{"Flotation when emptied", Cell{Text: v.Float.State.String() + v.onGroundwater(), Parts: []Cell{words("state", v.Float.State.String())}}},
	}
	for i, a := range v.Survey.Accesses {
		if r := v.Accesses[i]; r.HasLid {
			s.Facts = append(s.Facts, Fact{a.Name + " weighs up to", amount(sys, slug(a.Name)+"_lb", r.Moves.Weight.Heaviest, manway.Pound)})
		}
	}
	return s
}

// unknownSection is everything that was not measured, what it left unjudged,
// and the one measurement that would change the most.
func (v Visit) unknownSection() Section {
	s := Section{ID: "not_checked", Title: "Not checked", Method: "Every observation that the survey leaves out, and what could not be judged without it."}
	s.Says = append(s.Says, v.mostTelling())
	if stated := append(v.standIns(), v.saidSays()...); len(stated) > 0 {
		s.Says = append(s.Says, strings.Join(stated, " "))
	}
	for i, a := range v.Survey.Accesses {
		if !a.At.Taken {
			s.Unjudged = append(s.Unjudged, a.Name+": its place along the tank was not measured; it is taken in the middle of its compartment.")
		}
		if a.Opened != manway.Yes {
			why := a.WhyNot
			if why == "" {
				why = "no reason given"
			}
			s.Unjudged = append(s.Unjudged, fmt.Sprintf("%s was not opened (%s).", a.Name, why))
		}
		var judges []string
		for _, u := range v.Accesses[i].NotSeen {
			judges = append(judges, u.Judges)
		}
		if len(judges) > 0 {
			s.Unjudged = append(s.Unjudged, a.Name+", not seen, so not judged: "+oneWhether(judges)+".")
		}
	}
	for _, d := range [...]struct {
		name string
		is   hydraulics.DeviceState
	}{{"inlet baffle", v.Survey.Arrival.Inlet}, {"outlet baffle", v.Survey.Arrival.Outlet}, {"effluent filter", v.Survey.Arrival.Filter}} {
		if d.is == hydraulics.NotSeen {
			s.Unjudged = append(s.Unjudged, "The "+d.name+" was not seen.")
		}
	}
	s.Unjudged = append(s.Unjudged, "The drain field was not looked at.")
	return s
}

// takenSection lists every value that was taken because it was not measured,
// for the desk.
func (v Visit) takenSection() Section {
	s := Section{ID: "taken", Title: "Taken, since not measured", For: ForDesk, Method: "Values on the unfavourable side, each with the measurement that would replace it."}
	t := Table{ID: "assumed", Columns: []string{"Taken", "To measure"}}
	for _, a := range v.assumed().List() {
		t.Rows = append(t.Rows, []Cell{words("taken", a.Taken), words("measure", a.Measure)})
	}
	ends := Table{ID: "ends", Title: "What each would change, the most first", Columns: []string{"To measure", "What it changes most"}}
	for _, c := range v.Changes {
		ends.Rows = append(ends.Rows, []Cell{words("measure", c.Measure), words("changes", c.text())})
	}
	s.Tables = []Table{t}
	if len(ends.Rows) > 0 {
		s.Tables = append(s.Tables, ends)
	}
	return s
}

// oneWhether lists what was not judged, with one whether for those that follow
// each other.
func oneWhether(judges []string) string {
	const whether = "whether "
	var b strings.Builder
	for i, j := range judges {
		rest, is := strings.CutPrefix(j, whether)
		switch {
		case i > 0 && is && strings.HasPrefix(judges[i-1], whether):
			b.WriteString(", " + rest)
		case i > 0:
			b.WriteString("; " + j)
		default:
			b.WriteString(j)
		}
	}
	return b.String()
}

// saidSays lists what is no plain measurement: estimates, the owner's word, and
// what was asked for in vain.
func (v Visit) saidSays() []string {
	lists := map[How][]string{}
	for _, one := range v.Survey.Said {
		text := v.Survey.called(one.Path)
		if one.How == About || one.How == OwnerSays {
			bare, _ := cutHow(strings.TrimSpace(one.Written))
			text += " " + bare
		}
		lists[one.How] = append(lists[one.How], text)
	}
	var parts []string
	for _, l := range [...]struct {
		how   How
		leads string
	}{{OwnerSays, "By the owner's word, not verified: "}, {About, "Estimated, not measured: "}, {AskedUnknown, "Asked for, and not known: "}, {NotOpened, "Behind a lid that was not opened: "}} {
		if list := lists[l.how]; len(list) > 0 {
			parts = append(parts, l.leads+strings.Join(list, "; ")+".")
		}
	}
	return parts
}

// assumed is everything that was taken because it was not measured.
func (v Visit) assumed() manway.Assumptions {
	all := v.Tank.Assumed | v.RoofTried.Assumed | v.Roof.Assumed | v.Float.Assumed | v.Pump.Assumed | v.Pump.Forecast.Assumed
	for i, a := range v.Accesses {
		all |= a.Reach.Assumed | a.Stacks.Assumed | a.Dig.Assumed
		if a.HasLid {
			all |= a.Moves.Assumed | a.Tried.Assumed | a.Strength.Assumed | a.Handle.Assumed
		}
		for _, p := range v.Options.Accesses[i].Priced {
			all |= p.Assumed
		}
	}
	return all
}
