package plate

import (
	"fmt"
	"testing"
)

const (
	inch = 0.0254
	psi  = 4.4482216152605 / (0.0254 * 0.0254)
	lbf  = 4.4482216152605
)

// roof is a slab over a two-compartment tank with an opening on one side of the
// partition, and three load cases: soil, a wheel, a riser on the opening.
func roof() (Slab, [][]Load) {
	slab := Slab{
		Length: 96 * inch, Width: 60 * inch, Thickness: 4 * inch, E: 3.6e6 * psi, Nu: 0.2,
		Lines:    []Line{{X, 64 * inch}},
		Openings: []Opening{RectOpening(12*inch, 18*inch, 24*inch, 24*inch)},
	}
	return slab, [][]Load{
		{Uniform{200.0 / 144 * psi}},
		{Patch{48 * inch, 30 * inch, 20 * inch, 10 * inch, 16000 * lbf}},
		{Ring{0, 2 * inch, 15 * lbf / inch}},
	}
}

func BenchmarkStudy(b *testing.B) {
	for _, supports := range []string{"bilateral", "bearing"} {
		b.Run("three_cases/"+supports, func(b *testing.B) {
			slab, cases := roof()
			slab.BearingOnly = supports == "bearing"
			var st Study
			b.ReportAllocs()
			for b.Loop() {
				if err := st.Run(&slab, cases); err != nil || !st.Converged {
					b.Fatal(err, st.Error)
				}
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "slabs/s")
			b.ReportMetric(100*st.Error, "%error")
		})
	}
}

func BenchmarkFactor(b *testing.B) {
	for _, n := range []int{8, 16, 24, 32, 64, 128} {
		b.Run(fmt.Sprintf("mesh=%dx%d", n, n), func(b *testing.B) {
			slab := Slab{Length: 1, Width: 1, Thickness: 0.1, E: 1e9, Nu: 0.3}
			var s Solver
			b.ReportAllocs()
			for b.Loop() {
				if err := s.Factor(&slab, Mesh{Cells: [2]int{n, n}}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(s.Flops()*float64(b.N)/b.Elapsed().Seconds()/1e9, "GFLOP/s")
			b.ReportMetric(float64(s.Unknowns()), "unknowns")
		})
	}
}

// Slabs a second with as many Studies as there are processors.
func BenchmarkStudyParallel(b *testing.B) {
	slab, cases := roof()
	b.ReportAllocs()
	b.RunParallel(func(pb *testing.PB) {
		var st Study
		for pb.Next() {
			if err := st.Run(&slab, cases); err != nil {
				b.Error(err)
				return
			}
		}
	})
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "slabs/s")
}

// One more load case of a factorised roof, and what is read from it.
func BenchmarkLoadCase(b *testing.B) {
	slab, cases := roof()
	var s Solver
	var f Field
	var in Influence
	if err := s.Factor(&slab, Mesh{}); err != nil {
		b.Fatal(err)
	}
	if err := s.Solve(&f, cases[1]); err != nil {
		b.Fatal(err)
	}
	if err := s.Influence(&in, MomentX, Point{1.2, 0.7}); err != nil {
		b.Fatal(err)
	}
	for name, run := range map[string]func() error{
		"Solve":     func() error { return s.Solve(&f, cases[1]) },
		"Extremes":  func() error { f.Extremes(); return nil },
		"At":        func() error { f.At(1.2, 0.7); return nil },
		"Influence": func() error { return s.Influence(&in, MomentX, Point{1.2, 0.7}) },
		"Under":     func() error { return second(in.Under(cases[1])) },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := run(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
