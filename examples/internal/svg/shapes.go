package svg

import (
	"fmt"
	"strings"
)

// Style is how a shape looks: what fills it, and its outline.
type Style struct {
	Fill Fill
	Line float64 // width of the outline in pixels; 0: none
	Dash bool    // broken outline
	Grey bool    // grey outline, for what is only hinted at
}

// Outline is a plain outline.
var Outline = Style{Line: 1.5}

func (d *Drawing) style(s Style) string {
	d.used[s.Fill] = true
	var b strings.Builder
	if s.Fill != None {
		fmt.Fprintf(&b, ` fill="%s"`, d.paint(s.Fill))
	}
	if s.Line > 0 {
		colour := ink
		if s.Grey {
			colour = "#767676"
		}
		fmt.Fprintf(&b, ` stroke="%s" stroke-width="%s"`, colour, d.px(s.Line))
	}
	if s.Dash {
		b.WriteString(` stroke-dasharray="7 5"`)
	}
	return b.String()
}

// ink is the colour of lines and texts.
const ink = "#111"

// Rect draws the rectangle with corners a and b.
func (d *Drawing) Rect(a, b Point, s Style) {
	x0, y0 := d.at(Point{min(a.X, b.X), max(a.Y, b.Y)})
	x1, y1 := d.at(Point{max(a.X, b.X), min(a.Y, b.Y)})
	fmt.Fprintf(&d.shapes, `<rect x="%s" y="%s" width="%s" height="%s"%s/>`+"\n", d.px(x0), d.px(y0), d.px(x1-x0), d.px(y1-y0), d.style(s))
}

// Line draws a line from a to b.
func (d *Drawing) Line(a, b Point, s Style) { d.Polyline([]Point{a, b}, s) }

// Polyline draws an open line through the points.
func (d *Drawing) Polyline(points []Point, s Style) { d.points("polyline", points, s) }

// Polygon draws a closed line through the points.
func (d *Drawing) Polygon(points []Point, s Style) { d.points("polygon", points, s) }

func (d *Drawing) points(element string, points []Point, s Style) {
	list := make([]string, len(points))
	for i, p := range points {
		list[i] = d.xy(p)
	}
	fmt.Fprintf(&d.shapes, `<%s points="%s"%s/>`+"\n", element, strings.Join(list, " "), d.style(s))
}

// Circle draws a circle.
func (d *Drawing) Circle(centre Point, radius float64, s Style) {
	d.Ellipse(centre, radius, radius, s)
}

// Ellipse draws an ellipse with half axes rx and ry.
func (d *Drawing) Ellipse(centre Point, rx, ry float64, s Style) {
	x, y := d.at(centre)
	fmt.Fprintf(&d.shapes, `<ellipse cx="%s" cy="%s" rx="%s" ry="%s"%s/>`+"\n", d.px(x), d.px(y), d.px(rx*d.scale), d.px(ry*d.scale), d.style(s))
}

// Path is an outline of lines and arcs.
type Path struct{ steps []step }

type step struct {
	command     byte
	rx, ry      float64
	large, left bool
	to          Point
}

// Move starts a part of the path.
func (p *Path) Move(to Point) *Path { return p.add(step{command: 'M', to: to}) }

// Line goes straight on.
func (p *Path) Line(to Point) *Path { return p.add(step{command: 'L', to: to}) }

// Arc goes along an ellipse with half axes rx and ry, with y up: left turns
// counterclockwise; large takes the longer way round.
func (p *Path) Arc(rx, ry float64, large, left bool, to Point) *Path {
	return p.add(step{'A', rx, ry, large, left, to})
}

// Close goes back to where the part started.
func (p *Path) Close() *Path { return p.add(step{command: 'Z'}) }

func (p *Path) add(s step) *Path {
	p.steps = append(p.steps, s)
	return p
}

// Path draws a path. Where parts of it lie in each other the inner one is a
// hole.
func (d *Drawing) Path(p *Path, s Style) {
	var b strings.Builder
	for _, step := range p.steps {
		switch step.command {
		case 'Z':
			b.WriteString("Z")
		case 'A':
			fmt.Fprintf(&b, "A%s %s 0 %d %d %s", d.px(step.rx*d.scale), d.px(step.ry*d.scale), bit(step.large), bit(!step.left), d.xy(step.to))
		default:
			fmt.Fprintf(&b, "%c%s", step.command, d.xy(step.to))
		}
	}
	fmt.Fprintf(&d.shapes, `<path d="%s" fill-rule="evenodd"%s/>`+"\n", b.String(), d.style(s))
}

func bit(v bool) int {
	if v {
		return 1
	}
	return 0
}
