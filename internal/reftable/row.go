package reftable

import (
	"encoding"
	"fmt"
	"strconv"
	"strings"
	"testing"
)

// With keeps the rows whose column, named as in the file's header, or whose
// input of that name has one of the given values.
func (rows Rows) With(column string, values ...string) Rows {
	return rows.where(column, func(have string) bool {
		for _, v := range values {
			if have == v {
				return true
			}
		}
		return false
	})
}

// Under keeps the rows whose id starts with prefix.
func (rows Rows) Under(prefix string) Rows {
	return rows.where("id", func(id string) bool { return strings.HasPrefix(id, prefix) })
}

func (rows Rows) where(column string, keep func(string) bool) Rows {
	var kept Rows
	for _, row := range rows {
		if keep(row.column(column)) {
			kept = append(kept, row)
		}
	}
	return kept
}

// Each runs check as a subtest named by the row's id for every row. No row at
// all fails the test: a filter that matches nothing proves nothing.
func (rows Rows) Each(t *testing.T, check func(t *testing.T, row Row)) {
	t.Helper()
	if len(rows) == 0 {
		t.Fatal("reftable: no row to check")
	}
	for _, row := range rows {
		t.Run(row.ID, func(t *testing.T) { check(t, row) })
	}
}

func (row Row) column(name string) string {
	switch name {
	case "id":
		return row.ID
	case "source":
		return row.Source
	case "place":
		return row.Place
	case "edition":
		return row.Edition
	case "quantity":
		return row.Quantity
	case "printed":
		return row.Printed
	case "unit":
		return row.Unit
	case "tolerance":
		return row.Tolerance
	case "status":
		return row.Status
	case "note":
		return row.Note
	}
	value, _ := row.Lookup(name)
	return value
}

// Published reports whether the row counts as a published figure: all but the
// derived ones.
func (row Row) Published() bool { return row.Status != "derived" }

// Lookup is the named input as written, and whether the row has it.
func (row Row) Lookup(key string) (value string, ok bool) {
	for _, in := range row.Inputs {
		if in.Key == key {
			return in.Value, true
		}
	}
	return "", false
}

// Input is the named input as written. A row without it ends the test.
func (row Row) Input(t testing.TB, key string) string {
	t.Helper()
	value, ok := row.Lookup(key)
	if !ok {
		t.Fatalf("%s: no input %q among %v", row.at(), key, row.Inputs)
	}
	return value
}

// Float is the named input as a pure number; thousands may be set off by
// commas. A row without it ends the test.
func (row Row) Float(t testing.TB, key string) float64 {
	t.Helper()
	text := row.Input(t, key)
	v, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", ""), 64)
	if err != nil {
		t.Fatalf("%s: input %s=%q: want a number", row.at(), key, text)
	}
	return v
}

// Read reads the named input, with its unit, into a quantity. A row without
// it, or a text the quantity refuses, ends the test.
func (row Row) Read(t testing.TB, key string, into encoding.TextUnmarshaler) {
	t.Helper()
	text := row.Input(t, key)
	if err := into.UnmarshalText([]byte(text)); err != nil {
		t.Fatalf("%s: input %s=%q: %v", row.at(), key, text, err)
	}
}

// In is Read for a quantity of one type, and gives it.
func In[Q any, P interface {
	*Q
	encoding.TextUnmarshaler
}](t testing.TB, row Row, key string) (q Q) {
	t.Helper()
	row.Read(t, key, P(&q))
	return q
}

// Must gives what a calculation answered, and ends the test on its error.
func Must[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func (row Row) at() string {
	return fmt.Sprintf("%s:%d: %s", row.File, row.Line, row.ID)
}
