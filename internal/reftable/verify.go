package reftable

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

var statuses = []string{"seen", "seen-secondary", "memory", "practice", "trade page", "erratum", "derived"}

var (
	idForm   = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9._-]*$`)
	yearForm = regexp.MustCompile(`^[12][0-9]{3}\b`)
)

// Verify checks what the files promise each other: ids unique, every row's
// source listed, statuses known, a given tolerance explained, an erratum with its
// two figures apart. All faults are returned, joined. That every listed source is
// used, by a row or in the code, is for the tests of internal/house.
func Verify(sources []Source, rows Rows) error {
	var faults []error
	fault := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }

	listed := map[string]Source{}
	for _, s := range sources {
		if _, twice := listed[s.ID]; twice {
			fault("sources.csv: %s stands twice", s.ID)
		}
		listed[s.ID] = s
		for _, problem := range s.problems() {
			fault("sources.csv: %s: %s", s.ID, problem)
		}
	}
	first := map[string]Row{}
	for _, row := range rows {
		if other, twice := first[row.ID]; twice {
			fault("%s: the id stands also at %s:%d", row.at(), other.File, other.Line)
		} else {
			first[row.ID] = row
		}
		source, ok := listed[row.Source]
		if !ok {
			fault("%s: source %q is not in sources.csv", row.at(), row.Source)
		} else if source.Body == "" && !slices.Contains([]string{"practice", "trade page", "erratum", "derived"}, row.Status) {
			fault("%s: source %s has no body, so the status cannot be %q", row.at(), row.Source, row.Status)
		}
		for _, problem := range row.problems() {
			fault("%s: %s", row.at(), problem)
		}
	}
	return errors.Join(faults...)
}

func (s Source) problems() (list []string) {
	if !idForm.MatchString(s.ID) {
		list = append(list, "id: want letters, digits, dots and hyphens")
	}
	if s.Title == "" {
		list = append(list, "title: want one")
	}
	if s.Body != "" && !yearForm.MatchString(s.Year) {
		list = append(list, fmt.Sprintf("year %q: want one in four digits", s.Year))
	}
	return list
}

func (row Row) problems() (list []string) {
	add := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	if !idForm.MatchString(row.ID) {
		add("id: want letters, digits, dots and hyphens")
	}
	if row.Quantity == "" {
		add("quantity: want one")
	}
	if row.Printed == "" {
		add("printed: want the figure")
	}
	if row.Place == "" && row.Status != "practice" && row.Status != "derived" {
		add("place: want table, example, equation or page")
	}
	if !slices.Contains(statuses, row.Status) {
		add("status %q: want one of %s", row.Status, strings.Join(statuses, ", "))
	}
	if row.Tolerance != "" && row.Note == "" {
		add("tolerance %s: want the reason in note", row.Tolerance)
	}
	if row.Status == "derived" && row.Note == "" {
		add("derived: want the arithmetic in note")
	}
	if !row.Numeric() {
		if row.Tolerance != "" {
			add("tolerance %s: the printed %q is not a number", row.Tolerance, row.Printed)
		}
		return list
	}
	printed, _, _ := parsePrinted(row.Printed)
	if c, err := row.Compare(printed); err != nil {
		add("%v", err)
	} else if c.Misprint {
		add("the misprint lies within the tolerance of the corrected figure %s", row.Printed)
	}
	return list
}

// Numeric reports whether the printed figure is a number rather than a word.
func (row Row) Numeric() bool {
	return row.Printed != "" && strings.ContainsAny(row.Printed[:1], "+-.0123456789")
}
