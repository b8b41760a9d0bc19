package lid

import (
	"strconv"
	"strings"

	"manway.example/manway"
)

// answer is Yes where v holds, No where it does not.
func answer(v bool) manway.Answer {
	if v {
		return manway.Yes
	}
	return manway.No
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
func times[Q ~float64](x Q, by float64) Q { return Q(float64(x) * by) }

// ratio is the number that a over b is.
func ratio[Q ~float64](a, b Q) float64 { return float64(a) / float64(b) }

// between is "a to b", or one text where both read the same.
func between(a, b string) string {
	if a == b {
		return a
	}
	return a + " to " + b
}

// number is v as an error or a step of working shows it.
func number(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
