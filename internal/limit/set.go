package limit

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode"

	"manway.example/manway"
)

// with is a copy of in whose number at a place such as Partitions[0].At is x.
// Nothing that in points to is changed. An input that is itself a number is
// replaced.
func with[In any](in In, place string, x float64) (In, error) {
	v := reflect.ValueOf(&in).Elem()
	if v.Kind() == reflect.Struct || v.Kind() == reflect.Slice {
		return in, set(v, steps(place), x)
	}
	return in, set(v, nil, x)
}

// steps parts Partitions[0].At into Partitions, 0, At.
func steps(place string) []string {
	return strings.FieldsFunc(place, func(r rune) bool { return r == '.' || r == '[' || r == ']' })
}

// set puts x at the end of the path, copying what lies behind pointers, slices
// and interfaces on the way.
func set(v reflect.Value, path []string, x float64) error {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return fmt.Errorf("nothing stands before %q in the valid input", path)
		}
		target := reflect.New(v.Elem().Type()).Elem()
		target.Set(v.Elem())
		if err := set(target, path, x); err != nil {
			return err
		}
		if v.Kind() == reflect.Pointer {
			target = target.Addr()
		}
		v.Set(target)
		return nil
	case reflect.Slice:
		return setSlice(v, path, x)
	case reflect.Struct:
		if reading, ok := v.Addr().Interface().(*manway.Reading); ok && len(path) == 0 {
			*reading = manway.Read(manway.Length(x))
			return nil
		}
		if len(path) == 0 {
			return fmt.Errorf("%s is no number", v.Type())
		}
		field := v.FieldByName(strings.ToUpper(path[0][:1]) + path[0][1:])
		if !field.IsValid() {
			return fmt.Errorf("%s has no field %s", v.Type(), path[0])
		}
		return set(field, path[1:], x)
	case reflect.Array:
		i, err := index(path, v.Len())
		if err != nil {
			return err
		}
		return set(v.Index(i), path[1:], x)
	}
	return setNumber(v, path, x)
}

// setSlice sets an element, or the length, in which case the last element is
// repeated.
func setSlice(v reflect.Value, path []string, x float64) error {
	n := v.Len()
	if len(path) == 0 {
		n = int(x)
	}
	if n < 0 {
		return fmt.Errorf("a list of %d", n)
	}
	list := reflect.MakeSlice(v.Type(), n, n)
	for i := range n {
		if v.Len() > 0 {
			list.Index(i).Set(v.Index(min(i, v.Len()-1)))
		}
	}
	v.Set(list)
	if len(path) == 0 {
		return nil
	}
	i, err := index(path, n)
	if err != nil {
		return err
	}
	return set(list.Index(i), path[1:], x)
}

func index(path []string, n int) (int, error) {
	if len(path) == 0 || !unicode.IsDigit(rune(path[0][0])) {
		return 0, fmt.Errorf("%q: want an index", path)
	}
	i, err := strconv.Atoi(path[0])
	if err != nil || i >= n {
		return 0, fmt.Errorf("%q: want an index below %d", path, n)
	}
	return i, nil
}

func setNumber(v reflect.Value, path []string, x float64) error {
	switch {
	case len(path) > 0:
		return fmt.Errorf("%s has no %q", v.Type(), path)
	case v.CanFloat():
		v.SetFloat(x)
	case v.CanInt():
		v.SetInt(int64(x))
	case v.CanUint() && x >= 0:
		v.SetUint(uint64(x))
	default:
		return fmt.Errorf("%s takes no %v", v.Type(), x)
	}
	return nil
}
