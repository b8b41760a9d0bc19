package tank

import "math"

// solid is the volume of the tank below a height over the outside of its
// bottom.
func (b *buried) solid(y float64) float64 {
	if b.floor == 0 {
		return b.t.outer.volume(b.t.outerWhole, min(max(y, 0), b.height))
	}
	h := b.t.height
	above := min(max(y-b.floor, 0), h)
	o, all := b.t.outer, b.t.outerWhole
	return o.area(all, 0)*min(y, b.floor) + o.volume(all, above) + o.area(all, h)*max(0, min(y, b.height)-b.floor-h)
}

// start is the height from which soil counts: the flange, the bottom for a
// wedge, or the widest plan of the tank.
func (b *buried) start() float64 {
	switch {
	case b.c.Flange > 0:
		return b.floor
	case b.c.Wedge.Slope > 0:
		return 0
	}
	return b.widest()
}

// widest is the height of the widest plan.
func (b *buried) widest() float64 {
	if lying(b.t.shape) {
		return b.height / 2
	}
	if f, ok := b.t.shape.(Frustum); ok && f.BottomDiameter > f.TopDiameter {
		return b.floor
	}
	return b.height
}

// soil is the volume of soil that counts between two heights: the body of soil
// less the tank and the risers in it.
func (b *buried) soil(from, to float64) float64 {
	if to <= from {
		return 0
	}
	start := b.start()
	body := b.body(to-start) - b.body(from-start)
	tank := b.solid(min(to, b.height)) - b.solid(min(from, b.height))
	risers := float64(b.c.RiserArea) * max(0, to-max(from, b.height))
	return max(0, body-tank-risers)
}

// body is the volume of the body of soil from its start to a height over it,
// the tank in it included: the integral of its plan.
func (b *buried) body(h float64) float64 {
	f, k := float64(b.c.Flange), b.c.Wedge.Slope
	plan := b.spread(f)
	if k == 0 {
		return plan * h
	}
	long, wide, round := b.rectangle()
	if round {
		r := wide/2 + f
		return math.Pi * h * (r*r + r*k*h + k*k*h*h/3)
	}
	end := k
	if !b.c.Wedge.Ends {
		end = 0
	}
	long, wide = long+2*f, wide+2*f
	return long*wide*h + (wide*2*end+long*2*k)*h*h/2 + 4*k*end*h*h*h/3
}

// spread is the widest plan of the tank widened by a ledge all round.
func (b *buried) spread(ledge float64) float64 {
	long, wide, round := b.rectangle()
	if round {
		return math.Pi / 4 * (wide + 2*ledge) * (wide + 2*ledge)
	}
	return (long + 2*ledge) * (wide + 2*ledge)
}

// rectangle is the outside plan of the tank at its widest; dished heads count
// with the length of a rectangle of their area.
func (b *buried) rectangle() (long, wide float64, round bool) {
	in := b.t.outside.Inside()
	wide = float64(in.Width)
	switch b.t.outside.(type) {
	case VerticalCylinder, Frustum, Sphere:
		return wide, wide, true
	case HorizontalCylinder:
		return b.t.outer.area(b.t.outerWhole, b.height/2) / wide, wide, false
	}
	return float64(in.Length), wide, false
}
