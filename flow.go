package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Flow is a volume per time in cubic metres per second.
type Flow float64

// Units of flow.
const (
	CubicMetrePerSecond Flow = 1
	LitrePerSecond      Flow = 0.001
	LitrePerDay         Flow = 0.001 / 86400.
	CubicMetrePerHour   Flow = 1. / 3600
	CubicMetrePerDay    Flow = 1. / 86400
	GallonPerMinute     Flow = gallon / 60
	GallonPerDay        Flow = gallon / 86400
	CubicFootPerSecond  Flow = 1728 * cubicInch
)

var flowUnits = unitTable{
	quantity: "flow",
	base:     "m3/s",
	units: []unitDef{
		def(float64(GallonPerMinute), "gal/min", "gpm"),
		def(float64(GallonPerDay), "gal/d", "gpd", "gal/day"),
		def(float64(CubicFootPerSecond), "ft3/s", "cfs"),
		def(float64(LitrePerSecond), "L/s"),
		def(0.001/60., "L/min"),
		def(float64(LitrePerDay), "L/d", "L/day"),
		def(float64(CubicMetrePerHour), "m3/h"),
		def(float64(CubicMetrePerDay), "m3/d", "m3/day"),
		def(1, "m3/s"),
	},
	us: []unitDef{def(float64(GallonPerMinute), "gal/min"), def(float64(GallonPerDay), "gal/d")},
	si: []unitDef{def(float64(LitrePerSecond), "L/s"), def(float64(LitrePerDay), "L/d")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Flow) In(u Flow) float64 { return float64(x) / float64(u) }

// Times is the volume that flows in time t.
func (x Flow) Times(t Duration) Volume { return Volume(float64(x) * float64(t)) }

// Text writes x for people in the units of system s.
func (x Flow) Text(s System) string { return flowUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Flow) String() string { return x.Text(US) }

// AppendText appends x losslessly in m3/s.
func (x Flow) AppendText(b []byte) ([]byte, error) { return flowUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in m3/s; NaN and infinities are an error.
func (x Flow) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Flow) UnmarshalText(text []byte) error {
	v, err := flowUnits.parse(text)
	if err == nil {
		*x = Flow(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Flow) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.LengthDim: 3, unit.TimeDim: -1})
}
