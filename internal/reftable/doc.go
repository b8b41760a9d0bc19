// Package reftable reads the published figures in testdata/references, against
// which every calculation of this module is tested, and compares a computed
// value with a figure to the precision in which it was printed. Only tests
// import it.
//
// # The files
//
// sources.csv lists what was cited: id,title,body,year. A source without a
// body is common practice of the trade, or a page of the trade that is not
// named. Every other file holds one published figure a row:
//
//	id         unique in all files, without blanks: "mancl-1000gal-4p"
//	source     id of a row of sources.csv
//	place      where in the source: table, example, equation, page
//	edition    of the source, where it has several
//	inputs     "key=value; key=value"; a value may carry its unit
//	quantity   what was printed: "years between pump-outs"
//	printed    the figure, digit by digit as in print: "2.60", "1,250", "1.2e3"
//	unit       of the printed figure; empty for a pure number
//	tolerance  empty: half a unit of the last printed digit; else in the same
//	           unit ("0.5") or relative ("0.5%"), and then note says why
//	status     how well it is known, see below
//	note       anything else a reader must know
//
// Lines that start with # are remarks.
//
// # Status
//
//	seen            read in the source itself or in a reprint of it
//	seen-secondary  read in a text that quotes the source
//	memory          remembered; a better source is wanted
//	practice        common practice of the trade, no source
//	trade page      a page of the trade, not named
//	erratum         misprinted in the source, see below
//	derived         our own arithmetic, shown in note; not counted as published
//
// An erratum row keeps both figures: printed is the corrected one and note
// begins with "misprint", the figure that stands in the source and a colon, as
// in "misprint 0.00705: the series gives 0.007085". A computed value must agree
// with the corrected figure and must not agree with the misprint.
//
// # The validation page
//
// README.md, beside the files, shows every figure with the value that the tests
// computed. It is written by go generate and held by the comparisons themselves;
// see the command in page.
package reftable

//go:generate go run ./page
