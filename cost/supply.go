package cost

import (
	"strconv"

	"manway.example/manway"
)

// Supply is how a material of a scope is bought: under which code, what is
// allowed for waste, how much more it is loose than in place, and what one pack
// of it gives.
type Supply struct {
	Code         string  // of the scope line
	Buy          string  // code it is bought under; empty for the same
	Description  string  // of what is bought; empty for the scope's
	NetUnit      Unit    // of the scope line
	Unit         Unit    // of what is bought
	WastePercent float64 // 0 to 100
	Bulking      float64 // volume as bought over volume in place, 1 to 3; 0 where it is the same
	Pack         float64 // NetUnit in one Unit; 0 for the plain conversion of the units
	Whole        bool    // bought in whole units only
	Waste, Yield manway.Citation
	Remembered   bool // a figure of it was not read in its source
}

// Validate returns every fault of s.
func (s Supply) Validate() error {
	var faults manway.InputErrors
	for _, c := range [...]struct{ field, code string }{{"Code", s.Code}, {"Buy", s.buy()}} {
		if !isCode(c.code) {
			faults.Add(c.field, strconv.Quote(clip(c.code)), "letters, digits, points and hyphens, starting with a letter or digit, at most 64")
		}
	}
	s.NetUnit.check(&faults, "NetUnit")
	s.Unit.check(&faults, "Unit")
	checkFloat(&faults, "WastePercent", s.WastePercent, 0, 100)
	if s.Bulking != 0 {
		checkFloat(&faults, "Bulking", s.Bulking, 1, 3)
	}
	if s.Pack != 0 {
		checkFloat(&faults, "Pack", s.Pack, 1e-6, 1e6)
	} else if len(faults) == 0 {
		_, err := s.Unit.Per(s.NetUnit)
		faults.Under("", err)
	}
	return faults.Err()
}

func (s Supply) buy() string {
	if s.Buy == "" {
		return s.Code
	}
	return s.Buy
}

// Volume of bagged mixes and of a tube, in the unit of the scope.
const (
	mixPerPound = 0.0075           // ft3 of placed mix from 1 lb of dry mix
	tubeOunces  = 10.1 * 1.8046875 // in3 in a tube of 10.1 fl oz
	earthLoose  = 1.25 / 0.90      // loose over compacted, common earth
	gravelLoose = 1.12 / 0.95      // loose over compacted, gravel swelling 12 %
	handWaste   = 10.0             // per cent, small hand-mixed concrete
	overlap     = 10.0             // per cent, for laps and cuts of sheet
)

var (
	bagYield  = manway.Citation{Source: bagMix, Place: "0.0075 ft3 a pound"}
	smallWork = manway.Citation{Source: navfacp405, Place: "waste of concrete in small work, 10 %"}
	practice  = manway.Citation{Source: manway.Practice}
	earthwork = manway.Citation{Source: fm5434, Place: "Table 1-1"}
)

var supplies = [...]Supply{
	{Code: "ring-concrete", NetUnit: "FOT", Unit: "FOT", Waste: practice},
	{Code: "riser-plastic", NetUnit: "FOT", Unit: "FOT", Pack: 1, Whole: true, Waste: practice, Yield: practice},
	{Code: "adapter", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "cover-concrete", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "cover-plastic", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "handle-anchored", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "fastener", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "guard-secondary", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "anchor", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "barrier", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "temporary-cover", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "notice", NetUnit: "EA", Unit: "EA", Whole: true},
	{Code: "tank", NetUnit: "GLL", Unit: "GLL"},
	{Code: "sealant-strip", Buy: "sealant-strip-roll", Description: "joint sealant strip, roll of 14.5 ft", NetUnit: "FOT", Unit: "EA", WastePercent: 5, Pack: 14.5, Whole: true, Waste: practice, Yield: practice, Remembered: true},
	{Code: "sealant-bead", Buy: "sealant-tube", Description: "gunned sealant, tube of 10.1 fl oz", NetUnit: "INQ", Unit: "EA", WastePercent: 10, Pack: tubeOunces, Whole: true, Waste: practice, Yield: manway.Citation{Source: manway.NISTHandbook44, Place: "1 fl oz = 1.8046875 in3"}},
	{Code: "cement-plug", Buy: "cement-plug-pail-50lb", Description: "fast-setting hydraulic cement, 50 lb pail", NetUnit: "FTQ", Unit: "EA", WastePercent: handWaste, Pack: 50 * mixPerPound, Whole: true, Waste: smallWork, Yield: bagYield},
	{Code: "repair-mortar", Buy: "repair-mortar-bag-50lb", Description: "repair mortar, 50 lb bag", NetUnit: "FTQ", Unit: "EA", WastePercent: handWaste, Pack: 50 * mixPerPound, Whole: true, Waste: smallWork, Yield: bagYield},
	{Code: "grout", Buy: "grout-bag-50lb", Description: "non-shrink grout, 50 lb bag", NetUnit: "FTQ", Unit: "EA", WastePercent: handWaste, Pack: 0.45, Whole: true, Waste: smallWork, Yield: practice},
	{Code: "concrete", Buy: "concrete-bag-60lb", Description: "concrete mix, 60 lb bag", NetUnit: "FTQ", Unit: "EA", WastePercent: handWaste, Pack: 60 * mixPerPound, Whole: true, Waste: smallWork, Yield: bagYield},
	{Code: "wrap", NetUnit: "FTK", Unit: "FTK", WastePercent: overlap, Waste: practice},
	{Code: "gravel", NetUnit: "YDQ", Unit: "YDQ", WastePercent: 5, Bulking: gravelLoose, Waste: practice, Yield: earthwork, Remembered: true},
	{Code: "fill", NetUnit: "YDQ", Unit: "YDQ", WastePercent: 5, Bulking: earthLoose, Waste: practice, Yield: earthwork, Remembered: true},
	{Code: "topsoil", NetUnit: "YDQ", Unit: "YDQ", WastePercent: 10, Waste: practice},
	{Code: "seed", NetUnit: "LBR", Unit: "LBR", WastePercent: 5, Pack: 1, Whole: true, Waste: practice, Yield: practice},
}

// Supplies is the usual way each material is bought, which a caller's own
// supplies replace.
func Supplies() []Supply { return append([]Supply(nil), supplies[:]...) }
