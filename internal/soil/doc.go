// Package soil answers what the ground and what stands on it press on a buried
// tank with: earth and water on walls, soil and wheels on roofs, and how a pipe
// or ring of small stiffness gives under them.
//
//	lateral.go    at rest, active and passive coefficients, layers, water table
//	wheel.go      wheel spread through fill and impact, AASHTO LRFD and C890
//	stress.go     Boussinesq, Westergaard, Newmark and Fadum
//	surcharge.go  a vehicle beside a wall
//	people.go     a person, a crowd, the hole-cover rule
//	ring.go       trench load, ring compression, deflection and buckling of rings
//	bulking.go    bank, loose and compacted volume
//
// Depths go down from grade. Pressures are positive on the tank. Below the
// water table the soil presses with its submerged weight and the water beside
// it, undiminished by any friction. Cohesion is never counted: a dug and filled
// pit has none that lasts.
//
// Every calculation refuses NaN, infinities and values outside its range with
// manway.InputErrors, and does not allocate where it accepts.
package soil
