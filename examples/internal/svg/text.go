package svg

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Anchor says which part of a text stands at its point.
type Anchor uint8

// The anchors.
const (
	Middle Anchor = iota
	Begin
	End
)

func (a Anchor) String() string {
	return [...]string{"middle", "start", "end"}[min(a, End)]
}

// Text writes words at a point, moved by pixels to the right and down.
func (d *Drawing) Text(at Point, words string, a Anchor, right, down float64) {
	x, y := d.at(at)
	d.over.WriteString(d.text(x+right, y+down, words, a, ""))
}

// text is one line of text, with a white rim so that it can be read over lines.
func (d *Drawing) text(x, y float64, words string, a Anchor, more string) string {
	return fmt.Sprintf(`<text x="%s" y="%s" text-anchor="%s" dominant-baseline="central" fill="%s" stroke="#fff" stroke-width="3" paint-order="stroke"%s>%s</text>`+"\n",
		d.px(x), d.px(y), a, ink, more, escape(words))
}

// lines cuts words into lines of at most width pixels, at blanks and line ends
// only: a no-break space holds a figure and its unit together.
func (d *Drawing) lines(words string, width float64) []string {
	var lines []string
	line := ""
	for word := range strings.FieldsFuncSeq(words, func(r rune) bool { return r != '\u00a0' && unicode.IsSpace(r) }) {
		switch {
		case line == "":
			line = word
		case d.width(line+" "+word) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}

// width estimates how wide a line of text comes out, on the wide side.
func (d *Drawing) width(words string) float64 {
	return 0.56 * d.page.Text * float64(utf8.RuneCountInString(words))
}
