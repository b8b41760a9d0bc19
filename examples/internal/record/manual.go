package record

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/fold"
	"manway.example/manway/examples/internal/strictjson"
)

// manual writes what -h shows.
func (c *Command[In, Out]) manual(to io.Writer) {
	w := &strings.Builder{}
	var base In
	fs := c.flags(&base, new(options))
	fmt.Fprintf(w, "%s\n\nUse:\n  %s FLAGS                one record, described by flags\n  %s -in FILE [FLAGS]     every record of a file, - for standard input\n",
		strings.TrimSpace(c.Doc), c.Name, c.Name)
	fmt.Fprint(w, "\nFlags of a record:\n")
	fs.VisitAll(func(f *flag.Flag) {
		if !slices.Contains(shared, f.Name) {
			describe(w, f)
		}
	})
	fmt.Fprint(w, "\nFlags of the call:\n")
	for _, name := range shared {
		describe(w, fs.Lookup(name))
	}
	fmt.Fprintf(w, "\nFields of a record in JSON, columns in CSV:\n  %s\n", strings.Join(strictjson.Names(typeOf[In]()), " "))
	if c.Rows != nil {
		fmt.Fprintf(w, "\nColumns of -out csv:\n  %s errors\n", strings.Join(c.Columns, " "))
	}
	fmt.Fprint(w, `
Lengths and other quantities carry their unit: "8 ft 4 1/2 in", "2.55 m". In CSV
the unit may stand in the header, length_in; the cells are bare numbers then.

Exit: 0 every record was computed, 1 some were refused and the others written,
2 the call was wrong and nothing was written.
`)
	_, _ = io.WriteString(to, fold.Text(w.String())) // there is nobody left to tell
}

// Manual writes what -h shows of a program that is no [Command]: its package
// comment and its flags.
func Manual(to io.Writer, source string, fs *flag.FlagSet) {
	w := &strings.Builder{}
	fmt.Fprintf(w, "%s\nFlags:\n", Comment(source))
	fs.VisitAll(func(f *flag.Flag) { describe(w, f) })
	_, _ = io.WriteString(to, fold.Text(w.String()))
}

// describe writes one flag with its default, unless that is nothing.
func describe(w io.Writer, f *flag.Flag) {
	kind, usage := flag.UnquoteUsage(f)
	if b, ok := f.Value.(interface{ IsBoolFlag() bool }); ok && b.IsBoolFlag() {
		kind = ""
	} else if kind == "" || kind == "value" {
		kind = "VALUE"
	}
	fmt.Fprintf(w, "  -%s\n        %s", strings.TrimSpace(f.Name+" "+kind), strings.ReplaceAll(usage, "\n", "\n        "))
	if d := f.DefValue; d != "" && d != "0" && d != "false" && !strings.HasPrefix(d, "0 ") {
		fmt.Fprintf(w, " (default %s)", plainDefault(d))
	}
	fmt.Fprintln(w)
}

// plainDefault is a default as people write it: that of a quantity is in SI and
// to the last digit, 0.07619999999999999 m for 3 in.
func plainDefault(d string) string {
	for _, quantity := range [...]interface {
		UnmarshalText([]byte) error
		Text(manway.System) string
	}{new(manway.Length), new(manway.Volume), new(manway.Temperature), new(manway.Pressure)} {
		if quantity.UnmarshalText([]byte(d)) == nil {
			return quantity.Text(manway.US)
		}
	}
	return d
}
