package cost_test

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

const smallBook = cost.BookHeader + `
concrete-bag-60lb,concrete mix,EA,6.80,USD,2026-01-01,invented
dig-hand,dig by hand,LH,46.00,USD,2026-01-01,invented
`

// A scope becomes lines to buy, and lines become a price.
func ExampleJob_Estimate() {
	book, err := cost.ReadPriceBook(strings.NewReader(smallBook))
	if err != nil {
		fmt.Println(err)
		return
	}
	lines, err := cost.Takeoff([]riser.Item{
		{Code: "dig-hand", Class: riser.Labour, Quantity: 7.2, Unit: "LH", Crew: 2},
		{Code: "concrete", Quantity: 3, Unit: "FTQ"},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	estimate, err := cost.Job{
		Lines: lines, Book: book, On: manway.Date{Year: 2026, Month: 11, Day: 25},
		Terms: cost.Terms{Currency: "USD", OverheadPercent: decimal.NewFromInt(12), ProfitPercent: decimal.NewFromInt(20), ProfitAs: cost.Margin},
	}.Estimate()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(estimate.Working())
	// Output:
	// direct = sum of the lines, each rounded half-even = 385.60 USD
	// overhead = base x per cent = 385.60 USD x 12 % = 46.27 USD
	// profit as margin = cost g / (1 - g) = 431.87 USD x 20 / (100 - 20) = 107.97 USD
	// total = sum of what is printed = 539.84 USD
}

func ExampleTakeoff() {
	lines, err := cost.Takeoff([]riser.Item{{Code: "concrete", Quantity: 3, Unit: "FTQ", Working: "collar 1 ft x 3 ft2"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(lines[0].Working())
	// Output:
	// net = collar 1 ft x 3 ft2
	// needed = net (1 + waste) = 3 FTQ x 1.1 = 3.3 FTQ
	// bought = needed / pack, rounded up = 3.3 / 0.45 = 8 EA
	// left over = bought x pack - needed = 0.3 FTQ
}

// A patch of 450 against a riser of 2,400 that lasts 20 years.
func ExampleCompare() {
	patch := cost.Option{ID: "patch", First: decimal.NewFromInt(450), Life: cost.Lives{Good: 6, Usual: 3, Bad: 1}}
	riser := cost.Option{ID: "riser", First: decimal.NewFromInt(2400), Life: cost.Lives{Good: 40, Usual: 20, Bad: 12}}
	c, err := cost.Compare([]cost.Option{patch, riser}, cost.Horizon{Years: 20, Rate: 5 * cost.Percent, Currency: "USD"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range c.Options {
		usual := o.Courses[cost.Usual]
		fmt.Println(o.ID, usual.Marks[0].Paid, usual.Marks[1].Paid, usual.Marks[2].Paid, usual.PresentValue)
	}
	fmt.Println("cheapest:", c.Cheapest)
	fmt.Printf("patch must last %.2f years, or put the riser off %.2f years\n", c.BreakEven[0].Repeating.Years, c.BreakEven[0].Deferring.Years)
	// Output:
	// patch 900 1800 3150 2062.08
	// riser 2400 2400 2400 2400
	// cheapest: [patch patch riser]
	// patch must last 2.55 years, or put the riser off 4.26 years
}

func ExamplePatchOrReplace() {
	p := cost.PatchOrReplace{Patch: decimal.NewFromInt(450), Replace: decimal.NewFromInt(2400), ReplaceLife: 20, Rate: 5 * cost.Percent}
	fmt.Print(p.Working())
	// Output:
	// E = R (A/P) + v = 2400 x 0.0802426 + 0 = 192.582 a year
	// n = -ln(1 - i P/(E - u)) / ln(1+i) = i 5 %, P 450, u 0 = 2.54644 yr
	// k = -ln(1 - i P/(i R + v - u)) / ln(1+i) = i 5 %, P 450, R 2400 = 4.25576 yr
}

// The uniform present value factor of 15 years at 3 %.
func ExampleRate_Factors() {
	f, err := (3 * cost.Percent).Factors(15)
	fmt.Printf("%.3f %.2f %v\n", f.SinglePresent, f.SeriesPresent, err)
	// Output: 0.642 11.94 <nil>
}

func ExampleReadPriceBook() {
	_, err := cost.ReadPriceBook(strings.NewReader(cost.BookHeader + "\ngravel,gravel,CY,48,USD,2026-01-01,\nsand,sand,YDQ,4x,USD,2026-13-01,\n"))
	fmt.Println(err)
	// Output:
	// line 2: Unit "CY": want YDQ for a cubic yard
	// line 3: Price "4x": want a number of 0 or more with a point, such as 1250.00, at most 1e12
	// line 3: ValidFrom "2026-13-01": want a date of the calendar as 2026-11-25
}

// Five cents by 30 and 70 are two and three.
func ExampleCurrency_Shares() {
	list, err := cost.Currency("USD").Shares(decimal.New(5, -2), []decimal.Decimal{decimal.NewFromInt(30), decimal.NewFromInt(70)})
	fmt.Println(list, err)
	// Output: [0.02 0.03] <nil>
}

func ExampleEstimate_Simulate() {
	book, _ := cost.ReadPriceBook(strings.NewReader(smallBook))
	dig := cost.Line{Code: "dig-hand", Class: riser.Labour, Quantity: 7, Unit: "LH", Quantities: cost.Range{Low: 5, Likely: 7, High: 15}}
	estimate, _ := cost.Job{Lines: []cost.Line{dig}, Book: book, On: manway.Date{Year: 2026, Month: 11, Day: 25}, Terms: cost.Terms{Currency: "USD"}}.Estimate()
	spread, err := estimate.Simulate(cost.Simulation{Draws: 100_000, Seed: 1})
	fmt.Println(estimate.Total, "P50 within 5:", spread.P50.Sub(decimal.NewFromInt(360)).Abs().LessThan(decimal.NewFromInt(5)), err)
	// Output: 322 P50 within 5: true <nil>
}

func ExampleNeglect() {
	n := cost.Neglect{
		Visit: decimal.NewFromInt(350), Every: 3, Repair: decimal.NewFromInt(9000),
		LastsKept: cost.Lives{Good: 50, Usual: 40, Bad: 25}, LastsLeft: cost.Lives{Good: 20, Usual: 12, Bad: 7},
	}
	options, err := n.Options()
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := cost.Compare(options, cost.Horizon{Years: 40, Rate: 3 * cost.Percent, Currency: "USD"})
	fmt.Println(c.Cheapest[cost.Good], c.Cheapest[cost.Usual], c.Cheapest[cost.Bad], err)
	// Output: upkeep upkeep upkeep <nil>
}
