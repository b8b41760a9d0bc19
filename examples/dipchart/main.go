// Dipchart says how much a tank holds, in all and in every compartment, at a
// liquid depth and at every step of a dip stick.
//
//	dipchart -kind box -length "8 ft" -width "5 ft" -height "5 ft 6 in" \
//	  -partition "62 in;3 in" -liquid-depth "48 in"
//	dipchart -in tanks.jsonl -out json
//
// A record is one tank:
//
//	{"id":"t1","shape":{"kind":"horizontal-cylinder","diameter":"60 in",
//	 "length":"96 in","heads":"ellipsoidal"},
//	 "partitions":[{"at":"60 in","thickness":"3 in"}],"liquid_depth":"48 in",
//	 "depths":["12 in","24 in"]}
//
// Kinds of shape and their sizes, inside unless outside is true:
//
//	box                  length, width, height; floor_length, floor_width where
//	                     the walls are drafted (then length and width are at the
//	                     height); fillet, the radius along the floor's edges
//	vertical-cylinder    diameter, height
//	horizontal-cylinder  diameter, length (the straight part), heads: one name or
//	                     a pair [inlet, outlet] of flat, hemispherical,
//	                     ellipsoidal (2:1 unless head_depth is given),
//	                     spherical-cap (with head_depth), torispherical (with
//	                     crown_radius and knuckle_radius); these too one or a pair
//	horizontal-ellipse   width, height, length
//	frustum              bottom_diameter, top_diameter, height
//	sphere               diameter
//	surveyed             levels: depth with area, or depth with volume, from the
//	                     floor up
//	nominal              volume and depth; height and length where known
//
// A partition stands at "at" from the inside of the inlet end (of the straight
// part) to its near face, has a thickness, and a height where it does not reach
// the roof. Liquid over a part-height partition belongs to no compartment and is
// counted in the total.
//
// The chart has a row for each of depths, or, where there are none, for every
// step up from the floor; with rim, the height of the access's rim over the
// floor, readings run down from the rim.
//
// In JSON full_gal is the volume up to the roof and liquid_gal that at the
// liquid depth (at the roof where none is given); share is the part of
// liquid_gal, gal_per_in what one more inch holds.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
