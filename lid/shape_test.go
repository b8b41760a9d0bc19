package lid

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"manway.example/manway"
)

const in = manway.Inch

// lids are one of each shape, none of them square.
var lids = map[string]Lid{
	"disc":          {Shape: Disc, Diameter: 24 * in, Thickness: 3 * in},
	"bevelled plug": {Shape: BevelledPlug, Diameter: 26 * in, BottomDiameter: 24 * in, Thickness: 4 * in},
	"stepped plug":  {Shape: SteppedPlug, Diameter: 27 * in, BottomDiameter: 23 * in, Thickness: 5 * in, Flange: 2 * in},
	"slab":          {Shape: Slab, Length: 30 * in, Width: 20 * in, Thickness: 4 * in},
	"tapered slab":  {Shape: TaperedSlab, Length: 30 * in, Width: 20 * in, BottomLength: 27 * in, BottomWidth: 16 * in, Thickness: 4 * in},
	"stepped slab":  {Shape: SteppedSlab, Length: 30 * in, Width: 20 * in, BottomLength: 26 * in, BottomWidth: 16 * in, Thickness: 4 * in, Flange: 1.5 * in},
}

func close(a, b, rel float64) bool { return math.Abs(a-b) <= rel*math.Max(math.Abs(a), math.Abs(b)) }

// slices adds up thin slices of a lid, a way to its volume that shares nothing
// with the closed forms.
func slices(l Lid) float64 {
	const n = 20000
	v := 0.0
	for i := range n {
		z := (float64(i) + 0.5) / n // from the top down
		share := 0.0                // of the way from top to bottom size
		switch {
		case l.Shape.stepped() && z > float64(l.Flange/l.Thickness):
			share = 1
		case l.Shape == BevelledPlug || l.Shape == TaperedSlab:
			share = z
		}
		mix := func(top, bottom manway.Length) float64 { return float64(top) + share*float64(bottom-top) }
		if l.Shape.Round() {
			d := float64(l.Diameter)
			if l.Shape.narrows() {
				d = mix(l.Diameter, l.BottomDiameter)
			}
			v += math.Pi / 4 * d * d
		} else {
			a, b := float64(l.Length), float64(l.Width)
			if l.Shape.narrows() {
				a, b = mix(l.Length, l.BottomLength), mix(l.Width, l.BottomWidth)
			}
			v += a * b
		}
	}
	return v * float64(l.Thickness) / n
}

// Property (two ways): the volume of a lid is that of thin slices added up.
func TestVolumeAgainstSlices(t *testing.T) {
	for name, l := range lids {
		got, err := l.Volume()
		if err != nil {
			t.Fatal(name, err)
		}
		if want := slices(l); !close(float64(got), want, 1e-4) { // a step falls between two slices
			t.Errorf("%s: %v, slices %v", name, float64(got), want)
		}
	}
}

func TestVolumeLimits(t *testing.T) {
	disc, _ := Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in}.Volume()
	for name, l := range map[string]Lid{
		"plug without bevel": {Shape: BevelledPlug, Diameter: 24 * in, BottomDiameter: 24 * in, Thickness: 3 * in},
		"plug without step":  {Shape: SteppedPlug, Diameter: 24 * in, BottomDiameter: 24 * in, Thickness: 3 * in, Flange: 1 * in},
	} {
		if v, err := l.Volume(); err != nil || !close(float64(v), float64(disc), 1e-12) {
			t.Errorf("%s: %v %v, want the disc's %v", name, v, err, disc)
		}
	}
	// A plug is not the cylinder of its mean diameter, though it is near.
	plug := lids["bevelled plug"]
	v, _ := plug.Volume()
	mean, _ := Lid{Shape: Disc, Diameter: 25 * in, Thickness: 4 * in}.Volume()
	if !(v > mean) || close(float64(v), float64(mean), 1e-5) {
		t.Errorf("plug %v, cylinder at the mean diameter %v: want a little more", v, mean)
	}
}

// Property (scaling): a lid of twice the size weighs eight times.
func TestScaling(t *testing.T) {
	for name, l := range lids {
		big := l
		for _, p := range []*manway.Length{&big.Diameter, &big.BottomDiameter, &big.Length, &big.Width, &big.BottomLength, &big.BottomWidth, &big.Thickness, &big.Flange} {
			*p *= 2
		}
		a, err1 := l.Weigh()
		b, err2 := big.Weigh()
		if err := errors.Join(err1, err2); err != nil {
			t.Fatal(name, err)
		}
		if !close(float64(b.Dry), 8*float64(a.Dry), 1e-12) {
			t.Errorf("%s: twice the size weighs %v, want 8 x %v", name, b.Dry, a.Dry)
		}
	}
}

func TestSIAgreesWithUS(t *testing.T) {
	us := Lid{Shape: BevelledPlug, Diameter: 26 * in, BottomDiameter: 24 * in, Thickness: 4 * in, Concrete: manway.Concrete{Density: 150 * manway.PoundPerCubicFoot}}
	si := Lid{Shape: BevelledPlug, Diameter: 660.4 * manway.Millimetre, BottomDiameter: 609.6 * manway.Millimetre, Thickness: 101.6 * manway.Millimetre, Concrete: manway.Concrete{Density: 150 * 16.018463373960138 * manway.KilogramPerCubicMetre}}
	a, err1 := us.Weigh()
	b, err2 := si.Weigh()
	if err := errors.Join(err1, err2); err != nil {
		t.Fatal(err)
	}
	if !close(float64(a.Dry), float64(b.Dry), 1e-12) {
		t.Errorf("US %v, SI %v", float64(a.Dry), float64(b.Dry))
	}
}

func TestWeightStates(t *testing.T) {
	l := lids["disc"]
	w, err := l.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	if !(w.Dry < w.Damp && w.Damp < w.Soaked) || w.Now != w.Dry || w.Heaviest != w.Soaked || !w.Assumed.Has(manway.AssumedDryLid|manway.AssumedConcreteDensity) {
		t.Errorf("unknown moisture: %+v", w)
	}
	l.Moisture = Damp
	if w, _ := l.Weigh(); w.Now != w.Damp || w.Heaviest != w.Damp || w.Assumed.Has(manway.AssumedDryLid) {
		t.Errorf("damp: %+v", w)
	}
	l.Measured = 130 * manway.Pound
	if w, _ := l.Weigh(); w.Now != l.Measured || w.Heaviest != l.Measured || w.Assumed != 0 {
		t.Errorf("measured: %+v", w)
	}
	// Wear does not make the lid lighter here: the lid as made is the heavier one.
	worn := lids["disc"]
	worn.Loss = 1 * in
	if a, _ := worn.Weigh(); a.Dry != w.Dry {
		t.Errorf("worn %v, as made %v", a.Dry, w.Dry)
	}
	// Three pieces, soil on each.
	l = lids["slab"]
	l.Pieces, l.Overburden = 3, Overburden{Depth: 12 * in, Soil: manway.Soil{Moist: 100 * manway.PoundPerCubicFoot}}
	w, _ = l.Weigh()
	if w.All != 3*w.Heaviest || !close(w.OnTop.In(manway.Pound), 30.0*20/144*100, 1e-12) {
		t.Errorf("pieces: %+v", w)
	}
}

func TestRecesses(t *testing.T) {
	l := lids["disc"]
	l.Recesses = []Recess{{Diameter: 4 * in}, {Length: 6 * in, Width: 2 * in, Depth: 1.5 * in, Count: 2}}
	w, err := l.Weigh()
	if err != nil {
		t.Fatal(err)
	}
	want := math.Pi/4*16*3 + 2*6*2*1.5 // in3
	if !close(w.Recesses.In(manway.CubicInch), want, 1e-12) || w.Volume != w.Solid-w.Recesses {
		t.Errorf("recesses %v, want %v in3", w.Recesses.In(manway.CubicInch), want)
	}
}

func TestFaults(t *testing.T) {
	nan := manway.Length(math.NaN())
	for _, c := range []struct {
		name string
		lid  Lid
		want []string
	}{
		{"nothing", Lid{}, []string{"Shape", "Thickness"}},
		{"not a number", Lid{Shape: Disc, Diameter: nan, Thickness: nan}, []string{"Diameter", "Thickness"}},
		{"wrong fields", Lid{Shape: Disc, Diameter: 24 * in, Length: 1 * in, Flange: 1 * in, Thickness: 3 * in}, []string{"Length", "Flange"}},
		{"wider below", Lid{Shape: BevelledPlug, Diameter: 24 * in, BottomDiameter: 25 * in, Thickness: 3 * in}, []string{"BottomDiameter"}},
		{"sides swapped", Lid{Shape: Slab, Length: 20 * in, Width: 30 * in, Thickness: 3 * in}, []string{"Width"}},
		{"gone", Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in, Loss: 3 * in}, []string{"Loss"}},
		{"plastic by size", Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in, Material: OfPlastic}, []string{"Measured"}},
		{"infinite", Lid{Shape: Disc, Diameter: manway.Length(math.Inf(1)), Thickness: 3 * in, Measured: manway.Mass(math.Inf(1))}, []string{"Diameter", "Measured"}},
		{"unknown words", Lid{Shape: 99, Thickness: 3 * in, Material: 9, Moisture: 9}, []string{"Shape", "Length", "Width", "Material", "Moisture", "Measured"}},
		{"recess", Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in, Recesses: []Recess{{}, {Diameter: 30 * in, Depth: 4 * in}}},
			[]string{"Recesses[0].Diameter", "Recesses[1].Diameter", "Recesses[1].Depth"}},
		{"all recess", Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in, Recesses: []Recess{{Diameter: 23 * in}}}, []string{"Recesses"}},
		{"concrete", Lid{Shape: Disc, Diameter: 24 * in, Thickness: 3 * in, Concrete: manway.Concrete{Density: 1}, Overburden: Overburden{Depth: -1}}, []string{"Concrete.Density", "Overburden.Depth"}},
	} {
		_, err := c.lid.Weigh()
		if diff := cmp.Diff(c.want, fields(err)); diff != "" {
			t.Errorf("%s: faults (-want +got)\n%s\n%v", c.name, diff, err)
		}
	}
}

// fields are the fields of the faults of err.
func fields(err error) []string {
	var faults manway.InputErrors
	errors.As(err, &faults)
	var list []string
	for _, f := range faults {
		list = append(list, f.Field)
	}
	return list
}
