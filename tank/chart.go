package tank

import (
	"fmt"
	"math"

	"manway.example/manway"
)

// Chart is a dip chart: what the tank holds at every step of a dip stick.
type Chart struct {
	FromRim bool          // readings run down from the rim of the access, not up from the floor
	Rim     manway.Length // height of the rim above the floor, where FromRim
	Rows    []ChartRow
}

// ChartRow is one reading and what it stands for.
type ChartRow struct {
	Reading      manway.Length // on the stick
	Depth        manway.Length // of liquid above the floor
	Volume       manway.Volume // in the whole tank
	Compartments [maxPartitions + 1]manway.Volume
}

// ChartCase says how a chart is measured.
type ChartCase struct {
	Step    manway.Length // of the readings, 1 mm to the inside height
	FromRim bool          // measured down from the rim to the liquid
	Rim     manway.Length // height of the rim above the floor, at least the inside height; needed where FromRim
}

// maxRows bounds a chart; 1/16 in of a 100 ft tank is 19,200 rows.
const maxRows = 20000

// Chart makes the dip chart of the tank. Measured up from the floor it runs
// from 0 to the inside height; measured down from the rim it runs from the
// first whole step at or below the roof to the floor. The last row is always
// the end of the stick.
//
// Errors: a step below 1 mm or above the inside height, a rim below the inside
// of the roof.
//
// Source: as [Tank.Volume].
func (t *Tank) Chart(c ChartCase) (Chart, error) {
	var faults manway.InputErrors
	if !t.made(&faults) {
		return Chart{}, faults
	}
	manway.Within(&faults, "Step", c.Step, max(manway.Millimetre, manway.Length(t.height)/maxRows), manway.Length(t.height))
	t.rim(&faults, c)
	if len(faults) > 0 {
		return Chart{}, faults
	}
	start, end := 0.0, t.height
	if c.FromRim {
		start, end = float64(c.Rim)-t.height, float64(c.Rim)
	}
	step := float64(c.Step)
	first := math.Ceil(start/step - 1e-9)
	last := math.Floor(end/step + 1e-9)
	chart := Chart{FromRim: c.FromRim, Rim: c.Rim, Rows: make([]ChartRow, 0, int(last-first)+2)}
	for i := first; i <= last; i++ {
		chart.Rows = append(chart.Rows, t.row(i*step, c))
	}
	if end-last*step > 1e-9*end {
		chart.Rows = append(chart.Rows, t.row(end, c))
	}
	return chart, nil
}

// ChartAt makes a chart of the depths asked for, in their order; Step is not
// used. Without any it has no rows.
//
// Errors: a depth outside the tank, a rim below the inside of the roof.
//
// Source: as [Tank.Volume].
func (t *Tank) ChartAt(depths []manway.Length, c ChartCase) (Chart, error) {
	var faults manway.InputErrors
	if !t.made(&faults) {
		return Chart{}, faults
	}
	t.rim(&faults, c)
	for i, d := range depths {
		if !(d >= 0 && float64(d) <= t.height) {
			manway.Within(&faults, fmt.Sprintf("Depths[%d]", i), d, 0, manway.Length(t.height))
		}
	}
	if len(faults) > 0 {
		return Chart{}, faults
	}
	chart := Chart{FromRim: c.FromRim, Rim: c.Rim, Rows: make([]ChartRow, len(depths))}
	for i, d := range depths {
		reading := float64(d)
		if c.FromRim {
			reading = float64(c.Rim - d)
		}
		chart.Rows[i] = t.row(reading, c)
		chart.Rows[i].Depth = d
	}
	return chart, nil
}

// rim adds what is wrong with the rim.
func (t *Tank) rim(faults *manway.InputErrors, c ChartCase) {
	if c.FromRim {
		manway.Within(faults, "Rim", c.Rim, manway.Length(t.height), manway.Length(t.height)+greatestSize)
	} else if c.Rim != 0 {
		faults.Add("Rim", c.Rim.String(), "no rim for a chart from the floor")
	}
}

// row is the chart's row for one reading within the stick.
func (t *Tank) row(reading float64, c ChartCase) ChartRow {
	depth := reading
	if c.FromRim {
		depth = float64(c.Rim) - reading
	}
	depth = min(max(depth, 0), t.height)
	row := ChartRow{Reading: manway.Length(reading), Depth: manway.Length(depth), Volume: manway.Volume(t.liquid(depth))}
	for i := range t.n {
		row.Compartments[i] = manway.Volume(t.compartments[i].liquid(depth))
	}
	return row
}

// PerUnit is what one unit of depth holds at a depth, such as gallons per inch:
// t.PerUnit(depth, manway.Inch).
//
// Errors: as Volume; a unit that is not above 0.
//
// Source: as Volume.
func (t *Tank) PerUnit(depth, unit manway.Length) (manway.Volume, error) {
	a, err := t.Area(depth)
	if err != nil {
		return 0, err
	}
	if !(unit > 0 && unit <= greatestSize) {
		return 0, manway.InputErrors{{Field: "unit", Value: fmt.Sprint(float64(unit)) + " m", Want: "above 0, at most 100 ft"}}
	}
	return a.Times(unit), nil
}
