package plate

import (
	"fmt"
	"math"
	"strings"
)

// Edge says how one edge of the slab is held.
type Edge uint8

// The three ideal edges. The zero value is Simple.
const (
	Simple  Edge = iota // deflection zero, free to rotate
	Clamped             // deflection and rotation zero
	Free                // no support
)

// Sides of a slab, in the order of Slab.Edges.
const (
	SideY0 = iota // the edge y = 0
	SideX1        // the edge x = Length
	SideY1        // the edge y = Width
	SideX0        // the edge x = 0
)

// Axis names a coordinate direction.
type Axis uint8

// The two directions of the plan.
const (
	X Axis = iota
	Y
)

// Rect is a rectangle of the plan, metres: X0 <= x <= X1, Y0 <= y <= Y1.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// Line is a support that crosses the whole slab: the line x = At when Axis is
// X, the line y = At when Axis is Y. Openings interrupt it.
type Line struct {
	Axis Axis
	At   float64 // m
}

// Point is a place in the plan, metres.
type Point struct{ X, Y float64 }

// Opening is a hole through the slab. With a Diameter it is round and X, Y is
// its centre; otherwise it is the rectangle Length by Width whose lower corner
// is X, Y. An opening may cut an edge of the slab (a notch).
type Opening struct{ X, Y, Length, Width, Diameter float64 }

// RectOpening is a rectangular opening by its lower corner.
func RectOpening(x, y, length, width float64) Opening {
	return Opening{X: x, Y: y, Length: length, Width: width}
}

// RoundOpening is a round opening by its centre.
func RoundOpening(x, y, diameter float64) Opening {
	return Opening{X: x, Y: y, Diameter: diameter}
}

// bounds is the smallest rectangle round the opening.
func (o Opening) bounds() Rect {
	if r := o.Diameter / 2; r > 0 {
		return Rect{o.X - r, o.Y - r, o.X + r, o.Y + r}
	}
	return Rect{o.X, o.Y, o.X + o.Length, o.Y + o.Width}
}

// Zone is a rectangle of another thickness: a spall, a worn strip, a haunch.
// Its middle plane is taken to stay in line with the rest of the slab. Where
// zones overlap the last one counts.
type Zone struct {
	Rect
	Thickness float64 // m
}

// Slab is a flat rectangular plate: x along Length, y along Width, the origin
// in one corner. Lengths are metres, E is in pascals.
type Slab struct {
	Length, Width, Thickness float64
	E                        float64 // modulus of elasticity, Pa
	Nu                       float64 // Poisson's ratio, 0 <= Nu < 0.5

	Edges    [4]Edge   // SideY0, SideX1, SideY1, SideX0
	Lines    []Line    // at most 20
	Points   []Point   // point supports, at most 50
	Openings []Opening // at most 20
	Zones    []Zone    // at most 20

	// BearingOnly makes simple edges, lines and point supports unable to hold
	// the slab down: it lifts off them. Clamped edges stay clamped.
	BearingOnly bool
}

// Fault is one thing wrong with the input: the field, its value in SI units,
// and what was expected.
type Fault struct {
	Field string
	Value float64
	Want  string
	// Low and High are the range that Want gives in words, for a length that has
	// one; else both are 0.
	Low, High float64
}

// Faults is every fault of one input.
type Faults []Fault

// Error joins the faults by "; ".
func (f Faults) Error() string {
	var b strings.Builder
	for i, x := range f {
		if i > 0 {
			b.WriteString("; ")
		}
		fmt.Fprintf(&b, "%s %g: want %s", x.Field, x.Value, x.Want)
	}
	return b.String()
}

func (f *Faults) add(field string, value float64, want string) {
	*f = append(*f, Fault{Field: field, Value: value, Want: want})
}

// Sizes, moduli and loads in SI beyond these are mistakes, and their products
// could leave the range of float64.
const (
	smallest = 1e-9
	largest  = 1e15
)

// fault is one fault as an error.
func fault(field string, value float64, want string) Faults {
	return Faults{{Field: field, Value: value, Want: want}}
}

// positive records a fault unless v is a sensible number above zero.
func (f *Faults) positive(field string, v float64) {
	if !(v >= smallest && v <= largest) {
		f.add(field, v, "a number above 0 (1e-9 to 1e15)")
	}
}

// number records a fault unless v is a sensible number.
func (f *Faults) number(field string, v float64) {
	if !(math.Abs(v) <= largest) {
		f.add(field, v, "a number (up to 1e15)")
	}
}

// between records a fault unless the length v is lo to hi.
func (f *Faults) between(field string, v, lo, hi float64) {
	if !(v >= lo && v <= hi) {
		*f = append(*f, Fault{field, v, fmt.Sprintf("%.6g m to %.6g m", lo, hi), lo, hi})
	}
}

// under puts the faults found since there were n of them under part[i]. Names are
// made only when something is wrong: a good slab is checked without allocating.
func (f Faults) under(n int, part string, i int) {
	for k := n; k < len(f); k++ {
		name := fmt.Sprintf("%s[%d]", part, i)
		if f[k].Field != "" {
			name += "."
		}
		f[k].Field = name + f[k].Field
	}
}

func (f Faults) err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// Check reports every fault of the slab at once, as Faults.
func (s *Slab) Check() error {
	var f Faults
	f.positive("Length", s.Length)
	f.positive("Width", s.Width)
	f.positive("Thickness", s.Thickness)
	f.positive("E", s.E)
	if !(s.Nu >= 0 && s.Nu < 0.5) {
		f.add("Nu", s.Nu, "0 or more and below 0.5")
	}
	for i, e := range s.Edges {
		if e > Free {
			f.add(fmt.Sprintf("Edges[%d]", i), float64(e), "Simple, Clamped or Free")
		}
	}
	f.atMost("Lines", len(s.Lines), 20) // each part asks for a finer mesh
	f.atMost("Points", len(s.Points), 50)
	f.atMost("Openings", len(s.Openings), 20)
	f.atMost("Zones", len(s.Zones), 20)
	if len(f) > 0 {
		return f
	}
	const slender = 50
	if r := s.Length / s.Width; r > slender || r < 1/float64(slender) {
		f.add("Length", s.Length, "a plan no longer than 50 times its width")
	}
	if short := math.Min(s.Length, s.Width); s.Thickness > short/2 {
		f.add("Thickness", s.Thickness, "at most half the shorter side: this is a theory of thin slabs")
	}
	s.checkSupports(&f)
	s.checkOpenings(&f)
	for i, z := range s.Zones {
		n := len(f)
		f.positive("Thickness", z.Thickness)
		f.between("X0", z.X0, 0, s.Length)
		f.between("X1", z.X1, z.X0, s.Length)
		f.between("Y0", z.Y0, 0, s.Width)
		f.between("Y1", z.Y1, z.Y0, s.Width)
		f.under(n, "Zones", i)
	}
	return f.err()
}

// atMost records a fault where a list is longer than most.
func (f *Faults) atMost(field string, n, most int) {
	if n > most {
		f.add(field, float64(n), fmt.Sprintf("at most %d", most))
	}
}

func (s *Slab) checkSupports(f *Faults) {
	for i, l := range s.Lines {
		n := len(*f)
		if l.Axis > Y {
			f.add("Axis", float64(l.Axis), "X or Y")
		} else if size := [2]float64{s.Length, s.Width}[l.Axis]; !(l.At > 0 && l.At < size) {
			f.between("At", math.NaN(), 0, size)
			(*f)[len(*f)-1].Value = l.At
		}
		f.under(n, "Lines", i)
	}
	for i, p := range s.Points {
		n := len(*f)
		f.between("X", p.X, 0, s.Length)
		f.between("Y", p.Y, 0, s.Width)
		for _, o := range s.Openings {
			if o.contains(p.X, p.Y) {
				f.add("X", p.X, "a point outside every opening")
			}
		}
		f.under(n, "Points", i)
	}
}

func (s *Slab) checkOpenings(f *Faults) {
	for i, o := range s.Openings {
		n := len(*f)
		s.checkOpening(o, f)
		f.under(n, "Openings", i)
	}
}

func (s *Slab) checkOpening(o Opening, f *Faults) {
	n := len(*f)
	if o.Diameter != 0 {
		f.positive("Diameter", o.Diameter)
	} else {
		f.positive("Length", o.Length)
		f.positive("Width", o.Width)
	}
	f.number("X", o.X)
	f.number("Y", o.Y)
	if len(*f) > n {
		return
	}
	b := o.bounds()
	if !(b.X1 > 0 && b.X0 < s.Length) {
		f.add("X", o.X, "an opening in the slab")
	}
	if !(b.Y1 > 0 && b.Y0 < s.Width) {
		f.add("Y", o.Y, "an opening in the slab")
	}
	const least = 1.0 / 200 // smaller ones would need a mesh of their own
	small := math.Min(b.X1-b.X0, b.Y1-b.Y0)
	if small < least*math.Max(s.Length, s.Width) {
		f.add("", small, "an opening of at least 1/200 of the slab's longer side")
	}
}

// contains says whether x, y is inside the opening, off its rim.
func (o Opening) contains(x, y float64) bool {
	const rim = 1 - 1e-9
	if r := o.Diameter / 2; r > 0 {
		return math.Hypot(x-o.X, y-o.Y) < r*rim
	}
	cx, cy := o.X+o.Length/2, o.Y+o.Width/2
	return math.Abs(x-cx) < o.Length/2*rim && math.Abs(y-cy) < o.Width/2*rim
}
