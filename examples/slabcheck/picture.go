package main

import (
	"fmt"
	"io"
	"math"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
	"manway.example/manway/internal/plate"
)

// plan is what the picture needs to know of a slab or a lid.
type plan struct {
	area  plate.Rect
	round float64 // radius of a lid, 0 for a slab
	at    func(x, y float64) (plate.Value, bool)
}

// writeSVG draws the slab from above: the principal moment that is largest by
// size at each place, in shades; openings, supports, loads; the governing moment.
func writeSVG(w io.Writer, in *input, out *output) error {
	if out.tank != nil {
		return writeTankSVG(w, in, out.tank)
	}
	var p plan
	if in.Lid != nil {
		l, _ := in.lidLoads()
		r := l.radius
		p = plan{plate.Rect{X0: -r, Y0: -r, X1: r, Y1: r}, r, func(x, y float64) (plate.Value, bool) {
			v, err := l.at(x, y)
			return v, err == nil && math.Hypot(x, y) <= r
		}}
	} else {
		// What was computed kept no field, so that a batch is cheap: solve again.
		study := new(plate.Study)
		if _, err := computeSlab(in, study); err != nil {
			return err
		}
		p = plan{plate.Rect{X1: float64(in.Slab.Length), Y1: float64(in.Slab.Width)}, 0, study.Cases[0].At}
	}
	governing := out.extremes.Governing()
	d := svg.Page{
		Name: "slab", Title: "Slab from above with its bending moments",
		Desc: fmt.Sprintf("Largest moment %s at %s; largest deflection %s at %s.", moment(governing.Value, in.Units), place(governing.At, in.Units),
			small(out.extremes.W.Value, in.Units), place(out.extremes.W.At, in.Units)),
		Area:  svg.Area{Left: p.area.X0, Bottom: p.area.Y0, Right: p.area.X1, Top: p.area.Y1},
		Width: 900, Tall: 620, MarginLeft: 90, MarginRight: 210, MarginTop: 34, MarginBottom: 150,
	}.Start()
	drawMoments(d, &p, math.Abs(governing.Value))
	if in.Lid != nil {
		d.Circle(svg.Point{}, p.round, svg.Style{Line: 2})
	} else {
		drawSlab(d, in)
	}
	drawLoads(d, in)
	g := svg.Point{X: governing.At.X, Y: governing.At.Y}
	words := "largest moment, sagging: "
	if governing.Value < 0 {
		words = "largest moment, hogging: "
	}
	d.Label(g, svg.Right, words+moment(math.Abs(governing.Value), in.Units))
	drawScale(d, &p, math.Abs(governing.Value), in.Units)
	_, err := d.WriteTo(w)
	return err
}

// tones is how many shades there are.
const tones = 8

// drawMoments shades the plan. Hogging is hatched as well.
func drawMoments(d *svg.Drawing, p *plan, most float64) {
	const fine = 96
	wide, high := p.area.X1-p.area.X0, p.area.Y1-p.area.Y0
	step := math.Max(wide, high) / fine
	nx, ny := int(math.Ceil(wide/step-1e-9)), int(math.Ceil(high/step-1e-9))
	dx, dy := wide/float64(nx), high/float64(ny)
	for j := range ny {
		y := p.area.Y0 + float64(j)*dy
		start, last := 0, 0 // runs of one tone are one rectangle
		flush := func(end int) {
			if last == 0 {
				return
			}
			a, b := svg.Point{X: p.area.X0 + float64(start)*dx, Y: y}, svg.Point{X: p.area.X0 + float64(end)*dx, Y: y + dy}
			tone := math.Abs(float64(last)) - 1
			d.Shade(a, b, tone/(tones-1))
			if last < 0 && tone > 0 {
				d.Line(svg.Point{X: a.X, Y: y + dy/2}, svg.Point{X: b.X, Y: y + dy/2}, svg.Style{Line: 0.6})
			}
		}
		for i := range nx {
			tone := 0
			if v, ok := p.at(p.area.X0+(float64(i)+0.5)*dx, y+dy/2); ok {
				m1, m2, _ := v.M.Principal()
				tone = 1 + min(int(tones*math.Max(m1, -m2)/most), tones-1)
				if -m2 > m1 {
					tone = -tone
				}
			}
			if tone != last {
				flush(i)
				start, last = i, tone
			}
		}
		flush(nx)
	}
}

// drawScale explains the shades under the plan.
func drawScale(d *svg.Drawing, p *plan, most float64, s manway.System) {
	px := 1 / d.Scale()
	left, top := p.area.X0, p.area.Y0-62*px
	wide := 46 * px
	for k := range tones {
		x := left + float64(k)*wide
		a, b := svg.Point{X: x, Y: top}, svg.Point{X: x + wide, Y: top - 18*px}
		d.Shade(a, b, float64(k)/(tones-1))
		d.Rect(a, b, svg.Style{Line: 0.7})
	}
	for k := 0; k <= tones; k += 4 {
		d.Text(svg.Point{X: left + float64(k)*wide, Y: top - 30*px}, moment(most*float64(k)/tones, s), svg.Middle, 0, 0)
	}
	d.Text(svg.Point{X: left + tones*wide, Y: top - 9*px}, "ruled where the loaded face is in tension", svg.Begin, 8, 0)
	d.Text(svg.Point{X: left, Y: top - 56*px}, "Unreviewed screening, not a design. Do not stand or drive on it on the strength of this.", svg.Begin, 0, 0)
}
