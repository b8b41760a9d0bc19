package lid

import "manway.example/manway"

// MoveCase is what is known about moving one lid.
type MoveCase struct {
	Seat       Seat
	Crew       Crew
	Bond       manway.Force  // declared allowance for bond, dirt and ice at the first pull, all round; 0: none declared
	Bar        Bar           // pry bar; zero: a 48 in bar on a block 4 in from its tip
	HandHeight manway.Length // of the hands when pulling along, 32 to 48 in; 0: not known
	Slings     Slings
	Below      manway.Length // ground under the lid's rim below the feet of who lifts, as in a pit, 0 to 6 ft
	Edition    Edition
	Grip       Grip
	Outside    Outside // what of this lift the lifting equation does not cover
}

// Slings are the legs of a hoist.
type Slings struct {
	Legs int          `json:"legs"` // 1 to 4; 0: one
	Lean manway.Angle `json:"lean"` // of each leg from vertical, 0 to 60 deg
}

// Moves is every way of moving one lid, and beside it what people may lift.
type Moves struct {
	Weight    Weight
	Seating   Seating
	Methods   [Hoist + 1]Method
	Least     Way // of the least first pull by hand among those possible or not excluded
	Pull      HandForce
	SlingLeg  manway.Force // tension of one sling leg; of three or four legs two carry
	GearLimit manway.Force // least rated breaking strength of one leg's hardware: 5 times
	OnePerson LiftLimit    // of the revised lifting equation, for the lid lifted flat at its edge
	Team      [3]Team      // practice rules for 1, 2 and 3 people, no part of the equation
	Alone     manway.Check // the whole weight against the one-person limit
	Bond      manway.Force // declared; where none was, every first pull is a lower bound
	SetDown   SetDown
	Cautions  manway.Cautions
	Assumed   manway.Assumptions
	// MeasureFirst is the one assumption whose measurement would change the
	// forces most: weighing the lid, else the friction.
	MeasureFirst manway.Assumptions

	friction Friction
	bar      Bar
	people   int
}

// SetDown is where the lid goes and how it comes back.
type SetDown struct {
	Clear manway.Length // clear firm ground needed beside the opening, off the roof's edge: its width and 2 ft to pass
	Hold  manway.Force  // at the near edge while it is let down on its seat: half its weight, by a bar and never by the fingers
	Rolls bool          // a round lid on edge rolls: lay it flat
}

// passage is the way left beside a lid that lies on the ground, common practice.
const passage = 2 * manway.Foot

// Team is what some people lift together by the two published rules, from the
// one-person limit where there is one.
type Team struct {
	People   int
	Share    manway.Mass // two thirds and one half of the sum
	Doubling manway.Mass // twice, and three quarters for each more
	Valid    bool        // false where there is no one-person limit
}

// Validate returns the faults of c; those of the lid are its own.
func (c MoveCase) Validate() error {
	var faults manway.InputErrors
	faults.Under("Seat", c.Seat.Validate())
	c.validateRest(&faults)
	return faults.Err()
}

func (c MoveCase) validateRest(faults *manway.InputErrors) {
	faults.Under("Crew", c.Crew.Validate())
	manway.Within(faults, "Bond", c.Bond, 0, 5000*manway.PoundForce)
	c.Bar.validate(faults)
	if c.HandHeight != 0 {
		manway.Within(faults, "HandHeight", c.HandHeight, 1*manway.Inch, 7*manway.Foot)
	}
	manway.Within(faults, "Slings.Legs", c.Slings.Legs, 0, 4)
	manway.Within(faults, "Slings.Lean", c.Slings.Lean, 0, 60*manway.Degree)
	manway.Within(faults, "Below", c.Below, 0, 6*manway.Foot)
	within(faults, "Edition", c.Edition, editions[:])
	within(faults, "Grip", c.Grip, grips[:])
	if c.Outside >= endOfOutside {
		faults.Add("Outside", "unknown condition", "the conditions of the list")
	}
}

// Move gives the force of every way of moving the lid, from the lid's weight
// W (dry to soaked where the moisture is unknown):
//
//	tip about the far edge   W/2
//	walk out                 friction x W x the turning share, about 0.57 to 0.64
//	drag                     friction x W
//	hook                     0.80 W, measured
//	fulcrum bar              0.45 to 0.51 W, measured
//	pry bar                  W/2 x load arm/effort arm
//	hoist                    W at the hook; gear rated for 5 times, inserts for 4
//
// The first pull adds the same share of the declared bond and of what a wedged
// lid holds; dragging takes all of the bond. Measured first pulls exceed this
// sum, and without a declared bond it is a lower bound. Soil on top is taken
// as cleared.
//
// Beside the methods stands the one-person limit of the revised lifting
// equation for the lid lifted flat from the ground at its near edge, the manual's
// estimate of the reach, H = 10 in + half the width: never a reach over the
// hole. Hands below the feet are not covered. A flat lid wider than 30 in has no one-person answer.
//
// It fails with [manway.InputErrors] as [Lid.Validate], [Seat.Validate] and
// [MoveCase.Validate] do.
//
// Source: statics (Serway and Beichner, ch. 5 and 12); hook and fulcrum bar
// as measured for the International Ergonomics Association, 2003; concrete
// on concrete 0.8 by the PCI Design Handbook; gear and inserts 29 CFR
// 1926.704(c) and (d).
func (l Lid) Move(c MoveCase) (Moves, error) {
	var faults manway.InputErrors
	w, err := l.weighOn(c.Seat)
	faults.Under("", err)
	c.validateRest(&faults)
	if err := faults.Err(); err != nil {
		return Moves{}, err
	}
	m := Moves{Weight: w, Bond: c.Bond, Seating: l.sit(c.Seat, w.Heaviest)}
	m.Cautions = w.Cautions | m.Seating.Cautions | manway.Insects | manway.OverheadLines
	if c.Bond == 0 {
		m.Cautions |= manway.FirstPull
	}
	m.SetDown = SetDown{Clear: l.across() + passage, Hold: w.Heaviest.Weight() / 2, Rolls: l.Shape.Round()}
	m.Assumed = w.Assumed | m.Seating.Assumed
	friction, made := c.Seat.Friction.filled()
	m.Assumed |= made
	m.friction, m.bar, m.people = friction, c.Bar.filled(), max(c.Crew.People, 1)
	for i := range m.Methods {
		m.Methods[i] = l.method(Way(i), c, friction, &m)
	}
	m.Least = m.least()
	m.MeasureFirst = firstOf(m.Assumed, manway.AssumedConcreteDensity, manway.AssumedDryLid, manway.AssumedFriction)
	m.Pull = HandForceAt(PullTwoHands, c.HandHeight)
	m.hoisting(c.Slings)
	l.onePerson(c, &m)
	return m, nil
}

// firstOf is the first of some assumptions that was made.
func firstOf(made manway.Assumptions, order ...manway.Assumptions) manway.Assumptions {
	for _, a := range order {
		if made.Has(a) {
			return a
		}
	}
	return 0
}

// method is one way of moving the lid.
func (l Lid) method(way Way, c MoveCase, friction Friction, m *Moves) Method {
	low, high, source := l.shares(way, friction, c.Bar)
	k := Method{Way: way, Source: source}
	k.Low = times(m.Weight.Now.Weight(), low)
	k.High = times(m.Weight.Heaviest.Weight(), high)
	share := high // of what holds the lid down
	switch way {
	case Drag: // the bond is broken sideways, whole
		share = 1
	case WalkOut: // turned loose, with no friction in it
		_, share = l.turning()
	}
	k.FirstPull = k.High + times(m.Seating.Extra+c.Bond, share)
	k.Possible, k.Reason = possible(way, m.Seating)
	k.Crew = c.Crew.check(k)
	return k
}

// possible says whether a way works on the seat as the lid lies.
func possible(way Way, s Seating) (manway.Answer, string) {
	switch way {
	case WalkOut, Drag:
		if s.Slide == manway.No {
			return manway.No, "let in: it must first rise out of its seat"
		}
		return s.Slide, ""
	case Tip, FulcrumBar, PryBar:
		if s.Tip == manway.No {
			return manway.No, "its far edge jams before the near edge is clear: lift it straight"
		}
		return s.Tip, ""
	case Hoist:
		return manway.Yes, "only on slings round it, or on a lifting point shown to bear four times the load"
	case Hook:
		return manway.Yes, "measured at one edge; a straight lift takes the whole weight"
	}
	return manway.Yes, ""
}

// check is the first pull of a method against what the crew says it can do.
func (c Crew) check(k Method) manway.Check {
	check := manway.Check{
		Name: k.Way.String(), Kind: manway.KindForce,
		Demand: float64(k.FirstPull), Unfactored: float64(k.FirstPull),
		Source: manway.Citation{Source: manway.Practice, Place: "the crew's own limit; in a team two thirds and one half of the sum"},
	}
	if k.Way == Hoist {
		check.Reason = "carried by the hoist, not by hands"
		return check
	}
	together, ok := c.Together()
	switch {
	case c.Limit == 0:
		check.Reason = "the crew has not said what it will lift"
		return check
	case !ok:
		check.Reason = "more than three people at one lid are not counted on"
		return check
	}
	check.Capacity = float64(together.Weight())
	if k.Possible == manway.No {
		check.Reason = k.Reason
		return check
	}
	return check.Judge()
}

// least is the hand method of the least first pull that the seat does not
// exclude.
func (m Moves) least() Way {
	best := Hoist
	for _, k := range m.Methods[:Hoist] {
		if k.Possible != manway.No && (best == Hoist || k.FirstPull < m.Methods[best].FirstPull) {
			best = k.Way
		}
	}
	return best
}
