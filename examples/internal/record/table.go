package record

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"strings"

	"manway.example/manway/examples/internal/strictjson"
)

// table reads the rows of CSV into the one record that its columns are bound to.
type table struct {
	separator byte
	columns   []column
	cells     [][]byte
	text      []byte // of quoted cells
}

// column is one column of the header.
type column struct {
	path string // in JSON
	set  setter
}

// newTable binds the names of a header to the fields of the record that into
// points to. Every name must be known, and stand once.
func newTable(into any, header []byte, separator byte) (*table, error) {
	t := &table{separator: separator}
	names, err := t.split(header)
	if err != nil {
		return nil, fmt.Errorf("header: %w", err)
	}
	record := reflect.ValueOf(into).Elem()
	known := columnNames(record.Type())
	seen := map[string]bool{}
	var problems []string
	for _, cell := range names {
		name := string(cell)
		c, err := bindColumn(record, name)
		switch {
		case err == errUnknown:
			problems = append(problems, fmt.Sprintf("column %q: want %s", shown(name), strictjson.UnknownName(name, known)))
		case err != nil:
			problems = append(problems, fmt.Sprintf("column %q: want %v", shown(name), err))
		case seen[c.path]:
			problems = append(problems, fmt.Sprintf("column %q: want %s once", shown(name), c.path))
		}
		seen[c.path] = true
		t.columns = append(t.columns, c)
	}
	if len(problems) > 0 {
		return nil, errors.New(strings.Join(problems[:min(len(problems), 8)], "; "))
	}
	return t, nil
}

func shown(name string) string { return name[:min(len(name), 60)] }

// columnNames are the fields that a column can be named after.
func columnNames(t reflect.Type) []string {
	var names []string
	for _, path := range strictjson.Names(t) {
		path, _, _ = strings.Cut(path, "[]")
		if len(names) == 0 || names[len(names)-1] != path {
			names = append(names, path)
		}
	}
	return names
}

var errUnknown = errors.New("a known name")

// bindColumn finds the field that a header names, with or without a unit.
func bindColumn(record reflect.Value, name string) (column, error) {
	if v := strictjson.Field(record, name); v.IsValid() {
		set, err := bind(v)
		return column{name, set}, err
	}
	for at := strings.LastIndexByte(name, '_'); at > 0; at = strings.LastIndexByte(name[:at], '_') {
		v := strictjson.Field(record, name[:at])
		if !v.IsValid() {
			continue
		}
		unit := strings.ReplaceAll(strings.ReplaceAll(name[at+1:], "_per_", "/"), "_", " ")
		set, err := bindUnit(v, unit)
		return column{name[:at], set}, err
	}
	return column{}, errUnknown
}

// read sets the record from one line.
func (t *table) read(line []byte, number int) strictjson.Faults {
	cells, err := t.split(line)
	var faults strictjson.Faults
	if err != nil {
		faults = strictjson.Faults{{Line: number, Want: err.Error()}}
	} else if len(cells) != len(t.columns) {
		faults = strictjson.Faults{{Line: number, Value: fmt.Sprintf("%d cells", len(cells)), Want: fmt.Sprintf("%d, one for each column", len(t.columns))}}
	}
	if len(faults) > 0 {
		t.name(cells)
		return faults
	}
	for i, cell := range cells {
		if len(cell) == 0 {
			continue
		}
		if err := t.columns[i].set(cell); err != nil {
			faults = append(faults, atLine(strictjson.FaultsOf(err, t.columns[i].path, string(cell)), number)...)
		}
	}
	return faults
}

// name sets only the id of a record of which the cells are not sure.
func (t *table) name(cells [][]byte) {
	for i, c := range t.columns {
		if c.path == "id" && i < len(cells) && len(cells[i]) > 0 {
			_ = c.set(cells[i]) // a bad id is left out
		}
	}
}

// split cuts a line into its cells, without blanks around them.
func (t *table) split(line []byte) ([][]byte, error) {
	t.cells = t.cells[:0]
	if bytes.IndexByte(line, '"') < 0 {
		for {
			end := bytes.IndexByte(line, t.separator)
			if end < 0 {
				t.cells = append(t.cells, trim(line))
				return t.cells, nil
			}
			t.cells = append(t.cells, trim(line[:end]))
			line = line[end+1:]
		}
	}
	t.text = t.text[:0]
	for {
		cell, rest, more, err := t.cut(line)
		if err != nil {
			return t.cells, err
		}
		t.cells = append(t.cells, trim(cell))
		if !more {
			return t.cells, nil
		}
		line = rest
	}
}

// cut takes one cell off a line in which some are quoted.
func (t *table) cut(line []byte) (cell, rest []byte, more bool, err error) {
	line = bytes.TrimLeft(line, " ")
	if len(line) == 0 || line[0] != '"' {
		cell, rest, more = bytes.Cut(line, []byte{t.separator})
		return cell, rest, more, nil
	}
	from := len(t.text)
	line = line[1:]
	for {
		end := bytes.IndexByte(line, '"')
		if end < 0 {
			return nil, nil, false, errors.New(`a closing " in the same line: a record is one line`)
		}
		t.text = append(t.text, line[:end]...)
		line = line[end+1:]
		if len(line) == 0 || line[0] != '"' {
			break
		}
		t.text = append(t.text, '"')
		line = line[1:]
	}
	between, rest, more := bytes.Cut(line, []byte{t.separator})
	if len(trim(between)) > 0 {
		return nil, nil, false, errors.New(`nothing between a closing " and the next cell; a " inside quotes is written ""`)
	}
	return t.text[from:len(t.text):len(t.text)], rest, more, nil
}

// trim takes blanks off both ends; most cells have none.
func trim(cell []byte) []byte {
	for len(cell) > 0 && (cell[0] == ' ' || cell[0] == '\t') {
		cell = cell[1:]
	}
	for len(cell) > 0 && (cell[len(cell)-1] == ' ' || cell[len(cell)-1] == '\t' || cell[len(cell)-1] == '\r') {
		cell = cell[:len(cell)-1]
	}
	return cell
}
