package visit

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"manway.example/manway"
	"manway.example/manway/examples/internal/fold"
)

// structureNotice stands over every structural result.
const structureNotice = "Unreviewed screening of what stands there, not a design: a licensed engineer decides."

// WriteText writes the whole visit for a terminal of 80 columns.
func (v Visit) WriteText(w io.Writer) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "Visit %s, %s\n", v.Survey.ID, v.Survey.Date)
	paragraph(b, "", v.Survey.Note)
	for _, s := range v.Sections {
		if len(s.Figures)+len(s.Photos) == 0 { // drawings and room for photographs are of the page
			s.writeText(b)
		}
	}
	heading(b, "Cautions")
	for _, c := range v.Cautions().List() {
		mark := "- "
		if c.Level == manway.Stop {
			mark = "! "
		}
		paragraph(b, mark, c.Sentence)
	}
	return b.Flush()
}

func (s Section) writeText(b *bufio.Writer) {
	heading(b, s.Title)
	if s.Structure {
		paragraph(b, "", structureNotice)
	}
	for _, line := range s.Says {
		paragraph(b, "* ", line)
	}
	for _, f := range s.Facts {
		paragraph(b, "", f.Label+": "+f.Text)
	}
	for _, t := range s.Tables {
		t.writeText(b)
	}
	rows, notes := checkRows(s.Checks, s.System)
	for _, r := range rows {
		line := r.Name + ": " + r.Outcome
		if r.Use != "" {
			line += ", " + r.Use
		}
		paragraph(b, "", line)
	}
	for i, n := range notes {
		paragraph(b, fmt.Sprintf("(%d) ", i+1), n)
	}
	for _, u := range s.Unjudged {
		paragraph(b, "? ", u)
	}
	paragraph(b, "? ", taken(s.Assumed))
	for _, step := range s.Working {
		paragraph(b, "  ", step.String())
	}
	if s.Method != "" {
		paragraph(b, "", "Method: "+s.Method)
	}
	for _, c := range s.Basis {
		paragraph(b, "", "Source: "+c.String())
	}
}

// taken names what was taken because it was not measured; empty for nothing.
func taken(a manway.Assumptions) string {
	list := a.List()
	if len(list) == 0 {
		return ""
	}
	words := make([]string, len(list))
	for i, one := range list {
		words[i] = one.Taken
	}
	return "Taken, since not measured: " + strings.Join(words, "; ") + "."
}

func heading(b *bufio.Writer, title string) {
	fmt.Fprintf(b, "\n%s\n%s\n", strings.ToUpper(title), strings.Repeat("-", min(utf8.RuneCountInString(title), fold.Width)))
}

// paragraph breaks text at blanks to the line width; mark stands before its
// first line and the rest is set in under the text.
func paragraph(b *bufio.Writer, mark, text string) {
	hang := utf8.RuneCountInString(mark)
	if hang == 0 {
		hang = 2
	}
	if text = strings.Join(strings.Fields(text), " "); text != "" {
		fmt.Fprintln(b, fold.Line(mark+text, hang))
	}
}

// writeText sets the table in columns if it fits the line, else a row becomes
// a block of lines, a line a column.
func (t Table) writeText(b *bufio.Writer) {
	if t.Title != "" {
		paragraph(b, "", t.Title+":")
	}
	if t.Prose {
		for _, g := range t.Groups() {
			paragraph(b, "", g.Head)
			for _, item := range g.Items {
				paragraph(b, "* ", item)
			}
		}
		return
	}
	width := make([]int, len(t.Columns))
	total := 0
	for i, label := range t.Columns {
		width[i] = utf8.RuneCountInString(label)
		for _, row := range t.Rows {
			width[i] = max(width[i], utf8.RuneCountInString(row[i].Text))
		}
		total += width[i] + 2
	}
	if total > fold.Width {
		for _, row := range t.Rows {
			for i, c := range row {
				mark := "    "
				if i == 0 {
					mark = "  > "
				}
				paragraph(b, mark, t.Columns[i]+": "+c.Text)
			}
		}
		return
	}
	line := func(cell func(i int) (text string, right bool)) {
		var out strings.Builder
		for i := range t.Columns {
			text, right := cell(i)
			pad := strings.Repeat(" ", width[i]-utf8.RuneCountInString(text))
			if right {
				text = pad + text
			} else {
				text += pad
			}
			out.WriteString("  " + text)
		}
		fmt.Fprintln(b, strings.TrimRight(out.String(), " "))
	}
	line(func(i int) (string, bool) {
		return t.Columns[i], t.right(i)
	})
	for _, row := range t.Rows {
		line(func(i int) (string, bool) { return row[i].Text, row[i].Is == Number })
	}
}

// right reports whether a column has a figure, so that its heading stands to the
// right as figures do.
func (t Table) right(i int) bool {
	return slices.ContainsFunc(t.Rows, func(row []Cell) bool { return row[i].Is == Number })
}

// Group is rows of prose that differ in their last cell only: what they share
// as a head, and what each adds. Where no two rows of a table share anything,
// each is one item without a head.
type Group struct {
	Head  string
	Items []string
}

// Groups sets out a table of prose: "SOON, inlet lid:" over all that was seen
// there.
func (t Table) Groups() []Group {
	var list []Group
	for _, row := range t.Rows {
		head, last := proseHead(row)+":", row[len(row)-1].Text
		if n := len(list); n > 0 && list[n-1].Head == head {
			list[n-1].Items = append(list[n-1].Items, last)
			continue
		}
		list = append(list, Group{head, []string{last}})
	}
	if len(list) == len(t.Rows) {
		for i, g := range list {
			list[i] = Group{Items: []string{g.Head + " " + g.Items[0]}}
		}
	}
	return list
}

// proseHead is a row of prose up to its last cell.
func proseHead(row []Cell) string {
	parts := make([]string, len(row)-1)
	for i := range parts {
		parts[i] = row[i].Text
	}
	return strings.Join(parts, ", ")
}

// plural is n and the noun, with an s for any count but one.
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
