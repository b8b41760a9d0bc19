package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
)

// chartLine is what the command writes for one tank.
type chartLine struct {
	ID          string  `json:"id"`
	Full        float64 `json:"full_gal"`
	Liquid      float64 `json:"liquid_gal"`
	LiquidDepth float64 `json:"liquid_depth_in"`
	Parts       []struct {
		Gal   float64 `json:"gal"`
		Share float64 `json:"share"`
		PerIn float64 `json:"gal_per_in"`
	} `json:"compartments"`
	Chart []struct {
		Reading float64 `json:"reading_in"`
		Depth   float64 `json:"depth_in"`
		Gal     float64 `json:"gal"`
		Parts   []struct {
			Gal float64 `json:"gal"`
		} `json:"compartments"`
	} `json:"chart"`
	Errors []struct{ Field, Value, Want string } `json:"errors"`
}

// run runs the command on lines and decodes what it writes.
func run(t *testing.T, lines string, args ...string) ([]chartLine, int) {
	t.Helper()
	var out, errs bytes.Buffer
	code := command.Run(append([]string{"-in", "-", "-out", "json"}, args...), strings.NewReader(lines), &out, &errs)
	var list []chartLine
	for line := range strings.Lines(out.String()) {
		var c chartLine
		if err := json.Unmarshal([]byte(line), &c); err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		list = append(list, c)
	}
	return list, code
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-10*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// seg is the circular segment in its textbook form.
func seg(r, h float64) float64 {
	theta := 2 * math.Acos(1-h/r)
	return r * r / 2 * (theta - math.Sin(theta))
}

// The record of the contract, by the textbook.
func TestContract(t *testing.T) {
	list, code := run(t, `{"id":"t1","shape":{"kind":"horizontal-cylinder","diameter":"60 in","length":"96 in","heads":"ellipsoidal"},"partitions":[{"at":"60 in","thickness":"3 in"}],"liquid_depth":"48 in","depths":["12 in","24 in"]}`)
	if code != 0 || len(list) != 1 {
		t.Fatalf("exit %d, %d lines", code, len(list))
	}
	c := list[0]
	head := func(h float64) float64 { return math.Pi * 15 * h * h * (1 - h/90) / 2 }
	first := func(h float64) float64 { return (60*seg(30, h) + head(h)) / 231 }
	second := func(h float64) float64 { return (33*seg(30, h) + head(h)) / 231 }
	if c.ID != "t1" || len(c.Parts) != 2 || len(c.Chart) != 2 || c.LiquidDepth != 48 {
		t.Fatalf("%+v", c)
	}
	near(t, "full", c.Full, (93*900*math.Pi+math.Pi*15*3600*(1-60.0/90))/231)
	near(t, "liquid", c.Liquid, first(48)+second(48))
	near(t, "first", c.Parts[0].Gal, first(48))
	near(t, "second", c.Parts[1].Gal, second(48))
	near(t, "share", c.Parts[0].Share, first(48)/(first(48)+second(48)))
	near(t, "per inch", c.Parts[0].PerIn, (60*2*math.Sqrt(48*12)+math.Pi*15/2/30*48*12)/231)
	for i, h := range []float64{12, 24} {
		row := c.Chart[i]
		near(t, "chart", row.Gal, first(h)+second(h))
		near(t, "chart, first", row.Parts[0].Gal, first(h))
		near(t, "chart, second", row.Parts[1].Gal, second(h))
		if row.Depth != h {
			t.Errorf("depth %v, want %v", row.Depth, h)
		}
	}
}

// Every kind of shape, by a formula written down here.
func TestKinds(t *testing.T) {
	for _, c := range []struct {
		shape string
		gal   float64 // at 20 in
	}{
		{`"kind":"box","length":"100 in","width":"50 in","height":"60 in"`, 100 * 50 * 20.0 / 231},
		// 90 + z/6 by 44 + z/10, from 0 to 20.
		{`"kind":"box","length":"100 in","width":"50 in","height":"60 in","floor_length":"90 in","floor_width":"44 in"`,
			(90*44*20 + (90.0/10+44.0/6)*200 + 8000.0/3/60) / 231},
		// A fillet of 6 in takes (1 - pi/4) r^2 along each edge, the corners counted once:
		// r^2 (1 - pi/4) (2L + 2W) - 4 (5/3 - pi/2) r^3.
		{`"kind":"box","length":"100 in","width":"50 in","height":"60 in","fillet":"6 in"`,
			(100*50*20 - 36*(1-math.Pi/4)*300 + 4*(5.0/3-math.Pi/2)*216) / 231},
		{`"kind":"vertical-cylinder","diameter":"67 in","height":"65 in"`, math.Pi / 4 * 67 * 67 * 20 / 231},
		{`"kind":"horizontal-cylinder","diameter":"60 in","length":"96 in"`, 96 * seg(30, 20) / 231},
		{`"kind":"horizontal-cylinder","diameter":"60 in","length":"96 in","heads":"hemispherical"`, (96*seg(30, 20) + math.Pi*400*(90-20)/3) / 231},
		{`"kind":"horizontal-cylinder","diameter":"60 in","length":"96 in","heads":["flat","ellipsoidal"],"head_depth":"10 in"`,
			(96*seg(30, 20) + math.Pi*10*400*(1-20.0/90)/2) / 231},
		{`"kind":"horizontal-ellipse","width":"80 in","height":"50 in","length":"96 in"`, 96 * 1.6 * seg(25, 20) / 231},
		{`"kind":"frustum","bottom_diameter":"40 in","top_diameter":"60 in","height":"50 in"`, math.Pi * 20 / 3 * (400 + 20*24 + 576) / 231},
		{`"kind":"sphere","diameter":"70 in"`, math.Pi * 400 * (105 - 20) / 3 / 231},
		{`"kind":"surveyed","levels":[{"depth":"0 in","area":"1000 in2"},{"depth":"16 in","area":"1400 in2"},{"depth":"40 in","area":"1700 in2"}]`,
			(16*1200 + 4*1425.0) / 231},
		{`"kind":"surveyed","levels":[{"depth":"0 in","volume":"0 gal"},{"depth":"10 in","volume":"200 gal"},{"depth":"40 in","volume":"800 gal"}]`, 400},
		{`"kind":"nominal","volume":"1000 gal","depth":"48 in"`, 1000 * 20.0 / 48},
	} {
		list, code := run(t, `{"id":"k","shape":{`+c.shape+`},"liquid_depth":"20 in","depths":["20 in"]}`)
		if code != 0 || len(list) != 1 {
			t.Errorf("%s: exit %d, %+v", c.shape, code, list)
			continue
		}
		near(t, c.shape, list[0].Liquid, c.gal)
		near(t, c.shape+", compartment", list[0].Parts[0].Gal, c.gal)
		near(t, c.shape+", chart", list[0].Chart[0].Gal, c.gal)
	}
}

// The spherical cap and the torispherical head in bodies whose liquid stands at
// the axis, where half the head is full.
func TestDishedKinds(t *testing.T) {
	ball := func(a, r float64) float64 { return math.Pi * a * (3*r*r + a*a) / 6 }
	list, code := run(t, `{"id":"c","shape":{"kind":"horizontal-cylinder","diameter":"60 in","length":"96 in","heads":"spherical-cap","head_depth":["8 in","20 in"]},"liquid_depth":"30 in","depths":["60 in"]}
{"id":"d","shape":{"kind":"horizontal-cylinder","diameter":"108 in","length":"156 in","heads":"torispherical","crown_radius":"108 in","knuckle_radius":"6.48 in"},"liquid_depth":"54 in","depths":["108 in"]}
`)
	if code != 0 || len(list) != 2 {
		t.Fatalf("exit %d, %+v", code, list)
	}
	full := (96*math.Pi*900 + ball(8, 30) + ball(20, 30)) / 231
	near(t, "caps, half", list[0].Liquid, full/2)
	near(t, "caps, full", list[0].Full, full)
	near(t, "torispherical, half", list[1].Liquid*2, list[1].Full)
}

// Liquid over a part-height partition is in the total and in no compartment.
func TestPartHeight(t *testing.T) {
	list, code := run(t, `{"id":"p","shape":{"kind":"box","length":"100 in","width":"50 in","height":"60 in"},"partitions":[{"at":"60 in","thickness":"4 in","height":"40 in"}],"liquid_depth":"50 in","depths":["30 in","50 in"]}`)
	if code != 0 {
		t.Fatalf("exit %d", code)
	}
	c := list[0]
	near(t, "first", c.Parts[0].Gal, 60*50*50.0/231)
	near(t, "second", c.Parts[1].Gal, 36*50*50.0/231)
	near(t, "total", c.Liquid, (96*50*50+4*50*10.0)/231)
	near(t, "below its top", c.Chart[0].Gal, 96*50*30.0/231)
	near(t, "full", c.Full, (96*50*60+4*50*20.0)/231)
	near(t, "share", c.Parts[0].Share, 60*50*50.0/(96*50*50+4*50*10.0))
}

func TestRim(t *testing.T) {
	list, code := run(t, `{"id":"r","shape":{"kind":"box","length":"100 in","width":"50 in","height":"60 in"},"liquid_depth":"50 in","rim":"80 in","step":"15 in"}`)
	if code != 0 {
		t.Fatalf("exit %d", code)
	}
	var got []string
	for _, row := range list[0].Chart {
		got = append(got, fmt.Sprintf("%g:%g", row.Reading, row.Depth))
	}
	if want := "30:50 45:35 60:20 75:5 80:0"; strings.Join(got, " ") != want {
		t.Errorf("readings %v, want %s", got, want)
	}
}

// Every fault of a record is named by its own field; the others are written.
func TestRefusals(t *testing.T) {
	good := `{"id":"g","shape":{"kind":"sphere","diameter":"70 in"},"depths":[]}` + "\n"
	for _, c := range []struct{ record, fields string }{
		{`{"id":"b","shape":{"kind":"cube","length":"9 ft"}}`, "shape.kind"},
		{`{"id":"b","shape":{"kind":"sphere","diameter":"70 in","width":"9 ft"}}`, "shape.width"},
		{`{"id":"b","shape":{"kind":"box","length":"-9 ft","width":"1 in","height":"200 ft"}}`, "shape.length shape.width shape.height"},
		{`{"id":"b","shape":{"kind":"box","length":"9 ft","width":"5 ft"}}`, "shape.height"},
		{`{"id":"b","shape":{"kind":"box","length":"9 ft","width":"5 ft","height":"5 ft"},"partitions":[{"at":"10 ft","thickness":"3 in"},{"at":"3 ft","thickness":"0 in"}]}`, "partitions[0].at partitions[1].thickness"},
		{`{"id":"b","shape":{"kind":"sphere","diameter":"5 ft"},"partitions":[{"at":"2 ft","thickness":"3 in"}]}`, "partitions"},
		{`{"id":"b","shape":{"kind":"horizontal-cylinder","diameter":"5 ft","length":"9 ft","heads":"torispherical","crown_radius":"2 ft"}}`, "shape.crown_radius shape.knuckle_radius"},
		{`{"id":"b","shape":{"kind":"horizontal-cylinder","diameter":"5 ft","length":"9 ft","heads":"spherical-cap"}}`, "shape.head_depth"},
		{`{"id":"b","shape":{"kind":"horizontal-cylinder","diameter":"5 ft","length":"9 ft","heads":"hemispherical","head_depth":"3 in"}}`, "shape.head_depth"},
		{`{"id":"b","shape":{"kind":"surveyed","levels":[{"depth":"1 in","area":"20 ft2"},{"depth":"1 in","area":"20 ft2"}]}}`, "shape.levels[0].depth shape.levels[1].depth"},
		{`{"id":"b","shape":{"kind":"surveyed","levels":[{"depth":"0 in"},{"depth":"9 in","area":"20 ft2"}]}}`, "shape.levels[0] shape.levels"},
		{`{"id":"b","shape":{"kind":"sphere","diameter":"5 ft"},"liquid_depth":"6 ft","depths":["-1 in","2 ft","7 ft"]}`, "liquid_depth depths[0] depths[2]"},
		{`{"id":"b","shape":{"kind":"sphere","diameter":"5 ft"},"rim":"4 ft"}`, "rim"},
		{`{"id":"b","shape":{"kind":"sphere","diameter":"5 imp gal"},"colour":1}`, "shape.diameter colour"},
		{`{"id":"b","shape":{"kind":"box","length":"9 ft","width":"5 ft","height":"5 ft"},"outside":true,"wall":"3 in"}`, "roof floor"},
	} {
		list, code := run(t, good+c.record+"\n"+good)
		if code != 1 || len(list) != 3 || list[0].Full == 0 || list[2].Full == 0 {
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

// Text, CSV and SVG of one tank from flags.
func TestFormats(t *testing.T) {
	flags := strings.Split("-id|big one|-kind|horizontal-cylinder|-diameter|60 in|-length|96 in|-heads|flat;ellipsoidal|-partition|60 in;3 in;50 in|-liquid-depth|48 in|-step|1 ft", "|")
	for format, want := range map[string]string{
		"text": "compartment 1:", "csv": "big one,12,12,", "svg": "<svg", "json": `"full_gal":`,
	} {
		var out bytes.Buffer
		if code := command.Run(append(flags, "-out", format), nil, &out, io.Discard); code != 0 || !strings.Contains(out.String(), want) {
			t.Errorf("%s: exit %d, %s", format, code, out.String())
		}
	}
	for kind, sizes := range map[string]string{
		"box": "-length 8ft -width 5ft -height 5ft -floor-length 7ft -fillet 4in", "frustum": "-bottom-diameter 5ft -top-diameter 6ft -height 5ft",
		"sphere": "-diameter 6ft", "horizontal-ellipse": "-width 6ft -height 4ft -length 8ft", "vertical-cylinder": "-diameter 5ft -height 5ft",
	} {
		var out bytes.Buffer
		args := append([]string{"-kind", kind, "-out", "svg"}, strings.Fields(sizes)...)
		if code := command.Run(args, nil, &out, io.Discard); code != 0 || !strings.HasSuffix(strings.TrimSpace(out.String()), "</svg>") {
			t.Errorf("%s: exit %d", kind, code)
		}
	}
}
