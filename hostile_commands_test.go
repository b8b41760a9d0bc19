package manway_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
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

func sorted(m map[string]any) []string { return slices.Sorted(maps.Keys(m)) }
