package cost

import (
	"math"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Mark is what has been paid by the end of a year. A renewal that falls due on
// its last day belongs to the next year, so that the total by year 5 is that of
// a horizon of 5 years.
type Mark struct {
	Year int
	Paid decimal.Decimal
}

// Course is how one option runs in one scenario.
type Course struct {
	Life             float64         // years; 0 for an option that is never renewed
	Purchases        int             // within the horizon, the first included
	Marks            []Mark          // at years 5, 10 and 20 within the horizon, and at its end
	UnusedLife       decimal.Decimal // credited at the end of the horizon
	PresentValue     decimal.Decimal // of everything, less the credit
	EquivalentAnnual decimal.Decimal // the present value as equal yearly payments over the horizon
	// Repeated is the yearly cost over one life, for as long as the option is
	// repeated alike, whatever the horizon, in prices of today; see
	// [Option.OneLife]. It is not valid where the option is followed by another or
	// renewed at another price.
	Repeated decimal.NullDecimal
	Curve    []Mark // paid by the end of every year, year 0 the first
	Flows    []Flow
}

// Outlook is one option in its three scenarios.
type Outlook struct {
	ID, Title string
	Courses   [scenarios]Course // good, usual, bad
}

// Comparison is several options over one horizon.
type Comparison struct {
	Horizon   Horizon
	Places    int
	Options   []Outlook
	Cheapest  [scenarios]string // id of the least present value in each scenario; the first of equals
	BreakEven []BreakEven       // of every cheaper option against every dearer one
	Swings    []Swing           // what moves each option's yearly cost
	Cautions  manway.Cautions

	given []Option
}

// Most options of one comparison.
const mostOptions = 30

// ownerYears are the years at which owners are told what they have paid.
var ownerYears = [...]int{5, 10, 20}

// Compare runs every option over the horizon in its three scenarios. All
// options share the horizon, so equal and unequal lives compare: a life that
// ends within it is renewed or followed by the option named in Then, and life
// left at its end is credited by the rule of the horizon.
//
//	PV  = sum of flow (1+e)^t / (1+d)^t
//	EAC = PV / UPV*(d, e, N)
//
// Totals by year are plain sums of what is paid, without discount or credit.
//
// Source: NIST Handbook 135, sections 4 and 5; ASTM E917.
func Compare(options []Option, h Horizon) (Comparison, error) {
	if err := checkOptions(options, h); err != nil {
		return Comparison{}, err
	}
	places, _ := h.Currency.MinorUnit()
	c := Comparison{Horizon: h, Places: places, Cautions: manway.EstimateOnly | manway.LocalCode, given: slices.Clone(options)}
	values := make([][scenarios]float64, len(options))
	for i, o := range options {
		out := Outlook{ID: o.ID, Title: o.Title}
		for s := Good; s < scenarios; s++ {
			flows := h.flows(options, o, s)
			values[i][s] = h.presentValue(flows)
			course, err := h.course(o, s, flows, values[i][s], places)
			if err != nil {
				return Comparison{}, err
			}
			out.Courses[s] = course
		}
		c.Options = append(c.Options, out)
	}
	for s := Good; s < scenarios; s++ {
		best := 0
		for i := range options {
			if values[i][s] < values[best][s] {
				best = i
			}
		}
		c.Cheapest[s] = options[best].ID
	}
	c.BreakEven = breakEvens(options, h)
	c.paybacks()
	c.Swings = swings(options, h, places)
	return c, nil
}

func checkOptions(options []Option, h Horizon) error {
	var faults manway.InputErrors
	faults.Under("Horizon", h.Validate())
	manway.Within(&faults, "Options", len(options), 1, mostOptions)
	seen := map[string]bool{}
	for i, o := range options {
		at := "Options[" + strconv.Itoa(i) + "]"
		faults.Under(at, o.Validate())
		if seen[o.ID] {
			faults.Add(at+".ID", strconv.Quote(clip(o.ID)), "an id that no other option has")
		}
		seen[o.ID] = true
		if o.Then != "" {
			if _, ok := find(options, o.Then); !ok {
				faults.Add(at+".Then", strconv.Quote(clip(o.Then)), "the id of one of the options")
			}
			if o.Forever {
				faults.Add(at+".Then", strconv.Quote(clip(o.Then)), "nothing, after an option that lasts for ever")
			}
		}
	}
	if len(faults) == 0 {
		checkPayments(&faults, options, h)
	}
	return faults.Err()
}

// mostPayments bounds the work of a comparison: options times payments of the
// one that has most.
const mostPayments = 50_000

// checkPayments adds a fault where so many payments are asked for that the
// comparison would not end soon.
func checkPayments(faults *manway.InputErrors, options []Option, h Horizon) {
	years, most := float64(h.Years), 0.0
	for _, o := range options {
		lives, n := 1.0, years
		if !o.Forever {
			lives = years/o.Life.Bad + 1
		}
		n += lives
		for _, e := range o.Events {
			n += lives // each life may have it once
			if e.Every > 0 {
				n += years / e.Every
			}
		}
		most = math.Max(most, n)
	}
	if total := most * float64(len(options)); total > mostPayments {
		faults.Add("Options", "about "+shortNumber(total)+" payments", "at most 50,000: fewer options or events, or longer lives")
	}
}

// course sums the flows of one option in one scenario.
func (h Horizon) course(o Option, s Scenario, flows []Flow, pv float64, places int) (Course, error) {
	c := Course{Flows: flows, Curve: make([]Mark, h.Years+1)}
	if !o.Forever {
		c.Life = o.Life.in(s)
	}
	var faults manway.InputErrors
	money := func(v float64) decimal.Decimal {
		d, err := amountOf(v, places, HalfEven)
		faults.Under("", err)
		return d
	}
	for y := range c.Curve {
		c.Curve[y].Year = y
	}
	for i, f := range flows {
		paid := money(h.paid(f))
		c.Flows[i].Paid = paid
		if f.Why == UnusedLife {
			c.UnusedLife = c.UnusedLife.Sub(paid)
			continue
		}
		if f.Why == FirstCost || f.Why == Renewed {
			c.Purchases++
		}
		y := min(int(math.Ceil(f.Year-near)), h.Years)
		if f.Why == Renewed && f.Year > float64(y)-near { // due on the last day of year y
			y = min(y+1, h.Years)
		}
		c.Curve[y].Paid = c.Curve[y].Paid.Add(paid)
	}
	for y := 1; y <= h.Years; y++ {
		c.Curve[y].Paid = c.Curve[y].Paid.Add(c.Curve[y-1].Paid)
	}
	for _, y := range ownerYears {
		if y < h.Years {
			c.Marks = append(c.Marks, c.Curve[y])
		}
	}
	c.Marks = append(c.Marks, c.Curve[h.Years])
	c.PresentValue = money(pv)
	if y, err := o.OneLife(s, h.net()); err == nil && o.Then == "" && o.renewal().Equal(o.First) {
		c.Repeated = decimal.NewNullDecimal(money(y.Annual))
	}
	c.EquivalentAnnual = money(h.equivalentAnnual(pv))
	return c, faults.Err()
}
