package riser

import "manway.example/manway"

// DefectKind is something wrong at an access. The list is open.
type DefectKind string

// The defects that [Defects] finds.
const (
	OpenHole        DefectKind = "open-hole"        // no cover, or one that cannot hold or can fall in
	CoverUnsound    DefectKind = "cover-unsound"    // cracked through, spalled deep or not shown to carry a person
	CoverUnfastened DefectKind = "cover-unfastened" // can be opened without a tool
	GuardMissing    DefectKind = "guard-missing"    // nothing below the cover holds a child
	CoverTooHeavy   DefectKind = "cover-too-heavy"  // above what the crew may move
	HandleUnsound   DefectKind = "handle-unsound"   // rusted, loose, missing or not known
	RimChipped      DefectKind = "rim-chipped"      // the seat or rim has lost bearing
	JointRoots      DefectKind = "joint-roots"
	JointGap        DefectKind = "joint-gap"
	JointUnsealed   DefectKind = "joint-unsealed" // a ring only set on the tank or on another ring
	WaterEnters     DefectKind = "water-enters"
	OdourEscapes    DefectKind = "odour-escapes"
	Spalled         DefectKind = "spalled" // riser or roof edge
	SteelExposed    DefectKind = "steel-exposed"
	Cracked         DefectKind = "cracked"
	TooDeep         DefectKind = "too-deep" // cover below the depth at which it is found and opened
	Settled         DefectKind = "settled"
	AccessMissing   DefectKind = "access-missing"
	AccessTooSmall  DefectKind = "access-too-small"
	RoofNotShown    DefectKind = "roof-not-shown" // roof at the access not shown to carry what it must
)

// Severity is how soon a defect must be dealt with, the most urgent first.
type Severity uint8

// The severities.
const (
	Urgent Severity = iota // before the crew leaves
	Soon                   // at the next opportunity, weeks
	Plan                   // with the next work on the access
	Watch                  // look again at the next visit
)

var severities = [...]string{"urgent", "soon", "plan", "watch"}

// String is the severity in one word.
func (s Severity) String() string { return manway.Word(severities[:], s) }

// MarshalText is the same as String.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Defect is one thing found wrong, how soon it matters and why.
type Defect struct {
	Kind     DefectKind
	Severity Severity
	Reason   string // the observation and the rule, in one sentence
	Basis    manway.Citation
}
