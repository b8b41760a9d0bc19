package visit

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// MarshalJSON writes the survey so that [Read] gives the same survey again: what
// was left out stays out, and a value that was said with words round it, such as
// "about 41 in", stands as it was written for as long as it is unchanged.
func (s Survey) MarshalJSON() ([]byte, error) {
	w := surveyWriter{map[string]string{}}
	for _, one := range s.Said {
		w.written[one.Path] = one.Written
	}
	value, _ := w.value("", reflect.ValueOf(s))
	return json.Marshal(value)
}

type surveyWriter struct{ written map[string]string }

// value is what stands at a path of the document; ok is false where it is left
// out.
func (w surveyWriter) value(path string, v reflect.Value) (value any, ok bool) {
	if text, said := w.written[path]; said && readsBack(path, text, v) {
		return text, true
	}
	if v.IsZero() && !w.within(path) {
		return nil, false
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return nil, false
		}
		v = v.Elem()
	}
	if _, ok := v.Interface().(encoding.TextMarshaler); ok {
		return v.Interface(), true
	}
	switch v.Kind() {
	case reflect.Struct:
		return w.object(path, v), true
	case reflect.Slice:
		list := make([]any, v.Len())
		for i := range list {
			list[i], _ = w.value(fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
		return list, true
	}
	return v.Interface(), true
}

// within reports whether something in the part at a path was said with words.
func (w surveyWriter) within(path string) bool {
	for at := range w.written {
		if strings.HasPrefix(at, path+".") || strings.HasPrefix(at, path+"[") {
			return true
		}
	}
	return false
}

func (w surveyWriter) object(path string, v reflect.Value) *object {
	var o object
	for _, f := range reflect.VisibleFields(v.Type()) {
		name := f.Tag.Get("json")
		if name == "" || name == "-" {
			continue
		}
		at := name
		if path != "" {
			at = path + "." + name
		}
		if value, ok := w.value(at, v.FieldByIndex(f.Index)); ok {
			o.add(name, value)
		}
	}
	return &o
}

// MarshalJSON writes the object.
func (o *object) MarshalJSON() ([]byte, error) { return o.close() }

// readsBack reports whether a text that was written at a path still reads as the
// value there.
func readsBack(path, text string, v reflect.Value) bool {
	typ := v.Type()
	if typ.Kind() == reflect.Pointer {
		typ = typ.Elem()
	}
	_, bare := sayingOf(path, typ, text)
	if bare == nil {
		return v.IsZero()
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return false
		}
		v = v.Elem()
	}
	fresh := reflect.New(typ)
	switch bare := bare.(type) {
	case json.Number:
		x, err := strconv.ParseFloat(bare.String(), 64)
		return err == nil && fmt.Sprint(v.Interface()) == fmt.Sprint(reflect.ValueOf(x).Convert(typ).Interface())
	case string:
		reader, ok := fresh.Interface().(encoding.TextUnmarshaler)
		return ok && reader.UnmarshalText([]byte(bare)) == nil && fresh.Elem().Interface() == v.Interface()
	}
	return false
}
