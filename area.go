package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Area is an area in square metres.
type Area float64

// Units of area.
const (
	SquareMetre      Area = 1
	SquareMillimetre Area = 1e-6
	SquareCentimetre Area = 1e-4
	SquareInch       Area = inch * inch
	SquareFoot       Area = 144 * inch * inch
	SquareYard       Area = 1296 * inch * inch
	Acre             Area = 43560 * SquareFoot
	Hectare          Area = 1e4
)

var areaUnits = unitTable{
	quantity: "area",
	base:     "m2",
	units: []unitDef{
		def(float64(SquareInch), "in2", "sq in"),
		def(float64(SquareFoot), "ft2", "sq ft"),
		def(float64(SquareYard), "yd2", "sq yd"),
		def(float64(Acre), "acre", "acres", "ac"),
		def(float64(SquareMillimetre), "mm2"),
		def(float64(SquareCentimetre), "cm2"),
		def(1, "m2", "sq m"),
		def(float64(Hectare), "ha"),
	},
	us: []unitDef{def(float64(SquareFoot), "ft2"), def(float64(SquareInch), "in2")},
	si: []unitDef{def(1, "m2"), def(float64(SquareCentimetre), "cm2")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Area) In(u Area) float64 { return float64(x) / float64(u) }

// Times is the volume of a prism of base x and height h.
func (x Area) Times(h Length) Volume { return Volume(float64(x) * float64(h)) }

// Text writes x for people in the units of system s.
func (x Area) Text(s System) string { return areaUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Area) String() string { return x.Text(US) }

// AppendText appends x losslessly in m2.
func (x Area) AppendText(b []byte) ([]byte, error) { return areaUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in m2; NaN and infinities are an error.
func (x Area) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Area) UnmarshalText(text []byte) error {
	v, err := areaUnits.parse(text)
	if err == nil {
		*x = Area(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Area) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.LengthDim: 2})
}
