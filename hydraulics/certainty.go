package hydraulics

import "manway.example/manway"

// Certainty says how a value is known.
type Certainty uint8

// How a value may be known. The zero value is unknown.
const (
	Unknown Certainty = iota
	OwnerSays
	About
	Counted // counted, measured or read from a record
)

var certainties = [...]string{"unknown", "owner says", "about", "counted"}

// String is the certainty in words.
func (c Certainty) String() string { return manway.Word(certainties[:], c) }

// MarshalText is the same as String.
func (c Certainty) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText accepts the words of String.
func (c *Certainty) UnmarshalText(text []byte) error {
	return manway.ReadWord(c, "certainty", certainties[:], text)
}
