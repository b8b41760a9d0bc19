package riser

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"manway.example/manway"
)

// Cover is a cover that may close a stack.
type Cover struct {
	Code   string
	Fits   manway.Length // bore that it closes
	Stands manway.Length // height above the top ring, with its seal; 0 where it is let in; up to 1 ft
	Mass   manway.Mass   // up to 3 t; 0: not known
	Cost   int64         // as for a ring
}

// Need is what a stack of rings must do.
type Need struct {
	Port   manway.Length // inside size of the opening that it stands on, 6 in to 10 ft
	Gap    manway.Length // from the roof to the finished top of the cover, or to the cover's underside where Covers is empty; 0 to 20 ft
	Below  manway.Length // by how much the stack may stay below, 0 to 2 ft
	Above  manway.Length // by how much it may stand above, 0 to 2 ft
	Joint  manway.Length // thickness of one closed joint, 0 to 2 in
	Covers []Cover       // one of them closes the stack; empty: the cover is chosen elsewhere
}

// Piece is rings of one kind and height in a stack.
type Piece struct {
	Ring    int // index in the list of rings
	Code    string
	Count   int
	Height  manway.Length // of each as it is set
	Bore    manway.Length
	Cut     bool // cut down to Height
	Plastic bool // not concrete
}

// Stack is one way to make up the height, bottom up.
type Stack struct {
	Pieces []Piece
	Cover  int // index in Need.Covers, -1 where none was to be chosen
	Joints int // one below every ring
	Total  manway.Length
	Off    manway.Length // Total less the gap: negative is short of it
	Mass   manway.Mass   // of rings and cover
	Cost   int64         // of rings and cover
}

// Stacks is the answer of [StackOf].
type Stacks struct {
	Need     Need
	Best     []Stack  // the best 20 at most, within tolerance
	Feasible uint64   // number of stacks within tolerance
	AtLeast  bool     // there are more than Feasible can count
	Nearest  []Stack  // where Best is empty: the nearest below and the nearest above, as far as there are
	Unused   []string // rings that cannot be used here, and why
	Assumed  manway.Assumptions
	Cautions manway.Cautions
}

// bestStacks is how many stacks are listed.
const bestStacks = 20

// StackOf finds the best stacks of rings between a roof and grade, exactly: the
// stacks with the fewest joints come first, then the lightest, then the
// cheapest, and every stack that is possible is counted.
//
//	total = sum of (ring height + joint) + what the cover stands above the rings
//	gap - below <= total <= gap + above
//
// A stack is a set of rings, not an order: rings of one bore are listed tallest
// first. No ring is narrower than the port; rings of two bores meet only at an
// adapter, of which a stack has at most one; bores within 1/8 in are one bore.
// At most one ring is cut. The cover must fit the bore at the top.
//
// The search is a dynamic programme over heights on the coarsest step that all
// heights share (1/4 in, 5 mm); it fails where they share none that is coarse
// enough, and unless every field is within its range. Weights are compared to
// the nearest 20 g. Source: the rules are geometry and 30 TAC 285.38(d) (riser
// inside size at least the port); the method is the usual bounded knapsack.
func StackOf(rings []Ring, need Need) (Stacks, error) {
	if err := validateStack(rings, need); err != nil {
		return Stacks{}, err
	}
	out := Stacks{Need: need, Cautions: manway.HeavyLift | manway.GuardHole | manway.LocalCode | manway.FingersAndFeet}
	s := newSearch(rings, need)
	out.Unused, out.Assumed = s.unused, s.assumed
	if s.cells() > maxCells {
		return Stacks{}, manway.InputErrors{{Field: "rings", Value: fmt.Sprintf("heights on a common step of %.6g mm", float64(s.step)*unit*1000), Want: "heights, cuts and joint on a coarser common step, such as 1/8 in or 1 mm"}}
	}
	lo, hi := s.window()
	var found []found
	found, out.Feasible, out.AtLeast = s.run(lo, hi, bestStacks)
	for _, f := range found {
		out.Best = append(out.Best, s.stack(f))
	}
	if len(found) > 0 {
		return out, nil
	}
	below, above := s.nearest(lo, hi)
	for _, total := range []int{below, above} {
		if total >= 0 {
			if f, _, _ := s.run(total, total, 1); len(f) > 0 {
				out.Nearest = append(out.Nearest, s.stack(f[0]))
			}
		}
	}
	return out, nil
}

func validateStack(rings []Ring, need Need) error {
	var faults manway.InputErrors
	manway.Within(&faults, "rings", len(rings), 0, 200)
	for i, r := range rings {
		r.validate(&faults, "rings["+strconv.Itoa(i)+"]")
	}
	manway.Within(&faults, "need.Port", need.Port, 6*manway.Inch, 10*manway.Foot)
	manway.Within(&faults, "need.Gap", need.Gap, 0, 20*manway.Foot)
	manway.Within(&faults, "need.Below", need.Below, 0, 2*manway.Foot)
	manway.Within(&faults, "need.Above", need.Above, 0, 2*manway.Foot)
	manway.Within(&faults, "need.Joint", need.Joint, 0, 2*manway.Inch)
	manway.Within(&faults, "need.Covers", len(need.Covers), 0, 100)
	for i, c := range need.Covers {
		at := "need.Covers[" + strconv.Itoa(i) + "]."
		manway.Within(&faults, at+"Fits", c.Fits, 6*manway.Inch, 10*manway.Foot)
		manway.Within(&faults, at+"Stands", c.Stands, 0, manway.Foot)
		manway.Within(&faults, at+"Mass", c.Mass, 0, 3*manway.Tonne)
		if c.Cost < 0 || c.Cost > 4000000 {
			faults.Add(at+"Cost", strconv.FormatInt(c.Cost, 10), "0 to 4000000 in the smallest unit of the currency")
		}
	}
	return faults.Err()
}

// Missing says what is wanting where no stack is within tolerance, empty where
// one is.
func (s Stacks) Missing(sys manway.System) string {
	switch {
	case len(s.Best) > 0:
		return ""
	case len(s.Nearest) == 0:
		return "no ring and cover in the list can stand on this port"
	}
	text := ""
	for _, n := range s.Nearest {
		if text != "" {
			text += "; "
		}
		if n.Off < 0 {
			text += "the nearest below is " + (-n.Off).Text(sys) + " short"
		} else {
			text += "the nearest above is " + n.Off.Text(sys) + " too high"
		}
	}
	return text
}

// String is the pieces bottom up: 2 x ring-24x12 + 1 x ring-24x4.
func (s Stack) String() string {
	if len(s.Pieces) == 0 {
		return "no ring"
	}
	pieces := make([]string, len(s.Pieces))
	for i, p := range s.Pieces {
		pieces[i] = strconv.Itoa(p.Count) + " x " + p.Code
		if p.Cut {
			pieces[i] += " cut to " + p.Height.String()
		}
	}
	return strings.Join(pieces, " + ")
}

// Working is the sum of the heights of one stack.
func (s Stack) Working(need Need, sys manway.System) manway.Working {
	numbers, last := "", "0"
	for _, p := range s.Pieces {
		if numbers != "" {
			numbers += " + "
		}
		numbers += strconv.Itoa(p.Count) + " x (" + p.Height.Text(sys) + " + " + need.Joint.Text(sys) + ")"
	}
	if s.Cover >= 0 && s.Cover < len(need.Covers) {
		last = need.Covers[s.Cover].Stands.Text(sys)
	}
	if numbers == "" {
		numbers = "0"
	}
	return manway.Working{
		{Symbol: "total", Formula: "sum of (ring + joint) + cover standing on them", Numbers: numbers + " + " + last, Value: s.Total.Text(sys)},
		{Symbol: "off", Formula: "total - gap", Numbers: s.Total.Text(sys) + " - " + need.Gap.Text(sys), Value: s.Off.Text(sys)},
	}
}

// Basis is where the rules of a stack come from.
func (Stacks) Basis() []manway.Citation {
	return []manway.Citation{{Source: texas285, Place: "285.38(d)(1)-(2)"}, {Source: statics, Place: "sum of heights"}}
}

// all reports whether the stack has rings and all are of plastic, or of concrete.
func (s Stack) all(plastic bool) bool {
	for _, p := range s.Pieces {
		if p.Plastic != plastic {
			return false
		}
	}
	return len(s.Pieces) > 0
}

// total is the height of pieces and cover.
func (s Stack) total(need Need) manway.Length {
	var h float64
	for _, p := range s.Pieces {
		h += float64(p.Count) * float64(p.Height+need.Joint)
	}
	if s.Cover >= 0 {
		h += float64(need.Covers[s.Cover].Stands)
	}
	if math.Abs(h-float64(need.Gap)) < 1e-9 {
		return need.Gap
	}
	return manway.Length(h)
}
