package manway

import (
	"encoding/json"
	"math/bits"
	"strings"
)

// Level says what a caution asks of the reader.
type Level uint8

// The two levels of a caution.
const (
	Advise Level = iota // bear it in mind
	Stop                // do not go on before it is settled
)

// String is advise or stop.
func (l Level) String() string {
	if l == Stop {
		return "stop"
	}
	return "advise"
}

// MarshalText is the same as String.
func (l Level) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// Caution is one warning: its code, which never changes, its level, and the
// full sentence that people are shown.
type Caution struct {
	Code     string `json:"code"`
	Level    Level  `json:"level"`
	Sentence string `json:"sentence"`
}

// Cautions is a set of warnings. It travels as a bit set, so that results
// carry it without allocation; outside the program it is a list of codes with
// their sentences.
type Cautions uint64

// Every caution that a result may carry.
const (
	NeverEnter Cautions = 1 << iota
	GuardHole
	KeepOffRoof
	DoNotLiftByHandle
	DoNotEmpty
	GasAndIgnition
	HeavyLift
	TrenchCollapse
	MayFloat
	MayCave
	VehicleOverTank
	Screening
	LocalCode
	GroundwaterUnknown
	VacuumOnTank
	LocateUtilities
	CutConcreteDust
	PermitEntry
	Pathogens
	NotAnInspection
	LiftLimits
	FingersAndFeet
	UnknownStrength
	RememberedFigure
	InventedPrices
	OutsideTested
	OverheadLines
	AsbestosCement
	CementBurns
	Insects
	UnequalLevels
	EstimateOnly
	LicensedWork
	FirstPull
	endOfCautions
)

// cautions stands in the order of the bits.
var cautions = [...]Caution{
	{"never-enter", Stop, "Never enter a tank or put your head in it: it is a confined space, and hydrogen sulfide or lack of oxygen kills within breaths, would-be rescuers too."},
	{"guard-hole", Stop, "Guard every open hole: never leave it unattended, and put the lid back and fasten it before you go."},
	{"keep-off-roof", Stop, "Keep people, machines and vehicles off the roof: it is not shown to carry them."},
	{"do-not-lift-by-handle", Stop, "Do not lift on this handle: it is pitted, necked, loose or unknown."},
	{"do-not-empty", Stop, "Do not pump below the level given: below it the tank is not shown to stay down or its walls to stand."},
	{"gas-and-ignition", Advise, "Test for gas before and while stirring, keep flames, smoking and engine exhaust away from openings, and stay upwind."},
	{"heavy-lift", Advise, "Heavy lift: use a bar, hook or hoist and a second person, and never lift astride the hole."},
	{"trench-collapse", Advise, "The sides of a dig can cave in: slope or shore it by the local rule, and keep spoil and machines back from the edge."},
	{"may-float", Advise, "An emptied tank may float when groundwater stands high."},
	{"may-cave", Advise, "The walls or roof of an emptied tank may cave in under soil, groundwater or a machine beside it."},
	{"vehicle-over-tank", Advise, "Keep vehicles, the pump truck too, off the tank, its surroundings and the drain field unless an engineer has shown that they carry them."},
	{"screening", Advise, "Unreviewed screening of what stands there, not a design: a licensed engineer decides."},
	{"local-code", Advise, "Local code and the authority that applies it govern."},
	{"groundwater-unknown", Advise, "Groundwater was not measured and is taken at grade."},
	{"vacuum-on-tank", Advise, "Suction can collapse a closed or light tank: keep an opening to the air while pumping."},
	{"locate-utilities", Advise, "Have buried lines located before digging."},
	{"cut-concrete-dust", Advise, "Cutting concrete makes silica dust: wet the cut and wear a respirator."},
	{"permit-entry", Stop, "Work from inside is entry of a permit-required confined space: trained people, gas meter, blower, retrieval line and attendant, or it is not done."},
	{"pathogens", Advise, "Wastewater carries pathogens and may carry sharps: gloves, eye protection, and wash before eating."},
	{"not-an-inspection", Advise, "Pumping and this reading are not an inspection of the system: only what could be reached was seen."},
	{"lift-limits", Advise, "The lifting equation holds for a two-handed lift on firm ground; it does not cover kneeling, one hand, a confined posture or a load that slips."},
	{"fingers-and-feet", Advise, "Keep fingers and feet out from under the lid: block it before you let go."},
	{"unknown-strength", Advise, "The strength or steel of the concrete is not known and a low value is taken."},
	{"remembered-figure", Advise, "A figure behind this result is remembered, not read in its source."},
	{"invented-prices", Advise, "The prices are invented for demonstration."},
	{"outside-tested", Advise, "An input lies outside the range in which the method was tested."},
	{"overhead-lines", Advise, "Keep booms, hoists and poles away from overhead power lines."},
	{"asbestos-cement", Advise, "Old grey fibre-cement pipe may hold asbestos: do not cut or break it dry."},
	{"cement-burns", Advise, "Wet cement burns skin and eyes: gloves, boots and eye protection."},
	{"insects", Advise, "Wasps, spiders and snakes shelter under lids: lift the far edge first and look."},
	{"unequal-levels", Advise, "Do not leave one compartment full beside an empty one: the partition is loaded from one side."},
	{"estimate-only", Advise, "An estimate, not a measurement."},
	{"licensed-work", Advise, "Pumping, hauling and repair need the licence and permit that the local authority asks for."},
	{"first-pull", Advise, "The first pull can exceed every figure here: dirt, ice and bond at the seat are not in it unless declared."},
}

// List is every caution of the set, those that say stop first.
func (c Cautions) List() []Caution {
	list := make([]Caution, 0, bits.OnesCount64(uint64(c)))
	for _, level := range [...]Level{Stop, Advise} {
		for i, caution := range cautions {
			if c&(1<<i) != 0 && caution.Level == level {
				list = append(list, caution)
			}
		}
	}
	return list
}

// Has reports whether every caution of want is in c.
func (c Cautions) Has(want Cautions) bool { return c&want == want }

// Codes is the code of every caution of the set, those that say stop first.
func (c Cautions) Codes() []string {
	list := c.List()
	codes := make([]string, len(list))
	for i, caution := range list {
		codes[i] = caution.Code
	}
	return codes
}

// MarshalJSON writes the set as a list of codes, levels and sentences.
func (c Cautions) MarshalJSON() ([]byte, error) { return json.Marshal(c.List()) }

// String is the codes of the set.
func (c Cautions) String() string { return strings.Join(c.Codes(), ", ") }
