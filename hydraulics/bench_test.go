package hydraulics_test

import (
	"maps"
	"math"
	"slices"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

func BenchmarkClosedForm(b *testing.B) {
	forms := closedForms(b)
	for _, name := range slices.Sorted(maps.Keys(forms)) {
		form := forms[name]
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := form(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// The floor beside FrictionFactor: one explicit estimate of the same root.
func BenchmarkBareHaaland(b *testing.B) {
	re, f := 1e5, 0.0
	for b.Loop() {
		x := -1.8 * math.Log10(math.Pow(1e-4/3.7, 1.11)+6.9/re)
		f += 1 / (x * x)
	}
	if f == 0 {
		b.Fatal("nothing was computed")
	}
}

func dayRoute(t testing.TB, made *tank.Tank) hydraulics.Route {
	c := made.Compartments()
	r := hydraulics.Route{
		OutletInvert: 48 * manway.Inch, Outlet: hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 0.02},
		InletInvert: manway.Read(51 * manway.Inch), Base: 40 * manway.GallonPerDay,
		Surges: []hydraulics.Surge{hydraulics.Bath.Begin(7 * manway.Hour), hydraulics.Laundry.Begin(9 * manway.Hour), hydraulics.Flush.Begin(21 * manway.Hour)},
	}
	for i := range c {
		r.Compartments = append(r.Compartments, &c[i])
		if i > 0 {
			r.Slots = append(r.Slots, hydraulics.Slot{Area: 16 * manway.SquareInch, Invert: 28 * manway.Inch})
		}
	}
	return r
}

func BenchmarkRoute(b *testing.B) {
	for name, made := range map[string]*tank.Tank{"day/box": boxTank(b, 1), "day/cylinder": lyingTank(b)} {
		r := dayRoute(b, made)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := r.Route(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkPumpOut(b *testing.B) {
	c := twoCompartments(b, lyingTank(b))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.PumpOut(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEmptying(b *testing.B) {
	c := twoCompartments(b, lyingTank(b)).Compartments[0]
	e := hydraulics.Emptying{Compartment: c, From: 48 * manway.Inch, Suction: hydraulics.Suction{
		Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 9 * manway.Foot,
		Hose: hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Fittings: 1.5}}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := e.Time(); err != nil {
			b.Fatal(err)
		}
	}
}
