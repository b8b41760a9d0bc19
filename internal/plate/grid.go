package plate

import (
	"math"
	"slices"
)

// Mesh says how finely to divide the slab.
type Mesh struct {
	// Scale multiplies every cell size of the graded grid; 0 means 1, the
	// coarsest that is any use; 0.05 to 10. It is not used when Cells is set.
	Scale float64
	// Cells divides the slab evenly into that many cells along x and y (and
	// more where lines of the grid must meet openings or supports). Each is at
	// most 256; both are 0 for the graded grid.
	Cells [2]int
	// Near lists rectangles, such as wheel patches, to be finely divided.
	Near []Rect
}

func (m Mesh) check() error {
	var f Faults
	if m.Scale != 0 && !(m.Scale >= 0.05 && m.Scale <= 10) {
		f.add("Mesh.Scale", m.Scale, "0.05 to 10")
	}
	if (m.Cells[0] == 0) != (m.Cells[1] == 0) {
		f.add("Mesh.Cells", float64(m.Cells[0]), "cells both ways, or none")
	}
	for _, n := range m.Cells {
		if n < 0 || n > 256 {
			f.add("Mesh.Cells", float64(n), "0 to 256")
		}
	}
	for _, r := range m.Near {
		f.between("Mesh.Near.X0", r.X0, -largest, largest)
		f.between("Mesh.Near.X1", r.X1, r.X0, largest)
		f.between("Mesh.Near.Y0", r.Y0, -largest, largest)
		f.between("Mesh.Near.Y1", r.Y1, r.Y0, largest)
	}
	if len(f) > 0 {
		return f
	}
	return nil
}

// feature is a coordinate near which cells are to be small.
type feature struct{ at, size float64 }

// axisGrid is the division of one direction.
type axisGrid struct {
	lines   []float64 // coordinates of the grid lines
	barrier []bool    // lines across which moments are not smooth
	forms   []forms   // of each interval
	gauss   []float64 // two Gauss points an interval
	shapes  []shapes  // at the Gauss points
	scale   [][4]float64
	halves  []stencil // at the start, middle and end of each interval

	breaks   []float64
	barriers []float64
	features []feature
}

const growth = 0.5 // how fast cells may grow away from a feature

// reset starts a new axis of the given length.
func (a *axisGrid) reset(length float64) {
	a.breaks = append(a.breaks[:0], 0, length)
	a.barriers = a.barriers[:0]
	a.features = a.features[:0]
}

// snap makes c a grid line when it lies inside the axis.
func (a *axisGrid) snap(c float64, barrier bool) {
	length := a.breaks[1]
	if !(c > 0 && c < length) {
		return
	}
	a.breaks = append(a.breaks, c)
	if barrier {
		a.barriers = append(a.barriers, c)
	}
}

func (a *axisGrid) near(c, size float64) { a.features = append(a.features, feature{c, size}) }

// size is the wanted cell size at c.
func (a *axisGrid) size(c, base float64) float64 {
	h := base
	for _, f := range a.features {
		h = math.Min(h, f.size+growth*math.Abs(c-f.at))
	}
	return h
}

// divide places the grid lines: each interval between breaks gets the number of
// cells that the wanted sizes ask for, spread in proportion to them.
func (a *axisGrid) divide(base, scale float64, graded bool) {
	length := a.breaks[1]
	slices.Sort(a.breaks)
	same := 1e-9 * length
	a.lines = append(a.lines[:0], 0)
	last := 0.0
	for _, b := range a.breaks[1:] {
		if b-last < same {
			continue
		}
		if length-b < same {
			b = length
		}
		a.fill(last, b, base, scale, graded)
		last = b
	}
	n := len(a.lines) - 1
	a.barrier = zeroed(a.barrier, n+1)
	for i, c := range a.lines {
		for _, b := range a.barriers {
			if math.Abs(b-c) < same {
				a.barrier[i] = true
			}
		}
	}
	a.forms = resize(a.forms, n)
	a.gauss = resize(a.gauss, 2*n)
	a.shapes = resize(a.shapes, 2*n)
	for i := range n {
		h := a.lines[i+1] - a.lines[i]
		a.forms[i] = intervalForms(h)
		for g, xi := range gauss2 {
			a.gauss[2*i+g] = a.lines[i] + h*xi
			sh := &a.shapes[2*i+g]
			sh.n, sh.d, sh.dd = hermite(xi, h)
		}
	}
	a.lagrange()
	a.halves = resize(a.halves, 3*n)
	for k := range a.halves {
		i := k / 3
		a.halves[k] = a.stencilAt(i, a.lines[i]+float64(k%3)/2*(a.lines[i+1]-a.lines[i]))
	}
}

// fill appends the lines after lo up to hi.
func (a *axisGrid) fill(lo, hi, base, scale float64, graded bool) {
	const parts = 48
	var sum [parts + 1]float64 // cells wanted from lo to each sample
	step := (hi - lo) / parts
	for i := range parts {
		h := base
		if graded {
			h = a.size(lo+(float64(i)+0.5)*step, base)
		}
		sum[i+1] = sum[i] + step/(h*scale)
	}
	n := max(1, int(math.Ceil(sum[parts]-0.01)))
	j := 0
	for k := 1; k < n; k++ {
		want := sum[parts] * float64(k) / float64(n)
		for sum[j+1] < want {
			j++
		}
		a.lines = append(a.lines, lo+step*(float64(j)+(want-sum[j])/(sum[j+1]-sum[j])))
	}
	a.lines = append(a.lines, hi)
}

// cells is the number of intervals.
func (a *axisGrid) cells() int { return len(a.lines) - 1 }

// find is the interval that holds c (the one on the left, where c is a line).
func (a *axisGrid) find(c float64) int {
	i, _ := slices.BinarySearch(a.lines, c)
	return min(max(i-1, 0), a.cells()-1)
}

// index is the number of the grid line at c.
func (a *axisGrid) index(c float64) int {
	i := a.find(c)
	if c-a.lines[i] < a.lines[i+1]-c {
		return i
	}
	return i + 1
}

// makeGrid divides both directions of the slab.
func (s *Solver) makeGrid(m Mesh) {
	slab := &s.slab
	s.x.reset(slab.Length)
	s.y.reset(slab.Width)
	base := math.Min(slab.Length, slab.Width) / 6
	base = math.Max(base, math.Max(slab.Length, slab.Width)/40)
	for i := range slab.Openings {
		s.markOpening(slab.Openings[i], base)
	}
	for _, l := range slab.Lines {
		a := s.axis(l.Axis)
		a.snap(l.At, true)
		a.near(l.At, base/2)
	}
	for _, p := range slab.Points {
		s.markPoint(p, base)
	}
	for _, z := range slab.Zones {
		for _, c := range [2]float64{z.X0, z.X1} {
			s.x.snap(c, true)
			s.x.near(c, base/2)
		}
		for _, c := range [2]float64{z.Y0, z.Y1} {
			s.y.snap(c, true)
			s.y.near(c, base/2)
		}
	}
	for _, r := range m.Near {
		size := math.Max(math.Min(r.X1-r.X0, r.Y1-r.Y0)/2, base/20)
		s.x.near((r.X0+r.X1)/2, size)
		s.y.near((r.Y0+r.Y1)/2, size)
	}
	if m.Cells[0] > 0 && m.Cells[1] > 0 {
		s.x.divide(slab.Length/float64(m.Cells[0]), 1, false)
		s.y.divide(slab.Width/float64(m.Cells[1]), 1, false)
		return
	}
	scale := m.Scale
	if !(scale > 0) {
		scale = 1
	}
	s.x.divide(base, scale, true)
	s.y.divide(base, scale, true)
}

// markOpening snaps the grid to an opening and asks for small cells round it.
func (s *Solver) markOpening(o Opening, base float64) {
	b := o.bounds()
	round := o.Diameter > 0
	for axis, span := range [2][2]float64{{b.X0, b.X1}, {b.Y0, b.Y1}} {
		a, side := s.axis(Axis(axis)), span[1]-span[0]
		size := math.Min(side/6, base/2)
		if !round { // moments are read half a thickness from the corner
			size = math.Max(math.Min(s.slab.Thickness/3, side/3), side/32)
			size = math.Min(size, base/2)
		}
		for _, c := range span {
			a.snap(c, true)
			if c > 0 && c < a.breaks[1] {
				a.near(c, size)
			}
		}
		if round {
			mid := (span[0] + span[1]) / 2
			a.snap(mid, false)
			a.near(mid, size)
		}
	}
}

// markPoint snaps the grid to a point support.
func (s *Solver) markPoint(p Point, base float64) {
	size := math.Max(s.slab.Thickness/2, base/6)
	s.x.snap(p.X, true)
	s.y.snap(p.Y, true)
	s.x.near(p.X, size)
	s.y.near(p.Y, size)
}

func (s *Solver) axis(a Axis) *axisGrid {
	if a == X {
		return &s.x
	}
	return &s.y
}
