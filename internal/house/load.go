package house

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// Module is the path of this module.
const Module = "manway.example/manway"

// Package is the source of one package, type-checked.
type Package struct {
	Path     string
	Files    []*ast.File
	Types    *types.Package
	Info     *types.Info
	Fset     *token.FileSet
	Importer types.Importer
}

// listed is what go list says of a package, or of a variant built for tests.
type listed struct {
	ImportPath, Dir, Export, ForTest   string
	GoFiles, TestGoFiles, XTestGoFiles []string
	Module                             *struct{ Main bool }
}

func (p listed) own() bool {
	return p.Module != nil && p.Module.Main && p.ForTest == "" && !strings.HasSuffix(p.ImportPath, ".test")
}

// Sources reads every package of the module, without its tests.
func Sources() ([]Package, error) {
	return load([]string{Module + "/..."}, func(p listed) [][]string { return [][]string{p.GoFiles} })
}

// Tests reads the named packages with their tests: the tests within a package
// together with its own files, those outside it apart. Packages of the module
// that these import come along.
func Tests(patterns ...string) ([]Package, error) {
	return load(append([]string{"-test"}, patterns...), func(p listed) [][]string {
		return [][]string{slices.Concat(p.GoFiles, p.TestGoFiles), p.XTestGoFiles}
	})
}

func load(args []string, groups func(listed) [][]string) ([]Package, error) {
	all, err := list(args)
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	for _, p := range all {
		exports[p.ImportPath] = p.Export
	}
	var read []Package
	for _, p := range all {
		if !p.own() {
			continue
		}
		for _, names := range groups(p) {
			if len(names) == 0 {
				continue
			}
			x, err := check(p, names, exports)
			if err != nil {
				return nil, err
			}
			read = append(read, x)
		}
	}
	if len(read) == 0 {
		return nil, errors.New("house: no package of the module was read")
	}
	return read, nil
}

// list asks go list for the packages, what they import and where the compiler
// left their types.
func list(args []string) ([]listed, error) {
	out, err := exec.Command("go", append([]string{"list", "-export", "-deps",
		"-json=ImportPath,Dir,Export,ForTest,GoFiles,TestGoFiles,XTestGoFiles,Module"}, args...)...).Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			return nil, fmt.Errorf("house: go list: %s", exit.Stderr)
		}
		return nil, err
	}
	var all []listed
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		all = append(all, p)
	}
}

// check parses and type-checks the named files. What they import is taken as it
// is built for the tests of the package, where such a variant is listed.
func check(p listed, names []string, exports map[string]string) (Package, error) {
	x := Package{Path: p.ImportPath, Fset: token.NewFileSet(), Info: &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{},
		Defs:  map[*ast.Ident]types.Object{},
		Uses:  map[*ast.Ident]types.Object{},
	}}
	for _, name := range names {
		f, err := parser.ParseFile(x.Fset, filepath.Join(p.Dir, name), nil, parser.ParseComments)
		if err != nil {
			return x, err
		}
		x.Files = append(x.Files, f)
	}
	imp := importer.ForCompiler(x.Fset, "gc", func(path string) (io.ReadCloser, error) {
		if file := exports[path+" ["+p.ImportPath+".test]"]; file != "" {
			return os.Open(file)
		}
		return os.Open(exports[path])
	})
	x.Importer = imp
	var err error
	x.Types, err = (&types.Config{Importer: imp}).Check(p.ImportPath, x.Fset, x.Files, x.Info)
	return x, err
}
