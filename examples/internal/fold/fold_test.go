package fold

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func TestText(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"short", "Weight: 117.8 lb dry\n", "Weight: 117.8 lb dry\n"},
		{"exactly the width", strings.Repeat("x ", 39) + "xx", strings.Repeat("x ", 39) + "xx"},
		{"under a label",
			"Set it down on 4 ft of clear firm ground; 61.85 lbf at the near edge lets it down again, by a bar\n\nnext",
			"Set it down on 4 ft of clear firm ground; 61.85 lbf at the near edge lets it\n  down again, by a bar\n\nnext"},
		{"under the words of an item",
			"  - the level was read in another compartment than the outlet's: a blocked opening looks the same",
			"  - the level was read in another compartment than the outlet's: a blocked\n    opening looks the same"},
		{"under the last column",
			"  met         liquid capacity  900 gal against 1,197 gal, as Table 5.2 of the regulation has it",
			"  met         liquid capacity  900 gal against 1,197 gal, as Table 5.2 of the\n                               regulation has it"},
		{"a last column with no room",
			"a name that is so long that no room is left for what stands beside it  ABOVE 60 lbf",
			"a name that is so long that no room is left for what stands beside it  ABOVE\n  60 lbf"},
		{"a figure keeps its unit",
			"    bending under its own weight, as all the others are too: use 0.05 of the 225 lbf ft/ft",
			"    bending under its own weight, as all the others are too: use 0.05 of the\n      225 lbf ft/ft"},
		{"a unit of two words stays whole",
			"  the moment of the lid under its own weight and of a person on it is 225 lbf ft/ft",
			"  the moment of the lid under its own weight and of a person on it is\n    225 lbf ft/ft"},
		{"a clause ends the line",
			"demo-4: liquid 1 785.5 gal, liquid 2 not known, pump 0 gal, lid 66.3 lb, reach the 12 in",
			"demo-4: liquid 1 785.5 gal, liquid 2 not known, pump 0 gal, lid 66.3 lb,\n  reach the 12 in"},
		{"an equals sign keeps what it gives",
			"  edge = span/2 x tan(slope), reveal measured uphill = 2 ft 6 in/2 x tan(0 deg) = 0 in",
			"  edge = span/2 x tan(slope), reveal measured uphill = 2 ft 6 in/2 x tan(0 deg)\n    = 0 in"},
		{"a long word stands alone",
			"file " + strings.Repeat("/path", 20) + " is there",
			"file\n  " + strings.Repeat("/path", 20) + "\n  is there"},
		{"a long word in a column", "file  " + strings.Repeat("/path", 20), "file\n      " + strings.Repeat("/path", 20)},
		{"runes, not bytes", strings.Repeat("é", 80), strings.Repeat("é", 80)},
		{"blanks at the end", strings.Repeat("x", 80) + "   \n", strings.Repeat("x", 80) + "   \n"},
	} {
		if diff := cmp.Diff(c.want, Text(c.text)); diff != "" {
			t.Errorf("%s:\n%s", c.name, diff)
		}
	}
}

// Whatever the text, its words stay as they are and in their order, and only a
// line of one word is wider than a terminal.
func FuzzText(f *testing.F) {
	f.Add("a line", 3)
	f.Add("a  long/"+strings.Repeat("/path", 20), 1)
	f.Add("  12  a b\t c 0 0 0 = = (1) \u00a0 é", 40)
	f.Fuzz(func(t *testing.T, piece string, n int) {
		text := strings.Repeat(piece+" ", max(0, n%50))
		got := Text(text)
		if want := strings.Fields(strings.ToValidUTF8(text, "\ufffd")); !cmp.Equal(strings.Fields(strings.ToValidUTF8(got, "\ufffd")), want) && utf8.ValidString(text) {
			t.Errorf("%q becomes %q", text, got)
		}
		for line := range strings.Lines(got) {
			line = strings.TrimRight(line, " \n")
			if utf8.RuneCountInString(line) > Width && strings.Contains(strings.TrimLeft(line, " "), " ") {
				t.Errorf("%q is too wide", line)
			}
		}
	})
}
