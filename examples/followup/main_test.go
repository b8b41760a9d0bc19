package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

const sites = "../../testdata/sites"

func TestRun(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "bad.json")
	if err := os.WriteFile(bad, []byte(`{"id":"bad"}`), 0o644); err != nil {
		t.Fatal(err)
	}
	today := time.Date(2026, 10, 29, 23, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		name   string
		args   []string
		code   int
		stdout []string // in this order
		stderr string
	}{
		// The offer of 16 October is unanswered for 14 days on the 30th, not the day before.
		{"offer unanswered", []string{"-on", "2026-10-30", sites}, 0, []string{"remedy declined   2026-09-30  30   soaked-slab-metric  centre slab", "pump-out due      2026-10-14  16   rusted-handle       asked", "offer unanswered  2026-10-16  14   rusted-handle       inlet lid:\n  replace-plastic"}, ""},
		{"not yet", []string{"-on", "2026-10-29", sites}, 0, []string{"pump-out due"}, ""},
		{"csv", []string{"-on", "2026-10-30", "-out", "csv", sites}, 0, []string{"kind,since,days,visit,what\n", "rusted-handle"}, ""},
		{"json", []string{"-on", "2026-10-30", "-out", "json", sites}, 0, []string{`"days":30,"kind":"remedy declined"`}, ""},
		// 3,700 L at 3.785411784 L a gallon.
		{"disposal", []string{"-log", "-out", "csv", sites}, 0, []string{"date,visit,volume_gal,site,ticket,field,field_year_gal,field_most_gal\n", "2026-09-30,soaked-slab-metric,977.436593725,invented works,T-0001,,,\n"}, ""},
		{"disposal in words", []string{"-log", sites}, 0, []string{"2026-09-30  soaked-slab-metric  3,700 L  invented works  T-0001\n"}, ""},
		{"disposal in JSON", []string{"-log", "-out", "json", sites}, 0, []string{`"volume_gal":977.436593725}`}, ""},
		{"one refused", []string{"-on", "2026-10-30", bad, sites}, 1, []string{"offer unanswered"}, "bad.json: line 1: date"},
		{"nothing", nil, 2, nil, "no survey given"},
		{"not there", []string{filepath.Join(dir, "none")}, 2, nil, "none"},
		{"no day", []string{"-on", "tomorrow", sites}, 2, nil, "a date of the calendar"},
		{"manual", []string{"-h"}, 0, []string{"Followup reads", "-log"}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out, errs bytes.Buffer
			if code := run(c.args, &out, &errs, today); code != c.code {
				t.Errorf("exit %d, want %d: %s", code, c.code, errs.String())
			}
			rest := out.String()
			for _, want := range c.stdout {
				i := strings.Index(rest, want)
				if i < 0 {
					t.Fatalf("standard output lacks %q in its place:\n%s", want, out.String())
				}
				rest = rest[i+len(want):]
			}
			if !strings.Contains(errs.String(), c.stderr) {
				t.Errorf("standard error lacks %q: %s", c.stderr, errs.String())
			}
			if c.name == "not yet" && strings.Contains(out.String(), "unanswered") {
				t.Errorf("an offer of 13 days is called unanswered:\n%s", out.String())
			}
		})
	}
}

// Two loads within 365 days add up on their field, a third a year later stands
// alone; an acre that needs 100 lb of nitrogen takes 100/0.0026 gal.
func TestLogOfAField(t *testing.T) {
	dir := t.TempDir()
	for i, date := range []string{"2025-06-01", "2026-05-31", "2026-06-01"} {
		survey := fmt.Sprintf(`{"id": "load-%d", "date": %q, "tank": {"kind": "box", "length": "96 in", "width": "60 in", "height": "60 in", "outlet_invert": "48 in"},
  "accesses": [{"name": "lid", "compartment": 1, "opening": "20 in", "cover": "18 in"}],
  "done": {"disposal_volume": "1000 gal", "field": {"name": "north", "area": "1 acre", "nitrogen": "100 lb"}}}`, i, date)
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%d.json", i)), []byte(survey), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	var out, errs bytes.Buffer
	if code := run([]string{"-log", "-out", "csv", dir}, &out, &errs, time.Time{}); code != 0 {
		t.Fatalf("exit %d: %s", code, errs.String())
	}
	for _, want := range []string{
		"2025-06-01,load-0,1000,,,north,1000,38461.5384615\n", "2026-05-31,load-1,1000,,,north,2000,38461.5384615\n", "2026-06-01,load-2,1000,,,north,2000,38461.5384615\n",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the log lacks %q:\n%s", want, out.String())
		}
	}
}
