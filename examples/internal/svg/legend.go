package svg

import (
	"fmt"
	"strings"
)

// entry is one fill of the legend.
type entry struct {
	fill Fill
	name string
}

// Legend explains fills under the drawing; with none given, all that are used
// and have a pattern.
func (d *Drawing) Legend(list ...Fill) {
	if len(list) == 0 {
		for f, p := range patterns {
			if d.used[f] && p.size > 0 {
				list = append(list, Fill(f))
			}
		}
	}
	for _, f := range list {
		d.Explain(f, f.String())
	}
}

// Explain puts one fill into the legend, under a name of its own.
func (d *Drawing) Explain(f Fill, name string) {
	d.used[f] = true
	d.legend = append(d.legend, entry{f, name})
}

// drawLegend writes the legend in rows under the drawing, and says how tall the
// picture is with it.
func (d *Drawing) drawLegend() (rows string, height float64) {
	if len(d.legend) == 0 {
		return "", d.height
	}
	const swatch = 30.0
	row := max(24, 1.7*d.page.Text)
	x, y := 2.0*edge, d.height+row/2
	var b strings.Builder
	for _, e := range d.legend {
		wide := swatch + 6 + d.width(e.name) + 14
		if x+wide > d.page.Width && x > 2*edge {
			x, y = 2*edge, y+row
		}
		fmt.Fprintf(&b, `<rect x="%s" y="%s" width="%s" height="16" fill="%s" stroke="%s"/>`, d.px(x), d.px(y-8), d.px(swatch), d.paint(e.fill), ink)
		b.WriteString(d.text(x+swatch+6, y, e.name, Begin, ""))
		x += wide
	}
	return b.String(), y + row/2 + edge
}
