package visit_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
)

// Surveys whose whole printed answer is kept: those that are invented for the
// demonstration, and three that say what those leave out: a plastic tank of three
// compartments in deep groundwater, thick walls of known steel, and a survey with
// next to nothing in it.
const printed = "testdata/printed"

var digit = regexp.MustCompile(`[0-9]`)

// inTexts finds the words of a drawing.
var inTexts = regexp.MustCompile(`>[^<>]*</(text|tspan)>`)

// The answer reads as somebody last read and looked at it: each sentence, label,
// row and note stands where it stood and nowhere else, and every line of the
// drawings lies where it lay. Digits of figures are left out, so that no figure
// is held by what the code once gave: figures are held by the tests beside this
// one and by those of the rooms. After a change write it anew with -update, and
// read what has changed.
func TestPrintedAnswerReadsAsBefore(t *testing.T) {
	for name, v := range answered(t) {
		var text strings.Builder
		if err := v.WriteText(&text); err != nil {
			t.Fatal(err)
		}
		kept(t, name+".txt", digit.ReplaceAllString(text.String(), "0"))
		for _, s := range v.Sections {
			for i, f := range s.Figures {
				svg := inTexts.ReplaceAllStringFunc(string(f.SVG), func(text string) string { return digit.ReplaceAllString(text, "0") })
				kept(t, fmt.Sprintf("%s-%s-%d.svg", name, s.ID, i+1), svg)
			}
		}
	}
}

// answered is the answers of the surveys, by their names; the bare one has no
// price book.
func answered(t testing.TB) map[string]visit.Visit {
	t.Helper()
	all := map[string]visit.Visit{}
	book := demoBook(t)
	for _, path := range sites(t) {
		s, _ := read(t, path)
		all[strings.TrimSuffix(path, ".json")], _ = page(t, s, book)
	}
	for _, name := range []string{"three-openings", "heavy-walls", "bare"} {
		prices := book
		if name == "bare" {
			prices = cost.Book{}
		}
		all[name], _ = page(t, readFile(t, name), prices)
	}
	return all
}

// demoBook is the example price book.
func demoBook(t testing.TB) cost.Book {
	t.Helper()
	_, book := read(t, "rusted-handle.json")
	return book
}

// readFile reads a survey that stands beside the printed answers.
func readFile(t testing.TB, name string) visit.Survey {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(printed, name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	return readText(t, string(b))
}

// kept compares a text with a file, line by line, or writes the file.
func kept(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join(printed, name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	is, was := strings.Split(got, "\n"), strings.Split(string(b), "\n")
	for i := range max(len(is), len(was)) {
		if i >= len(is) || i >= len(was) || is[i] != was[i] {
			t.Errorf("%s:%d is %q; if that is right: go test ./examples/visit -run Printed -update, and read the difference", path, i+1, strings.Join(is[min(i, len(is)):min(i+1, len(is))], ""))
			return
		}
	}
}
