package strictjson

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
)

// field is one field of a struct as JSON has it.
type field struct {
	name     string
	goName   string
	index    []int
	typ      reflect.Type
	required bool
}

// fieldsOf lists the fields of a struct that JSON can reach; those of an
// embedded struct without a name of its own count as the struct's.
func fieldsOf(t reflect.Type) []field {
	var fields []field
	for _, f := range reflect.VisibleFields(t) {
		tag := f.Tag.Get("json")
		name, _, _ := strings.Cut(tag, ",")
		flat := f.Anonymous && name == "" && f.Type.Kind() == reflect.Struct
		if tag == "-" || !f.IsExported() || flat || hidden(t, f.Index) {
			continue
		}
		if name == "" {
			name = f.Name
		}
		fields = append(fields, field{name, f.Name, f.Index, f.Type, f.Tag.Get("strict") == "required"})
	}
	return fields
}

// hidden reports whether a promoted field lies in an embedded struct that has a
// name of its own, or is behind a pointer.
func hidden(t reflect.Type, index []int) bool {
	for _, i := range index[:len(index)-1] {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name != "" || f.Type.Kind() != reflect.Struct {
			return true
		}
		t = f.Type
	}
	return false
}

// Required reports whether a type has a field that must be there.
func Required(t reflect.Type) bool { return required(t, map[reflect.Type]bool{}) }

func required(t reflect.Type, seen map[reflect.Type]bool) bool {
	t = element(t)
	if t == nil || t.Kind() != reflect.Struct || seen[t] {
		return false
	}
	seen[t] = true
	for _, f := range fieldsOf(t) {
		if f.required || required(f.typ, seen) {
			return true
		}
	}
	return false
}

// Names lists the paths of a type in the order of its fields, lists marked by
// []: id, shape.kind, partitions[].at.
func Names(t reflect.Type) []string {
	var names []string
	var walk func(t reflect.Type, path string, depth int)
	walk = func(t reflect.Type, path string, depth int) {
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		switch {
		case opaque(t) || depth > 8:
			names = append(names, path)
		case t.Kind() == reflect.Struct:
			for _, f := range fieldsOf(t) {
				walk(f.typ, join(path, f.name), depth+1)
			}
		case t.Kind() == reflect.Slice || t.Kind() == reflect.Array:
			walk(t.Elem(), path+"[]", depth+1)
		default:
			names = append(names, path)
		}
	}
	walk(t, "", 0)
	return names
}

var (
	jsonReader = reflect.TypeFor[json.Unmarshaler]()
	textReader = reflect.TypeFor[encoding.TextUnmarshaler]()
)

// opaque reports whether a type reads itself.
func opaque(t reflect.Type) bool {
	p := reflect.PointerTo(t)
	return p.Implements(jsonReader) || p.Implements(textReader)
}

// UnknownName says what was expected where a name is not among those known: the
// nearest one where one is near, else all of them.
func UnknownName(name string, known []string) string {
	best, least := "", 3
	for _, k := range known {
		d := distance(strings.ToLower(name), strings.ToLower(k))
		if d < least && d < max(len(k), 2)/2+1 {
			best, least = k, d
		}
	}
	if best != "" {
		return fmt.Sprintf("a known field: did you mean %s?", best)
	}
	return "a known field: one of " + strings.Join(known, ", ")
}

// distance counts the letters to insert, delete or replace between two names.
func distance(a, b string) int {
	if len(a) > 64 || len(b) > 64 {
		return 64
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := corner
			if a[i] != b[j] {
				cost++
			}
			corner = row[j+1]
			row[j+1] = min(cost, row[j]+1, corner+1)
		}
	}
	return row[len(b)]
}
