package record

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/strictjson"
)

// manual writes what -h shows.
func (c *Command[In, Out]) manual(w io.Writer) {
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
	wrap(w, "Fields of a record in JSON, columns in CSV:", strictjson.Names(typeOf[In]()))
	if c.Rows != nil {
		wrap(w, "Columns of -out csv:", append(slices.Clone(c.Columns), "errors"))
	}
	fmt.Fprint(w, `
Lengths and other quantities carry their unit: "8 ft 4 1/2 in", "2.55 m". In CSV the
unit may stand in the header, length_in, and the cells are bare numbers then.

Exit: 0 every record was computed, 1 some were refused and the others written,
2 the call was wrong and nothing was written.
`)
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

// wrap writes words under a title in lines of up to 80 characters.
func wrap(w io.Writer, title string, words []string) {
	fmt.Fprintf(w, "\n%s\n", title)
	width := 80
	for _, word := range words {
		if width+1+len(word) > 78 {
			if width < 80 {
				fmt.Fprintln(w)
			}
			fmt.Fprint(w, " ")
			width = 1
		}
		fmt.Fprint(w, " ", word)
		width += 1 + len(word)
	}
	fmt.Fprintln(w)
}
