package tank

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// The place found by influence is as bad as the worst of a dense net of places
// each solved in full on the slab that can lift off, within 3 percent; over a
// partition within 12.
func TestWorstPlaceByBruteForce(t *testing.T) {
	tk := roofTank(t)
	for _, name := range []string{"plain", "one way strong", "partition touches"} {
		c := knownRoof()
		c.Planned = nil
		switch name {
		case "one way strong":
			c.Steel.Inside.Across = bar(0.5, 4, 0.75)
		case "partition touches":
			c.Contact = []bool{true}
		}
		pieces, err := tk.pieces(&c)
		if err != nil {
			t.Fatal(err)
		}
		p := &pieces[0]
		p.slab.Lines = tk.supports(p, c.Contact)
		j := roofJudge{t: tk, c: &c, r: &RoofStrength{}, after: &c.Now, workplace: new(workplace)}
		if err := j.loadings(); err != nil {
			t.Fatal(err)
		}
		for k := range j.moving { // as on bare ground: the smallest rectangles
			if j.moving[k], err = movingOf(j.moving[k].wheel, 0); err != nil && k > 0 {
				t.Fatal(err)
			}
		}
		j.kept = make([]kept, len(j.r.Loadings))
		if err := j.way(p); err != nil {
			t.Fatal(err)
		}
		after := j.kept[0].after
		use := func(k int, at standing) float64 {
			f := manway.DeadLive.Factors()
			if err := j.solver.Solve(&j.field, j.moving[k].put(after.loads(f.Dead), &p.slab, at, f.Live)); err != nil {
				t.Fatal(err)
			}
			most := 0.0
			for _, kinds := range pulls(&j.field, &p.strength, nil, insideFace, p.overPartition) {
				most = max(most, kinds[0].use, kinds[1].use)
			}
			return most
		}
		for k := range j.moving {
			got := use(k, j.kept[fixed+k].at[k])
			worst, at := denseNet(p, &j.moving[k], func(at standing) float64 { return use(k, at) })
			t.Logf("%s, %s: found %.3f at %.2f, dense net %.3f at %.2f", name, j.moving[k].name, got, j.kept[fixed+k].at[k].Point, worst, at.Point)
			within := 0.97
			if len(p.slab.Lines) > 0 {
				within = 0.88 // hogging peaks where the contact ends, and jumps from node to node
			}
			if got < within*worst {
				t.Errorf("%s, %s: found %.4f at %v, the dense net has %.4f at %v", name, j.moving[k].name, got, j.kept[fixed+k].at[k], worst, at)
			}
		}
	}
}

// Property (symmetric): the looks at an opening are eight, each half a thickness
// from its rim, as far to one side of its middle as to the other; the places at
// the rim lie nearer.
func TestLooksRoundAnOpening(t *testing.T) {
	const thickness, out = 0.1, 0.05
	rectangle := plate.Opening{X: 1, Y: 0.6, Length: 0.7, Width: 0.4} // middle at (1.35, 0.8)
	circle := plate.RoundOpening(1.35, 0.8, 0.5)
	for _, o := range []plate.Opening{rectangle, circle} {
		fromRim := func(at plate.Point) float64 {
			x, y := math.Abs(at.X-1.35), math.Abs(at.Y-0.8)
			if o.Diameter > 0 {
				return math.Hypot(x, y) - o.Diameter/2
			}
			return math.Hypot(max(x-o.Length/2, 0), max(y-o.Width/2, 0))
		}
		w := newSearch(&piece{slab: plate.Slab{Length: 2.5, Width: 1.5, Thickness: thickness, Openings: []plate.Opening{o}}}, nil)
		seen := map[[2]int]bool{}
		var sumX, sumY float64
		for _, l := range w.looks() {
			if l.rim == nil {
				continue
			}
			if d := fromRim(l.of); math.Abs(d-out) > 1e-12 {
				t.Errorf("%+v: a look at %v, %v from the rim, want %v", o, l.of, d, out)
			}
			if d := fromRim(*l.rim); !(d > 0 && d < out/10) {
				t.Errorf("%+v: a place at the rim at %v, %v from it", o, *l.rim, d)
			}
			for _, r := range l.reach { // outwards, or along the rim
				if x, y := r[0]*(l.of.X-1.35), r[1]*(l.of.Y-0.8); x < -1e-12 && y < -1e-12 || x+y < -1e-12 && (r[0] == 0 || r[1] == 0) {
					t.Errorf("%+v: from %v a load is put at %v, into the opening", o, l.of, r)
				}
			}
			seen[[2]int{int(math.Round(1e6 * l.of.X)), int(math.Round(1e6 * l.of.Y))}] = true
			sumX, sumY = sumX+l.of.X-1.35, sumY+l.of.Y-0.8
		}
		if len(seen) != 8 || math.Hypot(sumX, sumY) > 1e-12 {
			t.Errorf("%+v: %d looks, their middle (%v, %v) beside its own; want 8 about it", o, len(seen), sumX/8, sumY/8)
		}
	}
}

// The worst places are kept in order, whichever is found first: three of four far
// apart, of two near each other the worse, of mirror images one.
func TestKeepWorstPlaces(t *testing.T) {
	far := plate.Point{X: 0.1, Y: 0.1}
	place := func(use float64) standing { return standing{Point: plate.Point{X: use, Y: 1}} }
	for _, order := range [][]float64{{1, 2, 3, 4}, {4, 3, 2, 1}, {3, 1, 2, 4}, {2, 4, 1, 3}, {4, 1, 2, 3}, {3, 1, 4, 2}} {
		var b best
		for _, use := range order {
			b.keep(place(use), use, far)
		}
		for i, want := range []float64{4, 3, 2} {
			if b.n != 3 || b.use[i] != want || b.at[i] != place(want) {
				t.Errorf("found %v: %d kept, place %d is %v with %v; want %v", order, b.n, i+1, b.at[i], b.use[i], want)
			}
		}
		b.keep(standing{Point: plate.Point{X: 3.1, Y: 1.1}}, 5, far) // beside 3
		if b.n != 3 || b.use != [most]float64{5, 4, 2} || b.at[0].X != 3.1 || b.at[1] != place(4) || b.at[2] != place(2) {
			t.Errorf("found %v: a worse place beside the second gives %v, %v", order, b.use, b.at)
		}
		before := b
		b.keep(standing{Point: plate.Point{X: 3.2, Y: 1}}, 4.5, far)       // beside 5, and less
		b.keep(standing{Point: plate.Point{X: 9, Y: 1}}, 4*(1+1e-12), far) // does the same as 4
		if b != before {
			t.Errorf("found %v: %v after places that add nothing, before them %v", order, b, before)
		}
	}
}

// What of a wheel of 0.4 by 0.2 m at 100 kPa, 8 kN in all, is on a slab of 3 by 2 m
// with an opening of 0.6 by 0.5 m: all of it amid the slab, half on an edge, a
// quarter in a corner, none outside. With its middle beside the opening all of it
// presses there, with its middle over it none.
func TestClipWheel(t *testing.T) {
	s := plate.Slab{Length: 3, Width: 2, Openings: []plate.Opening{{X: 2, Y: 1, Length: 0.6, Width: 0.5}}}
	for _, c := range []struct {
		x, y float64
		want plate.Patch
	}{
		{1, 0.5, plate.Patch{X: 1, Y: 0.5, Length: 0.4, Width: 0.2, Force: 8e3}},
		{0, 0.5, plate.Patch{X: 0.1, Y: 0.5, Length: 0.2, Width: 0.2, Force: 4e3}},
		{3, 0.5, plate.Patch{X: 2.9, Y: 0.5, Length: 0.2, Width: 0.2, Force: 4e3}},
		{1, 0, plate.Patch{X: 1, Y: 0.05, Length: 0.4, Width: 0.1, Force: 4e3}},
		{1, 2, plate.Patch{X: 1, Y: 1.95, Length: 0.4, Width: 0.1, Force: 4e3}},
		{3, 2, plate.Patch{X: 2.9, Y: 1.95, Length: 0.2, Width: 0.1, Force: 2e3}},
		{-0.3, 1, plate.Patch{}}, {3.3, 1, plate.Patch{}}, {1, 2.2, plate.Patch{}},
		{1.9, 1.2, plate.Patch{X: 1.9, Y: 1.2, Length: 0.4, Width: 0.2, Force: 8e3}},
		{2.1, 1.2, plate.Patch{}},
	} {
		list := clip(nil, &s, c.x, c.y, 0.4, 0.2, 100e3)
		if c.want == (plate.Patch{}) {
			if len(list) > 0 {
				t.Errorf("at %v, %v: %+v, want nothing", c.x, c.y, list)
			}
			continue
		}
		if len(list) != 1 || !cmp.Equal(list[0], plate.Load(c.want), cmpopts.EquateApprox(1e-9, 1e-12)) {
			t.Errorf("at %v, %v: %+v, want %+v", c.x, c.y, list, c.want)
		}
	}
}

// clear reports whether no part of a wheel stands over an opening, where the lid
// carries it.
func clear(p *piece, m *moving, at standing) bool {
	lx, ly := m.along/2, m.across/2
	if at.turned {
		lx, ly = ly, lx
	}
	for _, x := range []float64{at.X, at.X + math.Copysign(m.pair, p.slab.Length/2-at.X)} {
		for _, o := range p.slab.Openings {
			b := plate.Rect{X0: o.X, Y0: o.Y, X1: o.X + o.Length, Y1: o.Y + o.Width}
			if r := o.Diameter / 2; r > 0 {
				b = plate.Rect{X0: o.X - r, Y0: o.Y - r, X1: o.X + r, Y1: o.Y + r}
			}
			if x+lx > b.X0 && x-lx < b.X1 && at.Y+ly > b.Y0 && at.Y-ly < b.Y1 {
				return false
			}
		}
	}
	return true
}

// denseNet tries places all over a piece, both ways round.
func denseNet(p *piece, m *moving, use func(standing) float64) (worst float64, at standing) {
	for a := 1; a < 16; a++ {
		for b := 1; b < 12; b++ {
			for _, turned := range []bool{false, true} {
				try := standing{plate.Point{X: p.slab.Length * float64(a) / 16, Y: p.slab.Width * float64(b) / 12}, turned}
				if !onSlab(&p.slab, try.X, try.Y) || !clear(p, m, try) {
					continue
				}
				if u := use(try); u > worst {
					worst, at = u, try
				}
			}
		}
	}
	return worst, at
}

// Property (balance): a slab on two opposite walls, its other edges free, gives
// each of its sections q (L/2 - x) under a load all over, whole or in halves, once
// the part that runs along the free edges is counted; without it more than an
// eighth would be missing.
func TestShearOfSectionsBetweenFreeEdges(t *testing.T) {
	const span, width, q = 2.0, 1.5, 10e3
	for _, axis := range []plate.Axis{plate.X, plate.Y} {
		s := plate.Slab{Length: span, Width: width, Thickness: 0.1, E: 25e9, Nu: 0.3}
		s.Edges[plate.SideY0], s.Edges[plate.SideY1] = plate.Free, plate.Free
		if axis == plate.Y {
			s = plate.Slab{Length: width, Width: span, Thickness: 0.1, E: 25e9, Nu: 0.3}
			s.Edges[plate.SideX0], s.Edges[plate.SideX1] = plate.Free, plate.Free
		}
		var solver plate.Solver
		if err := solver.Factor(&s, plate.Mesh{}); err != nil {
			t.Fatal(err)
		}
		var f plate.Field
		if err := solver.Solve(&f, []plate.Load{plate.Uniform{Pressure: q}}); err != nil {
			t.Fatal(err)
		}
		for _, at := range []float64{0.1, 0.3, 0.6, 1.9} {
			for _, part := range [][2]float64{{0, width}, {0, width / 2}, {width / 2, width}} {
				got, ok := sectionShear(&f, &s, axis, at, part[0], part[1])
				if want := q * (span/2 - at); !ok || math.Abs(got/want-1) > 1e-3 {
					t.Errorf("axis %v, section at %v, %v: %v N/m, want %v", axis, at, part, got, want)
				}
			}
		}
	}
}
