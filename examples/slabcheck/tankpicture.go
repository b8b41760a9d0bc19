package main

import (
	"fmt"
	"io"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
	"manway.example/manway/tank"
)

// writeTankSVG draws the tank from above: walls, partitions and openings, where
// each load of the roof does most, and the weakest place.
func writeTankSVG(w io.Writer, in *input, out *tankOutput) error {
	t := &out.tank
	long, wide, wall := float64(t.Inside.Length), float64(t.Inside.Width), float64(t.Spec.Wall)
	d := svg.Page{
		Name: "roof", Title: "Tank from above with the weakest place of its roof", Desc: desc(out),
		Area:  svg.Area{Left: -wall, Bottom: -wide/2 - wall, Right: long + wall, Top: wide/2 + wall},
		Width: 900, Tall: 560, MarginLeft: 70, MarginRight: 230, MarginTop: 34, MarginBottom: 120,
	}.Start()
	d.Rect(svg.Point{X: -wall, Y: -wide/2 - wall}, svg.Point{X: long + wall, Y: wide/2 + wall}, svg.Style{Fill: svg.Concrete, Line: 1.6})
	d.Rect(svg.Point{Y: -wide / 2}, svg.Point{X: long, Y: wide / 2}, svg.Style{Fill: svg.Paper, Line: 1})
	for _, p := range t.Spec.Partitions {
		d.Rect(svg.Point{X: float64(p.At), Y: -wide / 2}, svg.Point{X: float64(p.At + p.Thickness), Y: wide / 2}, svg.Style{Fill: svg.Concrete, Line: 1, Dash: true})
	}
	for _, a := range t.Spec.Access {
		x, y := float64(a.Along), float64(a.Across)
		if a.Diameter > 0 {
			d.Circle(svg.Point{X: x, Y: y}, float64(a.Diameter)/2, svg.Style{Fill: svg.Paper, Line: 2})
			continue
		}
		l, b := float64(a.Length)/2, float64(a.Width)/2
		d.Rect(svg.Point{X: x - l, Y: y - b}, svg.Point{X: x + l, Y: y + b}, svg.Style{Fill: svg.Paper, Line: 2})
	}
	for i := range out.parts {
		drawRoof(d, &out.parts[i], in.Units)
	}
	px := 1 / d.Scale()
	d.Dimension(svg.Point{Y: -wide / 2}, svg.Point{X: long, Y: -wide / 2}, -34, t.Inside.Length.Text(in.Units)+" inside")
	d.Dimension(svg.Point{Y: -wide / 2}, svg.Point{Y: wide / 2}, 40, t.Inside.Width.Text(in.Units)+" inside")
	low := -wide/2 - wall
	d.Text(svg.Point{X: -wall, Y: low - 74*px}, weakestText(out), svg.Begin, 0, 0)
	d.Text(svg.Point{X: -wall, Y: low - 94*px}, tank.StrengthTitle+". Do not stand or drive on it on the strength of this.", svg.Begin, 0, 0)
	_, err := d.WriteTo(w)
	return err
}

// drawRoof marks where the loads of the roof do most, and its weakest place.
func drawRoof(d *svg.Drawing, p *part, s manway.System) {
	if !p.hasPlace {
		return
	}
	size := 9 / d.Scale()
	for _, l := range p.loadings {
		if !l.Moving {
			continue
		}
		at := svg.Point{X: float64(l.At.Along), Y: float64(l.At.Across)}
		d.Rect(shift(at, svg.Point{X: -1, Y: -1}, size/2), shift(at, svg.Point{X: 1, Y: 1}, size/2), svg.Style{Line: 1.4, Dash: true})
		use := l.Status().Against()
		if l.Governs >= 0 {
			use += fmt.Sprintf(", Use %.2f", l.Use())
		}
		d.Label(at, svg.Right, fmt.Sprintf("%s, %s: worst here, %s", l.Name, l.Load.Text(s), use))
	}
	at := svg.Point{X: float64(p.weakest.Along), Y: float64(p.weakest.Across)}
	d.Line(shift(at, svg.Point{X: -1, Y: -1}, size), shift(at, svg.Point{X: 1, Y: 1}, size), svg.Style{Line: 3})
	d.Line(shift(at, svg.Point{X: -1, Y: 1}, size), shift(at, svg.Point{X: 1, Y: -1}, size), svg.Style{Line: 3})
	d.Label(at, svg.Right, "weakest place of the roof")
}

// weakestText names the weakest part in one line.
func weakestText(out *tankOutput) string {
	if out.weakest < 0 {
		return "No part could be reckoned: see the reasons in the text."
	}
	p := &out.parts[out.weakest]
	use, ok := p.governs.Use()
	if !ok {
		return "Weakest part: " + p.name + ", " + p.governs.Name + ", no strength shown."
	}
	return fmt.Sprintf("Weakest part of those reckoned: %s, %s, Use %.2f, %s.", p.name, p.governs.Name, use, p.governs.Outcome())
}

func desc(out *tankOutput) string {
	text := weakestText(out)
	for i := range out.parts {
		if p := &out.parts[i]; p.hasPlace {
			text += fmt.Sprintf(" Weakest place of the roof %v along and %v off the centre line.", p.weakest.Along, p.weakest.Across)
		}
	}
	return text
}
