package hydraulics

import (
	"manway.example/manway"
)

// LevelSeen is the level found on arrival at one visit.
type LevelSeen struct {
	Date  manway.Date
	Level manway.Reading // surface above the floor
}

// Trend is what the levels of several visits point to.
type Trend uint8

// The trends. The zero value is fewer than two levels.
const (
	NoTrend Trend = iota
	TrendAtOutlet
	HighOnce    // at the last visit only
	HighAgain   // at the last visit and an earlier one
	HighEarlier // not at the last visit
	LowAgain    // at the last visit and an earlier one
	LowOnce     // at the last visit only
)

var trends = [...]string{
	"not known: fewer than two levels were read", "at the outlet", "high for the first time", "high again", "high earlier, not now", "low again", "low for the first time",
}

// String is the trend in words.
func (t Trend) String() string { return manway.Word(trends[:], t) }

// MarshalText is the same as String.
func (t Trend) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// Levels is the levels of several visits read together.
type Levels struct {
	Trend     Trend
	Read      int // levels that were read
	High, Low int // of them, more than an inch above and below the outlet
	Cautions  manway.Cautions
}

// LevelTrend reads the levels of 1 to 100 visits, oldest first, against the outlet
// invert. A level within 1 in of it is at the outlet. High again points to a
// system that backs up, and not to the day; low again to a leak; neither proves
// it.
//
// Errors: an outlet or level outside its range, dates out of order.
//
// Source: common practice of the trade.
func LevelTrend(outlet manway.Length, seen []LevelSeen) (Levels, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Outlet", outlet, 6*manway.Inch, 30*manway.Foot)
	manway.Within(&faults, "Seen", len(seen), 1, 100)
	for i, s := range seen {
		s.Level.Within(&faults, indexed("Seen", i)+".Level", 0, 60*manway.Foot)
		faults.Under(indexed("Seen", i), s.Date.Validate())
		if i > 0 && s.Date.Before(seen[i-1].Date) {
			faults.Add(indexed("Seen", i)+".Date", s.Date.String(), "not before "+seen[i-1].Date.String())
		}
	}
	if err := faults.Err(); err != nil {
		return Levels{}, err
	}
	l := Levels{Cautions: manway.NotAnInspection}
	last := 0 // above, at or below the outlet
	for _, s := range seen {
		if !s.Level.Taken {
			continue
		}
		l.Read++
		const reach = levelTolerance * (1 + 1e-9)
		switch above := s.Level.Length - outlet; {
		case above > reach:
			l.High++
			last = 1
		case above < -reach:
			l.Low++
			last = -1
		default:
			last = 0
		}
	}
	l.Trend = l.trend(last)
	return l, nil
}

func (l Levels) trend(last int) Trend {
	switch {
	case l.Read < 2:
		return NoTrend
	case last > 0 && l.High > 1:
		return HighAgain
	case last > 0:
		return HighOnce
	case last < 0 && l.Low > 1:
		return LowAgain
	case last < 0:
		return LowOnce
	case l.High > 0:
		return HighEarlier
	}
	return TrendAtOutlet
}

// Basis lists the source of the trend.
func (Levels) Basis() []manway.Citation {
	return []manway.Citation{{Source: manway.Practice, Place: "level on arrival at several visits"}}
}
