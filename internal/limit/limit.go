// Package limit tests what a calculation refuses: a value at each of its limits
// is taken, one just beyond is refused with a fault that names the field. Only
// tests import it.
//
//	limit.Check(t, riser.Tie{Corners: 10, FromA: 6, FromB: 8}, func(x riser.Tie) error { _, err := x.Position(); return err },
//		limit.Between("Corners", manway.Foot, 1000*manway.Foot),
//		limit.Between("Tape", 0, 10*manway.Foot))
//
// The limits stand in the test as the doc comments give them, and the tests of
// internal/house see to it that every limit in the code has its row.
package limit

import (
	"errors"
	"math"
	"testing"

	"manway.example/manway"
)

// Number is what may have a limit: a quantity, a bare number, a count or the
// index of a state.
type Number interface {
	~float64 | ~int | ~int64 | ~uint8
}

// Row is the limits of one field.
type Row struct {
	field  string
	place  string
	limits []edge
}

// edge is one limit and the values beside it.
type edge struct{ in, out float64 }

// Between is a field that may be low, high and what lies between. The limit of
// a list is on its length.
func Between[N Number](field string, low, high N) Row {
	return Row{field, field, []edge{at(float64(low), -1, whole[N]()), at(float64(high), 1, whole[N]())}}
}

// AtLeast is a field with a least value; what is above has its own row or no
// limit but that it is finite.
func AtLeast[N Number](field string, low N) Row {
	return Row{field, field, []edge{at(float64(low), -1, whole[N]())}}
}

// AtMost is a field with a greatest value.
func AtMost[N Number](field string, high N) Row {
	return Row{field, field, []edge{at(float64(high), 1, whole[N]())}}
}

// Above is a field that may come as near to low as one likes and not reach it.
func Above[N Number](field string, low N) Row {
	return Row{field, field, []edge{{at(float64(low), 1, whole[N]()).out, float64(low)}}}
}

// Below is a field that may come as near to high as one likes and not reach it.
func Below[N Number](field string, high N) Row {
	return Row{field, field, []edge{{at(float64(high), -1, whole[N]()).out, float64(high)}}}
}

// In says where the value stands in the input, for a fault that names it
// otherwise.
func (r Row) In(place string) Row {
	r.place = place
	return r
}

func whole[N Number]() bool { return N(3)/2 == 1 }

// near is how far from a limit the value beyond it lies, in parts of the limit;
// nearZero is that of a limit of 0, in the SI unit.
const (
	near     = 1e-8
	nearZero = 1e-9
)

// at is the edge of a limit that is itself allowed, up (1) or down (-1). The
// value inside is the limit; a limit that is itself reckoned may round, so the
// value outside is further off than rounding.
func at(limit, way float64, whole bool) edge {
	switch {
	case whole:
		return edge{limit, limit + way}
	case limit == 0:
		return edge{0, way * nearZero}
	}
	return edge{limit - way*near/1000*math.Abs(limit), limit + way*near*math.Abs(limit)}
}

// Check wants the valid input taken, and each field of it refused just beyond
// its limits and not refused at them, all else as it was. A fault of another
// field is none of the limit's: the greatest tank leaves room for no partition
// of the valid one.
func Check[In any](t testing.TB, valid In, call func(In) error, rows ...Row) {
	t.Helper()
	if err := call(valid); err != nil {
		t.Errorf("the valid input is refused: %v", err)
		return
	}
	for _, r := range rows {
		for _, e := range r.limits {
			inside, err := with(valid, r.place, e.in)
			outside, err2 := with(valid, r.place, e.out)
			if err := errors.Join(err, err2); err != nil {
				t.Errorf("%s: %v", r.field, err)
				continue
			}
			if err := call(inside); names(err, r.field) || err != nil && !isFaults(err) {
				t.Errorf("%s at its limit, %v: %v", r.field, e.in, err)
			}
			if err := call(outside); !names(err, r.field) {
				t.Errorf("%s beyond its limit, %v: %v, want a fault of it", r.field, e.out, err)
			}
		}
	}
}

// Refuses wants the valid input taken, and refused in the field after the edit:
// for a limit that is no number, such as a shape that is missing.
func Refuses[In any](t testing.TB, valid In, call func(In) error, field string, edit func(*In)) {
	t.Helper()
	if err := call(valid); err != nil {
		t.Errorf("the valid input is refused: %v", err)
	}
	edit(&valid)
	if err := call(valid); !names(err, field) {
		t.Errorf("%s: %v, want a fault of it", field, err)
	}
}

func isFaults(err error) bool {
	var faults manway.InputErrors
	return errors.As(err, &faults)
}

// names reports whether an error has a fault of the field.
func names(err error, field string) bool {
	var one *manway.InputError
	var faults manway.InputErrors
	if !errors.As(err, &faults) {
		return errors.As(err, &one) && one.Field == field
	}
	for _, f := range faults {
		if f.Field == field {
			return true
		}
	}
	return false
}
