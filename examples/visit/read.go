package visit

import (
	"io"

	"manway.example/manway/examples/internal/strictjson"
)

// Read reads one survey as JSON and validates it. Every fault is found at once
// and named by its JSON path and line; it is kept in Survey.Tolerances. The error is a list that prints one fault
// after the other. Where it fails, nothing of the survey may be used.
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
	text, tolerances := takeTolerances(text)
	doc, err := strictjson.Decode(text, &s)
	faults, ok := err.(strictjson.Faults)
	if err != nil && !ok {
		return Survey{}, err
	}
	if len(faults) == 1 && faults[0].Path == "" { // no document at all
		return Survey{}, faults
	}
	s.Tolerances = tolerances
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
