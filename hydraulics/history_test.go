package hydraulics_test

import (
	"fmt"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/limit"
	"manway.example/manway/internal/reftable"
)

// in2026 is a day of that year or another.
func dayOf(year, month int) manway.Date {
	return manway.Date{Year: year, Month: 1, Day: 1}.AddMonths(month - 1)
}

// levels are the two levels of a row, a year apart.
func levels(t testing.TB, row reftable.Row) []hydraulics.LevelSeen {
	return []hydraulics.LevelSeen{
		{Date: dayOf(2025, 1), Level: manway.Read(reftable.In[manway.Length](t, row, "first"))},
		{Date: dayOf(2026, 1), Level: manway.Read(reftable.In[manway.Length](t, row, "second"))},
	}
}

func TestTrendFigures(t *testing.T) {
	for _, row := range reftable.Load(t, "hydraulics.csv").With("quantity", "trend of the level") {
		l := reftable.Must[hydraulics.Levels](t)(hydraulics.LevelTrend(reftable.In[manway.Length](t, row, "outlet"), levels(t, row)))
		row.CheckText(t, l.Trend.String())
	}
}

// twoReadings is a box with so much sludge at two visits twelve months apart,
// pumped when half of its depth is solids.
func twoReadings(t testing.TB, first, second manway.Length) hydraulics.Measured {
	shape := &boxTank(t, 0).Compartments()[0]
	read := func(sludge manway.Length) []hydraulics.Compartment {
		return []hydraulics.Compartment{{Name: "tank", Shape: shape, State: hydraulics.Opened, Sludge: manway.Read(sludge), Scum: manway.Read(0)}}
	}
	return hydraulics.Measured{
		Outlet: 48 * manway.Inch, Visit: dayOf(2026, 1), Compartments: read(second),
		Earlier: []hydraulics.PastReading{{Date: dayOf(2025, 1), Compartments: read(first)}},
		Rule:    hydraulics.Rule{Name: "half", Share: 0.5, Source: manway.Citation{Source: manway.Practice}},
	}
}

func TestTwoReadingsFigure(t *testing.T) {
	row := reftable.Load(t, "hydraulics.csv").With("id", "two-readings")[0]
	f := reftable.Must[hydraulics.Forecast](t)(twoReadings(t, reftable.In[manway.Length](t, row, "first"), reftable.In[manway.Length](t, row, "second")).Forecast())
	if f.Method != hydraulics.ByTwoReadings || f.Due {
		t.Errorf("%+v", f)
	}
	// The growth to the rule is 24/12, and the solids of now are those of two years
	// at the rate between the readings, so that (2 - 1) x 24 months are left.
	volume := reftable.Must[manway.Volume](t)(boxTank(t, 0).Compartments()[0].Volume(reftable.In[manway.Length](t, row, "second")))
	gathered := manway.Duration(float64(volume) / float64(f.Rate))
	row.Check(t, (f.Growth-1)*gathered.In(manway.Day)/365*12)
}

// Property (monotone): the more there was at the earlier reading, the slower it
// fills and the later the pump-out; (two ways) with nothing at the earlier reading
// it is the rate from an empty tank on that day.
func TestTwoReadingsAgainstEmpty(t *testing.T) {
	var last hydraulics.Forecast
	for i, first := range []manway.Length{0, 2 * manway.Inch, 5 * manway.Inch, 9 * manway.Inch} {
		f := reftable.Must[hydraulics.Forecast](t)(twoReadings(t, first, 12*manway.Inch).Forecast())
		if i > 0 && (f.Likely.Before(last.Likely) || f.Rate >= last.Rate) {
			t.Errorf("%v first: %v at %v, with less %v at %v", first, f.Likely, f.Rate, last.Likely, last.Rate)
		}
		if !f.Low.Before(f.Likely) && f.Low != f.Likely {
			t.Errorf("%v first: low %v, likely %v", first, f.Low, f.Likely)
		}
		last = f
	}
	two := reftable.Must[hydraulics.Forecast](t)(twoReadings(t, 0, 12*manway.Inch).Forecast())
	m := twoReadings(t, 0, 12*manway.Inch)
	m.Last, m.LastKnown, m.Earlier = m.Earlier[0].Date, hydraulics.Counted, nil
	empty := reftable.Must[hydraulics.Forecast](t)(m.Forecast())
	if two.Likely != empty.Likely || two.Pumped.Likely != empty.Pumped.Likely || empty.Method != hydraulics.ByMeasuredRate {
		t.Errorf("two readings %+v, from empty %+v", two, empty)
	}
	// More then than now says nothing: somebody pumped in between.
	if f := reftable.Must[hydraulics.Forecast](t)(twoReadings(t, 20*manway.Inch, 12*manway.Inch).Forecast()); f.Method != hydraulics.NoMethod {
		t.Errorf("solids that fell give %+v", f)
	}
}

// Property (invariant): levels that were not read change nothing; (monotone) a
// higher last level never turns a high trend into another.
func TestTrendKeepsToWhatWasRead(t *testing.T) {
	seen := []hydraulics.LevelSeen{{dayOf(2024, 1), manway.Read(50 * manway.Inch)}, {dayOf(2025, 1), manway.Reading{}}, {dayOf(2026, 1), manway.Read(49.5 * manway.Inch)}}
	all := reftable.Must[hydraulics.Levels](t)(hydraulics.LevelTrend(48*manway.Inch, seen))
	read := reftable.Must[hydraulics.Levels](t)(hydraulics.LevelTrend(48*manway.Inch, []hydraulics.LevelSeen{seen[0], seen[2]}))
	if all != read || all.Trend != hydraulics.HighAgain || all.High != 2 {
		t.Errorf("%+v and %+v", all, read)
	}
	for inches := 49.1; inches < 70; inches++ {
		seen[2].Level = manway.Read(manway.Length(inches) * manway.Inch)
		if l := reftable.Must[hydraulics.Levels](t)(hydraulics.LevelTrend(48*manway.Inch, seen)); l.Trend != hydraulics.HighAgain {
			t.Errorf("%v in: %v", inches, l.Trend)
		}
	}
	for last, want := range map[manway.Length]hydraulics.Trend{48: hydraulics.HighEarlier, 40: hydraulics.LowOnce} {
		seen[2].Level = manway.Read(last * manway.Inch)
		if l := reftable.Must[hydraulics.Levels](t)(hydraulics.LevelTrend(48*manway.Inch, seen)); l.Trend != want {
			t.Errorf("%v in: %v, want %v", last, l.Trend, want)
		}
	}
}

// Outlets of 6 in to 30 ft, levels to 60 ft, 1 to 100 visits, earlier readings
// before the visit, 20 at most.
func TestHistoryLimits(t *testing.T) {
	type trend struct {
		Outlet manway.Length
		Level  manway.Length
		Seen   []hydraulics.LevelSeen
	}
	limit.Check(t, trend{Outlet: 48 * manway.Inch, Seen: []hydraulics.LevelSeen{{Date: dayOf(2025, 1)}}}, func(x trend) error {
		seen := append([]hydraulics.LevelSeen{}, x.Seen...)
		for i := range seen {
			seen[i] = hydraulics.LevelSeen{Date: dayOf(2025, 1), Level: manway.Read(x.Level)}
		}
		_, err := hydraulics.LevelTrend(x.Outlet, seen)
		return err
	}, limit.Between("Outlet", 6*manway.Inch, 30*manway.Foot), limit.Between("Seen[0].Level", 0, 60*manway.Foot).In("Level"), limit.Between("Seen", 1, 100))
	limit.Refuses(t, []manway.Date{dayOf(2025, 1), dayOf(2026, 1)}, func(d []manway.Date) error {
		_, err := hydraulics.LevelTrend(48*manway.Inch, []hydraulics.LevelSeen{{Date: d[0]}, {Date: d[1]}})
		return err
	}, "Seen[1].Date", func(d *[]manway.Date) { *d = []manway.Date{dayOf(2026, 1), dayOf(2025, 1)} })
	limit.Check(t, twoReadings(t, 6*manway.Inch, 12*manway.Inch), func(m hydraulics.Measured) error {
		for i := 1; i < len(m.Earlier); i++ {
			m.Earlier[i] = m.Earlier[0]
		}
		_, err := m.Forecast()
		return err
	}, limit.AtMost("Earlier", 20))
	limit.Refuses(t, twoReadings(t, 6*manway.Inch, 12*manway.Inch), func(m hydraulics.Measured) error { _, err := m.Forecast(); return err },
		"Earlier[0].Date", func(m *hydraulics.Measured) { m.Earlier[0].Date = m.Visit })
}

// The level stood high a year ago and does again.
func ExampleLevelTrend() {
	l, err := hydraulics.LevelTrend(48*manway.Inch, []hydraulics.LevelSeen{
		{Date: manway.Date{Year: 2025, Month: 5, Day: 1}, Level: manway.Read(50 * manway.Inch)},
		{Date: manway.Date{Year: 2026, Month: 5, Day: 1}, Level: manway.Read(51 * manway.Inch)},
	})
	fmt.Println(l.Trend, l.High, "of", l.Read, err)
	// Output: high again 2 of 2 <nil>
}

// Sludge was read at two visits a year apart, and nothing pumped since.
func ExampleMeasured_Forecast() {
	front, _ := frontAndRear()
	read := func(sludge manway.Length) []hydraulics.Compartment {
		return []hydraulics.Compartment{{Name: "front", Shape: front, State: hydraulics.Opened, Sludge: manway.Read(sludge), Scum: manway.Read(2 * manway.Inch)}}
	}
	f, err := hydraulics.Measured{
		Outlet: 48 * manway.Inch, Visit: manway.Date{Year: 2026, Month: 3, Day: 15}, Rule: hydraulics.RuleNewHamp, Compartments: read(9 * manway.Inch),
		Earlier: []hydraulics.PastReading{{Date: manway.Date{Year: 2025, Month: 3, Day: 15}, Compartments: read(7 * manway.Inch)}},
	}.Forecast()
	fmt.Println(f.Method, f.Likely, err)
	// Output: rate between two readings 2028-08-15 <nil>
}
