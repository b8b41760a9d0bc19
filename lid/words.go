package lid

import (
	"strconv"
	"strings"

	"manway.example/manway"
)

// Answer is what is known of a question with yes or no. The zero value is
// unknown.
type Answer uint8

// The answers.
const (
	Unknown Answer = iota
	No
	Yes
)

var answers = [...]string{"unknown", "no", "yes"}

// String is unknown, no or yes.
func (a Answer) String() string { return word(answers[:], int(a)) }

// MarshalText is the same as String.
func (a Answer) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText accepts unknown, no and yes.
func (a *Answer) UnmarshalText(text []byte) error { return readWord(a, "answer", answers[:], text) }

// answer is Yes where v holds, No where it does not.
func answer(v bool) Answer {
	if v {
		return Yes
	}
	return No
}

// word is the word for index i of a list.
func word(words []string, i int) string {
	if i >= 0 && i < len(words) {
		return words[i]
	}
	return "unknown value " + strconv.Itoa(i)
}

// readWord sets v to the index of text in a list of words.
func readWord[T ~uint8](v *T, field string, words []string, text []byte) error {
	s := strings.TrimSpace(string(text))
	for i, w := range words {
		if strings.EqualFold(w, s) {
			*v = T(i)
			return nil
		}
	}
	return &manway.InputError{Field: field, Value: strconv.Quote(s), Want: strings.Join(known(words), ", ")}
}

// known is the list without the empty word of a zero value that must be set.
func known(words []string) []string {
	if words[0] == "" {
		return words[1:]
	}
	return words
}

// within adds a fault where v is none of the words.
func within[T ~uint8](faults *manway.InputErrors, field string, v T, words []string) {
	if int(v) >= len(words) || words[v] == "" {
		faults.Add(field, strconv.Itoa(int(v)), strings.Join(known(words), ", "))
	}
}

// times is x by a number: a quantity never multiplies another here.
func times[Q manway.Quantity](x Q, by float64) Q { return Q(float64(x) * by) }

// ratio is the number that a over b is.
func ratio[Q manway.Quantity](a, b Q) float64 { return float64(a) / float64(b) }

// between is "a to b", or one text where both read the same.
func between(a, b string) string {
	if a == b {
		return a
	}
	return a + " to " + b
}

// number is v as an error or a step of working shows it.
func number(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
