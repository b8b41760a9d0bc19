// Package manway is the vocabulary of a library for people who service small
// buried wastewater tanks: quantities with units, materials, ground and loads,
// sources, cautions, checks and input errors. The calculations are in the
// packages tank, riser, lid, hydraulics and cost.
//
// # Quantities
//
// A quantity is a float64 in SI with a type of its own, used as time.Duration
// is:
//
//	reach := 2*manway.Foot + 4*manway.Inch
//	fmt.Printf("%v, %.6g in", reach, reach.In(manway.Inch)) // 2 ft 4 in, 28 in
//
// Every quantity reads what a person writes, in JSON strings, CSV cells and
// flags alike: 8 ft 4 1/2 in, 8'-4 1/2", 100.5 in, 2.55 m, 1,250 gal. A number
// without a unit is refused with the list of units it could have; so is the
// imperial gallon. lb is mass, lbf is force. MarshalText writes an SI text that
// reads back to the same bits; Text and String write for people, rounded.
//
// Two quantities of one dimension add and compare; crossing dimensions is a
// method: w.Times(l) of two lengths is an [Area].
//
// # Not known
//
// Not measured is not zero. Groundwater, concrete, steel, soil and persons have
// a zero value that means not known; the value that is then taken stands on
// the unfavourable side and is listed in the result as an [Assumption].
//
// # Results
//
// A calculation refuses bad input with [InputErrors], every fault at once. What
// it returns with a nil error is finite. What is judged is a [Check]; warnings
// travel as [Cautions]; where a method comes from is a [Citation].
//
// Nothing here calls anything safe. Structural results are an unreviewed
// screening of what stands there, not a design.
//
// # Sources
//
//	NIST Handbook 44, Appendix C; NIST SP 811   units
//	ACI 318-19, ASCE 7-16                        load combinations, least strength
//	AASHTO LRFD                                  truck wheel
//	Minn. R. 7080.1910; culvert manuals          soil weights as a load
package manway
