package reftable

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
)

// AttrPrefix and the id of a row name the test attribute that a comparison
// leaves.
const AttrPrefix = "reference:"

// Check compares got, in the row's unit, with the printed figure and fails the
// test where it is off by more than the tolerance, or, in an erratum row, where
// it agrees with the misprint.
//
// Every check leaves a test attribute "reference:ID" with the value got and its
// deviation in units of the last printed digit, so that "go test -json" gives
// all that the validation page needs; and where that page shows another value
// than got, the test fails.
func (row Row) Check(t testing.TB, got float64) {
	t.Helper()
	c, err := row.Compare(got)
	if err != nil {
		t.Fatalf("%s: %v", row.at(), err)
	}
	t.Attr(AttrPrefix+row.ID, fmt.Sprintf("got %s deviation %.3g", strconv.FormatFloat(got, 'g', -1, 64), c.Deviation))
	row.holdPage(t, row.Shown(got), row.sameShown(got))
	if c.Misprint {
		t.Errorf("%s: %s: got %v %s, which is the misprint; want %s (%s)",
			row.at(), row.Quantity, got, row.Unit, row.Printed, row.Note)
	}
	if !c.Agrees {
		t.Errorf("%s: %s: got %v %s, printed %s: off by %.3g, allowed %.3g; %.3g units of the last digit (%s, %s)",
			row.at(), row.Quantity, got, row.Unit, row.Printed, c.Off, c.Allowed, c.Deviation, row.Source, row.Place)
	}
}

// CheckText compares a result in words, such as a class or a state, with the
// printed one, case and outer blanks aside.
func (row Row) CheckText(t testing.TB, got string) {
	t.Helper()
	words := strings.Join(strings.Fields(got), " ")
	t.Attr(AttrPrefix+row.ID, "got "+words)
	row.holdPage(t, words, func(onPage string) bool { return onPage == words })
	if !strings.EqualFold(strings.TrimSpace(got), row.Printed) {
		t.Errorf("%s: %s: got %q, printed %q (%s, %s)",
			row.at(), row.Quantity, got, row.Printed, row.Source, row.Place)
	}
}

// Comparison is how a computed value stands to a published figure.
type Comparison struct {
	Off       float64 // computed less printed, in the row's unit
	Allowed   float64 // the tolerance, in the row's unit
	Digit     float64 // one unit of the last printed digit, in the row's unit
	Deviation float64 // Off in units of the last printed digit
	Agrees    bool    // within the tolerance
	Misprint  bool    // erratum rows: agrees with the figure printed wrongly
}

// Compare sets got beside the printed figure. A tie, such as 2.65 for a printed
// 2.7, agrees: the tolerance is widened by 1e-9 of itself and 1e-12 of the
// figure, which is what binary fractions need.
func (row Row) Compare(got float64) (Comparison, error) {
	printed, digit, err := parsePrinted(row.Printed)
	if err != nil {
		return Comparison{}, err
	}
	allowed, err := row.allowed(printed, digit)
	if err != nil {
		return Comparison{}, err
	}
	slack := allowed*1e-9 + math.Abs(printed)*1e-12
	agrees := func(figure float64) bool { return math.Abs(got-figure) <= allowed+slack }
	c := Comparison{Off: got - printed, Allowed: allowed, Digit: digit, Deviation: (got - printed) / digit, Agrees: agrees(printed)}
	if row.Status == "erratum" {
		wrong, err := row.misprint()
		if err != nil {
			return Comparison{}, err
		}
		c.Misprint = agrees(wrong)
	}
	return c, nil
}

// allowed is the tolerance in the row's unit.
func (row Row) allowed(printed, digit float64) (float64, error) {
	if row.Tolerance == "" {
		return digit / 2, nil
	}
	text, relative := strings.CutSuffix(row.Tolerance, "%")
	tol, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || !(tol >= 0) || math.IsInf(tol, 0) {
		return 0, fmt.Errorf("tolerance %q: want a number in the printed unit, or a percentage", row.Tolerance)
	}
	if relative {
		tol *= math.Abs(printed) / 100
	}
	return tol, nil
}

// misprint is the wrong figure that an erratum row's note begins with.
func (row Row) misprint() (float64, error) {
	text, ok := strings.CutPrefix(row.Note, "misprint ")
	figure, _, colon := strings.Cut(text, ":")
	if ok && colon {
		if v, _, err := parsePrinted(figure); err == nil {
			return v, nil
		}
	}
	return 0, fmt.Errorf("note %q: want \"misprint FIGURE: reason\" in an erratum row", row.Note)
}

// parsePrinted reads a figure and the value of one unit of its last digit:
// 0.01 for "2.60", 1 for "1,250", 100 for "1.2e3".
func parsePrinted(text string) (value, digit float64, err error) {
	text = strings.ReplaceAll(strings.TrimSpace(text), ",", "")
	value, err = strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) || strings.ContainsAny(text, "xXpP_") {
		return 0, 0, fmt.Errorf("printed %q: want a decimal number", text)
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	power := 0
	if exponent != "" {
		power, _ = strconv.Atoi(exponent)
	}
	if _, fraction, ok := strings.Cut(mantissa, "."); ok {
		power -= len(fraction)
	}
	return value, math.Pow(10, float64(power)), nil
}
