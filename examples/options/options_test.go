package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"io"
	"regexp"
	"strings"
	"testing"
)

// run is one call of the command.
func run(stdin string, args ...string) (out, errs string, code int) {
	var stdout, stderr bytes.Buffer
	code = command().Run(args, strings.NewReader(stdin), &stdout, &stderr)
	return stdout.String(), stderr.String(), code
}

const book = "../../testdata/prices/example.csv"

// ways is one question in JSON, with texts that would be markup or formulas.
const ways = `{"id":"=1+1","title":"riser & <b>lid</b>","on":"2026-11-25",
"draws":2000,"horizon":{"years":20,"rate":"3 %","currency":"USD"},"saw":["<script>alert(1)</script>"],
"ranges":[{"code":"dig-hand","quantity":{"low":6,"likely":7.2,"high":14}}],
"terms":{"overhead_percent":12,"valid_days":30,"change_orders":[{"if":"rock","work":"break it","code":"rock","quantity":5,"unit":"FTQ"}]},
"options":[
{"id":"patch","title":"Patch","first":"450","life_years":{"good":6,"usual":3,"bad":1},"then":"riser","delays":["roots"]},
{"id":"riser","title":"Riser","scope":[{"code":"dig-hand","quantity":7.2},{"code":"concrete","quantity":3}],"life_years":{"good":40,"usual":20,"bad":12},"needs_dig":true,"permit":"local authority"},
{"id":"inside","title":"From inside","first":"900","life_years":{"good":8,"usual":5,"bad":2},"ruled_out":"the roof is not shown to carry people","needs_entry":true}]}`

func oneLine(s string) string { return strings.ReplaceAll(s, "\n", " ") }

// The published break-even of a patch of 450 against 2,400 that lasts 20 years.
func TestPatchOrReplace(t *testing.T) {
	out, errs, code := run("", "-patch", "450", "-patch-life", "3", "-replace", "2400", "-replace-life", "20", "-rate", "5 %", "-out", "json")
	if code != 0 {
		t.Fatal(errs)
	}
	var answer struct {
		Even []struct {
			Cheap, Dear string
			Repeating   struct{ Years float64 }
			Deferring   struct{ Years float64 }
		} `json:"break_even"`
	}
	if err := json.Unmarshal([]byte(out), &answer); err != nil {
		t.Fatal(err)
	}
	e := answer.Even[0]
	if e.Cheap != "patch" || e.Dear != "replace" || e.Repeating.Years < 2.54635 || e.Repeating.Years > 2.54645 || e.Deferring.Years < 4.25575 || e.Deferring.Years > 4.25585 {
		t.Errorf("%+v", e)
	}
}

// Every format holds all options, no markup or formula of the input, and none of
// the words that an owner could take for a promise.
func TestFormats(t *testing.T) {
	promise := regexp.MustCompile(`(?i)\b(safe|safely|passes|passed|certified|guaranteed)\b`)
	for format, want := range map[string][]string{
		"text": {"1. Patch", "Cannot be done as things are: the roof", "in 8 cases of 10", "2026-12-25", "Signed", "prices are invented", "If we find rock"},
		"html": {"riser &amp; &lt;b&gt;", "&lt;script&gt;", "<svg", "Signed", "local authority"},
		"svg":  {"<svg", "&lt;b&gt;", "Patch", "Riser"},
		"csv":  {"'=1+1", "patch,usual,3"},
		"json": {`"id":"=1+1"`, `"ruled_out"`, `"first_p90"`, `"flips"`},
	} {
		out, errs, code := run(oneLine(ways), "-in", "-", "-prices", book, "-out", format)
		if code != 0 {
			t.Errorf("%s: %s", format, errs)
		}
		for _, w := range want {
			if !strings.Contains(out, w) {
				t.Errorf("%s does not say %q", format, w)
			}
		}
		if word := promise.FindString(out); word != "" {
			t.Errorf("%s says %q", format, word)
		}
		if markup := format == "html" || format == "svg"; markup && (strings.Contains(out, "<script>alert") || strings.Contains(out, "<b>lid")) {
			t.Errorf("%s holds markup of the input", format)
		}
		if format == "svg" {
			for d := xml.NewDecoder(strings.NewReader(out)); ; {
				if _, err := d.Token(); err == io.EOF {
					break
				} else if err != nil {
					t.Fatal(err)
				}
			}
		}
	}
}

// A refused record stands in its place and the others are written.
func TestRefused(t *testing.T) {
	rows := "id,patch,patch_life,replace,replace_life,horizon.rate\na,450,3,2400,20,5 %\nb,1e999,3,2400,-1,5\nc,450,3,2400,20,5 %\n"
	out, _, code := run(rows, "-in", "-", "-out", "csv")
	if code != 1 || strings.Count(out, "\n") != 1+9+1+9 || !strings.Contains(out, "\nb,,") {
		t.Errorf("exit %d:\n%s", code, out)
	}
	for name, args := range map[string][]string{
		"no record":  {},
		"bad rate":   {"-patch", "450", "-rate", "5"},
		"no book":    {"-in", "-", "-prices", "none.csv"},
		"bad format": {"-patch", "1", "-out", "pdf"},
	} {
		if out, errs, code := run(oneLine(ways), args...); code != 2 || out != "" || errs == "" {
			t.Errorf("%s: exit %d, %q, %q", name, code, out, errs)
		}
	}
	for name, args := range map[string][]string{
		"no prices":       {"-in", "-", "-out", "html"},
		"no life":         {"-patch", "450", "-replace", "2400", "-out", "svg"},
		"life of nothing": {"-patch", "450", "-patch-life", "0", "-replace", "2400", "-replace-life", "20"},
	} {
		if out, errs, code := run(oneLine(ways), args...); code != 1 || out != "" || errs == "" {
			t.Errorf("%s: exit %d, %q, %q", name, code, out, errs)
		}
	}
}

// The example of the manual runs in every format.
func TestExample(t *testing.T) {
	for _, format := range []string{"text", "json", "csv", "html", "svg"} {
		out, errs, code := run("", "-in", "../../testdata/prices/ways.json", "-prices", book, "-draws", "2000", "-out", format)
		if code != 0 || out == "" || errs != "" {
			t.Errorf("%s: exit %d, %s", format, code, errs)
		}
	}
}

// Upkeep against neglect, as one record.
func TestNeglect(t *testing.T) {
	record := `{"id":"n","neglect":{"visit":"350","every_years":3,"repair":"9000","lasts_kept_years":{"good":50,"usual":40,"bad":25},"lasts_left_years":{"good":20,"usual":12,"bad":7}},"horizon":{"years":40,"rate":"3 %"}}`
	out, errs, code := run(record, "-in", "-", "-out", "csv")
	if code != 0 || !strings.Contains(out, "n,neglect,usual,12,0.00,0.00,0.00,9000.00,27000.00,6000.00,12005.77,") {
		t.Errorf("exit %d %s\n%s", code, errs, out)
	}
	out, _, code = run(strings.Replace(record, `"every_years":3`, `"every_years":0`, 1), "-in", "-", "-out", "json")
	if code != 1 || !strings.Contains(out, "neglect.every_years") {
		t.Errorf("exit %d %s", code, out)
	}
}
