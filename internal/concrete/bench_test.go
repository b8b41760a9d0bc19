package concrete

import (
	"testing"

	"manway.example/manway"
)

func BenchmarkStrength(b *testing.B) {
	fc := manway.Concrete{Strength: 4000 * manway.PSI}
	s := Section{fc, 12 * inch, 5 * inch, 0.24 * manway.SquareInch, 60000 * manway.PSI}
	strip := Strip{Concrete: fc, Thickness: 4 * inch, Steel: mesh(0.5, 8, 0.75)}
	for _, c := range []struct {
		name string
		f    func() float64
	}{
		{"flexure", func() float64 { v, _ := s.Flexure(); return v.Phi }},
		{"one-way-shear", func() float64 { v, _ := s.OneWayShear(); return v.Phi }},
		{"punching", func() float64 {
			v, _ := (Punching{fc, 10 * inch, 20 * inch, 3 * inch, Interior}).Strength()
			return v.Phi
		}},
		{"plain", func() float64 { v, _ := (Plain{fc, 12 * inch, 4 * inch, false}).Flexure(); return v.Phi }},
		{"breakout", func() float64 { v, _ := (Breakout{Concrete: fc, Embedment: 3 * inch}).Strength(); return v.Phi }},
		{"strip-bending", func() float64 { v, _ := strip.Bending(); return v.Phi }},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				allocSink += c.f()
			}
		})
	}
}
