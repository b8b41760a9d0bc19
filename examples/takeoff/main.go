// Takeoff turns the scope of a remedy or a pump-out into lines to buy, with
// waste and whole packs, and prices them from your own price book.
//
//	takeoff -scope "dig-hand 7.2 LH; concrete 3 FTQ; sealant-strip 7.1 FOT" \
//	  -prices testdata/prices/example.csv
//	takeoff -gallons "1,250 gal" -covers "8 in;26 in" -hose "140 ft" \
//	  -filters 1 -prices testdata/prices/example.csv
//	takeoff -in jobs.jsonl -prices testdata/prices/example.csv \
//	  -local testdata/prices/local.csv -out csv
//
// A record is one job:
//
//	{"id":"j1","title":"outside collar","on":"2026-11-25",
//	 "scope":[{"code":"dig-hand","quantity":7.2,"unit":"LH","crew":2,
//	 "from":"1.5 yd3 dug"},
//	 {"code":"gravel","quantity":0.5,"unit":"YDQ"}],
//	 "tasks":[{"name":"patch","quantity":12,"unit":"FTK","crew":1}],
//	 "pump_out":{"gallons":"1,250 gal","covers":["8 in"],"hose":"140 ft",
//	 "filters":1,"crust":true},
//	 "ranges":[{"code":"dig-hand","quantity":{"low":6,"likely":7.2,"high":12}}],
//	 "terms":{"overhead_percent":"12","profit_percent":"20","profit_as":"margin",
//	 "taxes":[{"class":"material","percent":"6.5","at":"on-purchase",
//	 "rounding":"half-up"}]}}
//
// Quantities of the scope are net. Units are codes of UN/CEFACT Recommendation
// 20: EA, FOT, FTK, FTQ, YDQ, INQ, GLL, LBR, LH (labour hour), HUR, DAY. What a
// code of this module is, and its unit, need not be said again; other codes need
// a class: material, labour, equipment, haulage, fee or wait.
//
// A pump-out is a base price and adders for what goes beyond the band: gallons
// over it, further lids, depth of soil, hose, filter, crust, after hours,
// disposal. With a truck it is priced by hours, gallons and loads instead.
//
// The price book is CSV with the columns code, description, unit, price,
// currency, valid_from, note; -local is a second book laid over it. A line
// without a price stays, and the estimate says that it is incomplete. Without
// -prices only quantities are given.
//
// Each line is rounded to the currency's minor unit, half-even unless
// terms.rounding is half-up, and the total is the sum of the printed lines.
// With ranges (low, likely, high; shape pert, triangular or normal) the answer
// has P10, P50 and P90 of the total and the lines that drive it.
package main

import (
	_ "embed"
	"os"
)

//go:embed main.go
var source string

func main() { os.Exit(command().Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
