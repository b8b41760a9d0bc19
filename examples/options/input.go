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
	ID            string           `json:"id"`
	Title         string           `json:"title"`
	Site          string           `json:"site"`
	On            *manway.Date     `json:"on"`
	Patch         *decimal.Decimal `json:"patch"`
	PatchLife     *lives           `json:"patch_life"`
	PatchUpkeep   decimal.Decimal  `json:"patch_upkeep"`
	Replace       *decimal.Decimal `json:"replace"`
	ReplaceLife   *lives           `json:"replace_life"`
	ReplaceUpkeep decimal.Decimal  `json:"replace_upkeep"`
	Horizon       cost.Horizon     `json:"horizon"`
	Options       []option         `json:"options"`
	Saw           []string         `json:"saw"`
	Means         []string         `json:"means"`
	Conditions    []string         `json:"conditions"`
	Ranges        []prices.Range   `json:"ranges"`
	Draws         int              `json:"draws"`
	Seed          uint64           `json:"seed"`
	Terms         prices.Terms     `json:"terms"`
}

// option is a way to go, what it takes and what it does.
type option struct {
	cost.Option
	Scope      []prices.Item `json:"scope"`
	Cures      []string      `json:"cures"`
	Delays     []string      `json:"delays"`
	Leaves     []string      `json:"leaves"`
	NeedsEntry bool          `json:"needs_entry"`
	NeedsDig   bool          `json:"needs_dig"`
	NeedsPump  bool          `json:"needs_pump"`
	Permit     string        `json:"permit"`
	RuledOut   string        `json:"ruled_out"`
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
	fs.StringVar(&in.ID, "id", "", "name of the record")
	fs.StringVar(&in.Title, "title", "", "what is to be decided")
	amount := func(set func(decimal.Decimal)) func(string) error {
		return func(s string) error {
			d, err := prices.ReadDecimal(s)
			set(d)
			return err
		}
	}
	fs.Func("patch", "`COST` of the cheap measure", amount(func(d decimal.Decimal) { in.Patch = &d }))
	record.Optional(fs, &in.PatchLife, "patch-life", "`YEARS` that it lasts: good, usual, bad, or one number")
	fs.Func("patch-upkeep", "`COST` of its upkeep a year", amount(func(d decimal.Decimal) { in.PatchUpkeep = d }))
	fs.Func("replace", "`COST` of the replacement", amount(func(d decimal.Decimal) { in.Replace = &d }))
	record.Optional(fs, &in.ReplaceLife, "replace-life", "`YEARS` that it lasts: good, usual, bad, or one number")
	fs.Func("replace-upkeep", "`COST` of its upkeep a year", amount(func(d decimal.Decimal) { in.ReplaceUpkeep = d }))
	fs.IntVar(&in.Horizon.Years, "years", in.Horizon.Years, "`YEARS` over which they are compared")
	fs.TextVar(&in.Horizon.Rate, "rate", in.Horizon.Rate, "discount `RATE` a year, such as \"3 %\"")
	fs.TextVar(&in.Horizon.Escalation, "escalation", in.Horizon.Escalation, "`RATE` at which prices rise a year")
	fs.TextVar(&in.Horizon.Prices, "money", in.Horizon.Prices, "real or nominal rates")
	fs.TextVar(&in.Horizon.Unused, "unused-life", in.Horizon.Unused, "straight-line or no-credit for life left at the end")
	fs.IntVar(&in.Draws, "draws", 100_000, "`NUMBER` of draws where lines have ranges")
	fs.Uint64Var(&in.Seed, "seed", 1, "seed of the draws")
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
	patch := cost.Option{ID: "patch", Title: "Patch, again each time", First: *in.Patch, Upkeep: in.PatchUpkeep, Life: cost.Lives(*in.PatchLife)}
	replace := cost.Option{ID: "replace", Title: "Replace now", First: *in.Replace, Upkeep: in.ReplaceUpkeep, Life: cost.Lives(*in.ReplaceLife)}
	later := patch
	later.ID, later.Title, later.Then = "patch-then-replace", "Patch once, then replace", "replace"
	return []option{{Option: patch}, {Option: replace}, {Option: later}}, nil
}
