package visit

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// An opening stands where it was measured, else in the middle of its compartment:
// of a tank of 96 in with partitions at 40 to 44 and 70 to 73 in at 20, 57 and 84
// 1/2 in; of a round one of 60 in at 30.
func TestPlaceOfAnOpening(t *testing.T) {
	in := func(x float64) manway.Length { return manway.Length(x) * manway.Inch }
	box := Tank{Kind: "box", Length: in(96), Width: in(60), Partitions: []Partition{{At: in(40), Thickness: in(4)}, {At: in(70), Thickness: in(3)}}}
	lying := Tank{Kind: "horizontal-cylinder", Length: in(96), Diameter: in(60), Partitions: box.Partitions[:1]}
	nominal := Tank{Kind: "nominal", Nominal: 1000 * manway.Gallon, OutletInvert: in(48), Length: in(90)}
	shapeless := Tank{Kind: "nominal", Nominal: 1000 * manway.Gallon, OutletInvert: in(48)}
	for _, c := range []struct {
		tank        Tank
		compartment int
		at          manway.Reading
		want        manway.Length
	}{
		{box, 1, manway.Reading{}, in(20)}, {box, 2, manway.Reading{}, in(57)}, {box, 3, manway.Reading{}, in(84.5)}, {box, 1, manway.Read(in(7)), in(7)}, {box, 3, manway.Read(0), 0},
		{lying, 1, manway.Reading{}, in(20)}, {lying, 2, manway.Reading{}, in(70)}, {nominal, 1, manway.Reading{}, in(45)},
		{Tank{Kind: "vertical-cylinder", Diameter: in(60), Height: in(70)}, 1, manway.Reading{}, in(30)},
		{Tank{Kind: "box", Length: in(50)}, 1, manway.Reading{}, in(25)},
		{shapeless, 1, manway.Reading{}, tank.Nominal{Volume: 1000 * manway.Gallon, Depth: in(48)}.Inside().Length / 2},
	} {
		s := Survey{Tank: c.tank, Accesses: []Access{{Compartment: 1}, {Compartment: c.compartment, At: c.at}}}
		if got := s.place(1); !(math.Abs(float64(got-c.want)) <= 1e-12) {
			t.Errorf("%s, compartment %d, at %v: %v, want %v", c.tank.Kind, c.compartment, c.at, got, c.want)
		}
	}
}

// A value at a path moves by what it is moved, back by as much, and nothing else
// moves, nor the survey that it was in.
func TestMovedAndBack(t *testing.T) {
	s := Survey{
		Ground: Ground{Groundwater: manway.GroundwaterAt(2)}, Tank: Tank{Length: 3, Strength: 2e7, Partitions: []Partition{{At: 1, Thickness: 0.1}}},
		Accesses: []Access{{Cover: 0.5, Tie: &Tie{FromA: 4}}, {Lid: Lid{Thickness: 0.1, Loss: manway.Read(0.01), Measured: 50}}}, Compartments: []Contents{{Sludge: manway.Read(0.2)}},
		History: []Earlier{{Level: manway.Read(1.1), Compartments: []Contents{{Scum: manway.Read(0.1)}}}},
	}
	for path, at := range map[string]func(Survey) float64{
		"ground.groundwater":              func(s Survey) float64 { return float64(s.Ground.Groundwater.Depth) },
		"tank.length":                     func(s Survey) float64 { return float64(s.Tank.Length) },
		"tank.strength":                   func(s Survey) float64 { return float64(s.Tank.Strength) },
		"tank.partitions[0].at":           func(s Survey) float64 { return float64(s.Tank.Partitions[0].At) },
		"accesses[0].cover":               func(s Survey) float64 { return float64(s.Accesses[0].Cover) },
		"accesses[0].tie.from_a":          func(s Survey) float64 { return float64(s.Accesses[0].Tie.FromA) },
		"accesses[1].lid.loss":            func(s Survey) float64 { return float64(s.Accesses[1].Lid.Loss.Length) },
		"accesses[1].lid.measured":        func(s Survey) float64 { return float64(s.Accesses[1].Lid.Measured) },
		"compartments[0].sludge":          func(s Survey) float64 { return float64(s.Compartments[0].Sludge.Length) },
		"history[0].level":                func(s Survey) float64 { return float64(s.History[0].Level.Length) },
		"history[0].compartments[0].scum": func(s Survey) float64 { return float64(s.History[0].Compartments[0].Scum.Length) },
	} {
		before := at(s)
		up, err := s.moved(path, 0.03)
		if err != nil {
			t.Fatal(err)
		}
		back, err := up.moved(path, -0.03)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(at(up)-before-0.03) > 1e-9*max(1, before) || math.Abs(at(back)-before) > 1e-9*max(1, before) || at(s) != before {
			t.Errorf("%s: from %v to %v and back to %v; the survey has %v", path, before, at(up), at(back), at(s))
		}
	}
	for _, path := range []string{"tank.colour", "accesses[2].cover", "accesses[x].cover", "tank.length.depth", "id", "household.people", "accesses.cover", "tank[0]"} {
		if _, err := s.moved(path, 0.1); err == nil {
			t.Errorf("%s is moved", path)
		}
	}
}
