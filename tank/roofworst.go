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

// clip appends the part of a pressed rectangle that is on the slab, if any. Where
// it lies half over an opening, what stands on the lid goes to the rim beside it:
// all of it presses on the part that is on the slab. Where its middle is over the
// opening it is left to the place beside.
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
// held down all round (the only one that has them), on the coarse mesh of the
// screening: they rank places, and do not measure. The few worst places are then
// solved on the slab that can lift off.
type search struct {
	p      *piece
	solver *plate.Solver
	in     plate.Surfaces
	step   plate.Point // half the way to the next point of the net
	loads  []plate.Load
}

// The net of places looked at first.
const netX, netY = 7, 5

func newSearch(p *piece, solver *plate.Solver) *search {
	return &search{p: p, solver: solver, step: plate.Point{X: p.slab.Length / (2 * netX), Y: p.slab.Width / (2 * netY)}}
}

// look is a point whose moments are watched and the places from which a load
// may do most there.
type look struct {
	of    plate.Point
	reach [][2]float64 // of the load's middle from the point: in its half sides, outwards
	spans bool         // over an inner support: loads in the middles of the spans
	rim   *plate.Point // of an opening: a load may stand half over it
}

// under is a load standing on the point, beside one flush with an edge.
var (
	under  = [][2]float64{{0, 0}}
	flushX = [][2]float64{{1, 0}, {1, -1}, {1, 1}}
	flushY = [][2]float64{{0, 1}, {-1, 1}, {1, 1}}
)

// onRim is how far outside the rim a load stands that is half over it.
const onRim = 1e-3

// mirrored reports whether the slab, its openings and so what rests there are the
// same on both sides of the middle of the width.
func (w *search) mirrored() bool {
	s := &w.p.slab
	for _, o := range s.Openings {
		middle := o.Y
		if o.Diameter == 0 {
			middle += o.Width / 2
		}
		if math.Abs(middle-s.Width/2) > 1e-9*s.Width {
			return false
		}
	}
	return len(s.Zones) == 0
}

// looks are an even net, the lines of inner supports, and the rims of the
// openings half a thickness outside them: corners and middles of the sides. Of a
// slab that is its own mirror image one half is looked at.
func (w *search) looks() []look {
	mirrored := w.mirrored()
	rows := netY
	if mirrored {
		rows = (netY + 1) / 2
	}
	list := make([]look, 0, netX*netY+netY*len(w.p.slab.Lines)+8*len(w.p.slab.Openings))
	for i := range netX {
		for j := range rows {
			list = append(list, look{of: plate.Point{X: w.step.X * float64(2*i+1), Y: w.step.Y * float64(2*j+1)}, reach: under})
		}
	}
	for _, l := range w.p.slab.Lines {
		for j := range rows {
			list = append(list, look{of: plate.Point{X: l.At, Y: w.step.Y * float64(2*j+1)}, spans: true})
		}
	}
	out := w.p.slab.Thickness / 2
	for _, o := range w.p.slab.Openings {
		cx, cy, rx, ry := o.X, o.Y, o.Diameter/2, o.Diameter/2
		corner := math.Sqrt2 / 2
		if o.Diameter == 0 {
			cx, cy, rx, ry, corner = o.X+o.Length/2, o.Y+o.Width/2, o.Length/2, o.Width/2, 1
		}
		for k := range 8 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 4)
			sx, sy := sign(cos), sign(sin)
			if mirrored && sy < 0 {
				continue
			}
			diagonal := sx != 0 && sy != 0
			outside := func(out float64) plate.Point {
				if diagonal {
					return plate.Point{X: cx + sx*(corner*rx+out*math.Sqrt2/2), Y: cy + sy*(corner*ry+out*math.Sqrt2/2)}
				}
				return plate.Point{X: cx + sx*(rx+out), Y: cy + sy*(ry+out)}
			}
			rim := outside(onRim)
			reach := flushX
			switch {
			case diagonal:
				reach = [][2]float64{{sx, sy}, {sx, -sy}, {-sx, sy}, {sx, 0}, {0, sy}}
			case sx == 0:
				reach = flushY
			}
			if sx < 0 && sy == 0 || sy < 0 && sx == 0 {
				reach = [][2]float64{{-reach[0][0], -reach[0][1]}, {-reach[1][0], -reach[1][1]}, {-reach[2][0], -reach[2][1]}}
			}
			list = append(list, look{of: outside(out), reach: reach, rim: &rim})
		}
	}
	return list
}

// sign is -1, 0 or 1 for a sine or cosine of an eighth of a turn.
func sign(v float64) float64 { return math.Round(v * 1.2) }

// places are where a load may stand for a look.
func (w *search) places(l look, m *moving) []standing {
	var list []standing
	turns := 1
	if m.pair > 0 || m.along != m.across {
		turns = 2
	}
	for turn := range turns {
		lx, ly := m.along/2, m.across/2
		if turn == 1 {
			lx, ly = ly, lx
		}
		for _, r := range l.reach {
			list = append(list, standing{plate.Point{X: l.of.X + r[0]*lx, Y: l.of.Y + r[1]*ly}, turn == 1})
		}
		if l.rim != nil {
			list = append(list, standing{*l.rim, turn == 1})
		}
		if l.spans {
			for _, part := range [...]float64{0.35, 0.5, 0.65} {
				list = append(list,
					standing{plate.Point{X: (1 - part) * l.of.X, Y: l.of.Y}, turn == 1},
					standing{plate.Point{X: l.of.X + part*(w.p.slab.Length-l.of.X), Y: l.of.Y}, turn == 1})
			}
		}
	}
	return list
}

// influence makes the surfaces of a point; false where it has none.
func (w *search) influence(at plate.Point) bool {
	return onSlab(&w.p.slab, at.X, at.Y) && w.solver.Surfaces(&w.in, at) == nil
}

// use is what the load standing there, with a dead moment, makes of the strength
// at the point of the present surfaces: the mean of each surface over the
// pressed rectangles, from four points of each.
func (w *search) use(of plate.Point, m *moving, at standing, dead plate.Moment) float64 {
	w.loads = m.put(w.loads[:0], &w.p.slab, at, 1)
	var live plate.Moment
	for _, l := range w.loads {
		p, ok := l.(plate.Patch)
		if !ok {
			continue
		}
		var sum plate.Moment
		on := 0.0 // points that are not over an opening: they carry all
		for _, q := range [...][2]float64{{-gaussPoint, -gaussPoint}, {-gaussPoint, gaussPoint}, {gaussPoint, -gaussPoint}, {gaussPoint, gaussPoint}} {
			point := plate.Point{X: p.X + q[0]*p.Length, Y: p.Y + q[1]*p.Width}
			if !onSlab(&w.p.slab, point.X, point.Y) {
				continue
			}
			v := w.in.At(point)
			sum.X, sum.Y, sum.XY = sum.X+v.X, sum.Y+v.Y, sum.XY+v.XY
			on++
		}
		if on > 0 {
			live.X += p.Force / on * sum.X
			live.Y += p.Force / on * sum.Y
			live.XY += p.Force / on * sum.XY
		}
	}
	f := manway.DeadLive.Factors()
	all := measuresOf(plate.Moment{
		X: f.Dead*dead.X + f.Live*live.X, Y: f.Dead*dead.Y + f.Live*live.Y, XY: f.Dead*dead.XY + f.Live*live.XY,
	})
	s := strengthAt(of, &w.p.strength, w.p.zones)
	most := 0.0
	for face := range 2 {
		if face == outsideFace && !w.p.overPartition(of) {
			continue
		}
		for dir := range 2 {
			m, capacity := s.measured(face, dir)
			most = math.Max(most, m.of(&all, insideFace)/capacity)
		}
	}
	return most
}

// most is how many places of each load, rolling each way, are solved in full.
const most = 3

// gaussPoint is the place of the two Gauss points in a side, from its middle.
const gaussPoint = 0.288675

// best are the worst places by influence of a load rolling one way, worst first,
// no two of them within the next point of the net.
type best struct {
	at  [most]standing
	use [most]float64
	n   int
}

// keep takes a place in where it belongs. A place that does the same to nine
// digits as one that is in already is its mirror image, and is left out.
func (b *best) keep(at standing, use float64, apart plate.Point) {
	for i := range b.n {
		if math.Abs(b.use[i]-use) <= 1e-9*use {
			return
		}
		if a := b.at[i]; math.Abs(a.X-at.X) < 2*apart.X && math.Abs(a.Y-at.Y) < 2*apart.Y {
			if use <= b.use[i] {
				return
			}
			copy(b.at[i:], b.at[i+1:b.n])
			copy(b.use[i:], b.use[i+1:b.n])
			b.n--
			break
		}
	}
	i := b.n
	for i > 0 && b.use[i-1] < use {
		i--
	}
	if i == most {
		return
	}
	b.n = min(b.n+1, most)
	copy(b.at[i+1:b.n], b.at[i:])
	copy(b.use[i+1:b.n], b.use[i:])
	b.at[i], b.use[i] = at, use
}

// worst finds the worst places of each load beside what rests there, rolling
// along and across.
func (w *search) worst(list []moving, dead *plate.Field) [][2]best {
	found := make([][2]best, len(list))
	for _, l := range w.looks() {
		if !w.influence(l.of) {
			continue
		}
		v, _ := dead.MomentAt(l.of.X, l.of.Y)
		for k := range list {
			for _, at := range w.places(l, &list[k]) {
				if onSlab(&w.p.slab, at.X, at.Y) {
					way := &found[k][0]
					if at.turned {
						way = &found[k][1]
					}
					way.keep(at, w.use(l.of, &list[k], at, v), w.step)
				}
			}
		}
	}
	return found
}

// nudge moves a load about a place to where it does more at a point, if anywhere.
func (w *search) nudge(of plate.Point, at standing, m *moving) (standing, bool) {
	if !w.influence(of) {
		return at, false
	}
	place, use := at, w.use(of, m, at, plate.Moment{})
	for _, dx := range [...]float64{-0.6, 0, 0.6} {
		for _, dy := range [...]float64{-0.6, 0, 0.6} {
			to := plate.Point{X: at.X + dx*w.step.X, Y: at.Y + dy*w.step.Y}
			if !onSlab(&w.p.slab, to.X, to.Y) {
				continue
			}
			for _, turned := range [...]bool{false, true} {
				if u := w.use(of, m, standing{to, turned}, plate.Moment{}); u > use*1.001 {
					place, use = standing{to, turned}, u
				}
			}
		}
	}
	return place, place != at
}
