package house_test

import (
	"go/ast"
	"go/types"
	"regexp"
	"strings"
	"sync"
	"testing"

	"manway.example/manway/internal/house"
)

// tests is the tests of the rooms as the rules read them.
type tests struct {
	packages []house.Package
	uses     house.Uses // of the rooms and their tests
	ours     map[string]bool
}

var readTests = sync.OnceValues(func() (tests, error) {
	patterns := []string{house.Module}
	for _, room := range rooms[1:] {
		patterns = append(patterns, house.Module+"/"+room)
	}
	packages, err := house.Tests(patterns...)
	if err != nil {
		return tests{}, err
	}
	x := tests{packages, house.UsesOf(packages), map[string]bool{}}
	for _, p := range packages {
		for _, f := range p.Files {
			if !testFile(p, f) {
				continue
			}
			for _, d := range f.Decls {
				for _, obj := range declared(p, d) {
					x.ours[house.FullName(obj)] = true
				}
			}
		}
	}
	return x, nil
})

func testFile(p house.Package, f *ast.File) bool {
	return strings.HasSuffix(p.Fset.Position(f.Pos()).Filename, "_test.go")
}

// declared is the functions, methods and variables that a declaration makes.
func declared(p house.Package, d ast.Decl) (list []types.Object) {
	switch d := d.(type) {
	case *ast.FuncDecl:
		list = append(list, p.Info.Defs[d.Name])
	case *ast.GenDecl:
		for _, s := range d.Specs {
			if s, ok := s.(*ast.ValueSpec); ok {
				for _, id := range s.Names {
					list = append(list, p.Info.Defs[id])
				}
			}
		}
	}
	return list
}

// tested is a test function or an Example and what it reaches through the
// helpers of the tests, and through what does nothing but call.
type tested struct {
	name    string
	doc     string
	reaches map[string]bool
}

// testsOf gives every test and Example of the rooms whose name has a prefix.
func testsOf(t *testing.T, prefix string) (list []tested) {
	t.Helper()
	x, err := readTests()
	if err != nil {
		t.Fatal(err)
	}
	through := passing(t)
	for _, p := range x.packages {
		for _, f := range p.Files {
			if !testFile(p, f) {
				continue
			}
			for _, d := range f.Decls {
				fd, ok := d.(*ast.FuncDecl)
				if !ok || fd.Recv != nil || !strings.HasPrefix(fd.Name.Name, prefix) {
					continue
				}
				name := house.FullName(p.Info.Defs[fd.Name])
				list = append(list, tested{p.Types.Name() + "." + fd.Name.Name, fd.Doc.Text(),
					x.uses.From([]string{name}, func(n string) bool { return x.ours[n] || through[n] })})
			}
		}
	}
	if len(list) < 50 {
		t.Fatalf("%d of %s were found: the rule has lost sight of them", len(list), prefix)
	}
	return list
}

// passing is the functions of the module that do nothing but call: their body
// is one return.
func passing(t *testing.T) map[string]bool {
	list := map[string]bool{}
	for _, p := range sources(t) {
		for _, f := range p.Files {
			for _, d := range f.Decls {
				fd, ok := d.(*ast.FuncDecl)
				if !ok || fd.Body == nil || len(fd.Body.List) != 1 {
					continue
				}
				if _, ok := fd.Body.List[0].(*ast.ReturnStmt); ok {
					list[house.FullName(p.Info.Defs[fd.Name])] = true
				}
			}
		}
	}
	return list
}

// without is the calculations that none of the tests reaches.
func without(t *testing.T, list []tested, fault string) map[string]string {
	faults := map[string]string{}
	for _, c := range calculations(t) {
		faults[c.name] = fault
		for _, x := range list {
			if x.reaches[house.FullName(c.fn)] {
				delete(faults, c.name)
			}
		}
	}
	return faults
}

// Every calculation is shown by an Example.
func TestCalculationsAreShown(t *testing.T) {
	example.hold(t, without(t, testsOf(t, "Example"), "no Example calls it"))
}

// Every calculation is compared with a published figure.
func TestCalculationsHaveFigures(t *testing.T) {
	var comparing []tested
	for _, x := range testsOf(t, "Test") {
		const row = "(" + house.Module + "/internal/reftable.Row)."
		if x.reaches[row+"Check"] || x.reaches[row+"CheckText"] {
			comparing = append(comparing, x)
		}
	}
	figure.hold(t, without(t, comparing, "no test compares it with a row of testdata/references"))
}

// law is what a property test says it holds to, in its doc comment: a law that
// needs no published figure. The words after it tell the law.
var law = regexp.MustCompile(`(?m)\bProperty \((additive|balance|bounded|continuous|converges|inverse|invariant|monotone|scaling|symmetric|two ways)\): \w`)

// Every calculation has a property test.
func TestCalculationsHaveProperties(t *testing.T) {
	var properties []tested
	for _, x := range testsOf(t, "Test") {
		if !law.MatchString(x.doc) {
			if strings.Contains(x.doc, "Property") {
				t.Errorf("%s: a property that the rule does not know: want %s", x.name, law)
			}
			continue
		}
		if !x.canFail() {
			t.Errorf("%s: a property test that reports nothing", x.name)
		}
		properties = append(properties, x)
	}
	property.hold(t, without(t, properties, "no property test calls it"))
}

func (x tested) canFail() bool {
	for _, report := range []string{"Error", "Errorf", "Fatal", "Fatalf"} {
		if x.reaches["(testing.common)."+report] || x.reaches["(testing.TB)."+report] {
			return true
		}
	}
	return false
}
