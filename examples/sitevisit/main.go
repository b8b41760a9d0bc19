// Sitevisit works one survey of a buried wastewater tank through the whole job:
// what the tank holds, how each opening is brought to grade, what the lids weigh
// and carry, what to pump and when to come again, whether the emptied tank may
// float, what is wrong, and what each way of putting it right costs.
//
//	sitevisit survey.json                          the answer as text
//	sitevisit -out html -o visit.html survey.json  one page, for paper and phone
//	sitevisit -out json survey.json                every figure with its unit
//	sitevisit -only crew survey.json               five lines for a phone
//	sitevisit - <survey.json                       from standard input
//	sitevisit -blank >survey.json                  an empty survey, explained
//	sitevisit -schema >survey.schema.json          its JSON Schema, for an editor
//
// The survey is one JSON object; see package examples/visit for its fields.
// Lengths and other quantities are texts with a unit: "8 ft 4 1/2 in", "2.55 m",
// "1,250 gal". What was not measured is left out, or "unknown"; the answer lists
// what it left unjudged. The price book named in it is a CSV file beside the
// survey; -prices FILE takes another in its place.
//
// A survey with faults is refused whole: every fault is named on standard error
// with its JSON path and line, and nothing is written. With -o the file is
// written whole or not at all.
//
// Exit status: 0 the answer was written, which never means that anything was
// found to be in order; 1 the survey or price book was refused, or could not be
// read or written; 2 the command line was wrong.
package main

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"

	"manway.example/manway/cost"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/strictjson"
	"manway.example/manway/examples/visit"
)

//go:embed main.go
var source string

func main() {
	debug.SetGCPercent(400) // one survey is soon done, in little memory
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

type call struct {
	out, file, only, prices, survey string
	blank, schema                   bool
}

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	c, code := parse(args, stdout, stderr)
	if code >= 0 {
		return code
	}
	if c.out == "html" {
		go visit.ReadyHTML()
	}
	answer, err := c.answer(stdin)
	if err == nil && c.only != "" {
		if answer, err = answer.Only(strings.Split(c.only, ",")...); err != nil {
			fmt.Fprintln(stderr, "sitevisit: -only:", err)
			return 2
		}
	}
	if err == nil {
		err = c.write(answer, stdout)
	}
	if err != nil {
		c.report(stderr, err)
		return 1
	}
	return 0
}

// parse reads the command line; code is -1 where the work goes on.
func parse(args []string, stdout, stderr io.Writer) (c call, code int) {
	fs := flag.NewFlagSet("sitevisit", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.StringVar(&c.out, "out", "text", "`form` of the answer: text, json or html")
	fs.StringVar(&c.file, "o", "", "write to `file` instead of standard output")
	fs.StringVar(&c.only, "only", "", "only these `sections`, their ids with commas between, such as first,seen,glance,crew; a wrong one lists them all")
	fs.StringVar(&c.prices, "prices", "", "price book, a CSV `file`, in place of the survey's own")
	fs.BoolVar(&c.blank, "blank", false, "print an empty survey with its fields explained, and stop")
	fs.BoolVar(&c.schema, "schema", false, "print the JSON Schema of a survey, and stop")
	err := fs.Parse(args)
	switch {
	case err == nil && c.blank:
		fmt.Fprint(stdout, visit.Blank)
		return c, 0
	case err == nil && c.schema:
		fmt.Fprint(stdout, visit.Schema)
		return c, 0
	case errors.Is(err, flag.ErrHelp):
		record.Manual(stdout, source, fs)
		return c, 0
	case err != nil:
		fmt.Fprintln(stderr, "sitevisit:", err)
		return c, 2
	case fs.NArg() != 1:
		fmt.Fprintf(stderr, "sitevisit: %d surveys given: want one JSON file, or - for standard input; -h tells more\n", fs.NArg())
		return c, 2
	case c.out != "text" && c.out != "json" && c.out != "html":
		fmt.Fprintf(stderr, "sitevisit: -out %q: want text, json or html\n", c.out)
		return c, 2
	}
	c.survey = fs.Arg(0)
	return c, -1
}

// answer reads survey and price book and runs the visit.
func (c call) answer(stdin io.Reader) (visit.Visit, error) {
	in := stdin
	if c.survey != "-" {
		f, err := open(c.survey)
		if err != nil {
			return visit.Visit{}, err
		}
		defer f.Close()
		in = f
	}
	survey, err := visit.Read(in)
	if err != nil {
		return visit.Visit{}, err
	}
	book, err := c.book(survey)
	if err != nil {
		return visit.Visit{}, err
	}
	return visit.Run(survey, book)
}

// book reads the price book; without one nothing is priced.
func (c call) book(s visit.Survey) (cost.Book, error) {
	name := c.prices
	if name == "" && s.Money.Prices != "" {
		name = s.Money.Prices
		if !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(c.survey), filepath.FromSlash(name))
		}
	}
	if name == "" {
		return cost.Book{}, nil
	}
	f, err := open(name)
	if err != nil {
		return cost.Book{}, err
	}
	defer f.Close()
	book, err := cost.ReadPriceBook(f)
	if err != nil {
		return cost.Book{}, fmt.Errorf("%s: %w", name, err)
	}
	return book, nil
}

// open opens a file that can be read as one, which a directory cannot.
func open(name string) (*os.File, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	info, err := f.Stat()
	if err == nil && info.IsDir() {
		err = fmt.Errorf("%s: is a directory, want a file", name)
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

// write writes the answer in one form, whole or not at all.
func (c call) write(v visit.Visit, stdout io.Writer) error {
	var b bytes.Buffer
	var err error
	switch c.out {
	case "html":
		err = v.WriteHTML(&b)
	case "json":
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		err = enc.Encode(v)
	default:
		err = v.WriteText(&b)
	}
	if err != nil {
		return err
	}
	if c.file == "" {
		_, err = stdout.Write(b.Bytes())
		return err
	}
	f, err := record.Create(c.file)
	if err != nil {
		return err
	}
	defer f.Discard()
	if _, err := f.Write(b.Bytes()); err != nil {
		return err
	}
	return f.Commit()
}

// report names every fault, a line each.
func (c call) report(stderr io.Writer, err error) {
	var faults strictjson.Faults
	if !errors.As(err, &faults) {
		fmt.Fprintln(stderr, "sitevisit:", strings.ReplaceAll(err.Error(), "\n", "\nsitevisit: "))
		return
	}
	if c.out == "json" {
		enc := json.NewEncoder(stderr)
		enc.SetEscapeHTML(false)
		_ = enc.Encode(struct {
			ID     any               `json:"id"`
			Errors strictjson.Faults `json:"errors"`
		}{nil, faults}) // nothing is left to tell it to
		return
	}
	for _, f := range faults {
		fmt.Fprintf(stderr, "sitevisit: %s: %s\n", strictjson.Visible(c.survey), f.Error())
	}
}
