package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// call runs the command with arguments parted by |.
func call(args, stdin string) (stdout, stderr string, code int) {
	var out, errs bytes.Buffer
	code = command.Run(strings.Split(args, "|"), strings.NewReader(stdin), &out, &errs)
	return out.String(), errs.String(), code
}

const plug = `-shape|bevelled plug|-diameter|26 in|-bottom-diameter|24 in|-thickness|4 in|-moisture|dry`

func TestText(t *testing.T) {
	for _, c := range []struct {
		name, args string
		want       []string
	}{
		{"a plug", plug, []string{"170.5 lb dry", "tip about the far edge 85.27 lbf", "Unreviewed screening", "NOT SHOWN", "HEAVY", "Guard every open hole"}},
		{"in SI", plug + "|-units|si", []string{"77.35 kg dry", "mm"}},
		{"wide lid", "-shape|disc|-diameter|36 in|-thickness|3 in", []string{"no number: the reach is beyond the equation", "30 in"}},
		{"on the knees", plug + "|-outside|kneeling,one-handed", []string{"no number: the lifting equation does not cover this lift", "kneeling, one-handed"}},
		{"crew of two", plug + "|-people|2|-limit|80 lb", []string{"within 106.7 lbf", "ABOVE 106.7 lbf"}},
		{"handle", plug + "|-handle|state=pitted; waist=3/8 in", []string{"DO NOT LIFT ON IT: pitted"}},
		{"unknown flag", plug + "|-crew-not-a-flag", nil},
		{"guard", plug + "|-people|1|-limit|50 lb|-guard|opening=20 in; depth=0 in; locked=no; fastened=no; secondary=no|-rule|nd-advice",
			[]string{"held by its weight alone", "Change: fasten it", "second guard", "nobody will open it"}},
		{"Example 1", "-lift|load=44 lb; h=23 in; v=15 in; end_h=23 in; end_v=64 in; control=true; grip=fair",
			[]string{"governed by the destination", "origin 16.32 lb, index 2.70", "destination 14.47 lb, index 3.03"}},
		{"hole cover", "-fails-at|1300 lbf", []string{"650 lbf"}},
		{"team", "-team|people=2; each=20 kg|-units|si", []string{"26.67 kg"}},
		{"three tasks", "-task|load=30 lb; free=20 lb; frequency=1|-task|load=20 lb; free=20 lb; frequency=2|-task|load=10 lb; free=15 lb; frequency=4", []string{"composite lifting index 1.86"}},
	} {
		stdout, stderr, code := call(c.args, "")
		if c.want == nil {
			if code != 2 || stdout != "" || stderr == "" {
				t.Errorf("%s: exit %d, %q", c.name, code, stdout)
			}
			continue
		}
		if code != 0 || stderr != "" {
			t.Errorf("%s: exit %d, %s", c.name, code, stderr)
		}
		words := strings.ToUpper(strings.Join(strings.Fields(stdout), " "))
		for _, want := range c.want {
			if !strings.Contains(words, strings.ToUpper(want)) {
				t.Errorf("%s: no %q in\n%s", c.name, want, stdout)
			}
		}
	}
}

// Faults are named as the record names them, all at once.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"-shape|disc|-diameter|1 in|-thickness|3 in|-limit|1 lb|-friction-low|0.9|-friction-high|0.2",
			"diameter 1 in; seat.friction_low 0.9; crew.limit 1 lb"},
		{"-lift|load=1 lb; h=9 ft; end_v=9 ft", "lift.h 9 ft; lift.end_v 9 ft"},
		{plug + "|-handle|state=sound; waist=9 in; embedment=5 in", "handle.waist 9 in; handle.embedment 5 in"},
		{plug + "|-person|1 lb|-span|27 in|-steel|known", "person 1 lb; steel.diameter 0 in; steel.spacing 0 in; span 2 ft 3 in"},
		{plug + "|-guard|opening=0 in|-rule|no-such-rule", `rules[0] "no-such-rule"`},
		{"-fails-at|-1 lbf|-work|lifting=9 h|-team|people=9; each=1 kg|-air|age=0 yr", "team.people 9; work.lifting 9 h; air.class 0; air.age 0 s; fails_at -1 lbf"},
	} {
		stdout, stderr, code := call(c.args, "")
		var got []string
		for line := range strings.Lines(stderr) {
			line = strings.TrimPrefix(strings.TrimSpace(line), "lidcheck: ")
			head, _, _ := strings.Cut(line, ": want")
			got = append(got, head)
		}
		if diff := cmp.Diff(c.want, strings.Join(got, "; ")); code != 1 || stdout != "" || diff != "" {
			t.Errorf("%s: exit %d (-want +got)\n%s", c.args, code, diff)
		}
	}
}

// A record that is refused stands in its place, and the others are written.
func TestBatch(t *testing.T) {
	lines := `{"id":"a","shape":"disc","diameter":"24 in","thickness":"3 in"}
{"id":"b","shape":"disc","diameter":"-24 in","thickness":"3 furlong"}
{"id":"c","shape":"disc","diameter":"24 in","thicknes":"3 in"}
{"id":"d","measured":"50 kg","material":"plastic","shape":"disc","diameter":"60 cm","thickness":"20 mm"}
`
	stdout, _, code := call("-in|-|-out|json", lines)
	if code != 1 {
		t.Errorf("exit %d, want 1", code)
	}
	var ids []string
	for line := range strings.Lines(stdout) {
		var r struct {
			ID     string
			Weight struct {
				Dry float64 `json:"dry_lb"`
			}
			Errors []any
		}
		if err := json.Unmarshal([]byte(line), &r); err != nil {
			t.Fatal(err)
		}
		ids = append(ids, fmt.Sprintf("%s %.1f %d", r.ID, r.Weight.Dry, len(r.Errors)))
	}
	if diff := cmp.Diff([]string{"a 117.8 0", "b 0.0 1", "c 0.0 1", "d 110.2 0"}, ids, cmpopts.EquateEmpty()); diff != "" {
		t.Errorf("(-want +got)\n%s\n%s", diff, stdout)
	}
}

// The same lid in CSV and in JSON, in US and in SI units, gives the same row.
func TestSameRow(t *testing.T) {
	row := func(args, stdin string) string {
		stdout, stderr, code := call(args, stdin)
		lines := strings.Split(strings.TrimSpace(stdout), "\n")
		if code != 0 || len(lines) != 2 {
			t.Fatalf("exit %d %s %s", code, stderr, stdout)
		}
		return lines[1]
	}
	want := row("-in|-|-out|csv", `{"id":"a","shape":"slab","length":"30 in","width":"20 in","thickness":"4 in","seat":{"fit":"let in","depth":"2 in","gap":"1/2 in"},"crew":{"people":2,"limit":"60 lb"}}`+"\n")
	for name, stdin := range map[string]string{
		"csv":    "id,shape,length_in,width_in,thickness_in,seat.fit,seat.depth_in,seat.gap,crew.people,crew.limit_lb\na,slab,30,20,4,let in,2,1/2 in,2,60\n",
		"metric": "id,shape,length_mm,width_mm,thickness_mm,seat.fit,seat.depth_mm,seat.gap,crew.people,crew.limit_lb\na,slab,762,508,101.6,let in,50.8,12.7 mm,2,60\n",
	} {
		if got := row("-in|-|-out|csv", stdin); got != want {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, want)
		}
	}
}

// lids is n records of three shapes.
func lids(n int) string {
	var b strings.Builder
	b.WriteString("id,shape,diameter_in,bottom_diameter_in,length_in,width_in,thickness_in,loss_in,seat.fit,seat.opening_in,crew.people,crew.limit_lb\n")
	for i := range n {
		d := 18 + 2*(i%7)
		switch i % 3 {
		case 0:
			fmt.Fprintf(&b, "%d,disc,%d,,,,3,0.25,on top,%d,2,60\n", i, d, d-4)
		case 1:
			fmt.Fprintf(&b, "%d,bevelled plug,%d,%d,,,4,0.5,bevel,%d,1,50\n", i, d, d-2, d-4)
		case 2:
			fmt.Fprintf(&b, "%d,slab,,,%d,%d,3.5,0,let in,,3,75\n", i, d+8, d)
		}
	}
	return b.String()
}

// BenchmarkBatch is the whole command on 10,000 lids, CSV in and out.
func BenchmarkBatch(b *testing.B) {
	in := lids(10000)
	b.ReportAllocs()
	for b.Loop() {
		if code := command.Run([]string{"-in", "-", "-out", "csv"}, strings.NewReader(in), io.Discard, io.Discard); code != 0 {
			b.Fatal(code)
		}
	}
}
