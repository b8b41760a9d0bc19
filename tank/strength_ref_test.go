package tank

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// Steel of a slab 4 in thick, so much stronger at one face that the way of being
// held that pulls this face is the one that asks less.
var (
	strongInside  = Steel{Inside: Mesh(bar(0.375, 3, 0.75)), Outside: Mesh(bar(0.25, 6, 0.75))}
	strongOutside = Steel{Inside: strongInside.Outside, Outside: strongInside.Inside}
)

// Walls, partition and floor of a tank 90 ft deep and wide, so that half a
// thickness of span more or less does not show.
func TestPanelFigures(t *testing.T) {
	const size, half = 90 * manway.Foot, 2 * manway.Inch
	deep := must(t, Spec{
		Shape: Box{Length: size - 2*half, Width: size - 2*half, Height: size - half}, Wall: 2 * half, Roof: 2 * half, Floor: 2 * half,
		Partitions: []Partition{{At: size / 3, Thickness: 2 * half}},
	})
	// The moment of a face over q a2, q the pressure of the water at the foot.
	coefficient := func(l Loading, face string, q float64) float64 {
		if l.Edges != "held" {
			t.Errorf("%s: edges %s, want held", l.Name, l.Edges)
		}
		return checkNamed(t, l.Checks, face).Unfactored / (q * float64(size) * float64(size))
	}
	water := float64(manway.WaterDensity) * manway.StandardGravity * float64(size)
	rows := reftable.Load(t, "structure.csv")
	rows.Under("wall-foot").Each(t, func(t *testing.T, row reftable.Row) {
		w, err := deep.Wall(WallCase{Concrete: strongConcrete, Steel: strongInside})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, -1000*coefficient(w.Loadings[0], "bending, inside face", water))
	})
	rows.Under("partition-foot").Each(t, func(t *testing.T, row reftable.Row) {
		p, err := deep.Partition(PartitionCase{Concrete: strongConcrete, Steel: strongInside})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, -1000*coefficient(p.Loadings[0], "bending, inside face", water))
	})
	rows.Under("floor-edge").Each(t, func(t *testing.T, row reftable.Row) {
		wide := must(t, Spec{Shape: Box{Length: size - 2*half, Width: size - 2*half, Height: 5 * manway.Foot}, Wall: 2 * half, Roof: 2 * half, Floor: 2 * half})
		f, err := wide.Floor(FloorCase{Concrete: strongConcrete, Steel: strongOutside})
		if err != nil {
			t.Fatal(err)
		}
		c := checkNamed(t, f.Loading.Checks, "bending, outside face")
		row.Check(t, c.Unfactored/(float64(f.Uplift-f.Weight)*float64(size)*float64(size)))
	})
}

// The strength of a roof of planks is that of the tables of sections: M over phi b
// d2 for the steel ratio of a row, at the depth of the inner layer.
func TestRoofStrengthFigures(t *testing.T) {
	rows := reftable.Load(t, "concrete.csv").With("quantity", "moment over phi b d2").With("rho", "0.004", "0.007", "0.01")
	if len(rows) != 3 {
		t.Fatalf("%d rows", len(rows))
	}
	rows.Each(t, func(t *testing.T, row reftable.Row) {
		const thick, cover, diameter = 4.0, 0.75, 0.375
		depth := thick - cover - 1.5*diameter
		spacing := math.Pi / 4 * diameter * diameter / (row.Float(t, "rho") * depth)
		x := must(t, Spec{Shape: Box{Length: 120 * in, Width: 60 * in, Height: 60 * in}, Wall: 4 * in, Roof: thick * in, Floor: 4 * in})
		r := roofOf(t, &x, RoofCase{
			Concrete: manway.Concrete{Strength: 4000 * manway.PSI}, Steel: Steel{Inside: Mesh(bar(diameter, spacing, cover))},
			Joints: []manway.Length{24 * in, 48 * in, 72 * in, 96 * in}, Now: RoofLoad{Cover: 12 * in, Wetness: DrySoil},
		})
		c := r.Loadings[0].Checks[0]
		d := depth * float64(in)
		row.Check(t, c.Capacity/(c.Phi*d*d)/float64(manway.PSI))
	})
}
