package visit

import (
	"io"
	"slices"
	"strings"

	"manway.example/manway/examples/internal/strictjson"
	"manway.example/manway/hydraulics"
)

// Read reads one survey as JSON and validates it. Every fault is found at once
// and named by its JSON path and line. The error is a list that prints one fault
// after the other. Where it fails, nothing of the survey may be used.
//
// A quantity may carry a tolerance, "41 in ± 1 in" or "+/- 1 in". Quantities,
// earlier dates, counts and picks may be "about ..." or "owner says ...",
// anything that is not required "unknown" or "not opened"; see [Said].
//
// Errors: a text that is no JSON object, unknown and repeated names, values of
// the wrong kind, numbers without a unit, and everything that [Survey.Validate]
// refuses.
func Read(r io.Reader) (Survey, error) {
	var s Survey
	text, err := io.ReadAll(io.LimitReader(r, strictjson.MaxBytes+1))
	if err != nil {
		return Survey{}, err
	}
	var saying saying
	doc, err := strictjson.DecodeAs(text, &s, saying.reword)
	faults, ok := err.(strictjson.Faults)
	if err != nil && !ok {
		return Survey{}, err
	}
	if len(faults) == 1 && faults[0].Path == "" { // no document at all
		return Survey{}, faults
	}
	s.Said = saying.list
	slices.SortFunc(s.Said, func(a, b Said) int { return strings.Compare(a.Path, b.Path) })
	if s.Household.Known == hydraulics.Unknown {
		s.Household.Known = s.saidCertainty("household.people")
	}
	for _, f := range doc.Explain(s.Validate()) {
		if faults.Covers(f.Path) {
			continue
		}
		if written, ok := doc.Text(f.Path); ok {
			f.Value = written // as the surveyor wrote it
		}
		faults = append(faults, f)
	}
	faults.Sort()
	if err := faults.Err(); err != nil {
		return Survey{}, err
	}
	return s, nil
}
