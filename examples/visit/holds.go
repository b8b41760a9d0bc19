package visit

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/tank"
)

// tankSection says what the tank holds.
func (v Visit) tankSection() Section {
	sys, t := v.Survey.Units, v.Tank
	s := Section{
		ID: "tank", For: ForCrew, Title: "What the tank holds",
		Method:   "Inside volume below the outlet invert, less the partitions, by the exact formula of the shape.",
		Basis:    t.Basis(),
		Assumed:  t.Assumed,
		Cautions: t.Cautions,
	}
	full, _ := t.AtOutlet()
	outlet := v.Survey.Tank.OutletInvert
	s.Facts = []Fact{
		{"Inside length", amount(sys, "inside_length_in", t.Inside.Length, manway.Inch)},
		{"Inside width", amount(sys, "inside_width_in", t.Inside.Width, manway.Inch)},
		{"Inside height", amount(sys, "inside_height_in", t.Inside.Height, manway.Inch)},
		{"Outlet above the floor", amount(sys, "outlet_in", outlet, manway.Inch)},
		{"Holds to the outlet", amount(sys, "liquid_gal", full, manway.Gallon)},
	}
	if low, high, known, err := t.Range(outlet); err == nil && known {
		s.Facts = append(s.Facts,
			Fact{"At least", amount(sys, "liquid_low_gal", low, manway.Gallon)},
			Fact{"At most", amount(sys, "liquid_high_gal", high, manway.Gallon)})
	}
	table := Table{ID: "compartments", Columns: []string{"Compartment", "Holds to the outlet", "Share", perDepth(sys)}}
	for i, c := range t.Compartments() {
		gal, _ := c.Volume(outlet)
		area, _ := c.Area(outlet)
		share := float64(gal) / float64(full)
		table.Rows = append(table.Rows, []Cell{
			{Key: "compartment", Text: fmt.Sprint(i + 1), Number: float64(i + 1), Is: Number},
			amount(sys, "liquid_gal", gal, manway.Gallon),
			{Key: "share", Text: fmt.Sprintf("%.0f %%", 100*share), Number: share, Is: Number},
			amount(sys, "gal_per_in", area.Times(unitDepth(sys)), perUnitGallon(sys)),
		})
	}
	s.Tables = []Table{table}
	return s
}

// unitDepth is the step of a dip stick: an inch, or a centimetre.
func unitDepth(sys manway.System) manway.Length {
	if sys == manway.SI {
		return manway.Centimetre
	}
	return manway.Inch
}

func perDepth(sys manway.System) string {
	if sys == manway.SI {
		return "Per centimetre"
	}
	return "Per inch"
}

// perUnitGallon is the volume that stands for one gallon an inch when depth
// goes by the step of the system.
func perUnitGallon(sys manway.System) manway.Volume {
	return manway.Volume(float64(manway.Gallon) * unitDepth(sys).In(manway.Inch))
}

// chartSection is the dip chart, for the desk.
func (v Visit) chartSection() Section {
	sys, t := v.Survey.Units, v.Tank
	s := Section{ID: "dip_chart", Title: "Dip chart", For: ForDesk, Method: "Volume below each depth of the dip stick, read up from the floor.", Basis: t.Basis()}
	step := 2 * manway.Inch
	if sys == manway.SI {
		step = 5 * manway.Centimetre
	}
	chart, err := t.Chart(tank.ChartCase{Step: step})
	if err != nil {
		s.Unjudged = []string{err.Error()}
		return s
	}
	table := Table{ID: "chart", Columns: []string{"Depth", "Tank"}}
	for i := range t.Compartments() {
		table.Columns = append(table.Columns, fmt.Sprintf("Compartment %d", i+1))
	}
	for _, row := range chart.Rows {
		cells := []Cell{amount(sys, "depth_in", row.Depth, manway.Inch), amount(sys, "gal", row.Volume, manway.Gallon)}
		for i := range t.Compartments() {
			cells = append(cells, amount(sys, fmt.Sprintf("compartment_%d_gal", i+1), row.Compartments[i], manway.Gallon))
		}
		table.Rows = append(table.Rows, cells)
	}
	s.Tables = []Table{table}
	return s
}
