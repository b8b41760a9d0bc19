package record

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Row writes the cells of a CSV row, in the order of the columns. [Row.Next]
// starts a further row of the same record.
type Row struct {
	buf    []byte
	want   int // cells in a row
	cells  int
	errors string
	err    error
}

func (r *Row) begin(to []byte, columns int) {
	*r = Row{buf: to, want: columns}
}

// end closes the last row, with the errors of the record.
func (r *Row) end() ([]byte, error) {
	r.Next()
	buf := r.buf
	r.buf = nil
	return buf, r.err
}

// Next ends a row and starts another. A row that is not full is a defect.
func (r *Row) Next() {
	if r.cells != r.want && r.err == nil {
		r.err = fmt.Errorf("%d cells, not %d: this is a defect of the program", r.want, r.cells)
	}
	r.buf = appendCell(r.buf, r.errors)
	r.buf = append(r.buf, '\n')
	r.cells = 0
}

// Number writes a number; NaN or an infinity makes the record refused.
func (r *Row) Number(v float64) {
	if !finite(v) {
		if r.err == nil {
			r.err = defect("column "+strconv.Itoa(r.cells+1), v)
		}
		v = 0
	}
	r.buf = AppendNumber(r.buf, v)
	r.Empty()
}

// Int writes a whole number.
func (r *Row) Int(n int) {
	r.buf = strconv.AppendInt(r.buf, int64(n), 10)
	r.Empty()
}

// Bool writes true or false.
func (r *Row) Bool(v bool) {
	r.buf = strconv.AppendBool(r.buf, v)
	r.Empty()
}

// Text writes a text; see the package comment for those that look like formulas.
func (r *Row) Text(s string) {
	r.buf = appendCell(r.buf, s)
	r.Empty()
}

// Empty writes nothing: a value that there is not.
func (r *Row) Empty() {
	r.buf = append(r.buf, ',')
	r.cells++
}

// Harmless is a text for a cell of a CSV table, with an apostrophe in front
// where a spreadsheet would take it for a formula.
func Harmless(s string) string {
	if s == "" || s[0] > '@' && s[0] < utf8.RuneSelf {
		return s
	}
	if first, _ := utf8.DecodeRuneInString(s); strings.ContainsRune("=+-@\t\r\n＝＋－＠", first) {
		return "'" + s
	}
	return s
}

// appendCell quotes a text where CSV needs it, and disarms formulas.
func appendCell(to []byte, s string) []byte {
	if s == "" {
		return to
	}
	s = Harmless(s)
	if !strings.ContainsAny(s, "\",\n\r") && s[0] != ' ' {
		return append(to, s...)
	}
	to = append(to, '"')
	to = append(to, strings.ReplaceAll(s, `"`, `""`)...)
	return append(to, '"')
}
