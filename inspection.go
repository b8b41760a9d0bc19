package manway

// Sounding is how concrete sounds under a hammer.
type Sounding uint8

// The sounds. The zero value was not sounded.
const (
	NotSounded Sounding = iota
	Ringing
	Dull
	Hollow
	Crumbling
)

var soundings = [...]string{"not sounded", "ringing", "dull", "hollow", "crumbling"}

// String is the sound in words.
func (s Sounding) String() string { return Word(soundings[:], s) }

// MarshalText is the same as String.
func (s Sounding) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts the words of String.
func (s *Sounding) UnmarshalText(text []byte) error {
	return ReadWord(s, "sounding", soundings[:], text)
}

// Probe is how far a screwdriver goes into concrete, pushed by hand: how deep it
// is soft. Sewer concrete may look whole and be soft.
type Probe uint8

// The depths. The zero value was not probed.
const (
	NotProbed Probe = iota
	ProbeScratches
	ProbeQuarter
	ProbeHalf
	ProbeInch
	ProbeDeeper
)

var probes = [...]string{"not probed", "only scratches", "up to 1/4 in", "up to 1/2 in", "up to 1 in", "more than 1 in"}

// String is the depth in words.
func (p Probe) String() string { return Word(probes[:], p) }

// MarshalText is the same as String.
func (p Probe) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText accepts the words of String.
func (p *Probe) UnmarshalText(text []byte) error {
	return ReadWord(p, "probe", probes[:], text)
}

// Bars is what is to be seen of the bars or wires in concrete.
type Bars uint8

// The states of the bars. The zero value was not looked at.
const (
	BarsNotLooked Bars = iota
	BarsNone           // none shows
	BarsStained        // rust stains or a crack along a bar
	BarsBare           // bars show
	BarsThinned        // they have lost section
)

var barStates = [...]string{"not looked", "none seen", "stained", "bare", "lost section"}

// String is the state in words.
func (b Bars) String() string { return Word(barStates[:], b) }

// MarshalText is the same as String.
func (b Bars) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText accepts the words of String.
func (b *Bars) UnmarshalText(text []byte) error {
	return ReadWord(b, "bars", barStates[:], text)
}

// Edge is how thick a roof looks at the edge of an opening.
type Edge uint8

// The classes of thickness. The zero value was not seen.
const (
	EdgeNotSeen Edge = iota
	EdgeThin
	EdgeThree
	EdgeFour
	EdgeSix
)

var edges = [...]string{"not seen", "under 3 in", "3 to 4 in", "4 to 6 in", "6 in and more"}

// String is the class in words.
func (e Edge) String() string { return Word(edges[:], e) }

// MarshalText is the same as String.
func (e Edge) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText accepts the words of String.
func (e *Edge) UnmarshalText(text []byte) error {
	return ReadWord(e, "edge", edges[:], text)
}

// Thickness is what is reckoned with: the lower end of the class, 2 in for
// anything under 3 in. ok is false where the edge was not seen. Common practice.
func (e Edge) Thickness() (t Length, ok bool) {
	taken := [...]Length{EdgeThin: 2 * Inch, EdgeThree: 3 * Inch, EdgeFour: 4 * Inch, EdgeSix: 6 * Inch}
	if int(e) >= len(taken) || e == EdgeNotSeen {
		return 0, false
	}
	return taken[e], true
}

// Inspection is what hammer, screwdriver and eye say of concrete whose loss
// nobody can measure. The zero value is concrete that nobody tried, which is
// taken as dull.
type Inspection struct {
	Sounding Sounding
	Probe    Probe
	Bars     Bars
}

// Unsound is the concrete and steel that do not count.
type Unsound struct {
	Depth   Length  // of concrete from the inspected face
	AtLeast bool    // it may be more: a licensed engineer's reading is wanted
	Bars    float64 // share of the bars' area that counts, 1 where nothing was seen
	Bare    bool    // bars show: what cover they had is gone
	Assumed Assumptions
}

// What each pick stands for.
const (
	dullDepth      = 0.4 * Inch // the mortar of medium scaling goes to this depth
	crumblingDepth = 0.8 * Inch // very severe scaling goes deeper than this
	usualBarCover  = 1.5 * Inch // of bars in concrete exposed to weather or earth, where a delamination lies
	corrodedBars   = 0.88       // of the area: beyond a loss of 12 percent bars break without stretching
	thinnestLeft   = 0.5 * Inch // below this nothing is judged
)

// Unsound reckons what does not count of a member of a thickness as made, 1 to
// 60 in, with bars at a cover, 0 where that is not known:
//
//	ringing     nothing                  dull       0.4 in
//	hollow      down to the bars         crumbling  half the thickness, at least 0.8 in
//	screwdriver the end of its class; more than 1 in: half the thickness, at least 1 in
//	bars        stained: 12 percent of their area; bare: their cover, and they do not count
//
// The deepest of them holds. A cover that is not known is 1 1/2 in. Concrete that
// was neither sounded nor probed is dull. The depth leaves at least 1/2 in.
//
// Errors: a pick that there is not, a thickness or cover outside its range.
//
// Sources: FHWA on sounding (a clear ring of sound concrete, a dull, hollow
// sound of delaminated or softened); ACI 201.1R, classes of scaling, for the
// depths that stand for dull and crumbling; ACI 318-19 Table 20.5.1.3.1 for the
// cover; Almusallam 2001 for the bars; that a screwdriver finds the soft layer is
// common practice.
func (i Inspection) Unsound(thickness, cover Length) (Unsound, error) {
	var faults InputErrors
	Within(&faults, "Sounding", int(i.Sounding), 0, len(soundings)-1)
	Within(&faults, "Probe", int(i.Probe), 0, len(probes)-1)
	Within(&faults, "Bars", int(i.Bars), 0, len(barStates)-1)
	Within(&faults, "Thickness", thickness, 1*Inch, 60*Inch)
	Within(&faults, "Cover", cover, 0, 12*Inch)
	if err := faults.Err(); err != nil {
		return Unsound{}, err
	}
	if cover == 0 {
		cover = usualBarCover
	}
	u := Unsound{Bars: 1}
	if i.Sounding == NotSounded && i.Probe == NotProbed {
		i.Sounding, u.Assumed = Dull, AssumedDullConcrete
	}
	sounded := [...]Length{Dull: dullDepth, Hollow: cover, Crumbling: max(thickness/2, crumblingDepth)}
	probed := [...]Length{ProbeQuarter: Inch / 4, ProbeHalf: Inch / 2, ProbeInch: Inch, ProbeDeeper: max(thickness/2, Inch)}
	u.Depth = max(sounded[i.Sounding], probed[i.Probe])
	u.AtLeast = i.Sounding == Crumbling || i.Probe == ProbeDeeper
	switch i.Bars {
	case BarsStained:
		u.Bars = corrodedBars
	case BarsBare, BarsThinned:
		u.Bars, u.Bare = 0, true
		u.Depth = max(u.Depth, cover)
	}
	u.Depth = min(u.Depth, thickness-thinnestLeft)
	return u, nil
}

// Basis lists the sources of an inspection.
func (Unsound) Basis() []Citation {
	return []Citation{
		{Source: fhwaSounding, Place: "description"}, {Source: aci201, Place: "scaling"},
		{Source: ACI318_19, Place: "Table 20.5.1.3.1"}, {Source: Practice, Place: "probing with a screwdriver"},
	}
}
