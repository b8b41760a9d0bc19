// Slabcheck finds how a flat slab, a wall panel or a round lid bends: deflections,
// moments and support forces, where they are largest, and how exact the figures
// are. It is an unreviewed screening of what stands there, not a design.
//
//	slabcheck -slab "length=96 in; width=60 in; thickness=4 in; e=3600 ksi" -load "kind=uniform; pressure=200 psf"
//	slabcheck -slab "length=96 in; width=60 in; thickness=4 in; e=3600 ksi; bearing_only=true" -line "x=64 in" -opening "shape=rect; x=12 in; y=18 in; length=24 in; width=24 in" -load "kind=patch; x=48 in; y=30 in; length=20 in; width=10 in; force=16000 lbf" -out svg -o slab.svg
//	slabcheck -lid "diameter=24 in; thickness=3 in; e=3600 ksi" -load "kind=patch; x=4 in; y=0 in; length=4 in; width=4 in; force=300 lbf" -point "x=4 in; y=0 in"
//	slabcheck -in slabs.jsonl -out json
//
// A record is one slab with the loads that act on it together:
//
//	{"id":"s1","slab":{"length":"96 in","width":"60 in","thickness":"4 in","e":"3600 ksi","nu":0.2,"edges":["simple","simple","simple","free"],
//	 "lines":[{"x":"64 in"}],"supports":[{"x":"90 in","y":"6 in"}],
//	 "openings":[{"shape":"rect","x":"12 in","y":"18 in","length":"24 in","width":"24 in"},{"shape":"round","x":"76 in","y":"30 in","diameter":"16 in"}],
//	 "zones":[{"x":"40 in","y":"10 in","length":"12 in","width":"12 in","thickness":"3 in"}]},
//	 "loads":[{"kind":"uniform","pressure":"200 psf"},{"kind":"ring","opening":0,"offset":"2 in","force_per_length":"15 lbf/in"}],
//	 "points":[{"x":"48 in","y":"30 in"}]}
//
// Slab. x runs along length and y along width from one corner. edges are those at
// y=0, x=length, y=width, x=0: simple (all, if left out), clamped or free. A line
// is a support across the whole slab, at one x or one y; supports are points.
// bearing_only makes edges, lines and points unable to hold the slab down; else
// they hold it both ways, as handbooks have it. A rect opening is given by its
// lower corner, a round one by its centre, a zone of other thickness by its lower
// corner. nu is 0.2 if left out.
//
// Loads push down where positive. uniform: pressure. patch: force on length by
// width, by its centre; the part that overlaps an opening is put on the rest.
// ring: force_per_length on the rim of opening number opening, moved out by
// offset, with square corners round a rectangle. line: force_per_length from x, y
// to to_x, to_y. liquid: density times gravity times the depth under level, which
// is a y: a wall panel that stands on y=0.
//
// Lid. Instead of slab: diameter, thickness, e, nu and edge: simple, clamped, or
// three points, a rim that bears on three places only, which bounds what a chipped
// seat can do (at 0, 120 and 240 degrees from x). The origin is its centre; loads
// are uniform and patch, with three points only a patch at the centre, taken as a
// disc of the same area.
//
// Results. Moments are per length, mx_lbf = lbf in/in, positive with tension on the
// face away from the load; mx stretches fibres along x. sag and hog are the largest
// and smallest principal moments. Moments near a corner of a rectangular opening,
// a point support, or a clamped edge's end at a free one have no limit: they are
// read half the thickness away. A slab is solved on three meshes at least;
// error_estimate is how far its governing moment may still be off, as a part of
// it. A result that says converged false did not settle within 1 percent.
//
// -out svg draws the slab from above with its governing moments in shades.
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
