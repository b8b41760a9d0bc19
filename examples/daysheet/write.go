package main

import (
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"

	"manway.example/manway/examples/internal/record"
)

// sheet is what one call asks for.
type sheet struct {
	columns []column
	needs   needs
}

func newCommand() record.Command[input, output] {
	var s sheet
	var list string
	return record.Command[input, output]{
		Name: "daysheet",
		Doc:  record.Comment(source),
		Flags: func(fs *flag.FlagSet, in *input) {
			flags(fs, in)
			fs.StringVar(&list, "columns", usualColumns, "`NAMES` of what is answered, with commas between them")
		},
		Start: func(c *record.Command[input, output]) (err error) {
			s.columns, s.needs, err = choose(list)
			c.Columns = make([]string, len(s.columns))
			for i := range s.columns {
				c.Columns[i] = s.columns[i].header
			}
			return err
		},
		ID:      func(in *input) string { return in.ID },
		Do:      func(in *input) (output, error) { return compute(in, s.needs) },
		Text:    s.text,
		JSON:    s.json,
		Columns: strings.Split(usualColumns, ","),
		Rows:    s.rows,
	}
}

func (s *sheet) rows(r *record.Row, in *input, out *output) {
	for i := range s.columns {
		c := &s.columns[i]
		if c.number == nil {
			r.Text(c.text(in, out))
		} else if v := c.number(out); v.ok {
			r.Number(v.v / c.unit)
		} else {
			r.Empty()
		}
	}
}

// text is the words of a column; empty: not known.
func (c *column) text(in *input, out *output) string {
	if c.words == nil {
		return in.ID
	}
	return c.words(out)
}

func (s *sheet) json(j *record.JSON, in *input, out *output) {
	for i := range s.columns {
		c := &s.columns[i]
		switch {
		case c.header == "cautions": // comes last, as a list
		case c.number != nil:
			if v := c.number(out); v.ok {
				j.Number(c.header, v.v/c.unit)
			} else {
				j.Null(c.header)
			}
		default:
			if words := c.text(in, out); words != "" {
				j.Text(c.header, words)
			} else {
				j.Null(c.header)
			}
		}
	}
	j.Texts("cautions", out.cautions.Codes())
}

// text writes a line for people, and below it the codes of the cautions.
func (s *sheet) text(w io.Writer, in *input, out *output) error {
	var b strings.Builder
	b.WriteString(in.ID)
	if in.ID == "" {
		b.WriteString("tank")
	}
	between := ": "
	for i := range s.columns {
		c := &s.columns[i]
		if c.header == "id" || c.header == "cautions" {
			continue
		}
		b.WriteString(between + c.title() + " " + c.shown(in, out))
		between = ", "
	}
	fmt.Fprintf(&b, "\n  cautions: %s\n", strings.Join(out.cautions.Codes(), ", "))
	_, err := io.WriteString(w, b.String())
	return err
}

// title is the name of a column as a person reads it.
func (c *column) title() string { return strings.ReplaceAll(c.name, "_", " ") }

// shown is the value of a column for people, with its unit.
func (c *column) shown(in *input, out *output) string {
	if c.number == nil {
		if words := c.text(in, out); words != "" {
			return words
		}
		return "not known"
	}
	v := c.number(out)
	if !v.ok {
		return "not known"
	}
	digits := strings.TrimSuffix(strconv.FormatFloat(v.v/c.unit, 'f', 1, 64), ".0")
	if c.usual == "" {
		return strconv.FormatFloat(v.v, 'g', 3, 64)
	}
	return digits + " " + c.header[len(c.name)+1:]
}
