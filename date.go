package manway

import (
	"fmt"
	"strconv"
	"time"
)

// Date is a civil date, without a clock or a zone. The zero value is no date.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// IsZero reports whether d is no date.
func (d Date) IsZero() bool { return d == Date{} }

// String is the date as 2026-11-25, empty for no date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
}

// MarshalText is the same as String.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads a date of the calendar as 2026-11-25 (ISO 8601).
func (d *Date) UnmarshalText(text []byte) error {
	t, err := time.Parse(time.DateOnly, string(text))
	if err != nil {
		return &InputError{Field: "date", Value: strconv.Quote(string(text)), Want: "a date of the calendar as 2026-11-25"}
	}
	*d = Date{t.Year(), t.Month(), t.Day()}
	return nil
}

// Before reports whether d comes before e.
func (d Date) Before(e Date) bool { return d.DaysUntil(e) > 0 }

// DaysUntil is the number of days from d to e, negative when e comes first.
func (d Date) DaysUntil(e Date) int {
	return int(e.noon().Sub(d.noon()) / (24 * time.Hour))
}

// AddDays is the date n days later.
func (d Date) AddDays(n int) Date {
	t := d.noon().AddDate(0, 0, n)
	return Date{t.Year(), t.Month(), t.Day()}
}

// AddMonths is the date n months later; where that month has no such day it is
// the last day of the month: 31 January plus 1 is 28 or 29 February.
func (d Date) AddMonths(n int) Date {
	first := time.Date(d.Year, d.Month+time.Month(n), 1, 12, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1).Day()
	return Date{first.Year(), first.Month(), min(d.Day, last)}
}

// Validate returns the faults of d; no date is a fault.
func (d Date) Validate() error {
	var faults InputErrors
	d.Within(&faults, "Date")
	return faults.Err()
}

// Within adds a fault unless d is a date of the calendar of the years 1 to
// 9999; no date is a fault.
func (d Date) Within(faults *InputErrors, field string) {
	switch t := d.noon(); {
	case d.IsZero():
		faults.Add(field, "none", "a date of the calendar")
	case d.Year < 1 || d.Year > 9999 || t.Year() != d.Year || t.Month() != d.Month || t.Day() != d.Day:
		faults.Add(field, d.String(), "a date of the calendar")
	}
}

func (d Date) noon() time.Time {
	return time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC)
}
