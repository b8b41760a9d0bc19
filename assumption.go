package manway

import (
	"encoding/json"
	"math/bits"
)

// Assumption is one value that was taken because it was not measured: what was
// taken, and the measurement that would replace it.
type Assumption struct {
	Code    string `json:"code"`
	Taken   string `json:"taken"`
	Measure string `json:"measure"`
}

// Assumptions is a set of assumptions, a bit set like [Cautions].
type Assumptions uint32

// Every assumption that a result may rest on.
const (
	AssumedGroundwaterAtGrade Assumptions = 1 << iota
	AssumedConcreteStrength
	AssumedConcreteDensity
	AssumedSoil
	AssumedSteelYield
	AssumedNoSteel
	AssumedPerson
	AssumedWallThickness
	AssumedFloorThickness
	AssumedRoofThickness
	AssumedInsideDepth
	AssumedTableInterval
	AssumedFullTank
	AssumedEmptyTank
	AssumedDryLid
	AssumedFriction
	AssumedCover
	AssumedYearRound
	AssumedDullConcrete
	AssumedLightConcrete
	endOfAssumptions
)

// assumptions stands in the order of the bits.
var assumptions = [...]Assumption{
	{"groundwater-at-grade", "groundwater at grade", "depth to groundwater in a bored hole or standpipe beside the tank"},
	{"concrete-strength", "concrete of 2,500 psi (17 MPa), the least the code knows", "rebound hammer or core at a sound place"},
	{"concrete-density", "concrete of 150 lb/ft3 (2,400 kg/m3)", "the weight of the lid on a scale"},
	{"soil", "soil weights and friction on the unfavourable side", "soil type at the tank, moist and wet"},
	{"steel-yield", "steel of 40,000 psi (280 MPa) yield", "the mark on a bar or the year of the tank"},
	{"no-steel", "no steel counted", "bars or mesh seen at an edge, or a cover meter reading"},
	{"person", "a person of 300 lb (136 kg) with tools", "the weight of the heaviest of the crew with tools"},
	{"wall-thickness", "walls of the usual thickness", "wall thickness at an opening"},
	{"floor-thickness", "a floor of the usual thickness", "floor thickness from the drawing, or outside less inside depth"},
	{"roof-thickness", "a roof of the usual thickness", "roof thickness at the opening"},
	{"inside-depth", "inside depth from the nominal gallons", "rod from the roof's underside to the floor"},
	{"table-interval", "the household table, since no rate was measured", "sludge and scum at two visits"},
	{"full-tank", "liquid at the outlet invert", "the level on arrival"},
	{"empty-tank", "an empty tank", "the level left after pumping"},
	{"dry-lid", "concrete anywhere from dry to soaked", "whether the lid is soaked"},
	{"friction", "a range of friction between lid and seat", "the pull at which the lid begins to slide"},
	{"cover", "steel cover of the usual depth", "cover depth where a bar shows"},
	{"year-round", "residence all year", "months of the year that the house is lived in"},
	{"dull-concrete", "concrete that sounds dull, 0.4 in (10 mm) of its face not counted", "the sound of a hammer, the depth a screwdriver goes in, or the thickness at a worn and a protected place"},
	{"light-concrete", "concrete of 135 lb/ft3 (2,160 kg/m3) where its weight holds down, the least of normal weight", "the weight of the lid on a scale, or the maker's weight of the tank"},
}

// List is every assumption of the set.
func (a Assumptions) List() []Assumption {
	list := make([]Assumption, 0, bits.OnesCount32(uint32(a)))
	for i, assumption := range assumptions {
		if a&(1<<i) != 0 {
			list = append(list, assumption)
		}
	}
	return list
}

// Has reports whether every assumption of want is in a.
func (a Assumptions) Has(want Assumptions) bool { return a&want == want }

// MarshalJSON writes the set as a list.
func (a Assumptions) MarshalJSON() ([]byte, error) { return json.Marshal(a.List()) }
