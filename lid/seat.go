package lid

import (
	"math"

	"manway.example/manway"
)

// Fit is how a lid lies on its seat. The zero value is unknown.
type Fit uint8

// The fits.
const (
	FitUnknown Fit = iota
	OnTop          // lies flat on a roof or rim, nothing round it
	LetIn          // in a straight recess of Depth
	Bevel          // a bevelled plug or tapered slab in a seat of the same bevel
	Step           // its lower part in the hole, its flange on the rim
)

var fits = [...]string{"unknown", "on top", "let in", "bevel", "step"}

// String is unknown, on top, let in, bevel or step.
func (f Fit) String() string { return manway.Word(fits[:], f) }

// MarshalText is the same as String.
func (f Fit) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText accepts the words of String.
func (f *Fit) UnmarshalText(text []byte) error { return manway.ReadWord(f, "fit", fits[:], text) }

// Friction is the range of the coefficient of friction between lid and seat or
// ground. The zero value is concrete on concrete, 0.6 to 0.8.
type Friction struct {
	Low, High float64 // 0.05 to 1.5
}

// The friction of concrete on concrete: the handbook's 0.8 holds something
// still; dragging is predicted from 0.6 up.
const (
	lowFriction  = 0.6
	highFriction = 0.8
)

// filled is f, or concrete on concrete.
func (f Friction) filled() (Friction, manway.Assumptions) {
	if f == (Friction{}) {
		return Friction{lowFriction, highFriction}, manway.AssumedFriction
	}
	return f, 0
}

// Validate returns the faults of f.
func (f Friction) Validate() error {
	var faults manway.InputErrors
	if f != (Friction{}) {
		manway.Within(&faults, "Low", f.Low, 0.05, 1.5)
		manway.Within(&faults, "High", f.High, 0.05, 1.5)
		if f.Low > f.High {
			faults.Add("Low", number(f.Low), "at most High, "+number(f.High))
		}
	}
	return faults.Err()
}

// Seat is where a lid lies.
type Seat struct {
	Fit         Fit
	Opening     manway.Length // clear diameter or short side of the hole, at its narrowest; 0: not known
	OpeningLong manway.Length // long side of a rectangular hole; 0: a round one
	Depth       manway.Length // how deep the lid is let in; 0: its thickness, or what is below its flange
	Gap         manway.Length // play between lid and recess, both sides together; meaningful only where GapKnown
	GapKnown    bool
	Friction    Friction
	DrivenBy    manway.Mass // that has pressed a bevelled lid into its seat, a person or a wheel; 0: its own weight
	Chips       []Chip
}

// Validate returns the faults of s for any lid.
func (s Seat) Validate() error {
	var faults manway.InputErrors
	within(&faults, "Fit", s.Fit, fits[:])
	manway.Within(&faults, "Opening", s.Opening, 0, mostWidth)
	manway.Within(&faults, "OpeningLong", s.OpeningLong, 0, mostLength)
	if s.OpeningLong != 0 && s.OpeningLong < s.Opening {
		faults.Add("OpeningLong", text(s.OpeningLong), "at least the Opening, "+bound(s.Opening))
	}
	manway.Within(&faults, "Depth", s.Depth, 0, mostThick)
	manway.Within(&faults, "Gap", s.Gap, 0, 12*manway.Inch)
	faults.Under("Friction", s.Friction.Validate())
	manway.Within(&faults, "DrivenBy", s.DrivenBy, 0, 20000*manway.Pound)
	validateChips(&faults, s.Chips)
	return faults.Err()
}

// Leaving is the way a lid must leave its seat.
type Leaving uint8

// The ways out of a seat.
const (
	LeavesUnknown Leaving = iota // the fit or the play is not known
	SlidesOut                    // slid or walked out as it lies
	TipsOut                      // tipped about its far edge, then slid
	LiftsStraight                // lifted straight up: it neither slides nor tips
)

var leavings = [...]string{"not known", "slide or walk it out", "tip it, then slide it", "lift it straight up"}

// String is the way in words.
func (l Leaving) String() string { return manway.Word(leavings[:], l) }

// MarshalText is the same as String.
func (l Leaving) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// leaving is the way out by what the seat lets it do.
func (r *Seating) leaving() Leaving {
	switch {
	case r.Slide == manway.Yes:
		return SlidesOut
	case r.Tip == manway.Yes:
		return TipsOut
	case r.Slide == manway.No && r.Tip == manway.No:
		return LiftsStraight
	}
	return LeavesUnknown
}

// Seating is how a lid can leave its seat.
type Seating struct {
	Leaves   Leaving
	Rise     manway.Length // straight lift before it can slide; 0 where it lies on top or the fit is unknown
	Slide    manway.Answer // can it be slid as it lies
	Walk     manway.Answer // can it be walked out as it lies
	Tip      manway.Answer // can it be tipped about its far edge
	TipGap   manway.Length // play that tipping needs in a recess or step
	Bevel    manway.Angle  // of the side, from vertical; 0 where straight
	Wedges   manway.Answer // does the bevel hold it by friction; unknown within the friction range
	Extra    manway.Force  // most that a wedged lid adds to its weight at the first pull
	Falls    manway.Answer // can it fall through its hole, turned any way
	Rim      Rim
	Cautions manway.Cautions
	Assumed  manway.Assumptions
}

// Sit says how a lid can leave its seat.
//
// A lid on top can be slid and walked. Let in, stepped or bevelled it must
// first rise by the depth it is let in. It can be tipped about its far edge
// where its near lower corner clears the recess:
//
//	let in     gap >= D (1/sqrt(1 - (d/D)2) - 1)        pivot on the far lower edge
//	step       gap >= sqrt(X2 + p2) - X, X = (D + b)/2   pivot on the flange's far edge
//	bevelled   tan(bevel) >= t/(D - run), run = (D - b)/2
//
// with D the width on top, b below, d the depth let in, p the depth of the
// lower part, t the thickness. A bevel whose tangent is at most the friction
// holds by itself. Pressed in by a force S (its weight and DrivenBy), it adds
//
//	S (mu cos a - sin a)/(mu cos a + sin a)
//
// to its weight at the first pull. It fails with [manway.InputErrors] as
// [Lid.Validate] and [Seat.Validate] do, and where a fit does not suit the
// shape. Geometry and statics; no published test covers the wedge.
//
// Source: geometry; a rectangle in a rectangle after Carver 1957; concrete
// on concrete 0.8 by the PCI Design Handbook.
func (l Lid) Sit(s Seat) (Seating, error) {
	w, err := l.weighOn(s)
	if err != nil {
		return Seating{}, err
	}
	return l.sit(s, w.Heaviest), nil
}

// weighOn validates lid and seat together and weighs the lid.
func (l Lid) weighOn(s Seat) (Weight, error) {
	var faults manway.InputErrors
	w, err := l.Weigh()
	faults.Under("", err)
	faults.Under("Seat", s.Validate())
	if err == nil {
		s.suits(&faults, l)
	}
	return w, faults.Err()
}

// suits adds the faults of a seat that does not belong to the lid.
func (s Seat) suits(faults *manway.InputErrors, l Lid) {
	bevelled := l.Shape == BevelledPlug || l.Shape == TaperedSlab
	if s.Fit == Bevel && !bevelled {
		faults.Add("Seat.Fit", s.Fit.String(), "a bevelled plug or tapered slab, not a "+l.Shape.String())
	}
	if s.Fit == Step && !l.Shape.stepped() {
		faults.Add("Seat.Fit", s.Fit.String(), "a stepped plug or slab, not a "+l.Shape.String())
	}
	if s.Depth > l.Thickness && s.Fit != LetIn {
		faults.Add("Seat.Depth", text(s.Depth), "at most the lid's thickness, "+bound(l.Thickness))
	}
}

// depth is how deep the lid is let in.
func (s Seat) depth(l Lid) manway.Length {
	switch {
	case s.Fit == OnTop || s.Fit == FitUnknown:
		return 0
	case s.Depth > 0:
		return s.Depth
	case s.Fit == Step:
		return l.Thickness - l.Flange
	}
	return l.Thickness
}

func (l Lid) sit(s Seat, heaviest manway.Mass) Seating {
	r := Seating{Rise: s.depth(l), Cautions: manway.GuardHole | manway.NeverEnter | manway.FingersAndFeet}
	switch s.Fit {
	case OnTop:
		r.Slide, r.Walk, r.Tip = manway.Yes, manway.Yes, manway.Yes
	case LetIn, Step, Bevel:
		r.Slide, r.Walk = manway.No, manway.No
		l.tipping(s, &r)
	}
	r.Leaves = r.leaving()
	if s.Fit == Bevel {
		l.wedging(s, heaviest, &r)
	}
	r.Falls = l.falls(s)
	r.Rim = l.rim(s)
	if r.Falls == manway.Yes {
		r.Cautions |= manway.KeepOffRoof
	}
	return r
}

// tipping fills in whether the lid can be tipped out of its recess.
func (l Lid) tipping(s Seat, r *Seating) {
	D, b, t := float64(l.across()), float64(l.under()), float64(l.Thickness)
	d := float64(r.Rise)
	switch {
	case s.Fit == Bevel:
		run := (D - b) / 2
		r.Tip = answer(manway.Reached(run/t, t/(D-run)))
		return
	case s.Fit == Step:
		x := (D + b) / 2
		r.TipGap = manway.Length(math.Hypot(x, d) - x)
	case d < D:
		r.TipGap = manway.Length(D * (1/math.Sqrt(1-d/D*d/D) - 1))
	default:
		r.Tip = manway.No // deeper than it is wide
		return
	}
	if s.GapKnown {
		r.Tip = answer(manway.Reached(s.Gap, r.TipGap))
	}
}

// wedging fills in whether the bevel holds the lid by friction.
func (l Lid) wedging(s Seat, heaviest manway.Mass, r *Seating) {
	run := float64(l.across()-l.under()) / 2
	r.Bevel = manway.Angle(math.Atan2(run, float64(l.Thickness)))
	friction, made := s.Friction.filled()
	r.Assumed |= made
	tan := run / float64(l.Thickness)
	switch {
	case tan <= friction.Low:
		r.Wedges = manway.Yes
	case tan > friction.High:
		r.Wedges = manway.No
	}
	if tan < friction.High {
		pressed := heaviest.Weight() + s.DrivenBy.Weight()
		sin, cos := math.Sincos(float64(r.Bevel))
		mu := friction.High
		r.Extra = times(pressed, (mu*cos-sin)/(mu*cos+sin))
	}
}
