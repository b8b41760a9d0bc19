package tank

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
)

// moving is a load that may stand anywhere on a roof: a wheel of an axle, or a
// person.
type moving struct {
	name   string
	wheel  manway.Wheel
	on     soil.Contact
	along  float64 // sides of the rectangle under a wheel that rolls along the tank, m
	across float64
	pair   float64 // to the other wheel of the axle; 0: there is none to count
	source manway.Citation
}

// movingOf is a wheel under a cover by the bridge code's rule.
func movingOf(w manway.Wheel, cover manway.Length) (moving, error) {
	on, err := soil.AASHTO.Wheel(w, cover)
	if err != nil {
		return moving{}, err
	}
	m := moving{name: w.Name, wheel: w, on: on, along: float64(on.Length), across: float64(on.Width), source: w.Source}
	if on.Wheels == 1 {
		m.pair = float64(w.Gauge)
	}
	return m, nil
}

// standing is where a moving load stands: its centre, and whether it rolls
// across the tank.
type standing struct {
	plate.Point
	turned bool
}

// put appends the load standing at a place, times a factor: its own rectangle
// and that of the other wheel of the axle, on the side where the slab is
// wider. What reaches beyond the slab presses on the ground beside it.
func (m *moving) put(list []plate.Load, s *plate.Slab, at standing, factor float64) []plate.Load {
	lx, ly := m.along, m.across
	if at.turned {
		lx, ly = ly, lx
	}
	pressure := factor * float64(m.on.Pressure)
	list = clip(list, s, at.X, at.Y, lx, ly, pressure)
	if m.pair == 0 {
		return list
	}
	x, y := at.X, at.Y
	if at.turned {
		x += math.Copysign(m.pair, s.Length/2-x)
	} else {
		y += math.Copysign(m.pair, s.Width/2-y)
	}
	return clip(list, s, x, y, lx, ly, pressure)
}

// clip appends the part of a pressed rectangle that is on the slab, if any; a
// part that lies wholly over an opening bears on its lid, and is left to the
// place beside it.
func clip(list []plate.Load, s *plate.Slab, x, y, lx, ly, pressure float64) []plate.Load {
	x0, x1 := math.Max(x-lx/2, 0), math.Min(x+lx/2, s.Length)
	y0, y1 := math.Max(y-ly/2, 0), math.Min(y+ly/2, s.Width)
	if x1-x0 < 1e-3 || y1-y0 < 1e-3 || !onSlab(s, (x0+x1)/2, (y0+y1)/2) {
		return list
	}
	return append(list, plate.Patch{X: (x0 + x1) / 2, Y: (y0 + y1) / 2, Length: x1 - x0, Width: y1 - y0, Force: pressure * (x1 - x0) * (y1 - y0)})
}

// onSlab reports whether a point is on the slab and in none of its openings.
func onSlab(s *plate.Slab, x, y float64) bool {
	if x < 0 || y < 0 || x > s.Length || y > s.Width {
		return false
	}
	for _, o := range s.Openings {
		if o.Diameter > 0 && math.Hypot(x-o.X, y-o.Y) < o.Diameter/2 ||
			o.Diameter == 0 && x > o.X && x < o.X+o.Length && y > o.Y && y < o.Y+o.Width {
			return false
		}
	}
	return true
}

// search finds where moving loads do most, by influence surfaces of the slab
// held down all round (the only one that has them), on a coarse mesh. The place
// found is then solved on the slab that can lift off.
type search struct {
	slab   plate.Slab
	solver plate.Solver
	in     [2]plate.Influence // of the moments along and across
	weight [2][2]float64      // 1 over the strength, by face and direction
	loads  []plate.Load
}

// searchMesh is coarse: it ranks places, and does not measure.
const searchMesh = 1.4

func newSearch(slab plate.Slab, s *strength) (*search, error) {
	slab.BearingOnly = false
	w := &search{slab: slab}
	for face := range 2 {
		for dir := range 2 {
			st := s.bend[face][dir]
			w.weight[face][dir] = 1 / st.AsPlain
			if st.Design > 0 {
				w.weight[face][dir] = 1 / st.Design
			}
		}
	}
	return w, w.solver.Factor(&w.slab, plate.Mesh{Scale: searchMesh})
}

// points are the places looked at first: an even net, the lines of inner
// supports, and the rims of the openings half a thickness outside them.
func (w *search) points() []plate.Point {
	const nx, ny = 7, 5
	list := make([]plate.Point, 0, nx*ny+8*len(w.slab.Openings))
	for i := range nx {
		for j := range ny {
			list = append(list, plate.Point{X: w.slab.Length * (float64(i) + 0.5) / nx, Y: w.slab.Width * (float64(j) + 0.5) / ny})
		}
	}
	for _, l := range w.slab.Lines {
		for j := range ny {
			list = append(list, plate.Point{X: l.At, Y: w.slab.Width * (float64(j) + 0.5) / ny})
		}
	}
	for _, o := range w.slab.Openings {
		out := w.slab.Thickness / 2
		cx, cy, rx, ry := o.X, o.Y, o.Diameter/2+out, o.Diameter/2+out
		if o.Diameter == 0 {
			cx, cy, rx, ry = o.X+o.Length/2, o.Y+o.Width/2, o.Length/2+out, o.Width/2+out
		}
		for k := range 8 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 4)
			list = append(list, plate.Point{X: cx + rx*cos, Y: cy + ry*sin})
		}
	}
	return list
}

// influence makes the two surfaces of a point; false where it has none.
func (w *search) influence(at plate.Point) bool {
	return onSlab(&w.slab, at.X, at.Y) &&
		w.solver.Influence(&w.in[0], plate.MomentX, at) == nil && w.solver.Influence(&w.in[1], plate.MomentY, at) == nil
}

// use is the greater of the two moments, by strength, that the load standing
// there makes at the point of the present surfaces: sagging, and over inner
// supports hogging too.
func (w *search) use(m *moving, at standing) float64 {
	w.loads = m.put(w.loads[:0], &w.slab, at, 1)
	if len(w.loads) == 0 {
		return 0
	}
	most := 0.0
	for dir := range 2 {
		v, err := w.in[dir].Under(w.loads)
		if err == nil {
			most = math.Max(most, v*w.weight[insideFace][dir])
			if len(w.slab.Lines) > 0 {
				most = math.Max(most, -v*w.weight[outsideFace][dir])
			}
		}
	}
	return most
}

// best is a place found, and the point where it does most.
type best struct {
	at  standing
	of  plate.Point
	use float64
}

// worst finds the worst place of each load: first the point of the net whose
// surfaces answer most to the load standing on it, then finer nets round it for
// point and load together, then the load alone, rolling along and across.
func (w *search) worst(list []moving) []best {
	found := make([]best, len(list))
	try := func(k int, of plate.Point, at standing) {
		if u := w.use(&list[k], at); u > found[k].use {
			found[k] = best{at, of, u}
		}
	}
	for _, p := range w.points() {
		if !w.influence(p) {
			continue
		}
		for k := range list {
			try(k, p, standing{p, false})
			if len(w.slab.Lines) > 0 { // hogging comes from the middle of a span
				for _, to := range w.beside(p) {
					try(k, p, standing{to, false})
				}
			}
		}
	}
	step := plate.Point{X: w.slab.Length / 14, Y: w.slab.Width / 10}
	for k := range list {
		for _, finer := range [...]float64{1, 0.5} {
			middle := found[k].of
			for d := range 8 {
				sin, cos := math.Sincos(float64(d) * math.Pi / 4)
				p := plate.Point{X: middle.X + finer*step.X*math.Round(cos*1.4), Y: middle.Y + finer*step.Y*math.Round(sin*1.4)}
				if w.influence(p) {
					try(k, p, standing{p, false})
					try(k, p, standing{p, true})
				}
			}
		}
		if w.influence(found[k].of) {
			w.shift(k, try, found)
		}
	}
	return found
}

// beside are the middles of the two spans beside a point of an inner support,
// none for another point.
func (w *search) beside(p plate.Point) []plate.Point {
	for _, l := range w.slab.Lines {
		if l.At == p.X {
			return []plate.Point{{X: 0.55 * l.At, Y: p.Y}, {X: l.At + 0.45*(w.slab.Length-l.At), Y: p.Y}}
		}
	}
	return nil
}

// shift moves the load alone about the point that answers most.
func (w *search) shift(k int, try func(int, plate.Point, standing), found []best) {
	of, at := found[k].of, found[k].at
	for _, dx := range [...]float64{-0.5, 0, 0.5} {
		for _, dy := range [...]float64{-0.5, 0, 0.5} {
			p := plate.Point{X: at.X + dx*w.slab.Length/14, Y: at.Y + dy*w.slab.Width/10}
			if onSlab(&w.slab, p.X, p.Y) {
				try(k, of, standing{p, false})
				try(k, of, standing{p, true})
			}
		}
	}
}
