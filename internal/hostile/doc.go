// Package hostile calls every exported calculation of a room with input that
// was made to hurt it, and judges what comes back. Only tests import it.
//
// A room lists its exported functions and, of each type that has methods or is
// asked for, values that are accepted. What calls are made of follows from
// reflection: the arguments of a call are such values, of which none to three
// fields are then spoiled, mildly (scaled, or a length in inches taken for
// metres) or beyond all sense (NaN, infinite, subnormal, 1e300, negative, an
// enumeration out of range, a list of none or of hundreds, a text that is no
// UTF-8). So a call mostly passes the checks of the other fields and comes as
// far as the formulas.
//
// Of each call it is asked that it does not panic and takes less than a second,
// leaves its arguments as they were and does the same when it is done again;
// that with a nil error every number in the result is finite, every state is
// one that has a name, no text shows a number that is none, and that the same
// holds for what its methods give; and that an error names a field, the value
// and what was expected.
package hostile
