package hydraulics_test

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
)

// What is written in US units and in SI is the same to 1e-12.
func TestUnitsAgree(t *testing.T) {
	length := func(text string) (x manway.Length) { return read(t, text, &x) }
	volume := func(text string) (x manway.Volume) { return read(t, text, &x) }
	flow := func(text string) (x manway.Flow) { return read(t, text, &x) }
	w := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(sixty))
	for _, c := range []struct {
		name   string
		us, si float64
	}{
		{"interval", float64(reftable.Must[manway.Duration](t)(hydraulics.Interval(4, volume("1100 gal")))), float64(reftable.Must[manway.Duration](t)(hydraulics.Interval(4, volume("4163.9529624 L"))))},
		{"atmosphere", float64(reftable.Must[manway.Pressure](t)(hydraulics.Suction{Altitude: length("5280 ft")}.Atmosphere())), float64(reftable.Must[manway.Pressure](t)(hydraulics.Suction{Altitude: length("1609.344 m")}.Atmosphere()))},
		{"hose", float64(reftable.Must[hydraulics.HoseFlow](t)(hydraulics.Hose{Diameter: length("3 in"), Length: length("100 ft")}.AtFlow(flow("200 gal/min"), w)).Loss),
			float64(reftable.Must[hydraulics.HoseFlow](t)(hydraulics.Hose{Diameter: length("76.2 mm"), Length: length("30.48 m")}.AtFlow(flow("757.0823568 L/min"), w)).Loss)},
		{"drain", float64(reftable.Must[hydraulics.DrainFlow](t)(hydraulics.Drain{Diameter: length("4 in"), Slope: 0.02, N: 0.013}.AtFlow(flow("30 gal/min"))).Depth),
			float64(reftable.Must[hydraulics.DrainFlow](t)(hydraulics.Drain{Diameter: length("10.16 cm"), Slope: 0.02, N: 0.013}.AtFlow(flow("113.56235352 L/min"))).Depth)},
		{"outlet", float64(reftable.Must[hydraulics.OutletHead](t)(hydraulics.Outlet{Diameter: length("4 in"), Open: 0.3}.Head(flow("10 gal/min"))).Head),
			float64(reftable.Must[hydraulics.OutletHead](t)(hydraulics.Outlet{Diameter: length("101.6 mm"), Open: 0.3}.Head(flow("37.85411784 L/min"))).Head)},
	} {
		if off := math.Abs(c.us/c.si - 1); off > 1e-12 {
			t.Errorf("%s: %v in US units, %v in SI: off by %g", c.name, c.us, c.si, off)
		}
	}
}

// read is a quantity as it is written.
func read[Q any, P interface {
	*Q
	UnmarshalText([]byte) error
}](t *testing.T, text string, into P) Q {
	t.Helper()
	if err := into.UnmarshalText([]byte(text)); err != nil {
		t.Fatal(err)
	}
	return *into
}

// Words read back as they are written, and others are refused.
func TestWords(t *testing.T) {
	type word interface {
		MarshalText() ([]byte, error)
	}
	for i := range 8 {
		for _, pair := range []struct {
			word word
			back interface{ UnmarshalText([]byte) error }
			n    int
		}{
			{hydraulics.Certainty(i), new(hydraulics.Certainty), 4},
			{hydraulics.Opening(i), new(hydraulics.Opening), 3},
			{hydraulics.DeviceState(i), new(hydraulics.DeviceState), 6},
			{hydraulics.Climate(i), new(hydraulics.Climate), 3},
		} {
			text, err := pair.word.MarshalText()
			if err != nil {
				t.Fatal(err)
			}
			err = pair.back.UnmarshalText(text)
			if (err == nil) != (i < pair.n) {
				t.Errorf("%T(%d) %q: %v", pair.word, i, text, err)
			}
		}
	}
}
