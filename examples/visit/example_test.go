package visit_test

import (
	"fmt"
	"strings"

	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
)

// A dozen values are enough for a whole answer; what was not measured is said.
func Example() {
	survey, err := visit.Read(strings.NewReader(`{
  "id": "by-the-shed", "date": "2026-11-20",
  "tank": {"kind": "box", "length": "96 in", "width": "60 in", "height": "60 in", "outlet_invert": "48 in"},
  "accesses": [{"name": "lid", "compartment": 1, "opening": "20 in", "opened": "yes", "cover": "18 in",
    "lid": {"shape": "disc", "diameter": "24 in", "thickness": "3 in"}}],
  "compartments": [{"level": "48 in", "sludge": "12 in", "scum": "4 in"}]}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	answer, err := visit.Run(survey, cost.Book{})
	if err != nil {
		fmt.Println(err)
		return
	}
	full, _ := answer.Tank.AtOutlet()
	fmt.Println("holds", full)
	fmt.Println("lid", answer.Accesses[0].Moves.Weight.Heaviest)
	fmt.Println("emptied, it", answer.Float.State, "with groundwater taken at grade")
	// Output:
	// holds 1,197 gal
	// lid 123.7 lb
	// emptied, it floats with groundwater taken at grade
}

// Every fault is named at once, with its line.
func ExampleRead() {
	_, err := visit.Read(strings.NewReader(`{"id": "x", "date": "2026-11-20",
  "tank": {"kind": "box", "length": "96", "width": "60 in", "height": "60 in", "outlet_invert": "48 in"},
  "accesses": [{"name": "lid", "compartment": 1, "opening": "20 in", "cover": "18 in", "clour": "grey"}]}`))
	fmt.Println(strings.ReplaceAll(err.Error(), "; ", "\n"))
	// Output:
	// line 2: tank.length 96: want a number with a unit: in, ft, yd, mm, cm, m
	// line 3: accesses[0].clour grey: want a known field: one of //, name, compartment, at, opening, opened, why_not, cover, reveal, lid, riser, seen, tie
}
