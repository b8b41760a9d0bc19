package main

import (
	"manway.example/manway"
	"manway.example/manway/lid"
)

// body is the lid of a record in the terms of the library.
func (in *input) body() lid.Lid {
	l := in.Lid
	l.Overburden.Depth = in.Overburden.Depth
	l.Overburden.Soil = manway.Soil{Moist: in.Overburden.Moist, Saturated: in.Overburden.Saturated}
	return l
}

// moving is what the record says about moving it.
func (in *input) moving() lid.MoveCase {
	c := lid.MoveCase{
		Crew: in.Crew, Bond: in.Bond, Bar: in.Bar, HandHeight: in.HandHeight,
		Slings: in.Slings, Below: in.Below, Edition: in.Edition, Grip: in.Grip, Outside: in.Outside,
	}
	s := in.Seat
	c.Seat = lid.Seat{Fit: s.Fit, Opening: s.Opening, OpeningLong: s.OpeningLong, Depth: s.Depth, DrivenBy: s.DrivenBy, Chips: s.Chips}
	if s.Gap != nil {
		c.Seat.Gap, c.Seat.GapKnown = *s.Gap, true
	}
	if s.FrictionLow != 0 || s.FrictionHigh != 0 {
		c.Seat.Friction = lid.Friction{Low: s.FrictionLow, High: s.FrictionHigh}
	}
	return c
}

func (g *guard) body(c lid.Crew) lid.Guard {
	b := lid.Guard{Opening: g.Opening, Fastened: g.Fastened, Locked: g.Locked, Secondary: g.Secondary, Label: g.Label, Crew: c}
	if g.Depth != nil {
		b.Depth, b.DepthKnown = *g.Depth, true
	}
	return b
}

func (l *lift) body() lid.Lift {
	return lid.Lift{
		Edition: l.Edition, Load: l.Load, Control: l.Control, Frequency: l.Frequency,
		Spell: l.Spell, Grip: l.Grip, Outside: l.Outside,
		Origin:      lid.Hands{Horizontal: l.H, Vertical: l.V, Turn: l.Turn},
		Destination: lid.Hands{Horizontal: l.EndH, Vertical: l.EndV, Turn: l.EndTurn},
	}
}
