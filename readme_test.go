package manway_test

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// The program that the README shows runs in a module of its own and writes what
// the README says.
func TestReadmeProgram(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile("(?s)```go\n(.*?)```\n\n```text\n(.*?)```").FindSubmatch(text)
	if m == nil {
		t.Fatal("README.md has no program with its output")
	}
	if out := runElsewhere(t, string(m[1])); out != string(m[2]) {
		t.Errorf("the program writes\n%s\nthe README says\n%s", out, m[2])
	}
	if _, err := os.Stat(filepath.FromSlash("testdata/sites/rusted-handle.json")); err != nil {
		t.Error(err) // the first command of the README
	}
}
