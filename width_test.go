package manway_test

import (
	"io"
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"
)

// terminal is the width of a terminal, in columns.
const terminal = 80

// wide are the lines of a text that a terminal would break for want of room,
// though they could have been broken at a blank.
func wide(text string) (list []string) {
	for _, line := range lines(text) {
		if utf8.RuneCountInString(line) > terminal && strings.ContainsAny(strings.TrimSpace(line), " \t") {
			list = append(list, line)
		}
	}
	return list
}

var (
	otherForm = regexp.MustCompile(` *(-out +\w+|-o +\S+|>\S+)`)
	otherWork = regexp.MustCompile(`-listen|-blank|-schema`)
)

// texts are the calls that make a command write its text: those of its manual
// and of the README, and those that read the files of testdata.
func texts(t *testing.T, b *bench, name string) (calls []string) {
	t.Helper()
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	c := commentOf(t, name)
	for _, s := range consoles(string(readme)) {
		if call := goRun.ReplaceAllString(s.call, "$1"); strings.HasPrefix(call, name+" ") {
			call, _, _ = strings.Cut(call, "|")
			calls = append(calls, call)
		}
	}
	for _, call := range c.calls {
		if !otherWork.MatchString(call) {
			b.provide(call, c)
			calls = append(calls, call)
		}
	}
	calls = append(calls, map[string][]string{
		"takeoff":   {"takeoff -prices testdata/prices/example.csv testdata/prices/jobs.jsonl"},
		"options":   {"options -prices testdata/prices/example.csv testdata/prices/ways.json"},
		"daysheet":  {"daysheet testdata/routes/day.csv", "daysheet testdata/routes/day.jsonl"},
		"sitevisit": {"sitevisit testdata/sites/rusted-handle.json", "sitevisit testdata/sites/soaked-slab-metric.json"},
		"followup":  {"followup testdata/sites", "followup -log testdata/sites"},
	}[name]...)
	for i, call := range calls {
		calls[i] = otherForm.ReplaceAllString(call, "")
	}
	return calls
}

// No line of a text for people is wider than a terminal, in either system of
// units; the manual neither. A word that is wider stands alone.
func TestTextWidth(t *testing.T) {
	for _, name := range commandNames(t) {
		b := newBench(t)
		manual, _ := b.run(name + " -h")
		calls := []string{name + " -h"}
		written := 0
		for _, call := range texts(t, b, name) {
			calls = append(calls, call)
			if strings.Contains(manual, "-units SYSTEM") {
				calls = append(calls, strings.Replace(call, name, name+" -units si", 1))
			}
		}
		for _, call := range calls {
			out, err := b.run(call)
			if err != nil {
				t.Errorf("%s: %v", call, err)
			}
			if os.Getenv("SHOW") != "" {
				_, _ = io.WriteString(os.Stderr, "$ "+call+"\n"+out)
			}
			written += len(out)
			for _, line := range wide(out) {
				t.Errorf("%s: %d columns: %s", call, utf8.RuneCountInString(line), line)
			}
		}
		if written < 1000 {
			t.Errorf("%s: wrote %d bytes in %d calls", name, written, len(calls))
		}
	}
}
