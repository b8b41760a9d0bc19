package main

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"
)

const box = `"shape":{"kind":"box","length":"96 in","width":"60 in","height":"64 in"},"partitions":[{"at":"62 in","thickness":"3 in"}]`

func run(t *testing.T, lines string) ([]map[string]any, int) {
	t.Helper()
	var out bytes.Buffer
	code := command.Run([]string{"-in", "-", "-out", "json"}, strings.NewReader(lines), &out, io.Discard)
	var list []map[string]any
	for line := range strings.Lines(out.String()) {
		var m map[string]any
		if err := json.Unmarshal([]byte(line), &m); err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		list = append(list, m)
	}
	return list, code
}

// 93 x 60 x 48 in hold 1,159 gal: enough for 3 bedrooms in Virginia (900), not
// for 4 (1,200).
func TestVerdicts(t *testing.T) {
	list, code := run(t, `{"id":"3","rules":"us-va",`+box+`,"outlet_invert":"48 in","inlet_invert":"49.5 in","bedrooms":3}
{"id":"4","rules":"us-va",`+box+`,"outlet_invert":"48 in","inlet_invert":"52 in","bedrooms":4,"outlet_below":"30 in"}
{"id":"old","rules":"usphs-1967",`+box+`,"outlet_invert":"48 in","bedrooms":6}
{"id":"guard","rules":"us-in",`+box+`,"cover_fastened":"no","secondary_guard":"yes"}
`)
	if code != 0 || len(list) != 4 {
		t.Fatalf("exit %d, %v", code, list)
	}
	status := func(i int, name string) string {
		for _, c := range list[i]["checks"].([]any) {
			m := c.(map[string]any)
			if m["name"] == name {
				return m["status"].(string)
			}
		}
		return "no such check"
	}
	for _, c := range []struct {
		i          int
		name, want string
	}{
		{0, "liquid capacity", "pass"}, {1, "liquid capacity", "fail"}, {0, "drop from inlet to outlet, at most", "pass"},
		{1, "drop from inlet to outlet, at most", "fail"}, {1, "outlet fitting's share of the liquid depth, at most", "fail"},
		{0, "outlet fitting's share of the liquid depth, at most", "not judged"}, {2, "liquid capacity", "not judged"},
		{3, "cover fastened", "fail"}, {3, "guard below the cover", "pass"},
	} {
		if got := status(c.i, c.name); got != c.want {
			t.Errorf("record %d, %s: %s, want %s", c.i, c.name, got, c.want)
		}
	}
}

func TestRefusals(t *testing.T) {
	list, code := run(t, `{"id":"b","rules":"nowhere","shape":{"kind":"box","length":"9 ft"},"bedrooms":-1,"cover_fastened":"maybe"}
{"id":"c","rules":"us-va",`+box+`,"bedrooms":-1,"access_sizes":["20 in","0 in"]}
`)
	if code != 1 || len(list) != 2 {
		t.Fatalf("exit %d, %v", code, list)
	}
	for i, fields := range []string{"rules shape.width shape.height cover_fastened", "bedrooms access_sizes[1]"} {
		text, _ := json.Marshal(list[i])
		for field := range strings.FieldsSeq(fields) {
			if !strings.Contains(string(text), `"field":"`+field+`"`) {
				t.Errorf("no fault for %s in %s", field, text)
			}
		}
	}
}

func TestFormats(t *testing.T) {
	args := strings.Fields("-rules us-ks-wyandotte -kind vertical-cylinder -diameter 5ft -height 5ft -outlet-invert 4ft -bedrooms 2 -cover-mass 40lb -cover-fastened no -access-sizes 24in;18in")
	for format, want := range map[string]string{"text": "cover heavy enough or fastened", "csv": "us-ks-wyandotte,liquid capacity", "json": `"checks":[`} {
		var out bytes.Buffer
		if code := command.Run(append(args, "-out", format), nil, &out, io.Discard); code != 0 || !strings.Contains(out.String(), want) {
			t.Errorf("%s: exit %d, %s", format, code, out.String())
		}
		if format == "text" && !strings.Contains(out.String(), "Local code") {
			t.Errorf("local code is not named: %s", out.String())
		}
	}
}
