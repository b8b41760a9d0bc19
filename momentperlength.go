package manway

import (
	"gonum.org/v1/gonum/unit"
)

// MomentPerLength is a bending moment per width of slab in newton metres per
// metre.
type MomentPerLength float64

// Units of momentPerLength.
const (
	NewtonMetrePerMetre     MomentPerLength = 1
	KilonewtonMetrePerMetre MomentPerLength = 1000
	PoundForceFootPerFoot   MomentPerLength = poundForce
	KipFootPerFoot          MomentPerLength = 1000 * poundForce
)

var momentPerLengthUnits = unitTable{
	quantity: "moment per length",
	base:     "N m/m",
	units: []unitDef{
		def(float64(PoundForceFootPerFoot), "lbf ft/ft", "lbf in/in"),
		def(float64(KipFootPerFoot), "kip ft/ft", "kip in/in"),
		def(1, "N m/m"),
		def(float64(KilonewtonMetrePerMetre), "kN m/m"),
	},
	us: []unitDef{def(float64(PoundForceFootPerFoot), "lbf ft/ft")},
	si: []unitDef{def(float64(KilonewtonMetrePerMetre), "kN m/m"), def(1, "N m/m")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x MomentPerLength) In(u MomentPerLength) float64 { return float64(x) / float64(u) }

// Text writes x for people in the units of system s.
func (x MomentPerLength) Text(s System) string { return momentPerLengthUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x MomentPerLength) String() string { return x.Text(US) }

// AppendText appends x losslessly in N m/m.
func (x MomentPerLength) AppendText(b []byte) ([]byte, error) {
	return momentPerLengthUnits.append(b, float64(x))
}

// MarshalText writes x losslessly in N m/m; NaN and infinities are an error.
func (x MomentPerLength) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *MomentPerLength) UnmarshalText(text []byte) error {
	v, err := momentPerLengthUnits.parse(text)
	if err == nil {
		*x = MomentPerLength(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x MomentPerLength) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.MassDim: 1, unit.LengthDim: 1, unit.TimeDim: -2})
}
