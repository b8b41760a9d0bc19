package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Velocity is a speed in metres per second.
type Velocity float64

// Units of velocity.
const (
	MetrePerSecond Velocity = 1
	FootPerSecond  Velocity = 12 * inch
)

var velocityUnits = unitTable{
	quantity: "velocity",
	base:     "m/s",
	units: []unitDef{
		def(float64(FootPerSecond), "ft/s", "fps"),
		def(1, "m/s"),
	},
	us: []unitDef{def(float64(FootPerSecond), "ft/s")},
	si: []unitDef{def(1, "m/s")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Velocity) In(u Velocity) float64 { return float64(x) / float64(u) }

// Text writes x for people in the units of system s.
func (x Velocity) Text(s System) string { return velocityUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Velocity) String() string { return x.Text(US) }

// AppendText appends x losslessly in m/s.
func (x Velocity) AppendText(b []byte) ([]byte, error) { return velocityUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in m/s; NaN and infinities are an error.
func (x Velocity) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Velocity) UnmarshalText(text []byte) error {
	v, err := velocityUnits.parse(text)
	if err == nil {
		*x = Velocity(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Velocity) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.LengthDim: 1, unit.TimeDim: -1})
}
