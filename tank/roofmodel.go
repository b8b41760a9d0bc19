package tank

import (
	"errors"
	"fmt"
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// piece is one piece of a roof as a plate: x along the tank and y across it,
// from the middle of its bearings.
type piece struct {
	slab     plate.Slab // with Lines where partitions were seen to touch
	from     float64    // x in the tank of the piece's x = 0
	half     float64    // y of the tank's centre line
	opening  []int      // Spec.Access of each opening
	zones    []zone
	strength strength
	notes    []string // why it is not judged
}

// place is where a point of the piece is in the tank.
func (p *piece) place(at plate.Point) Point {
	return Point{Along: manway.Length(at.X + p.from), Across: manway.Length(at.Y - p.half)}
}

// pieces models the roof: a rectangle on the four walls, free of them to lift
// off, its span the inside size and half a bearing at both ends (the lesser of
// wall and roof thickness). The joints part it into pieces that bear on the
// side walls alone.
func (t *Tank) pieces(c *RoofCase) ([]piece, error) {
	roof := t.Spec.Roof - c.Loss
	bearing := float64(min(t.Spec.Wall, roof)) / 2
	length, width := float64(t.Inside.Length)+2*bearing, float64(t.Inside.Width)+2*bearing
	base, err := member{c.Concrete, roof, c.Loss, c.Steel}.strength()
	if err != nil {
		return nil, err
	}
	cuts := make([]float64, 0, len(c.Joints)+2)
	cuts = append(cuts, -bearing)
	for _, j := range c.Joints {
		cuts = append(cuts, float64(j))
	}
	cuts = append(cuts, length-bearing)
	list := make([]piece, len(cuts)-1)
	for i := range list {
		p := &list[i]
		p.from, p.half, p.strength = cuts[i], width/2, base
		p.slab = plate.Slab{
			Length: cuts[i+1] - cuts[i], Width: width, Thickness: float64(roof),
			E: elastic(c.Concrete), Nu: poisson, BearingOnly: true,
		}
		if i > 0 {
			p.slab.Edges[plate.SideX0] = plate.Free
		}
		if i < len(list)-1 {
			p.slab.Edges[plate.SideX1] = plate.Free
		}
		if stout := noPlate(p.slab.Length, p.slab.Width, p.slab.Thickness); stout != "" {
			p.notes = append(p.notes, stout)
		}
		t.cutOpenings(p)
		if err := p.spall(c); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// noPlate says why a slab does not bend as a plate, the limit of package plate,
// or is empty.
func noPlate(length, width, thickness float64) string {
	if thickness > min(length, width)/2 {
		return "less than two thicknesses wide: it does not bend as a plate"
	}
	return ""
}

// sliver is the width beside a joint or wall that carries nothing.
const sliver = float64(manway.Inch) / 16

// cutOpenings puts the openings that lie in the piece into its slab.
func (t *Tank) cutOpenings(p *piece) {
	for i, a := range t.Spec.Access {
		x, y := float64(a.Along)-p.from, float64(a.Across)+p.half
		l, w := float64(a.Length), float64(a.Width)
		o := plate.RectOpening(x-l/2, y-w/2, l, w)
		if a.Diameter > 0 {
			l, w = float64(a.Diameter), float64(a.Diameter)
			o = plate.RoundOpening(x, y, l)
		}
		switch {
		case x+l/2 <= sliver || x-l/2 >= p.slab.Length-sliver:
			continue
		case x-l/2 <= sliver || x+l/2 >= p.slab.Length-sliver || y-w/2 <= sliver || y+w/2 >= p.slab.Width-sliver:
			p.notes = append(p.notes, fmt.Sprintf("opening %d reaches over a joint or a wall", i))
			continue
		}
		p.slab.Openings = append(p.slab.Openings, o)
		p.opening = append(p.opening, i)
	}
}

// spall puts the thinner places of the piece in, each with its own strength.
func (p *piece) spall(c *RoofCase) error {
	for _, s := range c.Spalls {
		x, y := float64(s.Along)-p.from, float64(s.Across)+p.half
		r := plate.Rect{
			X0: math.Max(x-float64(s.Length)/2, 0), X1: math.Min(x+float64(s.Length)/2, p.slab.Length),
			Y0: math.Max(y-float64(s.Width)/2, 0), Y1: math.Min(y+float64(s.Width)/2, p.slab.Width),
		}
		if r.X0 >= r.X1 || r.Y0 >= r.Y1 || s.Depth == 0 {
			continue
		}
		m := p.strength.member
		m.thickness -= s.Depth
		m.lost += s.Depth
		st, err := m.strength()
		if err != nil {
			return err
		}
		p.slab.Zones = append(p.slab.Zones, plate.Zone{Rect: r, Thickness: float64(m.thickness)})
		p.zones = append(p.zones, zone{r, st})
	}
	return nil
}

// supports gives the lines of the partitions that were seen to touch this piece.
func (t *Tank) supports(p *piece, contact []bool) (lines []plate.Line) {
	for i, touches := range contact {
		s := t.partitions[i]
		if x := (s.from+s.to)/2 - p.from; touches && x > 0 && x < p.slab.Length {
			lines = append(lines, plate.Line{Axis: plate.X, At: x})
		}
	}
	return lines
}

// rest is what rests on a piece: the pressure all over, and the line loads round
// its openings.
type rest struct {
	own, soil float64 // Pa
	rings     []plate.Ring
	force     float64 // N, of all of it on the piece
}

// resting is what a RoofLoad lays on the piece.
func (t *Tank) resting(p *piece, l RoofLoad, c *RoofCase) rest {
	filled, _ := c.Concrete.Filled()
	soil, _ := l.soil(c.Soil)
	r := rest{
		own:  float64(filled.Density) * manway.StandardGravity * p.slab.Thickness,
		soil: float64(soil + l.Surface),
	}
	area := p.slab.Length * p.slab.Width
	for k, i := range p.opening {
		a := t.Spec.Access[i]
		hole := float64(a.Area())
		area -= hole
		force, offset := r.soil*hole, 0.0
		for _, riser := range l.Risers {
			if riser.Access == i {
				force, offset = float64(riser.Mass.Weight()), float64(riser.Wall)/2
			}
		}
		around := 2 * float64(a.Length+a.Width+4*manway.Length(offset))
		if a.Diameter > 0 {
			around = math.Pi * (float64(a.Diameter) + 2*offset)
		}
		if force > 0 {
			r.rings = append(r.rings, plate.Ring{Opening: k, Offset: offset, PerLength: force / around})
			r.force += force
		}
	}
	r.force += (r.own + r.soil) * area
	return r
}

// loads is the rest as loads of the plate, times a factor.
func (r rest) loads(factor float64) []plate.Load {
	list := make([]plate.Load, 1, 1+len(r.rings)+3)
	list[0] = plate.Uniform{Pressure: factor * (r.own + r.soil)}
	for _, ring := range r.rings {
		ring.PerLength *= factor
		list = append(list, ring)
	}
	return list
}

// modelFaults turns what the plate refuses into faults of the roof's fields.
func modelFaults(part string, err error) error {
	var faults plate.Faults
	if !errors.As(err, &faults) {
		return manway.InputErrors{{Field: part, Value: err.Error(), Want: "a slab that its supports hold"}}
	}
	var list manway.InputErrors
	for _, f := range faults {
		list.Add(part+"."+f.Field, fmt.Sprintf("%g (SI)", f.Value), f.Want)
	}
	return list
}
