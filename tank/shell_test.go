package tank

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

func TestShellOfPlumbBox(t *testing.T) {
	reftable.Load(t, "tank.csv").Under("tank-box-weight").Each(t, func(t *testing.T, row reftable.Row) {
		l := lengths(t, row, "L", "W", "H", "wall", "floor", "roof")
		x := must(t, Spec{Shape: Box{Length: l[0], Width: l[1], Height: l[2]}, OutsideSizes: true, Wall: l[3], Floor: l[4], Roof: l[5]})
		s, err := x.ShellWeight(manway.Concrete{})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, s.Volume.In(manway.CubicFoot))
		if got, want := s.Mass.In(manway.Pound), 150*s.Volume.In(manway.CubicFoot); !(math.Abs(got-want) <= 1e-6) {
			t.Errorf("mass %v, want %v", got, want)
		}
		if !s.Assumed.Has(manway.AssumedConcreteDensity) {
			t.Errorf("assumed %v", s.Assumed.List())
		}
	})
}

// Property (additive): the parts make up the shell; thin walls weigh by their
// thickness, and a ball in a ball what lies between the two.
func TestShellIsOutsideLessHollow(t *testing.T) {
	for name, s := range shapes {
		if _, ok := s.(Surveyed); ok {
			continue
		}
		const wall = 0.08
		spec := Spec{Shape: s, Wall: wall}
		if !lying(s) {
			spec.Roof, spec.Floor = 0.12, 0.1
		}
		x := must(t, spec)
		shell, err := x.ShellWeight(manway.Concrete{Density: 2400})
		if err != nil {
			t.Fatal(err)
		}
		sum := shell.Floor.Volume + shell.Walls.Volume + shell.Roof.Volume + shell.Partitions.Volume
		if !(math.Abs(float64(sum-shell.Volume)) <= 1e-12) || !(math.Abs(float64(shell.Mass)-2400*float64(sum)) <= 1e-8) {
			t.Errorf("%s: parts %v, shell %v and %v", name, sum, shell.Volume, shell.Mass)
		}
		if shell.Walls.Volume <= 0 {
			t.Errorf("%s: walls of %v", name, shell.Walls.Volume)
		}
		if _, same := s.(Box); same || !lying(s) {
			continue
		}
		// A wall of almost nothing has its surface times its thickness.
		thin := must(t, Spec{Shape: s, Wall: 0.002})
		a, err := thin.ShellWeight(manway.Concrete{Density: 2400})
		if err != nil {
			t.Fatal(err)
		}
		thinner := must(t, Spec{Shape: s, Wall: 0.0015})
		b, err := thinner.ShellWeight(manway.Concrete{Density: 2400})
		if err != nil {
			t.Fatal(err)
		}
		if ratio := float64(a.Mass / b.Mass); !(math.Abs(ratio-4.0/3) <= 0.002) {
			t.Errorf("%s: 2 mm weighs %v times 1.5 mm", name, ratio)
		}
	}
	// Two spheres in each other, and a cylinder in a cylinder, exactly.
	ball := must(t, Spec{Shape: Sphere{2}, Wall: 0.1})
	got, _ := ball.ShellWeight(manway.Concrete{Density: 2400})
	if want := 2400 * math.Pi / 6 * (2.2*2.2*2.2 - 8); !(math.Abs(float64(got.Mass)-want) <= 1e-9*want) {
		t.Errorf("sphere: %v, want %v", float64(got.Mass), want)
	}
	pipe := must(t, Spec{Shape: HorizontalCylinder{Diameter: 1.5, Length: 3}, Wall: 0.1})
	got, _ = pipe.ShellWeight(manway.Concrete{Density: 2400})
	if want := 2400 * math.Pi / 4 * (1.7*1.7*3.2 - 1.5*1.5*3); !(math.Abs(float64(got.Mass)-want) <= 1e-9*want) {
		t.Errorf("cylinder: %v, want %v", float64(got.Mass), want)
	}
}

// The centre of mass by hand: a box with a partition and an opening off its
// middle.
func TestCentroid(t *testing.T) {
	x := must(t, Spec{
		Shape: Box{Length: 2, Width: 1, Height: 1.5}, Wall: 0.1, Floor: 0.1, Roof: 0.2,
		Partitions: []Partition{{At: 1.2, Thickness: 0.1, Height: 1, Opening: 0.05}},
		Access:     []Access{{Along: 0.5, Across: 0.2, Length: 0.5, Width: 0.4}},
	})
	s, err := x.ShellWeight(manway.Concrete{Density: 2000})
	if err != nil {
		t.Fatal(err)
	}
	type part struct{ v, x, y, z float64 }
	parts := []part{
		{2.2 * 1.2 * 0.1, 1, 0, -0.05},      // floor
		{(2.2*1.2 - 2*1) * 1.5, 1, 0, 0.75}, // walls
		{2.2 * 1.2 * 0.2, 1, 0, 1.6},        // roof
		{-0.5 * 0.4 * 0.2, 0.5, 0.2, 1.6},   // opening
		{1*1*0.1 - 0.05*0.1, 1.25, 0, 0.5},  // partition
	}
	var v, mx, my, mz float64
	for _, p := range parts {
		v += p.v
		mx += p.v * p.x
		my += p.v * p.y
		mz += p.v * p.z
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"volume", float64(s.Volume), v}, {"mass", float64(s.Mass), 2000 * v},
		{"along", float64(s.Centroid.Along), mx / v}, {"across", float64(s.Centroid.Across), my / v}, {"up", float64(s.Centroid.Up), mz / v},
		{"opening", float64(s.Openings.Volume), 0.04}, {"partition", float64(s.Partitions.Volume), 0.095},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-12) {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}

// A lying tank that is its own mirror has its centre in the middle; one head
// more draws it to that side.
func TestCentroidOfHeads(t *testing.T) {
	for _, h := range []Head{{}, {Form: Hemispherical}, {Form: Ellipsoidal}, {Form: SphericalCap, Depth: 0.3}, {Form: Torispherical, Crown: 1.5, Knuckle: 0.1}} {
		x := must(t, Spec{Shape: HorizontalCylinder{1.5, 2.6, h, h}, Wall: 0.05})
		s, err := x.ShellWeight(manway.Concrete{})
		if err != nil {
			t.Fatal(err)
		}
		if c := s.Centroid; !(math.Abs(float64(c.Along)-1.3) <= 1e-9) || !(math.Abs(float64(c.Up)-0.75) <= 1e-9) {
			t.Errorf("%v: centre at %v, want the middle", h.Form, c)
		}
		if h.Form == Flat {
			continue
		}
		one := must(t, Spec{Shape: HorizontalCylinder{1.5, 2.6, Head{}, h}, Wall: 0.05})
		s, _ = one.ShellWeight(manway.Concrete{})
		if !(s.Centroid.Along > 1.305 && s.Centroid.Along < 1.6) {
			t.Errorf("%v at the outlet only: centre at %v", h.Form, s.Centroid.Along)
		}
	}
	// A shell of two hemispheres and no body to speak of: a hollow ball.
	x := must(t, Spec{Shape: HorizontalCylinder{2, 0.102, Head{}, Head{Form: Hemispherical}}, Wall: 0.002})
	s, _ := x.ShellWeight(manway.Concrete{})
	// Flat disc pi r^2 t at -t/2, ring 2 pi r L t at L/2, half ball 2 pi r^2 t at L + r/2.
	want := (2*math.Pi*0.102*0.051 + 2*math.Pi*(0.102+0.5)) / (math.Pi + 2*math.Pi*0.102 + 2*math.Pi)
	if !(math.Abs(float64(s.Centroid.Along)-want) <= 0.002) {
		t.Errorf("half ball: centre at %v, want %v", float64(s.Centroid.Along), want)
	}
}

func TestShellRefusesAndEstimates(t *testing.T) {
	survey := must(t, Spec{Shape: shapes["areas"]})
	if _, err := survey.ShellWeight(manway.Concrete{}); err == nil {
		t.Error("a surveyed tank was weighed")
	}
	known := must(t, Spec{Shape: shapes["areas"], EmptyMass: 3000})
	if s, err := known.ShellWeight(manway.Concrete{}); err != nil || s.Mass != 3000 || !s.Weighed {
		t.Errorf("%+v, %v", s, err)
	}
	for _, m := range []Material{PlasticShell, FibreglassShell, SteelShell} {
		x := must(t, Spec{Shape: shapes["round"], Material: m})
		s, err := x.ShellWeight(manway.Concrete{})
		if err != nil || !s.Cautions.Has(manway.KeepOffRoof) || !(s.Mass > 20) {
			t.Errorf("%v: %v, %v, %v", m, s.Mass, s.Cautions, err)
		}
	}
	if _, err := known.ShellWeight(manway.Concrete{Density: manway.Density(math.NaN())}); err == nil {
		t.Error("concrete of NaN was taken")
	}
}
