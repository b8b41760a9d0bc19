package cost_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

var today = manway.Date{Year: 2026, Month: 11, Day: 25}

// bookOf is a price book of rows after the header.
func bookOf(t testing.TB, rows ...string) cost.Book {
	t.Helper()
	return must(cost.ReadPriceBook(strings.NewReader(cost.BookHeader + "\n" + strings.Join(rows, "\n"))))(t)
}

func amount(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// mixed is a job with lines of every class and every charge.
func mixed(t testing.TB) cost.Job {
	return cost.Job{
		On: today,
		Book: bookOf(t, "bag,mix,EA,6.79,USD,2026-01-01,", "dig,dig,LH,46.35,USD,2026-01-01,", "hoist,hoist,DAY,65,USD,2026-01-01,",
			"haul,haul,YDQ,32.10,USD,2026-01-01,", "permit,permit,EA,125,USD,2026-01-01,", "rock,rock,FTQ,38,USD,2026-01-01,"),
		Lines: []cost.Line{
			{Code: "bag", Class: riser.Material, Quantity: 8, Unit: "EA"},
			{Code: "dig", Class: riser.Labour, Quantity: 7.233, Unit: "LH", Crew: 2},
			{Code: "hoist", Class: riser.Equipment, Quantity: 1, Unit: "DAY"},
			{Code: "haul", Class: riser.Haulage, Quantity: 27.5, Unit: "FTQ"},
			{Code: "permit", Class: riser.Fee, Quantity: 1, Unit: "EA"},
			{Code: "cure", Class: riser.Wait, Quantity: 2, Unit: "DAY"},
		},
		Terms: cost.Terms{
			Currency: "USD", OverheadPercent: amount("12.5"), ContingencyPercent: amount("7"), ProfitPercent: amount("15"), ProfitAs: cost.Margin,
			Taxes: []cost.Tax{
				{Class: riser.Material, Percent: amount("6.25"), Rounding: cost.HalfUp},
				{Class: riser.Fee, Percent: amount("5"), At: cost.OnSale},
			},
			ValidDays:    30,
			ChangeOrders: []cost.ChangeOrder{{If: "rock", Work: "break it", Code: "rock", Quantity: 5, Unit: "FTQ"}, {If: "water", Work: "pump", Code: "none", Quantity: 1, Unit: "DAY"}},
		},
	}
}

// Property (additive): the total is what a person gets who adds up the page, and so are the shares.
func TestTotalIsSumOfPrintedLines(t *testing.T) {
	for _, currency := range []cost.Currency{"USD", "JPY", "KWD"} {
		for _, rounding := range []cost.Rounding{cost.HalfEven, cost.HalfUp} {
			job := mixed(t)
			var rows []string
			for _, p := range job.Book.Prices() {
				rows = append(rows, strings.Join([]string{p.Code, p.Description, string(p.Unit), p.Price.String(), string(currency), p.ValidFrom.String(), ""}, ","))
			}
			job.Book = bookOf(t, rows...)
			job.Terms.Currency, job.Terms.Rounding = currency, rounding
			e := must(job.Estimate())(t)
			places, _ := currency.MinorUnit()
			var sum, shares decimal.Decimal
			add := func(d decimal.Decimal) {
				printed := d.StringFixed(int32(places))
				if !amount(printed).Equal(d) {
					t.Errorf("%s: %s is not a whole number of minor units", currency, d)
				}
				sum = sum.Add(amount(printed))
			}
			for _, l := range e.Lines {
				add(l.Amount)
				shares = shares.Add(l.ToOwner)
			}
			for _, c := range e.Charges {
				add(c.Amount)
			}
			if !sum.Equal(e.Total) || !shares.Equal(e.Total) || !e.Complete || len(e.Charges) != 5 {
				t.Errorf("%s %v: total %s, printed %s, shares %s, %d charges", currency, rounding, e.Total, sum, shares, len(e.Charges))
			}
		}
	}
}

// The charges by hand: 8 x 6.79 = 54.32; 7.233 x 46.35 = 335.24955; 65; 27.5/27
// x 32.10 = 32.6944…; 125. Tax 6.25 % of 54.32 = 3.395.
func TestChargesByHand(t *testing.T) {
	e := must(mixed(t).Estimate())(t)
	check := func(name string, got decimal.Decimal, want string) {
		t.Helper()
		if !got.Equal(amount(want)) {
			t.Errorf("%s %s, want %s", name, got, want)
		}
	}
	for i, want := range []string{"54.32", "335.25", "65", "32.69", "125", "0"} {
		check(e.Lines[i].Code, e.Lines[i].Amount, want)
	}
	check("direct", e.Direct, "612.26")
	check("tax bought", e.Charges[0].Amount, "3.40")   // half-up of 3.395
	check("contingency", e.Charges[1].Amount, "43.10") // 7 % of 615.66 = 43.0962
	check("overhead", e.Charges[2].Amount, "82.34")    // 12.5 % of 658.76 = 82.345, to even
	check("profit", e.Charges[3].Amount, "130.78")     // 741.10 x 15/85 = 130.782…
	check("tax sold", e.Charges[4].Amount, "8.90")     // 5 % of 871.88 x 125/612.26 = 178.00…
	check("total", e.Total, "880.78")
	if e.ValidUntil.String() != "2026-12-25" {
		t.Errorf("valid until %s", e.ValidUntil)
	}
	// 190 of rock: contingency 13.30, overhead 25.4125 -> 25.41, profit 228.71 x 15/85 = 40.36
	check("rock", e.Changes[0].Amount, "269.07")
	if e.Changes[1].Priced || e.Changes[1].Reason == "" {
		t.Errorf("a change without a price: %+v", e.Changes[1])
	}
}

// A price that is missing leaves its line, is named, and is no part of the sum.
func TestMissingPrices(t *testing.T) {
	book := bookOf(t, "late,late,EA,5,USD,2027-01-01,", "euro,euro,EA,5,EUR,2026-01-01,", "length,length,FOT,5,USD,2026-01-01,", "ok,ok,EA,5,USD,2026-01-01,")
	job := cost.Job{On: today, Book: book, Terms: cost.Terms{Currency: "USD"}}
	for _, code := range []string{"late", "euro", "length", "absent", "ok"} {
		job.Lines = append(job.Lines, cost.Line{Code: code, Quantity: 2, Unit: "EA"})
	}
	e := must(job.Estimate())(t)
	if e.Complete || len(e.Missing) != 4 || !e.Total.Equal(usd(10)) {
		t.Errorf("complete %v, missing %v, total %v", e.Complete, e.Missing, e.Total)
	}
	for i, want := range []string{"2027-01-01", "EUR", "FOT", "not in the price book"} {
		if !strings.Contains(e.Missing[i].Reason, want) || e.Lines[i].Priced {
			t.Errorf("%+v: want %s", e.Missing[i], want)
		}
	}
	if _, err := e.Simulate(cost.Simulation{Draws: 1000}); err == nil {
		t.Error("an incomplete estimate was simulated")
	}
}

func TestMinimumCharge(t *testing.T) {
	job := mixed(t)
	job.Terms.Minimum = usd(2000)
	e := must(job.Estimate())(t)
	before := e.Total.Sub(e.Charges[len(e.Charges)-1].Amount) // tax on the sale comes after
	if !before.Equal(usd(2000)) {
		t.Errorf("before tax %s, want 2000", before)
	}
	job.Terms.Minimum = usd(1)
	if low := must(job.Estimate())(t); !low.Total.Equal(amount("880.78")) {
		t.Errorf("a minimum below the price changed it to %s", low.Total)
	}
}

// Two books in layers, and the price that holds on a day.
func TestBookLayers(t *testing.T) {
	base := bookOf(t, "a,a,EA,1,USD,2026-01-01,", "a,a,EA,2,USD,2026-06-01,", "b,b,EA,7,USD,2026-01-01,")
	both := bookOf(t, "a,a,EA,9,USD,2026-07-01,").Over(base)
	for _, c := range []struct {
		book cost.Book
		code string
		day  manway.Date
		want string
	}{
		{base, "a", manway.Date{Year: 2026, Month: 5, Day: 31}, "1"},
		{base, "a", manway.Date{Year: 2026, Month: 6, Day: 1}, "2"},
		{base, "a", manway.Date{Year: 2025, Month: 12, Day: 31}, ""},
		{both, "a", today, "9"},
		{both, "a", manway.Date{Year: 2026, Month: 6, Day: 1}, ""}, // the local code stands for all of its days
		{both, "b", today, "7"},
	} {
		p, ok := c.book.Price(c.code, c.day)
		if ok != (c.want != "") || ok && p.Price.String() != c.want {
			t.Errorf("%s on %s: %s, %v, want %q", c.code, c.day, p.Price, ok, c.want)
		}
	}
}

// Every fault of a book is told with its line, all at once.
func TestBookFaults(t *testing.T) {
	_, err := cost.ReadPriceBook(strings.NewReader("# remark\n" + cost.BookHeader + `
good,good,EA,1.00,USD,2026-01-01,
,empty code,EA,1,USD,2026-01-01,
comma,comma,EA,"1,000",USD,2026-01-01,
minus,minus,EA,-1,USD,2026-01-01,
exp,exp,EA,1e9,USD,2026-01-01,
unit,unit,LB,1,USD,2026-01-01,
bag,bag,BG,1,USD,2026-01-01,
money,money,EA,1,usd,2026-01-01,
gold,gold,EA,1,XAU,2026-01-01,
day,day,EA,1,USD,2026-02-30,
few,few,EA
good,again,EA,2,USD,2026-01-01,
two,,XX,x,USD,2026-01-01,
` + "bad,\xff,EA,1,USD,2026-01-01,\nturned,a\u202eb,EA,1,USD,2026-01-01,narrow\u200bnote\n"))
	var faults cost.BookErrors
	if !errors.As(err, &faults) {
		t.Fatal(err)
	}
	want := map[int][]string{
		4: {"Code"}, 5: {"Price"}, 6: {"Price"}, 7: {"Price"}, 8: {"Unit"}, 9: {"Unit"}, 10: {"Currency"}, 11: {"Currency"},
		12: {"ValidFrom"}, 13: {"Row"}, 14: {"Code"}, 15: {"Description", "Unit", "Price"}, 16: {"Description"}, 17: {"Description", "Note"},
	}
	got := map[int][]string{}
	for _, f := range faults {
		got[f.Line] = append(got[f.Line], f.Field)
	}
	for line, fields := range want {
		if strings.Join(got[line], " ") != strings.Join(fields, " ") {
			t.Errorf("line %d: %v, want %v", line, got[line], fields)
		}
	}
	if len(got) != len(want) {
		t.Errorf("faults %v", err)
	}
	if !strings.Contains(err.Error(), "line 8: Unit \"LB\": want LBR") {
		t.Errorf("the right code is not named:\n%v", err)
	}
	for _, text := range []string{"", "code,price\n", cost.BookHeader + "\n\"open,x\n", strings.Repeat("x", 17<<20)} {
		if _, err := cost.ReadPriceBook(strings.NewReader(text)); err == nil {
			t.Errorf("%.20q was read", text)
		}
	}
	if _, err := cost.ReadPriceBook(strings.NewReader("\ufeff" + cost.BookHeader + "\n")); err != nil {
		t.Errorf("an empty book with a byte order mark: %v", err)
	}
}

// Property (inverse): a margin is the margin of its markup.
func TestMarkupAndMargin(t *testing.T) {
	for m := int64(0); m <= 500; m += 7 {
		margin := must(cost.Markup.AsMargin(usd(m)))(t)
		back := must(cost.Margin.AsMarkup(margin))(t)
		if back.Sub(usd(m)).Abs().GreaterThan(decimal.New(1, -8)) {
			t.Errorf("markup %d is margin %s is markup %s", m, margin, back)
		}
	}
	if _, err := cost.Margin.AsMarkup(usd(100)); err == nil {
		t.Error("a margin of 100 % was taken")
	}
}
