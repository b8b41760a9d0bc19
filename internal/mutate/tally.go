package main

import (
	"fmt"
	"io"
	"math"
	"text/tabwriter"

	"gonum.org/v1/gonum/stat/distuv"
)

// survivor is a change that no test noticed, with the reason where it is known
// that none can.
type survivor struct {
	change
	reason string
}

// tally is what came of the changes of one package.
type tally struct {
	room             string
	changes          int // that could be made
	killed, timedOut int // timedOut are among killed
	survivors        []survivor
	stale            []key // reasons of the package whose place is gone
}

// run tries the changes.
func (t *tally) run(b *bench, changes []change, equivalent map[key]string, progress io.Writer) error {
	for i, c := range changes {
		came, err := b.try(c, i+1)
		if err != nil {
			return err
		}
		switch came {
		case timedOut:
			t.timedOut++
			t.killed++
		case killed:
			t.killed++
		case survived:
			t.survivors = append(t.survivors, survivor{c, equivalent[c.key()]})
		}
		fmt.Fprintf(progress, "%-9s %s\n", came, c)
	}
	return nil
}

func (t tally) tried() int { return t.killed + len(t.survivors) }

// explained counts the survivors that cannot be killed.
func (t tally) explained() (n int) {
	for _, s := range t.survivors {
		if s.reason != "" {
			n++
		}
	}
	return n
}

// wilson is the 95 % interval of a share of k in n:
//
//	(p + z²/2n ± z √(p(1-p)/n + z²/4n²)) / (1 + z²/n)
//
// Source: Wilson, E. B., Probable inference, the law of succession, and
// statistical inference, Journal of the American Statistical Association 22,
// 1927. It takes the changes as drawn from very many, which makes it a little
// wide.
func wilson(k, n int) (lo, hi float64) {
	z := distuv.UnitNormal.Quantile(0.975)
	size := float64(n)
	p := float64(k) / size
	centre, half := p+z*z/(2*size), z*math.Sqrt(p*(1-p)/size+z*z/(4*size*size))
	return (centre - half) / (1 + z*z/size), (centre + half) / (1 + z*z/size)
}

// report writes the shares and the survivors, and gives the exit status.
func report(w io.Writer, tallies []tally) int {
	var sum tally
	for _, t := range tallies {
		sum.changes += t.changes
		sum.killed += t.killed
		sum.timedOut += t.timedOut
		sum.survivors = append(sum.survivors, t.survivors...)
	}
	sum.room = "all"
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "package\tchanges\ttried\tkilled\tby time\tsurvived\twith reason\tof all\t95 %\tof those that can be\t95 %")
	for _, t := range append(tallies, sum) {
		fmt.Fprintf(table, "%s\t%d\t%d\t%d\t%d\t%d\t%d\t%s\t%s\n", t.room, t.changes, t.tried(), t.killed, t.timedOut,
			len(t.survivors), t.explained(), share(t.killed, t.tried()), share(t.killed, t.tried()-t.explained()))
	}
	table.Flush()
	status := 0
	for _, s := range sum.survivors {
		reason := "reason: " + s.reason
		if s.reason == "" {
			reason, status = "NO REASON KNOWN", 1
		}
		fmt.Fprintf(w, "\nsurvived %s:%d %s (%s, %d)\n  %s\n  %s => %s\n  %s\n", s.file, s.line, s.fn, s.kind, s.nth, s.code, s.from, s.to, reason)
	}
	for _, t := range tallies {
		for _, k := range t.stale {
			fmt.Fprintf(w, "\n%s: the source has no such place any more: %s (%s), %s: %s\n", equivalentFile, k.file, k.fn, k.code, k.change)
			status = 1
		}
	}
	return status
}

// share is k of n and its interval, in two cells of the table.
func share(k, n int) string {
	if n == 0 {
		return "-\t-"
	}
	lo, hi := wilson(k, n)
	return fmt.Sprintf("%.1f %%\t%.1f to %.1f", 100*float64(k)/float64(n), 100*lo, 100*hi)
}
