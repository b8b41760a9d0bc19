package lid

import (
	"math"
	"testing"

	"manway.example/manway"
)

var soundHandle = Handle{State: HandleSound, Waist: 0.5 * in, AsMade: 0.5 * in, Spacing: 2 * in, Embedment: 2 * in, Edge: 10 * in}

func TestHandleByHand(t *testing.T) {
	l := Lid{Shape: Disc, Diameter: 24 * in, Thickness: 4 * in, Measured: 100 * manway.Pound}
	r, err := l.CheckHandle(soundHandle)
	if err != nil {
		t.Fatal(err)
	}
	lbf := func(f manway.Force) float64 { return f.In(manway.PoundForce) }
	if want := 2 * math.Pi / 4 * 0.25 * 58000; !close(lbf(r.Steel), want, 1e-9) {
		t.Errorf("legs %v, want %v", lbf(r.Steel), want)
	}
	if want := 4 * 36000 * 0.125 / 6 / 2; !close(lbf(r.Bar), want, 1e-9) { // 1,500 lbf
		t.Errorf("bar %v, want %v", lbf(r.Bar), want)
	}
	// Nb = 24 sqrt(2500) 2^1.5, two legs 2 in apart: area (6 x 8)/36.
	if want := 24 * 50 * math.Pow(2, 1.5) * 48 / 36; !close(lbf(r.Breakout), want, 1e-9) {
		t.Errorf("breakout %v, want %v", lbf(r.Breakout), want)
	}
	if r.DoNotLift || r.Reason != "" {
		t.Errorf("do not lift: %s", r.Reason)
	}
	for _, c := range r.Checks {
		if c.Status != manway.Pass || !close(manway.Force(c.Demand).In(manway.PoundForce), 400, 1e-9) {
			t.Errorf("%+v", c)
		}
	}
}

// Whatever is wrong or not known of a handle says do not lift on it.
func TestDoNotLift(t *testing.T) {
	l := Lid{Shape: Disc, Diameter: 24 * in, Thickness: 4 * in, Measured: 100 * manway.Pound}
	for name, change := range map[string]func(*Handle){
		"unknown":           func(h *Handle) { h.State = HandleUnknown },
		"pitted":            func(h *Handle) { h.State = HandlePitted },
		"necked":            func(h *Handle) { h.State = HandleNecked },
		"loose":             func(h *Handle) { h.State = HandleLoose },
		"missing":           func(h *Handle) { h.State = HandleMissing },
		"called sound":      func(h *Handle) { h.Waist = 0.44 * in },
		"waist not known":   func(h *Handle) { h.Waist = 0 },
		"embedment unknown": func(h *Handle) { h.Embedment = 0 },
		"edge unknown":      func(h *Handle) { h.Edge = 0 },
		"spacing unknown":   func(h *Handle) { h.Spacing = 0 },
		"too heavy":         func(h *Handle) { h.Load = 2000 * manway.PoundForce },
		"deep in a thin":    func(h *Handle) { h.Embedment = 3 * in },
	} {
		h := soundHandle
		change(&h)
		r, err := l.CheckHandle(h)
		if err != nil {
			t.Fatal(name, err)
		}
		if !r.DoNotLift || r.Reason == "" || !r.Cautions.Has(manway.DoNotLiftByHandle) {
			t.Errorf("%s: do not lift %v (%s)", name, r.DoNotLift, r.Reason)
		}
		if r.State != HandleSound {
			for _, c := range r.Checks {
				if c.Status == manway.Pass {
					t.Errorf("%s: %s passes", name, c.Name)
				}
			}
		}
	}
	h := soundHandle
	h.Embedment, h.Waist, h.AsMade = 5*in, 0.6*in, 0.5*in
	if _, err := l.CheckHandle(h); len(fields(err)) != 2 {
		t.Errorf("embedded deeper than the lid, thicker than made: %v", err)
	}
}

// Property (monotone): air eats on from year to year, and the worse class more.
func TestAirLossGrows(t *testing.T) {
	last := manway.Length(-1)
	for _, years := range []float64{1, 2, 10, 40} {
		a, err := AirLoss(Steel, C3, manway.Duration(years)*manway.Year)
		if err != nil {
			t.Fatal(err)
		}
		if !(a.High > last) || a.BarHigh != 2*a.High || !(a.Low < a.High) {
			t.Errorf("%v years: %+v", years, a)
		}
		last = a.High
	}
	if _, err := AirLoss(Steel, 0, 0); len(fields(err)) != 2 {
		t.Errorf("no class, no age: %v", err)
	}
}
