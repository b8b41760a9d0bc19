// Package fold breaks the lines of a text at blanks, for a terminal of 80
// columns. What is broken off stands further in than the line's own start: under
// the last column of a table, under the words of a list item, else two columns
// in, so that labels and marks stand out at the left.
package fold

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	Width     = 80 // columns of a terminal
	leastWide = 28 // columns that the last one of a table must have left to be kept
	nearEnd   = 10 // columns of a line in which a clause that ends ends the line
)

// Text breaks every line that is wider than [Width]. A word that is wider, such
// as a path, stands on a line of its own.
func Text(text string) string {
	if len(text) <= Width {
		return text
	}
	var b strings.Builder
	for line := range strings.Lines(text) {
		words, ended := strings.CutSuffix(line, "\n")
		if len(words) <= Width {
			b.WriteString(line)
			continue
		}
		b.WriteString(Line(words, under(words)))
		if ended {
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// Line breaks one line, and sets what follows in by hang columns.
func Line(line string, hang int) string {
	if len(line) <= Width {
		return line
	}
	var b strings.Builder
	rest, indent := []rune(line), 0
	for indent+len(rest) > Width {
		at := breakAt(rest, indent)
		end, next := at, at
		for end > 0 && rest[end-1] == ' ' {
			end--
		}
		for next < len(rest) && rest[next] == ' ' {
			next++
		}
		if next == len(rest) {
			break
		}
		write(&b, indent, rest[:end])
		b.WriteByte('\n')
		rest, indent = rest[next:], hang
	}
	write(&b, indent, rest)
	return b.String()
}

func write(b *strings.Builder, indent int, line []rune) {
	for range indent {
		b.WriteByte(' ')
	}
	for _, r := range line {
		b.WriteRune(r)
	}
}

// breakAt is the blank at which a line that stands in by indent columns is
// broken. Of those within the width it is the last one, but sooner one that ends
// a clause near the width, and sooner one that parts no figure from its unit
// unless that leaves half of the line empty. Where there is none it is the first
// one beyond.
func breakAt(line []rune, indent int) int {
	last, whole, clause := 0, 0, 0
	for i := 1; i < len(line) && (indent+i <= Width || last == 0); i++ {
		if line[i] != ' ' || line[i-1] == ' ' {
			continue
		}
		last = i
		if !holds(line[:i], line[i+1:]) {
			whole = i
		}
		if line[i-1] == ',' || line[i-1] == ';' {
			clause = i
		}
	}
	switch {
	case indent+clause > Width-nearEnd:
		return clause
	case indent+whole > Width/2:
		return whole
	case last > 0:
		return last
	}
	return len(line)
}

// holds reports whether two words belong together: a figure and its unit or its
// fraction, two words of a unit, an equals sign and what it gives.
func holds(before, after []rune) bool {
	switch a := before[len(before)-1]; {
	case a == '=':
		return true
	case '0' <= a && a <= '9':
		return len(after) > 0 && (after[0] == '%' || unicode.IsLetter(after[0]) || unicode.IsDigit(after[0]))
	}
	next, _, _ := strings.Cut(string(after[:min(len(after), 6)]), " ")
	return strings.HasPrefix(next, "ft/ft") || strings.HasPrefix(next, "m/m")
}

var mark = regexp.MustCompile(`^ *(?:[-*!?>]|\d{1,2}\.|\(\d{1,2}\)) +`)

// under is the column under which what is broken off a line stands.
func under(line string) int {
	if i := strings.LastIndex(line, "  "); i > 0 && strings.TrimLeft(line[:i], " ") != "" {
		if table := utf8.RuneCountInString(line[:i+2]); table <= Width-leastWide {
			return table
		}
	}
	if item := mark.FindString(line); item != "" {
		return len(item)
	}
	return len(line) - len(strings.TrimLeft(line, " ")) + 2
}
