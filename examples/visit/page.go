package visit

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"sync"

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

// page is the template, made ready for use: parsed, and every text in it made
// safe for where it stands.
var page = sync.OnceValue(func() *template.Template {
	t := template.Must(template.New("page").Funcs(pageFuncs).Parse(pageText))
	template.Must(t, t.Execute(io.Discard, Visit{})) // its first use makes it safe
	return t
})

var pageFuncs = template.FuncMap{
	"rows":     func(s Section) []checkRow { rows, _ := checkRows(s.Checks, s.System); return rows },
	"notes":    func(s Section) []string { _, notes := checkRows(s.Checks, s.System); return notes },
	"notice":   func() string { return structureNotice },
	"number":   func(c Cell) bool { return c.Is == Number },
	"unknown":  func(c Cell) bool { return c.Is == Unknown },
	"stop":     func(c manway.Caution) bool { return c.Level == manway.Stop },
	"taken":    taken,
	"right":    Table.right,
	"citation": manway.Citation.String,
}

// ReadyHTML makes ready what WriteHTML needs, which else the first page does. A
// command calls it beside its other work.
func ReadyHTML() { page() }

// WriteHTML writes the whole visit as one self-contained page that prints and
// reads on a phone. The page is made whole before the first byte is written.
func (v Visit) WriteHTML(w io.Writer) error {
	var b bytes.Buffer
	if err := page().Execute(&b, v); err != nil {
		return fmt.Errorf("page: %w", err)
	}
	_, err := w.Write(b.Bytes())
	return err
}
