package riser

import (
	"math"
	"slices"

	"manway.example/manway"
)

// The search for the best stacks.
//
// A route is a list of layers, one a kind of ring: how many of it are taken.
// Routes are the rings of one bore, and for every adapter the rings below it,
// the adapter, the rings above it. From the last layer back to the first, a
// table holds for every height reached so far the least key of what can still
// complete the stack; a key is (joints, mass, cost) packed into one integer so
// that adding and comparing keys is adding and comparing integers.
//
// Forward, the K partial stacks whose best completion is least are kept at each
// layer. Each partial stack has a completion of its own with exactly that key,
// so no partial stack outside the K can be part of the K best.

// unit is the length that heights are counted in: 1/64 in is 15875 of it and
// 1 mm 40000.
const unit = 25e-9

// maxCells bounds the tables of one search.
const maxCells = 4 << 20

// never is the key of what cannot be completed.
const never = math.MaxUint64

// key packs joints, mass in 20 g and cost.
func key(joints int, mass manway.Mass, cost int64) uint64 {
	return uint64(joints)<<56 + uint64(math.Round(float64(mass)/0.020))<<30 + uint64(cost)
}

// layer is one kind of ring in a route.
type layer struct {
	ring int
	high int    // ticks of ring and joint
	most int    // pieces that may be taken
	key  uint64 // of one piece
	must bool   // an adapter: exactly one
	cuts []cut
}

// cut is one height to which a ring may be cut down.
type cut struct {
	high int
	key  uint64
	size manway.Length
}

// ending is one cover that may close a route.
type ending struct {
	cover int
	high  int
	key   uint64
}

type route struct {
	layers  []layer
	endings []ending
	bare    bool // no ring: the cover lies on the port
}

type search struct {
	rings   []Ring
	need    Need
	masses  []manway.Mass
	step    int64 // of the grid, in units
	routes  []route
	tallest int // tallest piece and cover together, in ticks
	unused  []string
	assumed manway.Assumptions
}

func units(x manway.Length) int64 { return int64(math.Round(float64(x) / unit)) }

func newSearch(rings []Ring, need Need) *search {
	s := &search{rings: rings, need: need, masses: make([]manway.Mass, len(rings))}
	var usable []int
	for i, r := range rings {
		mass, made := r.mass()
		s.masses[i] = mass
		if min(r.Bore, r.top()) < need.Port && !oneBore(min(r.Bore, r.top()), need.Port) {
			s.unused = append(s.unused, r.code()+": bore "+min(r.Bore, r.top()).String()+" is narrower than the port of "+need.Port.String())
			continue
		}
		s.assumed |= made
		usable = append(usable, i)
	}
	s.grid(usable)
	s.routes = append(s.routes, route{bare: true, endings: s.endings(need.Port)})
	for done := usable; len(done) > 0; {
		bore := rings[done[0]].Bore
		var rest []int
		for _, i := range done {
			if !oneBore(rings[i].Bore, bore) {
				rest = append(rest, i)
			}
		}
		s.routes = append(s.routes, route{layers: s.layers(usable, bore), endings: s.endings(bore)})
		done = rest
	}
	for _, i := range usable {
		if r := rings[i]; r.Adapter() {
			layers := append(s.layers(usable, r.Bore), s.layer(i))
			s.routes = append(s.routes, route{layers: append(layers, s.layers(usable, r.top())...), endings: s.endings(r.top())})
		}
	}
	return s
}

// grid sets the step to the greatest common divisor of all heights.
func (s *search) grid(usable []int) {
	joint := units(s.need.Joint)
	for _, i := range usable {
		r := s.rings[i]
		s.step = gcd(s.step, units(r.Height)+joint)
		if r.CutStep > 0 {
			s.step = gcd(s.step, units(r.CutStep))
		}
	}
	cover := int64(0)
	for _, c := range s.need.Covers {
		s.step = gcd(s.step, units(c.Stands))
		cover = max(cover, units(c.Stands))
	}
	if s.step == 0 {
		s.step = units(manway.Inch)
	}
	for _, i := range usable {
		s.tallest = max(s.tallest, int((units(s.rings[i].Height)+joint+cover)/s.step))
	}
	s.tallest = max(s.tallest, int(cover/s.step))
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// layers are the plain rings of a bore among usable.
func (s *search) layers(usable []int, bore manway.Length) []layer {
	var list []layer
	for _, i := range usable {
		if r := s.rings[i]; !r.Adapter() && oneBore(r.Bore, bore) {
			list = append(list, s.layer(i))
		}
	}
	return list
}

func (s *search) layer(i int) layer {
	r, joint := s.rings[i], units(s.need.Joint)
	l := layer{ring: i, high: int((units(r.Height) + joint) / s.step), most: r.Count, key: key(1, s.masses[i], r.Cost), must: r.Adapter()}
	if l.most == 0 {
		l.most = math.MaxInt32
	}
	if r.CutStep > 0 {
		whole, step := units(r.Height), units(r.CutStep)
		for left := whole - step; left >= max(units(r.CutLeast), step); left -= step {
			mass := s.masses[i] * manway.Mass(float64(left)/float64(whole))
			l.cuts = append(l.cuts, cut{int((left + joint) / s.step), key(1, mass, r.Cost), manway.Length(float64(left) * unit)})
		}
	}
	return l
}

// endings are the covers that fit a bore.
func (s *search) endings(bore manway.Length) []ending {
	if len(s.need.Covers) == 0 {
		return []ending{{cover: -1}}
	}
	var list []ending
	for i, c := range s.need.Covers {
		if oneBore(c.Fits, bore) {
			list = append(list, ending{i, int(units(c.Stands) / s.step), key(0, c.Mass, c.Cost)})
		}
	}
	return list
}

// slackUnits is how far past its limit a stack still counts as within it.
const slackUnits = 8

// window is the least and greatest total that is within tolerance, in ticks.
func (s *search) window() (lo, hi int) {
	least := units(s.need.Gap) - units(s.need.Below) - slackUnits
	most := units(s.need.Gap) + units(s.need.Above) + slackUnits
	lo = int(math.Ceil(float64(least) / float64(s.step)))
	return max(lo, 0), int(most / s.step)
}

// cells is the size of the largest table.
func (s *search) cells() int {
	_, hi := s.window()
	most := 0
	for _, r := range s.routes {
		most = max(most, (len(r.layers)+1)*2*(hi+s.tallest+1))
	}
	return most
}

// run finds the best stacks with a total of lo to hi ticks and counts them all.
func (s *search) run(lo, hi, best int) (list []found, count uint64, atLeast bool) {
	for i := range s.routes {
		t := newTables(&s.routes[i], lo, hi)
		n := t.count()
		if sum := count + n; sum >= count && n != math.MaxUint64 {
			count = sum
		} else {
			count, atLeast = math.MaxUint64, true
		}
		list = append(list, t.beam(best)...)
	}
	slices.SortStableFunc(list, func(a, b found) int {
		switch {
		case a.key < b.key:
			return -1
		case a.key > b.key:
			return 1
		}
		return 0
	})
	return list[:min(len(list), best)], count, atLeast
}

// nearest is the greatest total below lo and the least above hi, -1 for none.
func (s *search) nearest(lo, hi int) (below, above int) {
	below, above = -1, -1
	top := hi + s.tallest
	for i := range s.routes {
		r := &s.routes[i]
		for h, ok := range r.heights(top) {
			if !ok || !r.bare && h == 0 {
				continue
			}
			for _, e := range r.endings {
				total := h + e.high
				if total < lo && total > below {
					below = total
				}
				if total > hi && (above < 0 || total < above) {
					above = total
				}
			}
		}
	}
	return below, above
}

// stack is a found selection as the caller sees it.
func (s *search) stack(f found) Stack {
	out := Stack{Cover: f.cover}
	var split int // pieces below the adapter, and it
	for _, p := range f.picks {
		r := s.rings[p.ring]
		if p.full > 0 {
			out.Pieces = append(out.Pieces, Piece{Ring: p.ring, Code: r.code(), Count: p.full, Height: r.Height, Bore: r.Bore, Plastic: r.Plastic})
			out.Mass += manway.Mass(float64(p.full)) * s.masses[p.ring]
		}
		if p.cut > 0 {
			out.Pieces = append(out.Pieces, Piece{Ring: p.ring, Code: r.code(), Count: 1, Height: p.cut, Bore: r.Bore, Cut: true, Plastic: r.Plastic})
			out.Mass += s.masses[p.ring] * manway.Mass(float64(p.cut/r.Height))
			p.full++
		}
		out.Joints += p.full
		out.Cost += int64(p.full) * r.Cost
		if r.Adapter() {
			split = len(out.Pieces)
		}
	}
	tallest := func(a, b Piece) int {
		switch {
		case a.Height > b.Height:
			return -1
		case a.Height < b.Height:
			return 1
		}
		return 0
	}
	slices.SortStableFunc(out.Pieces[:max(split-1, 0)], tallest)
	slices.SortStableFunc(out.Pieces[split:], tallest)
	if f.cover >= 0 {
		out.Mass += s.need.Covers[f.cover].Mass
		out.Cost += s.need.Covers[f.cover].Cost
	}
	out.Total = out.total(s.need)
	out.Off = out.Total - s.need.Gap
	return out
}
