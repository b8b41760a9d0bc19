package main

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"testing"
)

// flagsOfOne are the flags of one stop: a box of two compartments.
var flagsOfOne = []string{
	"-kind", "box", "-length", "8 ft", "-width", "4 ft", "-height", "5 ft", "-partition", "5 ft;3 in", "-outlet", "48 in",
	"-found", "front;opened;48 in;12 in;4 in;8 in", "-found", "rear;opened;48 in;4 in;0 in;12 in", "-ports", "28 in",
}

func call(t *testing.T, stdin string, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	var out, errs strings.Builder
	code = command.Run(args, strings.NewReader(stdin), &out, &errs)
	return out.String(), errs.String(), code
}

func with(more ...string) []string { return append(append([]string(nil), flagsOfOne...), more...) }

// The first five lines are the crew's message, whatever else is known.
func TestMessage(t *testing.T) {
	for _, args := range [][]string{
		with(),
		with("-truck", "2500 gal", "-lift", "9 ft", "-hose", "100 ft", "-people", "2", "-tools", "bar", "-cover", "12 in"),
		with("-units", "si", "-truck", "9 m3"),
	} {
		out, errs, code := call(t, "", args...)
		if code != 0 || errs != "" {
			t.Fatalf("%v: exit %d, %s", args, code, errs)
		}
		lines := strings.Split(strings.ReplaceAll(out, "\n  ", " "), "\n") // as before they were broken
		for i, head := range []string{"Lids: ", "Pump: ", "Hose: ", "D", "Truck: "} {
			if !strings.HasPrefix(lines[i], head) {
				t.Errorf("%v: line %d is %q, want %q", args, i+1, lines[i], head)
			}
		}
		if !strings.Contains(out, "Never enter a tank") || !strings.Contains(out, "Sources") {
			t.Errorf("%v: no caution or no source", args)
		}
	}
}

// Gallons of a box by hand: 5 ft by 4 ft by 4 ft, and 2 ft 9 in by 4 ft by 4 ft.
func TestGallons(t *testing.T) {
	out, _, code := call(t, "", with("-out", "json", "-id", "a")...)
	var got struct {
		ID           string  `json:"id"`
		Remove       float64 `json:"remove_gal"`
		Message      []string
		Compartments []struct {
			Now, Scum, Clear, Sludge float64
			NowGal                   float64 `json:"now_gal"`
			ScumGal                  float64 `json:"scum_gal"`
			ClearGal                 float64 `json:"clear_gal"`
			SludgeGal                float64 `json:"sludge_gal"`
		}
		Judged bool `json:"not_below_judged"`
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil || code != 0 {
		t.Fatalf("exit %d, %v: %s", code, err, out)
	}
	const perCubicFoot = 1728. / 231
	front, rear := 80*perCubicFoot, 44*perCubicFoot
	if got.ID != "a" || !(math.Abs(got.Remove-front-rear) <= 1e-6) || len(got.Message) != 5 || got.Judged {
		t.Errorf("%+v", got)
	}
	c := got.Compartments[0]
	if !(math.Abs(c.SludgeGal-front/4) <= 1e-6) || !(math.Abs(c.ScumGal-front/12) <= 1e-6) || !(math.Abs(c.ClearGal-front*2/3) <= 1e-6) {
		t.Errorf("front %+v of %v", c, front)
	}
}

// A level not to go below is never printed lower than it is.
func TestNotBelow(t *testing.T) {
	out, _, code := call(t, "", with("-not-below", "20.26 in", "-because", "empty walls")...)
	if code != 0 || !strings.Contains(out, "DO NOT GO BELOW 1 ft 8 1/2 in above the floor (empty walls)") || strings.Contains(out, "to 1 ft 8 1/4 in") {
		t.Errorf("exit %d:\n%s", code, out)
	}
}

// A compartment that is left out of the record was not opened, and nothing in
// it is known.
func TestNotOpened(t *testing.T) {
	record := `{"id":"x","shape":{"kind":"box","length":"8 ft","width":"4 ft","height":"5 ft"},"partitions":[{"at":"5 ft","thickness":"3 in"}],"outlet":"48 in","compartments":[{"name":"front","state":"opened","level":"48 in"}]}`
	out, _, code := call(t, record+"\n", "-in", "-", "-out", "csv")
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || code != 0 || len(rows) != 3 {
		t.Fatalf("exit %d, %v: %s", code, err, out)
	}
	if rows[2][2] != "not opened" || rows[2][3] != "" || rows[1][3] == "" {
		t.Errorf("%v", rows)
	}
}

// A bad record is refused with every fault by name; the others are written.
func TestRefused(t *testing.T) {
	good := `{"id":"good","shape":{"kind":"box","length":"8 ft","width":"4 ft","height":"5 ft"},"outlet":"48 in"}`
	bad := `{"id":"bad","shape":{"kind":"box","length":"8 ft","width":"4 ft","height":"5 ft"},"outlet":"48 in","compartments":[{"state":"opened","level":"70 ft","sludge":"-1 in"}]}`
	unit := `{"id":"unit","shape":{"kind":"box","length":"8","width":"4 ft","height":"5 ft"},"outlet":"48 in"}`
	out, _, code := call(t, good+"\n"+bad+"\n"+unit+"\n"+good+"\n", "-in", "-", "-out", "json")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if code != 1 || len(lines) != 4 {
		t.Fatalf("exit %d: %s", code, out)
	}
	for _, want := range []string{`"id":"bad"`, `"errors"`, "level", "sludge"} {
		if !strings.Contains(strings.ToLower(lines[1]), want) {
			t.Errorf("%s: want %s in it", lines[1], want)
		}
	}
	if !strings.Contains(lines[2], "a number with a unit") {
		t.Errorf("%s: want the list of units", lines[2])
	}
	if lines[0] != lines[3] {
		t.Error("equal records have different results")
	}
}

func TestWrongCall(t *testing.T) {
	for _, args := range [][]string{{}, {"-kind"}, {"-nothing"}, {"-in", "/nowhere/at/all"}, with("-out", "pdf"), with("-found", "a;b;c;d;e;f;g;h"), with("-found", "front;ajar")} {
		out, errs, code := call(t, "", args...)
		if code != 2 || out != "" || strings.Count(errs, "\n") != 1 {
			t.Errorf("%v: exit %d, out %q, err %q", args, code, out, errs)
		}
	}
	out, _, code := call(t, "", "-h")
	if code != 0 || !strings.Contains(out, "Pumpout plans the pump-out") {
		t.Errorf("-h: exit %d: %s", code, out)
	}
}

// The truck's gauge is set against the shape.
func TestGauge(t *testing.T) {
	record := `{"shape":{"kind":"box","length":"5 ft","width":"4 ft","height":"5 ft"},"outlet":"48 in","compartments":[{"name":"tank","state":"opened","level":"48 in","gauge_before":"100 gal","gauge_after":"850 gal"}]}`
	out, _, code := call(t, record+"\n", "-in", "-")
	if code != 0 || !strings.Contains(out, "Gauge, tank: 750 gal on the truck against 598.4 gal by shape, ratio 1.25") || !strings.Contains(out, "recalibrate") {
		t.Errorf("exit %d: %s", code, out)
	}
}
