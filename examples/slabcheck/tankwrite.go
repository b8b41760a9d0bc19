package main

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/tank"
)

// tankCautions are those of all parts together.
func (o *tankOutput) cautions() (all manway.Cautions) {
	for i := range o.parts {
		all |= o.parts[i].cautions
	}
	return all | cautions
}

func (o *tankOutput) assumed() (all manway.Assumptions) {
	for i := range o.parts {
		all |= o.parts[i].assumed
	}
	return all
}

func writeTankJSON(j *record.JSON, in *input, out *tankOutput) {
	j.Text("id", in.ID)
	j.Text("title", tank.StrengthTitle)
	j.List("parts")
	for i := range out.parts {
		p := &out.parts[i]
		j.Object("")
		j.Text("part", p.name)
		if p.governs != nil {
			j.Text("governs", p.governs.Name)
			if use, ok := p.governs.Use(); ok {
				j.Number("use", use)
			}
		}
		if p.hasPlace {
			j.Object("weakest")
			j.Number("along_in", p.weakest.Along.In(manway.Inch))
			j.Number("across_in", p.weakest.Across.In(manway.Inch))
			j.End()
		}
		if a := p.accuracy; a.unknowns > 0 {
			j.Number("error_estimate", a.error)
			j.Bool("converged", a.converged)
		}
		j.Texts("remarks", p.remarks)
		j.Any("checks", p.checks)
		j.Any("working", p.working)
		j.End()
	}
	j.End()
	if out.weakest >= 0 {
		j.Text("weakest_part", out.parts[out.weakest].name)
	}
	j.Any("assumed", out.assumed())
	j.Any("cautions", out.cautions())
}

func writeTankText(b *strings.Builder, in *input, out *tankOutput) {
	name := in.ID
	if name == "" {
		name = "tank"
	}
	fmt.Fprintf(b, "%s\n%s\n", name, strings.ToUpper(tank.StrengthTitle))
	for i := range out.parts {
		p := &out.parts[i]
		fmt.Fprintf(b, "\n%s\n", strings.ToUpper(p.name))
		reasons := map[string]int{}
		for _, c := range p.checks {
			textCheck(b, c, in.Units, reasons)
		}
		for reason, n := range ordered(reasons) {
			fmt.Fprintf(b, "  (%d) %s\n", n, reason)
		}
		if a := p.accuracy; a.unknowns > 0 && !a.converged {
			fmt.Fprintf(b, "  NOT CONVERGED: the last mesh moved the governing moment by %.0f %%\n", 100*a.error)
		}
		for _, r := range p.remarks {
			fmt.Fprintf(b, "  %s\n", r)
		}
		if p.hasPlace {
			fmt.Fprintf(b, "  weakest %s along, %s off the centre line\n", p.weakest.Along.Text(in.Units), p.weakest.Across.Text(in.Units))
		}
	}
	if out.weakest >= 0 {
		fmt.Fprintf(b, "\nWeakest part of those that could be reckoned: %s\n", out.parts[out.weakest].name)
	}
	for _, a := range out.assumed().List() {
		fmt.Fprintf(b, "Taken: %s. Better: %s\n", a.Taken, a.Measure)
	}
	for _, c := range out.cautions().List() {
		fmt.Fprintf(b, "%s\n", c.Sentence)
	}
}

// textCheck writes one check in a line; its reason is numbered, since many checks
// share one.
func textCheck(b *strings.Builder, c manway.Check, s manway.System, reasons map[string]int) {
	note := ""
	if c.Reason != "" {
		if reasons[c.Reason] == 0 {
			reasons[c.Reason] = len(reasons) + 1
		}
		note = fmt.Sprintf(" (%d)", reasons[c.Reason])
	}
	if c.Status == manway.NotJudged || c.Kind == manway.Ratio {
		fmt.Fprintf(b, "  %-14s %s%s\n", c.Outcome(), c.Name, note)
		return
	}
	use := "-"
	if u, ok := c.Use(); ok {
		use = fmt.Sprintf("%.2f", u)
	}
	fmt.Fprintf(b, "  %-14s Use %-6s %s: %s of %s (unfactored %s; %s; phi %.2f)%s\n", c.Outcome(), use, c.Name,
		c.Kind.Text(c.Demand, s), c.Kind.Text(c.Capacity, s), c.Kind.Text(c.Unfactored, s), c.Combination, c.Phi, note)
}

// ordered visits reasons by their number.
func ordered(reasons map[string]int) func(func(string, int) bool) {
	list := make([]string, len(reasons))
	for r, n := range reasons {
		list[n-1] = r
	}
	return func(yield func(string, int) bool) {
		for i, r := range list {
			if !yield(r, i+1) {
				return
			}
		}
	}
}

// writeTankRows writes a row for each check, with how exact the governing moment
// of its part is.
func writeTankRows(r *record.Row, in *input, out *tankOutput) {
	first := true
	for i := range out.parts {
		for _, c := range out.parts[i].checks {
			if !first {
				r.Next()
			}
			first = false
			r.Text(in.ID)
			r.Text(out.parts[i].name + ": " + c.Name)
			for range 9 {
				r.Empty()
			}
			if a := out.parts[i].accuracy; a.unknowns > 0 {
				r.Number(a.error)
				r.Bool(a.converged)
			} else {
				r.Empty()
				r.Empty()
			}
			if use, ok := c.Use(); ok {
				r.Number(use)
			} else {
				r.Empty()
			}
			r.Text(c.Status.String())
			r.Text(notice)
		}
	}
}
