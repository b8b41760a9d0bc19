package svg

import (
	"fmt"
	"math"
)

// Dimension draws a dimension line between two points, moved by pixels to the
// left of the way from a to b, as seen on the picture; less than 0 is to the
// right. Where there is no room between its arrows they point inwards from
// outside and the words stand beside.
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
	ux, uy := (bx-ax)/long, (by-ay)/long // along
	nx, ny := uy, -ux                    // to the left, y down
	foot := func(x, y float64) (float64, float64) { return x + away*nx, y + away*ny }
	px, py := foot(ax, ay)
	qx, qy := foot(bx, by)
	gap, beyond := math.Copysign(3, away), math.Copysign(5, away)
	if math.Abs(away) > 8 {
		d.thin(ax+gap*nx, ay+gap*ny, px+beyond*nx, py+beyond*ny)
		d.thin(bx+gap*nx, by+gap*ny, qx+beyond*nx, qy+beyond*ny)
	}
	level := math.Abs(uy) < 0.5
	room := 1.3 * d.page.Text
	if level {
		room = d.width(words)
	}
	const arrow = 9
	turn := ""
	mx, my := (px+qx)/2, (py+qy)/2
	if long >= 2*arrow+4 {
		d.thin(px, py, qx, qy)
		d.arrow(px, py, -ux, -uy)
		d.arrow(qx, qy, ux, uy)
	} else {
		d.thin(px-2*arrow*ux, py-2*arrow*uy, px, py)
		d.thin(qx, qy, qx+2*arrow*ux, qy+2*arrow*uy)
		d.arrow(px, py, ux, uy)
		d.arrow(qx, qy, -ux, -uy)
	}
	if !level && long >= d.width(words)+2*arrow { // written along the line
		turn = fmt.Sprintf(` transform="rotate(-90 %s %s)"`, d.px(mx), d.px(my))
	} else if long < room+2*arrow {
		side := math.Copysign(1, away)
		mx, my = mx+side*nx*(d.page.Text*0.9), my+side*ny*(d.page.Text*0.9)
		if !level {
			anchor := Begin
			if side*nx < 0 {
				anchor = End
			}
			d.over.WriteString(d.text(mx, my, words, anchor, ""))
			return
		}
	}
	d.over.WriteString(d.text(mx, my, words, Middle, turn))
}

// thin draws a line of a dimension or a leader, in pixels.
func (d *Drawing) thin(x0, y0, x1, y1 float64) {
	fmt.Fprintf(&d.over, `<path d="M%s %sL%s %s" stroke="%s" stroke-width="1"/>`+"\n", d.px(x0), d.px(y0), d.px(x1), d.px(y1), ink)
}

// arrow draws an arrowhead whose tip is at x, y and points along u.
func (d *Drawing) arrow(x, y, ux, uy float64) {
	const long, half = 9, 3
	fmt.Fprintf(&d.over, `<path d="M%s %sL%s %sL%s %sZ" fill="%s"/>`+"\n", d.px(x), d.px(y),
		d.px(x-long*ux-half*uy), d.px(y-long*uy+half*ux), d.px(x-long*ux+half*uy), d.px(y-long*uy-half*ux), ink)
}

// Level marks the level of a liquid or of groundwater: a triangle that stands
// on its tip, over two short strokes.
func (d *Drawing) Level(at Point) {
	x, y := d.at(at)
	fmt.Fprintf(&d.over, `<path d="M%s %sl-6 -10h12z" fill="#fff" stroke="%s" stroke-width="1.2"/>`+"\n", d.px(x), d.px(y), ink)
	d.thin(x-7, y+3, x+7, y+3)
	d.thin(x-4, y+6, x+4, y+6)
}
