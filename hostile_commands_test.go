package manway_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"
)

// pipe has a command read from a pipe, and gives what it wrote and its exit code.
func (b *bench) pipe(in io.Reader, name string, args ...string) (out, log string, code int) {
	c := exec.Command(filepath.Join(b.bin, name), args...)
	var stdout, stderr bytes.Buffer
	c.Dir, c.Stdin, c.Stdout, c.Stderr = b.dir, in, &stdout, &stderr
	_ = c.Run()
	return stdout.String(), stderr.String(), c.ProcessState.ExitCode()
}

// streams reports the commands whose comment shows records and that read a
// stream of them; the records stand without line breaks.
func streams(t *testing.T, b *bench) map[string][]string {
	t.Helper()
	list := map[string][]string{}
	for _, name := range commandNames(t) {
		for _, r := range commentOf(t, name).records {
			var line bytes.Buffer
			if err := json.Compact(&line, []byte(r)); err != nil {
				t.Fatal(err)
			}
			if out, _, code := b.pipe(strings.NewReader(strings.Repeat(line.String()+"\n", 2)), name, "-in", "-", "-out", "json"); code == 0 && strings.Count(out, "\n") == 2 {
				list[name] = append(list[name], line.String())
			}
		}
	}
	if len(list) < 8 {
		t.Fatalf("%d commands read a stream of records: the rule has lost sight of them", len(list))
	}
	return list
}

// Lines that are none, broken or endless are refused one by one, and the record
// after them is answered as if they had not been there.
func TestHostileLines(t *testing.T) {
	digits := strings.Repeat("9", 10_000)
	b := newBench(t)
	for name, records := range streams(t, b) {
		good := records[0]
		open := strings.TrimSuffix(good, "}")
		want, _, _ := b.pipe(strings.NewReader(good+"\n"), name, "-in", "-", "-out", "json")
		bad := []string{
			strings.Repeat("[", 100_000), `{"id":` + strings.Repeat(`{"a":`, 50_000), open + `,"id":"twice"}`, "{\"id\":\"\xff\xfe\"}", "{\"id\":\"a\x00b\"}", "\x00\x00\x00",
			`{"id":` + digits + `}`, open + `,"people":` + digits + `}`, open + `,"x":"` + digits + ` in"}`, `{"id":"\ud800","x":1}`, `{"id":1e999}`, "null", `"text"`, "{", "}", strings.Repeat("x", 3<<20),
			"\ufeff" + `{"id":"bom","x":1}`,
		}
		var in strings.Builder
		for _, line := range bad {
			in.WriteString(line + "\r\n" + good + "\r\n")
		}
		out, log, code := b.pipe(strings.NewReader(good+"\n"+in.String()), name, "-in", "-", "-out", "json")
		got := lines(out)
		if code != 1 || strings.Contains(log, "goroutine ") || len(got) != 2*len(bad)+1 {
			t.Errorf("%s: exit %d, %d lines, want 1 and %d\n%.500s", name, code, len(got), 2*len(bad)+1, log)
			continue
		}
		for i, line := range got {
			switch {
			case !json.Valid([]byte(line)) || !utf8.ValidString(line):
				t.Errorf("%s: line %d is no JSON: %.200s", name, i+1, line)
			case i%2 == 0 && line != strings.TrimSpace(want):
				t.Errorf("%s: the good record after %.60q gives %.300s", name, bad[max(i/2-1, 0)], line)
			case i%2 == 1 && (!strings.Contains(line, `"errors":[{`) || len(line) > len(bad[i/2])+2_000):
				t.Errorf("%s: %.60q gives %.300s of %d bytes", name, bad[i/2], line, len(line))
			}
		}
	}
}

// variants are a record with each of its texts in turn replaced by another.
func variants(t *testing.T, record, text string) (list []string) {
	t.Helper()
	count := 0
	var walk func(v any, at int) any
	walk = func(v any, at int) any {
		switch v := v.(type) {
		case map[string]any:
			m := map[string]any{}
			for _, k := range sorted(v) {
				m[k] = walk(v[k], at)
			}
			return m
		case []any:
			l := make([]any, len(v))
			for i := range v {
				l[i] = walk(v[i], at)
			}
			return l
		case string:
			if count++; count-1 == at {
				return text
			}
		}
		return v
	}
	var v any
	if err := json.Unmarshal([]byte(record), &v); err != nil {
		t.Fatal(err)
	}
	walk(v, -1)
	for at := range count {
		count = 0
		data, err := json.Marshal(walk(v, at))
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, string(data))
	}
	return list
}

// No text of any record becomes a formula in a table, and JSON has it as it was.
func TestFormulasStayText(t *testing.T) {
	b := newBench(t)
	for name, records := range streams(t, b) {
		shown := 0
		for _, text := range []string{`=HYPERLINK("http://a.example","b")`, "+1", "@x", "-2+3", "\t=1", "\r=1", "\n=1", "＝1"} {
			var in strings.Builder
			for _, r := range records {
				in.WriteString(strings.Join(variants(t, r, text), "\n") + "\n")
			}
			out, log, code := b.pipe(strings.NewReader(in.String()), name, "-in", "-", "-out", "csv")
			rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
			if err != nil || code > 1 || len(rows) < 2 {
				t.Errorf("%s: %q: exit %d, %d rows, %v\n%.500s", name, text, code, len(rows), err, log)
				continue
			}
			for _, row := range rows {
				for _, cell := range row {
					if cell != "" && strings.HasPrefix(cell, text[:1]) && strings.Contains(cell, text[1:]) {
						t.Errorf("%s: the cell %q is a formula", name, cell)
					}
					if cell == "'"+text {
						shown++
					}
				}
			}
			plain, _, _ := b.pipe(strings.NewReader(in.String()), name, "-in", "-", "-out", "json")
			quoted, _ := json.Marshal(text)
			if !strings.Contains(plain, fmt.Sprintf(`"id":%s`, quoted)) && utf8.RuneCountInString(text) > 1 && text[0] > ' ' {
				t.Errorf("%s: the JSON has no id %s", name, quoted)
			}
		}
		if shown == 0 {
			t.Errorf("%s: no table shows a text that was tried", name)
		}
	}
}

// marks are characters that do not show, or work on what stands around them.
var marks = []string{"\u202e", "\u2066", "\u200b", "\ufeff", "\x1b[31m", "\u009b", "\n", "\U000e0041"}

// unseen finds a character that does not show, other than the ends of lines.
func unseen(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool {
		return r != '\n' && unicode.In(r, unicode.C, unicode.Zl, unicode.Zp)
	})
}

// escaped is how a mark must be shown, as JSON writes it.
func escaped(mark string) string {
	r, _ := utf8.DecodeRuneInString(mark)
	return `\u` + fmt.Sprintf("%04x", utf16.AppendRune(nil, r)[0])
}

// formats are what -out of a command takes, by its manual.
func (b *bench) formats(name string) []string {
	manual, _ := b.run(name + " -h")
	_, list, _ := strings.Cut(manual, "write FORMAT: ")
	list, _, _ = strings.Cut(list, " (default")
	return strings.Split(list, ", ")
}

// A mark in any text of a record, as JSON, CSV or a flag, has it refused, and the
// error names the field and shows the mark. No format lets it through.
func TestUnseenMarks(t *testing.T) {
	b := newBench(t)
	for name, records := range streams(t, b) {
		for _, mark := range marks {
			bad := "a" + mark + "b"
			var in strings.Builder
			n := 0
			for _, r := range records {
				list := variants(t, r, bad)
				n += len(list)
				in.WriteString(strings.Join(list, "\n") + "\n")
			}
			for _, format := range []string{"json", "csv", "text"} {
				out, log, code := b.pipe(strings.NewReader(in.String()), name, "-in", "-", "-out", format)
				if code != 1 || unseen(out+log) || !strings.Contains(log, fmt.Sprintf("%d of %d records refused", n, n)) {
					t.Errorf("%s: %q in %s: exit %d, unseen %v, %.200s", name, mark, format, code, unseen(out+log), log)
				}
				if shown := "a" + escaped(mark); format != "json" && strings.Count(out, shown) < n || !strings.Contains(strings.Join(strings.Fields(out), " "), "only characters that are seen") {
					t.Errorf("%s: %s shows %q %d times, want at least %d:\n%.300s", name, format, shown, strings.Count(out, shown), n, out)
				}
				if quoted, _ := json.Marshal("a" + escaped(mark)); format == "json" && !strings.Contains(out, `{"field":"id","value":`+strings.TrimSuffix(string(quoted), `"`)) {
					t.Errorf("%s: the JSON names no id %s:\n%.300s", name, quoted, out)
				}
			}
		}
		b.unseenElsewhere(name, records[0])
	}
}

// unseenElsewhere has a mark stand in a cell, a flag, the name of a field and a
// record of which a document is made.
func (b *bench) unseenElsewhere(name, record string) {
	const bad, shown = "a\u202eb", `a\u202eb`
	var named map[string]any
	if err := json.Unmarshal([]byte(record), &named); err != nil {
		b.t.Fatal(err)
	}
	named["id"] = bad
	row, _ := json.Marshal(named)
	named["id"], named[bad] = "a", 1
	field, _ := json.Marshal(named)
	for _, c := range []struct {
		what, in string
		args     []string
		code     int
	}{
		{"a cell", table(b.t, []string{string(row)}), nil, 1},
		{"the name of a column", bad + "\n1\n", nil, 2},
		{"the name of a field", string(field) + "\n", nil, 1},
		{"a flag", record + "\n", []string{"-id", bad}, 2},
	} {
		out, log, code := b.pipe(strings.NewReader(c.in), name, append([]string{"-in", "-"}, c.args...)...)
		if all := out + log; code != c.code || unseen(all) || !strings.Contains(all, shown) {
			b.t.Errorf("%s: a mark in %s: exit %d, want %d: %.300s", name, c.what, code, c.code, all)
		}
	}
	b.write("bad.json", string(row))
	for _, format := range b.formats(name) {
		out, log, code := b.pipe(nil, name, "-out", format, "bad.json")
		if all := out + log; code != 1 || unseen(all) || !strings.Contains(all, shown) || out != "" && !slices.Contains([]string{"text", "json", "csv"}, format) {
			b.t.Errorf("%s -out %s: a mark in the id: exit %d: %.300s", name, format, code, all)
		}
	}
}

// A mark in any text of a survey has it refused by whatever reads surveys, and one
// in a price book by whatever reads those.
func TestUnseenMarksInSurveys(t *testing.T) {
	b := newBench(t)
	survey, err := os.ReadFile("testdata/sites/rusted-handle.json")
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range variants(t, string(survey), "a\u2067b") {
		b.write("survey.json", s)
		lines := []string{"sitevisit survey.json", "followup survey.json"}
		for _, line := range lines[:1+(i+1)%2] {
			out, err := b.run(line)
			if err == nil || unseen(out) || !strings.Contains(out, `a\u2067b: want`) {
				t.Errorf("%s, text %d: %v, %.300s", line, i, err, out)
			}
		}
	}
	b.write("bad\x1b[31m.json", "{}")
	for _, line := range []string{"followup .", "sitevisit bad*.json"} {
		if out, err := b.run(line + " 2>&1 | grep 31m"); err != nil || unseen(out) {
			t.Errorf("%s: %v, %q", line, err, out)
		}
	}
	book, err := os.ReadFile("testdata/prices/example.csv")
	if err != nil {
		t.Fatal(err)
	}
	b.write("book.csv", strings.Replace(string(book), "dig by hand", "dig\u202eby hand", 1))
	for _, line := range []string{
		"takeoff -scope 'dig-hand 7.2 LH' -prices book.csv", "options -prices book.csv testdata/prices/ways.json",
		"sitevisit -prices book.csv testdata/sites/rusted-handle.json",
	} {
		if out, err := b.run(line); err == nil || unseen(out) || !strings.Contains(out, `dig\u202eby hand`) {
			t.Errorf("%s: %v, %.300s", line, err, out)
		}
	}
}

func sorted(m map[string]any) []string { return slices.Sorted(maps.Keys(m)) }
