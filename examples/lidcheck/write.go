package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/lid"
)

var columns = []string{"id", "dry_lb", "damp_lb", "soaked_lb", "all_lb", "on_top_lb",
	"tip_lbf", "walk_out_lbf", "drag_lbf", "hook_lbf", "fulcrum_bar_lbf", "pry_bar_lbf", "hoist_lbf", "least_way", "crew",
	"rise_in", "tip", "wedges", "falls", "bearing_in", "gap_in2",
	"one_person", "one_person_lb", "one_person_index", "bend_use", "bend", "strength_left",
	"do_not_lift", "guard_failed", "add_fastener", "add_secondary",
	"lift", "lift_limit_lb", "lift_index", "lift_hand_origin_lb", "lift_hand_end_lb", "cautions"}

// cells writes a CSV row; a value that there is not is an empty cell.
type cells struct{ *record.Row }

func (c cells) number(has bool, x float64) {
	if has {
		c.Number(x)
	} else {
		c.Empty()
	}
}

func (c cells) text(has bool, s string) {
	if has {
		c.Text(s)
	} else {
		c.Empty()
	}
}

func (c cells) bool(has, v bool) {
	if has {
		c.Bool(v)
	} else {
		c.Empty()
	}
}

func writeRows(r *record.Row, in *input, out *output) {
	c, m, has := cells{r}, &out.moves, out.hasLid
	w := m.Weight
	c.Text(in.ID)
	for _, x := range [...]manway.Mass{w.Dry, w.Damp, w.Soaked, w.All, w.OnTop} {
		c.number(has, x.In(manway.Pound))
	}
	for _, k := range m.Methods {
		c.number(has && k.Possible != manway.No, k.FirstPull.In(manway.PoundForce))
	}
	c.text(has, m.Least.String())
	c.text(has, m.Methods[m.Least].Crew.Status.String())
	s := &m.Seating
	c.number(has, s.Rise.In(manway.Inch))
	c.text(has, s.Tip.String())
	c.text(has && s.Bevel > 0, s.Wedges.String())
	c.text(has, s.Falls.String())
	c.number(has && !s.Rim.NotKnown, s.Rim.Bearing.In(manway.Inch))
	c.number(has && !s.Rim.NotKnown, s.Rim.Gap.In(manway.SquareInch))
	c.text(has, m.OnePerson.Standing.String())
	limited := has && m.OnePerson.Standing == lid.Limited
	c.number(limited, m.OnePerson.Limit.In(manway.Pound))
	c.number(limited, m.OnePerson.Index)
	bend := out.bending.Checks[1]
	use, ok := bend.Use()
	c.number(has && ok, use)
	c.text(has, bend.Status.String())
	c.number(has, out.bending.StrengthLeft)
	c.bool(out.hasHandle, out.handle.DoNotLift)
	failed := ""
	for _, f := range out.guard.Findings[:out.guard.Rules] {
		if f.Status == manway.Fail {
			if failed != "" {
				failed += " "
			}
			failed += f.Code
		}
	}
	c.text(out.hasGuard, failed)
	c.bool(out.hasGuard, out.guard.AddFastener)
	c.bool(out.hasGuard, out.guard.AddSecondary)
	l, asked := &out.alone.lift, out.alone.hasLift
	covered := asked && l.Standing == lid.Limited
	c.text(asked, l.Standing.String())
	c.number(covered, l.Limit.In(manway.Pound))
	c.number(covered, l.Index)
	c.number(covered, l.AtOrigin.ByHand.In(manway.Pound))
	c.number(covered, l.AtEnd.ByHand.In(manway.Pound))
	c.Text(out.cautions.String())
}

func writeJSON(j *record.JSON, in *input, out *output) {
	j.Text("id", in.ID)
	if out.hasLid {
		jsonMoves(j, &out.moves)
		jsonSeat(j, &out.moves.Seating)
		jsonBending(j, &out.bending)
	}
	if out.hasHandle {
		jsonHandle(j, &out.handle)
	}
	if out.hasGuard {
		jsonGuard(j, out)
	}
	out.alone.json(j)
	j.List("assumed")
	for _, a := range out.assumed.List() {
		j.Text("", a.Code)
	}
	j.End()
	j.Texts("cautions", out.cautions.Codes())
}
