package main

import (
	"slices"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
	"manway.example/manway/internal/plate"
)

// drawSlab draws outline, edges, openings and supports.
func drawSlab(d *svg.Drawing, in *input) {
	slab, _ := in.plate()
	l, w := slab.Length, slab.Width
	px := 1 / d.Scale()
	corners := [5]svg.Point{{}, {X: l}, {X: l, Y: w}, {Y: w}, {}}
	away := [4]svg.Point{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}}
	for i, e := range slab.Edges {
		a, b := corners[i], corners[i+1]
		switch e {
		case plate.Free:
			d.Line(a, b, svg.Style{Line: 1})
		case plate.Simple:
			d.Line(a, b, svg.Style{Line: 2})
			d.Line(shift(a, away[i], 5*px), shift(b, away[i], 5*px), svg.Style{Line: 1.2, Dash: true})
		case plate.Clamped:
			d.Line(a, b, svg.Style{Line: 2})
			d.Rect(a, shift(b, away[i], 9*px), svg.Style{Fill: svg.Cut, Line: 1})
		}
	}
	for _, z := range slab.Zones {
		d.Rect(svg.Point{X: z.X0, Y: z.Y0}, svg.Point{X: z.X1, Y: z.Y1}, svg.Style{Line: 1, Dash: true, Grey: true})
		d.Text(svg.Point{X: (z.X0 + z.X1) / 2, Y: (z.Y0 + z.Y1) / 2}, manway.Length(z.Thickness).Text(in.Units)+" thick", svg.Middle, 0, 0)
	}
	for _, line := range slab.Lines {
		a, b := svg.Point{X: line.At}, svg.Point{X: line.At, Y: w}
		if line.Axis == plate.Y {
			a, b = svg.Point{Y: line.At}, svg.Point{X: l, Y: line.At}
		}
		d.Line(a, b, svg.Style{Line: 3, Dash: true})
	}
	for _, o := range slab.Openings {
		if o.Diameter > 0 {
			d.Circle(svg.Point{X: o.X, Y: o.Y}, o.Diameter/2, svg.Style{Fill: svg.Paper, Line: 1.6})
			continue
		}
		d.Rect(svg.Point{X: o.X, Y: o.Y}, svg.Point{X: o.X + o.Length, Y: o.Y + o.Width}, svg.Style{Fill: svg.Paper, Line: 1.6})
	}
	for _, p := range slab.Points {
		c := svg.Point{X: p.X, Y: p.Y}
		d.Polygon([]svg.Point{c, shift(c, svg.Point{X: -1, Y: -1.6}, 6*px), shift(c, svg.Point{X: 1, Y: -1.6}, 6*px)}, svg.Style{Fill: svg.Solid, Line: 1})
	}
	d.Dimension(svg.Point{}, svg.Point{X: l}, -26, in.Slab.Length.Text(in.Units))
	d.Dimension(svg.Point{}, svg.Point{Y: w}, 26, in.Slab.Width.Text(in.Units))
	explain(d, slab)
}

// explain names the signs that the picture uses.
func explain(d *svg.Drawing, slab *plate.Slab) {
	if slices.Contains(slab.Edges[:], plate.Clamped) {
		d.Explain(svg.Cut, "clamped edge")
	}
	if len(slab.Openings) > 0 {
		d.Explain(svg.Paper, "opening")
	}
	if len(slab.Points) > 0 {
		d.Explain(svg.Solid, "point support")
	}
}

func shift(p, way svg.Point, by float64) svg.Point {
	return svg.Point{X: p.X + way.X*by, Y: p.Y + way.Y*by}
}

// drawLoads draws where the loads stand, and names them in the margin.
func drawLoads(d *svg.Drawing, in *input) {
	var faults manway.InputErrors
	for _, load := range in.loads(&faults) {
		switch p := load.(type) {
		case plate.Patch:
			d.Rect(svg.Point{X: p.X - p.Length/2, Y: p.Y - p.Width/2}, svg.Point{X: p.X + p.Length/2, Y: p.Y + p.Width/2}, svg.Style{Line: 1.6, Dash: true})
			d.Label(svg.Point{X: p.X + p.Length/2, Y: p.Y}, svg.Right, force(p.Force, in.Units)+" on this rectangle")
		case plate.Segment:
			d.Line(svg.Point{X: p.From.X, Y: p.From.Y}, svg.Point{X: p.To.X, Y: p.To.Y}, svg.Style{Line: 2.2})
			d.Label(svg.Point{X: p.To.X, Y: p.To.Y}, svg.Right, manway.LineLoad(p.PerLength).Text(in.Units)+" along this line")
		case plate.Ring:
			drawRing(d, in, p)
		}
	}
}

func drawRing(d *svg.Drawing, in *input, r plate.Ring) {
	slab, _ := in.plate()
	if r.Opening >= len(slab.Openings) {
		return
	}
	o := slab.Openings[r.Opening]
	words := manway.LineLoad(r.PerLength).Text(in.Units) + " round this opening"
	if o.Diameter > 0 {
		radius := o.Diameter/2 + r.Offset
		d.Circle(svg.Point{X: o.X, Y: o.Y}, radius, svg.Style{Line: 1.2, Dash: true})
		d.Label(svg.Point{X: o.X + radius, Y: o.Y}, svg.Right, words)
		return
	}
	a := svg.Point{X: o.X - r.Offset, Y: o.Y - r.Offset}
	b := svg.Point{X: o.X + o.Length + r.Offset, Y: o.Y + o.Width + r.Offset}
	d.Rect(a, b, svg.Style{Line: 1.2, Dash: true})
	d.Label(svg.Point{X: b.X, Y: (a.Y + b.Y) / 2}, svg.Right, words)
}
