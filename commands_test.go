package manway_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// bench is a folder to run commands in: their binaries, testdata as it is in the
// repository, and room for what they write.
type bench struct {
	t        *testing.T
	dir, bin string
}

// built holds the commands that were built once for all tests.
var built struct {
	sync.Once
	bin string
	err error
	log []byte
}

func newBench(t *testing.T) *bench {
	t.Helper()
	built.Do(func() {
		if built.bin, built.err = os.MkdirTemp("", "commands"); built.err != nil {
			return
		}
		built.log, built.err = exec.Command("go", "build", "-o", built.bin+string(filepath.Separator), "./examples/...").CombinedOutput()
	})
	if built.err != nil {
		t.Fatalf("go build ./examples/...: %v\n%s", built.err, built.log)
	}
	b := &bench{t: t, dir: t.TempDir(), bin: built.bin}
	root, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join(root, "testdata"), filepath.Join(b.dir, "testdata")); err != nil {
		t.Fatal(err)
	}
	return b
}

// commandNames are the folders of examples that have a main.go.
func commandNames(t *testing.T) (names []string) {
	t.Helper()
	mains, err := filepath.Glob("examples/*/main.go")
	if err != nil || len(mains) == 0 {
		t.Fatalf("%d commands, %v", len(mains), err)
	}
	for _, main := range mains {
		names = append(names, filepath.Base(filepath.Dir(main)))
	}
	return names
}

func TestMain(m *testing.M) {
	code := m.Run()
	os.RemoveAll(built.bin) // empty: nothing was built
	os.Exit(code)
}

// run has a shell run a line, and gives what it wrote to both outputs. A line
// that takes longer than a minute is stopped.
func (b *bench) run(line string) (string, error) {
	ctx, stop := context.WithTimeout(context.Background(), time.Minute)
	defer stop()
	c := exec.CommandContext(ctx, "sh", "-c", line)
	c.Dir = b.dir
	c.Env = append(os.Environ(), "PATH="+b.bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	out, err := c.CombinedOutput()
	if bytes.ContainsRune(out, '\x1b') {
		b.t.Errorf("%s: writes an escape sequence: nothing here is told by colour", line)
	}
	return string(out), err
}

// write makes a file in the bench.
func (b *bench) write(name, text string) {
	b.t.Helper()
	if err := os.WriteFile(filepath.Join(b.dir, name), []byte(text), 0o644); err != nil {
		b.t.Fatal(err)
	}
}

// shown is a command line of the README with the output that stands below it.
type shown struct {
	line   int
	call   string
	output []string
}

// consoles reads the command lines of the console blocks of a text.
func consoles(text string) (list []shown) {
	inside := false
	for i, line := range strings.Split(text, "\n") {
		switch call, isCall := strings.CutPrefix(line, "$ "); {
		case strings.HasPrefix(line, "```"):
			inside = line == "```console"
		case !inside:
		case isCall:
			list = append(list, shown{line: i + 1, call: call})
		case len(list) > 0:
			last := &list[len(list)-1]
			if before, goesOn := strings.CutSuffix(last.call, "\\"); goesOn && len(last.output) == 0 {
				last.call = before + strings.TrimSpace(line)
			} else {
				last.output = append(last.output, line)
			}
		}
	}
	return list
}

// matches compares lines with those wanted, among which "..." stands for any.
func matches(want, got []string) bool {
	if len(want) == 0 {
		return len(got) == 0
	}
	if strings.TrimSpace(want[0]) == "..." {
		for skip := range len(got) + 1 {
			if matches(want[1:], got[skip:]) {
				return true
			}
		}
		return false
	}
	return len(got) > 0 && strings.TrimRight(want[0], " ") == strings.TrimRight(got[0], " ") && matches(want[1:], got[1:])
}

func lines(text string) []string {
	text = strings.TrimRight(text, "\n")
	if text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

func TestConsoles(t *testing.T) {
	got := consoles("```sh\n$ no\n```\n```console\n$ a \\\n  b | c\n1\n2\n$ d\n```\n$ no\n")
	if len(got) != 2 || got[0].call != "a b | c" || len(got[0].output) != 2 || got[1].call != "d" || got[1].output != nil {
		t.Errorf("%+v", got)
	}
	for _, c := range []struct {
		want, got string
		same      bool
	}{{"a b", "a b", true}, {"a b", "a", false}, {"a ... c", "a b b c", true}, {"a ...", "a", true}, {"... c", "a b", false}, {"", "a", false}, {"", "", true}} {
		if matches(strings.Fields(c.want), strings.Fields(c.got)) != c.same {
			t.Errorf("%q against %q", c.want, c.got)
		}
	}
}

var goRun = regexp.MustCompile(`go run \./examples/([a-z]+)`)

// Every command line of the README's console blocks writes what stands below it.
func TestReadmeConsoles(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	b, list := newBench(t), consoles(string(text))
	if len(list) == 0 {
		t.Error("README.md has no console block")
	}
	for _, s := range list {
		if strings.HasPrefix(s.call, "go test") {
			t.Errorf("README.md:%d: %s cannot be replayed by a test: it stands outside of console blocks", s.line, s.call)
			continue
		}
		out, _ := b.run(goRun.ReplaceAllString(s.call, "$1")) // a refusal is shown by its output
		if got := lines(out); !matches(s.output, got) {
			t.Errorf("README.md:%d: %s\nwrites\n%s\nwant\n%s", s.line, s.call, strings.Join(got, "\n"), strings.Join(s.output, "\n"))
		}
	}
}

// comment is the package comment of a command: its command lines and records.
type comment struct {
	calls   []string
	records []string // JSON, one line each
}

var (
	words = regexp.MustCompile(`("[^"]*"|\S| \S)*`) // up to two blanks outside of quotes
	named = regexp.MustCompile(`[\w.-]+\.(jsonl?|csv)\b`)
)

// commentOf reads the indented lines of a package comment: those that begin with
// the command's name, and the JSON objects.
func commentOf(t *testing.T, name string) (c comment) {
	t.Helper()
	source, err := os.ReadFile(filepath.Join("examples", name, "main.go"))
	if err != nil {
		t.Fatal(err)
	}
	var call, record string
	for line := range strings.Lines(string(source)) {
		text, isComment := strings.CutPrefix(strings.TrimRight(line, "\n"), "//")
		if !isComment {
			break
		}
		text, indented := strings.CutPrefix(text, "\t")
		trimmed := strings.TrimSpace(text)
		switch {
		case !indented:
			call, record = "", ""
			continue
		case call != "" || strings.HasPrefix(text, name+" "):
			rest, goesOn := strings.CutSuffix(trimmed, "\\")
			if call += rest; !goesOn {
				c.calls = append(c.calls, words.FindString(call))
				call = ""
			}
		case record != "" || strings.HasPrefix(text, "{"):
			if record += trimmed; json.Valid([]byte(record)) {
				c.records = append(c.records, record)
				record = ""
			}
		}
	}
	if record != "" {
		t.Errorf("%s: its package comment has a record that is no JSON: %s", name, record)
	}
	return c
}

// give writes the records of a comment into a file of a name that its command
// lines use: JSON lines, one JSON document, or CSV.
func (b *bench) give(name string, c comment) {
	b.t.Helper()
	switch filepath.Ext(name) {
	case ".jsonl":
		b.write(name, strings.Join(c.records, "\n")+"\n")
	case ".json":
		b.write(name, c.records[0])
	case ".csv":
		b.write(name, table(b.t, c.records))
	}
}

// table is JSON records as CSV: texts as they are, everything else as JSON.
func table(t *testing.T, records []string) string {
	t.Helper()
	var header []string
	rows := make([]map[string]json.RawMessage, len(records))
	for i, r := range records {
		if err := json.Unmarshal([]byte(r), &rows[i]); err != nil {
			t.Fatal(err)
		}
		for key := range rows[i] {
			if !slices.Contains(header, key) {
				header = append(header, key)
			}
		}
	}
	slices.Sort(header)
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	_ = w.Write(header)
	for _, row := range rows {
		cells := make([]string, len(header))
		for i, key := range header {
			if json.Unmarshal(row[key], &cells[i]) != nil {
				cells[i] = string(row[key])
			}
		}
		_ = w.Write(cells)
	}
	w.Flush()
	return out.String()
}

// provide makes the files that a call of a comment names and the repository does
// not have. They hold the records that the comment itself shows, or, where it
// shows none, a survey.
func (b *bench) provide(call string, c comment) {
	b.t.Helper()
	for _, file := range named.FindAllString(call, -1) {
		_, err := os.Stat(filepath.Join(b.dir, file))
		switch {
		case err == nil || strings.Contains(call, "/"+file) || strings.Contains(call, ">"+file):
		case len(c.records) > 0:
			b.give(file, c)
		default:
			survey, err := os.ReadFile("testdata/sites/rusted-handle.json")
			if err != nil {
				b.t.Fatal(err)
			}
			b.write(file, strings.ReplaceAll(string(survey), `"../prices/`, `"testdata/prices/`))
		}
	}
}

// Every command line in the package comment of a command can be run as it is.
func TestCommentsOfCommands(t *testing.T) {
	for _, name := range commandNames(t) {
		t.Run(name, func(t *testing.T) {
			b, c := newBench(t), commentOf(t, name)
			if len(c.calls) == 0 {
				t.Error("its package comment shows no command line")
			}
			for _, call := range c.calls {
				b.provide(call, c)
				if strings.Contains(call, "-listen") {
					b.serve(call)
				} else if out, err := b.run(call); err != nil {
					t.Errorf("%s: %v\n%s", call, err, out)
				}
			}
		})
	}
}

// serve starts a service at any free port, and interrupts it once it listens.
func (b *bench) serve(call string) {
	b.t.Helper()
	const script = `%s 2>log & service=$!
until grep -q listening log || ! kill -0 $service; do sleep 0.05; done
kill -INT $service; wait $service`
	call = regexp.MustCompile(`:\d+`).ReplaceAllString(call, ":0")
	if out, err := b.run("set -m; " + strings.Replace(script, "%s", call, 1)); err != nil {
		log, _ := os.ReadFile(filepath.Join(b.dir, "log"))
		b.t.Errorf("%s: %v\n%s%s", call, err, out, log)
	}
}

// Every command is its own manual, and says in one line what it did not
// understand.
func TestMannersOfCommands(t *testing.T) {
	b := newBench(t)
	for _, name := range commandNames(t) {
		if out, err := b.run(name + " -h"); err != nil || len(out) < 300 {
			t.Errorf("%s -h: %v, %d bytes", name, err, len(out))
		}
		out, err := b.run(name + " -no-such-flag")
		if exit, ok := err.(*exec.ExitError); !ok || exit.ExitCode() != 2 || len(lines(out)) != 1 || !strings.HasPrefix(out, name+": ") {
			t.Errorf("%s -no-such-flag: %v, %s", name, err, out)
		}
	}
}

// Asked for SI, a command writes what it worked out in SI alone, up to the
// assumptions and cautions, which are fixed sentences.
func TestMetricTexts(t *testing.T) {
	const box = " -units si -kind box -length 2.4m -width 1.5m -height 1.5m "
	customary := regexp.MustCompile(`\d (ft|gal|lb|lbf|in2|in3|ft3|yd3)\b|[^3] in([,.)]|$)`)
	b := newBench(t)
	for _, line := range []string{
		"dipchart" + box + "-partition '1.6m;75mm' -liquid-depth 1.2m -depths 0.6m -working",
		"afloat" + box + "-cover 450mm -groundwater 1m -wall 75mm -roof 100mm -floor 100mm",
		"tograde -units si -cover 450mm -reveal 50mm -port 500mm -ring 'code=r6; height=150mm; bore=600mm; outside=760mm'",
		"pumpout -units si -kind box -length 2.4m -width 1.2m -height 1.5m -outlet 1.2m -found 'tank;opened;1.22m;350mm;100mm;200mm'",
	} {
		out, err := b.run(line)
		if err != nil {
			t.Errorf("%s: %v\n%s", line, err, out)
		}
		own, _, _ := strings.Cut(out, "Taken:")
		if found := customary.FindString(own); found != "" || len(own) < 100 {
			t.Errorf("%s: %q in %d bytes:\n%s", line, found, len(own), own)
		}
	}
}
