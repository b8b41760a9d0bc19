package lid

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
)

// StrengthCase is a lid on its seat and what may come on it. The zero value is
// one person on a lid of unknown steel over an opening that was not measured,
// taken as wide as the lid.
type StrengthCase struct {
	Seat   Seat
	Steel  manway.Reinforcement // near the underside, the same both ways; cover from the underside as made
	Person manway.Person
	People int           // at once, 1 to 10; 0: one
	Gear   manway.Mass   // tools and hose set on it, 0 to 2,000 lb
	Fall   manway.Length // height from which a person may come down on it, 0 to 20 ft; 0: no fall is judged
	Wheels []manway.Wheel
	// Bevelled and stepped lids bear on their sides or flange; a lid that lies on
	// a whole rim bears all round. Chips in Seat take part of it away.
}

// Strength is an unreviewed screening of a lid as a thin plate on its seat:
// the worn section, the loads on it one by one, and the ways in which it can
// fail.
type Strength struct {
	Left      manway.Length // thickness that is left
	Span      manway.Length // between bearings: of a disc its diameter
	Long      manway.Length // the same along a slab; 0 for a disc
	Dead      manway.Force  // the lid at its heaviest and the soil on it
	Chipped   bool          // the seat is broken: borne on three points, or on two sides
	Falls     manway.Answer // can it fall through its hole, turned any way
	Checks    []manway.Check
	Governs   int         // index of the check that governs, -1 where none ran
	Heaviest  manway.Mass // person, standing still, that brings the governing Use to 1
	Known     bool        // Heaviest is known: every check of a person ran
	NotJudged []manway.Check
	Solved    Solved
	Assumed   manway.Assumptions
	Cautions  manway.Cautions

	judged judge
}

// Solved says how the bending moments were found.
type Solved struct {
	Closed    bool    // in closed form, a disc on a whole seat
	Unknowns  int     // of the finest mesh
	Error     float64 // relative, of the governing moment
	Residual  float64
	Converged bool
}

// Validate returns the faults of c for any lid.
func (c StrengthCase) Validate() error {
	var faults manway.InputErrors
	faults.Under("Seat", c.Seat.Validate())
	faults.Under("Steel", c.Steel.Validate())
	faults.Under("Person", c.Person.Validate())
	manway.Within(&faults, "People", c.People, 0, 10)
	manway.Within(&faults, "Gear", c.Gear, 0, 2000*manway.Pound)
	manway.Within(&faults, "Fall", c.Fall, 0, 20*manway.Foot)
	manway.Within(&faults, "Wheels", len(c.Wheels), 0, 6)
	for i, w := range c.Wheels {
		faults.Under(fmt.Sprintf("Wheels[%d]", i), w.Validate())
	}
	return faults.Err()
}

// strip is the lid as a section, its underside pulled.
func (l Lid) strip(steel manway.Reinforcement) concrete.Strip {
	return concrete.Strip{Concrete: l.Concrete, Thickness: l.left(), Lost: l.Loss, Steel: steel, Inner: steel.State == manway.SteelKnown}
}

// thinnestJudged is the thickness below which no section is judged.
const thinnestJudged = 0.5 * manway.Inch

// Strength screens a worn lid where it lies:
//
//	own weight   1.4 D, soaked or dry as given, with the soil on it
//	person       1.2 D + 1.6 L, standing still on one boot
//	step         the same with twice the person: a load put on at once
//	hole cover   D + 2 (people + gear) against the nominal strength, as 29 CFR
//	             1926.502(i)(2) asks of a cover over a hole
//	fall         D + n L, n = 1 + sqrt(1 + 2 h/w), all the energy into the lid: an
//	             upper bound, so that it shows what passes and nothing else
//	wheels       1.2 D + 1.6 L with impact
//
// each in bending; people and wheels also in shear at the seat and punching. A
// disc on a whole seat is solved in closed form, the load at its centre, a slab
// as a plate that can lift off its seat. On a chipped seat a disc is taken to
// rest on three points, with a person in the middle or at the rim between two of
// them, which also lets it tip, and a slab on its two short sides. Where a chip is
// longer than a third of the rim, or less than half the rim is whole, nothing is
// shown. One of several pieces bears on its two ends; pieces of a round lid are
// NotJudged.
//
// What counts follows from what is known of the steel: unknown steel is
// NotShown, a plain lid that spans free NotPermitted, with figures for
// comparison only. Lids of other materials are NotJudged: keep off.
//
// A lid that goes through its opening is no error: it fails the first check.
//
// Errors: [manway.InputErrors] as [Lid.Validate] and [StrengthCase.Validate] do.
// Sources: Timoshenko and Woinowsky-Krieger; ACI 318-19; 29 CFR 1926.502(i).
func (l Lid) Strength(c StrengthCase) (Strength, error) {
	var faults manway.InputErrors
	w, err := l.weighOn(c.Seat)
	faults.Under("", err)
	if err := c.Validate(); err != nil && len(faults) == 0 {
		faults = append(faults, err.(manway.InputErrors)...)
	}
	if err := faults.Err(); err != nil {
		return Strength{}, err
	}
	s := Strength{
		Left: l.left(), Governs: -1, Falls: l.falls(c.Seat), Assumed: w.Assumed,
		Cautions: w.Cautions | manway.Screening | manway.LocalCode | manway.GuardHole | manway.NeverEnter,
	}
	s.fit(l, c)
	if reason := s.notJudged(l); reason != "" {
		s.Cautions |= manway.KeepOffRoof
		s.NotJudged = append(s.NotJudged, manway.Check{Name: "strength", Reason: reason})
		return s, nil
	}
	j := judge{l: l, c: c, s: &s, weight: w}
	if err := j.run(); err != nil {
		return Strength{}, err
	}
	s.judged = j
	s.judged.s = nil
	return s, nil
}

// notJudged says why a lid's strength is not judged, or is empty.
func (s *Strength) notJudged(l Lid) string {
	switch {
	case l.Material != OfConcrete:
		return "the strength of a lid of " + l.Material.String() + " is not judged by its size: keep off"
	case l.Shape.Round() && l.Pieces > 1:
		return "the pieces of a round lid are not judged: keep off"
	case s.Left < thinnestJudged:
		return "less than 1/2 in is left: keep off"
	case s.Left > s.Span/2:
		return "thicker than half its span: it does not bend as a plate does"
	}
	return ""
}

// fit fills in how the lid lies: its spans and whether it can fall.
func (s *Strength) fit(l Lid, c StrengthCase) {
	rim := l.rim(c.Seat)
	s.Chipped = !rim.NotKnown && rim.Whole < 1
	// from the middle of the bearing on one side to that on the other
	middle := func(lid, hole manway.Length) manway.Length {
		if hole == 0 || hole >= lid {
			return lid
		}
		return min(hole+s.Left, (lid+hole)/2)
	}
	across := l.across()
	if l.Shape == BevelledPlug || l.Shape == TaperedSlab {
		across = (across + l.under()) / 2 // it bears on its sides
	}
	s.Span = middle(across, c.Seat.Opening)
	if !l.Shape.Round() {
		long := c.Seat.OpeningLong
		if long == 0 {
			long = c.Seat.Opening
		}
		s.Long = middle(l.Length, long)
	}
	if c.Seat.Opening == 0 {
		s.NotJudged = append(s.NotJudged, manway.Check{Name: "opening", Reason: "not measured: the lid is taken to span all its width"})
	}
	check := manway.Check{Name: "cannot fall through its hole", Source: manway.Citation{Source: carver, Place: "a rectangle through a rectangle"}}
	switch s.Falls {
	case manway.Yes:
		check.Status, check.Reason = manway.Fail, "turned, it goes through"
		s.Cautions |= manway.KeepOffRoof
	case manway.No:
		check.Status = manway.Pass
	default:
		check.Reason = "the opening was not measured"
	}
	s.Checks = append(s.Checks, check)
}

// Basis is where the screening comes from.
func (Strength) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: timoshenko, Place: "articles 16, 17 and 64"},
		{Source: manway.ACI318_19, Place: "14.5, 21.2, 22.3, 22.5, 22.6, chapter 27"},
		manway.DeadLive.Source(),
		{Source: manway.OSHA1926, Place: "1926.502(i)(2)"},
		{Source: manway.AASHTOLRFD, Place: "3.6.1.2, 3.6.2.2"},
	}
}
