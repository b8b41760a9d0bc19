package hydraulics

import (
	"fmt"
	"math"
	"sort"

	"manway.example/manway"
)

// The household table of Mancl 1984: years between pump-outs of a house lived
// in all year, without a garbage grinder, by tank gallons and people. The
// article was read as reprinted by Penn State Extension and others; for 2,500
// gal and one person they print 30.9 or 31.9, and 31.9 is the one that keeps the
// column's step. A cell of 0 has no figure.
var (
	manclGallons = [...]float64{500, 750, 900, 1000, 1250, 1500, 1750, 2000, 2250, 2500}
	manclYears   = [len(manclGallons)][10]float64{
		{5.8, 2.6, 1.5, 1.0, 0.7, 0.4, 0.3, 0.2, 0.1, 0},
		{9.1, 4.2, 2.6, 1.8, 1.3, 1.0, 0.7, 0.6, 0.4, 0.3},
		{11.0, 5.2, 3.3, 2.3, 1.7, 1.3, 1.0, 0.8, 0.7, 0.5},
		{12.4, 5.9, 3.7, 2.6, 2.0, 1.5, 1.2, 1.0, 0.8, 0.7},
		{15.6, 7.5, 4.8, 3.4, 2.6, 2.0, 1.7, 1.4, 1.2, 1.0},
		{18.9, 9.1, 5.9, 4.2, 3.3, 2.6, 2.1, 1.8, 1.5, 1.3},
		{22.1, 10.7, 6.9, 5.0, 3.9, 3.1, 2.6, 2.2, 1.9, 1.6},
		{25.4, 12.4, 8.0, 5.9, 4.5, 3.7, 3.1, 2.6, 2.2, 2.0},
		{28.6, 14.0, 9.1, 6.7, 5.2, 4.2, 3.5, 3.0, 2.6, 2.3},
		{31.9, 15.6, 10.2, 7.5, 5.9, 4.8, 4.0, 3.5, 3.0, 2.6},
	}
)

const mostPeople = 10

// Interval is the time between pump-outs by the household table, for 1 to 10
// people all the year and a tank of 500 to 2,500 gal of liquid. In a row of the
// table it is the figure of the table; between two rows it is interpolated
// along the straight line in gallons, which the column follows within its
// rounding. Outside the table, and for 10 people in less than 750 gal where the
// table has no figure, there is no answer and an error says so. Source: Mancl
// 1984.
func Interval(people int, tank manway.Volume) (manway.Duration, error) {
	const least, most = 500 * manway.Gallon, 2500 * manway.Gallon
	var faults manway.InputErrors
	manway.Within(&faults, "People", people, 1, mostPeople)
	if !manway.Reached(tank, least) || !manway.Reached(most, tank) {
		manway.Within(&faults, "Tank", tank, least, most)
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	gallons := tank.In(manway.Gallon)
	row := nearestRow(gallons)
	if years := manclYears[row][people-1]; years > 0 && math.Abs(gallons-manclGallons[row]) <= 1e-9*gallons {
		return manway.Duration(years) * manway.Year, nil
	}
	hi := min(sort.SearchFloat64s(manclGallons[:], gallons), len(manclGallons)-1)
	lo := max(hi-1, 0)
	y0, y1 := manclYears[lo][people-1], manclYears[hi][people-1]
	if y0 == 0 || y1 == 0 {
		return 0, manway.InputErrors{{Field: "Tank", Value: tank.String(), Want: fmt.Sprintf("750 gal or more for %d people: the table has no figure below", people)}}
	}
	t := (gallons - manclGallons[lo]) / (manclGallons[hi] - manclGallons[lo])
	return manway.Duration(y0+t*(y1-y0)) * manway.Year, nil
}

// nearestRow is the row of the table whose gallons are nearest.
func nearestRow(gallons float64) int {
	best := 0
	for i, g := range manclGallons {
		if math.Abs(g-gallons) < math.Abs(manclGallons[best]-gallons) {
			best = i
		}
	}
	return best
}

// manclRate is the slope of the straight line through the household table, fitted by
// least squares to its cells and rounded: solids of 76.9 gal a person and year grow
// until a day's flow of 50 gal a person is left. It meets every cell within 0.1 years.
const manclRate = 76.9 // gal a person and year
