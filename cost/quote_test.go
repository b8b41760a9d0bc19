package cost_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

// A remedy keeps what it cures, leaves and needs on its way to the owner.
func TestWay(t *testing.T) {
	job := mixed(t)
	job.Lines[1].Quantities = cost.Range{Low: 5, Likely: 7.233, High: 12}
	e := must(job.Estimate())(t)
	s := must(e.Simulate(cost.Simulation{Draws: 2000, Seed: 1}))(t)
	c := must(cost.Compare([]cost.Option{{ID: "x", First: e.Total, Life: cost.Lives{Good: 30, Usual: 20, Bad: 10}}}, horizon))(t)
	r := riser.Remedy{
		Title: "New riser", Cures: []riser.DefectKind{riser.JointRoots}, Leaves: []riser.DefectKind{riser.CoverTooHeavy},
		Life:     riser.Life{Low: 10 * manway.Year, Usual: 20 * manway.Year, High: 30 * manway.Year},
		NeedsDig: true, Permit: "local authority", Cautions: manway.TrenchCollapse,
	}
	w := e.Way(r, &s, &c.Options[0])
	if w.Life != (cost.Lives{Good: 30, Usual: 20, Bad: 10}) || !w.Price.Equal(e.Total) || !w.Low.Valid || len(w.Paid) != 3 || len(w.Needs()) != 2 || !w.Cautions.Has(manway.TrenchCollapse|manway.EstimateOnly) {
		t.Errorf("%+v", w)
	}
	text := cost.Quote{Title: "t", Currency: "USD", On: today, Ways: []cost.Way{w}, Cautions: w.Cautions}.Text()
	for _, want := range []string{"Puts right: joint roots", "Leaves as it is: cover too heavy", "permit: local authority", "20 years, 10 to 30", "880.78 USD, in 8 cases of 10 between", "cave in"} {
		if !strings.Contains(text, want) {
			t.Errorf("the quote does not say %q:\n%s", want, text)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if len([]rune(line)) > 80 {
			t.Errorf("a line of %d characters: %q", len([]rune(line)), line)
		}
	}
}

func TestCurrencyText(t *testing.T) {
	for _, c := range []struct {
		amount   string
		currency cost.Currency
		want     string
	}{{"1234567.5", "USD", "1,234,567.50 USD"}, {"-1234.5", "USD", "-1,234.50 USD"}, {"-123", "JPY", "-123 JPY"}, {"999", "KWD", "999.000 KWD"}, {"1000", "JPY", "1,000 JPY"}, {"0", "USD", "0.00 USD"}} {
		if got := c.currency.Text(amount(c.amount)); got != c.want {
			t.Errorf("%s: %q, want %q", c.amount, got, c.want)
		}
	}
}

func ExampleQuote_Text() {
	q := cost.Quote{
		Title: "Lid 2", On: manway.Date{Year: 2026, Month: 11, Day: 25}, Currency: "USD",
		Saw: []string{"Roots come through the joint under the ring."}, Means: []string{"Groundwater runs into the tank."},
		Ways: []cost.Way{{
			Title: "Seal the joint from grade", Price: decimal.NewFromInt(450), Life: cost.Lives{Good: 6, Usual: 3, Bad: 1},
			Delays: []string{"roots"}, Paid: []cost.Mark{{Year: 5, Paid: decimal.NewFromInt(900)}, {Year: 10, Paid: decimal.NewFromInt(1800)}},
		}},
	}
	fmt.Print(q.Text())
	// Output:
	// QUOTE  Lid 2
	// 2026-11-25
	//
	// What we saw
	// -----------
	//  - Roots come through the joint under the ring.
	//
	// What it means
	// -------------
	//  - Groundwater runs into the tank.
	//
	// What can be done
	// ----------------
	//
	// 1. Seal the joint from grade
	//  - Price: 450.00 USD
	//  - Lasts: 3 years, 1 to 6
	//  - Paid in all, if things go as usual: 900.00 USD by year 5, 1,800.00 USD by
	//    year 10
	//  - Only delays: roots
	//
	// I choose way number ____        Signed ______________________  Date __________
}
