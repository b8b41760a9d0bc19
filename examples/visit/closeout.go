package visit

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
)

// box is the mark of a line of the list: ticked, open, or not done.
func box(done manway.Answer) string {
	switch done {
	case manway.Yes:
		return "☑ "
	case manway.No:
		return "☐ NOT DONE: "
	}
	return "☐ "
}

// blankOr is a text that was filled in, or room for it.
func blankOr(text string) string {
	if text == "" {
		return "______"
	}
	return text
}

// closeSection is what must be done and written down before the crew leaves.
func (v Visit) closeSection() Section {
	d := v.Survey.Done
	s := Section{ID: "close_out", For: ForCrew, Title: "Before leaving", Method: "A list to tick, the same at every visit; what applies here is named, what was written down is ticked."}
	for _, a := range v.Survey.Accesses {
		s.Says = append(s.Says, box(d.LidsOn)+a.Name+": lid on, every fastener in.")
	}
	for i, a := range v.Survey.Accesses {
		if notice, unsafe := riser.Notice(a.Name, v.Accesses[i].Defects); unsafe {
			s.Says = append(s.Says, box(d.NoticeLeft)+"Left with the owner: "+strings.Join(strings.Fields(notice), " "))
		}
	}
	s.Says = append(s.Says, v.gaugeLine(), v.ticketLine(), "☐ What was not opened, and why, is written on the ticket.")
	s.Says = append(s.Says, v.gaugeSays()...)
	v.fieldSays(&s)
	return s
}

func (v Visit) gaugeLine() string {
	d, sys := v.Survey.Done, v.Survey.Units
	before, after, done := "", "", manway.Unknown
	if d.GaugeAfter > 0 {
		before, after, done = short(d.GaugeBefore.Text(sys)), short(d.GaugeAfter.Text(sys)), manway.Yes
	}
	return box(done) + "Truck gauge read before and after each compartment: " + blankOr(before) + " / " + blankOr(after)
}

func (v Visit) ticketLine() string {
	d, volume, done := v.Survey.Done, "", manway.Unknown
	if d.Volume > 0 {
		volume = short(d.Volume.Text(v.Survey.Units))
	}
	if d.Disposal != "" && d.Ticket != "" && d.Volume > 0 {
		done = manway.Yes
	}
	return box(done) + "Disposal ticket: site " + blankOr(d.Disposal) + " volume " + blankOr(volume) + " number " + blankOr(d.Ticket)
}

// gaugeSays sets the truck's gauge against the computed volume.
func (v Visit) gaugeSays() []string {
	d, sys := v.Survey.Done, v.Survey.Units
	if d.GaugeAfter == 0 {
		return nil
	}
	by := d.GaugeAfter - d.GaugeBefore
	line := fmt.Sprintf("The truck's gauge says %s, the tank's shape %s", short(by.Text(sys)), short(v.Pump.Remove.Text(sys)))
	if v.Pump.Remove > 0 {
		line += fmt.Sprintf(": %+.0f %%", 100*float64(by/v.Pump.Remove-1))
	}
	return []string{line + "."}
}

// fieldSays is what the rules say of the field, where the load was spread on land.
func (v Visit) fieldSays(s *Section) {
	f := v.Survey.Done.Field
	if f == nil {
		return
	}
	rate, err := hydraulics.SeptageField{Area: f.Area, Nitrogen: f.Nitrogen}.Rate()
	if err != nil {
		return // refused with the survey
	}
	s.Says = append(s.Says, fmt.Sprintf("Spread on %s, which takes up to %s in 365 days by the nitrogen of its crop.", f.Name, short(rate.Most.Text(v.Survey.Units))))
	if f.Limed != manway.Yes {
		s.Says = append(s.Says, fmt.Sprintf("Not limed to pH %g for %g minutes: inject it, or plough it in within %g hours.",
			hydraulics.LimedPH, hydraulics.LimedTime.In(manway.Minute), hydraulics.PlowedInBy.In(manway.Hour)))
	}
	for _, w := range hydraulics.SeptageWaits() {
		if until, err := w.Until(v.Survey.Date); err == nil && (w.Limed || f.Limed != manway.Yes) {
			s.Says = append(s.Says, fmt.Sprintf("Not before %s: %s.", until, w.Use))
			s.Basis = merge(s.Basis, w.Basis())
		}
	}
	s.Says = append(s.Says, fmt.Sprintf("Keep the record for %d years.", hydraulics.RecordsForYrs))
	s.Basis = merge(rate.Basis(), s.Basis)
	s.Cautions |= rate.Cautions
}
