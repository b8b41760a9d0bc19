package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Density is a mass per volume in kilograms per cubic metre. What the trade
// calls unit weight, 150 lb/ft3 of concrete, is read as this mass density.
type Density float64

// Units of density.
const (
	KilogramPerCubicMetre  Density = 1
	GramPerCubicCentimetre Density = 1000
	PoundPerCubicFoot      Density = pound / (1728 * cubicInch)
	PoundPerCubicYard      Density = pound / (46656 * cubicInch)
	PoundPerGallon         Density = pound / gallon
)

var densityUnits = unitTable{
	quantity: "density",
	base:     "kg/m3",
	units: []unitDef{
		def(float64(PoundPerCubicFoot), "lb/ft3", "pcf"),
		def(float64(PoundPerCubicYard), "lb/yd3"),
		def(float64(PoundPerGallon), "lb/gal"),
		def(1, "kg/m3"),
		def(float64(GramPerCubicCentimetre), "g/cm3", "t/m3"),
	},
	us: []unitDef{def(float64(PoundPerCubicFoot), "lb/ft3")},
	si: []unitDef{def(1, "kg/m3")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Density) In(u Density) float64 { return float64(x) / float64(u) }

// Text writes x for people in the units of system s.
func (x Density) Text(s System) string { return densityUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Density) String() string { return x.Text(US) }

// AppendText appends x losslessly in kg/m3.
func (x Density) AppendText(b []byte) ([]byte, error) { return densityUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in kg/m3; NaN and infinities are an error.
func (x Density) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Density) UnmarshalText(text []byte) error {
	v, err := densityUnits.parse(text)
	if err == nil {
		*x = Density(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Density) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.MassDim: 1, unit.LengthDim: -3})
}
