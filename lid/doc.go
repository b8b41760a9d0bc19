// Package lid answers what a crew asks of a cover: how heavy it is, how it sits,
// how it can be moved and with what force, whether its handle may be used, whether
// children are kept out, and what the worn lid still carries.
//
//	Weigh         weight of a disc, plug or slab, dry, damp and soaked
//	Sit           lifted straight, tipped or slid; wedges, falls through; chipped rim
//	Move          force of every method; Lift.Limit, the one-person limit, and the crew's
//	CheckHandle   the handle; AirLoss the least that air takes from it
//	CheckGuard    against chosen rules; never by a heavier lid
//	Strength      what the worn lid carries on its seat by its steel
//	Bend          the lid as plain concrete in closed form, for comparison only
//	Wear          loss by two measured thicknesses; not longer than, never a date
//
// Sizes are as measured on the lid; Top is the side that faces up. A field that
// does not belong to the shape must be left 0. Loss is the thickness gone since the
// lid was made: it is taken off for strength and never off the weight.
//
// No reach is ever taken that means standing astride the hole. Kneeling, one hand
// or a confined posture is outside the lifting equation: a caution, and no number.
// Nothing here says that a lift, a lid or a guard is safe.
package lid
