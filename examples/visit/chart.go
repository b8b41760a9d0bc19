package visit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/svg"
)

// The plotting field of a chart, in the drawing's own measure.
const (
	chartWide = 1.6
	chartHigh = 1.0
)

// costFigure is what each compared remedy has cost by the end of each year, in
// its usual life. Lines are told apart by the letters of the table at
// their ends, not by colour.
func (v Visit) costFigure(a Access, options AccessOptions) Figure {
	c := options.Comparison
	most := 0.0
	for _, o := range c.Options {
		for _, m := range o.Courses[cost.Usual].Curve {
			most = max(most, m.Paid.InexactFloat64())
		}
	}
	step := roundStep(most / 4)
	top := step * math.Ceil(most/step-1e-9)
	years := float64(c.Horizon.Years)
	if top == 0 || years == 0 {
		top, years = 1, 1
	}
	place := func(year, paid float64) svg.Point { return at(year/years*chartWide, paid/top*chartHigh) }
	d := svg.Page{
		Name: "cost-" + slug(a.Name), Title: "Paid by the end of each year, " + a.Name,
		Desc:  "One stepped line a remedy, each step a renewal at the end of its usual life: " + options.named() + ".",
		Area:  svg.Area{Left: 0, Bottom: 0, Right: chartWide, Top: chartHigh},
		Width: 340, MarginLeft: 52, MarginRight: 84, MarginTop: 16, MarginBottom: 48, Text: 14,
	}.Start()
	for y := 0.0; y <= top*(1+1e-9); y += step {
		d.Line(place(0, y), place(years, y), svg.Style{Line: 0.7, Grey: true})
		d.Text(place(0, y), grouped(fmt.Sprintf("%.0f", y)), svg.End, -8, 5)
	}
	for year := 0; year <= c.Horizon.Years; year += max(1, c.Horizon.Years/4) {
		d.Line(place(float64(year), 0), place(float64(year), top), svg.Style{Line: 0.7, Grey: true})
		d.Text(place(float64(year), 0), fmt.Sprint(year), svg.Middle, 0, 20)
	}
	d.Text(place(years/2, 0), "years; "+string(v.Options.Currency)+" paid in all", svg.Middle, 0, 38)
	for i, o := range c.Options {
		curve := o.Courses[cost.Usual].Curve
		var line []svg.Point
		for j, m := range curve {
			if j > 0 {
				line = append(line, place(float64(m.Year), curve[j-1].Paid.InexactFloat64()))
			}
			line = append(line, place(float64(m.Year), m.Paid.InexactFloat64()))
		}
		d.Polyline(line, svg.Style{Line: 1.5 + float64(i%3), Dash: i%2 == 1})
		d.Label(line[len(line)-1], svg.Right, tied(options.letter(o.ID)+" "+grouped(fmt.Sprintf("%.0f", curve[len(curve)-1].Paid.InexactFloat64()))))
	}
	return Figure{Caption: a.Name + ": paid by the end of each year, usual life of each remedy, prices of today.", SVG: picture(d)}
}

// letter is what the table calls a compared remedy.
func (o AccessOptions) letter(id string) string {
	return letter(slices.IndexFunc(o.open(), func(p PricedRemedy) bool { return string(p.Kind) == id }))
}

// named is the compared remedies with their letters, for those who cannot see
// the lines.
func (o AccessOptions) named() string {
	var list []string
	for _, c := range o.Comparison.Options {
		list = append(list, o.letter(c.ID)+" "+c.Title)
	}
	return strings.Join(list, "; ")
}

// roundStep is the next 1, 2 or 5 times a power of ten at or above x.
func roundStep(x float64) float64 {
	if !(x > 0) {
		return 1
	}
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range [...]float64{1, 2, 5} {
		if m*power >= x*(1-1e-9) {
			return m * power
		}
	}
	return 10 * power
}
