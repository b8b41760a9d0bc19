package reftable

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
)

// PageName is the validation page, beside the tables that it is made from.
const PageName = "README.md"

// extraDigits is how many digits the page shows of a computed value beyond the
// digits of the printed one.
const extraDigits = 2

// Shown is a computed value as the validation page shows it: to a hundredth of
// a unit of the last printed digit.
func (row Row) Shown(got float64) string {
	_, digit, err := parsePrinted(row.Printed)
	if err != nil {
		return strconv.FormatFloat(got, 'g', -1, 64)
	}
	decimals := extraDigits - int(math.Round(math.Log10(digit)))
	s := strconv.FormatFloat(got, 'f', max(0, decimals), 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-") // never -0
	}
	return s
}

// PageCells splits a line of the page into the cells of a table row; any other
// line has none.
func PageCells(line string) []string {
	inner, ok := strings.CutPrefix(line, "| ")
	if !ok {
		return nil
	}
	inner, ok = strings.CutSuffix(inner, " |")
	if !ok {
		return nil
	}
	cells := strings.Split(inner, " | ")
	for i := range cells {
		cells[i] = strings.NewReplacer(`\|`, "|", "&lt;", "<", "&amp;", "&").Replace(cells[i])
	}
	return cells
}

// PageCell is text as it stands in a cell of the page; [PageCells] reads it.
func PageCell(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", "|", `\|`).Replace(text)
}

// PageColumns heads each table of figures on the page.
var PageColumns = [6]string{"figure", "what", "printed", "ours", "off", "status"}

// ReadPage gives the computed values on the validation page of a folder, by the
// id of their row.
func ReadPage(dir string) (map[string]string, error) {
	text, err := os.ReadFile(filepath.Join(dir, PageName))
	if err != nil {
		return nil, fmt.Errorf("reftable: %w", err)
	}
	ours := map[string]string{}
	for line := range strings.Lines(string(text)) {
		if cells := PageCells(strings.TrimSpace(line)); len(cells) == len(PageColumns) {
			ours[cells[0]] = cells[3]
		}
	}
	return ours, nil
}

// page is the validation page of this module, read once; a module without one
// has nothing to hold its tests to, which the test of internal/reftable/page
// reports.
var page = sync.OnceValue(func() map[string]string {
	dir, err := Dir()
	if err != nil {
		return nil
	}
	ours, _ := ReadPage(dir)
	return ours
})

// holdPage fails the test where the page shows another value for the row than
// the one computed.
func (row Row) holdPage(t testing.TB, shown string, same func(onPage string) bool) {
	t.Helper()
	onPage, ok := page()[row.ID]
	if ok && !same(onPage) {
		t.Errorf("%s: %s/%s shows %s and the code gives %s: run go generate ./internal/reftable",
			row.at(), "testdata/references", PageName, onPage, shown)
	}
}

// sameShown reports whether text is got to the digits it shows.
func (row Row) sameShown(got float64) func(text string) bool {
	return func(text string) bool {
		v, unit, err := parsePrinted(text)
		return err == nil && math.Abs(v-got) <= 0.6*unit+1e-11*math.Abs(got)
	}
}
