package main

import (
	"fmt"
	"io"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/lid"
)

var command = record.Command[input, output]{
	Name:    "lidcheck",
	Doc:     record.Comment(source),
	Flags:   flags,
	ID:      func(in *input) string { return in.ID },
	Do:      compute,
	Text:    writeText,
	JSON:    writeJSON,
	Columns: columns,
	Rows:    writeRows,
}

func writeText(w io.Writer, in *input, out *output) error {
	b := &strings.Builder{}
	s := in.Units
	name := in.ID
	if name == "" {
		name = "lid"
	}
	fmt.Fprintf(b, "%s\n", name)
	if out.hasLid {
		textMoves(b, out, s)
		textSeat(b, out.moves.Seating, s)
		textBending(b, out.bending, s)
	}
	if out.hasHandle {
		textHandle(b, out.handle, s)
	}
	if out.hasGuard {
		textGuard(b, out, s)
	}
	out.alone.text(b, s)
	for _, a := range (out.moves.MeasureFirst | out.bending.MeasureFirst).List() {
		fmt.Fprintf(b, "Measure first: %s\n", a.Measure)
	}
	for _, a := range out.assumed.List() {
		fmt.Fprintf(b, "Taken: %s; measure %s\n", a.Taken, a.Measure)
	}
	for _, c := range out.cautions.List() {
		fmt.Fprintf(b, "%s: %s\n", strings.ToUpper(c.Level.String()), c.Sentence)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// textMoves is the weight, the force of every way, and what people may lift.
func textMoves(b *strings.Builder, out *output, s manway.System) {
	m := &out.moves
	w := m.Weight
	fmt.Fprintf(b, "Weight: %s dry, %s damp, %s soaked", w.Dry.Text(s), w.Damp.Text(s), w.Soaked.Text(s))
	if w.Pieces > 1 {
		fmt.Fprintf(b, " each of %d pieces, %s in all", w.Pieces, w.All.Text(s))
	}
	b.WriteByte('\n')
	if w.OnTop > 0 {
		fmt.Fprintf(b, "On top: %s, to be cleared first\n", w.OnTop.Text(s))
	}
	fmt.Fprintf(b, "\n%-22s  %-22s  %-10s  %s\n", "Way of moving it", "Force once free", "First pull", "Crew's own limit")
	before := ""
	for _, k := range m.Methods {
		fmt.Fprintf(b, "%-22s  %-22s  %-10s  %s\n", k.Way, span(k.Low.Text(s), k.High.Text(s)), k.FirstPull.Text(s), verdict(k, s))
		if why := k.Crew.Reason; why != before && k.Possible != manway.No {
			fmt.Fprintf(b, "    %s\n", why)
			before = why
		}
		if k.Reason != "" {
			fmt.Fprintf(b, "    %s\n", k.Reason)
		}
	}
	if m.Pull.Known {
		fmt.Fprintf(b, "Pulling along with both hands: %s protects 80 %% of people, %s half of them\n", m.Pull.Low.Text(s), m.Pull.High.Text(s))
	}
	fmt.Fprintf(b, "Sling leg %s; its hardware is to bear 5 times that, %s\n", m.SlingLeg.Text(s), m.GearLimit.Text(s))
	fmt.Fprintf(b, "Set it down on %s of clear firm ground; %s at the near edge lets it down again, by a bar and never by the fingers", m.SetDown.Clear.Text(s), m.SetDown.Hold.Text(s))
	if m.SetDown.Rolls {
		fmt.Fprint(b, "; lay it flat, it rolls")
	}
	fmt.Fprint(b, "\n\nBeside the forces, the revised lifting equation for one person:\n")
	fmt.Fprintf(b, "  %s\n", onePerson(m, s))
	for _, t := range m.Team[1:] {
		if t.Valid {
			fmt.Fprintf(b, "  not part of it: %d people by the practice rule %s, by doubling %s\n", t.People, t.Share.Text(s), t.Doubling.Text(s))
		}
	}
	working(b, m.Working(s))
}

// verdict is what the crew's limit says of a way.
func verdict(k lid.Method, s manway.System) string {
	if k.Possible == manway.No {
		return "not as it lies"
	}
	limit := manway.Force(k.Crew.Capacity).Text(s)
	switch k.Crew.Status {
	case manway.Pass:
		return "within " + limit
	case manway.Fail:
		return "ABOVE " + limit
	}
	return k.Crew.Status.String()
}

func onePerson(m *lid.Moves, s manway.System) string {
	if m.Alone.Status == manway.Pass || m.Alone.Status == manway.Fail {
		return fmt.Sprintf("limit %s at its near edge, lifting index %.2f", m.OnePerson.Limit.Text(s), m.OnePerson.Index)
	}
	return "no number: " + m.Alone.Reason
}

func textSeat(b *strings.Builder, r lid.Seating, s manway.System) {
	fmt.Fprintf(b, "\nSeat: %s (slide %s, walk %s, tip %s)", r.Leaves, r.Slide, r.Walk, r.Tip)
	if r.Rise > 0 {
		fmt.Fprintf(b, "; it must rise %s before it slides", r.Rise.Text(s))
	}
	if r.TipGap > 0 {
		fmt.Fprintf(b, "; tipping needs %s of play", r.TipGap.Text(s))
	}
	if r.Bevel > 0 {
		fmt.Fprintf(b, "; bevel %s, wedges: %s", r.Bevel.Text(s), r.Wedges)
		if r.Extra > 0 {
			fmt.Fprintf(b, ", up to %s more at the first pull", r.Extra.Text(s))
		}
	}
	fmt.Fprintf(b, "\nCan it fall through its hole: %s\n", r.Falls)
	if !r.Rim.NotKnown {
		fmt.Fprintf(b, "Rim: bearing %s, least left %s, %.0f %% whole; ",
			r.Rim.Bearing.Text(s), r.Rim.Least.Text(s), 100*r.Rim.Whole)
		if r.Rim.OpenAir == manway.Yes {
			fmt.Fprintf(b, "%s open right through: odour and water pass\n", r.Rim.Gap.Text(s))
		} else {
			fmt.Fprintln(b, "no gap right through, which does not make a seat tight")
		}
	}
}

func textBending(b *strings.Builder, r lid.Bending, s manway.System) {
	fmt.Fprintf(b, "\n%s\n  %s left, %.0f %% of the plain section's strength\n", lid.Title, r.Left.Text(s), 100*r.StrengthLeft)
	for _, c := range r.Checks {
		textCheck(b, c, s)
	}
	working(b, r.Working(s))
}

func textCheck(b *strings.Builder, c manway.Check, s manway.System) {
	fmt.Fprintf(b, "  %s: %s", c.Name, strings.ToUpper(c.Outcome()))
	if use, ok := c.Use(); ok {
		fmt.Fprintf(b, ", use %.2f (%s of %s", use, c.Kind.Text(c.Demand, s), c.Kind.Text(c.Capacity, s))
		if c.Kind == manway.KindMomentPerLength {
			fmt.Fprintf(b, ", %s", c.Combination)
		}
		b.WriteByte(')')
	}
	if c.Reason != "" {
		fmt.Fprintf(b, ": %s", c.Reason)
	}
	b.WriteByte('\n')
}

func textHandle(b *strings.Builder, r lid.HandleCheck, s manway.System) {
	fmt.Fprintf(b, "\nHandle: %s", r.State)
	if r.Left > 0 {
		fmt.Fprintf(b, ", %.0f %% of its steel left", 100*r.Left)
	}
	if r.DoNotLift {
		fmt.Fprintf(b, ". DO NOT LIFT ON IT: %s\n", r.Reason)
	} else {
		fmt.Fprint(b, ". Nothing was found against it; that does not make it fit\n")
	}
	for _, c := range r.Checks {
		textCheck(b, c, s)
	}
}

func textGuard(b *strings.Builder, out *output, s manway.System) {
	r := &out.guard
	fmt.Fprint(b, "\nGuarding, by the rules chosen; the local one governs\n")
	for i, f := range r.Findings[:r.Rules] {
		rule := out.rules[i]
		fmt.Fprintf(b, "  %-18s  %s: %s", f.Code, strings.ToUpper(f.Status.Asked()), rule.Wants)
		if f.Reason != "" {
			fmt.Fprintf(b, " (%s)", f.Reason)
		}
		if f.WeightOnly {
			fmt.Fprint(b, " [held by its weight alone]")
		}
		fmt.Fprintf(b, "\n    %s\n", rule.Source)
	}
	if r.GuardNow {
		fmt.Fprintln(b, "  Do not leave it so: guard it now.")
	}
	if r.AddFastener {
		fmt.Fprintln(b, "  Change: fasten it, so that it opens only with a tool or key.")
	}
	if r.AddSecondary {
		fmt.Fprintln(b, "  Change: put a second guard under it.")
	}
	if r.WeightConflict {
		fmt.Fprintf(b, "  Conflict: it guards by weight, %s, and the crew lifts %s: nobody will open it. A fastener and a second guard, not a heavier lid.\n", r.ConflictWeight.Text(s), r.ConflictLimit.Text(s))
	}
}

func working(b *strings.Builder, w manway.Working) {
	fmt.Fprintln(b, "  Working:")
	for _, step := range w {
		fmt.Fprintf(b, "    %s\n", step)
	}
}

// span is "a to b", or one figure where both read the same.
func span(low, high string) string {
	if low == high {
		return low
	}
	return low + " to " + high
}
