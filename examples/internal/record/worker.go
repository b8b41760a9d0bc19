package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"manway.example/manway/examples/internal/fold"
	"manway.example/manway/examples/internal/strictjson"
)

// worker computes one record after another. What it reads into and writes with
// is used again for the next.
type worker[In, Out any] struct {
	c     *Command[In, Out]
	run   *run[In, Out]
	start starter[In]
	in    In
	made  Out             // of the record at hand
	doc   *strictjson.Doc // of the record at hand, where its lines are known

	line   lineReader
	table  *table // csv: the columns bound to in
	header []byte // csv: a row to pass over
	out    []byte // what was written
	json   JSON
	row    Row
	encode *json.Encoder // writes to plain
	plain  bytes.Buffer
}

func newWorker[In, Out any](r *run[In, Out]) *worker[In, Out] {
	w := &worker[In, Out]{c: r.c, run: r, start: r.start}
	w.line = newLineReader[In]()
	w.encode = json.NewEncoder(&w.plain)
	w.encode.SetEscapeHTML(false)
	return w
}

// Write appends to what the worker has written.
func (w *worker[In, Out]) Write(p []byte) (int, error) {
	w.out = append(w.out, p...)
	return len(p), nil
}

// batch computes every line of a batch.
func (w *worker[In, Out]) batch(b *batch) {
	w.out = b.out
	line, rest := b.line, b.data
	if b.long {
		b.records, b.refused = 1, 1
		w.tooLong(b.data, line)
		rest = nil
	}
	for ; len(rest) > 0; line++ {
		text := rest
		if end := bytes.IndexByte(rest, '\n'); end >= 0 {
			text, rest = rest[:end], rest[end+1:]
		} else {
			rest = nil
		}
		text = bytes.Trim(text, " \r")
		if len(text) == 0 || w.table == nil && len(bytes.Trim(text, "\t")) == 0 {
			continue
		}
		if w.header != nil && bytes.Equal(text, w.header) {
			continue
		}
		b.records++
		if len(w.record(text, line)) > 0 {
			b.refused++
		}
	}
	b.out = w.out
	w.out = nil
}

// tooLong refuses a line for its length; its head may have the id.
func (w *worker[In, Out]) tooLong(head []byte, line int) strictjson.Faults {
	faults := strictjson.Faults{{Line: line, Value: fmt.Sprintf("a line of more than %d MiB", MaxLine>>20), Want: fmt.Sprintf("at most %d MiB", MaxLine>>20)}}
	id := ""
	if w.table == nil {
		doc, _ := strictjson.Decode(head[:min(len(head), headBytes)], new(In))
		id, _ = doc.Text("id")
	}
	w.refuse(id, faults)
	return faults
}

// record reads, computes and writes the record of one line.
func (w *worker[In, Out]) record(text []byte, line int) strictjson.Faults {
	if len(text) > MaxLine {
		return w.tooLong(text, line)
	}
	w.start.begin(&w.in)
	w.doc = nil
	var faults strictjson.Faults
	if w.table != nil {
		faults = w.table.read(text, line)
	} else if !w.line.read(text, &w.in) {
		w.start.begin(&w.in)
		doc, err := strictjson.Decode(text, &w.in)
		w.doc = doc
		faults = atLine(doc.Explain(err), line)
	}
	w.start.finish(&w.in)
	return w.finish(faults, line)
}

// finish computes a record that was read with these faults, and writes the
// result or the refusal. It returns all faults.
func (w *worker[In, Out]) finish(faults strictjson.Faults, line int) strictjson.Faults {
	if len(faults) == 0 || w.c.Partial && readable(faults) {
		var err error
		if w.made, err = w.c.Do(&w.in); err != nil {
			faults = append(faults, beyond(faults, w.explain(err, line))...)
			faults.Sort()
		} else if len(faults) == 0 {
			faults = atLine(w.write(&w.made), line)
		}
	}
	if len(faults) > 0 && !w.run.alone {
		id, _ := w.doc.Text("id")
		if id == "" && w.c.ID != nil {
			id = w.c.ID(&w.in)
		}
		w.refuse(id, faults)
	}
	return faults
}

// readable reports whether the record as a whole could be read, faulty values
// aside.
func readable(faults strictjson.Faults) bool {
	return !slices.ContainsFunc(faults, func(f strictjson.Fault) bool { return f.Path == "" })
}

// beyond is what later checks found where the values could be read.
func beyond(known, later strictjson.Faults) strictjson.Faults {
	return slices.DeleteFunc(later, func(f strictjson.Fault) bool { return len(known) > 0 && known.Covers(f.Path) })
}

// explain names the fields of an error as the record does.
func (w *worker[In, Out]) explain(err error, line int) strictjson.Faults {
	var faults strictjson.Faults
	if w.doc != nil {
		faults = w.doc.Explain(err)
	} else {
		faults = strictjson.Explain(typeOf[In](), err)
	}
	if len(faults) == 0 {
		faults = strictjson.Faults{{Want: err.Error()}}
	}
	return atLine(faults, line)
}

// atLine gives faults the line of their record, where records are lines.
func atLine(faults strictjson.Faults, line int) strictjson.Faults {
	if line > 0 {
		for i := range faults {
			faults[i].Line = line
		}
	}
	return faults
}

// write appends one result in the format asked for; a result that cannot be
// written, such as NaN, leaves nothing behind.
func (w *worker[In, Out]) write(out *Out) strictjson.Faults {
	from := len(w.out)
	var err error
	switch format := w.run.opts.out; format {
	case "json":
		err = w.writeJSON(out)
	case "csv":
		w.row.begin(w.out, len(w.c.Columns))
		w.c.Rows(&w.row, &w.in, out)
		w.out, err = w.row.end()
	case "text":
		err = w.c.Text(w, &w.in, out)
		w.fold(from)
	default:
		err = w.c.Documents[format](w, &w.in, out)
	}
	if err != nil {
		w.out = w.out[:from]
		return strictjson.FaultsOf(err, "", "the result")
	}
	return nil
}

// fold breaks the lines of the text that was written from a place on.
func (w *worker[In, Out]) fold(from int) {
	w.out = append(w.out[:from], fold.Text(string(w.out[from:]))...)
}

func (w *worker[In, Out]) writeJSON(out *Out) (err error) {
	if w.c.JSON != nil {
		w.json.begin(w.out)
		w.json.Object("")
		w.c.JSON(&w.json, &w.in, out)
		w.json.End()
		w.out, err = w.json.end()
	} else {
		w.plain.Reset()
		err = w.encode.Encode(out)
		var value *json.UnsupportedValueError
		if errors.As(err, &value) {
			err = fmt.Errorf("a finite number, not %s: this is a defect of the program", value.Str)
		}
		w.out = appendRounded(w.out, bytes.TrimRight(w.plain.Bytes(), "\n"))
	}
	w.out = append(w.out, '\n')
	return err
}

// titles is the first line of CSV.
func (w *worker[In, Out]) titles(to []byte) []byte {
	for _, name := range w.c.Columns {
		to = append(append(to, name...), ',')
	}
	return append(to, "errors\n"...)
}

// refuse writes what was wrong with a record in the record's place.
func (w *worker[In, Out]) refuse(id string, faults strictjson.Faults) {
	switch w.run.opts.out {
	case "json":
		w.refuseJSON(id, faults)
	case "csv":
		w.row.begin(w.out, len(w.c.Columns))
		for _, name := range w.c.Columns {
			if name == "id" {
				w.row.Text(strictjson.Visible(id))
			} else {
				w.row.Empty()
			}
		}
		w.row.errors = faults.Error()
		w.out, _ = w.row.end()
	default:
		if id = strictjson.Visible(id); id == "" {
			id = "no id"
		}
		from := len(w.out)
		for _, f := range faults {
			w.out = fmt.Appendf(w.out, "%s: refused: %s\n", id, f.Error())
		}
		w.fold(from)
	}
}

func (w *worker[In, Out]) refuseJSON(id string, faults strictjson.Faults) {
	j := &w.json
	j.begin(w.out)
	j.Object("")
	if id == "" {
		j.Null("id")
	} else {
		j.Text("id", id)
	}
	j.List("errors")
	for _, f := range faults {
		j.Object("")
		j.Text("field", f.Path)
		j.Text("value", f.Value)
		j.Text("want", f.Want)
		if f.Line > 0 {
			j.Int("line", f.Line)
		}
		j.End()
	}
	j.End()
	j.End()
	w.out, _ = j.end()
	w.out = append(w.out, '\n')
}

// readHeader binds the columns of a CSV header to the worker's record.
func (w *worker[In, Out]) readHeader(s source) (err error) {
	if s.bare {
		w.header = s.header
	}
	w.table, err = newTable(&w.in, s.header, s.separator)
	return err
}
