package main

import (
	"encoding/binary"
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"hash/fnv"
	"os"
	"path/filepath"
	"strings"

	"manway.example/manway/internal/house"
)

// change is one edit of one file: the text from start to end becomes text.
type change struct {
	file   string // below the root, with slashes
	fn     string // "Box.Area"; "" outside functions
	line   int
	code   string // the line of source, trimmed
	kind   string
	from   string // the expression before
	to     string // and after
	nth    int    // among changes that read the same in one function, from 1
	start  int
	end    int
	text   string
	within *ast.FuncDecl // nil outside functions
}

// key finds a change again when the lines above it have moved.
type key struct {
	file, fn, code, change string
	nth                    int
}

func (c change) key() key { return key{c.file, c.fn, c.code, c.from + " => " + c.to, c.nth} }

func (c change) String() string {
	return fmt.Sprintf("%s:%d %s: %s: %s => %s", c.file, c.line, c.fn, c.code, c.from, c.to)
}

// number orders the changes by chance, the same way for one seed.
func (c change) number(seed uint64) uint64 {
	h := fnv.New64a()
	h.Write(binary.LittleEndian.AppendUint64(nil, seed))
	fmt.Fprintf(h, "%v", c.key())
	x := h.Sum64() // the last bytes of FNV mix poorly: finish as splitmix64 does
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// swaps are the operators and functions that take each other's place.
var swaps = map[string]string{
	"+": "-", "-": "+", "*": "/", "/": "*", "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*=",
	"<": "<=", "<=": "<", ">": ">=", ">=": ">", "&&": "||", "||": "&&",
	"min": "max", "max": "min", "Min": "Max", "Max": "Min", "Floor": "Ceil", "Ceil": "Floor",
}

// finder walks the files of a package.
type finder struct {
	house.Package
	source []byte
	file   string
	fn     string
	within *ast.FuncDecl
	seen   map[key]int
	found  []change
}

// changesOf lists every change of the formulas of a package. Left out is what
// only forms text (calls of fmt, strconv, strings and errors), the sizes given
// to make, numbered codes (iota), constants returned beside an error, sources
// and their years, and times 1 turned into over 1.
func changesOf(p house.Package, root string) ([]change, error) {
	w := &finder{Package: p, seen: map[key]int{}}
	for _, f := range p.Files {
		path := p.Fset.Position(f.Pos()).Filename
		below, err := filepath.Rel(root, path)
		if err != nil {
			return nil, err
		}
		w.file = filepath.ToSlash(below)
		if w.source, err = os.ReadFile(path); err != nil {
			return nil, err
		}
		for _, d := range f.Decls {
			w.fn, w.within = "", nil
			switch d := d.(type) {
			case *ast.FuncDecl:
				w.fn, w.within = d.Name.Name, d
				if d.Recv != nil {
					receiver := w.textOf(d.Recv.List[0].Type.Pos(), d.Recv.List[0].Type.End())
					w.fn = strings.TrimPrefix(receiver, "*") + "." + w.fn
				}
			case *ast.GenDecl:
				if d.Tok == token.IMPORT || w.counts(d) {
					continue
				}
			}
			ast.Inspect(d, w.visit)
		}
	}
	return w.found, nil
}

// counts reports whether a declaration numbers its constants.
func (w *finder) counts(d *ast.GenDecl) (yes bool) {
	ast.Inspect(d, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		yes = yes || ok && id.Name == "iota"
		return !yes
	})
	return yes
}

func (w *finder) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		w.binary(n)
	case *ast.UnaryExpr:
		if n.Op == token.SUB {
			w.edit("sign", n, n.OpPos, n.X.Pos(), "")
		}
	case *ast.BasicLit:
		w.literal(n)
	case *ast.AssignStmt:
		if to, ok := swaps[n.Tok.String()]; ok && w.numeric(n.Lhs[0]) {
			w.edit("arithmetic", n, n.TokPos, n.TokPos+token.Pos(len(n.Tok.String())), to)
		}
	case *ast.CallExpr:
		return w.call(n)
	case *ast.ArrayType:
		return false
	case *ast.CompositeLit:
		name := types.TypeString(w.Info.Types[n].Type, (*types.Package).Name)
		return name != "manway.Source" && name != "manway.Citation" && name != "*manway.Source"
	case *ast.IfStmt:
		w.negate(n.Cond)
	case *ast.ReturnStmt:
		if w.refuses(n) {
			return false
		}
		for _, e := range n.Results {
			w.negate(e)
		}
	case *ast.CaseClause:
		for _, e := range n.List {
			w.negate(e)
		}
	}
	return true
}

func (w *finder) binary(n *ast.BinaryExpr) {
	opEnd := n.OpPos + token.Pos(len(n.Op.String()))
	to := swaps[n.Op.String()]
	switch n.Op {
	case token.ADD, token.SUB, token.MUL, token.QUO:
		if !w.numeric(n) {
			return
		}
		if !w.one(n.Y) {
			w.edit("arithmetic", n, n.OpPos, opEnd, to)
		}
		if n.Op == token.ADD || n.Op == token.SUB {
			w.edit("dropped term", n, n.X.End(), n.Y.End(), "")
		}
		if n.Op == token.ADD {
			w.edit("dropped term", n, n.X.Pos(), n.Y.Pos(), "")
		}
	case token.LSS, token.LEQ, token.GTR, token.GEQ:
		w.edit("boundary", n, n.OpPos, opEnd, to)
	case token.LAND, token.LOR:
		x, y := w.textOf(n.X.Pos(), n.X.End()), w.textOf(n.Y.Pos(), n.Y.End())
		w.edit("and, or", n, n.Pos(), n.End(), "(("+x+") "+to+" ("+y+"))")
	}
}

// one reports whether an expression is the constant 1, such as manway.Metre, by
// which one may multiply or divide.
func (w *finder) one(e ast.Expr) bool {
	v := w.Info.Types[e].Value
	return v != nil && constant.Compare(constant.ToFloat(v), token.EQL, constant.MakeInt64(1))
}

// literal scales a real constant by 1.01 and adds one to a whole one or a zero.
func (w *finder) literal(n *ast.BasicLit) {
	if n.Kind != token.INT && n.Kind != token.FLOAT {
		return
	}
	t, ok := w.Info.Types[n].Type.Underlying().(*types.Basic)
	switch zero := strings.Trim(n.Value, "0._") == ""; {
	case !ok:
	case t.Info()&types.IsFloat != 0 && !zero:
		w.edit("constant", n, n.Pos(), n.End(), "("+n.Value+" * 1.01)")
	case t.Info()&types.IsNumeric != 0:
		w.edit("constant", n, n.Pos(), n.End(), "("+n.Value+" + 1)")
	}
}

// call swaps functions, and reports whether the arguments hold formulas.
func (w *finder) call(n *ast.CallExpr) bool {
	switch f := n.Fun.(type) {
	case *ast.Ident:
		if _, ok := w.Info.Uses[f].(*types.Builtin); ok {
			if to, ok := swaps[f.Name]; ok {
				w.edit("min, max", n, f.Pos(), f.End(), to)
			}
			return f.Name != "make"
		}
	case *ast.SelectorExpr:
		pkg, ok := f.X.(*ast.Ident)
		if !ok {
			return true
		}
		if name, ok := w.Info.Uses[pkg].(*types.PkgName); ok {
			switch name.Imported().Path() {
			case "fmt", "strconv", "strings", "errors":
				return false
			case "math":
				if to, ok := swaps[f.Sel.Name]; ok {
					w.edit("min, max", n, f.Sel.Pos(), f.Sel.End(), to)
				}
			}
		}
	}
	return true
}

// refuses reports whether a return gives an error beside values that are only
// written out, as in return 0, faults: nobody may use those.
func (w *finder) refuses(n *ast.ReturnStmt) bool {
	last := len(n.Results) - 1
	if last < 1 || w.Info.Types[n.Results[last]].IsNil() ||
		!types.AssignableTo(w.Info.Types[n.Results[last]].Type, types.Universe.Lookup("error").Type()) {
		return false
	}
	for _, e := range n.Results[:last] {
		if w.Info.Types[e].Value == nil {
			return false
		}
	}
	return true
}

// negate turns a condition round.
func (w *finder) negate(e ast.Expr) {
	if e == nil || !w.is(e, types.IsBoolean) {
		return
	}
	w.edit("condition", e, e.Pos(), e.End(), "!("+w.textOf(e.Pos(), e.End())+")")
}

func (w *finder) numeric(e ast.Expr) bool { return w.is(e, types.IsNumeric) }

func (w *finder) is(e ast.Expr, info types.BasicInfo) bool {
	tv, ok := w.Info.Types[e]
	if !ok || tv.Type == nil {
		return false
	}
	t, ok := tv.Type.Underlying().(*types.Basic)
	return ok && t.Info()&info != 0
}

// edit records the change of the text from start to end within an expression.
func (w *finder) edit(kind string, within ast.Node, start, end token.Pos, text string) {
	at := w.Fset.Position(start)
	c := change{
		file: w.file, fn: w.fn, within: w.within, line: at.Line, kind: kind,
		from:  oneLine(w.textOf(within.Pos(), within.End())),
		to:    oneLine(w.textOf(within.Pos(), start) + text + w.textOf(end, within.End())),
		start: at.Offset, end: w.Fset.Position(end).Offset, text: text,
	}
	from := strings.LastIndexByte(string(w.source[:at.Offset]), '\n') + 1
	line, _, _ := strings.Cut(string(w.source[from:]), "\n")
	c.code = strings.TrimSpace(line)
	w.seen[c.key()]++
	c.nth = w.seen[change{file: c.file, fn: c.fn, code: c.code, from: c.from, to: c.to}.key()]
	w.found = append(w.found, c)
}

func (w *finder) textOf(start, end token.Pos) string {
	return string(w.source[w.Fset.Position(start).Offset:w.Fset.Position(end).Offset])
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// apply gives the source with the change made.
func (c change) apply(source []byte) []byte {
	return append(append(append([]byte(nil), source[:c.start]...), c.text...), source[c.end:]...)
}
