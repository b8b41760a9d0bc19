package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Volume is a volume in cubic metres. A gallon is the US gallon; the imperial
// gallon is refused by name.
type Volume float64

// Units of volume.
const (
	CubicMetre Volume = 1
	Litre      Volume = 0.001
	Millilitre Volume = 1e-6
	CubicInch  Volume = cubicInch
	CubicFoot  Volume = 1728 * cubicInch
	CubicYard  Volume = 46656 * cubicInch
	Gallon     Volume = gallon // 231 in3 exactly (NIST Handbook 44, Appendix C)
	FluidOunce Volume = gallon / 128
)

var volumeUnits = unitTable{
	quantity: "volume",
	base:     "m3",
	units: []unitDef{
		def(float64(Gallon), "gal", "gallon", "gallons", "US gal"),
		def(float64(CubicInch), "in3", "cu in"),
		def(float64(CubicFoot), "ft3", "cu ft"),
		def(float64(CubicYard), "yd3", "cu yd"),
		def(float64(FluidOunce), "fl oz"),
		def(float64(Millilitre), "mL"),
		def(float64(Litre), "L", "litre", "litres", "liter", "liters"),
		def(1, "m3", "cu m"),
	},
	us:      []unitDef{def(float64(Gallon), "gal")},
	si:      []unitDef{def(float64(Litre), "L")},
	refused: "imp gal",
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Volume) In(u Volume) float64 { return float64(x) / float64(u) }

// Times is the mass of the volume filled with a material of density d.
func (x Volume) Times(d Density) Mass { return Mass(float64(x) * float64(d)) }

// Over is the height of the volume on a base of area a.
func (x Volume) Over(a Area) Length { return Length(float64(x) / float64(a)) }

// Per is the flow that brings the volume in time t.
func (x Volume) Per(t Duration) Flow { return Flow(float64(x) / float64(t)) }

// Text writes x for people in the units of system s.
func (x Volume) Text(s System) string { return volumeUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Volume) String() string { return x.Text(US) }

// AppendText appends x losslessly in m3.
func (x Volume) AppendText(b []byte) ([]byte, error) { return volumeUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in m3; NaN and infinities are an error.
func (x Volume) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Volume) UnmarshalText(text []byte) error {
	v, err := volumeUnits.parse(text)
	if err == nil {
		*x = Volume(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Volume) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.LengthDim: 3})
}
