package main

import (
	"fmt"
	"io"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
)

var command = record.Command[input, output]{
	Name:    "bycode",
	Doc:     record.Comment(source),
	Flags:   flags,
	ID:      func(in *input) string { return in.ID },
	Do:      judge,
	Partial: true,
	Text:    writeText,
	JSON:    writeJSON,
	Columns: []string{"id", "rules", "check", "status", "demand", "capacity", "reason", "source"},
	Rows:    writeRows,
}

func writeJSON(j *record.JSON, in *input, out *output) {
	j.Text("id", in.ID)
	j.Text("rules", out.rules.ID)
	j.Text("name", out.rules.Name)
	j.Any("checks", out.Checks)
	j.Any("cautions", out.Cautions)
}

func writeRows(r *record.Row, in *input, out *output) {
	for i, c := range out.Checks {
		if i > 0 {
			r.Next()
		}
		demand, capacity := figures(c, in.Units)
		r.Text(in.ID)
		r.Text(out.rules.ID)
		r.Text(c.Name)
		r.Text(c.Status.String())
		r.Text(demand)
		r.Text(capacity)
		r.Text(c.Reason)
		r.Text(c.Source.String())
	}
}

// figures are what was asked and what there is, in words; empty where there is
// none.
func figures(c manway.Check, sys manway.System) (demand, capacity string) {
	if c.Demand == 0 && c.Capacity == 0 {
		return "", ""
	}
	return c.Kind.Text(c.Demand, sys), c.Kind.Text(c.Capacity, sys)
}

func writeText(w io.Writer, in *input, out *output) error {
	name := in.ID
	if name == "" {
		name = "tank"
	}
	fmt.Fprintf(w, "%s by the rules of %s\n", name, out.rules.Name)
	place := ""
	for _, c := range out.Checks {
		if c.Source.Place != place {
			place = c.Source.Place
			fmt.Fprintln(w, place)
		}
		said := c.Reason
		if demand, capacity := figures(c, in.Units); said == "" && demand != "" {
			said = demand + " against " + capacity
		}
		fmt.Fprintf(w, "  %-10v  %s: %s\n", c.Status.Asked(), c.Name, said)
	}
	seen := map[*manway.Source]bool{}
	for _, c := range out.Checks {
		if s := c.Source.Source; !seen[s] {
			seen[s] = true
			fmt.Fprintf(w, "Source: %v\n", manway.Citation{Source: s})
		}
	}
	for _, c := range out.Cautions.List() {
		fmt.Fprintln(w, c.Sentence)
	}
	return nil
}
