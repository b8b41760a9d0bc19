// Backup follows the levels of a tank through a day: inflow from a house,
// compartments, and an outlet that is clear or partly blocked. It says how high
// the level rises and when it reaches the inlet, the roof or where it spills.
//
//	backup -kind box -length "8 ft" -width "4 ft" -height "5 ft" \
//	  -outlet "48 in" -inlet "51 in" -pipe "4 in" -open 0.05 \
//	  -base "40 gal/d" -surge "bath;7 h" -surge "laundry;9 h"
//	backup -in tanks.jsonl -out json
//	backup -in tank.json -out svg -o levels.svg
//
// A record is one tank, described as for dipchart:
//
//	{"id":"b1","shape":{"kind":"box","length":"8 ft","width":"4 ft",
//	 "height":"5 ft"},"outlet":"48 in","inlet":"51 in","pipe":"4 in",
//	 "open":0.05,"base":"40 gal/d","surges":[{"kind":"bath","at":"7 h"},
//	 {"at":"9 h","volume":"40 gal","over":"3 min"}]}
//
// with
//
//	outlet       outlet invert over the floor
//	inlet        inlet invert; spill: the level at which liquid leaves another
//	             way, such as a floor drain or the lid; left out, the roof
//	pipe, open   inside diameter of the outlet and the share of it that is open:
//	             1 clear, 0 closed. It is declared: no law says what roots, a
//	             filter or grease leave
//	slots        area and invert of the opening of each partition: [{"area":"16
//	             in2","invert":"28 in"}]
//	base         steady inflow; surges: [{"kind":"bath","at":"7 h"},{"at":"9
//	             h","volume":"40 gal","over":"3 min"}] kinds bath (36 gal),
//	             laundry (40 gal), flush (4.3 gal)
//	start        level at the start; left out, the outlet invert
//	time, step   a day and 15 s where they are left out
//
// Levels are inches above the inside floor. It is an estimate: the pipe beyond
// the outlet is taken to run free.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
