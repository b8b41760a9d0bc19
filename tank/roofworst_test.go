package tank

import (
	"math"
	"testing"

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
