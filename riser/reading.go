package riser

import (
	"strings"

	"manway.example/manway"
)

// Answer is what a look gave. The zero value is that nobody looked or could
// see.
type Answer uint8

// The answers.
const (
	NotSeen Answer = iota
	No
	Yes
)

var answers = [...]string{"not seen", "no", "yes"}

// String is not seen, no or yes.
func (a Answer) String() string { return wordAt(answers[:], int(a)) }

// MarshalText is the same as String.
func (a Answer) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText accepts not seen, no and yes.
func (a *Answer) UnmarshalText(text []byte) error {
	i, err := wordIn("answer", answers[:], text)
	if err == nil {
		*a = Answer(i)
	}
	return err
}

// Reading is a length that was measured, or not. The zero value is not seen; a
// gap of 0 is a reading.
type Reading struct {
	Taken  bool
	Length manway.Length
}

// Read is a reading of length x.
func Read(x manway.Length) Reading { return Reading{true, x} }

// String is the length, or not seen.
func (r Reading) String() string {
	if !r.Taken {
		return answers[NotSeen]
	}
	return r.Length.String()
}

// MarshalText writes the length losslessly, or not seen.
func (r Reading) MarshalText() ([]byte, error) {
	if !r.Taken {
		return []byte(answers[NotSeen]), nil
	}
	return r.Length.MarshalText()
}

// UnmarshalText accepts a length or not seen.
func (r *Reading) UnmarshalText(text []byte) error {
	if strings.TrimSpace(string(text)) == answers[NotSeen] {
		*r = Reading{}
		return nil
	}
	var x manway.Length
	if err := x.UnmarshalText(text); err != nil {
		fault := *err.(*manway.InputError)
		fault.Want = answers[NotSeen] + ", or " + fault.Want
		return &fault
	}
	*r = Read(x)
	return nil
}

// within adds a fault unless r was not taken or lies between lo and hi.
func (r Reading) within(faults *manway.InputErrors, field string, lo, hi manway.Length) {
	if r.Taken {
		manway.Within(faults, field, r.Length, lo, hi)
	}
}

// above reports whether r was taken and is at least limit.
func (r Reading) above(limit manway.Length) bool { return r.Taken && manway.Reached(r.Length, limit) }

// below reports whether r was taken and is less than limit.
func (r Reading) below(limit manway.Length) bool { return r.Taken && !manway.Reached(r.Length, limit) }
