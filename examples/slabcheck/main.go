// Slabcheck finds how a flat slab, a wall panel or a round lid bends: deflections,
// moments and support forces, where they are largest, and how exact the figures
// are; and what the roof, walls, partitions, floor and lids of a tank still carry.
// It is an unreviewed screening of what stands there, not a design.
//
//	slabcheck -slab "length=96 in; width=60 in; thickness=4 in; e=3600 ksi" \
//	  -load "kind=uniform; pressure=200 psf"
//	slabcheck -slab "length=96 in; width=60 in; thickness=4 in; e=3600 ksi; \
//	  bearing_only=true" -line "x=64 in" \
//	  -opening "shape=rect; x=12 in; y=18 in; length=24 in; width=24 in" \
//	  -load "kind=patch; x=48 in; y=30 in; length=20 in; width=10 in; \
//	  force=16000 lbf" -out svg -o slab.svg
//	slabcheck -lid "diameter=24 in; thickness=3 in; e=3600 ksi" \
//	  -load "kind=patch; x=4 in; y=0 in; length=4 in; width=4 in; \
//	  force=300 lbf" -point "x=4 in; y=0 in"
//	slabcheck -in slabs.jsonl -out json
//
// A record is one slab with the loads that act on it together:
//
//	{"id":"s1","slab":{"length":"96 in","width":"60 in","thickness":"4 in",
//	 "e":"3600 ksi","nu":0.2,"edges":["simple","simple","simple","free"],
//	 "lines":[{"x":"64 in"}],"supports":[{"x":"90 in","y":"6 in"}],
//	 "openings":[{"shape":"rect","x":"12 in","y":"18 in","length":"24 in",
//	 "width":"24 in"},{"shape":"round","x":"76 in","y":"30 in",
//	 "diameter":"16 in"}],
//	 "zones":[{"x":"40 in","y":"10 in","length":"12 in","width":"12 in",
//	 "thickness":"3 in"}]},
//	 "loads":[{"kind":"uniform","pressure":"200 psf"},{"kind":"ring","opening":0,
//	 "offset":"2 in","force_per_length":"15 lbf/in"}],
//	 "points":[{"x":"48 in","y":"30 in"}]}
//
// Slab. x runs along length and y along width from one corner. edges are those at
// y=0, x=length, y=width, x=0: simple (all, if left out), clamped or free. A line
// is a support across the whole slab, at one x or one y; supports are points.
// bearing_only makes edges, lines and points unable to hold the slab down; else
// they hold it both ways, as handbooks have it. A rect opening is given by its
// lower corner, a round one by its centre, a zone of other thickness by its lower
// corner. nu is 0.2 if left out. points are where deflection and moments are
// reported; a point in an opening has none, null in JSON.
//
// Loads push down where positive. uniform: pressure. patch: force on length by
// width, by its centre; the part that overlaps an opening is put on the rest.
// ring: force_per_length on the rim of opening number opening, moved out by
// offset, with square corners round a rectangle. line: force_per_length from x, y
// to to_x, to_y. liquid: density times gravity times the depth under level, which
// is a y: a wall panel that stands on y=0.
//
// Lid. Instead of slab: diameter, thickness, e, nu and edge: simple, clamped, or
// three points, a rim that bears on three places only, as a chipped seat may let
// it (at 0, 120 and 240 degrees from x). The origin is its centre; loads are
// uniform and patch, with three points only a patch at the centre, taken as a
// disc of the same area: somebody at the rim between two points bends it more,
// which the lids of a tank reckon.
//
// Results. Moments are per length, mx_lbf = lbf in/in, positive with tension on
// the face away from the load; mx stretches fibres along x. sag and hog are the
// largest and smallest principal moments. Moments near a corner of a rectangular
// opening, a point support, or a clamped edge's end at a free one have no limit:
// they are read half the thickness away. A slab is solved on three meshes at
// least; error_estimate is how far its governing moment may still be off, as a
// part of it. A result that says converged false did not settle within 1
// percent.
//
// -out svg draws the slab from above with its governing moments in shades.
//
// Tank. Instead of slab or lid a record may be a whole tank, to judge what its
// roof, walls, partitions, floor and lids still carry:
//
//	slabcheck -kind box -length "96 in" -width "60 in" -height "60 in" \
//	  -wall "3 in" -roof "4 in" -floor "4 in" -partition "62 in;3 in" \
//	  -access "along=24 in; length=24 in; width=24 in" -cover "12 in" \
//	  -planned-cover "20 in" -strength "4000 psi" \
//	  -mesh "state=known; diameter=3/8 in; spacing=6 in; cover=1 in"
//
//	{"id":"t1","tank":{"shape":{"kind":"box","length":"96 in","width":"60 in",
//	 "height":"60 in"},"wall":"3 in","roof":"4 in","floor":"4 in",
//	 "partitions":[{"at":"62 in","thickness":"3 in"}],"access":[{"compartment":0,
//	 "along":"24 in","length":"24 in","width":"24 in"}],
//	 "concrete":{"strength":"4000 psi"},"groundwater":"3 ft",
//	 "outlet_invert":"48 in",
//	 "judge":{"roof":{"steel":{"inside":{"state":"known","diameter":"0.375 in",
//	 "spacing":"6 in","cover":"0.75 in"}},"loss":"0.25 in","contact":[false],
//	 "now":{"cover":"12 in","wetness":"soaked"},"planned":{"cover":"20 in",
//	 "risers":[{"access":0,"mass":"500 lb","wall":"3 in"}]}},
//	 "walls":{"top_held":true},"partitions":{},"floor":{}},
//	 "lids":[{"name":"inlet lid","shape":"slab","length":"26 in","width":"26 in",
//	 "thickness":"3 in","opening":"24 in","steel":{"state":"none"}}]}}
//
// The shape is given as to dipchart; along runs from the inside of the inlet
// end, across from the centre line. A part that is not in judge is not judged;
// with none there, and no lid, the whole shell is. steel has faces inside
// (underside of the roof) and outside; inside is the bars along the tank, or
// level in a wall, and inside_across the others where they differ. Steel left
// out is not known: then nothing is shown to carry, and figures of plain
// concrete stand for comparison. loss is worn off the inside, spalls are where
// more is gone, contact says which partitions were seen to touch the roof,
// joints where a roof of several pieces is parted. wheels are those asked about;
// else a mower, a pickup and a truck. planned is what will rest on the roof
// instead of now: what it adds is told whether or not the strength is known.
//
// Each check is given with its Use, which passes at 1 or less, its load
// combination, phi, source, and the demand without factors; -out json has the
// working too, -out svg marks the weakest place of the roof.
//
// Exit 0 means that every record was computed, never that a slab is safe.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
