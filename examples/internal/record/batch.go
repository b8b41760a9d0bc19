package record

import (
	"bytes"
	"io"
	"slices"
)

// Sizes of the pipeline. A batch is what one read gave, whole lines of it: small
// enough that costly records spread over the cores, and that a line typed into a
// pipe is answered at once.
const (
	MaxLine   = 1 << 20  // longest line of a record, in bytes
	readBytes = 16 << 10 // most of a source that goes into one batch
	keepBytes = 256 << 10
)

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
	for range n {
		free <- &batch{done: make(chan struct{}, 1)}
	}
	for range workers {
		compute := worker()
		go func() {
			for b := range work {
				compute(b)
				b.done <- struct{}{}
			}
		}()
	}
	go func() {
		defer close(order)
		defer close(work)
		failed <- readBatches(s.reader, s.line, func() *batch {
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

// readBatches cuts a stream into batches of whole lines. Of a line longer than
// MaxLine it keeps the head and drops the rest.
func readBatches(r io.Reader, line int, get func() *batch, put func(*batch)) error {
	var rest []byte // the start of a line of which the end is still to come
	skipping := false
	for {
		b := get()
		if b == nil {
			return nil
		}
		b.data = append(b.data, rest...)
		rest = rest[:0]
		for full := false; !full; {
			from := len(b.data)
			b.data = slices.Grow(b.data, readBytes)
			n, err := r.Read(b.data[from : from+readBytes])
			b.data = b.data[:from+n]
			if skipping {
				end := bytes.IndexByte(b.data, '\n')
				skipping = end < 0
				b.data = b.data[:copy(b.data, b.data[end+1:])]
				if skipping {
					b.data = b.data[:0]
				}
				from = 0
			}
			end := bytes.LastIndexByte(b.data[from:], '\n') + 1
			switch {
			case err != nil: // the last lines
				end, full = len(b.data), true
			case end > 0:
				end, full = from+end, true
				rest = append(rest, b.data[end:]...)
			case len(b.data) > MaxLine:
				b.long, skipping = true, true
				end, full = 0, true
				line++
			}
			if full {
				b.data = b.data[:max(end, 0)]
				b.line = line
				if b.long {
					b.line--
				}
				line += bytes.Count(b.data, []byte("\n"))
				if len(b.data) > 0 || b.long {
					put(b)
				}
			}
			if err == io.EOF {
				return nil
			}
			if err != nil {
				return err
			}
		}
	}
}
