package svg

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// Point is a place in the world, in metres, y up.
type Point struct{ X, Y float64 }

// Area is a part of the world, in metres.
type Area struct{ Left, Bottom, Right, Top float64 }

// Page describes a picture.
type Page struct {
	Name  string // short and unique among the pictures of a document: "section"
	Title string // what it shows, for those who cannot see it
	Desc  string // what can be read from it, likewise
	Area  Area
	Width float64 // of the picture with its margins, in pixels; 0: 720
	Tall  float64 // most pixels for the area's height; 0: as the width gives

	// Margins for labels and dimensions, in pixels.
	MarginLeft, MarginRight, MarginTop, MarginBottom float64

	Text float64 // size of texts in pixels; 0: 14
}

// Drawing is a picture in the making. Later things lie over earlier ones; the
// dimensions, levels and texts lie over all shapes.
type Drawing struct {
	page   Page
	scale  float64 // pixels for a metre
	height float64
	shapes strings.Builder
	over   strings.Builder
	used   [fills]bool
	labels []label
	legend []entry
	err    error
}

// Start begins a drawing of the page's area.
func (p Page) Start() *Drawing {
	if p.Width == 0 {
		p.Width = 720
	}
	if p.Text == 0 {
		p.Text = 14
	}
	d := &Drawing{page: p}
	wide, high := p.Area.Right-p.Area.Left, p.Area.Top-p.Area.Bottom
	d.scale = (p.Width - p.MarginLeft - p.MarginRight) / wide
	if p.Tall > 0 {
		d.scale = min(d.scale, p.Tall/high)
	}
	d.height = p.MarginTop + high*d.scale + p.MarginBottom
	if !(wide > 0 && high > 0 && d.scale > 0 && d.height < 1e5) {
		d.err = fmt.Errorf("svg: area %v on %v pixels: want a width, a height and room between the margins", p.Area, p.Width)
	}
	return d
}

// Scale is how many pixels a metre has.
func (d *Drawing) Scale() float64 { return d.scale }

// at gives the pixels of a point. An area narrower than the room it has stands
// in the middle of it.
func (d *Drawing) at(p Point) (x, y float64) {
	a := d.page.Area
	room := d.page.Width - d.page.MarginLeft - d.page.MarginRight
	x = d.page.MarginLeft + (room-(a.Right-a.Left)*d.scale)/2 + (p.X-a.Left)*d.scale
	y = d.page.MarginTop + (a.Top-p.Y)*d.scale
	return x, y
}

// px writes pixels to a hundredth.
func (d *Drawing) px(v float64) string {
	if math.IsNaN(v) || math.Abs(v) > 1e7 {
		if d.err == nil {
			d.err = fmt.Errorf("svg: a coordinate of %v pixels: want a number near the picture", v)
		}
		return "0"
	}
	text := strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
	if text == "-0" {
		return "0"
	}
	return text
}

// xy writes a point in pixels, as paths have it.
func (d *Drawing) xy(p Point) string {
	x, y := d.at(p)
	return d.px(x) + " " + d.px(y)
}

// escape makes a text safe inside elements and attributes.
func escape(text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // a Builder takes everything
	return b.String()
}

// WriteTo writes the drawing as one svg element.
func (d *Drawing) WriteTo(w io.Writer) (int64, error) {
	labels := d.drawLabels()
	legend, height := d.drawLegend()
	if d.err != nil {
		return 0, d.err
	}
	p := d.page
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="%s" width="%s" height="%s" viewBox="0 0 %[2]s %[3]s" style="max-width:100%%;height:auto" font-family="system-ui,sans-serif" font-size="%s" fill="none" stroke-linejoin="round">`,
		escape(p.Title), d.px(p.Width), d.px(height), d.px(p.Text))
	fmt.Fprintf(&b, "\n<title>%s</title>\n", escape(p.Title))
	if p.Desc != "" {
		fmt.Fprintf(&b, "<desc>%s</desc>\n", escape(p.Desc))
	}
	d.definePatterns(&b)
	fmt.Fprintf(&b, `<rect width="%s" height="%s" fill="#fff"/>`+"\n", d.px(p.Width), d.px(height))
	for _, part := range []string{d.shapes.String(), d.over.String(), labels, legend, "</svg>\n"} {
		b.WriteString(part)
	}
	n, err := io.WriteString(w, b.String())
	return int64(n), err
}

// String is the drawing as text, for a page that holds it; empty if the drawing
// cannot be written.
func (d *Drawing) String() string {
	var b strings.Builder
	if _, err := d.WriteTo(&b); err != nil {
		return ""
	}
	return b.String()
}
