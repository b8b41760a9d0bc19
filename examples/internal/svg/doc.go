// Package svg draws sections and plans to scale: shapes in real lengths, texts
// and line widths in pixels, as one SVG that needs nothing else.
//
// A point of the world is in metres, x to the right and y up, so that depths
// below grade are negative. [Page.Start] says which part of the world is drawn,
// how wide the picture is, and how much room it has round it for labels and
// dimensions; one scale holds in both directions. Whatever lies outside that
// part is drawn all the same, into the margins.
//
// What things are made of is told by a pattern, not by a colour, see [Fill].
// Every text is escaped. A drawing with a coordinate that is no number is not
// written: [Drawing.WriteTo] returns an error.
package svg
