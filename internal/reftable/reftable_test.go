package reftable

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The files of this module keep their promises to each other.
func TestReferences(t *testing.T) {
	dir, err := Dir()
	if err != nil {
		t.Fatal(err)
	}
	sources, rows, err := ReadAll(dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := Verify(sources, rows); err != nil {
		t.Error(err)
	}
	count := map[string]int{}
	for _, row := range rows {
		count[row.Status]++
	}
	t.Logf("%d rows from %d sources: %v", len(rows), len(sources), count)
}

func TestCompare(t *testing.T) {
	for _, c := range []struct {
		printed, tolerance string
		got                float64
		agrees             bool
	}{
		{"2.6", "", 2.649, true},
		{"2.6", "", 2.65, true}, // a tie
		{"2.6", "", 2.651, false},
		{"2.60", "", 2.606, false},
		{"1,250", "", 1250.4, true},
		{"1,250", "", 1250.6, false},
		{"1.2e3", "", 1249, true},
		{"1.2e3", "", 1251, false},
		{"-0.0513", "", -0.05134, true},
		{"-0.0513", "", 0.0513, false},
		{"100", "2", 101.9, true},
		{"100", "2", 102.1, false},
		{"200", "0.5%", 201, true},
		{"200", "0.5%", 201.1, false},
		{"-200", "0.5%", -199, true},
		{"5", "0", 5, true},
		{"5", "0", 5.0001, false},
		{"5", "", math.NaN(), false},
	} {
		row := Row{Printed: c.printed, Tolerance: c.tolerance, Status: "seen"}
		got, err := row.Compare(c.got)
		if err != nil {
			t.Fatal(err)
		}
		if got.Agrees != c.agrees {
			t.Errorf("printed %s, tolerance %q, got %v: %+v, want agrees %v", c.printed, c.tolerance, c.got, got, c.agrees)
		}
	}
}

func TestCompareErratum(t *testing.T) {
	row := Row{Printed: "0.007085", Status: "erratum", Note: "misprint 0.00705: the series gives 0.007085"}
	for _, c := range []struct {
		got              float64
		agrees, misprint bool
	}{{0.0070851, true, false}, {0.00705, false, true}, {0.0072, false, false}} {
		got, err := row.Compare(c.got)
		if err != nil {
			t.Fatal(err)
		}
		if got.Agrees != c.agrees || got.Misprint != c.misprint {
			t.Errorf("%v: %+v, want agrees %v, misprint %v", c.got, got, c.agrees, c.misprint)
		}
	}
}

// recorder is a test that notes its failures instead of failing.
type recorder struct {
	testing.TB
	failures []string
	attrs    map[string]string
}

func (r *recorder) Helper() {}
func (r *recorder) Errorf(format string, args ...any) {
	r.failures = append(r.failures, fmt.Sprintf(format, args...))
}
func (r *recorder) Attr(key, value string) { r.attrs[key] = value }

func TestCheckReports(t *testing.T) {
	row := Row{File: "x.csv", Line: 7, ID: "a-1", Quantity: "years", Printed: "2.6", Status: "seen", Source: "s", Place: "Table 1"}
	r := &recorder{attrs: map[string]string{}}
	row.Check(r, 2.62)
	if len(r.failures) != 0 {
		t.Errorf("within the tolerance: %q", r.failures)
	}
	if got, want := r.attrs["reference:a-1"], "got 2.62 deviation 0.2"; got != want {
		t.Errorf("attribute %q, want %q", got, want)
	}
	row.Check(r, 2.8)
	row.CheckText(r, "never")
	if len(r.failures) != 2 {
		t.Fatalf("failures %q, want 2", r.failures)
	}
	for _, want := range []string{"x.csv:7", "a-1", "2.8", "2.6", "2 units of the last digit", "Table 1"} {
		if !strings.Contains(r.failures[0], want) {
			t.Errorf("%q does not say %q", r.failures[0], want)
		}
	}
}

// A value that agrees with the printed figure and is not the one on the page
// fails.
func TestCheckHoldsThePage(t *testing.T) {
	for _, row := range Load(t, "tank.csv")[:8] {
		onPage := page()[row.ID]
		v, unit, err := parsePrinted(onPage)
		if err != nil {
			t.Fatalf("%s: the page has %q", row.ID, onPage)
		}
		r := &recorder{attrs: map[string]string{}}
		row.Check(r, v+0.4*unit)
		if len(r.failures) != 0 {
			t.Errorf("%s: %s on the page: %q", row.ID, onPage, r.failures)
		}
		row.Check(r, v+2*unit)
		if len(r.failures) == 0 || !strings.Contains(r.failures[0], "go generate") {
			t.Errorf("%s: two units of the last digit beside the page: %q", row.ID, r.failures)
		}
	}
}

func TestVerifyFinds(t *testing.T) {
	sources := []Source{{"a", "A", "Press", "1984"}, {"b", "B", "Press", "soon"}, {"c", "C", "", ""}}
	good := Row{ID: "r1", Source: "a", Place: "p. 1", Quantity: "q", Printed: "2.5", Status: "seen"}
	change := func(f func(*Row)) Row { row := good; f(&row); return row }
	rows := Rows{
		good, good,
		change(func(r *Row) { r.ID, r.Source = "r2", "zz" }),
		change(func(r *Row) { r.ID, r.Status = "r3", "read" }),
		change(func(r *Row) { r.ID, r.Tolerance = "r4", "0.1" }),
		change(func(r *Row) { r.ID, r.Status, r.Note = "r5", "erratum", "wrong there" }),
		change(func(r *Row) { r.ID, r.Status, r.Note = "r6", "erratum", "misprint 2.54: too near" }),
		change(func(r *Row) { r.ID, r.Source = "r7", "c" }),
	}
	err := Verify(sources, rows)
	if err == nil {
		t.Fatal("no fault found")
	}
	for _, want := range []string{
		"b: year", "r1: the id stands also", `r2: source "zz"`, `r3: status "read"`,
		"r4: tolerance", "r5: note", "r6: the misprint", "r7: source c has no body",
	} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("no fault %q in:\n%v", want, err)
		}
	}
	if n := strings.Count(err.Error(), "\n") + 1; n != 8 {
		t.Errorf("%d faults, want 8:\n%v", n, err)
	}
}

func TestReadRows(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	head := strings.Join(rowHeader, ",") + "\n"
	write("sources.csv", "id,title,body,year\nm84,Frequency,Society,1984\n")
	write("tank.csv", head+"# remark\nx-1,m84,\"Table 1, p. 2\",,\"people=4; wait=1.5 s; note=a=b\",years,2.6,yr,,seen,\n")
	sources, rows, err := ReadAll(dir)
	if err != nil || len(sources) != 1 || len(rows) != 1 {
		t.Fatalf("%d sources, %d rows, %v", len(sources), len(rows), err)
	}
	row := rows[0]
	if row.Line != 3 || row.File != "tank.csv" || row.Float(t, "people") != 4 || row.Input(t, "note") != "a=b" {
		t.Errorf("row %+v", row)
	}
	var when textDuration
	row.Read(t, "wait", &when)
	if when != textDuration(1500*time.Millisecond) {
		t.Errorf("wait %v, want 1.5 s", time.Duration(when))
	}
	if n := len(rows.With("people", "3", "4").With("status", "seen").Under("x-")); n != 1 {
		t.Errorf("%d rows kept, want 1", n)
	}
	if n := len(rows.With("people", "5")); n != 0 {
		t.Errorf("%d rows kept, want 0", n)
	}
	for _, bad := range []string{"id,source\n", head + "x,y\n", head + "x,m84,,,people,q,1,,,seen,\n", head + "x,m84,,,a=1; a=2,q,1,,,seen,\n"} {
		write("tank.csv", bad)
		if _, _, err := ReadAll(dir); err == nil {
			t.Errorf("%q was read without an error", bad)
		}
	}
}

// textDuration reads "1.5 s", as the quantities of the module do.
type textDuration time.Duration

func (d *textDuration) UnmarshalText(text []byte) error {
	v, err := time.ParseDuration(strings.ReplaceAll(string(text), " ", ""))
	*d = textDuration(v)
	return err
}
