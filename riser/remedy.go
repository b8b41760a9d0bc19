package riser

import "manway.example/manway"

// RemedyKind is one way of putting a defect right. The list is open: a program
// may add kinds of its own beside those below.
type RemedyKind string

// The remedies that [Remedies] proposes.
const (
	GuardNow        RemedyKind = "guard-now"         // barrier, temporary cover and written notice before leaving
	NewCover        RemedyKind = "new-cover"         // a sound cover that fits and is light enough to open
	NewHandle       RemedyKind = "new-handle"        // an anchored handle in a sound cover
	Fasteners       RemedyKind = "fasteners"         // screws, bolts or a lock that need a tool
	SecondaryGuard  RemedyKind = "secondary-guard"   // a net, grid or plate below the cover
	ResealFromGrade RemedyKind = "reseal-from-grade" // joint cleaned and sealed by hand from above, head outside
	OutsideCollar   RemedyKind = "outside-collar"    // the joint dug out and wrapped or collared from outside
	RebedRing       RemedyKind = "rebed-ring"        // the ring lifted and set again on a full sealant bed
	PatchFromInside RemedyKind = "patch-from-inside" // entry: cement patch on joint, spall and rim
	ReplaceConcrete RemedyKind = "replace-concrete"  // dug out, new sealed concrete rings
	ReplacePlastic  RemedyKind = "replace-plastic"   // dug out, new plastic riser on a bonded adapter
	FitAdapter      RemedyKind = "fit-adapter"       // adapter ring that joins a new bore to an old opening
	RaiseToGrade    RemedyKind = "raise-to-grade"    // rings added on a sound riser
	CutAccess       RemedyKind = "cut-access"        // a new opening in the roof
	ReplaceTank     RemedyKind = "replace-tank"      // tank taken out or abandoned and replaced
)

// Class is the sort of a scope line, which decides how it is priced and taxed.
type Class uint8

// The classes of scope lines.
const (
	Material Class = iota
	Labour
	Equipment
	Haulage
	Fee
	Wait // days that pass, for instance until buried lines are marked
)

var classes = [...]string{"material", "labour", "equipment", "haulage", "fee", "wait"}

// String is the class in one word.
func (c Class) String() string { return manway.Word(classes[:], c) }

// MarshalText is the same as String.
func (c Class) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// Item is one line of the scope of a remedy: what is needed and how much.
// Quantities are net, from the survey; waste and whole packs are added by the
// estimate.
type Item struct {
	Code        string  // code of this module: "ring-24x6", "dig-hand"; see [ItemCodes]
	Description string  //
	Class       Class   //
	Quantity    float64 // in Unit
	Unit        string  // UN/CEFACT Recommendation 20: EA, FOT, FTQ, YDQ, INQ, GLL, LBR, LH, HUR, DAY, NL
	Crew        int     // people at the task, for labour; 0 elsewhere
	Working     string  // the quantity with the numbers put in
	Basis       manway.Citation
}

// Life is how long a remedy lasts before it must be done again: the bad, the
// usual and the good case. All zero is a measure that only bridges the time to
// the next one.
type Life struct {
	Low, Usual, High manway.Duration
	Basis            manway.Citation
}

// Remedy is one way of putting an access right, with its whole scope.
type Remedy struct {
	Kind       RemedyKind
	Title      string
	Cures      []DefectKind // gone for the life of the remedy
	Delays     []DefectKind // slowed or hidden, and back before long
	Leaves     []DefectKind // still there afterwards
	Scope      []Item
	Unscoped   []string // what the survey lacks, so that its lines are missing from Scope
	Life       Life
	NeedsEntry bool   // of a permit-required confined space
	NeedsDig   bool   //
	NeedsPump  bool   // tank or compartment pumped down first
	Permit     string // who must allow it, empty where nobody is known to ask
	RuledOut   string // the reason that it cannot be done as things are; empty if it stands
	Assumed    manway.Assumptions
	Cautions   manway.Cautions
}

// NeedsPermit reports whether a permit is asked for.
func (r Remedy) NeedsPermit() bool { return r.Permit != "" }
