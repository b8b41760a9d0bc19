package visit

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

// remedySection sets the remedies of each access side by side.
func (v Visit) remedySection() Section {
	s := Section{
		ID: "remedies", Title: "Ways to put it right",
		Method: "Each remedy's scope in quantities from the survey, priced line by line from the price book; those that deal with the riser are compared over the years, each renewed when its life ends.",
		Basis:  cost.Comparison{}.Basis(),
	}
	if v.Options.Invented {
		s.Says = append(s.Says, "The prices are invented for demonstration.")
		s.Cautions |= manway.InventedPrices
	}
	for i, a := range v.Survey.Accesses {
		options := v.Options.Accesses[i]
		if can := v.pricedTable(a, options); len(can.Rows) > 0 {
			s.Tables = append(s.Tables, can)
		}
		if out := v.ruledOut(a, options); len(out.Rows) > 0 {
			s.Tables = append(s.Tables, out)
		}
		for _, p := range options.Priced {
			s.Cautions |= p.Cautions | p.Estimate.Cautions
			s.Assumed |= p.Assumed
			s.Basis = merge(s.Basis, []manway.Citation{p.Life.Basis}, p.Estimate.Basis())
			for _, want := range p.Unscoped {
				s.Unjudged = append(s.Unjudged, a.Name+", "+p.Title+": not in the price, "+want+" not known.")
			}
		}
		if !options.Compared {
			s.Unjudged = append(s.Unjudged, a.Name+": fewer than two remedies of the riser could be priced whole, so none are compared over the years.")
			continue
		}
		s.Says = append(s.Says, v.breakEven(a, options)...)
		s.Figures = append(s.Figures, v.costFigure(a, options))
	}
	return s
}

// paidSection is what the compared remedies cost over the years, for the desk.
func (v Visit) paidSection() Section {
	s := Section{
		ID: "paid", Title: "Remedies over the years", For: ForDesk,
		Method: "Each remedy renewed when its life ends: paid in all in its usual life, and the even yearly cost in the usual, a good and a bad life.",
		Basis:  cost.Comparison{}.Basis(),
	}
	for i, a := range v.Survey.Accesses {
		if options := v.Options.Accesses[i]; options.Compared {
			s.Tables = append(s.Tables, v.yearsTable(a, options))
		}
	}
	return s
}

// open is the remedies that can be done as things are, in the order of their
// letters.
func (o AccessOptions) open() []PricedRemedy {
	return slices.DeleteFunc(slices.Clone(o.Priced), func(p PricedRemedy) bool { return p.RuledOut != "" })
}

// letter is what the table and the chart call the i-th remedy.
func letter(i int) string { return string(rune('A' + i)) }

// pricedTable is what can be done at an access as things are.
func (v Visit) pricedTable(a Access, options AccessOptions) Table {
	t := Table{ID: "remedies_" + slug(a.Name), Title: a.Name + ": what can be done",
		Columns: []string{"Remedy", "What it does", "Price, " + string(v.Options.Currency), "Lasts, years", "A year", "Needs"}}
	for i, p := range options.open() {
		price := v.money("price", p.Estimate.Total)
		switch {
		case !v.Options.HasBook:
			price = unknown("price", "no price book given")
		case !p.Estimate.Complete:
			price = unknown("price", "not priced: "+missing(p.Estimate))
		case len(p.Unscoped) > 0:
			price.Text += " and more"
		}
		title := Cell{Text: letter(i) + ". " + p.Title, Parts: []Cell{words("letter", letter(i)), words("remedy", p.Title)}}
		t.Rows = append(t.Rows, []Cell{title, does(p.Remedy), price, {Text: strings.TrimSuffix(lifeText(p.Life), " years"), Parts: []Cell{words("life", lifeText(p.Life))}}, v.yearly(p, options), words("needs", needs(p.Remedy))})
	}
	return t
}

// yearly is the even yearly cost of a remedy in its usual life, where it was
// compared with others.
func (v Visit) yearly(p PricedRemedy, options AccessOptions) Cell {
	if options.Compared {
		for _, o := range options.Comparison.Options {
			if o.ID == string(p.Kind) {
				return v.money("annual", o.Courses[cost.Usual].EquivalentAnnual)
			}
		}
	}
	return unknown("annual", "–")
}

// ruledOut is what cannot be done as things are, with the reasons.
func (v Visit) ruledOut(a Access, options AccessOptions) Table {
	t := Table{ID: "ruled_out_" + slug(a.Name), Title: a.Name + ": ruled out as things are", Columns: []string{"Remedies", "Reason"}, Prose: true}
	at := map[string]int{}
	for _, p := range options.Priced {
		if p.RuledOut == "" {
			continue
		}
		if i, seen := at[p.RuledOut]; seen {
			t.Rows[i][0].Text += "; " + p.Title
			continue
		}
		at[p.RuledOut] = len(t.Rows)
		t.Rows = append(t.Rows, []Cell{words("remedies", p.Title), words("reason", p.RuledOut+".")})
	}
	return t
}

func missing(e cost.Estimate) string {
	codes := make([]string, len(e.Missing))
	for i, m := range e.Missing {
		codes[i] = m.Code
	}
	return "no price for " + strings.Join(codes, ", ")
}

// manyDefects is how many defects left are named one by one; more are counted.
const manyDefects = 3

// does is what a remedy cures, delays and leaves.
func does(r riser.Remedy) Cell {
	c := Cell{Parts: []Cell{words("cures", defects(r.Cures)), words("delays", defects(r.Delays)), words("leaves", defects(r.Leaves))}}
	if len(r.Cures) > 1 && len(r.Delays)+len(r.Leaves) == 0 {
		c.Text = fmt.Sprintf("Cures all %d things seen.", len(r.Cures))
		return c
	}
	var says []string
	for _, part := range [...]struct {
		verb string
		list []riser.DefectKind
	}{{"Cures ", r.Cures}, {"Only delays ", r.Delays}, {"Leaves ", r.Leaves}} {
		switch {
		case len(part.list) > manyDefects && part.verb == "Leaves ":
			says = append(says, fmt.Sprintf("Leaves the other %d things seen.", len(part.list)))
		case len(part.list) > 0:
			says = append(says, part.verb+defects(part.list)+".")
		}
	}
	c.Text = strings.Join(says, " ")
	return c
}

// codeWords makes words for people of the code of a defect or remedy; people say
// lid, and cover only of the soil.
var codeWords = strings.NewReplacer("-", " ", "cover", "lid")

func defects(kinds []riser.DefectKind) string {
	list := make([]string, len(kinds))
	for i, k := range kinds {
		list[i] = codeWords.Replace(string(k))
	}
	return strings.Join(list, ", ")
}

func lifeText(l riser.Life) string {
	if l.Low == 0 && l.High == 0 {
		return "until mended"
	}
	return fmt.Sprintf("%.0f–%.0f years", l.Low.In(manway.Year), l.High.In(manway.Year))
}

func needs(r riser.Remedy) string {
	var list []string
	for _, n := range [...]struct {
		is   bool
		word string
	}{{r.NeedsEntry, "entry of the tank"}, {r.NeedsDig, "dig"}, {r.NeedsPump, "pumping first"}, {r.NeedsPermit(), "permit where asked"}} {
		if n.is {
			list = append(list, n.word)
		}
	}
	if len(list) == 0 {
		return "–"
	}
	return strings.Join(list, ", ")
}

// yearsTable is what each remedy has cost by year 5, 10 and 20 in its usual
// life, and its yearly cost in the three cases.
func (v Visit) yearsTable(a Access, options AccessOptions) Table {
	c := options.Comparison
	t := Table{ID: "years_" + slug(a.Name), Title: a.Name + ": paid over the years, " + string(v.Options.Currency), Columns: []string{"Remedy"}}
	for _, m := range c.Options[0].Courses[cost.Usual].Marks {
		t.Columns = append(t.Columns, fmt.Sprintf("By year %d", m.Year))
	}
	t.Columns = append(t.Columns, "A year, usual life", "A year, good", "A year, bad")
	for _, o := range c.Options {
		row := []Cell{words("remedy", o.Title)}
		for _, m := range o.Courses[cost.Usual].Marks {
			row = append(row, v.money(fmt.Sprintf("paid_year_%d", m.Year), m.Paid))
		}
		for _, k := range [...]struct {
			key      string
			scenario cost.Scenario
		}{{"annual", cost.Usual}, {"annual_good", cost.Good}, {"annual_bad", cost.Bad}} {
			row = append(row, v.money(k.key, o.Courses[k.scenario].EquivalentAnnual))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// breakEven says how long the one of lowest first cost must last to cost no
// more a year than any other: against the one that asks the longest.
func (v Visit) breakEven(a Access, options AccessOptions) []string {
	c, lowest := options.Comparison, options.lowestFirst()
	var worst cost.BreakEven
	for _, b := range c.BreakEven {
		if b.Cheap == lowest && b.Repeating.State != cost.NotJudged && (worst.Cheap == "" || harder(b.Repeating, worst.Repeating)) {
			worst = b
		}
	}
	if worst.Cheap == "" {
		return nil
	}
	title := map[string]string{}
	for _, o := range c.Options {
		title[o.ID] = `"` + o.Title + `"`
	}
	says := fmt.Sprintf("%s: %s costs least at first", a.Name, title[lowest])
	switch worst.Repeating.State {
	case cost.InYears:
		says += fmt.Sprintf("; a year, it costs no more than any other if it lasts %.1f years", worst.Repeating.Years)
	case cost.Always:
		says += ", and a year no more than any other, however short it lasts"
	default:
		says += fmt.Sprintf(", but a year more than %s, however long it lasts", title[worst.Dear])
	}
	for _, p := range options.Priced {
		if string(p.Kind) == lowest && worst.Repeating.State == cost.InYears {
			says += " (" + lifeText(p.Life) + " are usual)"
		}
	}
	return []string{says + "."}
}

// harder reports whether a asks for a longer life than b: never longest, always
// shortest.
func harder(a, b cost.When) bool {
	if a.State != b.State {
		return a.State == cost.Never || b.State == cost.Always
	}
	return a.State == cost.InYears && a.Years > b.Years
}

// lowestFirst is the compared remedy of the lowest first cost.
func (o AccessOptions) lowestFirst() string {
	var best PricedRemedy
	for _, p := range o.Priced {
		for _, c := range o.Comparison.Options {
			if c.ID == string(p.Kind) && (best.Kind == "" || p.Estimate.Total.LessThan(best.Estimate.Total)) {
				best = p
			}
		}
	}
	return string(best.Kind)
}

// money is an amount of the visit's currency.
func (v Visit) money(key string, d decimal.Decimal) Cell {
	places, err := v.Options.Currency.MinorUnit()
	if err != nil {
		places = 2
	}
	return Cell{
		Key: key + "_" + strings.ToLower(string(v.Options.Currency)), Text: grouped(d.StringFixed(int32(places))),
		Number: d.InexactFloat64(), Is: Number,
	}
}

// grouped sets commas between the thousands of a decimal number.
func grouped(s string) string {
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
	}
	whole, frac, point := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if point {
		whole += "." + frac
	}
	return sign + whole
}

// materialSection is every line of every remedy, for the desk.
func (v Visit) materialSection() Section {
	s := Section{
		ID: "materials", Title: "Materials and labour, line by line", For: ForDesk,
		Method: "Net quantities from the survey, with waste, in whole packs where it is sold in packs; each line rounded to the minor unit of the currency.",
	}
	s.Tables = append(s.Tables, v.lines("pump_out", "Pump-out", v.Options.PumpOut))
	for i, a := range v.Survey.Accesses {
		for _, p := range v.Options.Accesses[i].Priced {
			s.Tables = append(s.Tables, v.lines(slug(a.Name)+"_"+slug(string(p.Kind)), a.Name+", "+p.Title, p.Estimate))
			s.Basis = merge(s.Basis, p.Estimate.Basis())
		}
	}
	return s
}

func (v Visit) lines(id, title string, e cost.Estimate) Table {
	currency := string(v.Options.Currency)
	t := Table{ID: "lines_" + id, Title: title, Columns: []string{"Code", "Quantity", "Each, " + currency, "Amount, " + currency}}
	for _, l := range e.Lines {
		each, amount := unknown("each", "no price"), unknown("amount", "no price")
		if l.Priced {
			each, amount = v.money("each", l.UnitPrice), v.money("amount", l.Amount)
		}
		t.Rows = append(t.Rows, []Cell{
			{Text: l.Code, Parts: []Cell{words("code", l.Code), words("what", l.Description), words("unit", string(l.Unit)), words("from", l.From)}},
			{Key: "quantity", Text: fmt.Sprintf("%.4g %s", l.Quantity, l.Unit.Name()), Number: l.Quantity, Is: Number},
			each, amount,
		})
	}
	return t
}

// slug is a name as a key in JSON: letters and digits, underscores between.
func slug(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9')
	}), "_")
}
