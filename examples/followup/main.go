// Followup reads the surveys of past visits and lists what must be followed up:
// openings that were left unsafe, pump-outs due within 60 days, offers that
// nobody answered for 14 days, remedies that were declined.
//
//	followup -on 2026-12-01 testdata/sites
//	followup -on 2026-12-01 -out csv testdata/sites
//	followup -log -out csv testdata/sites
//
// Each argument is a survey as sitevisit reads it, or a folder of them (its
// files that end in .json). The list stands in the order of the days, what
// waits longest first, unsafe openings before everything. With -log it lists
// what was taken to disposal instead: date, visit, volume, site and ticket; of a
// load that was spread on land also the field, what the field got in the 365 days
// up to that day, and the most it takes by the nitrogen of its crop (40 CFR
// 503.13(c), as WAC 173-308-270 quotes it).
//
// A survey that is refused gives one line for each of its faults on standard
// error, and the others are listed all the same.
//
// Exit status: 0 every survey was read; 1 some were refused; 2 the command line
// was wrong.
package main

import (
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/strictjson"
	"manway.example/manway/examples/visit"
)

//go:embed main.go
var source string

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr, time.Now())) }

type call struct {
	on    manway.Date
	out   string
	log   bool
	files []string
}

func run(args []string, stdout, stderr io.Writer, now time.Time) int {
	c, code := parse(args, stdout, stderr, now)
	if code >= 0 {
		return code
	}
	var rows [][]cell
	var loads []load
	for _, name := range c.files {
		v, err := read(name)
		if err != nil {
			report(stderr, name, err)
			code = 1
			continue
		}
		loads = append(loads, loadsOf(v)...)
		rows = append(rows, c.rows(v)...)
	}
	if c.log {
		rows = disposal(loads)
	}
	c.sort(rows)
	if err := c.write(stdout, rows); err != nil {
		fmt.Fprintln(stderr, "followup:", err)
		return 1
	}
	return max(code, 0)
}

// parse reads the command line; code is -1 where the work goes on.
func parse(args []string, stdout, stderr io.Writer, now time.Time) (c call, code int) {
	flags := flag.NewFlagSet("followup", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	c.on = manway.Date{Year: now.Year(), Month: now.Month(), Day: now.Day()}
	flags.TextVar(&c.on, "on", c.on, "`day` of the list, as 2026-12-01; today when left out")
	flags.StringVar(&c.out, "out", "text", "`form` of the list: text, csv or json")
	flags.BoolVar(&c.log, "log", false, "list what was taken to disposal")
	err := flags.Parse(args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		record.Manual(stdout, source, flags)
		return c, 0
	case err != nil:
		fmt.Fprintln(stderr, "followup:", err)
		return c, 2
	case c.out != "text" && c.out != "csv" && c.out != "json":
		fmt.Fprintf(stderr, "followup: -out %q: want text, csv or json\n", c.out)
		return c, 2
	case flags.NArg() == 0:
		fmt.Fprintln(stderr, "followup: no survey given: want JSON files or folders of them; -h tells more")
		return c, 2
	}
	for _, name := range flags.Args() {
		files, err := surveys(name)
		if err != nil {
			fmt.Fprintln(stderr, "followup:", err)
			return c, 2
		}
		c.files = append(c.files, files...)
	}
	return c, -1
}

// surveys is the file, or the .json files of the folder.
func surveys(name string) ([]string, error) {
	info, err := os.Stat(name)
	if err != nil || !info.IsDir() {
		return []string{name}, err
	}
	var files []string
	err = filepath.WalkDir(name, func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && strings.HasSuffix(path, ".json") {
			files = append(files, path)
		}
		return err
	})
	return files, err
}

func read(name string) (visit.Visit, error) {
	f, err := os.Open(name)
	if err != nil {
		return visit.Visit{}, err
	}
	defer f.Close()
	s, err := visit.Read(f)
	if err != nil {
		return visit.Visit{}, err
	}
	return visit.Run(s, cost.Book{})
}

func report(stderr io.Writer, name string, err error) {
	var faults strictjson.Faults
	if !errors.As(err, &faults) {
		fmt.Fprintf(stderr, "followup: %s\n", strictjson.Visible(name+": "+err.Error()))
	}
	for _, f := range faults {
		fmt.Fprintf(stderr, "followup: %s: %s\n", strictjson.Visible(name), f.Error())
	}
}

// rows are the lines of one visit.
func (c call) rows(v visit.Visit) [][]cell {
	var rows [][]cell
	for _, r := range v.FollowUp(c.on) {
		rows = append(rows, []cell{words(r.Kind), words(r.Since.String()), number(float64(r.Days), strconv.Itoa(r.Days)), words(r.Visit), words(r.What)})
	}
	return rows
}

func (c call) sort(rows [][]cell) {
	day, first := 1, "unsafe opening"
	if c.log {
		day, first = 0, ""
	}
	rank := func(row []cell) string {
		if row[0].text == first {
			return "0" + row[day].text
		}
		return "1" + row[day].text
	}
	slices.SortStableFunc(rows, func(a, b []cell) int { return strings.Compare(rank(a), rank(b)) })
}
