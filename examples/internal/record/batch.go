package record

import (
	"bytes"
	"io"
	"slices"
	"sync/atomic"
	"time"
)

// Sizes of the pipeline. A batch is what one read gave, whole lines of it, so that
// a line typed into a pipe is answered at once.
const (
	MaxLine   = 1 << 20  // longest line of a record, in bytes
	readBytes = 16 << 10 // most of a source that goes into one batch
	fewBytes  = 256      // the same of records that take long
	keepBytes = 256 << 10
)

// pace is how much goes into one batch: it starts small and grows while batches
// are soon done, so that costly records spread over the cores and cheap ones
// make few batches.
type pace struct{ bytes atomic.Int64 }

// Between these times a batch is of the right size.
const (
	soon = 2 * time.Millisecond
	late = 20 * time.Millisecond
)

// next is how much to read into the next batch.
func (p *pace) next() int { return int(max(p.bytes.Load(), fewBytes)) }

// took tells the pace how long a batch took to compute.
func (p *pace) took(t time.Duration) {
	switch bytes := p.bytes.Load(); {
	case t < soon:
		p.bytes.Store(min(2*max(bytes, fewBytes), readBytes))
	case t > late:
		p.bytes.Store(max(bytes/2, fewBytes))
	}
}

// batch is a run of whole lines and what came of them.
type batch struct {
	data    []byte
	line    int  // number of the first line
	long    bool // data is the head of one line that is too long
	out     []byte
	records int
	refused int
	done    chan struct{} // receives once the batch is computed
}

// stream reads batches, has workers compute them, and writes them in their
// order. It holds a fixed number of batches, whatever the source's length.
func stream(s source, workers int, worker func() func(*batch), write func(*batch) error) error {
	n := 2*workers + 2
	free := make(chan *batch, n)
	work := make(chan *batch, n)
	order := make(chan *batch, n)
	stop := make(chan struct{})
	failed := make(chan error, 1)
	var size pace
	for range n {
		free <- &batch{done: make(chan struct{}, 1)}
	}
	for range workers {
		compute := worker()
		go func() {
			for b := range work {
				began := time.Now()
				compute(b)
				size.took(time.Since(began))
				b.done <- struct{}{}
			}
		}()
	}
	go func() {
		defer close(order)
		defer close(work)
		lines := reader{from: s.reader, line: s.line, size: &size}
		failed <- lines.all(func() *batch {
			select {
			case b := <-free:
				return b
			case <-stop:
				return nil
			}
		}, func(b *batch) { order <- b; work <- b })
	}()
	for b := range order {
		<-b.done
		if err := write(b); err != nil {
			close(stop)
			return err
		}
		b.recycle()
		free <- b
	}
	return <-failed
}

// recycle empties a batch and lets go of buffers that a long line made grow.
func (b *batch) recycle() {
	if cap(b.data) > keepBytes {
		b.data = nil
	}
	if cap(b.out) > keepBytes {
		b.out = nil
	}
	b.data, b.out = b.data[:0], b.out[:0]
	b.long, b.records, b.refused = false, 0, 0
}

// reader cuts a stream into batches of whole lines.
type reader struct {
	from     io.Reader
	line     int    // number of the line that the next batch starts with
	rest     []byte // the start of a line of which the end is still to come
	skipping bool   // until the end of a line that was too long
	size     *pace
}

// all gives batch after batch to put until the stream ends, or get has no more.
func (r *reader) all(get func() *batch, put func(*batch)) error {
	for {
		b := get()
		if b == nil {
			return nil
		}
		err := r.fill(b)
		b.line = r.line
		r.line += bytes.Count(b.data, []byte("\n"))
		if b.long {
			r.line++
		}
		if len(b.data) > 0 {
			put(b)
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// fill reads until the batch has at least one whole line, or the head of one
// that is too long, or all that is left.
func (r *reader) fill(b *batch) error {
	b.data = append(b.data, r.rest...)
	r.rest = r.rest[:0]
	for most := r.size.next(); ; most = min(2*most, readBytes) {
		from := len(b.data)
		b.data = slices.Grow(b.data, most)
		n, err := r.from.Read(b.data[from : from+most])
		b.data = b.data[:from+n]
		if r.skipping {
			end := bytes.IndexByte(b.data, '\n')
			r.skipping = end < 0
			if r.skipping {
				end = len(b.data) - 1
			}
			b.data = b.data[:copy(b.data, b.data[end+1:])]
			from = 0
		}
		if err != nil {
			return err
		}
		if end := bytes.LastIndexByte(b.data[from:], '\n'); end >= 0 {
			end += from + 1
			r.rest = append(r.rest, b.data[end:]...)
			b.data = b.data[:end]
			return nil
		}
		if len(b.data) > MaxLine {
			b.data, b.long, r.skipping = b.data[:headBytes], true, true
			return nil
		}
	}
}
