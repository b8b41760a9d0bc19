package tank

import (
	"fmt"
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// The gallons of a published tank by every way of asking for them.
func TestGallonsEachWay(t *testing.T) {
	reftable.Load(t, "tank.csv").Under("tank-heger-2019").Each(t, func(t *testing.T, row reftable.Row) {
		l := lengths(t, row, "L", "W", "depth")
		depth := l[2]
		x := must(t, Spec{Shape: Box{Length: l[0], Width: l[1], Height: depth}, OutletInvert: depth})
		at, err := x.ChartAt([]manway.Length{depth}, ChartCase{})
		if err != nil {
			t.Fatal(err)
		}
		chart, err := x.Chart(ChartCase{Step: in})
		if err != nil {
			t.Fatal(err)
		}
		compartment, err := x.Compartments()[0].Volume(depth)
		if err != nil {
			t.Fatal(err)
		}
		loss, err := x.LossOf(depth, depth)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range []manway.Volume{at.Rows[0].Volume, chart.Rows[len(chart.Rows)-1].Volume, compartment, loss} {
			row.Check(t, v.In(manway.Gallon))
		}
		w, err := x.Working(depth, manway.US)
		if err != nil {
			t.Fatal(err)
		}
		var worked float64
		if _, err := fmt.Sscanf(w[len(w)-1].Value, "%f gal", &worked); err != nil {
			t.Fatal(err)
		}
		row.Check(t, worked)
	})
	reftable.Load(t, "hydraulics.csv").Under("per-inch-R4").Each(t, func(t *testing.T, row reftable.Row) {
		x := must(t, Spec{Shape: Box{Length: 60 * in, Width: 42 * in, Height: 60 * in}})
		v, err := x.PerUnit(30*in, in)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, v.In(manway.Gallon))
	})
}

// The table of circles read backwards, and by a compartment: a lying cylinder of
// 1 m with flat ends.
func TestCircleTablesOfCompartments(t *testing.T) {
	x := must(t, Spec{Shape: HorizontalCylinder{Diameter: 1, Length: 1}})
	c := &x.Compartments()[0]
	rows := reftable.Load(t, "tank.csv")
	rows.Under("tank-circle-depth-").Each(t, func(t *testing.T, row reftable.Row) {
		v := manway.Volume(row.Float(t, "A/Afull") * math.Pi / 4)
		whole, err := x.Depth(v)
		if err != nil {
			t.Fatal(err)
		}
		part, err := c.Depth(v)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, float64(whole))
		row.Check(t, float64(part))
	})
	rows.Under("tank-chow-width-").Each(t, func(t *testing.T, row reftable.Row) {
		a, err := c.Area(manway.Length(row.Float(t, "y/D")))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, float64(a))
	})
}

// What a rule asks for is what its check holds the tank against.
func TestJudgedCapacities(t *testing.T) {
	n := 0
	for _, row := range reftable.Load(t, "tank.csv").Under("rule-").With("rule", "0") {
		bedrooms, ok := row.Lookup("bedrooms")
		s := setOf(t, row)
		if !ok || row.Unit != "gal" || !s.Capacity[0].Judges() {
			continue
		}
		j, err := s.Judge(Facts{Bedrooms: int(number(t, bedrooms)), Liquid: 1000 * manway.Gallon})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, manway.Volume(j.Checks[0].Demand).In(manway.Gallon))
		n++
	}
	if n < 20 {
		t.Errorf("%d capacities compared", n)
	}
}

// A leak test holds a loss against the one that its standard prints.
func TestJudgedLeak(t *testing.T) {
	reftable.Load(t, "tank.csv").Under("leak-").With("standard", "oregon").With("unit", "gal").Each(t, func(t *testing.T, row reftable.Row) {
		r, err := LeakTest{Standard: standard(t, "oregon"), Time: manway.Day, Drop: 0.1 * in, Surface: 4 * manway.SquareFoot}.Judge()
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, manway.Volume(r.Check.Capacity).In(manway.Gallon))
	})
}

// The last stage of the work, pumped dry, is the sunk tank of the permit sheet.
func TestPumpedStageIsSunk(t *testing.T) {
	reftable.Load(t, "tank.csv").Under("tank-f7-volume").Each(t, func(t *testing.T, row reftable.Row) {
		l := lengths(t, row, "L", "W", "H")
		x := must(t, Spec{Shape: Box{Length: l[0], Width: l[1], Height: l[2]}, OutsideSizes: true, Wall: in / 4, Roof: in / 4, Floor: in / 4, Material: PlasticShell})
		stages, err := x.Stages(FloatCase{}, Work{Found: 40 * in})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, stages[3].Displaced.In(manway.CubicFoot))
	})
}
