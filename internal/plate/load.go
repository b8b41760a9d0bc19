package plate

import (
	"fmt"
	"math"
)

// A Load is one of Uniform, Linear, Liquid, Patch, Segment and Ring. Loads act
// downwards, the way deflections are positive.
type Load interface {
	check(s *Slab, name string, f *Faults)
	apply(l *loader)
}

// Uniform is a pressure on the whole slab, Pa.
type Uniform struct{ Pressure float64 }

// Linear is a pressure on the whole slab that varies evenly:
// At0 + PerX x + PerY y, in Pa and Pa/m. It may change sign.
type Linear struct{ At0, PerX, PerY float64 }

// Liquid is the pressure UnitWeight (Level - y) below y = Level, nothing above:
// a wall panel that stands on y = 0 with liquid, or soil, against it.
type Liquid struct {
	Level      float64 // m
	UnitWeight float64 // N/m3; times the earth pressure coefficient for soil
}

// Patch is a force spread evenly over a rectangle by its centre: a wheel, a
// person. Where the rectangle overlaps an opening or the edge, the whole force is
// spread over the part of it that is on the slab.
type Patch struct{ X, Y, Length, Width, Force float64 }

// Segment is a force per length along a straight line, N/m.
type Segment struct {
	From, To  Point
	PerLength float64
}

// Ring is a force per length round opening number Opening, on its rim moved
// outwards by Offset (with square corners if it is a rectangle): a riser that
// stands there.
type Ring struct {
	Opening   int
	Offset    float64 // m
	PerLength float64 // N/m
}

// CheckLoads reports every fault of the loads at once, as Faults.
func (s *Slab) CheckLoads(loads []Load) error {
	var f Faults
	for i, l := range loads {
		name := fmt.Sprintf("Loads[%d]", i)
		if l == nil {
			f.add(name, 0, "a load")
			continue
		}
		l.check(s, name, &f)
	}
	return f.err()
}

func (f *Faults) number(field string, v float64) {
	if !finite(v) {
		f.add(field, v, "a number")
	}
}

func (u Uniform) check(_ *Slab, name string, f *Faults) { f.number(name+".Pressure", u.Pressure) }

func (l Linear) check(_ *Slab, name string, f *Faults) {
	f.number(name+".At0", l.At0)
	f.number(name+".PerX", l.PerX)
	f.number(name+".PerY", l.PerY)
}

func (l Liquid) check(_ *Slab, name string, f *Faults) {
	f.number(name+".Level", l.Level)
	f.number(name+".UnitWeight", l.UnitWeight)
}

func (p Patch) check(s *Slab, name string, f *Faults) {
	n := len(*f)
	f.number(name+".Force", p.Force)
	f.between(name+".X", p.X, 0, s.Length)
	f.between(name+".Y", p.Y, 0, s.Width)
	f.positive(name+".Length", p.Length)
	f.positive(name+".Width", p.Width)
	if len(*f) > n {
		return
	}
	for _, o := range s.Openings {
		b := o.bounds()
		if o.Diameter == 0 && b.X0 <= p.X-p.Length/2 && b.X1 >= p.X+p.Length/2 &&
			b.Y0 <= p.Y-p.Width/2 && b.Y1 >= p.Y+p.Width/2 ||
			o.Diameter > 0 && math.Hypot(math.Abs(p.X-o.X)+p.Length/2, math.Abs(p.Y-o.Y)+p.Width/2) <= o.Diameter/2 {
			f.add(name+".X", p.X, "a patch that is not wholly over an opening")
		}
	}
}

func (g Segment) check(s *Slab, name string, f *Faults) {
	n := len(*f)
	f.number(name+".PerLength", g.PerLength)
	f.between(name+".From.X", g.From.X, 0, s.Length)
	f.between(name+".From.Y", g.From.Y, 0, s.Width)
	f.between(name+".To.X", g.To.X, 0, s.Length)
	f.between(name+".To.Y", g.To.Y, 0, s.Width)
	if len(*f) > n {
		return
	}
	if g.From == g.To {
		f.add(name+".To.X", g.To.X, "an end apart from the start")
	}
	s.checkPath(g.From, g.To, name, f)
}

// checkPath records a fault when a straight line leaves the slab or crosses an
// opening, looking at points along it.
func (s *Slab) checkPath(a, b Point, name string, f *Faults) {
	const looks = 64
	for k := range looks + 1 {
		t := float64(k) / looks
		if x, y := a.X+t*(b.X-a.X), a.Y+t*(b.Y-a.Y); !s.onSlab(x, y) {
			f.add(name, t, "a line load that stays on the slab (the value is where along it this one leaves)")
			return
		}
	}
}

// onSlab says whether x, y is on the slab or on its rim.
func (s *Slab) onSlab(x, y float64) bool {
	slack := 1e-9 * (s.Length + s.Width)
	if !(x >= -slack && x <= s.Length+slack && y >= -slack && y <= s.Width+slack) {
		return false
	}
	for _, o := range s.Openings {
		if o.contains(x, y) {
			return false
		}
	}
	return true
}

func (r Ring) check(s *Slab, name string, f *Faults) {
	if r.Opening < 0 || r.Opening >= len(s.Openings) {
		f.add(name+".Opening", float64(r.Opening), fmt.Sprintf("the number of one of the %d openings, from 0", len(s.Openings)))
		return
	}
	n := len(*f)
	f.number(name+".PerLength", r.PerLength)
	if !(r.Offset >= 0) || math.IsInf(r.Offset, 0) {
		f.add(name+".Offset", r.Offset, "0 or more")
	}
	if len(*f) > n {
		return
	}
	o := s.Openings[r.Opening]
	if radius := o.Diameter/2 + r.Offset; o.Diameter > 0 {
		for k := range 64 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 32)
			if !s.onSlab(o.X+radius*cos, o.Y+radius*sin) {
				f.add(name+".Offset", r.Offset, "a ring that stays on the slab")
				return
			}
		}
		return
	}
	for _, side := range r.sides(o) {
		s.checkPath(side.From, side.To, name, f)
	}
}

// sides are the four line loads round a rectangular opening.
func (r Ring) sides(o Opening) [4]Segment {
	b := o.bounds()
	x0, y0, x1, y1 := b.X0-r.Offset, b.Y0-r.Offset, b.X1+r.Offset, b.Y1+r.Offset
	return [4]Segment{
		{Point{x0, y0}, Point{x1, y0}, r.PerLength},
		{Point{x1, y0}, Point{x1, y1}, r.PerLength},
		{Point{x1, y1}, Point{x0, y1}, r.PerLength},
		{Point{x0, y1}, Point{x0, y0}, r.PerLength},
	}
}
