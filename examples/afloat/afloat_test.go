package main

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
)

type floatLine struct {
	ID       string   `json:"id"`
	State    string   `json:"state"`
	Factor   *float64 `json:"factor"`
	Down     float64  `json:"down_lbf"`
	Uplift   float64  `json:"uplift_lbf"`
	Leave    string   `json:"leave"`
	Least    *float64 `json:"least_liquid_in"`
	Limit    *float64 `json:"water_limit_in"`
	Shell    float64  `json:"shell_lb"`
	Cautions []struct{ Code string }
	Assumed  []struct{ Code string }
	Stages   []struct {
		Stage  string
		Factor *float64
	}
	Errors []struct{ Field string }
}

func run(t *testing.T, lines string) ([]floatLine, int) {
	t.Helper()
	var out bytes.Buffer
	code := command.Run([]string{"-in", "-", "-out", "json"}, strings.NewReader(lines), &out, io.Discard)
	var list []floatLine
	for line := range strings.Lines(out.String()) {
		var f floatLine
		if err := json.Unmarshal([]byte(line), &f); err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		list = append(list, f)
	}
	return list, code
}

const box = `"shape":{"kind":"box","length":"96 in","width":"60 in","height":"60 in"},"wall":"3 in","roof":"4 in","floor":"3 in"`

// One tank by hand: outside 8.5 x 5.5 x 5.5833 ft, shell 61.02 ft3.
func TestByHand(t *testing.T) {
	list, code := run(t, `{"id":"a",`+box+`,"cover":"1 ft","found":"48 in","lids":"300 lb","dug":"10 ft3"}
{"id":"deep",`+box+`,"cover":"1 ft","groundwater":"20 ft"}
`)
	if code != 0 || len(list) != 2 {
		t.Fatalf("exit %d, %+v", code, list)
	}
	plan := 8.5 * 5.5
	uplift := 62.4 * plan * 67 / 12
	shell := 135 * (plan*67/12 - 200)
	down := shell + 300 + (plan-10)*37.6
	a := list[0]
	for what, pair := range map[string][2]float64{
		"uplift": {a.Uplift, uplift}, "down": {a.Down, down}, "factor": {*a.Factor, down / uplift}, "shell": {a.Shell, shell},
		"least": {*a.Least, (1.2*uplift - down) / 62.4 / 40 * 12},
		"found": {*a.Stages[0].Factor, (shell + 300 + plan*37.6 + 62.4*160) / uplift},
		"off":   {*a.Stages[1].Factor, (shell + plan*37.6 + 62.4*160) / uplift},
		"dug":   {*a.Stages[2].Factor, (shell + (plan-10)*37.6 + 62.4*160) / uplift},
		"pump":  {*a.Stages[3].Factor, (shell + (plan-10)*37.6) / uplift},
	} {
		if !(math.Abs(pair[0]-pair[1]) <= 1e-9*pair[1]) {
			t.Errorf("%s: %v, want %v", what, pair[0], pair[1])
		}
	}
	if a.State != "floats" || a.Leave != "leave at least" {
		t.Errorf("%s, %s", a.State, a.Leave)
	}
	codes := ""
	for _, c := range append(a.Cautions, a.Assumed...) {
		codes += c.Code + " "
	}
	for _, want := range []string{"do-not-empty", "may-float", "groundwater-unknown", "groundwater-at-grade", "soil", "local-code"} {
		if !strings.Contains(codes, want+" ") {
			t.Errorf("no %s among %s", want, codes)
		}
	}
	if d := list[1]; d.State != "no uplift" || d.Factor != nil || d.Leave != "factor kept when empty" || d.Least != nil {
		t.Errorf("water below the tank: %+v", d)
	}
}

func TestRefusals(t *testing.T) {
	good := `{"id":"g",` + box + `}` + "\n"
	for _, c := range []struct{ record, fields string }{
		{`{"id":"b",` + box + `,"cover":"-1 ft","groundwater":"-2 ft","liquid":"9 ft","required":0.5,"wedge_slope":2}`, "cover groundwater liquid required wedge_slope"},
		{`{"id":"b",` + box + `,"riser_diameters":["24 in","1 in"],"soil_moist":"9 lb/ft3","concrete_density":"1 lb/ft3","found":"9 ft"}`, "riser_diameters[1] soil_moist concrete_density"},
		{`{"id":"b",` + box + `,"found":"9 ft"}`, "found"},
		{`{"id":"b",` + box + `,"ballast":[{"mass":"100 lb","density":"5 lb/ft3"}]}`, "ballast[0].density"},
		{`{"id":"b",` + box + `,"lids":"100"}`, "lids"},
		{`{"id":"b","shape":{"kind":"surveyed","levels":[{"depth":"0 in","area":"20 ft2"},{"depth":"9 in","area":"20 ft2"}]}}`, "shape.kind"},
		{`{"id":"b","shape":{"kind":"box","length":"9 ft"},"cover":"1 ft"}`, "shape.width shape.height"},
	} {
		list, code := run(t, good+c.record+"\n"+good)
		if code != 1 || len(list) != 3 || list[0].Uplift == 0 || list[2].Uplift == 0 {
			t.Errorf("%s: exit %d, %+v", c.record, code, list)
			continue
		}
		var faults []string
		for _, e := range list[1].Errors {
			faults = append(faults, e.Field)
		}
		slices.Sort(faults)
		if got, want := slices.Compact(faults), slices.Sorted(strings.FieldsSeq(c.fields)); !slices.Equal(got, want) {
			t.Errorf("%s: faults of %q, want %q", c.record, got, want)
		}
	}
}

// What a crew reads: the assumption stands beside the level not to go below, and
// nothing is called safe.
func TestText(t *testing.T) {
	for _, args := range []string{
		"-kind box -length 96in -width 60in -height 60in -wall 3in -cover 1ft -found 48in",
		"-kind horizontal-cylinder -diameter 5ft -length 8ft -heads ellipsoidal -material plastic -empty-mass 400lb -cover 2ft -groundwater 3ft",
		"-kind vertical-cylinder -diameter 5ft -height 5ft -cover 2ft -groundwater 0in -flange 6in -riser-diameters 30in;30in -openings 24in -required 1.5 -wedge-slope 0.25",
	} {
		var out bytes.Buffer
		if code := command.Run(strings.Fields(args), nil, &out, io.Discard); code != 0 {
			t.Fatalf("%s: exit %d", args, code)
		}
		text := out.String()
		if strings.Contains(args, "-groundwater") == strings.Contains(text, "not measured, taken at grade") {
			t.Errorf("%s: groundwater in %s", args, text)
		}
		for _, want := range []string{"FS = W/U", "Local code", "Sources: "} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in %s", args, want, text)
			}
		}
		if strings.Contains(strings.ToLower(text), " safe") {
			t.Errorf("%s: calls something safe: %s", args, text)
		}
		for _, format := range []string{"csv", "json"} {
			if code := command.Run(append(strings.Fields(args), "-out", format), nil, io.Discard, io.Discard); code != 0 {
				t.Errorf("%s as %s: exit %d", args, format, code)
			}
		}
	}
}
