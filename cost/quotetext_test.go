package cost_test

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
)

// What the owner reads of one way: each line where there is something to say, and
// then only.
func TestWhatAQuoteSays(t *testing.T) {
	some := decimal.NewNullDecimal(usd(900))
	for _, c := range []struct {
		what    string
		way     cost.Way
		says    []string
		saysNot []string
	}{
		{"bare", cost.Way{Title: "Patch", Price: usd(1250)}, []string{"1. Patch", "Price: 1,250.00 USD\n", "Lasts: only until the next measure"}, []string{"8 cases", "incomplete", "Paid in all", "Puts right", "Only delays", "Leaves as it is", "Needs", "If we find", ", then"}},
		{"range", cost.Way{Price: usd(1250), Low: some, High: decimal.NewNullDecimal(usd(1600))}, []string{"1,250.00 USD, in 8 cases of 10 between 900.00 USD and", "1,600.00 USD"}, nil},
		{"half a range", cost.Way{Price: usd(1250), Low: some}, nil, []string{"8 cases"}}, {"other half", cost.Way{Price: usd(1250), High: some}, nil, []string{"8 cases"}},
		{"missing", cost.Way{Price: usd(5), Missing: []cost.Missing{{Description: "a hoist"}, {Description: "seed"}}}, []string{"5.00 USD; incomplete, not priced: a hoist, seed"}, nil},
		{"life", cost.Way{Life: cost.Lives{Good: 10, Usual: 5, Bad: 2}, Then: "a new riser"}, []string{"Lasts: 5 years, 2 to 10, then a new riser"}, nil},
		{"paid", cost.Way{Paid: []cost.Mark{{Year: 5, Paid: usd(900)}, {Year: 10, Paid: usd(1900)}}}, []string{"if things go as usual: 900.00 USD by year 5, 1,900.00"}, []string{"badly"}},
		{"paid badly", cost.Way{PaidBad: []cost.Mark{{Year: 5, Paid: usd(900)}}}, []string{"if things go badly: 900.00 USD by year 5"}, []string{"as usual"}},
		{"lists", cost.Way{Cures: []string{"roots", "gap"}, Delays: []string{"smell"}, Leaves: []string{"rust"}}, []string{"Puts right: roots; gap", "Only delays: smell", "Leaves as it is: rust"}, []string{"Needs"}},
		{"entry", cost.Way{NeedsEntry: true}, []string{"Needs: entry of a permit-required confined space"}, []string{"digging", "pumped down", "a permit:"}},
		{"dig", cost.Way{NeedsDig: true}, []string{"Needs: digging, after buried lines are marked"}, []string{"entry of", "pumped down"}},
		{"pump", cost.Way{NeedsPump: true}, []string{"Needs: the tank pumped down first"}, []string{"digging"}}, {"permit", cost.Way{Permit: "the county"}, []string{"Needs: a permit: the county"}, nil},
		{"changes", cost.Way{Changes: []cost.PricedChange{{ChangeOrder: cost.ChangeOrder{If: "rock", Work: "break it"}, Amount: usd(80), Priced: true}, {ChangeOrder: cost.ChangeOrder{If: "water", Work: "pump"}}}},
			[]string{"If we find rock: break it, 80.00 USD more", "If we find water: pump, price on request"}, nil},
		{"ruled out", cost.Way{Title: "Patch", Price: usd(7), RuledOut: "the roof is weak", Cures: []string{"roots"}}, []string{"Cannot be done as things are: the roof is weak"}, []string{"Price", "Lasts", "Puts right"}},
	} {
		q := cost.Quote{Title: "Lid", Currency: "USD", Ways: []cost.Way{c.way}}
		text := q.Text()
		for _, want := range c.says {
			if !strings.Contains(strings.ReplaceAll(text, "\n   ", " "), want) {
				t.Errorf("%s: no %q in\n%s", c.what, want, text)
			}
		}
		for _, not := range c.saysNot {
			if strings.Contains(text, not) {
				t.Errorf("%s: %q in\n%s", c.what, not, text)
			}
		}
	}
}

// The page of a quote: its parts in order, those without anything left out, no line
// longer than 76 characters and none broken where it fits.
func TestPageOfAQuote(t *testing.T) {
	words := strings.Repeat("seven77 ", 40)
	q := cost.Quote{Title: "Lid", Site: "first house", On: today, ValidUntil: today.AddDays(30), Currency: "USD", Saw: []string{words, "roots"}, Means: []string{"it leaks"}, Ways: []cost.Way{{Title: "Patch"}, {Title: "New"}},
		Exclusions: []string{"rock"}, Terms: []string{"half at first"}, Cautions: manway.NeverEnter}
	text := q.Text()
	at := -1
	for _, part := range []string{"QUOTE  Lid", "first house  2026-11-25", "What we saw", "What it means", "What can be done", "1. Patch", "2. New", "Not included", "Terms", "half at first", "These prices hold until 2026-12-25.", "Please note", "I choose way number"} {
		i := strings.Index(text, part)
		if i <= at {
			t.Errorf("%q stands at %d, after what stands at %d:\n%s", part, i, at, text)
		}
		at = i
	}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if n := len([]rune(line)); n > 76 && !strings.HasPrefix(line, "I choose") {
			t.Errorf("a line of %d: %q", n, line)
		}
		// " - seven77" and then eight characters each: 76 hold " -" and nine words.
		if strings.HasPrefix(line, " - seven77") && strings.Count(line, "seven77") != 9 || strings.HasPrefix(line, "   seven77") && strings.Count(line, "seven77") != 9 && strings.HasPrefix(lines[i+1], "   seven77") {
			t.Errorf("%d words on %q", strings.Count(line, "seven77"), line)
		}
		if strings.Trim(line, "-") == "" && line != "" && len(line) != len(lines[i-1]) {
			t.Errorf("%q under %q", line, lines[i-1])
		}
	}
	bare := cost.Quote{Title: "Lid", Currency: "USD"}.Text()
	for _, part := range []string{"What we saw", "What it means", "Not included", "Terms", "Please note", "hold until"} {
		if strings.Contains(bare, part) {
			t.Errorf("%q in\n%s", part, bare)
		}
	}
}

// A life for people: its usual years, one year in one, and its ends where they
// differ.
func TestLivesInWords(t *testing.T) {
	for _, c := range []struct {
		l    cost.Lives
		want string
	}{{cost.Lives{}, "only until the next measure"}, {cost.SameLife(1), "1 year"}, {cost.SameLife(3), "3 years"}, {cost.SameLife(0.5), "0.5 years"}, {cost.Lives{Good: 6, Usual: 3, Bad: 1}, "3 years, 1 to 6"}, {cost.Lives{Good: 2, Usual: 1, Bad: 1}, "1 year, 1 to 2"}} {
		if got := c.l.String(); got != c.want {
			t.Errorf("%+v is %q, want %q", c.l, got, c.want)
		}
	}
}

// Units that are whole numbers of each other convert by the whole number itself.
func TestWholeConversions(t *testing.T) {
	for _, c := range []struct {
		from, to cost.Unit
		want     float64
	}{{"YDQ", "FTQ", 27}, {"FOT", "INH", 12}, {"YRD", "FOT", 3}, {"YRD", "INH", 36}, {"GLL", "INQ", 231}, {"FTQ", "INQ", 1728}, {"YDQ", "INQ", 46656}, {"DAY", "HUR", 24}, {"HUR", "MIN", 60}, {"STN", "LBR", 2000},
		{"LBR", "ONZ", 16}, {"GLL", "QTL", 4}, {"FTK", "INK", 144}, {"YDK", "FTK", 9}, {"TNE", "KGM", 1000}, {"MTQ", "LTR", 1000}, {"FOT", "LF", 1}, {"EA", "EA", 1}} {
		if got := must(c.from.Per(c.to))(t); got != c.want {
			t.Errorf("1 %s is %v %s, want %v", c.from, got, c.to, c.want)
		}
		if back := must(c.to.Per(c.from))(t); !(back*c.want > 1-1e-12 && back*c.want < 1+1e-12) {
			t.Errorf("1 %s is %v %s, want 1/%v", c.to, back, c.from, c.want)
		}
	}
}
