// Lidcheck says what one lid of a buried tank weighs, how it sits, with what
// force each way of moving it goes and whether the crew will, what the lifting
// equation lets one person lift, and, where they were looked at, what its worn
// section, its handle and its guarding are worth.
//
//	lidcheck -shape disc -diameter "24 in" -thickness "3 in"
//	lidcheck -shape "bevelled plug" -diameter "26 in" \
//	  -bottom-diameter "24 in" -thickness "4 in" -loss "1/2 in" -fit bevel \
//	  -people 2 -limit "60 lb"
//	lidcheck -shape slab -length "30 in" -width "20 in" -thickness "4 in" \
//	  -handle "state=sound; waist=7/16 in; as_made=1/2 in" \
//	  -guard "opening=18 in; depth=0 in; locked=no; fastened=no"
//	lidcheck -lift "load=44 lb; h=23 in; v=15 in; end_h=23 in; end_v=64 in; \
//	  control=true; grip=fair"
//	lidcheck -in lids.csv -out csv
//
// A record is one lid:
//
//	{"id":"inlet","shape":"bevelled plug","diameter":"26 in",
//	 "bottom_diameter":"24 in","thickness":"4 in","loss":"1/2 in",
//	 "moisture":"soaked",
//	 "recesses":[{"length":"6 in","width":"2 in","depth":"1 in","count":2}],
//	 "seat":{"fit":"bevel","opening":"22 in"},"crew":{"people":2,
//	 "limit":"60 lb"},"bond":"40 lbf",
//	 "steel":{"state":"unknown"},"person":"250 lb",
//	 "handle":{"state":"pitted","waist":"3/8 in","as_made":"1/2 in"},
//	 "guard":{"opening":"22 in","depth":"0 in","fastened":"no","locked":"no",
//	 "secondary":"no"}}
//
// Lid. shape is disc, bevelled plug, stepped plug (with flange), slab, tapered
// slab, stepped slab. loss is the thickness gone from it: it counts for
// strength, not for weight. measured, a weight on a scale, takes the place of
// the weight by size; plastic and iron need it. moisture left out is reckoned
// from dry to soaked. overburden is soil on top; pieces equal pieces.
//
// Moving. seat.fit is on top, let in, bevel, step; seat.gap its play, both
// sides together; seat.driven_by what pressed a bevelled lid in. bond is an
// allowance for dirt and ice at the first pull that the crew declares. crew is
// how many and what each will lift. outside lists what the lifting equation does
// not cover: kneeling, one-handed, confined, astride, unstable, carrying, fast,
// slippery, hot or cold, other persons, below feet; then it gives no number.
// below is by how much the ground under the lid is below the feet, as in a pit.
// edition is us or metric.
//
// Strength. span is between supports, else the lid's width; person who stands
// on it; steel.state none, unknown or known. No lid passes this screening.
//
// handle.state is sound, pitted, necked, loose, missing. guard.depth left out is
// not known; rules are the codes to judge the guard by, all of them if left out.
//
// lift is any lift by one person: load, h and v of the hands and turn at the
// origin, end_h, end_v, end_turn at the destination, control where it must be
// placed with care, frequency a minute, spell short, moderate or long. These may
// stand without a lid: lift; team (people and what each lifts); tasks, several
// lifts in one spell, with work; air (class C1 to CX, metal, age) over a handle;
// fails_at, the load at which a hole cover fails; filter, the UK lifting filter;
// hand, the guideline of hand forces; side_pull, a taut rope pulled sideways.
//
// Exit 0 means that every record was computed, never that a lid is safe.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
