package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Pressure is a pressure or stress in pascals.
type Pressure float64

// Units of pressure.
const (
	Pascal      Pressure = 1
	Kilopascal  Pressure = 1000
	Megapascal  Pressure = 1e6
	Gigapascal  Pressure = 1e9
	PSI         Pressure = poundForce / (inch * inch)
	KSI         Pressure = 1000 * poundForce / (inch * inch)
	PSF         Pressure = poundForce / (144 * inch * inch)
	InchMercury Pressure = 3386.389 // conventional (NIST SP 811, Appendix B)
)

var pressureUnits = unitTable{
	quantity: "pressure",
	base:     "Pa",
	units: []unitDef{
		def(float64(PSI), "psi", "lbf/in2"),
		def(float64(KSI), "ksi"),
		def(float64(PSF), "psf", "lbf/ft2"),
		def(float64(InchMercury), "inHg"),
		def(1, "Pa"),
		def(float64(Kilopascal), "kPa"),
		def(float64(Megapascal), "MPa", "N/mm2"),
		def(float64(Gigapascal), "GPa"),
	},
	us: []unitDef{def(float64(PSI), "psi"), def(float64(PSF), "psf")},
	si: []unitDef{def(float64(Megapascal), "MPa"), def(float64(Kilopascal), "kPa"), def(1, "Pa")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Pressure) In(u Pressure) float64 { return float64(x) / float64(u) }

// Times is the force of the pressure on area a.
func (x Pressure) Times(a Area) Force { return Force(float64(x) * float64(a)) }

// Text writes x for people in the units of system s.
func (x Pressure) Text(s System) string { return pressureUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Pressure) String() string { return x.Text(US) }

// AppendText appends x losslessly in Pa.
func (x Pressure) AppendText(b []byte) ([]byte, error) { return pressureUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in Pa; NaN and infinities are an error.
func (x Pressure) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Pressure) UnmarshalText(text []byte) error {
	v, err := pressureUnits.parse(text)
	if err == nil {
		*x = Pressure(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Pressure) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.MassDim: 1, unit.LengthDim: -1, unit.TimeDim: -2})
}
