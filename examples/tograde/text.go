package main

import (
	"fmt"
	"io"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/riser"
)

var command = record.Command[input, output]{
	Name:      "tograde",
	Doc:       record.Comment(source),
	Flags:     flags,
	ID:        func(in *input) string { return in.ID },
	Do:        func(in *input) (output, error) { return compute(in) },
	Text:      writeText,
	JSON:      writeJSON,
	Columns:   columns,
	Rows:      writeRows,
	Documents: map[string]func(io.Writer, *input, *output) error{"svg": draw},
}

// listed is how many stacks the text shows.
const listed = 5

func writeText(w io.Writer, in *input, out *output) error {
	b := &strings.Builder{}
	name := in.ID
	if name == "" {
		name = "access"
	}
	fmt.Fprintf(b, "%s\n", name)
	if out.notice != "" {
		fmt.Fprintf(b, "\n%s", out.notice)
	}
	for _, d := range out.defects {
		fmt.Fprintf(b, "%-7s%s: %s (%s)\n", d.Severity, d.Kind, d.Reason, d.Basis)
	}
	if out.hasReach {
		textReach(b, in, out)
	}
	if out.hasStacks {
		textStacks(b, out)
	}
	textJoint(b, out)
	if out.hasDig {
		textDig(b, out)
	}
	textLoad(b, out)
	textFind(b, out)
	textRemedies(b, out)
	for _, u := range out.notSeen {
		fmt.Fprintf(b, "Not seen: %s, %s\n", fieldName(u.Field), u.Judges)
	}
	for _, missing := range out.without {
		fmt.Fprintf(b, "Not worked out: %s\n", missing)
	}
	cautions, assumed := out.warnings()
	for _, a := range assumed.List() {
		fmt.Fprintf(b, "Taken: %s; measure %s\n", a.Taken, a.Measure)
	}
	for _, c := range cautions.List() {
		fmt.Fprintf(b, "%s: %s\n", strings.ToUpper(c.Level.String()), c.Sentence)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// warnings is the cautions and assumptions of all that was computed.
func (o *output) warnings() (manway.Cautions, manway.Assumptions) {
	c := o.uplift.Cautions | o.press.Cautions | o.reach.Cautions | o.stacks.Cautions | o.dig.Cautions | o.leak.Cautions | o.uncover.Cautions
	a := o.uplift.Assumed | o.press.Assumed | o.reach.Assumed | o.stacks.Assumed | o.dig.Assumed | o.leak.Assumed
	for _, r := range o.remedies {
		c |= r.Cautions
		a |= r.Assumed
	}
	if o.seen {
		c |= manway.NotAnInspection
	}
	return c, a
}

func working(b *strings.Builder, steps manway.Working) {
	for _, s := range steps {
		fmt.Fprintf(b, "  %s\n", s)
	}
}

func textReach(b *strings.Builder, in *input, out *output) {
	r := out.reach
	if r.NoRing {
		fmt.Fprintf(b, "\nHeight: the roof stands high enough, no ring is needed\n")
	} else {
		fmt.Fprintf(b, "\nHeight to make up: %v\n", r.Height)
	}
	working(b, r.Working(manway.US))
	fmt.Fprintf(b, "  stands %v above final grade uphill, %v in the middle, %v downhill\n", r.Uphill, r.Centre, r.Downhill)
	if in.Roof > 0 {
		fmt.Fprintf(b, "  %v from the top to the underside of the roof\n", r.Inside)
	}
}

func textStacks(b *strings.Builder, out *output) {
	s := out.stacks
	most := fmt.Sprint(s.Feasible)
	if s.AtLeast {
		most = "more than " + most
	}
	fmt.Fprintf(b, "\nRing stacks within %v below and %v above: %s\n", s.Need.Below, s.Need.Above, most)
	for i, stack := range s.Best[:min(len(s.Best), listed)] {
		fmt.Fprintf(b, "%2d  %s\n", i+1, stackLine(s, stack))
	}
	if more := len(s.Best) - listed; more > 0 {
		fmt.Fprintf(b, "    and %d more in -out json\n", more)
	}
	if len(s.Best) > 0 {
		working(b, s.Best[0].Working(s.Need, manway.US))
	} else {
		fmt.Fprintf(b, "  none: %s\n", s.Missing(manway.US))
	}
	for _, n := range s.Nearest {
		fmt.Fprintf(b, "    %s\n", stackLine(s, n))
	}
	for _, u := range s.Unused {
		fmt.Fprintf(b, "  not used: %s\n", u)
	}
}

func stackLine(s riser.Stacks, stack riser.Stack) string {
	line := stack.String()
	if stack.Cover >= 0 {
		line += ", lid " + s.Need.Covers[stack.Cover].Code
	}
	line += fmt.Sprintf(": joints %d, %v high, off by %v, %v", stack.Joints, stack.Total, stack.Off, stack.Mass)
	if stack.Cost > 0 {
		line += fmt.Sprintf(", cost %d", stack.Cost)
	}
	return line
}

func textJoint(b *strings.Builder, out *output) {
	if out.hasJoint {
		n := out.strip
		fmt.Fprintf(b, "\nSealant for each joint: %v of strip, runs %d, fills %.0f %% of the joint\n", n.Length, n.Runs, 100*n.Fill)
		working(b, out.joint.Working(manway.US))
		if n.Note != "" {
			fmt.Fprintf(b, "  %s\n", n.Note)
		}
		if out.joints > 0 {
			fmt.Fprintf(b, "  joints %d: %v, rolls %d, %v left\n", out.joints, out.strips.Length, out.strips.Rolls, out.strips.Left)
		}
	}
	if out.hasBead {
		fmt.Fprintf(b, "\nGunned sealant for one joint: %v of bead, %.1f in3, tubes %d\n", out.bead.Length, out.bead.Volume.In(manway.CubicInch), out.bead.Tubes)
	}
	if out.hasCement {
		fmt.Fprintf(b, "\nCement for one joint: %.4g ft3, bags %d\n", out.cement.Volume.In(manway.CubicFoot), out.cement.Packs)
	}
	if out.hasLeak {
		l := out.leak
		fmt.Fprintf(b, "\nOpen joint: at most %v a day if it is that wide all round; the soil lets less through\n", l.Least.Times(manway.Day))
		working(b, l.Working(manway.US))
		if l.HasShare {
			fmt.Fprintf(b, "  %.3g times the design flow\n", l.Share)
		}
	}
}

func textDig(b *strings.Builder, out *output) {
	d := out.dig
	shape := fmt.Sprintf("%v round at the bottom, %v at grade", d.Bottom[0], d.Top[0])
	if d.Pit.Width > 0 {
		shape = fmt.Sprintf("%v by %v at the bottom, %v by %v at grade", d.Bottom[0], d.Bottom[1], d.Top[0], d.Top[1])
	}
	fmt.Fprintf(b, "\nPit: %s, %v deep, type %s, %g to 1: %.1f ft3, %.2f yd3 in the bank, %.2f yd3 loose, %v\n", shape, d.Pit.Depth, d.Pit.Type, d.Slope,
		d.Hole.In(manway.CubicFoot), d.Bank.In(manway.CubicYard), d.Loose.In(manway.CubicYard), d.Spoil)
	working(b, d.Working(manway.US))
	fmt.Fprintf(b, "  backfill %.2f yd3 compacted; dig %.1f h and fill %.1f h by hand, one person; spoil %v back from the edge\n",
		d.Backfill.In(manway.CubicYard), d.HandHours.In(manway.Hour), d.FillHours.In(manway.Hour), d.Setback)
	for _, rule := range []struct {
		holds bool
		text  string
	}{
		{d.Protect, "5 ft or deeper: sloped, shored or shielded in any case"},
		{d.Ladder, "4 ft or deeper: a ladder within 25 ft"},
		{d.AirTest, "deeper than 4 ft: test the air where gas may stand"},
		{d.Wet, "the bottom is below the groundwater taken"},
	} {
		if rule.holds {
			fmt.Fprintf(b, "  %s\n", rule.text)
		}
	}
}

func textLoad(b *strings.Builder, out *output) {
	if out.hasUplift {
		u := out.uplift
		word := "does not lift"
		if u.Lifts {
			word = "lifts"
		}
		fmt.Fprintf(b, "\nUplift: groundwater %s the riser; its fastening must hold %v", word, u.Fasten)
		if u.Riser.Anchors > 0 {
			fmt.Fprintf(b, ", %v each of %d", u.Each, u.Riser.Anchors)
		}
		fmt.Fprintln(b)
		working(b, u.Working(manway.US))
	}
	if out.hasPress {
		p := out.press
		fmt.Fprintf(b, "\nUnreviewed screening of the riser's wall: earth %v, water %v, wheel %v; ring %v, tube %v buckle alone\n", p.Earth, p.Water, p.Wheel, out.buckling.Ring, out.buckling.Tube)
		for _, c := range p.Checks {
			figure := ""
			if use, ok := c.Use(); ok {
				figure = fmt.Sprintf(", use %.3g", use)
			}
			fmt.Fprintf(b, "  %s: %s%s%s (%s)\n", c.Name, c.Status, figure, because(c.Reason), c.Source)
		}
	}
}

func because(reason string) string {
	if reason == "" {
		return ""
	}
	return ": " + reason
}

func textFind(b *strings.Builder, out *output) {
	if out.hasTie {
		fmt.Fprintf(b, "\nPlace: %v\n", out.position)
		if out.position.Poor {
			fmt.Fprint(b, "  the tapes cross poorly: measure to other corners\n")
		}
	}
	if out.hasHose {
		fmt.Fprintf(b, "\nHose: %v\n", out.hose)
	}
	if out.hasUncover {
		fmt.Fprintf(b, "\nUncovering: %.0f minutes by hand\n", out.uncover.Minutes.In(manway.Minute))
		if out.uncover.NotHand {
			fmt.Fprint(b, "  the surface is not opened by hand tools: soil below it alone\n")
		}
	}
}

func textRemedies(b *strings.Builder, out *output) {
	for _, r := range out.remedies {
		fmt.Fprintf(b, "\n%s\n", r.Title)
		if r.RuledOut != "" {
			fmt.Fprintf(b, "  RULED OUT: %s\n", r.RuledOut)
		}
		for _, part := range []struct {
			word string
			list []riser.DefectKind
		}{{"cures", r.Cures}, {"delays", r.Delays}, {"leaves", r.Leaves}} {
			if len(part.list) > 0 {
				fmt.Fprintf(b, "  %s: %s\n", part.word, kinds(part.list))
			}
		}
		if r.Life.High > 0 {
			fmt.Fprintf(b, "  lasts %v, usually %v, at best %v (%s)\n", r.Life.Low, r.Life.Usual, r.Life.High, r.Life.Basis)
		}
		for _, i := range r.Scope {
			crew := ""
			if i.Crew > 0 {
				crew = fmt.Sprintf(", crew of %d", i.Crew)
			}
			fmt.Fprintf(b, "  %8.3g %s %s%s = %s\n", i.Quantity, i.Unit, i.Code, crew, i.Working)
		}
		for _, u := range r.Unscoped {
			fmt.Fprintf(b, "  not in this scope, not known: %s\n", u)
		}
		fmt.Fprintf(b, "  entry %s, dig %s, pump-down %s", yes(r.NeedsEntry), yes(r.NeedsDig), yes(r.NeedsPump))
		if r.Permit != "" {
			fmt.Fprintf(b, ", permit: %s", r.Permit)
		}
		b.WriteByte('\n')
	}
}

func kinds(list []riser.DefectKind) string {
	words := make([]string, len(list))
	for i, k := range list {
		words[i] = string(k)
	}
	return strings.Join(words, ", ")
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
