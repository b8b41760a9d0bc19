package main

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"manway.example/manway/internal/house"
)

const sample = `package p

const half = 0.5

var sizes = [...]int{1, 0}

func area(a, b float64) float64 {
	if a < b && b >= 0 {
		return min(a*half, -b)
	}
	return a + b
}

type box struct{ n int }

func (b *box) grow(by int) {
	b.n += by
}
`

// read type-checks one file as a package of its own.
func read(t *testing.T, source string) (house.Package, string) {
	t.Helper()
	dir := t.TempDir()
	path := filepath.Join(dir, "p.go")
	if err := os.WriteFile(path, []byte(source), 0o644); err != nil {
		t.Fatal(err)
	}
	p := house.Package{Path: "p", Fset: token.NewFileSet(), Info: &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{},
	}}
	f, err := parser.ParseFile(p.Fset, path, nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	p.Files = []*ast.File{f}
	if p.Types, err = (&types.Config{}).Check("p", p.Fset, p.Files, p.Info); err != nil {
		t.Fatal(err)
	}
	return p, dir
}

// Every place of a small file is found, and nothing else.
func TestChangesOfAFile(t *testing.T) {
	p, dir := read(t, sample)
	changes, err := changesOf(p, dir)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, c := range changes {
		got = append(got, c.fn+": "+c.from+" => "+c.to)
	}
	want := []string{
		": 0.5 => (0.5 * 1.01)",
		": 1 => (1 + 1)", ": 0 => (0 + 1)",
		"area: a < b && b >= 0 => !(a < b && b >= 0)",
		"area: a < b && b >= 0 => ((a < b) || (b >= 0))",
		"area: a < b => a <= b", "area: b >= 0 => b > 0", "area: 0 => (0 + 1)",
		"area: min(a*half, -b) => max(a*half, -b)",
		"area: a*half => a/half", "area: -b => b",
		"area: a + b => a - b", "area: a + b => a", "area: a + b => b",
		"box.grow: b.n += by => b.n -= by",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// The file with all changes built in type-checks, and one change alone too.
func TestSwitchedFileTypeChecks(t *testing.T) {
	p, dir := read(t, sample)
	changes, err := changesOf(p, dir)
	if err != nil {
		t.Fatal(err)
	}
	files, err := switched(p, dir, changes)
	if err != nil {
		t.Fatal(err)
	}
	text := string(files[filepath.Join(dir, "p.go")])
	if n := strings.Count(text, "_area(a, b float64)"); n != 11 {
		t.Errorf("%d copies of area, want one for each of its 11 changes", n)
	}
	both := text + "\nvar mutateChange int\n"
	read(t, both)
	for _, c := range changes {
		if ok, err := c.compiles(p, dir); !ok || err != nil {
			t.Errorf("%s does not compile: %v", c, err)
		}
	}
	if !strings.Contains(both, "case 15: b.mutated15_grow(by); return; ") {
		t.Errorf("the call of a changed method is not there:\n%s", both)
	}
}

// A sample does not depend on what stands elsewhere, and depends on the seed.
func TestSampleIsFixed(t *testing.T) {
	p, dir := read(t, sample)
	q, other := read(t, strings.Replace(sample, "type box", "// a comment\n\nfunc more(x int) int { return x + 1 }\n\ntype box", 1))
	a, _ := changesOf(p, dir)
	b, _ := changesOf(q, other)
	last, same := a[len(a)-1], b[len(b)-1]
	if last.key() != same.key() || last.number(1) != same.number(1) || last.line == same.line {
		t.Errorf("%v and %v are not taken as the same change", last, same)
	}
	if last.number(1) == last.number(2) {
		t.Error("the seed changes nothing")
	}
}

// The intervals that Newcombe, Two-sided confidence intervals for the single
// proportion, Statistics in Medicine 17 (1998), Table I prints for the score
// method without correction; remembered.
func TestWilson(t *testing.T) {
	for _, c := range []struct {
		k, n   int
		lo, hi float64
	}{{81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605}, {0, 20, 0, 0.1611}, {1, 29, 0.0061, 0.1718}} {
		lo, hi := wilson(c.k, c.n)
		if !(math.Abs(lo-c.lo) <= 0.00005) || !(math.Abs(hi-c.hi) <= 0.00005) {
			t.Errorf("%d of %d: %.4f to %.4f, want %.4f to %.4f", c.k, c.n, lo, hi, c.lo, c.hi)
		}
	}
}

// A survivor without a reason fails the run, one with a reason lowers the share
// of all and not that of those that can be killed.
func TestReport(t *testing.T) {
	tallies := []tally{{room: "tank", changes: 100, killed: 18, timedOut: 1, survivors: []survivor{{reason: "cannot matter"}, {}}}}
	var b bytes.Buffer
	if status := report(&b, tallies); status != 1 {
		t.Errorf("status %d with an unexplained survivor", status)
	}
	for _, want := range []string{"90.0 %", "94.7 %", "reason: cannot matter", "NO REASON KNOWN"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the report does not say %q:\n%s", want, b.String())
		}
	}
	tallies[0].survivors = tallies[0].survivors[:1]
	if status := report(&b, tallies); status != 0 {
		t.Errorf("status %d with every survivor explained", status)
	}
}

// A reason whose place is gone is told.
func TestStaleReasons(t *testing.T) {
	p, dir := read(t, sample)
	changes, err := changesOf(p, dir)
	if err != nil {
		t.Fatal(err)
	}
	gone := key{file: "p.go", fn: "area", code: "return a + c", change: "a + c => a", nth: 1}
	elsewhere := key{file: "tank/box.go"}
	list := stale(map[key]string{changes[3].key(): "stands", gone: "gone", elsewhere: "of another package"}, changes)
	if len(list) != 1 || list[0] != gone {
		t.Errorf("%+v, want the one that is gone", list)
	}
}
