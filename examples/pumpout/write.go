package main

import (
	"fmt"
	"io"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/hydraulics"
)

var command = record.Command[input, output]{
	Name:  "pumpout",
	Doc:   record.Comment(source),
	Flags: flags,
	ID:    func(in *input) string { return in.ID },
	Do:    compute,
	Text:  writeText,
	JSON:  writeJSON,
	Columns: []string{"id", "compartment", "state", "now_gal", "scum_gal", "clear_gal", "sludge_gal", "outlet_gal",
		"from_in", "to_in", "remove_gal", "stays_gal", "held_by", "reason"},
	Rows: writeRows,
}

// judged is what the rules say, in a word.
func (r ruled) judged() string {
	switch {
	case r.Pump:
		return "pump"
	case r.Complete:
		return "not yet"
	}
	return "not judged in full"
}

func writeRows(r *record.Row, in *input, out *output) {
	for i, c := range out.brief.Plan.Compartments {
		if i > 0 {
			r.Next()
		}
		r.Text(in.ID)
		r.Text(c.Name)
		r.Text(c.State.String())
		gallons := func(known bool, v manway.Volume) {
			if !known {
				r.Empty()
				return
			}
			r.Number(v.In(manway.Gallon))
		}
		gallons(c.Now.Known, c.Now.Total)
		gallons(c.Now.LayersKnown, c.Now.Scum)
		gallons(c.Now.LayersKnown, c.Now.Clear)
		gallons(c.Now.LayersKnown, c.Now.Sludge)
		gallons(true, c.Capacity)
		r.Number(c.From.In(manway.Inch))
		r.Number(c.To.In(manway.Inch))
		gallons(true, c.Remove)
		gallons(true, c.Stays)
		r.Text(c.HeldBy.String())
		r.Text(c.Reason)
	}
}

func writeJSON(j *record.JSON, in *input, out *output) {
	p := out.brief.Plan
	j.Text("id", in.ID)
	lines := out.brief.Lines(in.Units)
	j.Texts("message", lines[:])
	j.Number("remove_gal", p.Remove.In(manway.Gallon))
	j.Number("stays_gal", p.Stays.In(manway.Gallon))
	j.Bool("not_below_judged", p.KeepJudged)
	if p.Keep > 0 {
		j.Number("not_below_in", p.Keep.In(manway.Inch))
		j.Text("not_below_because", p.KeepName)
	}
	j.List("compartments")
	for _, c := range p.Compartments {
		j.Object("")
		writeCompartment(j, c)
		j.End()
	}
	j.End()
	j.Bool("draw_together", p.Together)
	j.List("steps")
	for _, s := range p.Steps {
		j.Object("")
		j.Text("compartment", p.Compartments[s.Compartment].Name)
		j.Number("from_in", s.From.In(manway.Inch))
		j.Number("to_in", s.To.In(manway.Inch))
		j.End()
	}
	j.End()
	if out.brief.LoadsKnown {
		l := out.brief.Loads
		j.Number("room_gal", l.Room.In(manway.Gallon))
		j.Int("loads", l.Loads)
		j.Int("trips", l.Trips)
		j.Number("left_room_gal", l.LeftRoom.In(manway.Gallon))
		if l.Gross > 0 {
			j.Number("gross_lb", l.Gross.In(manway.Pound))
		}
	}
	if out.brief.PullKnown {
		j.Text("lifting", out.brief.Pull.Lifting.String())
		j.Number("flow_gal_per_min", out.brief.Pull.Hose.Flow.In(manway.GallonPerMinute))
		j.Number("missing_ft", out.brief.Pull.Missing.In(manway.Foot))
		if out.brief.Minutes.Known {
			j.Number("minutes", out.brief.Minutes.Time.In(manway.Minute))
		}
	}
	writeReading(j, out)
	j.Any("assumed", p.Assumed|out.forecast.Assumed)
	j.Any("cautions", out.cautions)
}

func writeCompartment(j *record.JSON, c hydraulics.CompartmentPlan) {
	j.Text("name", c.Name)
	j.Text("state", c.State.String())
	if c.Reason != "" {
		j.Text("reason", c.Reason)
	}
	if c.Now.Known {
		j.Number("now_gal", c.Now.Total.In(manway.Gallon))
	}
	if c.Now.LayersKnown {
		j.Number("scum_gal", c.Now.Scum.In(manway.Gallon))
		j.Number("clear_gal", c.Now.Clear.In(manway.Gallon))
		j.Number("sludge_gal", c.Now.Sludge.In(manway.Gallon))
		j.Number("clear_at_outlet_gal", c.AtOutlet.Clear.In(manway.Gallon))
	}
	j.Number("outlet_gal", c.Capacity.In(manway.Gallon))
	j.Number("from_in", c.From.In(manway.Inch))
	j.Number("to_in", c.To.In(manway.Inch))
	j.Number("remove_gal", c.Remove.In(manway.Gallon))
	j.Number("stays_gal", c.Stays.In(manway.Gallon))
	j.Text("held_by", c.HeldBy.String())
}

// writeReading writes what the level points to, the rules and the next date.
func writeReading(j *record.JSON, out *output) {
	f := out.found
	j.Object("arrival")
	j.Text("points_to", f.PointsTo.String())
	if f.PointsTo != hydraulics.LevelNotRead {
		j.Number("above_in", f.Above.In(manway.Inch))
		j.Number("over_gal", f.Over.In(manway.Gallon))
	}
	if f.RunbackKnown {
		j.Number("ran_back_gal", f.RanBack.In(manway.Gallon))
	}
	j.Texts("next", f.Next())
	j.End()
	j.List("rules")
	for _, r := range out.rules {
		j.Object("")
		j.Text("compartment", r.compartment)
		j.Text("rule", r.Rule.Name)
		j.Text("says", r.judged())
		j.Text("source", r.Rule.Source.String())
		j.End()
	}
	j.End()
	j.List("gauges")
	for _, g := range out.gauges {
		j.Object("")
		j.Text("compartment", g.compartment)
		j.Number("pumped_gal", g.Pumped.In(manway.Gallon))
		j.Number("computed_gal", g.Computed.In(manway.Gallon))
		j.Number("ratio", g.Ratio)
		j.Bool("agrees", g.Agrees)
		j.End()
	}
	j.End()
	j.Int("skipped", out.skipped.Count)
	if out.skipped.Lost.Known {
		j.Number("interval_lost_yr", out.skipped.Lost.Time.In(manway.Year))
	}
	if out.dated {
		j.Object("next_pump_out")
		j.Text("method", out.forecast.Method.String())
		j.Bool("due", out.forecast.Due)
		j.Any("pumped_low", out.forecast.Pumped.Low)
		j.Any("pumped_likely", out.forecast.Pumped.Likely)
		j.Any("pumped_high", out.forecast.Pumped.High)
		j.Any("left_low", out.forecast.Low)
		j.Any("left_likely", out.forecast.Likely)
		j.Any("left_high", out.forecast.High)
		j.End()
	}
}

func writeText(w io.Writer, in *input, out *output) error {
	s, p := in.Units, out.brief.Plan
	if in.ID != "" {
		fmt.Fprintln(w, in.ID)
	}
	for _, line := range out.brief.Lines(s) {
		fmt.Fprintln(w, line)
	}
	fmt.Fprintln(w, "\nOrder")
	if p.Together {
		fmt.Fprintf(w, "  draw all opened compartments down together, no more than %s apart\n", p.Apart.Text(s))
	}
	for i, step := range p.Steps {
		fmt.Fprintf(w, "  %d. %s\n", i+1, p.Line(step, s))
	}
	fmt.Fprintln(w, "Ticket")
	for _, c := range p.Compartments {
		fmt.Fprintf(w, "  %s\n", c.Ticket(s))
		if c.Now.LayersKnown {
			fmt.Fprintf(w, "    now: scum %s, clear %s, sludge %s; below the outlet %s\n", c.Now.Scum.Text(s), c.Now.Clear.Text(s), c.Now.Sludge.Text(s), c.Capacity.Text(s))
		}
	}
	writeFound(w, s, out)
	for _, a := range (p.Assumed | out.forecast.Assumed).List() {
		fmt.Fprintf(w, "Taken: %s; measure %s\n", a.Taken, a.Measure)
	}
	fmt.Fprintln(w)
	for _, c := range out.cautions.List() {
		fmt.Fprintf(w, "%s: %s\n", strings.ToUpper(c.Level.String()), c.Sentence)
	}
	fmt.Fprintln(w, "Sources")
	return writeSources(w, out)
}

// writeFound writes what the level points to, the rules and the next date.
func writeFound(w io.Writer, s manway.System, out *output) {
	f := out.found
	fmt.Fprintf(w, "On arrival: %s\n", f.PointsTo)
	if f.PointsTo != hydraulics.LevelNotRead {
		fmt.Fprintf(w, "  %s against the outlet, %s\n", f.Above.Text(s), f.Over.Text(s))
	}
	for _, next := range f.Next() {
		fmt.Fprintf(w, "  - %s\n", next)
	}
	fmt.Fprintln(w, "Rules")
	for _, r := range out.rules {
		fmt.Fprintf(w, "  %s, %s: %s\n", r.compartment, r.Rule.Name, r.judged())
	}
	for _, g := range out.gauges {
		fmt.Fprintf(w, "Gauge, %s: %s on the truck against %s by shape, ratio %.2f\n", g.compartment, g.Pumped.Text(s), g.Computed.Text(s), g.Ratio)
		if !g.Agrees {
			fmt.Fprintln(w, "  read levels and gauge again, or recalibrate the tank's shape from it")
		}
	}
	if k := out.skipped; k.Count > 0 && k.Lost.Known {
		fmt.Fprintf(w, "Not pumping every compartment shortens the next interval by %s\n", k.Lost.Time.Text(s))
	} else if k.Count > 0 {
		fmt.Fprintln(w, "Not pumping every compartment shortens the next interval: its solids stay")
	}
	if !out.dated {
		return
	}
	n := out.forecast
	if n.Method == hydraulics.NoMethod {
		fmt.Fprintln(w, "Next pump-out: measure sludge and scum, or say how many live there")
		return
	}
	fmt.Fprintf(w, "Next pump-out by %s: pumped now, %s (%s to %s)", n.Method, dateOr(n.Pumped.Likely), dateOr(n.Pumped.Low), dateOr(n.Pumped.High))
	switch {
	case n.Due:
		fmt.Fprint(w, "; left, it is due already")
	case n.Method == hydraulics.ByMeasuredRate || n.Method == hydraulics.ByTwoReadings:
		fmt.Fprintf(w, "; left, %s (%s to %s)", dateOr(n.Likely), dateOr(n.Low), dateOr(n.High))
	}
	fmt.Fprintln(w)
}

// dateOr is the date, or a word where there is none.
func dateOr(d manway.Date) string {
	if d.IsZero() {
		return "no date"
	}
	return d.String()
}

// writeSources lists every source once.
func writeSources(w io.Writer, out *output) error {
	list := append(out.brief.Plan.Basis(), out.found.Basis()...)
	for _, r := range out.rules {
		list = append(list, r.Basis()...)
	}
	if out.brief.PullKnown {
		list = append(list, out.brief.Pull.Basis()...)
	}
	if out.dated {
		list = append(list, out.forecast.Basis()...)
	}
	said := map[string]bool{}
	for _, c := range list {
		if line := c.String(); !said[line] {
			said[line] = true
			if _, err := fmt.Fprintf(w, "  %s\n", line); err != nil {
				return err
			}
		}
	}
	return nil
}
