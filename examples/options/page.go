package main

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
)

//go:embed page.tmpl
var pageText string

var page = template.Must(template.New("page").Funcs(template.FuncMap{
	"join":   strings.Join,
	"number": func(i int) int { return i + 1 },
}).Parse(pageText))

// sheet is the quote as the page shows it.
type sheet struct {
	cost.Quote
	Chart     template.HTML // drawn by this program, its texts escaped
	Years     int
	BreakEven []string
}

// Money is an amount with its currency.
func (s sheet) Money(d decimal.Decimal) string { return s.Currency.Text(d) }

// PaidBy is the totals by year in one line.
func (s sheet) PaidBy(marks []cost.Mark) string {
	var parts []string
	for _, m := range marks {
		parts = append(parts, fmt.Sprintf("%s by year %d", s.Money(m.Paid), m.Year))
	}
	return strings.Join(parts, ", ")
}

func writeHTML(w io.Writer, in *input, out *output) error {
	chart := draw(in, out).String()
	if chart == "" {
		return fmt.Errorf("the chart could not be drawn")
	}
	s := sheet{Quote: out.quote, Chart: template.HTML(chart), Years: out.comparison.Horizon.Years}
	for _, b := range out.comparison.BreakEven {
		s.BreakEven = append(s.BreakEven, sentence(b))
	}
	return page.Execute(w, s)
}
