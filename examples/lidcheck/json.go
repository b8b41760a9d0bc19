package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/lid"
)

func jsonMoves(j *record.JSON, m *lid.Moves) {
	w := m.Weight
	j.Object("weight")
	j.Number("volume_ft3", w.Volume.In(manway.CubicFoot))
	j.Number("density_lb_per_ft3", w.Density.In(manway.PoundPerCubicFoot))
	j.Number("dry_lb", w.Dry.In(manway.Pound))
	j.Number("damp_lb", w.Damp.In(manway.Pound))
	j.Number("soaked_lb", w.Soaked.In(manway.Pound))
	j.Number("now_lb", w.Now.In(manway.Pound))
	j.Number("heaviest_lb", w.Heaviest.In(manway.Pound))
	j.Int("pieces", w.Pieces)
	j.Number("all_lb", w.All.In(manway.Pound))
	j.Number("on_top_lb", w.OnTop.In(manway.Pound))
	j.End()
	j.List("methods")
	for i := range m.Methods {
		k := &m.Methods[i]
		j.Object("")
		j.Text("way", k.Way.String())
		j.Number("low_lbf", k.Low.In(manway.PoundForce))
		j.Number("high_lbf", k.High.In(manway.PoundForce))
		j.Number("first_pull_lbf", k.FirstPull.In(manway.PoundForce))
		j.Text("possible", k.Possible.String())
		if k.Reason != "" {
			j.Text("reason", k.Reason)
		}
		j.Text("crew", k.Crew.Status.String())
		if k.Crew.Capacity > 0 {
			j.Number("crew_limit_lbf", manway.Force(k.Crew.Capacity).In(manway.PoundForce))
		}
		j.End()
	}
	j.End()
	j.Text("least", m.Least.String())
	if m.Pull.Known {
		j.Number("pull_low_lbf", m.Pull.Low.In(manway.PoundForce))
		j.Number("pull_high_lbf", m.Pull.High.In(manway.PoundForce))
	}
	j.Number("sling_leg_lbf", m.SlingLeg.In(manway.PoundForce))
	j.Number("gear_limit_lbf", m.GearLimit.In(manway.PoundForce))
	j.Number("set_down_clear_in", m.SetDown.Clear.In(manway.Inch))
	j.Number("set_down_hold_lbf", m.SetDown.Hold.In(manway.PoundForce))
	j.Object("one_person")
	jsonLift(j, &m.OnePerson)
	j.Text("status", m.Alone.Status.String())
	if m.Alone.Reason != "" {
		j.Text("reason", m.Alone.Reason)
	}
	j.End()
	j.List("teams")
	for _, t := range m.Team[1:] {
		if t.Valid {
			jsonTeam(j, "", t)
		}
	}
	j.End()
}

func jsonTeam(j *record.JSON, key string, t lid.Team) {
	j.Object(key)
	j.Int("people", t.People)
	if t.Valid {
		j.Number("share_lb", t.Share.In(manway.Pound))
		j.Number("doubling_lb", t.Doubling.In(manway.Pound))
	} else {
		j.Null("share_lb")
	}
	j.End()
}

func jsonLift(j *record.JSON, r *lid.LiftLimit) {
	j.Text("standing", r.Standing.String())
	if r.Standing == lid.NotCovered {
		j.Texts("outside", r.Outside.List())
		return
	}
	if r.Standing == lid.Limited {
		j.Number("limit_lb", r.Limit.In(manway.Pound))
		j.Number("limit_kg", r.Limit.In(manway.Kilogram))
		j.Number("index", r.Index)
		j.Text("governs", r.Governs.String())
	}
	for _, e := range [...]struct {
		key string
		end *lid.EndLimit
	}{{"origin", &r.AtOrigin}, {"destination", &r.AtEnd}} {
		j.Object(e.key)
		x := e.end.Multipliers
		j.Number("hm", x.Horizontal)
		j.Number("vm", x.Vertical)
		j.Number("dm", x.Distance)
		j.Number("am", x.Asymmetry)
		j.Number("fm", x.Frequency)
		j.Number("cm", x.Grip)
		j.Number("limit_lb", e.end.Limit.In(manway.Pound))
		j.Number("limit_kg", e.end.Limit.In(manway.Kilogram))
		j.Number("index", e.end.Index)
		j.Number("by_hand_lb", e.end.ByHand.In(manway.Pound))
		j.Number("by_hand_kg", e.end.ByHand.In(manway.Kilogram))
		j.Number("by_hand_index", e.end.IndexByHand)
		j.End()
	}
}

func jsonSeat(j *record.JSON, r *lid.Seating) {
	j.Object("seat")
	j.Number("rise_in", r.Rise.In(manway.Inch))
	j.Text("slide", r.Slide.String())
	j.Text("walk", r.Walk.String())
	j.Text("tip", r.Tip.String())
	j.Text("leaves", r.Leaves.String())
	j.Number("tip_gap_in", r.TipGap.In(manway.Inch))
	j.Number("bevel_deg", r.Bevel.In(manway.Degree))
	j.Text("wedges", r.Wedges.String())
	j.Number("wedged_lbf", r.Extra.In(manway.PoundForce))
	j.Text("falls_through", r.Falls.String())
	if !r.Rim.NotKnown {
		j.Number("bearing_in", r.Rim.Bearing.In(manway.Inch))
		j.Number("bearing_least_in", r.Rim.Least.In(manway.Inch))
		j.Number("rim_whole", r.Rim.Whole)
		j.Number("gap_in2", r.Rim.Gap.In(manway.SquareInch))
		j.Bool("narrow", r.Rim.Narrow)
	}
	j.Text("air_and_water", r.Rim.OpenAir.String())
	j.End()
}

func jsonBending(j *record.JSON, r *lid.Bending) {
	j.Object("bending")
	j.Text("title", lid.Title)
	j.Number("left_in", r.Left.In(manway.Inch))
	j.Number("strength_left", r.StrengthLeft)
	j.Number("own_lbf_in_per_in", r.OwnMoment.In(manway.PoundForceFootPerFoot))
	j.Number("person_lbf_in_per_in", r.LiveMoment.In(manway.PoundForceFootPerFoot))
	j.Number("nominal_lbf_in_per_in", r.Nominal.In(manway.PoundForceFootPerFoot))
	j.Number("rupture_lbf_in_per_in", r.Rupture.In(manway.PoundForceFootPerFoot))
	jsonChecks(j, r.Checks[:])
	j.End()
}

func jsonChecks(j *record.JSON, list []manway.Check) {
	j.List("checks")
	for i := range list {
		c := &list[i]
		j.Object("")
		j.Text("name", c.Name)
		j.Text("status", c.Status.String())
		if use, ok := c.Use(); ok {
			j.Number("use", use)
		}
		if c.Kind == manway.KindForce {
			j.Number("demand_lbf", manway.Force(c.Demand).In(manway.PoundForce))
			j.Number("capacity_lbf", manway.Force(c.Capacity).In(manway.PoundForce))
		} else {
			j.Number("demand_lbf_in_per_in", manway.MomentPerLength(c.Demand).In(manway.PoundForceFootPerFoot))
			j.Number("capacity_lbf_in_per_in", manway.MomentPerLength(c.Capacity).In(manway.PoundForceFootPerFoot))
			j.Text("combination", c.Combination.String())
			j.Number("phi", c.Phi)
		}
		if c.Reason != "" {
			j.Text("reason", c.Reason)
		}
		j.End()
	}
	j.End()
}

func jsonHandle(j *record.JSON, r *lid.HandleCheck) {
	j.Object("handle")
	j.Text("state", r.State.String())
	j.Bool("do_not_lift", r.DoNotLift)
	if r.Reason != "" {
		j.Text("reason", r.Reason)
	}
	j.Number("load_lbf", r.Load.In(manway.PoundForce))
	if r.Left > 0 {
		j.Number("steel_left", r.Left)
	}
	jsonChecks(j, r.Checks[:])
	j.End()
}

func jsonGuard(j *record.JSON, out *output) {
	r := &out.guard
	j.Object("guard")
	j.List("rules")
	for i := range r.Rules {
		f := &r.Findings[i]
		j.Object("")
		j.Text("code", f.Code)
		j.Text("binding", out.rules[i].Binding.String())
		j.Text("applies", f.Applies.String())
		j.Text("met", f.Met.String())
		j.Text("status", f.Status.String())
		if f.Reason != "" {
			j.Text("reason", f.Reason)
		}
		j.Bool("weight_only", f.WeightOnly)
		j.End()
	}
	j.End()
	j.Bool("guard_now", r.GuardNow)
	j.Bool("add_fastener", r.AddFastener)
	j.Bool("add_secondary", r.AddSecondary)
	j.Bool("weight_conflict", r.WeightConflict)
	if r.WeightConflict {
		j.Number("conflict_weight_lb", r.ConflictWeight.In(manway.Pound))
		j.Number("conflict_limit_lb", r.ConflictLimit.In(manway.Pound))
	}
	j.End()
}
