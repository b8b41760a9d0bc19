package main

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// result is what the tests read of a JSON line.
type result struct {
	ID     string `json:"id"`
	Points []struct {
		W   float64 `json:"w_in"`
		Mx  float64 `json:"mx_lbf"`
		My  float64 `json:"my_lbf"`
		Mxy float64 `json:"mxy_lbf"`
	} `json:"points"`
	Maxima map[string]struct {
		Value float64 `json:"value"`
		X     float64 `json:"x_in"`
		Y     float64 `json:"y_in"`
	} `json:"maxima"`
	Load      float64 `json:"total_load_lbf"`
	Reaction  float64 `json:"total_reaction_lbf"`
	Reactions struct {
		Lines []float64 `json:"lines_lbf"`
	} `json:"reactions"`
	Error     float64 `json:"error_estimate"`
	Converged bool    `json:"converged"`
	Errors    []struct{ Field, Value, Want string }
}

// call runs the command and reads its JSON lines.
func call(t *testing.T, wantCode int, stdin string, args ...string) []result {
	t.Helper()
	var out, errs bytes.Buffer
	code := command.Run(append(args, "-out", "json"), strings.NewReader(stdin), &out, &errs)
	if code != wantCode {
		t.Fatalf("%v: exit %d, want %d: %s", args, code, wantCode, errs.String())
	}
	var list []result
	for line := range strings.Lines(out.String()) {
		var r result
		if err := json.Unmarshal([]byte(line), &r); err != nil {
			t.Fatalf("%v in %s", err, line)
		}
		list = append(list, r)
	}
	return list
}

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %g, want %g within %g of it", what, got, want, rel)
	}
}

// Timoshenko and Woinowsky-Krieger, Table 8, b/a = 1.4: 0.0755 q a2 and 0.0502 q a2
// at the centre; w by the series, 0.007085 q a4/D.
const square14 = `{"id":"a","slab":{"length":"50 in","width":"70 in","thickness":"4 in","e":"3600 ksi","nu":0.3},` +
	`"loads":[{"kind":"uniform","pressure":"1 psi"}],"points":[{"x":"25 in","y":"35 in"}]}`

func TestHandbookSlab(t *testing.T) {
	r := call(t, 0, square14, "-in", "-")[0]
	d := 3.6e6 * 64 / (12 * (1 - 0.09))
	p := r.Points[0]
	near(t, "w", p.W, 0.007085*math.Pow(50, 4)/d, 1e-3)
	near(t, "Mx", p.Mx, 0.0755*2500, 1e-3)
	near(t, "My", p.My, 0.0502*2500, 1e-3)
	near(t, "load", r.Load, 50*70, 1e-9)
	near(t, "reaction", r.Reaction, 50*70, 1e-9)
	near(t, "largest w", r.Maxima["w_in"].Value, p.W, 1e-3)
	if !r.Converged || r.ID != "a" {
		t.Errorf("%+v", r)
	}
}

// The same slab in SI, by flags, and turned by a right angle.
func TestSameSlabSaidOtherwise(t *testing.T) {
	want := call(t, 0, square14, "-in", "-")[0].Points[0]
	si := call(t, 0, "", "-slab", "length=1.27 m; width=1.778 m; thickness=0.1016 m; e=24821126.5703 kPa; nu=0.3",
		"-load", "kind=uniform; pressure=6894.75729317 Pa", "-point", "x=0.635 m; y=0.889 m")[0].Points[0]
	near(t, "w", si.W, want.W, 1e-7)
	near(t, "Mx", si.Mx, want.Mx, 1e-7)
	turned := call(t, 0, "", "-slab", "length=70 in; width=50 in; thickness=4 in; e=3600 ksi; nu=0.3",
		"-load", "kind=uniform; pressure=1 psi", "-point", "x=35 in; y=25 in")[0].Points[0]
	near(t, "w", turned.W, want.W, 1e-8)
	near(t, "My", turned.My, want.Mx, 1e-8)
}

// A two-span strip under liquid and line load, every list by its flag.
func TestFlagsOfASlab(t *testing.T) {
	r := call(t, 0, "", "-slab", "length=96 in; width=30 in; thickness=3 in; e=3600 ksi; nu=0",
		"-edges", "free; simple; free; simple", "-line", "x=48 in", "-load", "kind=uniform; pressure=1 psi",
		"-point", "x=48 in; y=15 in")[0]
	near(t, "moment over the line", r.Points[0].Mx, -48*48/8, 1e-6)
	near(t, "line", r.Reactions.Lines[0], 1.25*48*30, 1e-6)
	wall := call(t, 0, "", "-slab", "length=60 in; width=50 in; thickness=4 in; e=3600 ksi",
		"-edges", "clamped; clamped; free; clamped", "-load", "kind=liquid; level=50 in; density=62.4 lb/ft3")[0]
	near(t, "liquid", wall.Load, 62.4/1728*50*50/2*60, 1e-9)
}

// On bearings the far end of a strip loaded on one of two spans lifts, and the
// other span is a simple beam: P l/4.
func TestBearingOnly(t *testing.T) {
	r := call(t, 0, "", "-slab", "length=90 in; width=20 in; thickness=3 in; e=3600 ksi; nu=0; bearing_only=true",
		"-edges", "free; simple; free; simple", "-line", "x=60 in",
		"-load", "kind=line; x=30 in; y=0 in; to_x=30 in; to_y=20 in; force_per_length=50 lbf/in", "-point", "x=30 in; y=10 in")[0]
	near(t, "moment", r.Points[0].Mx, 50*60/4, 0.02)
	near(t, "line", r.Reactions.Lines[0], 50*20/2, 1e-3)
	near(t, "rise over slope", -r.Maxima["rise_in"].Value, 50*60*60/(16*3.6e6*27/12)*30, 0.01)
}

// A lid by its closed form: 0.2 q a2 at the centre for nu = 0.2.
func TestLid(t *testing.T) {
	r := call(t, 0, "", "-lid", "diameter=24 in; thickness=3 in; e=3600 ksi", "-load", "kind=uniform; pressure=1 psi",
		"-point", "x=0 in; y=0 in", "-point", "x=0 in; y=12 in")[0]
	near(t, "Mx", r.Points[0].Mx, 0.2*144, 1e-9)
	near(t, "load", r.Load, math.Pi*144, 1e-12)
	if !(math.Abs(r.Points[1].W) <= 1e-12) || !(math.Abs(r.Points[1].My) <= 1e-9) {
		t.Errorf("at the rim: %+v", r.Points[1])
	}
	three := call(t, 0, "", "-lid", "diameter=24 in; thickness=3 in; e=3600 ksi; edge=three points", "-load", "kind=uniform; pressure=1 psi",
		"-point", "x=0 in; y=0 in")[0]
	near(t, "Mx on three points", three.Points[0].Mx, 0.2*144, 1e-9)
	if !(three.Points[0].W > 1.2*r.Points[0].W && three.Maxima["sag_lbf"].Value > r.Maxima["sag_lbf"].Value) {
		t.Errorf("three points bend it no more: %+v", three)
	}
	eccentric := call(t, 0, "", "-lid", "diameter=24 in; thickness=3 in; e=3600 ksi", "-load",
		"kind=patch; x=5 in; y=3 in; length=3 in; width=3 in; force=300 lbf", "-point", "x=5 in; y=3 in")[0]
	near(t, "largest moment under the patch", eccentric.Maxima["sag_lbf"].Value, math.Max(eccentric.Points[0].Mx, eccentric.Points[0].My), 0.05)
}

// A point in an opening has no deflection and no moment: null, and the record is
// computed all the same.
func TestPointInAnOpening(t *testing.T) {
	in := `{"id":"o","slab":{"length":"96 in","width":"60 in","thickness":"4 in","e":"3600 ksi","openings":[{"shape":"rect","x":"12 in","y":"18 in","length":"24 in","width":"24 in"}]},` +
		`"loads":[{"kind":"uniform","pressure":"200 psf"}],"points":[{"x":"30 in","y":"30 in"},{"x":"48 in","y":"30 in"}]}`
	var out, errs strings.Builder
	if code := command.Run([]string{"-in", "-", "-out", "json"}, strings.NewReader(in), &out, &errs); code != 0 {
		t.Fatalf("exit %d: %s%s", code, out.String(), errs.String())
	}
	if want := `{"x_in":30,"y_in":30,"w_in":null,"mx_lbf":null,"my_lbf":null,"mxy_lbf":null,"in_opening":true},{"x_in":48,"y_in":30,"w_in":0.`; !strings.Contains(out.String(), want) {
		t.Errorf("%.400s lacks %s", out.String(), want)
	}
}

func TestRefusedRecordsKeepTheirPlace(t *testing.T) {
	in := square14 + "\n" +
		`{"id":"b","slab":{"length":"96 in","width":"60 in","thickness":"40 in","e":"3600 ksi"},"loads":[{"kind":"uniform","pressure":"1 psf"}]}` + "\n" +
		`{"id":"c","slab":{"length":"96 in","width":"60 in","thickness":"4 in","e":"3600 ksi","edges":["simple"],"lines":[{}]},"loads":[{"kind":"uniform"},{"kind":"patch","x":"48 in","pressure":"1 psf"}]}` + "\n" +
		`{"id":"d","slab":{"length":"96 in","width":"60 in","thickness":"4 in","e":"3600 ksi","edges":["free","simple","free","free"]},"loads":[{"kind":"uniform","pressure":"1 psf"}]}` + "\n" +
		`{"id":"e","slab":{"length":"96 in","width":"60 in","thickness":"4 in","e":"3600 ksi","openings":[{"shape":"rect","x":"10 in","y":"10 in","length":"20 in","width":"20 in"}]},"loads":[{"kind":"uniform","pressure":"1 psf"}],"points":[{"x":"20 in","y":"70 in"}]}` + "\n" +
		`{"id":"f","lid":{"diameter":"24 in","thickness":"3 in","e":"3600 ksi","edge":"three points"},"loads":[{"kind":"patch","x":"1 in","y":"0 in","length":"2 in","width":"2 in","force":"1 lbf"}]}` + "\n" +
		`{"id":"g","loads":[{"kind":"uniform","pressure":"1 psf"}]}` + "\n" +
		`{"id":"h","slab":{"length":"96 in","width":"60 in","thickness":"4 in","e":"3600 ksi"},"loads":[{"kind":"patch","x":"9 ft","y":"30 in","length":"20 in","width":"10 in","force":"1 lbf"}]}` + "\n" + square14
	list := call(t, 1, in, "-in", "-")
	var got [][]string
	for _, r := range list {
		fields := []string{r.ID}
		for _, e := range r.Errors {
			fields = append(fields, e.Field)
		}
		got = append(got, fields)
	}
	want := [][]string{{"a"}, {"b", "slab.thickness"},
		{"c", "slab.edges", "slab.lines[0]", "loads[0].pressure", "loads[1].y", "loads[1].length", "loads[1].width", "loads[1].force", "loads[1].pressure"},
		{"d", "slab.edges"}, {"e", "points[0]"}, {"f", "loads[0].x"}, {"g", "slab"}, {"h", "loads[0].x"}, {"a"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if e := list[7].Errors[0]; e.Value != "9 ft" || e.Want != "0 in to 8 ft" {
		t.Errorf("%+v", e)
	}
}

func TestOtherFormats(t *testing.T) {
	const roof = `{"id":"roof","slab":{"length":"96 in","width":"60 in","thickness":"4 in","e":"3600 ksi","edges":["simple","clamped","simple","simple"],` +
		`"lines":[{"x":"64 in"},{"y":"50 in"}],"supports":[{"x":"50 in","y":"5 in"}],"zones":[{"x":"40 in","y":"10 in","length":"12 in","width":"12 in","thickness":"3 in"}],` +
		`"openings":[{"x":"12 in","y":"10 in","length":"24 in","width":"24 in"},{"shape":"round","x":"80 in","y":"24 in","diameter":"16 in"}]},` +
		`"loads":[{"kind":"uniform","pressure":"200 psf"},{"kind":"patch","x":"50 in","y":"30 in","length":"10 in","width":"10 in","force":"900 lbf"},` +
		`{"kind":"ring","opening":0,"offset":"2 in","force_per_length":"15 lbf/in"},{"kind":"ring","opening":1,"offset":"1 in","force_per_length":"1 lbf/in"},` +
		`{"kind":"line","x":"5 in","y":"5 in","to_x":"90 in","to_y":"6 in","force_per_length":"1 lbf/in"}],"points":[{"x":"48 in","y":"30 in"}]}`
	const lid = `{"id":"lid","lid":{"diameter":"24 in","thickness":"3 in","e":"3600 ksi"},"loads":[{"kind":"patch","x":"4 in","y":"0 in","length":"4 in","width":"4 in","force":"300 lbf"}]}`
	for _, c := range []struct {
		format, in string
		want       []string
	}{
		{"text", roof, []string{"roof\n", "At x 48 in, y 30 in: sinks", "Supports: edge y=0", "meshes", "Unreviewed screening"}},
		{"csv", roof, []string{"id,place,x_in", "roof,point,48,30,", "roof,hog_lbf,"}},
		{"svg", roof, []string{"<svg", "hogging", "8 ft", "clamped edge", "point support", "900 lbf on this", "Unreviewed screening"}},
		{"text", lid, []string{"lid\n", "Closed form"}},
		{"svg", lid, []string{"<svg", "<ellipse", "300 lbf on this"}},
	} {
		var out, errs bytes.Buffer
		if code := command.Run([]string{"-in", "-", "-out", c.format}, strings.NewReader(c.in), &out, &errs); code != 0 {
			t.Fatalf("%s: exit %d: %s", c.format, code, errs.String())
		}
		for _, want := range c.want {
			if !strings.Contains(out.String(), want) {
				t.Errorf("%s: no %q in\n%.2000s", c.format, want, out.String())
			}
		}
	}
	var out, errs bytes.Buffer
	if code := command.Run([]string{"-h"}, nil, &out, &errs); code != 0 || !strings.Contains(out.String(), "unreviewed screening") {
		t.Errorf("the manual: exit %d\n%s", code, out.String())
	}
}

func BenchmarkRecord(b *testing.B) {
	in := strings.Repeat(square14+"\n", 50)
	b.ReportAllocs()
	for b.Loop() {
		var out, errs bytes.Buffer
		if code := command.Run([]string{"-in", "-", "-out", "json"}, strings.NewReader(in), &out, &errs); code != 0 {
			b.Fatal(errs.String())
		}
	}
	b.ReportMetric(50*float64(b.N)/b.Elapsed().Seconds(), "records/s")
}
