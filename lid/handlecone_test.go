package lid

import (
	"math"
	"testing"

	"manway.example/manway"
)

// The cone of the concrete by hand: Nb = 24 sqrt(2500) h^1.5 lbf for legs hooked h
// in deep, times the share of 9 h^2 that the edge, the lid's own width and the
// other leg leave, and 0.7 + 0.3 c/(1.5 h) where the edge at c is nearer than 1.5
// h (ACI 318-19, 17.6.2). A lid thinner than 1.5 h may split first.
func TestBreakoutByHand(t *testing.T) {
	for _, c := range []struct {
		name                    string
		width, embedment, edge  float64 // in
		legs                    int
		spacing                 float64
		across, along, nearEdge float64
		status                  manway.Status
	}{
		{"two legs far in", 24, 2, 10, 2, 2, 6, 8, 1, manway.Pass},
		{"one leg", 24, 2, 10, 1, 0, 6, 6, 1, manway.Pass},
		{"legs far apart", 24, 2, 10, 2, 9, 6, 12, 1, manway.Pass},
		{"near the edge", 24, 2, 2, 2, 2, 5, 8, 0.7 + 0.3*2/3, manway.Pass},
		{"at 1.5 h from the edge", 24, 2, 3, 2, 2, 6, 8, 1, manway.Pass},
		{"a small lid", 7, 2, 3, 2, 2, 6, 7, 1, manway.Pass},
		{"deep in a thin lid", 24, 2.75, 10, 2, 2, 8.25, 10.25, 1, manway.NotShown},
	} {
		l := Lid{Shape: Disc, Diameter: manway.Length(c.width) * in, Thickness: 4 * in, Measured: 100 * manway.Pound}
		h := soundHandle
		h.Embedment, h.Edge, h.Legs, h.Spacing = manway.Length(c.embedment)*in, manway.Length(c.edge)*in, c.legs, manway.Length(c.spacing)*in
		h.Load = 50 * manway.PoundForce
		r, err := l.CheckHandle(h)
		if err != nil {
			t.Fatal(c.name, err)
		}
		want := 24 * 50 * math.Pow(c.embedment, 1.5) * c.across * c.along / (9 * c.embedment * c.embedment) * c.nearEdge
		if !close(r.Breakout.In(manway.PoundForce), want, 1e-9) || r.Checks[2].Status != c.status || !close(r.Checks[2].Capacity, float64(r.Breakout), 1e-12) {
			t.Errorf("%s: %v lbf, want %v; %v, want %v", c.name, r.Breakout.In(manway.PoundForce), want, r.Checks[2].Status, c.status)
		}
		if r.DoNotLift != (c.status != manway.Pass) {
			t.Errorf("%s: do not lift %v (%s)", c.name, r.DoNotLift, r.Reason)
		}
	}
}

// The first reason not to lift on a handle is the one that is told, and with none
// nothing is; a handle of one leg has no bar to bend, which is none.
func TestFirstReasonNotToLift(t *testing.T) {
	l := Lid{Shape: Disc, Diameter: 24 * in, Thickness: 4 * in, Measured: 100 * manway.Pound}
	for _, c := range []struct {
		change func(*Handle)
		want   string
	}{
		{func(h *Handle) {}, ""},
		{func(h *Handle) { h.Legs, h.Spacing = 1, 0 }, ""},
		{func(h *Handle) { h.State = HandleUnknown }, "its state is not known"},
		{func(h *Handle) { h.State = HandleLoose }, "loose"},
		{func(h *Handle) { h.Waist, h.AsMade = 0.4499*in, 0.5*in }, "necked"},
		{func(h *Handle) { h.Waist, h.AsMade = 0.4501*in, 0.5*in }, ""},
		{func(h *Handle) { h.Waist = 0 }, "the waist of the bar was not measured"},
		{func(h *Handle) { h.Spacing = 0 }, "the spacing of the legs was not measured"},
		{func(h *Handle) { h.Embedment = 0 }, "the embedment is not known"},
		{func(h *Handle) { h.Edge = 0 }, "the distance to the edge was not measured"},
		// 4 times 400 lbf is more than 4 x 36,000 x 0.5^3/6/2 = 1,500 lbf of the bar, of 6,000 also more than 22,777 of the legs.
		{func(h *Handle) { h.Load = 400 * manway.PoundForce }, "the bar between the legs is not shown to carry four times the load"},
		{func(h *Handle) { h.Load = 6000 * manway.PoundForce }, "the legs are not shown to carry four times the load"},
		{func(h *Handle) { h.Legs, h.Spacing, h.Load = 1, 0, 1000*manway.PoundForce }, "the concrete is not shown to hold four times the load"},
		{func(h *Handle) { h.Embedment = 2.75 * in }, "the lid is thinner than 1.5 times the embedment: it may split first"},
	} {
		h := soundHandle
		c.change(&h)
		r, err := l.CheckHandle(h)
		if err != nil {
			t.Fatal(err)
		}
		if r.Reason != c.want || r.DoNotLift != (c.want != "") || r.Cautions.Has(manway.DoNotLiftByHandle) != r.DoNotLift {
			t.Errorf("%+v: do not lift %v (%q), want %q", h, r.DoNotLift, r.Reason, c.want)
		}
	}
}

// Steel that is not known is plain bar of 36 and 58 ksi; the strength that counts
// is at most 1.9 times the yield and 125 ksi (ACI 318-19, 17.6.1.2). The share
// that is left goes with the square of the waist.
func TestSteelOfTheLegs(t *testing.T) {
	l := Lid{Shape: Disc, Diameter: 24 * in, Thickness: 4 * in, Measured: 100 * manway.Pound}
	for _, c := range []struct{ yield, tensile, counts, bar float64 }{
		{0, 0, 58000, 36000}, {36000, 75000, 68400, 36000}, {36000, 60000, 60000, 36000}, {90000, 150000, 125000, 90000}, {0, 70000, 68400, 36000}, {60000, 0, 58000, 60000},
	} {
		h := soundHandle
		h.Waist, h.AsMade = 0.48*in, 0.5*in
		h.Yield, h.Tensile = manway.Pressure(c.yield)*manway.PSI, manway.Pressure(c.tensile)*manway.PSI
		r, err := l.CheckHandle(h)
		if err != nil {
			t.Fatal(err)
		}
		area := math.Pi / 4 * 0.48 * 0.48
		if !close(r.Steel.In(manway.PoundForce), 2*area*c.counts, 1e-9) || !close(r.Bar.In(manway.PoundForce), 4*c.bar*math.Pow(0.48, 3)/6/2, 1e-9) || !close(r.Left, 0.9216, 1e-9) {
			t.Errorf("%v and %v: legs %v, bar %v lbf, %v left", c.yield, c.tensile, r.Steel.In(manway.PoundForce), r.Bar.In(manway.PoundForce), r.Left)
		}
		if r.Assumed.Has(manway.AssumedSteelYield) != (c.yield == 0) {
			t.Errorf("yield %v: assumed %v", c.yield, r.Assumed)
		}
	}
}
