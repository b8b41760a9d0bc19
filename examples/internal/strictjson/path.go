package strictjson

import (
	"reflect"
	"sort"
	"strconv"
	"strings"
)

// Doc is a document that was read: where in it things stand.
type Doc struct {
	data  []byte
	lines []int // offsets of the line ends
	root  *node
	typ   reflect.Type
}

// Line is the line on which the value at a path stands, from 1. Where the
// document has no such value it is the line of the nearest part around it; 0
// when the document could not be read at all.
func (d *Doc) Line(path string) int {
	if d == nil || d.root == nil {
		return 0
	}
	n, _ := d.find(path)
	return d.lineAt(n.start)
}

// Text is what stands at a path: the words of a string, a number as written.
func (d *Doc) Text(path string) (string, bool) {
	if d == nil || d.root == nil {
		return "", false
	}
	n, whole := d.find(path)
	if !whole {
		return "", false
	}
	return d.show(n), true
}

// Has reports whether the document has a value other than null at the path.
func (d *Doc) Has(path string) bool {
	if d == nil || d.root == nil {
		return false
	}
	n, whole := d.find(path)
	return whole && n.kind != null
}

// find goes down the path as far as the document has it.
func (d *Doc) find(path string) (n *node, whole bool) {
	n = d.root
	for part := range steps(path) {
		var next *node
		if i, err := strconv.Atoi(part); err == nil && n.kind == list {
			if i >= 0 && i < len(n.items) {
				next = n.items[i]
			}
		} else if n.kind == object {
			next = n.member(part)
		}
		if next == nil {
			return n, false
		}
		n = next
	}
	return n, true
}

// steps splits a path: a[1].b gives a, 1, b.
func steps(path string) func(func(string) bool) {
	return func(yield func(string) bool) {
		for part := range strings.FieldsFuncSeq(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' }) {
			if !yield(part) {
				return
			}
		}
	}
}

// show is a value as a person would say it: a string without its quotes.
func (d *Doc) show(n *node) string {
	switch {
	case n.said != "":
		return n.said
	case n.kind == text:
		return n.text
	}
	return string(d.data[n.start:n.end])
}

// Explain turns an error found by a later check of the decoded value into
// faults of this document: the Go path of a [manway.InputError] becomes the
// path in the document, and gets its line.
func (d *Doc) Explain(err error) Faults {
	if err == nil {
		return nil
	}
	faults := Explain(d.typ, err)
	for i := range faults {
		if faults[i].Line == 0 {
			faults[i].Line = d.Line(faults[i].Path)
		}
	}
	return faults
}

// Explain turns an error about a value of type t that came from no document
// into faults, with the names that the type has in JSON.
func Explain(t reflect.Type, err error) Faults {
	if list, ok := err.(Faults); ok {
		return list
	}
	faults := FaultsOf(err, "", "")
	for i := range faults {
		faults[i].Path = Path(t, faults[i].Path)
	}
	return faults
}

// Sort puts faults in the order of their lines.
func (list Faults) Sort() {
	sort.SliceStable(list, func(i, j int) bool { return list[i].Line < list[j].Line })
}

// Path gives the path in JSON for a Go path in a value of type t:
// Partitions[0].Thickness becomes partitions[0].thickness. A part that the type
// does not have stays as it is, and a path that is in JSON already too.
func Path(t reflect.Type, goPath string) string {
	var b strings.Builder
	for part := range strings.SplitSeq(goPath, ".") {
		name, index := part, ""
		if i := strings.IndexByte(part, '['); i >= 0 {
			name, index = part[:i], part[i:]
		}
		t = element(t)
		var next reflect.Type
		if name == "" {
			next = t
		} else if t != nil && t.Kind() == reflect.Struct {
			for _, f := range fieldsOf(t) {
				if f.name == name || f.goName == name {
					name, next = f.name, f.typ
					break
				}
			}
		}
		if b.Len() > 0 && name != "" {
			b.WriteByte('.')
		}
		b.WriteString(name)
		b.WriteString(index)
		t = next
	}
	return b.String()
}

// element strips pointers, slices, arrays and maps off a type.
func element(t reflect.Type) reflect.Type {
	for t != nil {
		switch t.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
			t = t.Elem()
		default:
			return t
		}
	}
	return nil
}

// Field is the field of a struct at a path such as tank.length, or the zero
// Value where the struct has none, or the path leads through a list or pointer.
func Field(v reflect.Value, path string) reflect.Value {
	for part := range strings.SplitSeq(path, ".") {
		if v.Kind() != reflect.Struct {
			return reflect.Value{}
		}
		f := named(fieldsOf(v.Type()), part)
		if f == nil {
			return reflect.Value{}
		}
		v = v.FieldByIndex(f.index)
	}
	return v
}
