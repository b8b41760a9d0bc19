package riser

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"manway.example/manway"
)

// everyStack lists every selection within tolerance by trying all of them, the
// check on the search that shares no line with it.
func everyStack(rings []Ring, need Need) []Stack {
	var all []Stack
	covers := need.Covers
	if len(covers) == 0 {
		covers = []Cover{{}}
	}
	var walk func(i int, picks []pick, cut bool)
	s := &search{rings: rings, need: need, masses: make([]manway.Mass, len(rings))}
	for i, r := range rings {
		s.masses[i], _ = r.mass()
	}
	finish := func(picks []pick) {
		top, ok := legal(rings, need, picks)
		if !ok {
			return
		}
		for ci, c := range covers {
			if len(need.Covers) > 0 && !oneBore(c.Fits, top) {
				continue
			}
			f := found{picks: picks, cover: ci}
			if len(need.Covers) == 0 {
				f.cover = -1
			}
			st := s.stack(f)
			if st.Off >= -need.Below-1e-7 && st.Off <= need.Above+1e-7 {
				all = append(all, st)
			}
		}
	}
	walk = func(i int, picks []pick, cut bool) {
		high := manway.Length(0)
		for _, p := range picks {
			high += manway.Length(p.full)*(rings[p.ring].Height+need.Joint) + p.cut
		}
		if high > need.Gap+need.Above+1e-7 {
			return
		}
		if i == len(rings) {
			finish(slices.Clone(picks))
			return
		}
		r := rings[i]
		most := r.Count
		if most == 0 {
			most = int(float64(need.Gap+need.Above)/float64(r.Height+need.Joint) + 1e-9)
		}
		for n := 0; n <= most; n++ {
			next := picks
			if n > 0 {
				next = append(slices.Clone(picks), pick{i, n, 0})
			}
			walk(i+1, next, cut)
			if r.CutStep > 0 && !cut && (r.Count == 0 || n < r.Count) {
				for k := 1; ; k++ {
					left := r.Height - manway.Length(k)*r.CutStep
					if left < max(r.CutLeast, r.CutStep)-1e-9 {
						break
					}
					walk(i+1, append(slices.Clone(picks), pick{i, n, left}), true)
				}
			}
		}
	}
	walk(0, nil, false)
	return all
}

// legal says whether the picks can stand on the port and on each other, and the
// bore at their top.
func legal(rings []Ring, need Need, picks []pick) (top manway.Length, ok bool) {
	top = need.Port
	var low, high manway.Length
	for _, p := range picks {
		r := rings[p.ring]
		if min(r.Bore, r.top()) < need.Port && !oneBore(min(r.Bore, r.top()), need.Port) {
			return 0, false
		}
		if r.Adapter() {
			if low != 0 || p.full != 1 {
				return 0, false
			}
			low, high = r.Bore, r.top()
		}
	}
	first := true
	for _, p := range picks {
		r := rings[p.ring]
		switch {
		case low == 0 && (first || oneBore(top, r.Bore)):
			top, first = r.Bore, false
		case low == 0:
			return 0, false
		case r.Adapter(), oneBore(r.Bore, low), oneBore(r.Bore, high):
		default:
			return 0, false
		}
	}
	if low != 0 {
		top = high
	}
	return top, true
}

// Property (two ways): the search finds what trying every selection finds, on
// random stocks: the number, and joints, mass and cost of the best 20.
func TestStackAgainstEverything(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 24))
	heights := []manway.Length{2 * manway.Inch, 3 * manway.Inch, 4 * manway.Inch, 6 * manway.Inch, 8 * manway.Inch, 12 * manway.Inch, 65 * manway.Millimetre}
	bores := []manway.Length{24 * manway.Inch, 30 * manway.Inch}
	feasible, nearest := 0, 0
	for trial := range 400 {
		var rings []Ring
		for i := range 2 + rng.IntN(4) {
			h := heights[rng.IntN(len(heights))]
			r := Ring{Code: "r" + strconv.Itoa(i), Count: rng.IntN(4), Height: h, Bore: bores[rng.IntN(2)], Mass: manway.Mass(20+rng.IntN(100)) * manway.Kilogram, Cost: int64(rng.IntN(9000))}
			if rng.IntN(4) == 0 {
				r.CutStep = manway.Inch / 2
			}
			if rng.IntN(5) == 0 {
				r.Bore, r.TopBore, r.CutStep = bores[0], bores[1], 0
			}
			rings = append(rings, r)
		}
		need := Need{Port: 24 * manway.Inch, Gap: manway.Length(rng.IntN(30)) * manway.Inch, Below: manway.Length(rng.IntN(3)) * manway.Inch / 2, Above: manway.Length(rng.IntN(3)) * manway.Inch / 2, Joint: manway.Length(rng.IntN(2)) * manway.Inch / 2}
		if rng.IntN(2) == 0 {
			need.Covers = []Cover{{"c24", 24 * manway.Inch, 3 * manway.Inch, 50, 100}, {"c30", 30 * manway.Inch, 0, 90, 100}, {"c30b", 30 * manway.Inch, 4 * manway.Inch, 80, 200}}
		}
		got, err := StackOf(rings, need)
		if err != nil {
			t.Fatal(err)
		}
		want := everyStack(rings, need)
		if got.Feasible != uint64(len(want)) {
			t.Fatalf("trial %d: counted %d, there are %d\n%+v\n%+v", trial, got.Feasible, len(want), rings, need)
		}
		slices.SortStableFunc(want, func(a, b Stack) int {
			ka, kb := key(a.Joints, a.Mass, a.Cost), key(b.Joints, b.Mass, b.Cost)
			switch {
			case ka < kb:
				return -1
			case ka > kb:
				return 1
			}
			return 0
		})
		if len(got.Best) != min(len(want), bestStacks) {
			t.Fatalf("trial %d: listed %d of %d", trial, len(got.Best), len(want))
		}
		for i, b := range got.Best {
			w := want[i]
			if b.Joints != w.Joints || b.Mass-w.Mass > 0.2 || w.Mass-b.Mass > 0.2 {
				t.Fatalf("trial %d: stack %d is %v %v %d, want %v %v %d", trial, i, b, b.Mass, b.Cost, w, w.Mass, w.Cost)
			}
		}
		if len(want) > 0 {
			feasible++
		}
		nearest += len(got.Nearest)
		if len(want) == 0 && len(rings) < 4 {
			nearestStacks(t, trial, rings, need, got.Nearest)
		}
	}
	if feasible < 100 || nearest < 100 {
		t.Errorf("only %d stocks had a stack and %d a nearest: the trials prove little", feasible, nearest)
	}
}

// nearestStacks compares the nearest stacks of a height that none makes with those
// of all that are up to a foot and a half off.
func nearestStacks(t *testing.T, trial int, rings []Ring, need Need, got []Stack) {
	t.Helper()
	need.Below, need.Above = need.Gap, 18*manway.Inch
	below, above := math.Inf(-1), math.Inf(1)
	for _, s := range everyStack(rings, need) {
		if off := float64(s.Off); off < 0 {
			below = max(below, off)
		} else {
			above = min(above, off)
		}
	}
	for _, s := range got {
		if off := float64(s.Off); !(off < 0 && math.Abs(off-below) < 1e-6) && !(off > 0 && math.Abs(off-above) < 1e-6) {
			t.Fatalf("trial %d: the nearest is %v off, should be %v or %v\n%+v\n%+v", trial, s.Off, below, above, rings, need)
		}
	}
	want := 0
	for _, off := range []float64{below, above} {
		if !math.IsInf(off, 0) {
			want++
		}
	}
	if len(got) != want {
		t.Fatalf("trial %d: %d nearest, there are %v below and %v above\n%+v\n%+v", trial, len(got), below, above, rings, need)
	}
}

// TestStackNearest finds the nearest stacks of an impossible height by hand: 8
// in of 6 in rings with 1/2 in joints is 6.5 in or 13 in.
func TestStackNearest(t *testing.T) {
	rings := []Ring{{Code: "ring-24x6", Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Mass: 60}}
	got, err := StackOf(rings, Need{Port: 24 * manway.Inch, Gap: 8 * manway.Inch, Joint: manway.Inch / 2})
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Best) != 0 || len(got.Nearest) != 2 {
		t.Fatalf("got %+v", got)
	}
	if want := "the nearest below is 1 1/2 in short; the nearest above is 5 in too high"; got.Missing(manway.US) != want {
		t.Errorf("got %q, want %q", got.Missing(manway.US), want)
	}
}

func BenchmarkStackOf(b *testing.B) {
	for _, kinds := range []int{5, 10, 20, 40} {
		for _, reach := range []manway.Length{2 * manway.Foot, 6 * manway.Foot, 12 * manway.Foot} {
			rings := stockOf(kinds)
			need := Need{Port: 24 * manway.Inch, Gap: reach, Below: manway.Inch, Above: manway.Inch / 2, Joint: manway.Inch / 2}
			b.Run("kinds="+strconv.Itoa(kinds)+"/reach="+strconv.Itoa(int(reach.In(manway.Foot)))+"ft", func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := StackOf(rings, need); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// BenchmarkStackOfHard is 40 kinds and 6 ft where the search has more to do:
// rings without end, all of them cuttable in half inches, and heights in inches
// and millimetres mixed, which share only a small step.
func BenchmarkStackOfHard(b *testing.B) {
	need := Need{Port: 24 * manway.Inch, Gap: 6 * manway.Foot, Below: manway.Inch, Above: manway.Inch / 2, Joint: manway.Inch / 2}
	for _, kind := range []string{"endless", "cuttable", "mixed"} {
		rings := stockOf(40)
		for i := range rings {
			switch r := &rings[i]; kind {
			case "cuttable":
				r.CutStep, r.Count = manway.Inch/2, 0
			case "mixed":
				r.Height = manway.Length(int(r.Height/manway.Millimetre)) * manway.Millimetre
			default:
				r.Count = 0
			}
		}
		b.Run("stock="+kind, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := StackOf(rings, need); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// stockOf is an invented stock of many kinds: heights of 2 to 12 in in quarter
// inches, in two bores, one in ten cuttable.
func stockOf(kinds int) []Ring {
	var rings []Ring
	for i := range kinds {
		r := Ring{Code: "r" + strconv.Itoa(i), Count: 1 + i%7, Height: (8 + manway.Length(i*7%41)) * manway.Inch / 4, Bore: 24 * manway.Inch, Mass: manway.Mass(30 + i*13%90), Cost: int64(1000 + i*317%5000)}
		if i%3 == 0 {
			r.Bore = 30 * manway.Inch
		}
		if i%10 == 9 {
			r.CutStep = manway.Inch
		}
		rings = append(rings, r)
	}
	return rings
}
