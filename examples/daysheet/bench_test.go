package main

import (
	"bytes"
	"io"
	"testing"
)

const (
	header = "id,length_in,width_in,depth_in,partition_in,partition_thick_in,cover_in,lid_dia_in,lid_thick_in,sludge1_in,scum1_in,sludge2_in,scum2_in\n"
	row    = "t123456,96,48.5,51.25,62,3,14.5,24,3.5,11.25,4,2.5,1\n"
	line   = `{"id":"t123456","length":"96 in","width":"48.5 in","depth":"51.25 in","height":"60 in","partition":"62 in","partition_thick":"3 in","cover":"14.5 in","lid_dia":"24 in","lid_thick":"3.5 in","sludge1":"11.25 in","scum1":"4 in","sludge2":"2.5 in","scum2":"1 in"}` + "\n"
)

// Rows of a day as CSV, the same as JSON lines, and what else is asked for.
func BenchmarkSheet(b *testing.B) {
	for _, c := range []struct {
		name, header, row string
		rows              int
		args              []string
	}{
		{"csv", header, row, 20000, []string{"-out", "csv", "-"}},
		{"json", "", line, 20000, []string{"-out", "json", "-"}},
		{"json/float", "", line, 20000, []string{"-out", "json", "-columns", "id,pump_gal,lid_lb,float_factor,leave_in", "-"}},
		{"json/roof", "", line, 100, []string{"-out", "json", "-columns", "id,pump_gal,lid_lb,roof_screening_use,roof_screening_load,roof_screening_status", "-roof", "4in",
			"-lid-at", "16in", "-steel", "known", "-bar", "0.375in", "-bar-spacing", "12in", "-bar-cover", "1in", "-"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			in := append([]byte(c.header), bytes.Repeat([]byte(c.row), c.rows)...)
			command := newCommand()
			b.ReportAllocs()
			for b.Loop() {
				if code := command.Run(c.args, bytes.NewReader(in), io.Discard, io.Discard); code != 0 {
					b.Fatal(code)
				}
			}
			b.ReportMetric(float64(c.rows*b.N)/b.Elapsed().Seconds(), "rows/s")
		})
	}
}
