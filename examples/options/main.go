// Options compares what each way of putting things right costs over the years:
// a cheap patch against a dear replacement, or any number of options.
//
//	options -patch 450 -patch-life "6 3 1" -replace 2400 \
//	  -replace-life "40 20 12" -rate "5 %" -years 20
//	options -in ways.json -prices testdata/prices/example.csv -out html \
//	  -o quote.html
//	options -in ways.json -prices testdata/prices/example.csv -out svg \
//	  -o cost-against-years.svg
//	options -in pairs.csv -prices testdata/prices/example.csv -out csv
//
// Lives are years in the good, the usual and the bad case, or one number for all
// three: nobody knows the chance that a patch fails, so three cases are told. The
// rate is a percentage; it and the escalation are real (prices of today) unless
// prices is nominal.
//
// A record is one question. Flags or a CSV row pose that of patch and
// replacement; JSON has any number of options:
//
//	{"id":"q1","title":"riser at lid 2","on":"2026-11-25",
//	 "site":"north of the house",
//	 "horizon":{"years":20,"rate":"3 %","escalation":"0 %","prices":"real",
//	 "unused_life":"straight-line","currency":"USD"},
//	 "saw":["roots at the joint"],"means":["groundwater runs in"],
//	 "options":[
//	 {"id":"patch","title":"Patch the joint from grade","first":"450",
//	 "life_years":{"good":6,"usual":3,"bad":1},
//	 "upkeep":"0","delays":["roots"],"then":"riser"},
//	 {"id":"riser","title":"New sealed riser","scope":[{"code":"dig-hand",
//	 "quantity":7.2}],
//	 "life_years":{"good":40,"usual":20,"bad":12},"upkeep":"0","cures":["roots",
//	 "gap"],"needs_dig":true,"permit":"local authority",
//	 "events":[{"title":"look at the joint","cost":"40","year":5,"every":5}]}]}
//
// Planned upkeep against running to failure is a question of its own:
//
//	{"id":"n1","neglect":{"visit":"350","every_years":3,"repair":"9000",
//	 "lasts_kept_years":{"good":50,"usual":40,"bad":25},
//	 "lasts_left_years":{"good":20,"usual":12,"bad":7}},
//	 "horizon":{"years":40,"rate":"3 %"}}
//
// First is what is paid at the start; an option with a scope has it from the
// price book (-prices, -local) by the terms of the record. Renewal is paid each
// time a life ends, the same as first where it is not given; then names the
// option that takes over instead. Upkeep is paid at the end of each year, with
// upkeep_rise more each year; salvage is received at the end of each life;
// forever is never renewed. Negative costs are income.
//
// The answer has plain totals paid by years 5, 10 and 20 for the owner; and
// present value, equivalent annual cost over the horizon, the yearly cost of
// each option repeated alike, break-even life of the cheaper one (as often
// repeated, and as putting the dearer one off), payback of the dearer one, the
// values of rate, horizon, cost and life at which the answer flips, and what
// moves each yearly cost, for the desk. html is the owner's quote with the chart
// of cost against years, ready to sign; svg is the chart alone.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command().Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
