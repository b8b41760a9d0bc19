package hostile

import (
	"math"
	"reflect"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// places counts what can be spoiled in v: every number, text and state, and
// every list, pointer and interface as a whole.
func (r *room) places(v reflect.Value) int {
	n := 0
	if v.Type() == reflect.TypeFor[manway.InputError]() {
		return 0
	}
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == decimalType || slices.Contains(r.sealed, v.Type()) {
			return 1
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				n += r.places(v.Field(i))
			}
		}
		return n
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			n += r.places(v.Index(i))
		}
		if v.Kind() == reflect.Array {
			return n
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			n = r.places(v.Elem())
		}
	case reflect.Func, reflect.Map, reflect.Chan:
		return 0
	}
	return n + 1
}

var decimalType = reflect.TypeFor[decimal.Decimal]()

// What faults are written to is the caller's own, and never nil; nor is a fault.
var faultsType = reflect.TypeFor[*manway.InputErrors]()

// spoilAt spoils place number *at of v, and reports whether it was in v.
func (r *room) spoilAt(v reflect.Value, at *int, c *choice) bool {
	switch {
	case v.Type() == reflect.TypeFor[manway.InputError]():
		return false
	case v.Type() == decimalType, slices.Contains(r.sealed, v.Type()):
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && r.spoilAt(v.Field(i), at, c) {
				return true
			}
		}
		return false
	case v.Kind() == reflect.Array, v.Kind() == reflect.Slice:
		for i := range v.Len() {
			if r.spoilAt(v.Index(i), at, c) {
				return true
			}
		}
		if v.Kind() == reflect.Array {
			return false
		}
	case v.Kind() == reflect.Pointer && !v.IsNil():
		if r.spoilAt(v.Elem(), at, c) {
			return true
		}
	case v.Kind() == reflect.Interface && !v.IsNil():
		inner := clone(v.Elem())
		if r.spoilAt(inner, at, c) {
			v.Set(inner)
			return true
		}
	case v.Kind() == reflect.Func, v.Kind() == reflect.Map, v.Kind() == reflect.Chan:
		return false
	}
	if *at > 0 {
		*at--
		return false
	}
	r.spoilPlace(v, c)
	return true
}

func (r *room) spoilPlace(v reflect.Value, c *choice) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(r.badFloat(v, c))
	case reflect.Int, reflect.Int64:
		v.SetInt([]int64{v.Int() + 1, v.Int() - 1, 0, -1, 1, 7, 1000, math.MaxInt64, math.MinInt64}[c.of(9)])
	case reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		v.SetUint([]uint64{0, 1, 2, 3, 4, 5, 6, 12, 100, math.MaxUint64}[c.of(10)])
	case reflect.String:
		v.SetString([]string{"", "x", v.String() + " ", "\xff\xfe", strings.Repeat("0", 5000), "<b>\u202e", "-1", "99"}[c.of(8)])
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.Slice:
		switch c.of(5) {
		case 0:
			v.SetZero()
		case 1:
			v.Set(reflect.MakeSlice(v.Type(), 0, 0))
		case 2:
			v.Set(v.Slice(0, v.Len()/2))
		case 3:
			v.Set(reflect.AppendSlice(v, clone(v)))
		case 4:
			for v.Len() > 0 && v.Len() < 300 {
				v.Set(reflect.AppendSlice(v, clone(v)))
			}
		}
	case reflect.Struct:
		if v.Type() != decimalType {
			v.SetZero()
			return
		}
		v.Set(reflect.ValueOf(decimals[c.of(len(decimals))]))
	case reflect.Pointer, reflect.Interface:
		switch {
		case v.IsNil():
			v.Set(r.made(v.Type(), c, 1))
		case !v.Type().Implements(errorType) && v.Type() != faultsType:
			v.SetZero()
		}
	}
}

var decimals = []decimal.Decimal{decimal.NewFromInt(-1), decimal.Zero, {}, decimal.NewFromInt(1), decimal.NewFromInt(100), decimal.NewFromInt(99), decimal.RequireFromString("0.005"),
	decimal.RequireFromString("1e30"), decimal.RequireFromString("-1e30"), decimal.New(1, math.MaxInt32), decimal.New(1, math.MinInt32), decimal.New(7, -400), decimal.New(7, 400)}

// badFloat is a number in the place of that in v: for half of the decisions one
// that may still be taken, for the others none that makes sense.
func (r *room) badFloat(v reflect.Value, c *choice) float64 {
	x := v.Float()
	switch k := c.of(36); k {
	case 0:
		return math.NaN()
	case 1:
		return math.Inf(1)
	case 2:
		return math.Inf(-1)
	case 3:
		return 0
	case 4:
		return math.Copysign(0, -1)
	case 5:
		return -x
	case 6:
		return math.SmallestNonzeroFloat64
	case 7:
		return 1e-300
	case 8:
		return 1e300
	case 9:
		return -1e300
	case 10:
		return math.MaxFloat64
	case 11:
		return 1e-9
	case 12:
		return 1e6
	case 13:
		return x / 0.0254 // inches were meant
	case 14:
		return x * 0.0254
	case 15:
		return x / 0.3048
	case 16:
		return x * 1000
	case 17:
		return x / 1000
	case 18:
		return math.Nextafter(x, math.Inf(1))
	case 19:
		return math.Nextafter(x, math.Inf(-1))
	default:
		if same := append(usual[v.Type()], r.seeds[v.Type()]...); k%2 == 0 && len(same) > 0 {
			return same[c.of(len(same))].Float()
		}
		return x * (0.5 + float64(c.of(1<<16))/(1<<16)) // half to one and a half
	}
}
