package concrete

import "manway.example/manway"

// Strip is a metre of an existing slab or wall, bent so that one face is
// pulled. It is judged as it stands today: by the thickness that is left, the
// cover that is left and the bars as they are now.
//
// What may be counted follows from what is known of its steel:
//
//	known, at or above the least    reinforced concrete
//	known, below the least or bare  the lower of reinforced and plain, as plain
//	none                            plain concrete
//	unknown                         nothing; what it would carry plain is given for comparison
//
// Plain concrete is permitted only where it is supported all along (ACI 318-19
// 14.1.3). Steel below the least of 7.6.1.1 and 8.6.1.1, or wider apart than
// 7.7.2.3 allows, breaks as the concrete cracks, so that it is plain concrete.
// Steel that is laid bare has no bond that arithmetic can show.
type Strip struct {
	Concrete  manway.Concrete
	Thickness manway.Length // that is left, 0.5 to 60 in
	Lost      manway.Length // worn off the pulled face, out of Steel.Cover; 0 to 24 in
	Steel     manway.Reinforcement
	// Inner says that the bars lie behind crossing bars of the same diameter,
	// which leaves one diameter less to work with.
	Inner bool
	// Supported says that the member is supported all along, so that chapter
	// 14 lets plain concrete carry: a floor on the ground.
	Supported   bool
	AgainstSoil bool // cast against soil: as plain concrete 2 in less
}

// Standing says what a strength counts on.
type Standing struct {
	Counts  manway.Status // Pass: Design may be judged by; else NotShown or NotPermitted
	Reason  string        // why not, empty where Counts is Pass
	Plain   bool          // Design is that of plain concrete
	Made    manway.Assumptions
	Warn    manway.Cautions
	Source  manway.Citation
	Phi     float64
	Design  float64 // per metre of width: N m/m, N/m; or N where a load punches
	AsPlain float64 // what it would carry plain, for comparison
}

// Reasons why a strength does not count.
const (
	ReasonUnknown = "cannot be shown by arithmetic: the steel is not known. Look for bars or mesh at an opening's edge or a spall, " +
		"have a cover meter or a core read it, or find the maker's drawing; else a load test (ACI 318-19 chapter 27)"
	ReasonPlain  = "plain concrete that spans free is not permitted by ACI 318-19 14.1.3: the figure is for comparison only"
	ReasonFew    = "the steel is below the least of ACI 318-19 7.6.1.1 or too far apart, so it counts as plain concrete, which may not span free (14.1.3): the figure is for comparison only"
	ReasonBare   = "cannot be shown by arithmetic: the steel is laid bare, and its bond cannot be counted on; a load test or an engineer's reading (ACI 318-19 chapter 27)"
	ReasonDepth  = "cannot be shown by arithmetic: what is left of the slab does not hold the steel as given"
	ReasonWeak   = "concrete below the 2,500 psi of ACI 318-19 Table 19.2.1.1 is not structural concrete: the figure is for comparison only"
	placeBending = "22.3, 21.2.2"
	placeShear   = "Table 22.5.5.1(c)"
	placePunch   = "22.6.5"
)

// Validate returns the faults of s.
func (s Strip) Validate() error {
	var faults manway.InputErrors
	if err := s.Concrete.Validate(); err != nil {
		faults.Under("Concrete", err)
	}
	least := 0.5 * manway.Inch
	if s.AgainstSoil {
		least += SoilAllowance
	}
	manway.Within(&faults, "Thickness", s.Thickness, least, 60*manway.Inch)
	manway.Within(&faults, "Lost", s.Lost, 0, 24*manway.Inch)
	if err := s.Steel.Validate(); err != nil {
		faults.Under("Steel", err)
	}
	return faults.Err()
}

// EffectiveDepth is d, from the pressed face to the middle of the bars: the
// thickness that is left, less the cover that is left, less half a bar, or one
// and a half where the bars are inner. It may be negative.
func (s Strip) EffectiveDepth() manway.Length {
	d := s.Thickness - (s.Steel.Cover - s.Lost) - s.Steel.Diameter/2
	if s.Inner {
		d -= s.Steel.Diameter
	}
	return d
}

// plain is the strip as plain concrete, a metre wide.
func (s Strip) plain() Plain {
	return Plain{s.Concrete, manway.Metre, s.Thickness, s.AgainstSoil}
}

// section is the strip as reinforced concrete, a metre wide.
func (s Strip) section() Section {
	return Section{
		Concrete: s.Concrete, Width: manway.Metre, Depth: s.EffectiveDepth(),
		Steel: AreaPerWidth(s.Steel.Diameter, s.Steel.Spacing).Times(manway.Metre), Yield: s.Steel.Yield,
	}
}

// standing says what may be counted, and whether the reinforced figure exists.
func (s Strip) standing() (st Standing, reinforced bool) {
	_, st.Made = s.Concrete.Filled()
	if s.Concrete.Strength == 0 {
		st.Warn |= manway.UnknownStrength
	}
	st.Counts, st.Plain, st.Phi = manway.Pass, true, PhiPlain
	withhold := func(status manway.Status, reason string) {
		if !s.Supported { // there plain concrete is permitted, and steel can only add
			st.Counts, st.Reason = status, reason
		}
	}
	switch steel := s.Steel; steel.State {
	case manway.SteelNone:
		withhold(manway.NotPermitted, ReasonPlain)
	case manway.SteelKnown:
		if steel.Yield == 0 {
			st.Made |= manway.AssumedSteelYield
		}
		section := s.section()
		reinforced = section.Validate() == nil
		area := AreaPerWidth(steel.Diameter, steel.Spacing)
		switch apart := min(3*s.Thickness, 18*manway.Inch); {
		case !reinforced:
			withhold(manway.NotShown, ReasonDepth)
		case steel.Cover <= s.Lost:
			withhold(manway.NotShown, ReasonBare)
		case !manway.Reached(area, LeastSlabRatio*s.Thickness) || !manway.Reached(apart, steel.Spacing):
			withhold(manway.NotPermitted, ReasonFew)
		default:
			st.Plain = false
		}
	default:
		st.Warn |= manway.UnknownStrength
		st.Made |= manway.AssumedNoSteel
		withhold(manway.NotShown, ReasonUnknown)
	}
	if s.Concrete.Strength != 0 && !manway.Reached(s.Concrete.Strength, LeastStrength) && st.Counts == manway.Pass {
		st.Counts, st.Reason = manway.NotPermitted, ReasonWeak
	}
	return st, reinforced
}

// settle puts the figures in: the reinforced one where it counts, the lower
// where the section counts as plain and spans free, none where the steel is not
// known. What is supported all along has at least its figure as plain concrete.
func (s Strip) settle(st *Standing, plain, reinforced, phi float64, hasSteel bool, place string) {
	st.AsPlain = plain
	st.Source = manway.Citation{Source: manway.ACI318_19, Place: "14.5"}
	switch {
	case st.Reason == ReasonUnknown:
		return
	case !st.Plain && !(s.Supported && plain > reinforced):
		st.Plain, st.Design, st.Phi, st.Source.Place = false, reinforced, phi, place
	case hasSteel && !s.Supported && reinforced < plain:
		st.Design = reinforced
	default:
		st.Plain, st.Design = true, plain
	}
}

// Bending is phi Mn per metre of width, in N m/m.
func (s Strip) Bending() (Standing, error) {
	if err := s.Validate(); err != nil {
		return Standing{}, err
	}
	st, ok := s.standing()
	var f Flexure
	if ok {
		f = s.section().flexure()
	}
	s.settle(&st, float64(s.plain().flexure().Design), float64(f.Design), f.Phi, ok, placeBending)
	return st, nil
}

// Shear is phi Vn in one-way shear per metre of width, in N/m.
func (s Strip) Shear() (Standing, error) {
	if err := s.Validate(); err != nil {
		return Standing{}, err
	}
	st, ok := s.standing()
	var v Shear
	if ok {
		v = s.section().oneWayShear()
	}
	s.settle(&st, float64(s.plain().shear().Design), float64(v.Design), PhiShear, ok, placeShear)
	return st, nil
}

// Punching is phi Vn, in N, against a load on a rectangle of the strip.
func (s Strip) Punching(length, width manway.Length, at Position) (Standing, error) {
	var faults manway.InputErrors
	faults.Under("", s.Validate())
	p := Punching{s.Concrete, length, width, s.plain().counted(), at}
	if err := p.Validate(); err != nil && len(faults) == 0 {
		faults = append(faults, err.(manway.InputErrors)...)
	}
	if len(faults) > 0 {
		return Standing{}, faults
	}
	st, ok := s.standing()
	plain := p.plainStrength()
	var v Shear
	if ok {
		p.Depth = s.EffectiveDepth()
		v = p.strength()
	}
	s.settle(&st, float64(plain.Design), float64(v.Design), PhiShear, ok, placePunch)
	return st, nil
}

// Judge judges the demand of c, whose combination, kind, name and unfactored
// demand stand already, by the strength: Pass or Fail only where it counts,
// else the status and reason of the strength, its figures for comparison.
func (st Standing) Judge(c manway.Check) manway.Check {
	c.Capacity, c.Phi, c.Source = st.Design, st.Phi, st.Source
	c = c.Judge()
	if st.Counts != manway.Pass {
		c.Status, c.Reason = st.Counts, st.Reason
	}
	return c
}
