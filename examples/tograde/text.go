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
	b, sys := &strings.Builder{}, in.Units
	name := in.ID
	if name == "" {
		name = "access"
	}
	record.Printf(b, sys, "%s\n", name)
	if out.notice != "" {
		record.Printf(b, sys, "\n%s", out.notice)
	}
	for _, d := range out.defects {
		record.Printf(b, sys, "%-7s%s: %s (%s)\n", d.Severity, d.Kind, d.Reason, d.Basis)
	}
	if out.hasReach {
		textReach(b, in, out)
	}
	if out.hasStacks {
		textStacks(b, sys, out)
	}
	textJoint(b, sys, out)
	if out.hasDig {
		textDig(b, sys, out)
	}
	textLoad(b, sys, out)
	textFind(b, sys, out)
	textRemedies(b, sys, out)
	for _, u := range out.notSeen {
		record.Printf(b, sys, "Not seen: %s, %s\n", fieldName(u.Field), u.Judges)
	}
	for _, missing := range out.without {
		record.Printf(b, sys, "Not worked out: %s\n", missing)
	}
	cautions, assumed := out.warnings()
	for _, a := range assumed.List() {
		record.Printf(b, sys, "Taken: %s; measure %s\n", a.Taken, a.Measure)
	}
	for _, c := range cautions.List() {
		record.Printf(b, sys, "%s: %s\n", strings.ToUpper(c.Level.String()), c.Sentence)
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
	r, sys := out.reach, in.Units
	if r.NoRing {
		record.Printf(b, sys, "\nHeight: the roof stands high enough, no ring is needed\n")
	} else {
		record.Printf(b, sys, "\nHeight to make up: %v\n", r.Height)
	}
	working(b, r.Working(sys))
	record.Printf(b, sys, "  stands %v above final grade uphill, %v in the middle, %v downhill\n", r.Uphill, r.Centre, r.Downhill)
	if in.Roof > 0 {
		record.Printf(b, sys, "  %v from the top to the underside of the roof\n", r.Inside)
	}
}

func textStacks(b *strings.Builder, sys manway.System, out *output) {
	s := out.stacks
	most := fmt.Sprint(s.Feasible)
	if s.AtLeast {
		most = "more than " + most
	}
	record.Printf(b, sys, "\nRing stacks within %v below and %v above: %s\n", s.Need.Below, s.Need.Above, most)
	for i, stack := range s.Best[:min(len(s.Best), listed)] {
		record.Printf(b, sys, "%2d  %s\n", i+1, stackLine(s, stack, sys))
	}
	if more := len(s.Best) - listed; more > 0 {
		record.Printf(b, sys, "    and %d more in -out json\n", more)
	}
	if len(s.Best) > 0 {
		working(b, s.Best[0].Working(s.Need, sys))
	} else {
		record.Printf(b, sys, "  none: %s\n", s.Missing(sys))
	}
	for _, n := range s.Nearest {
		record.Printf(b, sys, "    %s\n", stackLine(s, n, sys))
	}
	for _, u := range s.Unused {
		record.Printf(b, sys, "  not used: %s\n", u)
	}
}

func stackLine(s riser.Stacks, stack riser.Stack, sys manway.System) string {
	line := stack.String()
	if stack.Cover >= 0 {
		line += ", lid " + s.Need.Covers[stack.Cover].Code
	}
	line += fmt.Sprintf(": joints %d, %s high, off by %s, %s", stack.Joints, stack.Total.Text(sys), stack.Off.Text(sys), stack.Mass.Text(sys))
	if stack.Cost > 0 {
		line += fmt.Sprintf(", cost %d", stack.Cost)
	}
	return line
}

func textJoint(b *strings.Builder, sys manway.System, out *output) {
	if out.hasJoint {
		n := out.strip
		record.Printf(b, sys, "\nSealant for each joint: %v of strip, runs %d, fills %.0f %% of the joint\n", n.Length, n.Runs, 100*n.Fill)
		working(b, out.joint.Working(sys))
		if n.Note != "" {
			record.Printf(b, sys, "  %s\n", n.Note)
		}
		if out.joints > 0 {
			record.Printf(b, sys, "  joints %d: %v, rolls %d, %v left\n", out.joints, out.strips.Length, out.strips.Rolls, out.strips.Left)
		}
	}
	if out.hasBead {
		record.Printf(b, sys, "\nGunned sealant for one joint: %v of bead, %s, tubes %d\n", out.bead.Length, small(out.bead.Volume, sys), out.bead.Tubes)
	}
	if out.hasCement {
		record.Printf(b, sys, "\nCement for one joint: %s, bags %d\n", small(out.cement.Volume, sys), out.cement.Packs)
	}
	if out.hasLeak {
		l := out.leak
		record.Printf(b, sys, "\nOpen joint: at most %v a day if it is that wide all round; the soil lets less through\n", l.Least.Times(manway.Day))
		working(b, l.Working(sys))
		if l.HasShare {
			record.Printf(b, sys, "  %.3g times the design flow\n", l.Share)
		}
	}
}

func textDig(b *strings.Builder, sys manway.System, out *output) {
	d := out.dig
	record.Printf(b, sys, "\nPit: ")
	if d.Pit.Width > 0 {
		record.Printf(b, sys, "%v by %v at the bottom, %v by %v at grade", d.Bottom[0], d.Bottom[1], d.Top[0], d.Top[1])
	} else {
		record.Printf(b, sys, "%v round at the bottom, %v at grade", d.Bottom[0], d.Top[0])
	}
	record.Printf(b, sys, ", %v deep, type %s, %g to 1: %s of hole, %s in the bank, %s loose, %v\n", d.Pit.Depth, d.Pit.Type, d.Slope,
		heap(d.Hole, sys), heap(d.Bank, sys), heap(d.Loose, sys), d.Spoil)
	working(b, d.Working(sys))
	record.Printf(b, sys, "  backfill %s compacted; dig %.1f h and fill %.1f h by hand, one person; spoil %v back from the edge\n",
		heap(d.Backfill, sys), d.HandHours.In(manway.Hour), d.FillHours.In(manway.Hour), d.Setback)
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
			record.Printf(b, sys, "  %s\n", rule.text)
		}
	}
}

func textLoad(b *strings.Builder, sys manway.System, out *output) {
	if out.hasUplift {
		u := out.uplift
		word := "does not lift"
		if u.Lifts {
			word = "lifts"
		}
		record.Printf(b, sys, "\nUplift: groundwater %s the riser; its fastening must hold %v", word, u.Fasten)
		if u.Riser.Anchors > 0 {
			record.Printf(b, sys, ", %v each of %d", u.Each, u.Riser.Anchors)
		}
		fmt.Fprintln(b)
		working(b, u.Working(sys))
	}
	if out.hasPress {
		p := out.press
		record.Printf(b, sys, "\nUnreviewed screening of the riser's wall: earth %v, water %v, wheel %v; ring %v, tube %v buckle alone\n", p.Earth, p.Water, p.Wheel, out.buckling.Ring, out.buckling.Tube)
		for _, c := range p.Checks {
			figure := ""
			if use, ok := c.Use(); ok {
				figure = fmt.Sprintf(", use %.3g", use)
			}
			record.Printf(b, sys, "  %s: %s%s%s (%s)\n", c.Name, c.Outcome(), figure, because(c.Reason), c.Source)
		}
	}
}

// heap is a volume of soil.
func heap(v manway.Volume, sys manway.System) string {
	if sys == manway.SI {
		return fmt.Sprintf("%.2f m3", v.In(manway.CubicMetre))
	}
	return fmt.Sprintf("%.2f yd3", v.In(manway.CubicYard))
}

// small is a volume of sealant or cement.
func small(v manway.Volume, sys manway.System) string {
	if sys == manway.SI {
		return fmt.Sprintf("%.3g L", v.In(manway.Litre))
	}
	return fmt.Sprintf("%.3g in3", v.In(manway.CubicInch))
}

func because(reason string) string {
	if reason == "" {
		return ""
	}
	return ": " + reason
}

func textFind(b *strings.Builder, sys manway.System, out *output) {
	if out.hasTie {
		record.Printf(b, sys, "\nPlace: %v\n", out.position)
		if out.position.Poor {
			fmt.Fprint(b, "  the tapes cross poorly: measure to other corners\n")
		}
	}
	if out.hasHose {
		record.Printf(b, sys, "\nHose: %v\n", out.hose)
	}
	if out.hasUncover {
		record.Printf(b, sys, "\nUncovering: %.0f minutes by hand\n", out.uncover.Minutes.In(manway.Minute))
		if out.uncover.NotHand {
			fmt.Fprint(b, "  the surface is not opened by hand tools: soil below it alone\n")
		}
	}
}

func textRemedies(b *strings.Builder, sys manway.System, out *output) {
	for _, r := range out.remedies {
		record.Printf(b, sys, "\n%s\n", r.Title)
		if r.RuledOut != "" {
			record.Printf(b, sys, "  RULED OUT: %s\n", r.RuledOut)
		}
		for _, part := range []struct {
			word string
			list []riser.DefectKind
		}{{"cures", r.Cures}, {"delays", r.Delays}, {"leaves", r.Leaves}} {
			if len(part.list) > 0 {
				record.Printf(b, sys, "  %s: %s\n", part.word, kinds(part.list))
			}
		}
		if r.Life.High > 0 {
			record.Printf(b, sys, "  lasts %v, usually %v, at best %v (%s)\n", r.Life.Low, r.Life.Usual, r.Life.High, r.Life.Basis)
		}
		for _, i := range r.Scope {
			crew := ""
			if i.Crew > 0 {
				crew = fmt.Sprintf(", crew of %d", i.Crew)
			}
			record.Printf(b, sys, "  %8.3g %s %s%s = %s\n", i.Quantity, i.Unit, i.Code, crew, i.Working)
		}
		for _, u := range r.Unscoped {
			record.Printf(b, sys, "  not in this scope, not known: %s\n", u)
		}
		record.Printf(b, sys, "  entry %s, dig %s, pump-down %s", yes(r.NeedsEntry), yes(r.NeedsDig), yes(r.NeedsPump))
		if r.Permit != "" {
			record.Printf(b, sys, ", permit: %s", r.Permit)
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
