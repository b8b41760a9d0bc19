package manway

import (
	"math"

	"gonum.org/v1/gonum/unit"
)

// Angle is a plane angle in radians.
type Angle float64

// Units of angle.
const (
	Radian Angle = 1
	Degree Angle = math.Pi / 180
)

var angleUnits = unitTable{
	quantity: "angle",
	base:     "rad",
	units: []unitDef{
		def(float64(Degree), "deg", "°", "degree", "degrees"),
		def(1, "rad"),
	},
	us: []unitDef{def(float64(Degree), "deg")},
	si: []unitDef{def(float64(Degree), "deg")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Angle) In(u Angle) float64 { return float64(x) / float64(u) }

// Text writes x for people in the units of system s.
func (x Angle) Text(s System) string { return angleUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Angle) String() string { return x.Text(US) }

// AppendText appends x losslessly in rad.
func (x Angle) AppendText(b []byte) ([]byte, error) { return angleUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in rad; NaN and infinities are an error.
func (x Angle) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Angle) UnmarshalText(text []byte) error {
	v, err := angleUnits.parse(text)
	if err == nil {
		*x = Angle(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Angle) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.AngleDim: 1})
}
