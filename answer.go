package manway

// Answer is what is known of a question with yes or no. The zero value is
// unknown: nobody asked, looked or could see.
type Answer uint8

// The answers.
const (
	Unknown Answer = iota
	No
	Yes
)

var answers = [...]string{unknown, "no", "yes"}

// String is unknown, no or yes.
func (a Answer) String() string { return Word(answers[:], a) }

// MarshalText is the same as String.
func (a Answer) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText accepts unknown, no and yes, and not seen for unknown.
func (a *Answer) UnmarshalText(text []byte) error {
	return ReadWord(a, "answer", answers[:], text)
}

// Within adds a fault where a is none of the three.
func (a Answer) Within(faults *InputErrors, field string) {
	if a > Yes {
		faults.Add(field, a.String(), "unknown, no or yes")
	}
}
