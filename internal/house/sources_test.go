package house_test

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/types"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/internal/house"
	"manway.example/manway/internal/reftable"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
)

// cited is one source as the code has it.
type cited struct {
	at              string
	id, title, body string
	year            int64
}

// sourcesInCode finds every manway.Source that is written out in the code.
func sourcesInCode(t *testing.T) (list []cited) {
	t.Helper()
	for _, p := range sources(t) {
		for _, f := range p.Files {
			ast.Inspect(f, func(n ast.Node) bool {
				lit, ok := n.(*ast.CompositeLit)
				if !ok {
					return true
				}
				if n := named(p.Info.TypeOf(lit)); n == nil || n.Obj().Name() != "Source" || n.Obj().Pkg().Path() != house.Module {
					return true
				}
				c := cited{at: p.Fset.Position(lit.Pos()).String()}
				for _, e := range lit.Elts {
					kv, ok := e.(*ast.KeyValueExpr)
					if !ok {
						t.Errorf("%s: a source without the names of its fields", c.at)
						return true
					}
					c.set(t, kv, p.Info)
				}
				list = append(list, c)
				return true
			})
		}
	}
	if len(list) < 50 {
		t.Fatalf("%d sources were found in the code: the rule has lost sight of them", len(list))
	}
	return list
}

// set reads a field, whose value must be a constant, so that a source is the
// same wherever it is read.
func (c *cited) set(t *testing.T, kv *ast.KeyValueExpr, info *types.Info) {
	v := info.Types[kv.Value].Value
	if v == nil {
		t.Errorf("%s: %s is no constant", c.at, types.ExprString(kv.Key))
		return
	}
	switch types.ExprString(kv.Key) {
	case "ID":
		c.id = constant.StringVal(v)
	case "Title":
		c.title = constant.StringVal(v)
	case "Body":
		c.body = constant.StringVal(v)
	case "Year":
		c.year, _ = constant.Int64Val(v)
	}
}

// A source says the same wherever it is written: in the code, once or several
// times, and in sources.csv, which lists all of them and none that is not used.
func TestSourcesInCode(t *testing.T) {
	dir, err := reftable.Dir()
	if err != nil {
		t.Fatal(err)
	}
	list, rows, err := reftable.ReadAll(dir)
	if err != nil {
		t.Fatal(err)
	}
	listed, used := map[string]reftable.Source{}, map[string]bool{}
	for _, s := range list {
		listed[s.ID] = s
	}
	for _, row := range rows {
		used[row.Source] = true
	}
	faults := map[string]string{}
	for _, c := range sourcesInCode(t) {
		used[c.id] = true
		if s, ok := listed[c.id]; !ok {
			faults[c.id] = c.at + ": is not in sources.csv"
		} else if !c.is(s) {
			faults[c.id] = fmt.Sprintf("%s: differs from sources.csv:\n  code        %q, %q, %d\n  sources.csv %q, %q, %s",
				c.at, c.title, c.body, c.year, s.Title, s.Body, s.Year)
		}
	}
	for _, s := range list {
		if !used[s.ID] {
			faults[s.ID] = "sources.csv: used by no row and not in the code"
		}
	}
	for id, fault := range faults {
		t.Errorf("%s: %s", id, fault)
	}
}

// A package that lists what it rests on leaves none of its texts out.
func TestBasisIsWhole(t *testing.T) {
	basis := map[string][]manway.Citation{"riser": riser.Basis(), "lid": lid.Basis(), "cost": cost.Basis()}
	for _, c := range sourcesInCode(t) {
		list, ok := basis[filepath.Base(filepath.Dir(c.at))]
		if ok && !slices.ContainsFunc(list, func(b manway.Citation) bool { return b.Source.ID == c.id }) {
			t.Errorf("%s: %s is not in the Basis of its package", c.at, c.id)
		}
	}
}

// is reports whether code and table mean one source. What has no edition has a
// year such as "2026, as read" in the table, and none or that one in the code.
func (c cited) is(s reftable.Source) bool {
	year, _, read := strings.Cut(s.Year, ",")
	text := strconv.FormatInt(c.year, 10)
	return c.title == s.Title && c.body == s.Body && (text == year || c.year == 0 && (read || year == ""))
}
