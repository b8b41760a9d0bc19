package plate

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"manway.example/manway/internal/reftable"
)

// bookCase is one slab of the handbooks: sides lx and ly, D = 1, unit load.
type bookCase struct {
	lx, ly, nu float64
	field      *Field
}

const bookThickness = 0.02 // of the unit side

// book solves the slab that a row's inputs describe.
func book(t *testing.T, row reftable.Row) bookCase {
	c := bookCase{lx: row.Float(t, "lx"), ly: row.Float(t, "ly"), nu: poisson(t, row)}
	slab := Slab{
		Length: c.lx, Width: c.ly, Thickness: bookThickness, Nu: c.nu,
		E: 12 * (1 - c.nu*c.nu) / (bookThickness * bookThickness * bookThickness),
	}
	for k, e := range row.Input(t, "edges") {
		slab.Edges[k] = map[rune]Edge{'S': Simple, 'C': Clamped, 'F': Free}[e]
	}
	if at, _ := row.Lookup("supports"); at == "corners" {
		slab.Points = []Point{{0, 0}, {c.lx, 0}, {c.lx, c.ly}, {0, c.ly}}
	}
	mesh := Mesh{Scale: 0.25}
	var loads []Load
	switch load := row.Input(t, "load"); load {
	case "uniform":
		loads = []Load{Uniform{1}}
	case "triangle along y":
		loads = []Load{Liquid{c.ly, 1 / c.ly}}
	case "triangle along x":
		loads = []Load{Linear{PerX: 1 / c.lx}}
	case "patch":
		u, v := math.Max(row.Float(t, "u"), 1e-3), math.Max(row.Float(t, "v"), 1e-3)
		loads = []Load{Patch{c.lx / 2, c.ly / 2, u, v, 1}}
		mesh.Scale = 0.4 // and small cells under the load; moments at clamped edges need more
		if slab.Edges[0] == Clamped {
			mesh.Scale = 0.2
		}
		mesh.Near = append(mesh.Near, Rect{c.lx/2 - u/2, c.ly/2 - v/2, c.lx/2 + u/2, c.ly/2 + v/2})
	case "disc":
		r := row.Float(t, "r0")
		loads = discOfStrips(Point{c.lx / 2, c.ly / 2}, r)
		mesh.Near = append(mesh.Near, Rect{c.lx/2 - r, c.ly/2 - r, c.lx/2 + r, c.ly/2 + r})
	default:
		t.Fatalf("load %q", load)
	}
	var s Solver
	if err := s.Factor(&slab, mesh); err != nil {
		t.Fatal(err)
	}
	c.field = new(Field)
	if err := s.Solve(c.field, loads); err != nil {
		t.Fatal(err)
	}
	limit := 1e-9
	if strings.HasPrefix(row.Input(t, "load"), "patch") {
		limit = 5e-8 // rounding in cells a thousandth of the side, under near-point loads
	}
	if c.field.Residual > limit {
		t.Errorf("residual %g", c.field.Residual)
	}
	return c
}

func poisson(t *testing.T, row reftable.Row) float64 {
	if text := row.Input(t, "nu"); text == "1/6" {
		return 1.0 / 6
	}
	return row.Float(t, "nu")
}

// discOfStrips is a unit force on a circle, as strips with the chords' lengths.
func discOfStrips(centre Point, r float64) (loads []Load) {
	const n = 60
	area := math.Pi * r * r
	for k := range n {
		a0, a1 := -1+2*float64(k)/n, -1+2*float64(k+1)/n
		primitive := func(a float64) float64 { return a*math.Sqrt(1-a*a) + math.Asin(a) }
		chord := r * (primitive(a1) - primitive(a0)) / (a1 - a0)
		width := r * (a1 - a0)
		loads = append(loads, Patch{centre.X + r*(a0+a1)/2, centre.Y, width, chord, chord * width / area})
	}
	return loads
}

// value reads the quantity that a row names, such as "6 Mx/(q b2) at 0 0.5": the
// place is given in parts of the sides.
func (c bookCase) value(t *testing.T, quantity string) float64 {
	what, place, _ := strings.Cut(quantity, " at ")
	var x, y float64
	if xs, ys, ok := strings.Cut(place, " "); ok {
		x, y = number(t, xs)*c.lx, number(t, ys)*c.ly
	}
	v, on := c.field.At(x, y)
	if !on {
		t.Fatalf("%v %v is off the slab", x, y)
	}
	sign := 1.0
	if rest, minus := strings.CutPrefix(what, "-"); minus {
		sign, what = -1, rest
	}
	for prefix, k := range map[string]float64{"6 ": 6, "1000 ": 1000} {
		if rest, ok := strings.CutPrefix(what, prefix); ok {
			sign, what = sign*k, rest
		}
	}
	name, _, _ := strings.Cut(what, "/")
	roark := 12 * (1 - c.nu*c.nu) // E t^3 in D
	switch name {
	case "w D":
		return sign * v.W
	case "w E t3":
		return sign * v.W * roark
	case "w max E t3":
		return sign * c.field.Extremes().W.Value * roark
	case "M max":
		return sign * c.field.Extremes().Sag.Value
	case "Mx":
		return sign * v.M.X
	case "My":
		return sign * v.M.Y
	case "M":
		return sign * math.Max(v.M.X, v.M.Y)
	case "Qx":
		q, _ := c.field.Shear(X, x, y-0.01, y+0.01)
		return sign * q
	case "Qy":
		q, _ := c.field.Shear(Y, y, x-0.01, x+0.01)
		return sign * q
	case "Vx":
		return sign * c.edgeForce(SideX0, y)
	case "Vy":
		return sign * c.edgeForce(SideY0, x)
	case "R":
		var r Reactions
		c.field.Reactions(&r)
		return sign * r.Corners[0]
	}
	if strings.HasPrefix(what, "beta of a central circle") {
		const r0 = 0.02
		return 4*math.Pi*v.M.X - (1+c.nu)*math.Log(2/(math.Pi*r0))
	}
	t.Fatalf("quantity %q", quantity)
	return 0
}

// edgeForce interpolates the support force per length along an edge.
func (c bookCase) edgeForce(side int, at float64) float64 {
	var last Intensity
	for k, p := range c.field.EdgeForce(side, nil) {
		along, before := p.At.X+p.At.Y, last.At.X+last.At.Y
		if side == SideX0 && k > 0 && along >= at || side == SideY0 && k > 0 && along >= at {
			return last.PerLength + (p.PerLength-last.PerLength)*(at-before)/(along-before)
		}
		last = p
	}
	return math.NaN()
}

func number(t *testing.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestRectanglesOfTheHandbooks(t *testing.T) {
	solved := map[string]bookCase{}
	for _, row := range reftable.Load(t, "plate.csv") {
		if _, ok := row.Lookup("lx"); !ok {
			continue
		}
		t.Run(row.ID, func(t *testing.T) {
			key := ""
			for _, in := range row.Inputs {
				key += in.Key + "=" + in.Value + ";"
			}
			c, ok := solved[key]
			if !ok {
				c = book(t, row)
				solved[key] = c
			}
			row.Check(t, c.value(t, row.Quantity))
		})
	}
}

func TestMacNealHarderPlates(t *testing.T) {
	for _, row := range reftable.Load(t, "plate.csv").Under("B2-") {
		t.Run(row.ID, func(t *testing.T) {
			a, b := row.Float(t, "a"), row.Float(t, "b")
			slab := Slab{Length: a, Width: b, Thickness: row.Float(t, "t"), E: row.Float(t, "E"), Nu: row.Float(t, "nu")}
			if row.Input(t, "edges") == "CCCC" {
				slab.Edges = [4]Edge{Clamped, Clamped, Clamped, Clamped}
			}
			load, mesh := Load(Uniform{1e-4}), Mesh{Scale: 0.5}
			if p, ok := row.Lookup("P"); ok {
				const small = 1e-3
				load = Patch{a / 2, b / 2, small, small, number(t, p)}
				mesh.Near = []Rect{{a / 2, b / 2, a / 2, b / 2}}
			}
			var s Solver
			var f Field
			if err := s.Factor(&slab, mesh); err != nil {
				t.Fatal(err)
			}
			if err := s.Solve(&f, []Load{load}); err != nil {
				t.Fatal(err)
			}
			v, _ := f.At(a/2, b/2)
			row.Check(t, v.W)
		})
	}
}
