package hydraulics

import "manway.example/manway"

// The greatest drainage fixture units on a building drain or sewer by nominal
// size in inches and slope of 1/16, 1/8, 1/4 and 1/2 in a foot: IPC 2018, Table
// 710.1(1). 0 is not permitted.
var (
	fixtureSlopes = [...]float64{1. / 192, 1. / 96, 1. / 48, 1. / 24}
	fixtureUnits  = [...]struct {
		size  float64
		units [4]int
	}{
		{1.25, [4]int{0, 0, 1, 1}}, {1.5, [4]int{0, 0, 3, 3}}, {2, [4]int{0, 0, 21, 26}},
		{2.5, [4]int{0, 0, 24, 31}}, {3, [4]int{0, 36, 42, 50}}, {4, [4]int{0, 180, 216, 250}},
		{5, [4]int{0, 390, 480, 575}}, {6, [4]int{0, 700, 840, 1000}}, {8, [4]int{1400, 1600, 1920, 2300}},
		{10, [4]int{2500, 2900, 3500, 4200}}, {12, [4]int{3900, 4600, 5600, 6700}}, {15, [4]int{7000, 8300, 10000, 12000}},
	}
)

// FixtureLoad sets the fixture units on a building drain or sewer against the
// greatest that the code allows for its nominal size and slope. A slope between
// two columns counts as the flatter one, one flatter than 1/16 in a foot is not
// permitted; a size that the table does not have is an error. Any drain with a
// water closet is at least 3 in. Source: IPC 2018, Table 710.1(1).
func FixtureLoad(nominal manway.Length, slope float64, units int, waterCloset bool) (manway.Check, error) {
	var faults manway.InputErrors
	row := -1
	for i, r := range fixtureUnits {
		if d := nominal.In(manway.Inch) - r.size; d > -1e-6 && d < 1e-6 {
			row = i
		}
	}
	if row < 0 {
		faults.Add("Nominal", nominal.String(), "1 1/4, 1 1/2, 2, 2 1/2, 3, 4, 5, 6, 8, 10, 12 or 15 in")
	}
	manway.Within(&faults, "Slope", slope, 0, 0.5)
	manway.Within(&faults, "Units", units, 0, 100000)
	if err := faults.Err(); err != nil {
		return manway.Check{}, err
	}
	c := manway.Check{Name: "drainage fixture units", Demand: float64(units), Source: manway.Citation{Source: ipc2018, Place: "Table 710.1(1)"}}
	for i, s := range fixtureSlopes {
		if manway.Reached(slope, s) {
			c.Capacity = float64(fixtureUnits[row].units[i])
		}
	}
	switch {
	case waterCloset && fixtureUnits[row].size < 3:
		c.Status, c.Reason = manway.NotPermitted, "a drain with a water closet is at least 3 in"
	case c.Capacity == 0:
		c.Status, c.Reason = manway.NotPermitted, "the table allows none at this size and slope"
	default:
		c = c.Judge()
	}
	return c, nil
}
