package prices

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"manway.example/manway"
)

func TestNumber(t *testing.T) {
	for text, want := range map[string]string{`450`: "450", `"450.00"`: "450", `-2.5`: "-2.5", `"12.5 %"`: "12.5", `null`: "0"} {
		var n Number
		if err := json.Unmarshal([]byte(text), &n); err != nil || n.String() != want {
			t.Errorf("%s: %s, %v", text, n, err)
		}
	}
	for _, text := range []string{`"x"`, `""`, `1e5`, `"1,000"`, `"` + strings.Repeat("9", 40) + `"`, `"NaN"`, `"--1"`, `[1]`} {
		var n Number
		if err := json.Unmarshal([]byte(text), &n); err == nil {
			t.Errorf("%s was read as %s", text, n)
		}
	}
}

func TestReadItem(t *testing.T) {
	it, err := ReadItem(" concrete  1,250.5 FTQ ")
	if err != nil || it.Code != "concrete" || it.Quantity != 1250.5 || it.Unit != "FTQ" {
		t.Errorf("%+v, %v", it, err)
	}
	for _, text := range []string{"", "concrete 3", "concrete three FTQ", "concrete 3 FTQ more"} {
		if it, err := ReadItem(text); err == nil {
			t.Errorf("%q was read as %+v", text, it)
		}
	}
}

// What a code of the module means is filled in; another code must have a class.
func TestScope(t *testing.T) {
	scope, err := Scope([]Item{{Code: "dig-hand", Quantity: 2}, {Code: "x", Class: "fee", Quantity: 1, Unit: "EA"}})
	if err != nil || scope[0].Unit != "LH" || scope[0].Description == "" || scope[0].Class.String() != "labour" || scope[1].Class.String() != "fee" {
		t.Errorf("%+v, %v", scope, err)
	}
	_, err = Scope([]Item{{Code: "x", Unit: "EA"}, {Code: "dig-hand", Class: "song"}})
	if faults, ok := err.(manway.InputErrors); !ok || len(faults) != 2 || faults[0].Field != "Scope[0].Class" || faults[1].Field != "Scope[1].Class" {
		t.Errorf("%v", err)
	}
}

// The second book stands over the first; a bad one is told in one line.
func TestFiles(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte("code,description,unit,price,currency,valid_from,note\n"+text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	base, local := write("base.csv", "a,a,EA,1,USD,2026-01-01,\nb,b,EA,2,USD,2026-01-01,\n"), write("local.csv", "a,a,EA,9,USD,2026-01-01,\n")
	read := func(args ...string) (Book, error) {
		var f Files
		fs := flag.NewFlagSet("", flag.ContinueOnError)
		f.Flags(fs)
		if err := fs.Parse(args); err != nil {
			t.Fatal(err)
		}
		return f.Read()
	}
	book, err := read("-prices", base, "-local", local)
	if err != nil || !book.Given {
		t.Fatal(err)
	}
	for code, want := range map[string]string{"a": "9", "b": "2"} {
		if p, ok := book.Price(code, manway.Date{Year: 2026, Month: 6, Day: 1}); !ok || p.Price.String() != want {
			t.Errorf("%s: %v", code, p)
		}
	}
	if none, err := read(); err != nil || none.Given {
		t.Errorf("no files: %+v, %v", none, err)
	}
	if _, err := read("-prices", write("bad.csv", "a,a,LB,x,USD,2026-01-01,\n")); err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "line 2") {
		t.Errorf("%v", err)
	}
}
