package record

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"testing"

	"manway.example/manway"
)

// chart is a record as commands read them: nested, with seven quantities.
type chart struct {
	ID    string `json:"id"`
	Shape struct {
		Kind     string        `json:"kind"`
		Diameter manway.Length `json:"diameter"`
		Length   manway.Length `json:"length"`
		Heads    string        `json:"heads"`
	} `json:"shape"`
	Partitions []struct {
		At        manway.Length `json:"at"`
		Thickness manway.Length `json:"thickness"`
	} `json:"partitions"`
	Depth  manway.Length   `json:"liquid_depth"`
	Depths []manway.Length `json:"depths"`
}

const chartLine = `{"id":"t1","shape":{"kind":"horizontal-cylinder","diameter":"60 in","length":"96 in","heads":"ellipsoidal"},"partitions":[{"at":"60 in","thickness":"3 in"}],"liquid_depth":"48 in","depths":["12 in","24 in"]}` + "\n"

func charts() Command[chart, chart] {
	return Command[chart, chart]{
		Name: "chart",
		ID:   func(in *chart) string { return in.ID },
		Do:   func(in *chart) (chart, error) { return *in, nil },
		JSON: func(j *JSON, in, out *chart) {
			j.Text("id", out.ID)
			j.Number("full_gal", float64(out.Shape.Length)*1000/3)
			j.List("chart")
			for _, d := range out.Depths {
				j.Object("")
				j.Number("depth_in", d.In(manway.Inch))
				j.Number("gal", float64(d)*100)
				j.End()
			}
			j.End()
		},
	}
}

func BenchmarkRun(b *testing.B) {
	const records = 10000
	for _, c := range []struct {
		name, in string
		run      func([]string, io.Reader, io.Writer, io.Writer) int
		args     []string
	}{
		{"json/chart", chartLine, charts().Run, []string{"-in", "-", "-out", "json"}},
		{"json/small", goodLine, vats().Run, []string{"-in", "-", "-out", "json"}},
		{"json/refused", `{"id":"b","size":{"lenght":1}}` + "\n", vats().Run, []string{"-in", "-", "-out", "json"}},
		{"csv/units", "a,96,48.5,12,3\n", vats().Run, []string{"-in", "-", "-out", "csv"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			var in bytes.Buffer
			if c.name[0] == 'c' {
				in.WriteString("id,size.length_in,size.width_in,depth_in,people\n")
			}
			for range records {
				in.WriteString(c.in)
			}
			b.ReportAllocs()
			b.SetBytes(int64(in.Len()))
			for b.Loop() {
				c.run(c.args, bytes.NewReader(in.Bytes()), io.Discard, io.Discard)
			}
			b.ReportMetric(float64(records*b.N)/b.Elapsed().Seconds(), "records/s")
		})
	}
}

// What encoding/json alone needs for a record, without any strictness.
func BenchmarkPlainDecode(b *testing.B) {
	line := []byte(chartLine)
	b.ReportAllocs()
	for b.Loop() {
		var c chart
		if err := json.Unmarshal(line, &c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadLine(b *testing.B) {
	line := bytes.TrimSpace([]byte(chartLine))
	r := newLineReader[chart]()
	b.ReportAllocs()
	for b.Loop() {
		var c chart
		if !r.read(line, &c) {
			b.Fatal("doubtful")
		}
	}
}

func BenchmarkAppendNumber(b *testing.B) {
	var buf []byte
	for i, v := range []float64{18, 239.37662337662337, 1e-7} {
		b.Run(fmt.Sprint(i), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				buf = AppendNumber(buf[:0], v)
			}
		})
	}
}
