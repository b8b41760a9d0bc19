package visit

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"

	"manway.example/manway"
)

// MarshalJSON writes the visit for programs: one object a section, under the
// section's name, in the order of the page. A key carries the unit of its
// number, US units whatever the survey's own; what was not measured is null.
func (v Visit) MarshalJSON() ([]byte, error) {
	var o object
	o.add("id", v.Survey.ID)
	o.add("date", v.Survey.Date.String())
	o.add("note", v.Survey.Note)
	for i := range v.Sections {
		o.add(v.Sections[i].ID, &v.Sections[i])
	}
	o.add("cautions", v.Cautions())
	return o.close()
}

// MarshalJSON writes the section as one object: its facts by key, its tables
// as lists of objects, then checks, method, sources and assumptions.
func (s *Section) MarshalJSON() ([]byte, error) {
	var o object
	o.add("title", s.Title)
	if len(s.Says) > 0 {
		o.add("says", s.Says)
	}
	for _, f := range s.Facts {
		o.cell(f.Cell)
	}
	for _, t := range s.Tables {
		rows := make([]json.RawMessage, len(t.Rows))
		for i, cells := range t.Rows {
			var row object
			for _, c := range cells {
				row.cell(c)
			}
			b, err := row.close()
			if err != nil {
				return nil, err
			}
			rows[i] = b
		}
		o.add(t.ID, rows)
	}
	if len(s.Checks) > 0 {
		o.add("checks", s.Checks)
	}
	if len(s.Unjudged) > 0 {
		o.add("not_judged", s.Unjudged)
	}
	if s.Structure {
		o.add("standing", structureNotice)
	}
	o.add("method", s.Method)
	o.add("sources", citations(s.Basis))
	if s.Assumed != 0 {
		o.add("assumed", s.Assumed)
	}
	if s.Cautions != 0 {
		o.add("cautions", s.Cautions.Codes())
	}
	return o.close()
}

// object writes a JSON object with its keys in the order in which they come.
type object struct {
	buf bytes.Buffer
	err error
}

func (o *object) add(key string, value any) {
	if o.err != nil {
		return
	}
	k, err := json.Marshal(key)
	if err != nil {
		o.err = err
		return
	}
	val, err := json.Marshal(value)
	if err != nil {
		o.err = err
		return
	}
	if o.buf.Len() == 0 {
		o.buf.WriteByte('{')
	} else {
		o.buf.WriteByte(',')
	}
	o.buf.Write(k)
	o.buf.WriteByte(':')
	o.buf.Write(val)
}

func (o *object) cell(c Cell) {
	for _, part := range c.Parts {
		o.cell(part)
	}
	switch {
	case c.Key == "":
	case c.Is == Number:
		o.add(c.Key, digits(c.Number))
	case c.Is == Unknown:
		o.add(c.Key, nil)
	default:
		o.add(c.Key, c.Text)
	}
}

func (o *object) close() ([]byte, error) {
	if o.err != nil {
		return nil, o.err
	}
	if o.buf.Len() == 0 {
		o.buf.WriteByte('{')
	}
	o.buf.WriteByte('}')
	return o.buf.Bytes(), nil
}

// digits is x to at most twelve significant digits, so that 18 in leaves as 18.
// A number that is not finite fails to marshal.
func digits(x float64) json.Number {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return json.Number(strconv.FormatFloat(x, 'g', -1, 64))
	}
	short, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	if err != nil {
		short = x
	}
	return json.Number(strconv.FormatFloat(short, 'g', -1, 64))
}

func citations(basis []manway.Citation) []string {
	list := make([]string, 0, len(basis))
	for _, c := range basis {
		list = append(list, c.String())
	}
	return list
}
