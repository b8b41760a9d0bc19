package main

import (
	"flag"
	"fmt"
	"io"
	"iter"
	"strings"
	"text/tabwriter"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/prices"
	"manway.example/manway/examples/internal/record"
)

func command() record.Command[input, output] {
	var files prices.Files
	var book prices.Book
	return record.Command[input, output]{
		Name: "options",
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
		Columns: []string{"id", "option", "scenario", "life_years", "first", "paid_year_5", "paid_year_10", "paid_year_20", "paid_in_all",
			"unused_life", "present_value", "equivalent_annual", "repeated_annual", "currency"},
		Rows:      writeRows,
		Documents: map[string]func(io.Writer, *input, *output) error{"svg": writeSVG, "html": writeHTML},
	}
}

func writeText(w io.Writer, in *input, out *output) error {
	if _, err := io.WriteString(w, out.quote.Text()); err != nil {
		return err
	}
	c := out.comparison
	h := c.Horizon
	fmt.Fprintf(w, "\nFOR THE DESK: %d years at %s %s, prices rising %s a year, unused life by %s\n\n", h.Years, h.Rate, h.Prices, h.Escalation, h.Unused)
	if err := writeCourses(w, c); err != nil {
		return err
	}
	fmt.Fprintf(w, "\nLeast present value: %s if things go well, %s as usual, %s if they go badly.\n", c.Cheapest[cost.Good], c.Cheapest[cost.Usual], c.Cheapest[cost.Bad])
	for _, b := range c.BreakEven {
		fmt.Fprintf(w, "%s\n", sentence(b))
	}
	writeFlips(w, c)
	fmt.Fprintln(w, "\nWhat moves the yearly cost, as usual")
	for _, s := range c.Swings {
		fmt.Fprintf(w, "  %s: %s %s to %s gives %s to %s a year\n", s.Option, s.Parameter, value(s.Parameter, s.From), value(s.Parameter, s.To), fixed(c, s.Low), fixed(c, s.High))
	}
	fmt.Fprintln(w, "\nSources")
	for _, b := range c.Basis() {
		fmt.Fprintf(w, "  %s\n", b)
	}
	return nil
}

// writeCourses writes what each option costs, a line each case under its name.
func writeCourses(w io.Writer, c cost.Comparison) error {
	var b strings.Builder
	table := tabwriter.NewWriter(&b, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprint(table, "case\tlife, yr\tpaid in all\tunused\tpresent value\ta year\trepeated, a year\t\n")
	for _, o := range c.Options {
		for s, k := range o.Courses {
			fmt.Fprintf(table, "%s\t%s\t%s\t%s\t%s\t%s\t%s\t\n", cost.Scenario(s), life(k.Life), fixed(c, k.Marks[len(k.Marks)-1].Paid), fixed(c, k.UnusedLife), fixed(c, k.PresentValue), fixed(c, k.EquivalentAnnual), repeated(c, k))
		}
	}
	if err := table.Flush(); err != nil {
		return err
	}
	header, rows, _ := strings.Cut(b.String(), "\n")
	fmt.Fprintln(w, header)
	next, stop := iter.Pull(strings.Lines(rows))
	defer stop()
	for _, o := range c.Options {
		fmt.Fprintln(w, o.ID)
		for range o.Courses {
			row, _ := next()
			fmt.Fprintln(w, strings.TrimRight(row, " \n"))
		}
	}
	return nil
}

func writeFlips(w io.Writer, c cost.Comparison) {
	if len(c.Options) < 2 {
		return
	}
	flips := c.Flips()
	if len(flips) == 0 {
		fmt.Fprintln(w, "The answer as usual does not flip within the ranges tried.")
		return
	}
	fmt.Fprintf(w, "\nWhere the answer as usual flips, over %d years with unused life by %s\n", c.Horizon.Years, c.Horizon.Unused)
	for _, f := range flips {
		of := ""
		if f.Of != "" {
			of = " of " + f.Of
		}
		fmt.Fprintf(w, "  %s%s %s (now %s): below it %s, above it %s\n", f.Parameter, of, value(f.Parameter, f.At), value(f.Parameter, f.Now), f.Below, f.Above)
	}
}

// sentence says how long the cheaper option must last.
func sentence(b cost.BreakEven) string {
	s := b.Cheap + " against " + b.Dear + ": "
	if b.Repeating.State == cost.NotJudged && b.Deferring.State == cost.NotJudged {
		s += "break-even not judged, " + b.Repeating.Reason
	} else {
		if b.Repeating.State != cost.NotJudged {
			s += "done again each time, it breaks even " + when(b.Repeating) + "; "
		}
		s += "putting " + b.Dear + " off, it breaks even " + when(b.Deferring)
	}
	return s + "; the higher first cost of " + b.Dear + " " + back(b.Payback, "") + ", " + back(b.Discounted, " discounted") + "."
}

// back says when a higher first cost has come back.
func back(w cost.When, how string) string {
	if w.State == cost.InYears {
		return fmt.Sprintf("comes back%s by year %.1f", how, w.Years)
	}
	return "does not come back" + how
}

func when(w cost.When) string {
	switch w.State {
	case cost.InYears:
		return fmt.Sprintf("at a life of %.2f years", w.Years)
	case cost.Always:
		return "at any life"
	case cost.Never:
		return "at no life"
	}
	return "(not judged: " + w.Reason + ")"
}

// value is a parameter for people.
func value(p cost.Parameter, v float64) string {
	switch p {
	case cost.OfRate, cost.OfEscalation:
		return fmt.Sprintf("%.2f %%", 100*v)
	case cost.OfHorizon, cost.OfLife:
		return fmt.Sprintf("%.4g years", v)
	}
	return fmt.Sprintf("%.2f", v)
}

// repeated is the yearly cost of the option repeated alike, empty where it is not.
func repeated(c cost.Comparison, k cost.Course) string {
	if !k.Repeated.Valid {
		return ""
	}
	return fixed(c, k.Repeated.Decimal)
}

func life(years float64) string {
	if years == 0 {
		return "for ever"
	}
	return fmt.Sprintf("%.4g", years)
}

func fixed(c cost.Comparison, d decimal.Decimal) string { return d.StringFixed(int32(c.Places)) }

func writeRows(r *record.Row, in *input, out *output) {
	c := out.comparison
	for i, o := range c.Options {
		for s, k := range o.Courses {
			if i+s > 0 {
				r.Next()
			}
			r.Text(in.ID)
			r.Text(o.ID)
			r.Text(cost.Scenario(s).String())
			if k.Life > 0 {
				r.Number(k.Life)
			} else {
				r.Empty()
			}
			amount(r, c, out.first(o.ID))
			for _, year := range [...]int{5, 10, 20} {
				if year < len(k.Curve) {
					amount(r, c, k.Curve[year].Paid)
				} else {
					r.Empty()
				}
			}
			amount(r, c, k.Marks[len(k.Marks)-1].Paid)
			amount(r, c, k.UnusedLife)
			amount(r, c, k.PresentValue)
			amount(r, c, k.EquivalentAnnual)
			if k.Repeated.Valid {
				amount(r, c, k.Repeated.Decimal)
			} else {
				r.Empty()
			}
			r.Text(string(c.Horizon.Currency))
		}
	}
}

// amount writes money; income, below 0, as a number, since a text that starts
// with a minus is kept from being a formula.
func amount(r *record.Row, c cost.Comparison, d decimal.Decimal) {
	if d.IsNegative() {
		r.Number(d.InexactFloat64())
	} else {
		r.Text(fixed(c, d))
	}
}

// first is the first cost of an option.
func (out *output) first(id string) decimal.Decimal {
	for _, o := range out.options {
		if o.ID == id {
			return o.First.Decimal
		}
	}
	return decimal.Decimal{}
}
