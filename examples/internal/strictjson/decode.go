package strictjson

import (
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"manway.example/manway"
)

// Decode reads one JSON document into the value that into points to. The error,
// where there is one, is [Faults]; what could be read has been filled in all
// the same. The document is there, to look up lines, even with an error.
func Decode(data []byte, into any) (*Doc, error) {
	return decode(data, into, object, nil)
}

// Reword says how the text of a document is to be read that stands at a path for
// a value of a type: as another text, as a number ([json.Number]), or as null
// (nil). Faults show the text as it was written.
type Reword func(path string, typ reflect.Type, text string) any

// DecodeAs is Decode with every text of the document reworded before it is read.
func DecodeAs(data []byte, into any, reword Reword) (*Doc, error) {
	return decode(data, into, object, reword)
}

// DecodeValue is Decode for a value of any kind, such as a list.
func DecodeValue(data []byte, into any) (*Doc, error) {
	return decode(data, into, null, nil)
}

func decode(data []byte, into any, want kind, reword Reword) (*Doc, error) {
	v := reflect.ValueOf(into)
	if v.Kind() != reflect.Pointer || v.IsNil() {
		return &Doc{}, fmt.Errorf("strictjson: decode into %T: want a pointer", into)
	}
	doc := &Doc{data: data, lines: newlines(data), typ: v.Type().Elem()}
	if err := doc.parse(); err != nil {
		return doc, err
	}
	d := decoder{doc: doc, fields: map[reflect.Type][]field{}, reword: reword}
	if want == object && doc.root.kind != object {
		d.add(doc.root, fault("", doc.show(doc.root), "a JSON object"))
	} else {
		d.value("", doc.root, v.Elem())
	}
	d.faults.Sort()
	return doc, d.faults.Err()
}

type decoder struct {
	doc    *Doc
	faults Faults
	fields map[reflect.Type][]field
	reword Reword
}

func (d *decoder) add(n *node, f Fault) {
	f.Line = d.doc.lineAt(n.start)
	d.faults = append(d.faults, f)
}

// wrong notes that a value is of another kind than wanted.
func (d *decoder) wrong(path string, n *node, want string) {
	d.add(n, fault(path, d.doc.show(n), want))
}

// as is a text that is to be read as another one, as a number or as null.
func (n *node) as(other any) *node {
	to := *n
	to.said = n.text
	switch other := other.(type) {
	case string:
		to.text = other
	case json.Number:
		to.kind, to.text = number, other.String()
	default:
		to.kind, to.text = null, "null"
	}
	return &to
}

func (d *decoder) value(path string, n *node, v reflect.Value) {
	if n.kind == text && !d.seen(path, n) {
		return
	}
	if n.kind == text && n.said == "" && d.reword != nil {
		typ := v.Type()
		if typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
		}
		n = n.as(d.reword(path, typ, n.text))
	}
	if v.Kind() == reflect.Pointer {
		if n.kind == null {
			v.SetZero()
			return
		}
		v.Set(reflect.New(v.Type().Elem()))
		d.value(path, n, v.Elem())
		return
	}
	switch reader := v.Addr().Interface().(type) {
	case json.Unmarshaler:
		d.own(path, n, reader)
		return
	case encoding.TextUnmarshaler:
		d.text(path, n, reader)
		return
	}
	switch v.Kind() {
	case reflect.Slice, reflect.Map, reflect.Interface:
		v.SetZero()
	}
	if n.kind == null {
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		d.object(path, n, v)
	case reflect.Slice, reflect.Array:
		d.list(path, n, v)
	case reflect.Map:
		d.dict(path, n, v)
	case reflect.Interface:
		if !d.seen(path, n) {
			return
		}
		if err := json.Unmarshal(d.doc.data[n.start:n.end], v.Addr().Interface()); err != nil {
			d.wrong(path, n, err.Error())
		}
	default:
		d.scalar(path, n, v)
	}
}

// own lets a type read its JSON itself.
func (d *decoder) own(path string, n *node, reader json.Unmarshaler) {
	if !d.seen(path, n) {
		return
	}
	raw := d.doc.data[n.start:n.end]
	err := reader.UnmarshalJSON(raw)
	if err == nil {
		return
	}
	if input, ok := err.(*manway.InputError); ok { // about this value, its field is the quantity
		d.wrong(path, n, input.Want)
		return
	}
	for _, f := range FaultsOf(err, path, d.doc.show(n)) {
		f.Line = d.doc.Line(f.Path)
		d.faults = append(d.faults, f)
	}
}

// text lets a type read a string; what it says about a bare number is what it
// wants in place of any other kind.
func (d *decoder) text(path string, n *node, reader encoding.TextUnmarshaler) {
	switch n.kind {
	case null:
	case text:
		if err := reader.UnmarshalText([]byte(n.text)); err != nil {
			for _, f := range FaultsOf(err, "", n.text) {
				d.add(n, fault(path, d.doc.show(n), f.Want))
			}
		}
	default:
		want := "text in quotes"
		fresh, ok := reflect.New(reflect.TypeOf(reader).Elem()).Interface().(encoding.TextUnmarshaler)
		if ok {
			if err := fresh.UnmarshalText([]byte("1")); err != nil {
				want += ": " + FaultsOf(err, "", "")[0].Want
			}
		}
		d.wrong(path, n, want)
	}
}

func (d *decoder) object(path string, n *node, v reflect.Value) {
	if n.kind != object {
		d.wrong(path, n, "an object in { }")
		return
	}
	fields, ok := d.fields[v.Type()]
	if !ok {
		fields = fieldsOf(v.Type())
		d.fields[v.Type()] = fields
	}
	first := map[string]int{}
	for _, m := range n.members {
		at := join(path, m.name)
		if line, twice := first[m.name]; twice {
			d.add(m.value, fault(at, d.doc.show(m.value), fmt.Sprintf("the field once: it stands on line %d already", line)))
			continue
		}
		first[m.name] = d.doc.lineAt(m.start)
		if f := named(fields, m.name); f != nil {
			d.value(at, m.value, v.FieldByIndex(f.index))
			continue
		}
		known := make([]string, len(fields))
		for i, f := range fields {
			known[i] = f.name
		}
		d.add(m.value, fault(at, d.doc.show(m.value), UnknownName(m.name, known)))
	}
	for _, f := range fields {
		if value := n.member(f.name); f.required && (value == nil || value.kind == null) {
			d.add(n, fault(join(path, f.name), "missing", "a value: the field is required"))
		}
	}
}

func named(fields []field, name string) *field {
	for i := range fields {
		if fields[i].name == name {
			return &fields[i]
		}
	}
	return nil
}

func (d *decoder) list(path string, n *node, v reflect.Value) {
	if n.kind != list {
		d.wrong(path, n, "a list in [ ]")
		return
	}
	if v.Kind() == reflect.Slice {
		v.Set(reflect.MakeSlice(v.Type(), len(n.items), len(n.items)))
	} else if len(n.items) != v.Len() {
		d.wrong(path, n, fmt.Sprintf("a list of %d", v.Len()))
		return
	}
	for i, item := range n.items {
		d.value(fmt.Sprintf("%s[%d]", path, i), item, v.Index(i))
	}
}

func (d *decoder) dict(path string, n *node, v reflect.Value) {
	if n.kind != object || v.Type().Key().Kind() != reflect.String {
		d.wrong(path, n, "an object in { }")
		return
	}
	v.Set(reflect.MakeMapWithSize(v.Type(), len(n.members)))
	for _, m := range n.members {
		at := join(path, m.name)
		if strings.ContainsFunc(m.name, Unseen) {
			d.wrong(at, m.value, WantSeen)
			continue
		}
		key := reflect.ValueOf(m.name).Convert(v.Type().Key())
		if v.MapIndex(key).IsValid() {
			d.wrong(at, m.value, "the name once")
			continue
		}
		item := reflect.New(v.Type().Elem()).Elem()
		d.value(at, m.value, item)
		v.SetMapIndex(key, item)
	}
}

func (d *decoder) scalar(path string, n *node, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		if n.kind != text {
			d.wrong(path, n, "text in quotes")
			return
		}
		v.SetString(n.text)
	case reflect.Bool:
		if n.kind != boolean {
			d.wrong(path, n, "true or false")
			return
		}
		v.SetBool(n.text == "true")
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		i, err := strconv.ParseInt(n.text, 10, v.Type().Bits())
		if n.kind != number || err != nil {
			d.wrong(path, n, "a whole number")
			return
		}
		v.SetInt(i)
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		i, err := strconv.ParseUint(n.text, 10, v.Type().Bits())
		if n.kind != number || err != nil {
			d.wrong(path, n, "a whole number, 0 or more")
			return
		}
		v.SetUint(i)
	case reflect.Float32, reflect.Float64:
		x, err := strconv.ParseFloat(n.text, v.Type().Bits())
		if n.kind != number || err != nil || math.IsInf(x, 0) {
			d.wrong(path, n, "a number")
			return
		}
		v.SetFloat(x)
	default:
		d.wrong(path, n, "nothing: the field cannot be given")
	}
}
