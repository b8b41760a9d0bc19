// Package riser answers how an access of a buried tank is brought to grade and
// kept tight: where it lies and how long it takes to uncover, how high the riser
// must be, which rings make that height, what seals a joint and what leaks
// through an open one, how large the pit is, what is wrong with what stands
// there, and which remedies there are with their scope in quantities.
//
//	reach.go                      height from the roof to grade
//	ring.go stack.go search.go    ring weights; the best stacks, and how they are found
//	joint.go                      strip, gunned sealant, cement
//	pit.go hole.go opened.go      the pit, its geometry, the tank meanwhile
//	leak.go uplift.go wall.go     groundwater and soil on a riser
//	find.go                       ties to the house, uncovering, hose
//	condition.go rules.go         what was seen, and what is wrong by written rules
//	catalogue.go remedies.go      the remedies; scope*.go what they take
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
