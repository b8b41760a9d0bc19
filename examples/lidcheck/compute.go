package main

import (
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// output is all that was computed of one record; what was not asked for is
// left out.
type output struct {
	hasLid    bool
	moves     lid.Moves
	bending   lid.Bending
	hasHandle bool
	handle    lid.HandleCheck
	hasGuard  bool
	guard     lid.GuardCheck
	rules     []lid.GuardRule
	alone     alone
	cautions  manway.Cautions
	assumed   manway.Assumptions
}

func compute(in *input) (output, error) {
	var out output
	f := gathered{seen: map[string]bool{}}
	if !in.standsAlone() || in.Shape != 0 || in.Thickness != 0 || in.Diameter != 0 || in.Length != 0 || in.Handle != nil || in.Guard != nil {
		out.whole(in, &f)
	}
	out.alone.compute(in, &f)
	out.cautions |= out.alone.cautions
	return out, f.faults.Err()
}

// whole is all that is asked of the lid itself.
func (o *output) whole(in *input, f *gathered) {
	o.hasLid = true
	body := in.body()
	var err error
	o.moves, err = body.Move(in.moving())
	f.keep("", err)
	o.cautions |= o.moves.Cautions
	o.assumed |= o.moves.Assumed
	o.bending, err = body.Bend(lid.BendCase{
		Span: in.Span, Long: in.Long, Person: manway.Person{Mass: in.Person}, Steel: in.Steel,
	})
	f.keep("", err)
	o.cautions |= o.bending.Cautions
	o.assumed |= o.bending.Assumed
	if in.Handle != nil {
		o.handle, err = body.CheckHandle(*in.Handle)
		o.hasHandle = !f.keep("", err)
		o.cautions |= o.handle.Cautions
		o.assumed |= o.handle.Assumed
	}
	if in.Guard != nil {
		o.guarding(in, body, f)
	}
}

func (o *output) guarding(in *input, body lid.Lid, f *gathered) {
	o.rules = lid.GuardRules()
	if len(in.Rules) > 0 {
		o.rules = nil
	}
	for i, code := range in.Rules {
		rule, ok := lid.GuardRuleOf(code)
		if !ok {
			f.faults.Add("rules["+strconv.Itoa(i)+"]", strconv.Quote(code), strings.Join(codes(), ", "))
			return
		}
		o.rules = append(o.rules, rule)
	}
	var err error
	o.guard, err = body.CheckGuard(in.Guard.body(in.Crew), o.rules)
	o.hasGuard = !f.keep("", err)
	o.cautions |= o.guard.Cautions
	o.assumed |= o.guard.Assumed
}

func codes() []string {
	var list []string
	for _, r := range lid.GuardRules() {
		list = append(list, r.Code)
	}
	return list
}

// gathered is the faults of all parts, each once.
type gathered struct {
	faults manway.InputErrors
	seen   map[string]bool
}

// keep adds the faults of err under a part's name, and reports whether there
// was one.
func (g *gathered) keep(part string, err error) bool {
	if err == nil {
		return false
	}
	list, ok := err.(manway.InputErrors)
	if !ok {
		g.faults.Under(part, err)
		return true
	}
	for _, fault := range list {
		field := fault.Field
		if part != "" {
			field = part + "." + field
		}
		if field = inRecord(field); !g.seen[field] {
			g.seen[field] = true
			g.faults.Add(field, fault.Value, fault.Want)
		}
	}
	return true
}

// inRecord is a field of the library as the record calls it.
func inRecord(field string) string {
	if name, ok := renamed[field]; ok {
		return name
	}
	return field
}

var renamed = map[string]string{
	"Overburden.Soil.Moist": "Overburden.Moist", "Overburden.Soil.Saturated": "Overburden.Saturated",
	"Seat.Friction.Low": "Seat.FrictionLow", "Seat.Friction.High": "Seat.FrictionHigh",
	"Person.Mass": "Person", "Guard.Crew.People": "Crew.People", "Guard.Crew.Limit": "Crew.Limit",
	"fails_at.Failure": "fails_at", "work.Work": "work.lifting", "work.Spell": "work",
	"lift.Origin.Horizontal": "lift.h", "lift.Origin.Vertical": "lift.v", "lift.Origin.Turn": "lift.turn",
	"lift.Destination.Horizontal": "lift.end_h", "lift.Destination.Vertical": "lift.end_v", "lift.Destination.Turn": "lift.end_turn",
}
