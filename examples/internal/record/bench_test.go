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
		{"csv/visit", visitLine, visits().Run, []string{"-in", "-", "-out", "csv"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			var in bytes.Buffer
			if c.name[0] == 'c' {
				in.WriteString(visitHeader)
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

// visit is a row as a day's work is written down: thirteen columns.
type visit struct {
	ID        string        `json:"id"`
	Length    manway.Length `json:"length"`
	Width     manway.Length `json:"width"`
	Depth     manway.Length `json:"depth"`
	Partition manway.Length `json:"partition"`
	Thick     manway.Length `json:"partition_thick"`
	Cover     manway.Length `json:"cover"`
	Lid       manway.Length `json:"lid_dia"`
	LidThick  manway.Length `json:"lid_thick"`
	Sludge1   manway.Length `json:"sludge1"`
	Scum1     manway.Length `json:"scum1"`
	Sludge2   manway.Length `json:"sludge2"`
	Scum2     manway.Length `json:"scum2"`
}

const (
	visitHeader = "id,length_in,width_in,depth_in,partition_in,partition_thick_in,cover_in,lid_dia_in,lid_thick_in,sludge1_in,scum1_in,sludge2_in,scum2_in\n"
	visitLine   = "t123456,96,48.5,51.25,62,3,14.5,24,3.5,11.25,4,2.5,1\n"
)

func visits() Command[visit, [6]float64] {
	return Command[visit, [6]float64]{
		Name: "visits",
		ID:   func(in *visit) string { return in.ID },
		Do: func(in *visit) (out [6]float64, err error) {
			area := float64(in.Length * in.Width)
			return [6]float64{area * float64(in.Depth), area * float64(in.Sludge1), area * float64(in.Scum1), area * float64(in.Sludge2), float64(in.Lid * in.LidThick), in.Cover.In(manway.Inch)}, nil
		},
		Columns: []string{"id", "a", "b", "c", "d", "e", "f"},
		Rows: func(r *Row, in *visit, out *[6]float64) {
			r.Text(in.ID)
			for _, v := range out {
				r.Number(v)
			}
		},
	}
}
