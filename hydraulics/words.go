package hydraulics

import (
	"strconv"
	"strings"

	"manway.example/manway"
)

// wordAt is the word of a state.
func wordAt(words []string, i int) string {
	if i >= 0 && i < len(words) {
		return words[i]
	}
	return "unknown value " + strconv.Itoa(i)
}

// wordIn is the state that a text names.
func wordIn(field string, words []string, text []byte) (int, error) {
	for i, w := range words {
		if strings.EqualFold(w, strings.TrimSpace(string(text))) {
			return i, nil
		}
	}
	return 0, &manway.InputError{Field: field, Value: strconv.Quote(string(text)), Want: strings.Join(words, ", ")}
}

// indexed is the path of one element of a list.
func indexed(field string, i int) string { return field + "[" + strconv.Itoa(i) + "]" }

// also adds the faults of err as they are named.
func also(faults *manway.InputErrors, err error) {
	if list, ok := err.(manway.InputErrors); ok {
		*faults = append(*faults, list...)
	}
}
