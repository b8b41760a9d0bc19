package tank

import (
	"math"
	"testing"

	"manway.example/manway"
)

var sink float64

// Volume and its inverse of every shape, whole and without a partition.
func BenchmarkVolume(b *testing.B) {
	for name, s := range shapes {
		x := must(b, Spec{Shape: s})
		depth := manway.Length(0.43 * x.height)
		v := volume(b, x, depth)
		b.Run("shape="+name+"/of=volume", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				v, _ := x.Volume(depth)
				sink += float64(v)
			}
		})
		b.Run("shape="+name+"/of=depth", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				d, _ := x.Depth(v)
				sink += float64(d)
			}
		})
	}
}

// The same formulas as bare arithmetic on float64, not inlined, since that is
// the least that any function costs.
func BenchmarkBareVolume(b *testing.B) {
	for name, c := range map[string]struct {
		f    func(p *[4]float64, h float64) float64
		size [4]float64
		h    float64
	}{
		"box":      {bareBox, [4]float64{2.5, 1.4}, 0.7},
		"draft":    {bareDraft, [4]float64{2.3, 1.3, 0.2 / 1.6, 0.1 / 1.6}, 0.7},
		"upright":  {bareUpright, [4]float64{1.7}, 0.64},
		"flat":     {bareSegment, [4]float64{0.75, 2.6}, 0.65},
		"elliptic": {bareElliptic, [4]float64{0.75, 2.6, 0.375, 0.3}, 0.65},
		"oval":     {bareOval, [4]float64{0.65, 2.4, 1.9 / 1.3}, 0.56},
		"frustum":  {bareFrustum, [4]float64{0.6, 0.3 / 1.4}, 0.6},
		"sphere":   {bareSphere, [4]float64{0.8}, 0.69},
	} {
		b.Run("shape="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink += c.f(&c.size, c.h)
			}
		})
	}
}

//go:noinline
func bareBox(p *[4]float64, h float64) float64 { return p[0] * p[1] * h }

//go:noinline
func bareDraft(p *[4]float64, h float64) float64 {
	return h * (p[0]*p[1] + h*((p[0]*p[3]+p[1]*p[2])/2+h*p[2]*p[3]/3))
}

//go:noinline
func bareUpright(p *[4]float64, h float64) float64 { return math.Pi / 4 * p[0] * p[0] * h }

//go:noinline
func bareSegment(p *[4]float64, h float64) float64 {
	return p[1] * (p[0]*p[0]*math.Acos((p[0]-h)/p[0]) - (p[0]-h)*math.Sqrt(2*p[0]*h-h*h))
}

//go:noinline
func bareElliptic(p *[4]float64, h float64) float64 {
	return p[1]*(p[0]*p[0]*math.Acos((p[0]-h)/p[0])-(p[0]-h)*math.Sqrt(2*p[0]*h-h*h)) + math.Pi/2*(p[2]+p[3])*h*h*(1-h/(3*p[0]))
}

//go:noinline
func bareOval(p *[4]float64, h float64) float64 {
	return p[2] * p[1] * (p[0]*p[0]*math.Acos((p[0]-h)/p[0]) - (p[0]-h)*math.Sqrt(2*p[0]*h-h*h))
}

//go:noinline
func bareFrustum(p *[4]float64, h float64) float64 {
	r := p[0] + p[1]*h
	return math.Pi / 3 * h * (p[0]*p[0] + p[0]*r + r*r)
}

//go:noinline
func bareSphere(p *[4]float64, h float64) float64 { return math.Pi / 3 * h * h * (3*p[0] - h) }

func BenchmarkNew(b *testing.B) {
	spec := Spec{Shape: shapes["elliptic"], Partitions: []Partition{{At: 1.2, Thickness: 0.08}}}
	b.ReportAllocs()
	for b.Loop() {
		x, err := New(spec)
		if err != nil {
			b.Fatal(err)
		}
		sink += x.full
	}
}

func BenchmarkCompartment(b *testing.B) {
	x := must(b, Spec{Shape: shapes["box"], Partitions: []Partition{{At: 1.2, Thickness: 0.08}}})
	c := &x.Compartments()[0]
	b.ReportAllocs()
	for b.Loop() {
		v, _ := c.Volume(0.7)
		sink += float64(v)
	}
}

func BenchmarkFloat(b *testing.B) {
	x := must(b, Spec{Shape: shapes["draft"]})
	c := FloatCase{Cover: 0.5, Lids: 100, RiserArea: 0.3}
	b.Run("of=balance", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			f, _ := x.Float(c)
			sink += f.Factor
		}
	})
	b.Run("of=water-limit", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			l, _ := x.WaterLimit(c)
			sink += float64(l.Depth)
		}
	})
}
