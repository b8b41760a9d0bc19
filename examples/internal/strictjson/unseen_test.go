package strictjson

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What works on a terminal or turns the writing is unseen; letters of every
// script, their accents, blanks and pictures are not.
func TestVisible(t *testing.T) {
	for r, want := range map[rune]string{
		0: `\u0000`, '\a': `\u0007`, '\t': `\u0009`, '\n': `\u000a`, 0x1b: `\u001b`, 0x7f: `\u007f`, 0x80: `\u0080`, 0x9b: `\u009b`, 0xad: `\u00ad`,
		0x061c: `\u061c`, 0x200b: `\u200b`, 0x200d: `\u200d`, 0x200f: `\u200f`, 0x2028: `\u2028`, 0x2029: `\u2029`, 0x202a: `\u202a`, 0x202e: `\u202e`,
		0x2060: `\u2060`, 0x2066: `\u2066`, 0x2069: `\u2069`, 0xfeff: `\ufeff`, 0xe0041: `\udb40\udc41`,
	} {
		if got := Visible("a" + string(r) + "b"); !Unseen(r) || got != "a"+want+"b" {
			t.Errorf("%U: unseen %v, %s", r, Unseen(r), got)
		}
	}
	if plain := "Tank 1/2\" ~ é ß Ω ж 水 עמ ab\u0301 \u00a0 \u2009 € ☂ 🚽 \ufffd"; Visible(plain) != plain {
		t.Errorf("%q shows as %s", plain, Visible(plain))
	}
}

// Texts with unseen characters are refused wherever they stand, each with its
// path; what stands beside them is read.
func TestUnseenTexts(t *testing.T) {
	var v struct {
		Name  string            `json:"name"`
		List  []string          `json:"list"`
		Map   map[string]string `json:"map"`
		Any   any               `json:"any"`
		Plain string            `json:"plain"`
	}
	_, err := Decode([]byte(`{"name":"a\u202eb","list":["c","\u001bd"],"map":{"k\u200b":"1","l":"\u2069"},"any":{"n\u0007":["\u009b"]},"plain":"e","x\u0000":1}`), &v)
	var got []string
	for f := range strings.SplitSeq(err.Error(), "; ") {
		got = append(got, strings.TrimPrefix(f, "line 1: "))
	}
	const want = ": want only characters that are seen"
	if diff := cmp.Diff([]string{
		`name a\u202eb` + want, `list[1] \u001bd` + want, `map.k\u200b 1` + want, `map.l \u2069` + want,
		`any.n\u0007 ["\u009b"]` + want, `any.n\u0007[0] \u009b` + want, `x\u0000 1: want a known field: one of name, list, map, any, plain`,
	}, got); diff != "" || v.Plain != "e" || v.List[0] != "c" {
		t.Errorf("%s%+v", diff, v)
	}
}
