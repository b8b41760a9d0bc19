package visit_test

import (
	"bytes"
	"encoding"
	"encoding/json"
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/examples/internal/strictjson"
	"manway.example/manway/examples/visit"
)

var update = flag.Bool("update", false, "write survey.schema.json, survey.blank.json and the printed answers anew")

// docs are the comments of the survey's fields, by type and Go name.
func docs(t *testing.T) map[string]map[string]string {
	t.Helper()
	all := map[string]map[string]string{}
	for _, name := range []string{"survey.go", "surveyaccess.go", "surveyhistory.go"} {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.TypeSpec)
			if !ok {
				return true
			}
			fields := map[string]string{}
			if s, ok := spec.Type.(*ast.StructType); ok {
				for _, f := range s.Fields.List {
					for _, ident := range f.Names {
						fields[ident.Name] = strings.Join(strings.Fields(f.Doc.Text()), " ")
					}
				}
			}
			all[spec.Name.Name] = fields
			return true
		})
	}
	return all
}

// member is one key of a JSON object that keeps its order.
type member struct {
	key   string
	value any
}

type object []member

func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		k, err := json.Marshal(m.key)
		if err != nil {
			return nil, err
		}
		v, err := json.Marshal(m.value)
		if err != nil {
			return nil, err
		}
		b.Write(k)
		b.WriteByte(':')
		b.Write(v)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// words are the texts of a pick list: a type of small numbers that writes and
// reads words.
func words(typ reflect.Type) []string {
	if typ.Kind() != reflect.Uint8 && typ.Kind() != reflect.Int {
		return nil
	}
	var list []string
	for i := range 64 {
		v := reflect.New(typ)
		if typ.Kind() == reflect.Uint8 {
			v.Elem().SetUint(uint64(i))
		} else {
			v.Elem().SetInt(int64(i))
		}
		writer, ok := v.Interface().(encoding.TextMarshaler)
		if !ok {
			return nil
		}
		text, err := writer.MarshalText()
		back := reflect.New(typ)
		reader, ok := back.Interface().(encoding.TextUnmarshaler)
		if !ok || err != nil {
			return list
		}
		if len(text) > 0 && reader.UnmarshalText(text) == nil && back.Elem().Interface() == v.Elem().Interface() {
			list = append(list, string(text))
		}
	}
	return list
}

// schema is the JSON Schema of a type of the survey.
func schema(typ reflect.Type, doc string, all map[string]map[string]string) object {
	var o object
	add := func(key string, value any) { o = append(o, member{key, value}) }
	if doc != "" {
		add("description", doc)
	}
	reader := reflect.PointerTo(typ).Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
	switch {
	case len(words(typ)) > 0:
		if first := defaultWord(typ); first != "" {
			add("default", first)
		}
		add("anyOf", []object{
			{{"enum", append(anyOf(words(typ)), nil)}},
			{{"type", "string"}, {"pattern", saidPattern}},
		})
	case typ == reflect.TypeFor[manway.Date]():
		add("type", []string{"string", "null"})
		add("pattern", datePattern)
	case reader:
		add("type", []string{"string", "null"})
		add("pattern", quantityPattern)
	case typ.Kind() == reflect.Pointer:
		return schema(typ.Elem(), doc, all)
	case typ.Kind() == reflect.Struct:
		properties, required := object{}, []string{}
		for _, f := range reflect.VisibleFields(typ) {
			name := f.Tag.Get("json")
			if name == "" || name == "-" || f.Anonymous {
				continue
			}
			from := typ.Name()
			if len(f.Index) > 1 {
				from = "Remark"
			}
			properties = append(properties, member{name, schema(f.Type, all[from][f.Name], all)})
			if f.Tag.Get("strict") == "required" {
				required = append(required, name)
			}
		}
		add("type", []string{"object", "string", "null"})
		add("pattern", `^(unknown|not opened)$`)
		add("properties", properties)
		add("required", required)
		add("additionalProperties", false)
	case typ.Kind() == reflect.Slice:
		add("type", []string{"array", "null"})
		add("items", schema(typ.Elem(), "", all))
	case typ.Kind() == reflect.Int:
		add("type", []string{"integer", "string", "null"})
		add("pattern", saidPattern)
	case typ.Kind() == reflect.Float64:
		add("type", []string{"number", "string", "null"})
		add("pattern", saidPattern)
	case typ.Kind() == reflect.Bool:
		add("type", []string{"boolean", "null"})
	default:
		add("type", []string{"string", "null"})
	}
	return o
}

// quantityPattern is what every quantity looks like from afar: a number with a
// unit, which may be about right or the owner's word, with a tolerance or
// without, or a word for not measured. The sign of a tolerance needs no pattern of
// its own: what follows it is a number with a unit as well.
const quantityPattern = `^\s*((owner says|about)\s+)*[-+−]?\s*[0-9.].*[A-Za-z"'°′″/0-9]\s*$|^(unknown|not opened|not seen|not measured)?$`

// datePattern is a date, or what is known of an earlier one.
const datePattern = `^((owner says|about)\s+)*[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?$|^(unknown|not opened)?$`

// saidPattern is a pick or a number with words before it, or a word in its place.
const saidPattern = `^((owner says|about)\s+\S.*|unknown|not opened)$`

// defaultWord is the word of a pick list that stands where nothing was picked.
func defaultWord(typ reflect.Type) string {
	text, err := reflect.New(typ).Interface().(encoding.TextMarshaler).MarshalText()
	if err != nil || !slices.Contains(words(typ), string(text)) {
		return ""
	}
	return string(text)
}

func anyOf(list []string) []any {
	out := make([]any, len(list))
	for i, s := range list {
		out[i] = s
	}
	return out
}

// blank is an empty survey whose objects say in their first line what each
// field is; nothing in it is a value.
func blank(typ reflect.Type, all map[string]map[string]string) any {
	switch {
	case typ.Kind() == reflect.Pointer:
		return blank(typ.Elem(), all)
	case reflect.PointerTo(typ).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()):
		return nil
	case typ.Kind() == reflect.Slice && typ.Elem().Kind() == reflect.Struct:
		one := blank(typ.Elem(), all).(object)
		lines := one[0].value.([]string)
		one[0].value = append([]string{"One of these for each; delete it where there is none."}, lines...)
		return []any{one}
	case typ.Kind() != reflect.Struct:
		return nil
	}
	var lines []string
	var o object
	for _, f := range reflect.VisibleFields(typ) {
		name := f.Tag.Get("json")
		if name == "" || name == "-" || f.Anonymous || name == "//" {
			continue
		}
		line := name + ": " + all[typ.Name()][f.Name]
		if list := words(f.Type); len(list) > 0 {
			line += " One of: " + strings.Join(list, ", ") + "."
			if first := defaultWord(f.Type); first != "" {
				line += " Default: " + first + "."
			}
		}
		if f.Tag.Get("strict") == "required" {
			line += " Must be given."
		}
		lines = append(lines, line)
		o = append(o, member{name, blank(f.Type, all)})
	}
	if typ == reflect.TypeFor[visit.Survey]() {
		lines = append([]string{
			"Fill in what is known; leave null what is not. Quantities are texts with a unit: 41 in, 1,250 gal.",
			"Before a value may stand about or owner says, after a quantity a tolerance: about 41 in, owner says 2019, 41 in ± 1 in.",
			"In place of a value that need not be given may stand unknown (asked, and nobody knew) or not opened.",
		}, lines...)
	}
	return append(object{{"//", lines}}, o...)
}

// The schema and the blank survey that are shipped are those of the decoder and
// its comments; every field has a comment.
func TestSchemaAndBlankAreOfTheDecoder(t *testing.T) {
	all := docs(t)
	typ := reflect.TypeFor[visit.Survey]()
	for name, fields := range all {
		for field, doc := range fields {
			if doc == "" {
				t.Errorf("%s.%s has no comment", name, field)
			}
		}
	}
	root := append(object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"$id", "https://manway.example/survey.schema.json"},
		{"title", "Survey of a buried wastewater tank"},
	}, schema(typ, "", all)...)
	for _, c := range []struct {
		name string
		want any
		got  string
	}{{"survey.schema.json", root, visit.Schema}, {"survey.blank.json", blank(typ, all), visit.Blank}} {
		var b bytes.Buffer
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		if err := enc.Encode(c.want); err != nil {
			t.Fatal(err)
		}
		if *update {
			if err := os.WriteFile(c.name, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		} else if b.String() != c.got {
			t.Errorf("%s is not that of the decoder; write it anew: go test ./examples/visit -run Schema -update", c.name)
		}
	}
}

// A blank survey is refused for nothing but what must be given.
func TestBlankAsksForWhatMustBeGiven(t *testing.T) {
	var s visit.Survey
	_, err := strictjson.Decode([]byte(visit.Blank), &s)
	faults, ok := err.(strictjson.Faults)
	if !ok || len(faults) == 0 {
		t.Fatalf("decoding the blank survey gives %v", err)
	}
	for _, f := range faults {
		if f.Value != "missing" || !strings.Contains(f.Want, "required") {
			t.Errorf("the blank survey is refused at %s: %q, want %q", f.Path, f.Value, f.Want)
		}
	}
}
