package cost

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Way is one remedy as an owner is told of it.
type Way struct {
	Title      string
	Cures      []string // gone for the life of the remedy
	Delays     []string // back before long
	Leaves     []string // still there afterwards
	Price      decimal.Decimal
	Low, High  decimal.NullDecimal // one in ten prices is below Low, one in ten above High
	Missing    []Missing           // what the price leaves out; empty where it is complete
	Life       Lives               // years; all 0 where it only bridges the time to the next
	Then       string              // what follows at the end of that life; empty for the same again
	Paid       []Mark              // in the usual case
	PaidBad    []Mark              // in the bad case
	NeedsEntry bool                // of a permit-required confined space
	NeedsDig   bool
	NeedsPump  bool
	Permit     string // who must allow it; empty where nobody is known to ask
	RuledOut   string // why it cannot be done as things are
	Changes    []PricedChange
	Cautions   manway.Cautions
}

// Quote is what the owner gets to read and sign.
type Quote struct {
	Title      string
	Site       string
	On         manway.Date
	ValidUntil manway.Date
	Currency   Currency
	Saw        []string // what we saw, most urgent first
	Means      []string // what it means
	Ways       []Way
	Exclusions []string
	Terms      []string
	Cautions   manway.Cautions
}

// Way puts together what an owner is told of a remedy, from its estimate and, where
// they were made, the range of its price and its course over the years.
func (e Estimate) Way(r riser.Remedy, s *Spread, o *Outlook) Way {
	w := Way{
		Title: r.Title, Cures: words(r.Cures), Delays: words(r.Delays), Leaves: words(r.Leaves),
		Price: e.Total, Missing: e.Missing, Changes: e.Changes,
		Life:       Lives{r.Life.High.In(manway.Year), r.Life.Usual.In(manway.Year), r.Life.Low.In(manway.Year)},
		NeedsEntry: r.NeedsEntry, NeedsDig: r.NeedsDig, NeedsPump: r.NeedsPump,
		Permit: r.Permit, RuledOut: r.RuledOut, Cautions: r.Cautions | e.Cautions,
	}
	if s != nil {
		w.SetRange(*s)
	}
	if o != nil {
		w.Paid, w.PaidBad = o.Courses[Usual].Marks, o.Courses[Bad].Marks
	}
	return w
}

// SetRange takes the range of the price from a simulation.
func (w *Way) SetRange(s Spread) {
	w.Low, w.High = decimal.NewNullDecimal(s.P10), decimal.NewNullDecimal(s.P90)
}

func words(kinds []riser.DefectKind) []string {
	list := make([]string, len(kinds))
	for i, k := range kinds {
		list[i] = strings.ReplaceAll(string(k), "-", " ")
	}
	return list
}

// Needs is what a way asks for before it is begun, in words: entry, dig, pump,
// permit.
func (w Way) Needs() []string {
	var list []string
	if w.NeedsEntry {
		list = append(list, "entry of a permit-required confined space by trained people")
	}
	if w.NeedsDig {
		list = append(list, "digging, after buried lines are marked")
	}
	if w.NeedsPump {
		list = append(list, "the tank pumped down first")
	}
	if w.Permit != "" {
		list = append(list, "a permit: "+w.Permit)
	}
	return list
}

// Text is the quote as a page of plain text, 76 columns wide.
func (q Quote) Text() string {
	var p page
	p.line("QUOTE  " + q.Title)
	if where := strings.TrimSpace(q.Site + "  " + q.On.String()); where != "" {
		p.line(where)
	}
	p.list("What we saw", q.Saw)
	p.list("What it means", q.Means)
	p.head("What can be done")
	for i, w := range q.Ways {
		q.way(&p, i+1, w)
	}
	p.list("Not included", q.Exclusions)
	terms := append([]string(nil), q.Terms...)
	if !q.ValidUntil.IsZero() {
		terms = append(terms, "These prices hold until "+q.ValidUntil.String()+".")
	}
	p.list("Terms", terms)
	var cautions []string
	for _, c := range q.Cautions.List() {
		cautions = append(cautions, c.Sentence)
	}
	p.list("Please note", cautions)
	p.line("")
	p.line("I choose way number ____        Signed ______________________  Date __________")
	return p.String()
}

func (q Quote) way(p *page, number int, w Way) {
	p.line("")
	p.line(strconv.Itoa(number) + ". " + w.Title)
	if w.RuledOut != "" {
		p.item("Cannot be done as things are: " + w.RuledOut)
		return
	}
	p.item("Price: " + q.price(w))
	p.item("Lasts: " + w.lasts())
	if paid := q.paid(w.Paid); paid != "" {
		p.item("Paid in all, if things go as usual: " + paid)
	}
	if paid := q.paid(w.PaidBad); paid != "" {
		p.item("Paid in all, if things go badly: " + paid)
	}
	for _, part := range [...]struct {
		title string
		list  []string
	}{{"Puts right", w.Cures}, {"Only delays", w.Delays}, {"Leaves as it is", w.Leaves}, {"Needs", w.Needs()}} {
		if len(part.list) > 0 {
			p.item(part.title + ": " + strings.Join(part.list, "; "))
		}
	}
	for _, c := range w.Changes {
		price := "price on request"
		if c.Priced {
			price = q.money(c.Amount) + " more"
		}
		p.item(fmt.Sprintf("If we find %s: %s, %s", c.If, c.Work, price))
	}
}

// lasts is the life and what follows.
func (w Way) lasts() string {
	if w.Then == "" {
		return w.Life.String()
	}
	return w.Life.String() + ", then " + w.Then
}

// price is the price with its range and what it leaves out.
func (q Quote) price(w Way) string {
	s := q.money(w.Price)
	if w.Low.Valid && w.High.Valid {
		s += fmt.Sprintf(", in 8 cases of 10 between %s and %s", q.money(w.Low.Decimal), q.money(w.High.Decimal))
	}
	if len(w.Missing) > 0 {
		var codes []string
		for _, m := range w.Missing {
			codes = append(codes, m.Description)
		}
		s += "; incomplete, not priced: " + strings.Join(codes, ", ")
	}
	return s
}

func (q Quote) paid(marks []Mark) string {
	var parts []string
	for _, m := range marks {
		parts = append(parts, fmt.Sprintf("%s by year %d", q.money(m.Paid), m.Year))
	}
	return strings.Join(parts, ", ")
}

func (q Quote) money(d decimal.Decimal) string { return q.Currency.Text(d) }

// Text is an amount for people: 1,250.00 USD, with the decimal places of
// the currency.
func (c Currency) Text(d decimal.Decimal) string {
	places, err := c.MinorUnit()
	if err != nil {
		places = 2
	}
	var faults manway.InputErrors
	if !checkNumber(&faults, "Amount", d) {
		return "beyond 1e12 " + string(c)
	}
	s := d.StringFixed(int32(places))
	whole, frac, point := strings.Cut(s, ".")
	first := 0
	if strings.HasPrefix(whole, "-") {
		first = 1
	}
	for i := len(whole) - 3; i > first; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if point {
		whole += "." + frac
	}
	return whole + " " + string(c)
}

// String is the lives for people: 3 years, 1 to 6.
func (l Lives) String() string {
	if l == (Lives{}) {
		return "only until the next measure"
	}
	s := shortNumber(l.Usual) + " years"
	if l.Usual == 1 {
		s = "1 year"
	}
	if l.Bad != l.Good {
		s += ", " + shortNumber(l.Bad) + " to " + shortNumber(l.Good)
	}
	return s
}

// page is text wrapped to a width.
type page struct{ strings.Builder }

const pageWidth = 76

func (p *page) line(s string) { p.WriteString(strings.TrimRight(s, " ") + "\n") }

func (p *page) head(s string) {
	p.line("")
	p.line(s)
	p.line(strings.Repeat("-", len(s)))
}

func (p *page) list(head string, items []string) {
	if len(items) == 0 {
		return
	}
	p.head(head)
	for _, s := range items {
		p.item(s)
	}
}

// item wraps one point, its further lines indented.
func (p *page) item(s string) {
	line, indent := " -", "  "
	for _, w := range strings.Fields(s) {
		if len([]rune(line))+1+len([]rune(w)) > pageWidth && line != indent {
			p.line(line)
			line = indent
		}
		line += " " + w
	}
	p.line(line)
}
