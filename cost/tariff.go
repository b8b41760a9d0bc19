package cost

import "manway.example/manway"

// Tariff is a price of a fixed part and a part for each unit: a machine brought
// to the site against a shovel that is there.
type Tariff struct{ Fixed, Each float64 }

// Crossing is where two tariffs cost the same.
type Crossing struct {
	Quantity float64
	Cost     float64
}

// EqualTo is the quantity, 0 or more, at which two tariffs cost the same, and
// that cost:
//
//	q = (F2 - F1) / (c1 - c2)
//
// It reports false where one of them is the cheaper at every quantity. Fixed and
// each part 0 to 1e12. Source: common practice, two straight lines that cross.
func (t Tariff) EqualTo(o Tariff) (Crossing, bool, error) {
	var faults manway.InputErrors
	checkFloat(&faults, "Fixed", t.Fixed, 0, 1e12)
	checkFloat(&faults, "Each", t.Each, 0, 1e12)
	checkFloat(&faults, "Other.Fixed", o.Fixed, 0, 1e12)
	checkFloat(&faults, "Other.Each", o.Each, 0, 1e12)
	if err := faults.Err(); err != nil {
		return Crossing{}, false, err
	}
	saved := t.Each - o.Each
	q := (o.Fixed - t.Fixed) / saved
	if saved == 0 || !(q >= 0 && q <= 1e15) {
		return Crossing{}, false, nil
	}
	return Crossing{q, t.Fixed + t.Each*q}, true, nil
}
