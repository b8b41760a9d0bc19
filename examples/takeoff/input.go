package main

import (
	"flag"
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/prices"
)

// input is one job as it is read.
type input struct {
	ID       string         `json:"id"`
	Title    string         `json:"title"`
	On       *manway.Date   `json:"on"`
	Scope    []prices.Item  `json:"scope"`
	Tasks    []task         `json:"tasks"`
	PumpOut  *pumpOut       `json:"pump_out"`
	Band     band           `json:"band"`
	Truck    *truck         `json:"truck"`
	Supplies []supply       `json:"supplies"`
	Ranges   []prices.Range `json:"ranges"`
	Draws    int            `json:"draws"`
	Seed     uint64         `json:"seed"`
	Terms    prices.Terms   `json:"terms"`
	Keep     bool           `json:"keep_lines_apart"`
}

// task is work of the productivity table.
type task struct {
	Name     string  `json:"name"`
	Quantity float64 `json:"quantity"`
	Unit     string  `json:"unit"`
	Crew     int     `json:"crew"`
	Delay    float64 `json:"delay"`
}

type pumpOut struct {
	Gallons      manway.Volume   `json:"gallons"`
	Covers       []manway.Length `json:"covers"`
	Hose         manway.Length   `json:"hose"`
	Filters      int             `json:"filters"`
	Crust        bool            `json:"crust"`
	AfterHours   bool            `json:"after_hours"`
	Loads        int             `json:"loads"`
	Disposal     bool            `json:"disposal"`
	DisposalStep manway.Volume   `json:"disposal_step"`
}

// band is what the base price covers.
type band struct {
	Gallons manway.Volume `json:"gallons"`
	Lids    int           `json:"lids"`
	Cover   manway.Length `json:"cover"`
	Hose    manway.Length `json:"hose"`
	Step    manway.Volume `json:"step"`
}

type truck struct {
	Capacity  manway.Volume   `json:"capacity"`
	Rate      manway.Flow     `json:"rate"`
	Setup     manway.Duration `json:"setup"`
	RoundTrip manway.Duration `json:"round_trip"`
	Crew      int             `json:"crew"`
}

// supply is how one material is bought, in place of the usual way.
type supply struct {
	Code         string  `json:"code"`
	Buy          string  `json:"buy"`
	Description  string  `json:"description"`
	NetUnit      string  `json:"net_unit"`
	Unit         string  `json:"unit"`
	WastePercent float64 `json:"waste_percent"`
	Bulking      float64 `json:"bulking"`
	Pack         float64 `json:"pack"`
	Whole        bool    `json:"whole"`
}

func flags(fs *flag.FlagSet, in *input) {
	in.Band = band{Gallons: 1000 * manway.Gallon, Lids: 1, Cover: 6 * manway.Inch, Hose: 100 * manway.Foot}
	in.Terms.Currency = "USD"
	fs.StringVar(&in.ID, "id", "", "`NAME` of the record")
	fs.StringVar(&in.Title, "title", "", "what the job is")
	fs.Func("on", "day on which it is priced, as 2026-11-25; the newest prices of the book where none is given", func(s string) error {
		in.On = new(manway.Date)
		return in.On.UnmarshalText([]byte(s))
	})
	fs.Func("scope", "`ITEMS` of the scope, each CODE QUANTITY UNIT, with semicolons between them", func(s string) error {
		for part := range strings.SplitSeq(s, ";") {
			it, err := prices.ReadItem(part)
			if err != nil {
				return err
			}
			in.Scope = append(in.Scope, it)
		}
		return nil
	})
	p := func() *pumpOut {
		if in.PumpOut == nil {
			in.PumpOut = new(pumpOut)
		}
		return in.PumpOut
	}
	fs.Func("gallons", "`VOLUME` pumped", func(s string) error { return p().Gallons.UnmarshalText([]byte(s)) })
	fs.Func("covers", "`DEPTHS` of soil over each lid, with semicolons between them", func(s string) error {
		for part := range strings.SplitSeq(s, ";") {
			var c manway.Length
			if err := c.UnmarshalText([]byte(part)); err != nil {
				return err
			}
			p().Covers = append(p().Covers, c)
		}
		return nil
	})
	fs.Func("hose", "`LENGTH` of hose laid out", func(s string) error { return p().Hose.UnmarshalText([]byte(s)) })
	fs.Func("filters", "`NUMBER` of outlet filters cleaned", func(s string) (err error) { p().Filters, err = strconv.Atoi(s); return err })
	fs.BoolFunc("crust", "scum must be broken up by hand", func(s string) (err error) { p().Crust, err = strconv.ParseBool(s); return err })
	fs.BoolFunc("after-hours", "after hours", func(s string) (err error) { p().AfterHours, err = strconv.ParseBool(s); return err })
	fs.BoolFunc("disposal", "disposal charged apart, by the gallon", func(s string) (err error) { p().Disposal, err = strconv.ParseBool(s); return err })
	fs.TextVar(&in.Band.Gallons, "base-gallons", in.Band.Gallons, "`VOLUME` that the base price covers")
	fs.TextVar(&in.Band.Hose, "base-hose", in.Band.Hose, "`LENGTH` of hose that the base price covers")
	fs.TextVar(&in.Band.Cover, "base-cover", in.Band.Cover, "`DEPTH` of soil that the base price covers")
	fs.IntVar(&in.Band.Lids, "base-lids", in.Band.Lids, "`NUMBER` of lids that the base price covers")
	percent := func(n *prices.Number) func(string) error {
		return func(s string) error { return n.UnmarshalText([]byte(s)) }
	}
	fs.TextVar(&in.Terms.Rounding, "rounding", cost.HalfEven, "`RULE` for ties: half-even or half-up")
	fs.Func("overhead", "`PERCENT` of cost and contingency", percent(&in.Terms.OverheadPercent))
	fs.Func("contingency", "`PERCENT` of cost", percent(&in.Terms.ContingencyPercent))
	fs.Func("profit", "`PERCENT` of profit", percent(&in.Terms.ProfitPercent))
	fs.TextVar(&in.Terms.ProfitAs, "profit-as", cost.Markup, "markup (of cost) or margin (of price)")
	fs.Func("minimum", "least `CHARGE`", percent(&in.Terms.Minimum))
	fs.IntVar(&in.Draws, "draws", 100_000, "`NUMBER` of draws where lines have ranges")
	fs.Uint64Var(&in.Seed, "seed", 1, "`NUMBER` that starts the draws")
}
