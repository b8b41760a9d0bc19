package svg

import (
	"fmt"
	"math"
)

const arrowLong, arrowHalf = 9, 3 // pixels

// span is a dimension line in pixels: its ends, the way along it, and the way
// out, from what is measured to the line.
type span struct{ px, py, qx, qy, ux, uy, nx, ny, long float64 }

// Dimension draws a dimension line between two points, moved by pixels to the
// left of the way from a to b, as seen on the picture; less than 0 is to the
// right. Where there is no room between its arrows they point inwards from
// outside.
func (d *Drawing) Dimension(a, b Point, away float64, words string) {
	ax, ay := d.at(a)
	bx, by := d.at(b)
	long := math.Hypot(bx-ax, by-ay)
	if !(long > 0) {
		if d.err == nil {
			d.err = fmt.Errorf("svg: dimension %q: want two points apart", words)
		}
		return
	}
	s := span{long: long, ux: (bx - ax) / long, uy: (by - ay) / long}
	s.nx, s.ny = s.uy, -s.ux // left of the way, where y is down
	if away < 0 {
		away, s.nx, s.ny = -away, -s.nx, -s.ny
	}
	s.px, s.py = ax+away*s.nx, ay+away*s.ny
	s.qx, s.qy = bx+away*s.nx, by+away*s.ny
	if away > 8 {
		d.thin(ax+3*s.nx, ay+3*s.ny, s.px+5*s.nx, s.py+5*s.ny)
		d.thin(bx+3*s.nx, by+3*s.ny, s.qx+5*s.nx, s.qy+5*s.ny)
	}
	if long >= 2*arrowLong+4 {
		d.thin(s.px, s.py, s.qx, s.qy)
		d.arrow(s.px, s.py, -s.ux, -s.uy)
		d.arrow(s.qx, s.qy, s.ux, s.uy)
	} else {
		d.thin(s.px-2*arrowLong*s.ux, s.py-2*arrowLong*s.uy, s.px, s.py)
		d.thin(s.qx, s.qy, s.qx+2*arrowLong*s.ux, s.qy+2*arrowLong*s.uy)
		d.arrow(s.px, s.py, s.ux, s.uy)
		d.arrow(s.qx, s.qy, -s.ux, -s.uy)
	}
	d.dimensionText(s, words)
}

// dimensionText writes the words of a dimension: over a level line, or under it
// where that is too short, off its arrows; along an upright one, or beside it
// where that is too short.
func (d *Drawing) dimensionText(s span, words string) {
	x, y := (s.px+s.qx)/2, (s.py+s.qy)/2
	over := 0.7 * d.page.Text
	switch {
	case math.Abs(s.uy) < 0.5 && s.long < d.width(words)+2*arrowLong:
		d.over.WriteString(d.text(x, y+over+4, words, Middle, ""))
	case math.Abs(s.uy) < 0.5:
		d.over.WriteString(d.text(x, y-over, words, Middle, ""))
	case s.long >= d.width(words):
		x -= over
		turn := fmt.Sprintf(` transform="rotate(-90 %s %s)"`, d.px(x), d.px(y))
		d.over.WriteString(d.text(x, y, words, Middle, turn))
	case s.nx < 0:
		d.over.WriteString(d.text(x-over, y, words, End, ""))
	default:
		d.over.WriteString(d.text(x+over, y, words, Begin, ""))
	}
}

// thin draws a line of a dimension or a leader, in pixels.
func (d *Drawing) thin(x0, y0, x1, y1 float64) {
	fmt.Fprintf(&d.over, `<path d="M%s %sL%s %s" stroke="%s" stroke-width="1"/>`+"\n", d.px(x0), d.px(y0), d.px(x1), d.px(y1), ink)
}

// arrow draws an arrowhead whose tip is at x, y and points along u.
func (d *Drawing) arrow(x, y, ux, uy float64) {
	fmt.Fprintf(&d.over, `<path d="M%s %sL%s %sL%s %sZ" fill="%s"/>`+"\n", d.px(x), d.px(y),
		d.px(x-arrowLong*ux-arrowHalf*uy), d.px(y-arrowLong*uy+arrowHalf*ux), d.px(x-arrowLong*ux+arrowHalf*uy), d.px(y-arrowLong*uy-arrowHalf*ux), ink)
}

// Level marks the level of a liquid or of groundwater: a triangle that stands
// on its tip, over two short strokes.
func (d *Drawing) Level(at Point) {
	x, y := d.at(at)
	fmt.Fprintf(&d.over, `<path d="M%s %sl-6 -10h12z" fill="#fff" stroke="%s" stroke-width="1.2"/>`+"\n", d.px(x), d.px(y), ink)
	d.thin(x-7, y+3, x+7, y+3)
	d.thin(x-4, y+6, x+4, y+6)
}
