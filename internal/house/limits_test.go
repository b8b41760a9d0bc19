package house_test

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/constant"
	"go/types"
	"strings"
	"testing"

	"manway.example/manway/internal/house"
)

// refusal is a place in the code of a room where a field is refused: the
// function that it stands in, the last name of the field, and which sides of the
// limit it has.
type refusal struct {
	in    *types.Func
	field string
	sides side
	at    string
}

type side uint8

const (
	low side = 1 << iota
	high
	either // refused on a condition that the rule cannot read
)

func (s side) String() string {
	var words []string
	for i, w := range []string{"below", "above", "beyond"} {
		if s&(1<<i) != 0 {
			words = append(words, w)
		}
	}
	return strings.Join(words, " and ")
}

func (r refusal) name() string { return r.in.Pkg().Name() + "." + within(r.in) + ": " + r.field }

// checker is a function that refuses a field whose name it is given, and where
// among its arguments that and the value stand.
type checker struct {
	field int
	sides side
}

// checkers are the functions of the root package that refuse a field.
var checkers = map[string]checker{
	house.Module + ".Within":                 {1, low | high},
	house.Module + ".NotNegative":            {1, low},
	"(" + house.Module + ".InputErrors).Add": {0, either},
	"(" + house.Module + ".Answer).Within":   {1, either},
	"(" + house.Module + ".Reading).Within":  {1, low | high},
}

// refusals finds where the code of the rooms refuses something. A function that
// is given the name of the field is a checker itself, and what calls it refuses.
func refusals(t *testing.T) (list []refusal) {
	t.Helper()
	known := map[string]checker{}
	for name, c := range checkers {
		known[name] = c
	}
	for n := -1; n != len(known); { // until no new checker turns up
		n, list = len(known), nil
		for _, p := range sources(t) {
			if roomOf(p.Path) == "" {
				continue
			}
			for _, f := range p.Files {
				for _, d := range f.Decls {
					fd, ok := d.(*ast.FuncDecl)
					if !ok || fd.Body == nil {
						continue
					}
					list = append(list, refusalsIn(p, fd, known)...)
				}
			}
		}
	}
	if len(list) < 400 {
		t.Fatalf("%d refusals were found: the rule has lost sight of them", len(list))
	}
	return list
}

func refusalsIn(p house.Package, fd *ast.FuncDecl, known map[string]checker) (list []refusal) {
	fn := p.Info.Defs[fd.Name].(*types.Func)
	if recv := receiver(fn); recv != nil && recv.Obj().Name() == "InputErrors" {
		return nil // Under hands on what a part refuses
	}
	add := func(field ast.Expr, sides side) {
		tail, param := lastName(p, fn, field)
		if param >= 0 {
			c := known[house.FullName(fn)]
			known[house.FullName(fn)] = checker{param, c.sides | sides}
			return
		}
		list = append(list, refusal{fn, tail, sides, p.Fset.Position(field.Pos()).String()})
	}
	ast.Inspect(fd.Body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			if callee := called(p, n); callee != nil {
				if c, ok := known[house.FullName(callee)]; ok && c.field < len(n.Args) {
					add(n.Args[c.field], c.sides&^impossible(p, n, c))
				}
			}
		case *ast.CompositeLit:
			if x := named(p.Info.TypeOf(n)); x != nil && x.Obj().Name() == "InputError" {
				for _, e := range n.Elts {
					if kv, ok := e.(*ast.KeyValueExpr); ok && types.ExprString(kv.Key) == "Field" {
						add(kv.Value, either)
					}
				}
			}
		}
		return true
	})
	return list
}

// called is the function or method that a call names, nil of any other call.
func called(p house.Package, call *ast.CallExpr) *types.Func {
	fun := ast.Unparen(call.Fun)
	switch x := fun.(type) {
	case *ast.IndexExpr:
		fun = x.X
	case *ast.IndexListExpr:
		fun = x.X
	}
	var id *ast.Ident
	switch x := ast.Unparen(fun).(type) {
	case *ast.Ident:
		id = x
	case *ast.SelectorExpr:
		id = x.Sel
	default:
		return nil
	}
	fn, _ := p.Info.Uses[id].(*types.Func)
	if fn == nil {
		return nil
	}
	return fn.Origin()
}

// impossible is the side of a limit that no value can be on: no list is shorter
// than none, no state that is unsigned is below the first.
func impossible(p house.Package, call *ast.CallExpr, c checker) side {
	if len(call.Args) < c.field+4 {
		return 0
	}
	if v := p.Info.Types[call.Args[c.field+2]].Value; v == nil || v.Kind() != constant.Int && v.Kind() != constant.Float || constant.Sign(v) > 0 {
		return 0
	}
	value, ok := ast.Unparen(call.Args[c.field+1]).(*ast.CallExpr)
	if !ok || len(value.Args) != 1 {
		return 0
	}
	if id, ok := value.Fun.(*ast.Ident); ok && id.Name == "len" {
		return low
	}
	if b, ok := p.Info.TypeOf(value.Args[0]).Underlying().(*types.Basic); ok && b.Info()&types.IsUnsigned != 0 {
		return low
	}
	return 0
}

// unread stands for a name that is made as the code runs; a trial of any field
// of the function is taken for it.
const unread = "?"

// lastName reads the last name of a field's path, without index, from the end of
// the expression that makes it; or gives which parameter of the function it is.
func lastName(p house.Package, fn *types.Func, e ast.Expr) (name string, param int) {
	switch e := ast.Unparen(e).(type) {
	case *ast.BinaryExpr:
		return lastName(p, fn, e.Y)
	case *ast.CallExpr: // fmt.Sprintf("Ballast[%d].Mass", i), indexed("Stops", i), f("Height")
		if len(e.Args) > 0 {
			return lastName(p, fn, e.Args[0])
		}
	case *ast.Ident:
		for i := range fn.Signature().Params().Len() {
			if p.Info.Uses[e] == fn.Signature().Params().At(i) {
				return "", i
			}
		}
	}
	if v := p.Info.Types[e].Value; v != nil && v.Kind() == constant.String {
		return tail(constant.StringVal(v)), -1
	}
	return unread, -1
}

// tail is the last name of a path: Mass of Ballast[0].Mass, Stops of Stops[1].
func tail(path string) string {
	if i := strings.LastIndex(path, "."); i >= 0 && i < len(path)-1 {
		path = path[i+1:]
	}
	name, _, _ := strings.Cut(path, "[")
	return cmp.Or(name, unread)
}

// trial is a call of limit.Check or limit.Refuses in the tests of a room: the
// fields that it tries beyond their limits, and the functions that refuse them.
type trial struct {
	fields  map[string]side
	reaches map[string]bool
}

// trials finds them. The functions that a calculation leads to are those of the
// code that it calls, however deep.
func trials(t *testing.T) (list []trial) {
	t.Helper()
	x, err := readTests()
	if err != nil {
		t.Fatal(err)
	}
	code := house.UsesOf(sources(t))
	for _, p := range x.packages {
		for _, f := range p.Files {
			if !testFile(p, f) {
				continue
			}
			ast.Inspect(f, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				if fields := tries(p, call); fields != nil {
					reached := x.uses.From(namesIn(p, f, call.Args[2]), func(n string) bool { return x.ours[n] })
					list = append(list, trial{fields, code.From(keys(reached), func(string) bool { return true })})
				}
				return true
			})
		}
	}
	return list
}

// namesIn is what a piece of code names, with the values of the local variables
// that it names.
func namesIn(p house.Package, f *ast.File, n ast.Node) (names []string) {
	for _, obj := range p.Used(n) {
		names = append(names, house.FullName(obj))
	}
	locals := map[types.Object]bool{}
	ast.Inspect(n, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok {
			if v, ok := p.Info.Uses[id].(*types.Var); ok && isFunc(v.Type()) {
				locals[v] = true
			}
		}
		return true
	})
	ast.Inspect(f, func(n ast.Node) bool {
		a, ok := n.(*ast.AssignStmt)
		if !ok || len(a.Lhs) != len(a.Rhs) {
			return true
		}
		for i, lhs := range a.Lhs {
			if id, ok := lhs.(*ast.Ident); ok && (locals[p.Info.Defs[id]] || locals[p.Info.Uses[id]]) {
				for _, obj := range p.Used(a.Rhs[i]) {
					names = append(names, house.FullName(obj))
				}
			}
		}
		return true
	})
	return names
}

func isFunc(t types.Type) bool {
	_, ok := t.Underlying().(*types.Signature)
	return ok
}

func keys(m map[string]bool) (list []string) {
	for k := range m {
		list = append(list, k)
	}
	return list
}

// tries is the fields that a call of package limit tries, nil of another call.
func tries(p house.Package, call *ast.CallExpr) map[string]side {
	const limit = house.Module + "/internal/limit."
	sides := map[string]side{
		"Between": low | high, "AtLeast": low, "Above": low, "AtMost": high, "Below": high,
	}
	fn := called(p, call)
	if fn == nil || !strings.HasPrefix(house.FullName(fn), limit) {
		return nil
	}
	fields := map[string]side{}
	field := func(e ast.Expr, s side) {
		if v := p.Info.Types[e].Value; v != nil && v.Kind() == constant.String {
			fields[tail(constant.StringVal(v))] |= s | either
		}
	}
	switch fn.Name() {
	case "Refuses":
		field(call.Args[3], 0)
	case "Check":
		for _, row := range call.Args[3:] {
			ast.Inspect(row, func(n ast.Node) bool {
				if c, ok := n.(*ast.CallExpr); ok {
					if fn := called(p, c); fn != nil && sides[fn.Name()] != 0 {
						field(c.Args[0], sides[fn.Name()])
					}
				}
				return true
			})
		}
	default:
		return nil
	}
	return fields
}

// Every limit that a room's code checks is tried just inside and just outside,
// through a calculation that leads to it.
func TestLimitsAreTried(t *testing.T) {
	reach := map[string]bool{} // by any calculation
	code := house.UsesOf(sources(t))
	for _, c := range calculations(t) {
		for name := range code.From([]string{house.FullName(c.fn)}, func(string) bool { return true }) {
			reach[name] = true
		}
	}
	list := trials(t)
	faults := map[string]string{}
	for _, r := range refusals(t) {
		if !reach[house.FullName(r.in)] {
			continue
		}
		var tried side
		for _, x := range list {
			if !x.reaches[house.FullName(r.in)] {
				continue
			}
			for field, sides := range x.fields {
				if field == r.field || r.field == unread {
					tried |= sides
				}
			}
		}
		if missing := r.sides &^ tried; missing != 0 {
			faults[r.name()] = fmt.Sprintf("%s: no value just %s the limit is tried", r.at, missing)
		}
	}
	eachSide.hold(t, faults)
}

// Every calculation that refuses something is tried at a limit of its own.
func TestCalculationsAreTriedAtTheirLimits(t *testing.T) {
	code := house.UsesOf(sources(t))
	all := refusals(t)
	list := trials(t)
	faults := map[string]string{}
	for _, c := range calculations(t) {
		name := house.FullName(c.fn)
		reaches := code.From([]string{name}, func(string) bool { return true })
		var refuses, tried bool
		for _, r := range all {
			if !reaches[house.FullName(r.in)] {
				continue
			}
			refuses = true
			for _, x := range list {
				tried = tried || x.reaches[name] && x.fields[r.field] != 0
			}
		}
		if refuses && !tried {
			faults[c.name] = "no limit of it is tried"
		}
	}
	limits.hold(t, faults)
}
