package riser

import "manway.example/manway"

// pick is what is taken of one kind of ring.
type pick struct {
	ring int
	full int
	cut  manway.Length // height of the one that is cut, 0 for none
}

// found is one complete selection with its key.
type found struct {
	key   uint64
	picks []pick
	cover int
}

// tables are the least keys of the completions of one route.
type tables struct {
	*route
	lo, hi int
	rest   [2][][]uint64 // [a ring was cut][layer][height]
}

func newTables(r *route, lo, hi int) *tables {
	t := &tables{route: r, lo: lo, hi: hi}
	n, width, states := len(r.layers), hi+1, r.states()
	for u := range states {
		cells := make([]uint64, (n+1)*width)
		t.rest[u] = make([][]uint64, n+1)
		for i := range t.rest[u] {
			t.rest[u][i] = cells[i*width : (i+1)*width]
		}
		t.close(t.rest[u][n])
	}
	for i := n - 1; i >= 0; i-- {
		l := &r.layers[i]
		for u := range states {
			fill(t.rest[u][i], t.rest[u][i+1], l, l.most)
		}
		if len(l.cuts) > 0 {
			t.withCut(i, l)
		}
	}
	return t
}

// states is 2 where a ring may be cut, for not yet and done, else 1.
func (r *route) states() int {
	for i := range r.layers {
		if len(r.layers[i].cuts) > 0 {
			return 2
		}
	}
	return 1
}

// close fills the last row: the cheapest cover that ends within the window.
func (t *tables) close(row []uint64) {
	for h := range row {
		row[h] = never
		for _, e := range t.endings {
			if total := h + e.high; total >= t.lo && total <= t.hi {
				row[h] = min(row[h], e.key)
			}
		}
	}
}

// fill sets row to the least over the number of full pieces of l, up to most.
func fill(row, next []uint64, l *layer, most int) {
	if !l.must && most >= len(next)/l.high { // as many as fit: one more on what is best a ring higher
		for h := len(row) - 1; h >= 0; h-- {
			row[h] = next[h]
			if at := h + l.high; at < len(row) && row[at] != never {
				row[h] = min(row[h], row[at]+l.key)
			}
		}
		return
	}
	least := 0
	if l.must {
		least, most = 1, 1
	}
	for h := range row {
		best := uint64(never)
		cost := uint64(least) * l.key
		for n, at := least, h+least*l.high; n <= most && at < len(next); n, at = n+1, at+l.high {
			if v := next[at]; v != never && v+cost < best {
				best = v + cost
			}
			cost += l.key
		}
		row[h] = best
	}
}

// withCut adds to the row of no ring cut yet the choice of cutting one of l.
func (t *tables) withCut(i int, l *layer) {
	row, next := t.rest[0][i], t.rest[1][i+1]
	after := make([]uint64, len(row)) // one of l is cut, full ones to come
	for h := range after {
		after[h] = never
		for _, c := range l.cuts {
			if at := h + c.high; at < len(next) && next[at] != never {
				after[h] = min(after[h], next[at]+c.key)
			}
		}
	}
	both := make([]uint64, len(row))
	fill(both, after, l, l.most-1)
	for h, v := range both {
		row[h] = min(row[h], v)
	}
}

// count is the number of stacks of the route within the window, saturating.
func (t *tables) count() uint64 {
	n, width, states := len(t.layers), t.hi+1, t.states()
	var next, row [2][]uint64
	for u := range states {
		next[u], row[u] = make([]uint64, width), make([]uint64, width)
	}
	empty := uint64(0)
	for h := range width {
		for _, e := range t.endings {
			if total := h + e.high; total >= t.lo && total <= t.hi {
				for u := range states {
					next[u][h]++
				}
			}
		}
	}
	if !t.bare {
		empty = next[0][0]
		for _, l := range t.layers {
			if l.must {
				empty = 0
			}
		}
	}
	after := make([]uint64, width)
	sum := make([]uint64, width)
	for i := n - 1; i >= 0; i-- {
		l := &t.layers[i]
		for u := range states {
			clear(row[u])
			tally(row[u], next[u], sum, l, l.most)
		}
		if len(l.cuts) > 0 {
			for h := range after {
				after[h] = 0
				for _, c := range l.cuts {
					if at := h + c.high; at < width {
						after[h] = saturating(after[h], next[1][at])
					}
				}
			}
			tally(row[0], after, sum, l, l.most-1)
		}
		row, next = next, row
	}
	if next[0][0] == never {
		return never
	}
	return next[0][0] - empty
}

// tally adds to row the completions for every number of full pieces of l; sum
// is room for its work.
func tally(row, next, sum []uint64, l *layer, most int) {
	if !l.must && most >= len(next)/l.high {
		for h := len(row) - 1; h >= 0; h-- {
			sum[h] = next[h]
			if at := h + l.high; at < len(row) {
				sum[h] = saturating(sum[h], sum[at])
			}
			row[h] = saturating(row[h], sum[h])
		}
		return
	}
	least := 0
	if l.must {
		least, most = 1, 1
	}
	for h := range row {
		for n, at := least, h+least*l.high; n <= most && at < len(next); n, at = n+1, at+l.high {
			row[h] = saturating(row[h], next[at])
		}
	}
}

func saturating(a, b uint64) uint64 {
	if sum := a + b; sum >= a {
		return sum
	}
	return never
}

// partial is a selection of the first layers.
type partial struct {
	least uint64 // key of its best completion
	spent uint64 // key so far
	high  int
	cut   int // 1 where a ring was cut
	picks []pick
}

// beam is the best selections of the route, at least one ring in each unless
// the route is bare.
func (t *tables) beam(best int) []found {
	if t.rest[0][0][0] == never {
		return nil
	}
	width := best + len(t.endings) // the selections without a ring fall away
	list := []partial{{least: t.rest[0][0][0]}}
	for i := range t.layers {
		l := &t.layers[i]
		var grown []partial
		for _, p := range list {
			grown = t.grow(grown, p, i, l, width)
		}
		list = grown
	}
	var out []found
	for _, p := range list {
		if len(p.picks) == 0 && !t.bare {
			continue
		}
		for _, e := range t.endings {
			if total := p.high + e.high; total >= t.lo && total <= t.hi {
				out = append(out, found{p.spent + e.key, p.picks, e.cover})
			}
		}
	}
	return out
}

// grow adds to list every way of taking pieces of layer i after p.
func (t *tables) grow(list []partial, p partial, i int, l *layer, width int) []partial {
	least, most := 0, l.most
	if l.must {
		least, most = 1, 1
	}
	for n := least; n <= most && p.high+n*l.high <= t.hi; n++ {
		high, spent := p.high+n*l.high, p.spent+uint64(n)*l.key
		if rest := t.rest[p.cut][i+1][high]; rest != never {
			list = keep(list, partial{spent + rest, spent, high, p.cut, p.picks}, pick{l.ring, n, 0}, width)
		}
		if p.cut == 1 || n == l.most {
			continue
		}
		for _, c := range l.cuts {
			if at := high + c.high; at <= t.hi && t.rest[1][i+1][at] != never {
				now := spent + c.key
				list = keep(list, partial{now + t.rest[1][i+1][at], now, at, 1, p.picks}, pick{l.ring, n, c.size}, width)
			}
		}
	}
	return list
}

// keep inserts p, extended by k, in the order of its best completion and drops
// what is past width.
func keep(list []partial, p partial, k pick, width int) []partial {
	if len(list) == width && p.least >= list[width-1].least {
		return list
	}
	at := len(list)
	for at > 0 && list[at-1].least > p.least {
		at--
	}
	if k.full > 0 || k.cut > 0 {
		p.picks = append(p.picks[:len(p.picks):len(p.picks)], k)
	}
	if len(list) < width {
		list = append(list, partial{})
	}
	copy(list[at+1:], list[at:])
	list[at] = p
	return list
}

// heights says which heights up to top the rings of the route can make.
func (r *route) heights(top int) []bool {
	var now [2][]bool
	now[0], now[1] = make([]bool, top+1), make([]bool, top+1)
	now[0][0] = true
	for i := range r.layers {
		l := &r.layers[i]
		var then [2][]bool
		then[0], then[1] = make([]bool, top+1), make([]bool, top+1)
		for u := range 2 {
			for h, ok := range now[u] {
				if ok {
					r.reachable(&then, h, u, l)
				}
			}
		}
		now = then
	}
	for h := range now[0] {
		now[0][h] = now[0][h] || now[1][h]
	}
	return now[0]
}

// reachable marks the heights after layer l from height h.
func (r *route) reachable(then *[2][]bool, h, u int, l *layer) {
	least, most := 0, l.most
	if l.must {
		least, most = 1, 1
	}
	for n, at := least, h+least*l.high; n <= most && at < len(then[u]); n, at = n+1, at+l.high {
		then[u][at] = true
		if u == 0 && n < l.most {
			for _, c := range l.cuts {
				if cut := at + c.high; cut < len(then[1]) {
					then[1][cut] = true
				}
			}
		}
	}
}
