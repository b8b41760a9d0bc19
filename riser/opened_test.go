package riser

import (
	"errors"
	"slices"
	"testing"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// Property (balance): what the pit digs away no longer holds the tank
// down, by its weight; and walls that nobody could judge do not say yes.
func TestPitTakesSoilOffTheTank(t *testing.T) {
	box, err := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot},
		Wall: 3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 4 * manway.Inch})
	if err != nil {
		t.Fatal(err)
	}
	d := must(DigOf(Pit{Length: 30 * manway.Inch, Working: manway.Foot / 2, Depth: manway.Foot, Water: manway.GroundwaterAt(20 * manway.Foot)}))
	soil := manway.Soil{Moist: 110 * manway.PoundPerCubicFoot, Saturated: 125 * manway.PoundPerCubicFoot, Friction: 30 * manway.Degree}
	o, err := d.While(&box, tank.FloatCase{Cover: manway.Foot, Soil: soil}, tank.WallCase{Cover: manway.Foot})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "soil gone", float64(o.Before.Down-o.During.Down), float64(d.Bank.Times(soil.Moist).Weight()), 1e-9)
	if o.Emptying == manway.Yes {
		t.Error("walls with steel of which nothing is known were judged fit to be emptied")
	}
	if !o.Cautions.Has(manway.DoNotEmpty | manway.Screening) {
		t.Errorf("cautions %v", o.Cautions)
	}
	wet := d
	wet.Pit.Water = manway.GroundwaterAt(0)
	o, err = wet.While(&box, tank.FloatCase{Cover: manway.Foot, Soil: soil}, tank.WallCase{Cover: manway.Foot})
	if err != nil {
		t.Fatal(err)
	}
	if o.Emptying != manway.No {
		t.Errorf("an empty tank in water to grade floats: got %v, %v", o.Emptying, o.During.Factor)
	}
	if _, err := d.While(nil, tank.FloatCase{}, tank.WallCase{}); err == nil {
		t.Error("no tank was accepted")
	}
}

// A pit that takes more soil than lies on the tank is refused by the field that
// says so, a fault of the tank's own case is named once, and so is one of the
// walls.
func TestPitFailsWithItsCases(t *testing.T) {
	box, err := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot},
		Wall: 3 * manway.Inch, Roof: 4 * manway.Inch, Floor: 4 * manway.Inch})
	if err != nil {
		t.Fatal(err)
	}
	small := must(DigOf(Pit{Length: 30 * manway.Inch, Depth: manway.Foot}))
	wide := must(DigOf(Pit{Length: 30 * manway.Foot, Depth: 10 * manway.Foot}))
	for _, c := range []struct {
		dig    Dig
		cover  manway.Length
		wall   manway.Length
		fields []string
	}{
		{small, manway.Foot, manway.Foot, nil}, {wide, manway.Foot, manway.Foot, []string{"Float.Dug"}},
		{small, -manway.Foot, manway.Foot, []string{"Float.Cover"}}, {small, manway.Foot, -manway.Foot, []string{"Wall.Cover"}},
		{wide, -manway.Foot, -manway.Foot, []string{"Float.Cover", "Wall.Cover"}},
	} {
		_, err := c.dig.While(&box, tank.FloatCase{Cover: c.cover}, tank.WallCase{Cover: c.wall})
		var faults manway.InputErrors
		errors.As(err, &faults)
		var got []string
		for _, f := range faults {
			got = append(got, f.Field)
		}
		if !slices.Equal(got, c.fields) {
			t.Errorf("cover %v and %v: %v, want %v", c.cover, c.wall, got, c.fields)
		}
	}
}
