package manway

import (
	"gonum.org/v1/gonum/unit"
)

// LineLoad is a force per length in newtons per metre.
type LineLoad float64

// Units of lineLoad.
const (
	NewtonPerMetre     LineLoad = 1
	KilonewtonPerMetre LineLoad = 1000
	PoundForcePerFoot  LineLoad = poundForce / (12 * inch)
	PoundForcePerInch  LineLoad = poundForce / inch
	KipPerFoot         LineLoad = 1000 * poundForce / (12 * inch)
)

var lineLoadUnits = unitTable{
	quantity: "line load",
	base:     "N/m",
	units: []unitDef{
		def(float64(PoundForcePerFoot), "lbf/ft", "plf"),
		def(float64(PoundForcePerInch), "lbf/in"),
		def(float64(KipPerFoot), "kip/ft"),
		def(1, "N/m"),
		def(float64(KilonewtonPerMetre), "kN/m"),
	},
	us: []unitDef{def(float64(PoundForcePerFoot), "lbf/ft")},
	si: []unitDef{def(float64(KilonewtonPerMetre), "kN/m"), def(1, "N/m")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x LineLoad) In(u LineLoad) float64 { return float64(x) / float64(u) }

// Times is the force of the load along length l.
func (x LineLoad) Times(l Length) Force { return Force(float64(x) * float64(l)) }

// Text writes x for people in the units of system s.
func (x LineLoad) Text(s System) string { return lineLoadUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x LineLoad) String() string { return x.Text(US) }

// AppendText appends x losslessly in N/m.
func (x LineLoad) AppendText(b []byte) ([]byte, error) { return lineLoadUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in N/m; NaN and infinities are an error.
func (x LineLoad) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *LineLoad) UnmarshalText(text []byte) error {
	v, err := lineLoadUnits.parse(text)
	if err == nil {
		*x = LineLoad(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x LineLoad) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.MassDim: 1, unit.TimeDim: -2})
}
