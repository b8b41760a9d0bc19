package main

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/lid"
)

// alone is what may be asked without a lid.
type alone struct {
	hasLift   bool
	lift      lid.LiftLimit
	hasTeam   bool
	team      lid.Team
	hasTasks  bool
	tasks     float64 // composite index, 0 where there is none
	hasSpell  bool
	spell     lid.Spell
	hasAir    bool
	air       lid.Attack
	hasCover  bool
	cover     manway.Force
	hasFilter bool
	filter    manway.Mass
	hasHand   bool
	hand      lid.HandForce
	hasRope   bool
	rope      manway.Force
	cautions  manway.Cautions
}

func (in *input) standsAlone() bool {
	return in.Lift != nil || in.Team != nil || len(in.Tasks) > 0 || in.Work != nil || in.Air != nil ||
		in.FailsAt != nil || in.Filter != nil || in.Hand != nil || in.SidePull != nil
}

func (a *alone) compute(in *input, f *gathered) {
	var err error
	if in.Lift != nil {
		a.lift, err = in.Lift.body().Limit()
		a.hasLift = !f.keep("lift", err)
		a.cautions |= a.lift.Cautions
	}
	if in.Team != nil {
		a.together(in.Team, f)
	}
	a.working(in, f)
	if in.Air != nil {
		a.air, err = lid.AirLoss(in.Air.Metal, in.Air.Class, in.Air.Age)
		a.hasAir = !f.keep("air", err)
		a.cautions |= a.air.Cautions
	}
	if in.FailsAt != nil {
		a.cover, err = lid.HoleCoverLoad(*in.FailsAt)
		a.hasCover = !f.keep("fails_at", err)
	}
	if in.Filter != nil {
		a.filter, err = lid.Filter(*in.Filter).Limit()
		a.hasFilter = !f.keep("filter", err)
		if in.Filter.Women {
			a.cautions |= manway.RememberedFigure
		}
	}
	if in.Hand != nil {
		a.hand, a.hasHand = lid.HandForceAt(in.Hand.Exertion, in.Hand.Height), true
	}
	if in.SidePull != nil {
		a.rope, err = lid.SidePull(*in.SidePull).Tension()
		a.hasRope = !f.keep("side_pull", err)
	}
}

// together is what a team lifts by the two published rules.
func (a *alone) together(t *team, f *gathered) {
	manway.Within(&f.faults, "team.people", t.People, 1, 6)
	manway.Within(&f.faults, "team.each", t.Each, 1*manway.Pound, 1000*manway.Pound)
	a.team.People = t.People
	a.team.Share, a.team.Valid = lid.TeamByShare(t.People, t.Each)
	a.team.Doubling, _ = lid.TeamByDoubling(t.People, t.Each)
	a.hasTeam = true
}

// working is the spell of the work, and the index of its tasks together.
func (a *alone) working(in *input, f *gathered) {
	var err error
	low := false
	if in.Work != nil {
		low = in.Work.Low
		a.spell, err = lid.SpellOf(in.Work.Lifting, in.Work.Rest)
		a.hasSpell = !f.keep("work", err)
	}
	if len(in.Tasks) == 0 {
		return
	}
	var tasks []lid.Task
	for _, t := range in.Tasks {
		tasks = append(tasks, lid.Task(t))
	}
	a.tasks, _, err = lid.CompositeIndex(tasks, a.spell, low)
	a.hasTasks = !f.keep("", err)
	a.cautions |= manway.LiftLimits
}

func (a *alone) text(b *strings.Builder, s manway.System) {
	if a.hasLift {
		textLift(b, &a.lift, s)
	}
	if a.hasTeam {
		if a.team.Valid {
			fmt.Fprintf(b, "\nTeam of %d: %s by the practice rule of two thirds and one half, %s by doubling; no part of the lifting equation\n", a.team.People, a.team.Share.Text(s), a.team.Doubling.Text(s))
		} else {
			fmt.Fprintf(b, "\nTeam of %d: more than three people at one lid are not counted on\n", a.team.People)
		}
	}
	if a.hasSpell {
		fmt.Fprintf(b, "\nSpell of lifting: %s\n", a.spell)
	}
	if a.hasTasks {
		if a.tasks > 0 {
			fmt.Fprintf(b, "\nTasks together: composite lifting index %.2f, %s spell\n", a.tasks, a.spell)
		} else {
			fmt.Fprint(b, "\nTasks together: no index, they come too often\n")
		}
	}
	if a.hasAir {
		mm := func(x manway.Length) float64 { return x.In(manway.Millimetre) }
		fmt.Fprintf(b, "\nAir alone takes %.3f to %.3f mm of one side, %.3f to %.3f mm of a bar's diameter: the mildest bound, air over a tank is worse\n",
			mm(a.air.Low), mm(a.air.High), mm(a.air.BarLow), mm(a.air.BarHigh))
	}
	if a.hasCover {
		fmt.Fprintf(b, "\nHole cover: may carry half of what it fails at, %s\n", a.cover.Text(s))
	}
	if a.hasFilter {
		fmt.Fprintf(b, "\nUK lifting filter: %s; above it the lift is looked at closer, below it is not shown to be harmless\n", a.filter.Text(s))
	}
	if a.hasHand {
		if a.hand.Known {
			fmt.Fprintf(b, "\nHand force: %s protects 80 %% of people, %s half of them\n", a.hand.Low.Text(s), a.hand.High.Text(s))
		} else {
			fmt.Fprint(b, "\nHand force: the guideline says nothing below 32 in and above 48 in\n")
		}
	}
	if a.hasRope {
		fmt.Fprintf(b, "\nRope: %s\n", a.rope.Text(s))
	}
}

func textLift(b *strings.Builder, r *lid.LiftLimit, s manway.System) {
	fmt.Fprintf(b, "\nOne lift by the revised lifting equation: %s", r.Standing)
	switch r.Standing {
	case lid.Limited:
		fmt.Fprintf(b, "\n  limit %s, index %.2f, governed by the %s\n  by hand: origin %s, index %.2f; destination %s, index %.2f\n", r.Limit.Text(s), r.Index, r.Governs,
			r.AtOrigin.ByHand.Text(s), r.AtOrigin.IndexByHand, r.AtEnd.ByHand.Text(s), r.AtEnd.IndexByHand)
	case lid.NotCovered:
		fmt.Fprintf(b, ", no number: %s\n", r.Outside)
	default:
		fmt.Fprint(b, ": a multiplier is 0, nobody should lift it so\n")
	}
	working(b, r.Working(s))
}

func (a *alone) json(j *record.JSON) {
	if a.hasLift {
		j.Object("lift")
		jsonLift(j, &a.lift)
		j.End()
	}
	if a.hasTeam {
		jsonTeam(j, "team", a.team)
	}
	if a.hasSpell {
		j.Text("spell", a.spell.String())
	}
	if a.hasTasks {
		if a.tasks > 0 {
			j.Number("composite_index", a.tasks)
		} else {
			j.Null("composite_index")
		}
	}
	if a.hasAir {
		j.Object("air")
		j.Number("low_mm", a.air.Low.In(manway.Millimetre))
		j.Number("high_mm", a.air.High.In(manway.Millimetre))
		j.Number("bar_low_mm", a.air.BarLow.In(manway.Millimetre))
		j.Number("bar_high_mm", a.air.BarHigh.In(manway.Millimetre))
		j.Number("time_factor_mean", a.air.Mean)
		j.Number("time_factor_upper", a.air.Upper)
		j.End()
	}
	if a.hasCover {
		j.Number("hole_cover_lbf", a.cover.In(manway.PoundForce))
	}
	if a.hasFilter {
		j.Number("filter_kg", a.filter.In(manway.Kilogram))
	}
	if a.hasHand {
		j.Object("hand")
		j.Bool("known", a.hand.Known)
		if a.hand.Known {
			j.Number("low_lbf", a.hand.Low.In(manway.PoundForce))
			j.Number("high_lbf", a.hand.High.In(manway.PoundForce))
		}
		j.End()
	}
	if a.hasRope {
		j.Number("rope_lbf", a.rope.In(manway.PoundForce))
	}
}
