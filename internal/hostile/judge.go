package hostile

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"manway.example/manway"
)

// judge collects what is wrong with a result.
type judge struct {
	room    *room
	args    []reflect.Value
	ownName bool // the fault has the name of a quantity that is read or written, or is given
	faults  []string
}

func (j *judge) fault(path, format string, args ...any) {
	j.faults = append(j.faults, path+": "+fmt.Sprintf(format, args...))
}

// value looks at every exported number, state and text in v and, to some depth,
// at what its methods give that need no argument.
func (j *judge) value(path string, v reflect.Value, methods int) {
	if !v.IsValid() || len(j.faults) > 0 {
		return
	}
	t := v.Type()
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			j.fault(path, "%v with a nil error", x)
		}
		return
	case reflect.Uint8:
		if s, ok := v.Interface().(fmt.Stringer); ok && strings.Contains(s.String(), "unknown value") {
			j.fault(path, "the state %d has no name", v.Uint())
		}
		return
	case reflect.String:
		j.text(path, v.String())
	case reflect.Struct:
		for i := range v.NumField() {
			if t.Field(i).IsExported() {
				j.value(path+"."+t.Field(i).Name, v.Field(i), methods)
			}
		}
	case reflect.Slice, reflect.Array:
		if t.Elem().Kind() == reflect.Uint8 && t.Elem().Name() == "uint8" {
			return
		}
		for i := range min(v.Len(), 50) {
			j.value(fmt.Sprintf("%s[%d]", path, i), v.Index(i), methods)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			j.value(fmt.Sprintf("%s[%v]", path, k), v.MapIndex(k), methods)
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			j.value(path, v.Elem(), methods)
		}
		return
	}
	if methods > 0 && t.PkgPath() != "" && strings.HasPrefix(t.PkgPath(), j.room.module) {
		j.methods(path, v, methods-1)
	}
}

// text looks for a number that is none, and for a verb that was not filled.
func (j *judge) text(path, s string) {
	for _, bad := range []string{"NaN", "+Inf", "-Inf", " Inf ", "%!", "unknown value"} {
		if strings.Contains(s, bad) {
			j.fault(path, "%q in %.300q", bad, s)
		}
	}
}

// methods calls the methods of v that need no argument.
func (j *judge) methods(path string, v reflect.Value, depth int) {
	p := reflect.New(v.Type())
	p.Elem().Set(v)
	for i := range p.NumMethod() {
		m, name := p.Method(i), p.Type().Method(i).Name
		if m.Type().NumIn() > 0 || name == "Error" || name == "Unwrap" || name == "Err" || name == "Unit" {
			continue
		}
		out := m.Call(nil)
		if failed(out) {
			continue // such as the text of a date that was not set
		}
		j.results(path+"."+name+"()", out, depth)
		if name == "MarshalJSON" && !json.Valid(out[0].Bytes()) {
			j.fault(path, "MarshalJSON gives %q", out[0].Bytes())
		}
	}
}

// results looks at what one call gave: an error that says what it must, or
// values.
func (j *judge) results(path string, out []reflect.Value, methods int) {
	for _, v := range out {
		if v.Type() == errorType && !v.IsNil() {
			j.error(path, v.Interface().(error))
			return
		}
	}
	for _, v := range out {
		if v.Type() != errorType {
			j.value(path, v, methods)
		}
	}
}

var errorType = reflect.TypeFor[error]()

// error asks an error for its field, value and expectation.
func (j *judge) error(path string, err error) {
	for _, known := range j.room.errors {
		if errors.Is(err, known) {
			return
		}
	}
	if v := reflect.ValueOf(err); v.Type().PkgPath() == j.room.pkg && v.Kind() == reflect.Slice && v.Len() > 0 {
		for i := range v.Len() { // faults of the room's own, each with its field
			if v.Index(i).Kind() == reflect.Struct && v.Index(i).FieldByName("Field").String() == "" {
				j.fault(path, "the error %q names no field", err)
			}
		}
		if v.Index(0).Kind() == reflect.Struct {
			return
		}
	}
	var list manway.InputErrors
	if one := new(manway.InputError); !errors.As(err, &list) && errors.As(err, &one) {
		list = manway.InputErrors{one}
	}
	if len(list) == 0 {
		j.fault(path, "the error %q (%T) names no field", err, err)
	}
	found := slices.ContainsFunc(list, func(f *manway.InputError) bool { return noNumber(f.Value) })
	for _, f := range list {
		switch {
		case f.Field == "" || f.Value == "" || f.Want == "" || strings.Contains(f.Error(), "%!"):
			j.fault(path, "the error %+v lacks a part", *f)
		case !j.ownName && !named(f.Field, j.args):
			j.fault(path, "the error %+v names no field of what was given", *f)
		case noNumber(f.Want) && !found:
			j.fault(path, "the error %+v blames a field for another that is no number", *f)
		}
	}
}

func noNumber(s string) bool { return strings.Contains(s, "NaN") || strings.Contains(s, "Inf") }
