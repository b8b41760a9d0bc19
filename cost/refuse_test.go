package cost_test

import (
	"errors"
	"math"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
)

// Every calculation refuses what cannot be, naming the field.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	huge := decimal.New(1, 1_000_000_000)
	life := cost.SameLife(10)
	compare := func(o cost.Option, h cost.Horizon) error { return second(cost.Compare([]cost.Option{o}, h)) }
	good := cost.Horizon{Years: 20, Rate: 0.03, Currency: "USD"}
	horizon := func(f func(*cost.Horizon)) error {
		h := good
		f(&h)
		return compare(cost.Option{ID: "o", Life: life}, h)
	}
	for name, c := range map[string]struct {
		err   error
		field string
	}{
		"rate NaN":           {second(cost.Rate(nan).Factors(5)), "Rate"},
		"rate inf":           {second(cost.Rate(inf).Factors(5)), "Rate"},
		"rate -100 %":        {second(cost.Rate(-1).Factors(5)), "Rate"},
		"no years":           {second(cost.Rate(0.03).Factors(0)), "Years"},
		"201 years":          {second(cost.Rate(0.03).Factors(201)), "Years"},
		"series":             {second(cost.Rate(0.03).Escalating(cost.Rate(nan), 5)), "Escalation"},
		"perpetuity at 0":    {second(cost.Rate(0).Perpetuity(1)), "Rate"},
		"option life 0":      {compare(cost.Option{ID: "o"}, good), "Options[0].Life.Good"},
		"option life NaN":    {compare(cost.Option{ID: "o", Life: cost.SameLife(nan)}, good), "Options[0].Life.Good"},
		"lives out of order": {compare(cost.Option{ID: "o", Life: cost.Lives{Good: 1, Usual: 2, Bad: 3}}, good), "Options[0].Life"},
		"option first huge":  {compare(cost.Option{ID: "o", Life: life, First: huge}, good), "Options[0].First"},
		"option no id":       {compare(cost.Option{Life: life}, good), "Options[0].ID"},
		"option then":        {compare(cost.Option{ID: "o", Life: life, Then: "nobody"}, good), "Options[0].Then"},
		"event every":        {compare(cost.Option{ID: "o", Life: life, Events: []cost.Event{{Every: 0.01}}}, good), "Options[0].Events[0].Every"},
		"event year NaN":     {compare(cost.Option{ID: "o", Life: life, Events: []cost.Event{{Year: nan}}}, good), "Options[0].Events[0].Year"},
		"no options":         {second(cost.Compare(nil, good)), "Options"},
		"endless payments":   {compare(cost.Option{ID: "o", Life: cost.SameLife(0.25), Events: make([]cost.Event, 100)}, cost.Horizon{Years: 200, Currency: "USD"}), "Options"},
		"twice one id":       {second(cost.Compare([]cost.Option{{ID: "o", Life: life}, {ID: "o", Life: life}}, good)), "Options[1].ID"},
		"horizon 0":          {horizon(func(h *cost.Horizon) { h.Years = 0 }), "Horizon.Years"},
		"horizon rate":       {horizon(func(h *cost.Horizon) { h.Rate = cost.Rate(nan) }), "Horizon.Rate"},
		"horizon escalation": {horizon(func(h *cost.Horizon) { h.Escalation, h.Years = 5, 200 }), "Horizon.Escalation"},
		"horizon money":      {horizon(func(h *cost.Horizon) { h.Prices = 7 }), "Horizon.Prices"},
		"horizon currency":   {horizon(func(h *cost.Horizon) { h.Currency = "" }), "Horizon.Currency"},
		"patch life":         {second(cost.PatchOrReplace{Rate: 0.03}.Lives()), "ReplaceLife"},
		"one life rising":    {second(cost.Option{ID: "o", Life: cost.SameLife(2.5), UpkeepRise: usd(1)}.OneLife(cost.Usual, 0.03)), "Life"},
		"for ever at 0":      {second(cost.Option{ID: "o", Forever: true}.OneLife(cost.Usual, 0)), "Rate"},
		"project NaN":        {second(cost.Project{-1, nan}.Worth(0.03)), "Project[1]"},
		"project empty":      {second(cost.Project{}.Worth(0.03)), "Project"},
		"no sign change":     {second(cost.Project{1, 2}.InternalRate()), "Project"},
		"two sign changes":   {second(cost.Project{-1, 5, -4}.InternalRate()), "Project"},
		"defender":           {second(cost.Defender{Rate: 0.03}.Marginal()), "Yearly"},
		"waiting":            {second(cost.WaitingCost{Years: -1}.Price()), "Years"},
		"tariff":             {third(cost.Tariff{Fixed: nan}.EqualTo(cost.Tariff{})), "Fixed"},
		"rho":                {second(cost.SumOf(nil, 2)), "Rho"},
		"round places":       {second(cost.HalfUp.Round(usd(1), 13)), "Places"},
		"round huge":         {second(cost.HalfUp.Round(huge, 2)), "Amount"},
		"haul":               {third(cost.Haul{Truck: manway.Volume(nan)}.Loads()), "Truck"},
		"placed":             {third(cost.Placed{Volume: -1}.Order()), "Volume"},
		"pit":                {second(cost.SlopedPit{TopWidth: 1, BottomWidth: 2}.Volumes()), "TopWidth"},
		"grout":              {second(cost.GroutMix{SpecificGravity: 0}.Volume()), "SpecificGravity"},
		"mix":                {second(cost.MixVolume(manway.Mass(nan))), "Dry"},
		"bar":                {second(cost.BarWeight(12, manway.Foot)), "Number"},
		"mesh":               {second(cost.Mesh{}.BareWeight(1)), "Spacing"},
		"weights":            {second(cost.UnitWeights{}.Conversion()), "Bank"},
		"task":               {second(cost.Task{Name: "sing", Unit: "EA", Crew: 1}.Line()), "Name"},
		"task unit":          {second(cost.Task{Name: "patch", Unit: "LBR", Crew: 1}.Line()), "To"},
		"crew":               {second(cost.Crew{}.Days(1)), "Crew.People"},
		"haul weight":        {second(cost.Bulk{Name: "feathers"}.Haul(1)), "Weight"},
		"unit":               {second(cost.Unit("CY").Per("YDQ")), "From.Unit"},
		"units apart":        {second(cost.Unit("EA").Per("LH")), "To"},
		"pump-out":           {second(cost.PumpOut{Gallons: manway.Volume(nan)}.Lines(cost.Band{})), "Gallons"},
		"truck":              {second(cost.Truck{}.Lines(1)), "Truck.Capacity"},
		"job no day":         {second(cost.Job{Terms: cost.Terms{Currency: "USD"}}.Estimate()), "On"},
		"margin 100":         {second(cost.Job{On: today, Terms: cost.Terms{Currency: "USD", ProfitPercent: usd(100), ProfitAs: cost.Margin}}.Estimate()), "Terms.ProfitPercent"},
		"tax percent":        {second(cost.Job{On: today, Terms: cost.Terms{Currency: "USD", Taxes: []cost.Tax{{Percent: usd(101)}}}}.Estimate()), "Terms.Taxes[0].Percent"},
		"line quantity":      {second(cost.Job{On: today, Lines: []cost.Line{{Code: "x", Quantity: inf, Unit: "EA"}}, Terms: cost.Terms{Currency: "USD"}}.Estimate()), "Lines[0].Quantity"},
	} {
		var faults manway.InputErrors
		if !errors.As(c.err, &faults) {
			t.Errorf("%s: %v", name, c.err)
			continue
		}
		if faults[0].Field != c.field || faults[0].Want == "" {
			t.Errorf("%s: fault of %q (%v), want of %q", name, faults[0].Field, faults[0], c.field)
		}
	}
}

func third[A, B any](_ A, _ B, err error) error { return err }

// Closed forms do not allocate. Those that take money do, in its arithmetic.
func TestClosedFormsDoNotAllocate(t *testing.T) {
	r := cost.Range{Low: 1, Likely: 2, High: 5}
	parts := []cost.Moments{{Mean: 1, SD: 1}, {Mean: 2, SD: 2}}
	project := cost.Project{-100, 60, 60}
	for name, f := range map[string]func() error{
		"factors":    func() error { return second(cost.Rate(0.03).Factors(20)) },
		"series":     func() error { return second(cost.Rate(0.03).Escalating(0.02, 15)) },
		"perpetuity": func() error { return second(cost.Rate(0.03).Perpetuity(4)) },
		"moments":    func() error { return second(r.Moments()) },
		"three":      func() error { return second(r.ThreePoint()) },
		"sum":        func() error { return second(cost.SumOf(parts, 0.2)) },
		"worth":      func() error { return second(project.Worth(0.03)) },
		"payback":    func() error { return second(project.Payback(0.03)) },
		"internal":   func() error { return second(project.InternalRate()) },
		"tariff":     func() error { return third(cost.Tariff{5, 1}.EqualTo(cost.Tariff{1, 2})) },
		"pit":        func() error { return second(cost.SlopedPit{1, 2, 3, 4, 2}.Volumes()) },
		"haul":       func() error { return third(cost.Haul{10, 30, 5}.Loads()) },
		"placed":     func() error { return third(cost.Placed{1, 10, 0.1}.Order()) },
		"mix":        func() error { return second(cost.MixVolume(20)) },
		"grout":      func() error { return second(cost.GroutMix{40, 3.15, 0.02}.Volume()) },
		"bar":        func() error { return second(cost.BarWeight(4, 10)) },
		"unit":       func() error { return second(cost.Unit("YDQ").Per("FTQ")) },
		"currency":   func() error { return second(cost.Currency("USD").MinorUnit()) },
		"crew":       func() error { return second(cost.Crew{4, 0.8, 9}.Days(10)) },
	} {
		if err := f(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if n := testing.AllocsPerRun(50, func() { _ = f() }); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
}
