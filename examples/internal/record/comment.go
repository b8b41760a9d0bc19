package record

import "strings"

// Comment is the package comment at the head of a Go source file, as -h shows
// it: a command embeds its main.go, so that the comment is the manual.
func Comment(source string) string {
	var b strings.Builder
	for line := range strings.Lines(source) {
		text, ok := strings.CutPrefix(line, "//")
		if !ok {
			break
		}
		b.WriteString(strings.ReplaceAll(strings.TrimPrefix(text, " "), "\t", "  "))
	}
	return b.String()
}
