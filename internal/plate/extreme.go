package plate

import "math"

// Extreme is the largest or smallest value of a quantity and where it is.
type Extreme struct {
	Value float64
	At    Point
}

// Extremes are the largest values in the slab under one load case. Moments within
// half the slab's thickness of a singular point are left out, where those of
// thin-plate theory have no limit: the corner of a rectangular opening, a point
// support, the corner where a clamped edge meets a free one, and the end of a
// support on the rim of a round opening.
type Extremes struct {
	W, Rise      Extreme // largest deflection downwards; upwards (0 or less)
	MxMax, MxMin Extreme
	MyMax, MyMin Extreme
	MxyMax       Extreme // largest twisting moment by size, with its sign
	Sag, Hog     Extreme // largest first and smallest second principal moment
}

// Governing is the principal moment that is largest by size.
func (e *Extremes) Governing() Extreme {
	if -e.Hog.Value > e.Sag.Value {
		return e.Hog
	}
	return e.Sag
}

// Extremes searches the slab: the corners, sides and middles of the cells, the
// rims of round openings, and the circles round singular points; the deflections
// from there to the top between those places.
func (f *Field) Extremes() (e Extremes) {
	s := f.solver
	if s == nil {
		return e
	}
	s.findSpots()
	for k := range s.spots {
		at := &s.spots[k]
		e.Take(at.Point, Value{f.deflectionAt(at), f.momentAt(at)}, k == 0)
	}
	if len(s.spots) > 0 {
		f.climb(&e.W, 1)
		f.climb(&e.Rise, -1)
	}
	return e
}

// climb moves a deflection, times sign, to the top beside it: to the highest of
// the four points round it, which come nearer when none is higher.
func (f *Field) climb(e *Extreme, sign float64) {
	const nearest = 1.0 / 256 // of a cell: the top is flat, so what is left is below 1e-5
	slab := &f.solver.slab
	nx, ny := f.solver.Cells()
	dx, dy := slab.Length/float64(nx)/4, slab.Width/float64(ny)/4
	for step, moves := 1.0, 0; step > nearest && moves < 64; {
		from := *e
		for _, p := range [4]Point{{from.At.X - step*dx, from.At.Y}, {from.At.X + step*dx, from.At.Y},
			{from.At.X, from.At.Y - step*dy}, {from.At.X, from.At.Y + step*dy}} {
			if v, ok := f.At(p.X, p.Y); ok && sign*v.W > sign*e.Value+1e-7*math.Abs(e.Value) {
				*e = Extreme{v.W, p}
			}
		}
		if moves++; e.At == from.At {
			step /= 2
		}
	}
}

// Take counts one more point in; the first sets every value.
func (e *Extremes) Take(p Point, v Value, first bool) {
	m1, m2 := v.M.bounds()
	if first {
		*e = Extremes{Extreme{v.W, p}, Extreme{v.W, p}, Extreme{v.M.X, p}, Extreme{v.M.X, p}, Extreme{v.M.Y, p},
			Extreme{v.M.Y, p}, Extreme{v.M.XY, p}, Extreme{m1, p}, Extreme{m2, p}}
		return
	}
	e.W.raise(v.W, p)
	e.Rise.drop(v.W, p)
	e.MxMax.raise(v.M.X, p)
	e.MxMin.drop(v.M.X, p)
	e.MyMax.raise(v.M.Y, p)
	e.MyMin.drop(v.M.Y, p)
	if math.Abs(v.M.XY) > math.Abs(e.MxyMax.Value)*(1+tie) {
		e.MxyMax = Extreme{v.M.XY, p}
	}
	e.Sag.raise(m1, p)
	e.Hog.drop(m2, p)
}

// Ties go to the place found first: a value counts as larger only beyond rounding.
const tie = 1e-9

func (e *Extreme) raise(v float64, at Point) {
	if v > e.Value+tie*math.Abs(e.Value) {
		*e = Extreme{v, at}
	}
}

func (e *Extreme) drop(v float64, at Point) {
	if v < e.Value-tie*math.Abs(e.Value) {
		*e = Extreme{v, at}
	}
}
