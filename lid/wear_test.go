package lid

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

func TestPomeroy(t *testing.T) {
	reftable.Load(t, "structure.csv").Under("D1-").Each(t, func(t *testing.T, row reftable.Row) {
		rate, warn, err := Sulfide{row.Float(t, "k"), row.Float(t, "flux"), row.Float(t, "alkalinity")}.PerYear()
		if err != nil {
			t.Fatal(err)
		}
		if row.Unit == "in" {
			row.Check(t, rate.In(manway.Inch))
		} else {
			row.Check(t, rate.In(manway.Millimetre))
		}
		if !warn.Has(manway.RememberedFigure) {
			t.Error("a remembered equation does not say so")
		}
	})
}

// The constant is concrete of 2,400 kg/m3 and sulfide that all turns to acid:
// 8,760 h x 100/32 g of carbonate a g of sulfur.
func TestPomeroyConstant(t *testing.T) {
	if got := 8760.0 * 100 / 32 / 2.4e6 * 1000; !(math.Abs(got/pomeroy.In(manway.Millimetre)-1) <= 0.002) {
		t.Errorf("%g mm, remembered %g", got, pomeroy.In(manway.Millimetre))
	}
}

func TestMeasuredLoss(t *testing.T) {
	reftable.Load(t, "structure.csv").Under("D2-").Each(t, func(t *testing.T, row reftable.Row) {
		l, err := Wear{Protected: 100 * manway.Millimetre, Now: 76 * manway.Millimetre, Age: 2 * manway.Year}.Loss()
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, 2*l.PerYear.In(manway.Millimetre))
	})
}

// Property (bounded): until is the time to the limit at the rate, and never more
// where the readings are off.
func TestUntil(t *testing.T) {
	l, err := Wear{Protected: 3 * manway.Inch, Now: 2.25 * manway.Inch, Age: 30 * manway.Year}.Loss()
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(l.PerYear.In(manway.Inch)-0.025) <= 1e-12) || !(math.Abs(l.Plain-0.5625) <= 1e-12) || !l.Shown {
		t.Errorf("%+v", l)
	}
	r, err := l.Until(1.75 * manway.Inch)
	if err != nil {
		t.Fatal(err)
	}
	if r.State != NotLongerThan || !(math.Abs(r.NotLonger.In(manway.Year)-20) <= 1e-9) || !(math.Abs(r.AsLittleAs.In(manway.Year)-15) <= 1e-9) {
		t.Errorf("%+v: want not longer than 20 years, as little as 15", r)
	}
	if r, _ := l.Until(2.5 * manway.Inch); r.State != Reached {
		t.Errorf("limit behind: %v", r.State)
	}
	whole, err := Wear{Protected: 3 * manway.Inch, Now: 2.9 * manway.Inch, Age: 30 * manway.Year}.Loss()
	if err != nil {
		t.Fatal(err)
	}
	if r, _ := whole.Until(2 * manway.Inch); r.State != NotMeasured || r.NotLonger != 0 {
		t.Errorf("within the readings: %+v", r)
	}
	if _, err := l.Until(9 * manway.Inch); err == nil {
		t.Error("a limit above the thickness")
	}
}

func TestWornBar(t *testing.T) {
	b, err := WornBar(0.5*manway.Inch, 0.45*manway.Inch)
	if err != nil || !(math.Abs(b.Area-0.81) <= 1e-12) || !b.Brittle {
		t.Errorf("%+v, %v", b, err)
	}
	if b, _ := WornBar(0.5*manway.Inch, 0.48*manway.Inch); b.Brittle {
		t.Error("7.8 percent counts as brittle")
	}
}

func TestWearRefuses(t *testing.T) {
	nan := manway.Length(math.NaN())
	_, err1 := Wear{Protected: nan, Now: -1, Age: 0, Reading: nan}.Loss()
	_, _, err2 := Sulfide{0, math.NaN(), 9}.PerYear()
	_, err3 := WornBar(nan, 3)
	for i, want := range []int{4, 3, 2} {
		if faults, ok := []error{err1, err2, err3}[i].(manway.InputErrors); !ok || len(faults) != want {
			t.Errorf("%d: %v, want %d faults", i, faults, want)
		}
	}
}
