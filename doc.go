// Package manway is the vocabulary of a library for people who service small
// buried wastewater tanks; the calculations are in the packages tank, riser, lid,
// hydraulics and cost.
//
// A quantity is a float64 in SI with a type of its own, used as time.Duration is:
//
//	reach := 2*manway.Foot + 4*manway.Inch
//	fmt.Printf("%v, %.6g in", reach, reach.In(manway.Inch)) // 2 ft 4 in, 28 in
//
// It reads what a person writes, in JSON strings, CSV cells and flags alike:
// 8 ft 4 1/2 in, 8'-4 1/2", 100.5 in, 2.55 m; a number without a unit and the
// imperial gallon are refused. lb is mass, lbf force. MarshalText is SI and reads
// back to the same bits; Text is for people. w.Times(l) is an Area.
//
// Not measured is not zero: a Reading, an Answer, groundwater, concrete, steel,
// soil and persons have a zero value that means not known. What is then taken
// stands on the unfavourable side and is listed in the result as an Assumption.
//
// A calculation refuses bad input with InputErrors, every fault at once. What it
// returns with a nil error is finite. What is judged is a Check, a warning one of
// Cautions, where a method comes from a Citation. Nothing here calls anything
// safe: structural results are an unreviewed screening, not a design.
//
// # Sources
//
//	NIST Handbook 44, Appendix C; NIST SP 811   units
//	ACI 318-19, ASCE 7-16                        load combinations, least strength
//	AASHTO LRFD; Minn. R. 7080.1910, manuals     truck wheel; soil weights as a load
package manway
