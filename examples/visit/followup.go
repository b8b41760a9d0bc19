package visit

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
)

// How soon a pump-out shows on the list, and how long an offer may stay
// unanswered: common practice of an office.
const (
	dueWithin      = 60 // days
	unansweredFrom = 14 // days
)

// Reminder is one thing to follow up after a visit.
type Reminder struct {
	Visit string      // id of the visit
	Kind  string      // unsafe opening, pump-out due, offer unanswered, remedy declined
	Since manway.Date // when it became due, or was said
	Days  int         // from Since to the day of the list; negative: still to come
	What  string
}

// FollowUp is what has to be followed up on a day, the gravest kind first:
//
//	unsafe opening     an urgent defect for which no remedy is written down as done
//	pump-out due       within 60 days, or past
//	offer unanswered   for 14 days or more
//	remedy declined    with its date
func (v Visit) FollowUp(on manway.Date) []Reminder {
	var list []Reminder
	add := func(kind string, since manway.Date, what string) {
		list = append(list, Reminder{Visit: v.Survey.ID, Kind: kind, Since: since, Days: since.DaysUntil(on), What: what})
	}
	for i, a := range v.Survey.Accesses {
		for _, d := range v.Accesses[i].Defects {
			if d.Severity == riser.Urgent && !v.done(a.Name) {
				add("unsafe opening", v.Survey.Date, a.Name+": "+d.Reason)
			}
		}
	}
	if due, why := v.pumpDue(); !due.IsZero() && on.DaysUntil(due) <= dueWithin {
		add("pump-out due", due, why)
	}
	for _, o := range v.Survey.offers() {
		switch {
		case (o.State == "" || o.State == "open") && o.Date.DaysUntil(on) >= unansweredFrom:
			add("offer unanswered", o.Date, fmt.Sprintf("%s: %s", o.Access, o.Remedy))
		case o.State == "declined":
			add("remedy declined", o.Date, fmt.Sprintf("%s: %s", o.Access, o.Remedy))
		}
	}
	return list
}

// done reports whether a remedy of an access is written down as done at this
// visit or since; what was done before did not cure what was seen now.
func (v Visit) done(access string) bool {
	for _, o := range v.Survey.offers() {
		if o.Access == access && o.State == "done" && !o.Date.Before(v.Survey.Date) {
			return true
		}
	}
	return false
}

// pumpDue is when the tank is to be pumped next.
func (v Visit) pumpDue() (manway.Date, string) {
	switch {
	case v.Survey.Done.Pumped == manway.Yes:
		return v.Pump.Forecast.Pumped.Likely, "by the " + v.Pump.Forecast.Method.String() + ", counted from this visit"
	case v.pumpNow():
		return v.Survey.Date, v.rulesThatAsk()
	}
	if f := v.Pump.Forecast; (f.Method == hydraulics.ByMeasuredRate || f.Method == hydraulics.ByTwoReadings) && !f.Likely.IsZero() {
		return f.Likely, "by the " + f.Method.String()
	}
	return manway.Date{}, ""
}
