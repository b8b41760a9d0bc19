package cost_test

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
	"manway.example/manway/internal/limit"
)

// mostMoney is the limit of every sum of mostMoney that is read.
const mostMoney = 1e12

func dec(v float64) decimal.Decimal { return decimal.NewFromFloat(v) }

func TestLimitsOfFactors(t *testing.T) {
	type factors struct {
		Rate  cost.Rate
		Years int
	}
	limit.Check(t, factors{0.03, 20}, func(x factors) error { _, err := x.Rate.Factors(x.Years); return err },
		limit.Between("Rate", cost.Rate(-0.5), 10), limit.Between("Years", 1, 200))
	type series struct {
		Rate, Escalation cost.Rate
		Years            int
	}
	limit.Check(t, series{0.03, 0.01, 20}, func(x series) error { return second(x.Rate.Escalating(x.Escalation, x.Years)) },
		limit.Between("Rate", cost.Rate(-0.5), 10), limit.Between("Escalation", cost.Rate(-0.5), 10), limit.Between("Years", 0, 200))
	type perpetuity struct {
		Rate      cost.Rate
		FirstYear int
	}
	limit.Check(t, perpetuity{0.03, 1}, func(x perpetuity) error { _, err := x.Rate.Perpetuity(x.FirstYear); return err },
		limit.Between("Rate", cost.Rate(1e-6), 10), limit.Between("FirstYear", 0, 200))
}

func TestLimitsOfProjects(t *testing.T) {
	type project struct {
		Project []float64
		Rate    cost.Rate
	}
	p := project{[]float64{-100, 60, 60}, 0.03}
	limit.Check(t, p, func(x project) error { _, err := cost.Project(x.Project).Worth(x.Rate); return err },
		limit.Between("Project", 1, 201), limit.Between("Project[0]", -mostMoney, mostMoney), limit.Between("Rate", cost.Rate(-0.5), 10))
	limit.Check(t, p, func(x project) error { _, err := cost.Project(x.Project).Payback(x.Rate); return err },
		limit.Between("Project", 1, 201), limit.Between("Rate", cost.Rate(-0.5), 10))
	limit.Refuses(t, p, func(x project) error { _, err := cost.Project(x.Project).InternalRate(); return err }, "Project", func(x *project) { x.Project = []float64{100, 60} })
	type defender struct {
		Now        float64
		Yearly     []float64
		Rate       cost.Rate
		Challenger float64
	}
	limit.Check(t, defender{300, []float64{100, 200}, 0.03, 150},
		func(x defender) error {
			_, err := cost.Defender{Now: x.Now, Yearly: x.Yearly, Rate: x.Rate}.KeepFor(x.Challenger)
			return err
		},
		limit.Between("Now", -mostMoney, mostMoney), limit.Between("Yearly", 1, 200), limit.Between("Yearly[0]", -mostMoney, mostMoney),
		limit.Between("Rate", cost.Rate(-0.5), 10), limit.Between("Challenger", -mostMoney, mostMoney))
	limit.Check(t, cost.Defender{Now: 300, Yearly: []float64{100, 200}}, func(d cost.Defender) error { _, err := d.Marginal(); return err }, limit.Between("Now", -mostMoney, mostMoney))
}

// plain is an option with its money as bare numbers.
type plain struct {
	ID, Title                                   string
	First, Renewal, Upkeep, UpkeepRise, Salvage float64
	Life                                        cost.Lives
	Forever                                     bool
	Events                                      []plainEvent
	Rate                                        cost.Rate
	Scenario                                    cost.Scenario
}

type plainEvent struct {
	Cost, Year, Every, Until float64
	Only                     cost.Scenario
}

func (p plain) option() cost.Option {
	o := cost.Option{ID: p.ID, Title: p.Title, First: dec(p.First), Renewal: decimal.NewNullDecimal(dec(p.Renewal)), Upkeep: dec(p.Upkeep), UpkeepRise: dec(p.UpkeepRise),
		Salvage: dec(p.Salvage), Life: p.Life, Forever: p.Forever}
	for _, e := range p.Events {
		o.Events = append(o.Events, cost.Event{Cost: dec(e.Cost), Year: e.Year, Every: e.Every, Until: e.Until, Only: &e.Only})
	}
	return o
}

func oneLifeRefused(p plain) error { _, err := p.option().OneLife(p.Scenario, p.Rate); return err }

func TestLimitsOfOptions(t *testing.T) {
	p := plain{ID: "a", First: 900, Renewal: 800, Upkeep: 40, Salvage: 10, Life: cost.SameLife(20), Events: []plainEvent{{50, 3, 3, 15, cost.Usual}}, Rate: 0.03, Scenario: cost.Usual}
	limit.Check(t, p, oneLifeRefused,
		limit.Between("First", -mostMoney, mostMoney), limit.Between("Renewal", -mostMoney, mostMoney), limit.Between("Upkeep", -mostMoney, mostMoney), limit.Between("Salvage", -mostMoney, mostMoney), limit.Between("UpkeepRise", -mostMoney, mostMoney),
		limit.AtMost("Life.Good", 1000.0), limit.AtLeast("Life.Bad", 0.25),
		limit.AtMost("Events", 100),
		limit.Between("Events[0].Cost", -mostMoney, mostMoney), limit.Between("Events[0].Year", 0.0, 1000), limit.Between("Events[0].Every", 0.25, 1000), limit.Between("Events[0].Until", 0.0, 1000),
		limit.AtMost("Events[0].Only", cost.Bad),
		limit.Between("Rate", cost.Rate(-0.5), 10), limit.AtMost("Scenario", cost.Bad))
	short, long := p, p
	short.Life, long.Life = cost.SameLife(0.25), cost.SameLife(200)
	short.Events, long.Events = nil, nil
	limit.Check(t, short, oneLifeRefused, limit.AtLeast("Life.Good", 0.25), limit.AtLeast("Life.Usual", 0.25))
	limit.Refuses(t, long, oneLifeRefused, "Life", func(p *plain) { p.Life = cost.SameLife(201) })
	limit.Refuses(t, p, oneLifeRefused, "Life", func(p *plain) { p.Life.Bad = 30 })
	long.Life = cost.Lives{Good: 1000, Usual: 20, Bad: 0.25}
	limit.Check(t, long, oneLifeRefused, limit.AtMost("Life.Usual", 1000.0))
	long.Life, long.Scenario = cost.Lives{Good: 1000, Usual: 1000, Bad: 20}, cost.Bad
	limit.Check(t, long, oneLifeRefused, limit.AtMost("Life.Bad", 1000.0))
	limit.Refuses(t, p, oneLifeRefused, "ID", func(p *plain) { p.ID = "a b" })
	limit.Refuses(t, p, oneLifeRefused, "Title", func(p *plain) { p.Title = "two\nlines" })
	p.Forever = true
	limit.Check(t, p, oneLifeRefused, limit.AtLeast("Rate", cost.Rate(1e-6)))
}

// compared is the first option and the horizon of a comparison.
type compared struct {
	Options []plain
	Horizon cost.Horizon
}

func compareRefused(x compared) error {
	var options []cost.Option
	for _, p := range x.Options {
		options = append(options, p.option())
	}
	return second(cost.Compare(options, x.Horizon))
}

// manyRefused compares n options alike.
func manyRefused(n int) error {
	options := make([]cost.Option, n)
	for i := range options {
		options[i] = cost.Option{ID: "o" + strings.Repeat("x", i), Life: cost.SameLife(20)}
	}
	return second(cost.Compare(options, cost.Horizon{Years: 1, Rate: 0.03, Currency: "USD"}))
}

func TestLimitsOfComparison(t *testing.T) {
	x := compared{[]plain{{ID: "a", First: 900, Life: cost.SameLife(20)}}, cost.Horizon{Years: 1, Rate: 0.03, Currency: "USD"}}
	limit.Check(t, x, compareRefused,
		limit.AtLeast("Options", 1),
		limit.Between("Horizon.Years", 1, 200),
		limit.Between("Horizon.Rate", cost.Rate(-0.5), 10),
		limit.Between("Horizon.Escalation", cost.Rate(-0.5), 10),
		limit.AtMost("Horizon.Prices", cost.Nominal),
		limit.AtMost("Horizon.Unused", cost.NoCredit))
	limit.Check(t, 3, manyRefused, limit.Between("Options", 1, 30))
	limit.Refuses(t, x, compareRefused, "Horizon.Currency", func(x *compared) { x.Horizon.Currency = "XAU" })
	limit.Refuses(t, x, compareRefused, "Horizon.Escalation", func(x *compared) { x.Horizon.Escalation, x.Horizon.Years = 5, 200 })
	limit.Refuses(t, x, compareRefused, "Options[1].ID", func(x *compared) { x.Options = append(x.Options, x.Options[0]) })
	limit.Refuses(t, x.Horizon, func(h cost.Horizon) error {
		return second(cost.Compare([]cost.Option{{ID: "a", Then: map[bool]string{false: "", true: "nobody"}[h.Years == 2], Life: cost.SameLife(9)}}, h))
	}, "Options[0].Then", func(h *cost.Horizon) { h.Years = 2 })
	type inflation struct {
		Horizon   cost.Horizon
		Inflation cost.Rate
	}
	limit.Check(t, inflation{x.Horizon, 0.02}, func(x inflation) error { return second(x.Horizon.As(cost.Real, x.Inflation)) }, limit.Between("Inflation", cost.Rate(-0.5), 10))
}

func TestLimitsOfPatching(t *testing.T) {
	type patch struct {
		Patch, PatchUpkeep, Replace, ReplaceUpkeep, ReplaceLife float64
		Rate                                                    cost.Rate
	}
	limit.Check(t, patch{450, 15, 2400, 4, 20, 0.03}, func(x patch) error {
		return second(cost.PatchOrReplace{Patch: dec(x.Patch), PatchUpkeep: dec(x.PatchUpkeep), Replace: dec(x.Replace), ReplaceUpkeep: dec(x.ReplaceUpkeep), ReplaceLife: x.ReplaceLife, Rate: x.Rate}.Lives())
	},
		limit.Between("Patch", 0, mostMoney), limit.Between("PatchUpkeep", -mostMoney, mostMoney), limit.Between("Replace", 0, mostMoney), limit.Between("ReplaceUpkeep", -mostMoney, mostMoney),
		limit.Between("ReplaceLife", 0.25, 1000), limit.Between("Rate", cost.Rate(-0.5), 10))
	type neglect struct {
		Visit, Every, Repair float64
		LastsKept            cost.Lives
	}
	limit.Check(t, neglect{350, 3, 9000, cost.SameLife(40)}, func(x neglect) error {
		return second(cost.Neglect{Visit: dec(x.Visit), Every: x.Every, Repair: dec(x.Repair), LastsKept: x.LastsKept, LastsLeft: cost.SameLife(9)}.Options())
	},
		limit.Between("Visit", 0, mostMoney), limit.Between("Every", 0.25, 100), limit.Between("Repair", 0, mostMoney), limit.AtMost("LastsKept.Good", 1000.0))
	type waiting struct {
		Now, Years        float64
		Escalation        cost.Rate
		Damage, Meanwhile float64
		Rate              cost.Rate
	}
	limit.Check(t, waiting{2400, 3, 0.03, 600, 50, 0.03}, func(x waiting) error {
		return second(cost.WaitingCost{Now: dec(x.Now), Years: x.Years, Escalation: x.Escalation, Damage: dec(x.Damage), Meanwhile: dec(x.Meanwhile), Rate: x.Rate}.Price())
	},
		limit.Between("Now", 0, mostMoney), limit.Between("Years", 0.0, 200), limit.Between("Escalation", cost.Rate(-0.2), 0.5), limit.Between("Damage", 0, mostMoney),
		limit.Between("Meanwhile", 0, mostMoney), limit.Between("Rate", cost.Rate(-0.5), 10))
	type tariffs struct{ Tariff, Other cost.Tariff }
	limit.Check(t, tariffs{cost.Tariff{Fixed: 50, Each: 12}, cost.Tariff{Fixed: 400, Each: 5}}, func(x tariffs) error { return third(x.Tariff.EqualTo(x.Other)) },
		limit.Between("Fixed", 0, mostMoney).In("Tariff.Fixed"), limit.Between("Each", 0, mostMoney).In("Tariff.Each"), limit.Between("Other.Fixed", 0, mostMoney), limit.Between("Other.Each", 0, mostMoney))
}

func TestLimitsOfRanges(t *testing.T) {
	r := cost.Range{Low: 2, Likely: 3, High: 5}
	limit.Check(t, r, func(r cost.Range) error { return second(r.ThreePoint()) },
		limit.AtLeast("Low", 0.0), limit.AtMost("High", mostMoney), limit.Between("Likely", 2.0, 5), limit.AtMost("Shape", cost.Normal))
	limit.Refuses(t, r, func(r cost.Range) error { return second(r.Moments()) }, "Low", func(r *cost.Range) { *r = cost.Range{Low: 2 * mostMoney, Likely: 2 * mostMoney, High: 2 * mostMoney} })
	limit.Check(t, cost.Range{Low: mostMoney, Likely: mostMoney, High: mostMoney}, func(r cost.Range) error { return second(r.Moments()) }, limit.AtMost("Low", mostMoney))
	limit.Check(t, cost.Range{Low: 2, Likely: 3, High: mostMoney}, func(r cost.Range) error { return second(r.Moments()) }, limit.AtMost("Likely", mostMoney))
	limit.Check(t, cost.Range{}, func(r cost.Range) error { return second(r.Moments()) }, limit.AtLeast("High", 0.0), limit.AtLeast("Likely", 0.0))
	type sum struct {
		Parts []cost.Moments
		Rho   float64
	}
	limit.Check(t, sum{[]cost.Moments{{Mean: 5, SD: 1}}, 0.5}, func(x sum) error { return second(cost.SumOf(x.Parts, x.Rho)) },
		limit.Between("Rho", 0.0, 1), limit.Between("Parts[0].Mean", -mostMoney, mostMoney), limit.Between("Parts[0].SD", 0, mostMoney))
}

func TestLimitsOfBoughtLines(t *testing.T) {
	line := cost.Line{Code: "concrete", Quantity: 4, Unit: "FTQ"}
	limit.Check(t, line, cost.Line.Validate, limit.Between("Net", 0.0, 1e9), limit.Between("WastePercent", 0.0, 1000), limit.Between("Bulking", 0.0, 1000),
		limit.Between("Pack", 0.0, 1e9), limit.Between("Leftover", 0.0, 1e9))
	supply := cost.Supply{Code: "grit", NetUnit: "FTQ", Unit: "EA", Pack: 0.5}
	limit.Refuses(t, supply, cost.Supply.Validate, "NetUnit", func(s *cost.Supply) { s.NetUnit = "bucket" })
}
