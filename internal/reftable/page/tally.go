package main

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"manway.example/manway/internal/reftable"
)

// tally counts the rows of one source, one file or all.
type tally struct {
	published, derived int
	status             map[string]int
	sources            map[string]bool // of published rows
	worst              comparison      // the published number held to half a unit that is furthest off, in units of its last digit
	wider              int             // published numbers that are allowed more
	widest             comparison      // the one of them that is furthest off, relative to the printed number
}

// comparison is a row beside the value on the page; a row in words has no
// numbers.
type comparison struct {
	row      reftable.Row
	ours     string
	relative float64 // the deviation in parts of the printed number; 0 where that is 0
	reftable.Comparison
}

func compareRow(row reftable.Row, ours string) (comparison, error) {
	c := comparison{row: row, ours: ours}
	if !row.Numeric() || ours == "" {
		return c, nil
	}
	v, err := strconv.ParseFloat(ours, 64)
	if err != nil {
		return c, fmt.Errorf("%s: ours %q: want a number", row.ID, ours)
	}
	c.Comparison, err = row.Compare(v)
	if printed := v - c.Off; printed != 0 {
		c.relative = c.Off / math.Abs(printed)
	}
	return c, err
}

// off is the deviation in units of the last printed digit, and what is allowed
// where that is not half a unit.
func (c comparison) off() string {
	if !c.row.Numeric() {
		return "same"
	}
	s := strconv.FormatFloat(c.Deviation, 'f', 2, 64)
	if strings.Trim(s, "-0.") == "" {
		s = "0"
	} else if c.Deviation > 0 {
		s = "+" + s
	}
	if c.row.Tolerance != "" {
		s += " of " + strconv.FormatFloat(c.Allowed/c.Digit, 'g', 3, 64)
	}
	return s
}

func (t *tally) add(c comparison) {
	if t.status == nil {
		t.status, t.sources = map[string]int{}, map[string]bool{}
	}
	t.status[c.row.Status]++
	if !c.row.Published() {
		t.derived++
		return
	}
	t.published++
	t.sources[c.row.Source] = true
	switch {
	case c.row.Tolerance != "":
		t.wider++
		if math.Abs(c.relative) > math.Abs(t.widest.relative) {
			t.widest = c
		}
	case math.Abs(c.Deviation) > math.Abs(t.worst.Deviation):
		t.worst = c
	}
}

// worstOff is in units of the last printed digit.
func (t *tally) worstOff() string {
	if t.worst.row.ID == "" {
		return "0"
	}
	return t.worst.off()
}

// widestOff says how many numbers are allowed more than half a unit, and how far
// off the furthest of them is.
func (t *tally) widestOff() string {
	if t.wider == 0 {
		return ""
	}
	return fmt.Sprintf("%d, %+.1f %%", t.wider, 100*t.widest.relative)
}

// share is n of the published rows, in percent.
func (t *tally) share(n int) string {
	if t.published == 0 {
		return ""
	}
	return strconv.FormatFloat(100*float64(n)/float64(t.published), 'f', 1, 64) + " %"
}

// tallies counts the comparisons by a key, in the order of the keys.
func tallies(list []comparison, key func(reftable.Row) string) (keys []string, by map[string]*tally) {
	by = map[string]*tally{}
	for _, c := range list {
		k := key(c.row)
		if by[k] == nil {
			by[k] = &tally{}
			keys = append(keys, k)
		}
		by[k].add(c)
	}
	slices.SortFunc(keys, func(a, b string) int { return cmp.Compare(strings.ToLower(a), strings.ToLower(b)) })
	return keys, by
}
