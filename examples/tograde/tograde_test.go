package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func call(stdin string, args ...string) (code int, stdout, stderr string) {
	var out, errs bytes.Buffer
	code = command.Run(args, strings.NewReader(stdin), &out, &errs)
	return code, out.String(), errs.String()
}

var two = []string{"-cover", "26 in", "-reveal", "2 in", "-port", "24 in", "-roof", "4 in",
	"-ring", "code=r6; height=6 in; bore=24 in; outside=30 in", "-ring", "code=r4; height=4 in; bore=24 in; outside=30 in; count=2",
	"-lid", "code=c24; fits=24 in; stands=3 in; mass=60 lb"}

func TestRun(t *testing.T) {
	for _, c := range []struct {
		name  string
		stdin string
		args  []string
		code  int
		has   []string // in the output
		err   string   // in stderr
	}{
		{"stack", "", two, 0, []string{"Height to make up: 2 ft 4 in", "3 x r6 + 1 x r4, lid c24", "Pit: 4 ft 6 in round", "Taken: groundwater at grade"}, ""},
		{"stack in millimetres", "", []string{"-cover", "660.4 mm", "-reveal", "50.8 mm", "-port", "609.6 mm",
			"-ring", "height=152.4 mm; bore=609.6 mm; outside=762 mm; code=r6", "-ring", "height=101.6 mm; bore=609.6 mm; outside=762 mm; count=2; code=r4", "-lid", "fits=609.6 mm; stands=76.2 mm; code=c24"}, 0,
			[]string{"Height to make up: 2 ft 4 in", "3 x r6 + 1 x r4, lid c24", "108.2 ft3"}, ""},
		{"nothing fits", "", []string{"-cover", "8 in", "-port", "24 in", "-below", "0 in", "-above", "0 in", "-ring", "code=r; height=6 in; bore=24 in; outside=30 in"}, 0,
			[]string{"none: the nearest below is 1 1/2 in short; the nearest above is 5 in too high"}, ""},
		{"too narrow", "", []string{"-cover", "8 in", "-port", "24 in", "-ring", "code=r20; height=6 in; bore=20 in; outside=26 in"}, 0, []string{"r20: bore 1 ft 8 in is narrower than the port of 2 ft"}, ""},
		{"unsafe opening first", "", []string{"-seen", "cover_present=no; roots=yes"}, 0, []string{"NOTICE", "urgent open-hole", "Guard the opening now", "STOP: Guard every open hole"}, ""},
		{"weak roof", "", []string{"-seen", "roots=yes; roof_strength=fail"}, 0, []string{"RULED OUT: the roof is not shown to carry"}, ""},
		{"tie and hose", "", []string{"-tie", "corners=5 ft; from_a=3 ft; from_b=4 ft", "-hose", "along=90 ft; bottom=8 ft; inlet=4 ft"}, 0, []string{"along from the first corner", "lift 12 ft"}, ""},
		{"manual", "", []string{"-h"}, 0, []string{"Tograde brings one access", "-soil-type"}, ""},
		{"nothing asked", "", nil, 2, nil, "no record"},
		{"type A", "", []string{"-cover", "26 in", "-soil-type", "A"}, 2, nil, "C, B-declared"},
		{"bare number", "", []string{"-cover", "26"}, 2, nil, "a number with a unit"},
		{"unknown name in a ring", "", []string{"-cover", "1 ft", "-ring", "hight=6 in"}, 2, nil, "height"},
		{"name twice", "", []string{"-cover", "1 ft", "-ring", "height=6 in; height=4 in"}, 2, nil, "each name once"},
		{"refused", "", []string{"-cover", "26 ft", "-port", "1 in", "-ring", "height=6 in; bore=24 in; outside=30 in"}, 1, []string{"port", "cover"}, ""},
		{"no drawing", "", []string{"-out", "svg", "-cover", "1 ft"}, 1, nil, "a drawing needs"},
		{"batch", "{\"id\":\"a\",\"cover\":\"1 ft\"}\n{\"id\":\"b\",\"cover\":\"-1 ft\"}\n{\"id\":\"c\",\"cover\":\"1 ft\",\"depth\":3}\n{\"id\":\"d\",\"cover\":\"2 ft\"}\n", []string{"-in", "-", "-out", "json"}, 1,
			[]string{`"id":"a"`, `{"id":"b","errors":`, `{"id":"c","errors":`, `"id":"d"`}, "2 of 4"},
	} {
		code, out, errs := call(c.stdin, c.args...)
		if code != c.code {
			t.Errorf("%s: exit %d, want %d: %s%s", c.name, code, c.code, out, errs)
		}
		for _, want := range c.has {
			if !strings.Contains(out+errs, want) {
				t.Errorf("%s: no %q in\n%s%s", c.name, want, out, errs)
			}
		}
		if !strings.Contains(errs, c.err) {
			t.Errorf("%s: no %q in stderr: %s", c.name, c.err, errs)
		}
	}
}

// TestJSON: the numbers of a record are those of geometry, done here by hand.
func TestJSON(t *testing.T) {
	code, out, errs := call("", append([]string{"-out", "json"}, two...)...)
	if code != 0 {
		t.Fatal(errs)
	}
	var got struct {
		Reach struct {
			Height float64 `json:"height_in"`
			Inside float64 `json:"inside_in"`
		}
		Stacks struct {
			Feasible int
			Best     []struct {
				Total float64 `json:"total_in"`
				Mass  float64 `json:"mass_lb"`
			}
		}
		Pit struct {
			Hole float64 `json:"hole_ft3"`
		}
		Joint struct {
			Length float64 `json:"length_in"`
		}
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	hole := math.Pi * 26 / 12 / 3 * (5.5*5.5 + 5.5*2.25 + 2.25*2.25)
	mass := math.Pi/4*(30*30-24*24)*22/1728*150 + 60
	for _, c := range []struct{ got, want float64 }{
		{got.Reach.Height, 28}, {got.Reach.Inside, 32}, {float64(got.Stacks.Feasible), 1},
		{got.Stacks.Best[0].Total, 27}, {got.Stacks.Best[0].Mass, mass}, {got.Pit.Hole, hole}, {got.Joint.Length, 27 * math.Pi},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-9*c.want) {
			t.Errorf("got %v, want %v", c.got, c.want)
		}
	}
}

// TestCSV: a header with units reads, every row is full and has its id.
func TestCSV(t *testing.T) {
	in := "id,cover_in,reveal_in,outside_in,bore_in\na,26,2,30,24\nb,40,0,30,24\n"
	path := filepath.Join(t.TempDir(), "in.csv")
	if err := os.WriteFile(path, []byte(in), 0o600); err != nil {
		t.Fatal(err)
	}
	code, out, errs := call("", "-in", path, "-out", "csv")
	if code != 0 {
		t.Fatal(errs)
	}
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 3 || rows[1][0] != "a" || rows[2][0] != "b" || rows[1][1] != "28" || rows[2][1] != "40" {
		t.Errorf("got %v", rows)
	}
}

// TestDrawing: the picture is well-formed, names what it shows, and also stands
// where the tops of the ground and of a square list of rings differ.
func TestDrawing(t *testing.T) {
	for _, args := range [][]string{two,
		append([]string{"-slope", "8 deg", "-groundwater", "20 in"}, two...),
		{"-cover", "26 in", "-outside", "30 in", "-bore", "24 in"},
		{"-cover", "0 in", "-outside", "30 in", "-bore", "24 in"},
		{"-cover", "3 ft", "-port", "20 in", "-ring", "code=<a&b>; height=12 in; bore=20 in; top_bore=24 in; outside=30 in", "-ring", "height=12 in; bore=24 in; outside=30 in; code=x"},
	} {
		code, out, errs := call("", append([]string{"-out", "svg"}, args...)...)
		if code != 0 {
			t.Fatalf("%v: %s", args, errs)
		}
		d := xml.NewDecoder(strings.NewReader(out))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatalf("%v: %v", args, err)
			}
		}
		for _, want := range []string{"<svg", "aria-label=\"Section through the riser", "grade"} {
			if !strings.Contains(out, want) {
				t.Errorf("%v: no %s", args, want)
			}
		}
	}
}
