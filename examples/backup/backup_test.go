package main

import (
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"
)

var flagsOfOne = []string{
	"-kind", "box", "-length", "8 ft", "-width", "4 ft", "-height", "5 ft", "-partition", "5 ft;3 in", "-slot", "16 in2;28 in",
	"-outlet", "48 in", "-inlet", "51 in", "-open", "0.02", "-base", "40 gal/d", "-surge", "bath;7 h", "-surge", "9 h;40 gal;3 min",
}

func call(t *testing.T, stdin string, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	var out, errs strings.Builder
	code = command.Run(args, strings.NewReader(stdin), &out, &errs)
	return out.String(), errs.String(), code
}

func with(more ...string) []string { return append(append([]string(nil), flagsOfOne...), more...) }

func TestText(t *testing.T) {
	out, errs, code := call(t, "", with()...)
	for _, want := range []string{"Outlet 4 in, 2 % open", "Highest level", "Inlet invert 4 ft 3 in: not reached", "An estimate, not a measurement", "Sources"} {
		if !strings.Contains(out, want) {
			t.Errorf("exit %d, %s: want %q in\n%s", code, errs, want, out)
		}
	}
}

// What comes in goes out, spills or stays.
func TestJSON(t *testing.T) {
	for _, open := range []string{"0", "0.02", "1"} {
		out, _, code := call(t, "", with("-out", "json", "-open", open)...)
		var got struct {
			In        float64  `json:"in_gal"`
			Out       float64  `json:"out_gal"`
			Spilled   float64  `json:"spilled_gal"`
			Stored    float64  `json:"stored_gal"`
			Imbalance float64  `json:"imbalance"`
			InletAt   *float64 `json:"inlet_at_min"`
			Series    []struct {
				Time   float64   `json:"time_min"`
				Levels []float64 `json:"levels_in"`
			} `json:"series"`
		}
		if err := json.Unmarshal([]byte(out), &got); err != nil || code != 0 {
			t.Fatalf("open %s: exit %d, %v: %.300s", open, code, err, out)
		}
		if want := 40. + 36 + 40; !(math.Abs(got.In-want) <= 1e-6) {
			t.Errorf("open %s: in %v, want %v", open, got.In, want)
		}
		if off := got.In - got.Out - got.Spilled - got.Stored; !(math.Abs(off) <= 1e-6) || got.Imbalance > 1e-9 {
			t.Errorf("open %s: off by %v, %v", open, off, got.Imbalance)
		}
		if n := len(got.Series); n < 100 || got.Series[n-1].Time != 24*60 || len(got.Series[0].Levels) != 2 {
			t.Errorf("open %s: %d instants", open, n)
		}
		if (got.InletAt != nil) != (open == "0") {
			t.Errorf("open %s: inlet at %v", open, got.InletAt)
		}
	}
}

func TestCSV(t *testing.T) {
	out, _, code := call(t, "", with("-out", "csv", "-time", "2 h")...)
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || code != 0 || len(rows) < 100 || rows[1][2] != "48" {
		t.Errorf("exit %d, %v, %d rows", code, err, len(rows))
	}
}

// The picture is one well-formed document, tanks with one level and with four
// alike.
func TestSVG(t *testing.T) {
	one := []string{"-kind", "vertical-cylinder", "-diameter", "5 ft", "-height", "5 ft", "-outlet", "48 in", "-surge", "flush;1 min", "-time", "20 min"}
	for _, args := range [][]string{with(), one} {
		out, errs, code := call(t, "", append(append([]string(nil), args...), "-out", "svg")...)
		if code != 0 {
			t.Fatalf("exit %d: %s", code, errs)
		}
		d := xml.NewDecoder(strings.NewReader(out))
		lines := 0
		for {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			if s, ok := token.(xml.StartElement); ok && s.Name.Local == "polyline" {
				lines++
			}
		}
		if lines < 3 || !strings.Contains(out, "outlet invert 4 ft") || strings.Contains(out, "NaN") {
			t.Errorf("%d lines: %.400s", lines, out)
		}
	}
}

func TestRefused(t *testing.T) {
	good := `{"id":"good","shape":{"kind":"box","length":"8 ft","width":"4 ft","height":"5 ft"},"outlet":"48 in","pipe":"4 in","surges":[{"kind":"bath","at":"7 h"}]}`
	bad := `{"id":"bad","shape":{"kind":"box","length":"8 ft","width":"4 ft","height":"5 ft"},"outlet":"70 in","open":1.5,"surges":[{"kind":"sauna"}]}`
	out, _, code := call(t, good+"\n"+bad+"\n", "-in", "-", "-out", "json")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if code != 1 || len(lines) != 2 || !strings.Contains(lines[1], `"errors"`) || !strings.Contains(lines[1], "utlet") {
		t.Errorf("exit %d: %.600s", code, out)
	}
	for _, args := range [][]string{{}, with("-surge", "sauna"), with("-slot", "16 in2"), with("-open", "half"), with("-out", "png")} {
		out, errs, code := call(t, "", args...)
		if code != 2 || out != "" || strings.Count(errs, "\n") != 1 {
			t.Errorf("%v: exit %d, out %q, err %q", args, code, out, errs)
		}
	}
}
