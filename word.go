package manway

import (
	"strconv"
	"strings"
)

// Word is the word of v in a list in the order of its values. The types that
// are one of a few words are written and read with it and [ReadWord].
func Word[T ~uint8](words []string, v T) string {
	if int(v) < len(words) {
		return words[v]
	}
	return "unknown value " + strconv.Itoa(int(v))
}

// ReadWord sets v to the value whose word the text is, capitals or not. The
// error names field and lists the words, but for the empty one of a zero value
// that must be set. Where the first word is unknown, not seen is read as that.
func ReadWord[T ~uint8](v *T, field string, words []string, text []byte) error {
	s := strings.TrimSpace(string(text))
	if s == notSeen && words[0] == unknown {
		s = unknown
	}
	for i, w := range words {
		if strings.EqualFold(w, s) {
			*v = T(i)
			return nil
		}
	}
	if len(words) > 0 && words[0] == "" {
		words = words[1:]
	}
	return &InputError{Field: field, Value: quoted(s), Want: strings.Join(words, ", ")}
}

// quoted is a text as an error shows it, no longer than a quantity may be.
func quoted(s string) string {
	if len(s) > maxText {
		s = s[:maxText] + "…"
	}
	return strconv.Quote(s)
}
