package record

import (
	"fmt"
	"io"
	"time"
)

// progress tells on long work how far it has come, and at the end what became
// of it: a person who watches oftener than a log.
type progress struct {
	name             string
	to               io.Writer
	every            time.Duration
	began, shown     time.Time
	records, refused int
}

const (
	longWork = 2 * time.Second // from here on a summary is written
	inLog    = time.Minute     // between two lines where nobody watches
)

func newProgress(name string, to io.Writer, now time.Time) progress {
	p := progress{name: name, to: to, every: inLog, began: now, shown: now}
	if terminal(to) {
		p.every = longWork
	}
	return p
}

// add counts a batch in.
func (p *progress) add(b *batch, now time.Time) {
	p.records += b.records
	p.refused += b.refused
	if now.Sub(p.shown) >= p.every {
		p.shown = now
		fmt.Fprintf(p.to, "%s: %d records, %d refused, %.0f s\n", p.name, p.records, p.refused, now.Sub(p.began).Seconds())
	}
}

// end writes the summary of long work, of short work only what was refused.
func (p *progress) end(now time.Time) {
	took := now.Sub(p.began)
	switch {
	case took >= longWork:
		fmt.Fprintf(p.to, "%s: %d of %d records refused, %.1f s, %.0f a second\n", p.name, p.refused, p.records, took.Seconds(), float64(p.records)/took.Seconds())
	case p.refused > 0:
		fmt.Fprintf(p.to, "%s: %d of %d records refused\n", p.name, p.refused, p.records)
	}
}
