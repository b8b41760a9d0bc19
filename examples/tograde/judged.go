package main

import (
	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/riser"
)

func jsonFind(j *record.JSON, out *output) {
	if out.hasTie {
		p := out.position
		j.Object("place")
		j.Number("along_ft", p.Along.In(manway.Foot))
		j.Number("out_ft", p.Out.In(manway.Foot))
		if p.OffKnown {
			j.Number("off_ft", p.Off.In(manway.Foot))
		}
		j.Bool("poor", p.Poor)
		j.End()
	}
	if out.hasHose {
		j.Object("hose")
		j.Number("length_ft", out.hose.Length.In(manway.Foot))
		j.Int("sections", out.hose.Sections)
		j.Number("lift_ft", out.hose.Lift.In(manway.Foot))
		j.End()
	}
	if out.hasUncover {
		j.Object("uncover")
		j.Number("soil_ft3", out.uncover.Soil.In(manway.CubicFoot))
		j.Number("minutes", out.uncover.Minutes.In(manway.Minute))
		j.Bool("hand_tools", !out.uncover.NotHand)
		j.End()
	}
}

func jsonLoad(j *record.JSON, out *output) {
	if out.hasUplift {
		u := out.uplift
		j.Object("uplift")
		j.Number("head_in", u.Head.In(manway.Inch))
		j.Number("up_lbf", u.Up.In(manway.PoundForce))
		j.Number("weight_lbf", u.Weight.In(manway.PoundForce))
		j.Number("soil_lbf", u.Soil.In(manway.PoundForce))
		if !u.NoUplift {
			j.Number("safety", u.Safety)
		}
		j.Bool("lifts", u.Lifts)
		j.Number("fasten_lbf", u.Fasten.In(manway.PoundForce))
		j.Number("each_lbf", u.Each.In(manway.PoundForce))
		jsonWorking(j, u.Working(manway.US))
		j.End()
	}
	if out.hasPress {
		p := out.press
		j.Object("wall")
		j.Number("earth_psf", p.Earth.In(manway.PSF))
		j.Number("water_psf", p.Water.In(manway.PSF))
		j.Number("wheel_psf", p.Wheel.In(manway.PSF))
		j.Number("hoop_lbf_per_ft", p.Hoop.In(manway.PoundForcePerFoot))
		j.Number("ring_buckling_psi", out.buckling.Ring.In(manway.PSI))
		j.Number("tube_buckling_psi", out.buckling.Tube.In(manway.PSI))
		j.Number("soil_buckling_psi", out.buckling.Soil.In(manway.PSI))
		j.List("checks")
		for _, c := range p.Checks {
			j.Object("")
			j.Text("name", c.Name)
			j.Text("status", c.Status.String())
			if use, ok := c.Use(); ok {
				j.Number("use", use)
			}
			if c.Reason != "" {
				j.Text("reason", c.Reason)
			}
			j.Text("source", c.Source.String())
			j.End()
		}
		j.End()
		j.End()
	}
}

func jsonJudged(j *record.JSON, out *output) {
	if !out.seen {
		return
	}
	j.List("defects")
	for _, d := range out.defects {
		j.Object("")
		j.Text("kind", string(d.Kind))
		j.Text("severity", d.Severity.String())
		j.Text("reason", d.Reason)
		j.Text("source", d.Basis.String())
		j.End()
	}
	j.End()
	j.List("remedies")
	for _, r := range out.remedies {
		jsonRemedy(j, r)
	}
	j.End()
	j.List("not_seen")
	for _, u := range out.notSeen {
		j.Object("")
		j.Text("field", fieldName(u.Field))
		j.Text("judges", u.Judges)
		j.End()
	}
	j.End()
}

func jsonRemedy(j *record.JSON, r riser.Remedy) {
	j.Object("")
	j.Text("kind", string(r.Kind))
	j.Text("title", r.Title)
	if r.RuledOut != "" {
		j.Text("ruled_out", r.RuledOut)
	}
	for _, part := range []struct {
		key  string
		list []riser.DefectKind
	}{{"cures", r.Cures}, {"delays", r.Delays}, {"leaves", r.Leaves}} {
		texts := make([]string, len(part.list))
		for i, k := range part.list {
			texts[i] = string(k)
		}
		j.Texts(part.key, texts)
	}
	if r.Life.High > 0 {
		j.Object("life")
		j.Number("low_yr", r.Life.Low.In(manway.Year))
		j.Number("usual_yr", r.Life.Usual.In(manway.Year))
		j.Number("high_yr", r.Life.High.In(manway.Year))
		j.Text("source", r.Life.Basis.String())
		j.End()
	}
	j.List("scope")
	for _, i := range r.Scope {
		j.Object("")
		j.Text("code", i.Code)
		j.Text("class", i.Class.String())
		j.Number("quantity", i.Quantity)
		j.Text("unit", i.Unit)
		if i.Crew > 0 {
			j.Int("crew", i.Crew)
		}
		j.Text("working", i.Working)
		j.Text("source", i.Basis.String())
		j.End()
	}
	j.End()
	if len(r.Unscoped) > 0 {
		j.Texts("not_in_scope", r.Unscoped)
	}
	j.Bool("needs_entry", r.NeedsEntry)
	j.Bool("needs_dig", r.NeedsDig)
	j.Bool("needs_pump_down", r.NeedsPump)
	if r.Permit != "" {
		j.Text("permit", r.Permit)
	}
	j.End()
}

func jsonWarnings(j *record.JSON, out *output) {
	cautions, assumed := out.warnings()
	j.Texts("cautions", cautions.Codes())
	list := assumed.List()
	codes := make([]string, len(list))
	for i, a := range list {
		codes[i] = a.Code
	}
	j.Texts("assumed", codes)
	if len(out.without) > 0 {
		j.Texts("not_worked_out", out.without)
	}
	var sources []string
	for _, c := range out.basis() {
		sources = append(sources, c.String())
	}
	j.Texts("sources", sources)
}

// basis is where what was computed comes from.
func (o *output) basis() []manway.Citation {
	var list []manway.Citation
	if o.hasReach {
		list = append(list, o.reach.Basis()...)
	}
	if o.hasStacks {
		list = append(list, o.stacks.Basis()...)
	}
	if o.hasJoint {
		list = append(list, o.joint.Basis()...)
	}
	if o.hasDig {
		list = append(list, o.dig.Basis()...)
	}
	if o.hasLeak {
		list = append(list, o.leak.Basis()...)
	}
	if o.hasUplift {
		list = append(list, o.uplift.Basis()...)
	}
	if o.hasPress {
		list = append(list, o.press.Basis()...)
	}
	if o.hasUncover {
		list = append(list, o.uncover.Basis()...)
	}
	return list
}
