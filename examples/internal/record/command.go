package record

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"manway.example/manway/examples/internal/strictjson"
)

// Command is one calculation as a program. In is the record it reads, a struct
// marked for encoding/json with names in lower case; Out is what it computes,
// marked likewise.
//
//	func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
type Command[In, Out any] struct {
	Name string // of the program
	Doc  string // the manual: what it answers, with an example

	// Flags declares the flags that describe one record, with their defaults.
	Flags func(*flag.FlagSet, *In)

	// Start, if set, is called once after the flags were read and before the
	// first record, to read a file named by a flag, or to change what follows in
	// c, such as the columns. Its error counts as a wrong call.
	Start func(c *Command[In, Out]) error

	// ID is the name of a record, which its errors carry too.
	ID func(*In) string

	// Do computes one record. It is called from several goroutines and must not
	// change what slices and pointers of the record point to.
	Do func(*In) (Out, error)

	// Partial says that Do can be trusted to find the further faults of a record
	// of which some values could not be read, without taking those for zero.
	Partial bool

	Text func(io.Writer, *In, *Out) error // for -out text

	// JSON, if set, writes the fields of a result faster than encoding/json does
	// for Out. The object around them is already open.
	JSON func(*JSON, *In, *Out)

	Columns []string              // for -out csv
	Rows    func(*Row, *In, *Out) // writes one or more rows of Columns

	// Documents are further formats, such as svg or html, that hold one record.
	Documents map[string]func(io.Writer, *In, *Out) error
}

// options is what a call asked for, beside the record.
type options struct {
	in, out, file string
	header        string // the columns of CSV that comes without them
	tolerate      bool   // a refused record does not change the exit code
	given         bool   // a flag of the record was given
}

// Run runs the command with the arguments after its name, and returns the exit
// code.
func (c Command[In, Out]) Run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	var base In
	opts, err := c.parse(args, &base)
	if errors.Is(err, flag.ErrHelp) {
		c.manual(stdout)
		return 0
	}
	if err == nil && c.Start != nil {
		err = c.Start(&c)
	}
	if err != nil {
		return c.usage(stderr, err)
	}
	var source source
	if opts.in != "" {
		if source, err = openSource(opts.in, opts.header, stdin); err != nil {
			return c.usage(stderr, err)
		}
		defer source.close()
	}
	var work run[In, Out]
	work.c, work.opts, work.stderr = &c, opts, stderr
	work.start = newStarter(base)
	if opts.file == "" {
		work.stdout = stdout
		return work.all(source)
	}
	whole, err := Create(opts.file)
	if err != nil {
		return c.usage(stderr, err)
	}
	defer whole.Discard()
	work.stdout = whole
	code := work.all(source)
	if code == 0 || code == 1 && !work.alone {
		if err := whole.Commit(); err != nil {
			return c.usage(stderr, err)
		}
	}
	return code
}

// parse reads the flags of a call.
func (c *Command[In, Out]) parse(args []string, base *In) (options, error) {
	var opts options
	fs := c.flags(base, &opts)
	fs.VisitAll(func(f *flag.Flag) {
		if !slices.Contains(shared, f.Name) {
			f.Value = shownFlag{f.Value}
		}
	})
	if err := fs.Parse(args); err != nil {
		return opts, err
	}
	own := 0
	fs.Visit(func(f *flag.Flag) {
		if !slices.Contains(shared, f.Name) {
			own++
		}
	})
	opts.given = own > 0
	switch {
	case fs.NArg() > 1, fs.NArg() == 1 && opts.in != "":
		return opts, fmt.Errorf("arguments %q: want one file of records at most", fs.Args())
	case fs.NArg() == 1:
		opts.in = fs.Arg(0)
	}
	if formats := c.formats(); !slices.Contains(formats, opts.out) {
		return opts, fmt.Errorf("-out %q: want %s", opts.out, strings.Join(formats, ", "))
	}
	if opts.header != "" && opts.in == "" {
		return opts, errors.New("-header: want -in FILE too")
	}
	if opts.in == "" && !opts.given {
		return opts, errors.New("no record: want the flags of one, or -in FILE")
	}
	return opts, nil
}

// shared are the flags that every command has.
var shared = []string{"in", "out", "o", "header", "tolerate"}

func (c *Command[In, Out]) flags(base *In, opts *options) *flag.FlagSet {
	fs := flag.NewFlagSet(c.Name, flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.Usage = func() {}
	fs.StringVar(&opts.in, "in", "", "read records from `FILE`, JSON lines or CSV; - is standard input")
	fs.StringVar(&opts.out, "out", "text", "write `FORMAT`: "+strings.Join(c.formats(), ", "))
	fs.StringVar(&opts.file, "o", "", "write to `FILE`, whole or not at all, instead of standard output")
	fs.StringVar(&opts.header, "header", "", "`NAMES` of the columns of CSV that comes without a header;\nnone is written then, and a row that is the header is passed over")
	fs.BoolVar(&opts.tolerate, "tolerate", false, "exit 0 although records were refused")
	if c.Flags != nil {
		c.Flags(fs, base)
	}
	return fs
}

// formats lists what -out can ask for.
func (c *Command[In, Out]) formats() []string {
	formats := []string{"text", "json"}
	if c.Rows != nil {
		formats = append(formats, "csv")
	}
	further := make([]string, 0, len(c.Documents))
	for name := range c.Documents {
		further = append(further, name)
	}
	slices.Sort(further)
	return append(formats, further...)
}

// usage says in one line what was wrong with a call.
func (c *Command[In, Out]) usage(stderr io.Writer, err error) int {
	fmt.Fprintf(stderr, "%s: %s (%s -h is the manual)\n", c.Name, oneLine(err.Error()), c.Name)
	return 2
}

func oneLine(text string) string {
	return strictjson.Visible(strings.Join(strings.Fields(text), " "))
}
