// Tograde brings one access of a buried tank to grade: how high the riser must
// be, which rings in stock make that height, what seals its joints, the pit to
// dig, what leaks through an open joint, and, where its condition was looked at,
// what is wrong and which remedies there are.
//
//	tograde -cover "26 in" -reveal "2 in" -port "24 in" \
//	  -ring "code=r24x6; height=6 in; bore=24 in; outside=30 in" \
//	  -ring "code=r24x4; height=4 in; bore=24 in; outside=30 in; count=2" \
//	  -lid "fits=24 in; stands=3 in; mass=60 lb"
//	tograde -cover "26 in" -outside "30 in" \
//	  -seen "joint_sealed=no; roots=yes; joint_gap=1/2 in; fastened=no; guard=no"
//	tograde -in accesses.jsonl -out csv
//	tograde -cover "26 in" -port "24 in" \
//	  -ring "height=12 in; bore=24 in; outside=30 in" -out svg -o pit.svg
//
// A record is one access:
//
//	{"id":"a1","cover":"26 in","slope":"4 deg","reveal":"2 in",
//	 "settlement":"1/2 in","roof":"4 in","port":"24 in",
//	 "rings":[{"code":"r24x6","height":"6 in","bore":"24 in","outside":"30 in",
//	 "count":6,"cost":4200}],
//	 "lids":[{"code":"c24","fits":"24 in","stands":"3 in","mass":"60 lb",
//	 "cost":9900}],
//	 "groundwater":"unknown","soil_type":"C","earth":"loam",
//	 "seen":{"joint_sealed":"no","roots":"yes","joint_gap":"1/2 in",
//	 "fastened":"no"},
//	 "site":{"standing":2,"standing_mass":"220 lb","liquid":"700 gal"}}
//
// Height. cover is straight down from grade to the roof at the middle of the
// opening. reveal is what the finished top stands above grade, negative below
// it, measured uphill unless from says centre or downhill; slope is that of the
// ground, and then outside is needed. settlement is by how much the riser may
// sink, grade_rise by how much grade will be raised. cover_thickness is that of
// a cover standing on the rings, where no lids are listed.
//
// Rings. height is without the joint; count is how many there are, all that are
// needed where it is left out; mass is taken from the sizes of a concrete ring
// where it is not given, plastic rings need one; cost is in cents or any other
// smallest unit; top_bore makes a ring an adapter; cut_step and cut_least say
// that it may be cut down. lids are covers of which one is chosen, with the bore
// that each fits and the height that it stands above the rings. The stacks come
// with the fewest joints first, then the lightest, then the cheapest.
//
// Pit. Ground round a tank was disturbed: soil_type is C unless a competent
// person declared type B (B-declared). shored holds the sides plumb. earth is
// loam, sand or clay. groundwater is a depth or unknown, which is taken at grade.
// pit ("length=8 ft; width=5 ft; depth=4 ft") is a pit round another part.
//
// Joint. strip is the preformed strip (width, height, roll, overlap); bead gunned
// sealant along the inner edge, the outer, both, or neither: the centreline;
// cement a plug of a depth from inside or outside, by bags of a mass or a yield.
//
// Riser in the ground. light ("mass=40 lb; anchors=6; flange=34 in") is a sealed
// riser that groundwater may lift; wall ("thickness=1/2 in; modulus=22000 psi;
// poisson=0.4; wheel=pickup; away=2 ft") is screened for buckling, and pressed by
// the wheel of a mower, pickup or truck that may come as near as away.
//
// Condition. seen holds what was observed; what is left out was not seen, and
// the answer lists it. Answers are yes, no, unknown; handle is sound, rusted,
// loose or missing; cover_strength and roof_strength are pass, fail, not shown
// or not judged. site holds what the scope of remedies needs. gap, an open
// joint, or seen.joint_gap, is reckoned as a leak, against design_flow.
//
// tie ("corners=30 ft; from_a=18 ft; from_b=24 ft 3 in; tape=2 in") gives the
// place from two corners of the house; hose ("along=90 ft; bottom=8 ft; inlet=4
// ft") the hose and the lift to the truck; surface (turf, bare soil, loose
// gravel, pavers, rooted bed, asphalt, concrete slab, deck) what lies over a
// cover that is buried cover_down below grade.
//
// Exit 0 means that every record was computed, never that an access is safe.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
