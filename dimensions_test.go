package manway_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// No product of two quantities: the type system would call the square of a
// length a length. Crossing dimensions is a method, such as Length.Times. A
// bare number that is converted to scale a quantity, Length(k) * l, is none.
func TestNoProductOfQuantities(t *testing.T) {
	out, err := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles,Module", "./...").Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			t.Fatalf("go list: %s", exit.Stderr)
		}
		t.Fatal(err)
	}
	type pkg struct {
		ImportPath, Dir, Export string
		GoFiles                 []string
		Module                  *struct{ Main bool }
	}
	exports := map[string]string{}
	var own []pkg
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		var p pkg
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		exports[p.ImportPath] = p.Export
		if p.Module != nil && p.Module.Main {
			own = append(own, p)
		}
	}
	fset := token.NewFileSet()
	imp := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	for _, p := range own {
		var files []*ast.File
		for _, name := range p.GoFiles {
			f, err := parser.ParseFile(fset, filepath.Join(p.Dir, name), nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, f)
		}
		info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
		if _, err := (&types.Config{Importer: imp}).Check(p.ImportPath, fset, files, info); err != nil {
			t.Fatal(err)
		}
		for expr, tv := range info.Types {
			b, ok := expr.(*ast.BinaryExpr)
			if !ok || b.Op != token.MUL || tv.Value != nil {
				continue
			}
			x, y := info.Types[b.X], info.Types[b.Y]
			if quantity(x.Type) && quantity(y.Type) && x.Value == nil && y.Value == nil && !scalar(b.X, info) && !scalar(b.Y, info) {
				t.Errorf("%s: %s of two values of %s", fset.Position(b.Pos()), b.Op, x.Type)
			}
		}
	}
	if len(own) == 0 {
		t.Fatal("no package of the module was read")
	}
}

// scalar reports whether an operand is a bare number made a quantity only to
// scale another, or a product or quotient of such.
func scalar(e ast.Expr, info *types.Info) bool {
	switch e := ast.Unparen(e).(type) {
	case *ast.CallExpr:
		return len(e.Args) == 1 && info.Types[e.Fun].IsType() && !quantity(info.Types[e.Args[0]].Type)
	case *ast.BinaryExpr:
		return scalar(e.X, info) && (scalar(e.Y, info) || info.Types[e.Y].Value != nil)
	}
	return false
}

func quantity(t types.Type) bool {
	named, ok := t.(*types.Named)
	if !ok || named.Obj().Pkg() == nil {
		return false
	}
	_, isFloat := named.Underlying().(*types.Basic)
	return isFloat && named.Obj().Pkg().Path() == "manway.example/manway" && !strings.HasPrefix(named.Obj().Name(), "Kind") &&
		types.Identical(named.Underlying(), types.Typ[types.Float64])
}
