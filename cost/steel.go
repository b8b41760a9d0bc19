package cost

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// BarGrid is one layer of bars both ways in a slab.
type BarGrid struct {
	Width, Length  manway.Length
	Cover, Spacing manway.Length
}

// Bars is the number of bars along the length and along the width, and the
// total length of both without laps:
//
//	bars = floor((width - 2 cover) / spacing) + 1
//
// Sizes up to 1,000 ft, spacing 1 in to 10 ft, cover up to 1 ft. Source: common
// practice.
func (g BarGrid) Bars() (along, across int, total manway.Length, err error) {
	var faults manway.InputErrors
	const far = 1000 * manway.Foot
	manway.Within(&faults, "Spacing", g.Spacing, manway.Inch, 10*manway.Foot)
	manway.Within(&faults, "Cover", g.Cover, 0, manway.Foot)
	manway.Within(&faults, "Width", g.Width, 2*g.Cover, far)
	manway.Within(&faults, "Length", g.Length, 2*g.Cover, far)
	if err := faults.Err(); err != nil {
		return 0, 0, 0, err
	}
	along, across = g.count(g.Width), g.count(g.Length)
	total = manway.Length(float64(along)*float64(g.Length-2*g.Cover) + float64(across)*float64(g.Width-2*g.Cover))
	return along, across, total, nil
}

// count is how many bars lie across a width, the first and the last at the
// cover from the edges: floor((width - 2 cover)/spacing) + 1.
func (g BarGrid) count(width manway.Length) int {
	return int(math.Floor(float64(width-2*g.Cover)/float64(g.Spacing)+near)) + 1
}

// barWeights are the nominal pounds a foot of reinforcing bars by number, from
// ASTM A615.
var barWeights = map[int]float64{3: 0.376, 4: 0.668, 5: 1.043, 6: 1.502, 7: 2.044, 8: 2.670, 9: 3.400, 10: 4.303, 11: 5.313, 14: 7.65, 18: 13.60}

// BarWeight is the weight of a length of reinforcing bar by its number in
// eighths of an inch, 3 to 11, 14 and 18.
//
// Source: ASTM A615, nominal weights.
func BarWeight(number int, length manway.Length) (manway.Mass, error) {
	var faults manway.InputErrors
	perFoot, ok := barWeights[number]
	if !ok {
		faults.Add("Number", strconv.Itoa(number), "3 to 11, 14 or 18")
	}
	manway.Within(&faults, "Length", length, 0, 1e7*manway.Foot)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return manway.Mass(perFoot*length.In(manway.Foot)) * manway.Pound, nil
}

// Mesh is welded wire reinforcement, the same wire both ways.
type Mesh struct {
	Spacing manway.Length
	Wire    manway.Area // of one wire; W1.4 is 0.014 in2
}

// BareWeight is the weight of the wires alone on an area, without overhang at
// the edges or laps:
//
//	weight = 2 area / spacing x wire area x 3.4 lb/ft per in2
//
// Published weights of sheets are about a tenth above it, since the wires stand
// out at the edges. Spacing 1 in to 2 ft, wire 0.001 to 1 in2, area up to 1e6
// ft2. Source: geometry; 3.4 lb/ft per in2 is the weight of steel by which
// ASTM A615 has its bars, 0.668 lb/ft for 0.20 in2.
func (m Mesh) BareWeight(area manway.Area) (manway.Mass, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Spacing", m.Spacing, manway.Inch, 2*manway.Foot)
	manway.Within(&faults, "Wire", m.Wire, 0.001*manway.SquareInch, manway.SquareInch)
	manway.Within(&faults, "Area", area, 0, 1e6*manway.SquareFoot)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	wire := 2 * area.In(manway.SquareFoot) / m.Spacing.In(manway.Foot) // ft
	return manway.Mass(wire*m.Wire.In(manway.SquareInch)*3.4) * manway.Pound, nil
}
