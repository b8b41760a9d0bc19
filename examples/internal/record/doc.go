// Package record is what every calculation command shares: it reads records,
// has each computed, and writes the results, so that a command is its flags, its
// record and its result. See [Command].
//
// # Reading
//
// Flags describe one record. With -in FILE, or - for standard input, records
// come from JSON lines, from CSV, or from one JSON document of many lines: it
// starts with a line that is only "{", or its file is named .json and its first
// line is no whole record. Flags given beside -in are the values of all records
// that do not give their own.
//
// A CSV header holds the names of the JSON fields, with dots for nested ones. A
// name may end in a unit, as in length_in, cover_mm or density_lb_per_ft3; then
// the cells are bare numbers. An empty cell is a value that is not given. A cell
// of a list is its items with semicolons between them, or JSON, and one of a
// nested object is JSON. A record is one line: a quoted cell has no line break
// in it. Inch marks inside an unquoted cell are text.
//
// Where rows come without a header, as a mapper gets its share of a large file,
// -header names the columns. Then no header is written either, and a row that is
// the header itself, the first of the first share, is passed over.
//
// Fields must be known, given once and of the right type; what is wrong with a
// record is told all at once. A line has at most [MaxLine] bytes. No text may have
// characters that are not seen, such as controls, terminal escapes and marks that
// turn the direction of the writing; errors show them as escapes, \u202e.
//
// # Writing
//
// Numbers have at most 12 significant digits, in the shortest form. NaN and
// infinities are never written: a record that gives one is refused.
//
// A record that is refused stands in its place as {"id":…,"errors":[…]} in JSON,
// as a row with its id and the last column, errors, in CSV, and as lines that
// start with its id in text. A text cell of a CSV row that starts with =, +, -,
// @, a tab or a carriage return gets an apostrophe in front, so that no
// spreadsheet takes it for a formula.
//
// Text is for people: its lines are broken at blanks for a terminal of 80 columns.
//
// Records are computed on all cores, written in their order, and never held in
// memory all at once. Long work tells on standard error how far it is, every two
// seconds where a person watches, every minute in a log, and ends with a summary.
//
// # Exit
//
// 0: every record was computed. 1: some were refused, the others are written;
// with -tolerate that is 0 too.
// 2: the call was wrong or there was nothing to read, nothing is written.
package record
