package main

import (
	"io"
	"runtime"
	"strings"
	"testing"
)

const (
	header = "id,length_in,width_in,depth_in,partition_in,partition_thick_in,cover_in,lid_dia_in,lid_thick_in,sludge1_in,scum1_in,sludge2_in,scum2_in\n"
	row    = "t123456,96,48.5,51.25,62,3,14.5,24,3.5,11.25,4,2.5,1\n"
	line   = `{"id":"t123456","length":"96 in","width":"48.5 in","depth":"51.25 in","height":"60 in","partition":"62 in","partition_thick":"3 in","cover":"14.5 in","lid_dia":"24 in","lid_thick":"3.5 in","sludge1":"11.25 in","scum1":"4 in","sludge2":"2.5 in","scum2":"1 in"}` + "\n"
)

// repeated is one line over and over, so that a million rows take no memory.
type repeated struct {
	line string
	at   int
}

func (r *repeated) Read(p []byte) (n int, err error) {
	for n < len(p) {
		k := copy(p[n:], r.line[r.at:])
		n, r.at = n+k, (r.at+k)%len(r.line)
	}
	return n, nil
}

// A million rows of a day as CSV, JSON lines of the same, and what else is asked
// for. MiB is what the program took from the system.
func BenchmarkSheet(b *testing.B) {
	for _, c := range []struct {
		name, header, row string
		rows              int
		args              string
	}{
		{"csv/million", header, row, 1e6, "-out csv -"},
		{"json", "", line, 20000, "-out json -"},
		{"json/float", "", line, 20000, "-out json -columns id,pump_gal,lid_lb,float_factor,leave_in -"},
		{"json/roof", "", line, 100, "-out json -columns id,pump_gal,lid_lb,roof_screening_use,roof_screening_load,roof_screening_status " +
			"-roof 4in -lid-at 16in -steel known -bar 0.375in -bar-spacing 12in -bar-cover 1in -"},
	} {
		b.Run(c.name, func(b *testing.B) {
			command := newCommand()
			b.ReportAllocs()
			for b.Loop() {
				rows := io.LimitReader(&repeated{line: c.row}, int64(c.rows*len(c.row)))
				in := io.MultiReader(strings.NewReader(c.header), rows)
				if code := command.Run(strings.Fields(c.args), in, io.Discard, io.Discard); code != 0 {
					b.Fatal(code)
				}
			}
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			b.ReportMetric(float64(c.rows*b.N)/b.Elapsed().Seconds(), "rows/s")
			b.ReportMetric(float64(m.Sys>>20), "MiB")
		})
	}
}
