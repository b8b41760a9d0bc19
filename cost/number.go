package cost

import (
	"errors"
	"math"
	"strconv"
	"strings"
)

// round12 is v to 12 significant digits, what leaves as a number in JSON or CSV.
func round12(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil || r == 0 {
		return 0 // never -0; a subnormal rounds to nothing here
	}
	return r
}

var errPercent = errors.New("not a percentage")

// readPercent reads "3 %" as 0.03, rounded once.
func readPercent(s string) (float64, error) {
	s, ok := strings.CutSuffix(strings.TrimSpace(s), "%")
	s = strings.TrimSpace(s)
	if !ok || len(s) > 32 || strings.ContainsAny(s, "xXpP_nN") {
		return 0, errPercent
	}
	digits, exponent, has := strings.Cut(strings.ToLower(s), "e")
	power := 0
	if has {
		var err error
		if power, err = strconv.Atoi(exponent); err != nil {
			return 0, errPercent
		}
	}
	v, err := strconv.ParseFloat(digits+"e"+strconv.Itoa(power-2), 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, errPercent
	}
	return v, nil
}

// shortNumber is v for an error message.
func shortNumber(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
