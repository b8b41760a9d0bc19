package record

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"manway.example/manway/examples/internal/strictjson"
)

// Whatever stands in a stream, every line that is not blank gives one line of
// valid JSON, in order.
func FuzzRun(f *testing.F) {
	f.Add(goodLine + goodLine)                                          // good
	f.Add(goodLine + "\x00\n{\"id\":\"\\u0000\"}\n")                    // control characters
	f.Add("{\"id\":1e400,\"size\":[[[[\n" + goodLine)                   // cut off
	f.Add("id,size.length_in,depth\na,96,\"1\"\" 2\"\n\"b\n")           // csv, quotes
	f.Add("id\tdepths\twalls\n1\t1 in;;2 in\t[{\"at\":1}]\n")           // csv, lists
	f.Add("{\"share\":13}\n{\"ID\":\"x\",\"id\":\"y\",\"id\":\"z\"}\n") // NaN, repeated
	f.Fuzz(func(t *testing.T, stdin string) {
		var out strings.Builder
		code := vats().Run([]string{"-in", "-", "-out", "json"}, strings.NewReader(stdin), &out, io.Discard)
		if code == 2 {
			if out.Len() > 0 {
				t.Errorf("exit 2, but %q was written", out.String())
			}
			return
		}
		for line := range strings.Lines(out.String()) {
			if !json.Valid([]byte(line)) || !strings.HasSuffix(line, "\n") {
				t.Errorf("output %q: want a line of JSON", line)
			}
		}
	})
}

// The fast way of reading a line takes only what strictjson takes too, and
// reads the same from it.
func FuzzReadLine(f *testing.F) {
	f.Add(goodLine)                                  // good
	f.Add(`{"id":"a","id":"b"}`)                     // repeated
	f.Add(`{"walls":[{"at":"1 ft"},{"at":"1 ft"}]}`) // the same name in two objects
	f.Add(`{"Id":"a"}`)                              // capitals
	f.Add("{\"Id\"\r:\"\"}")                         // a carriage return before the colon
	f.Add(`{"id":"a"} {}`)                           // trailing
	f.Add(`{"\u0069d":"a","id":"b"}`)                // escaped name
	f.Add(`{"ſhare":1}`)                             // folds to an ASCII name
	f.Fuzz(func(t *testing.T, line string) {
		line = strings.Trim(line, " \t\r\n")
		if line == "" || strings.Contains(line, "\n") {
			return
		}
		fast := newLineReader[vat]()
		var got vat
		if !fast.read([]byte(line), &got) {
			return
		}
		var want vat
		if err := decodeStrictly(line, &want); err != nil {
			t.Fatalf("%s: taken at once, but %v", line, err)
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %+v, strictly %+v", line, got, want)
		}
	})
}

// Cells of a well-formed line are those that encoding/csv finds.
func FuzzSplit(f *testing.F) {
	f.Add(`a,"b ""c""",,d`) // quotes
	f.Add(`"",""`)          // empty
	f.Add(`8'-4",9"`)       // inch marks
	f.Add(`"a" x,b`)        // text after the quote
	f.Fuzz(func(t *testing.T, line string) {
		if strings.ContainsAny(line, "\r\n") {
			return
		}
		table := table{separator: ','}
		cells, err := table.split([]byte(line))
		r := csv.NewReader(strings.NewReader(line))
		want, wantErr := r.Read()
		if wantErr != nil {
			return // inch marks and the like, which encoding/csv refuses
		}
		if err != nil {
			t.Fatalf("%q: %v, but encoding/csv finds %q", line, err, want)
		}
		if len(cells) != len(want) {
			t.Fatalf("%q: cells %q, want %q", line, cells, want)
		}
		for i := range cells {
			if string(cells[i]) != string(trim([]byte(want[i]))) {
				t.Errorf("%q: cell %d is %q, want %q", line, i, cells[i], want[i])
			}
		}
	})
}

// A text cell reads back as it was, but for the apostrophe before a formula.
func FuzzCell(f *testing.F) {
	f.Add("=1+2")
	f.Add("a,\"b\"\n c")
	f.Add("'")
	f.Fuzz(func(t *testing.T, s string) {
		if strings.Contains(s, "\r") {
			return // encoding/csv turns \r\n into \n
		}
		line := append(appendCell([]byte("x,"), s), '\n')
		got, err := csv.NewReader(strings.NewReader(string(line))).Read()
		if err != nil {
			t.Fatal(err)
		}
		if strings.IndexAny(got[1], "=+-@\t") == 0 {
			t.Errorf("%q is written as %q, which starts a formula", s, got[1])
		}
		if got[1] != s && got[1] != "'"+s {
			t.Errorf("%q reads back as %q", s, got[1])
		}
	})
}

func FuzzAppendNumber(f *testing.F) {
	f.Add(18.0)
	f.Add(-0.1 + 0.3)
	f.Add(1e21)
	f.Add(123456.7890123456)
	f.Fuzz(func(t *testing.T, v float64) {
		if !finite(v) {
			return
		}
		text := string(AppendNumber(nil, v))
		got, err := strconv.ParseFloat(text, 64)
		if !json.Valid([]byte(text)) || err != nil {
			t.Fatalf("%v is written as %q", v, text)
		}
		if off := got - v; off > 5.1e-12*abs(v) || -off > 5.1e-12*abs(v) {
			t.Errorf("%v is written as %s", v, text)
		}
		mantissa, _, _ := strings.Cut(strings.TrimLeft(strings.NewReplacer("-", "", ".", "").Replace(text), "0"), "e")
		if len(mantissa) > Digits && strings.Trim(mantissa[Digits:], "0") != "" || text == "-0" {
			t.Errorf("%v is written as %s: too many digits", v, text)
		}
	})
}

func abs(v float64) float64 { return max(v, -v) }

func decodeStrictly(line string, into *vat) error {
	_, err := strictjson.Decode([]byte(line), into)
	return err
}
