package visit_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"manway.example/manway/examples/visit"
)

// broken lists what of a JSON value breaks a schema, as far as ours go: type, enum,
// anyOf, pattern, properties, required, items and additionalProperties.
func broken(path string, schema map[string]any, value any) (list []string) {
	if ways, ok := schema["anyOf"].([]any); ok {
		for _, one := range ways {
			if len(broken(path, one.(map[string]any), value)) == 0 {
				return nil
			}
		}
		return []string{path + " is none of them"}
	}
	if enum, ok := schema["enum"].([]any); ok {
		if !slices.Contains(enum, value) {
			return []string{fmt.Sprintf("%s: %v is not in the list", path, value)}
		}
		return nil
	}
	kind := map[bool]string{true: "null"}[value == nil]
	switch v := value.(type) {
	case string:
		kind = "string"
		if p, ok := schema["pattern"].(string); ok && !regexp.MustCompile(p).MatchString(v) {
			list = append(list, fmt.Sprintf("%s: %q does not match %s", path, v, p))
		}
	case float64:
		kind = "number"
	case bool:
		kind = "boolean"
	case []any:
		kind = "array"
		for i, item := range v {
			list = append(list, broken(fmt.Sprintf("%s[%d]", path, i), schema["items"].(map[string]any), item)...)
		}
	case map[string]any:
		kind = "object"
		properties := schema["properties"].(map[string]any)
		for name, item := range v {
			if of, ok := properties[name].(map[string]any); ok {
				list = append(list, broken(path+"."+name, of, item)...)
			} else {
				list = append(list, path+"."+name+" is not known")
			}
		}
		for _, name := range schema["required"].([]any) {
			if v[name.(string)] == nil {
				list = append(list, path+"."+name.(string)+" is missing")
			}
		}
	}
	types, ok := schema["type"].([]any)
	if !ok {
		types = []any{schema["type"]}
	}
	if !slices.ContainsFunc(types, func(t any) bool { return t == kind || t == "integer" && kind == "number" }) {
		list = append(list, fmt.Sprintf("%s is a %s", path, kind))
	}
	return list
}

// What the decoder takes the schema takes too, and the other way round: surveys
// with words round their values, and the same with one fault each.
func TestSchemaTakesWhatTheDecoderTakes(t *testing.T) {
	var schema map[string]any
	if err := json.Unmarshal([]byte(visit.Schema), &schema); err != nil {
		t.Fatal(err)
	}
	check := func(text string) []string {
		var doc any
		if err := json.Unmarshal([]byte(text), &doc); err != nil {
			t.Fatal(err)
		}
		return broken("survey", schema, doc)
	}
	texts := []string{spoken, fifteen}
	for _, name := range sites(t) {
		b, err := os.ReadFile(filepath.Join(testdata, "sites", name))
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(b))
	}
	for _, text := range texts {
		if list := check(text); len(list) > 0 {
			t.Errorf("the schema refuses what the decoder takes: %q", list)
		}
	}
	for was, is := range map[string]string{
		`"owner says 1000 gal"`: `1000`, `"about 96 in"`: `"long"`, `"owner says none"`: `"some"`, `"about 4"`: `4.5`, `"owner says 2019"`: `"2019-1"`,
		`"kind": "nominal"`: `"kinds": "nominal"`, `"not opened"],`: `"closed"],`, `"outlet_invert": "48 in ± 1/2 in",`: ``,
	} {
		text := strings.Replace(spoken, was, is, 1)
		list := check(text)
		_, err := visit.Read(strings.NewReader(text))
		if err == nil {
			t.Errorf("the decoder takes %s", is)
		}
		if len(list) == 0 && is != `4.5` { // a number for a count: whole or not is for the decoder
			t.Errorf("the schema takes %s in place of %s", is, was)
		}
	}
}
