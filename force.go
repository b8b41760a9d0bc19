package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Force is a force in newtons.
type Force float64

// Units of force.
const (
	Newton     Force = 1
	Kilonewton Force = 1000
	PoundForce Force = poundForce
	Kip        Force = 1000 * poundForce
)

var forceUnits = unitTable{
	quantity: "force",
	base:     "N",
	units: []unitDef{
		def(float64(PoundForce), "lbf"),
		def(float64(Kip), "kip", "kips"),
		def(1, "N"),
		def(float64(Kilonewton), "kN"),
	},
	us: []unitDef{def(float64(PoundForce), "lbf")},
	si: []unitDef{def(float64(Kilonewton), "kN"), def(1, "N")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Force) In(u Force) float64 { return float64(x) / float64(u) }

// Over is the pressure of the force spread evenly on area a.
func (x Force) Over(a Area) Pressure { return Pressure(float64(x) / float64(a)) }

// Times is the moment of the force at a lever arm.
func (x Force) Times(arm Length) Moment { return Moment(float64(x) * float64(arm)) }

// Mass is the mass that weighs x under standard gravity.
func (x Force) Mass() Mass { return Mass(float64(x) / StandardGravity) }

// Text writes x for people in the units of system s.
func (x Force) Text(s System) string { return forceUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Force) String() string { return x.Text(US) }

// AppendText appends x losslessly in N.
func (x Force) AppendText(b []byte) ([]byte, error) { return forceUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in N; NaN and infinities are an error.
func (x Force) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Force) UnmarshalText(text []byte) error {
	v, err := forceUnits.parse(text)
	if err == nil {
		*x = Force(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Force) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.MassDim: 1, unit.LengthDim: 1, unit.TimeDim: -2})
}
