package strictjson

import (
	"errors"
	"fmt"
	"strings"

	"manway.example/manway"
)

// Fault is one thing wrong in a document.
type Fault struct {
	Path  string `json:"field"` // such as accesses[1].cover.diameter; empty: the whole document
	Line  int    `json:"line"`  // from 1; 0: not known
	Value string `json:"value"` // what stood there, cut to a readable length
	Want  string `json:"want"`  // what was expected
}

// Error gives the fault in one line.
func (f Fault) Error() string {
	var b strings.Builder
	if f.Line > 0 {
		fmt.Fprintf(&b, "line %d: ", f.Line)
	}
	if f.Path != "" {
		b.WriteString(f.Path)
		if f.Value != "" {
			b.WriteByte(' ')
		}
	}
	b.WriteString(f.Value)
	if f.Path != "" || f.Value != "" {
		b.WriteString(": ")
	}
	b.WriteString("want ")
	b.WriteString(f.Want)
	return b.String()
}

// Faults is every fault of a document in the order of its lines.
type Faults []Fault

// Error joins the faults by "; ".
func (list Faults) Error() string {
	lines := make([]string, len(list))
	for i, f := range list {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "; ")
}

// Err is the list as an error, nil when there is no fault.
func (list Faults) Err() error {
	if len(list) == 0 {
		return nil
	}
	return list
}

// Covers reports whether a fault is already known at the path or at a part it
// belongs to, so that what follows from it need not be told again.
func (list Faults) Covers(path string) bool {
	for _, f := range list {
		if rest, ok := strings.CutPrefix(path, f.Path); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return true
		}
	}
	return false
}

// FaultsOf reads what an error says about a value that stood at path.
func FaultsOf(err error, path, value string) Faults {
	var faults Faults
	var inputs manway.InputErrors
	var input *manway.InputError
	switch {
	case errors.As(err, &faults):
		list := make(Faults, len(faults))
		for i, f := range faults {
			f.Path, f.Line = join(path, f.Path), 0
			list[i] = f
		}
		return list
	case errors.As(err, &inputs):
		list := make(Faults, len(inputs))
		for i, f := range inputs {
			list[i] = fault(join(path, f.Field), f.Value, f.Want)
		}
		return list
	case errors.As(err, &input):
		return Faults{fault(join(path, input.Field), input.Value, input.Want)}
	}
	return Faults{fault(path, value, err.Error())}
}

func fault(path, value, want string) Fault {
	return Fault{Path: Visible(path), Value: shorten(value), Want: want}
}

// join puts a path under the path of the part it belongs to.
func join(path, rest string) string {
	if path == "" || rest == "" || rest[0] == '[' {
		return path + rest
	}
	return path + "." + rest
}

// shorten cuts a text to what can be read in one line, and makes all of it
// visible.
func shorten(text string) string {
	const most = 60
	cut := false
	if runes := []rune(text[:min(len(text), 4*most)]); len(runes) > most {
		text, cut = string(runes[:most]), true
	}
	text = Visible(text)
	if cut {
		text += "…"
	}
	return text
}
