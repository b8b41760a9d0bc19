package main

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"manway.example/manway/internal/reftable"
)

// The page has every row of the tables with a value, and says of it what the
// tables say. The values themselves are held by the comparisons of each room.
func TestPage(t *testing.T) {
	dir, err := reftable.Dir()
	if err != nil {
		t.Fatal(err)
	}
	sources, rows, err := reftable.ReadAll(dir)
	if err != nil {
		t.Fatal(err)
	}
	ours, err := reftable.ReadPage(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if ours[row.ID] == "" {
			t.Errorf("%s:%d: %s: the page has no value: run go generate ./internal/reftable", row.File, row.Line, row.ID)
		}
		c, err := compareRow(row, ours[row.ID])
		if err != nil {
			t.Fatal(err)
		}
		// The page rounds to a hundredth of a digit.
		if row.Numeric() && !(math.Abs(c.Off) <= c.Allowed+0.006*c.Digit) || !row.Numeric() && !strings.EqualFold(c.ours, row.Printed) {
			t.Errorf("%s:%d: %s: the page has %s for the printed %s", row.File, row.Line, row.ID, c.ours, row.Printed)
		}
	}
	documents, err := lay(filepath.Join(dir, "..", ".."), sources, rows, ours)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range documents {
		if err := d.compare(); err != nil {
			t.Error(err)
		}
	}
}

// Enough figures, from enough sources, few enough of them remembered.
func TestTrust(t *testing.T) {
	dir, err := reftable.Dir()
	if err != nil {
		t.Fatal(err)
	}
	_, rows, err := reftable.ReadAll(dir)
	if err != nil {
		t.Fatal(err)
	}
	var all tally
	for _, row := range rows {
		all.add(comparison{row: row})
	}
	if all.published < 400 || len(all.sources) < 40 {
		t.Errorf("%d published figures from %d sources, want 400 from 40", all.published, len(all.sources))
	}
	if 10*all.status["memory"] >= all.published {
		t.Errorf("%s from memory, want less than 10 %%", all.share(all.status["memory"]))
	}
}

// What a run of the tests must give before a page is written.
func TestShownFinds(t *testing.T) {
	rows := reftable.Rows{
		{ID: "good", Printed: "2.6"}, {ID: "word", Printed: "never"},
		{ID: "dropped", Printed: "2.6"}, {ID: "twice", Printed: "2.6"},
		{ID: "wide", Printed: "2.6"}, {ID: "other", Printed: "never"},
	}
	events := strings.NewReader(`{"Action":"run","Package":"p","Test":"T"}
{"Action":"attr","Package":"p","Test":"T","Key":"reference:good","Value":"got 2.6171 deviation 0.171"}
{"Action":"attr","Package":"q","Test":"U","Key":"reference:good","Value":"got 2.6171 deviation 0.171"}
{"Action":"attr","Package":"p","Test":"T","Key":"reference:word","Value":"got Never"}
{"Action":"attr","Package":"p","Test":"T","Key":"reference:twice","Value":"got 2.61 deviation 0.1"}
{"Action":"attr","Package":"q","Test":"U","Key":"reference:twice","Value":"got 2.62 deviation 0.2"}
{"Action":"attr","Package":"p","Test":"T","Key":"reference:wide","Value":"got 2.7 deviation 1"}
{"Action":"attr","Package":"p","Test":"T","Key":"reference:other","Value":"got always"}
{"Action":"attr","Package":"p","Test":"T","Key":"speed","Value":"3"}
{"Action":"fail","Package":"p","Test":"T"}
{"Action":"fail","Package":"p"}
`)
	got, failed, err := collect(events)
	if err != nil || failed == nil {
		t.Fatalf("failed %v, error %v", failed, err)
	}
	ours, err := shown(rows, got)
	if err == nil {
		t.Fatal("no fault found")
	}
	for _, want := range []string{"dropped: no test", "twice: tests compute different values: 2.610, 2.620", "wide: ours 2.7", "other: ours"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("no fault %q in:\n%v", want, err)
		}
	}
	if n := strings.Count(err.Error(), "\n") + 1; n != 4 {
		t.Errorf("%d faults, want 4:\n%v", n, err)
	}
	if ours["good"] != "2.617" || ours["word"] != "Never" {
		t.Errorf("good %q, word %q", ours["good"], ours["word"])
	}
}

// A page that was edited by hand is found, with the line.
func TestCompareFindsTheLine(t *testing.T) {
	file := filepath.Join(t.TempDir(), "page.md")
	if err := os.WriteFile(file, []byte("a\nb\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := (document{file, "a\nb\n"}).compare(); err != nil {
		t.Error(err)
	}
	for _, text := range []string{"a\nc\n", "a\nb\nc\n", "a\n"} {
		if err := (document{file, text}).compare(); err == nil || !strings.Contains(err.Error(), "page.md:2") && !strings.Contains(err.Error(), "page.md:3") {
			t.Errorf("%q: %v", text, err)
		}
	}
}
