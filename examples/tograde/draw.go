package main

import (
	"errors"
	"fmt"
	"io"
	"math"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
)

// draw writes the stack and the pit as a section to scale: metres, grade in the
// middle of the opening at 0.
func draw(w io.Writer, in *input, out *output) error {
	if !out.hasReach || out.outside == 0 || out.bore == 0 {
		return errors.New("a drawing needs cover, and the bore and outside diameter of the riser")
	}
	s := newSketch(in, out)
	s.ground()
	s.roof()
	s.rings()
	s.levels()
	s.d.Legend()
	_, err := s.d.WriteTo(w)
	return err
}

// sketch is the drawing with the lengths it uses.
type sketch struct {
	in                               *input
	out                              *output
	d                                *svg.Drawing
	roofTop, half, bore, edge, slope float64
	top, bottom, roofLow             float64
}

func newSketch(in *input, out *output) *sketch {
	s := &sketch{in: in, out: out}
	s.roofTop = -float64(*in.Cover)
	s.half, s.bore = float64(out.outside)/2, float64(out.bore)/2
	roof := float64(in.Roof)
	if roof == 0 {
		roof = float64(4 * manway.Inch)
	}
	s.roofLow = s.roofTop - roof
	s.slope = math.Tan(float64(in.Slope))
	s.edge = s.half + float64(manway.Foot)
	if out.hasDig {
		s.edge = float64(out.dig.Uphill) + float64(manway.Foot)
	}
	s.top = max(s.roofTop+float64(out.reach.Top), s.slope*s.edge) + float64(8*manway.Inch)
	s.bottom = s.roofLow - float64(8*manway.Inch)
	s.d = svg.Page{
		Name: "tograde", Title: "Section through the riser and its pit, to scale",
		Desc: fmt.Sprintf("Roof %v below grade, height to make up %v.", *in.Cover, out.reach.Height),
		Area: svg.Area{Left: -s.edge, Bottom: s.bottom, Right: s.edge, Top: s.top}, Width: 860, Tall: 620,
		MarginLeft: 190, MarginRight: 220, MarginTop: 24, MarginBottom: 24,
	}.Start()
	return s
}

func at(x, y float64) svg.Point { return svg.Point{X: x, Y: y} }

// grade is the ground's height at x: it falls to the right.
func (s *sketch) grade(x float64) float64 { return -s.slope * x }

// ground draws the soil with the pit cut into it.
func (s *sketch) ground() {
	e := s.edge
	s.d.Polygon([]svg.Point{at(-e, s.grade(-e)), at(e, s.grade(e)), at(e, s.bottom), at(-e, s.bottom)}, svg.Style{Fill: svg.Soil})
	if s.out.hasDig {
		d := s.out.dig
		foot, up, down := float64(d.Bottom[0])/2, float64(d.Uphill), float64(d.Downhill)
		s.d.Polygon([]svg.Point{at(-foot, s.roofTop), at(-up, s.grade(-up)), at(down, s.grade(down)), at(foot, s.roofTop)}, svg.Style{Fill: svg.Cut, Line: 1.5})
		sides := fmt.Sprintf("pit type %s, %g to 1: %v at grade", d.Pit.Type, d.Slope, d.Top[0])
		if d.Pit.Shored {
			sides = fmt.Sprintf("pit with held sides: %v wide", d.Top[0])
		}
		s.d.Label(at(-(foot+up)/2, (s.roofTop+s.grade(-up))/2), svg.Left, sides)
	}
	s.d.Polyline([]svg.Point{at(-e, s.grade(-e)), at(e, s.grade(e))}, svg.Style{Line: 2})
	s.d.Label(at(-e*0.9, s.grade(-e*0.9)), svg.Left, "grade")
}

// roof draws the roof slab with its opening.
func (s *sketch) roof() {
	port := float64(s.in.Port) / 2
	if port == 0 {
		port = s.bore
	}
	for _, side := range []float64{-1, 1} {
		s.d.Rect(at(side*port, s.roofTop), at(side*s.edge, s.roofLow), svg.Style{Fill: svg.Concrete, Line: 1.5})
	}
	s.d.Rect(at(-s.edge, s.roofLow), at(s.edge, s.bottom), svg.Style{Fill: svg.Paper})
	s.d.Rect(at(-port, s.roofTop), at(port, s.roofLow), svg.Style{Fill: svg.Paper})
	s.d.Label(at(-s.edge*0.5, (s.roofLow+s.bottom)/2), svg.Left, "inside of the tank")
	words := "roof " + s.in.Roof.String()
	if s.in.Roof == 0 {
		words = "roof, thickness not known"
	}
	s.d.Label(at(-s.edge*0.8, (s.roofTop+s.roofLow)/2), svg.Left, words)
}

// rings draws the stack from the roof up, or the space it must fill.
func (s *sketch) rings() {
	y := s.roofTop
	stack, ok := s.out.chosen()
	if !ok {
		h := float64(s.out.reach.Height)
		if h > 0 {
			s.d.Rect(at(-s.half, y), at(s.half, y+h), svg.Style{Fill: svg.Paper, Line: 1.5, Dash: true})
			s.d.Label(at(s.half, y+h/2), svg.Right, "to make up: "+s.out.reach.Height.String())
		}
		s.dimension(y + h)
		return
	}
	for _, p := range stack.Pieces {
		ring := s.in.Rings[p.Ring]
		outside := float64(ring.Outside) / 2
		if outside == 0 {
			outside = s.half
		}
		fill := svg.Concrete
		if ring.Plastic {
			fill = svg.Solid
		}
		low := y
		for range p.Count {
			s.ring(float64(ring.Bore)/2, float64(ring.Bore)/2, outside, y, y+float64(s.in.Joint), svg.Solid)
			y += float64(s.in.Joint)
			s.ring(float64(ring.Bore)/2, max(float64(ring.TopBore), float64(ring.Bore))/2, outside, y, y+float64(p.Height), fill)
			y += float64(p.Height)
		}
		s.d.Label(at(outside, (low+y)/2), svg.Right, fmt.Sprintf("%d x %s, %v", p.Count, p.Code, p.Height))
	}
	if stack.Cover >= 0 {
		lid := s.in.Lids[stack.Cover]
		high := max(float64(lid.Stands), float64(manway.Inch))
		s.d.Rect(at(-s.half, y+float64(lid.Stands)-high), at(s.half, y+float64(lid.Stands)), svg.Style{Fill: svg.Solid, Line: 1.5})
		s.d.Label(at(s.half, y+float64(lid.Stands)-high/2), svg.Right, "lid "+lid.Code)
		y += float64(lid.Stands)
	}
	s.dimension(y)
}

// ring is the section of one ring: two walls and the hole between them.
func (s *sketch) ring(bore, topBore, outside, low, high float64, fill svg.Fill) {
	s.d.Polygon([]svg.Point{at(-bore, low), at(bore, low), at(topBore, high), at(-topBore, high)}, svg.Style{Fill: svg.Paper})
	for _, side := range []float64{-1, 1} {
		s.d.Polygon([]svg.Point{at(side*bore, low), at(side*outside, low), at(side*outside, high), at(side*topBore, high)}, svg.Style{Fill: fill, Line: 1.2})
	}
}

// dimension measures from the roof to the top.
func (s *sketch) dimension(top float64) {
	if top-s.roofTop > 1e-6 {
		s.d.Dimension(at(s.bore/3, s.roofTop), at(s.bore/3, top), 0, manway.Length(top-s.roofTop).String())
	}
}

// levels marks the groundwater where it is known.
func (s *sketch) levels() {
	if s.in.Groundwater.Known && -float64(s.in.Groundwater.Depth) > s.bottom {
		p := at(s.edge*0.85, -float64(s.in.Groundwater.Depth))
		s.d.Level(p)
		s.d.Label(p, svg.Right, "groundwater "+s.in.Groundwater.Depth.String())
	}
}
