package house

import (
	"go/ast"
	"go/token"
	"go/types"
	"strings"
)

// Uses is which functions, methods and package variables each function, method
// and package variable names in its body, by their full names.
type Uses map[string][]string

// UsesOf reads packages. A method of an interface stands for every method of
// that name in the package of the interface.
func UsesOf(packages []Package) Uses {
	uses := Uses{}
	methods := map[string][]string{} // package path and name
	for _, p := range packages {
		p.decls(func(obj types.Object, _ ast.Node) {
			if fn, ok := obj.(*types.Func); ok && fn.Signature().Recv() != nil {
				key := fn.Pkg().Path() + "." + fn.Name()
				methods[key] = append(methods[key], FullName(fn))
			}
		})
	}
	for _, p := range packages {
		p.decls(func(obj types.Object, n ast.Node) {
			name := FullName(obj)
			for _, used := range p.Used(n) {
				uses[name] = append(uses[name], FullName(used))
				if fn, ok := used.(*types.Func); ok && abstract(fn) && fn.Pkg() != nil {
					uses[name] = append(uses[name], methods[fn.Pkg().Path()+"."+fn.Name()]...)
				}
			}
		})
	}
	return uses
}

// From is everything reached from the names; it goes on only through names that
// through allows.
func (u Uses) From(names []string, through func(name string) bool) map[string]bool {
	seen := map[string]bool{}
	for len(names) > 0 {
		name := names[len(names)-1]
		names = names[:len(names)-1]
		if seen[name] {
			continue
		}
		seen[name] = true
		if through(name) {
			names = append(names, u[name]...)
		}
	}
	return seen
}

// decls gives each function, method and variable of the package with the code
// that belongs to it.
func (p Package) decls(visit func(types.Object, ast.Node)) {
	for _, f := range p.Files {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Body != nil {
					visit(p.Info.Defs[d.Name], d.Body)
				}
			case *ast.GenDecl:
				if d.Tok != token.VAR {
					continue
				}
				for _, s := range d.Specs {
					for _, id := range s.(*ast.ValueSpec).Names {
						visit(p.Info.Defs[id], s)
					}
				}
			}
		}
	}
}

// Used is the functions, methods and package variables that a piece of code
// names, in order.
func (p Package) Used(n ast.Node) (list []types.Object) {
	ast.Inspect(n, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		if !ok {
			return true
		}
		switch obj := p.Info.Uses[id].(type) {
		case *types.Func:
			list = append(list, obj.Origin())
		case *types.Var:
			if obj.Pkg() != nil && obj.Parent() == obj.Pkg().Scope() {
				list = append(list, obj)
			}
		}
		return true
	})
	return list
}

// FullName is the name of a function, method or package variable together with
// its package: (manway.example/manway/lid.Lid).Weigh. One that is seen from
// another package has the same name.
func FullName(obj types.Object) string {
	if fn, ok := obj.(*types.Func); ok {
		return strings.ReplaceAll(fn.FullName(), "(*", "(")
	}
	if obj.Pkg() == nil {
		return obj.Name()
	}
	return obj.Pkg().Path() + "." + obj.Name()
}

func abstract(fn *types.Func) bool {
	recv := fn.Signature().Recv()
	return recv != nil && types.IsInterface(recv.Type())
}
