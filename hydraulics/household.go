package hydraulics

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Span is a time that is known or not.
type Span struct {
	Known bool
	Time  manway.Duration // meaningful only where Known
}

// Household is who lives on the tank, as far as it is known.
type Household struct {
	People      int           // 1 or more; 0 where PeopleKnown is Unknown
	PeopleKnown Certainty     // About and OwnerSays are taken as one person either way
	Bedrooms    int           // used where people are unknown: one to two people each; 0: not known
	Grinder     manway.Answer // garbage grinder; unknown: its effect stands in the low end
	Months      int           // of the year lived in, 1 to 12; 0: not known, the whole year is taken
}

// What a garbage grinder adds to the solids: 30 % by extension texts, and half
// as much again for the low end, since others say that it doubles them.
const (
	grinderLoad     = 1.30
	grinderLoadHigh = 1.50
)

// HouseholdInterval is the time between pump-outs of a household by the
// household table, with its low and high ends. An end that the table does not
// hold is not known.
type HouseholdInterval struct {
	Answered          bool   // Likely is known
	Reason            string // why it is not
	Low, Likely, High Span
	People            int // taken for Likely
	FewPeople         int // taken for High
	ManyPeople        int // taken for Low
	Cautions          manway.Cautions
	Assumed           manway.Assumptions
}

// Interval reads the household table for a tank of so much liquid:
//
//	likely  table(people)/1.3 with a grinder, × 12/months lived in
//	low     table(people + 1)/1.5 with a grinder or where it is unknown
//	high    table(people - 1)/1.3 with a grinder
//
// One person either way is taken where people are about right or the owner's
// word; where they are unknown, two a bedroom for likely and low, one for high;
// where neither is known there is no answer. The 12/months is derived: solids
// grow only while somebody lives there. Source: Mancl 1984; the grinder's 30 %
// is quoted beside the table by extension texts; two people a bedroom is the
// design rule of Minnesota.
func (h Household) Interval(tank manway.Volume) (HouseholdInterval, error) {
	if err := h.Validate(); err != nil {
		return HouseholdInterval{}, err
	}
	r := HouseholdInterval{Cautions: manway.EstimateOnly, Assumed: manway.AssumedTableInterval}
	switch {
	case h.PeopleKnown == Counted:
		r.FewPeople, r.People, r.ManyPeople = h.People, h.People, h.People
	case h.PeopleKnown != Unknown:
		r.FewPeople, r.People, r.ManyPeople = max(h.People-1, 1), h.People, h.People+1
	case h.Bedrooms > 0:
		r.FewPeople, r.People, r.ManyPeople = h.Bedrooms, 2*h.Bedrooms, 2*h.Bedrooms
	default:
		r.Reason = "neither people nor bedrooms are known"
		return r, nil
	}
	stretch, likely, low := 1.0, 1.0, 1.0
	if h.Months > 0 {
		stretch = 12 / float64(h.Months)
	} else {
		r.Assumed |= manway.AssumedYearRound
	}
	if h.Grinder == manway.Yes {
		likely = grinderLoad
	}
	if h.Grinder != manway.No {
		low = grinderLoadHigh
	}
	if _, err := Interval(1, tank); err != nil {
		r.Reason = "the table holds tanks of 500 to 2,500 gal"
		return r, nil
	}
	r.Low = tableSpan(r.ManyPeople, tank, stretch/low)
	r.Likely = tableSpan(r.People, tank, stretch/likely)
	r.High = tableSpan(r.FewPeople, tank, stretch/likely)
	if r.Answered = r.Likely.Known; !r.Answered {
		r.Reason = "the table has no figure for so many people"
	}
	return r, nil
}

// tableSpan is the figure of the table times a factor, or not known.
func tableSpan(people int, tank manway.Volume, factor float64) Span {
	if people > mostPeople {
		return Span{}
	}
	t, err := Interval(people, tank)
	if err != nil {
		return Span{}
	}
	return Span{true, manway.Duration(float64(t) * factor)}
}

// Basis lists the sources of the household interval.
func (HouseholdInterval) Basis() []manway.Citation {
	return []manway.Citation{{Source: mancl1984, Place: "table, as reprinted by Penn State Extension F-161"}, {Source: mn7080, Place: "two people a bedroom"}}
}

// Working is the likely interval step by step.
func (r HouseholdInterval) Working(h Household) manway.Working {
	if !r.Answered {
		return manway.Working{{Symbol: "interval", Value: "no answer: " + r.Reason}}
	}
	return manway.Working{
		{Symbol: "people", Formula: h.PeopleKnown.String(), Value: strconv.Itoa(r.People)},
		{Symbol: "likely", Formula: "table / grinder × 12/months", Numbers: "grinder " + h.Grinder.String() + ", months " + strconv.Itoa(h.Months), Value: r.Likely.Time.String()},
	}
}

// Validate returns the faults of h.
func (h Household) Validate() error {
	var faults manway.InputErrors
	if h.PeopleKnown == Unknown {
		if h.People != 0 {
			faults.Add("PeopleKnown", h.PeopleKnown.String(), "counted, about or owner says, since people are "+strconv.Itoa(h.People))
		}
	} else {
		manway.Within(&faults, "People", h.People, 1, 100)
	}
	if h.PeopleKnown > Counted {
		faults.Add("PeopleKnown", h.PeopleKnown.String(), "unknown, owner says, about or counted")
	}
	h.Grinder.Within(&faults, "Grinder")
	manway.Within(&faults, "Bedrooms", h.Bedrooms, 0, 50)
	manway.Within(&faults, "Months", h.Months, 0, 12)
	return faults.Err()
}

// After is the civil date of a known time after the last pump-out, in whole months
// rounded down, at the month's end where the month has no such day; less than a
// month is counted in whole days, and is not later than a month. The time is 0 to
// 200 years and the date at most in the year 9000.
//
// Source: the civil calendar.
func (s Span) After(last manway.Date) (manway.Date, error) {
	var faults manway.InputErrors
	if !s.Known {
		faults.Add("Known", "false", "a time that is known")
	}
	last.Within(&faults, "Date")
	if len(faults) == 0 {
		manway.Within(&faults, "Date.Year", last.Year, 1, 9000)
	}
	manway.Within(&faults, "Time", s.Time, 0, 200*manway.Year)
	if err := faults.Err(); err != nil {
		return manway.Date{}, err
	}
	const slack = 1e-9
	months := int(math.Floor(s.Time.In(manway.Month)*(1+slack) + slack))
	if months == 0 {
		day, month := last.AddDays(int(math.Floor(s.Time.In(manway.Day)*(1+slack)+slack))), last.AddMonths(1)
		if month.Before(day) { // 30 days after 31 January, which a month later is the end of February
			return month, nil
		}
		return day, nil
	}
	return last.AddMonths(months), nil
}
