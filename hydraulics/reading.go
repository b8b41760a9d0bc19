package hydraulics

import (
	"strings"

	"manway.example/manway"
)

// Reading is a length read on site, or one that was not taken. The zero value
// was not taken; a reading of nothing, such as no scum, is taken, with length 0.
type Reading struct {
	Taken  bool
	Length manway.Length // meaningful only where Taken
}

// Read is a reading that was taken.
func Read(length manway.Length) Reading { return Reading{Taken: true, Length: length} }

// String is the length, or not measured.
func (r Reading) String() string {
	if !r.Taken {
		return notMeasured
	}
	return r.Length.String()
}

// notMeasured is how a reading that was not taken is written.
const notMeasured = "not measured"

// MarshalText writes the length losslessly, or not measured.
func (r Reading) MarshalText() ([]byte, error) {
	if !r.Taken {
		return []byte(notMeasured), nil
	}
	return r.Length.MarshalText()
}

// UnmarshalText accepts a length, not measured, unknown or nothing.
func (r *Reading) UnmarshalText(text []byte) error {
	switch strings.TrimSpace(string(text)) {
	case "", notMeasured, "unknown":
		*r = Reading{}
		return nil
	}
	var length manway.Length
	if err := length.UnmarshalText(text); err != nil {
		fault := *err.(*manway.InputError)
		fault.Field, fault.Want = "reading", notMeasured+", or "+fault.Want
		return &fault
	}
	*r = Read(length)
	return nil
}

// check adds a fault where the reading was taken and is not lo to hi.
func (r Reading) check(faults *manway.InputErrors, field string, lo, hi manway.Length) {
	if r.Taken {
		manway.Within(faults, field, r.Length, lo, hi)
	}
}

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
func (c Certainty) String() string { return wordAt(certainties[:], int(c)) }

// MarshalText is the same as String.
func (c Certainty) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText accepts the words of String.
func (c *Certainty) UnmarshalText(text []byte) error {
	i, err := wordIn("certainty", certainties[:], text)
	if err == nil {
		*c = Certainty(i)
	}
	return err
}
