// Package lid answers what a crew asks of a cover: how heavy it is, how it
// sits, how it can be moved and with what force, whether its handle may be
// used, whether children are kept out, and what the worn lid still carries.
//
//	Weigh      volume and weight of a disc, plug or slab, dry, damp and soaked
//	Sit        whether it must be lifted straight, can be tipped or slid, wedges
//	           or falls through; what a chipped rim leaves
//	Move       force of every method first; beside it the one-person limit
//	           of the revised lifting equation and the crew's own limit
//	Lift       the revised lifting equation itself, both editions
//	CheckHandle, AirLoss   the handle, and the least that air takes from it
//	CheckGuard judged against chosen rules; never by a heavier lid
//	Bend       bending of the worn lid under its weight and a person, as plain
//	Strength   what the worn lid carries on its seat by its steel: people, a step,
//	           a fall, wheels; bending, shear, punching; whole or chipped seat
//	Wear       loss by two measured thicknesses; not longer than, never a date
//
// # Sizes
//
// Sizes are as measured on the lid; Top is the side that faces up. A round lid
// has diameters, a slab a Length and a Width, and a field that does not belong
// to the shape must be left 0. Loss is the thickness gone since the lid was
// made: it is taken off for strength and never off the weight.
//
// # Sources
//
//	lift*.go, outside.go   Pub. 94-110 (1994, rev. 2021), every figure by page
//	team.go, filter.go     HSE L23; MIL-STD-1472D
//	pull.go                Ohio push-pull guideline
//	method.go, seat.go     statics; PCI friction; measured shares of cover tools
//	handle.go              ACI 318-19 chapter 17; 29 CFR 1926.704
//	airloss.go             ISO 9223 and 9224 (2012)
//	guardrules.go          each rule its own text
//	plate.go, bend.go      Timoshenko and Woinowsky-Krieger; Roark; ACI 318-19
//	strength*.go           the same; AASHTO LRFD; 29 CFR 1926.502(i)
//	wear.go                Wells and Melchers 2015; Pomeroy 1974; Almusallam 2001
//
// # What it refuses
//
// No reach is ever taken that means standing astride the hole. Kneeling, one
// hand or a confined posture is outside the lifting equation: a caution, and
// no number. Nothing here says that a lift, a lid or a guard is safe.
package lid
