package main

import (
	"flag"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/prices"
	"manway.example/manway/examples/internal/record"
)

// input is one question as it is read: patch or replacement, or a list of
// options.
type input struct {
	ID            string         `json:"id"`
	Title         string         `json:"title"`
	Site          string         `json:"site"`
	On            *manway.Date   `json:"on"`
	Patch         *prices.Number `json:"patch"`
	PatchLife     *lives         `json:"patch_life"`
	PatchUpkeep   prices.Number  `json:"patch_upkeep"`
	Replace       *prices.Number `json:"replace"`
	ReplaceLife   *lives         `json:"replace_life"`
	ReplaceUpkeep prices.Number  `json:"replace_upkeep"`
	Horizon       cost.Horizon   `json:"horizon"`
	Options       []option       `json:"options"`
	Neglect       *neglect       `json:"neglect"`
	Saw           []string       `json:"saw"`
	Means         []string       `json:"means"`
	Conditions    []string       `json:"conditions"`
	Ranges        []prices.Range `json:"ranges"`
	Draws         int            `json:"draws"`
	Seed          uint64         `json:"seed"`
	Terms         prices.Terms   `json:"terms"`
}

// neglect is planned upkeep against running to failure.
type neglect struct {
	Visit     prices.Number `json:"visit" strict:"required"`
	Every     float64       `json:"every_years" strict:"required"`
	Repair    prices.Number `json:"repair" strict:"required"`
	LastsKept cost.Lives    `json:"lasts_kept_years" strict:"required"`
	LastsLeft cost.Lives    `json:"lasts_left_years" strict:"required"`
}

// options is the two ways.
func (n neglect) options() ([]option, error) {
	list, err := cost.Neglect{Visit: n.Visit.Decimal, Every: n.Every, Repair: n.Repair.Decimal, LastsKept: n.LastsKept, LastsLeft: n.LastsLeft}.Options()
	var faults manway.InputErrors
	faults.Under("Neglect", err)
	if err != nil {
		return nil, faults
	}
	repair := n.Repair
	kept := option{ID: list[0].ID, Title: list[0].Title, Life: n.LastsKept, Renewal: &repair, Events: []event{{Title: "visit", Cost: n.Visit, Year: n.Every, Every: n.Every}}}
	left := option{ID: list[1].ID, Title: list[1].Title, Life: n.LastsLeft, Renewal: &repair}
	return []option{kept, left}, nil
}

// option is a way to go, what it takes and what it does.
type option struct {
	ID         string         `json:"id" strict:"required"`
	Title      string         `json:"title"`
	First      prices.Number  `json:"first"`
	Renewal    *prices.Number `json:"renewal"`
	Then       string         `json:"then"`
	Life       cost.Lives     `json:"life_years"`
	Forever    bool           `json:"forever"`
	Upkeep     prices.Number  `json:"upkeep"`
	UpkeepRise prices.Number  `json:"upkeep_rise"`
	Salvage    prices.Number  `json:"salvage"`
	Events     []event        `json:"events"`
	Scope      []prices.Item  `json:"scope"`
	Cures      []string       `json:"cures"`
	Delays     []string       `json:"delays"`
	Leaves     []string       `json:"leaves"`
	NeedsEntry bool           `json:"needs_entry"`
	NeedsDig   bool           `json:"needs_dig"`
	NeedsPump  bool           `json:"needs_pump"`
	Permit     string         `json:"permit"`
	RuledOut   string         `json:"ruled_out"`
}

// name is what the option is called.
func (o option) name() string {
	if o.Title == "" {
		return o.ID
	}
	return o.Title
}

// event is a cost at a known year, once or again and again.
type event struct {
	Title string         `json:"title"`
	Cost  prices.Number  `json:"cost"`
	Year  float64        `json:"year"`
	Every float64        `json:"every"`
	Until float64        `json:"until"`
	Only  *cost.Scenario `json:"only"`
}

// cost is the option in the terms of the library.
func (o option) cost() cost.Option {
	out := cost.Option{
		ID: o.ID, Title: o.Title, First: o.First.Decimal, Then: o.Then, Life: o.Life, Forever: o.Forever,
		Upkeep: o.Upkeep.Decimal, UpkeepRise: o.UpkeepRise.Decimal, Salvage: o.Salvage.Decimal,
	}
	if o.Renewal != nil {
		out.Renewal = decimal.NewNullDecimal(o.Renewal.Decimal)
	}
	for _, e := range o.Events {
		out.Events = append(out.Events, cost.Event{Title: e.Title, Cost: e.Cost.Decimal, Year: e.Year, Every: e.Every, Until: e.Until, Only: e.Only})
	}
	return out
}

// lives is good, usual and bad as a flag or a cell has them: 6 3 1, or 3.
type lives cost.Lives

// UnmarshalText reads one or three numbers of years.
func (l *lives) UnmarshalText(text []byte) error {
	fields := strings.Fields(string(text))
	want := &manway.InputError{Field: "lives", Value: strconv.Quote(string(text)), Want: "years in the good, the usual and the bad case, such as 6 3 1, or one number"}
	var v [3]float64
	for i, f := range fields {
		x, err := strconv.ParseFloat(f, 64)
		if err != nil || i > 2 {
			return want
		}
		v[i] = x
	}
	switch len(fields) {
	case 1:
		*l = lives(cost.SameLife(v[0]))
	case 3:
		*l = lives{Good: v[0], Usual: v[1], Bad: v[2]}
	default:
		return want
	}
	return nil
}

func flags(fs *flag.FlagSet, in *input) {
	in.Horizon = cost.Horizon{Years: 20, Rate: 3 * cost.Percent, Currency: "USD"}
	in.Terms.Currency = "USD"
	fs.StringVar(&in.ID, "id", "", "`NAME` of the record")
	fs.StringVar(&in.Title, "title", "", "`TITLE`: what is to be decided")
	record.Optional(fs, &in.Patch, "patch", "`COST` of the cheap measure")
	record.Optional(fs, &in.PatchLife, "patch-life", "`YEARS` that it lasts: good, usual, bad, or one number")
	fs.Func("patch-upkeep", "`COST` of its upkeep a year", func(s string) error { return in.PatchUpkeep.UnmarshalText([]byte(s)) })
	record.Optional(fs, &in.Replace, "replace", "`COST` of the replacement")
	record.Optional(fs, &in.ReplaceLife, "replace-life", "`YEARS` that it lasts: good, usual, bad, or one number")
	fs.Func("replace-upkeep", "`COST` of its upkeep a year", func(s string) error { return in.ReplaceUpkeep.UnmarshalText([]byte(s)) })
	fs.IntVar(&in.Horizon.Years, "years", in.Horizon.Years, "`YEARS` over which they are compared")
	fs.TextVar(&in.Horizon.Rate, "rate", in.Horizon.Rate, "discount `RATE` a year, such as \"3 %\"")
	fs.TextVar(&in.Horizon.Escalation, "escalation", in.Horizon.Escalation, "`RATE` at which prices rise a year")
	fs.TextVar(&in.Horizon.Prices, "money", in.Horizon.Prices, "real or nominal rates")
	fs.TextVar(&in.Horizon.Unused, "unused-life", in.Horizon.Unused, "straight-line or no-credit for life left at the end")
	fs.IntVar(&in.Draws, "draws", 100_000, "`NUMBER` of draws where lines have ranges")
	fs.Uint64Var(&in.Seed, "seed", 1, "`NUMBER` that starts the draws")
}

// pair is the options of patch and replacement: each for itself, and the patch
// followed by the replacement.
func (in *input) pair() ([]option, error) {
	var faults manway.InputErrors
	if in.Patch == nil {
		faults.Add("Patch", "none", "the cost of the cheap measure, or a list of options")
	}
	if in.PatchLife == nil {
		faults.Add("PatchLife", "none", "the years that it lasts")
	}
	if in.Replace == nil {
		faults.Add("Replace", "none", "the cost of the replacement")
	}
	if in.ReplaceLife == nil {
		faults.Add("ReplaceLife", "none", "the years that it lasts")
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	patch := option{ID: "patch", Title: "Patch, again each time", First: *in.Patch, Upkeep: in.PatchUpkeep, Life: cost.Lives(*in.PatchLife)}
	replace := option{ID: "replace", Title: "Replace now", First: *in.Replace, Upkeep: in.ReplaceUpkeep, Life: cost.Lives(*in.ReplaceLife)}
	later := patch
	later.ID, later.Title, later.Then = "patch-then-replace", "Patch once, then replace", "replace"
	return []option{patch, replace, later}, nil
}
