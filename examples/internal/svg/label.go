package svg

import (
	"fmt"
	"slices"
	"strings"
)

// Side is a margin that labels stand in.
type Side uint8

// The sides.
const (
	Left Side = iota
	Right
)

// label is words in a margin with a line to what they are about.
type label struct {
	x, y  float64 // what it is about, in pixels
	side  Side
	lines []string
	mid   float64 // where the middle of its lines comes to stand
}

// Label names something by words in a margin and a line that leads there. The
// labels of a side stand under each other in the order of what they are about,
// as near to it as they can without touching.
func (d *Drawing) Label(at Point, side Side, words string) {
	x, y := d.at(at)
	d.labels = append(d.labels, label{x: x, y: y, side: side, lines: d.lines(words, d.margin(side)-leader-2*edge)})
}

const (
	edge   = 4  // pixels between a label and the border
	leader = 18 // pixels of a margin that the lines to the labels need
)

func (d *Drawing) margin(s Side) float64 {
	if s == Left {
		return d.page.MarginLeft
	}
	return d.page.MarginRight
}

// drawLabels places and writes all labels. A column that is taller than the
// picture makes the picture grow.
func (d *Drawing) drawLabels() string {
	var b strings.Builder
	for _, side := range []Side{Left, Right} {
		var column []*label
		for i := range d.labels {
			if d.labels[i].side == side {
				column = append(column, &d.labels[i])
			}
		}
		tall := 2.0 * edge
		for _, l := range column {
			tall += d.tall(l)
		}
		d.height = max(d.height, tall)
		d.place(column)
		for _, l := range column {
			d.writeLabel(&b, l)
		}
	}
	return b.String()
}

func (d *Drawing) lineHeight() float64 { return 1.2 * d.page.Text }

// tall is the room a label takes in its column.
func (d *Drawing) tall(l *label) float64 {
	return float64(len(l.lines))*d.lineHeight() + 0.4*d.page.Text
}

// place finds where the labels of a column stand: in order, clear of each other,
// within the picture, and with the least sum of squares of the distances to
// where they would be best. Neighbours that press on each other move as one
// block, whose best place is the mean of its members' best places.
func (d *Drawing) place(column []*label) {
	slices.SortStableFunc(column, func(a, b *label) int {
		switch {
		case a.y < b.y:
			return -1
		case a.y > b.y:
			return 1
		}
		return 0
	})
	type block struct {
		first      int
		sum, count float64 // of the best places of the block's top
		tall       float64
	}
	var blocks []block
	for i, l := range column {
		tall := d.tall(l)
		b := block{first: i, sum: l.y - tall/2, count: 1, tall: tall}
		for len(blocks) > 0 {
			above := blocks[len(blocks)-1]
			if d.top(above.sum/above.count, above.tall)+above.tall <= d.top(b.sum/b.count, b.tall) {
				break
			}
			b = block{above.first, above.sum + b.sum - b.count*above.tall, above.count + b.count, above.tall + b.tall}
			blocks = blocks[:len(blocks)-1]
		}
		blocks = append(blocks, b)
	}
	for k, b := range blocks {
		end := len(column)
		if k+1 < len(blocks) {
			end = blocks[k+1].first
		}
		top := d.top(b.sum/b.count, b.tall)
		for _, l := range column[b.first:end] {
			l.mid = top + d.tall(l)/2
			top += d.tall(l)
		}
	}
}

// top keeps a block of labels within the picture.
func (d *Drawing) top(best, tall float64) float64 {
	return max(edge, min(best, d.height-edge-tall))
}

func (d *Drawing) writeLabel(b *strings.Builder, l *label) {
	x, anchor, knee := d.page.MarginLeft-leader, End, d.page.MarginLeft-leader+3
	if l.side == Right {
		x, anchor, knee = d.page.Width-d.page.MarginRight+leader, Begin, d.page.Width-d.page.MarginRight+leader-3
	}
	out := knee + leader/2
	if l.side == Right {
		out = knee - leader/2
	}
	path := fmt.Sprintf("M%s %sL%s %sL%s %s", d.px(l.x), d.px(l.y), d.px(out), d.px(l.mid), d.px(knee), d.px(l.mid))
	fmt.Fprintf(b, `<path d="%s" stroke="#fff" stroke-width="3"/><path d="%[1]s" stroke="%[2]s" stroke-width="0.8"/><circle cx="%s" cy="%s" r="2.2" fill="%[2]s"/>`+"\n",
		path, ink, d.px(l.x), d.px(l.y))
	y := l.mid - float64(len(l.lines)-1)*d.lineHeight()/2
	for i, line := range l.lines {
		b.WriteString(d.text(x, y+float64(i)*d.lineHeight(), line, anchor, ""))
	}
}
