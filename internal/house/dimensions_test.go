package house_test

import (
	"go/ast"
	"go/token"
	"go/types"
	"strings"
	"testing"

	"manway.example/manway/internal/house"
)

// No product of two quantities: the type system would call the square of a
// length a length. Crossing dimensions is a method, such as Length.Times. A
// bare number that is converted to scale a quantity, Length(k) * l, is none.
func TestNoProductOfQuantities(t *testing.T) {
	for _, p := range sources(t) {
		for expr, tv := range p.Info.Types {
			b, ok := expr.(*ast.BinaryExpr)
			if !ok || b.Op != token.MUL || tv.Value != nil {
				continue
			}
			x, y := p.Info.Types[b.X], p.Info.Types[b.Y]
			if quantity(x.Type) && quantity(y.Type) && x.Value == nil && y.Value == nil && !scalar(b.X, p.Info) && !scalar(b.Y, p.Info) {
				t.Errorf("%s: %s of two values of %s", p.Fset.Position(b.Pos()), b.Op, x.Type)
			}
		}
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
	return isFloat && named.Obj().Pkg().Path() == house.Module && !strings.HasPrefix(named.Obj().Name(), "Kind") &&
		types.Identical(named.Underlying(), types.Typ[types.Float64])
}
