package cost_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
)

// HB 135: 15 years at 3 %, prices rising 2 %.
func ExampleRate_Escalating() {
	v, err := (3 * cost.Percent).Escalating(2*cost.Percent, 15)
	fmt.Printf("%.2f %v\n", v, err)
	// Output: 13.89 <nil>
}

// 1,200 a year for ever at 6 %, first paid after four years.
func ExampleRate_Perpetuity() {
	v, err := (6 * cost.Percent).Perpetuity(4)
	fmt.Printf("%.2f %v\n", 1200*v, err)
	// Output: 16792.39 <nil>
}

// 4 % real under 3.5 % inflation: the rates multiply.
func ExampleRate_Nominal() {
	fmt.Println((4 * cost.Percent).Nominal(3.5 * cost.Percent))
	// Output: 7.64 %
}

// The same horizon in money of the day.
func ExampleHorizon_As() {
	h, err := cost.Horizon{Years: 20, Rate: 4 * cost.Percent, Currency: "USD"}.As(cost.Nominal, 3.5*cost.Percent)
	fmt.Println(h.Rate, h.Escalation, h.Prices, err)
	// Output: 7.64 % 3.5 % nominal <nil>
}

// 57,500 and 10,100 a year for five years at 11 %.
func ExampleOption_OneLife() {
	o := cost.Option{ID: "oven", First: decimal.NewFromInt(57500), Upkeep: decimal.NewFromInt(10100), Life: cost.SameLife(5)}
	y, err := o.OneLife(cost.Usual, 11*cost.Percent)
	fmt.Printf("%.2f a year %v\n", y.Annual, err)
	// Output: 25657.79 a year <nil>
}

// 100,000 out, then 28,000 in for six years.
func ExampleProject() {
	p := cost.Project{-100000, 28000, 28000, 28000, 28000, 28000, 28000}
	w, _ := p.Worth(10 * cost.Percent)
	simple, _ := p.Payback(0)
	discounted, _ := p.Payback(10 * cost.Percent)
	irr, err := p.InternalRate()
	fmt.Printf("%.2f, %.4f and %.2f years, %.4f %% %v\n", w.Present, simple.Years, discounted.Years, 100*float64(irr), err)
	// Output: 21947.30, 3.5714 and 4.65 years, 17.1906 % <nil>
}

// Newnan's overhaul: it keeps the old one four more years.
func ExampleDefender() {
	keep, err := cost.Defender{Now: 4000, Yearly: []float64{1800, 1800, 2800, 3800, 4800}, Rate: 8 * cost.Percent}.KeepFor(4589)
	fmt.Println(keep.State, keep.Years, err)
	// Output: years 4 <nil>
}

// A machine that must be brought against a dearer shovel that is there.
func ExampleTariff() {
	machine, shovel := cost.Tariff{Fixed: 300, Each: 20}, cost.Tariff{Each: 120}
	at, ok, err := machine.EqualTo(shovel)
	fmt.Println(at.Quantity, at.Cost, ok, err)
	// Output: 3 360 true <nil>
}

// Putting a remedy of 2,400 off for three years, in which it gets 600 dearer.
func ExampleWaitingCost() {
	w, err := cost.WaitingCost{Now: decimal.NewFromInt(2400), Damage: decimal.NewFromInt(600), Years: 3}.Price()
	fmt.Println(w.Extra, err)
	// Output: 600 <nil>
}

func ExampleRange_ThreePoint() {
	m, err := cost.Range{Low: 5, Likely: 8, High: 14}.ThreePoint()
	fmt.Println(m.Mean, m.SD, err)
	// Output: 8.5 1.5 <nil>
}

// The shape that is drawn from is narrower than the rule of thumb says.
func ExampleRange_Moments() {
	m, err := cost.Range{Low: 2, Likely: 5, High: 8, Shape: cost.Triangular}.Moments()
	fmt.Printf("%.0f %.4f %v\n", m.Mean, m.SD, err)
	// Output: 5 1.2247 <nil>
}

func ExampleSumOf() {
	parts := []cost.Moments{{Mean: 10, SD: 3}, {Mean: 20, SD: 4}}
	for _, rho := range []float64{0, 1} {
		m, err := cost.SumOf(parts, rho)
		fmt.Println(m.Mean, m.SD, err)
	}
	// Output:
	// 30 5 <nil>
	// 30 7 <nil>
}

// A markup of 25 % is a margin of 20 %, and back.
func ExampleProfit_AsMargin() {
	margin, _ := cost.Markup.AsMargin(decimal.NewFromInt(25))
	markup, err := cost.Margin.AsMarkup(margin)
	fmt.Println(margin, markup, err)
	// Output: 20 25 <nil>
}

// Ties go to even or up; what is only near a tie is none.
func ExampleRounding_Round() {
	for _, s := range []string{"0.125", "2.675", "0.1250000001"} {
		even, _ := cost.HalfEven.Round(decimal.RequireFromString(s), 2)
		up, err := cost.HalfUp.Round(decimal.RequireFromString(s), 2)
		fmt.Println(even, up, err)
	}
	// Output:
	// 0.12 0.13 <nil>
	// 2.68 2.68 <nil>
	// 0.13 0.13 <nil>
}

// A patch now and rising upkeep: what each further year costs at its end, and
// how long it is kept against 300 a year for a new riser.
func ExampleDefender_Marginal() {
	d := cost.Defender{Now: 300, Yearly: []float64{100, 180, 260, 400}, Rate: 6 * cost.Percent}
	years, err := d.Marginal()
	fmt.Printf("%.0f %v\n", years, err)
	keep, err := d.KeepFor(300)
	fmt.Println(keep.Years, err)
	// Output:
	// [418 180 260 400] <nil>
	// 3 <nil>
}

// 450 for a patch against 2,400 for what lasts 20 years, at 5 %.
func ExamplePatchOrReplace_Lives() {
	l, err := cost.PatchOrReplace{Patch: decimal.NewFromInt(450), Replace: decimal.NewFromInt(2400), ReplaceLife: 20, Rate: 5 * cost.Percent}.Lives()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("repeated it must last %.1f years, put off the other %.1f\n", l.Repeating.Years, l.Deferring.Years)
	// Output:
	// repeated it must last 2.5 years, put off the other 4.3
}

// 36 labour hours are four and a half man-days.
func ExampleCrew_Days_manDays() {
	days, err := cost.Crew{People: 1, Availability: 1, Hours: 8}.Days(36)
	fmt.Println(days, err)
	// Output: 4.5 <nil>
}
