package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"manway.example/manway/examples/internal/fold"
	"manway.example/manway/examples/internal/record"
)

// cell is one cell of a list: words, or a number and how people read it.
type cell struct {
	text   string
	number *float64
}

func words(text string) cell { return cell{text: text} }

func number(x float64, text string) cell { return cell{text, &x} }

// columns of the two lists.
var (
	reminderColumns = []string{"kind", "since", "days", "visit", "what"}
	disposalColumns = []string{"date", "visit", "volume_gal", "site", "ticket", "field", "field_year_gal", "field_most_gal"}
)

func (c call) columns() []string {
	if c.log {
		return disposalColumns
	}
	return reminderColumns
}

func (c call) write(w io.Writer, rows [][]cell) error {
	switch c.out {
	case "csv":
		return c.writeCSV(w, rows)
	case "json":
		return c.writeJSON(w, rows)
	}
	if len(rows) == 0 {
		_, err := fmt.Fprintln(w, "nothing to list")
		return err
	}
	var b strings.Builder
	table := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, row := range rows {
		texts := make([]string, len(row))
		for i, one := range row {
			texts[i] = one.text
		}
		fmt.Fprintln(table, strings.TrimRight(strings.Join(texts, "\t"), "\t"))
	}
	if err := table.Flush(); err != nil {
		return err
	}
	_, err := io.WriteString(w, fold.Text(b.String()))
	return err
}

func (c call) writeCSV(w io.Writer, rows [][]cell) error {
	out := csv.NewWriter(w)
	lines := [][]string{c.columns()}
	for _, row := range rows {
		line := make([]string, len(row))
		for i, one := range row {
			line[i] = record.Harmless(one.text)
			if one.number != nil {
				line[i] = string(record.AppendNumber(nil, *one.number))
			}
		}
		lines = append(lines, line)
	}
	return out.WriteAll(lines)
}

// writeJSON writes an object a line; a number that is not known is left out.
func (c call) writeJSON(w io.Writer, rows [][]cell) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	for _, row := range rows {
		line := map[string]any{}
		for i, name := range c.columns() {
			switch one := row[i]; {
			case one.number != nil:
				line[name] = json.RawMessage(record.AppendNumber(nil, *one.number))
			case one.text != "":
				line[name] = one.text
			}
		}
		if err := enc.Encode(line); err != nil {
			return err
		}
	}
	return nil
}
