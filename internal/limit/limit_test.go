package limit

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"manway.example/manway"
)

// recorder is a test that keeps what is reported.
type recorder struct {
	testing.TB
	reports []string
}

func (r *recorder) Helper() {}
func (r *recorder) Errorf(format string, args ...any) {
	r.reports = append(r.reports, fmt.Sprintf(format, args...))
}

type part struct{ Size manway.Length }

type input struct {
	Depth manway.Length
	Count int
	Parts []part
	Shape any
	Next  *part
}

// refuse is a calculation that refuses what lies outside 1 to 2, more than 3
// parts, and parts of 0.
func refuse(x input) error {
	var faults manway.InputErrors
	manway.Within(&faults, "Depth", x.Depth, 1, 2)
	manway.Within(&faults, "Count", x.Count, 0, 3)
	manway.Within(&faults, "Parts", len(x.Parts), 1, 3)
	for i, p := range x.Parts {
		if !(p.Size > 0) {
			faults.Add(fmt.Sprintf("Parts[%d].Size", i), p.Size.String(), "above 0")
		}
	}
	if s, ok := x.Shape.(part); ok {
		manway.NotNegative(&faults, "Shape.Size", s.Size)
	}
	if x.Next != nil {
		manway.NotNegative(&faults, "Next.Size", x.Next.Size)
	}
	return faults.Err()
}

func TestCheck(t *testing.T) {
	valid := input{Depth: 1.5, Parts: []part{{1}}, Shape: part{1}, Next: &part{1}}
	right := []Row{
		Between("Depth", manway.Length(1), 2), Between("Count", 0, 3), Between("Parts", 1, 3), Above("Parts[0].Size", manway.Length(0)),
		AtLeast("Shape.Size", manway.Length(0)), AtLeast("Next.Size", manway.Length(0)),
	}
	Check(t, valid, refuse, right...)
	Refuses(t, valid, refuse, "Parts", func(x *input) { x.Parts = nil })
	if valid.Depth != 1.5 || len(valid.Parts) != 1 || valid.Parts[0].Size != 1 || valid.Next.Size != 1 {
		t.Errorf("the valid input changed: %+v", valid)
	}
	Check(t, 1.5, func(d manway.Length) error { return refuse(input{Depth: d, Parts: valid.Parts}) }, Between("Depth", manway.Length(1), 2))

	for name, row := range map[string]Row{
		"lower than the code's":  Between("Depth", manway.Length(0.999), 2),
		"higher than the code's": AtMost("Depth", manway.Length(2.001)),
		"narrower":               AtLeast("Depth", manway.Length(1.001)),
		"open and is closed":     Above("Depth", manway.Length(1)),
		"of no field":            AtLeast("Width", manway.Length(1)),
		"of another field":       AtLeast("Count", 0).In("Depth"),
	} {
		var r recorder
		Check(&r, valid, refuse, row)
		if len(r.reports) == 0 {
			t.Errorf("a limit %s was not found out", name)
		}
	}
	var r recorder
	Check(&r, input{}, refuse, right...)
	Refuses(&r, valid, refuse, "Depth", func(*input) {})
	Check(&r, valid, func(input) error { return errors.New("no fault of a field") }, right[0])
	if text := strings.Join(r.reports, "\n"); len(r.reports) != 3 || !strings.Contains(text, "valid input is refused") {
		t.Errorf("%d reports:\n%s", len(r.reports), text)
	}
}
