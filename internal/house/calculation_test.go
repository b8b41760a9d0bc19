package house_test

import (
	"fmt"
	"go/ast"
	"go/types"
	"regexp"
	"slices"
	"strings"
	"testing"

	"manway.example/manway/internal/house"
)

// rooms are the packages that calculate.
var rooms = []string{"tank", "riser", "lid", "hydraulics", "cost"}

// calculation is an exported function, or a method of an exported type, that
// gives a result and an error. What turns a value into text is none.
type calculation struct {
	name string // lid.Lid.Weigh
	fn   *types.Func
	doc  string
}

func calculations(t *testing.T) (list []calculation) {
	t.Helper()
	packages, err := house.Sources()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range packages {
		room, ok := strings.CutPrefix(p.Path, house.Module+"/")
		if !ok || !slices.Contains(rooms, room) {
			continue
		}
		for _, f := range p.Files {
			for _, d := range f.Decls {
				fd, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				fn := p.Info.Defs[fd.Name].(*types.Func)
				if calculates(fn) {
					list = append(list, calculation{room + "." + within(fn), fn, fd.Doc.Text()})
				}
			}
		}
	}
	if len(list) < 100 {
		t.Fatalf("%d calculations were found: the rule has lost sight of them", len(list))
	}
	return list
}

func calculates(fn *types.Func) bool {
	results := fn.Signature().Results()
	n := results.Len()
	if !fn.Exported() || n < 2 || results.At(n-1).Type().String() != "error" || results.At(0).Type().String() == "[]byte" {
		return false
	}
	recv := receiver(fn)
	return recv == nil || recv.Obj().Exported()
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

// hold fails for each named fault that is not excepted, and for each exception
// that is none any more.
func hold(t *testing.T, faults map[string]string, excepted map[string]string) {
	t.Helper()
	for name, fault := range faults {
		if excepted[name] == "" {
			t.Errorf("%s: %s", name, fault)
		}
	}
	for name := range excepted {
		if faults[name] == "" {
			t.Errorf("%s keeps the rule: take it off the list", name)
		}
	}
}

// toDo is why a calculation may stand on a list although it is one.
const toDo = "still to be done"

var namesSource = regexp.MustCompile(`\bSources?:\s`)

// Every calculation says in its doc comment where it comes from.
func TestCalculationsNameTheirSource(t *testing.T) {
	faults := map[string]string{}
	for _, c := range calculations(t) {
		if !namesSource.MatchString(c.doc) {
			faults[c.name] = "the doc comment has no \"Source:\""
		}
	}
	hold(t, faults, map[string]string{
		"tank.New":                "validates and reckons nothing",
		"tank.RuleSetOf":          "looks up a table",
		"cost.ReadPriceBook":      "reads a table",
		"riser.StripNeed.Times":   "counts rolls of what Strip reckoned",
		"cost.Currency.MinorUnit": toDo,
		"cost.Defender.KeepFor":   toDo,
		"cost.Defender.Marginal":  toDo,
		"cost.Estimate.Simulate":  toDo,
		"cost.GroutMix.Volume":    toDo,
		"cost.Horizon.As":         toDo,
		"cost.Job.Estimate":       toDo,
		"cost.ManDays":            toDo,
		"cost.MarginOf":           toDo,
		"cost.MarkupOf":           toDo,
		"cost.Mesh.BareWeight":    toDo,
		"cost.Neglect.Options":    toDo,
		"cost.Range.ThreePoint":   toDo,
		"cost.Rounding.Round":     toDo,
		"cost.Takeoff":            toDo,
		"cost.Tariff.EqualTo":     toDo,
		"cost.Task.Line":          toDo,
		"cost.Unit.Per":           toDo,
		"cost.WaitingCost.Price":  toDo,
		"lid.Loss.Until":          toDo,
		"lid.Wear.Loss":           toDo,
		"riser.Pack.For":          toDo,
		"riser.Remedies":          toDo,
		"tank.Tank.Floor":         toDo,
		"tank.Tank.Partition":     toDo,
		"tank.Tank.Roof":          toDo,
		"tank.Tank.Wall":          toDo,
	})
}

// Every result that is a type of its room lists its sources, or its package
// does.
func TestResultsHaveABasis(t *testing.T) {
	faults := map[string]string{}
	for _, c := range calculations(t) {
		results := c.fn.Signature().Results()
		for i := range results.Len() - 1 {
			n := named(results.At(i).Type())
			if n == nil || n.Obj().Pkg() != c.fn.Pkg() {
				continue
			}
			if _, ok := n.Underlying().(*types.Struct); !ok || n.Obj().Pkg().Scope().Lookup("Basis") != nil {
				continue
			}
			if m, _, _ := types.LookupFieldOrMethod(types.NewPointer(n), true, c.fn.Pkg(), "Basis"); m == nil {
				name := c.fn.Pkg().Name() + "." + n.Obj().Name()
				faults[name] = fmt.Sprintf("the result of %s has no Basis", c.name)
			}
		}
	}
	hold(t, faults, map[string]string{
		"tank.RuleSet":  "its rules cite their texts",
		"tank.Surveyed": "is the shape that was measured",
		"cost.Book":     "is the prices of its user",
		"cost.Horizon":  "is what its user chose",
		"cost.Crossing": toDo,
		"cost.Moments":  toDo,
		"cost.Waiting":  toDo,
		"cost.When":     toDo,
		"lid.BarLeft":   toDo,
		"lid.Remaining": toDo,
	})
}

// Every calculation is shown by an Example or compared with a published figure.
func TestCalculationsAreShown(t *testing.T) {
	patterns := make([]string, len(rooms))
	for i, room := range rooms {
		patterns[i] = house.Module + "/" + room
	}
	packages, err := house.Tests(patterns...)
	if err != nil {
		t.Fatal(err)
	}
	shown := map[string]bool{}
	for _, p := range packages {
		for _, f := range p.Files {
			if !strings.HasSuffix(p.Fset.Position(f.Pos()).Filename, "_test.go") {
				continue
			}
			figures := readsTables(f)
			for _, d := range f.Decls {
				fd, ok := d.(*ast.FuncDecl)
				if !figures && !(ok && strings.HasPrefix(fd.Name.Name, "Example")) {
					continue
				}
				ast.Inspect(d, func(n ast.Node) bool {
					if id, ok := n.(*ast.Ident); ok {
						if fn, ok := p.Info.Uses[id].(*types.Func); ok {
							shown[fn.FullName()] = true
						}
					}
					return true
				})
			}
		}
	}
	faults := map[string]string{}
	for _, c := range calculations(t) {
		if !shown[c.fn.FullName()] {
			faults[c.name] = "no Example calls it and no published figure is compared with it"
		}
	}
	hold(t, faults, map[string]string{
		"riser.Dig.While":       toDo,
		"riser.Hose.Run":        toDo,
		"riser.Joint.Bead":      toDo,
		"riser.Joint.Cement":    toDo,
		"riser.StripNeed.Times": toDo,
		"riser.Uncover":         toDo,
		"riser.Wall.Buckling":   toDo,
		"riser.Wall.Deflection": toDo,
		"riser.Wall.Press":      toDo,
		"riser.Wall.Stiffness":  toDo,
		"tank.Tank.Floor":       toDo,
		"tank.Tank.Wall":        toDo,
	})
}

func readsTables(f *ast.File) bool {
	return slices.ContainsFunc(f.Imports, func(i *ast.ImportSpec) bool { return i.Path.Value == `"`+house.Module+`/internal/reftable"` })
}
