// Package riser answers how an access of a buried tank is brought to grade and
// kept tight: where it lies and how long it takes to uncover, how high the riser
// must be, which rings make that height, what seals a joint and what leaks
// through an open one, how large the pit is, what is wrong with what stands
// there, and which remedies there are with their scope in quantities.
//
// # Conventions
//
// Depths are below finished grade and positive downwards; a reveal is above
// grade and positive upwards. Slopes of a pit are horizontal to one vertical.
// Volumes of soil are in the bank (as it lay), loose (in the pile) or compacted.
//
// # What it refuses
//
// Pits are in disturbed soil: slopes are those of type C, or of type B where a
// competent person declares it. Type A and short-term slopes are not offered,
// nor a pit deeper than 20 ft without an engineer. A guard is never a heavier
// lid. Work from inside is entry of a permit-required confined space and carries
// its whole scope. Nothing is called safe.
package riser
