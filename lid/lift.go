package lid

import (
	"math"

	"manway.example/manway"
)

// Edition says which constants of the lifting equation hold: the manual
// prints two sets, and they are not conversions of each other (23 kg is 50.7
// lb, not 51).
type Edition uint8

// The editions.
const (
	USEdition     Edition = iota // pounds and inches: 51 lb, 10/H
	MetricEdition                // kilograms and centimetres: 23 kg, 25/H
)

var editions = [...]string{"us", "metric"}

// String is us or metric.
func (e Edition) String() string { return manway.Word(editions[:], e) }

// MarshalText is the same as String.
func (e Edition) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText accepts us and metric.
func (e *Edition) UnmarshalText(text []byte) error {
	return manway.ReadWord(e, "edition", editions[:], text)
}

// Grip is how well the hands hold, by Table 6 of the manual. The zero value is
// poor.
type Grip uint8

// The grips.
const (
	PoorGrip Grip = iota // a rim, a bulky or sharp body
	FairGrip             // no good handle, but the fingers close under the load at 90 degrees
	GoodGrip             // a handle of 3/4 to 1 1/2 in, 4 1/2 in long, 2 in clear
)

var grips = [...]string{"poor", "fair", "good"}

// String is poor, fair or good.
func (g Grip) String() string { return manway.Word(grips[:], g) }

// MarshalText is the same as String.
func (g Grip) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// UnmarshalText accepts poor, fair and good.
func (g *Grip) UnmarshalText(text []byte) error { return manway.ReadWord(g, "grip", grips[:], text) }

// Spell is how long lifting goes on before rest. The zero value is short.
type Spell uint8

// The spells of lifting, each with the rest that must follow.
const (
	ShortSpell    Spell = iota // up to 1 h, then rest at least as long
	ModerateSpell              // over 1 h to 2 h, then rest of 0.3 of it
	LongSpell                  // over 2 h to 8 h
)

var spells = [...]string{"short", "moderate", "long"}

// String is short, moderate or long.
func (s Spell) String() string { return manway.Word(spells[:], s) }

// MarshalText is the same as String.
func (s Spell) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts short, moderate and long.
func (s *Spell) UnmarshalText(text []byte) error { return manway.ReadWord(s, "spell", spells[:], text) }

// Hands is where the hands are at one end of a lift: horizontally from the
// middle between the ankles, above the ground, and how far the body is turned
// to the side.
type Hands struct {
	Horizontal manway.Length // 0 to 6 ft; below 10 in (25 cm) counts as that
	Vertical   manway.Length // 0 to 8 ft
	Turn       manway.Angle  // 0 to 180 deg
}

// Lift is one lift by one person, as the revised lifting equation sees it.
type Lift struct {
	Edition     Edition
	Load        manway.Mass // 0: the limit alone
	Origin      Hands
	Destination Hands
	Control     bool    // the load must be placed with care at the destination, so that both ends count
	Frequency   float64 // lifts a minute, 0 to 60; below 0.2 counts as 0.2
	Spell       Spell
	Grip        Grip
	Outside     Outside // what of this lift the equation does not cover
}

// Validate returns every fault of l at once as [manway.InputErrors].
func (l Lift) Validate() error {
	var faults manway.InputErrors
	within(&faults, "Edition", l.Edition, editions[:])
	manway.Within(&faults, "Load", l.Load, 0, 20000*manway.Pound)
	validateHands(&faults, "Origin", l.Origin)
	validateHands(&faults, "Destination", l.Destination)
	manway.Within(&faults, "Frequency", l.Frequency, 0, 60)
	within(&faults, "Spell", l.Spell, spells[:])
	within(&faults, "Grip", l.Grip, grips[:])
	if l.Outside >= endOfOutside {
		faults.Add("Outside", "unknown condition", "the conditions of the list")
	}
	return faults.Err()
}

func validateHands(faults *manway.InputErrors, name string, r Hands) {
	if !(r.Horizontal >= 0 && r.Horizontal <= 6*manway.Foot) {
		faults.Add(name+".Horizontal", text(r.Horizontal), "0 to 6 ft")
	}
	if !(r.Vertical >= 0 && r.Vertical <= 8*manway.Foot) {
		faults.Add(name+".Vertical", text(r.Vertical), "0 to 8 ft")
	}
	// 1e-9 of slack: 180 deg read from text is a hair above pi.
	if !(r.Turn >= 0 && float64(r.Turn) <= math.Pi*(1+1e-9)) {
		faults.Add(name+".Turn", r.Turn.String(), "0 to 180 deg")
	}
}

// Standing is whether the equation gives a number.
type Standing uint8

// The standings.
const (
	NotCovered Standing = iota // the equation does not reach this lift: no number
	NoLift                     // a multiplier is 0: no weight at all is recommended
	Limited                    // there is a limit
)

var standings = [...]string{"not covered", "no lift", "limited"}

// String is not covered, no lift or limited.
func (s Standing) String() string { return manway.Word(standings[:], s) }

// MarshalText is the same as String.
func (s Standing) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Multipliers are the six factors of the equation at one end of a lift.
type Multipliers struct {
	Horizontal, Vertical, Distance, Asymmetry, Frequency, Grip float64
}

// product is all six.
func (m Multipliers) product() float64 {
	return m.Horizontal * m.Vertical * m.Distance * m.Asymmetry * m.Frequency * m.Grip
}

// EndLimit is the limit at one end of a lift.
type EndLimit struct {
	Multipliers Multipliers
	Limit       manway.Mass // at full precision
	ByHand      manway.Mass // with each multiplier to two decimals as the manual's tables print it
	Index       float64     // lifting index, load/Limit; 0 where the limit or the load is 0
	IndexByHand float64     // load over ByHand rounded to one decimal, as the manual does
}

// LiftLimit is the recommended weight limit of one lift by one person.
type LiftLimit struct {
	Standing    Standing
	Limit       manway.Mass // of the end that governs; 0 unless Standing is Limited
	ByHand      manway.Mass // the same by the manual's rounded multipliers
	Index       float64     // lifting index of that end
	IndexByHand float64     // the same by hand
	AtOrigin    EndLimit
	AtEnd       EndLimit // destination; counts only where Control is asked for
	Governs     End
	Outside     Outside // why it is not covered
	Cautions    manway.Cautions
	lift        Lift
}

// End is one end of a lift.
type End uint8

// The ends.
const (
	AtOrigin End = iota
	AtDestination
)

// String is origin or destination.
func (e End) String() string {
	if e == AtDestination {
		return "destination"
	}
	return "origin"
}

// MarshalText is the same as String.
func (e End) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// Limit is the recommended weight limit of the revised lifting equation,
//
//	RWL = LC x HM x VM x DM x AM x FM x CM,   LI = load / RWL
//
//	      US edition                metric edition
//	LC    51 lb                     23 kg
//	HM    10/H                      25/H           1 below 10 in (25 cm), 0 above 25 in (63 cm)
//	VM    1 - 0.0075 |V - 30|       1 - 0.003 |V - 75|       0 above 70 in (175 cm)
//	DM    0.82 + 1.8/D              0.82 + 4.5/D             1 below 10 in (25 cm), 0 above 70 in (175 cm)
//	AM    1 - 0.0032 A              the same                 0 above 135 degrees
//	FM    Table 5, linear between rows, V of the origin at both ends
//	CM    Table 7, V of the end itself
//
// D is the vertical distance between the hands at both ends. Where the load
// must be placed with care, both ends are computed and the lower limit counts.
// A lift with a condition in Outside is not covered and gets no number. With a
// multiplier of 0 nobody should lift at all, whatever the weight.
//
// It fails with [manway.InputErrors] as [Lift.Validate] does. Source: Pub.
// 94-110, pp. 7-29.
func (l Lift) Limit() (LiftLimit, error) {
	if err := l.Validate(); err != nil {
		return LiftLimit{}, err
	}
	r := LiftLimit{lift: l, Outside: l.Outside, Cautions: manway.LiftLimits}
	if l.Outside != 0 {
		return r, nil
	}
	r.AtOrigin = l.at(l.Origin)
	r.AtEnd = l.at(l.Destination)
	end := r.AtOrigin
	if l.Control && r.AtEnd.Limit < end.Limit {
		end, r.Governs = r.AtEnd, AtDestination
	}
	r.Limit, r.ByHand, r.Index, r.IndexByHand = end.Limit, end.ByHand, end.Index, end.IndexByHand
	r.Standing = NoLift
	if r.Limit > 0 {
		r.Standing = Limited
	}
	if l.Load > heavyLift || r.Index > 1 {
		r.Cautions |= manway.HeavyLift
	}
	return r, nil
}

// at is the limit at one end.
func (l Lift) at(end Hands) EndLimit {
	c := &constants[l.Edition]
	h, v := end.Horizontal.In(c.length), end.Vertical.In(c.length)
	origin := l.Origin.Vertical.In(c.length)
	d := math.Abs(l.Destination.Vertical.In(c.length) - origin)
	low := v < c.knuckle*(1-1e-12)
	m := Multipliers{
		Horizontal: c.horizontal(h),
		Vertical:   c.vertical(v),
		Distance:   c.distance(d),
		Asymmetry:  asymmetry(end.Turn.In(manway.Degree)),
		Frequency:  frequency(l.Frequency, l.Spell, origin < c.knuckle*(1-1e-12)),
		Grip:       gripMultiplier(l.Grip, low),
	}
	hand := Multipliers{
		Horizontal: c.printedHorizontal(h, m.Horizontal),
		Vertical:   twoDecimals(m.Vertical),
		Distance:   c.printedDistance(d, m.Distance),
		Asymmetry:  twoDecimals(m.Asymmetry),
		Frequency:  twoDecimals(m.Frequency),
		Grip:       m.Grip,
	}
	r := EndLimit{Multipliers: m, Limit: times(c.load, m.product()), ByHand: times(c.load, hand.product())}
	if r.Limit > 0 {
		r.Index = ratio(l.Load, r.Limit)
	}
	if tenths := math.Floor(r.ByHand.In(c.weight)*10+0.5+1e-9) / 10; tenths > 0 {
		r.IndexByHand = l.Load.In(c.weight) / tenths
	}
	return r
}
