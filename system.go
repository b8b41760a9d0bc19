package manway

import "fmt"

// System is the unit system in which a quantity is written for people.
type System uint8

// The two unit systems. The zero value is US customary.
const (
	US System = iota // US customary: feet and inches, US gallons, pounds
	SI               // metres, litres, kilograms, newtons
)

// String is us or si.
func (s System) String() string {
	if s == SI {
		return "si"
	}
	return "us"
}

// MarshalText is the same as String.
func (s System) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts us and si.
func (s *System) UnmarshalText(text []byte) error {
	switch string(text) {
	case "us":
		*s = US
	case "si":
		*s = SI
	default:
		return &InputError{Field: "system", Value: fmt.Sprintf("%q", text), Want: "us or si"}
	}
	return nil
}
