package main

import (
	"flag"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/prices"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/riser"
)

func command() record.Command[input, output] {
	var files prices.Files
	var book prices.Book
	return record.Command[input, output]{
		Name: "takeoff",
		Doc:  record.Comment(source),
		Flags: func(fs *flag.FlagSet, in *input) {
			flags(fs, in)
			files.Flags(fs)
		},
		Start: func(*record.Command[input, output]) (err error) {
			book, err = files.Read()
			return err
		},
		ID:   func(in *input) string { return in.ID },
		Do:   func(in *input) (output, error) { return compute(in, book) },
		Text: writeText,
		JSON: writeJSON,
		Columns: []string{"id", "code", "description", "class", "quantity", "unit", "net", "net_unit", "waste_percent", "leftover", "crew",
			"unit_price", "amount", "currency", "to_owner", "missing", "working"},
		Rows: writeRows,
	}
}

// working is the steps of a quantity on one line.
func working(l cost.Line) string {
	return strings.ReplaceAll(strings.TrimSuffix(l.Working().String(), "\n"), "\n", "; ")
}

func writeText(w io.Writer, in *input, out *output) error {
	e := out.estimate
	if title := strings.TrimSpace(in.ID + " " + in.Title); title != "" {
		fmt.Fprintln(w, title)
	}
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprint(table, "code\tquantity\tunit\t")
	if out.priced {
		fmt.Fprintf(table, "price\t%s\t", e.Currency)
	}
	fmt.Fprintln(table, "description")
	for i, l := range out.lines {
		fmt.Fprintf(table, "%s\t%.6g\t%s\t", l.Code, l.Quantity, l.Unit)
		if out.priced {
			p := e.Lines[i]
			if p.Priced {
				fmt.Fprintf(table, "%s\t%s\t", p.UnitPrice, p.Amount.StringFixed(int32(e.Places)))
			} else {
				fmt.Fprintf(table, "-\tno price\t")
			}
		}
		fmt.Fprintln(table, l.Description)
	}
	if err := table.Flush(); err != nil {
		return err
	}
	fmt.Fprintln(w, "\nWhere the quantities come from")
	for _, l := range out.lines {
		if s := working(l); s != "" {
			fmt.Fprintf(w, "  %s: %s\n", l.Code, s)
		}
	}
	if out.priced {
		writePrice(w, out)
	}
	return nil
}

// writePrice writes how the total comes about, its range and what it leaves out.
func writePrice(w io.Writer, out *output) {
	e := out.estimate
	fmt.Fprintln(w, "\nPrice")
	for c, sum := range e.Classes {
		if !sum.IsZero() {
			fmt.Fprintf(w, "  %s %s\n", riser.Class(c), money(e, sum))
		}
	}
	for _, s := range e.Working() {
		fmt.Fprintf(w, "  %s\n", s)
	}
	if !e.Complete {
		fmt.Fprintln(w, "\nINCOMPLETE: not priced, and not in the total")
		for _, m := range e.Missing {
			fmt.Fprintf(w, "  %s: %s\n", m.Code, m.Reason)
		}
	}
	if s := out.spread; s != nil {
		fmt.Fprintf(w, "\nRange from %d draws, seed %d: P10 %s, P50 %s, P90 %s\n", s.Draws, s.Seed, money(e, s.P10), money(e, s.P50), money(e, s.P90))
		for _, d := range s.Drivers {
			fmt.Fprintf(w, "  %s drives %.0f %% of the spread\n", d.Code, 100*d.Part)
		}
	}
	for _, c := range e.Changes {
		if c.Priced {
			fmt.Fprintf(w, "\nIf %s is found: %s, %s more\n", c.If, c.Work, money(e, c.Amount))
		} else {
			fmt.Fprintf(w, "\nIf %s is found: %s, no price: %s\n", c.If, c.Work, c.Reason)
		}
	}
	if !e.ValidUntil.IsZero() {
		fmt.Fprintf(w, "\nHolds until %s\n", e.ValidUntil)
	}
	for _, x := range e.Exclusions {
		fmt.Fprintf(w, "Not included: %s\n", x)
	}
	fmt.Fprintln(w)
	for _, c := range e.Cautions.List() {
		fmt.Fprintf(w, "%s: %s\n", c.Level, c.Sentence)
	}
	fmt.Fprintln(w, "\nSources")
	for _, s := range basis(out) {
		fmt.Fprintf(w, "  %s\n", s)
	}
}

func money(e cost.Estimate, d decimal.Decimal) string { return e.Currency.Text(d) }

// basis is every source of the lines and of the price, each once.
func basis(out *output) []string {
	var list []string
	seen := map[string]bool{}
	add := func(c manway.Citation) {
		if s := c.String(); s != "" && !seen[s] {
			seen[s] = true
			list = append(list, s)
		}
	}
	for _, l := range out.lines {
		for _, c := range l.Basis {
			add(c)
		}
	}
	if out.priced {
		for _, c := range out.estimate.Basis() {
			add(c)
		}
	}
	return list
}

func writeJSON(j *record.JSON, in *input, out *output) {
	e := out.estimate
	j.Text("id", in.ID)
	j.Text("title", in.Title)
	j.List("lines")
	for i, l := range out.lines {
		j.Object("")
		j.Text("code", l.Code)
		j.Text("description", l.Description)
		j.Text("class", l.Class.String())
		j.Number("quantity", l.Quantity)
		j.Text("unit", string(l.Unit))
		j.Number("net", l.Net)
		j.Text("net_unit", string(l.NetUnit))
		j.Number("waste_percent", l.WastePercent)
		j.Number("leftover", l.Leftover)
		j.Int("crew", l.Crew)
		j.Text("working", working(l))
		if out.priced {
			p := e.Lines[i]
			j.Bool("priced", p.Priced)
			if p.Priced {
				j.Text("unit_price", p.UnitPrice.String())
				j.Text("amount", p.Amount.StringFixed(int32(e.Places)))
				j.Text("to_owner", p.ToOwner.StringFixed(int32(e.Places)))
			} else {
				j.Text("missing", p.Reason)
			}
		}
		j.End()
	}
	j.End()
	if out.priced {
		priceJSON(j, out)
	}
	j.Texts("sources", basis(out))
}

// rangeJSON writes the range of the price, where lines have ranges.
func rangeJSON(j *record.JSON, out *output) {
	fixed := func(d decimal.Decimal) string { return d.StringFixed(int32(out.estimate.Places)) }
	if s := out.spread; s != nil {
		j.Object("range")
		j.Text("p10", fixed(s.P10))
		j.Text("p50", fixed(s.P50))
		j.Text("p90", fixed(s.P90))
		j.Text("mean", fixed(s.Mean))
		j.Text("sd", fixed(s.SD))
		j.Int("draws", s.Draws)
		j.List("drivers")
		for _, d := range s.Drivers {
			j.Object("")
			j.Text("code", d.Code)
			j.Number("part", d.Part)
			j.End()
		}
		j.End()
		j.End()
	}
}

func priceJSON(j *record.JSON, out *output) {
	e := out.estimate
	fixed := func(d decimal.Decimal) string { return d.StringFixed(int32(e.Places)) }
	j.Text("currency", string(e.Currency))
	j.Text("rounding", e.Rounding.String())
	j.Object("classes")
	for c, sum := range e.Classes {
		if !sum.IsZero() {
			j.Text(riser.Class(c).String(), fixed(sum))
		}
	}
	j.End()
	j.Text("direct", fixed(e.Direct))
	j.List("charges")
	for _, c := range e.Charges {
		j.Object("")
		j.Text("title", c.Title)
		j.Text("percent", c.Percent.String())
		j.Text("of", fixed(c.Of))
		j.Text("amount", fixed(c.Amount))
		j.End()
	}
	j.End()
	j.Text("total", fixed(e.Total))
	j.Bool("complete", e.Complete)
	j.List("missing")
	for _, m := range e.Missing {
		j.Object("")
		j.Text("code", m.Code)
		j.Text("reason", m.Reason)
		j.End()
	}
	j.End()
	rangeJSON(j, out)
	j.List("change_orders")
	for _, c := range e.Changes {
		j.Object("")
		j.Text("if", c.If)
		j.Text("work", c.Work)
		if c.Priced {
			j.Text("amount", fixed(c.Amount))
		} else {
			j.Text("missing", c.Reason)
		}
		j.End()
	}
	j.End()
	j.Text("valid_until", e.ValidUntil.String())
	j.Texts("exclusions", e.Exclusions)
	j.Any("cautions", e.Cautions)
}

func writeRows(r *record.Row, in *input, out *output) {
	e := out.estimate
	for i, l := range out.lines {
		if i > 0 {
			r.Next()
		}
		r.Text(in.ID)
		r.Text(l.Code)
		r.Text(l.Description)
		r.Text(l.Class.String())
		r.Number(l.Quantity)
		r.Text(string(l.Unit))
		r.Number(l.Net)
		r.Text(string(l.NetUnit))
		r.Number(l.WastePercent)
		r.Number(l.Leftover)
		r.Int(l.Crew)
		amount(r, e, i, out.priced)
		r.Text(working(l))
	}
	for _, c := range e.Charges {
		r.Next()
		r.Text(in.ID)
		r.Empty()
		r.Text(c.Title)
		r.Text("charge")
		for range 8 {
			r.Empty()
		}
		r.Text(c.Amount.StringFixed(int32(e.Places)))
		r.Text(string(e.Currency))
		r.Empty()
		r.Empty()
		r.Empty()
	}
}

// amount writes the cells of the price of one line.
func amount(r *record.Row, e cost.Estimate, i int, priced bool) {
	if !priced {
		for range 5 {
			r.Empty()
		}
		return
	}
	p := e.Lines[i]
	if !p.Priced {
		r.Empty()
		r.Empty()
		r.Text(string(e.Currency))
		r.Empty()
		r.Text(p.Reason)
		return
	}
	r.Text(p.UnitPrice.String())
	r.Text(p.Amount.StringFixed(int32(e.Places)))
	r.Text(string(e.Currency))
	r.Text(p.ToOwner.StringFixed(int32(e.Places)))
	r.Empty()
}
