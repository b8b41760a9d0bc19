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
		w.out = w.titles(w.out)
	}
	w.start.begin(&w.in)
	faults := read(w)
	w.start.finish(&w.in)
	faults = w.finish(faults, 0)
	code := 0
	if len(faults) > 0 && (r.alone || !r.opts.tolerate) {
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
		if err := prototype.readHeader(s); err != nil {
			return r.c.usage(r.stderr, err)
		}
	}
	if r.opts.out == "csv" && !s.bare {
		if _, err := r.stdout.Write(prototype.titles(nil)); err != nil {
			return r.c.usage(r.stderr, err)
		}
	}
	p := newProgress(r.c.Name, r.stderr, time.Now())
	err := stream(s, runtime.GOMAXPROCS(0), func() func(*batch) {
		w := newWorker(r)
		if s.format == csvLines {
			_ = w.readHeader(s) // the prototype took it
		}
		return w.batch
	}, func(b *batch) error {
		p.add(b, time.Now())
		_, err := r.stdout.Write(b.out)
		return err
	})
	if err != nil {
		fmt.Fprintf(r.stderr, "%s: %s; stopped after %d records\n", r.c.Name, oneLine(err.Error()), p.records)
		return 1
	}
	if p.records == 0 {
		fmt.Fprintf(r.stderr, "%s: %s: no records in it\n", r.c.Name, strictjson.Visible(s.name))
	}
	p.end(time.Now())
	if p.refused > 0 && !r.opts.tolerate {
		return 1
	}
	return 0
}
