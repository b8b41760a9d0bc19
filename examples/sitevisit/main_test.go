package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const sites = "../../testdata/sites/"

func call1(args ...string) (code int, stdout, stderr string) {
	var out, errs bytes.Buffer
	code = run(args, strings.NewReader(""), &out, &errs)
	return code, out.String(), errs.String()
}

func TestRun(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	zeros := write("zeros.json", "")
	if err := os.Truncate(zeros, 200<<20); err != nil {
		t.Fatal(err)
	}
	noBook := write("nobook.json", `{"id":"x","date":"2026-10-14","tank":{"kind":"box","length":"96 in","width":"60 in","height":"60 in","outlet_invert":"48 in"},
"accesses":[{"name":"lid","compartment":1,"at":"20 in","opening":"20 in","cover":"0 in"}],"money":{"prices":"gone.csv"}}`)
	for _, c := range []struct {
		name   string
		args   []string
		code   int
		stdout string // must be in it
		stderr string
		lines  int // of stderr
	}{
		{"US survey", []string{sites + "rusted-handle.json"}, 0, "WHAT THE TANK HOLDS", "", 0},
		{"SI survey", []string{sites + "soaked-slab-metric.json"}, 0, "4,398 L", "", 0},
		{"page", []string{"-out", "html", sites + "rusted-handle.json"}, 0, "<!doctype html>", "", 0},
		{"json", []string{"-out", "json", sites + "rusted-handle.json"}, 0, `"liquid_gal":1159.48051948`, "", 0},
		{"crew's message", []string{"-only", "crew", sites + "rusted-handle.json"}, 0, "DO NOT GO BELOW", "", 0},
		{"no such section", []string{"-only", "crews", sites + "rusted-handle.json"}, 2, "", "want one of first, seen", 1},
		{"manual", []string{"-h"}, 0, "Exit status", "", 0},
		{"blank", []string{"-blank"}, 0, `"groundwater": null`, "", 0},
		{"schema", []string{"-schema"}, 0, "https://json-schema.org/draft/2020-12/schema", "", 0},
		{"no survey", nil, 2, "", "want one JSON file", 1},
		{"two surveys", []string{"a", "b"}, 2, "", "want one JSON file", 1},
		{"unknown form", []string{"-out", "pdf", "a"}, 2, "", "want text, json or html", 1},
		{"unknown flag", []string{"-x"}, 2, "", "-x", 1},
		{"not there", []string{filepath.Join(dir, "none.json")}, 1, "", "no such file", 1},
		{"directory", []string{dir}, 1, "", "is a directory", 1},
		{"empty", []string{write("empty.json", "")}, 1, "", "empty.json", 1},
		{"zeros", []string{zeros}, 1, "", "zeros.json", 1},
		{"a list", []string{write("list.json", "[]")}, 1, "", "a JSON object", 1},
		{"no price book", []string{noBook}, 1, "", "gone.csv", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			code, stdout, stderr := call1(c.args...)
			if code != c.code {
				t.Errorf("exit %d, want %d: %s", code, c.code, stderr)
			}
			if !strings.Contains(stdout, c.stdout) || c.stdout == "" && stdout != "" {
				t.Errorf("standard output lacks %q: %.300s", c.stdout, stdout)
			}
			if !strings.Contains(stderr, c.stderr) || strings.Count(stderr, "\n") != c.lines {
				t.Errorf("standard error is %q, want %d lines with %q", stderr, c.lines, c.stderr)
			}
		})
	}
}

// A survey with faults leaves a file that was there as it was, and names every
// fault by path and line.
func TestFaultsWriteNothing(t *testing.T) {
	dir := t.TempDir()
	survey, page := filepath.Join(dir, "bad.json"), filepath.Join(dir, "page.html")
	bad := `{
 "id": "bad", "date": "2026-10-14",
 "tank": {"kind": "box", "length": "-96 in", "width": "60 parsec", "height": "60 in",
  "colour": "grey", "outlet_invert": "48 in", "partitions": [{"at": "900 in", "thickness": "3 in"}]},
 "accesses": [{"name": "lid", "compartment": 1, "opening": "20 in", "opened": "yes", "cover": "18 in"}],
 "compartments": [{"level": "48 in", "sludge": "55 in"}]
}`
	if err := os.WriteFile(survey, []byte(bad), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(page, []byte("before"), 0o644); err != nil {
		t.Fatal(err)
	}
	code, stdout, stderr := call1("-out", "html", "-o", page, survey)
	if code != 1 || stdout != "" {
		t.Errorf("exit %d with %q on standard output", code, stdout)
	}
	for _, want := range []string{"line 3: tank.length", "line 3: tank.width", "line 4: tank.colour", "line 4: tank.partitions[0].at", "line 6: compartments[0].sludge"} {
		if !strings.Contains(stderr, want) {
			t.Errorf("standard error lacks %q:\n%s", want, stderr)
		}
	}
	if b, err := os.ReadFile(page); err != nil || string(b) != "before" {
		t.Errorf("the file holds %q, %v", b, err)
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 2 {
		t.Errorf("%d files are left, want the survey and the page", len(entries))
	}
	code, _, stderr = call1("-out", "json", survey)
	var line struct {
		Errors []struct {
			Field string
			Line  int
		}
	}
	if err := json.Unmarshal([]byte(stderr), &line); code != 1 || err != nil || len(line.Errors) != 5 {
		t.Errorf("exit %d, %v, %d faults as JSON: %s", code, err, len(line.Errors), stderr)
	}
}

func TestWritesFileWhole(t *testing.T) {
	page := filepath.Join(t.TempDir(), "visit.html")
	if code, stdout, stderr := call1("-out", "html", "-o", page, sites+"rusted-handle.json"); code != 0 || stdout != "" || stderr != "" {
		t.Fatalf("exit %d: %s%s", code, stdout, stderr)
	}
	b, err := os.ReadFile(page)
	if err != nil || !bytes.HasSuffix(bytes.TrimSpace(b), []byte("</html>")) {
		t.Errorf("the page ends in %.40q, %v", b[max(0, len(b)-40):], err)
	}
}
