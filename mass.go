package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Mass is a mass in kilograms. The pound of mass, lb, is not the pound of force,
// lbf: the two meet only in [Mass.Weight], by standard gravity.
type Mass float64

// Units of mass.
const (
	Kilogram Mass = 1
	Gram     Mass = 0.001
	Tonne    Mass = 1000
	Pound    Mass = pound // exactly (avoirdupois)
	Ounce    Mass = pound / 16
	Ton      Mass = 2000 * pound // the short ton
)

var massUnits = unitTable{
	quantity: "mass",
	base:     "kg",
	units: []unitDef{
		lead(float64(Pound), "lb", "lbs", "pound", "pounds"),
		def(float64(Ounce), "oz"),
		def(float64(Ton), "ton", "tons", "short ton"),
		def(float64(Gram), "g"),
		def(1, "kg"),
		def(float64(Tonne), "t", "tonne", "tonnes"),
	},
	us: []unitDef{def(float64(Pound), "lb")},
	si: []unitDef{def(1, "kg")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Mass) In(u Mass) float64 { return float64(x) / float64(u) }

// Weight is the force of standard gravity on the mass.
func (x Mass) Weight() Force { return Force(float64(x) * StandardGravity) }

// Text writes x for people in the units of system s.
func (x Mass) Text(s System) string { return massUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Mass) String() string { return x.Text(US) }

// AppendText appends x losslessly in kg.
func (x Mass) AppendText(b []byte) ([]byte, error) { return massUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in kg; NaN and infinities are an error.
func (x Mass) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Mass) UnmarshalText(text []byte) error {
	v, err := massUnits.parse(text)
	if err == nil {
		*x = Mass(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Mass) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.MassDim: 1})
}
