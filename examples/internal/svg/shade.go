package svg

import (
	"fmt"
	"math"
)

// Shade fills the rectangle with corners a and b with a grey, from white at tone
// 0 to a grey on which black ink can still be read at tone 1: values over an area.
func (d *Drawing) Shade(a, b Point, tone float64) {
	if math.IsNaN(tone) {
		d.px(tone) // which notes the fault
		return
	}
	const darkest = 0x70
	grey := 0xff - int(math.Round(min(max(tone, 0), 1)*(0xff-darkest)))
	x0, y0 := d.at(Point{min(a.X, b.X), max(a.Y, b.Y)})
	x1, y1 := d.at(Point{max(a.X, b.X), min(a.Y, b.Y)})
	// A hair wider, so that no seam shows between neighbours.
	fmt.Fprintf(&d.shapes, `<rect x="%s" y="%s" width="%s" height="%s" fill="#%02x%02[5]x%02[5]x"/>`+"\n", d.px(x0), d.px(y0), d.px(x1-x0+0.3), d.px(y1-y0+0.3), grey)
}
