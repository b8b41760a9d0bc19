// Package tank answers how much a buried tank holds in every compartment, how deep
// a volume stands, what the shell weighs, whether the tank may float or leaks, what
// codes ask of its size, and what roof, walls, partitions and floor are shown to
// carry.
//
// A [Spec] says what is known; [New] validates it once; the [Tank] is then asked:
//
//	t, err := tank.New(tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 5 * manway.Foot, Height: 5 * manway.Foot}})
//	v, err := t.Compartments()[0].Volume(48 * manway.Inch)
//
// [Tank.Roof], [Tank.Wall], [Tank.Partition] and [Tank.Floor] screen a rectangular
// concrete tank as it stands; they never design. The roof is a thin plate that can
// lift off its walls, its wheels at the worst place; the others are plates in their
// bounding ways of being held. Steel that is not known shows nothing, plain concrete
// that spans free is not permitted. What is left open is listed as NotJudged.
//
// Lengths run from the inside of the inlet end of the straight part towards the
// outlet, at the top of a drafted box, which leans evenly at both ends; heights
// from the lowest point of the floor inside, offsets from the centre line.
//
// Liquid stands level in all compartments unless one is asked alone. Thickness
// that was not measured is taken at the least that codes allow, groundwater at
// grade; every such value is listed in the result. Depths outside the tank and any
// extrapolation of a survey are refused. Nothing here says that a tank is safe.
package tank
