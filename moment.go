package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Moment is a force times a lever arm in newton metres.
type Moment float64

// Units of moment.
const (
	NewtonMetre     Moment = 1
	KilonewtonMetre Moment = 1000
	PoundForceFoot  Moment = poundForce * 12 * inch
	PoundForceInch  Moment = poundForce * inch
	KipFoot         Moment = 12000 * poundForce * inch
)

var momentUnits = unitTable{
	quantity: "moment",
	base:     "N m",
	units: []unitDef{
		def(float64(PoundForceFoot), "lbf ft", "ft lbf"),
		def(float64(PoundForceInch), "lbf in", "in lbf"),
		def(float64(KipFoot), "kip ft"),
		def(1, "N m"),
		def(float64(KilonewtonMetre), "kN m"),
	},
	us: []unitDef{def(float64(PoundForceFoot), "lbf ft")},
	si: []unitDef{def(float64(KilonewtonMetre), "kN m"), def(1, "N m")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Moment) In(u Moment) float64 { return float64(x) / float64(u) }

// Text writes x for people in the units of system s.
func (x Moment) Text(s System) string { return momentUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Moment) String() string { return x.Text(US) }

// AppendText appends x losslessly in N m.
func (x Moment) AppendText(b []byte) ([]byte, error) { return momentUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in N m; NaN and infinities are an error.
func (x Moment) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Moment) UnmarshalText(text []byte) error {
	v, err := momentUnits.parse(text)
	if err == nil {
		*x = Moment(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Moment) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.MassDim: 1, unit.LengthDim: 2, unit.TimeDim: -2})
}
