package manway

import "strings"

// Step is one line of working that a person can redo by hand: symbol = formula
// = the numbers put in = value.
type Step struct {
	Symbol  string `json:"symbol"`
	Formula string `json:"formula"`
	Numbers string `json:"numbers"`
	Value   string `json:"value"`
}

// String is the step in one line.
func (s Step) String() string {
	parts := make([]string, 0, 4)
	for _, p := range []string{s.Symbol, s.Formula, s.Numbers, s.Value} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return strings.Join(parts, " = ")
}

// Working is the steps of one result in order. It is built only when asked
// for, from the same numbers that the result holds.
type Working []Step

// String is one step a line.
func (w Working) String() string {
	var b strings.Builder
	for _, s := range w {
		b.WriteString(s.String())
		b.WriteByte('\n')
	}
	return b.String()
}
