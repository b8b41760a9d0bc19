package manway

import "strings"

// Reading is a length read on site, or one that was not taken. The zero value
// was not taken; a reading of nothing, such as no scum, is taken, with length 0.
type Reading struct {
	Taken  bool
	Length Length // 0 where it was not taken
}

// Read is a reading that was taken.
func Read(x Length) Reading { return Reading{Taken: true, Length: x} }

// How a reading that was not taken is written, and may be.
const (
	notMeasured = "not measured"
	notSeen     = "not seen"
	unknown     = "unknown"
)

// String is the length, or not measured.
func (r Reading) String() string {
	if !r.Taken {
		return notMeasured
	}
	return r.Length.String()
}

// MarshalText writes the length losslessly, or not measured.
func (r Reading) MarshalText() ([]byte, error) {
	if !r.Taken {
		return []byte(notMeasured), nil
	}
	return r.Length.MarshalText()
}

// UnmarshalText accepts a length, or not measured, not seen, unknown or nothing.
func (r *Reading) UnmarshalText(text []byte) error {
	switch strings.TrimSpace(string(text)) {
	case "", notMeasured, notSeen, unknown:
		*r = Reading{}
		return nil
	}
	var x Length
	if err := x.UnmarshalText(text); err != nil {
		return orWord(err, "reading", notMeasured)
	}
	*r = Read(x)
	return nil
}

// Within adds a fault where the reading was taken and is not lo to hi, or was
// not taken and has a length.
func (r Reading) Within(faults *InputErrors, field string, lo, hi Length) {
	if r.Taken {
		Within(faults, field, r.Length, lo, hi)
	} else {
		Absent(faults, field, r.Length, "nothing was read")
	}
}

// AtLeast reports whether r was taken and is at least limit.
func (r Reading) AtLeast(limit Length) bool { return r.Taken && Reached(r.Length, limit) }

// Below reports whether r was taken and is less than limit.
func (r Reading) Below(limit Length) bool { return r.Taken && !Reached(r.Length, limit) }

// orWord is the fault of a text that is neither a quantity nor a word.
func orWord(err error, field, word string) error {
	fault := *err.(*InputError)
	fault.Field, fault.Want = field, word+", or "+fault.Want
	return &fault
}
