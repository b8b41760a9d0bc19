package cost

import (
	"math"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Scenario is how well things go. Nobody knows the chance that a patch fails;
// three cases are told instead.
type Scenario uint8

// The scenarios. Cases are held in this order.
const (
	Good Scenario = iota
	Usual
	Bad
	scenarios
)

var scenarioWords = [...]string{"good", "usual", "bad"}

// String is good, usual or bad.
func (s Scenario) String() string { return manway.Word(scenarioWords[:], s) }

// MarshalText is the same as String.
func (s Scenario) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads good, usual or bad.
func (s *Scenario) UnmarshalText(text []byte) error {
	return manway.ReadWord(s, "scenario", scenarioWords[:], text)
}

// Lives are years of service in the good, the usual and the bad case.
type Lives struct {
	Good  float64 `json:"good"`
	Usual float64 `json:"usual"`
	Bad   float64 `json:"bad"`
}

// SameLife is one life in every case.
func SameLife(years float64) Lives { return Lives{years, years, years} }

func (l Lives) in(s Scenario) float64 { return [...]float64{l.Good, l.Usual, l.Bad}[s] }

// Event is a cost at a known year, once or again and again: a pump-out every
// three years. A negative cost is income.
type Event struct {
	Title string
	Cost  decimal.Decimal
	Year  float64   // first time, from when the option starts
	Every float64   // years between; 0 is once
	Until float64   // last year it may fall in; 0 is no end
	Only  *Scenario // the one case in which it happens; nil is all
}

// Option is one way to go: a remedy, or leaving things as they are. All money
// is in prices of today.
type Option struct {
	ID    string
	Title string
	First decimal.Decimal // paid at the start; negative is received
	// Renewal is paid each time the life ends; not given, it is First again.
	Renewal decimal.NullDecimal
	// Then is the option that takes over at the end of the first life, as a
	// patch is followed by a replacement; empty repeats this one.
	Then string
	Life Lives
	// Forever is an option that is never renewed; Life is not used.
	Forever    bool
	Upkeep     decimal.Decimal // at the end of each year; negative is income
	UpkeepRise decimal.Decimal // more each year than the year before, anew in each life
	Salvage    decimal.Decimal // received at the end of each life; negative is cost of removal
	Events     []Event
}

// Prices says in which money a rate and an escalation are given and totals come
// out.
type Prices uint8

// The two kinds of money.
const (
	Real    Prices = iota // prices of today: rate and escalation above inflation
	Nominal               // money of the day: rate and escalation with inflation in them
)

var pricesWords = [...]string{"real", "nominal"}

// String is real or nominal.
func (p Prices) String() string { return manway.Word(pricesWords[:], p) }

// MarshalText is the same as String.
func (p Prices) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads real or nominal.
func (p *Prices) UnmarshalText(text []byte) error {
	return manway.ReadWord(p, "prices", pricesWords[:], text)
}

// Unused says what is credited for life that is left at the end of the horizon.
type Unused uint8

// The two credits.
const (
	// StraightLine credits the part of the last purchase that is not used up:
	// salvage + (cost - salvage)(kL - N)/L after k purchases of life L in N
	// years.
	StraightLine Unused = iota
	// NoCredit credits nothing but a salvage whose life ends with the horizon.
	NoCredit
)

var unusedWords = [...]string{"straight-line", "no-credit"}

// String is straight-line or no-credit.
func (u Unused) String() string { return manway.Word(unusedWords[:], u) }

// MarshalText is the same as String.
func (u Unused) MarshalText() ([]byte, error) { return []byte(u.String()), nil }

// UnmarshalText reads straight-line or no-credit.
func (u *Unused) UnmarshalText(text []byte) error {
	return manway.ReadWord(u, "unused life", unusedWords[:], text)
}

// Horizon is the time over which options are compared and the price of time.
type Horizon struct {
	Years      int      `json:"years"`
	Rate       Rate     `json:"rate"`
	Escalation Rate     `json:"escalation,omitempty"` // of every price
	Prices     Prices   `json:"prices"`
	Unused     Unused   `json:"unused_life"`
	Currency   Currency `json:"currency"`
}

// As is the horizon in other money: the same present values, other totals. Rates
// change as in [Rate.Nominal] and [Rate.Real]:
//
//	1 + nominal = (1 + real)(1 + inflation)
//
// Inflation -50 % to 1000 %. Source: NIST Handbook 135, real and nominal discount rates.
func (h Horizon) As(p Prices, inflation Rate) (Horizon, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Inflation", inflation, leastRate, mostRate)
	faults.Under("", h.Validate())
	if err := faults.Err(); err != nil {
		return Horizon{}, err
	}
	switch {
	case h.Prices == Real && p == Nominal:
		h.Rate, h.Escalation = h.Rate.Nominal(inflation), h.Escalation.Nominal(inflation)
	case h.Prices == Nominal && p == Real:
		h.Rate, h.Escalation = h.Rate.Real(inflation), h.Escalation.Real(inflation)
	}
	h.Prices = p
	return h, h.Validate()
}

// Validate returns every fault of h.
func (h Horizon) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Years", h.Years, 1, mostYears)
	checkRate(&faults, "Rate", h.Rate)
	checkRate(&faults, "Escalation", h.Escalation)
	if int(h.Prices) >= len(pricesWords) {
		faults.Add("Prices", h.Prices.String(), "real or nominal")
	}
	if int(h.Unused) >= len(unusedWords) {
		faults.Add("Unused", h.Unused.String(), "straight-line or no-credit")
	}
	_, err := h.Currency.MinorUnit()
	faults.Under("", err)
	if len(faults) == 0 {
		if g := math.Abs(math.Log1p(float64(h.Escalation))-math.Log1p(float64(h.Rate))) * float64(h.Years); g > 200 {
			faults.Add("Escalation", h.Escalation.String(), "nearer to the rate over so many years")
		}
		if g := math.Log1p(float64(h.Escalation)) * float64(h.Years); g > 20 {
			faults.Add("Escalation", h.Escalation.String(), "prices below 4e8 times today's at the end")
		}
	}
	return faults.Err()
}

// Shortest life that is reckoned with, in years, and most events of an option.
const (
	leastLife  = 0.25
	mostEvents = 100
)

// Validate returns every fault of o by itself; [Compare] also checks Then.
func (o Option) Validate() error {
	var faults manway.InputErrors
	if !isCode(o.ID) {
		faults.Add("ID", strconv.Quote(clip(o.ID)), "letters, digits, points and hyphens, starting with a letter or digit, at most 64")
	}
	if !plainText(o.Title) || len(o.Title) > maxCell {
		faults.Add("Title", strconv.Quote(clip(o.Title)), "one line of UTF-8 text of at most 500 bytes")
	}
	checkNumber(&faults, "First", o.First)
	if o.Renewal.Valid {
		checkNumber(&faults, "Renewal", o.Renewal.Decimal)
	}
	checkNumber(&faults, "Upkeep", o.Upkeep)
	checkNumber(&faults, "UpkeepRise", o.UpkeepRise)
	checkNumber(&faults, "Salvage", o.Salvage)
	if !o.Forever {
		ok := checkFloat(&faults, "Life.Good", o.Life.Good, leastLife, 1000)
		ok = checkFloat(&faults, "Life.Usual", o.Life.Usual, leastLife, 1000) && ok
		ok = checkFloat(&faults, "Life.Bad", o.Life.Bad, leastLife, 1000) && ok
		if ok && !(o.Life.Good >= o.Life.Usual && o.Life.Usual >= o.Life.Bad) {
			faults.Add("Life", "out of order", "good at least as long as usual, usual at least as long as bad")
		}
	}
	manway.Within(&faults, "Events", len(o.Events), 0, mostEvents)
	for i, e := range o.Events {
		at := "Events[" + strconv.Itoa(i) + "]."
		checkNumber(&faults, at+"Cost", e.Cost)
		checkFloat(&faults, at+"Year", e.Year, 0, 1000)
		if e.Every != 0 {
			checkFloat(&faults, at+"Every", e.Every, leastLife, 1000)
		}
		checkFloat(&faults, at+"Until", e.Until, 0, 1000)
		if e.Only != nil && *e.Only >= scenarios {
			faults.Add(at+"Only", e.Only.String(), "good, usual or bad")
		}
	}
	return faults.Err()
}

// renewal is what is paid when the life ends.
func (o Option) renewal() decimal.Decimal {
	if o.Renewal.Valid {
		return o.Renewal.Decimal
	}
	return o.First
}

// find is the option of an id.
func find(options []Option, id string) (Option, bool) {
	if id == "" {
		return Option{}, false
	}
	i := slices.IndexFunc(options, func(o Option) bool { return o.ID == id })
	if i < 0 {
		return Option{}, false
	}
	return options[i], true
}
