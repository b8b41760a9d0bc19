package strictjson

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"
)

// Unseen reports whether a character does not show on a page or terminal, or
// works on it: controls and escapes, line separators, marks that turn the
// direction of the writing or have no width. No text may have one: it would not
// read as it is stored.
func Unseen(r rune) bool {
	return (r < ' ' || r > '~') && unicode.In(r, unicode.C, unicode.Zl, unicode.Zp)
}

// WantSeen is what is wanted of a text with an [Unseen] character.
const WantSeen = "only characters that are seen"

// Visible is a text with its unseen characters as escapes of JSON, \u202e.
func Visible(text string) string {
	if !strings.ContainsFunc(text, Unseen) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		switch high, low := utf16.EncodeRune(r); {
		case !Unseen(r):
			b.WriteRune(r)
		case r > 0xffff:
			fmt.Fprintf(&b, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}

// seen reports whether every text of a part of the document shows, and notes
// those that do not.
func (d *decoder) seen(path string, n *node) bool {
	if n.kind == text && strings.ContainsFunc(n.text, Unseen) {
		d.wrong(path, n, WantSeen)
		return false
	}
	all := true
	for i, item := range n.items {
		all = d.seen(fmt.Sprintf("%s[%d]", path, i), item) && all
	}
	for _, m := range n.members {
		at := join(path, m.name)
		if strings.ContainsFunc(m.name, Unseen) {
			d.wrong(at, m.value, WantSeen)
			all = false
		}
		all = d.seen(at, m.value) && all
	}
	return all
}
