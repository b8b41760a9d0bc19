// Bycode holds a tank against what an authority or a model code asks of it:
// liquid capacity, proportions, access, covers.
//
//	bycode -rules us-va -kind box -length 96in -width 60in -height 64in \
//	  -outlet-invert 48in -inlet-invert 49.5in -bedrooms 3
//	bycode -in tanks.jsonl -out json
//
// A record is one tank, with the shape and the partitions of dipchart, and what
// was found at it; whatever is left out was not measured, and is not judged:
//
//	{"id":"a","rules":"us-va","shape":{"kind":"box","length":"96 in",
//	 "width":"60 in","height":"64 in"},
//	 "outlet_invert":"48 in","inlet_invert":"49.5 in","bedrooms":3,
//	 "outlet_below":"18 in","cover_fastened":"no"}
//
// rules is the id of a set; a wrong one is refused with the list of them all.
// A rule that was superseded, or that is remembered and not read, only informs.
// The rules stand as they were read: local code governs and may have changed.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
