// Package plate solves the bending of thin flat slabs and round lids: roof slabs
// with openings over the walls and partitions of a tank, wall panels under soil
// and liquid, discs on a seat. It works in plain SI numbers (m, N, Pa).
//
// # Slabs
//
// A [Slab] is a rectangle with its edges, line and point supports, openings and
// zones of other thickness. A [Solver] meshes and factorises it once; any number
// of load cases, each a list of [Load], are then solved at little cost into a
// [Field], which gives deflections, moments, support forces, shears and maxima. A
// [Study] does this on three meshes or more until the governing moment settles,
// and estimates its error. [Solver.Influence] gives the effect of a load at any
// place without solving for it.
//
//	var st plate.Study
//	err := st.Run(&plate.Slab{Length: 2.4, Width: 1.5, Thickness: 0.1, E: 25e9, Nu: 0.2},
//		[][]plate.Load{{plate.Uniform{Pressure: 10e3}}})
//	m := st.Cases[0].Governing() // N m per m, and where
//
// # Conventions
//
// x runs along Length, y along Width, from one corner. Loads and deflections
// count positive in the direction that loads push; reactions count positive
// against it. Moments are per length; Mx stretches fibres along x, positive on the
// far face, Mxy = -D (1-nu) d2w/dxdy.
//
// # Method
//
// Kirchhoff's theory of thin plates: no shear deformation, small deflections,
// linear elastic, uncracked. Good for spans of ten thicknesses and more. Elements
// are the conforming bicubic rectangles of Bogner, Fox and Schmit on a graded
// grid whose lines meet every rectangular opening, support and zone. A free edge
// asks for nothing, so a round opening is cut out of the cells by integrating
// over their solid part only (each cut cell keeps a ten-millionth of its stiffness
// in the opening). Moments are interpolated from the Gauss points, where second
// derivatives of cubics are most accurate: their error falls with the fourth
// power of the cell size, not the second. The equations are factorised by nested
// dissection on dense blocks.
//
// Bearing-only supports are found by iteration: see [Slab].BearingOnly and the
// [Uplift] of a Field.
//
// # What it leaves out
//
// Moments have no limit at the corner of a rectangular opening, at a point
// support, where a clamped edge meets a free one, and where a support ends on the
// rim of a round opening; [Field.Extremes] looks no nearer to such points than
// half the slab's thickness. Shear is not taken from
// third derivatives but from supports ([Field.Reactions], [Field.EdgeForce]) and
// from the equilibrium of moments ([Field.Shear]). Skew and curved slabs, membrane
// action, elastic foundations and cracking are not covered.
//
// # Lids
//
// [Disc] and [Annulus] are closed forms for round plates: uniform and central
// loads, a patch anywhere, loads round a hole, and a rim that touches its seat on
// three points only.
package plate
