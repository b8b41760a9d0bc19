// Package visit works one survey of a buried wastewater tank through the whole
// job and gives the answer as typed results, as text, as JSON and as one
// self-contained page with drawings to scale.
//
//	survey, err := visit.Read(file)      // every fault at once, by JSON path and line
//	answer, err := visit.Run(survey, book)
//	err = answer.WriteHTML(w)            // or WriteText, or json.Marshal(answer)
//
// It joins the packages tank, riser, lid, hydraulics and cost and calculates
// nothing itself. What the survey leaves out is not known: a value is taken on
// the unfavourable side and listed, or the answer says what could not be judged.
//
// A survey asks for the tank's sizes and outlet, and for each opening its name,
// its compartment, its place, its size and the soil over it. Everything else may
// be left out. See [Survey] for the fields.
//
// Nothing in the answer calls anything safe. Structural results are an
// unreviewed screening of what stands there, not a design.
package visit
