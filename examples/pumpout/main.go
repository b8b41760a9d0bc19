// Pumpout plans the pump-out of a tank: the crew's message in five lines, then
// gallons per compartment, order, what the level on arrival points to, which
// rule asks for pumping and when to come back.
//
//	pumpout -kind box -length "8 ft" -width "4 ft" -height "5 ft" \
//	  -partition "5 ft;3 in" -outlet "48 in" \
//	  -found "front;opened;49 in;14 in;4 in;8 in" \
//	  -found "rear;not opened;;;;12 in;lid too heavy" -truck "2500 gal" \
//	  -lift "9 ft" -hose "100 ft" -people 2 -tools "bar, hook, guard"
//	pumpout -in stops.jsonl -out json
//
// A record is one tank:
//
//	{"id":"t1","shape":{"kind":"box","length":"8 ft","width":"4 ft",
//	 "height":"5 ft"},
//	 "partitions":[{"at":"5 ft","thickness":"3 in"}],"outlet":"48 in",
//	 "device_bottom":"30 in",
//	 "compartments":[{"name":"front","state":"opened","level":"49 in",
//	 "sludge":"14 in","scum":"4 in","lid_depth":"8 in"},
//	 {"name":"rear","state":"not opened","reason":"lid too heavy"}],
//	 "truck":"2500 gal","aboard":"300 gal","cover":"12 in",
//	 "groundwater":"unknown"}
//
// The tank is described as for dipchart. Heights are above the inside floor:
// outlet and inlet inverts, the level of the surface, the bottom of the outlet
// tee (device_bottom), ports through the partitions (ports, one for each). A
// reading left out, or "not measured", is not zero. A compartment that is left
// out was not opened.
//
//	state        opened, not opened, cleanout only
//	carries      difference of level that each partition is shown to carry
//	cover        soil over the roof; with it the level not to go below is found
//	             from flotation, groundwater unknown being taken at grade
//	not_below    a level not to go below that somebody else found, with because
//	lift         from the surface up to the truck's inlet, with hose,
//	             hose_diameter (3 in), vacuum (24 inHg), fittings (K of the hose,
//	             1.5), altitude, temperature (60 F), usual_rate
//	residents    with residents_known (counted, about, owner says, unknown),
//	             bedrooms, grinder (yes, no, unknown), months of the year lived in
//	date         of the visit, with last_pumped and last_known
//	runback      yes, no, unknown, with rise and over
//	inlet_baffle, outlet_baffle, filter: in place, loose, gone, clogged, none
//	             fitted, not seen
//	tare, limit  of the truck, for its weight
//	gauge_before, gauge_after  the truck's gauge, of a compartment pumped as
//	             planned
//
// Exit 0 says that every record was computed, not that any tank is safe.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
