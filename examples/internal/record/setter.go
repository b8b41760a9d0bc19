package record

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"unicode/utf8"

	"manway.example/manway"
	"manway.example/manway/examples/internal/strictjson"
)

// setter sets one field of the record from the text of a cell that is not
// empty; the words of its error are what was wanted.
type setter func(cell []byte) error

// bindUnit binds a quantity whose cells are bare numbers in a unit. What the
// type makes of 0 and of 1 in that unit is all that is needed.
func bindUnit(v reflect.Value, unit string) (setter, error) {
	if v.Kind() == reflect.Pointer {
		return bindPointer(v, func(v reflect.Value) (setter, error) { return bindUnit(v, unit) })
	}
	quantity, ok := v.Addr().Interface().(encoding.TextUnmarshaler)
	if !ok || v.Kind() != reflect.Float64 {
		return nil, errors.New("a name without a unit: the field has none")
	}
	if err := quantity.UnmarshalText([]byte("1 " + unit)); err != nil {
		return nil, wanted(err)
	}
	one := v.Float()
	if err := quantity.UnmarshalText([]byte("0 " + unit)); err != nil {
		return nil, wanted(err)
	}
	zero := v.Float()
	v.SetZero()
	number := v.Addr().Convert(reflect.TypeFor[*float64]()).Interface().(*float64)
	want := fmt.Errorf("a bare number: the header gives the unit, %s", unit)
	return func(cell []byte) error {
		x, ok := parseNumber(cell)
		if !ok {
			return want
		}
		*number = x*(one-zero) + zero
		if math.IsInf(*number, 0) {
			return want
		}
		return nil
	}, nil
}

// bindPointer binds what a pointer points to; the pointer is set with the cell.
func bindPointer(v reflect.Value, bind func(reflect.Value) (setter, error)) (setter, error) {
	target := reflect.New(v.Type().Elem())
	set, err := bind(target.Elem())
	if err != nil {
		return nil, err
	}
	return func(cell []byte) error {
		target.Elem().SetZero()
		if err := set(cell); err != nil {
			return err
		}
		v.Set(target)
		return nil
	}, nil
}

// bind binds a field whose cells say all there is to say.
func bind(v reflect.Value) (setter, error) {
	if v.Kind() == reflect.Pointer {
		return bindPointer(v, bind)
	}
	switch reader := v.Addr().Interface().(type) {
	case json.Unmarshaler:
		return bindJSON(v), nil
	case encoding.TextUnmarshaler:
		return func(cell []byte) error { return wanted(reader.UnmarshalText(cell)) }, nil
	case *string:
		return func(cell []byte) error {
			*reader = string(cell)
			return plain(cell)
		}, nil
	case *float64:
		return func(cell []byte) error {
			x, ok := parseNumber(cell)
			if !ok {
				return errors.New("a number")
			}
			*reader = x
			return nil
		}, nil
	case *int:
		return func(cell []byte) error {
			n, err := strconv.Atoi(string(cell))
			if err != nil {
				return errors.New("a whole number")
			}
			*reader = n
			return nil
		}, nil
	}
	switch v.Kind() {
	case reflect.String, reflect.Slice, reflect.Array, reflect.Struct, reflect.Map, reflect.Interface,
		reflect.Bool, reflect.Float32, reflect.Float64,
		reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64,
		reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return bindJSON(v), nil
	}
	return nil, errors.New("another field: this one cannot be given")
}

// bindJSON binds a field whose cells are JSON; a text needs no quotes, and a
// list no brackets where semicolons part its items.
func bindJSON(v reflect.Value) setter {
	into := v.Addr().Interface()
	return func(cell []byte) error {
		if v.Kind() == reflect.Slice && cell[0] != '[' {
			if _, own := into.(json.Unmarshaler); !own {
				return setItems(v, cell)
			}
		}
		if !json.Valid(cell) || v.Kind() == reflect.String {
			if err := plain(cell); err != nil {
				return err
			}
			if cell[0] == '[' || cell[0] == '{' {
				return errors.New("valid JSON")
			}
			cell, _ = json.Marshal(string(cell))
		}
		_, err := strictjson.DecodeValue(cell, into)
		return err
	}
}

// plain refuses a text that would not read as it is stored.
func plain(cell []byte) error {
	switch {
	case !utf8.Valid(cell):
		return errors.New("text in UTF-8")
	case bytes.ContainsFunc(cell, strictjson.Unseen):
		return errors.New(strictjson.WantSeen)
	}
	return nil
}

// setItems sets a list from items with semicolons between them.
func setItems(v reflect.Value, cell []byte) error {
	parts := bytes.Split(cell, []byte(";"))
	items := reflect.MakeSlice(v.Type(), len(parts), len(parts))
	for i, part := range parts {
		set, err := bind(items.Index(i))
		if err != nil {
			return err
		}
		if part = trim(part); len(part) == 0 {
			return errors.New("items with one semicolon between them")
		}
		if err := set(part); err != nil {
			return strictjson.FaultsOf(err, fmt.Sprintf("[%d]", i), string(part))
		}
	}
	v.Set(items)
	return nil
}

// wanted leaves of an error only what was wanted: the field and the value are
// the cell's.
func wanted(err error) error {
	var input *manway.InputError
	if errors.As(err, &input) {
		return errors.New(input.Want)
	}
	return err
}

// parseNumber reads a decimal number; names of numbers, hexadecimal digits and
// commas are none.
func parseNumber(cell []byte) (float64, bool) {
	for _, c := range cell {
		if !numeric(c) {
			return 0, false
		}
	}
	x, err := strconv.ParseFloat(string(cell), 64)
	return x, err == nil
}
