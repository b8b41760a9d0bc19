package soil

import (
	"testing"

	"manway.example/manway"
)

func BenchmarkSoil(b *testing.B) {
	g := Ground{Layers: []Layer{{0, manway.Soil{Moist: 120 * pcf, Saturated: 130 * pcf, Friction: 0.5}}}, HasWater: true}
	for _, c := range []struct {
		name string
		f    func() float64
	}{
		{"thrust", func() float64 { v, _ := g.Thrust(0, 2); return float64(v.Force) }},
		{"wheel", func() float64 { v, _ := AASHTO.Wheel(manway.TruckWheel, 1); return v.Impact }},
		{"rectangle", func() float64 { v, _ := (Rectangle{1, 1, 1}).Stress(0, 0, 1); return float64(v) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink += c.f()
			}
		})
	}
}
