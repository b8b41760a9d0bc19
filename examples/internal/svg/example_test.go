package svg_test

import (
	"fmt"
	"strings"

	"manway.example/manway/examples/internal/svg"
)

// section draws a tank in the ground, in metres.
func section() *svg.Drawing {
	d := svg.Page{
		Name: "section", Title: "Section through the tank", Desc: "The roof is 0.6 m below grade.",
		Area:  svg.Area{Left: -0.4, Right: 3.0, Bottom: -2.5, Top: 0.25},
		Width: 860, MarginLeft: 190, MarginRight: 190, MarginTop: 16, MarginBottom: 60,
	}.Start()
	p := func(x, y float64) svg.Point { return svg.Point{X: x, Y: y} }
	d.Rect(p(-0.4, 0), p(3.0, -1.4), svg.Style{Fill: svg.Soil})
	d.Rect(p(-0.4, -1.4), p(3.0, -2.5), svg.Style{Fill: svg.Wet})
	d.Rect(p(0, -0.6), p(2.6, -2.3), svg.Style{Fill: svg.Concrete, Line: 1.5})
	d.Rect(p(0.1, -0.7), p(1.5, -2.2), svg.Style{Fill: svg.Paper, Line: 1.5})
	d.Rect(p(1.6, -0.7), p(2.5, -2.2), svg.Style{Fill: svg.Paper, Line: 1.5})
	d.Rect(p(0.1, -1.0), p(1.5, -2.2), svg.Style{Fill: svg.Liquid})
	d.Rect(p(1.6, -1.0), p(2.5, -2.2), svg.Style{Fill: svg.Liquid})
	d.Rect(p(0.1, -0.95), p(1.5, -1.1), svg.Style{Fill: svg.Scum, Line: 1})
	d.Rect(p(0.1, -1.8), p(1.5, -2.2), svg.Style{Fill: svg.Sludge, Line: 1})
	d.Rect(p(0.5, 0.05), p(1.1, -0.6), svg.Style{Fill: svg.Cut, Line: 1, Dash: true})
	d.Path(new(svg.Path).Move(p(1.8, -0.6)).Line(p(1.8, -0.5)).Arc(0.25, 0.25, false, false, p(2.3, -0.5)).Line(p(2.3, -0.6)).Close(),
		svg.Style{Fill: svg.Solid, Line: 1})
	d.Ellipse(p(2.75, -2.0), 0.1, 0.2, svg.Outline)
	d.Line(p(-0.4, 0), p(3.0, 0), svg.Style{Line: 2.5})
	d.Level(p(2.3, -1.0))
	d.Level(p(2.85, -1.4))
	d.Dimension(p(0, -2.3), p(2.6, -2.3), -40, "8 ft 6 1/2 in")
	d.Dimension(p(2.6, -2.3), p(2.6, -0.6), -30, "5 ft 7 in")
	d.Dimension(p(0, -0.6), p(0, 0), 20, "24 in")
	d.Dimension(p(1.5, -0.7), p(1.6, -0.7), 50, "4 in")
	d.Label(p(0.8, -1.02), svg.Left, "scum 6 in")
	d.Label(p(0.8, -1.1), svg.Left, "liquid level at arrival")
	d.Label(p(0.8, -1.12), svg.Left, "inlet <not opened> & \"unknown\"")
	d.Label(p(0.8, -2.0), svg.Left, "sludge 16 in: pump now")
	d.Label(p(2.05, -0.4), svg.Right, "cover over the second compartment, handle rusted through")
	d.Label(p(2.9, -1.4), svg.Right, "groundwater, about")
	d.Label(p(2.55, -1.9), svg.Right, "wall 4 in")
	d.Text(p(0.8, -1.45), "first", svg.Middle, 0, 0)
	d.Legend()
	return d
}

func Example() {
	d := section()
	text := d.String()
	fmt.Println(strings.Contains(text, `role="img" aria-label="Section through the tank"`))
	fmt.Println(strings.Contains(text, "inlet &lt;not opened&gt;"))
	fmt.Printf("%.1f px a metre\n", d.Scale())
	// Output:
	// true
	// true
	// 141.2 px a metre
}
