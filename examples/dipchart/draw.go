package main

import (
	"io"
	"math"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
	"manway.example/manway/tank"
)

// writeSVG draws the tank cut along its middle, with the liquid and a dip stick
// that tells the gallons beside it.
func writeSVG(w io.Writer, in *input, out *output) error {
	ends := profile(out.tank.Spec.Shape)
	height := float64(out.tank.Inside.Height)
	left, right := math.Inf(1), math.Inf(-1)
	for i := range profileSteps + 1 {
		l, r := ends(height * float64(i) / profileSteps)
		left, right = min(left, l), max(right, r)
	}
	stick := 0.06 * (right - left)
	name := in.ID
	if name == "" {
		name = "tank"
	}
	d := svg.Page{
		Name: "dipchart", Title: "Dip chart of " + name,
		Desc:  out.depth.Text(in.Units) + " of liquid, " + amount(out.liquid, in.Units),
		Area:  svg.Area{Left: left, Right: right + 3*stick, Bottom: 0, Top: height},
		Width: 860, Tall: 520, MarginLeft: 170, MarginRight: 240, MarginTop: 30, MarginBottom: 60,
	}.Start()
	d.Polygon(between(ends, 0, height), svg.Style{Fill: svg.Paper, Line: 2})
	if out.depth > 0 {
		d.Polygon(between(ends, 0, float64(out.depth)), svg.Style{Fill: svg.Liquid, Line: 1})
	}
	for _, p := range out.tank.Spec.Partitions {
		top := p.Height
		if top == 0 {
			top = out.tank.Inside.Height
		}
		d.Rect(svg.Point{X: float64(p.At)}, svg.Point{X: float64(p.At + p.Thickness), Y: float64(top)}, svg.Style{Fill: svg.Concrete, Line: 1})
	}
	if out.depth > 0 {
		_, r := ends(float64(out.depth))
		d.Level(svg.Point{X: r - stick, Y: float64(out.depth)})
		d.Label(svg.Point{X: left, Y: float64(out.depth)}, svg.Left, out.depth.Text(in.Units)+": "+amount(out.liquid, in.Units))
	}
	drawStick(d, out, right+1.5*stick, stick, in.Units)
	if long := out.tank.Inside.Length; long > 0 {
		d.Dimension(svg.Point{}, svg.Point{X: float64(long)}, -28, long.Text(in.Units))
	}
	_, err := d.WriteTo(w)
	return err
}

// labelHeight is the pixels that the name of a reading takes.
const labelHeight = 19

// drawStick draws the dip stick at x with a mark for every row of the chart.
func drawStick(d *svg.Drawing, out *output, x, wide float64, sys manway.System) {
	height := float64(out.tank.Inside.Height)
	d.Rect(svg.Point{X: x - wide/4}, svg.Point{X: x + wide/4, Y: height}, svg.Style{Fill: svg.Paper, Line: 1.5})
	room := max(2, int(height*d.Scale()/labelHeight))
	every := (len(out.chart.Rows) + room - 1) / room
	for i, row := range out.chart.Rows {
		y := float64(row.Depth)
		mark := wide / 6
		if i%every == 0 {
			mark = wide / 4
			d.Label(svg.Point{X: x + wide/4, Y: y}, svg.Right, row.Reading.Text(sys)+": "+amount(row.Volume, sys))
		}
		d.Line(svg.Point{X: x - wide/4, Y: y}, svg.Point{X: x - wide/4 + mark, Y: y}, svg.Style{Line: 1})
	}
	if out.chart.FromRim {
		d.Text(svg.Point{X: x - wide/4}, "read down from the rim", svg.Begin, 0, 18)
	}
}

// profileSteps is how many straight pieces an end is drawn with.
const profileSteps = 64

// between is the outline between two heights.
func between(ends func(z float64) (l, r float64), from, to float64) []svg.Point {
	points := make([]svg.Point, 2*(profileSteps+1))
	for i := range profileSteps + 1 {
		z := from + (to-from)*float64(i)/profileSteps
		l, r := ends(z)
		points[i] = svg.Point{X: l, Y: z}
		points[len(points)-1-i] = svg.Point{X: r, Y: z}
	}
	return points
}

// profile says where the inside of both ends is at a height, in the tank's
// middle. Dished heads are drawn as ellipses; a survey, whose form is not known,
// as wide as the root of its area.
func profile(s tank.Shape) func(z float64) (l, r float64) {
	in := s.Inside()
	length, height := float64(in.Length), float64(in.Height)
	round := func(z float64) float64 { return math.Sqrt(max(0, 1-math.Pow(2*z/height-1, 2))) }
	switch s := s.(type) {
	case tank.Box:
		floor := float64(s.FloorLength)
		if floor == 0 {
			floor = length
		}
		radius := float64(s.Fillet)
		return func(z float64) (l, r float64) {
			half := (floor + (length-floor)*z/height) / 2
			if z < radius {
				half -= radius - math.Sqrt(z*(2*radius-z))
			}
			return length/2 - half, length/2 + half
		}
	case tank.HorizontalCylinder:
		return func(z float64) (l, r float64) {
			return -float64(in.InletHead) * round(z), length + float64(in.OutletHead)*round(z)
		}
	case tank.Frustum:
		return func(z float64) (l, r float64) {
			d := float64(s.BottomDiameter) + float64(s.TopDiameter-s.BottomDiameter)*z/height
			return (length - d) / 2, (length + d) / 2
		}
	case tank.Sphere:
		return func(z float64) (l, r float64) { return length / 2 * (1 - round(z)), length / 2 * (1 + round(z)) }
	case tank.Surveyed:
		return surveyed(s)
	}
	return func(float64) (l, r float64) { return 0, length }
}

func surveyed(s tank.Surveyed) func(z float64) (l, r float64) {
	x, err := tank.New(tank.Spec{Shape: s})
	if err != nil {
		return func(float64) (l, r float64) { return -1, 1 }
	}
	return func(z float64) (l, r float64) {
		a, _ := x.Area(manway.Length(z))
		half := math.Sqrt(float64(a)) / 2
		return -half, half
	}
}
