package cost

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Unit is a unit of the estimate by its common code of UN/CEFACT Recommendation
// 20: EA each, FOT foot, YDQ cubic yard, GLL US gallon, LH labour hour.
type Unit string

// measure is what a unit measures; units of one measure convert.
type measure uint8

const (
	countOf measure = iota // each kind of count by itself
	lengthOf
	areaOf
	volumeOf
	massOf
	timeOf
)

type unitRow struct {
	code    Unit
	name    string
	measure measure
	si      float64 // exact where the definition is; of no count
}

// unitRows are the codes an estimate of this trade uses, from Rec 20 Rev. 17.
var unitRows = [...]unitRow{
	{code: "EA", name: "each"},
	{code: "H87", name: "piece"},
	{code: "C62", name: "one"},
	{code: "SET", name: "set"},
	{code: "LS", name: "lump sum"},
	{code: "E51", name: "job"},
	{code: "E54", name: "trip"},
	{code: "NL", name: "load"},
	{"FOT", "foot", lengthOf, float64(manway.Foot)},
	{"LF", "linear foot", lengthOf, float64(manway.Foot)},
	{"INH", "inch", lengthOf, float64(manway.Inch)},
	{"YRD", "yard", lengthOf, 3 * float64(manway.Foot)},
	{"MTR", "metre", lengthOf, 1},
	{"INK", "square inch", areaOf, float64(manway.Inch * manway.Inch)},
	{"FTK", "square foot", areaOf, float64(manway.Foot * manway.Foot)},
	{"YDK", "square yard", areaOf, 9 * float64(manway.Foot*manway.Foot)},
	{"MTK", "square metre", areaOf, 1},
	{"INQ", "cubic inch", volumeOf, float64(manway.CubicInch)},
	{"FTQ", "cubic foot", volumeOf, float64(manway.CubicFoot)},
	{"YDQ", "cubic yard", volumeOf, float64(manway.CubicYard)},
	{"GLL", "gallon (US)", volumeOf, float64(manway.Gallon)},
	{"QTL", "liquid quart (US)", volumeOf, float64(manway.Gallon) / 4},
	{"LTR", "litre", volumeOf, 0.001},
	{"MTQ", "cubic metre", volumeOf, 1},
	{"ONZ", "ounce", massOf, 0.45359237 / 16},
	{"LBR", "pound", massOf, 0.45359237},
	{"STN", "short ton (US)", massOf, 907.18474},
	{"KGM", "kilogram", massOf, 1},
	{"TNE", "tonne", massOf, 1000},
	{code: "LH", name: "labour hour"},
	{"MIN", "minute", timeOf, 60},
	{"HUR", "hour", timeOf, 3600},
	{"DAY", "day", timeOf, 86400},
	{"ANN", "year", timeOf, 31557600},
}

// notUnits are codes that people write and Rec 20 does not have, or has
// deleted, with what it has instead.
var notUnits = map[Unit]string{
	"LB": "LBR", "LBS": "LBR", "CF": "FTQ", "SF": "FTK", "SY": "YDK", "CY": "YDQ for a cubic yard", "TON": "STN or TNE",
	"HR": "HUR, or LH for labour", "HRS": "HUR, or LH for labour", "GAL": "GLL", "FT": "FOT", "IN": "INH", "YD": "YRD",
	"BG": "EA, with the pack in the description", "RO": "EA, with the roll in the description", "TC": "NL",
	"EACH": "EA", "HOUR": "HUR", "M": "MTR", "M3": "MTQ", "L": "LTR", "KG": "KGM",
}

func (u Unit) row() (unitRow, bool) {
	for _, r := range unitRows {
		if r.code == u {
			return r, true
		}
	}
	return unitRow{}, false
}

// Name is the name of the unit in Rec 20, empty for another code.
func (u Unit) Name() string {
	r, _ := u.row()
	return r.name
}

// Validate returns the fault of a code that is not among the units of this
// package, and names the right code for what people often write instead.
func (u Unit) Validate() error {
	var faults manway.InputErrors
	u.check(&faults, "Unit")
	return faults.Err()
}

func (u Unit) check(faults *manway.InputErrors, field string) {
	if _, ok := u.row(); ok {
		return
	}
	want := "a unit code of UN/CEFACT Recommendation 20, such as EA, FOT, FTK, YDQ, GLL, LBR, LH, HUR, DAY"
	if right, ok := notUnits[u]; ok {
		want = right
	}
	faults.Add(field, strconv.Quote(clip(string(u))), want)
}

// Per is the number of units v in one u: 1 YDQ is 27 FTQ. Units of different
// measures, and counts of different things, have none. Source: Rec20,
// conversion factors.
func (u Unit) Per(v Unit) (float64, error) {
	var faults manway.InputErrors
	a, okA := u.row()
	b, okB := v.row()
	faults.Under("From", u.Validate())
	faults.Under("To", v.Validate())
	if okA && okB && (a.measure != b.measure || a.measure == countOf && u != v) {
		faults.Add("To", string(v), "a unit of the same measure as "+string(u))
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	if u == v {
		return 1, nil
	}
	per := a.si / b.si
	if whole := math.Round(per); math.Abs(per-whole) <= 1e-12*per { // 27, not 27.000000000000004
		per = whole
	}
	return per, nil
}
