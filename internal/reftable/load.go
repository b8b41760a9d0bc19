package reftable

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Source is one cited text, a row of sources.csv.
type Source struct {
	ID    string
	Title string
	Body  string // author, publisher or authority; empty: practice of the trade
	Year  string
}

// Row is one published figure. See the package comment for its fields.
type Row struct {
	File      string // name of the file, such as tank.csv
	Line      int    // line in the file, from 1
	ID        string
	Source    string
	Place     string
	Edition   string
	Inputs    []Input
	Quantity  string
	Printed   string
	Unit      string
	Tolerance string
	Status    string
	Note      string
}

// Input is one named value that a published figure was computed from.
type Input struct{ Key, Value string }

// Rows is a list of figures in the order of their file.
type Rows []Row

var (
	rowHeader = []string{"id", "source", "place", "edition", "inputs", "quantity",
		"printed", "unit", "tolerance", "status", "note"}
	sourceHeader = []string{"id", "title", "body", "year"}
)

// Load reads one file of testdata/references of this module, such as tank.csv.
// A file that cannot be read, or holds no row, ends the test.
func Load(t testing.TB, name string) Rows {
	t.Helper()
	dir, err := Dir()
	if err != nil {
		t.Fatal(err)
	}
	rows, err := readRows(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) == 0 {
		t.Fatalf("reftable: %s holds no row", name)
	}
	return rows
}

// Dir is the folder testdata/references of the module around the working
// directory, found by walking up to go.mod.
func Dir() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return filepath.Join(dir, "testdata", "references"), nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("reftable: no go.mod above the working directory")
		}
		dir = up
	}
}

// ReadAll reads sources.csv and every other CSV file of a folder.
func ReadAll(dir string) ([]Source, Rows, error) {
	sources, err := readSources(filepath.Join(dir, "sources.csv"))
	if err != nil {
		return nil, nil, err
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.csv"))
	if err != nil {
		return nil, nil, err
	}
	var all Rows
	for _, file := range files {
		if filepath.Base(file) == "sources.csv" {
			continue
		}
		rows, err := readRows(file)
		if err != nil {
			return nil, nil, err
		}
		all = append(all, rows...)
	}
	return sources, all, nil
}

func readSources(file string) ([]Source, error) {
	var list []Source
	err := readCSV(file, sourceHeader, func(_ int, c []string) error {
		list = append(list, Source{ID: c[0], Title: c[1], Body: c[2], Year: c[3]})
		return nil
	})
	return list, err
}

func readRows(file string) (Rows, error) {
	var rows Rows
	err := readCSV(file, rowHeader, func(line int, c []string) error {
		inputs, err := parseInputs(c[4])
		if err != nil {
			return err
		}
		rows = append(rows, Row{
			File: filepath.Base(file), Line: line,
			ID: c[0], Source: c[1], Place: c[2], Edition: c[3], Inputs: inputs,
			Quantity: c[5], Printed: c[6], Unit: c[7], Tolerance: c[8], Status: c[9], Note: c[10],
		})
		return nil
	})
	return rows, err
}

// readCSV gives each row after the header, its cells trimmed, to add.
func readCSV(file string, header []string, add func(line int, cells []string) error) error {
	f, err := os.Open(file)
	if err != nil {
		return fmt.Errorf("reftable: %w", err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	r.TrimLeadingSpace = true
	r.FieldsPerRecord = len(header)
	got, err := r.Read()
	if err != nil {
		return fmt.Errorf("reftable: %s: header: %w", file, err)
	}
	if !slices.Equal(got, header) {
		return fmt.Errorf("reftable: %s: header %q: want %q", file, strings.Join(got, ","), strings.Join(header, ","))
	}
	for {
		cells, err := r.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("reftable: %s: %w", file, err)
		}
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		line, _ := r.FieldPos(0)
		if err := add(line, cells); err != nil {
			return fmt.Errorf("reftable: %s:%d: %w", file, line, err)
		}
	}
}

func parseInputs(text string) ([]Input, error) {
	if text == "" {
		return nil, nil
	}
	var list []Input
	for part := range strings.SplitSeq(text, ";") {
		key, value, ok := strings.Cut(part, "=")
		in := Input{strings.TrimSpace(key), strings.TrimSpace(value)}
		if !ok || in.Key == "" || in.Value == "" {
			return nil, fmt.Errorf("inputs %q: want key=value; key=value", text)
		}
		if slices.ContainsFunc(list, func(have Input) bool { return have.Key == in.Key }) {
			return nil, fmt.Errorf("inputs %q: %s stands twice", text, in.Key)
		}
		list = append(list, in)
	}
	return list, nil
}
