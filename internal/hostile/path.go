package hostile

import (
	"reflect"
	"strings"
)

// named reports whether the path of a field, such as Partitions[0].Thickness, leads
// somewhere in the arguments of a call: from one of them, or from the name of a
// parameter on. Names of parameters are not known here; a lone one is taken to be
// right where there is an argument without fields.
func named(field string, args []reflect.Value) bool {
	first, rest, more := strings.Cut(field, ".")
	for _, a := range args {
		t := a.Type()
		if leads(t, field) || more && leads(t, rest) {
			return true
		}
		if i := strings.Index(field, "["); i >= 0 && t.Kind() == reflect.Slice && leads(t, field[i:]) {
			return true
		}
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		if more && rest == t.Name() {
			return true
		}
		if !more && first != "" && (t.Kind() != reflect.Struct || t.Name() == first || t == decimalType) {
			return true
		}
	}
	return false
}

func leads(t reflect.Type, path string) bool {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice && strings.HasPrefix(path, "[") {
		if t.Kind() == reflect.Slice {
			_, path, _ = strings.Cut(path, "]")
			path = strings.TrimPrefix(path, ".")
		}
		t = t.Elem()
	}
	if path == "" || t.Kind() == reflect.Interface {
		return true
	}
	if t.Kind() != reflect.Struct {
		return false
	}
	name := path[:strings.IndexAny(path+".", ".[")]
	f, ok := t.FieldByName(name)
	if !ok {
		return false
	}
	rest := strings.TrimPrefix(path[len(name):], ".")
	if list := f.Type.Kind() == reflect.Slice || f.Type.Kind() == reflect.Array; list && strings.HasPrefix(rest, "[") {
		_, rest, _ = strings.Cut(rest, "]")
		return leads(f.Type.Elem(), strings.TrimPrefix(rest, "."))
	}
	return leads(f.Type, rest)
}
