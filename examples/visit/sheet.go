package visit

import (
	"strconv"
	"strings"

	"manway.example/manway"
)

// Section is one part of the answer as people and programs read it: facts,
// tables, checks, and where they come from. The text, the page and the JSON are
// three renderings of the same sections.
type Section struct {
	ID        string // stable name in JSON
	Title     string
	Says      []string // sentences for the owner or the crew, most urgent first
	Facts     []Fact
	Figures   []Figure
	Photos    []string // captions of places for photographs
	Tables    []Table
	Checks    []manway.Check
	Unjudged  []string // what could not be judged, with the reason
	Method    string   // how it was worked out, in one sentence
	Basis     []manway.Citation
	Assumed   manway.Assumptions
	Cautions  manway.Cautions
	Working   manway.Working
	System    manway.System
	For       Reader
	Structure bool // an unreviewed screening
}

// Reader is who a section is for. What is not for the owner is folded away on
// the page and not printed.
type Reader uint8

// The readers.
const (
	ForOwner Reader = iota
	ForCrew
	ForDesk // the desk and an engineer
)

// Fact is one figure with its label.
type Fact struct {
	Label string
	Cell
}

// Table is figures side by side. Every row has a cell for every column.
type Table struct {
	ID      string // stable name in JSON
	Prose   bool   // rows read as sentences, see [Table.Groups]
	Title   string
	Columns []string // labels; the keys stand in the cells
	Rows    [][]Cell
}

// Cell is one value: its text for people, and its key and number for programs.
// A cell without a number is text in both; one without a key is for people
// only.
type Cell struct {
	Key    string
	Text   string
	Number float64
	Is     CellKind
	Parts  []Cell // what the text is made of, for programs, in place of the cell
}

// CellKind says what a cell holds for programs.
type CellKind uint8

// The kinds of cell.
const (
	Words CellKind = iota
	Number
	Unknown // not measured, or no answer; null in JSON
)

// words is a cell of text.
func words(key, text string) Cell { return Cell{Key: key, Text: text} }

// unknown is a cell for what was not measured; why is shown to people.
func unknown(key, why string) Cell { return Cell{Key: key, Text: why, Is: Unknown} }

// amount is a cell of a quantity: for people in the visit's unit system, for
// programs as a number of the unit that the key names.
func amount[Q interface {
	~float64
	Text(manway.System) string
}](s manway.System, key string, v, unit Q) Cell {
	return Cell{Key: key, Text: short(v.Text(s)), Number: float64(v) / float64(unit), Is: Number}
}

// short cuts a decimal number before a unit to three digits, as figures of a
// dip stick deserve; feet and inches have none to cut.
func short(text string) string {
	number, unit, ok := strings.Cut(text, " ")
	whole, frac, point := strings.Cut(number, ".")
	keep := 3 - len(strings.TrimPrefix(whole, "-"))
	if whole == "0" {
		keep = 3
	}
	if !ok || !point || len(frac) <= keep {
		return text
	}
	x, err := strconv.ParseFloat(strings.ReplaceAll(number, ",", ""), 64)
	if err != nil {
		return text
	}
	return grouped(strconv.FormatFloat(x, 'f', max(keep, 0), 64)) + " " + unit
}

// count is a cell of a whole number.
func count(key string, n int, noun string) Cell {
	return Cell{Key: key, Text: plural(n, noun), Number: float64(n), Is: Number}
}
