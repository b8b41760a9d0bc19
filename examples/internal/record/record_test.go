package record

import (
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"manway.example/manway"
)

// vat is the record of the command under test.
type vat struct {
	ID     string          `json:"id"`
	Size   size            `json:"size"`
	Depth  manway.Length   `json:"depth"`
	Water  *manway.Length  `json:"water"` // nil: unknown
	People int             `json:"people"`
	Share  float64         `json:"share"`
	Depths []manway.Length `json:"depths"`
	Walls  []wall          `json:"walls"`
	Open   bool            `json:"open"`
}

type size struct {
	Length manway.Length `json:"length"`
	Width  manway.Length `json:"width"`
}

type wall struct {
	At manway.Length `json:"at"`
}

type filled struct {
	ID    string  `json:"id"`
	Gal   float64 `json:"gal"`
	Water string  `json:"water,omitempty"`
	Walls int     `json:"walls"`
}

func fill(in *vat) (filled, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Size.Length", in.Size.Length, manway.Foot, 40*manway.Foot)
	manway.Within(&faults, "Size.Width", in.Size.Width, manway.Foot, 40*manway.Foot)
	manway.Within(&faults, "Depth", in.Depth, 0, 40*manway.Foot)
	for i, w := range in.Walls {
		manway.Within(&faults, fmt.Sprintf("Walls[%d].At", i), w.At, 0, in.Size.Length)
	}
	if err := faults.Err(); err != nil {
		return filled{}, err
	}
	out := filled{ID: in.ID, Walls: len(in.Walls)}
	out.Gal = float64(in.Size.Length*in.Size.Width*in.Depth) / (231 * math.Pow(0.0254, 3))
	if in.Share == 13 { // stands for a mistake in a calculation
		out.Gal = math.NaN()
	}
	if in.Water != nil {
		out.Water = in.Water.String()
	}
	return out, nil
}

func vats() Command[vat, filled] {
	return Command[vat, filled]{
		Name: "vat",
		Doc:  "Vat says how much a box holds.\n\n  vat -length 8ft -width 4ft -depth 1ft",
		Flags: func(fs *flag.FlagSet, in *vat) {
			fs.StringVar(&in.ID, "id", "", "`NAME` of the record")
			fs.TextVar(&in.Size.Length, "length", manway.Length(0), "inside `LENGTH`")
			fs.TextVar(&in.Size.Width, "width", 4*manway.Foot, "inside `WIDTH`")
			fs.TextVar(&in.Depth, "depth", manway.Length(0), "liquid depth")
			Optional(fs, &in.Water, "water", "groundwater below grade; unknown unless given")
			List(fs, &in.Depths, "depths", "depths to chart")
		},
		ID: func(in *vat) string { return in.ID },
		Do: fill,
		Text: func(w io.Writer, in *vat, out *filled) error {
			_, err := fmt.Fprintf(w, "%s: %.1f gal\n", in.ID, out.Gal)
			return err
		},
		Columns: []string{"id", "gal", "walls"},
		Rows: func(r *Row, in *vat, out *filled) {
			r.Text(in.ID)
			r.Number(out.Gal)
			r.Int(out.Walls)
		},
		Documents: map[string]func(io.Writer, *vat, *filled) error{
			"svg": func(w io.Writer, in *vat, out *filled) error {
				_, err := fmt.Fprintf(w, "<svg>%s</svg>\n", in.ID)
				return err
			},
		},
	}
}

const (
	goodLine = `{"id":"a","size":{"length":"8 ft","width":"4 ft"},"depth":"12 in"}` + "\n"
	goodOut  = `{"id":"a","gal":239.376623377,"walls":0}` + "\n"
)

// sources writes files of several kinds into a folder.
func sources(t *testing.T) string {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"empty.jsonl": "", "zeros.json": strings.Repeat("\x00", 1<<20), "two.jsonl": goodLine + goodLine,
		"pretty.json": "{\n\"id\": \"a\",\n\"size\": {\"length\": \"8 ft\"},\n\"depth\": \"12 in\"\n}\n",
		"wrong.json":  "{\n\"id\": \"a\",\n\"size\": {\"length\": \"8 ft\"},\n\"depth\": 12,\n\"colour\": 3\n}\n",
		"dense.json":  "{\"id\": \"a\", \"depth\": \"12 in\",\n\"size\": {\"length\": \"8 ft\"}}",
		"lines.json":  goodLine + goodLine,
		"list.json":   "[" + goodLine + "]",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// call is a command line, and what comes of it.
type call struct {
	name, args, stdin string
	code              int
	stdout            string
	stderr            string // a part of it; empty: nothing at all
}

func check(t *testing.T, calls []call) {
	t.Helper()
	for _, c := range calls {
		t.Run(c.name, func(t *testing.T) {
			var stdout, stderr strings.Builder
			code := vats().Run(strings.Fields(c.args), strings.NewReader(c.stdin), &stdout, &stderr)
			if code != c.code {
				t.Errorf("exit %d, want %d", code, c.code)
			}
			if diff := cmp.Diff(c.stdout, stdout.String()); diff != "" {
				t.Error(diff)
			}
			if got := stderr.String(); c.stderr == "" && got != "" || !strings.Contains(got, c.stderr) {
				t.Errorf("stderr %q, want %q in it", got, c.stderr)
			}
		})
	}
}

// One record is described by flags.
func TestFlags(t *testing.T) {
	check(t, []call{
		{"flags", "-id a -length 8ft -depth 12in", "", 0, "a: 239.4 gal\n", ""},
		{"flags, json", "-id a -length 8ft -depth 12in -water 3in -out json", "", 0,
			`{"id":"a","gal":239.376623377,"water":"3 in","walls":0}` + "\n", ""},
		{"flags, csv", "-id a -length 8ft -depth 12in -out csv", "", 0, "id,gal,walls,errors\na,239.376623377,0,\n", ""},
		{"flags, svg", "-id a -length 8ft -depth 12in -out svg", "", 0, "<svg>a</svg>\n", ""},
		{"flags refused", "-id a -length 1in -width 2in", "", 1, "",
			"vat: size.length 1 in: want 1 ft to 40 ft\nvat: size.width 2 in: want 1 ft to 40 ft\n"},
		{"flags refused, json", "-id a -length 1in -out json", "", 1,
			`{"id":"a","errors":[{"field":"size.length","value":"1 in","want":"1 ft to 40 ft"}]}` + "\n", ""},
		{"flags refused, csv", "-id a -length 1in -out csv", "", 1,
			"id,gal,walls,errors\na,,,size.length 1 in: want 1 ft to 40 ft\n", ""},
	})
}

// What cannot be run at all exits 2 and writes nothing.
func TestWrongCalls(t *testing.T) {
	dir := sources(t)
	check(t, []call{
		{"no arguments", "", "", 2, "", "vat: no record: want the flags of one, or -in FILE (vat -h is the manual)\n"},
		{"bare number", "-length 8", "", 2, "", "want a number with a unit: in, ft"},
		{"unknown flag", "-size 8", "", 2, "", "flag provided but not defined: -size"},
		{"unknown format", "-length 8ft -out pdf", "", 2, "", `-out "pdf": want text, json, csv, svg`},
		{"two files", "a b", "", 2, "", "want one file"},
		{"missing file", "-in " + dir + "/none", "", 2, "", "no such file"},
		{"directory", "-in " + dir, "", 2, "", "a directory: want a file of records"},
		{"empty file", "-in " + dir + "/empty.jsonl", "", 2, "", "empty: want records"},
		{"zeros", dir + "/zeros.json", "", 2, "", "a zero byte at its start: want text"},
		{"list", "-in " + dir + "/list.json", "", 2, "", "a JSON list: want one JSON object a line"},
		{"drawing of two", "-out svg " + dir + "/two.jsonl", "", 1, "", "vat: line 2: "},
		{"empty stdin", "-in - -out json", "", 0, "", "vat: standard input: no records in it\n"},
	})
}

// Records come from JSON lines and documents.
func TestRecords(t *testing.T) {
	dir := sources(t)
	check(t, []call{
		{"json lines", "-in - -out json", goodLine + "\n  \n" + goodLine, 0, goodOut + goodOut, ""},
		{"no last newline", "-in - -out json", strings.TrimSpace(goodLine), 0, goodOut, ""},
		{"windows lines", "-in - -out json", "\ufeff" + strings.ReplaceAll(goodLine+goodLine, "\n", "\r\n"), 0, goodOut + goodOut, ""},
		{"flags stand in", "-in - -out json -depth 12in -water 3in", `{"id":"a","size":{"length":"8 ft"}}`, 0,
			`{"id":"a","gal":239.376623377,"water":"3 in","walls":0}` + "\n", ""},
		{"text", "-in -", goodLine, 0, "a: 239.4 gal\n", ""},
		{"document", "-out json " + dir + "/pretty.json", "", 0, goodOut, ""},
		{"document, dense", "-out json " + dir + "/dense.json", "", 0, goodOut, ""},
		{"lines, named json", "-out json " + dir + "/lines.json", "", 0, goodOut + goodOut, ""},
		{"document drawn", "-out svg " + dir + "/pretty.json", "", 0, "<svg>a</svg>\n", ""},
		{"document refused", dir + "/wrong.json", "", 1, "",
			"vat: line 4: depth 12: want text in quotes: a number with a unit: in, ft, yd, mm, cm, m\nvat: line 5: colour 3: want a known field: one of id, size"},
	})
}

// A refused record stands in its place, the others are written.
func TestRefusals(t *testing.T) {
	check(t, []call{
		{"refused in place", "-in - -out json", goodLine + `{"id":"b","size":{"length":"8 ft","lenght":1}}` + "\n" + goodLine, 1,
			goodOut + `{"id":"b","errors":[{"field":"size.lenght","value":"1","want":"a known field: did you mean length?","line":2}]}` + "\n" + goodOut,
			"vat: 1 of 3 records refused\n"},
		{"refused in text", "-in -", `{"id":"b","walls":[{"at":"9 ft"},{"at":"1 ft"}],"size":{"length":"8 ft"}}`, 1,
			"b: refused: line 1: walls[0].at 9 ft: want 0 in to 8 ft\n", "refused"},
		{"refused in text, no id", "-in -", "{}{}", 1, "no id: refused: line 1: {}{: want nothing after the end of the document\n", "refused"},
		{"repeated", "-in - -out json", `{"id":"b","depth":"1 in","depth":"2 in"}`, 1,
			`{"id":"b","errors":[{"field":"depth","value":"2 in","want":"the field once: it stands on line 1 already","line":1}]}` + "\n", "refused"},
		{"repeated, escaped", "-in - -out json", `{"id":"b","depth":"1 in","dept\u0068":"2 in"}`, 1,
			`{"id":"b","errors":[{"field":"depth","value":"2 in","want":"the field once: it stands on line 1 already","line":1}]}` + "\n", "refused"},
		{"capitals", "-in - -out json", `{"ID":"b","depth":"1 in"}`, 1,
			`{"id":null,"errors":[{"field":"ID","value":"b","want":"a known field: did you mean id?","line":1}]}` + "\n", "refused"},
		{"trailing", "-in - -out json", strings.TrimSpace(goodLine) + " x\n" + goodLine, 1,
			`{"id":"a","errors":[{"field":"","value":"\"},\"depth\":\"12 in\"} x","want":"nothing after the end of the document","line":1}]}` + "\n" + goodOut, "refused"},
		{"two in a line", "-in - -out json", strings.TrimSpace(goodLine) + strings.TrimSpace(goodLine) + "\n" + goodLine, 1,
			`{"id":"a","errors":[{"field":"","value":"t\"},\"depth\":\"12 in\"}{","want":"nothing after the end of the document","line":1}]}` + "\n" + goodOut, "refused"},
		{"cut off", "-in - -out json", `{"id":"b","size":{` + "\n" + goodLine, 1,
			`{"id":"b","errors":[{"field":"","value":"{\"id\":\"b\",\"size\":{","want":"valid JSON: unexpected end of JSON input","line":1}]}` + "\n" + goodOut, "refused"},
		{"wrong type", "-in - -out json", `{"id":7,"people":"x","open":1}`, 1,
			`{"id":"7","errors":[{"field":"id","value":"7","want":"text in quotes","line":1},{"field":"people","value":"x","want":"a whole number","line":1},{"field":"open","value":"1","want":"true or false","line":1}]}` + "\n", "refused"},
		{"utf-8", "-in - -out json", "{\"id\":\"\xff\"}", 1,
			`{"id":null,"errors":[{"field":"","value":"byte 0xff","want":"text in UTF-8","line":1}]}` + "\n", "refused"},
		{"not a number", "-in - -out json", `{"id":"b","size":{"length":"8 ft"},"share":13}` + "\n" + goodLine, 1,
			`{"id":"b","errors":[{"field":"","value":"the result","want":"a finite number, not NaN: this is a defect of the program","line":1}]}` + "\n" + goodOut, "refused"},
	})
}

// Records come from CSV.
func TestCSV(t *testing.T) {
	check(t, []call{
		{"csv", "-in - -out json", "id,size.length,size.width,depth\na,8 ft,4',12\"\n", 0, goodOut, ""},
		{"csv with units", "-in - -out csv", "id,size.length_in,size.width_mm,depth_ft,water_in,people\na,96,1219.2,1,,3\n=b,96,1219.2,1,4,\n", 0,
			"id,gal,walls,errors\na,239.376623377,0,\n'=b,239.376623377,0,\n", ""},
		{"csv lists", "-in - -out csv", "id\tdepths\twalls\tdepth\tsize.length\n" + "a\t1 in; 2 in\t[{\"at\":\"1 ft\"}]\t12 in\t8 ft\n", 0,
			"id,gal,walls,errors\na,239.376623377,1,\n", ""},
		{"csv quoted", "-in - -out csv", "id,size.length,depth\n\"a, \"\"b\"\"\",\"8'-0\"\"\",12 in\n", 0,
			"id,gal,walls,errors\n\"a, \"\"b\"\"\",239.376623377,0,\n", ""},
		{"csv refused", "-in - -out csv", "id,size.length_in,depth\na,8 ft,12\nb,96\nc,NaN,\"12 in\nd,96,12 in\n", 1,
			"id,gal,walls,errors\n" +
				"a,,,\"line 2: size.length 8 ft: want a bare number: the header gives the unit, in; line 2: depth 12: want a number with a unit: in, ft, yd, mm, cm, m\"\n" +
				"b,,,\"line 3: 2 cells: want 3, one for each column\"\n" +
				"c,,,\"line 4: want a closing \"\" in the same line: a record is one line\"\n" +
				"d,239.376623377,0,\n", "3 of 4 records refused"},
		{"csv header", "-in -", "id,lenght,depth_furlong,people_in,id\n", 2, "", `column "lenght": want a known field`},
		{"csv nothing known", "-in -", "hello\nworld\n", 2, "", `column "hello"`},
	})
}
