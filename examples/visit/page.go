package visit

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"

	"manway.example/manway"
)

// Figure is one drawing of a section: a self-contained SVG element made by this
// package from escaped text.
type Figure struct {
	Caption string
	SVG     template.HTML
}

//go:embed page.tmpl
var pageText string

var page = template.Must(template.New("page").Funcs(template.FuncMap{
	"rows":     func(s Section) []checkRow { rows, _ := checkRows(s.Checks, s.System); return rows },
	"notes":    func(s Section) []string { _, notes := checkRows(s.Checks, s.System); return notes },
	"notice":   func() string { return structureNotice },
	"number":   func(c Cell) bool { return c.Is == Number },
	"unknown":  func(c Cell) bool { return c.Is == Unknown },
	"stop":     func(c manway.Caution) bool { return c.Level == manway.Stop },
	"taken":    taken,
	"right":    func(rows [][]Cell, i int) bool { return len(rows) > 0 && rows[0][i].Is == Number },
	"citation": manway.Citation.String,
}).Parse(pageText))

// WriteHTML writes the whole visit as one self-contained page that prints and
// reads on a phone. The page is made whole before the first byte is written.
func (v Visit) WriteHTML(w io.Writer) error {
	var b bytes.Buffer
	if err := page.Execute(&b, v); err != nil {
		return fmt.Errorf("page: %w", err)
	}
	_, err := w.Write(b.Bytes())
	return err
}
