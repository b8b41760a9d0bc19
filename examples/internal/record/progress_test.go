package record

import (
	"strings"
	"testing"
	"time"
)

// Short work is silent but for what was refused; long work tells how far it is
// and what it did.
func TestProgress(t *testing.T) {
	start := time.Date(2026, 11, 25, 8, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		name    string
		every   time.Duration
		refused int
		seconds []float64 // of the batches, of a thousand records each; the last is the end
		want    string
	}{
		{"short", inLog, 0, []float64{0.5, 0.9}, ""},
		{"short, refused", inLog, 2, []float64{0.5, 0.9}, "vat: 2 of 1000 records refused\n"},
		{"long", inLog, 0, []float64{1, 2, 4}, "vat: 0 of 2000 records refused, 4.0 s, 500 a second\n"},
		{"logged", inLog, 0, []float64{59, 61, 80, 100}, "vat: 2000 records, 0 refused, 61 s\nvat: 0 of 3000 records refused, 100.0 s, 30 a second\n"},
		{"watched", longWork, 1, []float64{1, 3, 4, 5, 6}, "vat: 2000 records, 2 refused, 3 s\nvat: 4000 records, 4 refused, 5 s\nvat: 4 of 4000 records refused, 6.0 s, 667 a second\n"},
	} {
		var out strings.Builder
		p := newProgress("vat", &out, start)
		p.every = c.every
		at := func(seconds float64) time.Time { return start.Add(time.Duration(seconds * float64(time.Second))) }
		last := len(c.seconds) - 1
		for _, s := range c.seconds[:last] {
			p.add(&batch{records: 1000, refused: c.refused}, at(s))
		}
		p.end(at(c.seconds[last]))
		if out.String() != c.want {
			t.Errorf("%s: %q, want %q", c.name, out.String(), c.want)
		}
	}
}

// Where the call names the columns, rows come without a header, from the first
// line of a file or from its middle, and none is written.
func TestBareRows(t *testing.T) {
	const header = "id,size.length_in,size.width_in,depth_in"
	for _, c := range []struct{ name, args, in, want string }{
		{"share of a file", "", "a,96,48,12\nb,96,48,12\n", "a,239.376623377,0,\nb,239.376623377,0,\n"},
		{"first share", "", header + "\r\na,96,48,12\n", "a,239.376623377,0,\n"},
		{"tabs", "", "a\t96\t48\t12\n", "a,239.376623377,0,\n"},
		{"first share, tabs", "", strings.ReplaceAll(header, ",", "\t") + "\na\t96\t48\t12\n", "a,239.376623377,0,\n"},
		{"empty share", "", "", ""},
		{"refused", "-tolerate", "a,96,x,12\n", "a,,,\"line 1: size.width x: want a bare number: the header gives the unit, in\"\n"},
	} {
		var out, log strings.Builder
		args := append([]string{"-in", "-", "-out", "csv", "-header", header}, strings.Fields(c.args)...)
		if code := vats().Run(args, strings.NewReader(c.in), &out, &log); code != 0 || out.String() != c.want {
			t.Errorf("%s: exit %d, %q, want %q (%s)", c.name, code, out.String(), c.want, log.String())
		}
	}
}
