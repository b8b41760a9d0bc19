package tank

import (
	"slices"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/hostile"
)

func abused(t testing.TB) hostile.Room {
	vacuum := LeakStandards()[slices.IndexFunc(LeakStandards(), func(s LeakStandard) bool { return s.Vacuum != 0 })]
	r := hostile.Room{
		Funcs: []any{LeakStandards, RuleSets, RuleSetOf, Mesh, FromDrops, New},
		Seeds: []any{
			FloatCase{}, FloatCase{Cover: 0.5, Lids: 100, RiserArea: 0.3, Groundwater: manway.GroundwaterAt(0.4), Ballast: []Ballast{{500, 2400, true}}}, Work{Found: 0.5},
			ChartCase{Step: manway.Inch}, ChartCase{Step: 0.1, FromRim: true, Rim: 0.3}, knownRoof(), RoofCase{Now: RoofLoad{Cover: 0.3}},
			WallCase{Cover: 0.4}, WallCase{Concrete: manway.Concrete{Strength: 28e6}, Steel: Steel{Inside: Mesh(bar(0.192, 4, 0.5)), Outside: Mesh(bar(0.192, 4, 0.5))}, TopHeld: true, Liquid: 1},
			FloorCase{Cover: 0.4}, PartitionCase{Liquid: 1.2}, Drop{12 * in, 250 * manway.Gallon}, []Drop{{0, 0}, {12 * in, 250 * manway.Gallon}, {30 * in, 610 * manway.Gallon}, {48 * in, 1000 * manway.Gallon}},
			LeakTest{Standard: LeakStandards()[0], Time: manway.Day, Drop: 0.4 * manway.Inch, Surface: 4 * manway.SquareFoot},
			LeakTest{Standard: vacuum, Time: 2 * manway.Minute, Start: 4 * manway.InchMercury, End: 3.6 * manway.InchMercury},
			Facts{Bedrooms: 3, DailyFlow: 450 * manway.GallonPerDay, Liquid: 1000 * manway.Gallon, Compartments: 2, LiquidDepth: manway.Read(1.2), InletBelow: manway.Read(0.3)},
			Nominal{Volume: 1000 * manway.Gallon, Depth: 48 * in, Height: 60 * in, Length: 96 * in},
		},
		Sealed: []any{Tank{}, Compartment{}},
		Slow:   []string{"Tank.Roof", "Tank.Wall", "Tank.Floor", "Tank.Partition", "RoofStrength.Working"},
	}
	for _, name := range []string{"box", "draftfillet", "upright", "elliptic", "dished", "oval", "frustum", "cone down"} {
		r.Seeds = append(r.Seeds, must(t, Spec{Shape: shapes[name]}), shapes[name])
	}
	full := Spec{Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60 * in}, Wall: 4 * in, Roof: 4 * in, Floor: 4 * in, InletInvert: 51 * in, OutletInvert: 48 * in,
		Partitions: []Partition{{At: 64 * in, Thickness: 3 * in}}, Access: []Access{{Along: 24 * in, Across: 30 * in, Diameter: 20 * in}}}
	divided := must(t, full)
	r.Seeds = append(r.Seeds, full, divided, Sphere{Diameter: 1.8}, Surveyed{Volumes: []VolumeAt{{0, 0}, {0.5, 1.2}, {1.4, 4}}})
	r.Calls = [][]any{
		{(*Tank).Partition, &divided, PartitionCase{Liquid: 1.2}}, {FromDrops, 48 * in, []Drop{{0, 0}, {12 * in, 250 * manway.Gallon}, {48 * in, 1000 * manway.Gallon}}},
		{RuleSetOf, "us-nc"},
	}
	return r
}

func TestHostile(t *testing.T) { abused(t).Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused(f).Fuzz(f) }
