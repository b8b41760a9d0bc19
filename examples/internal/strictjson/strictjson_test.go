package strictjson

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"manway.example/manway"
)

// survey stands for what a command reads.
type survey struct {
	ID     string          `json:"id" strict:"required"`
	Tank   tank            `json:"tank"`
	Access []access        `json:"accesses"`
	Count  int             `json:"count"`
	Share  float64         `json:"share"`
	Seen   bool            `json:"seen"`
	Water  *manway.Length  `json:"water"`
	Pair   [2]int          `json:"pair"`
	Prices map[string]int  `json:"prices"`
	Heads  heads           `json:"heads"`
	Raw    json.RawMessage `json:"raw"`
	Hidden string          `json:"-"`
	labelled
}

type labelled struct {
	Name string `json:"name"`
}

type tank struct {
	Length manway.Length `json:"length" strict:"required"`
	Width  manway.Length `json:"width"`
}

type access struct {
	Cover cover `json:"cover"`
}

type cover struct {
	Diameter manway.Length `json:"diameter"`
}

// heads reads one word or two.
type heads []string

func (h *heads) UnmarshalJSON(data []byte) error {
	var one string
	if json.Unmarshal(data, &one) == nil {
		*h = heads{one, one}
		return nil
	}
	var two []string
	if json.Unmarshal(data, &two) != nil || len(two) != 2 {
		return errors.New("one name or a pair")
	}
	*h = two
	return nil
}

func TestDecodeFills(t *testing.T) {
	var s survey
	doc, err := Decode([]byte(`{
 "id": "a\"b", "name": "n",
 "tank": {"length": "96 in", "width": null},
 "accesses": [{"cover": {}}, {"cover": {"diameter": "24 in"}}],
 "count": 3, "share": 2.5e-1, "seen": true, "water": "0 m", "pair": [1, 2],
 "prices": {"lid": 4}, "heads": "flat", "raw": {"x": [1]}
}`), &s)
	if err != nil {
		t.Fatal(err)
	}
	water := manway.Length(0)
	want := survey{
		ID: `a"b`, labelled: labelled{"n"}, Tank: tank{Length: 96 * manway.Inch},
		Access: []access{{}, {cover{24 * manway.Inch}}},
		Count:  3, Share: 0.25, Seen: true, Water: &water, Pair: [2]int{1, 2},
		Prices: map[string]int{"lid": 4}, Heads: heads{"flat", "flat"}, Raw: json.RawMessage(`{"x": [1]}`),
	}
	if diff := cmp.Diff(want, s, cmp.AllowUnexported(survey{})); diff != "" {
		t.Error(diff)
	}
	for path, line := range map[string]int{"id": 2, "accesses[1].cover.diameter": 4, "accesses[7].cover": 4, "tank.walls": 3, "pair[1]": 5, "": 1} {
		if got := doc.Line(path); got != line {
			t.Errorf("Line(%q) = %d, want %d", path, got, line)
		}
	}
	if text, ok := doc.Text("share"); !ok || text != "2.5e-1" {
		t.Errorf("Text(share) = %q, %v", text, ok)
	}
	if doc.Has("tank.width") || !doc.Has("tank.length") {
		t.Error("Has: null counts as not there")
	}
}

func TestDecodeCollectsAllFaults(t *testing.T) {
	var s survey
	_, err := Decode([]byte(`{
 "tank": {
  "lenght": "96 in",
  "width": 60
 },
 "accesses": [
  {"cover": {"diameter": "24 furlongs"}},
  {"cover": 4, "cover": {}}
 ],
 "count": 1.5,
 "share": "half",
 "seen": 0,
 "pair": [1],
 "heads": ["a"],
 "name": {"first": "x"},
 "water": "3 m"
}`), &s)
	var faults Faults
	if !errors.As(err, &faults) {
		t.Fatalf("error %v", err)
	}
	got := make([]string, len(faults))
	for i, f := range faults {
		got[i] = f.Error()
	}
	want := []string{
		`line 1: id missing: want a value`,
		`line 2: tank.length missing: want a value`,
		`line 3: tank.lenght 96 in: want a known field: did you mean length?`,
		`line 4: tank.width 60: want text in quotes: a number with a unit: in, ft, yd, mm, cm, m`,
		`line 7: accesses[0].cover.diameter 24 furlongs: want a number with a unit: in, ft`,
		`line 8: accesses[1].cover 4: want an object`,
		`line 8: accesses[1].cover {}: want the field once: it stands on line 8 already`,
		`line 10: count 1.5: want a whole number`,
		`line 11: share half: want a number`,
		`line 12: seen 0: want true or false`,
		`line 13: pair [1]: want a list of 2`,
		`line 14: heads ["a"]: want one name or a pair`,
		`line 15: name {"first": "x"}: want text in quotes`,
	}
	if len(got) != len(want) {
		t.Errorf("%d faults, want %d", len(got), len(want))
	}
	for i := range min(len(got), len(want)) {
		if !strings.HasPrefix(got[i], want[i]) {
			t.Errorf("fault %d\n got %s\nwant %s", i, got[i], want[i])
		}
	}
	if s.Water == nil || *s.Water != 3*manway.Metre {
		t.Error("what stands after the faults was not read")
	}
	if !faults.Covers("tank.width") || !faults.Covers("count[0]") || faults.Covers("water") || faults.Covers("tank") {
		t.Error("Covers: want the faulty values and what is in them, nothing else")
	}
}

func TestDecodeRefusesDocument(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"empty", "", "nothing: want a JSON object"},
		{"blank", " \n\t", "nothing: want a JSON object"},
		{"list", "[1]", "line 1: [1]: want a JSON object"},
		{"zeros", strings.Repeat("\x00", 1000), "valid JSON"},
		{"cut off", "{\n\"id\": \"a\",\n\"tank\": {", "line 3"},
		{"trailing", "{}\n{}", "line 2"},
		{"comma", "{\n\"id\": \"a\",\n}", "line 3"},
		{"utf-8", "{\"id\":\n\"\xff\"}", "line 2: byte 0xff: want text in UTF-8"},
		{"huge", strings.Repeat(" ", MaxBytes+1), "more than 8 MiB: want at most 8 MiB"},
		{"deep", `{"raw":` + strings.Repeat("[", 5000) + strings.Repeat("]", 5000) + "}", "more than 64 levels"},
		{"very deep", strings.Repeat("[", 1<<20), "max depth"},
	} {
		var s survey
		_, err := Decode([]byte(c.in), &s)
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: error %v, want one line with %q", c.name, err, c.want)
		}
	}
	var s survey
	if _, err := Decode([]byte("{}"), s); err == nil {
		t.Error("decoding into a value that is no pointer: want an error")
	}
}

func TestExplainGivesLines(t *testing.T) {
	var s survey
	doc, err := Decode([]byte("{\"id\": \"a\",\n\"tank\": {\"length\": \"1 m\"},\n\"accesses\": [{},\n{\"cover\": {\"diameter\": \"1 m\"}}]}"), &s)
	if err != nil {
		t.Fatal(err)
	}
	var later manway.InputErrors
	later.Add("Access[1].Cover.Diameter", "1 m", "less than the tank")
	later.Add("Tank.Width", "0 in", "above 0")
	later.Add("tank.length", "1 m", "more")
	later.Add("Elsewhere", "", "x")
	got := doc.Explain(later)
	want := Faults{
		{"accesses[1].cover.diameter", 4, "1 m", "less than the tank"},
		{"tank.width", 2, "0 in", "above 0"},
		{"tank.length", 2, "1 m", "more"},
		{"Elsewhere", 1, "", "x"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if got := Explain(reflect.TypeFor[survey](), errors.New("no solution")); len(got) != 1 || got[0].Want != "no solution" {
		t.Errorf("a plain error became %v", got)
	}
}

func TestNames(t *testing.T) {
	got := strings.Join(Names(reflect.TypeFor[survey]()), " ")
	want := "id tank.length tank.width accesses[].cover.diameter count share seen water pair[] prices heads raw name"
	if got != want {
		t.Errorf("Names: %s\nwant   %s", got, want)
	}
	if !Required(reflect.TypeFor[survey]()) || Required(reflect.TypeFor[access]()) {
		t.Error("Required: want true for a survey, false for an access")
	}
}

// Decode never panics, always ends, and where it finds no fault encoding/json
// reads the same value.
func FuzzDecode(f *testing.F) {
	f.Add([]byte(`{"id":"a","tank":{"length":"96 in"},"accesses":[{"cover":{"diameter":"2 ft"}}]}`)) // good
	f.Add([]byte(`{"id":"a","id":"b","tank":{"length":1}}`))                                         // repeated, bare number
	f.Add([]byte(`{"ID":"a","tank":[],"heads":["a","b"],"prices":{"a":1,"a":2}}`))                   // wrong case, kinds
	f.Add([]byte(`{"share":1e999,"count":123456789012345678901234567890}`))                          // out of range
	f.Add([]byte("{\"id\":\"\\ud800\",\n\"water\":null}"))                                           // lone surrogate
	f.Add([]byte("[[[[{\"a\":[}"))                                                                   // broken
	f.Fuzz(func(t *testing.T, data []byte) {
		var s survey
		doc, err := Decode(data, &s)
		if err != nil {
			var faults Faults
			if !errors.As(err, &faults) || len(faults) == 0 {
				t.Fatalf("error %T %v: want Faults", err, err)
			}
			return
		}
		if doc.Line("tank.length") < 1 {
			t.Error("a document that was read has no line")
		}
		if math.IsInf(float64(s.Tank.Length), 0) || math.IsNaN(s.Share) {
			t.Errorf("not finite: %+v", s)
		}
		var plain survey
		if err := json.Unmarshal(data, &plain); err != nil {
			t.Errorf("encoding/json refuses what was accepted: %v", err)
		} else if diff := cmp.Diff(plain, s, cmp.AllowUnexported(survey{})); diff != "" {
			t.Errorf("encoding/json reads another value: %s", diff)
		}
	})
}
