package record

import (
	"flag"
	"fmt"
	"reflect"
	"strings"

	"manway.example/manway/examples/internal/strictjson"
)

// Nested declares a flag for a part of the record that may be left out, a
// struct marked for encoding/json, given as "name=value; name=value" with the
// names of its JSON fields: *p stays nil until the flag is given.
func Nested[T any](fs *flag.FlagSet, p **T, name, usage string) {
	fs.Func(name, usage, func(text string) error {
		v := new(T)
		if err := setNamed(reflect.ValueOf(v).Elem(), text); err != nil {
			return err
		}
		*p = v
		return nil
	})
}

// Appended is [Nested] for a list: each time the flag is given adds an item.
func Appended[T any](fs *flag.FlagSet, p *[]T, name, usage string) {
	fs.Func(name, usage, func(text string) error {
		var v T
		if err := setNamed(reflect.ValueOf(&v).Elem(), text); err != nil {
			return err
		}
		*p = append(*p, v)
		return nil
	})
}

// setNamed sets the fields of a struct from "name=value; name=value".
func setNamed(v reflect.Value, text string) error {
	seen := map[string]bool{}
	for part := range strings.SplitSeq(text, ";") {
		name, value, ok := strings.Cut(part, "=")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !ok || value == "" {
			return fmt.Errorf("%q: want name=value", strings.TrimSpace(part))
		}
		if seen[name] {
			return fmt.Errorf("%s: want it once", name)
		}
		seen[name] = true
		field := strictjson.Field(v, name)
		if !field.IsValid() {
			return fmt.Errorf("%q: want %s", name, strictjson.UnknownName(name, columnNames(v.Type())))
		}
		set, err := bind(field)
		if err == nil {
			err = set([]byte(value))
		}
		if err != nil {
			return fmt.Errorf("%s %q: want %w", name, value, err)
		}
	}
	return nil
}
