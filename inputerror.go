package manway

import (
	"fmt"
	"strings"
)

// InputError is one fault in what the caller gave: which field, what stood in
// it, and what was expected there.
type InputError struct {
	Field string // Go path of the field, such as Partitions[0].Thickness
	Value string // what stood there, with its unit
	Want  string // what was expected, such as "2 in to 24 in"
}

// Error gives the fault in one line: field, value, what was wanted.
func (e *InputError) Error() string {
	return fmt.Sprintf("%s %s: want %s", e.Field, e.Value, e.Want)
}

// InputErrors is every fault found in one input, in the order of its fields.
// A function that refuses its input returns all of them at once:
//
//	var faults manway.InputErrors
//	if errors.As(err, &faults) {
//		for _, f := range faults {
//			fmt.Println(f.Field, f.Value, f.Want)
//		}
//	}
type InputErrors []*InputError

// Error joins the faults by "; ".
func (e InputErrors) Error() string {
	lines := make([]string, len(e))
	for i, f := range e {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "; ")
}

// Unwrap gives the faults one by one to errors.Is and errors.As.
func (e InputErrors) Unwrap() []error {
	list := make([]error, len(e))
	for i, f := range e {
		list[i] = f
	}
	return list
}

// Err is e as an error, nil when there is no fault.
func (e InputErrors) Err() error {
	if len(e) == 0 {
		return nil
	}
	return e
}

// Add appends one fault.
func (e *InputErrors) Add(field, value, want string) {
	*e = append(*e, &InputError{Field: field, Value: value, Want: want})
}

// Under appends the faults of a part, each field path put under the part's
// own name: Under("Lid", errs) turns Thickness into Lid.Thickness, Under("",
// errs) keeps the paths. An error that is not InputErrors is taken as one fault
// of the part itself.
func (e *InputErrors) Under(part string, err error) {
	switch err := err.(type) {
	case nil:
	case InputErrors:
		for _, f := range err {
			field := part
			if part != "" && f.Field != "" && f.Field[0] != '[' {
				field += "."
			}
			*e = append(*e, &InputError{Field: field + f.Field, Value: f.Value, Want: f.Want})
		}
	case *InputError:
		e.Under(part, InputErrors{err})
	default:
		e.Add(part, err.Error(), "a valid value")
	}
}
