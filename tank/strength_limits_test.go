package tank

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
)

// limitTank is a box of 2.4 by 1.2 by 1.2 m inside, 4 in thick all round, with a
// partition and an opening.
func limitTank(t *testing.T) *Tank {
	x := must(t, Spec{
		Shape: Box{Length: 2.4, Width: 1.2, Height: 1.2}, Wall: 4 * manway.Inch, Roof: 4 * manway.Inch, Floor: 4 * manway.Inch,
		Partitions: []Partition{{At: 1.5, Thickness: 3 * manway.Inch}}, Access: []Access{{Along: 0.5, Diameter: 0.5}},
	})
	return &x
}

// A roof of 4 in, and what is worn off it and stands on it.
func TestLimitsOfRoof(t *testing.T) {
	x := limitTank(t)
	judge := func(c RoofCase) error { return second(x.Roof(c)) }
	whole := RoofCase{Wheels: []manway.Wheel{}}
	limit.Check(t, whole, judge,
		limit.Between("Loss", 0, 3.5*manway.Inch), limit.Between("Now.Cover", 0, 20*manway.Foot),
		limit.AtMost("Now.Wetness", SoakedSoil), limit.Between("Now.Surface", 0, 2000*manway.PSF))
	ring := whole
	ring.Now.Risers = []Riser{{Mass: 100}}
	limit.Check(t, ring, judge,
		limit.Between("Now.Risers[0].Mass", 0, 20000*manway.Pound), limit.Between("Now.Risers[0].Wall", 0, 12*manway.Inch),
		limit.Between("Now.Risers[0].Access", 0, 0))
	limit.Refuses(t, ring, judge, "Now.Risers[1].Access", func(c *RoofCase) { c.Now.Risers = make([]Riser, 2) })
	spalled := whole
	spalled.Spalls = []Spall{{Along: 1, Length: 0.2, Width: 0.2, Depth: manway.Inch}}
	limit.Check(t, spalled, judge,
		limit.Between("Spalls[0].Along", manway.Length(0), 2.4), limit.Between("Spalls[0].Across", manway.Length(-0.6), 0.6),
		limit.Between("Spalls[0].Length", 0.5*manway.Inch, 2.4), limit.Between("Spalls[0].Width", 0.5*manway.Inch, 1.2),
		limit.Between("Spalls[0].Depth", 0, 3.5*manway.Inch), limit.AtMost("Spalls", 6))
	touched := whole
	touched.Contact = []bool{true}
	limit.Check(t, touched, judge, limit.AtMost("Contact", 1))
	planks := whole
	planks.Joints = []manway.Length{1}
	limit.Check(t, planks, judge, limit.Between("Joints[0]", 4*manway.Inch, 2.4-4*manway.Inch))
	thin := must(t, Spec{Shape: x.Spec.Shape, Wall: 2 * manway.Inch, Roof: 2 * manway.Inch, Floor: 2 * manway.Inch})
	judge = func(c RoofCase) error { return second(thin.Roof(c)) }
	planks.Joints = []manway.Length{0.19, 0.38, 0.57, 0.76, 0.95, 1.14, 1.33, 1.52, 1.71, 1.9, 2.09}
	limit.Check(t, planks, judge, limit.AtLeast("Joints[1]", 0.19+4*manway.Inch))
	limit.Refuses(t, planks, judge, "Joints", func(c *RoofCase) { c.Joints = append(c.Joints, 2.28) })
	limit.Check(t, RoofCase{Wheels: []manway.Wheel{manway.MowerWheel}}, judge, limit.AtMost("Wheels", 6))
	limit.Refuses(t, x, func(x *Tank) error { return second(x.Roof(RoofCase{Wheels: []manway.Wheel{}})) }, "Tank", func(x **Tank) { *x = new(Tank) })
	limit.Refuses(t, whole, judge, "Steel.Inside.Along.State", func(c *RoofCase) { c.Steel.Inside.Along.State = manway.SteelKnown + 1 })
}

// Walls, partition and floor of the same tank.
func TestLimitsOfWalls(t *testing.T) {
	x := limitTank(t)
	dry := manway.GroundwaterAt(20 * manway.Foot)
	limit.Check(t, WallCase{Groundwater: dry, Braced: []bool{true}}, func(c WallCase) error { return second(x.Wall(c)) },
		limit.Between("Loss", 0, 3.5*manway.Inch), limit.AtMost("Braced", 1), limit.Between("Cover", 0, 20*manway.Foot),
		limit.Between("Liquid", manway.Length(0), 1.2), limit.Between("Vehicle.Distance", 0, 1000*manway.Foot))
	limit.Check(t, PartitionCase{}, func(c PartitionCase) error { return second(x.Partition(c)) },
		limit.Between("Partition", 0, 0), limit.Between("Liquid", manway.Length(0), 1.2), limit.Between("Loss", 0, 2.5*manway.Inch))
	limit.Check(t, FloorCase{Groundwater: dry}, func(c FloorCase) error { return second(x.Floor(c)) },
		limit.Between("Loss", 0, 3.5*manway.Inch), limit.Between("Cover", 0, 20*manway.Foot))
	none := func(x **Tank) { *x = new(Tank) }
	limit.Refuses(t, x, func(x *Tank) error { return second(x.Wall(WallCase{})) }, "Tank", none)
	limit.Refuses(t, x, func(x *Tank) error { return second(x.Partition(PartitionCase{})) }, "Tank", none)
	limit.Refuses(t, x, func(x *Tank) error { return second(x.Floor(FloorCase{})) }, "Tank", none)
}
