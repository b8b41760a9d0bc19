package house_test

import (
	"go/ast"
	"go/types"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"manway.example/manway/internal/house"
)

// rooms are the packages that calculate: the root, and those under it.
var rooms = []string{"manway", "tank", "riser", "lid", "hydraulics", "cost"}

// roomOf is the room that a package is, empty of any other.
func roomOf(path string) string {
	room, ok := strings.CutPrefix(path, house.Module+"/")
	if path == house.Module {
		room, ok = "manway", true
	}
	if !ok || !slices.Contains(rooms, room) {
		return ""
	}
	return room
}

var readSources = sync.OnceValues(house.Sources)

// sources is every package of the module, read once.
func sources(t *testing.T) []house.Package {
	t.Helper()
	packages, err := readSources()
	if err != nil {
		t.Fatal(err)
	}
	return packages
}

// calculation is an exported function, or a method of an exported type, that
// gives a result and an error, or gives a quantity or a number, or cites a
// source for what it gives. What turns a value into text is none, nor is a table,
// nor the arithmetic of a quantity's own units.
type calculation struct {
	name string // lid.Lid.Weigh
	fn   *types.Func
	doc  string
}

func calculations(t *testing.T) (list []calculation) {
	t.Helper()
	for _, p := range sources(t) {
		room := roomOf(p.Path)
		if room == "" {
			continue
		}
		for _, f := range p.Files {
			for _, d := range f.Decls {
				fd, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				fn := p.Info.Defs[fd.Name].(*types.Func)
				if c := (calculation{room + "." + within(fn), fn, fd.Doc.Text()}); c.is() {
					list = append(list, c)
				}
			}
		}
	}
	if len(list) < 100 {
		t.Fatalf("%d calculations were found: the rule has lost sight of them", len(list))
	}
	return list
}

func (c calculation) is() bool {
	if recv := receiver(c.fn); !c.fn.Exported() || recv != nil && (!recv.Obj().Exported() || quantity(recv)) || counts.why(c.name) != "" {
		return false
	}
	results := c.fn.Signature().Results()
	n := results.Len()
	if n == 0 {
		return false
	}
	first := results.At(0).Type()
	if n > 1 && results.At(n-1).Type().String() == "error" {
		return first.String() != "[]byte"
	}
	_, list := first.(*types.Slice)
	return types.Identical(first, types.Typ[types.Float64]) || quantity(first) || !list && namesSource.MatchString(c.doc)
}

// receiver is the type of a method, nil of a function.
func receiver(fn *types.Func) *types.Named {
	recv := fn.Signature().Recv()
	if recv == nil {
		return nil
	}
	return named(recv.Type())
}

func named(t types.Type) *types.Named {
	if p, ok := t.(*types.Pointer); ok {
		t = p.Elem()
	}
	n, _ := t.(*types.Named)
	return n
}

// within is the name of a function or method within its package: Lid.Weigh.
func within(fn *types.Func) string {
	if recv := receiver(fn); recv != nil {
		return recv.Obj().Name() + "." + fn.Name()
	}
	return fn.Name()
}

// exceptions is, by the rule and by what breaks it, why it may. A reason is a
// fact. Each room has its own list.
type exceptions map[rule]map[string]string

// rule is one thing that the tests of this package ask of every calculation.
type rule string

const (
	counts   rule = "counts as a calculation"
	source   rule = "names its source in the doc comment"
	basis    rule = "has a result with a Basis"
	example  rule = "is shown by an Example"
	figure   rule = "is compared with a published figure"
	property rule = "has a property test"
	limits   rule = "is tried just inside and just outside its limits"
	eachSide rule = "is tried on both sides of the limit"
)

// excepted are the exceptions of all rooms.
var excepted = []exceptions{rootExceptions, tankExceptions, riserExceptions, lidExceptions, hydraulicsExceptions, costExceptions}

// why is the reason of an exception, empty where there is none.
func (r rule) why(name string) string {
	for _, e := range excepted {
		if reason := e[r][name]; reason != "" {
			return reason
		}
	}
	return ""
}

// hold fails for each named fault that is not excepted, and for each exception
// that is none any more.
func (r rule) hold(t *testing.T, faults map[string]string) {
	t.Helper()
	for name, fault := range faults {
		if r.why(name) == "" {
			t.Errorf("%s: %s", name, fault)
		}
	}
	for _, e := range excepted {
		for name := range e[r] {
			if faults[name] == "" {
				t.Errorf("%s %s: take it off the list", name, r)
			}
		}
	}
}

var namesSource = regexp.MustCompile(`\bSources?:\s`)

// Every calculation says in its doc comment where it comes from.
func TestCalculationsNameTheirSource(t *testing.T) {
	faults := map[string]string{}
	for _, c := range calculations(t) {
		if !namesSource.MatchString(c.doc) {
			faults[c.name] = "the doc comment has no \"Source:\""
		}
	}
	source.hold(t, faults)
}

// Every calculation has a Basis, the list of its sources: its result has one,
// or names its one Source, as a check does; or the value that it is a method of
// does so; or, where it gives a bare quantity or table, its package.
func TestCalculationsHaveABasis(t *testing.T) {
	faults := map[string]string{}
	for _, c := range calculations(t) {
		results := c.fn.Signature().Results()
		found := c.fn.Pkg().Scope().Lookup("Basis") != nil
		types := []types.Type{}
		if recv := c.fn.Signature().Recv(); recv != nil {
			types = append(types, recv.Type())
		}
		for v := range results.Variables() {
			types = append(types, v.Type())
		}
		for _, x := range types {
			found = found || hasBasis(x, c.fn.Pkg())
		}
		if !found {
			faults[c.name] = "no Basis"
		}
	}
	basis.hold(t, faults)
}

func hasBasis(t types.Type, from *types.Package) bool {
	switch x := t.(type) {
	case *types.Slice:
		t = x.Elem()
	case *types.Array:
		t = x.Elem()
	}
	n := named(t)
	if n == nil {
		return false
	}
	for _, name := range []string{"Basis", "Source"} {
		if m, _, _ := types.LookupFieldOrMethod(types.NewPointer(n), true, from, name); m != nil {
			return true
		}
	}
	return false
}
