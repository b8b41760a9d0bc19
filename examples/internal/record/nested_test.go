package record

import (
	"flag"
	"testing"

	"manway.example/manway"
)

type rung struct {
	At    manway.Length  `json:"at"`
	Width *manway.Length `json:"width"`
	Count int            `json:"count"`
	Loose bool           `json:"loose"`
	Note  string         `json:"note"`
	Kinds []string       `json:"kinds"`
}

func TestNested(t *testing.T) {
	var one *rung
	var list []rung
	fs := flag.NewFlagSet("t", flag.ContinueOnError)
	fs.SetOutput(discard{})
	Nested(fs, &one, "one", "")
	Appended(fs, &list, "rung", "")
	err := fs.Parse([]string{"-one", `at=2 ft 3 in; width=18in;count=2; loose=true; note=by hand; kinds=["a","b"]`, "-rung", "at=1 ft", "-rung", "at=2 ft"})
	if err != nil {
		t.Fatal(err)
	}
	if one == nil || one.At != 27*manway.Inch || one.Width == nil || *one.Width != 18*manway.Inch || one.Count != 2 || !one.Loose || one.Note != "by hand" || len(one.Kinds) != 2 {
		t.Errorf("one %+v", one)
	}
	if len(list) != 2 || list[1].At != 2*manway.Foot || list[1].Width != nil {
		t.Errorf("list %+v", list)
	}
	for _, bad := range []string{"", "at", "at=", "at=1", "at=1 ft; at=2 ft", "high=1 ft", "count=two", "; at=1 ft"} {
		if err := fs.Parse([]string{"-one", bad}); err == nil {
			t.Errorf("%q was accepted", bad)
		}
	}
}

type discard struct{}

func (discard) Write(p []byte) (int, error) { return len(p), nil }
