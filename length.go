package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Length is a distance in metres.
type Length float64

// Units of length.
const (
	Metre      Length = 1
	Millimetre Length = 0.001
	Centimetre Length = 0.01
	Inch       Length = inch // exactly
	Foot       Length = 12 * inch
	Yard       Length = 36 * inch
)

var lengthUnits = unitTable{
	quantity: "length",
	base:     "m",
	units: []unitDef{
		def(float64(Inch), "in", "inch", "inches", `"`),
		lead(float64(Foot), "ft", "foot", "feet", "'"),
		def(float64(Yard), "yd", "yard", "yards"),
		def(float64(Millimetre), "mm"),
		def(float64(Centimetre), "cm"),
		def(1, "m", "metre", "metres", "meter", "meters"),
	},
	us: []unitDef{def(float64(Inch), "in")},
	si: []unitDef{def(1, "m"), def(float64(Millimetre), "mm")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Length) In(u Length) float64 { return float64(x) / float64(u) }

// Times is the area of a rectangle of sides x and y.
func (x Length) Times(y Length) Area { return Area(float64(x) * float64(y)) }

// Text writes x for people: feet and inches to the nearest eighth, or metres
// and millimetres.
func (x Length) Text(s System) string {
	if s == US {
		return feetAndInches(float64(x))
	}
	return lengthUnits.people(float64(x), s)
}

// String is Text in US customary units.
func (x Length) String() string { return x.Text(US) }

// AppendText appends x losslessly in m.
func (x Length) AppendText(b []byte) ([]byte, error) { return lengthUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in m; NaN and infinities are an error.
func (x Length) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Length) UnmarshalText(text []byte) error {
	v, err := lengthUnits.parse(text)
	if err == nil {
		*x = Length(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Length) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.LengthDim: 1})
}
