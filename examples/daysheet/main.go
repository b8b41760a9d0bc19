// Daysheet works a day, a year or a county of pump-outs, one tank a row: gallons
// in every compartment, gallons to pump, pounds of lid, reach to grade, and what
// else is asked for by name. It reads any number of rows, keeps their order, and
// holds only a few of them at a time.
//
//	daysheet testdata/routes/day.csv
//	daysheet -out csv testdata/routes/day.csv
//	daysheet -out json \
//	  -columns id,pump_gal,next_years,next_on,leave_in testdata/routes/day.jsonl
//	daysheet -length 96in -width 48in -depth 48in -partition 62in \
//	  -partition-thick 3in -sludge1 12in -scum1 4in -sludge2 3in -scum2 1in \
//	  -lid-dia 24in -lid-thick 3in -cover 18in
//
// # A row
//
// Columns of CSV, or fields of a JSON line, lengths with their unit:
//
//	id               of the tank
//	length, width    inside, of a box with plumb walls
//	depth            of the liquid: the outlet invert over the floor
//	partition        from the inside of the inlet end to the near face; left out:
//	                 none
//	partition_thick  its thickness
//	cover            soil over the roof, grade to roof; left out: not measured
//	lid_dia          of a concrete disc that lies on the roof; left out: not
//	                 measured
//	lid_thick        its thickness
//	sludge1, scum1   thicknesses in the first compartment; left out: not measured
//	sludge2, scum2   and in the second
//
// A CSV header may carry the unit, as in length_in or cover_mm; the cells are
// bare numbers then. Further fields, for what is asked for by name:
//
//	height           inside, floor to roof
//	wall, roof, floor  thicknesses; left out: the least that codes allow
//	groundwater      below grade; left out: taken at grade
//	lid_at           from the inside of the inlet end to the middle of the lid
//	steel            in the roof: none or known; left out: unknown
//	bar, bar_spacing, bar_cover  of known steel, both ways, near the underside
//	people           who live on the tank; left out: not known
//	truck            gallons that the truck holds
//	pumped, visited  dates of the last pump-out and of these readings, 2026-11-25
//
// # What is answered
//
// The columns without -columns are id, liquid_1_gal, liquid_2_gal, pump_gal,
// lid_lb and reach_in. Any of these may be asked for, in any order; the unit at
// the end of a name may be another one of its kind, as in pump_L or reach_mm:
//
//	liquid_gal, liquid_1_gal, liquid_2_gal  below the outlet, in all and by
//	                        compartment
//	solids_1, solids_2      sludge and scum as a share of the depth
//	pump_gal, pump_1_gal, pump_2_gal  what to pump: all liquid of every
//	                        compartment of which sludge and scum are a third of
//	                        the depth (New Hampshire, Env-Wq 1023.01); a third
//	                        reached is enough
//	sludge_gal, scum_gal    in all
//	loads                   that pump_gal makes for the truck
//	lid_lb, lid_soaked_lb   dry, and after it has lain in water
//	reach_in                from the roof to grade: what a riser must make up
//	next_years, next_low_years, next_high_years  from one pump-out of the whole
//	                        tank to the next, by the household table
//	next_on                 date of the next pump-out by the measured solids
//	float_factor, float_state  weight over uplift of the tank pumped dry, lids off
//	leave_in, leave_state   liquid to leave in it, so that it stays down
//	roof_screening_use, roof_screening_load, roof_screening_status  unreviewed
//	                        screening of the roof: the loading that governs (soil,
//	                        crowd, a person; wheels are not asked about)
//	cautions                codes; in JSON and text they come unasked
//
// What rests on something that was not measured is empty in CSV, null in JSON,
// "not known" in text, and never 0: pump_gal is not known while one compartment
// was not read. Volumes hold for the depth of liquid; without height nothing is
// said of flotation or of the roof. The lid is taken as the opening of the roof.
//
// # In a pipeline
//
// A row that is refused leaves one line in its place that says why, and the
// others are worked. Where rows come without a header, as a cluster's mapper
// gets its share of a file, -header names the columns; then none is written
// either, and a row that is the header itself is passed over. With -tolerate
// refused rows do not change the exit status.
//
//	daysheet -out csv -header id,length_in,width_in,depth_in \
//	  -columns id,liquid_gal -tolerate - <testdata/routes/share.csv
//
// # Cautions
//
// never-enter: a tank is a confined space, its gas kills within breaths.
// guard-hole: no open hole is left, and covers go back fastened. heavy-lift:
// a bar or hoist and a second person. do-not-empty: not below leave_in. Pumping
// is not an inspection, local code governs, and nothing here says that a tank,
// a lid or a roof is in order.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(newCommand().Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
