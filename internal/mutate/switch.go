package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/types"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"manway.example/manway/internal/house"
)

// switchName is the variable of the environment that says which change is on.
const switchName = "MUTATE_CHANGE"

// switchFile is the file that reads it, put beside those of the package.
const switchFile = `package %s

import (
	"os"
	"strconv"
)

var mutateChange, _ = strconv.Atoi(os.Getenv("` + switchName + `"))
`

// compiles reports whether a package type-checks with a change.
func (c change) compiles(p house.Package, root string) (bool, error) {
	path := filepath.Join(root, filepath.FromSlash(c.file))
	source, err := os.ReadFile(path)
	if err != nil {
		return false, err
	}
	files := slices.Clone(p.Files)
	for i, f := range files {
		if p.Fset.Position(f.Pos()).Filename == path {
			if files[i], err = parser.ParseFile(p.Fset, path, c.apply(source), parser.SkipObjectResolution); err != nil {
				return false, nil
			}
		}
	}
	_, err = (&types.Config{Importer: p.Importer}).Check(p.Path, p.Fset, files, nil)
	return err == nil, nil
}

// switchable reports whether a change can be built in beside the true function,
// which needs a name for the receiver and every parameter to hand them on.
func (c change) switchable() bool {
	if c.within == nil {
		return false
	}
	_, ok := handOn(c.within, "")
	return ok
}

// handOn is the call of the copy of a function, as its only statement.
func handOn(d *ast.FuncDecl, name string) (call string, ok bool) {
	if d.Body == nil || d.Name.Name == "init" {
		return "", false
	}
	if d.Recv != nil {
		names := d.Recv.List[0].Names
		if len(names) == 0 || names[0].Name == "_" {
			return "", false
		}
		name = names[0].Name + "." + name
	}
	var args []string
	for _, f := range d.Type.Params.List {
		if len(f.Names) == 0 {
			return "", false
		}
		for _, n := range f.Names {
			if n.Name == "_" {
				return "", false
			}
			args = append(args, n.Name)
		}
		if _, variadic := f.Type.(*ast.Ellipsis); variadic {
			args[len(args)-1] += "..."
		}
	}
	call = name + "(" + strings.Join(args, ", ") + ")"
	if d.Type.Results == nil {
		return call + "; return", true
	}
	return "return " + call, true
}

// switched gives the files of a package with all changes built in that can be.
// Each function with changes gets a copy for every one, and at its head
//
//	switch mutateChange { case 7: return b.mutated7_Area(depth) }
//
// so that one build of the tests serves every change. The copies are not
// exported: tests that call every exported method must not find them.
func switched(p house.Package, root string, changes []change) (map[string][]byte, error) {
	copies, heads := map[string]string{}, map[*ast.FuncDecl]string{}
	for i, c := range changes {
		if !c.switchable() {
			continue
		}
		path := filepath.Join(root, filepath.FromSlash(c.file))
		source, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		d := c.within
		name := fmt.Sprintf("mutated%d_%s", i+1, d.Name.Name)
		from, at, to := p.Fset.Position(d.Type.Pos()).Offset, p.Fset.Position(d.Name.Pos()).Offset, p.Fset.Position(d.End()).Offset
		copies[path] += "\n" + string(source[from:at]) + name + string(source[at+len(d.Name.Name):c.start]) + c.text + string(source[c.end:to]) + "\n"
		call, _ := handOn(d, name)
		heads[d] += fmt.Sprintf("case %d: %s; ", i+1, call)
	}
	files := map[string][]byte{}
	for _, f := range p.Files {
		path := p.Fset.Position(f.Pos()).Filename
		if copies[path] == "" {
			continue
		}
		source, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		var text strings.Builder
		from := 0
		for _, decl := range f.Decls {
			if d, ok := decl.(*ast.FuncDecl); ok && heads[d] != "" {
				body := p.Fset.Position(d.Body.Lbrace).Offset + 1
				text.Write(source[from:body])
				text.WriteString(" switch mutateChange { " + heads[d] + "}; ")
				from = body
			}
		}
		text.Write(source[from:])
		text.WriteString(copies[path])
		files[path] = []byte(text.String())
	}
	if len(files) > 0 {
		dir := filepath.Dir(p.Fset.Position(p.Files[0].Pos()).Filename)
		files[filepath.Join(dir, "mutate_change.go")] = fmt.Appendf(nil, switchFile, p.Types.Name())
	}
	return files, nil
}
