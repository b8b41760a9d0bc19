// Afloat sets what holds a buried tank down against the groundwater that lifts
// it: the factor of safety now, at every step of the work, and the liquid that
// may be pumped out.
//
//	afloat -kind box -length 96in -width 60in -height 60in -wall 3in \
//	  -roof 4in -floor 3in -cover "1 ft" -groundwater unknown
//	afloat -in tanks.jsonl -out json
//
// A record is one tank, with the shape and the partitions of dipchart:
//
//	{"id":"a","shape":{"kind":"box","length":"96 in","width":"60 in",
//	 "height":"60 in"},"wall":"3 in","roof":"4 in","floor":"3 in",
//	 "cover":"1 ft","groundwater":"2 ft","liquid":"0 in","found":"48 in",
//	 "lids":"300 lb","dug":"12 ft3"}
//
// groundwater is a depth below grade, or unknown, which is taken at grade.
// liquid is what is left in every compartment; with found, the level on arrival,
// each step of the work is reckoned: as found, covers off, dug, pumped.
//
// Soil counts straight above the tank, and above a flange; soil beside it only
// where wedge_slope asks for it; friction on the walls never. Ballast counts with
// its weight under water. required is the factor of safety asked for, 1.2 unless
// given.
//
// A tank of plastic, fibreglass or steel weighs what empty_mass says; without it
// a thin shell is taken, which is an estimate.
//
// It is an unreviewed reckoning of weights: whether a tank may be emptied is for
// local code and those who answer for the work.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
