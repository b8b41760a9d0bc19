package reftable

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Step is one row of a calculation written out by hand beside what the code
// gives.
type Step struct {
	Name       string
	Hand, Code string
	Formula    string
}

// StepList is the rows of one file.
type StepList []Step

// Steps reads the table of a file in testdata/handcalc: step, formula, numbers,
// by hand, code. A file that cannot be read ends the test.
func Steps(t testing.TB, name string) (list StepList) {
	t.Helper()
	dir, err := Dir()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(dir, "..", "handcalc", name))
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.SplitSeq(string(text), "\n") {
		cells := strings.Split(line, "|")
		if len(cells) != 7 || strings.Contains(cells[1], "---") || strings.TrimSpace(cells[1]) == "step" {
			continue
		}
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		list = append(list, Step{Name: cells[1], Formula: cells[2], Hand: cells[4], Code: cells[5]})
	}
	if len(list) == 0 {
		t.Fatalf("%s has no table", name)
	}
	return list
}

// Check compares the named values with both columns: with the code's to six
// figures, and with the hand's to half a unit of its last digit, unless the
// formula says that the hand stops at a beam. Values that the table does not
// have fail, and so do steps of the hand that disagree with the code's column.
func (list StepList) Check(t *testing.T, got map[string]float64) {
	t.Helper()
	seen := map[string]bool{}
	for _, s := range list {
		hand, digit, err1 := parsePrinted(s.Hand)
		code, _, err2 := parsePrinted(s.Code)
		if err1 != nil || err2 != nil {
			t.Errorf("%s: %q and %q: want numbers", s.Name, s.Hand, s.Code)
			continue
		}
		within := digit/2 + 1e-9*math.Abs(hand)
		if strings.Contains(s.Formula, "a beam") {
			within = 0.02 * math.Abs(hand)
		}
		if math.Abs(hand-code) > within {
			t.Errorf("%s: by hand %s, code column %s", s.Name, s.Hand, s.Code)
		}
		v, ok := got[s.Name]
		if !ok {
			continue
		}
		seen[s.Name] = true
		if text := strconv.FormatFloat(v, 'g', 6, 64); math.Abs(v-code) > 0.6e-5*math.Abs(v) {
			t.Errorf("%s: the code gives %s, the file says %s", s.Name, text, s.Code)
		}
	}
	for name := range got {
		if !seen[name] {
			t.Errorf("no step %q in the file", name)
		}
	}
}
