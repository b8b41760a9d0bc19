package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Temperature is an absolute temperature in kelvin; it is read and written in
// degrees Fahrenheit or Celsius too.
type Temperature float64

// Units of temperature.
const (
	Kelvin Temperature = 1
)

var temperatureUnits = unitTable{
	quantity: "temperature",
	base:     "K",
	units: []unitDef{
		unitDef{names: []string{"F", "°F", "degF"}, factor: 1 / 1.8, offset: 459.67 / 1.8},
		unitDef{names: []string{"C", "°C", "degC"}, factor: 1, offset: 273.15},
		def(1, "K"),
	},
	us: []unitDef{unitDef{names: []string{"F"}, factor: 1 / 1.8, offset: 459.67 / 1.8}},
	si: []unitDef{unitDef{names: []string{"C"}, factor: 1, offset: 273.15}},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Temperature) In(u Temperature) float64 { return float64(x) / float64(u) }

// Text writes x for people in the units of system s.
func (x Temperature) Text(s System) string { return temperatureUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Temperature) String() string { return x.Text(US) }

// AppendText appends x losslessly in K.
func (x Temperature) AppendText(b []byte) ([]byte, error) {
	return temperatureUnits.append(b, float64(x))
}

// MarshalText writes x losslessly in K; NaN and infinities are an error.
func (x Temperature) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Temperature) UnmarshalText(text []byte) error {
	v, err := temperatureUnits.parse(text)
	if err == nil {
		*x = Temperature(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Temperature) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.TemperatureDim: 1})
}
