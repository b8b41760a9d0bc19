package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/riser"
)

var columns = []string{"id", "top_in", "height_in", "uphill_in", "downhill_in", "stack", "lid", "joints", "total_in", "off_in", "mass_lb", "cost", "stacks",
	"missing", "strip_ft", "rolls", "pit_top_in", "bank_yd3", "loose_yd3", "spoil_lb", "dig_h", "fill_h", "protect", "leak_gal_d", "defects", "remedies", "cautions"}

// cells writes a CSV row; a value that there is not is an empty cell.
type cells struct{ *record.Row }

func (c cells) inches(has bool, x manway.Length) {
	c.number(has, x.In(manway.Inch))
}

func (c cells) number(has bool, x float64) {
	if has {
		c.Number(x)
	} else {
		c.Empty()
	}
}

func writeRows(r *record.Row, in *input, out *output) {
	c := cells{r}
	c.Text(in.ID)
	c.inches(out.hasReach, out.reach.Top)
	c.inches(out.hasReach, out.reach.Height)
	c.inches(out.hasReach, out.reach.Uphill)
	c.inches(out.hasReach, out.reach.Downhill)
	has := len(out.stacks.Best) > 0
	var best riser.Stack
	if has {
		best = out.stacks.Best[0]
		c.Text(best.String())
	} else {
		c.Empty()
	}
	if has && best.Cover >= 0 {
		c.Text(out.stacks.Need.Covers[best.Cover].Code)
	} else {
		c.Empty()
	}
	c.number(has, float64(best.Joints))
	c.inches(has, best.Total)
	c.inches(has, best.Off)
	c.number(has, best.Mass.In(manway.Pound))
	c.number(has, float64(best.Cost))
	c.number(out.hasStacks, float64(out.stacks.Feasible))
	if out.hasStacks {
		c.Text(out.stacks.Missing(manway.US))
	} else {
		c.Empty()
	}
	c.number(out.hasJoint, out.strips.Length.In(manway.Foot))
	c.number(out.hasJoint, float64(out.strips.Rolls))
	c.inches(out.hasDig, out.dig.Top[0])
	c.number(out.hasDig, out.dig.Bank.In(manway.CubicYard))
	c.number(out.hasDig, out.dig.Loose.In(manway.CubicYard))
	c.number(out.hasDig, out.dig.Spoil.In(manway.Pound))
	c.number(out.hasDig, out.dig.HandHours.In(manway.Hour))
	c.number(out.hasDig, out.dig.FillHours.In(manway.Hour))
	if out.hasDig {
		c.Bool(out.dig.Protect)
	} else {
		c.Empty()
	}
	c.number(out.hasLeak, out.leak.Least.In(manway.GallonPerDay))
	c.Text(defectCodes(out.defects))
	c.Text(remedyCodes(out.remedies))
	cautions, _ := out.warnings()
	c.Text(cautions.String())
}

func defectCodes(list []riser.Defect) string {
	kind := make([]riser.DefectKind, len(list))
	for i, d := range list {
		kind[i] = d.Kind
	}
	return kinds(kind)
}

func remedyCodes(list []riser.Remedy) string {
	var kind []riser.DefectKind
	for _, r := range list {
		if r.RuledOut == "" {
			kind = append(kind, riser.DefectKind(r.Kind))
		}
	}
	return kinds(kind)
}

func writeJSON(j *record.JSON, in *input, out *output) {
	j.Text("id", in.ID)
	if out.notice != "" {
		j.Text("notice", out.notice)
	}
	if out.hasReach {
		r := out.reach
		j.Object("reach")
		j.Number("top_in", r.Top.In(manway.Inch))
		j.Number("height_in", r.Height.In(manway.Inch))
		j.Bool("no_ring", r.NoRing)
		j.Number("uphill_in", r.Uphill.In(manway.Inch))
		j.Number("centre_in", r.Centre.In(manway.Inch))
		j.Number("downhill_in", r.Downhill.In(manway.Inch))
		if r.Inside > 0 {
			j.Number("inside_in", r.Inside.In(manway.Inch))
		}
		jsonWorking(j, r.Working(manway.US))
		j.End()
	}
	if out.hasStacks {
		jsonStacks(j, out.stacks)
	}
	if out.hasJoint {
		n := out.strip
		j.Object("joint")
		j.Number("length_in", out.joint.Length().In(manway.Inch))
		j.Int("runs", n.Runs)
		j.Number("strip_in", n.Length.In(manway.Inch))
		j.Number("fill", n.Fill)
		j.Int("joints", out.joints)
		j.Number("strip_all_ft", (manway.Length(out.joints) * n.Length).In(manway.Foot))
		j.Int("rolls", out.strips.Rolls)
		if n.Note != "" {
			j.Text("note", n.Note)
		}
		j.End()
	}
	if out.hasBead {
		j.Object("bead")
		j.Number("length_ft", out.bead.Length.In(manway.Foot))
		j.Number("volume_in3", out.bead.Volume.In(manway.CubicInch))
		j.Int("tubes", out.bead.Tubes)
		j.Number("tube_ft", riser.Bead(*in.Bead).Yield().In(manway.Foot))
		j.End()
	}
	if out.hasCement {
		j.Object("cement")
		j.Number("volume_ft3", out.cement.Volume.In(manway.CubicFoot))
		j.Int("bags", out.cement.Packs)
		j.Number("left_ft3", out.cement.Left.In(manway.CubicFoot))
		j.End()
	}
	if out.hasDig {
		jsonDig(j, out.dig)
	}
	jsonLoad(j, out)
	if out.hasLeak {
		jsonLeak(j, out.leak)
	}
	jsonFind(j, out)
	jsonJudged(j, out)
	jsonWarnings(j, out)
}

func jsonWorking(j *record.JSON, steps manway.Working) {
	lines := make([]string, len(steps))
	for i, s := range steps {
		lines[i] = s.String()
	}
	j.Texts("working", lines)
}

func jsonStacks(j *record.JSON, s riser.Stacks) {
	j.Object("stacks")
	j.Number("feasible", float64(s.Feasible))
	j.Bool("more", s.AtLeast)
	if missing := s.Missing(manway.US); missing != "" {
		j.Text("missing", missing)
	}
	for _, part := range []struct {
		key  string
		list []riser.Stack
	}{{"best", s.Best}, {"nearest", s.Nearest}} {
		j.List(part.key)
		for _, stack := range part.list {
			jsonStack(j, s, stack)
		}
		j.End()
	}
	if len(s.Unused) > 0 {
		j.Texts("unused", s.Unused)
	}
	j.End()
}

func jsonStack(j *record.JSON, s riser.Stacks, stack riser.Stack) {
	j.Object("")
	j.List("pieces")
	for _, p := range stack.Pieces {
		j.Object("")
		j.Text("code", p.Code)
		j.Int("count", p.Count)
		j.Number("height_in", p.Height.In(manway.Inch))
		j.Number("bore_in", p.Bore.In(manway.Inch))
		j.Bool("cut", p.Cut)
		j.End()
	}
	j.End()
	if stack.Cover >= 0 {
		j.Text("lid", s.Need.Covers[stack.Cover].Code)
	}
	j.Int("joints", stack.Joints)
	j.Number("total_in", stack.Total.In(manway.Inch))
	j.Number("off_in", stack.Off.In(manway.Inch))
	j.Number("mass_lb", stack.Mass.In(manway.Pound))
	j.Number("cost", float64(stack.Cost))
	j.End()
}

func jsonDig(j *record.JSON, d riser.Dig) {
	j.Object("pit")
	j.Text("soil_type", d.Pit.Type.String())
	j.Number("slope", d.Slope)
	j.Number("bottom_in", d.Bottom[0].In(manway.Inch))
	j.Number("top_in", d.Top[0].In(manway.Inch))
	if d.Pit.Width > 0 {
		j.Number("bottom_width_in", d.Bottom[1].In(manway.Inch))
		j.Number("top_width_in", d.Top[1].In(manway.Inch))
	}
	j.Number("deepest_in", d.Deepest.In(manway.Inch))
	j.Number("hole_ft3", d.Hole.In(manway.CubicFoot))
	j.Number("bank_yd3", d.Bank.In(manway.CubicYard))
	j.Number("loose_yd3", d.Loose.In(manway.CubicYard))
	j.Number("backfill_yd3", d.Backfill.In(manway.CubicYard))
	j.Number("spoil_lb", d.Spoil.In(manway.Pound))
	j.Number("setback_ft", d.Setback.In(manway.Foot))
	j.Number("dig_h", d.HandHours.In(manway.Hour))
	j.Number("fill_h", d.FillHours.In(manway.Hour))
	j.Bool("protect", d.Protect)
	j.Bool("ladder", d.Ladder)
	j.Bool("air_test", d.AirTest)
	j.Bool("wet", d.Wet)
	jsonWorking(j, d.Working(manway.US))
	j.End()
}

func jsonLeak(j *record.JSON, l riser.Leakage) {
	j.Object("leak")
	j.Number("head_in", l.Head.In(manway.Inch))
	j.Bool("dry", l.Dry)
	j.Number("orifice_gal_d", l.Orifice.In(manway.GallonPerDay))
	j.Number("slot_gal_d", l.Slot.In(manway.GallonPerDay))
	j.Bool("laminar", l.Laminar)
	j.Number("least_gal_d", l.Least.In(manway.GallonPerDay))
	if l.HasShare {
		j.Number("share_of_design", l.Share)
	}
	jsonWorking(j, l.Working(manway.US))
	j.End()
}
