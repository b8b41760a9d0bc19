package main

import (
	"fmt"
	"io"
	"math"

	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/svg"
)

// The chart's plane, in the units of the drawing: years run to chartWide,
// money to chartTall.
const (
	chartWide = 10.0
	chartTall = 5.0
)

// chart is the scale of cost against years.
type chart struct {
	*svg.Drawing
	years int
	most  float64 // money at the top
	step  float64 // money between two lines of the grid
}

func (c chart) at(year, money float64) svg.Point {
	return svg.Point{X: year / float64(c.years) * chartWide, Y: money / c.most * chartTall}
}

func writeSVG(w io.Writer, in *input, out *output) error {
	_, err := draw(in, out).WriteTo(w)
	return err
}

// draw shows what has been paid by each year: a thick line as usual, a thin
// broken one where things go badly. Each option has a mark of its own shape.
func draw(in *input, out *output) *svg.Drawing {
	c := out.comparison
	top := 0.0
	for _, o := range c.Options {
		for _, s := range [...]cost.Scenario{cost.Usual, cost.Bad} {
			for _, p := range steps(o.Courses[s]) {
				top = math.Max(top, p.money)
			}
		}
	}
	k := chart{years: c.Horizon.Years}
	k.step = niceStep(math.Max(top, 1) / 5)
	k.most = math.Ceil(math.Max(top, 1)/k.step) * k.step
	k.Drawing = svg.Page{
		Name: "cost", Title: "Cost against years: " + in.Title, Desc: describe(c),
		Area:  svg.Area{Left: 0, Right: chartWide, Bottom: 0, Top: chartTall},
		Width: 900, MarginLeft: 90, MarginRight: 220, MarginTop: 40, MarginBottom: 90,
	}.Start()
	k.grid(string(c.Horizon.Currency))
	for i, o := range c.Options {
		k.curve(o, cost.Bad, i, svg.Style{Line: 1.2, Dash: true})
		k.curve(o, cost.Usual, i, svg.Style{Line: 2.5})
		name := o.Title
		if name == "" {
			name = o.ID
		}
		curve := o.Courses[cost.Usual].Curve
		end := curve[len(curve)-1]
		k.Label(k.at(float64(end.Year), end.Paid.InexactFloat64()), svg.Right, fmt.Sprintf("%s %s: %s", marks[i%len(marks)].name, name, c.Horizon.Currency.Text(end.Paid)))
	}
	return k.Drawing
}

// describe is the chart in words.
func describe(c cost.Comparison) string {
	s := fmt.Sprintf("Paid in all over %d years.", c.Horizon.Years)
	for _, o := range c.Options {
		usual, bad := o.Courses[cost.Usual].Marks, o.Courses[cost.Bad].Marks
		s += fmt.Sprintf(" %s: %s as usual, %s if things go badly.", o.ID, c.Horizon.Currency.Text(usual[len(usual)-1].Paid), c.Horizon.Currency.Text(bad[len(bad)-1].Paid))
	}
	return s
}

// grid draws the axes with their numbers.
func (c chart) grid(currency string) {
	for m := 0.0; m <= c.most*(1+1e-9); m += c.step {
		c.Line(c.at(0, m), c.at(float64(c.years), m), svg.Style{Line: 0.6, Grey: true})
		c.Text(c.at(0, m), fmt.Sprintf("%.6g", m), svg.End, -8, 5)
	}
	every := max(1, int(niceStep(float64(c.years)/6)))
	for y := 0; y <= c.years; y += every {
		c.Line(c.at(float64(y), 0), c.at(float64(y), c.most/80), svg.Style{Line: 1})
		c.Text(c.at(float64(y), 0), fmt.Sprint(y), svg.Middle, 0, 20)
	}
	c.Line(c.at(0, 0), c.at(float64(c.years), 0), svg.Style{Line: 1.5})
	c.Line(c.at(0, 0), c.at(0, c.most), svg.Style{Line: 1.5})
	c.Text(c.at(0, c.most), "paid in all, "+currency, svg.Begin, -80, -16)
	c.Text(c.at(float64(c.years)/2, 0), "years from now", svg.Middle, 0, 42)
	c.Text(c.at(0, 0), "thick: as usual; broken: if things go badly", svg.Begin, 0, 66)
}

// step is what has been paid in all from a year on.
type step struct{ year, money float64 }

// steps is the sum of what is paid, payment by payment.
func steps(k cost.Course) []step {
	list := []step{{0, 0}}
	for _, f := range k.Flows {
		if f.Why == cost.UnusedLife {
			continue
		}
		last := &list[len(list)-1]
		if f.Year == last.year {
			last.money += f.Paid.InexactFloat64()
		} else {
			list = append(list, step{f.Year, last.money + f.Paid.InexactFloat64()})
		}
	}
	return list
}

// curve draws the steps of one course, with a mark every few years.
func (c chart) curve(o cost.Outlook, s cost.Scenario, index int, style svg.Style) {
	list := steps(o.Courses[s])
	var points []svg.Point
	for i, p := range list {
		if i > 0 {
			points = append(points, c.at(p.year, list[i-1].money))
		}
		points = append(points, c.at(p.year, p.money))
	}
	points = append(points, c.at(float64(c.years), list[len(list)-1].money))
	c.Polyline(points, style)
	every := float64(c.years) / 8
	if s != cost.Usual { // fewer marks, so that the usual course stays in front
		every = float64(c.years) / 3
	}
	year := every * (0.3 + 0.4*float64(index%3)/2)
	for i := range list {
		end := float64(c.years)
		if i+1 < len(list) {
			end = list[i+1].year
		}
		for ; year < end; year += every {
			marks[index%len(marks)].draw(c, c.at(year, list[i].money))
		}
	}
}

// mark is a shape that tells one line from another without colour.
type mark struct {
	name string
	draw func(chart, svg.Point)
}

const markSize = 0.07

var marks = [...]mark{
	{"○", func(c chart, p svg.Point) { c.Circle(p, markSize, svg.Style{Fill: svg.Paper, Line: 1.5}) }},
	{"■", func(c chart, p svg.Point) {
		c.Rect(svg.Point{X: p.X - markSize, Y: p.Y - markSize}, svg.Point{X: p.X + markSize, Y: p.Y + markSize}, svg.Style{Fill: svg.Solid, Line: 1})
	}},
	{"△", func(c chart, p svg.Point) {
		c.Polygon([]svg.Point{{X: p.X - markSize, Y: p.Y - markSize}, {X: p.X + markSize, Y: p.Y - markSize}, {X: p.X, Y: p.Y + markSize}}, svg.Style{Fill: svg.Paper, Line: 1.5})
	}},
	{"●", func(c chart, p svg.Point) { c.Circle(p, markSize, svg.Style{Fill: svg.Solid, Line: 1}) }},
	{"□", func(c chart, p svg.Point) {
		c.Rect(svg.Point{X: p.X - markSize, Y: p.Y - markSize}, svg.Point{X: p.X + markSize, Y: p.Y + markSize}, svg.Style{Fill: svg.Paper, Line: 1.5})
	}},
	{"▲", func(c chart, p svg.Point) {
		c.Polygon([]svg.Point{{X: p.X - markSize, Y: p.Y - markSize}, {X: p.X + markSize, Y: p.Y - markSize}, {X: p.X, Y: p.Y + markSize}}, svg.Style{Fill: svg.Solid, Line: 1})
	}},
}

// niceStep is 1, 2 or 5 times a power of ten, at least v.
func niceStep(v float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(v)))
	for _, m := range [...]float64{1, 2, 5} {
		if m*power >= v*(1-1e-9) {
			return m * power
		}
	}
	return 10 * power
}
