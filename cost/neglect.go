package cost

import (
	"math"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Neglect is planned upkeep against running to failure: the same system, once
// looked after and once left alone until it fails.
type Neglect struct {
	Visit     decimal.Decimal // cost of one pump-out or other upkeep
	Every     float64         // years between visits
	Repair    decimal.Decimal // cost when it fails, again each time
	LastsKept Lives           // years to failure when looked after
	LastsLeft Lives           // years to failure when left alone
}

// Options is the two as options named upkeep and neglect, for [Compare]: both
// cost nothing today; one pays the visits and fails late, the other pays
// nothing and fails early. Life that is left at the end is credited by the same
// rule for both. Source: NIST Handbook 135, alternatives over one study period; the lives
// are the user's.
func (n Neglect) Options() ([]Option, error) {
	var faults manway.InputErrors
	checkNotNegative(&faults, "Visit", n.Visit)
	checkNotNegative(&faults, "Repair", n.Repair)
	checkFloat(&faults, "Every", n.Every, leastLife, 100)
	kept := Option{
		ID: "upkeep", Title: "Planned upkeep", Life: n.LastsKept, Renewal: decimal.NewNullDecimal(n.Repair),
		Events: []Event{{Title: "visit", Cost: n.Visit, Year: n.Every, Every: n.Every}},
	}
	left := Option{ID: "neglect", Title: "Run to failure", Life: n.LastsLeft, Renewal: decimal.NewNullDecimal(n.Repair)}
	for _, part := range [...]struct {
		name string
		o    Option
	}{{"LastsKept", kept}, {"LastsLeft", left}} {
		if err, ok := part.o.Validate().(manway.InputErrors); ok {
			for _, f := range err {
				if len(f.Field) >= 4 && f.Field[:4] == "Life" {
					faults.Add(part.name+f.Field[4:], f.Value, f.Want)
				}
			}
		}
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return []Option{kept, left}, nil
}

// WaitingCost is what putting a remedy off costs: its price now against its
// price after the wait, with what is paid in the meantime and the further
// damage that makes it dearer.
type WaitingCost struct {
	Now        decimal.Decimal // price of the remedy today
	Years      float64         // put off
	Escalation Rate            // of its price
	Damage     decimal.Decimal // more to be done after the wait, prices of today
	Meanwhile  decimal.Decimal // paid at the end of each whole year of waiting
	Rate       Rate
}

// Waiting is the price of waiting.
type Waiting struct {
	Later        float64 // what is paid then, in money of that year
	PresentValue float64 // of waiting: what is paid meanwhile and later
	Extra        float64 // present value less the price now; below 0 where waiting saves
}

// Price is the price of waiting:
//
//	later = (now + damage)(1+e)^t
//	PV    = later (1+i)^-t + meanwhile UPV*(i, e, whole years)
//	extra = PV - now
//
// Years 0 to 200, escalation -20 % to 50 %. Source: NIST Handbook 135, present value with
// escalating prices.
func (w WaitingCost) Price() (Waiting, error) {
	var faults manway.InputErrors
	checkNotNegative(&faults, "Now", w.Now)
	checkFloat(&faults, "Years", w.Years, 0, mostYears)
	checkFloat(&faults, "Escalation", float64(w.Escalation), -0.2, 0.5)
	checkNotNegative(&faults, "Damage", w.Damage)
	checkNotNegative(&faults, "Meanwhile", w.Meanwhile)
	checkRate(&faults, "Rate", w.Rate)
	if err := faults.Err(); err != nil {
		return Waiting{}, err
	}
	now := w.Now.InexactFloat64()
	later := (now + w.Damage.InexactFloat64()) / present(w.Escalation, w.Years)
	pv := later*present(w.Rate, w.Years) + w.Meanwhile.InexactFloat64()*escalatingPresent(w.Rate, w.Escalation, math.Floor(w.Years+near))
	return Waiting{Later: later, PresentValue: pv, Extra: pv - now}, nil
}
