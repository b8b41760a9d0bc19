package manway

import (
	"gonum.org/v1/gonum/unit"
)

// Duration is a span of time in seconds. A year is 365.25 days and a month the
// twelfth of it; dates are counted by [Date], not by this.
type Duration float64

// Units of duration.
const (
	Second Duration = 1
	Minute Duration = 60
	Hour   Duration = 3600
	Day    Duration = 86400
	Week   Duration = 7 * Day
	Year   Duration = 365.25 * Day
	Month  Duration = Year / 12
)

var durationUnits = unitTable{
	quantity: "duration",
	base:     "s",
	units: []unitDef{
		def(1, "s"),
		def(float64(Minute), "min"),
		lead(float64(Hour), "h", "hour", "hours"),
		def(float64(Day), "d", "day", "days"),
		def(float64(Week), "wk", "week", "weeks"),
		def(float64(Month), "mo", "month", "months"),
		lead(float64(Year), "yr", "year", "years"),
	},
	us: []unitDef{def(float64(Year), "yr"), def(float64(Day), "d"), def(float64(Hour), "h"), def(float64(Minute), "min"), def(1, "s")},
	si: []unitDef{def(float64(Year), "yr"), def(float64(Day), "d"), def(float64(Hour), "h"), def(float64(Minute), "min"), def(1, "s")},
}

// In is the number of units u in x: (8 * Foot).In(Inch) is 96.
func (x Duration) In(u Duration) float64 { return float64(x) / float64(u) }

// Text writes x for people in the units of system s.
func (x Duration) Text(s System) string { return durationUnits.people(float64(x), s) }

// String is Text in US customary units.
func (x Duration) String() string { return x.Text(US) }

// AppendText appends x losslessly in s.
func (x Duration) AppendText(b []byte) ([]byte, error) { return durationUnits.append(b, float64(x)) }

// MarshalText writes x losslessly in s; NaN and infinities are an error.
func (x Duration) MarshalText() ([]byte, error) { return x.AppendText(nil) }

// UnmarshalText reads a number with a unit; see the package comment.
func (x *Duration) UnmarshalText(text []byte) error {
	v, err := durationUnits.parse(text)
	if err == nil {
		*x = Duration(v)
	}
	return err
}

// Unit is x for programs built on gonum's unit package.
func (x Duration) Unit() *unit.Unit {
	return unit.New(float64(x), unit.Dimensions{unit.TimeDim: 1})
}
