// Package tank answers how much a buried tank holds in every compartment at any
// depth, how deep a volume stands, what the shell weighs, whether the emptied
// tank may float, what the codes ask of its size, whether it leaks, and what its
// roof, walls, partitions and floor are shown to carry.
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
// # Strength
//
// [Tank.Roof], [Tank.Wall], [Tank.Partition] and [Tank.Floor] screen a
// rectangular concrete tank as it stands today; they never design, and
// [StrengthTitle] stands over what they give. A roof is a thin plate that can lift
// off its walls, its wheels at the worst place by influence surfaces; walls,
// partitions and floor are plates in their bounding ways of being held. Every
// [manway.Check] has its combination, phi and unfactored figure. Steel that is not
// known shows nothing, plain concrete that spans free is not permitted, and both
// have figures for comparison only. What is left open is listed as NotJudged.
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
