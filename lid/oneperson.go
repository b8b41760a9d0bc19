package lid

import (
	"math"

	"manway.example/manway"
)

// The lift that the one-person limit is computed for: hands at the rim of the
// lid near the ground, raised by no more than counts.
const (
	rimHeight  = 6 * manway.Inch
	rimHeightM = 15 * manway.Centimetre
)

// edgeLift is the lid lifted flat at its near edge by one person.
func (l Lid) edgeLift(c MoveCase, load manway.Mass) Lift {
	k := &constants[c.Edition]
	hands := rimHeight
	if c.Edition == MetricEdition {
		hands = rimHeightM
	}
	if hands -= c.Below; hands < 0 {
		hands, c.Outside = 0, c.Outside|BelowFeet
	}
	// The manual's estimate for low hands: half the width and 10 in (25 cm).
	reach := times(k.length, k.beyondLow) + l.across()/2
	return Lift{
		Edition: c.Edition, Load: load, Grip: c.Grip, Outside: c.Outside,
		Origin:      Hands{Horizontal: reach, Vertical: hands},
		Destination: Hands{Horizontal: reach, Vertical: hands},
	}
}

// onePerson fills in the limit of the lifting equation and what stands beside
// it.
func (l Lid) onePerson(c MoveCase, m *Moves) {
	m.Alone = manway.Check{
		Name: "one person lifts the lid flat", Kind: manway.KindMass,
		Demand: float64(m.Weight.Heaviest), Unfactored: float64(m.Weight.Heaviest),
		Source: manway.Citation{Source: niosh94110, Place: "pp. 7-18, limit at the near edge"},
	}
	limit, err := l.edgeLift(c, m.Weight.Heaviest).Limit()
	if err != nil { // wider than any reach that is accepted
		limit = LiftLimit{Standing: NoLift, Cautions: manway.LiftLimits}
	}
	m.OnePerson = limit
	m.Cautions |= limit.Cautions
	switch limit.Standing {
	case NotCovered:
		m.Alone.Reason = "the lifting equation does not cover this lift: no number"
	case NoLift:
		m.Alone.Reason = "the reach is beyond the equation: a flat lid wider than 30 in has no one-person answer"
		m.Alone.Status = manway.NotPermitted
	default:
		m.Alone.Capacity = float64(limit.Limit)
		m.Alone = m.Alone.Judge()
	}
	for i := range m.Team {
		n := i + 1
		t := Team{People: n}
		if limit.Standing == Limited {
			t.Share, t.Valid = TeamByShare(n, limit.Limit)
			t.Doubling, _ = TeamByDoubling(n, limit.Limit)
		}
		m.Team[i] = t
	}
}

// hoisting fills in the tension of a sling leg and the strength of its
// hardware: with one leg the first pull, with more the first pull over two
// legs, 1/cos of the lean. A rigid lid on three or four legs hangs on two.
func (m *Moves) hoisting(s Slings) {
	legs := 1.0
	if s.Legs > 1 {
		legs = 2
	}
	lean := math.Cos(float64(s.Lean))
	if s.Legs <= 1 {
		lean = 1
	}
	m.SlingLeg = times(m.Methods[Hoist].FirstPull, 1/(legs*lean))
	m.GearLimit = hardwareFactor * m.SlingLeg
}
