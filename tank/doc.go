// Package tank answers how much a buried tank holds in every compartment at any
// depth, how deep a volume stands, what the shell weighs, whether the emptied
// tank may float, what the codes ask of its size, and whether it leaks.
//
// A [Spec] says what is known: a [Shape] by inside sizes, by outside sizes and
// walls, or by nominal gallons and one depth; the partitions; the openings.
// [New] validates it once; the [Tank] is then asked:
//
//	t, err := tank.New(tank.Spec{
//		Shape:      tank.Box{Length: 96 * manway.Inch, Width: 60 * manway.Inch, Height: 60 * manway.Inch},
//		Partitions: []tank.Partition{{At: 62 * manway.Inch, Thickness: 3 * manway.Inch}},
//	})
//	v, err := t.Compartments()[0].Volume(48 * manway.Inch)
//
// # Axes
//
// Lengths run from the inside of the inlet end of the straight part towards the
// outlet; heights from the lowest point of the floor inside; offsets across
// from the centre line. A drafted box leans evenly at both ends, and its
// positions along are measured at the top.
//
// # What is taken
//
// Liquid stands level in all compartments unless one is asked alone. Thickness
// that was not measured is taken at the least that codes allow, which is the
// unfavourable side for weight; groundwater that was not measured stands at
// grade. Every such value is listed in the result.
//
// # What is refused
//
// Depths and volumes outside the tank, partitions in shapes that are neither
// prismatic nor a lying cylinder, and any extrapolation of a survey. Nothing
// here says that a tank is safe.
package tank
