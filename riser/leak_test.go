package riser

import (
	"testing"

	"manway.example/manway"
)

// Property (scaling): an orifice grows with the gap and the root of the head, a slot
// with the cube of the gap and the head; above the water nothing flows.
func TestLeakLaws(t *testing.T) {
	base := OpenJoint{Length: 7 * manway.Foot, Gap: manway.Inch / 64, Wall: 3 * manway.Inch, Depth: 3 * manway.Foot, Water: manway.GroundwaterAt(2 * manway.Foot)}
	a := must(LeakOf(base))
	wide := base
	wide.Gap *= 2
	b := must(LeakOf(wide))
	near(t, "orifice by gap", float64(b.Orifice/a.Orifice), 2, 1e-12)
	near(t, "slot by gap", float64(b.Slot/a.Slot), 8, 1e-12)
	deep := base
	deep.Water = manway.GroundwaterAt(0)
	deep.Depth = 4 * manway.Foot // four times the head of 1 ft
	c := must(LeakOf(deep))
	near(t, "orifice by head", float64(c.Orifice/a.Orifice), 2, 1e-12)
	near(t, "slot by head", float64(c.Slot/a.Slot), 4, 1e-12)
	dry := base
	dry.Water = manway.GroundwaterAt(5 * manway.Foot)
	if d := must(LeakOf(dry)); !d.Dry || d.Least != 0 {
		t.Errorf("above the water: %+v", d)
	}
	unknown := base
	unknown.Water = manway.Groundwater{}
	if u := must(LeakOf(unknown)); u.Head != base.Depth || !u.Assumed.Has(manway.AssumedGroundwaterAtGrade) {
		t.Errorf("unknown water: %+v", u)
	}
}
