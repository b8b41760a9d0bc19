package lid

import (
	"manway.example/manway"
	"manway.example/manway/internal/concrete"
)

// HandleState is what a look at the handle shows. The zero value is unknown.
type HandleState uint8

// The states. Only a sound handle is reckoned to be lifted on.
const (
	HandleUnknown HandleState = iota
	HandleSound
	HandleRusted // not looked at closer
	HandlePitted
	HandleNecked
	HandleLoose
	HandleMissing
)

var handleStates = [...]string{"unknown", "sound", "rusted", "pitted", "necked", "loose", "missing"}

// String is the state in words.
func (s HandleState) String() string { return manway.Word(handleStates[:], s) }

// MarshalText is the same as String.
func (s HandleState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts the words of String.
func (s *HandleState) UnmarshalText(text []byte) error {
	return manway.ReadWord(s, "handle", handleStates[:], text)
}

// Handle is a bar cast into a concrete lid: a loop of two legs, or one leg with
// an eye.
type Handle struct {
	State     HandleState     `json:"state"`
	Waist     manway.Length   `json:"waist"`     // least diameter of sound metal, loose rust off, 1/16 to 2 in; 0: not measured
	AsMade    manway.Length   `json:"as_made"`   // diameter at a protected place; 0: not known
	Legs      int             `json:"legs"`      // 1 or 2; 0: two
	Spacing   manway.Length   `json:"spacing"`   // between two legs, 1 in to 3 ft; 0: not known, taken as none
	Embedment manway.Length   `json:"embedment"` // depth of the legs' hooks in the concrete; 0: not known
	Edge      manway.Length   `json:"edge"`      // from the nearer leg to the edge of the lid; 0: not known
	Yield     manway.Pressure `json:"yield"`     // 24 to 100 ksi; 0: 36 ksi is taken
	Tensile   manway.Pressure `json:"tensile"`   // 40 to 150 ksi; 0: 58 ksi is taken
	Load      manway.Force    `json:"load"`      // greatest pull meant for it; 0: the heaviest weight of the lid
}

// The steel that is taken where the handle's is not known, that of plain
// structural bar (ASTM A36, remembered).
const (
	handleYield   = 36000 * manway.PSI
	handleTensile = 58000 * manway.PSI
)

// worn is the share of the diameter below which a handle counts as necked
// whatever it was called, common practice for lifting gear.
const worn = 0.9

// oneLeg is why a handle of one leg has no check of a bar.
const oneLeg = "one leg: no bar to bend"

// handleChecks is how many checks a HandleCheck has.
const handleChecks = 3

// HandleCheck is what a handle is shown to have. A handle is never declared fit
// by it: DoNotLift false means that arithmetic found no reason against it.
type HandleCheck struct {
	State     HandleState  // as found; necked where the measured waist says so
	Load      manway.Force // greatest pull meant for it
	Area      manway.Area  // steel left in one leg
	Left      float64      // share of the steel as made; 0 where that is not known
	Steel     manway.Force // tensile strength of the legs
	Bar       manway.Force // pull that makes the bar between the legs yield through
	Breakout  manway.Force // strength of the concrete cone
	Checks    [handleChecks]manway.Check
	DoNotLift bool
	Reason    string // why not, the first that holds
	Cautions  manway.Cautions
	Assumed   manway.Assumptions
}

// validate adds the faults of h on a lid with this thickness left.
func (h Handle) validate(faults *manway.InputErrors, left manway.Length) {
	within(faults, "Handle.State", h.State, handleStates[:])
	if h.Waist != 0 {
		manway.Within(faults, "Handle.Waist", h.Waist, manway.Inch/16, 2*manway.Inch)
	}
	if h.AsMade != 0 {
		manway.Within(faults, "Handle.AsMade", h.AsMade, manway.Inch/8, 2*manway.Inch)
		if h.Waist > h.AsMade {
			faults.Add("Handle.Waist", text(h.Waist), "at most AsMade, "+bound(h.AsMade))
		}
	}
	manway.Within(faults, "Handle.Legs", h.Legs, 0, 2)
	if h.Spacing != 0 {
		manway.Within(faults, "Handle.Spacing", h.Spacing, 1*manway.Inch, 3*manway.Foot)
	}
	if h.Embedment != 0 {
		manway.Within(faults, "Handle.Embedment", h.Embedment, 0.5*manway.Inch, 24*manway.Inch)
		if h.Embedment > left {
			faults.Add("Handle.Embedment", text(h.Embedment), "at most the thickness left, "+bound(left))
		}
	}
	manway.Within(faults, "Handle.Edge", h.Edge, 0, mostWidth)
	if h.Yield != 0 {
		manway.Within(faults, "Handle.Yield", h.Yield, 24000*manway.PSI, 100000*manway.PSI)
	}
	if h.Tensile != 0 {
		manway.Within(faults, "Handle.Tensile", h.Tensile, 40000*manway.PSI, 150000*manway.PSI)
	}
	manway.Within(faults, "Handle.Load", h.Load, 0, 20000*manway.PoundForce)
}

// CheckHandle reckons a cast-in handle by what was measured of it:
//
//	legs      Nsa = n Ase futa, Ase = pi waist2/4, futa at most 1.9 fya and 125 ksi   (ACI 318-19 17.6.1.2)
//	bar       hooked at the middle of the loop: P = 4 fy Z/spacing, Z = waist3/6
//	concrete  breakout cone of both legs, cut by the nearest edge               (17.6.2)
//
// each against 4 times the load, as inserts of precast members must carry (29
// CFR 1926.704(c)). A handle that is rusted, pitted, necked, loose, missing or not
// known must not be lifted on, whatever the figures; nor one whose waist is
// below 0.9 of its diameter as made. A lid thinner than 1.5 times the
// embedment may split before a cone breaks out: NotShown.
//
// It fails with [manway.InputErrors] as [Lid.Validate] does and for the
// handle's own fields.
//
// Source: ACI 318-19, chapter 17; 29 CFR 1926.704(c); the nine tenths of a
// waist are common practice.
func (l Lid) CheckHandle(h Handle) (HandleCheck, error) {
	var faults manway.InputErrors
	w, err := l.Weigh()
	faults.Under("", err)
	h.validate(&faults, l.left())
	if err := faults.Err(); err != nil {
		return HandleCheck{}, err
	}
	r := HandleCheck{State: h.State, Load: h.Load, Assumed: w.Assumed, Cautions: w.Cautions | manway.Screening}
	if r.Load == 0 {
		r.Load = w.Heaviest.Weight()
	}
	if h.Legs == 0 {
		h.Legs = 2
	}
	if h.State == HandleSound && h.AsMade > 0 && h.Waist > 0 && ratio(h.Waist, h.AsMade) < worn {
		r.State = HandleNecked
	}
	r.steel(h)
	r.cone(l, h)
	r.settle()
	return r, nil
}

func (r *HandleCheck) check(name string, capacity manway.Force, source manway.Citation) manway.Check {
	return manway.Check{
		Name: name, Kind: manway.KindForce, Source: source,
		Demand: float64(insertFactor * r.Load), Unfactored: float64(r.Load), Capacity: float64(capacity),
	}
}

// steel fills in the checks of the bar.
func (r *HandleCheck) steel(h Handle) {
	legs := manway.Citation{Source: manway.ACI318_19, Place: "17.6.1.2; four times by 29 CFR 1926.704(c)"}
	bar := manway.Citation{Source: manway.OSHA1926, Place: "1926.704(c)"}
	yield, tensile := h.Yield, h.Tensile
	if yield == 0 {
		yield = handleYield
		r.Assumed |= manway.AssumedSteelYield
	}
	if tensile == 0 {
		tensile = handleTensile
	}
	tensile = min(tensile, 1.9*yield, 125000*manway.PSI)
	d := float64(h.Waist)
	r.Area = manway.Area(discArea(d))
	if h.AsMade > 0 {
		left := ratio(h.Waist, h.AsMade)
		r.Left = left * left
	}
	r.Steel = manway.Force(float64(h.Legs) * float64(r.Area) * float64(tensile))
	r.Checks[0] = r.check("steel of the legs", r.Steel, legs).Judge()
	r.Checks[1] = r.check("bar between the legs", 0, bar)
	switch {
	case h.Legs == 1:
		r.Checks[1].Reason = oneLeg
	case h.Spacing == 0:
		r.Checks[1].Reason = "the spacing of the legs was not measured"
	default:
		r.Bar = manway.Force(4 * float64(yield) * d * d * d / 6 / float64(h.Spacing))
		r.Checks[1] = r.check("bar between the legs", r.Bar, bar).Judge()
	}
	if h.Waist == 0 {
		for i := range r.Checks[:2] {
			r.Checks[i].Status, r.Checks[i].Reason = manway.NotJudged, "the waist of the bar was not measured"
		}
	}
}

// cone fills in the check of the concrete.
func (r *HandleCheck) cone(l Lid, h Handle) {
	source := manway.Citation{Source: manway.ACI318_19, Place: "17.6.2; four times by 29 CFR 1926.704(c)"}
	r.Checks[2] = r.check("concrete breakout", 0, source)
	c := &r.Checks[2]
	switch {
	case l.Material != OfConcrete:
		c.Reason = "only concrete is judged"
		return
	case h.Embedment == 0:
		c.Reason = "the embedment is not known"
		return
	case h.Edge == 0:
		c.Reason = "the distance to the edge was not measured"
		return
	}
	known, made := l.Concrete.Filled()
	r.Assumed |= made
	if made&manway.AssumedConcreteStrength != 0 {
		r.Cautions |= manway.UnknownStrength
	}
	reach := 1.5 * h.Embedment
	across := reach + min(h.Edge, reach)
	along := 2 * reach
	if h.Legs == 2 {
		along += min(h.Spacing, 2*reach)
	}
	strength, err := concrete.Breakout{
		Concrete: known, Embedment: h.Embedment, Edge: h.Edge,
		Area: min(across, l.across()).Times(min(along, l.across())),
	}.Strength()
	if err != nil {
		c.Reason = "beyond the range of the breakout formula"
		return
	}
	r.Breakout = strength.Nominal
	*c = r.check("concrete breakout", r.Breakout, source).Judge()
	if c.Status == manway.Pass && l.left() < reach {
		c.Status, c.Reason = manway.NotShown, "the lid is thinner than 1.5 times the embedment: it may split first"
	}
}

// notFour says of each check that it fails.
var notFour = [handleChecks]string{
	"the legs are not shown to carry four times the load",
	"the bar between the legs is not shown to carry four times the load",
	"the concrete is not shown to hold four times the load",
}

// settle says whether not to lift on it, and why.
func (r *HandleCheck) settle() {
	switch {
	case r.State == HandleUnknown:
		r.Reason = "its state is not known"
	case r.State != HandleSound:
		r.Reason = r.State.String()
	}
	if r.Reason != "" {
		for i := range r.Checks {
			if c := &r.Checks[i]; c.Status == manway.Pass {
				c.Status, c.Reason = manway.NotShown, "the handle is not sound: figures for comparison"
			}
		}
	}
	for i := 0; r.Reason == "" && i < len(r.Checks); i++ {
		c := r.Checks[i]
		switch {
		case c.Status == manway.Fail:
			r.Reason = notFour[i]
		case c.Status != manway.Pass && c.Reason != oneLeg:
			r.Reason = c.Reason
		}
	}
	if r.Reason != "" {
		r.DoNotLift = true
		r.Cautions |= manway.DoNotLiftByHandle
	}
}
