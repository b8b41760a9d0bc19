package hydraulics_test

import (
	"fmt"
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/limit"
	"manway.example/manway/internal/reftable"
)

// fieldOf is the field of a row.
func fieldOf(t testing.TB, row reftable.Row) hydraulics.SeptageField {
	f := hydraulics.SeptageField{Area: reftable.In[manway.Area](t, row, "area")}
	row.Read(t, "nitrogen", &f.Nitrogen)
	return f
}

func TestLandSpreadingFigures(t *testing.T) {
	wait := func(t testing.TB, row reftable.Row) hydraulics.SeptageWait {
		for _, w := range hydraulics.SeptageWaits() {
			if w.Use == row.Input(t, "use") {
				return w
			}
		}
		t.Fatalf("no wait for %q", row.Input(t, "use"))
		return hydraulics.SeptageWait{}
	}
	figure := func(x float64) func(testing.TB, reftable.Row) (float64, manway.Kind) {
		return func(testing.TB, reftable.Row) (float64, manway.Kind) { return x, manway.Ratio }
	}
	quantities{
		"nitrogen a gallon of septage": figure(hydraulics.SeptageNitrogen.In(manway.PoundPerGallon)),
		"pH of limed septage":          figure(hydraulics.LimedPH),
		"minutes at that pH":           figure(hydraulics.LimedTime.In(manway.Minute)),
		"hours to plow septage in":     figure(hydraulics.PlowedInBy.In(manway.Hour)),
		"years records are kept":       figure(hydraulics.RecordsForYrs),
		"septage a field takes in a year": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			return float64(reftable.Must[hydraulics.SeptageRate](t)(fieldOf(t, row).Rate()).Most), manway.KindVolume
		},
		"drive that empties the spreader": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			var load manway.Volume
			row.Read(t, "load", &load)
			r := reftable.Must[hydraulics.SeptageRate](t)(fieldOf(t, row).Rate())
			return float64(reftable.Must[manway.Length](t)(r.Drive(load, reftable.In[manway.Length](t, row, "width")))), manway.KindLength
		},
		"months to wait after spreading": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			until := reftable.Must[manway.Date](t)(wait(t, row).Until(manway.Date{Year: 2026, Month: 1, Day: 1}))
			return float64(12*(until.Year-2026) + int(until.Month) - 1), manway.Ratio
		},
		"days to wait after spreading": func(t testing.TB, row reftable.Row) (float64, manway.Kind) {
			spread := manway.Date{Year: 2026, Month: 1, Day: 1}
			return float64(spread.DaysUntil(reftable.Must[manway.Date](t)(wait(t, row).Until(spread)))), manway.Ratio
		},
	}.run(t)
}

// Property (monotone): who spreads later waits until later, whatever the use.
func TestSeptageWaitsInOrder(t *testing.T) {
	for _, w := range hydraulics.SeptageWaits() {
		day := manway.Date{Year: 2024, Month: 1, Day: 1}
		last := reftable.Must[manway.Date](t)(w.Until(day))
		for range 500 {
			day = day.AddDays(1)
			until := reftable.Must[manway.Date](t)(w.Until(day))
			if until.Before(last) || !day.Before(until) {
				t.Fatalf("%s: spread on %v it waits until %v, the day before until %v", w.Use, day, until, last)
			}
			last = until
		}
	}
}

// Property (scaling): twice the field with twice the need takes twice the
// septage at the same depth; a drive at the rate spreads the load over its own
// strip; what was spread and what is left make up the most.
func TestSeptageRateScales(t *testing.T) {
	f := hydraulics.SeptageField{Area: 3 * manway.Acre, Nitrogen: 240 * manway.Pound, Spread: 1000 * manway.Gallon}
	one := reftable.Must[hydraulics.SeptageRate](t)(f.Rate())
	f.Area, f.Nitrogen = 2*f.Area, 2*f.Nitrogen
	two := reftable.Must[hydraulics.SeptageRate](t)(f.Rate())
	near := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 1e-12*math.Abs(want)) {
			t.Errorf("%s is %v, want %v", what, got, want)
		}
	}
	near("twice the field", float64(two.Most), 2*float64(one.Most))
	near("its depth", float64(two.Depth), float64(one.Depth))
	near("what is left", float64(one.Left+1000*manway.Gallon), float64(one.Most))
	drive := reftable.Must[manway.Length](t)(one.Drive(2000*manway.Gallon, 12*manway.Foot))
	near("the strip", float64(drive.Times(12*manway.Foot).Times(one.Depth)), float64(2000*manway.Gallon))
	f.Spread = two.Most + manway.Gallon
	if r := reftable.Must[hydraulics.SeptageRate](t)(f.Rate()); !r.Over || r.Left != 0 {
		t.Errorf("a gallon too much: %+v", r)
	}
	f.Spread = two.Most
	if r := reftable.Must[hydraulics.SeptageRate](t)(f.Rate()); r.Over {
		t.Error("exactly the most is called too much")
	}
	if n := testing.AllocsPerRun(10, func() { _, _ = f.Rate() }); n != 0 {
		t.Errorf("Rate allocates %v times", n)
	}
}

// Fields of 100 ft2 to 10,000 acres, up to 1,000 lb of nitrogen an acre; drives
// of loads up to 20,000 gal over 1 to 100 ft, at a gallon an acre or more.
func TestSeptageLimits(t *testing.T) {
	limit.Check(t, hydraulics.SeptageField{Area: manway.Acre}, func(f hydraulics.SeptageField) error { _, err := f.Rate(); return err },
		limit.Between("Area", 100*manway.SquareFoot, 10000*manway.Acre),
		limit.Between("Nitrogen", 0, 1000*manway.Pound),
		limit.Between("Spread", 0, 1e9*manway.Gallon))
	type drive struct {
		hydraulics.SeptageRate
		Load  manway.Volume
		Width manway.Length
	}
	gallonAnAcre := manway.Length(float64(manway.Gallon) / float64(manway.Acre))
	limit.Check(t, drive{hydraulics.SeptageRate{Depth: manway.Inch}, 1000 * manway.Gallon, 10 * manway.Foot},
		func(d drive) error { _, err := d.Drive(d.Load, d.Width); return err },
		limit.Between("Load", manway.Gallon, 20000*manway.Gallon),
		limit.Between("Width", manway.Foot, 100*manway.Foot),
		limit.Between("Depth", gallonAnAcre, manway.Foot))
	limit.Refuses(t, manway.Date{Year: 2026, Month: 1, Day: 1},
		func(d manway.Date) error { _, err := hydraulics.SeptageWait{Days: 30}.Until(d); return err }, "Date", func(d *manway.Date) { *d = manway.Date{} })
}

// An acre of a crop that needs 100 lb of nitrogen.
func ExampleSeptageField_Rate() {
	f := hydraulics.SeptageField{Area: manway.Acre, Nitrogen: 100 * manway.Pound, Spread: 10000 * manway.Gallon}
	r, err := f.Rate()
	fmt.Printf("%.0f gal in a year, %.0f left, %v\n", r.Most.In(manway.Gallon), r.Left.In(manway.Gallon), err)
	// Output: 38462 gal in a year, 28462 left, <nil>
}

// A 1,000 gal load over a strip 10 ft wide.
func ExampleSeptageRate_Drive() {
	r, _ := hydraulics.SeptageField{Area: manway.Acre, Nitrogen: 100 * manway.Pound}.Rate()
	d, err := r.Drive(1000*manway.Gallon, 10*manway.Foot)
	fmt.Println(d, err)
	// Output: 113 ft 3 1/8 in <nil>
}

// Lettuce, which touches the soil, 14 months after.
func ExampleSeptageWait_Until() {
	w := hydraulics.SeptageWaits()[0]
	d, err := w.Until(manway.Date{Year: 2026, Month: 5, Day: 31})
	fmt.Println(w.Use, d, err)
	// Output: food crops that touch the soil 2027-07-31 <nil>
}
