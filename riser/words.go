package riser

import (
	"strconv"
	"strings"

	"manway.example/manway"
)

// wordIn is the index of text in a list of words.
func wordIn(field string, words []string, text []byte) (int, error) {
	for i, w := range words {
		if w == string(text) {
			return i, nil
		}
	}
	return 0, &manway.InputError{Field: field, Value: strconv.Quote(string(text)), Want: strings.Join(words, ", ")}
}

// wordAt is the word for index i of a list.
func wordAt(words []string, i int) string {
	if i >= 0 && i < len(words) {
		return words[i]
	}
	return "unknown value " + strconv.Itoa(i)
}
