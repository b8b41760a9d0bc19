package plate

import (
	"fmt"
	"math"
)

// A Load is one of Uniform, Linear, Liquid, Patch, Segment and Ring. Loads act
// downwards, the way deflections are positive.
type Load interface {
	check(s *Slab) Faults
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
	f.atMost("Loads", len(loads), 200)
	for i, l := range loads {
		n := len(f)
		if l == nil {
			f.add("", 0, "a load")
		} else {
			f = append(f, l.check(s)...)
		}
		f.under(n, "Loads", i)
	}
	return f.err()
}

func (u Uniform) check(_ *Slab) (f Faults) {
	f.number("Pressure", u.Pressure)
	return f
}

func (l Linear) check(_ *Slab) (f Faults) {
	f.number("At0", l.At0)
	f.number("PerX", l.PerX)
	f.number("PerY", l.PerY)
	return f
}

func (l Liquid) check(_ *Slab) (f Faults) {
	f.number("Level", l.Level)
	f.number("UnitWeight", l.UnitWeight)
	return f
}

func (p Patch) check(s *Slab) (f Faults) {
	f.number("Force", p.Force)
	f.between("X", p.X, 0, s.Length)
	f.between("Y", p.Y, 0, s.Width)
	f.positive("Length", p.Length)
	f.positive("Width", p.Width)
	if len(f) > 0 {
		return f
	}
	for _, o := range s.Openings {
		b := o.bounds()
		if o.Diameter == 0 && b.X0 <= p.X-p.Length/2 && b.X1 >= p.X+p.Length/2 &&
			b.Y0 <= p.Y-p.Width/2 && b.Y1 >= p.Y+p.Width/2 ||
			o.Diameter > 0 && math.Hypot(math.Abs(p.X-o.X)+p.Length/2, math.Abs(p.Y-o.Y)+p.Width/2) <= o.Diameter/2 {
			f.add("X", p.X, "a patch that is not wholly over an opening")
		}
	}
	return f
}

func (g Segment) check(s *Slab) (f Faults) {
	f.number("PerLength", g.PerLength)
	f.between("From.X", g.From.X, 0, s.Length)
	f.between("From.Y", g.From.Y, 0, s.Width)
	f.between("To.X", g.To.X, 0, s.Length)
	f.between("To.Y", g.To.Y, 0, s.Width)
	if len(f) > 0 {
		return f
	}
	if g.From == g.To {
		f.add("To.X", g.To.X, "an end apart from the start")
	}
	s.checkPath(g.From, g.To, &f)
	return f
}

// checkPath records a fault when a straight line leaves the slab or crosses an
// opening, looking at points along it.
func (s *Slab) checkPath(a, b Point, f *Faults) {
	const looks = 64
	for k := range looks + 1 {
		t := float64(k) / looks
		if x, y := a.X+t*(b.X-a.X), a.Y+t*(b.Y-a.Y); !s.onSlab(x, y) {
			f.add("", t, "a line load that stays on the slab (the value is where along it this one leaves)")
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

func (r Ring) check(s *Slab) (f Faults) {
	if r.Opening < 0 || r.Opening >= len(s.Openings) {
		f.add("Opening", float64(r.Opening), fmt.Sprintf("the number of one of the %d openings, from 0", len(s.Openings)))
		return f
	}
	f.number("PerLength", r.PerLength)
	if !(r.Offset >= 0) || math.IsInf(r.Offset, 0) {
		f.add("Offset", r.Offset, "0 or more")
	}
	if len(f) > 0 {
		return f
	}
	o := s.Openings[r.Opening]
	if radius := o.Diameter/2 + r.Offset; o.Diameter > 0 {
		for k := range 64 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 32)
			if !s.onSlab(o.X+radius*cos, o.Y+radius*sin) {
				f.add("Offset", r.Offset, "a ring that stays on the slab")
				return f
			}
		}
		return f
	}
	for _, side := range r.sides(o) {
		s.checkPath(side.From, side.To, &f)
	}
	return f
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
