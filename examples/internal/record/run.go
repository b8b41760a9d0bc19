package record

import (
	"fmt"
	"io"
	"runtime"
	"time"

	"manway.example/manway/examples/internal/strictjson"
)

// run is one call at work.
type run[In, Out any] struct {
	c      *Command[In, Out]
	opts   options
	start  starter[In]
	stdout io.Writer
	stderr io.Writer
	alone  bool // one record, whose faults go to stderr with nothing written
}

// all computes every record of the source, or the one of the flags.
func (r *run[In, Out]) all(s source) int {
	_, document := r.c.Documents[r.opts.out]
	switch {
	case s.reader == nil:
		return r.one(func(w *worker[In, Out]) strictjson.Faults { return nil })
	case s.format == jsonDocument, document && s.format == jsonLines:
		data, err := s.whole()
		if err != nil {
			return r.c.usage(r.stderr, err)
		}
		return r.one(func(w *worker[In, Out]) strictjson.Faults {
			doc, err := strictjson.Decode(data, &w.in)
			w.doc = doc
			return doc.Explain(err)
		})
	case document:
		return r.c.usage(r.stderr, fmt.Errorf("-out %s: want one record, by flags or as a JSON document", r.opts.out))
	}
	return r.stream(s)
}

// one computes a single record. In json and csv a refusal is written in its
// place; in other formats it goes to stderr and nothing is written.
func (r *run[In, Out]) one(read func(*worker[In, Out]) strictjson.Faults) int {
	r.alone = r.opts.out != "json" && r.opts.out != "csv"
	w := newWorker(r)
	if r.opts.out == "csv" {
		w.out = w.header(w.out)
	}
	w.start.begin(&w.in)
	faults := read(w)
	w.start.finish(&w.in)
	faults = w.finish(faults, 0)
	code := 0
	if len(faults) > 0 {
		code = 1
	}
	if code == 1 && r.alone {
		for _, f := range faults {
			fmt.Fprintf(r.stderr, "%s: %s\n", r.c.Name, f.Error())
		}
		return code
	}
	if _, err := r.stdout.Write(w.out); err != nil {
		return r.c.usage(r.stderr, err)
	}
	return code
}

// stream computes record after record on all cores.
func (r *run[In, Out]) stream(s source) int {
	prototype := newWorker(r)
	if s.format == csvLines {
		if err := prototype.readHeader(s.header, s.separator); err != nil {
			return r.c.usage(r.stderr, err)
		}
	}
	if r.opts.out == "csv" {
		if _, err := r.stdout.Write(prototype.header(nil)); err != nil {
			return r.c.usage(r.stderr, err)
		}
	}
	began := time.Now()
	shown := began
	records, refused := 0, 0
	live := terminal(r.stderr)
	err := stream(s, runtime.GOMAXPROCS(0), func() func(*batch) {
		w := newWorker(r)
		if s.format == csvLines {
			_ = w.readHeader(s.header, s.separator) // the prototype took it
		}
		return w.batch
	}, func(b *batch) error {
		records += b.records
		refused += b.refused
		if live && time.Since(shown) > 2*time.Second {
			shown = time.Now()
			fmt.Fprintf(r.stderr, "%s: %d records, %d refused, %.0f s\n", r.c.Name, records, refused, time.Since(began).Seconds())
		}
		_, err := r.stdout.Write(b.out)
		return err
	})
	switch {
	case err != nil:
		fmt.Fprintf(r.stderr, "%s: %s; stopped after %d records\n", r.c.Name, oneLine(err.Error()), records)
		return 1
	case records == 0:
		fmt.Fprintf(r.stderr, "%s: %s: no records in it\n", r.c.Name, s.name)
	case refused > 0:
		fmt.Fprintf(r.stderr, "%s: %d of %d records refused\n", r.c.Name, refused, records)
	}
	if refused > 0 {
		return 1
	}
	return 0
}
