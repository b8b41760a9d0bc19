package soil

import "manway.example/manway"

// equivalentHeights are the soil heights that stand for the wheels of a truck
// beside a wall, against the wall's height, for traffic within a foot of the
// wall (AASHTO LRFD Tables 3.11.6.4-1 and -2, remembered).
var equivalentHeights = [...]struct{ wall, across, close, away manway.Length }{
	{5 * manway.Foot, 4 * manway.Foot, 5 * manway.Foot, 2 * manway.Foot},
	{10 * manway.Foot, 3 * manway.Foot, 3.5 * manway.Foot, 2 * manway.Foot},
	{20 * manway.Foot, 2 * manway.Foot, 2 * manway.Foot, 2 * manway.Foot},
}

// Beside is a vehicle beside a wall.
type Beside struct {
	Wall     manway.Length // height of the wall from grade to its foot, 0 to 100 ft
	Distance manway.Length // from the wall's back to the wheels, 0 or more
	Across   bool          // it drives at the wall rather than along it
}

// Height is the height of soil that presses on the wall as the truck does:
//
//	driving at the wall          4 ft to a wall of 5 ft, 3 ft at 10 ft, 2 ft from 20 ft
//	along it, within 1 ft of it  5 ft, 3.5 ft, 2 ft
//	along it, farther            2 ft
//
// and straight between. Source: AASHTO LRFD 3.11.6.4, remembered: results
// that use it carry that caution.
func (b Beside) Height() (manway.Length, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Wall", b.Wall, 0, 100*manway.Foot)
	manway.Within(&faults, "Distance", b.Distance, 0, 1000*manway.Foot)
	if len(faults) > 0 {
		return 0, faults
	}
	column := func(i int) manway.Length {
		row := equivalentHeights[i]
		switch {
		case b.Across:
			return row.across
		case manway.Reached(b.Distance, 1*manway.Foot):
			return row.away
		default:
			return row.close
		}
	}
	last := len(equivalentHeights) - 1
	if b.Wall <= equivalentHeights[0].wall {
		return column(0), nil
	}
	for i := range last {
		lo, hi := equivalentHeights[i].wall, equivalentHeights[i+1].wall
		if b.Wall <= hi {
			return column(i) + (column(i+1)-column(i))*manway.Length(float64((b.Wall-lo)/(hi-lo))), nil
		}
	}
	return column(last), nil
}

// Pressure is that height of moist soil as a pressure on the surface; lateral
// it counts by the coefficient of the soil's state.
func (b Beside) Pressure(moist manway.Density) (manway.Pressure, error) {
	h, err := b.Height()
	var faults manway.InputErrors
	if err != nil {
		faults = err.(manway.InputErrors)
	}
	manway.Within(&faults, "Moist", moist, 60*manway.PoundPerCubicFoot, 150*manway.PoundPerCubicFoot)
	if len(faults) > 0 {
		return 0, faults
	}
	return head(moist, h), nil
}
