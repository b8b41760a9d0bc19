package lid

import (
	"math"

	"manway.example/manway"
)

// AirClass is a corrosivity category of outdoor air. Air over a tank is worse
// than any of them: the classes give only the mildest bound.
type AirClass uint8

// The categories. The zero value is refused.
const (
	_  AirClass = iota
	C1          // very low
	C2
	C3
	C4
	C5
	CX // extreme
)

var airClasses = [...]string{"", "C1", "C2", "C3", "C4", "C5", "CX"}

// String is C1 to CX.
func (c AirClass) String() string { return manway.Word(airClasses[:], c) }

// MarshalText is the same as String.
func (c AirClass) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText accepts C1 to CX.
func (c *AirClass) UnmarshalText(text []byte) error {
	return manway.ReadWord(c, "air class", airClasses[:], text)
}

// Metal is the metal that corrodes.
type Metal uint8

// The metals.
const (
	Steel Metal = iota
	Zinc        // of a galvanized handle
)

var metals = [...]string{"steel", "zinc"}

// String is steel or zinc.
func (m Metal) String() string { return manway.Word(metals[:], m) }

// MarshalText is the same as String.
func (m Metal) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText accepts steel and zinc.
func (m *Metal) UnmarshalText(text []byte) error { return manway.ReadWord(m, "metal", metals[:], text) }

// firstYear is the corrosion of the first year in micrometres, least and most
// of each class (ISO 9223:2012 Table 2).
var firstYear = [...][2][2]float64{
	C1: {{0, 1.3}, {0, 0.1}},
	C2: {{1.3, 25}, {0.1, 0.7}},
	C3: {{25, 50}, {0.7, 2.1}},
	C4: {{50, 80}, {2.1, 4.2}},
	C5: {{80, 200}, {4.2, 8.4}},
	CX: {{200, 700}, {8.4, 25}},
}

// timeExponent are B1, the mean, and B2, the upper exponent (ISO 9224:2012
// Table 2), of steel and zinc.
var timeExponent = [...][2]float64{Steel: {0.523, 0.575}, Zinc: {0.813, 0.873}}

// Attack is how deep air has eaten into a metal surface.
type Attack struct {
	Low, High       manway.Length // from one side
	BarLow, BarHigh manway.Length // off the diameter of a bar: twice
	Mean, Upper     float64       // time factors t^B1 and t^B2
	Cautions        manway.Cautions
}

// AirLoss is the attack of outdoor air of a class after some years,
//
//	D = r t^B
//
// with the class's least first-year rate r and B1 for Low, its greatest and B2
// for High; t in years, 1 to 100. A bar loses twice D of its diameter. It is
// only the mildest bound of what a handle over a tank loses, and never a
// reason to trust one. Source: ISO 9223:2012 Table 2, ISO 9224:2012.
func AirLoss(metal Metal, class AirClass, age manway.Duration) (Attack, error) {
	var faults manway.InputErrors
	within(&faults, "Metal", metal, metals[:])
	within(&faults, "Class", class, airClasses[:])
	manway.Within(&faults, "Age", age, 1*manway.Year, 100*manway.Year)
	if err := faults.Err(); err != nil {
		return Attack{}, err
	}
	t := age.In(manway.Year)
	r, b := firstYear[class][metal], timeExponent[metal]
	a := Attack{Mean: math.Pow(t, b[0]), Upper: math.Pow(t, b[1]), Cautions: manway.OutsideTested}
	const micrometre = manway.Millimetre / 1000
	a.Low = manway.Length(r[0]*a.Mean) * micrometre
	a.High = manway.Length(r[1]*a.Upper) * micrometre
	a.BarLow, a.BarHigh = 2*a.Low, 2*a.High
	return a, nil
}
