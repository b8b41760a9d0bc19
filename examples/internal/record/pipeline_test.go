package record

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"manway.example/manway"
)

// endless gives the same lines over and over, n bytes in all.
type endless struct {
	lines string
	at, n int
}

func (e *endless) Read(p []byte) (int, error) {
	if e.n <= 0 {
		return 0, io.EOF
	}
	k := copy(p[:min(len(p), e.n)], e.lines[e.at:])
	e.at = (e.at + k) % len(e.lines)
	e.n -= k
	return k, nil
}

// heapWatch notes the most memory in use while output is written.
type heapWatch struct {
	lines, writes int
	most          uint64
}

func (h *heapWatch) Write(p []byte) (int, error) {
	h.lines += bytes.Count(p, []byte("\n"))
	if h.writes++; h.writes%20 == 0 {
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		h.most = max(h.most, m.HeapInuse+m.StackInuse)
	}
	return len(p), nil
}

// However long the stream, the memory stays the same.
func TestConstantMemory(t *testing.T) {
	bad := `{"id":"b","size":{"lenght":1}}` + "\n"
	long := `{"id":"c","note":"` + strings.Repeat("x", 3*MaxLine) + `"}` + "\n"
	for _, c := range []struct{ name, lines string }{
		{"good", strings.Repeat(goodLine, 1000)},
		{"refused", strings.Repeat(goodLine, 90) + strings.Repeat(bad, 10)},
		{"long lines", strings.Repeat(goodLine, 5000) + long},
	} {
		repeat := 10_000_000 / len(c.lines)
		var out heapWatch
		vats().Run([]string{"-in", "-", "-out", "json"}, &endless{lines: c.lines, n: repeat * len(c.lines)}, &out, io.Discard)
		if want := repeat * strings.Count(c.lines, "\n"); out.lines != want {
			t.Errorf("%s: %d lines, want %d", c.name, out.lines, want)
		}
		if most := 48 << 20; out.most == 0 || out.most > uint64(most) {
			t.Errorf("%s: %d bytes in use, want at most %d", c.name, out.most, most)
		}
	}
}

// Records that take longer than others do not change the order, with several
// workers and with reads of any size.
func TestOrder(t *testing.T) {
	command := vats()
	command.Do = func(in *vat) (filled, error) {
		if in.People%97 == 0 {
			for range 50 {
				runtime.Gosched()
			}
		}
		if in.People%1000 == 999 {
			return filled{}, errors.New("no answer")
		}
		return fill(in)
	}
	const n = 20000
	var in, want strings.Builder
	for i := range n {
		fmt.Fprintf(&in, `{"id":"%d","people":%d,"size":{"length":"8 ft"},"depth":"12 in"}`+"\n", i, i)
		if i%1000 == 999 {
			fmt.Fprintf(&want, `{"id":"%d","errors":[{"field":"","value":"","want":"no answer","line":%d}]}`+"\n", i, i+1)
		} else {
			fmt.Fprintf(&want, `{"id":"%d","gal":239.376623377,"walls":0}`+"\n", i)
		}
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(8))
	for name, reader := range map[string]io.Reader{
		"whole": strings.NewReader(in.String()),
		"bytes": iotest.OneByteReader(strings.NewReader(in.String()[:100000])),
	} {
		var out strings.Builder
		command.Run([]string{"-in", "-", "-out", "json", "-width", "4ft"}, reader, &out, io.Discard)
		got := out.String()
		if name == "bytes" {
			got = got[:strings.LastIndex(strings.TrimSpace(got), "\n")+1] // the last line is cut off
			if !strings.HasPrefix(want.String(), got) || strings.Count(got, "\n") < 1000 {
				t.Errorf("%s: the output is out of order", name)
			}
		} else if got != want.String() {
			t.Errorf("%s: the output is out of order", name)
		}
	}
}

// An answer comes as soon as its record is there, however long the pipe stays
// open.
func TestAnswersAtOnce(t *testing.T) {
	in, typed := io.Pipe()
	shown, out := io.Pipe()
	go func() {
		vats().Run([]string{"-in", "-", "-out", "json"}, in, out, io.Discard)
		out.Close()
	}()
	answer := make([]byte, 1000)
	for range 3 {
		if _, err := io.WriteString(typed, goodLine); err != nil {
			t.Fatal(err)
		}
		n, err := shown.Read(answer)
		if err != nil || string(answer[:n]) != goodOut {
			t.Fatalf("answer %q, %v", answer[:n], err)
		}
	}
	typed.Close()
	if rest, _ := io.ReadAll(shown); len(rest) > 0 {
		t.Errorf("more came: %q", rest)
	}
}

// A line of 256 MB that never ends costs no more memory than the longest one that
// is read. It is refused in one line that names the limit, or ends the call
// where no record can be read without it; the records before it are written.
func TestLineWithoutEnd(t *testing.T) {
	const length = 256_000_000
	refused := `{"id":%s,"errors":[{"field":"","value":"a line of more than 1 MiB","want":"at most 1 MiB","line":4}]}` + "\n"
	for _, c := range []struct {
		name, head, out string
		code            int
		want, log       string
		most            uint64 // bytes allocated in all
	}{
		{"JSON lines", goodLine + goodLine + goodLine + `{"id":"big","note":"`, "json", 1, goodOut + goodOut + goodOut + fmt.Sprintf(refused, `"big"`), "1 of 4 records refused", 16 << 20},
		{"CSV rows", "id,size.length_in,depth_in\na,96,12\na,96,12\nbig,", "json", 1, goodOut + goodOut + fmt.Sprintf(refused, "null"), "1 of 3 records refused", 16 << 20},
		{"text", goodLine + `{"id":"big","note":"`, "text", 1, "a: 239.4 gal\nbig: refused: line 2: a line of more than 1 MiB: want at most 1 MiB\n", "1 of 2 records refused", 16 << 20},
		{"a CSV header", "id,", "json", 2, "", "the first line is longer than 32 KiB", 16 << 20},
		{"a document", "{\n\"id\":\"big\",\"note\":\"", "json", 1, `{"id":null,"errors":[{"field":"","value":"more than 8 MiB","want":"at most 8 MiB"}]}` + "\n", "", 64 << 20},
	} {
		var before, after runtime.MemStats
		var out, log strings.Builder
		in := &endless{lines: strings.Repeat("x", 1<<16), n: length}
		runtime.ReadMemStats(&before)
		code := vats().Run([]string{"-in", "-", "-out", c.out, "-width", "4 ft"}, io.MultiReader(strings.NewReader(c.head), in), &out, &log)
		runtime.ReadMemStats(&after)
		if code != c.code || out.String() != c.want {
			t.Errorf("%s: exit %d, %.300q, want %d, %q", c.name, code, out.String(), c.code, c.want)
		}
		if !strings.Contains(log.String(), c.log) || strings.Count(log.String(), "\n") > 1 {
			t.Errorf("%s: standard error %q, want %q in a line", c.name, log.String(), c.log)
		}
		if took := after.TotalAlloc - before.TotalAlloc; took > c.most {
			t.Errorf("%s: %d bytes allocated, want at most %d", c.name, took, c.most)
		} else {
			t.Logf("%s: %d bytes allocated, %d of the line not read", c.name, took, in.n)
		}
	}
}

func TestLineLimit(t *testing.T) {
	pad := func(n int) string {
		head := `{"id":"p","size":{"length":"8 ft","width":"4 ft"},"depth":"12 in"`
		return head + strings.Repeat(" ", n-len(head)-1) + "}\n"
	}
	longest, over, far := pad(MaxLine), pad(MaxLine+1), pad(5*MaxLine)
	refusal := `{"id":"p","errors":[{"field":"","value":"a line of more than 1 MiB","want":"at most 1 MiB","line":%d}]}` + "\n"
	good := strings.ReplaceAll(goodOut, `"a"`, `"p"`)
	var out strings.Builder
	code := vats().Run([]string{"-in", "-", "-out", "json"},
		strings.NewReader(longest+over+goodLine+far+goodLine+strings.TrimSpace(far)), &out, io.Discard)
	want := good + fmt.Sprintf(refusal, 2) + goodOut + fmt.Sprintf(refusal, 4) + goodOut + fmt.Sprintf(refusal, 6)
	if code != 1 || out.String() != want {
		t.Errorf("exit %d, output\n%swant\n%s", code, out.String(), want)
	}
}

type brokenWriter struct{ after int }

func (w *brokenWriter) Write(p []byte) (int, error) {
	if w.after--; w.after < 0 {
		return 0, errors.New("no space left")
	}
	return len(p), nil
}

func TestBrokenStreams(t *testing.T) {
	var stderr strings.Builder
	code := vats().Run([]string{"-in", "-"}, &endless{lines: goodLine, n: 1 << 40}, &brokenWriter{3}, &stderr)
	if code != 1 || !strings.Contains(stderr.String(), "no space left; stopped after") {
		t.Errorf("writing fails: exit %d, %q", code, stderr.String())
	}
	stderr.Reset()
	var out strings.Builder
	reader := io.MultiReader(strings.NewReader(goodLine+goodLine), iotest.ErrReader(errors.New("disk gone")))
	code = vats().Run([]string{"-in", "-", "-out", "json"}, reader, &out, &stderr)
	if code != 1 || out.String() != goodOut+goodOut || !strings.Contains(stderr.String(), "disk gone; stopped after 2 records") {
		t.Errorf("reading fails: exit %d, %q, %q", code, out.String(), stderr.String())
	}
}

func TestWholeFile(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "out.txt")
	run := func(stdin string, args ...string) int {
		return vats().Run(append(args, "-o", file), strings.NewReader(stdin), io.Discard, io.Discard)
	}
	content := func() string {
		text, _ := os.ReadFile(file)
		return string(text)
	}
	if code := run(goodLine, "-in", "-", "-out", "json"); code != 0 || content() != goodOut {
		t.Errorf("exit %d, file %q", code, content())
	}
	if code := run("", "-length", "1in"); code != 1 || content() != goodOut {
		t.Errorf("refused: exit %d, file %q, want the one from before", code, content())
	}
	if code := run(goodLine+"{}\n", "-in", "-", "-out", "json"); code != 1 || !strings.HasPrefix(content(), goodOut+`{"id":null`) {
		t.Errorf("one refused: exit %d, file %q, want both lines", code, content())
	}
	if code := run("", "-in", "-", "-out", "pdf"); code != 2 {
		t.Errorf("wrong call: exit %d", code)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".part-*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if code := vats().Run([]string{"-length", "8ft", "-o", filepath.Join(dir, "none", "x")}, nil, io.Discard, io.Discard); code != 2 {
		t.Errorf("a folder that is not there: exit %d, want 2", code)
	}
}

func TestManual(t *testing.T) {
	var out, stderr strings.Builder
	if code := vats().Run([]string{"-h"}, nil, &out, &stderr); code != 0 || stderr.Len() > 0 {
		t.Errorf("exit %d, stderr %q", code, stderr.String())
	}
	for _, want := range []string{
		"Vat says how much a box holds.", "-length LENGTH", "inside WIDTH (default 4 ft)", "-in FILE",
		"text, json, csv, svg", "size.length", "walls[].at", "id gal walls errors", "Exit: 0",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the manual does not say %q:\n%s", want, out.String())
		}
	}
	if strings.Contains(out.String(), "default 0") {
		t.Errorf("the manual tells defaults that are nothing:\n%s", out.String())
	}
}

// Start may change the command, and what it refuses is a wrong call.
func TestStart(t *testing.T) {
	command := vats()
	command.Start = func(c *Command[vat, filled]) error {
		c.Columns = c.Columns[:1]
		c.Rows = func(r *Row, in *vat, out *filled) { r.Text(in.ID) }
		return nil
	}
	var out strings.Builder
	if code := command.Run([]string{"-in", "-", "-out", "csv"}, strings.NewReader(goodLine), &out, io.Discard); code != 0 || out.String() != "id,errors\na,\n" {
		t.Errorf("exit %d, %q", code, out.String())
	}
	command.Start = func(*Command[vat, filled]) error { return errors.New("no price book") }
	var stderr strings.Builder
	if code := command.Run([]string{"-length", "8ft"}, nil, io.Discard, &stderr); code != 2 || !strings.Contains(stderr.String(), "no price book") {
		t.Errorf("exit %d, %q", code, stderr.String())
	}
}

// With Partial the faults of reading and those of computing come together.
func TestPartial(t *testing.T) {
	const line = `{"id":"a","size":{"length":"1 in","width":"4 feets"},"colour":1}`
	command := vats()
	faults := func() int {
		var out strings.Builder
		command.Run([]string{"-in", "-", "-out", "json"}, strings.NewReader(line), &out, io.Discard)
		return strings.Count(out.String(), `"field"`)
	}
	if n := faults(); n != 2 {
		t.Errorf("%d faults, want the 2 of reading", n)
	}
	command.Partial = true
	if n := faults(); n != 3 {
		t.Errorf("%d faults, want 3: unknown unit, unknown field, length too small", n)
	}
}

// What flags give beside -in is shared by the records and never written to.
func TestFlagsAreNotSharedMemory(t *testing.T) {
	command := vats()
	command.Do = func(in *vat) (filled, error) {
		return filled{ID: in.ID, Walls: len(in.Depths), Gal: in.Depths[0].In(manway.Inch), Water: in.Water.String()}, nil
	}
	line := `{"id":"a"}` + "\n" + `{"id":"b","depths":["9 in"],"water":"9 in"}` + "\n"
	want := `{"id":"a","gal":1,"water":"3 in","walls":2}` + "\n" + `{"id":"b","gal":9,"water":"9 in","walls":1}` + "\n"
	var out strings.Builder
	command.Run([]string{"-in", "-", "-out", "json", "-depths", "1in;2in", "-water", "3in"},
		strings.NewReader(strings.Repeat(line, 500)), &out, io.Discard)
	if out.String() != strings.Repeat(want, 500) {
		t.Errorf("got %.200s…", out.String())
	}
}
