package lid

import (
	"math"

	"manway.example/manway"
)

// Way is a way of moving a lid.
type Way uint8

// The ways, in the order in which they are listed.
const (
	Tip        Way = iota // by hand about the far edge
	WalkOut               // turned about one point of its rim, then about another
	Drag                  // pulled along
	Hook                  // a short hook at the near edge, pulled straight up
	FulcrumBar            // long hook bar that rocks on its own foot
	PryBar                // bar under the near edge over a block
	Hoist                 // tripod or machine with slings
)

var ways = [...]string{"tip about the far edge", "walk out", "drag", "hook", "fulcrum bar", "pry bar", "hoist"}

// String is the way in words.
func (w Way) String() string { return manway.Word(ways[:], w) }

// MarshalText is the same as String.
func (w Way) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// UnmarshalText accepts the words of String.
func (w *Way) UnmarshalText(text []byte) error { return manway.ReadWord(w, "way", ways[:], text) }

// Shares of the cover's weight that were measured at the handle of a tool
// (congress paper quoted in a trade magazine).
const (
	hookShare       = 0.80
	barLowestShare  = 0.45
	barHighestShare = 0.51
)

// Factors of lifting gear: inserts carry 4 times, hardware 5 times what is
// lifted (29 CFR 1926.704(c) and (d)).
const (
	insertFactor   = 4
	hardwareFactor = 5
)

// Method is one way of moving a lid and the force at the hands.
type Method struct {
	Way       Way
	Low, High manway.Force  // at the hands once the lid is free; at the hook of a hoist
	FirstPull manway.Force  // High with wedging and the declared bond
	Possible  manway.Answer // on this seat, as the lid lies
	Reason    string        // why not, or what must come first
	Crew      manway.Check  // FirstPull against the crew's own limit
	Source    manway.Citation
}

// Bar is a straight pry bar over a block: the arms on either side of it.
type Bar struct {
	LoadArm   manway.Length `json:"load_arm"`   // from block to lid, 0.5 in to 2 ft; 0: 4 in
	EffortArm manway.Length `json:"effort_arm"` // from block to hands, 1 to 8 ft; 0: 44 in
}

// The bar that is taken where none is given: a 48 in bar on a block 4 in from
// its tip, common practice.
const (
	usualLoadArm   = 4 * manway.Inch
	usualEffortArm = 44 * manway.Inch
)

func (b Bar) filled() Bar {
	if b.LoadArm == 0 {
		b.LoadArm = usualLoadArm
	}
	if b.EffortArm == 0 {
		b.EffortArm = usualEffortArm
	}
	return b
}

// Advantage is the effort arm over the load arm. Source: statics (Serway and
// Beichner, ch. 12).
func (b Bar) Advantage() float64 {
	b = b.filled()
	return float64(b.EffortArm) / float64(b.LoadArm)
}

func (b Bar) validate(faults *manway.InputErrors) {
	b = b.filled()
	manway.Within(faults, "Bar.LoadArm", b.LoadArm, 0.5*manway.Inch, 24*manway.Inch)
	manway.Within(faults, "Bar.EffortArm", b.EffortArm, 1*manway.Foot, 8*manway.Foot)
}

// shares are the forces of a way as shares of the lid's weight.
func (l Lid) shares(w Way, friction Friction, bar Bar) (low, high float64, source manway.Citation) {
	statics := manway.Citation{Source: serway, Place: "ch. 12, static equilibrium"}
	switch w {
	case Tip:
		return 0.5, 0.5, statics
	case WalkOut:
		middle, rim := l.turning()
		return friction.Low * middle, friction.High * rim, manway.Citation{Source: serway, Place: "ch. 5 and 12, friction moment about a point of the rim"}
	case Drag:
		return friction.Low, friction.High, manway.Citation{Source: pciFriction, Place: "friction of concrete on concrete 0.8; dragging from 0.6"}
	case Hook:
		return hookShare, hookShare, manway.Citation{Source: coverRemoval, Place: "peak handle force with a J-hook"}
	case FulcrumBar:
		return barLowestShare, barHighestShare, manway.Citation{Source: coverRemoval, Place: "peak handle force with a fulcrum bar"}
	case PryBar:
		share := 0.5 / bar.Advantage()
		return share, share, statics
	}
	return 1, 1, manway.Citation{Source: manway.OSHA1926, Place: "1926.704(c), (d)"}
}

// turning is the mean distance of the bearing from the point of the rim about
// which a lid is turned, over the arm of the force at the opposite point: for
// a lid that bears on its whole underside, and on its rim alone. Times the
// friction it is the share of the weight that the hands must push.
//
//	disc     whole 16/(9 pi) = 0.566,   rim 2/pi = 0.637
//	slab     about a corner, force at the far corner, d = diagonal:
//	         whole (d/3 + b2/(6a) asinh(a/b) + a2/(6b) asinh(b/a))/d
//	         rim   mean of the four sides
func (l Lid) turning() (whole, rim float64) {
	if l.Shape.Round() {
		return 16 / (9 * math.Pi), 2 / math.Pi
	}
	a, b := float64(l.Length), float64(l.Width)
	d := math.Hypot(a, b)
	sa, sb := math.Asinh(a/b), math.Asinh(b/a)
	whole = (d/3 + b*b/(6*a)*sa + a*a/(6*b)*sb) / d
	// Near sides: mean a/2 and b/2. Far sides, at distance b and a:
	far := (a*d+b*b*sa)/2 + (b*d+a*a*sb)/2
	rim = (a*a/2 + b*b/2 + far) / (2 * (a + b)) / d
	return whole, rim
}
