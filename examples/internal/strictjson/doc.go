// Package strictjson decodes one JSON document into a Go value and collects
// every fault in it at once, each with its path in the document and its line:
// unknown and repeated fields, values of the wrong type, texts that a quantity
// refuses, required fields that are missing. Decoding goes on after a fault, so
// that what can be read is there for the checks that follow, and the faults
// these find can be given their line as well.
//
// The Go types are marked as for encoding/json, with these differences:
//
//   - names must match exactly, "Length" is not "length";
//   - a field with the tag strict:"required" must be there and not null;
//   - a type that reads text, as every quantity does, wants a JSON string: a
//     bare number is refused, with the units it could have taken;
//   - invalid UTF-8, more than [MaxBytes] and more than [MaxDepth] levels are
//     refused.
package strictjson
